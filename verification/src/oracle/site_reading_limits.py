"""Readings on both sides of the limits of single readings and of hours, as the page on the watch has them.

    python3 site_reading_limits.py FOLDER

writes the table watch-reading-limits into the folder of the tables of hydraulics: what the watch keeps of the hours and of their faults,
after some hours in which readings were set. Hours by site_hours.py, faults by site_watching.py; none knows anything of the library.
Python 3.11, numpy 2, scipy 1.17.
"""

import math
import sys

import numpy as np
from scipy import stats

from own_tables import write
from site_baselines import site, storm
from site_level_limits import COLUMNS, INPUTS
from site_hours import Pipe, learn
from site_recipes import Record
from site_watches import CHANGE, FAULTS, place
from site_watching import Watch

PROGRAM = "site_reading_limits.py"
FIRST, DAYS = 15 * 24 + 1, 18


def hours_of(base):
    """Each hour: rows of change with times in it."""
    low, high = base.depth.extremes()
    slow = 0.6 * base.velocity.extremes()[0]
    hour = lambda *rows: [list(r) for r in rows]
    depth, speed = (lambda v: hour((20, 0, 1, v, 0))), (lambda v: hour((21, 0, 1, v, 0)))
    both = lambda d, v: hour((20, 0, 1, d, 0), (21, 0, 1, v, 0))
    share = lambda *kinds: hour(*[(k, a, b, v, 0) for k, a, b, v in kinds])
    few = lambda factor, every: hour((10, 0, 1, factor, every))
    lone = lambda level, other, *more: hour((20, 0, 1, level, 0), (20, 0.3, 0.4, other, 0), *more)
    wave = lambda ratio: hour((20, 0, 0.5, 0.12, 0), (20, 0.5, 1, 0.12 * ratio, 0), (10, 0, 1, 0.5, 3))
    return [
        depth(-0.0995), depth(-0.102), depth(29.5), depth(30.5), depth(30.5), both(0.00098, 0.5), both(0.00102, 0.5), both(0.00102, 0.098), both(0.0009, 0.0985), both(0.0009, 0.102),
        speed(11.9), speed(12.3), speed(0.00495), speed(0.0051), both(0.0296, 0.00495), both(0.0304, 0.00495), both(0.0296, 0.0051), depth(0.00196), depth(0.00204),
        share((5, 0, 0.5, 0)), share((5, 0, 0.66, 0)), share((6, 0, 0.5, 0)), share((6, 0, 0.66, 0)), share((4, 0.34, 1, 0)), share((21, 0, 0.5, -0.6)), share((21, 0, 0.66, -0.6)),
        share((21, 0, 0.34, -0.6)), share((20, 0, 0.5, 31.0)), share((20, 0, 0.34, 31.0)), share((20, 0, 0.66, 0.0015)), share((21, 0, 0.5, 13.0)), share((21, 0, 0.66, 0.004)),
        few(0.61, 6), few(0.59, 6), few(0.745, 3), few(0.76, 3), few(0.58, 2), few(0.62, 3), wave(1.24), wave(1.25), wave(0.81), wave(0.80),
        share((6, 0, 0.5, 0), (21, 0.5, 0.83, 0.0)), share((21, 0, 0.34, 0.0), (6, 0.34, 0.66, 0)), share((21, 0, 0.83, 0.0)), share((20, 0, 0.5, 0.0)),
        depth(0.0985 * low), depth(0.102 * low), depth(0.102 * low), depth(0.5), depth(0.61), both(0.2, -0.6), both(0.2, -0.6),
        lone(0.12, 0.1495), lone(0.12, 0.1505), lone(0.12, 0.0955), lone(0.12, 0.0965), lone(0.05, 0.0695), lone(0.05, 0.0705), lone(0.12, 0.2, (20, 0.4, 1, 0.3, 0)), lone(0.12, 0.2, (20, 0.4, 0.6, 0.17, 0)), lone(0.12, 0.2, (20, 0.4, 0.6, 0.15, 0)),
    ], low, high, slow


