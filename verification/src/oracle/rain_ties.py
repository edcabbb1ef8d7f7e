"""Rain on ties and just beyond its limits: plain Python, no code in common with the library.

    python3 rain_ties.py FOLDER

writes dry-day-two-after-two, events-of-parts-of-a-second, levels-of-peaks-by-method and exponential-by-moments into the folder of the
rainfall tables.
"""

import math
import sys
from fractions import Fraction as F

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "rain_ties.py"


def dry():
    """Days of no more than 2 mm, and so the two days before each."""
    rain = [0, 2, 1, 0.5, 2.05, 0, 0, 0, 1.95, 2, 2, 2.01, 2, 0, 0, 2.09, 1, 1, 2.2, 0, 2, 0, 0]
    rows = [(text(rain), day, int(all(v <= 2 for v in rain[day - 2:day + 1]))) for day in range(2, len(rain))]
    write(FOLDER, PROGRAM, "dry-day-two-after-two", "Wastewater modelling specification, draft 11: days of no more than 2 mm, without the two days after a wetter one", [("rain", "mm, depth of each day"), ("day", "1, day from 0"), ("dry", "1, dry or not")],
          [("daily_mm", "text rain"), ("day", "day")], [("dry", "dry-day.two-after-two")], rows, tolerance="0", reason="yes or no", source=("Wellington Water", 2020))


def moments():
    rows = []
    for tip, tips in (("0.2", "10 10.002"), ("0.5", "10 10.25 10.2625"), ("0.2", "100 100.0125 130.0375")):
        t = [F(v) for v in tips.split()]
        rows.append((tip, tips, float(len(t) * F(tip) * 60 / (t[-1] - t[0]))))
    write(FOLDER, PROGRAM, "events-of-parts-of-a-second", "mean intensities of events of tips that end within a second", [("tip", "mm, tip"), ("t", "min, tips"), ("mean", "mm/h, mean intensity")],
          [("tip_mm", "tip"), ("tip_minutes", "text t"), ("inter_event_minutes", "120"), ("number", "1")], [("mean", "event.mean-intensity")], rows)


PEAKS = ((10.0, 20.0, (10.4, 11.1, 10.9, 13.7, 12.2, 15.8, 10.2, 11.9, 18.3, 12.8, 10.7, 14.1, 11.4, 10.1, 16.2)), (3.5, 8.0, (3.9, 4.4, 4.1, 4.8, 3.6, 4.3, 5.1, 4.6, 3.8, 4.7, 5.2, 4.9)), (0.0, 12.0, (0.5, 2.5, 1.25, 0.75, 4.0, 9.5, 1.0, 0.25)))


def peaks():
    rows = []
    for threshold, record, sample in PEAKS:
        over = [v - threshold for v in sample]
        n = len(over)
        mean = math.fsum(over) / n
        variance = math.fsum((v - mean) ** 2 for v in over) / (n - 1)
        l2 = math.fsum((2 * i - n + 1) * v for i, v in enumerate(sorted(over))) / n / (n - 1)
        for method, shape in (("MOMENTS", (mean * mean / variance - 1) / 2), ("L_MOMENTS", mean / l2 - 2)):
            scale = mean * (1 + shape)
            for years in (5, 30):
                rows.append((text(sample), threshold, record, method, years, threshold + scale / shape * (1 - (n / record * years) ** -shape)))
    write(FOLDER, PROGRAM, "levels-of-peaks-by-method", "J. R. M. Hosking and J. R. Wallis (1987): the generalized Pareto distribution of what peaks exceed a threshold by, from their moments and their L-moments; levels of return periods",
          [("x", "mm, peaks"), ("threshold", "mm, threshold"), ("record", "years, record"), ("method", "text, method"), ("years", "years, return period"), ("level", "mm, level")],
          [("sample", "text x"), ("threshold", "threshold"), ("record", "record"), ("method", "text method"), ("years", "years")], [("level", "peaks.level-by-method")], rows, tolerance="1e-11 relative", reason="16 digits are given; sums in another order")


def exponential():
    rows = []
    for _, _, sample in PEAKS:
        mean = math.fsum(sample) / len(sample)
        deviation = math.sqrt(math.fsum((v - mean) ** 2 for v in sample) / (len(sample) - 1))
        rows.append((text(sample), mean - deviation, deviation))
    write(FOLDER, PROGRAM, "exponential-by-moments", "J. R. M. Hosking and J. R. Wallis (1997): the exponential distribution from mean and standard deviation", [("x", "mm, sample"), ("xi", "mm, location"), ("alpha", "mm, scale")],
          [("sample", "text x"), ("family", "word EXPONENTIAL"), ("method", "word MOMENTS")], [("xi", "frequency.fit.parameter", "input.parameter = word xi"), ("alpha", "frequency.fit.parameter", "input.parameter = word alpha")], rows, tolerance="1e-11 relative", reason="16 digits are given; sums in another order")


if __name__ == "__main__":
    dry()
    moments()
    peaks()
    exponential()
