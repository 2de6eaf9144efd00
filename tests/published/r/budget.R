# The whole uncertainty of a test in matrix form, for oracle.R: the covariance matrix V of the logarithms of the readings,
# built from named parts, and w' V w for a result that hangs on them by the weights w.
#
#   propagation            JCGM 100:2008, 5.1.2, and 5.2.2 for errors that readings have in common
#   scatter of readings    JCGM 100:2008, 4.2 (pooled variance, variance of a mean), 4.3.7 (uniform distribution)
#   degrees of freedom     JCGM 100:2008, G.4 (Welch and Satterthwaite)
#   what points show       generalized least squares: e = M y has the covariance matrix M V M', M the residual maker, so
#                          that the expectation of e' D^-1 e is the trace of D^-1 M V M'
#   0.2 Pa in calm weather, 0.5 % for a flow read once, 0.05 for an assumed exponent: common practice, no source

# d ln(standard factor) / dn; the logarithm of the factor is linear in n.
air_slope <- function(r, n) (log(r$factor(n + 1e-4)) - log(r$factor(n - 1e-4))) / 2e-4

# ---- estimators: the weights of ln Q at x and of n in the logarithms of the flows, and the residual maker ------------

of_line <- function(r) {
  X <- cbind(1, log(r$dp))
  A <- qr.solve(X, diag(nrow(X)))                    # (X'X)^-1 X'
  list(
    at = function(x) drop(c(1, x) %*% A), slope = A[2, ], from = 0,
    maker = diag(nrow(X)) - X %*% A, freedom = nrow(X) - 2
  )
}

of_stations <- function(r, groups, p) {
  count <- length(r$dp)
  H <- t(vapply(groups, function(g) replace(numeric(count), g, 1 / length(g)), numeric(count)))   # means of repeats
  maker <- matrix(0, count, count)                   # readings near no station leave nothing
  for (g in groups) maker[g, g] <- diag(length(g)) - 1 / length(g)
  A <- if (length(p) == 1) rbind(H, 0) else solve(cbind(1, log(p)), H)
  list(
    at = function(x) if (length(p) == 1) H[1, ] else drop(c(1, x) %*% A),
    slope = A[2, ], from = log(p[1]), maker = maker, freedom = sum(lengths(groups) - 1)
  )
}

# ---- readings ---------------------------------------------------------------------------------------------------------

# Pa: s of one reading of the baseline and of a point, standard uncertainties of the mean baseline and of its drift.
scatter_of <- function(sheet) {
  sides <- Filter(length, lapply(c("before", "after"), function(side) vapply(sheet$baseline[[side]], as.numeric, 0)))
  means <- vapply(sides, mean, 0)
  squares <- sum(vapply(sides, function(v) sum((v - mean(v))^2), 0))
  nu <- sum(lengths(sides) - 1)
  if (nu < 2) {
    if (length(sides) == 2 && nu == 0) {
      squares <- squares + diff(means)^2 / 2         # two readings about their mean
      nu <- nu + 1
    }
    given <- sheet[["pressureScatter"]]
    worth <- if (is.null(given)) 1 else 4
    squares <- squares + worth * (if (is.null(given)) 0.2 else given)^2
    nu <- nu + worth
  }
  s0 <- max(0.1 / sqrt(12), sqrt(squares / nu))
  times <- sheet[["averaging"]]
  both <- !is.null(times[["baseline"]]) && !is.null(times[["reading"]])
  list(
    s = s0 * (if (both) sqrt(times[["baseline"]] / times[["reading"]]) else 1),
    u0 = if (length(sides)) s0 * sqrt(sum(1 / lengths(sides))) / length(sides) else 0,
    drift = if (length(sides) == 2) abs(diff(means)) / sqrt(12) else 0,
    nu = nu
  )
}

# ---- the budget ---------------------------------------------------------------------------------------------------------

