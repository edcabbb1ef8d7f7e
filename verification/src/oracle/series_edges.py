"""Visits and what they propose, intervals, steps with gaps, and figures of a whole series: plain Python with exact fractions, no code in
common with the library.

    python3 series_edges.py FOLDER

writes the tables named below into the folder of the timeseries tables. All records are invented, from the seed below; rules of the
proposals are those of the documentation.
"""

import math
import random
import statistics
import sys
from datetime import datetime, timedelta
from fractions import Fraction as F

from mpmath import erfinv, mp

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "series_edges.py"
NAN = float("nan")
START = datetime(2001, 1, 1)
mp.dps = 20


def places(values):
    return float(sum(i * F(v) for i, v in enumerate(values, 1) if v == v))


def exact(value):
    return F(str(value))


def visits(rng):
    rows = []
    for k in range(14):
        minutes = [15 * i + (2 if k % 4 == 1 else 0) for i in range(400)]
        depths = [NAN if rng.random() < 0.1 else round(rng.uniform(0.1, 0.5), 3) for _ in minutes]
        velocities = [NAN if rng.random() < 0.1 else round(rng.uniform(0.0, 1.5), 2) for _ in minutes]
        gap = rng.choice([15, 20, 31])
        tolerance = dict(depth=(rng.choice([0.006, 0.02]), 0.02), velocity=(0.05, 0.1), clock=(rng.choice([20, 60]), 0))

        def reading(values, t):
            for at, v in zip(minutes, values):
                if at == t and v == v:
                    return exact(v)
            usable = [(at, exact(v)) for at, v in zip(minutes, values) if v == v]
            before, after = [p for p in usable if p[0] < t], [p for p in usable if p[0] > t]
            if not before or not after or after[0][0] - before[-1][0] > gap:
                return None
            (t0, v0), (t1, v1) = before[-1], after[0]
            return v0 + (v1 - v0) * (F(t) - t0) / (t1 - t0)

        lines, met, ahead = [], [], rng.choice([0, 90, -200])
        for t in sorted(rng.sample(range(100, 5900), 7)):
            hand = dict(depth=None, velocity=None, clock=None)
            at = reading(depths, t)
            if rng.random() < 0.8:
                error = rng.choice([0.0, 0.004, 0.03, 0.031, -0.05])
                hand["depth"] = round(float(at or F(3, 10)) + error, 3)
            if rng.random() < 0.6:
                hand["velocity"] = round(float(reading(velocities, t) or F(1, 2)) * rng.choice([1.0, 1.02, 1.3, 0.7]), 2)
            if rng.random() < 0.7:
                hand["clock"] = ahead + rng.choice([0, 10, -15, 300])
            sediment = rng.choice([None, None, 0.02, 0.05])
            adjusted = rng.random() < 0.3
            met.append((t, hand, sediment, adjusted))
            show = lambda v: "" if v is None else str(v)
            lines.append(",".join([(START + timedelta(minutes=t)).strftime("%Y-%m-%dT%H:%M:%SZ"), "A. N. Author", show(hand["depth"]), show(hand["velocity"]), show(sediment), show(hand["clock"]), "yes" if adjusted else ""]))
        given = "|".join(["time,author,hand depth,hand velocity,sediment,clock,adjusted", *lines])
        found = {}
        listed = []
        count = 0
        for i, (t, hand, _, _) in enumerate(met):
            for quantity in ("depth", "velocity", "clock"):
                by = hand[quantity]
                if by is None:
                    continue
                if quantity == "clock":
                    monitor, by, limit = exact(by), F(0), F(tolerance["clock"][0])
                else:
                    monitor, by = reading(depths if quantity == "depth" else velocities, t), exact(by)
                    limit = max(exact(tolerance[quantity][0]), exact(tolerance[quantity][1]) * abs(by))
                if monitor is not None:
                    count += 1
                    found[i, quantity] = (monitor, by, limit)
                    listed.append((monitor - by, limit))
        beyond = lambda entry: abs(entry[0] - entry[1]) > entry[2]
        proposals = []  # kind by place in its list, from, to, value, value at the end
        for i in range(1, len(met)):
            t = met[i][0]

            def last(quantity):
                return next((j for j in range(i - 1, -1, -1) if met[j][3] or (j, quantity) in found), None)

            j = last("depth")
            if (i, "depth") in found and j is not None:
                d2, limit = found[i, "depth"][0] - found[i, "depth"][1], found[i, "depth"][2]
                right = met[j][3]
                d1 = F(0) if right else found[j, "depth"][0] - found[j, "depth"][1]
                if beyond(found[i, "depth"]) or not right and beyond(found[j, "depth"]):
                    if abs(d2 - d1) <= limit:
                        proposals.append((1, met[j][0], t, -(d1 + d2) / 2, -(d1 + d2) / 2))
                    else:
                        proposals.append((2, met[j][0], t, -d1, -d2))
            j = last("velocity")
            if (i, "velocity") in found and j is not None and beyond(found[i, "velocity"]) and found[i, "velocity"][0] != 0 and found[i, "velocity"][1] != 0:
                proposals.append((3, met[j][0], t, found[i, "velocity"][1] / found[i, "velocity"][0], None))
            j = last("clock")
            if (i, "clock") in found and j is not None and not met[j][3] and beyond(found[i, "clock"]):
                if abs(found[i, "clock"][0] - found[j, "clock"][0]) <= tolerance["clock"][0]:
                    proposals += 2 * [(4, met[j][0], t, -found[i, "clock"][0], None)]
        looked = [(t, s) for t, _, s, _ in met if s is not None]
        for n, (t, s) in enumerate(looked):
            proposals.append((7, t, looked[n + 1][0] if n + 1 < len(looked) else 1000000, exact(s), None))
        rows.append((given, text(minutes), text(depths), text(velocities), tolerance["depth"][0], tolerance["depth"][1], 0.05, 0.1, tolerance["clock"][0], gap,
                     places([d for d, _ in listed]), count, places([m for _, m in listed]), places([abs(d) > m for d, m in listed]),
                     places([p[0] for p in proposals]), places([p[3] for p in proposals]), places([p[3] if p[4] is None else p[4] for p in proposals]), places([p[1] for p in proposals]), places([p[2] for p in proposals])))
    names = [("differences", "visits.differences"), ("compared", "visits.compared"), ("tolerances", "visits.tolerances"), ("beyond", "visits.beyond"), ("kinds", "visits.proposed.kinds"), ("values", "visits.proposed.values"), ("ends", "visits.proposed.ends"),
             ("from", "visits.proposed.from"), ("to", "visits.proposed.to")]
    columns = [("visits", "text, visits"), ("minutes", "min, times"), ("depths", "m, depths"), ("velocities", "m/s, velocities"), ("dt", "m, tolerance"), ("ds", "1, share"), ("vt", "m/s, tolerance"), ("vs", "1, share"), ("clock", "s, tolerance"), ("gap", "min, longest gap")]
    write(FOLDER, PROGRAM, "visits-and-proposals", "visits compared with a record with gaps, and the corrections that follow: kinds in the order of their list, times their places",
          columns + [(n, f"1, {n}") for n, _ in names],
          [("visits", "text visits"), ("minutes", "text minutes"), ("depths", "text depths"), ("velocities", "text velocities"), ("depth_tolerance", "dt"), ("depth_share", "ds"), ("velocity_tolerance", "vt"), ("velocity_share", "vs"), ("clock_seconds", "clock"), ("gap_minutes", "gap")],
          names, rows, tolerance="1e-10 relative or 1e-10")


