source("common.R")
# prop.trend.test(x, n, score)$statistic; chisq.test(rbind(x, n - x), correct = FALSE); slope: coef(lm(x / n ~ score, weights = n))
one <- function(x, n, s) {
  use <- n > 0; xx <- x[use]; nn <- n[use]; ss <- s[use]; k <- length(nn)
  r <- data.frame(groups = paste(paste(s, x, n), collapse = ";"), slope = NA, trend = NA, trendP = NA, heterogeneity = NA, heterogeneityDf = NA,
    heterogeneityP = NA, departure = NA, departureDf = NA, departureP = NA)
  if (k < 2 || sum(xx) == 0 || sum(xx) == sum(nn)) return(r)
  h <- suppressWarnings(chisq.test(rbind(xx, nn - xx), correct = FALSE))
  r$heterogeneity <- unname(h$statistic); r$heterogeneityDf <- k - 1; r$heterogeneityP <- pchisq(r$heterogeneity, k - 1, lower.tail = FALSE)
  if (length(unique(ss)) == 1) return(r)
  t <- prop.trend.test(xx, nn, ss)
  r$slope <- unname(coef(lm(xx / nn ~ ss, weights = nn))[2]); r$trend <- unname(t$statistic); r$trendP <- pchisq(r$trend, 1, lower.tail = FALSE)
  if (k > 2) {
    r$departure <- r$heterogeneity - r$trend; r$departureDf <- k - 2; r$departureP <- pchisq(r$departure, k - 2, lower.tail = FALSE)
  }
  r
}
rows <- rbind(one(c(48, 38, 5, 1, 1), c(17114, 14502, 793, 127, 38), c(0, .5, 1.5, 4, 7)), one(c(83, 90, 129, 70), c(86, 93, 136, 82), 1:4),
  one(c(0, 0, 0), c(10, 20, 30), 1:3), one(c(10, 20), c(10, 20), 1:2), one(c(3, 5), c(20, 20), c(2, 2)), one(c(3, 5, 1), c(20, 20, 20), c(2, 2, 2)),
  one(c(3, 5), c(20, 25), c(.5, 1.5)), one(c(3, 0, 5), c(20, 0, 25), c(.5, 1.5, 2.5)), one(c(3), c(20), c(1)), one(c(0, 0), c(0, 0), c(1, 2)))
set.seed(23)
for (i in 1:55) {
  k <- sample(2:8, 1); s <- round(sort(runif(k, 0, 9)), 1) + (1:k) / 10; n <- sample(c(0, 3, 10, 40, 160, 500), k, TRUE, c(1, 4, 4, 4, 4, 4))
  rows <- rbind(rows, one(rbinom(k, n, runif(k, .01, .5)), n, s))
}
write_vectors("trend.csv", "trend.R: prop.trend.test, chisq.test(correct = FALSE), lm weights", rows)
