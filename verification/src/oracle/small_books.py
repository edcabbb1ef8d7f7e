"""Records of gauges at fixed steps and of bare tips, the chance of a break, and edges of structures: Python with NumPy and mpmath, no
code in common with the library.

    python3 small_books.py FOLDER

writes the tables named below into the folder, csv and descriptor: those of rain into one named rainfall, those of structures into one
named hydraulics. All records are invented.
"""

import math
import random
import sys
from pathlib import Path

import numpy as np
from mpmath import findroot, mp, mpf, nstr
from own_tables import text, write

mp.dps = 30
FOLDER = Path(sys.argv[1] if len(sys.argv) > 1 else ".")
PROGRAM = "small_books.py"
NAN = float("nan")


def places(values):
    return math.fsum(i * v for i, v in enumerate(values, 1) if v == v)


# ---- gauges -----------------------------------------------------------------------------------------------------------


def stepped(rng):
    rows = []
    for k in range(14):
        step = rng.choice([2, 5, 15])
        phase = rng.choice([0, 0.5, 1])
        at = sorted(rng.sample(range(3, 60), 22))
        stamps = [a * step + phase + (rng.choice([0.25, -0.25, 0.5]) if rng.random() < 0.15 else 0) for a in at]
        values = [NAN if rng.random() < 0.1 else round(rng.uniform(0, 4), 1) for _ in at]
        kind, stamp, dry = rng.choice(["depth", "intensity"]), rng.choice(["begin", "end"]), k % 2
        whole = k % 3 == 0
        begins = [s - step if stamp == "end" else s for s in stamps]
        # the phase most readings have; of equally many the first
        phases = [b % step for b in begins]
        best = max(dict.fromkeys(phases), key=lambda p: (phases.count(p), -phases.index(p)))
        low, high = (0, 0) if whole else (rng.choice([11, 20.5, 33]) * step / 2 - 3, 52 * step + 1.75)
        floor = lambda t: math.floor((t - best) / step) * step + best
        if whole:
            first, size = floor(begins[0]), round((floor(begins[-1]) - floor(begins[0])) / step) + 1
        else:
            first = floor(low) if floor(low) == low else floor(low) + step
            size = math.floor((high - first) / step)
        depths, read, aside, lost = [0.0 if dry else NAN] * size, [False] * size, 0, 0.0
        for b, v in zip(begins, values):
            if not whole and not first <= b < first + size * step:
                continue
            depth = v * step / 60 if kind == "intensity" else v
            if (b - first) % step == 0:
                depths[round((b - first) / step)], read[round((b - first) / step)] = depth, True
            else:
                aside += 1
                lost += 0 if depth != depth else depth
        missing = sum(d != d for d in depths)
        rows.append((text(stamps), text(values), kind, step, stamp, dry, low, high, places(depths), first, size, missing, size - sum(read) if dry else 0, aside, lost))
    names = ["depth", "start", "size", "missing", "filled-dry", "aside", "aside-depth"]
    write(FOLDER, PROGRAM, "stepped-gauge-records", "records at a fixed step, with stamps that fit no step, missing readings and a part of the record",
          [("t", "min, stamps"), ("x", "mm or mm/h, readings"), ("kind", "text, what"), ("step", "min, step"), ("stamp", "text, where a stamp stands"), ("dry", "1, dry without a reading"), ("low", "min, from"), ("high", "min, to")]
          + [(f"v{i}", f"1, {n}") for i, n in enumerate(names)],
          [("minutes", "text t"), ("values", "text x"), ("kind", "text kind"), ("step_minutes", "step"), ("stamp", "text stamp"), ("dry", "dry"), ("from_minutes", "low"), ("to_minutes", "high")],
          [(f"v{i}", f"gauge.stepped-book.{n}") for i, n in enumerate(names)], rows, tolerance="1e-11 relative or 1e-11", reason="16 digits are given")


