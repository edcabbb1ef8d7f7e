"""Independent computation of records at their corners: Python, standard library only, no code in common with the library.

    python3 series_corners.py NAME > NAME.csv

writes one of the tables named in TABLES below. Verdicts of checks where the neighbours lie far off or the interval divides nothing,
readings of every quality counted by days that are 23 and 25 hours long, ratios of volumes, values that are all equal.
"""

import random
import sys
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

NAN = float("nan")
WAYS = ("whole", "arriving", "cut")
# codes of the qualities: good, unchecked, estimate, poor, suspect, missing
GOOD, UNCHECKED, ESTIMATE, POOR, SUSPECT, MISSING = range(6)


def text(values):
    return " ".join("NaN" if v != v else f"{v:.12g}" for v in values)


def rows(columns, lines):
    print(",".join(columns))
    for line in lines:
        print(",".join(c if isinstance(c, str) else f"{c:.15g}" for c in line))


def book(flags):
    return sum(i * f for i, f in enumerate(flags, 1))


def far_neighbours():
    """Spikes with as many lost readings between as are bridged, and one more; a flag is 1 pass, 2 not evaluated, 3 unusual, 4 fail, 9 missing."""
    lines = []
    for lost in (0, 3, 9, 10, 11):
        for values in ((0, 1, 0.3, 0.25, 0.2), (0.2, 0.25, 0.9, 0.1, 0.15, 0.2), (0, 0.3, 1, 0.9, 0.1)):
            x = []
            for v in values[:3]:
                x += [v] + [NAN] * lost
            x += list(values[3:])
            good = [i for i, v in enumerate(x) if v == v]

            def beside(i, way):
                near = [j for j in good if 0 < (j - i) * way <= 11]
                return min(near, key=lambda j: abs(j - i)) if near else None

            def off(i):
                a, b = beside(i, -1), beside(i, 1)
                return None if a is None or b is None else abs(x[i] - (x[a] + x[b]) / 2)

            flags = []
            for i, v in enumerate(x):
                d = off(i) if v == v else 0
                if v != v:
                    flags.append(9)
                elif d is None:
                    flags.append(2)
                elif d <= 0.1:
                    flags.append(1)
                elif any((off(j) or 0) > d for j in (beside(i, -1), beside(i, 1))):
                    flags.append(2)
                else:
                    flags.append(4 if d > 0.5 else 3)
            # the last reading is suspect: not evaluated, and nobody's neighbour
            x, flags = x + [5], flags + [2]
            lines += [(way, text(60 * k for k in range(len(x))), text(x), len(x) - 1, 0.1, 0.5, 1e9, 1, book(flags)) for way in WAYS]
    rows(("way", "t", "x", "bad", "unusual", "fail", "gap_seconds", "sparing", "sum"), lines)


def odd_intervals():
    """Intervals that divide no hour, readings early and late by the tolerance and 2 % more; times not on a whole interval."""
    lines = []
    for interval, tolerance in ((420, 20), (660, 100), (97, 11), (60, 29)):
        t, offsets = 31, (0, 1, 0.98, 1.02, -0.98, -1.02, 0, -1, 3, 0)
        times, flags = [t], [2]
        for k, share in enumerate(offsets * 2):
            steps = 1 + k % 3
            gap = steps * interval + round(share * tolerance, 3)
            t += gap
            times.append(t)
            nearest = max(1, round(gap / interval))
            flags.append(1 if abs(gap - nearest * interval) <= tolerance + 1e-9 else 3)
        for gap in (interval * 0.4, interval * 0.1):
            t += gap
            times.append(t)
            flags.append(3)
        times, flags = times + [t + interval], flags + [2]
        lines += [(way, text(times), text([1] * len(times)), len(times) - 1, interval, tolerance, book(flags)) for way in WAYS]
    rows(("way", "t", "x", "bad", "interval_seconds", "tolerance_seconds", "sum"), lines)


