"""Gauges that stand apart from their neighbours, gauges compared in storms, gauges of one rain: Python with NumPy and SciPy, no code
in common.

    python3 gauges_apart.py FOLDER

writes the tables named below into the folder, csv and descriptor. Records are invented, from the seeds below. Which gauges are set
aside is found by recursion over the set that is left, medians by NumPy; the rain of a storm minute by minute; ranks and connected groups by SciPy.
"""

import itertools
import math
import random
import sys
from pathlib import Path

import numpy as np
from scipy.sparse.csgraph import connected_components
from scipy.stats import rankdata

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


def cells(gauge, step, start, length, cell):
    """Rain in cells from 6 h before to 6 h after, three of them together, as shares of the whole; None where it tells nothing."""
    minutes = np.repeat(np.array(gauge) / step, step)
    count = -(-(length + 720) // cell)
    first = start - 360
    if first < 0 or first + count * cell > len(minutes):
        return None
    part = minutes[first:first + count * cell].reshape(count, cell).sum(axis=1)
    if np.isnan(part).any() or part.sum() < 2:
        return None
    return np.convolve(part, [1, 1, 1], "same") / part.sum()


def lag(own, others, cell):
    """Shift in minutes and likeness, from the whole correlation at once."""
    whole = np.correlate(own, others, "full")
    lags = np.arange(1 - len(own), len(own))
    near = np.abs(lags) * cell <= 360
    whole, lags = whole[near], lags[near]
    best = min((abs(k), k) for k, v in zip(lags, whole) if v >= whole.max() * (1 - 1e-12))[1]
    return int(best) * cell, float(whole.max() / np.linalg.norm(own) / np.linalg.norm(others))


def shifts(stormy, own, trusted, cell):
    found = []
    for gauges in stormy:
        others = [g for i, g in enumerate(gauges) if i != own and i in trusted and g is not None]
        if gauges[own] is not None and others:
            minutes, likeness = lag(gauges[own], np.sum(others, axis=0), cell)
            if likeness >= 0.6:
                found.append((minutes, likeness))
    return found


def row(minutes, tolerance):
    """The stretch with the greatest surplus of storms shifted one way, every stretch tried, of equals the one that ends first and of
    these the shortest: (shift, shifted, others, before, after)."""
    best = (0, 0, 0, 0)
    for way in (1, -1):
        marks = [1 if way * m >= tolerance else -1 for m in minutes]
        for j in range(1, len(marks) + 1):
            for i in reversed(range(j)):
                if sum(marks[i:j]) > best[0]:
                    best = (sum(marks[i:j]), i, j, way)
    surplus, i, j, way = best
    if surplus < 4:
        return 0, 0, 0, 0, 0
    shifted = sorted(m for m in minutes[i:j] if way * m >= tolerance)
    middle = shifted[len(shifted) // 2]
    if sum(abs(m - middle) <= tolerance for m in minutes[i:j]) < 0.75 * len(shifted):
        return 0, 0, 0, 0, 0
    return middle, len(shifted), j - i - len(shifted), i, len(minutes) - j


def compared(stormy, own, trusted, cell):
    """Numbers of the storms in which a gauge can be compared, as in shifts."""
    return [k for k in range(len(stormy)) if shifts(stormy[k:k + 1], own, trusted, cell)]


def settle_clocks(stormy, trusted, tolerance, cell):
    """Those with more than half of the greatest shift go, the farthest first, as long as two stay."""
    while len(trusted) > 2:
        rows = {g: abs(row([m for m, _ in shifts(stormy, g, trusted, cell)], tolerance)[0]) for g in trusted}
        off = sorted((g for g in trusted if rows[g] * 2 > max(rows.values()) > 0), key=lambda g: -rows[g])
        if not off:
            break
        off = off[:len(trusted) - 2]
        trusted = [g for g in trusted if g not in off]
    return trusted


def at_the_limits():
    """One storm, two gauges: 2 mm less and more than what counts, and a likeness below and above 0.6 (rain of one spread over all cells)."""
    burst = np.zeros(96)
    burst[44:50] = [0.6, 1.8, 1.2, 0.4, 0.8, 0.2]
    pairs_of = [[burst, np.round(burst * depth / burst.sum(), 4)] for depth in (1.96, 2.04)]
    for wanted in (0.59, 0.61):
        low, high = 0.0, 1.0
        for _ in range(40):
            part = (low + high) / 2
            mixed = (1 - part) * burst + part * burst.sum() / 96
            likeness = lag(*(cells(list(g), 15, 660, 180, 15) for g in (mixed, burst)), 15)[1]
            low, high = (part, high) if likeness > wanted else (low, part)
        pairs_of.append([burst, np.round(mixed, 6)])
    found = []
    for gauges in pairs_of:
        stormy = [[cells(list(g), 15, 660, 180, 15) for g in gauges]]
        found.append(["; ".join(text(g) for g in gauges), "15 15", "660", "180", 25, 2, len(shifts(stormy, 1, [0, 1], 15)), 0, 0, 0, 0, 0, 0, 0, 0])
    return found


def clocks():
    """A storm a day; some clocks are set wrong from a storm on, one is mended again, one gauge sees showers of its own."""
    rng = random.Random(83)
    single, rows = [], []
    cases = [((15, 15, 15), ((60, 4, 99), None, None)), ((10, 15, 30), ((-90, 2, 7), None, None)), ((15, 15), ((30, 3, 99), None)),
             ((15, 15, 15, 15), ((120, 5, 99), (-60, 3, 99), None, None)), ((20, 15, 20), (None, None, None)), ((60, 15, 30), ((180, 1, 6), None, None)),
             ((15, 15, 15), ((300, 6, 99), None, None)), ((15, 15, 15), ((45, 0, 5), None, None)),
             ((30,) * 6, ((240, 2, 99), (-150, 3, 99), (90, 4, 99), None, None, None))]
    for steps, wrong in cases:
        count = 10
        days = count + 1
        truth = np.zeros(days * 1440)
        starts = []
        for k in range(count):
            start = 1440 * k + 900 + 15 * rng.randrange(8)
            starts.append(start)
            for _ in range(5):
                at = start + rng.randrange(200)
                truth[at:at + 40] += rng.uniform(0.01, 0.08)
        gauges = []
        for step, error in zip(steps, wrong):
            read = np.zeros_like(truth)
            for k, start in enumerate(starts):
                late = rng.choice([0, 0, 0, 10, -10])
                if error and error[1] <= k < error[2]:
                    late += error[0]
                if rng.random() < 0.06:
                    late += 240
                piece = truth[start - 60:start + 400] * rng.uniform(0.7, 1.3)
                read[start - 60 + late:start + 400 + late] += piece
            depths = [round(float(v), 2) for v in read.reshape(-1, step).sum(axis=1)]
            if rng.random() < 0.5:
                hole = rng.randrange(len(depths))
                depths[hole] = NAN
            gauges.append(depths)
        cell = max(10, *steps)
        stormy = [[cells(g, s, start, 240, cell) for g, s in zip(gauges, steps)] for start in starts]
        head = ["; ".join(text(g) for g in gauges), " ".join(str(s) for s in steps), " ".join(str(s) for s in starts), " ".join(["240"] * count)]
        trusted = settle_clocks(stormy, list(range(len(gauges))), 25, cell)
        for own in range(len(gauges)):
            found = shifts(stormy, own, trusted, cell)
            middle, shifted, others, before, after = row([m for m, _ in found], 25)
            within = compared(stormy, own, trusted, cell)[before:len(found) - after] if shifted else []
            begins, ends = (starts[within[0]], starts[within[-1]] + 240) if within else (0, 0)
            rows.append(head + [25, own + 1, len(found), middle, shifted, others, before, after, len(gauges) - len(trusted), begins, ends])
        if len(single) == 12:
            continue
        plain = shifts(stormy, 0, list(range(len(gauges))), cell)
        for k in (0, len(plain) // 2, len(plain) - 1):
            single.append(head + [0, 1, k + 1, plain[k][0], plain[k][1]])
    rows += at_the_limits()
    columns = [("gauges", "mm, steps of each"), ("steps", "min, step of each"), ("from", "min, begin"), ("long", "min, length"), ("tolerance", "min, 0 for none set aside"), ("gauge", "1, number")]
    inputs = [("gauges", "text gauges"), ("step_minutes", "text steps"), ("from_minutes", "text from"), ("long_minutes", "text long"), ("tolerance_minutes", "tolerance"), ("gauge", "gauge")]
    write("gauge-clocks", "Clocks of gauges, row of shifted storms", columns + [("compared", "1, storms"), ("shift", "min, later"), ("shifted", "1, storms"), ("others", "1, storms"),
          ("before", "1, storms"), ("after", "1, storms"), ("aside", "1, gauges set aside"), ("begins", "min, begin of the first storm of the row, 0 without one"), ("ends", "min, end of its last storm, 0 without one")], inputs,
          [("compared", "gauge.clocks.compared"), ("shift", "gauge.clocks.row-shift"), ("shifted", "gauge.clocks.row"), ("others", "gauge.clocks.row-others"),
           ("before", "gauge.clocks.row-before"), ("after", "gauge.clocks.row-after"), ("aside", "gauge.clocks.set-aside"), ("begins", "gauge.clocks.row-begins"), ("ends", "gauge.clocks.row-ends")], rows)
    write("gauge-clocks-by-storm", "Clocks of gauges, storm by storm", columns + [("storm", "1, number"), ("shift", "min, later"), ("likeness", "1, likeness")], inputs + [("storm", "storm")],
          [("shift", "gauge.clocks.shift"), ("likeness", "gauge.clocks.likeness")], single)


NONE = -2  # too few days to say a correlation
START_DAY = 11323  # 1 January 2001, days since 1970


def whole_days(gauge, step):
    """Depth of every day of UTC by its number; a day with a part unknown is not there."""
    per = 1440 // step
    return {START_DAY + i: sum(part) for i in range(-(-len(gauge) // per))
            if len(part := gauge[per * i:per * i + per]) == per and not any(v != v for v in part)}


def together(one, other):
    """Rank correlation of two gauges on the days that count; None if fewer than 20 do."""
    common = sorted(one.keys() & other.keys())
    weather = set(common)
    for gauge in (one, other):
        for is_wet, spell in itertools.groupby(common, key=lambda d: gauge[d] > 0):
            spell = list(spell)
            if not is_wet and len(spell) > 15:
                weather -= set(spell)
    x, y = (np.array([g[d] for d in sorted(weather) if max(one[d], other[d]) >= 1 - 1e-9]) for g in (one, other))
    if len(x) < 20:
        return None
    if np.ptp(x) == 0 or np.ptp(y) == 0:
        return 0.0
    return float(np.corrcoef(rankdata(x), rankdata(y))[0, 1])


def groups():
    rng = random.Random(84)

    def rain(days, share=0.4):
        return [round(1 + rng.expovariate(0.15), 1) if rng.random() < share else 0.0 for _ in range(days)]

    def like(truth, spread):
        return [round(v * math.exp(rng.gauss(0, spread)), 1) for v in truth]

    rows, pairs_of = [], []
    for case in range(9):
        first, second, steps = rain(70), rain(70, 0.5), [1440] * 5
        gauges = [first, like(first, 0.3), second, like(second, 0.6), rain(70)]
        if case == 1:  # dead from a day on; just 15 days, and 16, without rain
            gauges[1] = gauges[1][:40] + [0.0] * 30
            gauges[0][19], gauges[0][20:35], gauges[0][35] = 4.0, [0.0] * 15, 3.0
            gauges[3][19], gauges[3][20:36], gauges[3][36] = 4.0, [0.0] * 16, 3.0
        if case == 2:  # a short record, and holes
            gauges[3] = gauges[3][:25]
            gauges[0] = [NAN if rng.random() < 0.1 else v for v in gauges[0]]
        if case == 3:  # 6 hours and a day, cut within a day
            gauges[0] = [round(v * part, 2) for v in gauges[0] for part in (0, 0.25, 0.5, 0.25)][:-2]
            steps[0] = 360
        if case == 4:  # a gauge between two places joins them
            gauges[4] = [round(a + b, 1) for a, b in zip(first, second)]
        if case == 5:  # steady drizzle has no ranks
            gauges[2] = [2.0] * 70
        if case == 6:  # 19 and 20 days
            wet = [d for d in range(60) if max(gauges[0][d], gauges[2][d]) >= 1]
            gauges = [g[:wet[19] + extra] for extra in (0, 1) for g in (gauges[0], gauges[2])]
            steps = steps[:4]
        if case in (7, 8):  # a correlation just below and just above 0.25
            for _ in range(4000):
                blend = like(first, 0.2)
                mix = [a if rng.random() < 0.55 else b for a, b in zip(blend, rain(70))]
                made = together(whole_days(first, 1440), whole_days(mix, 1440))
                if (0.235 < made < 0.25) if case == 7 else (0.25 < made < 0.265):
                    break
            gauges, steps = [first, mix], [1440, 1440]
        known = [whole_days(g, s) for g, s in zip(gauges, steps)]
        matrix = [[None if a is b else together(a, b) for b in known] for a in known]
        decided = [any(v is not None for v in line) for line in matrix]
        linked = np.array([[v is not None and v >= 0.25 for v in line] for line in matrix])
        _, label = connected_components(linked, directed=False)
        sets = {}
        for g, own in enumerate(label):
            if decided[g]:
                sets.setdefault(int(own), []).append(g)
        largest = max(sets.values(), key=lambda s: (len(s), -s[0])) if sets else sets.setdefault(-1, [])
        largest += [g for g in range(len(gauges)) if not decided[g]]
        ordered = sorted(sorted(s) for s in sets.values())
        head = ["; ".join(text(g) for g in gauges), " ".join(str(s) for s in steps)]
        for own in range(len(gauges)):
            rows.append(head + [own + 1, len(ordered), 1 + next(i for i, s in enumerate(ordered) if own in s),
                                max((v for v in matrix[own] if v is not None), default=NONE)])
        pairs_of += [head + [a + 1, b + 1, NONE if matrix[a][b] is None else matrix[a][b]] for a in range(len(gauges)) for b in range(a)][:4]
    columns = [("gauges", "mm, steps of each"), ("steps", "min, step of each"), ("gauge", "1, number")]
    inputs = [("gauges", "text gauges"), ("step_minutes", "text steps"), ("gauge", "gauge")]
    write("gauge-groups", "Gauges that have the same rain", columns + [("count", "1, groups"), ("group", "1, number of its group"), ("greatest", "1, greatest rank correlation, -2 for none")], inputs,
          [("count", "gauge.groups.count"), ("group", "gauge.groups.group"), ("greatest", "gauge.groups.greatest")], rows)
    write("gauge-groups-by-pair", "Gauges that have the same rain, pair by pair", columns + [("other", "1, number"), ("correlation", "1, rank correlation, -2 for none")], inputs + [("other", "other")],
          [("correlation", "gauge.groups.rank-correlation")], pairs_of)


settled()
storms()
clocks()
groups()
