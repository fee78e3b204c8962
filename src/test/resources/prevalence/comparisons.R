# Reference values for ComparisonsResourceTest. Run: Rscript comparisons.R > comparisons.csv   (R 4.2.2, base only)
# Every figure comes from R's own functions where base R has them (fisher.test, prop.test, mantelhaen.test,
# prop.trend.test, p.adjust, qbeta); Sato's variance, Breslow-Day with Tarone's correction and the limits of a difference
# are written here from the formulas of the publications named beside them.
here <- rbind(FM = c(1, 60), FF = c(0, 55), YM = c(9, 120), YF = c(4, 90), AM = c(41, 210), AF = c(18, 190))
there <- rbind(FM = c(0, 40), FF = c(1, 45), YM = c(5, 100), YF = c(3, 80), AM = c(20, 180), AF = c(12, 160))
unknown <- c(1, 12)                       # of unknown age in this season: in the crude difference only
herd <- c(52, 51, 29, 36, 38, 94)
ages <- c(0.5, 1.5, 4)
wilson <- function(x, n) suppressWarnings(prop.test(x, n, correct = FALSE)$conf.int)
newcombe <- function(a, b) {              # Newcombe 1998, Stat Med 17:873-890, method 10
  p <- c(a[1] / a[2], b[1] / b[2]); l <- wilson(a[1], a[2]); m <- wilson(b[1], b[2]); d <- p[1] - p[2]
  c(d, d - sqrt((p[1] - l[1])^2 + (m[2] - p[2])^2), d + sqrt((l[2] - p[1])^2 + (p[2] - m[1])^2))
}
fisher <- function(a, b) fisher.test(rbind(c(a[1], a[2] - a[1]), c(b[1], b[2] - b[1])))$p.value
bdt <- function(first, second, psi) {     # Breslow & Day 1980 ch. 4; Tarone 1985, Biometrika 72:91-95
  bd <- 0; away <- 0; v <- 0; k <- 0
  for (i in seq_len(nrow(first))) {
    n1 <- first[i, 2]; n2 <- second[i, 2]; m <- first[i, 1] + second[i, 1]
    if (min(n1, n2, m, n1 + n2 - m) == 0) next
    A <- uniroot(function(A) A * (n2 - m + A) - psi * (n1 - A) * (m - A), c(max(0, m - n2), min(n1, m)), tol = 1e-13)$root
    V <- 1 / (1 / A + 1 / (n1 - A) + 1 / (m - A) + 1 / (n2 - m + A))
    bd <- bd + (first[i, 1] - A)^2 / V; away <- away + first[i, 1] - A; v <- v + V; k <- k + 1
  }
  if (k < 2) NA else pchisq(bd - away^2 / v, k - 1, lower.tail = FALSE)
}
mh <- function(first, second) {
  t <- array(0, c(2, 2, nrow(first)))
  for (i in seq_len(nrow(first))) t[, , i] <- rbind(c(first[i, 1], first[i, 2] - first[i, 1]), c(second[i, 1], second[i, 2] - second[i, 1]))
  r <- mantelhaen.test(t, correct = FALSE)
  c(r$estimate, r$conf.int, r$p.value, bdt(first, second, r$estimate))
}
standard <- function(s) {                 # Korn & Graubard 1998 without the t adjustment
  w <- herd / sum(herd); p <- s[, 1] / s[, 2]; y <- sum(w * p); v <- sum(w^2 * p * (1 - p) / s[, 2])
  n <- min(sum(s[, 2]), y * (1 - y) / v)
  c(y, qbeta(.025, y * n, n - y * n + 1), qbeta(.975, y * n + 1, n - y * n))
}
rows <- list()
add <- function(kind, about, e, p = NA, second = NA) rows[[length(rows) + 1]] <<- data.frame(kind, about, estimate = e[1], lower = e[2], upper = e[3], p, second)
two <- function(kind, about, a, b) add(kind, about, newcombe(a, b), fisher(a, b))
strat <- function(kind, about, f, s) { m <- mh(f, s); add(kind, about, m[1:3], m[4], m[5]) }
two("SEX_WITHIN_AGE_CLASS", "Fawn", here["FM", ], here["FF", ])
two("SEX_WITHIN_AGE_CLASS", "Yearling", here["YM", ], here["YF", ])
two("SEX_WITHIN_AGE_CLASS", "Adult", here["AM", ], here["AF", ])
strat("SEX_ADJUSTED_FOR_AGE", "Males and females", here[c(1, 3, 5), ], here[c(2, 4, 6), ])
strat("AGE_ADJUSTED_FOR_SEX", "Adult and yearling", here[5:6, ], here[3:4, ])
strat("AGE_ADJUSTED_FOR_SEX", "Adult and fawn", here[5:6, ], here[1:2, ])
strat("AGE_ADJUSTED_FOR_SEX", "Yearling and fawn", here[3:4, ], here[1:2, ])
for (sex in 1:2) {
  s <- here[c(sex, sex + 2, sex + 4), ]
  n <- s[, 2]; x <- s[, 1]; pooled <- sum(x) / sum(n); mean <- sum(n * ages) / sum(n)
  slope <- sum((x - n * pooled) * (ages - mean)) / sum(n * (ages - mean)^2)
  trend <- prop.trend.test(x, n, ages)
  all <- suppressWarnings(chisq.test(cbind(x, n - x), correct = FALSE))
  add("AGE_TREND", c("Males", "Females")[sex], c(slope, NA, NA), trend$p.value,
      pchisq(all$statistic - trend$statistic, 1, lower.tail = FALSE))
}
two("SEASONS_CRUDE", "both", colSums(here) + unknown, colSums(there))
strat("SEASONS_ADJUSTED", "both", here, there)
a <- standard(here); b <- standard(there)
add("STANDARDIZED", "here", a); add("STANDARDIZED", "there", b)
d <- a[1] - b[1]                          # Zou & Donner 2008, Stat Med 27:1693-1702
add("SEASONS_STANDARDIZED", "both", c(d, d - sqrt((a[1] - a[2])^2 + (b[3] - b[1])^2), d + sqrt((a[3] - a[1])^2 + (b[1] - b[2])^2)))
all <- do.call(rbind, rows)
all$adjusted <- p.adjust(all$p, "holm")
options(digits = 15)
write.csv(all[, c("kind", "about", "estimate", "lower", "upper", "p", "adjusted", "second")], row.names = FALSE, na = "", quote = FALSE)