def mixed_days():
    rng = random.Random(725)
    lines = []
    for zone, start, step in (("UTC", "2025-06-01T00:00:00Z", 60), ("Europe/London", "2025-03-28T00:00:00Z", 120), ("Europe/London", "2025-10-25T01:00:00Z", 60)):
        begin = datetime.fromisoformat(start.replace("Z", "+00:00"))
        minutes = [step * i for i in range(4 * 1440 // step)]
        codes = [rng.choice((GOOD, GOOD, UNCHECKED, ESTIMATE, POOR, SUSPECT, MISSING)) for _ in minutes]
        local = [(begin + timedelta(minutes=m)).astimezone(ZoneInfo(zone)).date() for m in minutes]
        days = sorted(set(local))
        for k, day in enumerate(days):
            of = [c for c, d in zip(codes, local) if d == day]
            first = datetime(day.year, day.month, day.day, tzinfo=ZoneInfo(zone)).astimezone(timezone.utc)
            after = day + timedelta(days=1)
            length = datetime(after.year, after.month, after.day, tzinfo=ZoneInfo(zone)).astimezone(timezone.utc) - first
            poor = of.count(ESTIMATE) + of.count(POOR)
            lines.append((start, text(minutes), text(codes), zone, k, round(length.total_seconds() / 60 / step), of.count(GOOD) + of.count(UNCHECKED) + poor, poor, of.count(SUSPECT), of.count(MISSING)))
    rows(("start", "minutes", "qualities", "zone", "day", "expected", "usable", "poor", "suspect", "missing"), lines)


def ratios():
    """Steady flows: what comes out over what goes in."""
    lines = []
    for a, b, c in ((0.2, 0.3, 0.49), (0.05, 0.4, 0.6), (1.0, 0.25, 1.25)):
        n = 60
        lines.append((text([a] * n), text([b] * n), text([c] * n), c / (a + b), (c - a - b) * 3600))
    rows(("first", "second", "down", "ratio", "difference"), lines)


def equal():
    """All values equal: no trend, no scatter, no correlation."""
    rows(("sample", "s", "variance", "tau", "error"), [(text([3] * n), 0, 0, 0, 0) for n in (3, 4, 9, 12)])


def volumes():
    """Readings joined by lines where they are near enough; an interval may begin and end between them, on them and beyond them."""
    rng = random.Random(79)
    lines = []
    for n, step in ((14, 300), (9, 120), (25, 60)):
        t = [step * i for i in range(n)]
        for k in range(3, n - 3, 5):
            t[k] += 0.3 * step
        x = [round(rng.uniform(0, 0.4), 3) for _ in t]
        for lost in ((), (4,), (4, 5, n - 4)):
            v = [NAN if i in lost else y for i, y in enumerate(x)]
            good = [i for i in range(n) if i not in lost]
            for gap in (1.4 * step, 2.5 * step, 40 * step):
                pieces = [(t[i], t[j], v[i], v[j]) for i, j in zip(good, good[1:]) if t[j] - t[i] <= gap]
                for a, b in ((t[2], t[7]), (t[2] + 0.3 * step, t[7] - 0.2 * step), (t[3] + 1, t[3] + 0.4 * step), (t[5], t[n - 1]), (t[6] + 7, t[n - 1] + step),
                             (t[6], t[n - 2] + 0.5 * step), (-step, t[1] + 11), (-2 * step, t[n - 1] + 3 * step)):
                    volume = covered = 0
                    for p, q, y, z in pieces:
                        lo, hi = max(p, a), min(q, b)
                        if hi > lo:
                            at = lambda u: y + (z - y) * (u - p) / (q - p)
                            volume += (hi - lo) * (at(lo) + at(hi)) / 2
                            covered += hi - lo
                    lines.append((text(t), text(v), a, b, gap, volume, covered / (b - a)))
    rows(("times", "values", "from", "to", "gap", "volume", "coverage"), lines)


def days():
    """Balances of local days: lines between hourly readings, days cut where the zone says."""
    rng = random.Random(14)
    start = datetime(2001, 1, 1, tzinfo=timezone.utc)
    lines = []
    for zone, n, step in (("UTC", 73, 60), ("America/St_Johns", 73, 60), ("Pacific/Auckland", 120, 60), ("Asia/Tokyo", 97, 30), ("UTC", 25, 60), ("UTC", 24, 60), ("UTC", 2, 30)):
        a, b = ([round(rng.uniform(0.1, 0.5), 3) for _ in range(n)] for _ in range(2))
        at = [start + timedelta(minutes=step * i) for i in range(n)]
        day = at[0].astimezone(ZoneInfo(zone)).date()
        difference = inflow = begins = 0.0
        place = 1
        while day <= at[-1].astimezone(ZoneInfo(zone)).date():
            after = day + timedelta(days=1)
            lo, hi = (datetime(d.year, d.month, d.day, tzinfo=ZoneInfo(zone)).astimezone(timezone.utc) for d in (day, after))
            into = out = 0.0
            for i in range(n - 1):
                p, q = max(lo, at[i]), min(hi, at[i + 1])
                if q > p:
                    share = [(t - at[i]) / (at[i + 1] - at[i]) for t in (p, q)]
                    mean = sum(share) / 2
                    into += (q - p).total_seconds() * (a[i] + (a[i + 1] - a[i]) * mean)
                    out += (q - p).total_seconds() * (b[i] + (b[i + 1] - b[i]) * mean)
            difference += place * (out - into)
            inflow += place * into
            begins += place * (lo - start).total_seconds() / 3600
            place, day = place + 1, after
        lines.append((text(a), text(b), step, zone, difference, inflow, begins))
    rows(("upstream", "downstream", "step", "zone", "difference", "inflow", "start"), lines)


def peaks():
    """How much higher the modelled peak is than the observed one."""
    rng = random.Random(220)
    lines = []
    for n in (3, 8, 30):
        a, b = ([round(rng.uniform(0.1, 2), 3) for _ in range(n)] for _ in range(2))
        lines.append((text(a), text(b), max(b) - max(a)))
    rows(("observed", "modelled", "rise"), lines)


TABLES = {
    "balance-days": days,
    "model-peaks": peaks,
    "volumes-between": volumes,
    "quality-far-neighbours": far_neighbours,
    "quality-odd-intervals": odd_intervals,
    "quality-mixed-days": mixed_days,
    "balance-ratios": ratios,
    "mann-kendall-equal": equal,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
