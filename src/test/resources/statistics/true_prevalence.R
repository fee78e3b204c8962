source("common.R")
# Known sensitivity and specificity: Blaker limits of proportion.R carried over; estimated: Lang and Reiczigel 2014 written out.
lines <- readLines("proportion.R")
eval(parse(text = lines[2:(grep("^pairs", lines) - 1)]))
cut01 <- function(v) pmin(1, pmax(0, v))
known <- function(x, n, se, sp, conf) {
  l <- limits(x, n, "BLAKER", conf); J <- se + sp - 1; raw <- (x / n + sp - 1) / J; l <- cut01((l + sp - 1) / J)
  data.frame(detected = x, tested = n, sensitivity = se, specificity = sp, confidence = conf, raw = raw, estimate = cut01(raw), lower = l[1],
    upper = l[2], standardError = sqrt(x / n * (1 - x / n) / n) / J)
}
estimated <- function(x, n, xse, nse, xsp, nsp, conf) {
  z <- qnorm(1 - (1 - conf) / 2); se <- xse / nse; sp <- xsp / nsp; raw <- (x / n + sp - 1) / (se + sp - 1); J <- se + sp - 1
  error <- sqrt((x / n * (1 - x / n) / n + raw^2 * se * (1 - se) / nse + (1 - raw)^2 * sp * (1 - sp) / nsp) / J^2)
  N <- n + z^2; ap <- (x + z^2 / 2) / N; s <- (xse + 1) / (nse + 2); p <- (xsp + 1) / (nsp + 2)
  tp <- (ap + p - 1) / (s + p - 1)
  dtp <- 2 * z^2 * (tp * s * (1 - s) / (nse + 2) - (1 - tp) * p * (1 - p) / (nsp + 2))
  sd <- sqrt(ap * (1 - ap) / N + tp^2 * s * (1 - s) / (nse + 2) + (1 - tp)^2 * p * (1 - p) / (nsp + 2)) / (s + p - 1)
  l <- if (s + p <= 1) c(NA, NA) else cut01(tp + dtp + c(-1, 1) * z * sd)
  data.frame(detected = x, tested = n, truePositives = xse, infected = nse, trueNegatives = xsp, uninfected = nsp, confidence = conf, raw = raw,
    estimate = cut01(raw), lower = l[1], upper = l[2], standardError = error)
}
set.seed(25)
rows <- rbind(known(23, 150, .96, .89, .95), known(6, 151, .964, .927, .95), known(20, 120, .9, .99, .95), known(2, 78, .5, .995, .95),
  known(4, 130, .5, .995, .95), known(8, 78, .5, .995, .95), known(12, 260, .5, .995, .95), known(27, 650, .5, .995, .95), known(0, 40, .92, 1, .95),
  known(40, 40, .92, 1, .95), known(0, 40, .92, .95, .95), known(0, 400, .9, .9, .95), known(5, 5, 1, 1, .95))
for (i in 1:50) { n <- sample(c(3, 20, 70, 240, 800), 1); se <- round(runif(1, .45, 1), 3); sp <- round(runif(1, max(.6, 1.02 - se), 1), 3)
  rows <- rbind(rows, known(rbinom(1, n, runif(1, 0, .7)), n, se, sp, c(.95, .9, .99)[1 + i %% 3])) }
write_vectors("true-prevalence-known.csv", "true_prevalence.R: roots of pbinom (Blaker), Rogan-Gladen", rows)
rows <- rbind(estimated(12, 200, 90, 100, 196, 200, .95), estimated(5, 20, 1, 1, 1, 100, .95), estimated(0, 50, 30, 30, 60, 60, .95))
for (i in 1:55) { n <- sample(c(3, 20, 70, 240, 800), 1); m <- sample(c(10, 40, 200), 2, TRUE)
  xse <- min(m[1], 1 + rbinom(1, m[1], runif(1, .6, 1))); xsp <- min(m[2], 1 + rbinom(1, m[2], runif(1, .7, 1)))
  if (xse / m[1] + xsp / m[2] <= 1) next
  rows <- rbind(rows, estimated(rbinom(1, n, runif(1, 0, .7)), n, xse, m[1], xsp, m[2], c(.95, .9, .99)[1 + i %% 3])) }
write_vectors("true-prevalence-estimated.csv", "true_prevalence.R: Lang and Reiczigel's formula in plain R", rows)
