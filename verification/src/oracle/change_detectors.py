"""Change detectors and their average run lengths by other means than the library's.

Statistics: straight from the definitions, in exact fractions. Run lengths: the Markov chain of D. Brook and D. A. Evans
(1972, Biometrika 59, 539-549), with 400, 800 and 1600 states, extrapolated; the library solves integral equations.

    python3 change_detectors.py FOLDER

Python 3.11, numpy 2, scipy 1.
"""

import csv
import sys
from fractions import Fraction as F

import numpy as np
from scipy.stats import norm


def write(path, header, rows):
    with open(path, "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(header)
        out.writerows(rows)


def chain_cusum(k, h, shift, states):
    width = h / (states - 0.5)
    centres = np.arange(states) * width
    upper = centres[None, :] + width / 2 - centres[:, None] + k - shift
    lower = centres[None, :] - width / 2 - centres[:, None] + k - shift
    step = norm.cdf(upper) - norm.cdf(lower)
    step[:, 0] = norm.cdf(upper[:, 0])
    return np.linalg.solve(np.eye(states) - step, np.ones(states))[0]


def chain_ewma(weight, limit, shift, states):
    states += 1 - states % 2
    c = limit * np.sqrt(weight / (2 - weight))
    width = 2 * c / states
    centres = -c + (np.arange(states) + 0.5) * width
    mean = (1 - weight) * centres[:, None]
    step = norm.cdf((centres[None, :] + width / 2 - mean) / weight - shift) - norm.cdf(
        (centres[None, :] - width / 2 - mean) / weight - shift
    )
    return np.linalg.solve(np.eye(states) - step, np.ones(states))[states // 2]


def extrapolated(method, *figures):
    sizes = np.array([401.0, 801.0, 1601.0])
    values = np.array([method(*figures, int(n)) for n in sizes])
    # The error falls with the square of the width of a state, and the fourth power next.
    matrix = np.stack([np.ones(3), sizes**-2, sizes**-4], axis=1)
    return np.linalg.solve(matrix, values)[0]


def lengths(folder):
    rows = []
    for k, h, shift in [(0.5, 4, 0), (0.5, 5, 0), (0.5, 5, 0.75), (0.25, 8.01, 0), (0.75, 3.34, 1.5), (1, 2.52, 0.3), (0.4, 6, -0.2)]:
        rows.append(("cusum", k, h, shift, repr(float(extrapolated(chain_cusum, k, h, shift)))))
    for weight, limit, shift in [(0.4, 3.054, 0), (0.2, 2.962, 0.25), (0.1, 2.814, 0.75), (0.05, 2.615, 0.25), (0.3, 3, 1.1), (0.75, 2.5, -0.4)]:
        rows.append(("ewma", weight, limit, shift, repr(float(extrapolated(chain_ewma, weight, limit, shift)))))
    write(folder + "/change-run-lengths-cusum.csv", ["k", "h", "shift", "length"], [r[1:] for r in rows if r[0] == "cusum"])
    write(folder + "/change-run-lengths-ewma.csv", ["weight", "width", "shift", "length"], [r[1:] for r in rows if r[0] == "ewma"])


def statistics(folder):
    values = [F(v, 10) for v in (101, 97, 104, 99, 93, 108, 112, 109, 95, 117, 121, 118, 124, 90, 87, 84, 91, 80, 79, 83)]
    mu, k, weight, slack = F(10), F(3, 10), F(7, 20), F(1, 5)
    up = low = total = m = least = F(0)
    mean = mu
    text = " ".join(str(float(v)) for v in values)
    rows = []
    for i, x in enumerate(values):
        up = max(F(0), up + x - mu - k)
        low = max(F(0), low + mu - x - k)
        mean = weight * x + (1 - weight) * mean
        total += x
        m += x - total / (i + 1) - slack
        least = min(least, m)
        rows.append((text, i, *(repr(float(v)) for v in (up, low, mean, m - least))))
    write(folder + "/change-statistics.csv", ["values", "i", "up", "low", "average", "page_hinkley"], rows)


def hampel(folder):
    values = [1.0, 1.1, 0.9, 1.2, 5.0, 1.1, 1.0, 0.9, 1.0, -3.0, 1.1, 1.2, 1.0, 1.3, 1.9, 1.2, 0.8, 1.0]
    text = " ".join(map(str, values))
    rows = []
    for half, limit in ((2, 3.0), (3, 3.0), (3, 5.0)):
        for i in range(half, len(values) - half):
            window = np.array(values[i - half : i + half + 1])
            middle = np.median(window)
            scatter = np.median(np.abs(window - middle)) / norm.ppf(0.75)
            rows.append((text, half, limit, i, int(abs(values[i] - middle) > limit * scatter)))
    write(folder + "/hampel-windows.csv", ["values", "half", "limit", "i", "wild"], rows)


def medians(folder):
    values = [0.31, 0.33, 0.30, 0.92, 0.32, 0.29, 0.35, 0.0, 0.34, 0.36, 0.38, 0.37, -0.2, 0.41, 0.40, 0.44, 0.43, 0.47]
    text = " ".join(map(str, values))
    rows = []
    for half in (1, 2, 4, 7):
        for i in range(half, len(values) - half):
            rows.append((text, half, i, repr(float(np.median(values[i - half : i + half + 1])))))
    write(folder + "/rolling-medians.csv", ["values", "half", "i", "median"], rows)


def main(folder):
    lengths(folder)
    statistics(folder)
    hampel(folder)
    medians(folder)


main(sys.argv[1])
