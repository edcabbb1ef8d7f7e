"""Storms that are just enough, events of an hour and of no time, means on one verge or the other: Python with fractions.

    python3 rain_verges.py FOLDER

writes storms-just-enough, events-of-an-hour, events-of-no-time, storage-gauges-of-one, tips-at-one-instant, networks-of-few and
counts-refused into the folder of the rainfall tables. What is compared with a limit counts
as enough if it misses it by a millionth of a micrometre.
"""

import sys
from fractions import Fraction

from own_tables import write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "rain_verges.py"
SLACK = Fraction(1, 10**9)


def verdict(gauges, depth, intensity, spread):
    """Each gauge has the depth, each the intensity over its wettest hour, and they agree; steps of an hour, nothing missing."""
    sums = [sum(g) for g in gauges]
    median = sorted(sums)[len(sums) // 2] if len(sums) % 2 else sum(sorted(sums)[len(sums) // 2 - 1 : len(sums) // 2 + 1]) / 2
    apart = max(max(sums) - median, median - min(sums))
    share = apart / median if apart else Fraction(0)
    return int(all(s >= depth - SLACK for s in sums) and all(max(g) >= intensity - SLACK for g in gauges) and share <= spread + SLACK)


def storms():
    rows = []
    for gauges, depth, intensity, spread in (
        ("1 2 3; 2 2 2", "6", "2", "0.5"), ("1 2 3; 2 2 2", "6.0000000005", "2", "0.5"), ("1 2 3; 2 2 2", "6.000000003", "2", "0.5"), ("1 2 3; 2 2 2", "5", "2.0000000005", "0.5"), ("1 2 3; 2 2 2", "5", "2.000000003", "0.5"), ("1 2 3; 2 2 2", "5", "2", "0"),
        ("3 3 3; 3 3 4; 3 3 5", "9", "3", "0.1"), ("3 3 3; 3 3 4; 3 3 5", "9", "3", "0.09"), ("3 3 3; 3 3 4; 3 3 5", "9", "3", "0.11"), ("3 3 3; 3 3 4; 3 3 6", "9", "3", "0.1"), ("2 2 2; 4 2 2", "6", "2", "0.2"), ("2 2 2; 4 2 2", "6", "2", "0.14"), ("2 2 2; 4 2 2", "6", "2", "0.1428571429"),
        ("1 1 1 1; 1 1 1 1; 1 1 1 2", "4", "1", "0.25"), ("1 1 1 1; 1 1 1 1; 1 1 1 2", "4", "1", "0.24"), ("1 1 1 1; 1 1 1 1; 1 1 1 1", "4", "1", "0"),
    ):
        split = [[Fraction(v) for v in g.split()] for g in gauges.split(";")]
        rows.append((gauges, depth, intensity, spread, verdict(split, Fraction(depth), Fraction(intensity), Fraction(spread))))
    write(FOLDER, PROGRAM, "storms-just-enough", "storms whose depth, intensity or likeness is a limit, or misses it by rounding or a little more", [("gauges", "mm, hours of each"), ("depth", "mm, least depth"), ("intensity", "mm/h, least intensity"), ("spread", "1, greatest spread"), ("verdict", "1 met, 0 not")],
          [("gauges", "text gauges"), ("step_minutes", "60"), ("depth_mm", "depth"), ("intensity", "intensity"), ("over_minutes", "60"), ("spread", "spread"), ("concentration_minutes", "60")], [("verdict", "storm.criteria.verdict")], rows, tolerance="0", reason="a verdict")


def events():
    rows = []
    for depths, step, wanted, mean in (("0 3.5 0 0 0 2 4", 60, 1, "3.5"), ("0 3.5 0 0 0 2 4", 60, 2, "3"), ("1 2 0 0 0 0 0 0 4 4", 30, 1, "3"), ("1 2 0 0 0 0 0 0 4 4", 30, 2, "8"), ("0.5 0.25 0.25 0.5 0 0 0 0 0 0 0 0 0", 15, 1, "1.5"), ("7 0 0 0 0 0", 90, 1, str(float(Fraction(14, 3))))):
        rows.append((depths, step, wanted, mean))
    write(FOLDER, PROGRAM, "events-of-an-hour", "mean intensities of events that last an hour, and of others", [("x", "mm, depths"), ("step", "min, step"), ("number", "1, which event"), ("mean", "mm/h, mean intensity")],
          [("depths", "text x"), ("step_minutes", "step"), ("inter_event_minutes", "120"), ("number", "number")], [("mean", "event.steps.mean-intensity")], rows)
    rows = []
    for tip, tips, number in (("0.2", "100", 1), ("0.2", "100 160", 1), ("0.2", "0 60", 1), ("0.2", "100 500", 1), ("0.2", "100 500", 2), ("0.5", "10 20 30 500 530", 1), ("0.5", "10 20 30 500 530", 2)):
        groups = []
        for t in map(Fraction, tips.split()):
            if groups and t - groups[-1][-1] < 120:
                groups[-1].append(t)
            else:
                groups.append([t])
        one = groups[number - 1]
        lasts = one[-1] - one[0]
        rows.append((tip, tips, number, int(lasts == 0), float(len(one) * Fraction(tip) / (lasts / 60)) if lasts else ""))
    write(FOLDER, PROGRAM, "events-of-no-time", "events of a single tip have no duration, and so no mean intensity", [("tip", "mm, tip"), ("t", "min, tips"), ("number", "1, which event"), ("none", "1, 1 if there is none"), ("mean", "mm/h, mean intensity")],
          [("tip_mm", "tip"), ("tip_minutes", "text t"), ("inter_event_minutes", "120"), ("number", "number")], [("none", "refusal.event.mean-intensity"), ("mean", "event.mean-intensity")], rows)


def gauges():
    rows = []
    for depths, hours, stored, allowance, resolution in (("0.25 0.5 0.25", "3", "1", "0.1", "0.1"), ("0.25 0.5 0.25 0", "3 4", "0.5 0.5", "0.1", "0.1"), ("1 1 1", "3", "0", "0.1", "0.1"), ("11 0", "2", "10", "0.1", "0.2"), ("11.0000000005 0", "2", "10", "0.1", "0.2"), ("11.00000000103 0", "2", "10", "0.1", "0.2"), ("11.000000003 0", "2", "10", "0.1", "0.2"),
                                                          ("9 0", "2", "10", "0.1", "0.2"), ("8.99999999897 0", "2", "10", "0.1", "0.2"), ("8.9999999995 0", "2", "10", "0.1", "0.2"), ("0.5 0", "2", "0.3", "0.1", "0.2")):
        parts, last, within = [], 0, 0
        for at, s in zip(map(int, hours.split()), map(Fraction, stored.split())):
            total = sum(Fraction(d) for d in depths.split()[last:at])
            parts.append((total, s))
            within += abs(total - s) <= max(Fraction(allowance) * s, Fraction(resolution)) + SLACK
            last = at
        whole = sum(s for _, s in parts)
        rows.append((depths, hours, stored, allowance, resolution, float(sum(t for t, _ in parts) / whole) if whole else "", int(whole == 0), within))
    write(FOLDER, PROGRAM, "storage-gauges-of-one", "recording gauges against a storage gauge that held 1 mm, or nothing, or as much more as is let be", [("x", "mm, hours"), ("at", "h, readings"), ("stored", "mm, stored"), ("allowance", "1, allowance"), ("resolution", "mm, always let be"), ("ratio", "1, ratio"), ("none", "1, 1 if there is none"), ("within", "1, readings let be")],
          [("depths", "text x"), ("reading_hours", "text at"), ("stored_mm", "text stored"), ("allowance", "allowance"), ("resolution_mm", "resolution")],
          [("ratio", "gauge.storage.ratio"), ("none", "refusal.gauge.storage.ratio"), ("within", "gauge.storage.count", "input.verdict = word within")], rows)
    rows = []
    for way in ("count", "interval", "smooth"):
        for tips in ("100 100 100 1900", "50 700 700 700 700 2000 2000", "900 900"):
            rows.append((way, tips, float(len(tips.split()) * Fraction("0.2"))))
    write(FOLDER, PROGRAM, "tips-at-one-instant", "the depth of a record is that of all its tips, several at one instant among them", [("way", "text, how they are spread"), ("t", "s, tips"), ("depth", "mm, depth")],
          [("spreading", "text way"), ("tip_seconds", "text t"), ("tip_mm", "0.2"), ("record_seconds", "3600"), ("step_seconds", "3600"), ("step", "0")], [("depth", "gauge.tips.step-depth")], rows, tolerance="1e-11", reason="sums of tips")
    rows = [("1 2 3 4 5; 2 4 6 8 10; 4 8 12 16 20", "0.2", 1), ("1 2 3 4 5; 1 2 3 4 5; 1 2 3 4 5", "0.2", 0), ("1 2 3 4 5; 8 16 24 32 40", "0.2", 0), ("1 2 3 4 5; 2 4 6 8 10; 4 8 12 16 20; 16 32 48 64 80", "0.2", 2)]
    write(FOLDER, PROGRAM, "networks-of-few", "gauges that agree with nobody are set aside while more than two are left", [("gauges", "mm, days of each"), ("tolerance", "1, tolerance"), ("aside", "1, gauges set aside")],
          [("gauges", "text gauges"), ("wet_mm", "0.5"), ("gauge", "1"), ("tolerance", "tolerance")], [("aside", "gauge.neighbours.set-aside")], rows, tolerance="0", reason="a count")
    rows = [("5 1000000", 0), ("5 1000001", 1), ("5 -1", 1), ("5 0.5", 1), ("0 3", 0)]
    write(FOLDER, PROGRAM, "counts-refused", "counts of tips that a reading may hold", [("counts", "text, counts"), ("refused", "1, 1 if refused")], [("counts", "text counts")], [("refused", "refusal.gauge.tips.of-counts")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    storms()
    events()
    gauges()
