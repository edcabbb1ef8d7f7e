"""Moments, L-moments, fits and standard errors of published samples: mpmath and SciPy, no code in common with the library.

    python3 sample_fits.py FOLDER

FOLDER holds the rainfall tables; samples are read from its folder data, the questions (family, method, parameter, return period)
from the tables sample-moments-*, sample-l-moments-*, fit-*, fit-quantiles-*, standard-errors-*, quantile-standard-errors and
ten-minute-station-*, which are written anew. L-moments are exact fractions over all ranks; a shape is the root of the family's own
skewness or L-skewness; a maximum of the likelihood is SciPy's simplex, then the root of the gradient with 30 digits; errors are the
inverse of the matrix of second derivatives there. Made with mpmath 1.3 and SciPy 1.17.
"""

import csv
import functools
import glob
import os
import re
import sys
from fractions import Fraction
from math import comb

import numpy as np
from mpmath import diff, euler, exp, findroot, gamma, inf, inverse, log, log1p, loggamma, matrix, mp, mpf, nstr, pi, quad, sqrt
from scipy import optimize

from distributions import FAMILIES, l_moments

mp.dps = 40
NAMES = {
    "gumbel": ["xi", "alpha"],
    "exponential": ["xi", "alpha"],
    "gev": ["xi", "alpha", "k"],
    "generalized-logistic": ["xi", "alpha", "k"],
    "generalized-normal": ["xi", "alpha", "k"],
    "generalized-pareto": ["xi", "alpha", "k"],
    "pearson-iii": ["mu", "sigma", "gamma"],
    "log-pearson-iii": ["mu", "sigma", "gamma"],
    "log-normal": ["mu", "sigma"],
    "normal": ["mu", "sigma"],
}


class Sample:
    def __init__(self, folder, name, column="x"):
        with open(f"{folder}/data/{name}.csv", newline="") as file:
            rows = csv.DictReader(line for line in file if not line.startswith("#"))
            self.exact = sorted(Fraction(row[column]) for row in rows if row[column].strip())
        self.x = [mpf(v.numerator) / v.denominator for v in self.exact]

    @functools.cached_property
    def ratios(self):
        """lambda 1, lambda 2, tau 3 and tau 4, exact until the division."""
        n = len(self.exact)
        b = [sum(Fraction(comb(i, r), comb(n - 1, r)) * v for i, v in enumerate(self.exact)) / n for r in range(4)]
        l2, l3, l4 = 2 * b[1] - b[0], 6 * b[2] - 6 * b[1] + b[0], 20 * b[3] - 30 * b[2] + 12 * b[1] - b[0]
        of = lambda f: mpf(f.numerator) / f.denominator
        return of(b[0]), of(l2), of(l3 / l2), of(l4 / l2)

    @staticmethod
    def moments(x):
        n = len(x)
        mean = sum(x) / n
        s2 = sum((v - mean) ** 2 for v in x) / (n - 1)
        return mean, sqrt(s2), n * sum((v - mean) ** 3 for v in x) / ((n - 1) * (n - 2) * sqrt(s2) ** 3)


def by_l_moments(family, sample):
    l1, l2, t3, _ = sample.ratios
    if family == "gumbel":
        a = l2 / log(2)
        return l1 - euler * a, a
    if family == "exponential":
        return l1 - 2 * l2, 2 * l2
    if family == "generalized-pareto":
        k = (1 - 3 * t3) / (1 + t3)
        a = l2 * (1 + k) * (2 + k)
        return l1 - a / (1 + k), a, k
    if family == "pearson-iii":
        of = lambda g: l_moments(FAMILIES[family](mpf(0), mpf(1), g))
        g = findroot(lambda g: of(g)[2] - t3, (6 * t3, mpf("6.3") * t3), solver="secant", tol=mpf(10) ** -36)
        return l1, l2 / of(g)[1], g
    start = {"gev": -(t3 - mpf("0.17")) * mpf("1.5"), "generalized-logistic": -t3, "generalized-normal": -2 * t3}[family]
    unit = lambda k: l_moments(FAMILIES[family](mpf(0), mpf(1), k))
    k = findroot(lambda k: unit(k)[2] - t3, (start, start - mpf("0.01")), solver="secant", tol=mpf(10) ** -40)
    m1, m2, _, _ = unit(k)
    return l1 - m1 * l2 / m2, l2 / m2, k


