# Reference values of models.fixed: fruit ~ storage + age within each stored method.
#   Rscript scripts/reference/fixed-model.R      (from the project's folder)
# Profile ranges are root-found on the deviance (refits with an offset), Firth fits maximise the penalised
# log-likelihood with the determinant of the full information; brglm2 checks the unconstrained one.
library(brglm2)
library(jsonlite)

read_season <- function(name) {
  d <- read.csv(file.path("test/reference", name), na.strings = "", stringsAsFactors = FALSE)
  d <- d[d$outcome %in% c("fruit", "failed"), ]
  d$storage <- c(fresh = "fresh", fridge = "refrigerated", freezer = "frozen")[d$storage]
  d$age <- as.numeric(as.Date(d$date_pollinated) - as.Date(d$pollen_collected))
  d$age[d$storage == "fresh"] <- 0
  d[!is.na(d$age), ]
}

design <- function(d, scale, stored) {
  term <- if (scale == "days") d$age else log1p(d$age)
  x <- cbind("(Intercept)" = rep(1, nrow(d)))
  for (s in stored) {
    is <- as.numeric(d$storage == s)
    x <- cbind(x, is, is * term)
    colnames(x)[ncol(x) - 1:0] <- paste0(c("storage: ", "age: "), s)
  }
  x
}

penalty <- function(x, beta) {
  p <- plogis(drop(x %*% beta))
  0.5 * as.numeric(determinant(crossprod(x, x * (p * (1 - p))))$modulus)
}
loglik <- function(x, y, beta) sum(plogis((2 * y - 1) * drop(x %*% beta), log.p = TRUE))

# Largest objective with coefficient j held at v.
held <- function(x, y, j, v, start, firth) {
  at <- function(free) { b <- numeric(ncol(x)); b[-j] <- free; b[j] <- v; b }
  if (!firth) {
    f <- suppressWarnings(glm.fit(x[, -j, drop = FALSE], y, offset = x[, j] * v, family = binomial(),
                                  control = list(epsilon = 1e-14, maxit = 200)))
    return(loglik(x, y, at(f$coefficients)))
  }
  minus <- function(free) { b <- at(free); -(loglik(x, y, b) + penalty(x, b)) }
  o <- optim(start[-j], minus, method = "BFGS", control = list(reltol = 1e-15, maxit = 2000))
  o <- nlm(minus, o$par, gradtol = 1e-10, steptol = 1e-12)
  -o$minimum
}

profile_range <- function(x, y, j, beta, se, top, firth) {
  drop <- function(v) 2 * (top - held(x, y, j, v, beta, firth)) - qchisq(0.95, 1)
  end <- function(way) {
    far <- beta[j] + way * se[j]
    while (drop(far) < 0) far <- far + way * se[j]
    uniroot(drop, sort(c(beta[j] + way * 1e-6 * se[j], far)), tol = 1e-10)$root
  }
  c(end(-1), end(1))
}

case <- function(id, name, scale, stored, firth = FALSE, keep = function(d) rep(TRUE, nrow(d))) {
  d <- read_season(name)
  d <- d[keep(d), ]
  x <- design(d, scale, stored)
  y <- as.numeric(d$outcome == "fruit")
  control <- if (firth) list(type = "AS_mean", epsilon = 1e-12, maxit = 1000) else list(epsilon = 1e-14, maxit = 200)
  f <- glm.fit(x, y, family = binomial(), control = if (firth) list() else control)
  if (firth) f <- brglmFit(x, y, family = binomial(), control = control)
  beta <- f$coefficients
  p <- plogis(drop(x %*% beta))
  se <- sqrt(diag(solve(crossprod(x, x * (p * (1 - p))))))
  top <- loglik(x, y, beta) + if (firth) penalty(x, beta) else 0
  ranges <- t(sapply(seq_along(beta), function(j) profile_range(x, y, j, beta, se, top, firth)))
  lr <- sapply(seq_along(beta), function(j) 2 * (top - held(x, y, j, 0, beta, firth)))
  ranks <- rank(p)
  ones <- sum(y)
  list(id = id, data = name, ageScale = scale, method = if (firth) "firth" else "maximum-likelihood",
       flowers = nrow(d), terms = colnames(x), estimate = unname(beta), se = unname(se), lower = ranges[, 1],
       upper = ranges[, 2], p = pchisq(pmax(lr, 0), 1, lower.tail = FALSE), logLik = loglik(x, y, beta),
       auc = (sum(ranks[y == 1]) - ones * (ones + 1) / 2) / (ones * (nrow(d) - ones)), brier = mean((y - p)^2))
}

both <- c("frozen", "refrigerated")
no_frozen_fruit <- function(d) !(d$storage == "frozen" & d$outcome == "fruit")
cases <- list(
  case("season150-log1p", "k-season150.csv", "log1p-days", both),
  case("season600-log1p", "k-season600.csv", "log1p-days", both),
  case("season600-days", "k-season600.csv", "days", both),
  case("season40-separated", "k-season40.csv", "log1p-days", both, TRUE, no_frozen_fruit)
)
out <- list(source = paste0("scripts/reference/fixed-model.R, ", R.version.string, ", brglm2 ", packageVersion("brglm2")),
            tolerance = list(estimate = 1e-6, ends = 1e-5, p = 1e-6), cases = cases)
writeLines(toJSON(out, digits = NA, auto_unbox = TRUE, pretty = TRUE), "test/reference/fixed-model.json")
