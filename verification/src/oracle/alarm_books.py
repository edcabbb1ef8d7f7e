"""Independent computation of threshold alarms over records with gaps: Python, standard library only, no code in common with the library.

    python3 alarm_books.py NAME > NAME.csv

writes one of the tables named in TABLES below. Words of ANSI/ISA-18.2 and IEC 62682. It looks for whole stretches of readings: an
alarm begins with the first of a run of readings beyond the limit that lasts the on-delay and holds no gap too long; it ends with the
first run of readings back by the deadband that lasts the off-delay and holds no such gap.
"""

import random
import sys

NONE = -9999


def alarms(times, values, high, limit, deadband, on, off, gap):
    sign = 1 if high else -1
    usable = [(t, sign * v) for t, v in zip(times, values) if v != NONE]
    limit = sign * limit
    apart = lambda i: gap > 0 and usable[i][0] - usable[i - 1][0] > gap  # before reading i
    found, i, n = [], 0, len(usable)

    def run(start, test):
        """Index after the last reading of a run that begins here."""
        end = start
        while end < n and test(usable[end][1]) and (end == start or not apart(end)):
            end += 1
        return end

    while i < n:
        if not usable[i][1] > limit:
            i += 1
            continue
        end = run(i, lambda v: v > limit)
        due = next((k for k in range(i, end) if usable[k][0] - usable[i][0] >= on), None)
        if due is None:
            i = end
            continue
        k, cleared, returned = due + 1, None, None
        while k < n:
            if usable[k][1] > limit - deadband:
                k += 1
                continue
            back = run(k, lambda v: v <= limit - deadband)
            last = next((m for m in range(k, back) if usable[m][0] - usable[k][0] >= off), None)
            if last is not None:
                cleared, returned = k, last
                break
            k = back
        last = n - 1 if returned is None else returned
        peak = max(v for _, v in usable[i : last + 1])
        peak_time = next(t for t, v in usable[i : last + 1] if v == peak)
        dark = sum(usable[m][0] - usable[m - 1][0] for m in range(due + 1, last + 1) if apart(m))
        found.append((usable[i][0], usable[due][0], sign * peak, peak_time, -1 if cleared is None else usable[cleared][0],
                      -1 if returned is None else usable[returned][0], dark, -1 if cleared is None else usable[cleared][0] - usable[i][0]))
        i = last + 1
    gaps = sum(1 for m in range(1, n) if apart(m))
    return found, n, len(times) - n, gaps


def books():
    print("minutes,values,high,limit,deadband,on,off,gap,way,onset,activation,peak,peak_time,cleared,returned,unobserved,length,readings,unusable,gaps")
    rng = random.Random(1811)
    for row in range(42):
        times, t = [], 0
        for _ in range(40):
            times.append(t)
            t += rng.choice((1, 1, 1, 1, 2, 2, 3, 7, 12))
        level, values = 1.0, []
        for _ in times:
            level += rng.choice((-0.15, -0.1, 0, 0.1, 0.15)) - 0.2 * (level - 1)
            values.append(NONE if rng.random() < 0.1 else round(level, 2))
        high, limit = int(rng.random() < 0.6), 1.02
        deadband = rng.choice((0, 0.11, 0.16))
        on, off, gap = rng.choice((0, 2, 4)), rng.choice((0, 2, 4)), rng.choice((0, 2, 3, 6, 11))
        found, readings, unusable, gaps = alarms(times, values, high, limit, deadband, on, off, gap)
        sums = [sum((i + 1) * f[k] for i, f in enumerate(found)) for k in range(8)]
        texts = [" ".join(str(v) for v in column) for column in (times, values)]
        print(",".join(texts + [str(v) for v in (high, limit, deadband, on, off, gap, ("whole", "arriving", "cut")[row % 3])]
                       + [f"{v:.10g}" for v in sums] + [str(readings), str(unusable), str(gaps)]))


def limits():
    """When six signals first pass a limit 2 % below and 2 % above what they reach; a minute between readings."""
    print("values,kind,limit,delay,base,slope,first")
    rows = []
    for minutes in (1, 2, 5, 11):
        for share in (0.98, 1.02):
            first = minutes if share < 1 else minutes + 1
            rows.append((["3"] * 14, "unchanged", 60 * minutes * share, 0, 0, 0, first))
            rows.append((["3"] + [str(NONE)] * 13, "silence", 60 * minutes * share, 0, 0, 0, first))
            rows.append((["2.5", "3", "3.5"] + ["3.5"] * 12, "unchanged", 60 * minutes * share, 0, 0, 0, first + 2))
            rows.append((["2.5", "3", str(NONE)] + ["3"] * 3 + [str(NONE)] * 13, "silence", 60 * minutes * share, 0, 0, 0, 2 if first == 1 else first + 5))
    for share, first in ((0.98, 3), (1.02, -1)):
        rows.append((["1", "1.1", "1.2", "1.5", "1.6"], "rate", 1.5 * share, 0, 0, 0, first))
        rows.append((["1", "1.1", "1.2", "1.6", "1.5"], "deviation", 0.5 * share, 0, 1, 0.1 / 3, first))
        rows.append((["1", "2", "3", "4", "3"], "value", 4 * share, 0, 0, 0, first))
        rows.append((["1", "2", "3", str(NONE), "3"], "bad", 1 * share, 0, 0, 0, first))
    for values, kind, limit, delay, base, slope, first in rows:
        print(",".join((" ".join(values), kind, f"{limit:.12g}", str(delay), f"{base:.12g}", f"{slope:.12g}", str(first))))


def refused():
    """Times that do not increase, in arrays."""
    print("minutes,values,refused")
    for minutes, bad in (("0 1 2 3 4", 0), ("0 1 2 2 3", 1), ("0 0", 1), ("0 3 1", 1), ("0 1 2 3 4 5 4", 1), ("5 6 7 8 7.9", 1), ("-3 -2 -1", 0), ("7", 0)):
        print(",".join((minutes, " ".join(["0.5"] * len(minutes.split())), str(bad))))


TABLES = {"refusals-of-alarms": refused, "alarm-gaps": books, "alarm-signal-limits": limits}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
