"""All events of long invented records, listed and measured the slow way: plain Python, no code in common with the library.

    python3 event_books.py FOLDER

writes the tables named below into the folder, csv and descriptor. Each number is a sum over the events of a record: the measure
times the place of the event, counted from 1 (of peaks: times the place of the window too).
"""

import math
import random
import sys

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
NAN = float("nan")


def record(rng, n):
    state, values = 0, []
    for _ in range(n):
        state = max(0, state + rng.choice([-1, -1, 0, 1])) if rng.random() < 0.8 else rng.choice([0, 0, 0, 3])
        kind = rng.random()
        values.append(NAN if kind < 0.04 else 0.05 if state == 0 and kind > 0.9 else round(state * rng.uniform(0.05, 1.4), 2))
    return values


def total(x, a, b):
    return math.fsum(v for v in x[max(0, a):max(0, b)] if v == v)


def missing(x, a, b):
    return sum(v != v for v in x[max(0, a):b])


def spans(x, gap, above):
    found = []
    for i, v in enumerate(x):
        if v > above:
            if found and i - found[-1][1] < gap:
                found[-1][1] = i + 1
            else:
                found.append([i, i + 1])
    return found


def peak(x, a, b, window):
    """Greatest depth of a window of whole steps and a part, and the first place of one that begins with rain or, if there is a part, ends with it."""
    whole, part = int(window), window - int(window)
    at = lambda i: x[i] if a <= i < b and x[i] == x[i] else 0.0
    best, start = 0.0, None
    for i in range(a - whole - 1, b + 1):
        inside = total([at(j) for j in range(i, i + whole)], 0, whole)
        windows = [(i, inside + part * at(i + whole))] if at(i) > 0 else []
        if part and at(i + whole - 1) > 0:
            windows.append((i - part, inside + part * at(i - 1)))
        for first, value in windows:
            first = max(first, a)
            if start is None or value > best * (1 + 1e-12) or (value >= best * (1 - 1e-12) and first < start):
                best, start = value, first
    return best, start


def of_steps(name, title, rng, cases, scale=1.0, tolerance="1e-10 relative or 1e-9"):
    rows = []
    for n, step, gap, minimum, above, windows in cases:
        x = record(rng, n) if scale == 1 else [v * scale for v in record(rng, n)]
        above = above * scale
        need = math.ceil(gap / step)
        all_spans = spans(x, need, above)
        kept = [k for k, (a, b) in enumerate(all_spans) if total(x, a, b) >= minimum - 1e-9]
        sums = [0.0] * 11
        for place, k in enumerate(kept, 1):
            a, b = all_spans[k]
            before = all_spans[k - 1][1] if k else 0
            end = all_spans[k + 1][0] if k + 1 < len(all_spans) else n
            peaks = [peak(x, a, b, w / step) for w in windows]
            measures = [1, total(x, a, b), a * step, b * step, (a - before) * step, missing(x, a, b), missing(x, b, min(b + need, end)), missing(x, before, a),
                        (1 if k == 0 and a < need else 0) + (2 if k + 1 == len(all_spans) and n - b < need else 0),
                        sum(j * p[0] for j, p in enumerate(peaks, 1)), sum(j * p[1] * step for j, p in enumerate(peaks, 1))]
            sums = [s + place * m for s, m in zip(sums, measures)]
        for way in ("whole", "arriving", "cut"):
            rows.append((way, text(x), step, gap, minimum, above, text(windows), *sums))
    names = ["count", "depth", "start", "end", "dry", "missing", "missing-after", "missing-before", "open", "peaks", "peak-starts"]
    write(FOLDER, "event_books.py", name, title,
          [("way", "text, how the record is given"), ("x", "mm, depths"), ("step", "min, step"), ("gap", "min, minimum inter-event time"), ("minimum", "mm, minimum depth"), ("above", "mm, wet above"), ("windows", "min, windows")]
          + [(f"v{i}", f"1, sum of {n}") for i, n in enumerate(names)],
          [("way", "text way"), ("depths", "text x"), ("step_minutes", "step"), ("inter_event_minutes", "gap"), ("minimum_mm", "minimum"), ("wet_above_mm", "above"), ("windows_minutes", "text windows")],
          [(f"v{i}", f"event.book.{n}") for i, n in enumerate(names)], rows, tolerance=tolerance, reason="sums of depths with two decimals")


rng = random.Random(20261129)
of_steps("event-books", "all events of records with missing and weak steps, each measure times the place of its event, summed", rng, (
    (400, 5, 30, 0, 0, [5, 10, 15, 60]),
    (400, 5, 25, 1.0, 0.1, [5, 20, 35]),
    (300, 10, 60, 0.5, 0.3, [10, 30, 100, 300]),
    (300, 2, 7, 0, 0.1, [2, 6, 14]),
    (160, 5, 20, 2.0, 0, [5, 45]),
))

