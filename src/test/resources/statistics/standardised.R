source("common.R")
# qbeta at the effective n; qgamma (Fay and Feuer, Tiwari); prop.test(correct = FALSE)$conf.int in every stratum (Yan and Su)
one <- function(x, n, N, conf) {
  line <- paste(paste(x, n, sprintf("%.17g", N)), collapse = ";")
  k <- N > 0; x <- x[k]; n <- n[k]; w <- N[k] / sum(N[k]); a <- 1 - conf; z <- qnorm(1 - a / 2)
  p <- x / n; y <- sum(w * p); if (all(x == n)) y <- 1
  v <- sum(w^2 * p * (1 - p) / n); vp <- sum((w / n)^2 * x); cc <- w / n
  ne <- if (v == 0) 1 / sum(w^2 / n) else min(sum(n), y * (1 - y) / v)
  xe <- y * ne
  lower <- if (y == 0) 0 else qbeta(a / 2, xe, ne - xe + 1); upper <- if (y == 1) 1 else qbeta(1 - a / 2, xe + 1, ne - xe)
  up <- function(m, s) qgamma(1 - a / 2, shape = (y + m)^2 / (vp + s), scale = (vp + s) / (y + m))
  wl <- NA; wu <- NA
  if (v > 0) {
    V <- p * (1 - p) / n; zs <- z * sqrt(sum(w^2 * V)) / sum(w * sqrt(V))
    l <- sapply(seq_along(x), function(i) { c0 <- (p[i] + zs^2 / 2 / n[i]) / (1 + zs^2 / n[i]); h <- zs * sqrt(V[i] + zs^2 / 4 / n[i]^2) / (1 + zs^2 / n[i])
      r <- suppressWarnings(prop.test(x[i], n[i], conf.level = 1 - 2 * pnorm(zs, lower.tail = FALSE), correct = FALSE)$conf.int)
      stopifnot(abs(r[1] - max(0, c0 - h)) < 1e-12, abs(r[2] - min(1, c0 + h)) < 1e-12)
      c(if (x[i] == 0) 0 else r[1], if (x[i] == n[i]) 1 else r[2]) })
    wl <- sum(w * l[1, ]); wu <- sum(w * l[2, ])
  }
  data.frame(strata = line, confidence = conf, estimate = y, lower = lower, upper = upper, crude = sum(x) / sum(n), effectiveN = ne,
    gammaLower = if (y == 0) 0 else qgamma(a / 2, shape = y^2 / vp, scale = vp / y), gammaUpper = up(max(cc), max(cc)^2),
    tiwariUpper = up(mean(cc), mean(cc^2)), wilsonLower = wl, wilsonUpper = wu)
}
rows <- rbind(
  one(c(0, 8, 63, 112, 262, 295), c(327, 30666, 123419, 149919, 104088, 34392), c(319933, 931318, 786511, 488235, 237863, 61313), .95),
  one(c(0, 0, 0), c(20, 30, 10), c(1, 2, 1), .95), one(c(20, 30), c(20, 30), c(1, 2), .95), one(c(0, 30), c(20, 30), c(1, 2), .95),
  one(c(1, 3, 2), c(20, 30, 10), c(1, 0, 2), .95), one(c(1, 3, 0), c(20, 30, 0), c(1, 2, 0), .9), one(c(3), c(40), c(7), .95),
  one(c(9, 10), c(10, 11), c(5, 1), .95), one(c(0, 1), c(6, 55), c(.5, .5), .95))
set.seed(26)
for (i in 1:50) { k <- sample(2:10, 1); n <- sample(c(5, 12, 30, 80, 250), k, TRUE)
  rows <- rbind(rows, one(rbinom(k, n, runif(k, 0, .25)), n, round(runif(k, 5, 900), i %% 3), c(.95, .9, .99)[1 + i %% 3])) }
write_vectors("standardised.csv", "standardised.R: qbeta, qgamma, prop.test(correct = FALSE)", rows)
