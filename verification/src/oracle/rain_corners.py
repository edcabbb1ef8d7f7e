"""Corners of rain: durations beyond the record, days within rounding of dry, half as many pairs, tips in outages, formulae that cross near
an end of their range, factors that may not be. Plain Python with exact fractions, no code in common with the library.

    python3 rain_corners.py FOLDER

writes the tables named below into the folder of the rainfall tables. All records are invented, from the seeds below.
"""

import math
import random
import sys
from fractions import Fraction as F

from own_tables import text, write

PROGRAM = "rain_corners.py"
NAN = float("nan")


def places(values):
    return float(sum(i * F(v) for i, v in enumerate(values, 1) if v == v))


def listings(folder):
    """Of a duration the intensity that was reached in as many steps as it takes, in any order; nothing where the record is shorter."""
    rng = random.Random(31)
    rows = []
    for step, n in ((5, 12), (2, 30), (10, 7), (15, 1), (5, 40), (60, 2)):
        for share in (0.3, 0.7, 1.0):
            x = [round(rng.uniform(0.1, 9), 1) if rng.random() < share else rng.choice([0.0, 0.0, NAN]) for _ in range(n)]
            x[n // 2] = 3.3
            windows = sorted({step, step + 1, 2 * step, 2 * step + 1, 3 * step - 1, (n - 1) * step + 1, n * step, n * step + 1, (n + 3) * step})
            windows = [w for w in windows if w >= step]
            falling = sorted((F(str(v)) for v in x if v == v), reverse=True)
            falling += [F(0)] * (n - len(falling))
            heavy = []
            for w in windows:
                k = math.ceil(F(w, step))
                heavy.append(falling[k - 1] * 60 / step if k <= n else F(0))
            rows.append((text(x), step, text(windows), places(heavy)))
    write(folder, PROGRAM, "listings-beyond-the-record", "intensity reached for as long as each duration, steps in any order, each times its place, summed",
          [("x", "mm, depths"), ("step", "min, step"), ("windows", "min, durations"), ("heavy", "mm/h, intensities times places")],
          [("depths", "text x"), ("step_minutes", "step"), ("windows_minutes", "text windows")], [("heavy", "event.listing.book")], rows)


def spells(folder):
    """A day is dry up to a thousand-millionth of a mm above the limit; a run is open where it meets an end, or a day of which part is missing."""
    rng = random.Random(32)
    rows = []
    for case in range(14):
        most = rng.choice([0.0, 0.2, 0.5])
        least = rng.choice([1, 2, 3, 5])
        x = [rng.choice([0.0, 0.0, 0.0, most, most + 0.97e-9, most + 1.03e-9, most + 3, NAN]) for _ in range(40)]
        dry = [v == v and F(v) - F(most) <= F(1, 10**9) for v in x]
        maybe = [v != v or d for v, d in zip(x, dry)]
        days, is_open, i = [], [], 0
        while i < len(x):
            j = i
            while j < len(x) and dry[j]:
                j += 1
            if j > i and j - i >= least:
                days.append(j - i)
                is_open.append(int((i == 0 or maybe[i - 1]) or (j == len(x) or maybe[j])))
            i = max(j, i + 1)
        rows.append((text(x), most, least, places(days), places(is_open)))
    for x, most, least in (([0.0], 0, 1), ([0.0], 0, 2), ([5.0], 0, 1), ([NAN], 0, 1), ([5.0, 0.0], 0, 1), ([5.0, 0.0, 5.0], 0, 1), ([5.0, 0.0, 0.0, 5.0], 0, 3)):
        dry = [v == 0 for v in x]
        run = sum(dry)
        there = run >= least and run > 0
        rows.append((text(x), most, least, float(run if there else 0), float(there and (dry[0] or dry[-1]))))
    write(folder, PROGRAM, "dry-spells-at-their-limit", "runs of dry days with depths on either side of the limit, each length times its place, and which are open",
          [("x", "mm, days"), ("most", "mm, most on a dry day"), ("least", "days, least of a run"), ("days", "days, lengths times places"), ("open", "1, those open times places")],
          [("daily", "text x"), ("most_mm", "most"), ("least_days", "least")], [("days", "dry-spells.book"), ("open", "dry-spells.at-least")], rows)


def lags(folder):
    """Shifts with fewer than three pairs, or fewer than half the most, are passed over; of equals the shortest."""
    rng = random.Random(33)
    rows = []
    for case in range(26):
        n = rng.choice([5, 6, 8, 9, 12, 20])
        p = [float(rng.choice([0, 0, 1, 2, 4, 7])) for _ in range(n)]
        q = [float(rng.randrange(0, 30)) for _ in range(n)]
        for _ in range(rng.randrange(0, n // 2)):
            (p if rng.random() < 0.5 else q)[rng.randrange(n)] = NAN
        longest = rng.choice([1, 2, n // 2, n - 2])
        found = []
        for shift in range(longest + 1):
            both = [(F(a), F(b)) for a, b in zip(p, q[shift:]) if a == a and b == b]
            found.append((shift, both))
        most = max(len(both) for _, both in found)
        kept = []
        for shift, both in found:
            m = len(both)
            if m < 3 or 2 * m < most:
                continue
            sp, sq = sum(a for a, _ in both), sum(b for _, b in both)
            pp = sum((m * a - sp) ** 2 for a, _ in both)
            qq = sum((m * b - sq) ** 2 for _, b in both)
            pq = sum((m * a - sp) * (m * b - sq) for a, b in both)
            if pp * qq > 0:
                kept.append((shift, m, float(pq) / math.sqrt(float(pp)) / math.sqrt(float(qq))))
        base = [text(p), text(q), longest * 10]
        if not kept:
            rows.append((*base, "", "", "", "", 1))
            continue
        best = max(kept, key=lambda each: (each[2], -each[0]))
        second = max((each[2] for each in kept if each[0] != best[0]), default=-9.0)
        if best[2] - second < 1e-9:
            continue
        rows.append((*base, best[0] * 600.0, best[2], best[1], int(len(kept) > 1 and best[0] == kept[-1][0]), 0))
    # As long as the record less two steps may be asked for, no longer; of two steps no shift but the first.
    for n in (3, 4, 7):
        p, q = [float(v % 3) for v in range(n)], [float(v % 4) for v in range(n)]
        for longest, refused in ((n - 2, 0), (n - 1, 1), (n, 1)):
            rows.append((text(p), text(q), longest * 10, "", "", "", "", refused))
    write(folder, PROGRAM, "response-lags-of-few-pairs", "shift of the greatest correlation of short records with gaps, those with few pairs passed over",
          [("p", "mm, rain"), ("q", "of the flow, flow"), ("longest", "min, longest shift"), ("lag", "s, shift"), ("r", "1, correlation"), ("pairs", "steps, pairs"), ("limit", "1, whether it is the longest"), ("refused", "1, whether it is refused")],
          [("rain", "text p"), ("flow", "text q"), ("longest", "longest")],
          [("lag", "response.lag"), ("r", "response.lag-correlation"), ("pairs", "response.lag-pairs"), ("limit", "response.lag-at-limit"), ("refused", "refusal.response.lag")], rows, tolerance="1e-12 relative or 1e-12")


def outages(folder):
    """Tips spread over the time since the one before; a stretch between outages knows nothing of the one before it."""
    rng = random.Random(34)
    rows = []
    for case in range(16):
        cap, step = rng.choice([(600, 300), (3600, 900), (900, 60), (1800, 3600)])
        t, tips = 5.0, []
        for _ in range(rng.randrange(2, 26)):
            t += rng.choice([7.0, 60.0, 60.0, 240.0, 700.0, 2000.0, 5000.0])
            tips.append(t)
        record = math.ceil((t + 1) / step) * step + rng.choice([0, 1, step])
        ends = []
        for _ in range(case % 4):
            a = rng.randrange(0, record)
            ends.append((a, min(record, a + rng.choice([1, 30, 400, 3000]))))
        joined = []
        for a, b in sorted(ends):
            if joined and a <= joined[-1][1]:
                joined[-1][1] = max(joined[-1][1], b)
            else:
                joined.append([a, b])
        stretches, at = [], 0
        for a, b in joined:
            stretches.append((at, a))
            at = b
        stretches.append((at, record))
        count = math.ceil(F(record, step))
        depths = [F(0)] * count
        tip = F(1, 5)
        used = 0
        for a, b in stretches:
            inside = [F(s) for s in tips if a <= s < b]
            used += len(inside)
            for i, s in enumerate(inside):
                before = inside[i - 1] if i else None
                if before is not None and s - before <= cap:
                    begin = before
                else:
                    pace = inside[i + 1] - s if i + 1 < len(inside) else F(cap)
                    begin = s - min(F(cap), pace)
                begin = max(begin, F(a))
                if begin == s:
                    depths[int(s // step)] += tip
                    continue
                for k in range(int(begin // step), min(count, math.ceil(s / step))):
                    share = min(s, F((k + 1) * step)) - max(begin, F(k * step))
                    depths[k] += tip * share / (s - begin)
        missing = [any(a < (k + 1) * step and b > k * step for a, b in joined) for k in range(count)]
        aside = len(tips) - used
        if any(a == s for s in tips for a, _ in stretches):
            continue
        rows.append((text(tips), cap, record, step, " ".join(f"{a} {b}" for a, b in ends) or "0", aside, aside * 0.2, sum(missing), float(sum(d for d, m in zip(depths, missing) if m)),
                     places([0 if m else d for d, m in zip(depths, missing)])))
    write(folder, PROGRAM, "tips-in-outages", "tips laid out between outages, and what is set aside",
          [("t", "s, tips"), ("cap", "s, longest time of a tip"), ("record", "s, length"), ("step", "s, step"), ("outages", "s, begin and end of each"), ("aside", "tips, in outages"), ("aside_mm", "mm, their depth"),
           ("missing", "steps, that share time with an outage"), ("lost", "mm, rain of other tips in them"), ("book", "mm, depths times places")],
          [("tip_seconds", "text t"), ("tip_mm", "0.2"), ("cap_seconds", "cap"), ("record_seconds", "record"), ("step_seconds", "step"), ("outages", "text outages")],
          [("aside", "gauge.record.aside"), ("aside_mm", "gauge.record.aside-depth"), ("missing", "gauge.record.missing"), ("lost", "gauge.record.in-missing"), ("book", "gauge.record.book")], rows,
          tolerance="1e-11 relative or 1e-11", reason="sums of shares of tips")


def other_steps(folder):
    """A new step that shares time with a missing one is missing; what else fell in it is set aside."""
    rng = random.Random(35)
    rows = []
    for old, new in ((300, 300), (300, 600), (300, 240), (600, 60), (60, 90), (900, 3600), (420, 1000), (3600, 60), (7, 11)):
        for n in (1, 2, 17):
            x = [rng.choice([0.0, 0.0, 0.4, 1.2, 3.7]) for _ in range(n)]
            for _ in range(n // 4):
                x[rng.randrange(n)] = NAN
            count = math.ceil(F(n * old, new))
            depths, bad = [F(0)] * count, [False] * count
            for i, v in enumerate(x):
                for k in range(i * old // new, math.ceil(F((i + 1) * old, new))):
                    share = F(min((i + 1) * old, (k + 1) * new) - max(i * old, k * new), old)
                    if v == v:
                        depths[k] += F(str(v)) * share
                    else:
                        bad[k] = True
            aside = sum(1 for i, v in enumerate(x) if v > 0 and any(bad[k] for k in range(i * old // new, math.ceil(F((i + 1) * old, new)))))
            rows.append((text(x), old, new, aside, float(sum(d for d, b in zip(depths, bad) if b)), sum(bad), places([0 if b else d for d, b in zip(depths, bad)])))
    write(folder, PROGRAM, "rain-set-aside-by-other-steps", "rain in other steps: missing ones, and the rain that is set aside with them",
          [("x", "mm, depths"), ("old", "s, step"), ("new", "s, new step"), ("aside", "steps, with rain that is cut"), ("aside_mm", "mm, rain set aside"), ("missing", "steps, missing"), ("book", "mm, depths times places")],
          [("depths", "text x"), ("step_seconds", "old"), ("new_seconds", "new")],
          [("aside", "rain-units.in-steps.aside"), ("aside_mm", "rain-units.in-steps.aside-depth"), ("missing", "rain-units.in-steps.missing"), ("book", "rain-units.in-steps.book")], rows, tolerance="1e-11 relative or 1e-11",
          reason="sums of shares of steps")


def peaks_of_annual(years):
    return -1 / math.log1p(-1 / years)


def formulae(folder):
    """Depths a t/(t + b)^n of two or three return periods; between them linear in ln T of peaks over threshold. Crossing ones are refused,
    also where they cross within the last or first hundredth of ln D."""
    rows = []

    def depth(a, b, n, t):
        return a * (t / 60) / (t + b) ** n

    for basis, years, a, b, n in (("annual", (2, 10, 50), (900, 1300, 1700), (8, 9, 9.5), (0.8, 0.79, 0.78)), ("peaks", (0.5, 1, 20), (500, 600, 1500), (5, 5, 7), (0.75, 0.75, 0.77)), ("annual", (1.4, 5), (700, 1000), (6, 6), (0.7, 0.7))):
        to_peaks = peaks_of_annual if basis == "annual" else float
        logs = [math.log(to_peaks(T)) for T in years]
        for t in (5, 17, 60, 240):
            for asked in (years[0], years[-1], years[0] * 1.3, years[-1] * 0.9, (years[0] + years[1]) / 2):
                d = [depth(*p, t) for p in zip(a, b, n)]
                at = math.log(to_peaks(asked))
                k = max(1, min(len(logs) - 1, next((i for i, v in enumerate(logs) if v >= at - 1e-13), len(logs) - 1)))
                rows.append((basis, text(years), text(a), text(b), text(n), 5, 240, t, asked, d[k - 1] + (d[k] - d[k - 1]) * (at - logs[k - 1]) / (logs[k] - logs[k - 1]), ""))
            rows.append((basis, text(years), text(a), text(b), text(n), 5, 240, t, years[0] * 0.98, "", 1))
            rows.append((basis, text(years), text(a), text(b), text(n), 5, 240, t, years[-1] * 1.02, "", 1))
        for t, refused in ((4.9, 1), (5, 0), (240, 0), (241, 1)):
            rows.append((basis, text(years), text(a), text(b), text(n), 5, 240, t, years[-1], "", refused))
    # A b below 0 that leaves less than a minute in the denominator: finite and rising down to (n - 1) times the shortest duration.
    for b, refused in ((-0.4, 0), (-0.49, 0), (-0.51, 1), (-0.75, 1), (-1, 1), (-1.5, 1)):
        rows.append(("annual", "2 10", "300 400", text((b, b)), "0.5 0.5", 1, 60, 5, 10, "" if refused else depth(400, b, 0.5, 5), refused))
    # Two formulae of one b whose depths are equal at a duration c: the rarer one is above only on one side of it.
    for shortest, longest in ((5, 240), (1, 60), (30, 2880)):
        for share in (-0.02, 0.012, 0.03, 0.97, 0.988, 1.02):
            cross = shortest * (longest / shortest) ** share
            for rarer_steeper in (True, False):
                n1, n2 = (0.7, 0.78) if rarer_steeper else (0.78, 0.7)
                b = 4
                a1 = 800.0
                a2 = a1 * (cross + b) ** (n2 - n1)
                # With the greater n the rarer depth falls below the other beyond the crossing, else before it.
                refused = int(share < 1 if rarer_steeper else share > 0)
                rows.append(("peaks", "2 10", text((a1, a2)), text((b, b)), text((n1, n2)), shortest, longest, (shortest * longest) ** 0.5, 3, "", refused))
    write(folder, PROGRAM, "depths-of-formulae", "depths of one intensity formula for each return period, and whether they may be taken together",
          [("basis", "text, what return periods count"), ("years", "years, return periods"), ("a", "1, a of each"), ("b", "min, b of each"), ("n", "1, n of each"), ("shortest", "min, shortest duration"), ("longest", "min, longest duration"),
           ("t", "min, duration"), ("asked", "years, return period asked"), ("depth", "mm, depth"), ("refused", "1, whether it is refused")],
          [("basis", "text basis"), ("years", "text years"), ("a", "text a"), ("b", "text b"), ("n", "text n"), ("shortest", "shortest"), ("longest", "longest"), ("minutes", "t"), ("asked_years", "asked")],
          [("depth", "ddf.of-formulae.depth"), ("refused", "refusal.ddf.of-formulae.depth")], rows, tolerance="1e-9 relative", reason="durations in whole nanoseconds")


def growth(folder):
    """Factors linear in M5 and in ln T of peaks over threshold, 1 at M5; which lines may stand."""
    rows = []
    m5_peaks = peaks_of_annual(5)

    def head(word):
        return 1 / float(word[:-1]) if word.endswith("M") else peaks_of_annual(float(word[1:])) if word.startswith("M") else float(word)

    def factor(words, lines, m5, asked):
        years = [head(w) for w in words]
        table = {row: list(values) for row, *values in lines}
        rows_ = sorted(table)
        if m5 in table:
            values = table[m5]
        else:
            high = next(r for r in rows_ if r > m5)
            low = max(r for r in rows_ if r < m5)
            values = [u + (v - u) * (m5 - low) / (high - low) for u, v in zip(table[low], table[high])]
        points = sorted(set(zip(years, values)) | {(m5_peaks, 1.0)})
        for (t1, f1), (t2, f2) in zip(points, points[1:]):
            if t1 <= asked <= t2:
                return f1 + (f2 - f1) * math.log(asked / t1) / math.log(t2 / t1)
        return None

    def body(words, lines):
        return "\n".join([",".join(["m5_mm", *words])] + [",".join("" if v is None else repr(float(v)) for v in line) for line in lines])

    words = ["2M", "1M", "M2", "M10", "M100"]
    lines = [(10, 0.45, 0.62, 0.8, 1.2, 1.9), (20, 0.5, 0.66, 0.82, 1.25, 2.1), (50, 0.52, 0.7, 0.84, 1.3, 2.2)]
    five = ["2M", "M2", "M5", "25"]
    lines5 = [(10, 0.45, 0.8, 1, 1.4), (30, 0.5, 0.86, 1, 1.6)]
    for w, l in ((words, lines), (five, lines5)):
        for m5 in (10, 13, 20, 27.5, 30):
            for asked in (0.5, 0.7, 1, 1.44, 2.2, 4.4, 4.5, 9.5, 20, 24):
                rows.append((body(w, l), m5, asked, factor(w, l, m5, asked), ""))
        low, high = min(head(x) for x in w), max(head(x) for x in w)
        for m5, asked, refused in ((9.8, 2, 1), (10, 2, 0), (l[-1][0], 2, 0), (l[-1][0] * 1.02, 2, 1), (12, low * 0.98, 1), (12, low, 0), (12, high * 0.999999, 0), (12, high * 1.02, 1)):
            rows.append((body(w, l), m5, asked, "", refused))
    for w, l, refused in (
        (["M2", "M10"], [(10, 0.98, 1.02)], 0), (["M2", "M10"], [(10, 1, 1.02)], 1), (["M2", "M10"], [(10, 1.02, 1.1)], 1), (["M2", "M10"], [(10, 0.9, 1)], 1), (["M2", "M10"], [(10, 0.9, 0.98)], 1),
        (["M2", "M10"], [(10, 0.02, 1.02)], 0), (["M2", "M10"], [(10, 0, 1.02)], 1), (["M2", "M10"], [(10, -0.5, 1.02)], 1), (["M2", "M5", "M10"], [(10, 0.9, 1, 1.1)], 0), (["M2", "M5", "M10"], [(10, 0.9, 1.02, 1.1)], 1),
        (["M2", "M5", "M10"], [(10, 0.9, 0.98, 1.1)], 1), (["1M", "M2", "M10"], [(10, 0.8, 0.82, 1.1)], 0), (["1M", "M2", "M10"], [(10, 0.8, 0.79, 1.1)], 1), (["M10", "M20", "M50"], [(10, 1.2, 1.21, 1.5)], 0),
        (["M10", "M20", "M50"], [(10, 1.2, 1.19, 1.5)], 1), (["M10", "M20", "M50"], [(10, 1.2, None, 1.19)], 1), (["M10", "M20", "M50"], [(10, 1.2, None, 1.21)], 0), (["M2", "M10"], [(10, 0.9, 1.2), (20, 0.46, 1.2)], 0),
        (["M2", "M10"], [(10, 0.9, 1.2), (20, 0.44, 1.2)], 1), (["M2", "M10"], [(10, 0.9, 2.1), (20, 0.9, 1.06)], 0), (["M2", "M10"], [(10, 0.9, 2.1), (20, 0.9, 1.04)], 1), (["M2", "M10"], [(10, 0.9, 1.2), (10, 0.9, 1.3)], 1),
        (["M2", "M10"], [(20, 0.9, 1.2), (10, 0.9, 1.3)], 1), (["M10", "M2"], [(10, 1.2, 0.9)], 1), (["M2", "M2"], [(10, 0.9, 0.91)], 1), (["M1.02", "M10"], [(10, 0.2, 1.2)], 0), (["M1", "M10"], [(10, 0.2, 1.2)], 1),
        (["M0.98", "M10"], [(10, 0.2, 1.2)], 1), (["0.02", "M10"], [(10, 0.2, 1.2)], 0), (["0", "M10"], [(10, 0.2, 1.2)], 1), (["-1", "M10"], [(10, 0.2, 1.2)], 1), (["Mx", "M10"], [(10, 0.2, 1.2)], 1),
        (["M2", "M10"], [(10, 0.9)], 1), (["M2", "M10"], [(10, 0.9, 1.2, 1.3)], 1), (["M2", "M10"], [], 1), (["M2", "M10"], [(-1, 0.9, 1.2)], 1), (["M2", "M10"], [(0, 0.9, 1.2)], 1),
    ):
        rows.append((body(w, l), l[0][0] if l else 10, head("M5"), "", refused))
    rows.append(("m5,M2,M10\n10,0.9,1.2", 10, 3, "", 1))
    rows.append(("m5_mm\n10", 10, 3, "", 1))
    write(folder, PROGRAM, "growth-factors-of-ones-own", "growth factors of a table of one's own: linear in M5 and in ln T, and which tables may stand",
          [("table", "text, the table"), ("m5", "mm, M5"), ("asked", "years, return period of peaks over threshold"), ("factor", "1, growth factor"), ("refused", "1, whether it is refused")],
          [("text", "text table"), ("m5", "m5"), ("asked_years", "asked")], [("factor", "ddf.growth-factors.factor"), ("refused", "refusal.ddf.growth-factors.factor")], rows, tolerance="1e-12 relative")


def best_windows(folder):
    """Deepest windows of long records, all lengths and parts of a step, in depths that add up exactly."""
    rng = random.Random(36)
    rows = []
    for n, share, windows in ((70, 0.95, (1, 2, 3, 7, 33, 69, 70, 75)), (160, 0.6, (1, 5, 40, 100, 159)), (400, 0.2, (2, 12, 150, 399)), (90, 0.9, (1.5, 2.25, 6.5, 40.75, 88.5)), (260, 0.4, (1.25, 3.5, 17.5, 130.25, 259.5)), (40, 0.1, (1, 1.5, 8, 20.5))):
        for window in windows:
            x = [rng.randrange(1, 4000) / 256 if rng.random() < share else rng.choice([0.0, 0.0, NAN]) for _ in range(n)]
            v = [F(0)] * (n + 2) + [F(0) if d != d else F(d) for d in x] + [F(0)] * (n + 2)
            sums = [F(0)]
            for d in v:
                sums.append(sums[-1] + d)
            whole, part = int(window), F(window) - int(window)
            if window >= n:
                found = {0: sums[-1]}
            else:
                found = {}
                for i in range(n):
                    j = i + n + 2
                    if v[j] > 0:
                        after = sums[min(j + whole, len(v))] - sums[j] + part * (v[j + whole] if j + whole < len(v) else 0)
                        found[F(i)] = max(found.get(F(i), 0), after)
                        if part:
                            before = sums[j + 1] - sums[max(0, j + 1 - whole)] + part * (v[j - whole] if j >= whole else 0)
                            found[i + 1 - whole - part] = max(found.get(i + 1 - whole - part, 0), before)
            best = max(found.values(), default=F(0))
            starts = [s for s, d in found.items() if d == best]
            if best == 0 or len(starts) > 1:
                continue
            rows.append((text(x), 4, float(window * 4), float(best), float(max(F(0), starts[0]) * 4)))
    write(folder, PROGRAM, "deepest-windows-of-long-records", "deepest windows of records of some hundred steps, by running sums of exact fractions",
          [("x", "mm, depths"), ("step", "min, step"), ("window", "min, length"), ("depth", "mm, depth"), ("start", "min, begin")],
          [("depths", "text x"), ("step_minutes", "step"), ("window_minutes", "window")], [("depth", "event.peak-depth"), ("start", "event.peak-start")], rows)


def far_apart(folder):
    """Windows above a threshold that keep apart, as long as any number of steps, with thresholds a hundred-millionth of a mm away."""
    rng = random.Random(37)
    rows = []
    for step, k, separation in ((5, 13, 0), (5, 21, 3), (10, 8, 71), (2, 27, 55), (60, 1, 60), (60, 2, 1), (15, 31, 16)):
        for nudge in (F(-3, 10**8), F(-3, 10**9), F(3, 10**9), F(3, 10**8)):
            x = [F(rng.choice([0, 0, 0, 0, 1, 2, 3, 8]), 8) for _ in range(150)]
            if k == 13:
                x = x[:40]
            apart = k + math.ceil(F(separation, step))
            depths = [sum(x[i:i + k]) for i in range(len(x) - k + 1)]
            threshold = float(sorted(d for d in depths if d > 0)[len(depths) // 3] + nudge)
            unit = lambda d: math.floor(F(d) * 10**8 + F(1, 2))
            taken = []
            for i in sorted((i for i in range(len(depths)) if unit(depths[i]) >= max(1, unit(threshold))), key=lambda i: (-depths[i], i)):
                if all(abs(i - j) >= apart for j in taken):
                    taken.append(i)
            taken = sorted(i for i in taken if unit(depths[i]) > unit(threshold))
            rows.append((text([float(v) for v in x]), step, k * step, separation, threshold, places([i * step for i in taken]), places([depths[i] for i in taken])))
    write(folder, PROGRAM, "windows-far-apart", "windows above a threshold that keep apart, the deepest first, of any number of steps, thresholds on either side of a depth that occurs",
          [("x", "mm, depths"), ("step", "min, step"), ("window", "min, window"), ("separation", "min, least time between"), ("threshold", "mm, threshold"), ("start", "min, begins times places"), ("depth", "mm, depths times places")],
          [("depths", "text x"), ("step_minutes", "step"), ("window_minutes", "window"), ("separation_minutes", "separation"), ("threshold", "threshold")],
          [("start", "peaks.windows.starts"), ("depth", "peaks.windows.depths")], rows)


def quarters(folder):
    rng = random.Random(38)
    rows = []
    for n in (1, 2, 3, 4, 5, 7, 13, 40):
        for _ in range(2):
            x = [F(rng.choice([0, 1, 2, 5, 9]), 4) for _ in range(n)]
            x[rng.randrange(n)] += 1
            upto = lambda f: sum(min(F(1), max(F(0), f * n - i)) * v for i, v in enumerate(x)) / sum(x)
            rows.append((text([float(v) for v in x]), 5, places([upto(F(k + 1, 4)) - upto(F(k, 4)) for k in range(4)])))
    write(folder, PROGRAM, "storm-quarters", "shares of the four quarters of a storm, each times its place", [("x", "mm, depths"), ("step", "min, step"), ("shares", "1, shares times places")],
          [("depths", "text x"), ("step_minutes", "step")], [("shares", "storm.profile.quarters")], rows)


def wettest(folder):
    rng = random.Random(39)
    rows = []
    for dry in (0.99, 0.9, 0.5):
        x = [0.0 if rng.random() < dry else round(rng.uniform(0.1, 0.9 if dry > 0.8 else 20), 1) for _ in range(90)]
        for row, (a, b) in enumerate(((0, 31), (31, 59), (59, 90))):
            rows.append((text(x), row, max(x[a:b])))
    write(folder, PROGRAM, "wettest-days", "the wettest day of each month, also where none was wet", [("x", "mm, days from 1 January 2001"), ("row", "1, month from 0"), ("wettest", "mm, depth")],
          [("daily", "text x"), ("row", "row")], [("wettest", "rain-summary.wettest")], rows)


def recessions(folder):
    rng = random.Random(40)
    rows = []
    for n in (3, 4, 9, 30):
        for holes in (0, 1, 2):
            q = [float(round(50 * math.exp(-i / 6) * rng.uniform(0.9, 1.1) + 0.01, 3)) for i in range(n + holes)]
            for k in range(holes):
                q[1 + 2 * k] = rng.choice([0.0, -1.5, NAN])
            used = [(i, math.log(v)) for i, v in enumerate(q) if v > 0]
            m = len(used)
            if m < 3:
                continue
            slope = (m * math.fsum(i * y for i, y in used) - sum(i for i, _ in used) * math.fsum(y for _, y in used)) / (m * sum(i * i for i, _ in used) - sum(i for i, _ in used) ** 2)
            rows.append((text(q), -600 / slope, m, len(q) - m, 0))
    for q, refused in (([3.0, 2.0, 1.0], 0), ([3.0, 2.0], 1), ([3.0, 0.0, 1.0], 1), ([1.0, 2.0, 3.0], 1), ([2.0, 2.0, 2.0], 1)):
        rows.append((text(q), "", "", "", refused))
    write(folder, PROGRAM, "recessions-with-gaps", "recession constant of flow with steps missing or not above 0, which are left out",
          [("q", "of the flow, above base"), ("constant", "s, constant"), ("used", "steps, used"), ("left", "steps, left out"), ("refused", "1, whether it is refused")], [("flow", "text q")],
          [("constant", "response.recession-constant"), ("used", "response.recession-steps"), ("left", "response.recession-left-out"), ("refused", "refusal.response.recession-constant")], rows, tolerance="1e-9 relative",
          reason="the constant is in whole nanoseconds")


def curves(folder):
    """A curve must be above 0 at both ends of its range and, where a quadratic turns inside it, there too. Below the range its factor goes straight to 1 at 0."""
    rows = []

    def value(form, a, b, c, r):
        return a * r**b if form == "power" else a + r * (b + r * c)

    def row(form, a, b, c, low, high, refused):
        rows.append([form, a, b, c, low, high, low, "", refused])
        if not refused:
            for r in (low / 3, low * 0.98, low, (low + high) / 2, high, high * 1.5):
                at = min(r, high)
                edge = value(form, a, b, c, low) / low
                rows.append([form, a, b, c, low, high, r, 1 + (edge - 1) * r / low if r < low else value(form, a, b, c, at) / at, ""])

    for a, low, high, refused in ((36.5, 10, 100, 0), (35.5, 10, 100, 1), (35.999, 62, 100, 0), (35.999, 10, 58, 0), (35.999, 59.5, 60.5, 1), (36.5, 58, 62, 0), (35.5, 50, 66, 1), (35.999, 60.5, 100, 0 if 35.999 - 1.2 * 60.5 + 0.01 * 60.5**2 > 0 else 1)):
        row("quadratic", a, -1.2, 0.01, low, high, refused)
    row("quadratic", 1, 1.4, -0.002, 2, 300, 0)
    row("quadratic", 1, 1.4, -0.002, 2, 702, 1)
    row("quadratic", -3, 1.4, 0.001, 2, 300, 1)
    row("quadratic", -2, 1.4, 0.001, 2, 300, 0)
    row("linear", 0.2, 1.03, 0, 2, 300, 0)
    row("linear", -2, 1.02, 0, 2, 300, 0)
    row("linear", -2.1, 1.02, 0, 2, 300, 1)
    row("linear", 100, -0.33, 0, 2, 300, 0)
    row("linear", 100, -0.34, 0, 2, 300, 1)
    row("power", 0.9, 1.05, 0, 2, 300, 0)
    row("power", -0.9, 1.05, 0, 2, 300, 1)
    write(folder, PROGRAM, "calibration-curves-above-zero", "which curves of a bucket may stand, and their factors from below the range to beyond it",
          [("form", "text, form"), ("a", "1, a"), ("b", "1, b"), ("c", "1, c"), ("low", "mm/h, lowest"), ("high", "mm/h, highest"), ("r", "mm/h, recorded"), ("factor", "1, factor"), ("refused", "1, whether it is refused")],
          [("form", "text form"), ("a", "a"), ("b", "b"), ("c", "c"), ("lowest", "low"), ("highest", "high"), ("recorded", "r")],
          [("factor", "gauge.curve.plain-factor"), ("refused", "refusal.gauge.curve.plain-factor")], rows, tolerance="1e-12 relative", reason="16 digits are given")


def lost(tip, gap, seconds):
    """Depth of a tip that took so long: what fell while the bucket turned is added, at most as much again."""
    return tip if gap is None else tip * gap / (gap - seconds) if gap >= 2 * seconds else 2 * tip


def tip_groups(folder):
    rng = random.Random(41)
    rows = []
    for case in range(10):
        loss = F(rng.choice([0, 1, 2]), 4)
        t, times, counts = F(10), [], []
        for _ in range(rng.randrange(1, 18)):
            times.append(t)
            counts.append(rng.choice([1, 1, 2, 3, 7]))
            t += rng.choice([1, 4, 20, 60, 500, 1800, 4000])
        events, before = [], None
        for at, n in zip(times, counts):
            gap = None if before is None else (at - before) / n
            depth = n * lost(F(1, 5), gap, loss)
            if before is not None and at - before < 1800:
                events[-1] += depth
            else:
                events.append(depth)
            before = at
        rows.append((text([float(v) for v in times]), text(counts), float(loss), places(events)))
    write(folder, PROGRAM, "events-of-tip-groups", "events of tips told by the count at an instant, with the time a bucket loses as it turns, depths times places",
          [("t", "s, instants"), ("n", "tips, at each"), ("lost", "s, lost time"), ("depth", "mm, depths times places")],
          [("tip_seconds", "text t"), ("counts", "text n"), ("tip_mm", "0.2"), ("lost_seconds", "lost"), ("inter_event_minutes", "30")], [("depth", "event.tip-groups.depth")], rows, tolerance="1e-11 relative",
          reason="16 digits are given")


def bare(folder):
    """Tips of which nobody says when the record began: the first step is that in which the first tip began to fill, on the clock."""
    rng = random.Random(42)
    rows = []
    for case in range(14):
        cap, step = rng.choice([(600, 300), (3600, 900), (900, 60), (1800, 3600)])
        loss = F(rng.choice([0, 0, 1]), 4)
        t, tips = F(50000 + 60 * case), []
        for _ in range(rng.randrange(1, 16)):
            tips.append(t)
            t += rng.choice([7, 60, 60, 240, 700, 2000, 5000])
        if case % 5 == 0:
            tips.append(tips[-1] // step * step + 2 * step)  # the last on the end of a step
        spans = []
        for i, s in enumerate(tips):
            if i and s - tips[i - 1] <= cap:
                begin = tips[i - 1]
            else:
                begin = s - min(F(cap), tips[i + 1] - s if i + 1 < len(tips) else F(cap))
            spans.append((begin, s, lost(F(1, 5), s - tips[i - 1] if i else None, loss)))
        first = spans[0][0] // step * step
        size = int((tips[-1] - first) // step) + 1
        depths = [F(0)] * size
        for begin, end, depth in spans:
            for k in range(size):
                share = min(end, first + (k + 1) * step) - max(begin, first + k * step)
                if share > 0:
                    depths[k] += depth * share / (end - begin)
        for spreading in ("interval", "smooth"):
            rows.append((text([float(v) for v in tips]), float(loss), cap, step, spreading, places(depths) if spreading == "interval" else "", float(first), size))
    write(folder, PROGRAM, "tips-without-a-begin", "tips laid out from the step in which the first began to fill, with and without lost time",
          [("t", "s, tips"), ("lost", "s, lost time"), ("cap", "s, longest time of a tip"), ("step", "s, step"), ("spreading", "text, how tips are spread"), ("book", "mm, depths times places"), ("first", "s, begin"), ("size", "steps, how many")],
          [("tip_seconds", "text t"), ("tip_mm", "0.2"), ("lost_seconds", "lost"), ("cap_seconds", "cap"), ("step_seconds", "step"), ("spreading", "text spreading")],
          [("book", "gauge.bare-record.book"), ("first", "gauge.bare-record.start"), ("size", "gauge.bare-record.size")], rows, tolerance="1e-11 relative", reason="sums of shares of tips")


def heads(folder):
    write(folder, PROGRAM, "flow-of-heads", "150 litres a head and day", [("heads", "1, population"), ("flow", "m3/d, flow")], [("heads", "heads")], [("flow", "dry-weather.of-heads")], [(1, 0.15), (1200, 180.0), (40000, 6000.0)],
          tolerance="1e-12 relative")


def chances(folder):
    """A break so plain that no shuffle is as good leaves one chance in the shuffles and one; more work than 2e9 is refused."""
    steady = [float(v) for v in (50, 61, 42, 70, 55, 48, 66, 59, 44, 73, 52, 63, 57, 49, 68, 54, 46, 71, 60, 51, 65, 58, 47, 69, 53, 62, 45, 72, 56, 64)]
    broken = [v * (1 if i < 15 else 3) for i, v in enumerate(steady)]
    rows = [(text(broken), text(steady), 5, n, 1 / (n + 1), 0) for n in (99, 199)]
    rows += [(text(steady), text(steady), 5, 99, 1.0, 0), (text(broken), text(steady), 5, 98, "", 1), (text(broken), text(steady), 15, 99, "", 0), (text(broken), text(steady), 16, 99, "", 1), (text(broken), text(steady), 0, 99, "", 1)]
    rows += [(text(broken), text(steady), 5, 2222223, "", 1), (text(broken[:29]), text(steady[:29]), 14, 99, "", 0), (text(broken[:29]), text(steady[:29]), 15, 99, "", 1)]
    rows += [("1 Infinity 2", "1 2 3", 1, 99, "", 1), ("1 2 3", "1 2 Infinity", 1, 99, "", 1), ("1 -0.01 2", "1 2 3", 1, 99, "", 1), ("0 0 0", "0 0 0", 1, 99, "", 1)]
    write(folder, PROGRAM, "double-mass-chances", "chance of a break as good: a plain one, none at all, and what is refused",
          [("gauge", "mm, gauge"), ("reference", "mm, reference"), ("least", "periods, on either side"), ("shuffles", "1, shuffles"), ("chance", "1, chance"), ("refused", "1, whether it is refused")],
          [("gauge", "text gauge"), ("reference", "text reference"), ("least", "least"), ("shuffles", "shuffles")], [("chance", "double-mass.chance"), ("refused", "refusal.double-mass.chance")], rows, tolerance="1e-12 relative")


def seconds(folder):
    """Depths between rows of a table by powers of the duration, also where that is a part of a second."""
    table = "duration_min,1,5\n0.1,0.5,0.8\n2,4,7\n60,20,33"
    lines = [(0.1, (0.5, 0.8)), (2, (4, 7)), (60, (20, 33))]
    rows = []
    for minutes in (0.1, 0.11, 0.1275, 0.15, 0.33125, 1.0125, 2, 2.01, 31.0025):
        k = next(i for i in range(2) if minutes <= lines[i + 1][0])
        share = math.log(minutes / lines[k][0]) / math.log(lines[k + 1][0] / lines[k][0])
        for years in (1, 5, 2.5):
            at = [low * (high / low) ** share for low, high in zip(lines[k][1], lines[k + 1][1])]
            rows.append((table, minutes, years, at[0] + (at[1] - at[0]) * math.log(years) / math.log(5)))
    write(folder, PROGRAM, "depths-of-parts-of-a-second", "depths between the rows of a table of very short durations", [("table", "text, table"), ("minutes", "min, duration"), ("years", "years, return period"), ("depth", "mm, depth")],
          [("table", "text table"), ("minutes", "minutes"), ("years", "years")], [("depth", "ddf.table.depth")], rows, tolerance="1e-11 relative", reason="durations in whole nanoseconds")


def at_least(folder):
    """A deepest window may be deeper than it seems where a step is missing, or where the record is shorter."""
    rows = []
    for x, window, least in (("1 2 0 3", 10, 0), ("0 0 0 0", 10, 0), ("1 2 NaN 3", 10, 1), ("1 2 3", 15, 0), ("1 2 3", 15.5, 1), ("1 2 3", 60, 1), ("NaN", 5, 1), ("0", 5, 0), ("0", 6, 1), ("5 0 0 0 0 0 0 NaN", 5, 1)):
        rows.append((x, 5, window, least))
    write(folder, PROGRAM, "peaks-at-least", "whether the deepest window is known to the full", [("x", "mm, depths"), ("step", "min, step"), ("window", "min, length"), ("least", "1, whether it may be deeper")],
          [("depths", "text x"), ("step_minutes", "step"), ("window_minutes", "window")], [("least", "event.peak-at-least")], rows, tolerance="0", reason="yes or no")


def constant(folder):
    """Rain of one depth at every duration: i = 60 d/t, which each form holds."""
    rows = []
    for d in (0.5, 12.0, 33.3):
        for form in ("bernard", "talbot", "sherman", "kimijima"):
            rows += [(form, "5 10 30 60", text([d] * 4), name, value) for name, value in (("a", 60 * d), ("b", 0), ("n", 1))]
    for a, b in ((900.0, 12.0), (3000.0, 3.0)):
        t = (5, 10, 30, 60, 120)
        rows += [("talbot", text(t), text([a * v / (v + b) / 60 for v in t]), name, value) for name, value in (("a", a), ("b", b), ("n", 1))]
    write(folder, PROGRAM, "intensity-fits-of-one-depth", "coefficients of intensity formulae through depths that follow them exactly", [("form", "text, form"), ("t", "min, durations"), ("d", "mm, depths"), ("name", "text, coefficient"), ("value", "1, value")],
          [("form", "text form"), ("minutes", "text t"), ("depths", "text d"), ("coefficient", "text name")], [("value", "intensity-fit.coefficient")], rows, tolerance="1e-10 relative or 1e-9", reason="a least square found by steps")


def gap_rows(folder):
    """Twelve gaps in a row that are alike within 5 % or the clock's step, or that grow: as snow melts in the funnel, or as a bucket drips."""
    rng = random.Random(43)
    rows = []
    for case in range(40):
        clock = rng.choice([0, 0, 1, 10])
        gaps = []
        for _ in range(rng.randrange(1, 4)):
            n, g = rng.choice([11, 12, 12, 13, 15]), rng.choice([40, 41, 200, 3000])
            if rng.random() < 0.5:
                gaps += [g + rng.choice([0, 0, clock, round(0.049 * g), -round(0.024 * g)]) for _ in range(n)]
            else:
                for k in range(n):
                    g += rng.choice([1, 5, 30]) if rng.random() < (0.93 if clock else 0.995) else rng.choice([0, -clock])
                    gaps.append(g)
            gaps.append(rng.choice([7, 21601, 21600, 4 * clock or 3, max(1, 4 * clock - 1)]))
        t, tips = 100, [100]
        for g in gaps:
            t += g
            tips.append(t)
        alike, growing = [False] * len(tips), [False] * len(tips)
        for marks, even in ((alike, True), (growing, False)):
            run, rises, longest, last = 0, 0, 0, 0
            for i, g in enumerate(gaps, 1):
                if not (0 < g <= 21600 and g >= 4 * clock):
                    run = 0
                    continue
                on = run > 0 and ((abs(g - last) <= max(F(1, 20) * last, clock)) if even else (g > last if clock == 0 else g >= longest - clock))
                if on:
                    run, rises, longest = run + 1, rises + (g > longest), max(longest, g)
                else:
                    run, rises, longest = 1, 0, g
                last = g
                if run >= 12 and (even or rises >= 11):
                    for k in range(run):
                        marks[i - k] = True
        for flag, marks in (("evenly_spaced", alike), ("lengthening", growing)):
            rows.append((text(tips), clock, flag, places([int(m) for m in marks])))
    write(folder, PROGRAM, "rows-of-gaps", "tips whose gaps are alike, or grow, for twelve in a row, with and without a coarse clock", [("t", "s, tips"), ("clock", "s, step of the clock"), ("flag", "text, flag"), ("sum", "1, places of the flagged")],
          [("tip_seconds", "text t"), ("tip_mm", "0.2"), ("clock_seconds", "clock"), ("ceiling", "500"), ("flag", "text flag")], [("sum", "gauge.checks.book")], rows, tolerance="0", reason="whole numbers")


def small_places(folder):
    """Rectangles of some metres cut by the lines half way between places on a line: no cut may be left out for being short."""
    rows = []
    for width, xs in ((3, (0.4, 1.1, 2.6)), (2, (0.3, 1.9)), (5, (0.2, 0.9, 1.6, 4.9)), (1, (0.1, 0.5, 0.95))):
        ends = [0] + [(a + b) / 2 for a, b in zip(xs, xs[1:])] + [width]
        for i in range(len(xs)):
            for turned in (False, True):
                corners = [(0, 0), (width, 0), (width, 2), (0, 2), (0, 0)]
                at = [(x, 1) for x in xs]
                if turned:
                    corners, at = [(y, x) for x, y in corners], [(y, x) for x, y in at]
                rows.append((f"POLYGON (({', '.join(f'{x} {y}' for x, y in corners)}))", "; ".join(f"{x} {y}" for x, y in at), i + 1, (ends[i + 1] - ends[i]) / width))
    write(folder, PROGRAM, "thiessen-weights-of-metres", "shares of small rectangles nearest to each of some places on a line", [("catchment", "text, outline"), ("gauges", "text, places"), ("gauge", "1, which"), ("weight", "1, share")],
          [("catchment", "text catchment"), ("gauges", "text gauges"), ("gauge", "gauge")], [("weight", "areal.thiessen.weight")], rows, tolerance="1e-11 relative", reason="16 digits are given")


def few_neighbours(folder):
    """A day counts where at least half of the other gauges tell something."""
    rng = random.Random(44)
    rows = []
    for count in (3, 4, 5, 6, 8):
        days = 40
        x = [[NAN if rng.random() < 0.55 else round(rng.uniform(0.5, 30), 1) for _ in range(days)] for _ in range(count)]
        for g in range(count):
            own = others = F(0)
            n = 0
            for d in range(days):
                known = sorted(F(str(x[o][d])) for o in range(count) if o != g and x[o][d] == x[o][d])
                if x[g][d] == x[g][d] and len(known) >= max(1, count // 2):
                    m = len(known)
                    own += F(str(x[g][d]))
                    others += known[m // 2] if m % 2 else (known[m // 2 - 1] + known[m // 2]) / 2
                    n += 1
            if n >= 2:
                rows.append(("; ".join(text(v) for v in x), g + 1, float(own / others)))
    write(folder, PROGRAM, "few-neighbours", "rain of a gauge over the median of the others, on days when at least half of them tell something", [("gauges", "mm, days of each"), ("gauge", "1, which"), ("ratio", "1, ratio")],
          [("gauges", "text gauges"), ("gauge", "gauge"), ("wet_mm", "0.2")], [("ratio", "gauge.neighbours.ratio")], rows, tolerance="1e-11 relative", reason="16 digits are given")


def states(folder):
    """Depths 0 0 1 2 0.05 0 and a missing step, wet above 0.1 mm: an event from the third step on, three steps without rain since. What a state of it
    may say: counts of steps that can be those of this record with more steps of the kind that it ends with."""
    rows = []
    for put, missing in (
        ("steps=7", 1), ("steps=6", None), ("steps=8", None), ("pending=2", None), ("pending=4", None), ("steps=8 pending=4", 1), ("steps=9 pending=5", 1), ("steps=10 pending=6", None), ("steps=5 pending=1 weak-steps= weak-depths=", 1),
        ("steps=4 pending=0 weak-steps= weak-depths=", None), ("steps=4 pending=0 pending-missing=0 weak-steps= weak-depths=", 1), ("steps=3 pending=-1 pending-missing=0 weak-steps= weak-depths=", None), ("pending-missing=0", 1),
        ("pending-missing=3", 1), ("pending-missing=4", None), ("pending-missing=-1", None), ("missing=7", 7), ("missing=8", None), ("missing=0", 0), ("missing=-1", None), ("dry-from=2", 1), ("dry-from=3", None), ("dry-from=1", 1), ("dry-from=-1", None),
        ("missing-before=2", 1), ("missing-before=-1", None), ("missing-inside=0", 1), ("missing-inside=-1", None), ("weak-steps=4,", 1), ("weak-steps=6,", 1), ("weak-steps=7,", None), ("weak-steps=3,", None),
        ("weak-steps=4,5, weak-depths=0.05,0.1,", 1), ("weak-steps=5,4, weak-depths=0.05,0.1,", None), ("weak-steps=5,5, weak-depths=0.05,0.1,", None), ("weak-steps=5,6, weak-depths=0.05,0.1,", 1), ("weak-steps=4,5,6, weak-depths=0.05,0.1,0.02,", 1),
        ("weak-steps=4,6,7, weak-depths=0.05,0.1,0.02,", None), ("weak-depths=0.1,", 1), ("weak-depths=0.101,", None), ("weak-depths=0.0,", None), ("weak-depths=0.001,", 1), ("weak-depths=-0.001,", None), ("weak-depths=0.05,0.05,", None),
        ("step=300000000000", 1), ("step=300000000001", None), ("wet-above=0.1", 1), ("wet-above=0.105", None)):
        rows.append(("0 0 1 2 0.05 0 NaN", put, "" if missing is None else missing, int(missing is None)))
    # Nothing yet, and a record that is dry.
    for put, missing in (("steps=2", 0), ("steps=0", 0), ("pending=1", None), ("dry-from=2", 0), ("dry-from=3", None), ("missing=2", 2), ("missing=3", None)):
        rows.append(("0 0", put, "" if missing is None else missing, int(missing is None)))
    write(folder, PROGRAM, "states-of-events", "which counts the state of a separation into events may hold", [("x", "mm, depths so far"), ("put", "text, what is changed"), ("missing", "steps, missing then"), ("refused", "1, whether it is refused")],
          [("depths", "text x"), ("step_minutes", "5"), ("inter_event_minutes", "30"), ("wet_above_mm", "0.1"), ("put", "text put")], [("missing", "event.state-kept"), ("refused", "refusal.event.state-kept")], rows, tolerance="0", reason="a count")


def stray(folder):
    rows = [("10 100 200", 0, 0.0, 0.0), ("10 100 9000 20000 20010 20020", 0.5, 0.0, 0.6), ("10", 0.2, 0.0, 0.0), ("10", 0.21, 0.0, 0.2)]
    write(folder, PROGRAM, "rain-of-no-event-of-tips", "rain of tips that is in no event: none is stray, and shallow events are dropped", [("t", "s, tips"), ("least", "mm, least depth"), ("stray", "mm, in no event"), ("dropped", "mm, in shallow ones")],
          [("tip_seconds", "text t"), ("tip_mm", "0.2"), ("record_seconds", "90000"), ("inter_event_minutes", "60")], [("stray", "event.tips.stray"), ("dropped", "event.tips.dropped", "input.minimum_mm = least")], rows, tolerance="1e-12")


def exponentials(folder):
    """The shortest length at which the gaps at least as long vary as little as exponential ones; none where even all of them do, or never."""
    rng = random.Random(45)
    rows = []
    for case in range(14):
        gaps = [float(rng.choice([1, 1, 1, 2, 2, 3, 4, 9, 20, 33, 60])) for _ in range(rng.choice([2, 3, 5, 12, 30]))]
        if case == 0:
            gaps = [1.0, 2.0, 3.0, 2.0]
        for convention in ("gaps", "excesses"):
            found = []
            for at in sorted(set(gaps)):
                long = [F(g) for g in gaps if g >= at]
                if len(long) < 3:
                    continue
                left = [g - F(at) for g in long] if convention == "excesses" else long
                mean = sum(left) / len(left)
                square = sum((g - mean) ** 2 for g in left) / (len(left) - (convention == "excesses"))
                found.append((at, square == 0 or square <= mean * mean))
            first = next((at for at, small in found if small), None) if found and not found[0][1] else None
            rows.append((text(gaps), convention, "" if first is None else first, int(first is None)))
    write(folder, PROGRAM, "exponential-dry-gaps", "least dry time between independent storms, where the gaps begin to vary as exponential ones", [("gaps", "h, lengths"), ("convention", "text, what varies"), ("least", "h, least"), ("none", "1, whether there is none")],
          [("gaps_hours", "text gaps"), ("convention", "text convention")], [("least", "dry-gaps.exponential"), ("none", "refusal.dry-gaps.exponential")], rows)


def worst_runs(folder):
    """A straight line by relative least squares through recorded and true intensities, and the run that is farthest from it."""
    rng = random.Random(46)
    rows = []
    for _ in range(6):
        area, tip, n = 400.0, 0.2, rng.choice([3, 5, 8])
        volumes, tips, seconds = [], [], []
        for k in range(n):
            tips.append(rng.randrange(20, 60))
            seconds.append(float(rng.randrange(60, 4000)))
            volumes.append(round(tips[-1] * 8 * (1 + 2.0 * tips[-1] / seconds[-1] * rng.uniform(0.05, 0.3)) * rng.uniform(0.97, 1.03), 1))
        x = [F(3600) * t * F(1, 5) / F(s) for t, s in zip(tips, seconds)]
        y = [F(36000) * F(str(v)) / (F(400) * F(s)) for v, s in zip(volumes, seconds)]
        # Normal equations of 1 = (a + b x)/y
        s11, s12, s22 = sum(1 / v / v for v in y), sum(u / v / v for u, v in zip(x, y)), sum(u * u / v / v for u, v in zip(x, y))
        r1, r2 = sum(1 / v for v in y), sum(u / v for u, v in zip(x, y))
        det = s11 * s22 - s12 * s12
        a, b = (r1 * s22 - r2 * s12) / det, (s11 * r2 - s12 * r1) / det
        rows.append((area, text(volumes), text(tips), text(seconds), tip, float(max(abs((a + b * u) / v - 1) for u, v in zip(x, y)) * 100)))
    write(folder, PROGRAM, "worst-runs-of-a-line", "the run farthest from a line by relative least squares, exact fractions", [("area", "cm2, funnel"), ("v", "ml, volumes"), ("n", "1, tips"), ("s", "s, lengths"), ("tip", "mm, tip"), ("worst", "%, farthest")],
          [("form", "word linear"), ("funnel_cm2", "area"), ("volumes_ml", "text v"), ("tips", "text n"), ("seconds", "text s"), ("tip_mm", "tip")], [("worst", "gauge.calibration.worst")], rows, tolerance="1e-9 relative", reason="a least square by QR")


def ties(folder):
    """A depth equal to the last two of a row is as rare as the first of them."""
    rows = []
    for table, depth, years in (("duration_min,1,5,20\n10,3,7,7", 7, 5), ("duration_min,1,5,20\n10,3,7,8", 8, 20), ("duration_min,1,5,20\n10,3,3,8", 3, 1), ("duration_min,1,5\n10,3,3", 3, 1), ("duration_min,5\n10,3", 3, 5), ("duration_min,1,5,20,50\n10,3,7,7,7", 7, 5)):
        rows.append((table, 10, depth, years))
    write(folder, PROGRAM, "depths-as-rare", "return periods of depths that several columns share", [("table", "text, table"), ("minutes", "min, duration"), ("depth", "mm, depth"), ("years", "years, return period")],
          [("table", "text table"), ("minutes", "minutes"), ("depth", "depth")], [("years", "ddf.table.return-period")], rows)


def alone(folder):
    """Days on which one gauge of four is dry where the others had rain, and wet where they had none."""
    rng = random.Random(47)
    rows = []
    for _ in range(4):
        x = [[round(rng.uniform(1, 9), 1) for _ in range(20)] for _ in range(4)]
        kinds = [rng.choice(["all", "dry", "wet", "none"]) for _ in range(20)]
        kinds[:3] = ["all", "all", "all"]
        who = [rng.randrange(4) for _ in range(20)]
        for d, kind in enumerate(kinds):
            for g in range(4):
                if kind == "none" or (kind == "dry" and g == who[d]) or (kind == "wet" and g != who[d]):
                    x[g][d] = 0.0
        for g in range(4):
            rows.append(("; ".join(text(v) for v in x), g + 1, sum(k == "dry" and w == g for k, w in zip(kinds, who)), sum(k == "wet" and w == g for k, w in zip(kinds, who))))
    write(folder, PROGRAM, "gauges-dry-or-wet-alone", "days on which one gauge of four was dry alone, and wet alone", [("gauges", "mm, days of each"), ("gauge", "1, which"), ("dry", "days, dry alone"), ("wet", "days, wet alone")],
          [("gauges", "text gauges"), ("gauge", "gauge"), ("wet_mm", "0.5")], [("dry", "gauge.neighbours.dry-alone"), ("wet", "gauge.neighbours.wet-alone")], rows, tolerance="0", reason="a count")


def fillings(folder):
    """Gaps filled from the gauges that tell something in a step, by the inverse of their distances to a power."""
    rng = random.Random(48)
    rows = []
    for count, power, least in ((2, 1, 1), (3, 2, 1), (4, 2, 2), (5, 3, 3)):
        at = [(rng.randrange(0, 90), rng.randrange(0, 90)) for _ in range(count)]
        x = [[NAN if rng.random() < 0.4 else round(rng.uniform(0, 9), 1) for _ in range(12)] for _ in range(count)]
        book, depth, number = 0.0, 0.0, 0
        for g in range(count):
            values = []
            for d in range(12):
                v = x[g][d]
                there = [o for o in range(count) if x[o][d] == x[o][d]]
                if v != v and there and len(there) >= least:
                    weights = [math.dist(at[g], at[o]) ** -power for o in there]
                    v = math.fsum(w * x[o][d] for w, o in zip(weights, there)) / math.fsum(weights)
                    depth += (g + 1) * v
                    number += g + 1
                values.append(v)
            book += (g + 1) * places(values)
        rows.append(("; ".join(f"{a} {b}" for a, b in at), "; ".join(text(v) for v in x), power, least, book, depth, number))
    write(folder, PROGRAM, "gaps-filled-by-neighbours", "gaps of gauges filled by inverse distances", [("at", "m, places"), ("x", "mm, depths of each"), ("power", "1, power"), ("least", "gauges, least"), ("book", "mm, depths times places"), ("depth", "mm, filled, times places"), ("number", "steps, filled, times places")],
          [("places", "text at"), ("gauges", "text x"), ("power", "power"), ("least", "least")], [("book", "areal.filling.book"), ("depth", "areal.filling.filled-depth"), ("number", "areal.filling.filled")], rows, tolerance="1e-11 relative", reason="16 digits are given")


def near_gauges(folder):
    """A place a metre from a gauge, half a metre, and on it: only there does that gauge stand for all."""
    rows = []
    for target in ((0, 0), (1, 0), (0.5, 0), (2, 0), (0, 1)):
        gauges, depths = [(0, 0), (2, 0), (5, 7)], [3.0, 8.0, 20.0]
        for power in (1, 2):
            far = [math.dist(target, g) for g in gauges]
            weights = [float(d == 0) for d in far] if 0 in far else [d**-power for d in far]
            rows.append((f"{target[0]} {target[1]}", "; ".join(f"{a} {b}" for a, b in gauges), text(depths), power, math.fsum(w * d for w, d in zip(weights, depths)) / math.fsum(weights)))
    write(folder, PROGRAM, "places-near-a-gauge", "depth at a place on and near a gauge, by inverse distances", [("target", "m, place"), ("gauges", "m, places of gauges"), ("depths", "mm, depths"), ("power", "1, power"), ("mean", "mm, depth")],
          [("target", "text target"), ("gauges", "text gauges"), ("depths", "text depths"), ("power", "power")], [("mean", "areal.inverse-distance.mean")], rows, tolerance="1e-12 relative")


def square_kilometres(folder):
    write(folder, PROGRAM, "areas-in-square-kilometres", "areas of rectangles", [("catchment", "text, outline"), ("area", "km2, area")], [("catchment", "text catchment")], [("area", "areal.catchment.km2")],
          [("POLYGON ((0 0, 3000 0, 3000 2000, 0 2000, 0 0))", 6.0), ("POLYGON ((0 0, 30 0, 30 20, 0 20, 0 0))", 0.0006)], tolerance="1e-12 relative")


def middles(folder):
    write(folder, PROGRAM, "middles-of-coefficients", "a coefficient in the middle of its limits", [("surface", "text, surface"), ("place", "1, place between them")], [("surface", "text surface")], [("place", "runoff-coefficient.place-of-middle")],
          [("asphalt", 0.5), ("roofs", 0.5), ("unimproved", 0.5)], tolerance="1e-12")


def independent(folder):
    """The shortest lag, of those asked for, whose coefficient is not above 1.96/sqrt(pairs)."""
    rng = random.Random(49)
    rows = []
    for case in range(10):
        n = rng.choice([12, 30, 80])
        level, x = 0.0, []
        for _ in range(n):
            level = 0.9 * level + rng.uniform(0, 2) ** 3
            x.append(round(level, 2))
        mean = math.fsum(x) / n
        d = [v - mean for v in x]
        r = lambda k: math.fsum(a * b for a, b in zip(d, d[k:])) / (n - k) / (math.fsum(v * v for v in d) / n)
        first = next((k for k in range(1, n - 2) if r(k) <= 1.959963984540054 / math.sqrt(n - k)), None)
        for lags in sorted({1, 2, 5, (first or 5) - 1, first or 5, n - 3} - {0}):
            there = first is not None and first <= lags
            rows.append((text(x), lags, first if there else "", int(not there)))
    write(folder, PROGRAM, "lags-of-independence", "shortest lag at which rain no longer tells of itself, among those asked for", [("x", "mm, depths by the hour"), ("lags", "steps, longest lag"), ("after", "h, shortest lag"), ("none", "1, whether there is none")],
          [("depths", "text x"), ("lags", "lags")], [("after", "event.independent-after"), ("none", "refusal.event.independent-after")], rows, tolerance="0", reason="whole hours")


def clamped(folder):
    """A skew beyond 5 is taken as 5."""
    rows = []
    for n in (60, 200):
        x = [10 + (i % 7) * 0.01 for i in range(n - 1)]
        rows += [(text(x + [1e9]), "gamma", 5.0), (text(x + [1e-8]), "gamma", -5.0)]
    write(folder, PROGRAM, "skews-beyond-five", "skew of samples with one value far from all others", [("x", "of the variate, sample"), ("name", "text, parameter"), ("value", "1, value")], [("sample", "text x"), ("parameter", "text name")],
          [("value", "expected-moments.of-known.parameter")], rows, tolerance="1e-12")


def next_storms(folder):
    """Storms of an hour every eight hours, and flow that comes back long after the last: each but the last is cut by the next."""
    rows = []
    for storms in (1, 2, 3):
        rain = [0.0] * 640
        starts = [72 + 96 * k for k in range(storms)]
        for s in starts:
            rain[s:s + 12] = [1.0] * 12
        back = starts[-1] // 3 + 160
        flow = [0.02 + (0.05 if 24 <= i < back else 0.0) for i in range(213)]
        dry = [0.02] * 213
        for k, s in enumerate(starts):
            last = k == storms - 1
            end = (s + 12) * 5 + 1440 if last else starts[k + 1] * 5
            # Steps of flow from that in which the storm begins to the end, on quarters of an hour.
            volume = 0.05 * 60 * (end - s * 5)
            for doubt, raised in (("NEXT_STORM", not last), ("NOT_BACK", last), ("FLOW_MISSING", False), ("RAIN_MISSING", False), ("WET_BEFORE", k > 0)):
                rows.append((text(rain), text(flow), text(dry), k, doubt, int(raised), "", ""))
            rows.append((text(rain), text(flow), text(dry), k, "", "", "VOLUME", volume))
            rows.append((text(rain), text(flow), text(dry), k, "", "", "DEPTH", 12.0))
    write(folder, PROGRAM, "storms-cut-by-the-next", "responses to storms every eight hours, each but the last cut by the next", [("rain", "mm, depths by 5 min"), ("flow", "m3/s, by 15 min"), ("dry", "m3/s, by 15 min"), ("storm", "1, place of the storm"), ("doubt", "text, doubt"),
          ("is", "1, whether it is raised"), ("measure", "text, figure"), ("value", "as the figure, value")],
          [("rain", "text rain"), ("flow", "text flow"), ("dry", "text dry"), ("area", "50000"), ("allowance", "0.1"), ("held_minutes", "60"), ("lag_minutes", "240"), ("longest_minutes", "1440"), ("gap_minutes", "360"), ("storm", "storm")],
          [("is", "response.storm.doubt", "input.doubt = text doubt"), ("value", "response.storm.value", "input.measure = text measure")], rows, tolerance="1e-9 relative", reason="a count, or flow in whole steps")


def near_one(folder):
    """As exponential-dry-gaps, of gaps that vary at one of their lengths by a little more than exponential ones."""
    rng = random.Random(50)
    rows = []
    while len(rows) < 16:
        gaps = [float(rng.choice([1, 1, 1, 2, 2, 3, 4, 6, 9, 20])) for _ in range(rng.choice([7, 12, 20]))]
        found = []
        for at in sorted(set(gaps)):
            long = [F(g) for g in gaps if g >= at]
            if len(long) >= 3:
                mean = sum(long) / len(long)
                found.append((at, sum((g - mean) ** 2 for g in long) / len(long) / (mean * mean)))
        # Squares of the coefficient: between 1 and 1.045 at the first length, or at the one before it falls to 1.
        first = next((at for at, v in found if v <= 1), None) if found and found[0][1] > 1 else None
        if any(F(1001, 1000) < v < F(109, 100) for _, v in found) and found[0][1] > 1:
            rows.append((text(gaps), "gaps", "" if first is None else first, int(first is None)))
    write(folder, PROGRAM, "dry-gaps-near-exponential", "least dry time between independent storms, of gaps that vary a little more than exponential ones", [("gaps", "h, lengths"), ("convention", "text, what varies"), ("least", "h, least"), ("none", "1, whether there is none")],
          [("gaps_hours", "text gaps"), ("convention", "text convention")], [("least", "dry-gaps.exponential"), ("none", "refusal.dry-gaps.exponential")], rows)


def breaks(folder):
    rows = []
    for n in (3, 5, 9):
        x = [float(3 + 2 * k % 5) for k in range(n)]
        rows += [(text(x), text([1.0] * n), k, int(not 1 <= k <= n - 1)) for k in (-1, 0, 1, n - 1, n, n + 1)]
    rows += [("1 2 3", "0 0 3", 1, 1), ("1 2 3", "0 0 3", 2, 1), ("1 2 3", "0 1 3", 2, 0), ("1 2 3", "3 0 0", 1, 1), ("1 2 3", "3 0 1", 1, 0)]
    write(folder, PROGRAM, "breaks-that-may-be-asked", "after which period a double mass curve may be broken", [("gauge", "mm, gauge"), ("reference", "mm, reference"), ("periods", "1, periods before"), ("refused", "1, whether it is refused")],
          [("gauge", "text gauge"), ("reference", "text reference"), ("periods", "periods")], [("refused", "refusal.double-mass.slope-before")], rows, tolerance="0", reason="yes or no")


if __name__ == "__main__":
    for part in (listings, spells, lags, outages, other_steps, formulae, growth, best_windows, far_apart, quarters, wettest, recessions, curves, tip_groups, bare, heads, chances, seconds, at_least, constant, gap_rows, small_places, few_neighbours, states, stray, exponentials, worst_runs, ties, alone, fillings, near_gauges, square_kilometres, middles, independent, clamped, next_storms, near_one, breaks):
        if not sys.argv[2:] or part.__name__ in sys.argv[2:]:
            part(sys.argv[1])
