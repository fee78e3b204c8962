source("common.R")
# mantelhaen.test(array, correct = FALSE, conf.level): odds ratio, interval (Robins-Breslow-Greenland) and statistic, where it is defined;
# risk ratio, risk difference, Breslow-Day and Tarone written out here from their publications.
one <- function(m, conf) {
  z <- qnorm(1 - (1 - conf) / 2)
  line <- paste(apply(m, 1, paste, collapse = " "), collapse = ";")
  m <- m[rowSums(m) > 0, , drop = FALSE]
  a <- m[, 1]; b <- m[, 2]; c <- m[, 3]; d <- m[, 4]; n1 <- a + b; n0 <- c + d; m1 <- a + c; m0 <- b + d; n <- n1 + n0
  A <- sum(a); B <- sum(b); C <- sum(c); D <- sum(d)
  r <- data.frame(strata = line, confidence = conf, crude = if (A * D == 0 && B * C == 0) NA else A * D / (B * C))
  R <- sum(a * d / n); S <- sum(b * c / n)
  psi <- if (R == 0 && S == 0) NA else R / S
  r$oddsRatio <- psi
  ok <- R > 0 && S > 0
  cmh <- sum(n1 * n0 * m1 * m0 / n^2 / pmax(n - 1, 1))
  array3 <- array(rbind(a, b, c, d)[, n >= 2, drop = FALSE], c(2, 2, sum(n >= 2)))
  lower <- NA; upper <- NA; stat <- if (cmh == 0) NA else sum(a - n1 * m1 / n)^2 / cmh
  if (ok) {
    P <- (a + d) / n; Q <- (b + c) / n; Rk <- a * d / n; Sk <- b * c / n
    se <- sqrt(sum(P * Rk) / (2 * R^2) + sum(P * Sk + Q * Rk) / (2 * R * S) + sum(Q * Sk) / (2 * S^2))
    lower <- exp(log(psi) - z * se); upper <- exp(log(psi) + z * se); r$oddsRatioErrorLog <- se
    if (sum(n >= 2) >= 2 && all(n >= 2)) {
      t <- mantelhaen.test(array3, correct = FALSE, conf.level = conf)
      stopifnot(all.equal(unname(t$estimate), psi, tolerance = 1e-12), all.equal(t$conf.int[1:2], c(lower, upper), tolerance = 1e-11),
        all.equal(unname(t$statistic), stat, tolerance = 1e-12))
      stat <- unname(t$statistic); lower <- t$conf.int[1]; upper <- t$conf.int[2]
    }
  } else r$oddsRatioErrorLog <- NA
  r$oddsRatioLower <- lower; r$oddsRatioUpper <- upper; r$cmh <- stat; r$cmhP <- pchisq(stat, 1, lower.tail = FALSE)
  num <- sum(a * n0 / n); den <- sum(c * n1 / n)
  r$riskRatio <- if (den == 0) NA else num / den
  se <- sqrt(pmax(0, sum(m1 * n1 * n0 / n^2 - a * c / n)) / (num * den))
  r$riskRatioLower <- if (den == 0 || num == 0) NA else exp(log(num / den) - z * se)
  r$riskRatioUpper <- if (den == 0 || num == 0) NA else exp(log(num / den) + z * se)
  W <- sum(n1 * n0 / n)
  rd <- if (W == 0) NA else sum(a * n0 / n - c * n1 / n) / W
  v <- sum(rd * (c * (n1 / n)^2 - a * (n0 / n)^2 + (n1 / n) * (n0 / n) * (n0 - n1) / 2) + (a * (n0 - c) / n + c * (n1 - a) / n) / 2) / W^2
  r$riskDifference <- rd; r$riskDifferenceError <- if (W == 0) NA else sqrt(max(0, v))
  r$bdt <- NA; r$bdtDf <- NA; r$bdtP <- NA
  k <- n1 > 0 & n0 > 0 & m1 > 0 & m0 > 0
  if (ok && sum(k) >= 2) {
    E <- sapply(which(k), function(i) root(function(x) x * (n0[i] - m1[i] + x) - psi * (n1[i] - x) * (m1[i] - x), max(0, m1[i] - n0[i]), min(n1[i], m1[i])))
    V <- 1 / (1 / E + 1 / (n1[k] - E) + 1 / (m1[k] - E) + 1 / (n0[k] - m1[k] + E))
    r$bdt <- max(0, sum((a[k] - E)^2 / V) - sum(a[k] - E)^2 / sum(V)); r$bdtDf <- sum(k) - 1; r$bdtP <- pchisq(r$bdt, r$bdtDf, lower.tail = FALSE)
  }
  r
}
berkeley <- t(apply(UCBAdmissions, 3, function(s) c(s["Admitted", "Male"], s["Rejected", "Male"], s["Admitted", "Female"], s["Rejected", "Female"])))
# Trials of BCG vaccine (Colditz and others 1994, JAMA 271:698-702): cases and others, vaccinated then not
bcg <- rbind(c(4, 119, 11, 128), c(6, 300, 29, 274), c(3, 228, 11, 209), c(62, 13536, 248, 12619), c(33, 5036, 47, 5761), c(180, 1361, 372, 1079),
  c(8, 2537, 10, 619), c(505, 87886, 499, 87892), c(29, 7470, 45, 7232), c(17, 1699, 65, 1600), c(186, 50448, 141, 27197), c(5, 2493, 3, 2338), c(27, 16886, 29, 17825))
rows <- rbind(one(rbind(c(4, 52, 34, 754), c(25, 83, 171, 853))[, c(1, 3, 2, 4)], .95), one(berkeley, .95), one(bcg, .95),
  one(rbind(c(0, 5, 3, 7), c(0, 9, 2, 8)), .95), one(rbind(c(3, 5, 0, 7), c(2, 9, 0, 8)), .95), one(rbind(c(0, 5, 0, 7), c(0, 9, 0, 8)), .95),
  one(rbind(c(2, 5, 3, 7)), .95), one(rbind(c(2, 5, 3, 7), c(0, 0, 0, 0)), .9), one(rbind(c(2, 5, 3, 7), c(1, 0, 0, 0), c(4, 6, 1, 9)), .9),
  one(rbind(c(2, 5, 0, 0), c(0, 0, 3, 4)), .9), one(rbind(c(2, 5, 3, 7), c(0, 4, 0, 6), c(4, 6, 1, 9), c(3, 0, 4, 0)), .99), one(rbind(c(1, 0, 0, 1)), .95))
set.seed(24)
for (i in 1:50) {
  k <- sample(1:7, 1); n1 <- sample(c(2, 8, 25, 90, 300), k, TRUE); n0 <- sample(c(2, 8, 25, 90, 300), k, TRUE)
  a <- rbinom(k, n1, runif(k, 0, .5)); c <- rbinom(k, n0, runif(k, 0, .5))
  rows <- rbind(rows, one(cbind(a, n1 - a, c, n0 - c), c(.95, .9, .99)[1 + i %% 3]))
}
write_vectors("stratified.csv", "stratified.R: mantelhaen.test(correct = FALSE), else formulas written out", rows)
