source("common.R")
# dhyper(y, d, N - d, n) against (1 - Se)^y; sample sizes by trying every n from 1 up
hit <- function(N, d, n, se) { y <- 0:min(n, d); sum(dhyper(y, d, N - d, n) * (1 - (1 - se)^y)) }
size <- function(N, d, P, f, se, conf) {
  all <- sapply(1:N, function(n) hit(N, d, n, se)); k <- which(all >= conf - 1e-12); required <- if (length(k)) min(k) else NA
  share <- 1 - (1 - conf)^(1 / f); w <- ceiling(N / se * share - 1e-12 * N)
  data.frame(population = N, infected = d, designPrevalence = P, sensitivity = se, confidence = conf, required = required,
    achieved = all[if (is.na(required)) N else required], cannonRoe = ceiling(share * (N - (f - 1) / 2) - 1e-12 * N), withSensitivity = if (w > N) NA else w,
    infinitePopulation = { q <- if (is.na(P)) d / N else P; if (q * se >= 1) 1 else ceiling(log(1 - conf) / log(1 - q * se) - 1e-9) })
}
rows <- NULL
for (N in c(20, 50, 100, 500, 1000)) for (P in c(.5, .2, .1, .05, .02, .01, .005)) rows <- rbind(rows, size(N, max(1, floor(N * P + 1e-9)), P, max(1, N * P), 1, .95))
set.seed(27)
for (i in 1:60) { N <- sample(c(1, 2, 9, 40, 150, 600, 1500), 1); d <- min(N, sample(c(1, 2, 3, 7, 20, 90), 1)); se <- c(1, .92, .7, .3)[1 + i %% 4]
  conf <- c(.95, .99, .8, .5)[1 + (i %/% 4) %% 4]; rows <- rbind(rows, size(N, d, NA, d, se, conf)) }
for (P in c(.29, .07, .57)) rows <- rbind(rows, size(100, round(100 * P), P, 100 * P, .9, .95))
write_vectors("sample-size.csv", "detection.R: dhyper, every n tried", rows)

detection <- function(N, d, n, se, sp) {
  y <- 0:min(n, d); hy <- dhyper(y, d, N - d, n)
  T <- sapply(0:n, function(t) sum(sapply(seq_along(y), function(k) { j <- 0:min(y[k], t); hy[k] * sum(dbinom(j, y[k], se) * dbinom(t - j, n - y[k], 1 - sp)) })))
  data.frame(population = N, infected = d, tested = n, sensitivity = se, specificity = sp,
    probability = sum(hy * -expm1(y * log1p(-se) + (n - y) * log(sp))), probabilityTrue = hit(N, d, n, se), probabilityIfAbsent = 1 - sp^n,
    macDiarmid = if (n * se > N) NA else 1 - (1 - n * se / N)^d, binomial = 1 - (1 - d / N * se)^n,
    byDetected = paste(sprintf("%.17g", T), collapse = " "))
}
rows <- rbind(detection(10, 0, 5, .9, 1), detection(10, 3, 0, .9, .98), detection(10, 10, 10, .9, .98), detection(10, 3, 10, .9, .98), detection(100, 1, 100, .5, 1))
for (i in 1:55) { N <- sample(c(2, 9, 40, 150, 600, 5000), 1); rows <- rbind(rows, detection(N, min(N, sample(c(0, 1, 2, 5, 20, 90), 1)), min(N, sample(c(1, 5, 20, 80, 300), 1)),
  c(.999, .92, .7, .3)[1 + i %% 4], c(1, .995, .95)[1 + i %% 3])) }
rows$probability[rows$sensitivity == 1] <- rows$probability[rows$sensitivity == 1]
write_vectors("detection.csv", "detection.R: dhyper, dbinom", rows)

rows <- NULL
for (n in c(1, 2, 5, 10, 30, 60, 149, 299, 300, 1000, 3000, 20000)) for (conf in c(.5, .8, .9, .95, .99))
  rows <- rbind(rows, data.frame(tested = n, confidence = conf, oneSided = unname(binom.test(0, n, alternative = "less", conf.level = conf)$conf.int[2]),
    twoSided = binom.test(0, n, conf.level = conf)$conf.int[2]))
write_vectors("none-detected.csv", "detection.R: binom.test(0, n, alternative, conf.level)$conf.int", rows)
