source("common.R")
# Wilson:           prop.test(x, n, p, conf.level, correct = FALSE)$conf.int
# Wilson corrected: prop.test(x, n, p, conf.level, correct = TRUE)$conf.int, p chosen so that the correction is never cut below 1/2
# Clopper-Pearson:  binom.test(x, n, conf.level = conf)$conf.int
# Jeffreys:         qbeta(c(a/2, 1-a/2), x+1/2, n-x+1/2), 0 at x = 0, 1 at x = n
# Agresti-Coull:    (x+z^2/2)/(n+z^2) -/+ z sqrt(p~ (1-p~)/(n+z^2)), clipped
# mid-P, Blaker:    roots of pbinom, see below
blaker_lower <- function(x, n, a) {
  if (x == 0) return(0)
  upper <- function(p) pbinom(x - 1, n, p, lower.tail = FALSE)
  meet <- sapply(0:(x - 1), function(q) root(function(p) upper(p) - pbinom(q, n, p), 0, 1))
  # A walk over every piece, not a search: acc just left of meet[i] uses P(X <= i - 2), at meet[i] itself P(X <= i - 1).
  left <- 0
  for (i in seq_along(meet)) {
    acc <- function(p) upper(p) + if (i > 1) pbinom(i - 2, n, p) else 0
    if (acc(meet[i]) >= a) return(root(function(p) acc(p) - a, left, meet[i]))
    if (2 * upper(meet[i]) >= a) return(meet[i])
    left <- meet[i]
  }
}
midp_lower <- function(x, n, a) if (x == 0) 0 else
  root(function(p) pbinom(x, n, p, lower.tail = FALSE) + dbinom(x, n, p) / 2 - a / 2, 0, 1)
limits <- function(x, n, method, conf) {
  a <- 1 - conf; z <- qnorm(1 - a / 2)
  switch(method,
    WILSON = { l <- suppressWarnings(prop.test(x, n, conf.level = conf, correct = FALSE)$conf.int)
               c(if (x == 0) 0 else l[1], if (x == n) 1 else l[2]) },
    WILSON_CORRECTED = { p0 <- if (abs(x - n * 0.999) >= 0.5) 0.999 else 0.001
               l <- suppressWarnings(prop.test(x, n, p = p0, conf.level = conf, correct = TRUE)$conf.int)
               c(if (x == 0) 0 else l[1], if (x == n) 1 else l[2]) },
    CLOPPER_PEARSON = binom.test(x, n, conf.level = conf)$conf.int[1:2],
    JEFFREYS = c(if (x == 0) 0 else qbeta(a / 2, x + .5, n - x + .5), if (x == n) 1 else qbeta(1 - a / 2, x + .5, n - x + .5)),
    AGRESTI_COULL = { m <- n + z^2; p <- (x + z^2 / 2) / m; h <- z * sqrt(p * (1 - p) / m); c(max(0, p - h), min(1, p + h)) },
    BLAKER = c(blaker_lower(x, n, a), 1 - blaker_lower(n - x, n, a)),
    MID_P = c(midp_lower(x, n, a), 1 - midp_lower(n - x, n, a)))
}
methods <- c("WILSON", "WILSON_CORRECTED", "CLOPPER_PEARSON", "JEFFREYS", "AGRESTI_COULL", "BLAKER", "MID_P")
pairs <- rbind(
  c(0, 1), c(1, 1), c(0, 2), c(1, 2), c(2, 2), c(1, 3), c(3, 4), c(0, 5), c(2, 5), c(5, 5), c(0, 10), c(1, 10), c(3, 10), c(5, 10),
  c(7, 10), c(10, 10), c(0, 20), c(1, 20), c(6, 20), c(19, 20), c(1, 29), c(28, 29), c(0, 30), c(2, 30), c(15, 30), c(0, 50), c(1, 50),
  c(12, 50), c(25, 50), c(49, 50), c(0, 100), c(1, 100), c(5, 100), c(37, 100), c(99, 100), c(100, 100), c(15, 148), c(23, 150),
  c(3, 151), c(81, 263), c(182, 263), c(0, 299), c(1, 299), c(4, 300), c(60, 300), c(150, 301), c(2, 500), c(250, 500), c(0, 1000),
  c(1, 1000), c(17, 1000), c(480, 1000), c(1, 3000), c(40, 3000))
levels <- c(0.95, 0.8, 0.9, 0.99, 0.5, 0.999)
rows <- NULL
for (i in seq_len(nrow(pairs))) for (k in 0:1) {
  conf <- levels[if (k == 0) 1 else 2 + (i %% 5)]
  for (m in methods) {
    l <- limits(pairs[i, 1], pairs[i, 2], m, conf)
    rows <- rbind(rows, data.frame(detected = pairs[i, 1], tested = pairs[i, 2], interval = m, confidence = conf, lower = l[1], upper = l[2]))
  }
}
write_vectors("proportion.csv", c(
  "proportion.R: prop.test(x, n, conf.level, correct)$conf.int; binom.test(x, n, conf.level)$conf.int; qbeta; roots of pbinom and dbinom"), rows)
