"""Corners of fits and of their limits: years of which nothing is known, samples of very small numbers, the return period of a value
by the fit itself, and critical values of few draws. NumPy and SciPy, no code in common with the library.

    python3 law_corners.py FOLDER

writes the tables years-unknown, profiles-of-small-numbers, periods-by-the-fit and critical-values-of-few-draws, csv and descriptor, into
the folder of the rainfall tables. Made with NumPy 2.4, SciPy 1.17.
"""

import math
import sys
from itertools import combinations

import numpy as np
from own_tables import text, write
from scipy import integrate, optimize, stats

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "law_corners.py"
EULER = 0.5772156649015329


def unknown_years():
    """Years of which nothing is known add what the law has anyway: the moments stay those of the years that are known."""
    random = np.random.default_rng(2711)
    rows = []
    for size, unknown in ((12, 1), (20, 5), (31, 12), (45, 30)):
        x = [round(float(v), 1) for v in 10 ** (2.1 + 0.25 * random.standard_gamma(3, size) / 3)]
        logs = np.log10(x)
        mean, deviation, skew = logs.mean(), logs.std(ddof=1), float(stats.skew(logs, bias=False))
        for years in (2, 20, 200):
            # The quantile of Pearson's law by its density alone, not by an inverse that somebody wrote.
            law = stats.pearson3(skew)
            below = lambda k: integrate.quad(law.pdf, k, max(k, 0) + 60, epsabs=1e-14, epsrel=1e-13, limit=400, points=[k + 0.5, k + 3])[0]
            k = optimize.brentq(lambda at: below(at) - 1 / years, -1.5, 8, xtol=1e-12)
            rows.append((text(x), unknown, years, float(10 ** (mean + deviation * k))))
    write(FOLDER, PROGRAM, "years-unknown", "expected moments (Cohn, Lane and Baier 1997) where years are added of which nothing is known",
          [("x", "text, values known"), ("unknown", "1, years of which nothing is known"), ("years", "years, return period"), ("level", "of the sample, level")],
          [("sample", "text x"), ("unknown_years", "unknown"), ("years", "years")], [("level", "low-outliers.expected-moments.unknown-level")],
          rows, tolerance="1e-8 relative", reason="the rounds end where no moment moves by more than 1e-10")


def gumbel(x, level, q):
    """Greatest log-likelihood of the Gumbel laws whose reduced variate q has the level given: one number, the scale, is left."""
    x = np.asarray(x)

    def negative(log_alpha):
        w = (x - level) / math.exp(log_alpha) + q
        return len(x) * log_alpha + float(np.sum(w + np.exp(-w)))

    start = math.log(x.std(ddof=1) * 0.78)
    found = optimize.minimize_scalar(negative, bracket=(start - 0.3, start + 0.3), tol=1e-13)
    return -found.fun


def small_numbers():
    rows = []
    sample = [31.5, 24.8, 40.2, 28.9, 35.1, 52.6, 26.4, 33.3, 44.9, 30.1, 37.7, 29.6, 61.2, 27.3, 34.0]
    for unit in (1.0, 1e-3, 1e-6, 1e-9):
        x = [float(f"{v * unit:.6g}") for v in sample]
        for years, confidence in ((10, 0.9), (100, 0.95)):
            q = -math.log(-math.log1p(-1 / years))
            both = lambda p: len(x) * p[1] + float(np.sum((np.array(x) / unit - p[0]) / math.exp(p[1]) + np.exp(-(np.array(x) / unit - p[0]) / math.exp(p[1]))))
            top = optimize.minimize(both, [30, 2], method="Nelder-Mead", options=dict(xatol=1e-11, fatol=1e-13, maxiter=4000, maxfev=8000))
            level = (top.x[0] + math.exp(top.x[1]) * q) * unit
            line = gumbel(np.array(x) / unit, level / unit, q) - stats.chi2.ppf(confidence, 1) / 2
            above = lambda at: gumbel(np.array(x) / unit, at, q) - line
            low, high = (optimize.brentq(above, level / unit, level / unit * far, xtol=1e-10) * unit for far in (0.6, 2))
            rows.append((text(x), years, confidence, float(level), float(low), float(high)))
    write(FOLDER, PROGRAM, "profiles-of-small-numbers", "limits of levels of Gumbel laws by the profile of the likelihood, one sample in four units",
          [("x", "text, sample"), ("years", "years, return period"), ("confidence", "1, confidence"), ("level", "of the sample, level"), ("low", "of the sample, lower limit"), ("high", "of the sample, upper limit")],
          [("family", "word gumbel"), ("sample", "text x"), ("years", "years"), ("confidence", "confidence")],
          [("level", "frequency.profile.level"), ("low", "frequency.profile.lower"), ("high", "frequency.profile.upper")], rows,
          tolerance="2e-6 relative", reason="both are searches; the profile is flat at its top")


def periods():
    """Gumbel's law by two L-moments: means over all values and over all pairs."""
    rows = []
    for x, values in (([31.5, 24.8, 40.2, 28.9, 35.1, 52.6, 26.4, 33.3], (30, 55, 80)), ([1.2, 3.4, 2.2, 2.9, 4.4, 1.9, 2.3, 2.4, 3.0, 2.6], (2.0, 5.5))):
        l1 = sum(x) / len(x)
        l2 = sum(abs(a - b) for a, b in combinations(x, 2)) / 2 / math.comb(len(x), 2)
        scale = l2 / math.log(2)
        place = l1 - EULER * scale
        for value in values:
            rows.append((text(x), 40, value, -1 / math.expm1(-math.exp(-(value - place) / scale))))
    write(FOLDER, PROGRAM, "periods-by-the-fit", "return periods of values by Gumbel laws of two L-moments, beside which the drawn limits stand",
          [("x", "text, sample"), ("replicates", "1, samples drawn"), ("value", "of the sample, value"), ("years", "years, return period")],
          [("family", "word gumbel"), ("sample", "text x"), ("replicates", "replicates"), ("confidence", "0.9"), ("value", "value")],
          [("years", "drawn.period-estimate")], rows, tolerance="1e-10 relative", reason="sums and logarithms")


def few_draws():
    """Of 20 draws the last but one and the last are asked: an answer there is, with no draw beyond."""
    rows = [(law, 10, share, 0) for law in ("gumbel", "normal") for share in (0.005, 0.01, 0.025, 0.5, 0.975, 0.99, 0.995)]
    write(FOLDER, PROGRAM, "critical-values-of-few-draws", "critical values between the last two of twenty draws: asked only whether there is an answer",
          [("family", "text, family"), ("size", "1, size of the sample"), ("share", "1, significance"), ("refused", "1, 1 if refused")],
          [("family", "text family"), ("method", "word l-moments"), ("formula", "word cunnane"), ("size", "size"), ("draws", "20"), ("significance", "share")],
          [("refused", "refusal.frequency.critical.anderson-darling")], rows, tolerance="0", reason="a verdict")


unknown_years()
small_numbers()
periods()
few_draws()
