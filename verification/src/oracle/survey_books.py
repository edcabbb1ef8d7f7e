"""Independent figures of corrections, overflow counts, balances and night flows: plain Python, no code in common with the library.

    python3 survey_books.py FOLDER

writes the tables named below into the folder of the tables of the module timeseries. Exact fractions where sums decide.
"""

import sys
from fractions import Fraction as F


def write(path, header, rows):
    with open(path, "w", newline="\n") as out:
        out.write(header + "\n")
        for row in rows:
            out.write(",".join(str(cell) for cell in row) + "\n")


def corrections(folder):
    """correction-values.csv: one list of corrections on thirteen readings, a minute apart."""
    values = [F(n, 100) for n in (20, 21, 23, 22, 25, 24, 27, 31, 30, 28, 26, 25, 24)]
    steps = [
        ("drift", F(2), F(9), F(1, 50), F(-3, 50)),
        ("offset", F(0), F(5), F(1, 100), None),
        ("factor", F(4), F(11), F(21, 20), None),
        ("shift", F(10), F(20), F(-45), None),
        ("drift", F(19, 2), F(13), F(0), F(1, 10)),
    ]
    times = [F(i) for i in range(len(values))]
    now = list(values)
    for kind, start, end, a, b in steps:
        for i, t in enumerate(list(times)):
            if not start <= t < end:
                continue
            if kind == "offset":
                now[i] += a
            elif kind == "factor":
                now[i] *= a
            elif kind == "drift":
                now[i] += (a * (end - t) + b * (t - start)) / (end - start)
            else:
                times[i] = t + a / 60
    text = "; ".join(
        " ".join([kind] + [str(float(v)) for v in (start, end, a, b if b is not None else 0)]) for kind, start, end, a, b in steps
    )
    sample = " ".join(str(float(v)) for v in values)
    rows = [(sample, i, text, float(now[i]), float(times[i])) for i in range(len(values))]
    write(folder + "/correction-values.csv", "values,i,corrections,value,minute", rows)


def line_integral(values, step, start, end, gap):
    """Integral and covered time of a broken line through (i step, value), None for no value; times in minutes."""
    known = [(F(i * step), v) for i, v in enumerate(values) if v is not None]
    total, covered = F(0), F(0)
    for (t0, v0), (t1, v1) in zip(known, known[1:]):
        if t1 - t0 > gap:
            continue
        a, b = max(t0, start), min(t1, end)
        if a < b:

            def at(t):
                return v0 + (v1 - v0) * (t - t0) / (t1 - t0)

            total += (at(a) + at(b)) / 2 * (b - a) * 60
            covered += b - a
    return total, covered / (end - start)


def number(value):
    return "-9999" if value is None else str(float(value))


def balances(folder):
    """balance.csv: two sites upstream and one downstream with a hole in its record, travel times, at ten intervals."""
    step = 5
    first = [F(10 + abs((i * 7) % 23 - 11), 1000) for i in range(60)]
    second = [F(20 + abs((i * 5) % 31 - 15), 1000) for i in range(60)]
    down = [(first[max(0, i - 4)] + second[max(0, i - 9)]) * F(100 + i % 9, 100) for i in range(60)]
    down[41:43] = [None, None]
    gap = F(3 * step, 2)
    rows = []
    intervals = ((60, 120), (61, 119), (90, 180), (100, 150), (150, 240), (190, 230), (200, 215), (230, 290), (50, 293), (46, 52))
    for start, end in intervals:
        for u in ((F(1, 50), F(3, 100), F(1, 40)), (F(0), F(0), F(0)), (F(1, 10), F(1, 5), F(3, 20))):
            v, c = line_integral(down, step, F(start), F(end), gap)
            v1, c1 = line_integral(first, step, F(start - 20), F(end - 20), gap)
            v2, c2 = line_integral(second, step, F(start - 45), F(end - 45), gap)
            difference = v - v1 - v2
            variance = (u[0] * v1) ** 2 + (u[1] * v2) ** 2 + (u[2] * v) ** 2
            uncertainty = 2 * float(variance) ** 0.5
            coverage = min(c, c1, c2)
            within = abs(float(difference)) <= uncertainty
            verdict = 3 if coverage < F(9, 10) else 0 if within else 1 if difference > 0 else 2
            figures = [float(x) for x in u] + [float(difference), uncertainty, float(coverage), verdict]
            rows.append([start, end] + figures)
    write(folder + "/balance.csv", "start,end,u1,u2,u,difference,uncertainty,coverage,verdict", rows)
    record = [[number(v) for v in row] for row in zip(first, second, down)]
    write(folder + "/data/balance-record.csv", "first,second,down", record)


