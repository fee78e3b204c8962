# Reference values for MisclassificationTest. Run: Rscript misclassification.R > misclassification.csv   (R 4.2.2, base only)
# solution: solve(t(M), told), LAPACK. condition: kappa(M, exact = TRUE), the 2-norm from the singular values.
# counts: the solution where it is 0 or more; else the counts of 0 or more with the largest multinomial likelihood, searched
# here in another way than in the service: every set of classes that may be empty, on each the optimum by optimize() (two
# classes left) or at the only point (one class left), the best of them all.
set.seed(20261125)
loglik <- function(t, M, told) { f <- as.vector(t %*% M); k <- told > 0; sum(told[k] * log(f[k])) }
edges <- function(M, told) {
  k <- length(told); n <- sum(told); best <- NULL; top <- -Inf
  try_one <- function(t) { l <- loglik(t, M, told); if (is.finite(l) && l > top) { top <<- l; best <<- t } }
  for (i in 1:k) { t <- rep(0, k); t[i] <- n; suppressWarnings(try_one(t)) }
  for (i in 1:(k - 1)) for (j in (i + 1):k) {
    at <- function(a) { t <- rep(0, k); t[i] <- a * n; t[j] <- (1 - a) * n; t }
    # the slope along the edge falls from left to right (the likelihood is concave): its root is the optimum
    slope <- function(a) { f <- as.vector(at(a) %*% M); u <- told > 0; sum(told[u] * (M[i, u] - M[j, u]) * n / f[u]) }
    lo <- 1e-14; hi <- 1 - 1e-14
    if (slope(lo) > 0 && slope(hi) < 0) try_one(at(uniroot(slope, c(lo, hi), tol = 1e-16, maxiter = 10000)$root))
  }
  best
}
cell <- function(x) paste(format(x, digits = 17, trim = TRUE, scientific = FALSE), collapse = " ")
cat("# R ", as.character(getRversion()), ": Rscript misclassification.R\n", sep = "")
cat("case,matrix,told,condition,solution,counts,solved,unexplained\n")
one <- function(name, M, told) {
  S <- M / rowSums(M)
  solution <- solve(t(S), told)
  solved <- all(solution >= -1e-9 * sum(told))
  counts <- if (solved) pmax(solution, 0) else edges(S, told)
  again <- as.vector(counts %*% S)
  cat(name, paste(apply(M, 1, cell), collapse = ";"), cell(told), format(kappa(S, exact = TRUE), digits = 17),
      cell(solution), cell(counts), tolower(as.character(solved)), format(if (solved) 0 else sum(abs(again - told)) / 2, digits = 17),
      sep = ","); cat("\n")
}
plan <- rbind(c(.985, .015, 0), c(.01, .92, .07), c(0, .05, .95))
one("identity", diag(3), c(60, 120, 210))
one("stated males counted", plan, c(60, 120, 210))
one("stated males detected", plan, c(1, 9, 41))
one("stated females detected", plan, c(0, 4, 18))
one("stated nothing in fawns", plan, c(0, 9, 3))
one("jaws as counts", rbind(c(40, 2, 0), c(1, 55, 9), c(0, 6, 87)), c(55, 90, 190))
one("adults only", plan, c(0, 0, 25))
one("middle gone", rbind(c(.8, .2, 0), c(.1, .8, .1), c(0, .2, .8)), c(40, 5, 40))
for (i in 1:60) {
  e <- runif(6, 0, if (i %% 2) .15 else .35)
  M <- rbind(c(1 - e[1] - e[2] / 4, e[1], e[2] / 4), c(e[3] / 2, 1 - e[3] / 2 - e[4], e[4]), c(e[5] / 4, e[6], 1 - e[5] / 4 - e[6]))
  M <- round(M, 6); M[, 3] <- round(1 - M[, 1] - M[, 2], 6)
  one(paste("drawn", i), M, if (i %% 3 == 0) rmultinom(1, 25, c(.02, .3, .68))[, 1] else rmultinom(1, 200 + i, c(.2, .3, .5))[, 1])
}
