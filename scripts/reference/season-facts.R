# Reference values of the keys seasons, fruitSet, waves, controls, reciprocal, seeds and of the sizes behind settle, from
# test/reference/three-seasons.csv (a copy of an invented grower's file).
#   Rscript scripts/reference/season-facts.R      (from the project's folder)
library(jsonlite)
library(MASS)
z <- qnorm(0.975)

wilson <- function(x, n) as.numeric(prop.test(x, n, correct = FALSE)$conf.int)
rate <- function(fruit) {
  w <- suppressWarnings(wilson(sum(fruit), length(fruit)))
  list(fruits = sum(fruit), flowers = length(fruit), lower = w[1], upper = w[2])
}
# Newcombe (1998) Stat Med 17:873, method 10
newcombe <- function(x1, n1, x2, n2) {
  a <- suppressWarnings(wilson(x1, n1)); b <- suppressWarnings(wilson(x2, n2)); p <- x1 / n1; q <- x2 / n2
  c(p - q - sqrt((p - a[1])^2 + (b[2] - q)^2), p - q + sqrt((a[2] - p)^2 + (q - b[1])^2))
}
# Mantel-Haenszel risk difference with Sato's (1989) variance; odds ratio by mantelhaen.test
stratified <- function(a, n1, c, n2) {
  n <- n1 + n2; w <- sum(n1 * n2 / n)
  d <- sum((a * n2 - c * n1) / n) / w
  P <- sum((n1^2 * c - n2^2 * a + n1 * n2 * (n2 - n1) / 2) / n^2)
  Q <- sum((a * (n2 - c) / n + c * (n1 - a) / n) / 2)
  half <- z * sqrt((d * P + Q) / w^2)
  keep <- (a + c) > 0 & (a + c) < n
  tables <- array(rbind(a, c, n1 - a, n2 - c)[, keep], c(2, 2, sum(keep)))
  mh <- mantelhaen.test(tables, correct = FALSE)
  list(difference = d, lower = d - half, upper = d + half, oddsRatio = unname(mh$estimate),
       oddsLower = mh$conf.int[1], oddsUpper = mh$conf.int[2], strata = length(a), informative = sum(keep))
}

d <- read.csv("test/reference/three-seasons.csv", colClasses = "character", na.strings = NULL)
known <- d[!d$outcome %in% c("unknown", "pending"), ]
known$fruit <- as.integer(known$outcome != "none")
f <- known[known$control == "", ]
f$stratum <- paste(f$seed_parent, f$pollen_parent, f$storage, sep = "|")

change <- function(from, to) {
  e <- f[f$season == from, ]; l <- f[f$season == to, ]
  both <- intersect(e$stratum, l$stratum)
  count <- function(x) sapply(both, function(s) sum(x$fruit[x$stratum == s]))
  size <- function(x) sapply(both, function(s) sum(x$stratum == s))
  ends <- newcombe(sum(l$fruit), nrow(l), sum(e$fruit), nrow(e))
  list(from = from, to = to, earlier = rate(e$fruit), later = rate(l$fruit), lower = ends[1], upper = ends[2],
       likeForLike = stratified(count(l), size(l), count(e), size(e)))
}

# Initial and final fruit set: what dropped is none at harvest, a fruit without a harvest date still hangs.
hanging <- f$outcome == "fruit" & f$harvested_on == ""
final <- as.integer(f$outcome == "fruit")[!hanging]
kept <- as.integer(f$outcome == "fruit")[!hanging & f$outcome != "none"]

# Abbott's formula, 1 - failures / failures of the control: each end is where the MOVER difference has an end at zero.
mover <- function(x1, n1, x2, n2) {
  a <- suppressWarnings(wilson(x1, n1)); b <- suppressWarnings(wilson(x2, n2)); p <- x1 / n1; q <- x2 / n2
  low <- function(r) p - r * q - sqrt((p - a[1])^2 + r^2 * (b[2] - q)^2)
  high <- function(r) p - r * q + sqrt((a[2] - p)^2 + r^2 * (q - b[1])^2)
  c(p / q, uniroot(low, c(0, p / q), tol = 1e-14)$root, uniroot(high, c(p / q, 100), tol = 1e-14)$root)
}
unpollinated <- known[known$control == "unpollinated", ]
corrected <- lapply(c("fresh", "frozen", "refrigerated"), function(s) {
  own <- f$fruit[f$storage == s]
  r <- mover(sum(1 - own), length(own), sum(1 - unpollinated$fruit), nrow(unpollinated))
  list(storage = s, estimate = 1 - r[1], lower = 1 - r[3], upper = 1 - r[2])
})

