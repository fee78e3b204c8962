source("common.R")
# posterior = prior / (prior + (1 - prior)(1 - sensitivity)), Bayes' rule as such; equilibrium by running 20000 periods
set.seed(28)
rows <- NULL
for (i in 1:55) {
  k <- sample(1:8, 1); s <- round(runif(k, 0, 1), 3); prior <- round(runif(1), 2); intro <- c(0, .01, .05, .2)[1 + i %% 4]; if (i == 3) prior <- 1; if (i == 4) prior <- 0
  before <- NULL; after <- NULL; q <- prior
  for (x in s) { before <- c(before, q); p <- q / (q + (1 - q) * (1 - x)); after <- c(after, p); q <- p * (1 - intro) }
  e <- 0.5; f <- NA; last <- s[k]
  if (last > intro + .02) for (j in 1:20000) { f <- e / (e + (1 - e) * (1 - last)); e <- f * (1 - intro) } else next
  rows <- rbind(rows, data.frame(prior = prior, introduction = intro, sensitivities = paste(s, collapse = " "), before = paste(sprintf("%.17g", before), collapse = " "),
    after = paste(sprintf("%.17g", after), collapse = " "), equilibriumPrior = e, equilibriumPosterior = f))
}
for (i in 1:12) { s <- round(runif(4), 2); s[4] <- .9; intro <- i / 30; prior <- i / 13; before <- NULL; after <- NULL; q <- prior
  for (x in s) { before <- c(before, q); p <- q / (q + (1 - q) * (1 - x)); after <- c(after, p); q <- p * (1 - intro) }
  e <- 0.5; for (j in 1:20000) { f <- e / (e + (1 - e) * .1); e <- f * (1 - intro) }
  rows <- rbind(rows, data.frame(prior = prior, introduction = intro, sensitivities = paste(s, collapse = " "), before = paste(sprintf("%.17g", before), collapse = " "),
    after = paste(sprintf("%.17g", after), collapse = " "), equilibriumPrior = e, equilibriumPosterior = f)) }
write_vectors("freedom.csv", "freedom.R: Bayes' rule, equilibrium by iteration", rows)
