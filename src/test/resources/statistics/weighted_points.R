source("common.R")
# 1 - prod((1 - Se pmin(1, P w))^n)
set.seed(29)
rows <- NULL
for (i in 1:60) {
  k <- sample(1:6, 1); n <- sample(c(0, 3, 20, 100, 400), k, TRUE); w <- round(runif(k, 0, 12), 2); w[1] <- 1; P <- sample(c(.005, .01, .02, .1, .3), 1); se <- sample(c(1, .92, .6), 1)
  conf <- sample(c(.95, .9, .99), 1); share <- rexp(k) + .05; share <- share / sum(share)
  f <- function(u) c(sum(n * u), -log(1 - conf) / (se * P), 1 - prod((1 - se * pmin(1, P * u))^n), if (sum(n * u) == 0) NA else -log(1 - conf) / (se * sum(n * u)))
  r <- f(w); m <- f(w / sum(w * share))
  rows <- rbind(rows, data.frame(designPrevalence = P, sensitivity = se, confidence = conf, classes = paste(paste(n, sprintf("%.17g", w), sprintf("%.17g", share)), collapse = ";"),
    points = r[1], required = r[2], probability = r[3], upperLimit = r[4], meanPoints = m[1], meanRequired = m[2], meanProbability = m[3], meanUpperLimit = m[4]))
}
write_vectors("weighted-points.csv", "weighted_points.R: 1 - prod((1 - Se pmin(1, P w))^n)", rows)
