# The second oracle: the figures of sheets.json, computed by R from the published equations alone.
#
#   Rscript tests/published/r/oracle.R
#   Rscript tests/published/r/oracle.R awkward
#   Rscript tests/published/r/oracle.R budget
#   Rscript tests/published/r/oracle.R fans
#
# Reads sheets.json and writes answers.json beside this file, or awkward.json and awkward-answers.json, and so on. Nothing
# here is taken from the engine: lines are fitted by lm(), limits come from confint() and predict(), the whole uncertainty
# from the covariance matrix of the readings (budget.R), and the equations are written from these sources:
#   density     ASTM E779, appendix form (elevation), from memory; rho = p / (287.055 T) with a barometer (ideal gas)
#   viscosity   C.-A. Roulet, "Ventilation and Airflow in Buildings", equation 4.17
#   mass balance ATTMA TSL, Appendix A, equations 5 and 6
#   standard conditions  Roulet, equation 4.15 (ASTM E779); ISO 9972 without the viscosity term, from memory
#   regression  Roulet, equation 4.11; ASTM E779 Annex A1; ISO 9972 Annex C
#   areas       ASTM E779 (4 Pa, Cd 1); CAN/CGSB-149.10 (10 Pa, Cd 0.611); ANSI 301 (specific leakage area, normalized)
#   one and two points  ASTM E1827 (from memory): repeats are averaged; JCGM 100, law of propagation, 4.2 and G.4
#   units       NIST SP 811: 1 ft = 0.3048 m, 1 in = 0.0254 m

folder <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE)[1])))

# ---- JSON, read and written without a package -------------------------------------------------------------------

read_json <- function(file) {
  text <- paste(readLines(file, warn = FALSE), collapse = " ")
  tokens <- regmatches(text, gregexpr('"[^"]*"|-?[0-9][0-9.eE+-]*|true|false|null|[][{}:,]', text))[[1]]
  at <- 0
  take <- function() { at <<- at + 1; tokens[at] }
  value <- function() {
    token <- take()
    if (token == "{") {
      object <- list()
      if (tokens[at + 1] == "}") { take(); return(object) }
      repeat {
        key <- gsub('"', "", take()); take()
        object[[key]] <- value()
        if (take() == "}") return(object)
      }
    }
    if (token == "[") {
      items <- list()
      if (tokens[at + 1] == "]") { take(); return(items) }
      repeat {
        items[[length(items) + 1]] <- value()
        if (take() == "]") return(items)
      }
    }
    if (startsWith(token, '"')) return(gsub('"', "", token))
    if (token %in% c("true", "false")) return(token == "true")
    as.numeric(token)
  }
  value()
}

write_value <- function(x, digits = 15) {
  if (is.list(x)) {
    paste0("{", paste0('"', names(x), '": ', vapply(x, write_value, "", digits), collapse = ", "), "}")
  } else if (length(x) > 1) {
    paste0("[", paste(sprintf("%.*g", digits, x), collapse = ", "), "]")
  } else {
    sprintf("%.*g", digits, x)
  }
}

# ---- units ------------------------------------------------------------------------------------------------------

foot <- 0.3048
inch <- 0.0254
per_second <- c("cfm" = foot^3 / 60, "m3/h" = 1 / 3600, "L/s" = 1e-3)   # one unit of flow in m3/s
metre <- c("ft" = foot, "m" = 1)                                        # one unit of length in m

# ---- air --------------------------------------------------------------------------------------------------------

rho0 <- 1.2041

density <- function(celsius, elevation, barometer) {
  if (!is.null(barometer)) return(barometer / (287.055 * (celsius + 273.15)))
  rho0 * (1 - 0.0065 * elevation / 293)^5.2553 * 293 / (celsius + 273)
}

viscosity <- function(celsius) {
  kelvin <- celsius + 273.15
  1.458e-6 * sqrt(kelvin) / (1 + 110.4 / kelvin)
}
mu0 <- viscosity(20)

# ---- from readings to pressure differences and flows through the leaks ---------------------------------------------

