# Expected values of the tests of org.dentary.prevalence.detection; run with Rscript, base R 4.2.2.
p <- function(name, value) cat(sprintf("%-34s %.12g\n", name, value))
# A large herd: P* 1 %, sensitivity .95, seasons with 130, 150 and 120 tested, prior .5, introduction .05
# (Martin, Cameron & Greiner 2007, Prev Vet Med 79:71-97).
se <- 1 - (1 - .01 * .95)^c(130, 150, 120)
prior <- .5
for (i in 1:3) {
  post <- prior / (1 - se[i] * (1 - prior))
  p(paste0("season", i, ".sensitivity"), se[i]); p(paste0("season", i, ".prior"), prior); p(paste0("season", i, ".posterior"), post)
  prior <- post * .95
}
p("required.large.se.95", ceiling(log(.05) / log(1 - .01 * .95)))
p("upper.120.se.95", (1 - .05^(1 / 120)) / .95)
# A herd of 100 at 5 %: 5 infected, perfect test.
p("herd100.44", 1 - dhyper(0, 5, 95, 44)); p("herd100.45", 1 - dhyper(0, 5, 95, 45))
# A herd of 400 at 1 %: 4 infected, sensitivity .95; the smallest n by trying every one.
hit <- function(N, d, n, s) { y <- 0:min(n, d); sum(dhyper(y, d, N - d, n) * (1 - (1 - s)^y)) }
p("herd400.120", hit(400, 4, 120, .95)); p("herd400.required", min(which(sapply(1:400, function(n) hit(400, 4, n, .95)) >= .95)))
# Risk weights 1 (60 tested), 0.25 (40), 2.5 (30) at P* 1 %, sensitivity .92 (Walsh & Miller 2010, J Wildl Dis 46:118-135).
n <- c(60, 40, 30); w <- c(1, .25, 2.5)
p("points", sum(n * w)); p("points.required", -log(.05) / (.92 * .01)); p("points.probability", 1 - prod((1 - .92 * .01 * w)^n))
p("points.upper", -log(.05) / (.92 * sum(n * w)))
left <- log(.05) - sum(n * log(1 - .92 * .01 * w))
p("points.more.of.2.5", ceiling(left / log(1 - .92 * .01 * 2.5))); p("points.more.of.1", ceiling(left / log(1 - .92 * .01)))
p("points.more.of.0.25", ceiling(left / log(1 - .92 * .01 * .25)))
# Turnaround: 15 specimens reported after 2, 3, 5, 8 and 13 days; the smallest day that holds the share (type 1).
x <- rep(c(2, 3, 5, 8, 13), c(3, 4, 2, 5, 1))
print(quantile(x, c(.25, .5, .75, .9), type = 1))
