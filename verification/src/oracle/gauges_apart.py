"""Gauges that stand apart from their neighbours, and gauges compared in storms: Python with NumPy, no code in common.

    python3 gauges_apart.py FOLDER

writes the tables named below into the folder, csv and descriptor. Records are invented, from the seeds below. Which gauges are set
aside is found by recursion over the set that is left, medians by NumPy; the rain of a storm minute by minute.
"""

import math
import random
import sys
from pathlib import Path

import numpy as np

FOLDER = Path(sys.argv[1] if len(sys.argv) > 1 else ".")
NAN = float("nan")


def text(values):
    return " ".join("NaN" if v != v else repr(float(v)) if float(v) != int(v) else str(int(v)) for v in values)


def write(name, title, columns, inputs, checks, rows):
    lines = [
        "author       = Invented records",
        "year         = 2026",
        f"work         = {title}, by NumPy",
        "locator      = seeds in the program",
        "provenance   = derived oracle",
        "program      = verification/src/oracle/gauges_apart.py",
        f"values       = {len(rows) * len(checks)}",
        "",
    ]
    lines += [f"column.{c} = {u}" for c, u in columns]
    lines += [""] + [f"input.{k} = {v}" for k, v in inputs]
    for column, calculation in checks:
        lines += ["", f"check.{column}.calculation = {calculation}", f"check.{column}.expected = {column}"]
    lines += ["", "tolerance = 1e-12 relative or 1e-12", "reason = 16 digits are given"]
    (FOLDER / f"{name}.table").write_text("\n".join(lines) + "\n")
    with open(FOLDER / f"{name}.csv", "w") as out:
        out.write(",".join(c for c, _ in columns) + "\n")
        for row in rows:
            out.write(",".join(str(v) if isinstance(v, (str, int)) else repr(float(v)) for v in row) + "\n")


def pairs(gauges, trusted, own, wet):
    found = []
    others = [g for g in range(len(gauges)) if g in trusted and g != own]
    for day, depth in enumerate(gauges[own]):
        known = [g[day] for g in gauges if not math.isnan(g[day])]
        raining = sum(v >= wet for v in known) > len(known) / 2
        telling = [gauges[g][day] for g in others if not math.isnan(gauges[g][day])]
        telling = [v for v in telling if v > 0 or not raining]
        if len(telling) >= max(1, math.ceil(len(others) / 2)) and not math.isnan(depth):
            found.append((depth, float(np.median(telling))))
    return found


def ratio(gauges, trusted, own, wet):
    both = pairs(gauges, trusted, own, wet)
    return sum(a for a, _ in both) / sum(b for _, b in both)


def settle(gauges, trusted, wet, tolerance):
    if len(trusted) <= 2:
        return trusted
    ratios = {g: ratio(gauges, trusted, g, wet) for g in trusted}
    worst = max(trusted, key=lambda g: abs(math.log(ratios[g])) if ratios[g] > 0 else math.inf)
    if abs(ratios[worst] - 1) <= tolerance:
        return trusted
    return settle(gauges, [g for g in trusted if g != worst], wet, tolerance)


def settled():
    rng = random.Random(81)
    rows = []
    for factors in ((0.5, 1, 1), (1, 1.6, 1, 1), (0, 1, 1), (0.4, 1, 1, 2.2), (1, 1, 1, 0.6, 0), (1, 1, 1)):
        truth = [rng.uniform(1, 25) if rng.random() < 0.4 else 0 for _ in range(30)]
        gauges = [[NAN if rng.random() < 0.05 else round(t * f * rng.uniform(0.9, 1.1), 1) for t in truth] for f in factors]
        trusted = settle(gauges, list(range(len(gauges))), 1.0, 0.2)
        for own in range(len(gauges)):
            rows.append(["; ".join(text(g) for g in gauges), 1, 0.2, own + 1, ratio(gauges, trusted, own, 1.0), len(gauges) - len(trusted)])
    write("neighbours-settled", "Gauges set aside, the farthest off first",
          [("gauges", "mm, days of each"), ("wet", "mm, wet limit"), ("tolerance", "1, let be"), ("gauge", "1, number"), ("ratio", "1, ratio"), ("aside", "1, gauges set aside")],
          [("gauges", "text gauges"), ("wet_mm", "wet"), ("tolerance", "tolerance"), ("gauge", "gauge")],
          [("ratio", "gauge.neighbours.settled-ratio"), ("aside", "gauge.neighbours.set-aside")], rows)


def storms():
    rng = random.Random(82)
    rows = []
    for steps in ((60, 60, 60), (60, 15, 30), (10, 60, 20), (30, 30)):
        gauges = [[NAN if rng.random() < 0.01 else round(rng.uniform(0, 3), 1) if rng.random() < 0.3 else 0.0 for _ in range(48 * 60 // s)] for s in steps]
        minutes = [np.repeat(np.array(g) / s, s) for g, s in zip(gauges, steps)]
        kept = []
        for start, length in ((120, 180), (415, 95), (1000, 250), (1700, 600), (2700, 300)):
            depths = [float(m[start:start + length].sum()) if start + length <= len(m) else NAN for m in minutes]
            kept.append(depths)
        # A period counts where the gauge is there and so are at least half of the others; silent ones tell nothing of a wet one.
        for own in range(len(gauges)):
            table = [[p[g] for p in kept] for g in range(len(gauges))]
            both = pairs(table, list(range(len(gauges))), own, 1.0)
            if len(both) > 1:
                rows.append(["; ".join(text(g) for g in gauges), " ".join(str(s) for s in steps), "120 415 1000 1700 2700", "180 95 250 600 300",
                             1, own + 1, len(both), both[-1][1], sum(a for a, _ in both) / sum(b for _, b in both)])
    write("neighbours-in-storms", "Gauges of their own steps compared in storms",
          [("gauges", "mm, steps of each"), ("steps", "min, step of each"), ("from", "min, begin"), ("long", "min, length"), ("wet", "mm, wet limit"), ("gauge", "1, number"),
           ("count", "1, storms that count"), ("last", "mm, median of the others in the last"), ("ratio", "1, ratio")],
          [("gauges", "text gauges"), ("step_minutes", "text steps"), ("from_minutes", "text from"), ("long_minutes", "text long"), ("wet_mm", "wet"), ("gauge", "gauge")],
          [("count", "gauge.neighbours.storms"), ("last", "gauge.neighbours.last-of-others"), ("ratio", "gauge.neighbours.ratio-in-storms")], rows)


settled()
storms()
