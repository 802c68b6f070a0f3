# Writes test/reference/distributions_r.json: distribution functions of R on wide grids with far tails.
# Run from the project's folder: Rscript scripts/reference/distributions.R
# Only values in the range of normal doubles are kept; each is printed with 17 digits, so it round-trips.

number <- function(x) ifelse(is.infinite(x), ifelse(x > 0, '"Infinity"', '"-Infinity"'), sprintf("%.17g", x))

grid <- function(...) expand.grid(..., KEEP.OUT.ATTRS = FALSE)

# R takes one lower.tail a call, not a vector.
side <- function(g, f, ...) ifelse(g$lower, f(..., lower.tail = TRUE), f(..., lower.tail = FALSE))

tails <- function(g) rbind(cbind(g, lower = TRUE), cbind(g, lower = FALSE))

keep <- function(id, g, value, tolerance) {
  # Tails above 1 - 1e-9 hold no digits of their own; log values and quantiles are not affected by this rule.
  ok <- is.finite(value) & (value == 0 | abs(value) > 1e-290)
  if (startsWith(id, "p") && !startsWith(id, "plog")) ok <- ok & value < 1 - 1e-9 & value > 0
  g <- g[ok, , drop = FALSE]
  value <- value[ok]
  columns <- vapply(names(g), function(n) {
    cells <- if (is.logical(g[[n]])) tolower(as.character(g[[n]])) else number(g[[n]])
    sprintf('"%s":[%s]', n, paste(cells, collapse = ","))
  }, "")
  sprintf(
    '{"id":"%s","source":"%s, package stats, function %s","input":{"arguments":{%s}},"expected":{"value":[%s]},"tolerance":{"rel":%s,"abs":%s}}',
    id, R.version.string, sub("_log$", "", id), paste(columns, collapse = ","), paste(number(value), collapse = ","), tolerance,
    # The error of a logarithm is the relative error of the density, so it counts absolutely.
    if (grepl("log", id)) "2e-13" else "1e-300"
  )
}

probabilities <- c(1e-250, 1e-100, 1e-30, 1e-12, 1e-5, 0.003, 0.025, 0.1, 0.25, 0.4, 0.6, 0.9, 0.99)
shapes <- c(0.01, 0.3, 1, 2.5, 8, 40, 333, 5000)
cases <- character()
add <- function(...) cases <<- c(cases, keep(...))

g <- tails(data.frame(x = c(-37, seq(-33, 33, by = 1.37), 0.1, 0.67, 0.68, 5.65, 5.66)))
add("pnorm", g, side(g, pnorm, g$x), "1e-13")
g <- tails(data.frame(x = -c(1e5, 4000, 200, 60, 39, 20, 3, 0.3, 0)))
add("plognorm", g, side(g, pnorm, g$x, log.p = TRUE), "1e-13")
g <- tails(grid(p = probabilities))
add("qnorm", g, side(g, qnorm, g$p), "1e-13")

g <- tails(grid(x = c(1e-10, 1e-3, 0.2, 0.9, 3, 12, 45, 90, 350, 700, 4800, 5500), shape = shapes))
add("pgamma", g, side(g, pgamma, g$x, g$shape), "1e-12")
g <- grid(x = c(1e-10, 1e-3, 0.2, 0.9, 3, 12, 45, 350, 4800, 5500), shape = shapes, rate = c(1, 0.3))
add("dgamma_log", g, dgamma(g$x, g$shape, rate = g$rate, log = TRUE), "1e-12")
g <- tails(grid(p = probabilities, shape = c(0.3, 1, 2.5, 8, 40, 333, 5000)))
add("qgamma", g, side(g, qgamma, g$p, g$shape), "1e-12")

g <- tails(grid(x = c(1e-9, 1e-4, 0.02, 0.2, 0.45, 0.7, 0.93, 0.9995), a = shapes, b = c(0.3, 1, 6.5, 50, 2000)))
add("pbeta", g, side(g, pbeta, g$x, g$a, g$b), "1e-12")
g <- grid(x = c(1e-9, 1e-4, 0.02, 0.2, 0.45, 0.7, 0.93, 0.9995), a = shapes, b = c(0.3, 1, 6.5, 50, 2000))
add("dbeta_log", g, dbeta(g$x, g$a, g$b, log = TRUE), "1e-12")
g <- tails(grid(p = c(1e-30, 1e-12, 1e-5, 0.003, 0.025, 0.1, 0.4, 0.6, 0.9, 0.99), a = c(0.5, 1, 3, 17.5, 200), b = c(0.5, 1, 6.5, 50, 2000)))
add("qbeta", g, side(g, qbeta, g$p, g$a, g$b), "1e-12")

