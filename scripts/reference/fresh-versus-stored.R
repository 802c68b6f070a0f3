# Reference values of freshVersusStored's conditional odds ratio: fresh ÷ one stored method, within pairs, no age term.
#   Rscript scripts/reference/fresh-versus-stored.R      (from the project's folder)
suppressMessages(library(survival))
library(jsonlite)

METHODS <- c(fridge = "refrigerated", freezer = "frozen")

case <- function(name, method) {
  d <- read.csv(file.path("test/reference", name), na.strings = "", stringsAsFactors = FALSE)
  d <- d[d$outcome %in% c("fruit", "failed") & d$storage %in% c("fresh", method), ]
  d$pair <- paste(d$mother, "x", d$father)
  d$y <- as.numeric(d$outcome == "fruit")
  d$fresh <- as.numeric(d$storage == "fresh")
  f <- clogit(y ~ fresh + strata(pair), d, method = "exact", control = coxph.control(eps = 1e-11, toler.chol = 1e-13, iter.max = 100))
  both <- tapply(d$fresh, d$pair, function(x) length(unique(x)) == 2)
  told <- both & tapply(d$y, d$pair, function(y) length(unique(y)) == 2)
  z <- qnorm(0.975)
  b <- unname(coef(f)); se <- unname(sqrt(vcov(f)[1, 1]))
  list(data = name, storage = unname(METHODS[method]), estimate = exp(b), lower = exp(b - z * se),
       upper = exp(b + z * se), pairsWithBoth = sum(both), informativePairs = sum(told))
}

names <- paste0("k-season", c(40, 150, 600, 5000), ".csv")
cases <- unlist(lapply(names, function(n) lapply(names(METHODS), function(m) case(n, m))), recursive = FALSE)
out <- list(source = paste0("scripts/reference/fresh-versus-stored.R, ", R.version.string, ", survival ",
                            packageVersion("survival"), " clogit(method = 'exact')"),
            tolerance = 1e-7, cases = cases)
writeLines(toJSON(out, digits = NA, auto_unbox = TRUE, pretty = TRUE), "test/reference/fresh-versus-stored.json")