def still(what, value, hours):
    """One value for some hours."""
    return [[what, 0, hours, value, 0]]


def coarse():
    """Velocities in coarse steps: as many equal ones as chance gives, and one more; at a slow speed for nearly a day, and for longer."""
    recipe, start = site(seed=273, days=DAYS, step=10, noise=0.03), [23, 0, 10 ** 5, 0.05, 0]
    base, _ = learn(Record(recipe, start), Pipe(0.6), "UTC")
    for speed in (0.6, 0.75):
        most = 1 + math.log(1e-6) / math.log(2 * stats.norm.cdf(0.5 * base.velocity_step / (base.velocity_scatter * speed)) - 1)
        for count in (math.floor(most), math.floor(most) + 1):
            yield recipe, start + [21, FIRST, FIRST + count / 6 - 0.01, speed, 0, 21, FIRST + count / 6, FIRST + count / 6 + 3, 2 * speed, 2, 4, FIRST + count / 6 + 2, 10 ** 5, 0, 0], base
    for length in (23.9, 24.4):
        yield recipe, start + [21, FIRST, FIRST + length, 0.3, 0, 4, FIRST + length + 2, 10 ** 5, 0, 0], base


def habits():
    """What stands still again, or reads upstream again: after nearly a month, or five days, and a little longer."""
    recipe, start = site(seed=274, days=49, step=30), [*storm(60, 8, 2, 0.6, 1.0)]
    base, _ = learn(Record(recipe, start), Pipe(0.6), "UTC")
    both = lambda at, hours: [20, at, at + hours, 0.13, 0, 21, at, at + hours, 0.7, 0]
    depth = lambda at, hours: [20, at, at + hours, 0.13, 0]
    back = lambda at, factor: [1, at, at + 5, -factor, -factor]
    closed = FIRST + 12
    for days in (29.9, 30.2):
        for first, second in ((depth, depth), (both, both), (both, depth)):
            yield recipe, start + first(FIRST, 12) + second(closed + 24 * days, 12), base
    for days in (4.5, 6.5, 20):
        yield recipe, start + back(FIRST, 1) + back(FIRST + 30 + 24 * days, 1.6), base
    yield recipe, start + back(FIRST, 1) + back(FIRST + 30 + 24 * 20, 1), base