def intervals(rng):
    rows = []
    for _ in range(20):
        a, b = sorted(rng.sample(range(100), 2))
        c, d = sorted(rng.sample(range(100), 2))
        rows.append((a, b, c, d, float(F(max(0, min(b, d) - max(a, c)), b - a))))
    rows += [(5, 5, 0, 9, 0), (0, 10, 10, 20, 0), (3, 7, 0, 50, 1)]
    write(FOLDER, PROGRAM, "interval-shares", "share of an interval that another covers", [("a", "min, from"), ("b", "min, to"), ("c", "min, from"), ("d", "min, to"), ("share", "1, share")], [("from", "a"), ("to", "b"), ("other_from", "c"), ("other_to", "d")],
          [("share", "interval.share")], rows)
    rows = []
    for _ in range(16):
        step, n = rng.choice([1, 5, 7]), rng.randrange(5, 30)
        x = [round(rng.uniform(1, 9), 2) for _ in range(n)]
        a = rng.choice([rng.randrange(-20, n * step), rng.randrange(0, n) * step])
        b = a + rng.choice([1, step, step + 1, 3 * step, 4 * step - 1])
        left = [v for v in x]
        for i in range(n):
            if min(b, (i + 1) * step) > max(a, i * step):
                left[i] = NAN
        rows.append((text(x), step, a, b, places(left), sum(v != v for v in left)))
    write(FOLDER, PROGRAM, "series-with-missing", "steps that share time with an interval, made missing", [("x", "1, values"), ("step", "min, step"), ("a", "min, from"), ("b", "min, to"), ("sum", "1, values times places"), ("missing", "1, missing steps")],
          [("values", "text x"), ("step_minutes", "step"), ("from", "a"), ("to", "b")], [("sum", "series.with-missing"), ("missing", "series.with-missing.steps")], rows)


