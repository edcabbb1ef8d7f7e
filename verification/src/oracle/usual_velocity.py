"""The velocity usual at a depth, and means and dry weather flows that leave out what is in doubt, each from its sentence.

    python3 usual_velocity.py FOLDER

writes the tables baseline-law, baseline-law-classes, marked-figures and stretch-flows into the folder of the tables of hydraulics.
Slopes by SciPy, medians and quantiles by NumPy; which name of a finding doubts which reading is read off the list of the method note.
Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import math
import sys

import numpy as np
from scipy import stats

from own_tables import text, write

PROGRAM = "usual_velocity.py"
NAN = float("nan")
NONE = -9999


def law(depths, velocities):
    """Classes of equal count by depth; the line by Theil and Sen through their medians, and 0.8 of what they leave over."""
    pairs = [(math.log(y), math.log(v)) for y, v in zip(depths, velocities) if y == y and v == v]
    pairs.sort(key=lambda pair: pair[0])
    x, u = np.array(pairs).T
    n = len(x)
    count = min(12, n // 24)
    bounds = [k * n // count for k in range(count + 1)]
    groups = [slice(a, b) for a, b in zip(bounds, bounds[1:])]
    xs = np.array([np.median(x[g]) for g in groups])
    us = np.array([np.median(u[g]) for g in groups])
    slope = float(np.clip(stats.theilslopes(us, xs)[0], -0.2, 1.2))
    level = float(np.median(us - slope * xs))
    left = 0.8 * (us - slope * xs - level)
    usual = lambda at: level + slope * at + np.interp(at, xs, left)
    scatters = [float(stats.median_abs_deviation(u[g] - usual(x[g]), scale="normal")) for g in groups]
    return {"exponent": slope, "scatter": float(np.median(scatters)), "lowest": math.exp(np.quantile(x, 0.005)),
            "highest": math.exp(np.quantile(x, 0.99)), "classes": count, "levels": [float(v) for v in np.exp(xs)],
            "scatters": scatters, "velocity": lambda y: math.exp(float(usual(math.log(y))))}


def laws(folder):
    rng = np.random.default_rng(11)
    rows, classes = [], []
    for hours, exponent, bend, lost in ((144, 0.55, 0.0, 0), (144, 0.6, 0.3, 11), (120, 1.9, 0.0, 3), (120, -0.9, 0.1, 0),
                                        (168, 0.5, -0.4, 90), (120, 0.65, 0.2, 46), (336, 0.55, 0.25, 20)):
        hour = np.arange(hours)
        y = 0.14 * (1 + 0.35 * np.sin(2 * np.pi * hour / 24) + 0.12 * np.sin(4 * np.pi * hour / 24 + 1)) * np.exp(0.03 * rng.standard_normal(hours))
        v = 0.8 * (y / 0.14) ** exponent * np.exp(bend * np.log(y / 0.14) ** 2 + 0.03 * rng.standard_normal(hours))
        depths = [round(float(d), 4) for d in y]
        speeds = [round(float(s), 4) for s in v]
        for k in rng.choice(hours, lost, replace=False):
            speeds[k] = NAN
        found = law(depths, speeds)
        for level in (0.05, found["levels"][0], 0.117, 0.151, 0.19, found["levels"][-1], 0.45)[:3 if hours > 200 else 7]:
            level = round(level, 5)
            rows.append([text(depths), text(speeds), level, found["velocity"](level), found["exponent"], found["scatter"], found["lowest"],
                         found["highest"], found["classes"], hours, hours])
        for k in range(found["classes"])[:3 if hours > 200 else 12]:
            classes.append([text(depths), text(speeds), k, found["levels"][k], found["scatters"][k]])
    columns = [("depths", "m, each hour"), ("velocities", "m/s, each hour")]
    inputs = [("depths", "text depths"), ("velocities", "text velocities")]
    names = [("velocity", "m/s"), ("exponent", "1"), ("scatter", "1"), ("lowest", "m"), ("highest", "m"), ("classes", "count"), ("hours", "count"),
             ("dry_hours", "count")]
    calculations = {"hours": "baseline.hours", "dry_hours": "baseline.dry-hours"}
    write(folder, PROGRAM, "baseline-law", "The velocity usual at a depth, learned from hours", columns + [("level", "m")] + names, inputs,
          [(c, calculations.get(c, "baseline.law." + c), *(["input.level = level"] if c == "velocity" else [])) for c, _ in names], rows,
          tolerance="1e-11 relative", reason="16 digits are given; sums of some hundred logarithms")
    write(folder, PROGRAM, "baseline-law-classes", "The depth classes of the velocity usual at a depth",
          columns + [("of_class", "from 0"), ("level", "m"), ("scatter", "1")], inputs + [("class", "of_class")],
          [("level", "baseline.law.class.level"), ("scatter", "baseline.law.class.scatter")], classes,
          tolerance="1e-11 relative", reason="16 digits are given")


DEPTH = {"DEPTH_STEP", "DEPTH_DRIFT", "SEDIMENT", "FROZEN_DEPTH", "OUT_OF_RANGE", "LEVEL_UP", "LEVEL_DOWN"}
VELOCITY = {"VELOCITY_LOSS", "VELOCITY_GAIN", "VELOCITY_ZEROS", "WEAK_ECHO", "SIGN_FLIPS", "REVERSED_SIGN", "FROZEN_VELOCITY"}
BOTH = {"VELOCITY_LOW_FOR_DEPTH", "VELOCITY_HIGH_FOR_DEPTH", "CONTRADICTORY", "FROZEN_LOGGER"}
CLOCKS = {"CLOCK_OF_MONITOR", "CLOCK_OF_GAUGE", "SILENT_GAUGE"}
SINGLE = {"VELOCITY_ZEROS", "WEAK_ECHO", "SIGN_FLIPS", "REVERSE_FLOW", "FROZEN_DEPTH", "FROZEN_VELOCITY", "FROZEN_LOGGER", "CONTRADICTORY",
          "OUT_OF_RANGE"} | CLOCKS


def doubts(name, use):
    return (name in BOTH or use == "STORM_RESPONSE" and name in DEPTH | VELOCITY | CLOCKS or use == "FLOW" and name in DEPTH | VELOCITY
            or use == "DEPTH" and name in DEPTH or use == "VELOCITY" and name in VELOCITY)


class Findings:
    def __init__(self, size, *findings):
        """What is named + is the finding before it, back for another stretch."""
        self.list, self.told = [], [names for names, _, _ in findings]
        for names, begin, end in findings:
            number = self.list[-1][4] if names == "+" else len(self.list)
            self.list.append((self.list[number][0] if names == "+" else names.split("/"), begin, size if end is None else end, end, number))

    def inputs(self):
        return [" ".join(self.told), text([f[1] for f in self.list]), text([NONE if f[3] is None else f[3] for f in self.list])]

    def of(self, use):
        return [f for f in self.list if any(doubts(name, use) for name in f[0])]

    def silent(self, day):
        """Whether the gauge was perhaps dead for six hours of a day or more, counted by quarters of an hour."""
        quarters = sum(any(f[0][0] == "SILENT_GAUGE" and 4 * f[1] <= q < 4 * f[2] for f in self.list) for q in range(96 * day, 96 * day + 96))
        return int(quarters >= 24)

    def mean(self, flows, use, first, last):
        """The mean of what is there and not in doubt; of all that is there if nothing is left."""
        inside = [h for h in range(len(flows)) if first <= h < last]
        there = [h for h in inside if flows[h] == flows[h]]
        good = [h for h in there if not any(f[1] <= h < f[2] for f in self.of(use))]
        used = good or there
        value = math.fsum(flows[h] for h in used) / len(used) if used else NAN
        touching = {f[4] for f in self.of(use) if f[1] < last and f[2] > first}
        return (value, (len(there) - len(good)) / len(there) if there else 0.0, 1 - len(there) / len(inside) if inside else 1.0, len(touching))


def figures(folder):
    rng = np.random.default_rng(12)
    size = 96
    flows = [round(0.02 * (1 + 0.4 * math.sin(2 * math.pi * h / 24)) * math.exp(0.1 * rng.standard_normal()), 5) for h in range(size)]
    holes = [NAN if h in range(30, 41) or h in (3, 50, 77) else q for h, q in enumerate(flows)]
    sets = [Findings(size, ("DEPTH_STEP/HELD_UP", 10.5, 33), ("VELOCITY_ZEROS", 60, None)), Findings(size, ("HELD_UP", 5, 80)),
            Findings(size, ("FROZEN_DEPTH", 20, 44.25), ("FROZEN_VELOCITY", 40, 61)), Findings(size, ("CLOCK_OF_GAUGE", 0, None), ("SILENT_GAUGE", 30, 50)),
            Findings(size, ("CONTRADICTORY", 12, 13)), Findings(size, ("MORE_WATER/DEPTH_DRIFT/SEDIMENT", 24, None), ("WEAK_ECHO", 70, 75)),
            Findings(size, ("FROZEN_LOGGER", 8, 20), ("+", 26.5, 33), ("+", 62, None), ("WEAK_ECHO", 64, 70), ("+", 70, 74))]
    rows = []
    for findings in sets:
        for use in ("DEPTH", "VELOCITY", "FLOW", "STORM_RESPONSE"):
            for values, first, last in ((flows, 0, 96), (holes, 0, 48), (holes, 24, 72), (flows, 60, 96), (holes, 31, 40)):
                value, doubtful, missing, count = findings.mean(values, use, first, last)
                withheld = int(doubtful > 0.5 or missing > 0.5 or value != value)
                rows.append([text(values), *findings.inputs(), use, first, last, NONE if value != value else value, doubtful, missing, withheld, count])
    columns = [("flows", "m3/s, each hour"), ("names", "of each finding"), ("begins", "h"), ("ends", "h, -9999 for open"), ("use", "of the readings"),
               ("first", "h"), ("last", "h"), ("mean", "m3/s, -9999 for none"), ("doubtful", "1"), ("missing", "1"), ("withheld", "0 or 1"),
               ("findings", "count")]
    inputs = [(k, f"text {k}") for k in ("flows", "names", "begins", "ends", "use")] + [("first", "first"), ("last", "last")]
    write(folder, PROGRAM, "marked-figures", "Means that leave out what findings put in doubt", columns, inputs,
          [(c, "figure." + c) for c in ("mean", "doubtful", "missing", "withheld", "findings")], rows, tolerance="1e-12 relative or 1e-12")


def stretches(folder):
    rng = np.random.default_rng(13)
    size = 240
    flows = [round(0.02 * (1 + 0.4 * math.sin(2 * math.pi * h / 24)) * math.exp(0.1 * rng.standard_normal()), 5) for h in range(size)]
    holes = [NAN if h in range(50, 56) or h in range(100, 107) or h in range(170, 190) else q for h, q in enumerate(flows)]
    sets = [Findings(size, ("MORE_WATER", 70, None)), Findings(size, ("DEPTH_STEP", 80, 150)), Findings(size, ("HELD_UP", 30, 100), ("VELOCITY_LOSS", 130, None)),
            Findings(size, ("FROZEN_DEPTH", 60, 66), ("FROZEN_VELOCITY", 126, 133)), Findings(size, ("CLOCK_OF_MONITOR", 48, 96)),
            Findings(size, ("HELD_UP", 25, 74), ("+", 118, 122), ("VELOCITY_GAIN", 150, 168), ("+", 192, None)),
            Findings(size, ("SILENT_GAUGE", 42, 101.5), ("WEAK_ECHO", 60, 70)), Findings(size, ("SILENT_GAUGE", 66.25, None)),
            Findings(size, ("SILENT_GAUGE", 2, 27), ("SILENT_GAUGE", 27, 30), ("MORE_WATER", 90, None), ("SILENT_GAUGE", 150, 210))]
    rows = []
    for findings in sets:
        for values in (flows, holes):
            for dry in (range(10), (0, 2, 3, 5, 8)):
                # A cut where what the site does changed; single readings and clocks cut nothing. By the first name.
                cuts = {t for f in findings.list if f[0][0] not in SINGLE for t in (f[1], f[3]) if t is not None and 0 < t < size - 1}
                edges = [0, *sorted(cuts), size - 1 + 1e-9]
                for which, (a, b) in enumerate(zip(edges, edges[1:])):
                    days = [(*findings.mean(values, "FLOW", 24 * d, 24 * d + 24), findings.silent(d)) for d in dry
                            if 24 * d >= a and 24 * d + 24 <= b]
                    good = [m for m in days if (1 - m[1]) * (1 - m[2]) >= 0.75]
                    bad = [m for m in days if not (1 - m[1]) * (1 - m[2]) >= 0.75]
                    used = good or bad
                    means = [m[0] for m in used if m[0] == m[0]]
                    doubtful, missing, suspect = ((math.fsum(m[k] for m in used) / len(used)) if used else nothing for k, nothing in ((1, 0.0), (2, 1.0), (4, 0.0)))
                    rows.append([text(values), *findings.inputs(), text(dry), which, float(a), len(good), len(bad),
                                 math.fsum(means) / len(means) if means else NONE, doubtful, missing, suspect,
                                 int(not means or max(doubtful, missing, suspect) > 0.5)])
    columns = [("flows", "m3/s, each hour"), ("names", "of each finding"), ("begins", "h"), ("ends", "h, -9999 for open"), ("dry_days", "days from 0"),
               ("which", "stretch from 0"), ("from", "h"), ("days", "count"), ("left_out", "count"), ("flow", "m3/s, -9999 for none"), ("doubtful", "1"),
               ("missing", "1"), ("suspect", "1"), ("withheld", "0 or 1")]
    inputs = [(k, f"text {k}") for k in ("flows", "names", "begins", "ends", "dry_days")] + [("which", "which")]
    write(folder, PROGRAM, "stretch-flows", "Dry weather flow of each stretch between two changes", columns, inputs,
          [(c, "stretch." + c.replace("_", "-")) for c in ("from", "days", "left_out", "flow", "doubtful", "missing", "suspect", "withheld")], rows,
          tolerance="1e-12 relative or 1e-12")


def main(folder):
    laws(folder)
    figures(folder)
    stretches(folder)


if __name__ == "__main__":
    main(sys.argv[1])
