source("common.R")
# Exact coverage at 95 %: true values seq(.002, .3, by = .0005); sum(dbinom(0:n, n, p) * (lower <= p & p <= upper)).
# The limits are those proportion.R defines (its function limits).
lines <- readLines("proportion.R")
eval(parse(text = lines[2:(grep("^pairs", lines) - 1)]))
truths <- (4:600) / 2000
rows <- NULL
for (n in c(10, 25, 50)) for (m in methods) {
  l <- sapply(0:n, limits, n = n, method = m, conf = 0.95)
  covered <- sapply(truths, function(p) sum(dbinom(0:n, n, p) * (l[1, ] <= p & p <= l[2, ])))
  width <- sapply(truths, function(p) sum(dbinom(0:n, n, p) * (l[2, ] - l[1, ])))
  rows <- rbind(rows, data.frame(tested = n, interval = m, mean = mean(covered), minimum = min(covered), width = mean(width)))
}
write_vectors("coverage.csv", "coverage.R: exact coverage by dbinom over seq(.002, .3, by = .0005), limits of proportion.R", rows)
