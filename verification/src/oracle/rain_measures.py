"""Measures of rain records, of rain in space and of runoff: Python with NumPy and SciPy, no code in common.

    python3 rain_measures.py FOLDER

writes the tables named below into the folder, csv and descriptor. Every measure is computed the slow and plain way: rain of a tip
second by second, windows one after the other, linear systems by NumPy. Records are invented, from the seeds below.
"""

import math
import random
import sys
from pathlib import Path

import numpy as np
from scipy.stats import spearmanr

FOLDER = Path(sys.argv[1] if len(sys.argv) > 1 else ".")
NAN = float("nan")


def text(values):
    return " ".join("NaN" if v != v else repr(float(v)) if float(v) != int(v) else str(int(v)) for v in values)


def write(name, title, columns, inputs, checks, rows, reason="16 digits are given", tolerance="1e-12 relative or 1e-12"):
    lines = [
        "author       = Invented records",
        "year         = 2026",
        f"work         = {title}, by NumPy and SciPy",
        "locator      = seeds in the program",
        "provenance   = derived oracle",
        "program      = verification/src/oracle/rain_measures.py",
        f"values       = {len(rows) * len(checks)}",
        "",
    ]
    lines += [f"column.{c} = {u}" for c, u in columns]
    lines += [""] + [f"input.{k} = {v}" for k, v in inputs]
    for c, calculation, *own in checks:
        c, _, column = c.partition("=")
        head = f"check.{c}." if len(checks) > 1 else ""
        lines += ["", f"{head}calculation = {calculation}", f"{head}expected = {column or c}"]
        lines += [f"{head}{each}" for each in own]
    lines += ["", f"tolerance = {tolerance}", f"reason = {reason}"]
    (FOLDER / f"{name}.table").write_text("\n".join(lines) + "\n")
    with open(FOLDER / f"{name}.csv", "w") as out:
        out.write(",".join(c for c, _ in columns) + "\n")
        for row in rows:
            cells = [str(v) if isinstance(v, (str, int)) else repr(float(v)) for v in row]
            out.write(",".join(f'"{c}"' if "," in c or "\n" in c else c for c in cells) + "\n")


# Rain in space


def gamma(shape, h, reach, sill, nugget):
    u = h / reach
    rise = {
        "spherical": 1.5 * u - 0.5 * u**3 if u < 1 else 1.0,
        "exponential": 1 - math.exp(-3 * u),
        "gaussian": 1 - math.exp(-3 * u * u),
    }[shape]
    return 0.0 if h == 0 else nugget + (sill - nugget) * rise


def krige(model, places, target):
    n = len(places)
    a = np.ones((n + 1, n + 1))
    a[n, n] = 0
    b = np.ones(n + 1)
    for i, p in enumerate(places):
        for j, q in enumerate(places):
            a[i, j] = gamma(model[0], math.dist(p, q), *model[1:])
        b[i] = gamma(model[0], math.dist(p, target), *model[1:])
    solved = np.linalg.solve(a, b)
    return solved[:n], float(solved[:n] @ b[:n] + solved[n])


