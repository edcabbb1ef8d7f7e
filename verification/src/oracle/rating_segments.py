"""Independent computation of how many segments a rating curve pays for: Python with NumPy and SciPy, no code in common with the library.

    python3 rating_segments.py rating-segments > rating-segments.csv

For one, two and three joined segments the breaks are sought by differential evolution, at least three gaugings in each; the criterion of
Schwarz (1978) is taken with and without the breaks among the parameters, and only records are written on which both agree by more than 3.
"""

import sys

import numpy as np
from scipy.optimize import differential_evolution


def squares(h, lnq, offset, breaks):
    """Joined straight lines in the logarithms."""
    x = np.log(h - offset)
    knots = np.log(np.array(sorted(breaks)) - offset)
    columns = [np.ones_like(x), np.minimum(x, knots[0]) if len(knots) else x]
    for i, k in enumerate(knots):
        top = knots[i + 1] if i + 1 < len(knots) else np.inf
        columns.append(np.clip(x, k, top) - k)
    a = np.column_stack(columns)
    beta = np.linalg.lstsq(a, lnq, rcond=None)[0]
    return float(((lnq - a @ beta) ** 2).sum())


def held(h, breaks):
    edges = [-np.inf, *sorted(breaks), np.inf]
    return all(((h > a) & (h <= b)).sum() >= 3 for a, b in zip(edges, edges[1:]))


def best(h, lnq, offset, count):
    if count == 0:
        return squares(h, lnq, offset, [])
    f = lambda b: squares(h, lnq, offset, b) if held(h, b) else 1e9
    return differential_evolution(f, [(h.min(), h.max())] * count, seed=7, tol=1e-12, maxiter=400, popsize=25).fun


def rating_segments():
    print("stages,discharges,offset,segments")
    rng = np.random.default_rng(1978)
    shapes = {1: ([], [1.8]), 2: ([0.55], [1.2, 2.9]), 3: ([0.45, 0.95], [1.0, 2.8, 0.9])}
    for n, kind in ((5, 2), (6, 2), (8, 1), (8, 3), (9, 3), (12, 1), (12, 2), (18, 3), (18, 2), (14, 1)):
        breaks, exponents = shapes[kind]
        for offset in (0.0, 0.08):
            h = np.round(np.linspace(0.2, 1.6, n), 3)
            lnq = exponents[0] * np.log(h - offset)
            for k, (a, b) in zip(breaks, zip(exponents, exponents[1:])):
                lnq += (b - a) * np.maximum(np.log((h - offset) / (k - offset)), 0)
            q = np.array([float(f"{v:.4g}") for v in np.exp(lnq + rng.normal(0, 0.01, n))])
            figures = []
            for with_breaks in (0, 1):
                bic = []
                for segments in range(1, 4):
                    if segments > 1 and n < 3 * segments:
                        bic.append(np.inf)
                        continue
                    s = best(h, np.log(q), offset, segments - 1)
                    bic.append(n * np.log(s / n) + (segments + 1 + with_breaks * (segments - 1)) * np.log(n))
                order = sorted(bic)
                figures.append((int(np.argmin(bic)) + 1, order[1] - order[0]))
            if figures[0][0] == figures[1][0] and min(f[1] for f in figures) > 3:
                print(",".join((" ".join(f"{v:g}" for v in h), " ".join(f"{v:g}" for v in q), f"{offset:g}", str(figures[0][0]))))


TABLES = {"rating-segments": rating_segments}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