def bare(rng):
    rows = []
    for k in range(12):
        t, times = rng.choice([7.0, 500.0]), []
        for _ in range(25):
            times.append(round(t, 1))
            t += rng.choice([3.0, 20.5, 61.0, 150.0, 800.0, 4000.0])
        tip, step = 0.2, rng.choice([60, 300, 420])
        kind, cap = ("count", 3600) if k % 3 == 0 else ("interval", rng.choice([600, 3600]))
        spans = []
        for i, at in enumerate(times):
            if kind == "count":
                spans.append((at, at))
                continue
            before = times[i - 1] if i else -math.inf
            after = times[i + 1] if i + 1 < len(times) else math.inf
            start = before if at - before <= cap else at - min(cap, after - at)
            spans.append((start, at))
        epoch = 978307200  # of the first instant; steps begin at whole multiples since 1970
        first = math.floor((min(a for a, _ in spans) + epoch) / step) * step - epoch
        size = math.floor((times[-1] - first) / step) + 1
        # a tip at the end of a step belongs to the next one when it is counted, and what fills before it to that one
        depths = [0.0] * size
        for a, b in spans:
            if a == b:
                depths[int((b - first) // step)] += tip
                continue
            for i in range(size):
                low, high = max(a, first + i * step), min(b, first + (i + 1) * step)
                depths[i] += tip * (high - low) / (b - a) if high > low else 0
        rows.append((text(times), tip, kind, cap, step, places(depths), first / 60, size))
    write(FOLDER, PROGRAM, "tips-without-record", "depth in the steps that tips need, counted or spread over the time since the tip before",
          [("t", "s, tips"), ("tip", "mm, tip"), ("kind", "text, how tips are spread"), ("cap", "s, cap"), ("step", "s, step"), ("depth", "mm, depths times places"), ("start", "min, start"), ("size", "1, steps")],
          [("tip_seconds", "text t"), ("tip_mm", "tip"), ("spreading", "text kind"), ("cap_seconds", "cap"), ("step_seconds", "step")],
          [("depth", "gauge.bare-tips.depth"), ("start", "gauge.bare-tips.start"), ("size", "gauge.bare-tips.size")], rows, tolerance="1e-10 relative or 1e-10", reason="16 digits are given")


def chances():
    rng = np.random.default_rng(3)
    many, library = 40_000, 4_000
    rows = []
    for n, least, jump in ((14, 3, 0.10), (18, 4, 0.16), (12, 2, 0.0)):
        a = np.round(rng.uniform(20, 60, n), 1)
        x = np.round(a * (1 + np.where(np.arange(n) < n // 2, 0, jump)) * rng.normal(1, 0.08, n), 1)

        def left(x, a):  # least squares left of the best break
            X, A = np.cumsum(x, axis=-1), np.cumsum(a, axis=-1)
            best = None
            for k in range(least, n - least + 1):
                s1, s2 = X[..., k - 1] / A[..., k - 1], (X[..., -1] - X[..., k - 1]) / (A[..., -1] - A[..., k - 1])
                squares = np.sum((x[..., :k] - s1[..., None] * a[..., :k]) ** 2, axis=-1) + np.sum((x[..., k:] - s2[..., None] * a[..., k:]) ** 2, axis=-1)
                best = squares if best is None else np.minimum(best, squares)
            return best

        order = np.argsort(rng.uniform(size=(many, n)), axis=1)
        p = np.mean(left(x[order], a[order]) <= left(x, a) * (1 + 1e-12))
        rows.append((text(x), text(a), least, p, 4 * (max(p * (1 - p), 1 / library) * (1 / many + 1 / library)) ** 0.5 + 1 / library))
    write(FOLDER, PROGRAM, "double-mass-chance", f"share of {many} random orders of the periods whose best break explains as much; {library} in the library",
          [("x", "mm, gauge"), ("a", "mm, reference"), ("least", "1, least periods"), ("p", "1, share"), ("e", "1, four standard errors and the one that is added")],
          [("gauge_mm", "text x"), ("reference_mm", "text a"), ("least", "least"), ("shuffles", str(library))], [("p", "gauge.double-mass.chance")], rows, tolerance="column e",
          reason="four standard errors of the difference of two simulations")


def rain():
    rng = random.Random(1129)
    stepped(rng)
    bare(rng)
    chances()
    rows = [(tip, s, c, tip * 3600 / s * c / s / math.sqrt(6)) for tip, s, c in ((0.2, 40, 1), (0.1, 7, 0.5), (0.5, 600, 60))]
    write(FOLDER, PROGRAM, "tip-clock", "uncertainty of an intensity between two tips from the clock (JCGM 100:2008, 4.3.9)",
          [("tip", "mm, tip"), ("s", "s, between tips"), ("clock", "s, resolution"), ("u", "mm/h, standard uncertainty")], [("tip_mm", "tip"), ("seconds", "s"), ("clock_seconds", "clock")],
          [("u", "gauge.resolution.clock-uncertainty")], rows)


# ---- structures -------------------------------------------------------------------------------------------------------


def structures():
    rows = [(v, y, v * math.sqrt(2 * y / 9.80665), v * math.sqrt(2 * y / 9.80665)) for v, y in ((0.7, 0.3), (2.4, 1.1), (11, 0.05))]
    write(FOLDER, PROGRAM, "jet-standard", "free jets under standard gravity", [("v", "m/s, velocity"), ("y", "m, drop"), ("x", "m, reach"), ("way", "m, reach")], [("drop", "y")],
          [("x", "jet.standard-reach", "input.velocity = v"), ("v", "jet.standard-velocity", "input.distance = way")], rows)
    rows = []
    for w in (0.3, 0.45, 0.59, 0.61, 0.74, 0.76, 0.99, 1.01, 1.5, 1.79, 1.81, 2.4):
        rows.append((w, 0, 0.05 if w >= 0.6 and w < 0.75 else 0.03 if w < 0.6 else 0.06 if w < 1.8 else 0.08, 0.75 if w < 1 else 0.80))
    for w in (3.05, 3.59, 3.61, 4.49, 4.51, 5.9, 6.1, 12.0):
        rows.append((w, 0, 0.09, 1.07 if w < 3.6 else 1.37 if w < 4.5 else 1.67 if w < 6 else 1.83))
    write(FOLDER, PROGRAM, "parshall-heads", "heads allowed by throat (CJ/T 3008.3-1993, the SI set also carried by ISO 9826)",
          [("w", "m, throat"), ("which", "1, limit"), ("least", "m, least head"), ("most", "m, greatest head")],
          [("kind", "word parshall"), ("size", "w"), ("length", "0"), ("width", "0"), ("crest_height", "0"), ("head", "0.3"), ("tailwater", "0"), ("which", "which")],
          [("least", "structure.limit.least"), ("most", "structure.limit.greatest")], rows)
    rows = []
    g = mpf("9.80665")
    for b, p, h in ((2, 0.5, 0.3), (1.2, 0.3, 0.45), (5, 0.8, 0.9)):
        for share in (0.1, 0.24, 0.252, 0.257, 0.262, 0.3, 0.5, 0.7, 0.85, 0.92):
            tapping = mpf(str(share)) * mpf(str(h))

            def miss(H):
                r = tapping / H
                reduction = 1 if r <= mpf("0.25") else mpf("1.04") * (mpf("0.945") - r ** mpf("1.5")) ** mpf("0.256")
                q = mpf("0.633") * mpf(str(b)) * mp.sqrt(g) * (H - mpf("0.0003")) ** mpf("1.5") * reduction
                return H - mpf(str(h)) - (q / (mpf(str(b)) * (mpf(str(h)) + mpf(str(p))))) ** 2 / (2 * g), q

            H = findroot(lambda H: miss(H)[0], (mpf(str(h)), mpf(str(h)) * mpf("1.02")), solver="anderson", tol=1e-25)
            rows.append((b, p, h, float(tapping), nstr(miss(H)[1], 17)))
    write(FOLDER, PROGRAM, "weir-crump-tapping", "Crump weir with a tapping at the crest, solved with 30 digits",
          [("b", "m, width"), ("p", "m, crest height"), ("h", "m, head"), ("t", "m, head at the tapping"), ("q", "m3/s, discharge")],
          [("width", "b"), ("crest_height", "p"), ("head", "h"), ("tapping", "t")], [("q", "weir.crump.discharge")], rows, tolerance="1e-9 relative", reason="the library solves to 1e-12 of the head",
          source=("ISO 4360", 2008))


{"rainfall": rain, "hydraulics": structures}[FOLDER.name]()