def daily_totals(folder):
    """daily-totals.csv: steps of 50 minutes over both changes of the clock, as a line and as steps that hold."""
    step = 50
    rows = []
    # The edges of local days in Europe/London 2026, in minutes from the start, written down by hand.
    # The last record is missing a reading at midnight: it opens a day of which nothing is known.
    for start, edges, count, missing in (
        ("2026-03-28T17:20:00Z", [-1040, 400, 1780, 3220], 52, 20),
        ("2026-10-24T17:20:00Z", [-1100, 340, 1840, 3280], 52, 20),
        ("2026-01-10T17:20:00Z", [-1040, 400, 1840], 9, 8),
    ):
        values = [F(1 + (i * 11) % 17, 10) for i in range(count)]
        values[missing] = None
        sample = " ".join(number(v) for v in values)
        for hold in (0, 1):
            last = count * step if hold else (count - 1) * step
            for day in range(len(edges) - 1):
                a, b = F(edges[day]), F(edges[day + 1])
                if a > last or hold and a == last:
                    continue
                if hold:
                    total, covered = F(0), F(0)
                    for i, v in enumerate(values):
                        lo, hi = max(a, F(i * step)), min(b, F((i + 1) * step))
                        if v is not None and lo < hi:
                            total += v * (hi - lo) * 60
                            covered += hi - lo
                    covered /= b - a
                else:
                    total, covered = line_integral(values, step, a, b, F(3 * step, 2))
                rows.append((sample, start, day, hold, float(total), float(covered)))
    write(folder + "/daily-totals.csv", "values,start,day,hold,total,coverage", rows)


def alarms(folder):
    """alarm-records.csv: alarms on random records a minute apart, found by looking at whole stretches of the record."""
    state = 12345

    def draw(n):
        nonlocal state
        state = (1103515245 * state + 12345) % 2**31
        return state // 65536 % n

    rows = []
    for case in range(40):
        values = [F(50 + draw(101), 100) for _ in range(40)]
        high = case % 2 == 0
        limit, band = F(1), F(draw(4) * 10, 100)
        on, off = draw(4), draw(4)
        x = values if high else [2 - v for v in values]
        found, i = [], 0
        while i < len(x):
            # An onset is the first of readings that all lie beyond for the on-delay.
            if i + on < len(x) and all(v > limit for v in x[i:i + on + 1]):
                start = i + on
                k = start + 1
                while k < len(x) and not (k + off < len(x) and all(v <= limit - band for v in x[k:k + off + 1])):
                    k += 1
                end = k + off if k < len(x) else None
                last = end if end is not None else len(x) - 1
                found.append((i, start, end, max(x[i:last + 1])))
                if end is None:
                    break
                i = end + 1
            else:
                i += 1
        active = sum((end if end is not None else len(x) - 1) - start for _, start, end, _ in found)
        peak = max((p for *_, p in found), default=F(0))
        if found and not high:
            peak = 2 - peak
        sample = " ".join(str(float(v)) for v in values)
        rows.append((sample, int(high), float(band), on, off, len(found), active, float(peak)))
    write(folder + "/alarm-records.csv", "values,high,deadband,on,off,count,active,peak", rows)


