# Reference values of models.parents: fruit ~ storage + age within each stored method + each pair's shares and mean
# ages, with crossed effects of seed parent, pollen parent, pair and morning.
#   Rscript scripts/reference/parents-model.R      (from the project's folder)
# lme4 with its inner tolerance at 1e-12 (its default is good to 1e-2 only), optimised twice by bobyqa.
suppressMessages(library(lme4))
library(jsonlite)

read_season <- function(name) {
  d <- read.csv(file.path("test/reference", name), na.strings = "", stringsAsFactors = FALSE)
  d <- d[d$outcome %in% c("fruit", "failed"), ]
  d$storage <- c(fresh = "fresh", fridge = "refrigerated", freezer = "frozen")[d$storage]
  d$age <- as.numeric(as.Date(d$date_pollinated) - as.Date(d$pollen_collected))
  d$age[d$storage == "fresh"] <- 0
  d <- d[!is.na(d$age), ]
  d$pair <- paste(d$mother, d$father, sep = " x ")
  d
}

# Days are counted in hundreds while fitting, for the optimiser's sake.
fit_parents <- function(data, scale) {
  d <- read_season(data)
  unit <- if (scale == "days") 100 else 1
  term <- if (scale == "days") d$age / unit else log1p(d$age)
  x <- list()
  for (s in c("frozen", "refrigerated")) {
    is <- as.numeric(d$storage == s)
    x[[paste("storage:", s)]] <- is
    x[[paste("age:", s)]] <- is * term
    x[[paste("share:", s)]] <- ave(is, d$pair)
    x[[paste("mean age:", s)]] <- ave(is * term, d$pair)
  }
  names <- names(x)
  for (j in seq_along(x)) d[[paste0("x", j)]] <- x[[j]]
  formula <- as.formula(paste(
    "outcome == 'fruit' ~", paste0("x", seq_along(x), collapse = " + "),
    "+ (1 | mother) + (1 | father) + (1 | pair) + (1 | date_pollinated)"))
  control <- glmerControl(optimizer = "bobyqa", tolPwrss = 1e-12, optCtrl = list(rhoend = 1e-9, maxfun = 2e5),
                          check.conv.grad = "ignore", check.conv.singular = "ignore")
  fit <- glmer(formula, d, family = binomial, control = control)
  fit <- update(fit, start = list(theta = getME(fit, "theta"), fixef = fixef(fit)))
  per <- ifelse(grepl("^(mean )?age: ", c("(Intercept)", names)), unit, 1)
  variance <- sapply(VarCorr(fit), function(v) as.numeric(v))
  list(
    id = paste(sub(".csv", "", data), scale), data = data, ageScale = if (scale == "days") "days" else "log1p-days",
    flowers = nrow(d), terms = c("(Intercept)", names),
    estimate = unname(fixef(fit)) / per, se = unname(sqrt(diag(as.matrix(vcov(fit))))) / per,
    sd = list(seedParent = sqrt(variance[["mother"]]), pollenParent = sqrt(variance[["father"]]),
              pair = sqrt(variance[["pair"]]), morning = sqrt(variance[["date_pollinated"]])),
    seedParents = rownames(ranef(fit)$mother), seedParentModes = ranef(fit)$mother[[1]],
    logLik = as.numeric(logLik(fit)))
}

cases <- list(fit_parents("k-season600.csv", "log1p"), fit_parents("k-season600.csv", "days"))
write_json(list(
  source = paste0("scripts/reference/parents-model.R, ", R.version.string, ", lme4 ", packageVersion("lme4")),
  tolerance = list(estimate = 1e-3, se = 3e-3, sd = 1e-3, logLik = 1e-4), cases = cases),
  "test/reference/parents-model.json", pretty = TRUE, auto_unbox = TRUE, digits = 10)
