"""Figures beside the main ones: how many readings corrections altered, how many steps a resampled series has, a line through more
values than are taken in pairs, samples far from zero, outliers counted, the British rational method, rarity under more rain. Plain
Python, exact fractions where that is possible, no code in common with the library.

    python3 seldom_asked.py FOLDER

writes into the folder of the tables of timeseries or of rainfall the tables named below, csv and descriptor.
"""

import math
import random
import sys
from fractions import Fraction as F
from pathlib import Path

from own_tables import text, write

FOLDER = sys.argv[1]
PROGRAM = "seldom_asked.py"


def altered():
    """A reading is altered that lies within the time of an offset, a factor or a shift: its value, its quality or its time is another."""
    rng, rows = random.Random(81), []
    for case in range(12):
        values = [F(rng.randint(20, 90), 100) for _ in range(12)]
        spans = [(a, rng.randint(a + 1, 12)) for a in (rng.randint(0, 9) for _ in range(rng.randint(1, 3)))]
        kinds = [rng.choice(["offset", "factor"]) for _ in spans]
        by = [F(rng.randint(5, 40), 20) for _ in spans]
        inside = {i for a, b in spans for i in range(a, b)}
        rows.append((text(values), ";".join(f"{k} {a} {b} {float(v)}" for k, (a, b), v in zip(kinds, spans, by)), len(inside)))
    write(FOLDER, PROGRAM, "readings-altered", "how many readings lie within the time of a correction",
          [("values", "1, readings a minute apart"), ("corrections", "text, corrections in minutes"), ("altered", "readings that are not what they were")],
          [("values", "text values"), ("corrections", "text corrections")], [("altered", "correction.altered")], rows, tolerance="0", reason="a count")


