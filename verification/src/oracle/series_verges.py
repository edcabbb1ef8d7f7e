"""Close to the limits of rules over records: visits by the usual tolerances, readings that leap alone, days at the ends of the time
that is counted, corrections undone. Plain Python, no code in common with the library.

    python3 series_verges.py FOLDER

writes the tables visits-by-usual-tolerances, times-that-do-not-rise, lone-readings-near-limits, days-at-the-ends-of-time, days-with-their-edges,
arrays-not-taken, marked-arrays-not-taken, windows-not-taken, signals-between-ticks and corrections-undone, csv and descriptor, into the folder.
"""

import random
import sys
from datetime import datetime, timedelta
from fractions import Fraction as F

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "series_verges.py"


def visits():
    """The tolerance is the larger of a number and a share of what was read by hand; readings a quarter of an hour apart still tell."""
    rows = []
    for quantity, absolute, share in (("hand depth", F(6, 1000), F(2, 100)), ("hand velocity", F(5, 100), F(10, 100)), ("gauged flow", F(0), F(10, 100)), ("clock", F(60), F(0))):
        for hand in (F(11, 100), F(29, 100), F(31, 100), F(47, 100), F(53, 100), F(9, 10), F(2)):
            for part in (F(97, 100), F(103, 100), F(-97, 100), F(-103, 100)):
                tolerance = max(absolute, share * hand)
                monitor = hand + part * tolerance
                if quantity == "clock":
                    rows.append((quantity, float(60 * part + hand / 100), 0, 10, 60, int(abs(60 * part + hand / 100) > 60), 1))
                else:
                    rows.append((quantity, float(hand), float(monitor), 10, float(tolerance), int(abs(part) > 1), 1))
    for gap in (14.5, 14.99, 15, 15.01, 15.5, 30):
        rows.append(("hand depth", 0.4, 0.5, gap, 0.008, int(gap <= 15), int(gap <= 15)))
    write(FOLDER, PROGRAM, "visits-by-usual-tolerances", "figures read by hand close to the tolerances that are common practice",
          [("quantity", "text, what was read"), ("hand", "m, m/s, m3/s, or s that the clock is ahead"), ("monitor", "m, m/s or m3/s, what the monitor says"),
           ("gap", "min, between its readings"), ("tolerance", "as read, largest difference that is none"), ("beyond", "1, beyond it or not"),
           ("compared", "1, compared or not")],
          [("quantity", "text quantity"), ("hand", "hand"), ("monitor", "monitor"), ("gap_minutes", "gap")],
          [("tolerance", "visits.standard.tolerance"), ("beyond", "visits.standard.beyond"), ("compared", "visits.standard.compared")],
          rows, tolerance="1e-12 relative", reason="a product of two numbers, or a verdict")


