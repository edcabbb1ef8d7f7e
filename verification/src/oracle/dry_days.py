"""Dry days by any rule, of records of any step in any zone, with steps missing: Python with exact seconds, no code in common.

    python3 dry_days.py FOLDER

writes dry-days-by-rule and dry-days-at-their-limit into the folder of the rainfall tables. A day's rain is that of the steps that begin on
it; it is known if no more time of it is missing than the rule allows. A rule asks for a run of dry days round the day, and for days
before that run with little rain: 1 dry, 0 not dry, -1 not known.
"""

import random
import sys
from datetime import date, datetime, timedelta, timezone
from zoneinfo import ZoneInfo

from own_tables import write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "dry_days.py"
START = datetime(2001, 1, 1, tzinfo=timezone.utc)


def days(depths, step, zone, allowed):
    """Date, depth and whether it is known, of each day that the record touches."""
    at = lambda d: datetime(d.year, d.month, d.day, tzinfo=ZoneInfo(zone)).timestamp() - START.timestamp()
    end = step * len(depths)
    day, found = (START.astimezone(ZoneInfo(zone))).date(), []
    while at(day) < end:
        low, high = at(day), at(day + timedelta(days=1))
        missing = max(0, 0 - low) + max(0, high - end)
        total = 0.0
        for i, depth in enumerate(depths):
            if depth is None:
                missing += max(0, min(high, step * (i + 1)) - max(low, step * i)) if step * i < high else 0
            elif low <= step * i < high:
                total += depth
        found.append((day, total, missing <= allowed))
        day += timedelta(days=1)
    return found


DRY, UNKNOWN, WET = 0, 1, 2


def verdicts(found, most, run, before, most_before):
    def one(i, limit):
        if not 0 <= i < len(found):
            return UNKNOWN
        return WET if found[i][1] > limit + 1e-9 else DRY if found[i][2] else UNKNOWN

    told = []
    for i in range(len(found)):
        best = WET
        for first in range(i - run + 1, i + 1):
            worst = max([one(k, most) for k in range(first, first + run)] + [one(k, most_before) for k in range(first - before, first)])
            best = min(best, worst)
        told.append(best)
    return told


def main():
    rng = random.Random(405)
    rows = []
    for step, zone, most, run, before, most_before, allowed in (
        (60, "UTC", 0, 1, 0, 0, 0), (60, "UTC", 1, 1, 0, 0, 120), (180, "Australia/Adelaide", 0.5, 2, 1, 2, 90), (300, "America/St_Johns", 0.2, 1, 2, 1, 210), (1440, "UTC", 0.2, 3, 2, 0.2, 0), (420, "Asia/Kathmandu", 0, 1, 1, 0, 300), (1440, "Europe/London", 2, 2, 0, 0, 1440),
        (7, "Australia/Adelaide", 0.3, 1, 0, 0, 8), (660, "America/New_York", 1, 1, 3, 5, 600), (360, "UTC", 0, 2, 2, 0.4, 360),
    ):
        count = int((5 if step == 7 else 14) * 1440 / step)
        depths = [None if rng.random() < 0.06 * min(1, step / 300) else 0.0 if rng.random() < 0.985 ** (min(step, 300) / 20) else round(rng.expovariate(1), 1) for _ in range(count)]
        if step == 7:
            depths = [None if i in (40, 41, 700) else 0.4 if i in (300, 301, 900) else 0.0 for i in range(count)]
        found = days(depths, step * 60, zone, allowed * 60)
        told = verdicts(found, most, run, before, most_before)
        first = found[0][0]
        for i, verdict in enumerate(told):
            rows.append((" ".join("NaN" if d is None else f"{d:g}" for d in depths), step, zone, most, run, before, most_before, allowed, (found[i][0] - date(2001, 1, 1)).days, {DRY: 1, WET: 0, UNKNOWN: -1}[verdict]))
        assert first <= date(2001, 1, 1)
    columns = [("x", "mm, depths from 1 January 2001 UTC"), ("step", "min, step"), ("zone", "text, time zone"), ("most", "mm, most on a dry day"), ("run", "days, dry together"), ("before", "days, before them"), ("most_before", "mm, most on each of those"), ("allowed", "min, of a day that may be missing"), ("day", "days, after 1 January 2001"),
               ("dry", "1 dry, 0 not, -1 not known")]
    given = [("depths", "text x"), ("step_minutes", "step"), ("zone", "text zone"), ("most_mm", "most"), ("run", "run"), ("before", "before"), ("most_before_mm", "most_before"), ("missing_minutes", "allowed"), ("day", "day")]
    write(FOLDER, PROGRAM, "dry-days-by-rule", "days that are dry by a rule of one's own: steps that cross midnight, missing ones, days of 23 hours and records that begin within a day", columns, given, [("dry", "dry-day.by-rule")], rows, tolerance="0", reason="a verdict")
    rows = []
    for depth, dry in (("2", 1), ("2.0000000005", 1), ("2.00000000095", 1), ("2.00000000102", 0), ("2.000000002", 0)):
        rows.append((f"0 {depth} 0", 1440, "UTC", 2, 1, 0, 0, 0, 1, dry))
    for minutes, dry in ((119, -1), (120, 1), (121, 1)):
        rows.append((" ".join(["0"] * 30 + ["NaN", "NaN"] + ["0"] * 40), 60, "UTC", 0, 1, 0, 0, minutes, 1, dry))
    write(FOLDER, PROGRAM, "dry-days-at-their-limit", "depths that miss the limit of a dry day by rounding, and by a little more; as much of a day missing as a rule allows", columns, given, [("dry", "dry-day.by-rule")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    main()