g <- tails(grid(t = c(-1e8, -300, -40, -12, -5, -2, -0.7, -0.01, 0.3, 1.7, 4, 25), df = c(0.5, 1, 2.5, 7, 30, 400, 1e5)))
add("pt", g, side(g, pt, g$t, g$df), "1e-12")
g <- grid(t = c(-1e8, -40, -5, -0.7, 0, 0.01, 0.3, 1.7, 4, 25), df = c(0.5, 1, 2.5, 7, 30, 400, 1e5))
add("dt_log", g, dt(g$t, g$df, log = TRUE), "1e-12")
g <- tails(grid(p = c(1e-100, 1e-30, 1e-12, 1e-5, 0.003, 0.025, 0.1, 0.4, 0.6, 0.9), df = c(1, 2.5, 7, 30, 400, 1e5)))
add("qt", g, side(g, qt, g$p, g$df), "1e-12")

g <- tails(grid(x = c(0, 1, 2, 7, 19, 60, 140, 199, 950), n = c(1, 2, 20, 200, 1000, 1e6), p = c(1e-6, 0.003, 0.07, 0.5, 0.81, 0.999)))
g <- g[g$x < g$n, ]
add("pbinom", g, side(g, pbinom, g$x, g$n, g$p), "1e-12")
g <- grid(x = c(0, 1, 2, 7, 19, 60, 140, 199, 950), n = c(1, 2, 20, 200, 1000, 1e6), p = c(1e-6, 0.003, 0.07, 0.5, 0.81, 0.999))
g <- g[g$x <= g$n, ]
add("dbinom_log", g, dbinom(g$x, g$n, g$p, log = TRUE), "1e-12")
g <- tails(grid(q = c(1e-30, 1e-8, 0.003, 0.1, 0.37, 0.77, 0.95), n = c(1, 2, 20, 200, 1e6), p = c(1e-6, 0.07, 0.5, 0.81)))
add("qbinom", g, side(g, qbinom, g$q, g$n, g$p), "0")

g <- tails(grid(x = c(0, 1, 3, 8, 20, 49, 90, 160), m = c(1, 9, 60, 400), n = c(1, 14, 75, 3000), k = c(1, 6, 40, 170, 900)))
g <- g[g$k <= g$m + g$n & g$x >= pmax(0, g$k - g$n) & g$x < pmin(g$m, g$k), ]
add("phyper", g, side(g, phyper, g$x, g$m, g$n, g$k), "1e-12")
g <- g[g$lower, c("x", "m", "n", "k")]
add("dhyper_log", g, dhyper(g$x, g$m, g$n, g$k, log = TRUE), "1e-12")
# R turns an upper tail into a lower one here, so that a very small q loses its digits: none below 1e-4.
g <- tails(grid(q = c(1e-4, 0.06, 0.35, 0.77), m = c(1, 9, 60, 400), n = c(14, 3000), k = c(1, 6, 170)))
g <- g[g$k <= g$m + g$n, ]
add("qhyper", g, side(g, qhyper, g$q, g$m, g$n, g$k), "0")

# R's lgamma is exact absolutely, not relatively, beside its zeros 1 and 2: no argument very near them.
g <- data.frame(x = c(1e-12, 1e-3, 0.49, 0.51, 0.999, 1, 1.0001, 1.4999, 1.75, 2, 2.5, 6.3, 14.99, 15, 171.6, 1e6, 1e15))
add("lgamma", g, lgamma(g$x), "1e-12")
add("digamma", g, digamma(g$x), "1e-12")
add("trigamma", g, trigamma(g$x), "1e-12")

writeLines(
  c(
    '{"group":"distributions_r","title":"Distribution functions of R on wide grids with far tails",',
    sprintf('"generator":"%s, scripts/reference/distributions.R",', R.version.string),
    '"conventions":"A check passes when |actual-expected| <= abs + rel*|expected|.",',
    '"cases":[', paste(cases, collapse = ",\n"), "]}"
  ),
  "test/reference/distributions_r.json"
)
