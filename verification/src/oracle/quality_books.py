"""Verdicts on all readings of invented records with uneven times, missing and suspect readings: plain Python, no code in common
with the library.

    python3 quality_books.py FOLDER

writes the tables quality-book-... into the folder, csv and descriptor. Each verdict is found from the sentence of its check with the
whole record at hand; the number of a row is the sum of the flags (1 pass, 2 not evaluated, 3 unusual, 4 fail, 9 missing), each times
the place of its reading, counted from 1.
"""

import random
import sys
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "quality_books.py"
NAN = float("nan")
WAYS = ("whole", "arriving", "cut")


def record(rng, n, step, decimals, missing=0.05, suspect=0.03, slips=0.05):
    t, x, bad, level = [], [], [], 0.3
    now = 0.0
    for i in range(n):
        kind = rng.random()
        now += step * (1 if kind > 0.08 else rng.choice([2, 3, 12])) + (rng.choice([-0.4, 0.3, 0.02]) * step if rng.random() < slips else 0)
        t.append(round(now, 3))
        level += rng.gauss(0, 0.02) if rng.random() > 0.25 else 0
        value = level + (rng.choice([-1, 1]) * rng.uniform(0.05, 0.5) if rng.random() < 0.08 else 0)
        x.append(NAN if rng.random() < missing else round(value, decimals))
        if x[-1] == x[-1] and rng.random() < suspect:
            bad.append(i)
    # runs of lost readings, and one long stand
    for i in range(n // 3, n // 3 + 9):
        x[i] = NAN
    for i in range(n // 2, n // 2 + 14):
        x[i] = x[n // 2] if x[n // 2] == x[n // 2] else 0.5
    return t, x, sorted({b for b in bad if x[b] == x[b]} | {0}) if x[0] == x[0] else (t, x, bad)[2]


def usable(r, i):
    return r[1][i] == r[1][i] and i not in r[2]


def flags(r, judge):
    return [9 if r[1][i] != r[1][i] else 2 if i in r[2] else judge(i) for i in range(len(r[0]))]


def book(values):
    return sum(i * v for i, v in enumerate(values, 1))


def spike(r, unusual, fail, gap, sparing):
    t, x, _ = r
    reach = 11 if sparing else 1

    def beside(i, way):
        for k in range(1, reach + 1):
            j = i + k * way
            if not 0 <= j < len(x):
                return None
            if usable(r, j):
                return j
        return None

    def off(i):
        a, b = beside(i, -1), beside(i, 1)
        if a is None or b is None or t[i] - t[a] > gap + 1e-9 or t[b] - t[i] > gap + 1e-9:
            return None
        return abs(x[i] - (x[a] + x[b]) / 2)

    def judge(i):
        d = off(i)
        if d is None:
            return 2
        if d <= unusual:
            return 1
        if sparing and any((off(j) or 0) > d for j in (beside(i, -1), beside(i, 1))):
            return 2
        return 4 if d > fail else 3

    return flags(r, judge)


def with_companion(r, c, reach):
    """What stands beside each reading: its two neighbours, its deviation, its own share and that of its companion."""
    t, x, _ = r

    def part(v, m):
        return 0 if v == m else abs(v - m) / max(abs(v), abs(m))

    def of(i):
        found = []
        for way in (-1, 1):
            inside = [j for j in (i + k * way for k in range(1, reach + 1)) if 0 <= j < len(x)]
            found.append(next((j for j in inside if usable(r, j)), None))
        a, b = found
        if a is None or b is None:
            return None
        m = (x[a] + x[b]) / 2
        known = c[i] == c[i] and c[a] == c[a] and c[b] == c[b] and c[i] != 0
        its = min(part(c[i], c[a]), part(c[i], c[b])) if known else None
        return a, b, max(t[i] - t[a], t[b] - t[i]), abs(x[i] - m), part(x[i], m), its

    return of


def shared_spike(r, c, unusual, fail, gap, sparing):
    """The companion c of each reading: it shares a spike; NaN or 0 says nothing."""
    of = with_companion(r, c, 11 if sparing else 1)
    off = lambda i: (lambda f: f[3] if f and f[2] <= gap + 1e-9 else None)(of(i))

    def judge(i):
        d = off(i)
        if d is None:
            return 2
        if d <= unusual:
            return 1
        a, b, _, _, own, its = of(i)
        if sparing and any((off(j) or 0) > d for j in (a, b)):
            return 2
        return 4 if d > fail and not (its is not None and its > 0.15 and its > 0.4 * own) else 3

    return flags(r, judge)


def lone(r, c, above, gap):
    """Leaps and comes back while the companion stands still."""
    of = with_companion(r, c, 11)
    off = lambda i: (lambda f: f[3] if f and f[2] <= gap + 1e-9 else None)(of(i))

    def judge(i):
        d = off(i)
        if d is None:
            return 2
        if d <= above:
            return 1
        a, b, _, _, own, its = of(i)
        if any((off(j) or 0) > d for j in (a, b)) or its is None:
            return 2
        return 4 if own > 0.5 and its < 0.2 * own and abs(r[1][b] - r[1][a]) <= d / 4 else 1

    return flags(r, judge)


def flat(r, unusual, fail, tolerance):
    def judge(i):
        run = 1
        while run < fail and i - run >= 0 and usable(r, i - run) and abs(r[1][i] - r[1][i - run]) <= tolerance:
            run += 1
        return 4 if run >= fail else 3 if run >= unusual else 1

    return flags(r, judge)


def timing(r, interval, tolerance):
    def judge(i):
        if i == 0:
            return 2
        gap = r[0][i] - r[0][i - 1]
        steps = round(gap / interval)
        return 1 if steps >= 1 and abs(gap - steps * interval) <= tolerance + 1e-9 else 3

    return flags(r, judge)


def season(r, zone, first, last, low, high):
    start = datetime(2001, 1, 1, tzinfo=timezone.utc)
    months = [(first + k - 1) % 12 + 1 for k in range((last - first) % 12 + 1)]

    def judge(i):
        month = (start + timedelta(seconds=r[0][i])).astimezone(ZoneInfo(zone)).month
        return 2 if month not in months else 1 if low <= r[1][i] <= high else 3

    return flags(r, judge)


def rate(r, change, over, gap):
    def judge(i):
        j = next((j for j in range(i - 1, -1, -1) if usable(r, j)), None)
        if j is None or r[0][i] - r[0][j] > gap + 1e-9:
            return 2
        return 3 if abs(r[1][i] - r[1][j]) > change / over * (r[0][i] - r[0][j]) else 1

    return flags(r, judge)


def repeated(r, lag, least):
    """Usable readings that say what the reading a lag before said, without a break for so long, with ten changes of value at least."""
    t, x, _ = r
    at = {round(s, 3): i for i, s in enumerate(t)}
    good = [i for i in range(len(t)) if usable(r, i)]

    def again(i):
        j = at.get(round(t[i] - lag, 3))
        return j is not None and usable(r, j) and x[j] == x[i]

    def judge(i):
        place = good.index(i)
        run = []
        while place >= 0 and again(good[place]):
            run.append(good[place])
            place -= 1
        run.reverse()
        if not run:
            return 1
        changes = sum(x[a] != x[b] for a, b in zip(run, run[1:]))
        return 4 if t[i] - t[run[0]] >= least and changes >= LEAST_CHANGES else 1

    return flags(r, judge)


LEAST_CHANGES = 10

RECORD = [("way", "text, how the record is given"), ("t", "s, times"), ("x", "m, readings"), ("bad", "1, places of suspect readings")]
GIVEN = [("way", "text way"), ("times", "text t"), ("values", "text x"), ("suspect", "text bad")]


def table(name, title, columns, checks, rows):
    """rows: (record, inputs, expected); each in all three ways."""
    spread = [(way, text(r[0]), text(r[1]), text(r[2]), *given, *expected) for r, given, expected in rows for way in WAYS]
    values = [c for c, *_ in checks]
    write(FOLDER, PROGRAM, "quality-book-" + name, title, RECORD + columns + [(c, "1, " + m) for c, m, *_ in checks],
          GIVEN + [(c, ("text " if u.startswith("text") else "") + c) for c, u in columns if c != "verdict"], [(c, *rest) for c, _, *rest in checks], spread, tolerance="0", reason="a sum of whole numbers")


rng = random.Random(1129)
records = [record(rng, 150, 60, 2), record(rng, 220, 120, 3), record(rng, 60, 300, 1, 0.2, 0.1)]
ONE = lambda calculation, meaning: [("sum", meaning, calculation)]

table("range", "range of the sensor and of the site, limits included", [("lowest", "m, of the sensor"), ("highest", "m, of the sensor"), ("usual_lowest", "m, of the site"), ("usual_highest", "m, of the site")],
      ONE("quality.book.range", "sum"),
      [(r, limits, (book(flags(r, lambda i: 4 if not limits[0] <= r[1][i] <= limits[1] else 3 if not limits[2] <= r[1][i] <= limits[3] else 1)),))
       for r in records for limits in ((-0.2, 1.0, 0.1, 0.6), (sorted(v for v in r[1] if v == v)[3], sorted(v for v in r[1] if v == v)[-3], sorted(v for v in r[1] if v == v)[9], sorted(v for v in r[1] if v == v)[-9]))])
rows = []
for r, step in zip(records, (60, 120, 300)):
    for given in ((0.05, 0.2, 1e9, 0), (0.03, 0.15, step, 0), (0.04, 0.1, 3 * step, 1), (0.02, 0.3, 1e9, 1)):
        found = spike(r, *given)
        rows.append((r, given, (book(found), found.count(1), found.count(2), found.count(3), found.count(4))))
table("spike", "each reading against the mean of its neighbours, spared or not", [("unusual", "m, deviation"), ("fail", "m, deviation"), ("gap_seconds", "s, longest gap"), ("sparing", "1, spared or not")],
      [("sum", "sum", "quality.book.spike")] + [("of_" + v.lower(), "count", "quality.book.flags-of", f"input.verdict = word {v}") for v in ("PASS", "NOT_EVALUATED", "UNUSUAL", "FAIL")], rows)
table("flat-line", "equal values in a row", [("unusual", "1, values"), ("fail", "1, values"), ("tolerance", "m, equal up to")], ONE("quality.book.flat-line", "sum"),
      [(r, given, (book(flat(r, *given)),)) for r in records for given in ((2, 4, 0), (3, 5, 0.001), (2, 9, 0.0201), (4, 12, 0))])
table("timing", "whole numbers of logging intervals", [("interval_seconds", "s, logging interval"), ("tolerance_seconds", "s, tolerance")], ONE("quality.book.timing", "sum"),
      [(r, (step, tolerance), (book(timing(r, step, tolerance)),)) for r, step in zip(records, (60, 120, 300)) for tolerance in (0, 0.025 * step, 0.35 * step)]
      + [(records[0], (120, 1), (book(timing(records[0], 120, 1)),))])
daily = record(rng, 200, 86400 * 2.3, 2, slips=0)
table("season", "range of the months", [("zone", "text, zone"), ("from", "1, month"), ("to", "1, month"), ("lowest", "m, usual"), ("highest", "m, usual")], ONE("quality.book.season", "sum"),
      [(daily, given, (book(season(daily, *given)),)) for given in (("UTC", 5, 9, 0.2, 0.7), ("Europe/London", 11, 2, 0.1, 0.5), ("Australia/Sydney", 12, 12, 0.0, 0.9), ("UTC", 1, 12, sorted(v for v in daily[1] if v == v)[20], sorted(v for v in daily[1] if v == v)[-20]))])
table("rate-of-change", "change since the last usable reading", [("change", "m, change"), ("over_seconds", "s, in"), ("gap_seconds", "s, longest gap")], ONE("quality.book.rate-of-change", "sum"),
      [(r, given, (book(rate(r, *given)),)) for r, step in zip(records, (60, 120, 300)) for given in ((0.031, step, 1e9), (0.107, 3.3 * step, 2 * step), (1.013, 90.5, 12 * step))])
again = []
for step, lag, n in ((60, 1800, 200), (600, 86400, 400)):
    x = [round(rng.uniform(0, 1), 1 if rng.random() < 0.7 else 3) for _ in range(n)]
    k = lag // step
    for a, b in ((k + 5, k + 25), (k + 31, k + 33), (n - 30, n - 2)):
        for i in range(a, b):
            x[i] = x[i - k]
    for i in range(k + 60, k + 75):
        x[i] = x[i - k] = 0.4
    x[k + 15] = NAN
    again.append(((([step * i for i in range(n)]), x, [k + 18]), step, lag))
table("repeated-day", "as a lag before, for long enough", [("lag_seconds", "s, lag"), ("least_seconds", "s, at least")], ONE("quality.book.repeated-day", "sum"),
      [(r, (lag, least * step), (book(repeated(r, lag, least * step)),)) for r, step, lag in again for least in (2, 5, 12)])
rows = []
for r, step in zip(records, (60, 120, 300)):
    for gap in (step, 2 * step, 3.001 * step):
        good = [r[0][i] for i in range(len(r[0])) if usable(r, i)]
        gaps = [b - a for a, b in zip(good, good[1:]) if b - a > gap + 1e-9]
        rows.append((r, (gap,), (book(gaps),)))
spread = [(way, text(r[0]), text(r[1]), text(r[2]), *given, *expected) for r, given, expected in rows for way in WAYS]
write(FOLDER, PROGRAM, "quality-book-gaps", "times between usable readings longer than a limit, each times its place", RECORD + [("gap_seconds", "s, longest"), ("sum", "s, sum")],
      GIVEN + [("gap_seconds", "gap_seconds")], [("sum", "quality.book.gaps")], spread, tolerance="1e-12 relative", reason="times in thousandths of a second")

rng = random.Random(1130)


def strokes(n, step):
    """Depth with false echoes of all heights and strokes of a pump, and a velocity that follows the strokes more or less."""
    t, x, bad = record(rng, n, step, 3, 0.03, 0.02)
    c = []
    for i in range(n):
        x[i] = abs(x[i]) if x[i] == x[i] else x[i]
        kind = rng.random()
        c.append(round(0.6 * (1 + rng.gauss(0, 0.03)), 3))
        if kind < 0.15 and x[i] == x[i]:
            x[i] = round(x[i] * rng.uniform(1.2, 6) if rng.random() < 0.7 else x[i] / rng.uniform(1.2, 6), 3)
            c[i] = round(c[i] * rng.choice([1, 1 + rng.uniform(0.05, 0.5), 1 / (1 + rng.uniform(0.05, 2)), 1 + rng.uniform(0, 2)]), 3)
        if kind > 0.95:
            c[i] = rng.choice([0.0, NAN])
    return (t, x, bad), c


made = [(*strokes(n, step), step) for n, step in ((200, 60), (240, 120), (120, 300))]


def beside(name, what, columns, rows):
    spread = [(way, text(r[0]), text(r[1]), text(r[2]), text(c), *given, book(expected)) for r, c, given, expected in rows for way in WAYS]
    write(FOLDER, PROGRAM, "quality-book-" + name, what, RECORD + [("c", "m/s, companions")] + columns + [("sum", "1, sum")],
          GIVEN + [("companions", "text c")] + [(c, c) for c, _ in columns], [("sum", "quality.book." + name)], spread, tolerance="0", reason="a sum of whole numbers")


beside("shared-spike", "spikes of a depth, with what the velocity beside it did",
       [("unusual", "m, deviation"), ("fail", "m, deviation"), ("gap_seconds", "s, longest gap"), ("sparing", "1, spared or not")],
       [(r, c, given, shared_spike(r, c, *given)) for r, c, step in made
        for given in ((0.05, 0.2, step, 1), (0.04, 0.1, 2 * step, 0), (0.03, 0.3, 3 * step, 1), (0.1, 0.2, 3 * step, 1), (0.05, 0.1, step, 0))])
beside("lone-reading", "depths that leap and come back while the velocity stands still", [("above", "m, deviation"), ("gap_seconds", "s, longest gap")],
       [(r, c, given, lone(r, c, *given)) for r, c, step in made for given in ((0.05, step), (0.1, 2 * step), (0.03, 3 * step), (0, 13 * step), (0.3, 13 * step))])