reduce_sheet <- function(sheet) {
  numbers <- function(x) vapply(x, as.numeric, 0)
  pressurize <- sheet$direction == "pressurize"

  means <- c(if (length(sheet$baseline$before)) mean(numbers(sheet$baseline$before)),
             if (length(sheet$baseline$after)) mean(numbers(sheet$baseline$after)))
  zero <- if (length(means)) mean(means) else 0
  typed <- vapply(sheet$points, function(p) abs(p$pressure), 0)
  dp <- abs((if (pressurize) 1 else -1) * typed - zero)

  through <- vapply(sheet$points, function(p) {
    if (!is.null(p$flow)) return(p$flow)
    range <- sheet$device$ranges[[p$range]]
    range$coefficient * p$devicePressure^range$exponent
  }, 0)

  if (is.null(sheet$air)) return(list(dp = dp, read = through, leak = through, factor = function(n) 1))

  celsius <- function(t) if (sheet$units$temperature == "degF") (t - 32) / 1.8 else t
  elevation <- if (is.null(sheet$air$elevation)) 0 else sheet$air$elevation * metre[[sheet$units$length]]
  inside <- celsius(sheet$air$indoor)
  outside <- celsius(sheet$air$outdoor)
  rho_in <- density(inside, elevation, sheet$air$barometer)
  rho_out <- density(outside, elevation, sheet$air$barometer)

  # The device stands in indoor air when depressurizing, in outdoor air when pressurizing.
  rho_device <- if (pressurize) rho_out else rho_in
  rho_calibration <- if (is.null(sheet$device$calibrationDensity)) rho0 else sheet$device$calibrationDensity
  at_device <- if (sheet$flowBasis == "indicated") through * sqrt(rho_calibration / rho_device) else through

  # Mass goes on; volume changes with density. The leaks pass indoor air when pressurizing, outdoor air when not.
  leak <- if (pressurize) at_device * rho_out / rho_in else at_device * rho_in / rho_out
  rho <- if (pressurize) rho_in else rho_out
  mu <- viscosity(if (pressurize) inside else outside)
  factor <- function(n) {
    viscous <- if (sheet$procedure == "iso-9972") 1 else (mu / mu0)^(2 * n - 1)
    viscous * (rho / rho0)^(1 - n)
  }
  list(dp = dp, read = through, leak = leak, factor = factor)
}

# ---- figures ------------------------------------------------------------------------------------------------------

pressures <- c(4, 10, 25, 50, 75)

# Figures that are a flow times a constant: c(value, low, high) in, c(value, low, high) out.
derived <- function(sheet, flow) {
  b <- sheet$building
  si <- per_second[[sheet$units$flow]]
  side <- metre[[sheet$units$length]]
  imperial <- sheet$units$length == "ft"
  small <- if (imperial) inch^2 else 1e-4
  hourly <- function(p) flow[[p]] * si * 3600                              # m3/h
  per_area <- function(p, area) flow[[p]] / area                           # units.flow per ft2 or m2
  out <- list()
  if (sheet$subject == "ducts") {
    out[["duct-flow-25"]] <- flow[["25"]]
    out[["duct-flow-25-per-floor-area"]] <- flow[["25"]] / b$floorArea * (if (imperial) 100 else 1)
    out[["duct-share-of-air-handler"]] <- 100 * flow[["25"]] / sheet$duct$airHandlerFlow
    return(out)
  }
  out[["air-changes-50"]] <- hourly("50") / (b$volume * side^3)
  out[["natural-air-changes"]] <- out[["air-changes-50"]][1] / 20           # a rule of thumb has no limits
  out[["flow-50-per-enclosure-area"]] <- per_area("50", b$enclosureArea)
  out[["flow-75-per-enclosure-area"]] <- per_area("75", b$enclosureArea)
  out[["flow-50-per-floor-area"]] <- per_area("50", b$floorArea)
  ela <- flow[["4"]] * si * sqrt(rho0 / (2 * 4))                           # m2; Q = A sqrt(2 dP / rho)
  out[["effective-leakage-area"]] <- ela / small
  out[["equivalent-leakage-area"]] <- flow[["10"]] * si / 0.611 * sqrt(rho0 / (2 * 10)) / small
  out[["specific-leakage-area"]] <- ela / (b$floorArea * side^2)
  out[["normalized-leakage"]] <- 1000 * out[["specific-leakage-area"]] * (b$height * side / foot / 8.202)^0.4
  out
}

# The pressure that a result is given at.
target <- function(sheet) if (sheet$subject == "ducts") "25" else "50"

# Figures that a size of the building is in: its uncertainty in quadrature.
sized <- c("air-changes-50", "flow-50-per-enclosure-area", "flow-75-per-enclosure-area", "flow-50-per-floor-area",
           "specific-leakage-area", "normalized-leakage", "duct-flow-25-per-floor-area")

with_size <- function(sheet, figures) {
  percent <- sheet$building[["volumePercent"]]
  if (is.null(percent)) return(figures)
  for (id in intersect(sized, names(figures))) {
    f <- figures[[id]]
    figures[[id]] <- if (sheet$procedure == "one-point") {
      f[1] * pmax(0, 1 + c(0, -1, 1) * sqrt((f[3] / f[1] - 1)^2 + (percent / 100)^2))
    } else {
      f[1] * exp(c(0, -1, 1) * sqrt(log(f[3] / f[1])^2 + (percent / 100)^2))
    }
  }
  figures
}

named_figures <- function(sheet, flow, as_read) {
  if (sheet$subject == "ducts") return(with_size(sheet, derived(sheet, flow)))
  with_size(sheet, c(setNames(flow, paste0("flow-", pressures)), list("flow-50-as-read" = as_read), derived(sheet, flow)))
}

