"""What the two halves of the readings of a day, and the days around it, say of the error of a day: plain Python, no code in
common with the library.

    python3 day_sampling.py FOLDER

writes the table day-sampling, csv and descriptor, into the folder. The invented rates flow steadily, or in strokes that the
readings see in part; some readings are missing, and one record is short. The mean of a day is the integral of the straight lines between
readings that are at most one and a half steps apart, over the time that they cover.
"""

import math
import random
import sys
from statistics import median

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
NAN = float("nan")
DAY = 1440


def means(values, step):
    """Of each day from the first: mean and covered share, and the readings of it."""
    good = [(i * step, v) for i, v in enumerate(values) if v == v]
    days = (len(values) - 1) * step // DAY + 1
    found = []
    for d in range(days):
        area = covered = 0.0
        for (ta, a), (tb, b) in zip(good, good[1:]):
            lo, hi = max(ta, d * DAY), min(tb, (d + 1) * DAY)
            if tb - ta <= 1.5 * step and hi > lo:
                at = lambda t: a + (b - a) * (t - ta) / (tb - ta)
                area += (at(lo) + at(hi)) / 2 * (hi - lo)
                covered += hi - lo
        found.append((area / covered if covered else 0, covered / DAY, [v for t, v in good if d * DAY <= t < (d + 1) * DAY]))
    return found


def sampling(values, step):
    days = [(d, m, r) for d, (m, share, r) in enumerate(means(values, step)) if share >= 0.9 and m > 0 and len(r) >= 4 and any(r)]
    halves, beside = [], []
    for d, m, r in days:
        one, two = r[0::2], r[1::2]
        one, two = sum(one) / len(one), sum(two) / len(two)
        halves.append(abs(one - two) / abs(one + two))
        near = [n for e, n, _ in days if abs(e - d) <= 7]
        if len(near) >= 5:
            beside.append(abs(m / median(near) - 1))
    return len(days), 1.4826 * median(halves), 1.4826 * median(beside)


def rate(rng, days, step, stroke, missing):
    values, phase = [], 0.0
    for i in range(days * DAY // step):
        minute = i * step
        base = 0.012 + 0.006 * math.sin(2 * math.pi * (minute / DAY - 0.3)) + rng.gauss(0, 0.0004)
        base *= 1 + 0.05 * math.sin(minute / DAY * 1.7)
        phase += step / rng.uniform(17, 26)
        if stroke:
            base = base * 4 if phase % 1 < 0.25 else base * 0.05
        values.append(NAN if rng.random() < missing else round(base, 6))
    return values


rng = random.Random(1611)
rows = []
for days, step, stroke, missing in ((31, 60, False, 0), (31, 60, True, 0), (16, 45, True, 0.02), (9, 20, True, 0), (12, 30, False, 0.02), (6, 90, True, 0), (24, 120, True, 0.004)):
    values = rate(rng, days, step, stroke, missing)
    if days == 24:
        # Days without water, a day of it upstream, and one with too little of it seen.
        for at, to, value in ((36, 48, 0.0), (120, 132, -0.004), (180, 185, NAN)):
            values[at:to] = [value] * (to - at)
    n, halves, beside = sampling(values, step)
    rows.append((step, text([-9999 if v != v else v for v in values]), n, halves, beside, int(halves > 0.02)))
write(FOLDER, "day_sampling.py", "day-sampling", "errors of days by the halves of their readings, and by the days around them",
      [("step", "min, between readings"), ("values", "m3/s, -9999 where missing"), ("days", "1, complete days"), ("halves", "1, by halves"),
       ("scatter", "1, from day to day"), ("coarse", "1, coarse or not")],
      [("step_minutes", "step"), ("values", "text values")],
      [("days", "day-sampling.days"), ("halves", "day-sampling.halves"), ("scatter", "day-sampling.scatter"), ("coarse", "day-sampling.coarse")],
      rows, tolerance="1e-9 relative or 1e-12", reason="sums of numbers with six decimals in another order")
