"""Tests and relations of depths a little within and beyond their limits, relations drawn again, errors of drizzle: Python with NumPy and
SciPy, no code in common with the library.

    python3 rain_margins.py FOLDER

writes low-outliers-near-their-chance, drizzle-left-out, years-of-scaled-depths and
scaled-depths-drawn-few into the folder of the rainfall tables.

Probabilities of low outliers are quadratures, see low_outliers.py. Where the means of the maxima follow the form
exactly, theta and eta are known before, and what the years are drawn to is little enough to be listed, see drawn_few.py.
"""

import math
import sys
from math import comb

import numpy as np

from drawn_few import end
from low_outliers import approximation
from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "rain_margins.py"
EULER = 0.57721566490153286


def outliers():
    """The second lowest counts below 0.5 % whatever the lowest is, each from the lowest on below 10 %; p is brought close to both."""
    rows = []
    n = 18
    base = [3 + 0.5 * math.sin(2.399 * i) + 0.02 * i for i in range(n)]
    mean, deviation = float(np.mean(base)), float(np.std(base, ddof=1))

    def place(many, p):
        """Where the highest of the lowest values has the probability: secants of its logarithm."""
        far, near = -3.2, -3.0
        at = math.log(approximation(n + many, many, far) / p)
        for _ in range(8):
            next_ = math.log(approximation(n + many, many, near) / p)
            if abs(next_) < 1e-5:
                return mean + near * deviation
            far, near, at = near, near - next_ * (near - far) / (next_ - at), next_
        raise ValueError("no place")

    for many, chances in ((1, ((0.098, 1), (0.102, 0))), (2, ((0.00491, 2), (0.00509, 0)))):
        for p, count in chances:
            high = place(many, p)
            logs = base + [high - 0.001 * i for i in range(many)]
            rows.append((text([round(math.exp(v), 9) for v in logs]), count))
    others = logs[:-1]
    assert approximation(n + 2, 1, float((logs[-1] - np.mean(others)) / np.std(others, ddof=1))) > 0.12
    write(FOLDER, PROGRAM, "low-outliers-near-their-chance", "T. A. Cohn and others (2013), a generalized Grubbs-Beck statistic: samples whose lowest value or two have a probability close to 10 % or 0.5 %",
          [("x", "of the variate, sample"), ("count", "values, that are low outliers")], [("sample", "text x")], [("count", "low-outliers.count")], rows, tolerance="0", reason="a count")


def drizzle():
    """Gauges that all had less than a millimetre: each left out, and estimated by the others; three gauges, spherical variogram."""
    rows = []
    for places, depths, reach, sill in ((((0, 0), (3000, 0), (0, 4000)), (0.2, 0.4, 0.1), 9000, 0.5), (((0, 0), (1000, 500), (2500, -700)), (0, 0.3, 0), 5000, 0.2)):
        def semivariance(a, b):
            d = math.dist(a, b) / reach
            return sill if d >= 1 else sill * (1.5 * d - 0.5 * d**3)

        errors, shares = [], []
        for i in range(3):
            a, b = [j for j in range(3) if j != i]
            # Two gauges: the weight of one follows from the difference of the semivariances alone.
            between, to_a, to_b = semivariance(places[a], places[b]), semivariance(places[a], places[i]), semivariance(places[b], places[i])
            w = 0.5 + (to_b - to_a) / (2 * between)
            multiplier = to_a - (1 - w) * between
            estimate = max(0.0, w * depths[a] + (1 - w) * depths[b])
            errors.append(estimate - depths[i])
            shares.append(errors[-1] ** 2 / (w * to_a + (1 - w) * to_b + multiplier))
        rows.append((reach, sill, "; ".join(f"{x} {y}" for x, y in places), text(depths), math.sqrt(sum(e * e for e in errors) / 3), sum(errors) / 3, sum(shares) / 3))
    write(FOLDER, PROGRAM, "drizzle-left-out", "N. Cressie (1993), leaving out each gauge: three gauges with less than a millimetre, two of them dry",
          [("reach", "m, range"), ("sill", "mm2, sill"), ("gauges", "m, places of the gauges"), ("depths", "mm, depth at each"), ("rms", "mm, root mean square error"), ("bias", "mm, mean error"), ("standardised", "1, mean square of errors over their variance")],
          [("shape", "word spherical"), ("range", "reach"), ("sill", "sill"), ("nugget", "0"), ("gauges", "text gauges"), ("depths", "text depths")],
          [(n, "areal.cross-validation." + name) for n, name in (("rms", "root-mean-square"), ("bias", "bias"), ("standardised", "standardised"))], rows, tolerance="1e-10 relative or 1e-10", reason="solutions of small systems")


MINUTES = (30, 60, 180, 720)
THETA, ETA = 0.2, 0.75


def of_one(minutes):
    hours = minutes / 60
    return hours / (hours + THETA) ** ETA


def maxima(ys):
    return "\n".join(["year," + ",".join(f"d{m}" for m in MINUTES)] + [f"{1990 + i}," + ",".join(repr(round(y * of_one(m), 9)) for m in MINUTES) for i, y in enumerate(ys)])


def gumbel(ys):
    """By the first two L-moments of all durations together, which repeat the same numbers."""
    x = sorted(v for y in ys for v in [y] * len(MINUTES))
    n = len(x)
    l1 = math.fsum(x) / n
    l2 = math.fsum((2 * i - n + 1) * v for i, v in enumerate(x)) / n / (n - 1)
    scale = l2 / math.log(2)
    return l1 - EULER * scale, scale


