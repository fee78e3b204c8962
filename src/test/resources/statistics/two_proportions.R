source("common.R")
# prop.test(x, n, conf.level, correct = FALSE)$conf.int (Wilson limits), fisher.test(m, alternative)$p.value,
# chisq.test(m, correct = FALSE), dhyper; conditional odds ratio: roots over dhyper(log = TRUE), because fisher.test's own
# estimate and limits come from a loosely-toleranced root finder.
wilson <- function(x, n, conf) {
  l <- suppressWarnings(prop.test(x, n, conf.level = conf, correct = FALSE)$conf.int)
  c(if (x == 0) 0 else l[1], if (x == n) 1 else l[2])
}
one <- function(a, n1, c, n2, conf) {
  b <- n1 - a; d <- n2 - c; N <- n1 + n2; m <- a + c; z <- qnorm(1 - (1 - conf) / 2)
  w1 <- wilson(a, n1, conf); w2 <- wilson(c, n2, conf); p1 <- a / n1; p2 <- c / n2; D <- p1 - p2
  r <- list(detected1 = a, tested1 = n1, detected2 = c, tested2 = n2, confidence = conf, difference = D,
    differenceLower = D - sqrt((p1 - w1[1])^2 + (w2[2] - p2)^2), differenceUpper = D + sqrt((w1[2] - p1)^2 + (p2 - w2[1])^2))
  r$riskRatio <- if (c == 0) NA else p1 / p2
  se <- sqrt(1 / a - 1 / n1 + 1 / c - 1 / n2)
  r$riskRatioLower <- if (a == 0 || c == 0) NA else exp(log(p1 / p2) - z * se)
  r$riskRatioUpper <- if (a == 0 || c == 0) NA else exp(log(p1 / p2) + z * se)
  r$oddsRatio <- if (a * d == 0 && b * c == 0) NA else a * d / (b * c)
  se <- sqrt(1 / a + 1 / b + 1 / c + 1 / d)
  zero <- min(a, b, c, d) == 0
  r$woolfLower <- if (zero) NA else exp(log(r$oddsRatio) - z * se)
  r$woolfUpper <- if (zero) NA else exp(log(r$oddsRatio) + z * se)
  h <- c(a, b, c, d) + 0.5; l <- log(h[1] * h[4] / (h[2] * h[3])); se <- sqrt(sum(1 / h))
  r$haldane <- exp(l); r$haldaneLower <- exp(l - z * se); r$haldaneUpper <- exp(l + z * se)
  t <- max(0, m - n2):min(n1, m); base <- dhyper(t, n1, n2, m, log = TRUE)
  dens <- function(lp) { w <- base + t * lp; w <- exp(w - max(w)); w / sum(w) }
  tail <- (1 - conf) / 2
  smallest <- a == min(t); largest <- a == max(t)
  lr <- function(f) exp(root(f, -60, 60))
  r$conditional <- if (smallest && largest) NA else if (smallest) 0 else if (largest) Inf else lr(function(x) sum(t * dens(x)) - a)
  r$conditionalLower <- if (smallest) 0 else lr(function(x) sum(dens(x)[t >= a]) - tail)
  r$conditionalUpper <- if (largest) Inf else lr(function(x) tail - sum(dens(x)[t <= a]))
  tab <- matrix(c(a, b, c, d), 2, byrow = TRUE)
  r$twoSided <- min(1, fisher.test(tab)$p.value)
  r$less <- min(1, fisher.test(tab, alternative = "less")$p.value)
  r$greater <- min(1, fisher.test(tab, alternative = "greater")$p.value)
  r$midP <- r$twoSided - dhyper(a, n1, n2, m) / 2
  chi <- if (m == 0 || m == N) NA else unname(suppressWarnings(chisq.test(tab, correct = FALSE)$statistic))
  r$chiSquare <- chi; r$chiSquareP <- pchisq(chi, 1, lower.tail = FALSE)
  r$chiSquareN1 <- chi * (N - 1) / N; r$chiSquareN1P <- pchisq(r$chiSquareN1, 1, lower.tail = FALSE)
  as.data.frame(r)
}
cases <- rbind(
  c(56, 70, 48, 80), c(9, 10, 3, 10), c(6, 7, 2, 7), c(5, 56, 0, 29), c(0, 10, 0, 20), c(0, 10, 0, 10), c(10, 10, 0, 20), c(10, 10, 0, 10),
  c(3, 4, 1, 4), c(10, 10, 20, 20), c(1, 1, 0, 1), c(0, 1, 1, 1), c(1, 1, 1, 1), c(0, 5, 3, 5), c(5, 5, 2, 5), c(2, 5, 5, 5), c(5, 5, 4, 5),
  c(1, 100, 1, 100), c(1, 100, 9, 100), c(40, 100, 60, 100), c(3, 20, 7, 300), c(12, 250, 30, 260), c(2, 300, 5, 40), c(0, 300, 5, 40),
  c(150, 301, 99, 420), c(30, 31, 17, 29), c(700, 5000, 500, 4900))
set.seed(20)
for (i in 1:40) { n <- sample(c(4, 11, 30, 85, 240, 600), 2, TRUE); cases <- rbind(cases, c(rbinom(1, n[1], runif(1, 0, .6)), n[1], rbinom(1, n[2], runif(1, 0, .6)), n[2])) }
rows <- NULL
for (i in seq_len(nrow(cases))) {
  q <- cases[i, ]
  rows <- rbind(rows, one(q[1], q[2], q[3], q[4], c(.95, .9, .99, .8)[1 + if (i <= 20) 0 else i %% 4]))
}
write_vectors("two-proportions.csv", "two_proportions.R: prop.test, fisher.test p-values, chisq.test(correct = FALSE), dhyper and roots over it", rows)