def main(folder):
    rows, seen = [], []
    keys = [("faults", FAULTS, "hoursValues", -1), ("beyond", FAULTS, "beyond", -1), ("hours", CHANGE, "hourValues", -1),
            ("depths", "watch:hourly-watch/depthUnit:reading-unit", "beforeValues", -1), ("speeds", "watch:hourly-watch/velocityUnit:reading-unit", "beforeValues", -1)]
    for seed, noise in ((271, 0.04), (272, 0.09)):
        recipe = site(seed=seed, days=DAYS, step=10, noise=noise)
        start = [*storm(60, 8, 2, 0.6, 1.0)]
        base, _ = learn(Record(recipe, start), Pipe(0.6), "UTC")
        specs, low, high, slow = hours_of(base)
        groups = [[([list(r) for r in spec], 1) for spec in specs[k:k + 9]] for k in range(0, len(specs), 9)]
        for limit, what, value in ((base.depth_frozen, 20, 0.13), (base.velocity_frozen, 21, 0.7)):
            groups.append([(still(what, value, limit + extra), 2 + math.ceil(limit)) for extra in (0.1, 0.5)])
        for what, value in ((20, 1.23 * high), (20, 1.28 * high), (21, 0.98 * slow), (21, 1.03 * slow)):
            groups.append([(still(what, value, base.depth_frozen + 1.5 if what == 20 else base.velocity_frozen + 1.5), 9)])
        groups += [[(still(20, 1.4 * high, 24.4), 26)], [(still(20, 1.4 * high, 23.9), 26)], [(still(21, 0.8 * slow, 24.4), 26)], [(still(20, 0.61, 9), 10)]]
        # Upstream at the usual speed or nearly, for hours enough or one less; zeros and flips by their share of a day and in hours enough.
        for factor, hours in ((1.405, 5), (1.433, 5), (0.71, 5), (0.698, 5), (1.0, 2), (1.0, 3)):
            groups.append([([[1, 0, hours, -factor, -factor]], 8)])
        limits = dict(zip(("zeros", "echo", "flips"), base.limits))
        for kind, value in (("zeros", 0.0), ("flips", -0.5)):
            for times, hours in ((1.02, 24), (0.99, 24), (1.23, 24), (1.27, 24)):
                every = 6 / max(1, round(6 * times * limits[kind] * 4))
                groups.append([([[21, k, k + 1 / 6 + 0.001, value, 0] for k in np.arange(0, hours, 4 * every)], 26)])
        for readings in (1, 1.25):
            for n in (math.floor(142 * readings * base.lone_limit), math.floor(142 * readings * base.lone_limit) + 2):
                groups.append([([[20, 24 * k / n, 24 * k / n + 0.17, 0.3, 0] for k in range(n)], 26)])
        for first in ((0.0, 0.5), (0.0, 0.5, 22.0)):
            groups.append([([[6, 0, 26, 0, 0]] + [[21, 4 * k, 4 * k + 0.5, 0.0, 0] for k in range(5)] + [[21, 22, 22.16, 0.0, 0]] * (len(first) > 2), 27)])
        # Three or four equal readings over hours, and gaps of two hours and a little more within a run.
        for kept in (3, 4):
            groups.append([([c for k in range(kept) for c in ([20, 3 * k / 1.5, 3 * k / 1.5 + 0.17, 0.13, 0], [4, 3 * k / 1.5 + 0.17, 3 * k / 1.5 + 2, 0, 0])], 10)])
        groups.append([([[20, 0, 12, 0.13, 0], [4, 5, 7.0, 0, 0]], 13)])
        groups.append([([[20, 0, 12, 0.13, 0], [4, 5, 7.17, 0, 0]], 13)])
        for group in groups:
            changes, at = list(start), FIRST
            for spec, length in group:
                for what, begin, end, a, b in spec:
                    changes += [what, at + begin, at + end, a, b]
                at += length + 1
            changes += [4, at + 3, 10 ** 5, 0, 0]
            case = (recipe, [float(np.round(c, 6)) for c in changes], "UTC", 0.6, 0)
            told = Watch(base, Record(case[0], case[1]), None)
            kept = told.kept
            rows.append(place(case) + [len(told.findings())] + [kept[n] for n in ("faults", "beyond", "hours", "depth_before", "velocity_before")])
            print(seed, len(rows), [(f.names[0], f.since - told.base.begin) for f in told.findings()][:3], file=sys.stderr)
    for recipe, changes, base in [*coarse(), *habits()]:
        case = (recipe, [float(np.round(c, 6)) for c in changes], "UTC", 0.6, 0)
        told = Watch(base, Record(case[0], case[1]), None)
        rows.append(place(case) + [len(told.findings())] + [told.kept[n] for n in ("faults", "beyond", "hours", "depth_before", "velocity_before")])
        print(len(rows), [(f.names[0], f.since - told.base.begin, f.returns) for f in told.findings()], file=sys.stderr)
    named = [(n, "sum of all, each times its place") for n, *_ in keys]
    write(folder, PROGRAM, "watch-reading-limits", "Hours of readings on their limits", COLUMNS + [("findings", "count")] + named, INPUTS,
          [("findings", "watch.findings")] + [(n, "watch.kept", f"input.part = word {part}", f"input.key = word {key}", f"input.which = {which}") for n, part, key, which in keys], rows,
          tolerance="1e-9 relative or 1e-8", reason="16 digits are given; sums of some hundred logarithms")


if __name__ == "__main__":
    main(sys.argv[1])
