"""Independent computation of simulated uncertainties: Python with NumPy and SciPy, no code in common with the library.

    python3 uncertainty.py NAME > NAME.csv

writes one of the tables named in TABLES below. Exact values come from the distributions themselves, by closed form or as a
convolution on a fine grid; the count of blocks that the adaptive procedure needs comes from many runs of it with other draws.
"""

import sys

import numpy as np
from scipy import optimize, signal, special, stats


def show(*cells):
    print(",".join(c if isinstance(c, str) else f"{c:.15g}" for c in cells))


def density(shape, deviation, grid):
    """Mass of one input in the cells of a grid about 0, from its distribution function."""
    edges = np.append(grid - (grid[1] - grid[0]) / 2, grid[-1] + (grid[1] - grid[0]) / 2)
    if shape == "normal":
        cdf = stats.norm.cdf(edges / deviation)
    elif shape == "rectangular":
        a = deviation * np.sqrt(3)
        cdf = np.clip((edges + a) / (2 * a), 0, 1)
    elif shape == "triangular":
        a = deviation * np.sqrt(6)
        x = np.clip(edges / a, -1, 1)
        cdf = np.where(x < 0, (1 + x) ** 2 / 2, 1 - (1 - x) ** 2 / 2)
    else:
        a = deviation * np.sqrt(2)
        cdf = 0.5 + np.arcsin(np.clip(edges / a, -1, 1)) / np.pi
    return np.diff(cdf)


class Sum:
    """The distribution of a sum of independent inputs about the sum of their estimates."""

    def __init__(self, deviations, shapes):
        self.variance = sum(d * d for d in deviations)
        half = 9 * np.sqrt(self.variance)
        n = 200_001
        grid = np.linspace(-half, half, n)
        mass = density(shapes[0], deviations[0], grid)
        for d, s in zip(deviations[1:], shapes[1:]):
            mass = signal.fftconvolve(mass, density(s, d, grid), mode="same")
        self.grid, self.step = grid, grid[1] - grid[0]
        self.cumulated = np.cumsum(np.clip(mass, 0, None))

    def ppf(self, p):
        return float(np.interp(p, self.cumulated, self.grid + self.step / 2))


def numerical_tolerance(u, digits):
    return 0.5 * 10.0 ** (np.floor(np.log10(u)) - digits + 1)


def draws(rng, deviations, shapes, n):
    total = np.zeros(n)
    for d, s in zip(deviations, shapes):
        if s == "normal":
            total += rng.normal(0, d, n)
        elif s == "rectangular":
            total += rng.uniform(-d * np.sqrt(3), d * np.sqrt(3), n)
        elif s == "triangular":
            total += rng.triangular(-d * np.sqrt(6), 0, d * np.sqrt(6), n)
        else:
            total += d * np.sqrt(2) * np.cos(rng.uniform(0, np.pi, n))
    return total


def adaptive():
    """JCGM 101, 7.9: exact figures, block size max(ceil(100/(1 - p)), 10000), and blocks needed in 150 other runs."""
    print("estimates,deviations,shapes,digits,probability,mean,standard,end,tolerance,size,blocks,spread,mean_within,standard_within,end_within")
    rng = np.random.default_rng(20_08)
    for estimates, deviations, shapes, digits, p in (
        ("3", "6", "normal", 2, 0.95),
        ("1 -2", "4 3.4", "rectangular rectangular", 2, 0.95),
        ("0 0 5", "0.3 0.2 0.5", "triangular arcsine normal", 2, 0.9),
        ("1", "0.4", "normal", 1, 0.9975),
        ("10", "7", "rectangular", 1, 0.95),
    ):
        d, s, m = [float(x) for x in deviations.split()], shapes.split(), sum(float(x) for x in estimates.split())
        law = Sum(d, s)
        u = np.sqrt(law.variance)
        delta = numerical_tolerance(u, digits)
        size = max(int(np.ceil(round(100 / (1 - p), 6))), 10_000)
        counts, answers = [], []
        for _ in range(150):
            figures, pooled = [], []
            while True:
                y = draws(rng, d, s, size)
                figures.append([y.mean(), y.std(ddof=1), *np.quantile(y, [(1 - p) / 2, (1 + p) / 2])])
                pooled.append(y)
                h = len(figures)
                if h > 1:
                    spread = np.std(np.array(figures), axis=0, ddof=1) / np.sqrt(h)
                    if np.all(2 * spread <= numerical_tolerance(np.concatenate(pooled).std(ddof=1), digits)):
                        break
            counts.append(h)
            y = np.concatenate(pooled)
            answers.append([y.mean(), y.std(ddof=1), np.quantile(y, (1 + p) / 2)])
        # what one run gives lies within three standard deviations of the runs; a run that stops early by chance errs most
        show(estimates, deviations, shapes, str(digits), str(p), m, u, m + law.ppf((1 + p) / 2), delta, str(size),
             float(np.mean(counts)), 3 * float(np.std(counts)) + 0.5, *(3 * np.std(answers, axis=0)))