def coarse(rng):
    rows = []
    for k in range(20):
        step, n = rng.choice([(5, 15), (10, 60), (15, 60), (20, 60)])
        x = [NAN if rng.random() < 0.3 else round(rng.uniform(-3, 9), 2) for _ in range(40)]
        least = rng.choice([0.01, 0.4, 0.6, 0.75, 1.0])
        if k % 5 == 4:  # what each comes with: three quarters, of a sum all
            step, n, least = 5, 45, 0
        for statistic in ("mean", "sum", "maximum", "minimum", "last"):
            size = math.ceil(40 * step / n)
            values, coverage = [], []
            for i in range(size):
                part = [exact(v) for v in x[i * n // step:(i + 1) * n // step] if v == v]
                share = F(len(part), n // step)
                coverage.append(share)
                if not part or share < (exact(least) if least else F(1) if statistic == "sum" else F(3, 4)):
                    values.append(NAN)
                else:
                    values.append({"mean": sum(part) / len(part), "sum": sum(part), "maximum": max(part), "minimum": min(part), "last": part[-1]}[statistic])
            rows.append((text(x), step, n, statistic, least, places(values), places(coverage)))
    write(FOLDER, PROGRAM, "coarser-steps", "steps with gaps put together into longer ones, with the share of each that was known", [("x", "1, values"), ("step", "min, step"), ("coarse", "min, longer step"), ("statistic", "text, figure"), ("least", "1, least share"),
          ("value", "1, values times places"), ("share", "1, shares times places")], [("values", "text x"), ("step_minutes", "step"), ("coarse", "coarse"), ("statistic", "text statistic"), ("least", "least")],
          [("value", "resample.steps.value"), ("share", "resample.steps.coverage")], rows, tolerance="1e-11 relative or 1e-11")


def figures(rng):
    rows = []
    for n in (1, 2, 5, 30):
        x = [NAN if rng.random() < 0.2 and n > 2 else round(rng.uniform(-50, 50), 2) for _ in range(n)]
        known = [v for v in x if v == v]
        rows.append((text(x), min(known), max(known), n - len(known)))
    write(FOLDER, PROGRAM, "least-and-greatest", "least and greatest of a sample with gaps, and how many they are", [("x", "1, sample"), ("low", "1, least"), ("high", "1, greatest"), ("gaps", "values, missing")], [("sample", "text x")],
          [("low", "statistics.minimum"), ("high", "statistics.maximum"), ("gaps", "statistics.missing")], rows)
    rows = []
    for _ in range(8):
        n = rng.randrange(8, 22)
        t = sorted(rng.sample(range(0, 40000, 7), n))
        x = [NAN if rng.random() < 0.15 else round(3 + 0.0002 * at + rng.gauss(0, 1.5), 1) for at in t]
        points = [(F(at), exact(v)) for at, v in zip(t, x) if v == v]
        days = [(at - points[0][0]) / 1440 for at, _ in points]
        values = [v for _, v in points]
        m = len(points)
        slopes = sorted((values[j] - values[i]) / (days[j] - days[i]) for i in range(m) for j in range(i + 1, m))
        slope = statistics.median(slopes)
        middle = statistics.median(values) - slope * statistics.median(days)
        ties = [values.count(v) for v in set(values)]
        variance = F(m * (m - 1) * (2 * m + 5) - sum(c * (c - 1) * (2 * c + 5) for c in ties), 18)
        spread = float(mp.sqrt(2) * erfinv(mp.mpf("0.95"))) * math.sqrt(variance)

        def ranked(rank):
            at = min(max(rank - 1, 0), len(slopes) - 1)
            low = int(at)
            return float(slopes[low]) + (at - low) * float(slopes[min(low + 1, len(slopes) - 1)] - slopes[low])

        pairs = m * (m - 1) / 2
        cut = t[n // 2] - 1
        before, after = [v for at, v in points if at < cut], [v for at, v in points if at >= cut]
        rows.append((text(t), text(x), float(slope), float(middle), ranked((pairs - spread) / 2), ranked((pairs + spread) / 2 + 1), cut, float(statistics.median(before)), float(statistics.median(after)),
                     float(statistics.median(b - a for a in before for b in after))))
    write(FOLDER, PROGRAM, "series-figures", "P. K. Sen (1968), with the limits of R. O. Gilbert (1987): slopes of series with gaps, a day, and medians before and after a time (J. L. Hodges, E. L. Lehmann 1963)",
          [("t", "min, times"), ("x", "1, readings"), ("slope", "1, slope a day"), ("intercept", "1, intercept"), ("lower", "1, lower limit"), ("upper", "1, upper limit"), ("at", "min, time of the change"), ("before", "1, median before"), ("after", "1, median after"), ("shift", "1, shift")],
          [("minutes", "text t"), ("values", "text x")],
          [("slope", "trend.theil-sen.of-series.slope"), ("intercept", "trend.theil-sen.of-series.intercept"), ("lower", "trend.theil-sen.of-series.lower"), ("upper", "trend.theil-sen.of-series.upper"), ("before", "trend.before-after.median-before", "input.at = at"),
           ("after", "trend.before-after.median-after", "input.at = at"), ("shift", "trend.before-after.series-shift", "input.at = at")], rows, tolerance="1e-10 relative or 1e-10")
    rows = []
    for x in ([1, 2, 1, 2, 1, 2], [5, 3, 4, 5, 3, 4, 4], [1, 1, 1, 1, 2], [3, 9, 1, 4, 4, 7, 2, 8]):
        n = len(x)
        steps = [sum((x[j] > x[i]) - (x[j] < x[i]) for i in range(t) for j in range(t, n)) for t in range(1, n)]
        k = max(abs(s) for s in steps)
        rows.append((text(x), k, min(1.0, 2 * math.exp(-6.0 * k * k / (n**3 + n**2)))))
    write(FOLDER, PROGRAM, "pettitt-without-a-change", "A. N. Pettitt (1979): samples without a change, whose approximate probability would be above 1", [("x", "1, sample"), ("k", "1, statistic"), ("p", "1, probability")], [("sample", "text x")],
          [("k", "change.pettitt.statistic"), ("p", "change.pettitt.p-value")], rows)
    before, after, times, sample = text([1, 2, 4, 7, 3, 9, 2]), text([3, 9, 7, 12, 5]), text([1, 2, 3, 4, 5, 6, 7]), text([2, 3, 3, 5, 4, 7, 6])
    rows = [(c, before, after, times, sample, int(not 0 < c < 1), int(not 0 < c < 1)) for c in (0.0, 0.02, 0.5, 0.99, 1.0, 1.02, 1.04)]
    write(FOLDER, PROGRAM, "refusals-of-confidences", "confidences between 0 and 1, and others",
          [("c", "1, confidence"), ("b", "1, values before"), ("a", "1, values after"), ("t", "1, times"), ("x", "1, values"), ("refused", "1, 1 if refused, else 0"), ("again", "1, 1 if refused, else 0")], [("confidence", "c")],
          [("refused", "refusal.trend.before-after.lower", "input.before = text b", "input.after = text a"), ("again", "refusal.trend.theil-sen.lower", "input.times = text t", "input.sample = text x")],
          rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    random_ = random.Random(20261129)
    for part in (visits, intervals, coarse, figures):
        part(random_)
