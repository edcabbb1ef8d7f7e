"""Tests for low outliers: NumPy, SciPy and mpmath, no code in common with the library.

    python3 low_outliers.py ../main/resources/dev/runnel/verification/tables/rainfall

writes into that folder

    low-outlier-probability.csv multiple Grubbs-Beck test: the approximation of Cohn and others (2013) by Gauss-Legendre rules, and
                                beside it the share of 2 million simulated normal samples (from numpy.random, seed 17)
    low-outlier-samples.csv     statistic and probability of the lowest values of two samples, from their logarithms
    grubbs-beck-exact.csv       one-sided 10 % point of the largest studentised deviate, by its exact recursion (Grubbs 1950)
"""

import math
import sys

import numpy as np
from scipy import integrate, optimize, special, stats

FOLDER = sys.argv[1]


def write(name, header, rows):
    with open(f"{FOLDER}/{name}.csv", "w", newline="\n") as out:
        out.write(header + "\n")
        for row in rows:
            out.write(",".join(str(cell) for cell in row) + "\n")


NODES, WEIGHTS = np.polynomial.legendre.leggauss(300)


def truncated_moments(z):
    """Central moments 2 to 4 of a standard normal variate known to be above z, from its raw ones by quadrature."""
    mass = stats.norm.sf(z)
    raw = []
    for k in range(1, 5):
        inside = integrate.quad(lambda x: x**k * math.exp(-x * x / 2), z, z + 12 + max(0, -z), epsabs=1e-15, epsrel=1e-12)
        raw.append(inside[0] / math.sqrt(2 * math.pi) / mass)
    m = raw[0]
    return m, raw[1] - m**2, raw[2] - 3 * m * raw[1] + 2 * m**3, raw[3] - 4 * m * raw[2] + 6 * m * m * raw[1] - 3 * m**4


def given(z, count, omega):
    mean, variance, third, fourth = truncated_moments(z)
    of_square = (fourth - variance**2 * (count - 3) / (count - 1)) / count
    shape, scale = variance**2 / of_square, of_square / variance
    # S squared is of a gamma distribution: its nodes over nearly all of it.
    low, high = special.gammaincinv(shape, 1e-16), special.gammainccinv(shape, 1e-16)
    v = (high + low) / 2 + (high - low) / 2 * NODES
    density = WEIGHTS * np.exp((shape - 1) * np.log(v) - v - special.gammaln(shape)) * (high - low) / 2
    s = np.sqrt(v * scale)
    mean_s = float(np.sum(density * s))
    var_s = variance - mean_s**2
    covariance = third / count * mean_s / (2 * variance)
    slope = covariance / var_s
    sigma = math.sqrt(variance / count - slope * covariance)
    return float(np.sum(density * special.ndtr((mean + slope * (s - mean_s) + omega * s - z) / sigma)))


def approximation(n, r, omega):
    """The r-th smallest of n: its place in the uniform distribution is of a beta distribution."""
    place = stats.beta(r, n + 1 - r)
    nodes, weights = np.polynomial.legendre.leggauss(160)
    low, high = stats.norm.ppf(place.ppf(1e-18)), stats.norm.ppf(place.isf(1e-18))
    z = (high + low) / 2 + (high - low) / 2 * nodes
    density = place.pdf(stats.norm.cdf(z)) * stats.norm.pdf(z)
    values = np.array([given(each, n - r, omega) for each in z])
    return float(np.sum(weights * density * values) / np.sum(weights * density))


