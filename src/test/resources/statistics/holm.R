source("common.R")
# p.adjust(p, "holm"); an absent p is NA
set.seed(22)
line <- function(v) paste(ifelse(is.na(v), "NA", sprintf("%.17g", v)), collapse = " ")
rows <- NULL
for (i in 1:60) {
  p <- round(runif(sample(1:9, 1))^sample(1:4, 1), 4); if (i %% 3 == 0) p <- round(p, 1); if (i %% 4 == 0) p[sample(length(p), 1)] <- NA
  rows <- rbind(rows, data.frame(p = line(p), adjusted = line(p.adjust(p, "holm"))))
}
write_vectors("holm.csv", "holm.R: p.adjust(p, \"holm\")", rows)
