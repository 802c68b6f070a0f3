# Three seasons of two growers, every flower with seed parent, pollen parent, pair, vial, morning, season and grower:
# test/reference/seven-effects.csv, and lme4's fits of several combinations of these effects, seven-effects.json.
#   Rscript scripts/reference/seven-effects.R      (from the project's folder)
# lme4 with its inner tolerance at 1e-12 (its default is good to 1e-2 only), optimised twice by bobyqa.
suppressMessages(library(lme4))
library(jsonlite)
set.seed(20260)

n <- 420
grower <- sample(c("Ada", "Bo", "Cy", "Di"), n, replace = TRUE)
season <- sample(c("2023", "2024", "2025", "2026"), n, replace = TRUE)
mother <- paste0("M", sample(14, n, replace = TRUE, prob = 14:1))
father <- paste0("F", sample(9, n, replace = TRUE))
pair <- paste(mother, father, sep = " x ")
vial <- paste0("V", as.integer(factor(father)) * 10 + sample(3, n, replace = TRUE))
morning <- paste(season, sample(8, n, replace = TRUE), sep = "-")
stored <- rbinom(n, 1, 0.5)
draw <- function(labels, sd) { u <- rnorm(length(unique(labels)), 0, sd); u[match(labels, unique(labels))] }
eta <- 0.6 - 0.9 * stored + draw(mother, 0.8) + draw(father, 0.5) + draw(pair, 0.6) + draw(vial, 0.5) +
  draw(morning, 0.7) + draw(season, 0.6) + draw(grower, 0.7)
d <- data.frame(fruit = rbinom(n, 1, plogis(eta)), stored, seedParent = mother, pollenParent = father, pair, vial, morning, season, grower)
write.csv(d, "test/reference/seven-effects.csv", row.names = FALSE, quote = FALSE)

fit_groups <- function(groups) {
  formula <- as.formula(paste("fruit ~ stored +", paste0("(1 | ", groups, ")", collapse = " + ")))
  control <- glmerControl(optimizer = "bobyqa", tolPwrss = 1e-12, optCtrl = list(rhoend = 1e-9, maxfun = 2e5),
                          check.conv.grad = "ignore", check.conv.singular = "ignore", check.nlev.gtr.1 = "ignore")
  fit <- glmer(formula, d, family = binomial, control = control)
  fit <- update(fit, start = list(theta = getME(fit, "theta"), fixef = fixef(fit)))
  variance <- sapply(VarCorr(fit), function(v) as.numeric(v))
  modes <- ranef(fit, condVar = TRUE)[[groups[1]]]
  list(groups = I(groups), estimate = unname(fixef(fit)), se = unname(sqrt(diag(as.matrix(vcov(fit))))),
       sd = as.list(sqrt(variance[groups])), logLik = as.numeric(logLik(fit)),
       levels = rownames(modes), modes = modes[[1]], modeErrors = sqrt(as.numeric(attr(modes, "postVar"))))
}

all <- c("seedParent", "pollenParent", "pair", "vial", "morning", "season", "grower")
cases <- list(
  fit_groups(all), fit_groups(setdiff(all, "pair")), fit_groups(c("vial", "morning", "season")),
  fit_groups(c("grower", "season")), fit_groups(c("seedParent", "pollenParent", "morning")), fit_groups(c("pair", "grower")),
  fit_groups("vial"))
write_json(list(
  source = paste0("scripts/reference/seven-effects.R, ", R.version.string, ", lme4 ", packageVersion("lme4")),
  tolerance = list(estimate = 1e-4, se = 1e-3, sd = 1e-3, logLik = 1e-5, modes = 1e-3), cases = cases),
  "test/reference/seven-effects.json", pretty = FALSE, auto_unbox = TRUE, digits = 10)
for (case in cases) { cat(case$groups, "\n"); print(unlist(case$sd)); cat(case$logLik, case$estimate, "\n") }