def probabilities():
    rng = np.random.default_rng(17)
    rows = []
    for n, cases in ((20, ((1, -4.338, -2.952, -2.109), (2, -3.458, -2.458, -1.842), (4, -2.935, -2.127, -1.622))),
                     (40, ((1, -4.086, -3.014, -2.298), (2, -3.266, -2.531, -2.025), (4, -2.711, -2.18, -1.794)))):
        smaller = {}
        for _ in range(20):
            x = np.sort(rng.standard_normal((100_000, n)), axis=1)
            for r, *omegas in cases:
                above = x[:, r:]
                w = (x[:, r - 1] - above.mean(axis=1)) / above.std(axis=1, ddof=1)
                for omega in omegas:
                    smaller[r, omega] = smaller.get((r, omega), 0) + int((w < omega).sum())
        for r, *omegas in cases:
            for omega in omegas:
                rows.append((n, r, omega, repr(approximation(n, r, omega)), smaller[r, omega] / 2e6))
    for n, r, omega in ((10, 1, -3.1), (15, 5, -2.2), (81, 3, -3.0), (85, 2, -3.4), (120, 40, -1.9), (70, 30, -2.05)):
        rows.append((n, r, omega, repr(approximation(n, r, omega)), ""))
    write("low-outlier-probability", "n,r,omega,p,simulated", rows)


def samples():
    """Log-normal quantiles, invented, whose lowest values are drawn away from the rest or stand among it."""
    rows = []
    for name, n, spread, low in (("two far", 24, 0.6, (0.02, 0.15)), ("none far", 31, 0.4, ())):
        values = np.exp(3 + spread * stats.norm.ppf((np.arange(1, n + 1) - 0.4) / (n + 0.2)))
        values[:len(low)] *= low
        values = np.array([float(f"{v:.6g}") for v in values])
        logs = np.log(values)
        for r in range(1, 6):
            omega = float((logs[r - 1] - logs[r:].mean()) / logs[r:].std(ddof=1))
            rows.append((name, " ".join(repr(float(v)) for v in reversed(values)), r, repr(omega), repr(approximation(n, r, omega))))
    write("low-outlier-samples", "name,sample,r,omega,p", rows)


def exact_deviates():
    """F_n(t) = n integral of g_n(u) F_(n-1)(v(u)): the largest residual u, and the largest of the others about their own mean."""
    points = 20001
    x = np.linspace(0, 1, points)
    previous, rows = None, []
    for n in range(3, 150):
        low, high = 1 / math.sqrt(n), (n - 1) / math.sqrt(n)
        # Nearly all probability lies far below the largest possible value.
        high = min(high, 7.0)
        t = low + (high - low) * (1 - (1 - x) ** 2)
        r = t * math.sqrt(n) / (n - 1)
        with np.errstate(divide="ignore", invalid="ignore"):
            density = np.exp((n - 4) / 2 * np.log1p(-r * r) - special.betaln(0.5, (n - 2) / 2)) * math.sqrt(n) / (n - 1)
            v = t * n / (n - 1) / np.sqrt(((n - 1) - n * t * t / (n - 1)) / (n - 2))
            if previous is None:
                before = (v >= math.sqrt(0.5)).astype(float)
            else:
                before = np.interp(v, *previous, left=0, right=1)
            slice_ = n * density * before * 2 * (1 - x) * (high - low)
        slice_[~np.isfinite(slice_)] = 0
        if n == 3:
            slice_[-1] = slice_[-2]
        cdf = integrate.cumulative_trapezoid(slice_, x, initial=0)
        cdf /= cdf[-1]
        previous = (t, cdf)
        if n >= 10:
            rows.append((n, f"{np.interp(0.9, cdf, t):.5f}"))
    write("grubbs-beck-exact", "n,k", rows)
    return rows


def check(rows):
    """The recursion against samples: shares of 400,000 that stay below the deviate, of three sizes."""
    rng = np.random.default_rng(5)
    for n, k in rows:
        if n in (10, 50, 149):
            x = rng.standard_normal((400_000, n))
            largest = (x.max(axis=1) - x.mean(axis=1)) / x.std(axis=1, ddof=1)
            print(n, k, "simulated share below", float((largest < float(k)).mean()))


if __name__ == "__main__":
    check(exact_deviates())
    probabilities()
    samples()