whole <- function(sheet, r, estimator, n, coefficient, coefficient_read, u_n, limits) {
  count <- length(r$dp)
  noise <- scatter_of(sheet)
  instrument <- sheet[["instrument"]]
  if (is.null(instrument)) instrument <- list(pressurePercent = 1, pressureFloor = 0.25, flowPercent = 5)

  # Errors that readings have in common: a column each, what one standard uncertainty does to each ln Q.
  range <- vapply(sheet$points, function(p) if (is.null(p[["range"]])) "" else paste("range", p[["range"]]), "")
  device <- outer(range, unique(range), "==") * instrument$flowPercent / 200
  # Several fans at once: the flow is a sum of independent flows, so one part's error counts by its share of the sum.
  parts <- lapply(sheet$points, function(p) p[["fans"]])
  if (any(lengths(parts) > 0)) {
    fans <- unique(unlist(lapply(parts, function(all) vapply(all, function(fan) fan$name, ""))))
    device <- t(vapply(seq_len(count), function(i) vapply(fans, function(name) {
      own <- Filter(function(fan) fan$name == name, parts[[i]])
      if (length(own) == 0) return(0)
      percent <- own[[1]][["percent"]]
      (if (is.null(percent)) instrument$flowPercent else percent) / 200 * own[[1]]$flow / sheet$points[[i]]$flow
    }, 0), numeric(length(fans))))
  }
  gauge <- n * pmax(instrument$pressurePercent / 100, instrument$pressureFloor / r$dp) / 2
  common <- list(device = device, gauge = cbind(gauge), baseline = cbind(n / r$dp * noise$u0), drift = cbind(n / r$dp * noise$drift))

  # Errors of each reading by itself: of its flow, and of its pressure as the exponent carries it.
  own <- pmax(0.005, n * noise$s / as.numeric(target(sheet)))^2 + (n * noise$s / r$dp)^2
  factor <- 1
  even <- 0
  pooled <- 1
  nu <- noise$nu
  if (estimator$freedom > 0) {
    M <- estimator$maker
    e <- drop(M %*% (log(r$read) - n * log(r$dp)))
    V <- diag(own, count) + Reduce(`+`, lapply(common, tcrossprod))
    trace <- function(V) sum(diag(diag(1 / own, count) %*% M %*% V %*% t(M)))
    expected <- trace(V)
    ratio <- sum(e^2 / own) / expected
    pooled <- (nu + estimator$freedom * ratio) / (nu + estimator$freedom)
    factor <- (pooled + max(pooled, ratio)) / 2
    nu <- nu + estimator$freedom
    # The same excess as one variance for all readings (moment estimator of random effects, as DerSimonian and Laird, 1986).
    even <- max(0, factor - 1) * trace(diag(own, count)) / trace(diag(count))
  }
  scaled_wind <- factor * diag(own, count)
  alike_wind <- diag(min(1, factor) * own + even, count)
  # What points and baseline show together bears on the baseline, too: its readings were taken in the same wind.
  V <- lapply(common, tcrossprod)
  V$baseline <- V$baseline * max(1, pooled)

  # Parts that every figure has, the exponent's and the size's beside them; `per`: what shares are a fraction of.
  budget <- function(w, exponent, size = 0) {
    form <- function(part) drop(t(w) %*% part %*% w)
    wind <- max(form(scaled_wind), form(alike_wind))
    variance <- c(vapply(V, form, 0), wind = wind, exponent = exponent^2, size = size^2)
    total <- sum(variance)
    counted <- variance[["baseline"]] + variance[["wind"]]
    freedom <- if (counted > 0) floor(nu * (total / counted)^2 * (1 + 1e-9)) else Inf
    k <- if (freedom > 60) 2 else max(2, qt(0.975, freedom))
    list(half = k * sqrt(total), u = sqrt(total), freedom = if (freedom > 60) 0 else freedom, shares = variance / total)
  }
  figure <- function(value, b, interval, per = 1) {
    list(limits = c(value, interval), u = b$u / per, freedom = b$freedom, shares = as.list(b$shares))
  }
  slope <- air_slope(r, n)
  flow_like <- function(value, p, a = slope, size = 0) {
    x <- log(p) + a
    b <- budget(estimator$at(x), u_n * (x - estimator$from), size)
    figure(value, b, value * limits(c(-1, 1) * b$half))
  }

  flow <- function(p) coefficient * p^n
  out <- lapply(pressures, function(p) flow_like(flow(p), p))
  names(out) <- paste0("flow-", pressures)
  b <- if (u_n > 0) budget(numeric(count), u_n) else budget(estimator$slope, 0)
  out[["leakage-exponent"]] <- figure(n, b, n + c(-1, 1) * b$half, abs(n))
  out[["leakage-coefficient"]] <- flow_like(coefficient, 1)
  out[["flow-50-as-read"]] <- flow_like(coefficient_read * 50^n, 50, 0)
  percent <- sheet$building[["volumePercent"]]
  size <- if (is.null(percent)) 0 else percent / 200
  scaled <- function(p, by) flow_like(flow(p) * by, p, size = size)
  if (sheet$subject == "ducts") {
    out[["duct-flow-25"]] <- out[["flow-25"]]
    out[["duct-flow-25-as-read"]] <- flow_like(coefficient_read * 25^n, 25, 0)
    by <- (if (sheet$units$length == "ft") 100 else 1) / sheet$building$floorArea
    out[["duct-flow-25-per-floor-area"]] <- scaled(25, by)
    return(out)
  }
  volume <- sheet$building$volume * metre[[sheet$units$length]]^3
  out[["air-changes-50"]] <- scaled(50, per_second[[sheet$units$flow]] * 3600 / volume)
  out[["flow-75-per-enclosure-area"]] <- scaled(75, 1 / sheet$building$enclosureArea)
  out
}
