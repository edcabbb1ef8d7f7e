"""Independent figures of annual returns, joined discharges, alarm signals, visits and spill volumes: plain Python, no code in
common with the library.

    python3 overflow_books.py FOLDER

writes the tables named below into the folder of the tables of the module timeseries; given that of hydraulics, spill-volume.csv into
it. Exact fractions where sums decide.
"""

import os
import random
import sys
import tempfile
from fractions import Fraction as F

random.seed(20261129)


def write(path, header, rows):
    with open(path, "w", newline="\n") as out:
        out.write(header + "\n")
        for row in rows:
            out.write(",".join(str(cell) for cell in row) + "\n")


def counted(spans):
    """Blocks of 12 h, then of 24 h, until one without discharge; spans in minutes, in order."""
    count, i = 0, 0
    spans = [list(s) for s in spans]
    while i < len(spans):
        start = spans[i][0]
        edge = start + 720
        count += 1
        while True:
            inside = [s for s in spans if s[0] < edge + 1440 and s[1] > edge]
            if not inside:
                break
            count += 1
            edge += 1440
        while i < len(spans) and spans[i][0] < edge:
            i += 1
    return count


def clipped(spans, a, b):
    return [(max(s, a), min(e, b)) for s, e in spans if min(e, b) > max(s, a)]


def returns(folder):
    """annual-returns.csv"""
    rows = []
    for case in range(40):
        t, parts = random.randrange(0, 600), []
        for _ in range(random.randrange(1, 9)):
            length = random.randrange(3, 900)
            volume = random.choice([None, F(random.randrange(1, 4000), 8)])
            parts.append((t, t + length, volume, random.random() < 0.7))
            t += length + random.choice([1, 30, 200, 800, 1500, 2200, 5000])
        a = random.randrange(0, 900)
        b = a + random.randrange(2000, 12000)
        seen, u = [], random.randrange(0, 500)
        while u < b:
            v = u + random.randrange(50, 3000)
            seen.append((u, v))
            u = v + random.choice([-40, 0, 60, 700])
        sure = clipped([(s, e) for s, e, _, c in parts if c], a, b)
        every = clipped([(s, e) for s, e, _, _ in parts], a, b)
        volume = F(0)
        without = cut = 0
        for s, e, v, c in parts:
            inside = clipped([(s, e)], a, b)
            if not inside:
                continue
            cut += inside[0] != (s, e)
            if c and v is None:
                without += 1
            if c and v is not None:
                volume += v * F(inside[0][1] - inside[0][0], e - s)
        covered = [any(x <= m < y for x, y in seen) for m in range(a, b)]
        text = ";".join("%d-%d%s%s" % (s, e, "" if v is None else ":%s" % float(v), "" if c else "?") for s, e, v, c in parts)
        hours = float(F(sum(e - s for s, e in sure), 60))
        observed = float(F(sum(covered), b - a))
        rows.append((text, ";".join("%d-%d" % s for s in seen), a, b, counted(sure), counted(every), hours, float(volume), len(every) - len(sure), without, cut, observed))
    write(folder + "/annual-returns.csv", "discharges,seen,from,to,spills,all,hours,volume,uncertain,without,cut,observed", rows)


def joins(folder):
    """discharges-joined.csv: minute by minute."""
    rows = []
    for case in range(40):
        spans = []
        for _ in range(random.randrange(1, 10)):
            s = random.randrange(0, 900)
            spans.append((s, s + random.randrange(1, 120)))
        gap = random.choice([0, 1, 5, 30])
        wet = set()
        for s, e in spans:
            wet.update(range(s, e))
        minutes = sorted(wet)
        count, total = 0, len(minutes)
        for i, m in enumerate(minutes):
            if i == 0 or m - minutes[i - 1] - 1 > gap:
                count += 1
            elif i:
                total += m - minutes[i - 1] - 1
        rows.append((";".join("%d-%d" % s for s in spans), gap, count, total))
    write(folder + "/discharges-joined.csv", "discharges,gap,count,minutes", rows)