def years_of_scaled():
    """From the first hundredth of a year above the return period of no depth, at least 1.01, to twice the number of years."""
    rows = []
    for n, spread in ((15, 1.0), (15, 0.93), (12, 0.1), (20, 0.05)):
        ys = [round(20 * ((1 - spread) - spread * math.log(1 - (i + 0.5) / n)), 6) for i in range(n)]
        place, scale = gumbel(ys)
        none = 1 / (1 - math.exp(-math.exp(place / scale)))
        first = max(101, math.floor(100 * none) + 1)
        assert 0.1 < 100 * none % 1 < 0.9 or first == 101, none
        for years, refused in ((first / 100, 0), (first / 100 - 0.0004, 1), (1.04 * first / 100, 0), (2 * n, 0), (2 * n + 0.01, 1), (2.05 * n, 1)):
            depth = of_one(60) * (place - scale * math.log(-math.log(1 - 1 / years)))
            rows.append((maxima(ys), 60, years, refused, "" if refused else depth))
        for minutes, refused in ((29, 1), (30, 0), (720, 0), (721, 1), (90, 0)):
            rows.append((maxima(ys), minutes, 5, refused, "" if refused else of_one(minutes) * (place - scale * math.log(-math.log(0.8)))))
    write(FOLDER, PROGRAM, "years-of-scaled-depths", "D. Koutsoyiannis and others (1998): depths of maxima that follow one form for all durations, close to the least and the greatest years and durations it answers for",
          [("maxima", "mm, annual maxima"), ("minutes", "min, duration"), ("years", "years, return period"), ("refused", "1, 1 if refused"), ("depth", "mm, depth")],
          [("maxima", "text maxima"), ("family", "word gumbel"), ("method", "word l-moments"), ("minutes", "minutes"), ("years", "years")],
          [("refused", "refusal.maxima.scaled-ddf.depth"), ("depth", "maxima.scaled-ddf.depth")], rows, tolerance="1e-6 relative or 1e-6", reason="a search for theta, and depths close to none")


DRAWS = 800


def drawn():
    rows = []
    for low, high, n, m, minutes, years, depth, event in ((12.0, 31.0, 12, 4, 60, 10, 33.0, "9 12 8 5 2"), (9.5, 15.0, 11, 6, 180, 5, 21.0, "3 14 1 0.5 0.5")):
        ys = [low] * (n - m) + [high] * m
        # Of the hours of the event and what it holds in three: the rarer of the two.
        hours = list(map(float, event.split()))
        rarest = max(max(hours) / of_one(60), max(sum(hours[i:i + 3]) for i in range(3)) / of_one(180))

        def answers(sample):
            place, scale = gumbel(sample)
            beyond = lambda y: -math.expm1(-math.exp(-(y - place) / scale))
            return of_one(minutes) * (place - scale * math.log(-math.log(1 - 1 / years))), 1 / beyond(depth / of_one(minutes)), 1 / beyond(rarest)

        itself = answers(ys)
        draws = [(answers([low] * (n - j) + [high] * j), comb(n, j) * (m / n) ** j * (1 - m / n) ** (n - j)) for j in range(1, n)]
        for confidence in (0.5, 0.74, 0.92):
            ends = [end([(a[which], p) for a, p in draws], share, DRAWS, 3) for which in range(3) for share in ((1 - confidence) / 2, (1 + confidence) / 2)]
            known = [v if stays else "" for v, stays in ends]
            least, most = 1.01, 2 * n
            told = lambda v: 1 if least <= v <= most else 0 if v < least else 2
            whole = [itself[2], *known[4:]]
            standing = "" if "" in whole else told(whole[0]) + 10 * told(whole[1]) + 100 * told(whole[2])
            if any(v != "" for v in known) and not any(r[0] == maxima(ys) and list(r[10:16]) == known for r in rows):
                rows.append((maxima(ys), confidence, minutes, years, depth, event, *itself, standing, *known))
    names = ("depth-lower", "depth-upper", "period-lower", "period-upper", "event-lower", "event-upper")
    write(FOLDER, PROGRAM, "scaled-depths-drawn-few", "B. Efron and R. J. Tibshirani (1993): years of two kinds drawn again, every number of each that can be drawn with its chance; depths, their return periods, and the rarest duration of an event",
          [("maxima", "mm, annual maxima"), ("confidence", "1, confidence"), ("minutes", "min, duration"), ("years", "years, return period"), ("depth", "mm, depth"), ("event", "mm, hours of an event"), ("level", "mm, depth of the return period"), ("period", "years, of the depth"),
           ("rarest", "years, of the event"), ("standing", "places, below, within and above"), *((n.replace("-", "_"), ("mm, " if n[0] == "d" else "years, ") + n.replace("-", ", ")) for n in names)],
          [("maxima", "text maxima"), ("family", "word gumbel"), ("replicates", str(DRAWS)), ("confidence", "confidence")],
          [(column, f"ddf.scaled-limits.{name}", *asked) for column, name, *asked in (
              ("level", "depth-estimate", "input.minutes = minutes", "input.years = years"), ("period", "period-estimate", "input.minutes = minutes", "input.depth = depth"), ("rarest", "event-estimate", "input.depths = text event"), ("standing", "event-standing", "input.depths = text event", "tolerance = 0"),
              ("depth_lower", "depth-lower", "input.minutes = minutes", "input.years = years"), ("depth_upper", "depth-upper", "input.minutes = minutes", "input.years = years"), ("period_lower", "period-lower", "input.minutes = minutes", "input.depth = depth"),
              ("period_upper", "period-upper", "input.minutes = minutes", "input.depth = depth"), ("event_lower", "event-lower", "input.depths = text event"), ("event_upper", "event-upper", "input.depths = text event"))],
          rows, tolerance="1e-6 relative", reason="a search for theta")


if __name__ == "__main__":
    outliers()
    drizzle()
    years_of_scaled()
    drawn()