def space():
    rng = random.Random(31)
    kriged, validated = [], []
    for k in range(12):
        shape = ["spherical", "exponential", "gaussian"][k % 3]
        sill = round(rng.uniform(4, 40), 1)
        nugget = round(sill * rng.choice([0, 0.1, 0.3]) + (0.5 if shape == "gaussian" else 0), 2)
        model = (shape, rng.randrange(2000, 9000), sill, nugget)
        places = [(rng.randrange(-5000, 5000), rng.randrange(-5000, 5000)) for _ in range(6)]
        depths = [round(rng.uniform(0.5, 30), 1) for _ in places]
        target = (rng.randrange(-3000, 3000), rng.randrange(-3000, 3000))
        gauges = "; ".join(f"{x} {y}" for x, y in places)
        weights, variance = krige(model, places, target)
        kriged.append([*model, gauges, text(depths), f"{target[0]} {target[1]}", max(0.0, float(weights @ depths)), variance])
        errors, squares = [], []
        for i, p in enumerate(places):
            others = [j for j in range(len(places)) if j != i]
            w, v = krige(model, [places[j] for j in others], p)
            e = max(0.0, float(w @ [depths[j] for j in others])) - depths[i]
            errors.append(e)
            squares.append(e * e / v)
        validated.append([*model, gauges, text(depths), float(np.sqrt(np.mean(np.square(errors)))), float(np.mean(errors)), float(np.mean(squares))])
    columns = [("shape", "1, variogram"), ("range", "m, range"), ("sill", "mm2, sill"), ("nugget", "mm2, nugget"),
               ("gauges", "m, places of the gauges"), ("depths", "mm, depth at each")]
    inputs = [("shape", "text shape"), ("range", "range"), ("sill", "sill"), ("nugget", "nugget"), ("gauges", "text gauges")]
    write("kriging", "Matheron (1963), ordinary kriging", columns + [("target", "m, the place"), ("mean", "mm, estimate"), ("variance", "mm2, its variance")],
          inputs + [("target", "text target")],
          [("mean", "areal.kriging.mean", "input.depths = text depths"), ("variance", "areal.kriging.variance")],
          kriged, "two solutions of a system of seven equations", "1e-10 relative or 1e-10")
    write("kriging-cross-validation", "Cressie (1993), leaving out each gauge", columns + [("rms", "mm, root mean square error"), ("bias", "mm, mean error"), ("standardised", "1, mean square of errors over their variance")],
          inputs + [("depths", "text depths")],
          [("rms", "areal.cross-validation.root-mean-square"), ("bias", "areal.cross-validation.bias"), ("standardised", "areal.cross-validation.standardised")],
          validated, "two solutions of systems of six equations", "1e-10 relative or 1e-10")
    rows = []
    for k in range(8):
        columns_, rows_ = rng.randrange(3, 6), rng.randrange(3, 6)
        cell = rng.choice([500, 1000, 2000])
        west, south = rng.randrange(-3, 3) * 250, rng.randrange(-3, 3) * 250
        depths = [NAN if rng.random() < 0.1 else round(rng.uniform(0, 20), 2) for _ in range(columns_ * rows_)]
        x0, y0 = west + rng.uniform(0.1, 0.9) * cell, south + rng.uniform(0.1, 0.9) * cell
        x1, y1 = x0 + rng.uniform(1, 2) * cell, y0 + rng.uniform(1, 2) * cell
        x0, y0, x1, y1 = (round(v) for v in (x0, y0, x1, y1))
        volume = area = 0.0
        for i, d in enumerate(depths):
            cx, cy = west + cell * (i % columns_), south + cell * (rows_ - 1 - i // columns_)
            shared = max(0, min(x1, cx + cell) - max(x0, cx)) * max(0, min(y1, cy + cell) - max(y0, cy))
            if d == d:
                volume += shared * d
                area += shared
        if area:
            rows.append([f"POLYGON (({x0} {y0}, {x1} {y0}, {x1} {y1}, {x0} {y1}, {x0} {y0}))", f"{west} {south}", cell, columns_, text(depths),
                         volume / area, area / ((x1 - x0) * (y1 - y0))])
    write("grid-means", "Means of grid cells over rectangles", [("catchment", "m, polygon"), ("corner", "m, corner of the grid in the south-west"), ("cell", "m, side of a cell"),
          ("columns", "1, cells from west to east"), ("depths", "mm, from the north"), ("mean", "mm, mean"), ("known", "1, share of the catchment known")],
          [("catchment", "text catchment"), ("corner", "text corner"), ("cell", "cell"), ("columns", "columns"), ("depths", "text depths")],
          [("mean", "areal.grid.mean"), ("known", "areal.grid.known-share")], rows)
    rows = []
    for k in range(6):
        g = [NAN if rng.random() < 0.15 else round(rng.uniform(0, 12), 1) for _ in range(9)]
        c = [round(rng.uniform(0, 9), 2) for _ in g]
        used = [(a, b) for a, b in zip(g, c) if a == a and max(a, b) >= 1.5]
        factor = sum(a for a, _ in used) / sum(b for _, b in used)
        rows.append([text(g), text(c), 1.5, factor, factor * c[0]])
    write("mean-field-bias", "Wilson and Brandes (1979), sums of gauges over sums of cells", [("g", "mm, gauges"), ("c", "mm, cells"), ("least", "mm, limit"), ("factor", "1, factor"), ("first", "mm, first cell corrected")],
          [("gauge_mm", "text g"), ("grid_mm", "text c"), ("least_mm", "least")], [("factor", "areal.mean-field-bias"), ("first", "areal.mean-field-bias.corrected", "input.cell = 0")], rows)


    rows = []
    for k in range(6):
        west, south, cell, columns_, rows_ = rng.randrange(-5000, 5000), rng.randrange(-5000, 5000), rng.choice([250, 1000]), rng.randrange(2, 7), rng.randrange(2, 7)
        column, row = rng.randrange(columns_), rng.randrange(rows_)
        x, y = west + (column + rng.uniform(0.05, 0.95)) * cell, south + (row + rng.uniform(0.05, 0.95)) * cell
        rows.append([f"{west} {south}", cell, columns_, rows_, f"{x:.1f} {y:.1f}", (rows_ - 1 - row) * columns_ + column, west + (column + 0.5) * cell, south + (row + 0.5) * cell])
    write("grid-cells", "Cells of a grid counted from the north", [("corner", "m, corner in the south-west"), ("cell", "m, side"), ("columns", "1, columns"), ("rows", "1, rows"), ("place", "m, place"), ("index", "1, position"), ("x", "m, middle"), ("y", "m, middle")],
          [("corner", "text corner"), ("cell", "cell"), ("columns", "columns"), ("rows", "rows")],
          [("index", "areal.grid.cell", "input.place = text place"), ("x", "areal.grid.centre-x", "input.index = index"), ("y", "areal.grid.centre-y", "input.index = index")], rows)


# Tips


def fillings(tips, cap, record_start=0.0):
    """From, to and number of each filling: since the tip before, or as long as to the next, at most the cap."""
    instants = sorted(set(tips))
    found = []
    for i, t in enumerate(instants):
        before = instants[i - 1] if i else -math.inf
        if t - before <= cap:
            start = before
        else:
            after = instants[i + 1] if i + 1 < len(instants) else math.inf
            start = t - min(cap, after - t)
        found.append((max(record_start, start), t, tips.count(t), t - before))
    return found


def tip_depth(tip, lost, gap, number):
    """Lost time: the bucket filled in the gap of a tip less the time lost; at most half of the water is lost."""
    if lost == 0 or gap == math.inf:
        return tip
    each = gap / number
    recorded = min(3600 * tip / each, 1800 * tip / lost)
    return tip / (1 - lost * recorded / (3600 * tip))


def laid(tips, tip, lost, spreading, cap, length, step):
    size = math.ceil(length / step)
    bins = [0.0] * size
    whole = fillings(tips, cap if spreading != "count" else 0.0)
    slopes = smooth_slopes(whole, tip, lost) if spreading == "smooth" else None
    for k, (start, end, number, gap) in enumerate(whole):
        depth = number * tip_depth(tip, lost, gap, number)
        if spreading == "count" or start == end:
            # A tip on an edge ends the step before it if it was filled there, and begins the next if it is counted.
            bins[int(end // step)] += depth
            continue
        for i in range(size):
            a, b = max(start, i * step), min(end, (i + 1) * step)
            if b > a:
                if slopes:
                    f = lambda t: hermite((t - start) / (end - start), *slopes[k])
                    bins[i] += depth * (f(b) - f(a))
                else:
                    bins[i] += depth * (b - a) / (end - start)
    return bins


def smooth_slopes(whole, tip, lost):
    """Steffen's slopes at the ends of each filling, over its mean rate; 0 where nothing adjoins."""
    rate = [n * tip_depth(tip, lost, g, n) / (e - s) for s, e, n, g in whole]
    ends = [[0.0, 0.0] for _ in whole]
    for k in range(1, len(whole)):
        (s0, e0, *_), (s1, e1, *_) = whole[k - 1], whole[k]
        if s1 == e0:
            h0, h1 = e0 - s0, e1 - s1
            parabola = (rate[k - 1] * h1 + rate[k] * h0) / (h0 + h1)
            slope = min(2 * rate[k - 1], 2 * rate[k], parabola)
            ends[k - 1][1] = slope / rate[k - 1]
            ends[k][0] = slope / rate[k]
    return ends


def hermite(s, at_start, at_end):
    return at_start * (s**3 - 2 * s**2 + s) + (3 * s**2 - 2 * s**3) + at_end * (s**3 - s**2)


def tips():
    rng = random.Random(32)
    rows, added = [], []
    for k in range(14):
        tip = rng.choice([0.1, 0.2, 0.254])
        lost = rng.choice([0, 0, 0.45, 1.5])
        spreading = ["interval", "smooth", "count"][k % 3]
        cap = rng.choice([600, 1800])
        times, t = [], 37.0
        for _ in range(rng.randrange(6, 14)):
            t += rng.choice([3, 11, 40, 95, 410, 2500]) * rng.uniform(0.8, 1.2)
            times.append(round(t, 3))
        step, length = 60, (int(times[-1]) // 60 + 3) * 60
        bins = laid(times, tip, lost, spreading, cap, length, step)
        wet = [i for i, b in enumerate(bins) if b > 0]
        for i in sorted({wet[0], wet[-1], *rng.sample(wet, min(3, len(wet))), wet[0] - 1 if wet[0] else wet[0]}):
            rows.append([text(times), tip, lost, spreading, cap, length, step, i, bins[i]])
        added.append([text(times), tip, 0.45, sum(n * (tip_depth(tip, 0.45, g, n) - tip) for _, _, n, g in fillings(times, cap))])
    write("tips-in-steps", "Depth in steps of tips laid out over the time in which the bucket filled (Steffen 1990 for the smooth one), with lost time", [("tips", "s, instants"), ("tip", "mm, depth of a tip"), ("lost", "s, lost time"),
          ("spreading", "1, how"), ("cap", "s, longest filling"), ("record", "s, length"), ("step", "s, step"), ("index", "1, step asked for"), ("depth", "mm, depth in it")],
          [("tip_seconds", "text tips"), ("tip_mm", "tip"), ("lost_seconds", "lost"), ("spreading", "text spreading"), ("cap_seconds", "cap"), ("record_seconds", "record"), ("step_seconds", "step"), ("step", "index")],
          [("depth", "gauge.tips.step-depth"), ("plain=depth", "gauge.tips.step-depth-without-outage")], rows, "sums of shares", "1e-11 relative or 1e-12")
    write("tips-added", "Depth that lost time adds to the tips", [("tips", "s, instants"), ("tip", "mm, depth of a tip"), ("lost", "s, lost time"), ("added", "mm, added")],
          [("tip_seconds", "text tips"), ("tip_mm", "tip"), ("lost_seconds", "lost")], [("added", "gauge.tips.added")], added, "differences of sums", "1e-10 relative")
    rows = []
    for k in range(6):
        tip, lost, step = rng.choice([0.1, 0.2]), rng.choice([0.3, 0.6]), 60
        counts = [rng.randrange(0, 40) for _ in range(5)]
        i = rng.randrange(5)
        each = tip_depth(tip, lost, step, counts[i]) if counts[i] else 0
        rows.append([text(counts), tip, lost, step, i, counts[i] * each])
    write("tip-counts", "Depth of steps from counts of tips with lost time", [("counts", "1, tips"), ("tip", "mm, depth of a tip"), ("lost", "s, lost time"), ("step", "s, step"), ("index", "1, step asked for"), ("depth", "mm, depth in it")],
          [("counts", "text counts"), ("tip_mm", "tip"), ("lost_seconds", "lost"), ("step_seconds", "step"), ("step", "index")], [("depth", "gauge.counts.step-depth")], rows)
    write("tips-of-depths", "Tips that counts and depths stand for", [("depths", "mm, depths"), ("tip", "mm, depth of a tip"), ("tips", "1, tips"), ("counts", "1, counts"), ("of_counts", "1, tips")],
          [], [("tips", "gauge.tips.of-depths", "input.depths = text depths", "input.tip_mm = tip"), ("of_counts", "gauge.tips.of-counts", "input.counts = text counts")],
          [[text([0.2 * n for n in c]), 0.2, sum(c), text(c), sum(c)] for c in ([0, 1, 5, 2], [3, 0, 0, 17], [1, 1, 1, 1])], "counts", "0")
    rows = []
    for k in range(4):
        v = [round(rng.uniform(40, 120), 2) for _ in range(4)]
        n = [rng.randrange(20, 60) for _ in v]
        rows.append([324.29, text(v), text(n), 10 * sum(v) / (324.29 * sum(n))])
    write("static-calibration", "Depth of a tip from volumes and counts", [("funnel", "cm2, funnel"), ("v", "ml, volumes"), ("n", "1, tips"), ("tip", "mm, depth of a tip")],
          [("funnel_cm2", "funnel"), ("volumes_ml", "text v"), ("tips", "text n")], [("tip", "gauge.calibration.static-tip")], rows)
    rows = []
    for k in range(6):
        lost, tip, t, times = rng.choice([0, 0.45]), 0.2, 10.0, []
        for _ in range(20):
            t += rng.choice([4, 30, 200, 2400])
            times.append(t)
        groups = [[times[0]]]
        for a, b in zip(times, times[1:]):
            groups.append([b]) if b - a >= 1800 else groups[-1].append(b)
        number = rng.randrange(1, len(groups) + 1)
        depth = {t: tip_depth(tip, lost, g, 1) for _, t, _, g in fillings(times, 60)}
        rows.append([text(times), tip, lost, 30, number, sum(depth[t] for t in groups[number - 1])])
    write("arriving-tips", "Events of tips, each tip by the gap before it", [("times", "s, instants"), ("tip", "mm, tip"), ("lost", "s, lost time"), ("gap", "min, minimum inter-event time"), ("number", "1, event"), ("depth", "mm, depth")],
          [("tip_seconds", "text times"), ("tip_mm", "tip"), ("lost_seconds", "lost"), ("inter_event_minutes", "gap"), ("number", "number")], [("depth", "event.arriving-tips.depth")], rows)
    checks()


def checks():
    """Flags of tips: double against a ceiling of 500 mm/h, rows of 12 gaps even within 5 %, lengthening, first after six hours."""
    rng = random.Random(33)
    rows = []
    for k in range(8):
        tip = 0.2
        clock = [0, 0, 10, 0, 5, 60, 0, 10][k]
        t, times = 100.0, [100.0]
        for _ in range(60):
            kind = rng.random()
            if kind < 0.05:
                t += rng.choice([0.4, 1.2, 30000])
            elif kind < 0.1:
                for j in range(14):
                    t += 70 * (1.0 if k % 2 else 1.04**j)
                    times.append(t)
            else:
                t += rng.uniform(5, 400)
            times.append(t)
        times = [clock * math.floor(t / clock) if clock else round(t, 1) for t in sorted(times)]
        gaps = [b - a for a, b in zip(times, times[1:])]
        fastest = tip * 3600 / 500
        first = 1 + sum(g > 21600 for g in gaps)
        double = 0
        at_instant = 0
        for g in gaps:
            at_instant = at_instant + 1 if g == 0 else 0
            if g <= 21600 and g + clock < fastest * max(1, at_instant):
                double += 1
        for flag, count in (("first", first), ("double", double), ("evenly_spaced", runs(gaps, clock, True)), ("lengthening", runs(gaps, clock, False))):
            rows.append([text(times), tip, clock, flag, count])
    write("tip-flags", "Flags of doubtful tips, by lists of rows", [("tips", "s, instants"), ("tip", "mm, depth of a tip"), ("clock", "s, resolution of the clock"), ("flag", "1, flag"), ("count", "1, tips flagged")],
          [("tip_seconds", "text tips"), ("tip_mm", "tip"), ("clock_seconds", "clock"), ("flag", "text flag")], [("count", "gauge.checks.flagged")], rows, "counts", "0")


def runs(gaps, clock, even):
    """Number of tips that end a gap of a row long enough: rows are listed first and judged as a whole, at every length."""
    flagged, row = set(), []
    for i, g in enumerate(gaps):
        if not 0 < g <= 21600 or g < 4 * clock:
            row = []
            continue
        if row:
            values = [gaps[j] for j in row]
            goes = abs(g - values[-1]) <= max(0.05 * values[-1], clock) if even else (g >= max(values) - clock if clock else g > values[-1])
            if not goes:
                row = []
        row.append(i)
        values = [gaps[j] for j in row]
        rises = sum(values[j] > max(values[:j]) for j in range(1, len(values)))
        if len(row) >= 12 and (even or rises >= 11):
            flagged.update(row)
    return len(flagged)


# Several gauges


def network():
    rng = random.Random(34)
    rows, masses, stores = [], [], []
    for k in range(6):
        count = rng.choice([3, 4, 5])
        days = 30
        truth = [rng.uniform(1, 25) if rng.random() < 0.4 else 0 for _ in range(days)]
        gauges = []
        for g in range(count):
            factor = [1, 1, 0.5, 1, 0][g] if k % 2 else 1
            gauges.append([NAN if rng.random() < 0.05 else round(t * factor * rng.uniform(0.8, 1.2), 1) if rng.random() > 0.03 else 0.0 for t in truth])
        wet = 2.0
        g = rng.randrange(count)
        median = []
        for i in range(days):
            column = [x[i] for x in gauges if x[i] == x[i]]
            wet_here = 2 * sum(v >= wet for v in column) > len(column)
            others = [x[i] for j, x in enumerate(gauges) if j != g and x[i] == x[i] and not (wet_here and x[i] == 0)]
            median.append(float(np.median(others)) if len(others) >= max(1, count // 2) else NAN)
        pairs = [(a, b) for a, b in zip(gauges[g], median) if a == a and b == b]
        x, m = np.array(pairs).T
        rank = 0.0 if len(set(x)) == 1 or len(set(m)) == 1 else float(spearmanr(x, m)[0])
        rows.append(["; ".join(text(v) for v in gauges), wet, g + 1, float(x.sum() / m.sum()), rank,
                     int(sum(a == 0 and b >= wet for a, b in pairs)), int(sum(a >= wet and b == 0 for a, b in pairs))])
        n = 16
        a = [round(rng.uniform(5, 40), 1) for _ in range(n)]
        cut = rng.randrange(4, 12)
        b = [round(v * (0.75 if i < cut else 1.0) * rng.uniform(0.95, 1.05), 1) for i, v in enumerate(a)]
        best = min(range(3, n - 2), key=lambda c: sum(
            sum((p - sum(b[part]) / sum(a[part]) * q) ** 2 for p, q in zip(b[part], a[part])) for part in (slice(0, c), slice(c, n))))
        slopes = [sum(b[part]) / sum(a[part]) for part in (slice(0, best), slice(best, n))]
        masses.append([text(b), text(a), 3, sum(b) / sum(a), best, slopes[1] / slopes[0]])
        hourly = [NAN if rng.random() < 0.004 else round(rng.uniform(0, 4), 1) if rng.random() < 0.15 else 0.0 for _ in range(168 * 3)]
        at = [160.5, 300.0, 401.25, 503.0]
        stored, kept, verdicts, last = [], [], [], 0.0
        for hour in at:
            total = sum(v * max(0, min(hour, i + 1) - max(last, i)) for i, v in enumerate(hourly) if v == v)
            unknown = any(v != v and min(hour, i + 1) > max(last, i) for i, v in enumerate(hourly))
            s = round(total * rng.choice([0.93, 1.0, 1.2, 0.7]), 1)
            limit = max(0.1 * s, 0.2)
            verdicts.append("high" if total - s > limit else "unknown" if unknown else "low" if s - total > limit else "within")
            stored.append(s)
            kept.append((total, s, unknown))
            last = hour
        full = [(t, s) for t, s, u in kept if not u]
        if full:
            row = next(i for i, each in enumerate(kept) if not each[2])
            stores.append([text(hourly), text(at), text(stored), 0.1, 0.2, row, kept[row][0] / kept[row][1], sum(t for t, _ in full) / sum(s for _, s in full)] + [verdicts.count(v) for v in ("within", "high", "low", "unknown")])
    write("neighbours", "A gauge against the median of the others", [("gauges", "mm, days of each"), ("wet", "mm, wet limit"), ("gauge", "1, number"), ("ratio", "1, ratio"), ("rank", "1, Spearman"), ("dry", "1, periods dry alone"), ("wetalone", "1, periods wet alone")],
          [("gauges", "text gauges"), ("wet_mm", "wet"), ("gauge", "gauge")],
          [("ratio", "gauge.neighbours.ratio"), ("mass=ratio", "gauge.neighbours.mass-ratio"), ("rank", "gauge.neighbours.rank-correlation"), ("dry", "gauge.neighbours.dry-alone"), ("wetalone", "gauge.neighbours.wet-alone")], rows)
    write("double-mass-breaks", "Searcy and Hardison (1960), two ratios of sums with the least squares", [("b", "mm, gauge"), ("a", "mm, reference"), ("least", "1, least periods"), ("ratio", "1, ratio of all"), ("at", "1, periods before the break"), ("factor", "1, slope after over before")],
          [("gauge_mm", "text b"), ("reference_mm", "text a")],
          [("ratio", "gauge.double-mass.ratio"), ("at", "gauge.double-mass.break", "input.least = least"), ("factor", "gauge.double-mass.factor", "input.least = least")], masses)
    write("storage-gauge", "A recording gauge against a storage gauge, hour by hour", [("hourly", "mm, recorded"), ("at", "h, readings"), ("stored", "mm, stored"), ("allowance", "1, allowance"), ("resolution", "mm, always let be"), ("row", "1, a complete reading"), ("single", "1, its ratio"),
          ("ratio", "1, ratio of complete readings"), ("within", "1, readings"), ("high", "1, readings"), ("low", "1, readings"), ("unknown", "1, readings")],
          [("depths", "text hourly"), ("reading_hours", "text at"), ("stored_mm", "text stored"), ("allowance", "allowance"), ("resolution_mm", "resolution")],
          [("ratio", "gauge.storage.ratio"), ("single", "gauge.storage.row-ratio", "input.row = row")] + [(v, "gauge.storage.count", f"input.verdict = word {v}") for v in ("within", "high", "low", "unknown")], stores)


# Steps


def steps():
    rng = random.Random(35)
    write("rain-units", "Depth and intensity of a step", [("depth", "mm, depth"), ("seconds", "s, step"), ("intensity", "mm/h, intensity")], [("step_seconds", "seconds")],
          [("intensity", "rain-units.intensity", "input.depth = depth"), ("depth", "rain-units.depth", "input.intensity = intensity")],
          [[d, s, d * 3600 / s] for d, s in ((0.2, 60), (1.4, 300), (7.3, 900), (0.05, 120), (33.1, 5400))])
    rows = []
    for k in range(6):
        depths = [round(rng.uniform(0, 5), 2) for _ in range(9)]
        old, new = rng.choice([300, 600]), rng.choice([70, 240, 700, 900])
        i = rng.randrange(1, len(depths) * old // new)
        share = sum(d * max(0, min((i + 1) * new, (j + 1) * old) - max(i * new, j * old)) / old for j, d in enumerate(depths))
        rows.append([text(depths), old, new, i, share])
    write("rain-other-steps", "Depth in steps of another length", [("depths", "mm, depths"), ("old", "s, step"), ("new", "s, new step"), ("index", "1, step asked for"), ("share", "mm, depth in it")],
          [("depths", "text depths"), ("step_seconds", "old"), ("new_seconds", "new"), ("step", "index")], [("share", "rain-units.in-steps")], rows)
    rows = []
    for kind, stamp in (("depth", "begin"), ("depth", "end"), ("intensity", "begin"), ("intensity", "end")):
        at = sorted(rng.sample(range(0, 40), 9))
        values = [round(rng.uniform(0.1, 9), 1) for _ in at]
        for i in (0, 4, at[-1] - at[0]):
            read = dict((m - at[0], v) for m, v in zip(at, values)).get(i, 0.0)
            rows.append([text([5 * m + 2 for m in at]), text(values), kind, 5, stamp, i, read * 5 / 60 if kind == "intensity" else read])
    write("stepped-gauge", "Depth of steps from readings of depth and of intensity", [("minutes", "min, times"), ("values", "mm or mm/h, readings"), ("kind", "1, what"), ("step", "min, step"), ("stamp", "1, where a time stands"), ("index", "1, step asked for"), ("depth", "mm, depth")],
          [("minutes", "text minutes"), ("values", "text values"), ("kind", "text kind"), ("step_minutes", "step"), ("stamp", "text stamp"), ("step", "index")], [("depth", "gauge.stepped.depth")], rows)
    rows = []
    for tip, window, intensity, share, n in ((0.2, 60, 2.5, 0.05, 6), (0.1, 120, 10, 0.1, 11), (0.254, 300, 1.3, 0.02, 3), (0.5, 900, 40, 0.2, 1)):
        rows.append([tip, window, intensity, share, n, tip * 3600 / window, tip * 3600 / window / math.sqrt(6), tip / share / intensity * 3600, (n - 1) * tip, (n + 1) * tip, tip / math.sqrt(6)])
    write("tip-resolution", "What whole tips can tell (JCGM 100:2008, 4.3.9)", [("tip", "mm, tip"), ("window", "s, window"), ("intensity", "mm/h, intensity"), ("share", "1, share"), ("n", "1, tips"), ("single", "mm/h, one tip"),
          ("u", "mm/h, standard uncertainty"), ("needed", "s, window for the share"), ("least", "mm, least"), ("most", "mm, most"), ("udepth", "mm, standard uncertainty")], [("tip_mm", "tip")],
          [("single", "gauge.resolution.step", "input.window_seconds = window"), ("u", "gauge.resolution.uncertainty", "input.window_seconds = window"),
           ("needed", "gauge.resolution.window", "input.intensity = intensity", "input.share = share"), ("least", "gauge.resolution.least", "input.tips = n"), ("most", "gauge.resolution.most", "input.tips = n"), ("udepth", "gauge.resolution.depth-uncertainty")],
          rows, "times in whole nanoseconds", "1e-12 relative or 1e-9")


def record(rng, n):
    state, values = 0, []
    for _ in range(n):
        state = max(0, state + rng.choice([-1, -1, 0, 1])) if rng.random() < 0.8 else rng.choice([0, 0, 3])
        values.append(NAN if rng.random() < 0.01 else round(state * rng.uniform(0.05, 1.4), 2))
    return values


def events():
    rng = random.Random(36)
    rows = []
    for k in range(10):
        depths, step, gap = record(rng, 160), 5, rng.choice([10, 15, 30])
        minimum, above, window = rng.choice([0, 1.0]), rng.choice([0, 0.1]), rng.choice([5, 10, 15, 20, 12])
        need = math.ceil(gap / step)
        wet = [i for i, v in enumerate(depths) if v > above]
        groups = []
        for i in wet:
            if groups and i - groups[-1][-1] - 1 < need:
                groups[-1].append(i)
            else:
                groups.append([i])
        total = lambda a, b: sum(v for v in depths[max(0, a):b] if v == v)
        spans = [(g[0], g[-1] + 1) for g in groups]
        kept = [s for s in spans if total(*s) >= minimum - 1e-9]
        dropped = sum(total(*s) for s in spans if s not in kept)
        stray = total(0, len(depths)) - sum(total(*s) for s in spans)
        for number in sorted({1, len(kept)}):
            a, b = kept[number - 1]
            before = [e for _, e in spans if e <= a]
            whole, rest = divmod(window, step)
            inside = lambda i: depths[i] if a <= i < b and depths[i] == depths[i] else 0.0
            best = max(sum(inside(j) for j in range(i, i + whole)) + rest / step * max(inside(i - 1), inside(i + whole)) for i in range(a - whole, b + whole))
            rows.append([text(depths), step, gap, minimum, above, number, window, total(a, b), total(a, b) / ((b - a) * step / 60),
                         (a - (before[-1] if before else 0)) * step / 60, sum(v != v for v in depths[a:b]), best / (window / 60), dropped, stray])
    write("events-of-steps", "Events of steps, listed and measured one by one", [("depths", "mm, depths"), ("step", "min, step"), ("gap", "min, minimum inter-event time"), ("minimum", "mm, minimum depth"), ("above", "mm, wet above"), ("number", "1, event"), ("window", "min, window"),
          ("depth", "mm, depth"), ("mean", "mm/h, mean intensity"), ("dry", "h, dry time before"), ("missing", "1, steps"), ("peak", "mm/h, peak intensity"), ("dropped", "mm, of events dropped"), ("stray", "mm, outside all events")],
          [("depths", "text depths"), ("step_minutes", "step"), ("inter_event_minutes", "gap"), ("minimum_mm", "minimum"), ("wet_above_mm", "above"), ("number", "number")],
          [("depth", "event.steps.depth"), ("arriving=depth", "event.arriving.depth"), ("arrivingpeak=peak", "event.arriving.peak-intensity", "input.window_minutes = window"), ("mean", "event.steps.mean-intensity"), ("dry", "event.steps.dry-hours"), ("missing", "event.steps.missing"), ("peak", "event.steps.peak-intensity", "input.window_minutes = window"), ("dropped", "event.steps.dropped"), ("stray", "event.steps.stray")],
          rows, "sums of two-digit depths", "1e-11 relative or 1e-11")
    rows = []
    for k in range(5):
        depths = [0.0 if v != v else v for v in record(rng, 90)]
        window = rng.choice([5, 20, 60])
        falling = sorted(depths, reverse=True)
        gaps, last = [], None
        for i, v in enumerate(depths):
            if v > 0:
                if last is not None and i - last > 1:
                    gaps.append((i - last - 1) * 5 / 60)
                last = i
        gaps = np.array(sorted(gaps))
        starts = [i for i in range(len(gaps) - 2) if i == 0 or gaps[i] > gaps[i - 1]]
        candidate = min(1, len(starts) - 1)
        some = gaps[starts[candidate]:]
        cumulative = np.cumsum(depths)
        position = 0.37 * len(depths)
        rows.append([text(depths), 5, window, candidate, 0.37, falling[window // 5 - 1] * 12, float(np.std(some) / np.mean(some)),
                     float(np.interp(position, range(len(depths) + 1), np.concatenate([[0], cumulative])) / cumulative[-1]),
                     float(sum((i + 0.5) * 5 * v for i, v in enumerate(depths)) / cumulative[-1])])
    write("storm-figures", "Listing of intensity, variation of dry gaps, share and centroid of a storm", [("depths", "mm, depths"), ("step", "min, step"), ("window", "min, duration"), ("candidate", "1, number of the candidate"), ("fraction", "1, part of the duration"),
          ("heaviest", "mm/h, reached for that long in all"), ("variation", "1, coefficient of variation"), ("share", "1, share of the depth"), ("centroid", "min, to the centre of the depth")],
          [("depths", "text depths"), ("step_minutes", "step")],
          [("heaviest", "event.listing.heaviest", "input.window_minutes = window"), ("variation", "event.dry-gaps.variation", "input.candidate = candidate"), ("share", "storm.profile.share", "input.fraction = fraction"), ("centroid", "storm.profile.centroid")],
          rows, "times in whole nanoseconds", "1e-11 relative or 1e-10")
    rows = []
    for k in range(8):
        gauges = []
        for g in range(2 + k % 2):
            values = [0.0] * 20
            for i in range(3, 3 + rng.randrange(4, 13)):
                values[i] = round(rng.uniform(0.1, 1.5), 1)
            gauges.append(values)
        if k == 6:
            gauges[0][5] = NAN
        limits = (rng.choice([4, 6, 8]), rng.choice([6, 9]), 4, 0.3, rng.choice([10, 16]))
        verdict = 1
        sums = []
        for v in gauges:
            known = all(x == x for x in v)
            clean = [0 if x != x else x for x in v]
            sums.append(sum(clean))
            peak = max(clean[i] + clean[i + 1] for i in range(19)) * 15
            wet = [i for i, x in enumerate(clean) if x > 0]
            for value, least in ((sum(clean), limits[0]), (peak, limits[1]), (2 * (wet[-1] - wet[0] + 1), limits[4])):
                if value < least - 1e-9:
                    verdict = 0 if known or verdict == 0 else -1
        middle = float(np.median(sums))
        spread = max(max(sums) - middle, middle - min(sums)) / middle
        if any(x != x for v in gauges for x in v):
            verdict = 0 if verdict == 0 else -1
        elif spread > 0.3:
            verdict = 0
        rows.append(["; ".join(text(v) for v in gauges), 2, *limits[:2], limits[2], limits[3], limits[4], verdict])
    write("storm-criteria", "Storms judged by depth, intensity, spread and duration", [("gauges", "mm, depths of each"), ("step", "min, step"), ("depth", "mm, least depth"), ("intensity", "mm/h, least intensity"), ("over", "min, over"), ("spread", "1, greatest spread"), ("concentration", "min, time of concentration"), ("verdict", "1, met 1, not 0, unknown -1")],
          [("gauges", "text gauges"), ("step_minutes", "step"), ("depth_mm", "depth"), ("intensity", "intensity"), ("over_minutes", "over"), ("spread", "spread"), ("concentration_minutes", "concentration")],
          [("verdict", "storm.criteria.verdict")], rows, "a verdict", "0")
    rows = []
    for k in range(4):
        daily = [round(rng.uniform(0, 20), 1) for _ in range(20)]
        r, n, day = rng.choice([0.85, 0.9, 0.95]), rng.choice([5, 7, 10]), rng.randrange(10, 20)
        hourly = [0.0 if v != v else v for v in record(rng, 80)]
        lag = rng.randrange(1, 9)
        rows.append([text(daily), r, n, day, sum(r**j * daily[day - j] for j in range(1, n + 1)), text(hourly), lag, 1.959963984540054 / math.sqrt(80 - lag)])
    write("antecedent-before", "Antecedent index before a day; limit of chance of an autocorrelation", [("daily", "mm, days"), ("r", "1, left after a day"), ("n", "1, days"), ("day", "1, day asked for"), ("before", "mm, index"), ("hourly", "mm, hours"), ("lag", "1, lag"), ("limit", "1, limit")], [],
          [("before", "antecedent-index.before", "input.daily = text daily", "input.recession = r", "input.days = n", "input.day = day"), ("limit", "event.autocorrelation-limit", "input.depths = text hourly", "input.lag = lag")], rows)


def days():
    rng = random.Random(37)
    rows = []
    for k in range(6):
        step = rng.choice([60, 180, 420])
        depths = [round(rng.uniform(0, 6), 1) for _ in range(40)]
        offset, begin = rng.choice([0, 5, 13.5]), rng.choice([0, 9, 7])
        first = math.floor((offset - begin) / 24)
        last = math.ceil((offset + 40 * step / 60 - begin) / 24) - 1
        day = rng.randrange(0, last - first + 1)
        a = (first + day) * 24 + begin
        rows.append([text(depths), step, offset, begin, day, sum(d * max(0, min(a + 24, offset + (i + 1) * step / 60) - max(a, offset + i * step / 60)) / (step / 60) for i, d in enumerate(depths))])
    write("rain-days", "Rain of days that begin at any hour", [("depths", "mm, depths"), ("step", "min, step"), ("offset", "h, start after midnight"), ("begin", "h, begin of a day"), ("day", "1, day asked for"), ("depth", "mm, depth")],
          [("depths", "text depths"), ("step_minutes", "step"), ("offset_hours", "offset"), ("day_start", "begin"), ("day", "day")], [("depth", "rain-day.depth")], rows)
    spells, sums = [], []
    months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
    for k in range(4):
        daily = [round(rng.uniform(0, 14), 1) if rng.random() < 0.35 else rng.choice([0.0, 0.1]) for _ in range(365)]
        most, least = 0.2, rng.choice([3, 5])
        runs_, run = [], 0
        for v in daily + [99]:
            if v <= most:
                run += 1
            else:
                if run >= least:
                    runs_.append(run)
                run = 0
        for i in (0, len(runs_) - 1):
            spells.append([text(daily), most, least, i, runs_[i]])
        normals = [round(rng.uniform(30, 90), 1) for _ in range(12)]
        cuts = np.cumsum([0] + months)
        by_month = [daily[a:b] for a, b in zip(cuts, cuts[1:])]
        for row in (1, 6, 11):
            sums.append([text(daily), "month", row, text(normals), sum(by_month[row]), sum(v >= 1 for v in by_month[row]), 100 * sum(by_month[row]) / normals[row]])
        seasons = [by_month[0] + by_month[1]] + [sum(by_month[m:m + 3], []) for m in (2, 5, 8)] + [by_month[11]]
        names = [(11, 0, 1), (2, 3, 4), (5, 6, 7), (8, 9, 10), (11, 0, 1)]
        for row in (0, 2, 4):
            sums.append([text(daily), "season", row, text(normals), sum(seasons[row]), sum(v >= 1 for v in seasons[row]), 100 * sum(seasons[row]) / sum(normals[m] for m in names[row])])
    write("dry-spells", "Runs of days with little rain", [("daily", "mm, days of a year"), ("most", "mm, on a dry day"), ("least", "1, days of a run"), ("spell", "1, run asked for"), ("length", "1, days")],
          [("daily", "text daily"), ("most_mm", "most"), ("least_days", "least"), ("spell", "spell")], [("length", "dry-spells.days")], spells, "counts", "0")
    write("rain-summaries", "Rain of months and seasons beside normals", [("daily", "mm, days of 2001"), ("period", "1, period"), ("row", "1, row asked for"), ("normals", "mm, of each month"), ("depth", "mm, depth"), ("wet", "1, days of 1 mm"), ("percent", "%, of normal")],
          [("daily", "text daily"), ("period", "text period"), ("row", "row")],
          [("depth", "rain-summary.depth"), ("wet", "rain-summary.wet-days"), ("percent", "rain-summary.percent-of-normal", "input.normals = text normals")], sums)
    rows = []
    for k in range(3):
        depths = [round(rng.uniform(0, 5), 1) for _ in range(24)]
        celsius = [round(6 * math.sin(i / 4 + k) + rng.uniform(-1, 1), 1) for i in range(24)]
        pack, got = 0.0, []
        for d, t in zip(depths, celsius):
            snow = d * min(1, max(0, (2 - t) / 2))
            pack += snow
            melt = min(pack, 2.74 * max(0, t) / 4)
            pack -= melt
            got.append((d - snow, melt, pack))
        for i in (2, 9, 15, 23):
            rows.append([text(depths), text(celsius), i, *got[i]])
    write("snow-and-melt", "Snow by temperature and melt by degrees and days", [("depths", "mm, in six hours"), ("celsius", "degC, temperature"), ("step", "1, step asked for"), ("rain", "mm, rain"), ("melt", "mm, melt"), ("lying", "mm, snow lying")],
          [("depths", "text depths"), ("celsius", "text celsius"), ("step", "step")], [("rain", "snow.rain"), ("melt", "snow.melt"), ("lying", "snow.lying")], rows)


# Runoff


def runoff():
    rng = random.Random(38)
    table = "duration_min,1,10\n5,5,9\n15,9,16\n60,16,28\n240,24,42\n"
    known = {5: (5, 9), 15: (9, 16), 60: (16, 28), 240: (24, 42)}

    def depth(minutes, years):
        durations = sorted(known)
        logs = [np.interp(math.log(minutes), [math.log(d) for d in durations], [math.log(known[d][c]) for d in durations]) for c in (0, 1)]
        return float(np.interp(math.log(years), [0, math.log(10)], np.exp(logs)))

    rows = []
    whole = rng
    for k in range(9):
        # The ninth has draws of its own, so that all that follows stays as it is.
        rng = whole if k < 8 else random.Random(39)
        areas = [round(rng.uniform(0.2, 4), 2) for _ in range(3)]
        c = [round(rng.uniform(0.1, 0.95), 2) for _ in areas]
        entry, flow, routing = rng.randrange(5, 12), round(rng.uniform(2, 20), 1), rng.choice([1, 1.3])
        effective = sum(a * 1e4 * x for a, x in zip(areas, c))
        intensity, years = round(rng.uniform(10, 90), 1), rng.choice([1, 2, 5, 10])
        tc = entry + flow
        rain = rng.choice([40, 90])
        peak = routing * effective * depth(rain, years) / rain * 60 / 3.6e6
        trapezium = lambda t: max(0.0, min(1, t / tc, (rain + tc - t) / tc))
        i = rng.randrange(0, 12)
        fine = np.linspace(5 * i, 5 * i + 5, 50001)
        mean = float(np.trapezoid([trapezium(t) for t in fine], fine) / 5)
        # The last release takes all.
        release = round(peak * rng.uniform(0.1, 0.6) * (9 if k == 8 else 1), 3)
        rows.append([text(areas), text(c), entry, flow, routing, intensity, table, years, rain, 5, i, release,
                     effective / sum(areas) / 1e4, routing * effective * intensity / 3.6e6, routing * effective * depth(tc, years) / tc * 60 / 3.6e6, peak * mean, max(0, peak * rain * 60 - release * (rain + tc) * 30)])
    rng = whole
    write("rational-method", "Rational method, its trapezium and its storage", [("areas", "ha, areas"), ("c", "1, coefficients"), ("entry", "min, time of entry"), ("flow", "min, time of flow"), ("routing", "1, routing coefficient"), ("intensity", "mm/h, intensity"), ("table", "mm, depth-duration-frequency"), ("years", "years, return period"), ("rain", "min, duration"), ("step", "min, step"), ("index", "1, step asked for"), ("release", "m3/s, release"),
          ("coefficient", "1, mean coefficient"), ("peak", "m3/s, peak"), ("peaktable", "m3/s, peak of the table"), ("mean", "m3/s, flow of the step"), ("storage", "m3, storage")],
          [("hectares", "text areas"), ("coefficients", "text c"), ("entry_minutes", "entry"), ("flow_minutes", "flow"), ("routing", "routing")],
          [("coefficient", "rational.coefficient"), ("peak", "rational.peak", "input.intensity = intensity"), ("peaktable", "rational.peak-of-table", "input.table = text table", "input.years = years"),
           ("mean", "rational.flow", "input.table = text table", "input.years = years", "input.minutes = rain", "input.step_minutes = step", "input.step = index", "tolerance = 1e-7 relative or 1e-9", "reason = a sum of 50,000 parts"),
           ("storage", "rational.storage", "input.table = text table", "input.years = years", "input.minutes = rain", "input.release = release", "tolerance = 1e-9 relative or 1e-9", "reason = a difference")], rows, "logarithms of a table", "1e-10 relative")
    rows = []
    for length, s, r, c, v in ((100, 0.01, 0.4, 0.5, 1.0), (35, 0.03, 0.1, 0.85, 0.7), (320, 0.004, 0.2, 0.3, 1.6), (12, 0.02, 0.02, 0.95, 2.2)):
        feet = length / 0.3048
        rows.append([length, s, r, c, v, 0.0078 * feet**0.77 / s**0.385, 0.828 * (feet * r / s**0.5) ** 0.467, 1.8 * (1.1 - c) * feet**0.5 / (100 * s) ** (1 / 3), length / v / 60])
    write("flow-paths", "Times of Kirpich (1940), Kerby (1959) and the Federal Aviation Administration (1970), from memory", [("length", "m, length"), ("s", "1, gradient"), ("r", "1, retardance"), ("c", "1, runoff coefficient"), ("v", "m/s, velocity"), ("kirpich", "min, time"), ("kerby", "min, time"), ("airport", "min, time"), ("travel", "min, time")],
          [("length", "length"), ("gradient", "s")], [("kirpich", "flow-path.kirpich"), ("kerby", "flow-path.kerby", "input.retardance = r"), ("airport", "flow-path.airport", "input.coefficient = c"), ("travel", "flow-path.at-velocity", "input.velocity = v")], rows, "times in whole nanoseconds", "1e-11 relative or 1e-10")
    rows = []
    for p, g, i, e, m in ((10000, 150, 400, 200, 6), (2500, 140, 0, 0, 3), (1200, 180, 60, 5, 3), (64000, 135, 2100, 800, 6)):
        dwf = p * g / 1000 + i + e
        q = p / 1000
        rows.append([p, g, i, e, m, dwf, dwf + 1.36 * p + 2 * e, m * dwf, 3 * p * g / 1000 + i + 3 * e, (18 + q**0.5) / (4 + q**0.5), 5 * q**-0.2])
    write("dry-weather-formulae", "Dry weather flow, Formula A, full flow, factors of Harmon (1918) and Babbitt (1932), from memory", [("p", "1, heads"), ("g", "l/d, a head"), ("i", "m3/d, infiltration"), ("e", "m3/d, trade effluent"), ("m", "1, multiple"), ("dwf", "m3/d, flow"), ("a", "m3/d, Formula A"), ("multiple", "m3/d, flow"), ("full", "m3/d, full flow"), ("harmon", "1, factor"), ("babbitt", "1, factor")],
          [("heads", "p"), ("litres", "g"), ("infiltration", "i"), ("trade", "e")], [("dwf", "dry-weather.flow"), ("a", "dry-weather.formula-a"), ("multiple", "dry-weather.multiple", "input.times = m"), ("full", "dry-weather.full-flow"), ("harmon", "dry-weather.harmon"), ("babbitt", "dry-weather.babbitt")], rows)
    rows = []
    for k in range(6):
        dry = [round(10 + 3 * math.sin(i / 9), 2) for i in range(120)]
        end = rng.randrange(20, 200)
        flow = [round(d + (30 * math.exp(-(i * 10 - end) / 70) if i * 10 >= end else 0) + rng.uniform(-0.3, 0.3), 2) for i, d in enumerate(dry)]
        allowance, held = 0.1, rng.choice([20, 60])
        ok = [f - d <= allowance * d for f, d in zip(flow, dry)]
        begin = next(i for i in range(math.ceil(end / 10), 120) if all(ok[i:i + held // 10]) and i + held // 10 <= 120)
        rows.append([text(flow), text(dry), end, allowance, held, begin * 10 - end])
    write("return-to-dry-weather", "When flow is back within an allowance", [("flow", "1, flow in ten minutes"), ("dry", "1, dry weather flow"), ("end", "min, end of the rain"), ("allowance", "1, allowance"), ("held", "min, held"), ("took", "min, time")],
          [("flow", "text flow"), ("dry", "text dry"), ("rain_end", "end"), ("allowance", "allowance"), ("held_minutes", "held")], [("took", "response.return-to-dry-weather")], rows)
    rows = []
    for k in range(4):
        constant = rng.choice([45, 80])
        flow = [2.5 * math.exp(-10 * i / constant) for i in range(30)]
        after = rng.choice([15, 70])
        rain = [round(rng.uniform(0, 3), 1) for _ in range(30)]
        base = [0.3 + 0.01 * i for i in range(30)]
        rows.append([text(flow), after, math.exp(-after / constant), text(rain), 120000, text(base), 100 * 600 * sum(f - b for f, b in zip(flow, base)) / (sum(rain) * 120)])
    # One cubic metre of rain.
    flow, base, rain = [0.02 * math.exp(-i / 5) for i in range(30)], [0.0002] * 30, [2.0] * 4 + [0.0] * 26
    rows.append([text(flow), 20, math.exp(-0.4), text(rain), 125, text(base), 100 * 600 * sum(f - b for f, b in zip(flow, base))])
    write("response-shares", "Share of a recession that is left, and runoff in percent", [("flow", "m3/s, in ten minutes"), ("after", "min, time"), ("left", "1, share"), ("rain", "mm, rain"), ("area", "m2, area"), ("base", "m3/s, dry weather"), ("percent", "%, runoff")],
          [("flow", "text flow")], [("left", "response.recession-share", "input.minutes = after", "tolerance = 1e-9", "reason = a constant in whole nanoseconds"), ("percent", "response.runoff-percent", "input.rain = text rain", "input.area = area", "input.dry = text base")], rows)
    rows = []
    for minutes in (5, 12, 37, 240):
        for form, a, b, n, mean in (("talbot", 4100, 17, 1, 4100 / (minutes + 17)), ("kimijima", 900, 1.7, 0.72, 900 / (minutes**0.72 + 1.7)), ("sherman", 1300, 6.5, 0.81, 1300 / (minutes + 6.5) ** 0.81)):
            rows.append([form, a, b, n, minutes, mean, mean * minutes / 60])
    write("intensity-formulae", "Intensities of formulae with a constant beside the duration", [("form", "text, form"), ("a", "mm/h, factor"), ("b", "min or its power, constant"), ("n", "1, exponent"), ("minutes", "min, duration"), ("mean", "mm/h, intensity"), ("depth", "mm, depth")],
          [("form", "text form"), ("a", "a"), ("b", "b"), ("n", "n"), ("minutes", "minutes")], [("mean", "intensity-formula.intensity"), ("depth", "intensity-formula.depth")], rows)
    rows = []
    for minutes, mm in ((10, 8.0), (30, 14.5), (60, 12.0), (120, 31.0), (5, 5.4), (45, 24.0)):
        rows.append([minutes, mm, 10 * (mm + 2.54) ** 3.55 / (1.214e5 * minutes / 60), int(mm / minutes * 60 > 31.75)])
    write("bilham-return-periods", "Bilham (1935) in metric form, solved for the years", [("minutes", "min, duration"), ("depth", "mm, depth"), ("years", "years, return period"), ("doubtful", "1, above 1.25 in/h")],
          [("minutes", "minutes"), ("depth", "depth")], [("years", "ddf.bilham.return-period"), ("doubtful", "ddf.bilham.doubtful")], rows)
    rows = []
    for minutes, share in ((5, 0.2), (17, 0.5), (300, 0.83)):
        a2, a10, n = 280.0, 430.0, 0.62
        two, ten = (a * minutes ** (1 - n) / 60 for a in (a2, a10))
        d = two + share * (ten - two)
        rows.append([minutes, d, a2, a10, n, math.exp(math.log(2) + share * math.log(5))])
    write("formulae-return-periods", "Return period between two formulae, depth linear in its logarithm", [("minutes", "min, duration"), ("depth", "mm, depth"), ("a2", "1, of two years"), ("a10", "1, of ten years"), ("n", "1, exponent"), ("years", "years, return period")],
          [("minutes", "minutes"), ("depth", "depth"), ("a2", "a2"), ("a10", "a10"), ("n", "n")], [("years", "ddf.formulae.return-period")], rows, "logarithms", "1e-11 relative")
    rows = [[table, m, y, p, depth(m, y) / m * 60, (1 + p / 100) * depth(m, y)] for m, y, p in ((5, 1, 20), (15, 10, 45), (60, 3, 10), (100, 7, -5))]
    write("table-intensities", "Intensity and raised depth of a table", [("table", "mm, table"), ("minutes", "min, duration"), ("years", "years, return period"), ("percent", "%, uplift"), ("intensity", "mm/h, intensity"), ("raised", "mm, raised depth")],
          [("table", "text table"), ("minutes", "minutes"), ("years", "years")], [("intensity", "ddf.table.intensity"), ("raised", "ddf.table.raised-depth", "input.percent = percent")], rows, "logarithms", "1e-11 relative")
    rows = []
    for a, b, f in ((0.06, 1.026, 0.31), (0.1, 0.815, 0.77), (0.2, 1.2, 0.5), (0.06, 1.026, 0.93)):
        d, total, inner, short, pos = 30.0, 120, 14.0, 30, 0.3
        rise, fall = pos * (total - short) / 60, (1 - pos) * (total - short) / 60
        shoulder = 2 * (d - inner) / (total / 60 - short / 60)
        peak = 2 * inner / (short / 60) - shoulder
        knots = np.array([0, rise, rise + short / 120, rise + short / 60, total / 60])
        heights = np.array([0, shoulder, peak, shoulder, 0])
        t = np.linspace(0, f * total / 60, 400001)
        share = float(np.trapezoid(np.interp(t, knots, heights), t) / d)
        side = (1 - a ** (abs(2 * f - 1) ** b)) / (1 - a)
        rows.append([a, b, f, 0.5 + math.copysign(side, f - 0.5) / 2, d, total, inner, short, pos, share])
    write("storm-shapes", "Shares of the depth: symmetric profile, and two triangles by quadrature", [("a", "1, parameter"), ("b", "1, parameter"), ("f", "1, part of the duration"), ("share", "1, share"), ("depth", "mm, depth"), ("minutes", "min, duration"), ("inner", "mm, intense part"), ("short", "min, its duration"), ("pos", "1, position"), ("triangle", "1, share")],
          [("fraction", "f")], [("share", "design.symmetric-profile.share", "input.profile_a = a", "input.profile_b = b"),
           ("triangle", "design.double-triangle.share", "input.depth = depth", "input.minutes = minutes", "input.intense_depth = inner", "input.intense_minutes = short", "input.position = pos", "tolerance = 1e-9", "reason = a sum of 400,000 parts")], rows)
    rows = []
    for k in range(4):
        times = [0, 1, 2, 3, 4]
        shares = [0] + sorted(round(rng.uniform(1, 99)) for _ in range(3)) + [100]
        block, n = rng.randrange(1, 9), 8
        mm = np.interp([(block - 1) / n * 4, block / n * 4], times, shares) / 100
        rows.append([text(times), text(shares), 40, 80, 10, 1.25, block, float(1.25 * 40 * (mm[1] - mm[0]))])
    write("shaped-storms", "Blocks of storms along a curve of points", [("times", "1, times"), ("shares", "%, shares"), ("depth", "mm, depth"), ("minutes", "min, duration"), ("step", "min, step"), ("factor", "1, factor"), ("block", "1, block"), ("mm", "mm, depth of it")],
          [("times", "text times"), ("shares", "text shares"), ("depth", "depth"), ("minutes", "minutes"), ("step_minutes", "step"), ("factor", "factor"), ("block", "block")], [("mm", "design.shape.depth")], rows, "shares of 40 mm", "1e-11")


def distributions():
    rows = []
    for kind, depth, step, points in (("II", 100.0, 15, (0.357, 0.663, 0.25)), ("I", 64.0, 30, (0.303, 0.515, 0.5))):
        rows.append([kind, depth, step, depth * (points[1] - points[0]) / points[2]])
    write("nrcs-peaks", "Greatest intensity between two printed points of the 24-hour distributions", [("type", "1, distribution"), ("depth", "mm, depth"), ("step", "min, step"), ("peak", "mm/h, intensity")],
          [("type", "text type"), ("depth", "depth"), ("step_minutes", "step")], [("peak", "design.nrcs.peak")], rows, "differences of shares", "1e-11 relative")


for part in (distributions, space, tips, network, steps, events, days, runoff):
    part()