def signals(folder):
    """alarm-signals.csv: the minute at which an alarm on each signal goes on first, -1 for never; -9999 is no reading."""
    rows = []
    for case in range(30):
        value, values = 10, []
        for i in range(60):
            value += random.choice([0, 0, 0, 1, -1, 2])
            values.append(-9999 if random.random() < 0.12 else value)
        base, slope, delay = 10, F(random.randrange(-2, 3), 20), random.choice([0, 2])
        limits = {"value": random.randrange(11, 20), "rate": F(random.randrange(1, 5), 2), "deviation": random.randrange(1, 9),
                  "unchanged": random.choice([120, 180, 300]), "silence": random.choice([60, 120]), "bad": F(1, 2)}
        for kind, limit in limits.items():
            onset = first = None
            last = changed = None
            for m, v in enumerate(values):
                usable = v != -9999
                signal = None
                if kind == "value":
                    signal = v if usable else None
                elif kind == "rate":
                    signal = F(v - last[1], m - last[0]) * 5 if usable and last else None
                elif kind == "deviation":
                    signal = v - (base + slope * m) if usable else None
                elif kind == "unchanged":
                    signal = ((m - changed) * 60 if last and v == last[1] else 0) if usable else None
                elif kind == "silence":
                    signal = 0 if usable or not last else (m - last[0]) * 60
                else:
                    signal = 0 if usable else 1
                if usable:
                    changed = changed if last and v == last[1] else m
                    last = (m, v)
                if signal is None:
                    continue
                onset = (m if onset is None else onset) if signal > limit else None
                if onset is not None and m - onset >= delay:
                    first = m
                    break
            rows.append((" ".join(str(v) for v in values), kind, float(limit), delay, base, float(slope), -1 if first is None else first))
    write(folder + "/alarm-signals.csv", "values,kind,limit,delay,base,slope,first", rows)


def visits(folder):
    """visits.csv: readings ten minutes apart, a straight line between them; -9999 where there is none near enough."""
    rows = []
    for case in range(40):
        values = [F(random.randrange(50, 400), 1000) for _ in range(8)]
        minute = F(random.randrange(0, 4200), 60)
        hand = F(random.randrange(50, 400), 1000) if case % 2 else values[int(minute // 10)] + F(random.randrange(-8, 9), 1000)
        i = int(minute // 10)
        monitor = values[i] + (values[min(i + 1, 7)] - values[i]) * (minute - 10 * i) / 10
        tolerance = max(F(6, 1000), hand * F(2, 100))
        difference = monitor - hand
        rows.append((" ".join(str(float(v)) for v in values), float(minute * 60), float(hand), float(difference), float(tolerance), int(abs(difference) > tolerance)))
    write(folder + "/visits.csv", "depths,second,hand,difference,tolerance,beyond", rows)


def spill_volumes(folder):
    """spill-volume.csv: Francis' weir in feet, Q = 3.33 L H^1.5, by trapezia two minutes apart."""
    foot = 0.3048
    rows = []
    for case in range(24):
        crest = random.randrange(200, 700) / 1000
        length = random.choice([0.4, 1.2, 3.0])
        lowest = random.choice([0, 0.02, 0.03])
        levels = [crest + random.randrange(-40, 160) / 1000 for _ in range(12)]
        a, b = random.randrange(0, 4), random.randrange(6, 12)

        def law(level, over=crest):
            return 3.33 * (length / foot) * max(0.0, (level - over) / foot) ** 1.5 * foot**3

        flows = [law(v) for v in levels]
        low = [0.0 if v >= crest + lowest else q for v, q in zip(levels, flows)]
        area = lambda q: sum(120 * (q[i] + q[i + 1]) / 2 for i in range(a, b))
        change = area([law(v, crest - 0.01) for v in levels]) / area(flows) - 1 if area(flows) > 0 else ""
        rows.append((" ".join("%.3f" % v for v in levels), crest, length, lowest, 2 * a, 2 * b, area(flows), area(low), change))
    write(folder + "/spill-volume.csv", "levels,crest,length,lowest,from,to,volume,below,change", rows)


def lengthened(folder):
    """discharges-widened.csv: what one reading saw lasts one interval, minute by minute, never into what comes next."""
    own = random.Random(7)
    rows = []
    for case in range(30):
        at, spans = 0, []
        for _ in range(own.randrange(2, 9)):
            at += own.randrange(1, 25)
            long = own.choice([0, 0, 1, 7, 40])
            spans.append((at, at + long))
            at += long
        every = own.choice([2, 5, 15])
        starts = {s for s, _ in spans}
        for k, (begin, end) in enumerate(spans):
            minute = begin
            while minute < end or end == begin and minute < begin + every and not (minute > begin and minute in starts):
                minute += 1
            rows.append((";".join("%d-%d" % s for s in spans), every, k, minute - begin))
    write(folder + "/discharges-widened.csv", "discharges,every,number,minutes", rows)


def main(folder):
    is_hydraulics = os.path.basename(os.path.abspath(folder)) == "hydraulics"
    with tempfile.TemporaryDirectory() as aside:
        # All draw from one row of random numbers, so the first five are made for the last, too.
        first = aside if is_hydraulics else folder
        returns(first)
        joins(first)
        signals(first)
        visits(first)
        lengthened(first)
    if is_hydraulics:
        spill_volumes(folder)


main(sys.argv[1])