def by_moments(family, sample):
    if family == "log-pearson-iii":
        return sample.moments([log(v) / log(10) for v in sample.x])
    if family == "log-normal":
        return sample.moments([log(v) for v in sample.x])[:2]
    mean, sd, skew = sample.moments(sample.x)
    if family == "pearson-iii":
        return mean, sd, skew
    if family == "gumbel":
        a = sd * sqrt(6) / pi
        return mean - euler * a, a

    def central(k):
        """Mean, deviation and skew with xi 0 and alpha 1: quadrature over the quantiles of both halves."""
        d = FAMILIES[family](mpf(0), mpf(1), k)
        half = lambda power, m: quad(lambda f: (d.quantile(f, None) - m) ** power + (d.quantile(None, f) - m) ** power, [0, mpf("0.5")])
        m = half(1, 0)
        s = sqrt(half(2, m))
        return m, s, half(3, m) / s**3

    start = {"generalized-logistic": mpf("-0.1"), "generalized-normal": -skew / 3, "generalized-pareto": mpf("0.2")}[family]
    with mp.workdps(30):
        k = findroot(lambda k: central(k)[2] - skew, (start, start + mpf("0.01")), solver="secant", tol=mpf(10) ** -26)
        m, s, _ = central(k)
    return mean - m * sd / s, sd / s, k


def log_density(family, p, x):
    if family in ("gumbel", "gev"):
        z = (x - p[0]) / p[1]
        k = p[2] if family == "gev" else 0
        y = -log1p(-k * z) / k if k else z
        return -log(p[1]) - (1 - k) * y - exp(-y)
    if family == "log-pearson-iii":
        return log_density("pearson-iii", p, log(x) / log(10)) - log(x * log(10))
    a = 4 / p[2] ** 2
    z = a + (x - p[0]) / p[1] * 2 / p[2]
    return (a - 1) * log(z) - z - loggamma(a) + log(2 / (p[1] * abs(p[2])))


def log_likelihood(family, sample):
    def of(*p):
        return sum(log_density(family, p, v) for v in sample.x)

    return of


@functools.lru_cache(maxsize=None)
def fit(family, method, sample):
    if method == "l-moments":
        return by_l_moments(family, sample)
    if method == "moments":
        return by_moments(family, sample)
    if family == "exponential":
        return sample.x[0], sum(sample.x) / len(sample.x) - sample.x[0]
    of = log_likelihood(family, sample)
    first = by_l_moments(family, sample) if family in ("gumbel", "gev") else by_moments(family, sample)
    scale = [float(first[1]), float(first[1])] + [0.3] * (len(first) - 2)

    def cost(u):
        try:
            value = of(*(f + mpf(v) * s for f, v, s in zip(first, u, scale)))
            return -float(value) if mp.im(value) == 0 else 1e9
        except (ValueError, ZeroDivisionError):
            return 1e9

    with mp.workdps(18):
        at = np.zeros(len(first))
        while cost(at) == 1e9:  # the first guess leaves a value of the sample beyond the bound
            first = (*first[:2], first[2] * mpf("0.9"))
        for _ in range(4):  # a simplex that has shrunk too early is begun anew
            at = optimize.minimize(cost, at, method="Nelder-Mead", options={"xatol": 1e-10, "fatol": 1e-13, "maxiter": 4000}).x
    p = [f + mpf(v) * s for f, v, s in zip(first, at, scale)]
    n = len(p)
    with mp.workdps(60):
        slope = lambda i: lambda *q: diff(of, q, tuple(int(j == i) for j in range(n)))
        root = findroot([slope(i) for i in range(n)], p, tol=mpf(10) ** -30)
    return tuple(root)


def covariance(family, sample):
    p = fit(family, "maximum-likelihood", sample)
    of, n = log_likelihood(family, sample), len(p)
    with mp.workdps(60):
        order = lambda i, j: tuple(int(m == i) + int(m == j) for m in range(n))
        return p, inverse(matrix([[-diff(of, p, order(i, j)) for j in range(n)] for i in range(n)]))