def lone_readings():
    """Three readings tell: the middle one is off its neighbours by more than half of the larger, they are alike within a quarter of
    that, and the velocity moves by less than a fifth as much. Groups of seven readings, the fourth of which leaps."""
    rows = []
    for name, cases in (
            ("leap", [(own, 0.0, 0.0) for own in (0.47, 0.485, 0.497, 0.503, 0.512, 0.52, 0.535)]),
            ("still", [(0.8, ratio, 0.0) for ratio in (0.17, 0.188, 0.194, 0.198, 0.2015, 0.204, 0.208, 0.22)]),
            ("alike", [(0.7, 0.0, alike) for alike in (0.22, 0.236, 0.244, 0.249, 0.251, 0.256, 0.261, 0.28)])):
        times, depths, velocities, flags = [], [], [], []
        for own, ratio, alike in cases:
            # Neighbours m - e and m + e with e = alike * d / 2; the depth leaps up to m/(1 - own), d above m.
            m, c = 0.2, 0.6
            leap = m / (1 - own)
            e = alike * (leap - m) / 2
            group = [m] * 2 + [m - e, leap, m + e] + [m] * 2
            still = [c] * 3 + [c / (1 - ratio * own)] + [c] * 3
            for k in range(7):
                times.append(60 * (len(times) + 1))
                depths.append(round(group[k], 9))
                velocities.append(round(still[k], 9))
        for i in range(len(depths)):
            # The first is marked as suspect, so that the second has no neighbour before it.
            if i in (0, 1, len(depths) - 1):
                flags.append(2)
                continue
            off = [abs(depths[j] - (depths[j - 1] + depths[j + 1]) / 2) if 0 < j < len(depths) - 1 else 0 for j in (i - 1, i, i + 1)]
            if off[1] <= 0.05:
                flags.append(1)
            elif max(off) > off[1]:
                flags.append(2)
            else:
                a, b = depths[i - 1], depths[i + 1]
                moved = abs(depths[i] - (a + b) / 2) / max(depths[i], (a + b) / 2)
                others = [abs(velocities[i] - velocities[j]) / max(velocities[i], velocities[j]) for j in (i - 1, i + 1)]
                flags.append(4 if moved > 0.5 and min(others) < 0.2 * moved and abs(b - a) <= off[1] / 4 else 1)
        assert flags.count(4) >= 3, name
        for way in ("whole", "arriving", "cut"):
            rows.append((way, text(times), text(depths), text(velocities), sum(k * f for k, f in enumerate(flags, 1))))
    write(FOLDER, PROGRAM, "lone-readings-near-limits", "depths that leap alone, each of the three limits closely missed and met",
          [("way", "text, how the record is given"), ("times", "s, times"), ("depths", "m, readings"), ("velocities", "m/s, companions"), ("sum", "1, flags times places")],
          [("way", "text way"), ("times", "text times"), ("values", "text depths"), ("suspect", "word 0"), ("companions", "text velocities"), ("above", "0.05"), ("gap_seconds", "300")],
          [("sum", "quality.book.lone-reading")], rows, tolerance="0", reason="a sum of whole numbers")


def days_at_the_ends():
    """Nanoseconds in 64 bits end on 11 April 2262 and begin on 21 September 1677: the last and the first whole day."""
    rows = []
    for start, days in (("2262-04-09T00:00:00Z", 2), ("2262-04-10T06:00:00Z", 1), ("1677-09-22T00:00:00Z", 2)):
        late = 6 if start[11:13] == "06" else 0
        values = [F(3 + (7 * i) % 11, 10) for i in range(24 * days - late)]
        for day in range(days):
            first = max(0, 24 * day - late)
            end = min(24 * (day + 1) - late, len(values) - 1)
            total = sum((values[i] + values[i + 1]) / 2 * 3600 for i in range(first, end))
            rows.append((text(values), start, day, float(total), float(F(end - first, 24))))
    write(FOLDER, PROGRAM, "days-at-the-ends-of-time", "daily totals of the last and the first days that nanoseconds in 64 bits can count, in exact fractions",
          [("values", "rate per second, an hour apart"), ("start", "text, time of the first"), ("day", "1, day from 0"), ("total", "rate times s, integral over the day"),
           ("coverage", "1, part of the day that is covered")],
          [("values", "text values"), ("step_minutes", "60"), ("start", "text start"), ("zone", "word UTC"), ("day", "day")],
          [("total", "daily-total.measured"), ("coverage", "daily-total.coverage")], rows, tolerance="1e-12 relative", reason="rounding of sums")


