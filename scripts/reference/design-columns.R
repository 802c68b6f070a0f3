# Reference values of designs from typed columns and of AIC: model.matrix, splines::ns, glm.
#   Rscript scripts/reference/design-columns.R      (from the project's folder)
library(splines)
library(jsonlite)

# Natural splines, values outside the boundary knots among them.
x <- c(-5, 0, 1, 2.5, 7, 14, 30, 30.5, 60, 90, 120, 180, 365, 400)
spline <- function(knots, boundary) {
  basis <- ns(x, knots = if (length(knots)) knots else NULL, Boundary.knots = boundary)
  list(knots = as.list(knots), boundary = boundary, columns = unname(lapply(seq_len(ncol(basis)), function(k) basis[, k])))
}
splines <- list(spline(c(7, 60), c(0, 365)), spline(numeric(0), c(0, 365)), spline(30, range(x)),
                spline(c(1, 2, 10, 50, 200), c(-10, 500)))

# An invented season of 60 rows; every value follows from the row's number.
i <- 0:59
d <- data.frame(storage = c("fresh", "frozen", "room")[1 + (i * 7) %% 3], mother = c("M1", "M2", "M3", "M4")[1 + (i * i) %% 4],
                age = ifelse((i * 7) %% 3 == 0, 0, (i * 13) %% 41), weight = ((i * 29) %% 17) / 4, n = 1 + i %% 4)
d$y <- pmin(d$n, (i * 31) %% 5)
d$storage <- factor(d$storage, levels = c("fresh", "room", "frozen"))
d$mother <- factor(d$mother)

model <- function(id, formula) {
  m <- model.matrix(formula, d)
  f <- glm(update(formula, cbind(y, n - y) ~ .), binomial, d, control = list(epsilon = 1e-14, maxit = 100))
  dropped <- names(coef(f))[is.na(coef(f))]
  beta <- coef(f)[!is.na(coef(f))]
  list(id = id, formula = deparse(formula), names = colnames(m), rows = lapply(c(1, 2, 3, 30, 60), function(r) unname(m[r, ])),
       dropped = as.list(dropped), coefficients = as.list(beta), logLik = as.numeric(logLik(f)), aic = AIC(f))
}
models <- list(
  model("factors", ~ storage + mother),
  model("interaction", ~ storage + weight + storage:weight),
  model("two factors", ~ storage * mother),
  model("three", ~ storage * weight * mother),
  model("log", ~ storage + log1p(age)),
  model("within", ~ storage + storage:log1p(age)),
  model("spline", ~ storage + ns(weight, knots = c(1, 2.5), Boundary.knots = c(0, 4))),
  model("no intercept", ~ storage + weight - 1)
)
out <- list(source = paste0("scripts/reference/design-columns.R, ", R.version.string, ", splines ", packageVersion("splines")),
            tolerance = list(columns = 1e-12, coefficients = 1e-8, aic = 1e-9), x = x, splines = splines,
            data = list(storage = as.character(d$storage), mother = as.character(d$mother), age = d$age,
                        weight = d$weight, n = d$n, y = d$y),
            models = models)
writeLines(toJSON(out, digits = NA, auto_unbox = TRUE, pretty = TRUE), "test/reference/design-columns.json")
