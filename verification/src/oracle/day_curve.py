"""The usual course of a day, from its formula: harmonics, weights after Huber, a ridge of 0.3 on all but the level.

    python3 day_curve.py FOLDER

Python 3.11, numpy 2.
"""

import csv
import sys

import numpy as np


def row(hour, rest):
    angle = 2 * np.pi * hour / 24
    day = [f(k * angle) for k in range(1, 5) for f in (np.cos, np.sin)]
    off = [rest] + [rest * f(k * angle) for k in (1, 2) for f in (np.cos, np.sin)]
    return [1.0] + day + off


def days(count):
    """So many hourly values of two weeks, with two that are far off."""
    random = np.random.default_rng(20260302)
    hours = np.tile(np.arange(24) + 0.5, 14)[:count]
    rest = np.repeat([0, 0, 0, 0, 0, 1, 1] * 2, 24)[:count]
    values = 1 + 0.3 * np.sin(2 * np.pi * (hours - 8) / 24) + 0.1 * rest + 0.05 * random.standard_normal(hours.size)
    values[40] += 3
    values[200] -= 2
    values = np.round(values, 4)
    x = np.array([row(h, r) for h, r in zip(hours, rest)])
    ridge = 0.3 * np.eye(x.shape[1])
    ridge[0, 0] = 0
    weights = np.ones(hours.size)
    for _ in range(8):
        root = np.sqrt(weights)[:, None]
        stacked = np.vstack([x * root, np.sqrt(ridge)])
        target = np.concatenate([values * root[:, 0], np.zeros(x.shape[1])])
        figures = np.linalg.lstsq(stacked, target, rcond=None)[0]
        left = values - x @ figures
        scatter = np.median(np.abs(left)) / 0.6744897501960817
        weights = np.minimum(1, 1.5 * scatter / np.maximum(np.abs(left), 1e-300))
    explained = 1 - np.var(left) / np.var(values)
    text = " ".join(f"{v:.4f}" for v in values)
    rests = " ".join(str(int(r)) for r in rest)
    all_hours = " ".join(str(h) for h in hours)
    return [
        [all_hours, rests, text, hour, off, repr(float(np.dot(row(hour, off), figures))), repr(float(scatter)), repr(float(explained))]
        for hour, off in ((0, 0), (3.25, 0), (7.5, 1), (11.9, 0), (16, 1), (19.3, 0), (23.75, 1))
    ]


def main(folder):
    with open(folder + "/day-curve.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["hours", "rest", "values", "hour", "off", "value", "scatter", "explained"])
        # An even and an odd count of values.
        out.writerows(days(336) + days(331))


main(sys.argv[1])
