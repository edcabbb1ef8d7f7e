"""Average run lengths of cumulative sums in both directions: writes the table change-run-lengths-both-sides.

Page's integral equation of one sum, L(z) = 1 + L(0) F(k - d - z) + integral over [0, h] of L(x) f(x + k - d - z) dx, is
solved at 400 Gauss-Legendre nodes; the two sums join by 1/L = 1/L(d) + 1/L(-d) (Kemp 1961, exact for sums that start at 0).
Run: python3 verification/src/oracle/cusum_both_sides.py FOLDER   (Python 3.11, numpy and scipy)
"""
import sys
import numpy as np
from scipy.stats import norm

NODES, WEIGHTS = np.polynomial.legendre.leggauss(400)


def one_side(k, h, shift):
    x = h / 2 * (NODES + 1)
    w = h / 2 * WEIGHTS
    points = np.concatenate(([0.0], x))
    a = np.zeros((401, 401))
    a[:, 0] = norm.cdf(k - shift - points)
    a[:, 1:] = w * norm.pdf(x[None, :] + k - shift - points[:, None])
    return np.linalg.solve(np.eye(401) - a, np.ones(401))[0]


def both(k, h, shift):
    return 1 / (1 / one_side(k, h, shift) + 1 / one_side(k, h, -shift))


ROWS = [(0.5, 4.2, 0.0), (0.5, 4.2, 0.7), (0.5, 5.1, 1.3), (0.75, 3.6, 0.4), (0.25, 7.7, 0.55), (1.0, 2.3, 2.1),
        (0.3, 6.4, -0.8), (0.6, 3.1, 0.15)]
with open(sys.argv[1] + "/change-run-lengths-both-sides.csv", "w") as out:
    out.write("k,h,shift,length\n")
    for row in ROWS:
        out.write("%s,%s,%s,%.12g\n" % (*row, both(*row)))
