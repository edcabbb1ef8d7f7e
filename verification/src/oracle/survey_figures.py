"""Figures of a survey's books: common totals, overflow returns, alarm figures, profiles, calendars; plain Python, nothing in common.

    python3 survey_figures.py ../main/resources/dev/runnel/verification/tables/timeseries
"""

import datetime as dt
import random
import statistics
import sys
from fractions import Fraction
from zoneinfo import ZoneInfo

from own_tables import text, write

FOLDER = sys.argv[1]
PROGRAM = "survey_figures.py"
NAN = float("nan")
DAY = 1440


def table(*args, **more):
    write(FOLDER, PROGRAM, *args, **more)


def common():
    rng = random.Random(1)
    rows = []
    for k in range(6):
        froms = [rng.randrange(0, 6) for _ in range(3)]
        records = [[NAN if rng.random() < 0.1 else rng.randrange(0, 30) / 4 * (1.4 if i == k % 3 else 1) for _ in range(40)] for i in range(3)]
        start, end = max(froms), min(f + 40 for f in froms)
        good = [t for t in range(start, end) if all(records[i][t - froms[i]] == records[i][t - froms[i]] for i in range(3))]
        totals = [sum(records[i][t - froms[i]] for t in good) for i in range(3)]
        ratios = [totals[i] / statistics.median(totals[:i] + totals[i + 1:]) for i in range(3)]
        far = sum(1 for r in ratios if abs(r - 1) > 0.2)
        rows.append([*map(text, records), *froms, len(good), totals[1], ratios[0], ratios[2], 0.2, far])
    table("common-totals", "totals of three records over their common time, plain Python",
          [("a", "first"), ("b", "second"), ("c", "third"), ("fa", "steps, begin"), ("fb", "steps, begin"), ("fc", "steps, begin"), ("steps", "steps"), ("total", "total of the second"),
           ("ratio", "first over the others"), ("last", "third over the others"), ("tolerance", "tolerance"), ("far", "records far off")],
          [("a", "text a"), ("b", "text b"), ("c", "text c"), ("a_from", "fa"), ("b_from", "fb"), ("c_from", "fc")],
          [("steps", "balance.common.steps"), ("total", "balance.common.total", "input.record = word b"), ("ratio", "balance.common.ratio", "input.record = word a"),
           ("last", "balance.common.ratio", "input.record = word c"), ("far", "balance.common.far", "input.tolerance = tolerance")], rows)


