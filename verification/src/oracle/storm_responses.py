"""Responses to storms and their change with time, and the rank sum test: plain Python, SciPy for the normal distribution.

    python3 storm_responses.py FOLDER

writes storm-responses*.csv into the folder of the tables of rainfall, before-after*.csv into that of timeseries. Records are looked at minute by
minute, exact tests by all orders of the values. Records are invented, from the seeds below.
"""

import itertools
import math
import random
import sys
from pathlib import Path

import numpy as np
from scipy.stats import kendalltau, norm

FOLDER = Path(sys.argv[1] if len(sys.argv) > 1 else "rainfall").resolve()
NAN = float("nan")


def text(values):
    return " ".join("NaN" if v != v else repr(float(v)) if float(v) != int(v) else str(int(v)) for v in values)


def write(path, columns, rows):
    module, name = path.split("/", 1)
    if module != FOLDER.name:
        return
    with open(FOLDER / name, "w", newline="\n") as out:
        out.write(",".join(columns) + "\n")
        for row in rows:
            out.write(",".join(str(v) if isinstance(v, (str, int)) else repr(float(v)) for v in row) + "\n")


# Two groups of values


def exact_tail(m, n, u):
    """P(U at least as far from its middle): all choices of ranks for the first group."""
    total = far = 0
    for chosen in itertools.combinations(range(m + n), m):
        # Pairs in which the value of the second group is the greater.
        value = sum(1 for a in chosen for b in range(m + n) if b > a) - m * (m - 1) // 2
        total += 1
        far += abs(value - m * n / 2) >= abs(u - m * n / 2)
    return far / total


