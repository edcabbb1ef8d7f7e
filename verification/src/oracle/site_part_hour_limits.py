"""What the watch keeps amid an hour: single readings on their limits, stopped after half of them and gone on with.

    python3 site_part_hour_limits.py FOLDER

writes the table watch-part-hour-limits into the folder of the tables of hydraulics: readings are set at random on both sides of every
limit, the watch is stopped amid an hour, goes on from the text of its state, and tells what it keeps of the hour so far some readings
later, and of the whole hour when it is over. Hours by site_hours.py, all else by site_watching.py; none knows anything of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

from own_tables import write
from site_baselines import site, storm
from site_hours import FIRST_HOUR, Pipe, hours, learn
from site_level_limits import COLUMNS, INPUTS
from site_recipes import Record
from site_watches import FAULTS, place
from site_watching import Watch, bounds_of

PROGRAM = "site_part_hour_limits.py"
WATCH, HOUR = "watch:hourly-watch", "gatherer:hour"
FIRST, STEP = 14 * 24 + 2, 5
HOURS, RECORDS = 8, 8


def changes_of(random, base, wet):
    """Hours of odd readings, some gaps and runs among them, and drops of rain."""
    of = lambda those: those[int(random.integers(0, len(those)))]
    bounds = bounds_of(base)
    edges = [v * side for v in (0.001, 0.002, 0.03, bounds.nothing, 0.6, bounds.high) for side in (0.97, 0.99, 1.01, 1.03)]
    depths = edges + [-0.098, -0.102, 29.5, 31.0, -0.02, 0.0, 0.12, 0.1499, 0.1501, 0.096, 0.0961, 0.05, 0.0699, 0.0701, 0.0626, 0.0624, 0.18, 0.26, 0.3]
    speeds = [v * side for v in (0.005, 0.1, bounds.slow) for side in (0.97, 0.99, 1.01, 1.03)] + [0.0, 0.0, -0.004, -0.2, -0.7, 0.3, 0.6, 0.9, 1.3, 11.9, 12.2, -11.9, -12.2, 0.0049]
    near = [0.12, 0.15, 0.18, 0.17, 0.13, 0.24, 0.05, 0.07]
    rows, kinds = [], ("steps", "odd", "odd", "runs", "gaps", "missing", "lone", "dry")
    for k in range(HOURS):
        kind, base_depth = of(kinds), of([0.05, 0.09, 0.12, 0.2])
        run = 0
        for i in range(60 // STEP):
            at = FIRST + k + i * STEP / 60
            until = at + STEP / 60 * 0.98
            put = lambda what, a: rows.append([what, at, until, float(np.round(a, 6)), 0])
            if kind == "odd":
                put(20, of(depths))
                put(21, of(speeds))
            elif kind == "steps":
                base_depth *= of([1, 1, 1, 1.3, 0.8, 1.02])
                put(20, base_depth * random.uniform(0.98, 1.02) if random.random() < 0.9 else of([0.0005, -0.01, 35.0]))
            elif kind == "lone":
                put(20, base_depth + (of([0.0196, 0.0204, 0.3 * base_depth, 0.24 * base_depth, 0.26 * base_depth, 0.1]) * of([1, 1, -0.7]) if i % 2 else 0))
            elif kind == "runs":
                run += random.random() < 0.15
                put(20, base_depth + 0.01 * run)
                put(21, 0.7 + 0.01 * run)
            elif kind == "dry":
                put(20, of([0.00095, 0.00105, 0.0295, 0.0305]))
                put(21, of([0.098, 0.102, 0.0048, 0.0052, 0.0, -0.3]))
            if kind in ("gaps", "lone") and random.random() < 0.3:
                rows.append([4, at, at + of([1, 2, 3, 4, 5, 6, 7, 13, 14, 25]) * STEP / 60 * 0.99, 0, 0])
            if kind in ("missing", "steps") and random.random() < 0.15:
                rows.append([of([5, 6]), at, until, 0, 0])
            if wet and random.random() < 0.05:
                rows.append([of([15, 16, 16]), at, until, 0.4, 0])
    return [float(np.round(v, 4 if j in (1, 2) else 6)) for r in rows for j, v in enumerate(r)]


def book(values):
    return float(sum((i + 1) * v for i, v in enumerate(values)))


def book_known(values):
    return float(sum((i + 1) * v for i, v in enumerate(values) if v == v))


NANOS = 3.6e12
#        column, unit, key, which
ASKED = [("readings", "count", "readings", 0), ("rain", "mm", "rain", 0), ("looked", "count", "looked", 0), ("zeros", "count", "zeros", 0), ("outside", "count", "outOfRange", 0),
         ("dry_moving", "count", "withoutWater", 0), ("depth_run", "ns", "runs", 0), ("depth_run_from", "ns", "runs", 1), ("velocity_run", "ns", "runs", 2),
         ("velocity_run_from", "ns", "runs", 3), ("gap", "ns", "stamps", 2), ("gap_from", "ns", "stamps", 3), ("gap_step", "ns", "stamps", 4), ("levels", "m, each times its place", "levels", -1),
         ("speeds", "m/s, each times its place", "velocities", -1), ("odd_depths", "m, each times its place", "oddDepths", -1), ("odd_speeds", "m/s, each times its place", "oddVelocities", -1),
         ("zero_levels", "m, each times its place", "zeroLevels", -1), ("step", "m", "step", 0), ("step_before", "m", "stepFromLevel", 0), ("step_from", "ns", "stepTimes", 0),
         ("step_to", "ns", "stepTimes", 1), ("leap", "as a factor", "leap", 0), ("alone", "count", "alone", 0), ("compared", "count", "lone", 2), ("lone", "count", "lone", 3)]
# Of the hour when it is over, as the readings of single hours are kept and what they are against usual.
OVER = [("faults", "sum of each times its place", FAULTS, "hoursValues", -1), ("depths", "sum of each times its place", WATCH + "/depthUnit:reading-unit", "beforeValues", -1),
        ("velocities", "sum of each times its place", WATCH + "/velocityUnit:reading-unit", "beforeValues", -1),
        ("means", "sum of each times its place", WATCH, "clockValues", -1), ("means_of_flow", "sum of each times its place", WATCH, "clockFlowValues", -1)]


class Kept(dict):
    """What is kept after each hour of a record."""

    def __init__(self, base, record):
        super().__init__()

        def look(w):
            real = w.gauge.take

            def take(hour, number, *more):
                real(hour, number, *more)
                self[number - FIRST_HOUR] = [book_known(v for _, row in w.faults.rows for v in row.values())] + [
                    book_known(v for r in q.before for v in r[1:]) for q in (w.units.depth, w.units.velocity)] + [
                    book_known(v for _, v in of_day) for of_day in (w.clock.of_depth, w.clock.of_flow)]

            w.gauge.take = take

        Watch(base, record, None, (FIRST - 1, look))


def expected(hour):
    at = lambda h: round((h + FIRST_HOUR) * NANOS)
    so_far = hour.so_far
    no = lambda v: "" if v != v else v
    depth, speed = hour.depth_run, hour.velocity_run
    stepped = hour.stepped
    return [hour.readings, no(hour.rain), so_far["looked"], so_far["zeros"], hour.outside, hour.dry_moving,
            depth[0] * NANOS, at(depth[1]) if depth[0] else "", speed[0] * NANOS, at(speed[1]) if speed[0] else "",
            hour.gap[0] * NANOS, at(hour.gap[1]) if hour.gap[0] else "", hour.gap[2] * NANOS, book(so_far["levels"]), book(so_far["speeds"]),
            book(so_far["odd"][0]), book(so_far["odd"][1]), book(so_far["rests"]), no(hour.step), stepped[0] if stepped else "",
            at(stepped[1]) if stepped else "", at(stepped[2]) if stepped else "", hour.leap, hour.alone, hour.compared, hour.lone]


def main(folder):
    rows = []
    for seed in range(241, 241 + RECORDS):
        random = np.random.default_rng(seed)
        recipe, start = site(seed=seed, days=15, step=STEP), [23, 0, 10 ** 5, 0.02, 0] + storm(60, 8, 2, 0.6, 1.0)
        base, _ = learn(Record(recipe, start), Pipe(0.6), "UTC")
        changes = start + changes_of(random, base, seed % 2 == 0)
        record = Record(recipe, changes)
        base, _ = learn(record, Pipe(0.6), "UTC")
        case, bounds = (recipe, changes, "UTC", 0.6, 0), bounds_of(base)
        after = Kept(base, record)
        for k in range(HOURS):
            at, until = FIRST + k + 7 * STEP / 60, FIRST + k + 11 * STEP / 60 + 0.02
            count = int(np.searchsorted(record.minutes, until * 60))
            if count < 2 or record.minutes[count - 1] < (FIRST + k) * 60 + 40:
                continue
            told = hours(record.minutes[:count], record.depths[:count], record.velocities[:count], record.rains[:count], bounds)[-1]
            if told.gap[0] > 3:
                # Stamps that leap so far are held back first.
                continue
            rows.append(place(case) + [round(at, 4), WATCH, "clockShift=0", "-", round(until, 4)] + expected(told) + [""] * len(OVER))
            over = float(record.minutes[np.searchsorted(record.minutes, (FIRST + k + 1) * 60)]) / 60 + 0.01
            if over < FIRST + k + 2:
                rows.append(place(case) + [round(at, 4), WATCH, "clockShift=0", "-", round(over, 4)] + [""] * len(ASKED) + after[FIRST + k])
    print(len(rows), file=sys.stderr)
    write(folder, PROGRAM, "watch-part-hour-limits", "What is kept amid an hour of odd readings",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h")] + [(n, u) for n, u, *_ in ASKED + OVER],
          INPUTS + [("at", "at"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after.kept", f"input.part = word {HOUR}", f"input.key = word {key}", f"input.which = {which}") for n, _, key, which in ASKED]
          + [(n, "watch.after.kept", f"input.part = word {part}", f"input.key = word {key}", f"input.which = {which}") for n, _, part, key, which in OVER], rows,
          tolerance="1e-12 relative or 1e-9", reason="16 digits are given; sums of some hundred figures")


if __name__ == "__main__":
    main(sys.argv[1])