def validation():
    """Ends of the 95 % interval by propagation, m -+ 1.96 u, against those of the exact distribution."""
    print("estimates,deviations,shapes,digits,trials,low,high,tolerance,holds,within")
    for estimates, deviations, shapes, digits in (
        ("0 0 0 0", "1 1 1 1", "normal normal normal normal", 1),
        ("2 3", "0.5 4", "normal rectangular", 2),
        ("1 5 8", "0.02 0.3 0.1", "normal arcsine triangular", 2),
        ("7 7", "30 30", "triangular triangular", 1),
    ):
        d, s, m = [float(x) for x in deviations.split()], shapes.split(), sum(float(x) for x in estimates.split())
        law, trials = Sum(d, s), 400_000
        u = np.sqrt(law.variance)
        end = stats.norm.ppf(0.975) * u
        low, high = abs(-end - law.ppf(0.025)), abs(end - law.ppf(0.975))
        delta = numerical_tolerance(u, digits)
        # three standard errors of a quantile: root(p(1 - p)/n)/f
        f = (law.ppf(0.976) - law.ppf(0.974)) / 0.002
        show(estimates, deviations, shapes, str(digits), str(trials), low, high, delta, "1" if max(low, high) <= delta else "0",
             3 * np.sqrt(0.025 * 0.975 / trials) * f)


def drawn():
    """Moments and quantiles of drawn sums: Student's law for few degrees of freedom, correlated normals, a lopsided share."""
    print("estimates,deviations,shapes,freedom,correlation,quantile,standard,drawn,at,relative,share,standard_within,quantile_within")
    n = 200_000
    for estimates, deviations, shapes, freedom, r, q in (
        ("2", "3", "normal", 7, 0, 0.8),
        ("1 4", "2 1", "normal normal", 0, 0.6, 0.3),
        ("1 4", "2 1", "normal normal", 0, -0.8, 0.95),
        ("5", "1.5", "triangular", 0, 0, 0.1),
        ("-5", "1.5", "arcsine", 0, 0, 0.2),
        ("0.5 9", "1 2", "rectangular normal", 0, 0, 0.7),
    ):
        d, s, m = [float(x) for x in deviations.split()], shapes.split(), sum(float(x) for x in estimates.split())
        if freedom:
            law = stats.t(freedom, scale=d[0])
            u, first, at = d[0], law.std(), m + law.ppf(q)
        elif r:
            u = np.sqrt(d[0] ** 2 + d[1] ** 2 + 2 * r * d[0] * d[1])
            first, at = u, m + u * stats.norm.ppf(q)
        else:
            law = Sum(d, s)
            u = np.sqrt(law.variance)
            first, at = u, m + law.ppf(q)
        shares = [x * (x + (r * d[1 - i] if len(d) > 1 else 0)) / u**2 for i, x in enumerate(d)]
        share = max(shares, key=abs)
        step = 0.004
        ends = [Sum(d, s).ppf(q + e) for e in (-step, step)] if not r and not freedom else (
            [stats.t(freedom, scale=d[0]).ppf(q + e) for e in (-step, step)] if freedom else [u * stats.norm.ppf(q + e) for e in (-step, step)])
        show(estimates, deviations, shapes, str(freedom), str(r), str(q), u, first, at, u / abs(m), 100 * share,
             first * 3 * np.sqrt(1.2 / n), 3 * np.sqrt(q * (1 - q) / n) * (ends[1] - ends[0]) / (2 * step))


def volumes():
    """Volumes of one instrument: what is random adds as squares, what is common straight."""
    print("volumes,randoms,commons,volume,random,common,standard")
    for v, r, c in (("4320 4100", "88 95", "130 121"), ("12.5 0.4 7.7", "1.1 0.03 0.9", "0.2 0.01 0.35")):
        vs, rs, cs = (np.array([float(x) for x in t.split()]) for t in (v, r, c))
        random, common = np.sqrt((rs**2).sum()), cs.sum()
        show(v, r, c, vs.sum(), random, common, np.sqrt(random**2 + common**2))


TABLES = {
    "uncertainty-adaptive": adaptive,
    "uncertainty-validation": validation,
    "uncertainty-drawn": drawn,
    "volumes-joined": volumes,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
