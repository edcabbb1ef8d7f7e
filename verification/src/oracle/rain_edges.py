"""Rain at its edges: what is left of a step, ties, gaps, coincident tips, storms of several gauges. Plain Python with exact fractions, no
code in common with the library.

    python3 rain_edges.py FOLDER

writes the tables named below into the folder of the rainfall tables. All records are invented, from the seed below.
"""

import math
import random
import statistics
import sys
from fractions import Fraction as F

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "rain_edges.py"
NAN = float("nan")


def places(values):
    return float(sum(i * F(v) for i, v in enumerate(values, 1) if v == v))


def dry_gaps(rng):
    rows = []
    for k in range(12):
        t, tips = 0.0, []
        for _ in range(rng.randrange(4, 25)):
            tips.append(round(t, 1))
            t += rng.choice([0, 12.5, 60, 60, 600, 5400, 40000, rng.uniform(1, 90000)])
        tips = sorted(round(x, 1) for x in tips)
        gaps = sorted(F(str(b)) / 3600 - F(str(a)) / 3600 for a, b in zip(tips, tips[1:]) if b > a)
        for convention in ("gaps", "excesses"):
            least, kept, variation = [], [], []
            for at in sorted(set(gaps)):
                long = [g for g in gaps if g >= at]
                if len(long) < 3:
                    continue
                left = [g - at for g in long] if convention == "excesses" else long
                mean = sum(left) / len(left)
                square = sum((g - mean) ** 2 for g in left) / (len(left) - (convention == "excesses"))
                least.append(at), kept.append(len(long))
                variation.append(math.sqrt(square) / float(mean) if square else 0.0)
            rows.append((text(tips), convention, places(variation), places(least), places(kept)))
    write(FOLDER, PROGRAM, "dry-gaps-of-tips", "dry times between tips: each length that occurs as the least, with what is left",
          [("t", "s, tips"), ("convention", "text, what varies"), ("variation", "1, coefficients of variation times places"), ("least", "h, least gaps times places"), ("kept", "1, gaps kept times places")],
          [("tip_seconds", "text t"), ("convention", "text convention")],
          [("variation", "dry-gaps.of-tips.variation"), ("least", "dry-gaps.of-tips.minimum"), ("kept", "dry-gaps.of-tips.kept")], rows, tolerance="1e-11 relative or 1e-11")


def deepest(x, step, window):
    """All windows that begin or end with a step; a part of a step has its part of the rain."""
    best, at = 0, 0
    whole, part = window // step, F(window % step, step)
    for first in range(-len(x), len(x)):
        inside = lambda i: x[i] if 0 <= i < len(x) else 0
        body = sum(inside(i) for i in range(first, first + whole))
        for begin, depth in ((first * step - window % step, body + part * inside(first - 1)), (first * step, body + part * inside(first + whole))):
            if depth > best:
                best, at = depth, max(0, begin)
    return best, at


def windows(rng):
    rows = []
    for step, window in ((5, 12), (5, 13), (5, 8), (2, 37), (10, 95), (6, 45), (15, 15), (5, 60), (5, 171), (7, 400)):
        for wet in (1, 0.6):
            x = [F(rng.randrange(1, 4000), 1000) if rng.random() < wet else F(0) for _ in range(rng.randrange(80, 150))]
            if wet < 0.9:
                for i in range(0, len(x), 7):
                    x[i] = F(0)
            depth, at = deepest(x, step, window)
            rows.append((text([float(v) for v in x]), step, window, float(depth), at if wet == 1 else ""))  # where there is no rain many are as deep
    write(FOLDER, PROGRAM, "deepest-windows", "deepest windows of any length, and when they begin, found by trying each that begins or ends with a step",
          [("x", "mm, depths"), ("step", "min, step"), ("window", "min, window"), ("depth", "mm, depth"), ("start", "min, begin")],
          [("depths", "text x"), ("step_minutes", "step"), ("window_minutes", "window")], [("depth", "event.peak-depth"), ("start", "event.peak-start")], rows)