def night_flows(folder):
    """night-flows.csv: nights of an invented record each 15 minutes, about a change of the clock in Europe/London."""
    step = 15
    values = [F(30 + (i * 13) % 29 + 20 * ((i % 96 - 10) ** 2 % 47), 1000) for i in range(3 * 96)]
    sample = " ".join(number(v) for v in values)
    rows = []
    # Minutes from 2026-03-28T00:00Z: local days begin at 0, 1440 and (an hour was lost) 2820; 01:00 local of the 29th is
    # the moment of the change, so that the night from 00:30 to 05:00 is an hour shorter.
    for window in (60, 90):
        for night, (begin, end, day, next_day) in enumerate(((30, 300, 0, 1440), (1470, 1680, 1440, 2820))):
            means = []
            for i in range(len(values)):
                if i * step >= begin and i * step + window <= end:
                    total, covered = line_integral(values, step, F(i * step), F(i * step + window), F(3 * step, 2))
                    means.append(total / (window * 60))
            total, covered = line_integral(values, step, F(day), F(next_day), F(3 * step, 2))
            mean = total / (covered * (next_day - day) * 60)
            rows.append((sample, night, window, float(min(means)), float(min(means) / mean)))
    write(folder + "/night-flows.csv", "values,night,window,flow,share", rows)


def irregular():
    """Readings at odd minutes; None has no value."""
    times = [0, 2, 3, 7, 8, 11, 15, 16, 19, 26, 27, 30, 34, 39, 40, 41, 48, 49, 55, 58]
    values = [F((i * 37) % 41 - 7, 10) for i in range(len(times))]
    values[4] = values[11] = values[12] = None
    return times, values


def resampling(folder):
    """resampling.csv: steps of ten minutes, for each statistic and both ways between readings."""
    times, values = irregular()
    known = [(F(t), v) for t, v in zip(times, values) if v is not None]
    rows = []
    for gap in (F(5), F(8)):
        for between in ("hold", "linear"):
            for k in range(6):
                a, b = F(10 * k), F(10 * k + 10)
                integral, covered = F(0), F(0)
                for j, (t, v) in enumerate(known):
                    after = known[j + 1] if j + 1 < len(known) else None
                    if between == "hold":
                        end = t + gap if after is None else min(after[0], t + gap)
                        lo, hi = max(a, t), min(b, end)
                        if lo < hi:
                            integral += v * (hi - lo)
                            covered += hi - lo
                    elif after is not None and after[0] - t <= gap:
                        lo, hi = max(a, t), min(b, after[0])
                        if lo < hi:
                            middle = (lo + hi) / 2
                            integral += (v + (after[1] - v) * (middle - t) / (after[0] - t)) * (hi - lo)
                            covered += hi - lo
                inside = [v for t, v in known if a <= t < b]
                figures = {"mean": integral / covered} if covered else {}
                if inside:
                    figures.update(sum=sum(inside), maximum=max(inside), minimum=min(inside), last=inside[-1])
                for name, figure in figures.items():
                    rows.append((k, float(gap), between, name, float(figure), float(covered / 10)))
    write(folder + "/resampling.csv", "step,gap,between,statistic,value,coverage", rows)
    record = [[t, number(v)] for t, v in zip(times, values)]
    write(folder + "/data/irregular-record.csv", "minute,value", record)


def alignment(folder):
    """alignment.csv: the same readings asked at every minute, by each rule; -9999 where there is none."""
    times, values = irregular()
    known = {F(t): v for t, v in zip(times, values) if v is not None}
    rows = []
    for minute in range(60):
        t = F(minute)
        earlier = [u for u in known if u <= t]
        later = [u for u in known if u >= t]
        for limit in (F(2), F(7)):
            exact = known.get(t)
            held = known[max(earlier)] if earlier and t - max(earlier) <= limit else None
            line = exact
            if exact is None and earlier and later and min(later) - max(earlier) <= limit:
                lo, hi = max(earlier), min(later)
                line = known[lo] + (known[hi] - known[lo]) * (t - lo) / (hi - lo)
            rows.append([minute, float(limit)] + [number(v) for v in (exact, held, line)])
    write(folder + "/alignment.csv", "minute,limit,exact,held,line", rows)


def main(folder):
    corrections(folder)
    balances(folder)
    daily_totals(folder)
    alarms(folder)
    night_flows(folder)
    resampling(folder)
    alignment(folder)


main(sys.argv[1])
