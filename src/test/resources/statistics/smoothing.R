source("common.R")
# Martuzzi and Elliott's moments; qbeta
line <- function(v) paste(ifelse(is.na(v), "NA", sprintf("%.17g", v)), collapse = " ")
one <- function(x, n, conf) {
  u <- n > 0; m <- sum(x) / sum(n); nb <- mean(n[u]); s2 <- sum(n[u] * (x[u] / n[u] - m)^2) / sum(n); A <- if (nb == 1) NA else (nb * s2 - m * (1 - m)) / (nb - 1)
  told <- !is.na(A) && A > 0; M <- if (told) m * (1 - m) / A - 1 else NA
  a <- M * m + x; b <- M * (1 - m) + n - x
  t <- (1 - conf) / 2
  data.frame(units = paste(paste(x, n), collapse = ";"), confidence = conf, pooled = m, priorSize = M,
    smoothed = line(if (told) (M * m + x) / (M + n) else rep(m, length(x))), lower = line(if (told) qbeta(t, a, b) else rep(NA, length(x))), upper = line(if (told) qbeta(1 - t, a, b) else rep(NA, length(x))))
}
rows <- rbind(one(c(0, 0, 0), c(10, 20, 5), .95), one(c(1, 0, 1, 0), c(1, 1, 1, 1), .95), one(c(2, 2, 2), c(20, 20, 20), .95), one(c(1, 0, 9), c(4, 0, 30), .95), one(c(3), c(30), .95))
set.seed(31)
for (i in 1:55) { k <- sample(3:15, 1); n <- sample(c(0, 2, 4, 15, 60, 200), k, TRUE, c(1, 2, 3, 4, 4, 3)); if (sum(n) == 0) next; rows <- rbind(rows, one(rbinom(k, n, rbeta(k, 1.5, 12)), n, c(.95, .9, .8)[1 + i %% 3])) }
write_vectors("smoothing.csv", "smoothing.R: moments, qbeta", rows)