def steps():
    """Steps of an hour from the full hour before the first reading to the one of the last reading, at its edges and inside."""
    rows = []
    for first in (0, 1, 59):
        for last in (first, 60, 61, 119, 120, 121, 180, 240):
            for statistic in ("mean", "sum", "maximum", "minimum", "last"):
                if last >= first:
                    times = sorted({first, (first + last) // 2, last})
                    rows.append((text(times), text([1 + (3 * i) % 4 for i in range(len(times))]), statistic, last // 60 - first // 60 + 1))
    write(FOLDER, PROGRAM, "steps-of-resampled", "how many steps of an hour readings reach",
          [("times", "min, times"), ("values", "1, readings"), ("statistic", "text, what is asked of a step"), ("size", "steps")],
          [("times", "text times"), ("values", "text values"), ("step_minutes", "60"), ("gap_minutes", "90"), ("between", "word linear"), ("statistic", "text statistic")],
          [("size", "resample.size")], rows, tolerance="0", reason="a count")


def many():
    """A straight line through more values than are taken in pairs: whichever pairs are drawn, all have its slope."""
    rows = []
    for slope, intercept in ((3, 7), (-2, 11)):
        times = list(range(5001))
        rows.append((text(times), text([intercept + slope * t for t in times]), slope, intercept, slope, slope))
    write(FOLDER, PROGRAM, "line-through-many", "straight lines through 5001 values, whose pairs are drawn",
          [("times", "1, times"), ("values", "1, values"), ("slope", "slope"), ("intercept", "intercept"), ("lower", "lower limit of the slope"), ("upper", "upper limit")],
          [("times", "text times"), ("sample", "text values"), ("confidence", "0.9")],
          [("slope", "trend.theil-sen.slope"), ("intercept", "trend.theil-sen.intercept"), ("lower", "trend.theil-sen.lower"), ("upper", "trend.theil-sen.upper")], rows,
          tolerance="1e-12", reason="whole numbers")


def choose(n, k):
    return math.comb(n, k)


def far_samples():
    """L-moments of samples far from zero by sums over ranks in exact fractions, Hosking (1990), so that the mean is no whole number."""
    rng, rows = random.Random(82), []
    for base in (0, 10**6, 10**12, -(10**12)):
        for size in (4, 7, 11, 30):
            sample = [base + rng.randint(1, 400) for _ in range(size)]
            x = sorted(F(v) for v in sample)
            b = [sum(F(choose(j, r), choose(size - 1, r)) * v for j, v in enumerate(x)) / size for r in range(4)]
            l2, l3, l4 = 2 * b[1] - b[0], 6 * b[2] - 6 * b[1] + b[0], 20 * b[3] - 30 * b[2] + 12 * b[1] - b[0]
            rows += [(text(sample), name, float(value)) for name, value in (("lambda1", b[0]), ("lambda2", l2), ("tau3", l3 / l2), ("tau4", l4 / l2))]
    write(FOLDER, PROGRAM, "l-moments-far-from-zero", "L-moments of whole numbers far from zero, in exact fractions",
          [("sample", "1, sample"), ("moment", "text, which"), ("value", "L-moment or ratio")], [("sample", "text sample"), ("moment", "text moment")],
          [("value", "frequency.sample-l-moment")], rows, tolerance="1e-11 relative or 1e-13", reason="rounding of sums about the mean")


def outliers():
    """Values beyond ten to the mean of logarithms less or more K of 10 % times their standard deviation; none of them near that."""
    rng, rows = random.Random(83), []
    # K of Grubbs and Beck at 10 %, U.S. Water Resources Council (1982), Bulletin 17B, appendix 4.
    for size, k in ((10, 2.036), (20, 2.385), (30, 2.563)):
        for low, high in ((0, 0), (1, 0), (0, 1), (1, 1), (2, 0)):
            sample = [round(40 + 3 * rng.random(), 2) for _ in range(size - low - high)] + [0.4] * low + [4000.0] * high
            logs = [math.log10(v) for v in sample]
            m = sum(logs) / size
            s = math.sqrt(sum((v - m) ** 2 for v in logs) / (size - 1))
            share = [(v - m) / (k * s) for v in logs]
            if min(abs(abs(v) - 1) for v in share) < 0.02:
                continue
            rows.append((text(sample), sum(v < -1 for v in share), sum(v > 1 for v in share)))
    assert {r[1] for r in rows} >= {0, 1} and {r[2] for r in rows} >= {0, 1}
    write(FOLDER, PROGRAM, "outliers-counted", "U.S. Water Resources Council (1982), Bulletin 17B, appendix 4, its test for outliers: how many there are",
          [("sample", "1, maxima"), ("low", "below the lower threshold"), ("high", "above the upper one")], [("sample", "text sample")],
          [("low", "low-outliers.grubbs-beck.count-low"), ("high", "low-outliers.grubbs-beck.count-high")], rows, tolerance="0", reason="a count")


def british():
    """Q = 2.78 C C_R i A with C_R = 1.3: 1/360 of m3/s for each ha and mm/h."""
    rows = []
    for hectares, coefficients, intensity in ((("2.63", "1.83"), ("0.16", "0.69"), "36.2"), (("0.5",), ("0.9",), "50"), (("10", "4", "1"), ("0.2", "0.5", "0.8"), "12.5")):
        weighted = sum(F(a) * F(c) for a, c in zip(hectares, coefficients))
        rows.append((" ".join(hectares), " ".join(coefficients), float(F(intensity)), float(F(13, 10) * weighted * F(intensity) / 360)))
    write(FOLDER, PROGRAM, "rational-of-britain", "the modified rational method with a routing coefficient of 1.3",
          [("hectares", "ha, areas"), ("coefficients", "1, their runoff coefficients"), ("intensity", "mm/h, rain"), ("peak", "m3/s, peak")],
          [("hectares", "text hectares"), ("coefficients", "text coefficients"), ("entry_minutes", "4"), ("flow_minutes", "6"), ("intensity", "intensity")],
          [("peak", "rational.british-peak")], rows, tolerance="1e-13 relative")


def raised():
    """Bilham: n = 1.214e5 t (r + 2.54)^-3.55 in ten years, t in h and r in mm; a depth of more rain is as rare as the lower one was before."""
    rows = []
    for minutes in (10, 30, 60, 120):
        for years in (2, 5, 8):
            for percent in (0, 10, 20, 40):
                n = 10 / years
                depth = round(((1.214e5 * minutes / 60 / n) ** (1 / 3.55) - 2.54) * (1 + percent / 100), 3)
                n = 1.214e5 * minutes / 60 * (depth / (1 + percent / 100) + 2.54) ** -3.55
                rows.append((minutes, percent, depth, 10 / n))
    write(FOLDER, PROGRAM, "rarity-under-more-rain", "E. G. Bilham (1935), Classification of heavy falls in short periods: his formula with every depth so many percent greater",
          [("minutes", "min, duration"), ("percent", "%, more rain"), ("depth", "mm, depth"), ("years", "years, return period")],
          [("minutes", "minutes"), ("percent", "percent"), ("depth", "depth")], [("years", "ddf.bilham.raised-return-period")], rows, tolerance="1e-9 relative")


for make in {"timeseries": (altered, steps, many), "rainfall": (far_samples, outliers, british, raised)}[Path(FOLDER).resolve().name]:
    make()