def arrays():
    """Readings in arrays, whose times do not rise at some place, or one of which is no number that can be."""
    rows = []
    rising = [0, 60, 120, 180, 240]
    for place in range(1, 5):
        for moved in (rising[place - 1], rising[place - 1] - 1, rising[place - 1] + 1):
            times = [*rising[:place], moved, *rising[place + 1:]]
            rows.append((text(times), "1 2 3 2 1", int(moved <= rising[place - 1])))
    for count in (1, 2, 3):
        rows.append((text(rising[:count]), text([2] * count), 0))
    for place in range(5):
        for value, refused in (("Infinity", 1), ("-Infinity", 1), ("NaN", 0), ("1.7e300", 0)):
            rows.append((text(rising), " ".join(value if i == place else "1" for i in range(5)), refused))
    write(FOLDER, PROGRAM, "arrays-not-taken", "readings in arrays that are no series",
          [("times", "s, times"), ("values", "1, readings"), ("refused", "1, 1 if refused")],
          [("times", "text times"), ("values", "text values"), ("from", "0"), ("to", "240"), ("gap", "300")],
          [("refused", "refusal.volume.between.coverage")], rows, tolerance="0", reason="a verdict")
    codes = [0, 2, 2, 1, 2]
    rows = []
    for place in range(1, 5):
        for moved in (place - 1, place - 2, place):
            minutes = [*range(place), moved, *range(place + 1, 5)]
            rows.append((text(minutes), text(codes), "1 2 3 2 1", int(moved < place)))
    for place in range(5):
        for value, code, refused in (("Infinity", 0, 1), ("-Infinity", 1, 1), ("Infinity", 5, 1), ("NaN", 0, 1), ("NaN", 4, 1), ("NaN", 5, 0), ("3", 5, 1), ("-1.7e300", 4, 0), ("1.7e300", 0, 0)):
            rows.append((text(range(5)), " ".join(str(code) if i == place else "0" for i in range(5)), " ".join(value if i == place else "1" for i in range(5)), refused))
    write(FOLDER, PROGRAM, "marked-arrays-not-taken", "readings in arrays with their qualities, whose times do not rise at some place, or where one is no number that can be or goes ill with its quality",
          [("minutes", "min, times"), ("qualities", "1, codes, 5 for a missing one"), ("values", "1, readings"), ("refused", "1, 1 if refused")],
          [("start", "word 2001-01-01T00:00:00Z"), ("minutes", "text minutes"), ("qualities", "text qualities"), ("values", "text values"), ("zone", "word UTC"), ("day", "0")],
          [("refused", "refusal.quality.mixed-day.usable")], rows, tolerance="0", reason="a verdict")
    rows = []
    for half in (1, 3):
        for count in (2 * half + 1, 2 * half + 4):
            for place in (0, half, count - 1):
                for value, refused in (("Infinity", 1), ("-Infinity", 1), ("1.7e300", 0)):
                    rows.append((" ".join(value if i == place else "1" for i in range(count)), half, refused))
    write(FOLDER, PROGRAM, "windows-not-taken", "values for a rolling median, one of which is no number that can be",
          [("values", "1, values"), ("half", "1, half width"), ("refused", "1, 1 if refused")],
          [("values", "text values"), ("half", "half"), ("reading", "half")],
          [("refused", "refusal.change.rolling-median")], rows, tolerance="0", reason="a verdict")