# Seeds: glm.nb over all counted fruits; germination: beta-binomial likelihood over all lots, maximised here.
fruits <- f[f$outcome == "fruit" & f$seeds != "", ]
seeds <- as.numeric(fruits$seeds)
nb <- glm.nb(seeds ~ 1, control = glm.control(epsilon = 1e-14, maxit = 200))
se <- sqrt(vcov(nb)[1, 1])
lots <- f[f$sown != "" & f$germinated != "", ]
g <- as.numeric(lots$germinated); m <- as.numeric(lots$sown)
loglik <- function(par) {
  p <- plogis(par[1]); rho <- plogis(par[2]); s <- 1 / rho - 1
  -sum(lchoose(m, g) + lbeta(g + s * p, m - g + s * (1 - p)) - lbeta(s * p, s * (1 - p)))
}
fit <- optim(c(1, -4), loglik, control = list(reltol = 1e-16, maxit = 10000))
fit <- optim(fit$par, loglik, control = list(reltol = 1e-16, maxit = 10000))
rho <- plogis(fit$par[2])
share <- sum(g) / sum(m)
variance <- sum(m * share * (1 - share) * (1 + (m - 1) * rho)) / sum(m)^2
logit <- qlogis(share) + c(-1, 1) * z * sqrt(variance) / (share * (1 - share))
fs <- rate(final)
parts <- rbind(c(fs$fruits / fs$flowers, fs$lower, fs$upper), c(mean(seeds), exp(coef(nb) + c(-1, 1) * z * se)),
               c(share, plogis(logit)))
product <- prod(parts[, 1])
log_end <- function(k, sign) product * exp(sign * sqrt(sum((log(parts[, k]) - log(parts[, 1]))^2)))

# Smallest number of flowers, twelve in a row enough, whose Wilson range leaves out `line` with a chance of 80 %.
power <- function(n, p, line, level) {
  out <- sapply(0:n, function(x) {
    ci <- suppressWarnings(prop.test(x, n, correct = FALSE, conf.level = level)$conf.int)
    ci[1] > line + 1e-12 || ci[2] < line - 1e-12
  })
  sum(dbinom(0:n, n, p)[out])
}
enough <- function(p, line, level = 0.95) {
  ok <- sapply(1:160, power, p = p, line = line, level = level) >= 0.8
  which(sapply(1:149, function(n) all(ok[n:(n + 11)])))[1]
}
sizes <- list(c(0.5, 0.3, 0.95), c(0.1, 0.3, 0.95), c(0.4, 0.2, 0.95), c(0.9, 0.7, 0.95), c(0.5, 0.3, 0.9), c(0.65, 0.45, 0.95))

out <- list(
  source = paste0("scripts/reference/season-facts.R, ", R.version.string, ", MASS ", packageVersion("MASS")),
  tolerance = "1e-9 relative; lotCorrelation and what rests on it 1e-5",
  changes = list(change("2023", "2024"), change("2024", "2025")),
  fruitSet = list(initial = rate(f$fruit), final = fs, kept = rate(kept)),
  corrected = corrected,
  seeds = list(theta = nb$theta, fruits = length(seeds), seeds = sum(seeds), lower = exp(coef(nb)[[1]] - z * se),
               upper = exp(coef(nb)[[1]] + z * se)),
  germination = list(lots = length(m), germinated = sum(g), sown = sum(m), correlation = rho, lower = plogis(logit)[1],
                     upper = plogis(logit)[2]),
  seedAFlower = list(estimate = product, lower = log_end(2, -1), upper = log_end(3, 1)),
  sizes = lapply(sizes, function(s) list(probability = s[1], line = s[2], level = s[3], trials = enough(s[1], s[2], s[3])))
)
writeLines(toJSON(out, digits = NA, auto_unbox = TRUE, pretty = TRUE), "test/reference/season-facts.json")