def quantile(family, p, years):
    return FAMILIES[family](*p).quantile(None, 1 / mpf(years))


def quantile_error(family, sample, years):
    p, c = covariance(family, sample)
    n = len(p)
    with mp.workdps(60):
        g = [diff(lambda *q: quantile(family, q, years), p, tuple(int(j == i) for j in range(n))) for i in range(n)]
    return sqrt(sum(g[i] * c[i, j] * g[j] for i in range(n) for j in range(n)))


class Table:
    def __init__(self, folder, name):
        self.path = f"{folder}/{name}.csv"
        with open(self.path, newline="") as file:
            reader = csv.DictReader(file)
            self.rows, self.columns = list(reader), reader.fieldnames

    def write(self):
        with open(self.path, "w", newline="") as file:
            out = csv.DictWriter(file, self.columns, lineterminator="\n")
            out.writeheader()
            out.writerows(self.rows)


def parameter(family, method, sample, name):
    return fit(family, method, sample)[NAMES[family].index(name)]


def main(folder):
    stations = [os.path.basename(p)[15:-4] for p in sorted(glob.glob(f"{folder}/sample-moments-*.csv"))]
    samples = {s: Sample(folder, s) for s in stations}
    for s, sample in samples.items():
        for name, digits, answer in (
            ("sample-moments", 16, lambda r: dict(zip(["mean", "sd", "skew"], sample.moments(sample.x)))[r["m"]]),
            ("sample-l-moments", 16, lambda r: dict(zip(
                ["lambda1", "lambda2", "tau3", "tau4", "tau"], (*sample.ratios, sample.ratios[1] / sample.ratios[0])))[r["m"]]),
            ("fit", 16, lambda r: parameter(r["f"], r["m"], sample, r["p"])),
            ("fit-likelihood", 16, lambda r: parameter(r["f"], r["m"], sample, r["p"])),
            ("fit-quantiles", 16, lambda r: quantile(r["f"], fit(r["f"], r["m"], sample), r["t"])),
            ("fit-quantiles-likelihood", 16, lambda r: quantile(r["f"], fit(r["f"], r["m"], sample), r["t"])),
            ("standard-errors", 12, lambda r: sqrt(covariance(r["f"], sample)[1][NAMES[r["f"]].index(r["p"]), NAMES[r["f"]].index(r["p"])])),
        ):
            table = Table(folder, f"{name}-{s}")
            for row in table.rows:
                row["v"] = nstr(answer(row), digits)
            table.write()
    for name, digits, answer in (
        ("fit-moments-three-parameters", 17, lambda r, x: parameter(r["f"], "moments", x, r["w"])),
        ("fit-likelihood-pearson", 17, lambda r, x: parameter(r["f"], "maximum-likelihood", x, r["w"])),
        ("quantile-standard-errors", 12, lambda r, x: quantile_error(r["f"], x, r["t"])),
    ):
        table = Table(folder, name)
        for row in table.rows:
            for s, sample in samples.items():
                row[s.replace("-", "_")] = nstr(answer(row, sample), digits)
        table.write()
    durations = {c: Sample(folder, "ten-minute-station", c) for c in Table(folder, "ten-minute-station-parameters").columns[2:]}
    for name, answer in (
        ("parameters", lambda r, x: parameter(r["f"], "l-moments", x, r["w"])),
        ("quantiles", lambda r, x: quantile(r["f"], fit(r["f"], "l-moments", x), r["t"])),
        ("likelihood-parameters", lambda r, x: parameter(r["f"], "maximum-likelihood", x, r["w"])),
        ("likelihood-quantiles", lambda r, x: quantile(r["f"], fit(r["f"], "maximum-likelihood", x), r["t"])),
        ("l-moments", lambda r, x: dict(zip(["lambda1", "lambda2", "tau3", "tau4"], x.ratios))[r["moment"]]),
    ):
        table = Table(folder, f"ten-minute-station-{name}")
        for row in table.rows:
            for column, sample in durations.items():
                row[column] = nstr(answer(row, sample), 12)
        table.write()


if __name__ == "__main__":
    main(sys.argv[1])