rows = []
for n, tip, gap, windows in ((300, 0.2, 30, [1, 5, 15, 60]), (200, 0.1, 12, [2, 7.5, 40]), (120, 0.254, 60, [5, 240])):
    t, times = rng.choice([20.0, 4000.0]), []
    for _ in range(n):
        times.append(round(t, 1))
        t += rng.choice([0.0, 4.0, 21.5, 60.0, 60.0, 150.0, 300.0, 700.0, gap * 60.0, 2.5 * gap * 60])
    end = times[-1] + rng.choice([10.0, 90000.0])
    groups = []
    for i, at in enumerate(times):
        if groups and at - times[groups[-1][1] - 1] < gap * 60:
            groups[-1][1] = i + 1
        else:
            groups.append([i, i + 1])
    sums = [0.0] * 8
    for place, (a, b) in enumerate(groups, 1):
        ts = times[a:b]
        found = []
        for w in windows:
            best, start = 0, 0
            for s in dict.fromkeys(ts):
                count = sum(s <= q < s + w * 60 for q in ts)
                if count > best:
                    best, start = count, s
            found.append((best * tip, start / 60))
        before = times[a - 1] if a else 0.0
        measures = [1, (b - a) * tip, ts[0] / 60, ts[-1] / 60, (ts[0] - before) / 60, (1 if place == 1 and ts[0] < gap * 60 else 0) + (2 if place == len(groups) and end - ts[-1] < gap * 60 else 0),
                    sum(j * p[0] for j, p in enumerate(found, 1)), sum(j * p[1] for j, p in enumerate(found, 1))]
        sums = [s + place * m for s, m in zip(sums, measures)]
    for way in ("whole", "arriving", "cut"):
        if way == "whole" or len(set(times)) == len(times):
            rows.append((way, text(times), end, tip, gap, text(windows), *sums))
NAMES = ["count", "depth", "start", "end", "dry", "open", "peaks", "peak-starts"]
write(FOLDER, "event_books.py", "event-books-of-tips", "all events of records of tips, each measure times the place of its event, summed",
      [("way", "text, how the record is given"), ("t", "s, tips"), ("end", "s, end of the record"), ("tip", "mm, tip"), ("gap", "min, minimum inter-event time"), ("windows", "min, windows")]
      + [(f"v{i}", f"1, sum of {n}") for i, n in enumerate(NAMES)],
      [("way", "text way"), ("tip_seconds", "text t"), ("record_seconds", "end"), ("tip_mm", "tip"), ("inter_event_minutes", "gap"), ("windows_minutes", "text windows")],
      [(f"v{i}", f"event.tip-book.{n}") for i, n in enumerate(NAMES)], rows, tolerance="1e-10 relative or 1e-9", reason="sums of tips, times in tenths of a second")

# Windows of a part of a step, of steps and a part, and beyond the event; events of some hundred steps.
of_steps("event-books-of-parts", "all events of records with missing and weak steps, peaks over steps and parts of them, each measure times the place of its event, summed", random.Random(29), (
    (420, 5, 30, 0, 0, [7, 12.5, 33]),
    (420, 2, 20, 0.5, 0.1, [3, 5, 47, 401]),
    (900, 5, 190, 0, 0, [8, 61, 127.5, 2500]),
    (900, 5, 190, 0, 0, [5, 10, 65, 1500]),
    (260, 10, 45, 1.0, 0.3, [13, 15, 30]),
))

# Depths a million million times below a tip, so that what is kept of one event shows in the next; many weak steps between wet ones.
of_steps("event-books-of-traces", "all events of records of traces of rain, each measure times the place of its event, summed", random.Random(30), (
    (300, 5, 30, 0, 0, [5, 10, 35]),
    (300, 5, 60, 0, 0.1, [5, 62]),
), scale=1e-18, tolerance="1e-10 relative")
of_steps("event-books-of-weak-rain", "all events of records with much weak rain, each measure times the place of its event, summed", random.Random(31), (
    (400, 5, 300, 0, 0.6, [5, 60, 62]),
    (400, 5, 600, 3.0, 1.5, [5, 15]),
))

# Every tip twice at one instant, more of them in one event than room is made for at first.
rows = []
for gap, windows in ((60, [240]), (30, [1, 7])):
    rng2 = random.Random(gap)
    t, times = 30.0, []
    for _ in range(90):
        times += [t, t]
        t += rng2.choice([30.0, 60.0, 60.0, 200.0]) if len(times) != 150 else gap * 90.0
    groups = []
    for i, at in enumerate(times):
        if groups and at - times[groups[-1][1] - 1] < gap * 60:
            groups[-1][1] = i + 1
        else:
            groups.append([i, i + 1])
    depth = peaks = 0.0
    for place, (a, b) in enumerate(groups, 1):
        ts = times[a:b]
        depth += place * (b - a) * 0.2
        peaks += place * sum(j * 0.2 * max(sum(s <= q < s + w * 60 for q in ts) for s in ts) for j, w in enumerate(windows, 1))
    rows.append(("whole", text(times), times[-1] + 9000, 0.2, gap, text(windows), len(groups) * (len(groups) + 1) // 2, depth, peaks))
write(FOLDER, "event_books.py", "event-books-of-double-tips", "all events of tips that all come twice at one instant, each measure times the place of its event, summed",
      [("way", "text, how the record is given"), ("t", "s, tips"), ("end", "s, end of the record"), ("tip", "mm, tip"), ("gap", "min, minimum inter-event time"), ("windows", "min, windows"), ("v0", "1, sum of count"), ("v1", "1, sum of depth"),
       ("v2", "1, sum of peaks")],
      [("way", "text way"), ("tip_seconds", "text t"), ("record_seconds", "end"), ("tip_mm", "tip"), ("inter_event_minutes", "gap"), ("windows_minutes", "text windows")],
      [("v0", "event.tip-book.count"), ("v1", "event.tip-book.depth"), ("v2", "event.tip-book.peaks")], rows, tolerance="1e-10 relative", reason="sums of tips, times in tenths of a second")