answer <- function(sheet) {
  r <- reduce_sheet(sheet)
  if (sheet$procedure %in% c("one-point", "two-point")) return(stations(sheet, r))

  x <- log(r$dp)
  line <- lm(log(r$leak) ~ x)
  n <- coef(line)[[2]]
  k <- r$factor(n)
  bounds <- confint(line, level = 0.95)
  at <- predict(line, data.frame(x = log(pressures)), interval = "confidence", level = 0.95)
  flow <- lapply(seq_along(pressures), function(i) unname(k * exp(at[i, c("fit", "lwr", "upr")])))
  names(flow) <- pressures
  as_read <- lm(log(r$read) ~ x)
  read_50 <- exp(predict(as_read, data.frame(x = log(50))))[[1]]
  list(
    fit = list(
      coefficient = k * exp(coef(line)[[1]]),
      coefficientLow = k * exp(bounds[1, 1]), coefficientHigh = k * exp(bounds[1, 2]),
      exponent = n, exponentLow = bounds[2, 1], exponentHigh = bounds[2, 2],
      correlation = summary(line)$r.squared
    ),
    figures = named_figures(sheet, flow, read_50),
    withInstrument = whole(sheet, r, of_line(r), n, k * exp(coef(line)[[1]]), exp(coef(as_read)[[1]]), 0, function(u) exp(u))
  )
}

# ---- one and two points: means of repeats ------------------------------------------------------------------------

# Readings within 3 Pa of the one nearest to a pressure (common practice, no source). Rounding decides nothing.
station <- function(dp, wanted, taken = integer(0)) {
  free <- setdiff(seq_along(dp), taken)
  away <- abs(dp[free] - wanted)
  close <- free[away < min(away) + 1e-9]
  nearest <- dp[close[which.max(dp[close])]]
  free[abs(dp[free] - nearest) <= 3 + 1e-9]
}

stations <- function(sheet, r) {
  one <- sheet$procedure == "one-point"
  at <- as.numeric(target(sheet))
  groups <- list(station(r$dp, at))
  if (!one) groups[[2]] <- station(r$dp, at / 4, groups[[1]])
  p <- vapply(groups, function(g) mean(r$dp[g]), 0)
  groups <- groups[order(-p)]
  p <- sort(p, decreasing = TRUE)
  leak <- vapply(groups, function(g) mean(r$leak[g]), 0)
  read <- vapply(groups, function(g) mean(r$read[g]), 0)

  if (one) {
    n <- if (!is.null(sheet[["exponent"]])) sheet[["exponent"]] else if (sheet$subject == "ducts") 0.6 else 0.65
    u_n <- if (is.null(sheet$exponentUncertainty)) 0.05 else sheet$exponentUncertainty
  } else {
    n <- log(leak[1] / leak[2]) / log(p[1] / p[2])
    u_n <- 0
  }
  limits <- if (one) function(u) pmax(0, 1 + u) else function(u) exp(u)
  slope <- air_slope(r, n)

  # Scatter of each mean: its repeats brought to one pressure. JCGM 100, 4.2.
  scatter <- vapply(seq_along(groups), function(i) {
    g <- groups[[i]]
    brought <- r$leak[g] * (p[i] / r$dp[g])^n
    if (length(g) < 2) 0 else sd(brought) / mean(brought) / sqrt(length(g))
  }, 0)
  carried <- function(pressure) {
    x <- log(pressure) + slope
    w <- if (one) 1 else c(x - log(p[2]), log(p[1]) - x) / log(p[1] / p[2])
    parts <- w * scatter
    known <- u_n * abs(log(pressure / p[1]) + slope)
    if (all(parts == 0)) return(2 * known)
    total <- sqrt(known^2 + sum(parts^2))
    freedom <- floor(total^4 / sum((parts^4 / pmax(1, lengths(groups) - 1))))
    max(2, qt(0.975, max(1, freedom))) * total
  }
  flow <- lapply(pressures, function(at) r$factor(n) * leak[1] * (at / p[1])^n * limits(c(0, -1, 1) * carried(at)))
  names(flow) <- pressures
  c(
    list(figures = named_figures(sheet, flow, read[1] * (50 / p[1])^n)),
    list(withInstrument = whole(sheet, r, of_stations(r, groups, p), n, r$factor(n) * leak[1] / p[1]^n, read[1] / p[1]^n, u_n, limits))
  )
}

source(file.path(folder, "budget.R"))

# Which sheets: sheets.json into answers.json, or awkward.json into awkward-answers.json.
kind <- commandArgs(TRUE)
input <- if (length(kind)) paste0(kind[1], ".json") else "sheets.json"
output <- if (length(kind)) paste0(kind[1], "-answers.json") else "answers.json"

sheets <- read_json(file.path(folder, input))
lines <- vapply(sheets, function(s) {
  paste0(' "', s$name, '": {', paste0('\n  "', names(a <- answer(s$sheet)), '": ', mapply(write_value, a, ifelse(names(a) == "withInstrument", 10, 15)), collapse = ","), "\n }")
}, "")
writeLines(c("{", paste(lines, collapse = ",\n"), "}"), file.path(folder, output))