def days_with_edges():
    """Records that end a hair before, at and after midnight; readings that hold to there; gaps closely met and missed. In ns."""
    hour, day = 3600 * 10**9, 86400 * 10**9
    epoch = datetime(2001, 1, 1)
    rows = []

    def row(start, step, values, between, gap, least, zone=0, begin=epoch):
        known = [(start + step * i, v) for i, v in enumerate(values) if v is not None]
        far = gap if gap else step * 3 // 2
        ends = [start + step * (len(values) - 1)]
        if between == "steps":
            pieces = [(t, t + step, v, v) for t, v in known]
            ends.append(start + step * len(values) - 1)
        elif between == "hold":
            pieces = [(t, min([t + far] + [u for u, _ in known if u > t]), v, v) for t, v in known]
            ends += [b - 1 for _, b, _, _ in pieces]
        else:
            pieces = [(a, b, v, w) for (a, v), (b, w) in zip(known, known[1:]) if b - a <= far]
        local = zone * hour
        first, last = (start + local) // day, (max(ends) + local) // day
        sums, shares = [], []
        for d in range(first, last + 1):
            low, high = d * day - local, (d + 1) * day - local
            total, covered = F(0), 0
            for a, b, v, w in pieces:
                f, g = max(a, low), min(b, high)
                if f < g:
                    at = lambda t: v + (w - v) * F(t - a, b - a)
                    total += (at(f) + at(g)) / 2 * F(g - f, 10**9)
                    covered += g - f
            sums.append(total)
            shares.append(F(covered, day))
        seconds, rest = divmod(start, 10**9)
        stamp = f"{(begin + timedelta(seconds=seconds)).isoformat()}.{rest:09d}Z"
        rows.append((text([-9999 if v is None else v for v in values]), F(step, 60 * 10**9).__float__(), stamp, "UTC" if zone == 0 else f"UTC{zone:+03d}:00", between, gap / 60e9, float(least),
                     len(sums), *(float(sum(i * v for i, v in enumerate(part, 1))) for part in (sums, shares, [s >= least for s in shares]))))

    readings = [F(3 + (7 * i) % 11, 10) for i in range(60)]
    for hair in (-1, 0, 1):
        for between in ("steps", "hold", "line"):
            # The steps end at midnight; so does the last of those that are joined.
            row(20 * hour + hair, hour, readings[:4], between, hour, F(1, 9))
            row(20 * hour + hair, hour, readings[:5], between, 0, F(1, 8))
            row(19 * hour + hair, hour, [*readings[:28], None], between, 0, F(9, 10))
            row(17 * hour + hair, 2 * hour, readings[:14], between, 0, F(11, 12), zone=-3)
        # The last one holds to midnight, that of the day after too.
        for gap in (2 * hour, 26 * hour, 50 * hour):
            row(18 * hour, hour, readings[:5], "hold", gap + hair, F(1, 4))
            row(18 * hour, hour, [*readings[:5], None, None], "hold", gap + hair, F(1, 4))
        # Readings two steps apart are joined, or hold, if the gap is no shorter.
        for between in ("hold", "line"):
            row(2 * hour, hour, [*readings[:9], None, *readings[9:14], None, None, readings[3]], between, 2 * hour + hair, F(1, 2))
        row(0, hour, readings[:24], "steps", 0, 1 + F(min(hair, 0), 20))
    for known in (21, 22):
        for least in (F(85, 100), F(9, 10), F(92, 100), F(0), F(1)):
            row(0, hour, [*readings[:known], *[None] * (24 - known), *readings[:5]], "steps", 0, least)
    for least in (F(86, 96), F(9, 10), F(91, 100)):
        row(0, 144 * hour // 100, [None if i in (3, 12) else readings[i] for i in range(20)][:15] + [None, None], "steps", 0, least)
    # What would hold beyond the end of time is left out.
    for gap in (21 * hour, 3 * hour):
        row(0, hour, readings[:3], "hold", gap, F(1, 10), begin=datetime(2262, 4, 10))
    write(FOLDER, PROGRAM, "days-with-their-edges", "daily totals of records that end close to midnight, with gaps, in exact fractions",
          [("values", "rate per second, -9999 for none"), ("step", "min, step"), ("start", "text, time of the first"), ("zone", "text, zone"), ("between", "text, what lies between"), ("gap", "min, longest gap, 0 for the usual one"),
           ("least", "1, least coverage"), ("days", "days"), ("measured", "integrals times places"), ("coverage", "coverages times places"), ("complete", "complete days, their places summed")],
          [("values", "text values"), ("step_minutes", "step"), ("start", "text start"), ("zone", "text zone"), ("between", "text between"), ("gap_minutes", "gap"), ("least", "least")],
          [(n, f"daily-totals.{n}") for n in ("days", "measured", "coverage", "complete")], rows, tolerance="1e-12 relative or 1e-12", reason="rounding of sums")


def ticks():
    """A minute without reading is a tick: it tells of silence, and of nothing else. Limits 2 % below and above whole minutes."""
    rows = []
    for pattern in ([3, *[None] * 9], [2.5, 3, None, None, None, 3, *[None] * 9], [None, None, 3, 3, 3, None, 3, 3, None, 3, 3, 3], [None] * 4):
        for kind, unit in (("silence", 60), ("unchanged", 60), ("value", 1), ("bad", 0.5)):
            for share in (0.98, 1.02):
                for whole, delay in ((0.01, 0), (1, 0), (3, 0), (3, 1), (2, 3)):
                    limit, first, since, last, changed = unit * whole * share, -1, None, None, None
                    for t, v in enumerate(pattern):
                        if v is None:
                            if kind != "silence" or last is None:
                                continue
                            signal = 60 * (t - last[0])
                        else:
                            changed = changed if last and last[1] == v else t
                            last = (t, v)
                            signal = {"silence": 0, "unchanged": 60 * (t - changed), "value": v, "bad": 0}[kind]
                        since = (t if since is None else since) if signal > limit else None
                        if since is not None and t - since >= delay:
                            first = t
                            break
                    rows.append((text([-9999 if v is None else v for v in pattern]), kind, limit, delay, first))
    write(FOLDER, PROGRAM, "signals-between-ticks", "when four signals first pass a limit where minutes without reading are told of",
          [("values", "as they are, readings a minute apart, -9999 for a tick"), ("kind", "text, signal"), ("limit", "as the signal, in seconds for unchanged and silence"), ("delay", "min, on-delay"),
           ("first", "min, when the alarm is on first; -1 for never")],
          [("values", "text values"), ("kind", "text kind"), ("limit", "limit"), ("on_delay_minutes", "delay"), ("base", "0"), ("slope", "0"), ("ticks", "1")],
          [("first", "alarm.signal-first")], rows, tolerance="0", reason="whole minutes")


def corrections_undone():
    """Offsets and factors in the order of their list, each from a minute to before another; some of them left out."""
    rng = random.Random(2711)
    rows = []
    for undone in ([1], [2], [4], [5], [1, 5], [5, 3], [4, 5, 2], [1, 2, 3, 4], [3, 3]):
        values = [F(rng.randint(20, 90), 100) for _ in range(8)]
        listed = []
        for k in range(5):
            first = rng.randint(0, 4)
            listed.append((rng.choice(["offset", "factor"]), first, rng.randint(first + 2, 9), F(rng.randint(5, 40), 20)))
        after = list(values)
        for number, (kind, first, end, by) in enumerate(listed, 1):
            if number not in undone:
                after = [(v + by if kind == "offset" else v * by) if first <= i < end else v for i, v in enumerate(after)]
        given = ";".join(f"{kind} {first} {end} {float(by)}" for kind, first, end, by in listed)
        for i in (1, 3, 4, 6):
            rows.append((text(values), given, text(undone), i, float(after[i])))
    write(FOLDER, PROGRAM, "corrections-undone", "readings after corrections of which some are undone, in exact fractions",
          [("values", "1, readings a minute apart"), ("corrections", "text, corrections in minutes"), ("without", "1, numbers of those undone"), ("reading", "1, which reading"),
           ("value", "1, the reading as the others leave it")],
          [("values", "text values"), ("corrections", "text corrections"), ("without", "text without"), ("reading", "reading")],
          [("value", "correction.without")], rows, tolerance="1e-12 relative", reason="rounding of a few operations")


def times():
    """Of readings of a series the last one comes again, or one before it; after one reading, after a few, and after 16 and 64."""
    rows = []
    for count in (1, 2, 5, 15, 16, 17, 64):
        minutes = [3 * i for i in range(count)]
        for more, refused in ((minutes[-1], 1), (minutes[-1] - 1, 1), (minutes[-1] + 2, 0)):
            # A line needs some points.
            if refused or count > 4:
                rows.append((text(minutes + [more]), text([(7 * i) % 5 for i in range(count + 1)]), refused))
    write(FOLDER, PROGRAM, "times-that-do-not-rise", "readings whose time is not after the one before",
          [("minutes", "min, times"), ("values", "1, readings"), ("refused", "1, 1 if refused")], [("minutes", "text minutes"), ("values", "text values")],
          [("refused", "refusal.trend.theil-sen.of-series.slope")], rows, tolerance="0", reason="a verdict")


visits()
times()
lone_readings()
days_at_the_ends()
arrays()
days_with_edges()
ticks()
corrections_undone()
