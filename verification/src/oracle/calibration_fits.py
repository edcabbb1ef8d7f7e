"""Independent computation of calibration curves of a tipping bucket: Python with mpmath, NumPy and SciPy, no code in common.

    python3 calibration_fits.py FOLDER

reads the runs and forms of calibration-fits.csv in the folder and writes the table anew. Every fit is the solution of the normal equations
with 60 digits; SciPy's own minimiser, or NumPy's weighted polynomial, must agree.
"""

import csv
import sys

import numpy as np
from mpmath import exp, log, lu_solve, matrix, mp, mpf, nstr
from scipy import optimize

mp.dps = 60


def polynomial(x, y, degree, weights):
    """Coefficients, constant first, with the least sum of (w (p(x) - y))^2."""
    rows = matrix(len(x), degree + 1)
    for i, at in enumerate(x):
        for k in range(degree + 1):
            rows[i, k] = weights[i] * at**k
    right = matrix([w * value for w, value in zip(weights, y)])
    solved = list(lu_solve(rows.T * rows, rows.T * right))
    peer = np.polyfit(*[np.array([float(v) for v in each]) for each in (x, y)], degree, w=[float(w) for w in weights])
    assert np.allclose([float(c) for c in solved], peer[::-1], rtol=1e-7, atol=1e-12), (solved, peer)
    return solved


def explained(y, fitted):
    mean = sum(y) / len(y)
    return 1 - sum((a - b) ** 2 for a, b in zip(y, fitted)) / sum((a - mean) ** 2 for a in y)


def row(funnel, volumes, tips, seconds, tip, form, recorded):
    """Intensity after calibration, share of the variance explained, tip."""
    truth = [36000 * v / (funnel * t) for v, t in zip(volumes, seconds)]
    seen = [3600 * n * tip / t for n, t in zip(tips, seconds)]
    ones = [mpf(1)] * len(truth)
    if form == "lost-time":
        gaps = [t / n for t, n in zip(seconds, tips)]
        inverse = [1 / i for i in truth]
        lost, slope = polynomial(inverse, gaps, 1, ones)
        tip = slope / 3600
        return recorded / (1 - lost * recorded / slope), explained(gaps, [lost + slope * x for x in inverse]), tip
    if form == "power":
        a, b = polynomial([log(x) for x in seen], [log(y) for y in truth], 1, ones)
        model = lambda x: exp(a) * x**b
    else:
        degree = {"linear": 1, "quadratic": 2}[form]
        c = polynomial(seen, truth, degree, [1 / y for y in truth])
        model = lambda x: sum(c[k] * x**k for k in range(degree + 1))
        share = lambda q: [float((np.polyval(q[::-1], float(x)) - float(y)) / float(y)) for x, y in zip(seen, truth)]
        peer = optimize.least_squares(share, [0, 1, 0][: degree + 1], x_scale=[1, 1, 1e-3][: degree + 1], xtol=1e-15, ftol=1e-15, gtol=1e-15)
        assert abs(np.polyval(peer.x[::-1], float(recorded)) / float(model(recorded)) - 1) < 1e-7, peer
    return model(recorded), explained(truth, [model(x) for x in seen]), tip


def main(folder):
    path = f"{folder}/calibration-fits.csv"
    with open(path, newline="") as file:
        rows = list(csv.DictReader(file))
    with open(path, "w", newline="\n") as out:
        out.write(",".join(rows[0]) + "\n")
        for each in rows:
            lists = [[mpf(x) for x in each[key].split()] for key in "vnt"]
            figures = row(mpf(each["a"]), *lists, mpf(each["d"]), each["form"], mpf(each["r"]))
            each["i"], each["r2"], each["tip"] = (nstr(figure, 17) for figure in figures)
            out.write(",".join(each.values()) + "\n")


if __name__ == "__main__":
    main(sys.argv[1])
