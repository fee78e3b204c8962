source("common.R")
# Fleiss, Cohen and Everitt 1969 by outer() and matrix sums
kap <- function(m, w, conf) {
  n <- sum(m); p <- m / n; r <- rowSums(p); c <- colSums(p); E <- outer(r, c); po <- sum(w * p); pe <- sum(w * E)
  if (1 - pe < 1e-14) return(rep(NA, 5))
  k <- (po - pe) / (1 - pe); bar <- outer(as.vector(w %*% c), as.vector(t(w) %*% r), "+")
  v <- (sum(p * (w - bar * (1 - k))^2) - (k - pe * (1 - k))^2) / (n * (1 - pe)^2); v0 <- (sum(E * (w - bar)^2) - pe^2) / (n * (1 - pe)^2)
  s <- if (v < 1e-14) 0 else sqrt(v); s0 <- if (v0 < 1e-14) 0 else sqrt(v0); z <- qnorm(1 - (1 - conf) / 2)
  c(k, s, s0, k - z * s, k + z * s)
}
one <- function(m, conf) {
  k <- nrow(m); n <- sum(m); p <- m / n; d <- abs(row(m) - col(m)); q <- (rowSums(p) + colSums(p)) / 2; po <- sum(diag(p)); e <- sum(q * (1 - q)) / (k - 1)
  a <- kap(m, diag(k), conf); l <- kap(m, 1 - d / (k - 1), conf); s <- kap(m, 1 - d^2 / (k - 1)^2, conf); pe <- sum(rowSums(p) * colSums(p))
  data.frame(counts = paste(apply(m, 1, paste, collapse = " "), collapse = ";"), confidence = conf, exact = po, withinOne = sum(p[d <= 1]), bias = sum(p * (col(m) - row(m))),
    kappa = a[1], kappaError = a[2], kappaNull = a[3], kappaLower = a[4], kappaUpper = a[5], linear = l[1], linearError = l[2], linearNull = l[3], linearLower = l[4],
    linearUpper = l[5], quadratic = s[1], quadraticError = s[2], quadraticNull = s[3], quadraticLower = s[4], quadraticUpper = s[5],
    prevalenceAdjusted = (k * po - 1) / (k - 1), ac1 = (po - e) / (1 - e), kappaMax = if (1 - pe < 1e-14) NA else (sum(pmin(rowSums(p), colSums(p))) - pe) / (1 - pe))
}
M <- function(...) matrix(c(...), sqrt(length(c(...))), byrow = TRUE)
rows <- rbind(one(M(88, 14, 18, 10, 40, 10, 2, 6, 12), .95), one(M(75, 1, 4, 5, 4, 1, 0, 0, 10), .95), one(M(22, 2, 2, 0, 5, 7, 14, 0, 0, 2, 36, 0, 0, 1, 17, 10), .95),
  one(M(20, 0, 0, 30), .95), one(M(20, 0, 0, 0), .95), one(M(0, 7, 9, 0), .95), one(M(5, 0, 0, 0, 6, 0, 0, 0, 9), .9), one(M(5, 2, 0, 0, 0, 0, 0, 0, 0), .95))
set.seed(30)
for (i in 1:50) { k <- sample(2:6, 1); m <- matrix(rpois(k * k, 2), k) + diag(rpois(k, sample(c(2, 15, 60), 1)), k); rows <- rbind(rows, one(m, c(.95, .9, .99)[1 + i %% 3])) }
write_vectors("agreement.csv", "agreement.R: Fleiss, Cohen and Everitt's formulas with outer()", rows)