def exact_rank(m, n, alpha):
    counts = [0] * (m * n + 1)
    for chosen in itertools.combinations(range(m + n), m):
        counts[sum(chosen) - m * (m - 1) // 2] += 1
    total, k, sum_ = sum(counts), 0, counts[0]
    while sum_ / total < alpha / 2:
        k += 1
        sum_ += counts[k]
    return max(1, k)


def between(sorted_, rank):
    """Value of a rank counted from 1, by a line between two."""
    rank = min(max(rank, 1), len(sorted_))
    low = math.floor(rank)
    high = min(low + 1, len(sorted_))
    return sorted_[low - 1] + (rank - low) * (sorted_[high - 1] - sorted_[low - 1])


def compare(x, y, confidence):
    m, n = len(x), len(y)
    differences = sorted(b - a for a in x for b in y)
    u = sum(1.0 if d > 0 else 0.5 if d == 0 else 0.0 for d in differences)
    both = x + y
    ties = [both.count(v) for v in set(both)]
    variance = m * n / 12 * (m + n + 1 - sum(t**3 - t for t in ties) / ((m + n) * (m + n - 1)))
    excess = u - m * n / 2
    z = 0.0 if excess == 0 else (excess - math.copysign(0.5, excess)) / math.sqrt(variance)
    if max(ties) == 1 and max(m, n) <= 50:
        p = exact_tail(m, n, u)
        k = exact_rank(m, n, 1 - confidence)
        lower, upper = differences[k - 1], differences[m * n - k]
    else:
        p = 2 * norm.sf(abs(z))
        c = 2 * norm.ppf((1 + confidence) / 2) * math.sqrt(variance)
        lower, upper = between(differences, (m * n - c) / 2), between(differences, (m * n + c) / 2 + 1)
    return u, z, p, float(np.median(differences)), lower, upper


def before_after():
    rng = random.Random(7)
    rows = []
    for k in range(24):
        m, n = rng.randrange(2, 9), rng.randrange(2, 9)
        if k < 12:
            # No two of these are equal.
            pool = rng.sample(range(1, 400), m + n)
            x, y = [v / 8 for v in pool[:m]], [v / 8 + 12.5 * (k % 3) + 0.0625 for v in pool[m:]]
        else:
            x, y = [rng.randrange(0, 12) / 2 for _ in range(m)], [rng.randrange(1, 16) / 2 for _ in range(n)]
            y[0] = x[0]
        confidence = rng.choice([0.8, 0.9, 0.95])
        rows.append([text(x), text(y), confidence, *compare(x, y, confidence)])
    for m, n in ((51, 20), (30, 55), (60, 60)):
        x = [rng.randrange(0, 100000) / 16 for _ in range(m)]
        y = [rng.randrange(20000, 120000) / 16 for _ in range(n)]
        rows.append([text(x), text(y), 0.95, *compare(x, y, 0.95)])
    comparison_table(len(rows))
    write("timeseries/before-after.csv", ["before", "after", "confidence", "u", "z", "p", "shift", "lower", "upper"], rows)


# Storms

RAIN, FLOW = 5, 15  # minutes
DOUBTS = ["RAIN_MISSING", "FLOW_MISSING", "WET_BEFORE", "NEXT_STORM", "NOT_BACK", "MORE_THAN_RAIN", "BELOW_DRY", "NO_RESPONSE", "PEAK_AT_LIMIT", "NO_RECESSION"]
AGAINST = {
    "DEPTH": [0], "VOLUME": [1, 2, 3, 4, 6], "RUNOFF_PERCENT": [0, 1, 2, 3, 4, 5, 6], "PEAK": [1, 2, 8],
    "LAG_TO_PEAK": [0, 1, 2, 7, 8], "LAG_TO_CENTRE": [0, 1, 2, 3, 4, 6, 7], "RECESSION": [1, 3, 7, 8, 9], "TIME_TO_DRY": [1, 3, 4],
}


def record(rng, quirk):
    """Ten days with storms and their response; quirk is what is wrong with some."""
    minutes = 14400
    rain, flow = [0.0] * (minutes // RAIN), [0.0] * (minutes // FLOW)
    dry = [round(0.02 + 0.008 * math.sin(2 * math.pi * (i * FLOW - 400) / 1440), 5) for i in range(len(flow))]
    starts = [rng.randrange(900, 1400) + 1700 * k for k in range(7)]
    if quirk == "close":
        starts[3] = starts[2] + 500
    for k, start in enumerate(starts):
        at = start // RAIN
        wet = rng.randrange(6, 30)
        for i in range(wet):
            rain[at + i] = 0.0 if rng.random() < 0.2 and 0 < i < wet - 1 else rng.randrange(1, 10) / 10
        volume = sum(rain[at:at + wet]) * 50 * rng.uniform(0.05, 0.25) * (1 + 0.1 * k)
        late, fall = rng.randrange(2, 7) + 6 * (quirk == "late"), rng.uniform(60, 240)
        shape = [math.exp(-i * FLOW / fall) for i in range(100)]
        first = start // FLOW + late
        for i, s in enumerate(shape):
            if first + i < len(flow):
                flow[first + i] += volume / 900 * s / sum(shape)
        for i in range(3):
            flow[first - 3 + i] += volume / 900 * (i + 1) / 5 / sum(shape)
    flow = [round(f + d + rng.uniform(-1, 1) * 2e-4, 6) for f, d in zip(flow, dry)]
    if quirk == "holes":
        for k in (1, 4):
            i = starts[k] // FLOW + rng.randrange(3, 9)
            flow[i] = NAN
        rain[starts[2] // RAIN + 2] = NAN
        dry[starts[5] // FLOW + 20] = NAN
    if quirk == "high":
        for i in range(starts[3] // FLOW + 10, len(flow)):
            flow[i] = round(flow[i] + 0.008, 6)
    if quirk == "low":
        for i in range(starts[3] // FLOW - 10, starts[3] // FLOW + 60):
            flow[i] = round(flow[i] - 0.006, 6)
        for k in (1,):
            for i in range(starts[k] // FLOW + 1, starts[k] // FLOW + 80):
                flow[i] = round(flow[i] + 0.03 * math.exp(-(i - starts[k] // FLOW) / 25), 6)
    if quirk == "none":
        for i in range(starts[2] // FLOW - 3, starts[2] // FLOW + 60):
            flow[i] = dry[i]
    return rain, flow, dry


def separate(rain, gap):
    """Storms as (first minute, end minute): wet steps with less than the gap between them."""
    wet = [i for i, r in enumerate(rain) if r > 0]
    storms = []
    for i in wet:
        if storms and (i * RAIN - storms[-1][1]) < gap:
            storms[-1][1] = (i + 1) * RAIN
        else:
            storms.append([i * RAIN, (i + 1) * RAIN])
    return storms


def responses(rain, flow, dry, area, allowance, held, lag, longest, gap):
    storms = separate(rain, gap)
    total = len(rain) * RAIN
    above = [f - d for f, d in zip(flow, dry)]
    found = []
    for k, (start, end) in enumerate(storms):
        following = storms[k + 1][0] if k + 1 < len(storms) else 10**9
        cut = min(following, end + longest, total)
        # The peak: steps of flow that end after the storm began and begin before the limit.
        limit = min(end + lag, cut)
        steps = [i for i in range(len(flow)) if (i + 1) * FLOW > start and i * FLOW < limit]
        known = [i for i in steps if above[i] == above[i]]
        peak = max(known, key=lambda i: (above[i], -i)) if known else None
        begin = end
        if peak is not None and (peak + 1) * FLOW < cut:
            begin = max(end, (peak + 1) * FLOW)
        back = None
        for i in range(-(-begin // FLOW), len(flow)):
            need = -(-held // FLOW)
            if i + need > -(-cut // FLOW):
                break
            if all(flow[j] - dry[j] <= allowance * dry[j] for j in range(i, i + need)):
                back = i * FLOW
                break
        if back is not None and back > cut:
            back = None
        stop = cut if back is None else back
        fell = missing_rain = ran = missing_flow = 0
        for i, r in enumerate(rain):
            shared = min(stop, (i + 1) * RAIN) - max(start, i * RAIN)
            if shared > 0:
                missing_rain += r != r
                fell += 0 if r != r else r * shared / RAIN
        for i, a in enumerate(above):
            shared = min(stop, (i + 1) * FLOW) - max(start, i * FLOW)
            if shared > 0:
                missing_flow += a != a
                ran += 0 if a != a else a * shared * 60
        fell_m3 = fell * area / 1000
        # Rain missing in the gap that ended the storm makes it incomplete, as does a record too short on either side.
        around = [r for i, r in enumerate(rain) if start <= i * RAIN < end + gap]
        incomplete = any(r != r for r in around) or start < gap or end + gap > total
        inside = [(i, r) for i, r in enumerate(rain) if start <= i * RAIN < end and r == r]
        centre = sum(r * (i + 0.5) * RAIN for i, r in inside) / sum(r for i, r in inside)
        mass = [(i, above[i]) for i in range(len(flow)) if start <= i * FLOW < stop and above[i] == above[i]]
        volume = sum(a for i, a in mass)
        middle = sum(a * (i + 0.5) * FLOW for i, a in mass) / volume if volume > 0 else None
        if middle is not None and not mass[0][0] * FLOW <= middle <= stop + FLOW:
            middle = None
        fit = None
        if peak is not None:
            points = [(i, math.log(above[i])) for i in range(peak + 1, len(flow)) if i * FLOW < stop and above[i] > 0]
            if len(points) >= 3:
                t, q = np.array(points).T
                slope = np.polyfit(t, q, 1)[0]
                if slope < 0:
                    fit = (-FLOW / 60 / slope, np.corrcoef(t, q)[0, 1] ** 2)
        first = start // FLOW - 1
        rises = peak is not None and above[peak] > allowance * dry[peak]
        by_next = back is None and cut == following
        doubts = [
            missing_rain > 0 or incomplete, missing_flow > 0,
            not (first >= 0 and above[first] <= allowance * dry[first]),
            by_next, back is None and not by_next, ran > fell_m3, ran < 0, not rises,
            rises and (peak + 1) * FLOW >= limit, fit is None or fit[1] < 0.8,
        ]
        value = {
            "DEPTH": sum(r for i, r in inside), "VOLUME": ran, "RUNOFF_PERCENT": 100 * ran / fell_m3,
            "PEAK": above[peak], "LAG_TO_PEAK": ((peak + 0.5) * FLOW - centre) / 60,
            "LAG_TO_CENTRE": None if middle is None else (middle - centre) / 60,
            "RECESSION": None if fit is None else fit[0], "TIME_TO_DRY": None if back is None else (back - end) / 60,
        }
        found.append((start, value, doubts))
    return found


def sound(found, measure):
    return [(s, v[measure]) for s, v, d in found if v[measure] is not None and not any(d[i] for i in AGAINST[measure])]


def storms():
    rng = random.Random(41)
    values, doubts, changes, outside = [], [], [], []
    for name in ("whole", "close", "holes", "high", "low", "none", "late"):
        rain, flow, dry = record(rng, name)
        area = 50000
        setting = (0.1, rng.choice([45, 60, 90]), rng.choice([180, 240]), rng.choice([1440, 2000]), 360)
        if name == "late":
            setting = (0.15, 70, 20, 300, 360)
        found = responses(rain, flow, dry, area, *setting)
        for what, series in (("rain", rain), ("flow", flow), ("dry", dry)):
            lines = [text(series[i:i + 12]) for i in range(0, len(series), 12)]
            if FOLDER.name == "rainfall":
                (FOLDER / f"data/storm-{what}-{name}.txt").write_text("\n".join(lines) + "\n")
        for k, (start, value, doubt) in enumerate(found):
            for measure, v in value.items():
                if v is not None:
                    is_sound = int(not any(doubt[i] for i in AGAINST[measure]))
                    values.append([name, area, *setting, k, measure, v, is_sound])
            for label, d in zip(DOUBTS, doubt):
                doubts.append([name, area, *setting, k, label, int(d)])
        for measure in AGAINST:
            points = sound(found, measure)
            if len(points) < 5:
                continue
            t, v = np.array(points).T
            years = t / (1440 * 365.25)
            slopes = [(v[j] - v[i]) / (years[j] - years[i]) for i in range(len(t)) for j in range(i)]
            if len(set(np.round(v, 9))) < len(v):
                continue
            p = kendalltau(t, v, method="exact").pvalue
            # limits of 95 % by Gilbert (1987): ranks on either side of the middle, without ties
            slopes.sort()
            spread = norm.ppf(0.975) * math.sqrt(len(t) * (len(t) - 1) * (2 * len(t) + 5) / 18)
            lower, upper = between(slopes, (len(slopes) - spread) / 2), between(slopes, (len(slopes) + spread) / 2 + 1)
            minute = int(t[len(t) // 2])
            before, after = [x for s, x in points if s < minute], [x for s, x in points if s >= minute]
            shift = float(np.median([b - a for a in before for b in after]))
            changes.append([name, area, *setting, measure, minute, float(np.median(slopes)), float(lower), float(upper), p, shift, len(found) - len(points), len(found) - len(points)])
    # Each row asks for the whole record: of so many, every third value, and every seventh of the doubts that are not raised.
    values = values[::3]
    doubts = [row for i, row in enumerate(doubts) if row[-1] or i % 7 == 0]
    head = ["record", "area", "allowance", "held", "lag", "longest", "gap"]
    write("rainfall/storm-responses.csv", [*head, "storm", "measure", "value", "sound"], values)
    write("rainfall/storm-response-doubts.csv", [*head, "storm", "doubt", "is"], doubts)
    write("rainfall/storm-response-changes.csv", [*head, "measure", "minute", "slope", "lower", "upper", "p", "shift", "left", "apart"], changes)
    tables(len(values), len(doubts), len(changes))
    print({d: sum(r[9] for r in doubts if r[8] == d) for d in DOUBTS}, len(values), len(doubts), len(changes))


def describe(path, title, columns, inputs, checks, count, tolerance, reason):
    lines = [
        "author       = Invented records", "year         = 2026", f"work         = {title}",
        "locator      = seeds in the program", "provenance   = derived oracle",
        "program      = verification/src/oracle/storm_responses.py", f"values       = {count * len(checks)}", "",
    ]
    lines += [f"column.{c} = {unit if ', ' in unit else '1, ' + unit}" for c, unit in columns] + [""] + [f"input.{k} = {v}" for k, v in inputs]
    for column, calculation in checks:
        head = f"check.{column}." if len(checks) > 1 else ""
        lines += ["", f"{head}calculation = {calculation}", f"{head}expected = {column}"]
    lines += ["", f"tolerance = {tolerance}", f"reason = {reason}"]
    module, name = path.split("/", 1)
    if module == FOLDER.name:
        (FOLDER / f"{name}.table").write_text("\n".join(lines) + "\n")


def tables(values, doubts, changes):
    columns = [("record", "which record"), ("area", "m2, area"), ("allowance", "1, share of dry weather flow"), ("held", "min, time it is held"),
               ("lag", "min, longest lag"), ("longest", "min, longest response"), ("gap", "min, dry time between storms")]
    inputs = [("rain", "file data/storm-rain-{record}.txt"), ("flow", "file data/storm-flow-{record}.txt"), ("dry", "file data/storm-dry-{record}.txt"),
              ("area", "area"), ("allowance", "allowance"), ("held_minutes", "held"), ("lag_minutes", "lag"), ("longest_minutes", "longest"), ("gap_minutes", "gap")]
    close = ("1e-9 relative or 1e-9", "times are whole nanoseconds, of volumes 16 digits are given")
    describe("rainfall/storm-responses", "responses to storms, minute by minute",
             columns + [("storm", "1, place of the storm"), ("measure", "which figure"), ("value", "as the figure, value"), ("sound", "1, whether no doubt speaks against it")],
             inputs + [("storm", "storm"), ("measure", "text measure")],
             [("value", "response.storm.value"), ("sound", "response.storm.sound")], values, *close)
    describe("rainfall/storm-response-doubts", "doubts about responses to storms",
             columns + [("storm", "1, place of the storm"), ("doubt", "which doubt"), ("is", "1, whether it is raised")],
             inputs + [("storm", "storm"), ("doubt", "text doubt")], [("is", "response.storm.doubt")], doubts, "0", "yes or no")
    describe("rainfall/storm-response-changes", "change of responses from storm to storm, by NumPy and SciPy",
             columns + [("measure", "which figure"), ("minute", "min, when it changed"), ("slope", "as the figure a year, slope"), ("lower", "as the figure a year, lower limit of 95 %"), ("upper", "as the figure a year, upper limit"), ("p", "1, two-sided, exact"), ("shift", "as the figure, value"), ("left", "1, storms left out"), ("apart", "1, storms left out of the trend")],
             inputs + [("measure", "text measure")],
             [("slope", "response.trend.per-year"), ("lower", "response.trend.lower"), ("upper", "response.trend.upper"), ("p", "response.trend.p-value"), ("shift", "response.change.shift\ncheck.shift.input.minute = minute"),
              ("left", "response.change.left-out\ncheck.left.input.minute = minute"), ("apart", "response.trend.left-out")], changes, "1e-8 relative or 1e-9", "slopes from times in nanoseconds")


def comparison_table(count):
    describe("timeseries/before-after", "rank sum test by all orders, or by the normal distribution of SciPy",
             [("before", "values before"), ("after", "values after"), ("confidence", "1, of the limits"), ("u", "1, U"), ("z", "1, standardised"), ("p", "1, two-sided"),
              ("shift", "median difference"), ("lower", "lower limit"), ("upper", "upper limit")],
             [("before", "text before"), ("after", "text after"), ("confidence", "confidence")],
             [("u", "trend.before-after.statistic"), ("z", "trend.before-after.z"), ("p", "trend.before-after.p-value"), ("shift", "trend.before-after.shift"),
              ("lower", "trend.before-after.lower"), ("upper", "trend.before-after.upper")], count, "1e-12 relative or 1e-12", "16 digits are given")


before_after()
storms()