def profiles(rng):
    rows = []
    for n in (1, 2, 3, 4, 7, 24, 41):
        for _ in range(2):
            x = [F(rng.choice([0, 0, 2, 4, 4, 10, 13]), 10) for _ in range(n)]
            x[rng.randrange(n)] += F(1, 5)
            shown = [float(v) for v in x]
            if n > 4:
                shown[n // 3], x[n // 3] = NAN, F(0)
            if not sum(x):
                continue
            total, step = sum(x), rng.choice([2, 5, 60])
            peak = (x.index(max(x)) + F(1, 2)) * step
            for share in (F(0), F(1, 7), F(1, 2), F(13, 20), F(19, 20), F(999, 1000), F(1)):
                at = F(float(share)) * n
                depth = sum(max(F(0), min(at - i, F(1))) * v for i, v in enumerate(x))
                rows.append((text(shown), step, float(share), float(depth / total), float(peak)))
    write(FOLDER, PROGRAM, "storm-profile-edges", "share of the rain in the first part of a storm, from one step on, and the middle of its first wettest step",
          [("x", "mm, depths"), ("step", "min, step"), ("at", "1, share of the time"), ("share", "1, share of the depth"), ("peak", "min, time to the peak")],
          [("depths", "text x"), ("step_minutes", "step")], [("share", "storm.profile.share", "input.fraction = at"), ("peak", "storm.profile.peak")], rows)


def triangles(rng):
    rows = []
    for _ in range(14):
        D, d = F(rng.randrange(40, 400)), F(rng.randrange(5, 39))
        h = F(rng.randrange(60, 400), 10)
        H = h + F(rng.randrange(0, 100), 10) * min(F(1), h / d * (D - d) / 12)
        position = F(rng.choice([0, 100, 250, 500, 730]), 1000)
        i1 = 2 * (H - h) / (D - d)  # mm a minute, at both ends of the intense part
        i2 = 2 * h / d - i1
        if i2 < i1:
            continue
        a = position * (D - d)
        corners = [(F(0), F(0)), (a, i1), (a + d / 2, i2), (a + d, i1), (D, F(0))]
        for fraction in (0.03, 0.21, 0.37, 0.45, 0.52, 0.58, 0.66, 0.83, 0.98, 1):
            t, depth = F(fraction) * D, F(0)
            for (t0, y0), (t1, y1) in zip(corners, corners[1:]):
                end = min(t, t1)
                if end > t0:
                    depth += (end - t0) * (y0 + (y0 + (y1 - y0) * (end - t0) / (t1 - t0))) / 2
            rows.append((float(H), float(D), float(h), float(d), float(position), fraction, float(depth / H)))
        # just before the end and just after the begin of the intense part
        for t in (a + d * F(1, 10), a + d * F(6, 10), a + d * F(8, 10), a + d * F(95, 100)):
            fraction = float(t / D)
            t, depth = F(fraction) * D, F(0)
            for (t0, y0), (t1, y1) in zip(corners, corners[1:]):
                end = min(t, t1)
                if end > t0:
                    depth += (end - t0) * (y0 + (y0 + (y1 - y0) * (end - t0) / (t1 - t0))) / 2
            rows.append((float(H), float(D), float(h), float(d), float(position), fraction, float(depth / H)))
    write(FOLDER, PROGRAM, "double-triangle-limbs", "share of the depth under an intensity of straight pieces, by their areas",
          [("depth", "mm, depth"), ("long", "min, duration"), ("inside", "mm, intense depth"), ("short", "min, intense period"), ("position", "1, share of the rest before it"), ("at", "1, share of the time"), ("share", "1, share of the depth")],
          [("depth", "depth"), ("minutes", "long"), ("intense_depth", "inside"), ("intense_minutes", "short"), ("position", "position"), ("fraction", "at")], [("share", "design.double-triangle.share")], rows,
          tolerance="1e-11 relative or 1e-12")


def events(x, step, gap):
    found = []
    for i, v in enumerate(x):
        if v > 0:
            if found and i * step - found[-1][1] < gap:
                found[-1][1] = (i + 1) * step
            else:
                found.append([i * step, (i + 1) * step])
    return found


def storms(rng):
    rows = []
    for k in range(12):
        step, gap = rng.choice([(5, 60), (10, 60), (15, 180)])
        n = 90
        gauges = []
        for g in range(rng.choice([2, 3, 4])):
            x = [F(0)] * n
            for at in (8, 34, 62):
                begin = at + rng.randrange(-4, 5)
                for i in range(begin, begin + rng.randrange(2, 9)):
                    x[i] = F(rng.randrange(1, 60), 10)
            gauges.append(x)
        if k % 4 == 3:
            gauges[1] = [F(0)] * n
        over = step * rng.choice([1, 2, 3])
        depth, intensity, spread = F(rng.randrange(10, 120), 10), F(rng.randrange(20, 240), 10), F(rng.randrange(10, 100), 100)
        spans = []
        for begin, end in sorted(e for x in gauges for e in events(x, step, gap)):
            if spans and begin < spans[-1][1] + gap:
                spans[-1][1] = max(spans[-1][1], end)
            else:
                spans.append([begin, end])
        met = []
        for begin, end in spans:
            inside = [x[begin // step:end // step] for x in gauges]
            sums = [sum(x) for x in inside]
            hardest = [max(deepest(x, step, over)[0] for x in [part]) * 60 / over for part in inside]
            middle = statistics.median(sums)
            apart = max(max(sums) - middle, middle - min(sums))
            met.append(int(min(sums) >= depth and min(hardest) >= intensity and (apart == 0 or middle > 0 and apart <= spread * middle)))
        rows.append(("; ".join(text([float(v) for v in x]) for x in gauges), step, gap, float(depth), float(intensity), over, float(spread), places([b for b, _ in spans]), places([e for _, e in spans]), places(met)))
    write(FOLDER, PROGRAM, "storms-of-gauges", "storms of several gauges together, each judged",
          [("gauges", "mm, depths of each"), ("step", "min, step"), ("gap", "min, least time between storms"), ("depth", "mm, least depth"), ("intensity", "mm/h, least intensity"), ("over", "min, over"), ("spread", "1, greatest spread"),
           ("start", "min, begins times places"), ("end", "min, ends times places"), ("met", "1, met times places")],
          [("gauges", "text gauges"), ("step_minutes", "step"), ("inter_event_minutes", "gap"), ("depth_mm", "depth"), ("intensity", "intensity"), ("over_minutes", "over"), ("spread", "spread")],
          [("start", "storm.assessed.start"), ("end", "storm.assessed.end"), ("met", "storm.assessed.met")], rows)


def snow(rng):
    rows = []
    for k in range(10):
        step = rng.choice([60, 180, 360])
        n = 24
        x = [rng.choice([0.0, 0.0, round(rng.uniform(0.2, 9), 1)]) for _ in range(n)]
        if k % 3 == 0:
            x[7] = NAN
        at, air, t = [], [], rng.choice([-200.0, 0.0, 11.0])
        while t < n * step:
            at.append(t), air.append(NAN if rng.random() < 0.2 else round(rng.uniform(-5, 6), 1))
            t += rng.choice([30, 60, 60, 179, 180, 181, 400, 700])
        below = rng.choice([-1.0, 0.0, 0.5])
        above, melting, degree = below + rng.choice([0, 1.5, 2]), rng.choice([-0.5, 0.0, 1.0]), rng.choice([2.74, 4.0])
        rain, white, melt, lying, unknown, pack = [], [], [], [], 0, F(0)
        for i in range(n):
            inside = [F(v) for s, v in zip(at, air) if i * step <= s < (i + 1) * step and v == v]
            before = [F(v) for s, v in zip(at, air) if i * step - 180 <= s < i * step and v == v]
            warm = sum(inside) / len(inside) if inside else before[-1] if before else None
            unknown += warm is None
            share = F(0) if warm is None else F(1) if warm <= F(below) else F(0) if warm >= F(above) else (F(above) - warm) / (F(above) - F(below))
            if x[i] == x[i]:
                rain.append(F(x[i]) * (1 - share)), white.append(F(x[i]) * share)
                pack += white[-1]
            else:
                rain.append(NAN), white.append(NAN)
            thaw = F(0) if warm is None else min(pack, F(degree) * max(F(0), warm - F(melting)) * step / 1440)
            pack -= thaw
            melt.append(thaw), lying.append(pack)
        rows.append((text(x), step, text(at), text(air), below, above, melting, degree, places(rain), places(white), places(melt), places(lying), unknown))
    names = ["rain", "snow", "melt", "lying", "unknown"]
    write(FOLDER, PROGRAM, "snow-records", "rain, snow, melt and what lies, step by step, with temperatures at other times and gaps in them",
          [("x", "mm, precipitation"), ("step", "min, step"), ("at", "min, times of temperatures"), ("air", "degC, temperatures"), ("below", "degC, all snow"), ("above", "degC, all rain"), ("melting", "degC, melts above"), ("degree", "mm, melt a degree and day")]
          + [(n, "mm, times places" if n != "unknown" else "1, steps without temperature") for n in names],
          [("depths", "text x"), ("step_minutes", "step"), ("temperature_minutes", "text at"), ("celsius", "text air"), ("snow_below", "below"), ("rain_above", "above"), ("melt_above", "melting"), ("degree_day", "degree")],
          [(n, f"snow.book.{n}") for n in names], rows, tolerance="1e-11 relative or 1e-11")


def curves(rng):
    rows, sums = [], []
    for form, a, b, c, low, high, slow in (("linear", 0.9, 1.04, 0, 4, 200, 1), ("linear", -0.2, 1.1, 0, 12, 90, 1.03), ("quadratic", 0.3, 0.98, 0.0007, 6, 250, 0.97), ("power", 0.93, 1.031, 0, 8, 160, 1), ("power", 1.07, 0.99, 0, 3, 55, 1.02)):
        truth = lambda r: a * r**b if form == "power" else a + b * r + c * r * r

        def factor(r):
            if r < low:
                return slow + (truth(low) / low - slow) * r / low
            r = min(r, high)
            return truth(r) / r

        for r in (0, 0.01, low * 0.3, low * 0.97, low, low * 1.4, (low + high) / 2, high * 0.99, high, high * 1.3, high * 40):
            rows.append((form, a, b, c, low, high, slow, r, factor(r), int(low <= r <= high)))
        for _ in range(3):
            t, tips = 10.0, []
            for _ in range(40):
                tips.append(round(t, 1))
                t += rng.choice([0, 0, 2.5, 4, 7, 13, 60, 170, 400, 9000])
            tip = 0.2
            instants = sorted(set(tips))
            below = above = 0
            depth = tip * slow * tips.count(instants[0])
            for before, now in zip(instants, instants[1:]):
                many = tips.count(now)
                rate = 3600 * tip * many / (now - before)
                below += many if rate < low else 0
                above += many if rate > high else 0
                depth += many * tip * factor(rate)
            sums.append((form, a, b, c, low, high, slow, text(tips), tip, below, above, len(tips) - len(instants), depth, below + above))
    head = [("form", "text, form"), ("a", "mm/h, a"), ("b", "1, b"), ("c", "h/mm, c"), ("low", "mm/h, lowest"), ("high", "mm/h, highest"), ("slow", "1, static factor")]
    given = [("form", "text form"), ("a", "a"), ("b", "b"), ("c", "c"), ("lowest", "low"), ("highest", "high"), ("static_factor", "slow")]
    write(FOLDER, PROGRAM, "calibration-curve-ends", "factors of calibration curves in, below and above their range", head + [("r", "mm/h, recorded"), ("f", "1, factor"), ("inside", "1, 1 within the range of the test")], given + [("recorded", "r")], [("f", "gauge.curve.factor"), ("inside", "gauge.curve.covers")], rows)
    write(FOLDER, PROGRAM, "tips-beyond-calibration", "tips of a calibrated bucket, coincident ones among them, beyond the range of its test",
          head + [("t", "s, tips"), ("tip", "mm, tip"), ("below", "1, tips below"), ("above", "1, tips above"), ("together", "1, coincident tips"), ("depth", "mm, depth"), ("beyond", "1, tips below and above")], given + [("tip_seconds", "text t"), ("tip_mm", "tip")],
          [("below", "gauge.summary.below"), ("above", "gauge.summary.above"), ("together", "gauge.summary.coincident"), ("depth", "gauge.summary.depth"), ("beyond", "gauge.summary.beyond")], sums, tolerance="1e-10 relative or 1e-10")


def checks(rng):
    rows = []
    for k in range(16):
        clock = rng.choice([0, 0, 1, 5, 60])
        tip, ceiling = rng.choice([0.1, 0.2, 0.5]), rng.choice([200, 500, 1000])
        fastest = F(str(tip)) * 3600 / ceiling
        t, tips = 0.0, []
        for _ in range(60):
            tips.append(t - t % clock if clock else round(t, 2))
            t += rng.choice([0, 0.3, float(fastest) * 0.9, float(fastest) * 0.99, float(fastest) * 1.02, 3, 11, 90, 21599, 21601, 30000])
        tips = sorted(round(v, 2) for v in tips)
        first, double, run = [], [], 0
        for i, now in enumerate(tips):
            gap = F(str(now)) - F(str(tips[i - 1])) if i else None
            run = run + 1 if i and gap == 0 else 0
            first.append(int(not i or gap > 6 * 3600))
            double.append(int(not first[-1] and gap + clock < fastest * max(1, run)))
        rows.append((text(tips), tip, clock, ceiling, "first", places(first)))
        rows.append((text(tips), tip, clock, ceiling, "double", places(double)))
    write(FOLDER, PROGRAM, "tip-gaps", "tips that come first and tips that come too fast, at limits of the clock and the ceiling",
          [("t", "s, tips"), ("tip", "mm, tip"), ("clock", "s, resolution"), ("ceiling", "mm/h, highest intensity"), ("flag", "text, flag"), ("sum", "1, places of the flagged")],
          [("tip_seconds", "text t"), ("tip_mm", "tip"), ("clock_seconds", "clock"), ("ceiling", "ceiling"), ("flag", "text flag")], [("sum", "gauge.checks.book")], rows)


def static(rng):
    rows = []
    for n in (2, 3, 6, 9):
        area = F(rng.choice([200, 314, 500]))
        tips = [rng.randrange(20, 60) for _ in range(n)]
        volumes = [F(round(200 * k * 0.1 * rng.uniform(0.9, 1.15) * 10) , 100) * area / 200 for k in tips]
        volumes = [F(float(v)) for v in volumes]
        each = [10 * v / (area * k) for v, k in zip(volumes, tips)]
        tip = 10 * sum(volumes) / (area * sum(tips))
        mean = sum(each) / n
        deviation = math.sqrt(sum((d - mean) ** 2 for d in each) / (n - 1))
        rows.append((float(area), text([float(v) for v in volumes]), text(tips), float(tip), deviation, deviation / math.sqrt(n), float(max(abs(d / tip - 1) for d in each) * 100)))
    write(FOLDER, PROGRAM, "static-calibrations", "slow runs of a bucket: depth of a tip, its scatter and the worst run",
          [("area", "cm2, funnel"), ("v", "ml, volumes"), ("n", "1, tips"), ("tip", "mm, depth of a tip"), ("deviation", "mm, standard deviation"), ("error", "mm, standard error"), ("worst", "%, worst run")],
          [("funnel_cm2", "area"), ("volumes_ml", "text v"), ("tips", "text n")],
          [("tip", "gauge.calibration.static-tip"), ("deviation", "gauge.calibration.static-deviation"), ("error", "gauge.calibration.static-error"), ("worst", "gauge.calibration.static-worst")], rows,
          tolerance="1e-10 relative")


def separate_peaks(rng):
    rows = []
    for step, window, separation in ((5, 15, 0), (5, 15, 7), (5, 20, 10), (10, 10, 25), (15, 60, 61), (60, 180, 360)):
        for _ in range(2):
            x = [F(rng.choice([0, 0, 0, 2, 2, 4, 6, 10, 23]), 10) for _ in range(120)]
            long, apart = window // step, window // step + math.ceil(F(separation, step))
            depths = [sum(x[i:i + long]) for i in range(len(x) - long + 1)]
            threshold = sorted(depths)[len(depths) * 6 // 10]
            taken = []
            for i in sorted((i for i in range(len(depths)) if depths[i] >= max(threshold, F(1, 10**8))), key=lambda i: (-depths[i], i)):
                if all(abs(i - j) >= apart for j in taken):
                    taken.append(i)
            equal = sum(depths[i] == threshold for i in taken)
            taken = sorted(i for i in taken if depths[i] > threshold)
            rows.append((text([float(v) for v in x]), step, window, separation, float(threshold), places([i * step for i in taken]), places([depths[i] for i in taken]), equal))
    write(FOLDER, PROGRAM, "separate-windows", "windows above a threshold that keep apart, the deepest first, found by trying all",
          [("x", "mm, depths"), ("step", "min, step"), ("window", "min, window"), ("separation", "min, least time between"), ("threshold", "mm, threshold"), ("start", "min, begins times places"), ("depth", "mm, depths times places"), ("equal", "1, as deep as the threshold")],
          [("depths", "text x"), ("step_minutes", "step"), ("window_minutes", "window"), ("separation_minutes", "separation"), ("threshold", "threshold")],
          [("start", "peaks.windows.starts"), ("depth", "peaks.windows.depths"), ("equal", "peaks.windows.equal")], rows)


def grids(rng):
    rows = []
    for _ in range(12):
        cell, columns, lines = rng.choice([400, 1000]), rng.randrange(1, 5), rng.randrange(1, 5)
        west, south = rng.randrange(-2000, 2000), rng.randrange(-2000, 2000)
        x0, y0 = west + rng.randrange(-600, columns * cell - 100), south + rng.randrange(-600, lines * cell - 100)
        x1, y1 = x0 + rng.randrange(700, 3000), y0 + rng.randrange(700, 3000)
        shared = [max(0, min(x1, west + (i + 1) * cell) - max(x0, west + i * cell)) * max(0, min(y1, south + (j + 1) * cell) - max(y0, south + j * cell)) for i in range(columns) for j in range(lines)]
        rows.append((f"POLYGON (({x0} {y0}, {x1} {y0}, {x1} {y1}, {x0} {y1}, {x0} {y0}))", f"{west} {south}", cell, columns, lines, sum(shared) / ((x1 - x0) * (y1 - y0)), sum(s > 0 for s in shared)))
    # Cells that are smaller than a square metre, and shares of a cell that are.
    for west, south, cell, columns, lines, x0, y0, x1, y1 in ((0, 0, 0.5, 4, 4, 0.25, 0.25, 1.75, 1.5), (-1, 2, 0.25, 3, 2, -1.5, 1.5, -0.375, 2.125), (0, 0, 1000, 2, 2, 999.5, 999.5, 1000.5, 1500)):
        shared = [max(0, min(x1, west + (i + 1) * cell) - max(x0, west + i * cell)) * max(0, min(y1, south + (j + 1) * cell) - max(y0, south + j * cell)) for i in range(columns) for j in range(lines)]
        rows.append((f"POLYGON (({x0} {y0}, {x1} {y0}, {x1} {y1}, {x0} {y1}, {x0} {y0}))", f"{west} {south}", cell, columns, lines, sum(shared) / ((x1 - x0) * (y1 - y0)), sum(s > 0 for s in shared)))
    write(FOLDER, PROGRAM, "grid-cover", "share of a rectangle that a grid covers, and the cells that share area with it",
          [("catchment", "m, polygon"), ("corner", "m, corner of the grid in the south-west"), ("cell", "m, side of a cell"), ("columns", "1, columns"), ("lines", "1, rows"), ("covered", "1, share covered"), ("cells", "1, cells")],
          [("catchment", "text catchment"), ("corner", "text corner"), ("cell", "cell"), ("columns", "columns"), ("rows", "lines")], [("covered", "areal.grid.covered"), ("cells", "areal.grid.cells")], rows)


def lags(rng):
    rows = []
    for k in range(10):
        n = rng.randrange(12, 40)
        rain = [rng.choice([0.0, 0.0, round(rng.uniform(0, 8), 1)]) for _ in range(n)]
        late = rng.randrange(0, 5)
        flow = [round(3 + 2 * (rain[i - late] if i >= late else 0) + rng.uniform(0, 4), 2) for i in range(n)]
        for i in rng.sample(range(n), n // 6):
            (rain if rng.random() < 0.5 else flow)[i] = NAN
        longest = rng.randrange(2, n // 2)
        found = []
        for shift in range(longest + 1):
            pairs = [(F(a), F(b)) for a, b in zip(rain, flow[shift:]) if a == a and b == b]
            m = len(pairs)
            if m:
                pm, qm = sum(a for a, _ in pairs) / m, sum(b for _, b in pairs) / m
                pq, pp, qq = sum((a - pm) * (b - qm) for a, b in pairs), sum((a - pm) ** 2 for a, _ in pairs), sum((b - qm) ** 2 for _, b in pairs)
                found.append((shift, m, float(pq) / math.sqrt(pp * qq) if pp * qq else None))
        most = max(m for _, m, _ in found)
        good = [f for f in found if f[1] >= max(3, (most + 1) // 2) and f[2] is not None]
        best = max(good, key=lambda f: (f[2], -f[0]))
        rows.append((text(rain), text(flow), longest, best[0], best[2]))
    write(FOLDER, PROGRAM, "response-lags-with-gaps", "shift at which flow follows rain, with missing steps in both",
          [("p", "mm, rain"), ("q", "1, flow"), ("longest", "1, longest shift in steps"), ("lag", "1, shift in steps"), ("r", "1, correlation")],
          [("rain", "text p"), ("flow", "text q"), ("longest", "longest * 10")],
          [("lag", "response.lag", "result = result / 600"), ("r", "response.lag-correlation")], rows, tolerance="1e-11")


def intensity_fits(rng):
    """Bernard's formula by the normal equations of its logarithms; and depths that do not grow with the time, which every form holds as i = a/t."""
    rows = []
    for k in range(6):
        minutes = sorted(rng.sample([5, 10, 15, 20, 30, 45, 60, 90, 120, 240], rng.choice([3, 5, 7])))
        depths = [round(7 * (t / 10) ** 0.35 * rng.uniform(0.93, 1.07), 1) for t in minutes]
        depths = sorted(depths)
        x, y = [math.log(t) for t in minutes], [math.log(60 * d / t) for d, t in zip(depths, minutes)]
        n = len(x)
        slope = (n * math.fsum(a * b for a, b in zip(x, y)) - math.fsum(x) * math.fsum(y)) / (n * math.fsum(a * a for a in x) - math.fsum(x) ** 2)
        middle = (math.fsum(y) - slope * math.fsum(x)) / n
        scatter = 100 * math.sqrt(math.fsum((middle + slope * a - b) ** 2 for a, b in zip(x, y)) / n)
        rows.append(("bernard", text(minutes), text(depths), math.exp(middle), "", -slope, scatter))
    for form in ("bernard", "talbot", "sherman", "kimijima"):
        for depth in (3.7, 21.0):
            rows.append((form, "5 10 30 60", text([depth] * 4), 60 * depth, "" if form == "bernard" else 0, "" if form == "talbot" else 1, 0))
    write(FOLDER, PROGRAM, "intensity-fits-plain", "intensity formulae by least squares of logarithms, and of depths that do not grow",
          [("form", "text, form"), ("t", "min, durations"), ("d", "mm, depths"), ("a", "mm/h, a"), ("b", "min, b"), ("n", "1, n"), ("scatter", "%, root mean square")], [("form", "text form"), ("minutes", "text t"), ("depths", "text d")],
          [("a", "intensity-fit.coefficient", "input.coefficient = word a"), ("b", "intensity-fit.coefficient", "input.coefficient = word b"), ("n", "intensity-fit.coefficient", "input.coefficient = word n"), ("scatter", "intensity-fit.scatter", "tolerance = 1e-9", "reason = a difference of logarithms")],
          rows, tolerance="1e-10 relative or 1e-12")


def one_gauge(rng):
    rows = [("0 0 1 0", "3 7 11.5 NaN", 11.5), ("1", "4.25", 4.25), ("0.25 0.75 0", "8 4 NaN", 5), ("1 0", "0 6", 0)]
    write(FOLDER, PROGRAM, "one-gauge-for-all", "means where one gauge has all the weight", [("w", "1, weights"), ("d", "mm, depths"), ("mean", "mm, mean")], [("weights", "text w"), ("depths", "text d")], [("mean", "areal.weighted-mean")], rows)


def autocorrelations(rng):
    rows = []
    for k in range(8):
        n = rng.randrange(6, 60)
        x = [NAN if rng.random() < 0.15 and k % 2 else rng.choice([0.0, 0.0, round(rng.uniform(0, 6), 1)]) for _ in range(n)]
        if len({v for v in x if v == v}) < 2:
            continue
        known = [F(v) for v in x if v == v]
        mean = sum(known) / len(known)
        variance = sum((v - mean) ** 2 for v in known) / len(known)
        for lag in sorted({1, 2, 3, 4, n // 3, n // 2, n - 1}):
            pairs = [(F(a) - mean) * (F(b) - mean) for a, b in zip(x, x[lag:]) if a == a and b == b]
            rows.append((text(x), lag, float(sum(pairs) / len(pairs) / variance) if pairs else 0))
    write(FOLDER, PROGRAM, "autocorrelations-with-gaps", "autocorrelation of rain with missing steps: the mean product over the pairs that are known, over the variance",
          [("x", "mm, depths"), ("lag", "1, steps"), ("r", "1, coefficient")], [("depths", "text x"), ("lag", "lag")], [("r", "event.autocorrelation")], rows, tolerance="1e-11")


def falling_formulae(_):
    """Formulae whose depth i t falls somewhere between the shortest and the longest duration, or nearly: by steps of a thousandth there."""
    intensity = {"bernard": lambda t, b, n: t**-n, "montana": lambda t, b, n: t**-b, "talbot": lambda t, b, n: 1 / (t + b),
                 "sherman": lambda t, b, n: (t + b) ** -n, "kimijima": lambda t, b, n: 1 / (t**n + b)}
    rows = []

    def row(form, b, n, shortest, longest):
        times = [shortest * (longest / shortest) ** (k / 1000) for k in range(1001)]
        finite = form in ("bernard", "montana") or (shortest**n if form == "kimijima" else shortest) + b > 0
        depths = [t * intensity[form](t, b, n) for t in times] if finite else [1, 0]
        rows.append((form, 700, b, n, shortest, longest, int(any(after < before * (1 - 1e-12) for before, after in zip(depths, depths[1:])))))

    for shortest, longest in ((5, 60), (2, 20), (0.5, 1), (30, 30.5)):
        for form in ("bernard", "montana"):
            for n in (0.02, 0.5, 0.96, 0.98, 1, 1.02, 1.04, 1.5):
                row(form, n if form == "montana" else 0, 1 if form == "montana" else n, shortest, longest)
        for b in (-2 * shortest, -1.02 * shortest, -0.98 * shortest, -0.02, 0, 0.02, 4):
            row("talbot", b, 1, shortest, longest)
        for n in (0.6, 0.97, 1.03, 1.2):
            for share in (-1, 0.9, 0.98, 1.02, 1.1):
                # Where the depth stands still: at the shortest if n is below 1, where b is negative; at the longest if it is above.
                still = lambda t: (n - 1) * (shortest if n < 1 else longest) ** t
                row("sherman", round(share * still(1), 9), n, shortest, longest)
                row("kimijima", round(share * still(n), 9), n, shortest, longest)
    for a, n, shortest, longest, refused in ((0, 0.5, 5, 60, 1), (-1, 0.5, 5, 60, 1), (0.02, 0.5, 5, 60, 0), (700, 0, 5, 60, 1), (700, -0.02, 5, 60, 1), (700, 0.5, 60, 59, 1), (700, 0.5, 60, 60, 0), (700, 0.5, 0, 60, 1)):
        for form in ("bernard", "sherman", "kimijima"):
            rows.append((form, a, 0, n, shortest, longest, refused))
    write(FOLDER, PROGRAM, "formulae-that-fall", "intensity formulae whose depth falls with the duration, or just not, and others close to their limits",
          [("form", "text, form"), ("a", "mm/h, a"), ("b", "min, b"), ("n", "1, n"), ("shortest", "min, shortest"), ("longest", "min, longest"), ("refused", "1, 1 if refused")],
          [("form", "text form"), ("a", "a"), ("b", "b"), ("n", "n"), ("shortest", "shortest"), ("longest", "longest"), ("minutes", "longest")],
          [("refused", "refusal.intensity-formula.depth")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    random_ = random.Random(291126)
    for part in (dry_gaps, windows, profiles, triangles, storms, snow, curves, checks, static, separate_peaks, grids, lags, intensity_fits, one_gauge, autocorrelations, falling_formulae):
        part(random_)
