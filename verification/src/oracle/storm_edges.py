"""Storms a little on either side of each criterion: plain Python, no code in common with the library.

    python3 storm_edges.py FOLDER

writes the tables storm-criteria-edges and storm-criteria-named into the folder of the rainfall tables. Only one criterion binds in each
row: the others are far off. A storm with a missing step is unknown where what was recorded is not enough.
"""

import random
import statistics
import sys

from own_tables import text, write


def measures(gauges, step, over):
    """Depths, greatest intensities over some steps, hours from the first rain to the last, and the spread of the depths about their median."""
    clean = [[0 if v != v else v for v in g] for g in gauges]
    depths = [sum(g) for g in clean]
    k = round(over / step)
    peaks = [max(sum(g[i:i + k]) for i in range(len(g))) * 60 / over for g in clean]
    wet = [[i for i, v in enumerate(g) if v > 0] for g in clean]
    lengths = [(w[-1] - w[0] + 1) * step for w in wet]
    middle = statistics.median(depths)
    return depths, peaks, lengths, max(max(depths) - middle, middle - min(depths)) / middle


def invented(rng, count):
    gauges = []
    for _ in range(count):
        values = [0.0] * 24
        for i in range(rng.randrange(1, 5), rng.randrange(9, 22)):
            values[i] = rng.choice([0.0, round(rng.uniform(0.1, 1.5), 1), round(rng.uniform(0.1, 1.5), 1)])
        values[6] = 1.1
        gauges.append(values)
    return gauges


def edges(folder):
    rng = random.Random(96)
    rows = []
    for case in range(9):
        step, over = rng.choice([(2, 4), (5, 15), (1, 6)])
        gauges = invented(rng, 2 + case % 4)
        while measures(gauges, step, over)[3] > 0.9:  # no spread above 1 can be asked for
            gauges = invented(rng, 2 + case % 4)
        hole = case % 3 == 2
        if hole:
            gauges[0][23] = float("nan")
        depths, peaks, lengths, spread = measures(gauges, step, over)
        easy = [0.1, 0.1, 1, 0.1]  # depth, intensity, spread, time of concentration
        for which, value in enumerate((min(depths), min(peaks), spread, min(lengths))):
            for side in (0.985, 1.015):
                limits = list(easy)
                limits[which] = min(value * side, 1) if which == 2 else value * side
                if which == 2:
                    met = spread <= limits[2]
                    verdict = -1 if hole else 1 if met else 0
                else:
                    short = [g for g, v in enumerate((depths, peaks, None, lengths)[which]) if v < limits[which]]
                    verdict = 0 if any(g > 0 or not hole for g in short) else -1 if short or hole else 1
                rows.append(["; ".join(text(g) for g in gauges), step, limits[0], limits[1], over, limits[2], limits[3], verdict])
    write(folder, "storm_edges.py", "storm-criteria-edges", "storms a little on either side of each criterion, plain Python",
          [("gauges", "mm, depths of each"), ("step", "min, step"), ("depth", "mm, least depth"), ("intensity", "mm/h, least intensity"), ("over", "min, over"), ("spread", "1, greatest spread"),
           ("concentration", "min, time of concentration"), ("verdict", "1, met 1, not 0, unknown -1")],
          [("gauges", "text gauges"), ("step_minutes", "step"), ("depth_mm", "depth"), ("intensity", "intensity"), ("over_minutes", "over"), ("spread", "spread"), ("concentration_minutes", "concentration")],
          [("verdict", "storm.criteria.verdict")], rows, tolerance="0", reason="a verdict")


def named(folder):
    rows = []
    # 20 mm in all and 10 mm/h over 10 minutes; the other: 5 mm, 6 mm/h over 4 minutes, depths within a fifth of their median
    for depth, peak in ((20.4, 1.75), (19.8, 1.75), (20.4, 1.64), (40, 9)):
        quiet = (depth - peak) / 19
        rows.append([text([quiet] * 10 + [peak] + [quiet] * 9), 10, "calibration-2020", 1 if depth >= 20 and peak * 6 >= 10 else 0])
    for first, second, heavy in ((5.2, 5.4, 0.42), (4.9, 5.4, 0.42), (5.2, 5.4, 0.39), (5.2, 7.9, 0.42), (5.2, 7.7, 0.42)):
        gauges = []
        for depth in (first, second):
            quiet = (depth - heavy) / 17
            gauges.append(text([quiet] * 8 + [heavy] + [quiet] * 9))
        middle = (first + second) / 2
        met = min(first, second) >= 5 and heavy * 15 >= 6 and (second - middle) / middle <= 0.2
        rows.append(["; ".join(gauges), 4, "short-term-survey", 1 if met else 0])
    write(folder, "storm_edges.py", "storm-criteria-named", "Wellington Water (2020), 20 mm and 10 mm/h over 10 min; the British short-term survey, from memory, 5 mm, 6 mm/h over 4 min, spread 0.2: storms near each limit",
          [("gauges", "mm, depths of each"), ("step", "min, step"), ("criteria", "text, which"), ("verdict", "1, met 1, not 0")],
          [("gauges", "text gauges"), ("step_minutes", "step"), ("criteria", "text criteria")], [("verdict", "storm.criteria.named")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    for make in (edges, named):
        make(sys.argv[1])
