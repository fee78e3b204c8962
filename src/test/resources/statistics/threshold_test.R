source("common.R")
# binom.test(x, n, p, alternative)$p.value
set.seed(21)
rows <- NULL
for (i in 1:60) {
  n <- sample(c(1, 5, 12, 40, 150, 600), 1); p <- round(runif(1, 0.005, 0.6), 3); x <- rbinom(1, n, min(1, p * runif(1, 0, 2.5)))
  rows <- rbind(rows, data.frame(detected = x, tested = n, threshold = p, twoSided = binom.test(x, n, p)$p.value,
    less = binom.test(x, n, p, "less")$p.value, greater = binom.test(x, n, p, "greater")$p.value))
}
write_vectors("threshold-test.csv", "threshold_test.R: binom.test(x, n, p, alternative)$p.value", rows)
