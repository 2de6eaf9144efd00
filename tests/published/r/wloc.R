# The weighted line of organic correlation of wloc.json, computed by R from its definition alone.
#
#   Rscript tests/published/r/wloc.R
#
# Reads wloc.json and writes wloc-answers.json beside this file. Nothing here is taken from the engine: weighted variances
# come from cov.wt() of the stats package, the slope is the fixed point that uniroot() finds, and standard uncertainties are
# JCGM 100, 5.1.2, with derivatives by central differences, the weights held.

folder <- dirname(normalizePath(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE)[1])))

text <- paste(readLines(file.path(folder, "wloc.json"), warn = FALSE), collapse = " ")
names <- gsub('"', "", regmatches(text, gregexpr('"[^"]*"(?=: *\\[)', text, perl = TRUE))[[1]])
blocks <- regmatches(text, gregexpr('\\[ *(\\[[^]]*\\],? *)+\\]', text))[[1]]
stopifnot(length(names) == length(blocks))
points_of <- function(block) {
  numbers <- as.numeric(regmatches(block, gregexpr('-?[0-9][0-9.eE+-]*', block))[[1]])
  matrix(numbers, ncol = 4, byrow = TRUE)
}

spread <- function(x, y, w) cov.wt(cbind(x, y), wt = w / sum(w), method = "ML")
weights_at <- function(b, p) 1 / (p[, 4]^2 + b^2 * p[, 3]^2)
line_at <- function(x, y, w) {
  s <- spread(x, y, w)
  b <- sign(s$cov[1, 2]) * sqrt(s$cov[2, 2] / s$cov[1, 1])
  c(b, s$center[[2]] - b * s$center[[1]])
}

answer <- function(p) {
  x <- p[, 1]; y <- p[, 2]; n <- nrow(p)
  start <- line_at(x, y, rep(1, n))[1]
  step <- function(b) line_at(x, y, weights_at(b, p))[1] - b
  b <- uniroot(step, sort(c(start / 4, start * 4)), tol = 1e-15)$root
  w <- weights_at(b, p)
  line <- line_at(x, y, w)
  h <- 1e-6
  moved <- sapply(seq_len(2 * n), function(k) {
    bump <- function(sign) {
      xx <- x; yy <- y
      if (k <= n) xx[k] <- xx[k] + sign * h else yy[k - n] <- yy[k - n] + sign * h
      line_at(xx, yy, w)
    }
    (bump(1) - bump(-1)) / (2 * h)
  })
  u <- c(p[, 3], p[, 4])
  v <- moved %*% diag(u^2) %*% t(moved)
  at <- function(z) c(1) * (line[2] + line[1] * z)
  errors <- sapply(c(log(4), log(50)), function(z) sqrt(c(z, 1) %*% v %*% c(z, 1)))
  off <- y - at(x)
  c(slope = line[1], intercept = line[2], slopeError = sqrt(v[1, 1]), interceptError = sqrt(v[2, 2]),
    covariance = v[1, 2], at4 = errors[1], at50 = errors[2], scatter = sum(w * off^2) / max(1, n - 2))
}

lines <- vapply(seq_along(names), function(k) {
  values <- answer(points_of(blocks[k]))
  sprintf('  "%s": {%s}', names[k], paste(sprintf('"%s": %.15g', names(values), values), collapse = ", "))
}, "")
writeLines(c("{", paste(lines, collapse = ",\n"), "}"), file.path(folder, "wloc-answers.json"))
