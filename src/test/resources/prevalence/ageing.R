# Reference values for AgeingResourceTest. Run: Rscript ageing.R > ageing.csv   (R 4.2.2, base only)
# Detected and other animals are taken back through the matrix each by solve(); where that is below 0 in a class, the counts of
# 0 or more with the largest multinomial likelihood are searched along the edges by uniroot() on its slope.
detected <- list(MALE = c(1, 9, 41), FEMALE = c(0, 4, 18))
counted <- list(MALE = c(60, 120, 210), FEMALE = c(55, 90, 190))
plan <- rbind(c(.985, .015, 0), c(.01, .92, .07), c(0, .05, .95))
males <- rbind(c(48, 2, 0), c(1, 60, 4), c(0, 9, 91))
females <- rbind(c(50, 0, 0), c(0, 44, 6), c(0, 3, 97))
known <- rbind(c(3, 1, 0), c(0, 4, 1), c(0, 1, 9))
likeliest <- function(M, told) {
  n <- sum(told); k <- 3; best <- NULL; top <- -Inf; u <- told > 0
  ll <- function(t) { f <- as.vector(t %*% M); sum(told[u] * log(f[u])) }
  try_one <- function(t) { l <- suppressWarnings(ll(t)); if (is.finite(l) && l > top) { top <<- l; best <<- t } }
  for (i in 1:k) { t <- rep(0, k); t[i] <- n; try_one(t) }
  for (i in 1:2) for (j in (i + 1):3) {
    at <- function(a) { t <- rep(0, k); t[i] <- a * n; t[j] <- (1 - a) * n; t }
    slope <- function(a) { f <- as.vector(at(a) %*% M); sum(told[u] * (M[i, u] - M[j, u]) * n / f[u]) }
    if (slope(1e-14) > 0 && slope(1 - 1e-14) < 0) try_one(at(uniroot(slope, c(1e-14, 1 - 1e-14), tol = 1e-16, maxiter = 10000)$root))
  }
  best
}
behind <- function(M, told) { s <- solve(t(M), told); if (all(s >= -1e-9 * sum(told))) pmax(s, 0) else likeliest(M, told) }
cat("# R ", as.character(getRversion()), ": Rscript ageing.R\n", sep = "")
cat("matrix,sex,ageClass,counted,detected,prevalence,change,againCounted,againDetected,ratio,step,unexplained\n")
n <- function(x) ifelse(is.na(x), "", format(x, digits = 12, scientific = FALSE, trim = TRUE))
one <- function(name, sex, d, t, ad, at, d0, t0, off) {
  p <- ifelse(t < 1, NA, d / t); p0 <- d0 / t0
  for (i in 1:3) cat(paste(name, sex, c("FAWN", "YEARLING", "ADULT")[i], n(t[i]), n(d[i]), n(p[i]), n(100 * (p[i] - p0[i])), n(at[i]),
    n(ad[i]), n(p[3] / p[2]), n(100 * (p[3] - p[2])), n(off), sep = ","), "\n", sep = "")
}
both <- function(name, m) {
  D <- 0; T <- 0; AD <- 0; AT <- 0; D0 <- 0; T0 <- 0; OFF <- 0
  for (sex in c("MALE", "FEMALE")) {
    M <- m[[sex]] / rowSums(m[[sex]]); d0 <- detected[[sex]]; t0 <- counted[[sex]]
    d <- behind(M, d0); u <- behind(M, t0 - d0); t <- d + u
    ad <- as.vector(d0 %*% M); at <- as.vector(t0 %*% M)
    off <- sum(abs(as.vector(d %*% M) - d0)) / 2 + sum(abs(as.vector(u %*% M) - (t0 - d0))) / 2
    if (off < 1e-9) off <- 0
    one(name, sex, d, t, ad, at, d0, t0, off)
    D <- D + d; T <- T + t; AD <- AD + ad; AT <- AT + at; D0 <- D0 + d0; T0 <- T0 + t0; OFF <- OFF + off
  }
  one(name, "ALL", D, T, AD, AT, D0, T0, OFF)
}
both("STATED", list(MALE = plan, FEMALE = plan))
both("BY_SEX", list(MALE = males, FEMALE = females))
both("KNOWN", list(MALE = known, FEMALE = known))
