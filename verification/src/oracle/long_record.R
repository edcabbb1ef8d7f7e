# Independent computation of the annual maxima of the invented record: base R, no package.
#   Rscript long_record.R FOLDER    reads long-record-maxima.csv, writes the column r of long-record-parameters and -quantiles
folder <- commandArgs(TRUE)[1]
maxima <- read.csv(file.path(folder, "long-record-maxima.csv"))
periods <- c(2, 10, 30, 100)
out <- NULL
keep <- function(m, family, method, what, value)
  out <<- rbind(out, data.frame(minutes = m, family, method, what, value = sprintf("%.17g", value)))
gumbel <- function(p, t) p[1] - p[2] * log(-log1p(-1 / t))
gev <- function(p, t) p[1] + p[2] / p[3] * (1 - (-log1p(-1 / t))^p[3])
gev.negative <- function(p, x) {
  y <- 1 - p[3] * (x - p[1]) / p[2]
  if (p[2] <= 0 || any(y <= 0)) return(1e10)
  s <- -log(y) / p[3]
  length(x) * log(p[2]) + sum((1 - p[3]) * s + exp(-s))
}
for (m in c(10, 20, 30, 60, 120, 360, 720, 1440)) {
  steps <- m / 10
  x <- sort(maxima[[paste0("d", m)]] * steps / (steps - 0.125))
  n <- length(x); j <- seq_len(n)
  b0 <- mean(x); b1 <- sum((j - 1) / (n - 1) * x) / n
  b2 <- sum((j - 1) * (j - 2) / ((n - 1) * (n - 2)) * x) / n
  l2 <- 2 * b1 - b0; t3 <- (6 * b2 - 6 * b1 + b0) / l2
  alpha <- l2 / log(2); p <- c(b0 + digamma(1) * alpha, alpha)
  keep(m, "gumbel", "l-moments", c("xi", "alpha", periods), c(p, gumbel(p, periods)))
  k <- uniroot(function(k) 2 * expm1(-k * log(3)) / expm1(-k * log(2)) - 3 - t3, c(-0.99, 2.1), tol = 1e-15)$root
  alpha <- -l2 * k / (expm1(-k * log(2)) * gamma(1 + k))
  p <- c(b0 - alpha * (1 - gamma(1 + k)) / k, alpha, k)
  keep(m, "gev", "l-moments", c("xi", "alpha", "k", periods), c(p, gev(p, periods)))
  best <- optim(p, gev.negative, x = x, control = list(reltol = 1e-15, maxit = 20000))
  for (i in 1:4) best <- optim(best$par, gev.negative, x = x, control = list(reltol = 1e-15, maxit = 20000))
  p <- best$par
  keep(m, "gev", "maximum-likelihood", c("xi", "alpha", "k", periods), c(p, gev(p, periods)))
}
for (name in c("parameters", "quantiles")) {
  path <- file.path(folder, paste0("long-record-", name, ".csv"))
  table <- read.csv(path, colClasses = "character")
  at <- match(paste(table$minutes, table$f, table$m, table$w), paste(out$minutes, out$family, out$method, out$what))
  table$r <- ifelse(is.na(at), "", out$value[at])
  write.csv(table, path, row.names = FALSE, quote = FALSE)
}
