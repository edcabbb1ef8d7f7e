"""Limits of return levels by records drawn from a fit: NumPy and SciPy, many more records than the library draws, with the standard errors of
both. No code in common with the library.

    python3 drawn_levels.py FOLDER

writes the tables named below into the folder of the rainfall tables. Made with NumPy 2 and SciPy 1.
"""

import sys

import numpy as np
from own_tables import text, write
from scipy import stats

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "drawn_levels.py"
MANY, LIBRARY = 60_000, 2_000


def end(values, share):
    """A quantile, and four standard errors of the difference of two simulations of it."""
    at, width = np.quantile(values, share), 0.01
    slope = (np.quantile(values, share + width) - np.quantile(values, share - width)) / (2 * width)
    kept = len(values) / MANY  # of those that the library draws as many can be fitted
    return at, 4 * slope * (share * (1 - share) * (1 / MANY + 1 / LIBRARY) / kept) ** 0.5


def pareto(x, threshold):
    """Scale and shape by L-moments above a known threshold."""
    x = np.sort(x)
    n = len(x)
    l1 = x.mean() - threshold
    l2 = 2 * np.sum(np.arange(n) / (n - 1) * x) / n - x.mean()
    k = l1 / l2 - 2
    return (1 + k) * l1, k


def peaks(rng):
    """As many peaks as come, at random, in a record of that length."""
    rows = []
    for n, threshold, scale, shape, record, years, confidence in ((40, 10.0, 5.0, 0.05, 12.0, 30, 0.9), (25, 20.0, 8.0, -0.1, 9.5, 10, 0.8), (40, 10.0, 5.0, 0.05, 12.0, 0.31, 0.9)):
        u = (np.arange(1, n + 1) - 0.35) / n
        sample = np.round(threshold + scale / shape * (1 - (1 - u) ** shape), 1) + 0.05
        alpha, k = pareto(sample, threshold)
        levels = []
        for count in rng.poisson(n, MANY):
            rate = count / record * years
            if count <= 3 or rate <= 1:
                continue
            x = threshold + alpha / k * (1 - rng.uniform(size=count) ** k)
            a, s = pareto(x, threshold)
            levels.append(threshold + a / s * (1 - (1 / rate) ** s))
        levels = np.array(levels)
        kurtosis = stats.kurtosis(levels, fisher=False)
        sd = levels.std(ddof=1)
        rows.append((text(sample), threshold, record, years, confidence, *end(levels, (1 - confidence) / 2), *end(levels, (1 + confidence) / 2), sd, 4 * sd * ((kurtosis - 1) / 4 * (1 / MANY + 1 / LIBRARY) / (len(levels) / MANY)) ** 0.5))
    write(FOLDER, PROGRAM, "drawn-peaks", f"peaks over a threshold drawn for as long as a record, their number by Poisson's law, fitted by L-moments: {MANY} records here, {LIBRARY} in the library",
          [("x", "mm, peaks"), ("threshold", "mm, threshold"), ("record", "years, record"), ("years", "years, return period"), ("confidence", "1, confidence"), ("low", "mm, lower end"), ("low_e", "mm, four standard errors"), ("high", "mm, upper end"), ("high_e", "mm, four standard errors"),
           ("sd", "mm, standard error"), ("sd_e", "mm, four standard errors")],
          [("sample", "text x"), ("threshold", "threshold"), ("record", "record"), ("years", "years"), ("replicates", str(LIBRARY)), ("confidence", "confidence")],
          [("low", "peaks.drawn.lower", "tolerance = column low_e"), ("high", "peaks.drawn.upper", "tolerance = column high_e"), ("sd", "peaks.drawn.error", "tolerance = column sd_e")], rows, reason="four standard errors of the difference of two simulations")


def moments(rng):
    """Years that are all known: then expected moments are those of the logarithms, without bias in second and third."""
    rows = []
    for n, mean, deviation, skew, years, confidence in ((30, 1.6, 0.22, 0.3, 50, 0.9), (45, 2.1, 0.15, -0.2, 20, 0.8)):
        u = (np.arange(1, n + 1) - 0.4) / (n + 0.2)
        sample = np.round(10 ** stats.pearson3.ppf(u, skew, mean, deviation), 1)

        def fit(x):
            m, s = x.mean(axis=-1), x.std(axis=-1, ddof=1)
            return m, s, n * np.sum((x - m[..., None]) ** 3, axis=-1) / ((n - 1) * (n - 2) * s**3)

        m, s, g = fit(np.log10(sample)[None])
        m2, s2, g2 = fit(stats.pearson3.rvs(g[0], m[0], s[0], size=(MANY, n), random_state=rng))
        levels = 10 ** stats.pearson3.ppf(1 - 1 / years, g2, m2, s2)
        rows.append((text(sample), years, confidence, *end(levels, (1 - confidence) / 2), *end(levels, (1 + confidence) / 2)))
    write(FOLDER, PROGRAM, "drawn-expected-moments", f"years drawn from a log-Pearson III law, fitted again by moments: {MANY} records here, {LIBRARY} in the library",
          [("x", "mm, sample"), ("years", "years, return period"), ("confidence", "1, confidence"), ("low", "mm, lower end"), ("low_e", "mm, four standard errors"), ("high", "mm, upper end"), ("high_e", "mm, four standard errors")],
          [("sample", "text x"), ("years", "years"), ("replicates", str(LIBRARY)), ("confidence", "confidence")],
          [("low", "low-outliers.expected-moments.drawn-lower", "tolerance = column low_e"), ("high", "low-outliers.expected-moments.drawn-upper", "tolerance = column high_e")], rows, reason="four standard errors of the difference of two simulations")


if __name__ == "__main__":
    peaks(np.random.default_rng(11))
    moments(np.random.default_rng(12))
