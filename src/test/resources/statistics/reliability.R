source("common.R")
# diff(binom.test(x, n)$conf.int), relative to x / n
rows <- NULL
for (n in c(1, 20, 29, 30, 60, 100, 250, 400, 1000, 4000)) for (x in unique(pmin(n, c(0, 1, 4, 5, 9, 25, round(n / 2), n)))) {
  w <- diff(binom.test(x, n)$conf.int[1:2]); r <- if (x == 0) NA else w / (x / n)
  bad <- n < 30 || w >= .3 || (w > .05 && !is.na(r) && r > 1.3); look <- x == 0 || x == n || x < 5
  rows <- rbind(rows, data.frame(detected = x, tested = n, absoluteWidth = w, relativeWidth = r, flag = if (bad) "UNRELIABLE" else if (look) "REVIEW" else "RELIABLE"))
}
write_vectors("reliability.csv", "reliability.R: binom.test(x, n)$conf.int", rows)
