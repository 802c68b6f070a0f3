# Reference values of powerPairedDesign: pairs of plants with normal logits, m fresh and m stored flowers each, tested by
# mantelhaen.test(correct = FALSE) over pairs. Simulated, so every value comes with its standard error.
#   Rscript scripts/reference/paired-power.R      (from the project's folder)
library(jsonlite)
set.seed(20261125)
SIMULATIONS <- 200000

mean_logit <- function(rate, sd) {
  average <- function(mu) integrate(function(z) plogis(mu + sd * z) * dnorm(z), -Inf, Inf, rel.tol = 1e-10)$value
  uniroot(function(mu) average(mu) - rate, c(-30, 30), tol = 1e-10)$root
}

# All seasons at once; the formula is mantelhaen.test's, as the check below makes sure.
cmh <- function(a, c, m) {
  events <- a + c
  rowSums(a - events / 2)^2 / rowSums(events * (2 * m - events) / (4 * (2 * m - 1)))
}

seasons <- function(n, d) {
  z <- matrix(rnorm(n * d$pairs, 0, d$pairSd), n)
  draw <- function(rate) matrix(rbinom(length(z), d$flowersPerKind, plogis(mean_logit(rate, d$pairSd) + z)), n)
  list(a = draw(d$freshRate), c = draw(d$storedRate))
}

check <- function(s, d) {
  m <- d$flowersPerKind
  for (i in 1:20) {
    tables <- array(rbind(s$a[i, ], s$c[i, ], m - s$a[i, ], m - s$c[i, ]), c(2, 2, d$pairs))
    theirs <- unname(mantelhaen.test(tables, correct = FALSE)$statistic)
    stopifnot(isTRUE(all.equal(cmh(s$a, s$c, m)[i], theirs)))
  }
}

case <- function(pairs, m, fresh, stored, sd, level) {
  d <- list(pairs = pairs, flowersPerKind = m, freshRate = fresh, storedRate = stored, pairSd = sd)
  s <- seasons(SIMULATIONS, d)
  check(s, d)
  statistic <- cmh(s$a, s$c, m)
  power <- mean(!is.nan(statistic) & pchisq(statistic, 1, lower.tail = FALSE) <= 1 - level)
  list(design = d, level = level, power = power, standardError = sqrt(power * (1 - power) / SIMULATIONS))
}

cases <- list(
  case(20, 3, 0.60, 0.40, 1.0, 0.95),
  case(12, 2, 0.75, 0.45, 2.0, 0.95),
  case(40, 1, 0.50, 0.30, 0.5, 0.95),
  case(15, 4, 0.40, 0.40, 1.5, 0.95),
  case(8, 10, 0.85, 0.65, 1.0, 0.99),
  case(30, 2, 0.30, 0.45, 0.0, 0.90)
)
out <- list(source = paste0("scripts/reference/paired-power.R, ", R.version.string, ", mantelhaen.test, ", SIMULATIONS, " seasons a case"),
            tolerance = "4 standard errors of the difference of the two simulations", cases = cases)
writeLines(toJSON(out, digits = NA, auto_unbox = TRUE, pretty = TRUE), "test/reference/paired-power.json")