def ratios():
    rng = random.Random(2)
    rows = []
    for k in range(4):
        first = [rng.randrange(1, 40) / 8 for _ in range(24 * 7)]
        second = [v * (1.1 + 0.05 * (i // 24)) + rng.random() / 8 for i, v in enumerate(first)]
        for i in range(24 * 2 + 3, 24 * 2 + 10 + k):
            second[i] = NAN
        for i in range(24 * 5, 24 * 6):
            first[i] = 0.0
        days = []
        for d in range(7):
            a, b = first[24 * d:24 * d + 24], second[24 * d:24 * d + 24]
            if sum(1 for v in b if v == v) >= 0.9 * 24 and sum(a) > 0:
                days.append((sum(b) * 3600 / (sum(a) * 3600), sum(v * 3600 for v in b)))
        usual = statistics.median(r for r, _ in days)
        rows.append([text(first), text(second), len(days), usual, sum(v for _, v in days), 0.1, sum(1 for r, _ in days if abs(r / usual - 1) > 0.1)])
    table("volume-ratios", "daily volumes of two sites, plain Python", [("first", "hourly flow upstream"), ("second", "hourly flow downstream"), ("days", "days"), ("usual", "usual ratio"), ("volume", "m3, second"), ("tolerance", "tolerance"), ("far", "days far off")],
          [("first", "text first"), ("second", "text second")], [("days", "balance.ratios.days"), ("usual", "balance.ratios.usual"), ("volume", "balance.ratios.second"), ("far", "balance.ratios.far", "input.tolerance = tolerance")], rows)


def alarm_figures():
    rng = random.Random(5)
    rows = []
    for k in range(8):
        lists = []
        for _ in range(2):
            on, off, t = [], [], rng.randrange(0, 300)
            for _ in range(rng.randrange(10, 25)):
                length = Fraction(rng.choice([1, 1, 2, 20, 2000 if k % 3 == 0 else 30]), 10 if rng.random() < 0.5 else 1)
                on.append(Fraction(t))
                off.append(t + length)
                t = t + length + Fraction(rng.choice([1, 1, 3, 5, 900]), 5)
            lists.append((on, off))
        if k % 2:
            lists[0][1][-1] = None
        rows.append(alarm_row(lists, 2))

    def short(starts):
        return starts, [t + Fraction(1, 8) for t in starts]

    def evenly(first, count, last):
        return [first + Fraction(last * i, count - 1) for i in range(count)]

    quarter = Fraction(1, 4)
    # Nine, ten and eleven that begin within ten minutes, or in just that; the second alarm far away, or with one of them.
    for count in (9, 10, 11):
        for last in (10 - quarter, Fraction(10), 10 + quarter):
            starts = [Fraction(round(8 * t), 8) for t in evenly(100, count, last)]
            rows.append(alarm_row([short(starts), short([Fraction(2000)])], 2))
            rows.append(alarm_row([short(starts[:4] + starts[5:]), short([starts[4]])], 1))
    # Two floods that share alarms, and two apart.
    rows.append(alarm_row([short([Fraction(i) for i in range(40, 57)]), short([Fraction(i) + quarter for i in range(600, 625, 2)])], 3))
    rows.append(alarm_row([short([Fraction(300 + i, 1) * 3 / 4 for i in range(14)]), short([Fraction(700 + 2 * i, 1) * quarter for i in range(30)])], 1))
    # Three in a minute, or nearly; before the period, at its beginning, at its end.
    for apart in (Fraction(15, 16), Fraction(1), Fraction(17, 16)):
        for first in (Fraction(50), Fraction(-1, 2), -apart, Fraction(0), DAY - apart, DAY - apart / 2, DAY - apart / 4, Fraction(DAY)):
            rows.append(alarm_row([short([first, first + apart / 2, first + apart]), short([first + Fraction(30)])], 1))
    # A day long, or nearly; from before the period, beyond its end, still there.
    for length in (DAY - quarter, Fraction(DAY), DAY + quarter):
        for first in (Fraction(200), -quarter, -length / 2, -length, DAY - quarter, DAY + length / 2, 2 * DAY - length):
            rows.append(alarm_row([([first], [first + length]), ([first + 60], [None])], 2))
    performance(rows)


def alarm_row(lists, days):
    end = days * DAY
    starts = sorted(v for on, _ in lists for v in on if 0 <= v < end)
    most, flood = 0, set()
    for i, s in enumerate(starts):
        group = [j for j, v in enumerate(starts) if s <= v < s + 10 and j >= i]
        most = max(most, len(group))
        if len(group) >= 10:
            flood.update(group)
    chatter = standing = 0
    active = Fraction(0)
    for on, off in lists:
        for i, (a, b) in enumerate(zip(on, off)):
            stop = end if b is None else min(b, end)
            if max(a, 0) < stop:
                active += stop - max(a, 0)
                standing += stop - a > DAY
            if 0 <= a < end and i >= 2 and a - on[i - 2] <= 1:
                chatter += 1
    numbers = [text([float(v) if v is not None else NAN for v in part]) for on, off in lists for part in (on, off)]
    return [*numbers, days, len(starts) / days, most, len(flood), chatter, standing, float(active)]


def performance(rows):
    table("alarm-performance", "figures of two alarms over days, each activation looked at",
          [("on1", "min, first alarm"), ("off1", "min, its ends"), ("on2", "min, second alarm"), ("off2", "min, its ends"), ("days", "d, period"), ("perday", "1/d, activations"), ("most", "in ten minutes"),
           ("floods", "in floods"), ("chattering", "chattering"), ("standing", "standing"), ("active", "min, in alarm")],
          [("first_on", "text on1"), ("first_off", "text off1"), ("second_on", "text on2"), ("second_off", "text off2"), ("days", "days")],
          [("perday", "alarm.performance.per-day"), ("most", "alarm.performance.most"), ("floods", "alarm.performance.floods"), ("chattering", "alarm.performance.chattering"), ("standing", "alarm.performance.standing"), ("active", "alarm.performance.active")], rows, tolerance="1e-9 relative")


def quantile(values, p):
    values = sorted(values)
    place = p * (len(values) - 1)
    low = int(place)
    return values[low] if low + 1 == len(values) else values[low] + (place - low) * (values[low + 1] - values[low])


def profiles():
    rng = random.Random(6)
    rows = []
    step, slot = 120, 240
    # 2001-01-01 was a Monday: four weeks.
    values = [round(10 + 3 * ((i % 12) - 5) ** 2 / 10 + (4 if i // 12 % 7 >= 5 else 0) + rng.random(), 3) for i in range(28 * 12)]

    def slot_values(day, index):
        weekend = day % 7 >= 5
        # The mean of the readings of a day in the slot is one value of the day.
        days = [d for d in range(28) if (d % 7 >= 5) == weekend]
        return [statistics.mean(values[12 * d + 2 * index:12 * d + 2 * index + 2]) for d in days]

    week = sum(n * statistics.mean(statistics.mean(slot_values(d, s)) for s in range(6)) for d, n in ((0, 5), (5, 2))) / 7
    for minute, p in ((130, 0.2), (5 * DAY + 700, 0.75), (9 * DAY + 1439, 0.5), (13 * DAY + 245, 0.9), (16 * DAY, 0.35)):
        here = slot_values(minute // DAY, minute % DAY // slot)
        rows.append([text(values), step, slot, minute, p, statistics.mean(here), quantile(here, p), 17.5, 17.5 - quantile(here, 0.5), week, quantile(here, 0.5)])
    table("profile-questions", "means, quantiles and residuals of a profile of four weeks, plain Python",
          [("values", "readings"), ("step", "min, step"), ("slot", "min, slot"), ("minute", "min, when"), ("p", "probability"), ("mean", "mean"), ("quantile", "quantile"), ("reading", "a reading"), ("residual", "its residual"), ("week", "mean of the week"), ("median", "median")],
          [("values", "text values"), ("step_minutes", "step"), ("slot_minutes", "slot")],
          [("mean", "profile.mean", "input.minute = minute"), ("quantile", "profile.quantile", "input.minute = minute", "input.p = p"), ("residual", "profile.residual", "input.minute = minute", "input.value = reading"), ("week", "profile.mean-of-week"), ("median", "profile.expected", "input.minute = minute")], rows)
    # Two readings a day, each a slot of its own, so that the least and the greatest are readings.
    values = [round(5 + 2 * (i % 2) + (3 if i // 2 % 7 >= 5 else 0) + rng.random(), 3) for i in range(28 * 2)]
    rows = []
    for minute in (100, 9 * DAY + 719, 5 * DAY + 720, 12 * DAY + 10):
        day, half = divmod(minute // 720, 2)
        here = [values[2 * d + half] for d in range(28) if (d % 7 >= 5) == (day % 7 >= 5)]
        for lower, upper in ((0.0, 1.0), (0.05, 0.95), (0.25, 0.7), (0.4, 0.5), (0.5, 0.6)):
            low, high = quantile(here, lower), quantile(here, upper)
            by = [round(low - 0.001, 4), round(low + 0.001, 4), round(high - 0.001, 4), round(high + 0.001, 4)] + ([low, high] if lower == 0 else [])
            rows += [[text(values), minute, lower, upper, v, int(low <= v <= high)] for v in by]
    table("profile-bands", "readings just inside and outside of what is usual, plain Python",
          [("values", "readings"), ("minute", "min, when"), ("lower", "probability"), ("upper", "probability"), ("reading", "a reading"), ("inside", "1 if it is usual")],
          [("values", "text values"), ("step_minutes", "720"), ("slot_minutes", "720"), ("minute", "minute"), ("lower", "lower"), ("upper", "upper"), ("value", "reading")],
          [("inside", "profile.band.contains")], rows, tolerance="0", reason="yes or no")


def out_of_place(times):
    """Count of the lines, the first of them and how far it is ahead; the header is line 1."""
    step = statistics.median_high(b - a for a, b in zip(times, times[1:]) if b > a)

    def runs_on(k):
        return 0 < times[k] - times[k - 1] <= 1.5 * step

    found = []
    for a in range(1, len(times)):
        for b in range(a + 1, len(times)):
            run = times[a:b]
            steady = all(runs_on(k) for k in range(a + 1, b)) and not runs_on(a) and not runs_on(b)
            place = times[a - 1] + step
            if (steady and (max(run) < times[a - 1] or min(run) > times[b]) and abs(run[0] - place) >= 60
                    and abs(times[b] - place - (b - a) * step) <= 0.5 * step and abs(run[-1] - run[0] - (b - a - 1) * step) <= 0.5 * step):
                found.append((b - a, a + 2, run[0] - place))
    return (sum(f[0] for f in found), *found[0][1:]) if found else (0, "", "")


def quality():
    rows = []
    base = [15 * i for i in range(1200)]
    cases = [(base + extra, days) for extra, days in (([500 * DAY], 90), ([500 * DAY + i for i in range(9)], 90), ([500 * DAY + i for i in range(10)], 90), ([100 * DAY], 90), ([102.4 * DAY], 90), ([30 * DAY, 900 * DAY], 40))]
    # Nothing but pairs and single readings: the pairs are the largest pieces there are.
    cases.append(([100 * DAY * k + i for k in range(150) for i in range(1 + (k % 3 > 0))], 90))
    for times, days in cases:
        pieces = [[times[0]]]
        for a, b in zip(times, times[1:]):
            if b - a > days * DAY:
                pieces.append([])
            pieces[-1].append(b)
        big = max(len(p) for p in pieces)
        rows.append([text(times), days, sum(len(p) for p in pieces if len(p) < big and len(p) < 10 and len(p) * 100 < len(times))])
    table("stray-stamps", "readings far from all others, plain Python", [("times", "min, times"), ("days", "d, distance"), ("count", "set aside")], [("times", "text times"), ("days", "days")], [("count", "quality.stray.count")], rows)
    rows = []
    for run in (None, (40, 60, 1440), (40, 60, -1440), (12, 13, 525600), (30, 40, 59), (30, 40, 60), (30, 40, 40), (20, 80, 200), (1, 3, -99999), (70, 119, 300), (100, 120, 5000)):
        times = [5 * i for i in range(120)]
        for i in range(*run[:2]) if run else ():
            times[i] += run[2]
        rows.append([text(times), *out_of_place(times)])
    late = [5 * i for i in range(120)]
    late = late[:40] + late[60:80] + late[40:60] + late[80:]
    twice = [5 * i for i in range(60)] + [5 * i for i in range(30, 50)] + [5 * i for i in range(60, 120)]
    two = [5 * i + (2000 if 20 <= i < 25 else -3000 if 80 <= i < 90 else 0) for i in range(120)]
    gap = [5 * i + (50000 if i >= 70 else 0) for i in range(120)]
    jitter = [5 * i + [0, 1, -1, 2][i % 4] + (720 if 33 <= i < 57 else 0) for i in range(120)]
    rows += [[text(times), *out_of_place(times)] for times in (late, twice, two, gap, jitter)]
    table("displaced-stamps", "runs of lines of another time, by trying all of them, plain Python", [("times", "min, stamps in the order of the lines"), ("lines", "lines"), ("first", "first line"), ("ahead", "min, how far ahead")],
          [("times", "text times")], [("lines", "csv.displaced.lines"), ("first", "csv.displaced.first-line"), ("ahead", "csv.displaced.ahead")], rows)
    rng = random.Random(8)
    rows = []
    for true in (1000, 100, 1 / 0.0254, 1 / 0.3048, 0.001, 0.01, 3600, 86400, 1 / 25.4, 25.4, 0.0254, 0.3048):
        values = [round((0.93 + 0.07 * rng.random()) * true, 9) for _ in range(19)] + [0.5 * true]
        rows.append([text(values), 0.925, 1.002, 1 / true, 0.95])
    # Just more than nine of ten bring a factor, or keep one away.
    most = [round((0.93 + 0.07 * rng.random()) * 1000, 9) for _ in range(23)] + [500, 400]
    rows += [[text(most), 0.925, 1.002, 0.001, 0.92], [text(v / 1000 for v in most), 0.925, 1.002, 0, ""]]
    table("unit-suspicions", "factors that bring readings into their range, plain Python", [("values", "readings"), ("low", "lowest"), ("high", "highest"), ("factor", "factor"), ("inside", "share inside then")],
          [("values", "text values"), ("lowest", "low"), ("highest", "high")], [("factor", "quality.unit-factor"), ("inside", "quality.unit-inside")], rows)
    rows = []
    for zone, first in (("Europe/London", dt.datetime(2001, 3, 24, tzinfo=dt.timezone.utc)), ("UTC", dt.datetime(2001, 1, 1, tzinfo=dt.timezone.utc))):
        origin = dt.datetime(2001, 1, 1, tzinfo=dt.timezone.utc)
        base = int((first - origin).total_seconds() // 60)
        # The last reading of the second record is the only one of its day.
        times = [base + 10 * i for i in range(0, 330 if base else 289) if not 180 <= i < 200]
        values = [NAN if i % 31 == 0 else float(i % 7) for i in range(len(times))]
        dates = sorted({(origin + dt.timedelta(minutes=t)).astimezone(ZoneInfo(zone)).date() for t in times})
        for k, date in enumerate(dates):
            a = dt.datetime.combine(date, dt.time(), ZoneInfo(zone))
            b = dt.datetime.combine(date + dt.timedelta(days=1), dt.time(), ZoneInfo(zone))
            a, b = ((each.astimezone(dt.timezone.utc) - origin).total_seconds() / 60 for each in (a, b))
            usable = sum(1 for t, v in zip(times, values) if a <= t < b and v == v)
            # A usable reading holds to the next one, at most 1.5 steps; what the last one holds is left out here.
            good = [t for t, v in zip(times, values) if v == v]
            held = sum(max(0, min(u, t + 15, b) - max(t, a)) for t, u in zip(good, good[1:]))
            whole = b <= times[-1]
            rows.append([text(times), text(values), zone, k, int(round((b - a) / 10)), usable, held / (b - a) if whole else ""])
    table("good-days", "readings of local days, plain Python", [("times", "min, times"), ("values", "readings"), ("zone", "zone"), ("day", "day"), ("expected", "expected"), ("usable", "usable"), ("share", "share of the day, but for the last")],
          [("times", "text times"), ("values", "text values"), ("zone", "text zone"), ("day", "day")], [("expected", "quality.good-day.expected"), ("usable", "quality.good-day.usable"), ("share", "quality.good-day.share")], rows)


def small():
    table("infiltration-by-night", "infiltration from a night flow", [("flow", "m3/s, night flow"), ("share", "share"), ("foul", "m3/s, foul flow"), ("by", "m3/s, by share"), ("less", "m3/s, less foul flow")], [("flow", "flow")],
          [("by", "infiltration.by-share", "input.share = share"), ("less", "infiltration.less-foul", "input.foul = foul")],
          [[0.0123, 0.9, 0.004, 0.01107, 0.0083], [0.05, 0.75, 0.02, 0.0375, 0.03], [0.003, 0.6, 0.0034, 0.0018, 0.0]])
    rows = []
    values = [((i * 7) % 23) / 4 for i in range(72)]
    for i in (30, 31):
        values[i] = NAN
    for day in range(3):
        part = [v for v in values[24 * day:24 * day + 24] if v == v]
        rows.append([text(values), day, sum(part) / len(part) * 86400])
    table("daily-flows", "flow of days, those with two hours missing filled by their mean", [("values", "m3/s, hourly"), ("day", "day"), ("flow", "m3/d, flow")], [("values", "text values"), ("day", "day")], [("flow", "infiltration.daily-flow")], rows)
    rows = []
    for times in ([0, 5, 10, 15, 90], [0, 1, 3, 6, 10], [2, 4, 9.5]):
        rows.append([text(times), statistics.median(b - a for a, b in zip(times, times[1:]))])
    table("usual-steps", "median of the steps", [("times", "min, times"), ("step", "min, usual step")], [("times", "text times")], [("step", "series.usual-step")], rows)
    rows = []
    times = [0, 7, 15, 22, 30, 41, 50, 58, 66, 75]
    values = [1, 4, 2, 6, 3, 3, 8, 2, 5, 1]

    def integral(a, b):
        """Each reading holds until the next."""
        return sum(v * max(0, min(b, u) - max(a, t)) for t, v, u in zip(times, values, times[1:]))

    for origin in (3, 10):
        first = origin - 20 * (-(-origin // 20))
        for k in range(1, 3):
            a = first + 20 * k
            rows.append([text(times), text(values), 20, origin, k, integral(a, a + 20) / 20])
    table("resampled-from-origin", "means of steps from another origin, each reading holding to the next", [("times", "min, times"), ("values", "readings"), ("length", "min, step"), ("origin", "min, origin"), ("k", "place"), ("mean", "mean")],
          [("times", "text times"), ("values", "text values"), ("step_minutes", "length"), ("origin", "origin"), ("step", "k")], [("mean", "resample.from-origin")], rows)
    rows = []
    for unit, si in (("mm", Fraction(1, 1000)), ("cm", Fraction(1, 100)), ("in", Fraction(254, 10000)), ("ft", Fraction(3048, 10000)), ("ft/s", Fraction(3048, 10000)),
                     ("L/s", Fraction(1, 1000)), ("m3/h", Fraction(1, 3600)), ("mm/s", Fraction(1, 1000)), ("cm/s", Fraction(1, 100)), ("m3/d", Fraction(1, 86400)), ("ML/d", Fraction(1000, 86400)),
                     ("ft3/s", Fraction(3048, 10000) ** 3), ("US gal/min", 231 * Fraction(254, 10000) ** 3 / 60), ("%", Fraction(1, 100))):
        for value in (Fraction(123, 4), Fraction(7, 8)):
            rows.append([unit, float(value), float(value * si), float(value / si)])
    table("units-to-si", "units by exact fractions", [("unit", "unit"), ("value", "value"), ("si", "in SI"), ("back", "from SI")], [("unit", "text unit"), ("value", "value")], [("si", "unit.to-si"), ("back", "unit.from-si")], rows, tolerance="1e-14 relative")


for each in (common, ratios, alarm_figures, profiles, quality, small):
    each()
