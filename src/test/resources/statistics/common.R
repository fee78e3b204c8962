# Shared by the scripts beside it. Base R only; run each from this directory: Rscript proportion.R
# Numbers are written with 17 significant digits; an undefined value is an empty cell.
number <- function(v) ifelse(is.na(v), "", ifelse(is.infinite(v), ifelse(v > 0, "Infinity", "-Infinity"), sprintf("%.17g", v)))

write_vectors <- function(file, calls, data) {
  for (column in names(data)) if (is.numeric(data[[column]])) data[[column]] <- number(data[[column]])
  out <- file(file, "w")
  writeLines(paste("#", c(paste("R", getRversion(), "-", calls))), out)
  write.table(data, out, sep = ",", row.names = FALSE, quote = FALSE, na = "")
  close(out)
}

# uniroot, driven to the last bit and polished by bisection on the sign.
root <- function(f, low, high) {
  if (f(low) == 0) return(low)
  if (f(high) == 0) return(high)
  sign_low <- sign(f(low))
  r <- uniroot(f, c(low, high), tol = .Machine$double.eps, maxiter = 100000)$root
  a <- max(low, r - abs(r) * 1e-9); b <- min(high, r + abs(r) * 1e-9)
  if (sign(f(a)) != sign_low || sign(f(b)) == sign_low) { a <- low; b <- high }
  for (i in 1:200) {
    m <- (a + b) / 2
    if (m == a || m == b) break
    if (sign(f(m)) == sign_low) a <- m else b <- m
  }
  (a + b) / 2
}
