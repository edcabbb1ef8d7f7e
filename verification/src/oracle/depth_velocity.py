"""Depth and velocity held against the law, day by day and as a drift, and a record with rain, each from its sentence.

    python3 depth_velocity.py FOLDER

writes the tables evidence-* and site-record into the folder of the tables of hydraulics. Velocities of the law come from numerical
sections of a circle; ks is the root of the law of Colebrook and White found by bisection, not its closed form; slopes, limits and
p-values from all pairs by SciPy and by counting orders; the bend of an onset by linear algebra. Knows nothing of the library.
Python 3.11, numpy 2, scipy 1.17.
"""

import datetime
import itertools
import math
import sys
from zoneinfo import ZoneInfo

import numpy as np
from scipy import optimize, stats

from own_tables import text, write

PROGRAM = "depth_velocity.py"
NAN = float("nan")
NONE = -9999
G = 9.80665
SITE_COLUMNS = [("diameter", "m"), ("offset", "m"), ("bed", "m"), ("factor", "1"), ("n", "s/m^(1/3)"), ("gradient", "m/m")]
SITE_INPUTS = [(name, name) for name, _ in SITE_COLUMNS]


class Pipe:
    """A round pipe with a level bed of sediment; everything by the half angle of the chord."""

    def __init__(self, diameter, offset, bed, factor, n, gradient):
        self.row = [diameter, offset, bed, factor, n, gradient]
        self.d, self.offset, self.bed, self.k, self.n, self.s = self.row

    def segment(self, y):
        half = math.acos(1 - 2 * min(y, self.d) / self.d)
        return self.d**2 / 4 * (half - math.sin(half) * math.cos(half)), self.d * half, self.d * math.sin(half)

    def area(self, level):
        return self.segment(level)[0] - self.segment(self.bed)[0]

    def radius(self, level):
        low, high = self.segment(self.bed), self.segment(level)
        return (high[0] - low[0]) / (high[1] - low[1] + low[2])

    def law(self, level):
        return self.radius(level) ** (2 / 3) * math.sqrt(self.s) / self.n

    def pairs(self, depths, velocities):
        """Pairs that are part full and flow forward: levels and mean velocities."""
        return [(y + self.offset, self.k * v) for y, v in zip(depths, velocities)
                if y == y and v == v and y > 0 and self.bed < y + self.offset < self.d and v > 0]

    def sand(self, level, v, nu):
        r = self.radius(level)
        root = math.sqrt(8 * G * r * self.s)
        high = 4 * r

        def error(ks):
            return -2 * math.log10(ks / (3.7 * 4 * r) + 2.51 * nu / (4 * r * root)) * root - v

        if error(0) < 0:
            return -1
        if error(high) > 0:
            return 1
        return optimize.brentq(error, 0, high, xtol=1e-18, rtol=1e-15)


PIPES = [Pipe(0.45, 0, 0, 1, 0.013, 0.0047), Pipe(0.6, 0.02, 0.05, 0.9, 0.0145, 0.0021), Pipe(0.9, 0.1, 0.06, 1.07, 0.011, 0.0009)]


def spread(values):
    return [float(np.quantile(values, p)) for p in (0.5, 0.16, 0.84)] + [len(values)]


def readings(pipe, seed, count=23):
    random = np.random.default_rng(seed)
    depths = np.round(pipe.d * random.uniform(0.12, 0.75, count) - pipe.offset, 3)
    velocities = np.array([round(pipe.law(y + pipe.offset) / pipe.k * f, 3) for y, f in zip(depths, random.uniform(0.7, 1.25, count))])
    return depths, velocities


def relation(folder):
    rows, classes = [], []
    for i, pipe in enumerate(PIPES):
        depths, velocities = readings(pipe, 20260401 + i)
        depths[2] = pipe.d + 0.1
        depths[5] = NAN
        velocities[7] = -0.2
        velocities[9] = 0
        velocities[11] = NAN
        depths[13] = max(0.001, pipe.bed - pipe.offset - 0.001) if pipe.bed > pipe.offset else -0.01
        velocities[4] *= 3
        velocities[6] *= 4
        velocities[8] /= 6
        velocities[10] /= 9
        velocities[12] /= 11
        velocities = np.round(velocities, 4)
        levels = sorted(y for y, _ in pipe.pairs(depths, velocities))
        for lowest, highest in ((0, 50), (levels[3], levels[-2])):
            kept = [(y, v) for y, v in pipe.pairs(depths, velocities) if lowest <= y < highest]
            nu = (1.14e-6, 1.31e-6, 9.1e-7)[i]
            sands = [pipe.sand(y, v, nu) for y, v in kept]
            fast = sum(1 for k in sands if k == -1)
            slow = sum(1 for k in sands if k == 1)
            sands = [0 if k == -1 else 4 * pipe.radius(y) if k == 1 else k for k, (y, _) in zip(sands, kept)]
            rows.append([text(depths), text(velocities), float(lowest), float(highest), nu, *pipe.row, len(kept), len(depths) - len(kept),
                         *spread([v / pipe.law(y) for y, v in kept]),
                         *spread([pipe.radius(y) ** (2 / 3) * math.sqrt(pipe.s) / v for y, v in kept])[:3], *spread(sands)[:3], fast, slow])
    assert all(r[-1] > 0 and r[-2] > 0 for r in rows)
    columns = [("depths", "m, readings"), ("velocities", "m/s, readings"), ("lowest", "m"), ("highest", "m"), ("viscosity", "m2/s"), *SITE_COLUMNS,
               ("size", "count"), ("left_out", "count"), ("ratio", "1"), ("ratio_lower", "1"), ("ratio_upper", "1"), ("ratio_count", "count"),
               ("manning", "s/m^(1/3)"), ("manning_lower", "s/m^(1/3)"), ("manning_upper", "s/m^(1/3)"), ("sand", "m"), ("sand_lower", "m"),
               ("sand_upper", "m"), ("too_fast", "count"), ("too_slow", "count")]
    inputs = [("depths", "text depths"), ("velocities", "text velocities"), ("lowest", "lowest"), ("highest", "highest"), *SITE_INPUTS]
    checks = [("size", "evidence.relation.size"), ("left_out", "evidence.relation.left-out"), ("ratio", "evidence.relation.ratio"),
              ("ratio_lower", "evidence.relation.ratio.lower"), ("ratio_upper", "evidence.relation.ratio.upper"),
              ("ratio_count", "evidence.relation.ratio.count"), ("manning", "evidence.relation.manning"),
              ("manning_lower", "evidence.relation.manning.lower"), ("manning_upper", "evidence.relation.manning.upper")]
    sand = [("sand", "evidence.relation.sand"), ("sand_lower", "evidence.relation.sand.lower"), ("sand_upper", "evidence.relation.sand.upper"),
            ("too_fast", "evidence.relation.sand.too-fast"), ("too_slow", "evidence.relation.sand.too-slow")]
    checks += [(c, k, "input.viscosity = viscosity") for c, k in sand]
    write(folder, PROGRAM, "evidence-relation", "Readings against the law of resistance in a circle with a bed", columns, inputs, checks, rows,
          tolerance="1e-11 relative or 1e-14")
    for i, (pipe, width) in enumerate(zip(PIPES, (0.05, 0.1, 0.25))):
        depths, velocities = readings(pipe, 20260411 + i, 31)
        # Readings on the very edge between two classes, where a quotient of doubles falls short: 0.3/0.1 is 2.9999999999999996.
        depths[0], depths[1] = round(width * 3 - pipe.offset, 3), round(width * 3 - pipe.offset - 0.001, 3)
        kept = pipe.pairs(depths, velocities)
        numbers = sorted({math.floor(round(y / width, 6)) for y, _ in kept})
        for j, number in enumerate(numbers):
            inside = [(y, v) for y, v in kept if math.floor(round(y / width, 6)) == number]
            level = float(np.median([y for y, _ in inside]))
            v = spread([v for _, v in inside])
            classes.append([text(depths), text(velocities), width, j, *pipe.row, len(numbers), number * width, (number + 1) * width, level,
                            *v[:3], len(inside), pipe.law(level), v[0] / pipe.law(level)])
    columns = [("depths", "m, readings"), ("velocities", "m/s, readings"), ("width", "m"), ("which", "class from 0"), *SITE_COLUMNS,
               ("number", "count of classes"), ("from_level", "m"), ("to_level", "m"), ("level", "m"), ("velocity", "m/s"), ("lower", "m/s"),
               ("upper", "m/s"), ("readings", "count"), ("law", "m/s"), ("ratio", "1")]
    inputs = [("depths", "text depths"), ("velocities", "text velocities"), ("width", "width"), *SITE_INPUTS]
    k = "input.class = which"
    write(folder, PROGRAM, "evidence-classes", "Readings in classes of level", columns, inputs,
          [("number", "evidence.class.number"), ("from_level", "evidence.class.from", k), ("to_level", "evidence.class.to", k),
           ("level", "evidence.class.level", k), ("velocity", "evidence.class.velocity", k), ("lower", "evidence.class.velocity.lower", k),
           ("upper", "evidence.class.velocity.upper", k), ("readings", "evidence.class.readings", k), ("law", "evidence.class.law", k),
           ("ratio", "evidence.class.ratio", k)], classes, tolerance="1e-12 relative or 1e-12")


def days(folder):
    """Medians of a local day; days on which clocks change have 23 or 25 hours."""
    rows = []
    start = datetime.datetime(2001, 1, 1, tzinfo=datetime.timezone.utc)
    for i, (zone, day, pipe) in enumerate((("UTC", 0, PIPES[0]), ("Europe/Dublin", 83, PIPES[1]), ("Europe/Dublin", 300, PIPES[1]),
                                           ("Pacific/Chatham", 12, PIPES[2]), ("UTC", 5, PIPES[0]))):
        random = np.random.default_rng(20260420 + i)
        local = ZoneInfo(zone)
        date = datetime.date(2001, 1, 1) + datetime.timedelta(days=day)
        begin, end = (int((datetime.datetime.combine(d, datetime.time(), local) - start).total_seconds())
                      for d in (date, date + datetime.timedelta(days=1)))
        times = np.arange(begin - 5400, end + 5400, 1500)
        times = np.unique(np.concatenate([times, [begin, begin - 1, end - 1, end]]))
        times = times[(times < begin + 4 * 3600 + 300) | (times >= begin + 7 * 3600)]
        if i == 4:
            times = np.array([begin + 7200])
        times = times[times >= 0]
        depths = np.round(pipe.d * (0.3 + 0.1 * np.sin(times / 9000)) - pipe.offset, 3)
        velocities = np.array([round(pipe.law(y + pipe.offset) * f, 2) for y, f in zip(depths, random.uniform(0.8, 1.2, len(times)))])
        if i < 4:
            velocities[20:24] = velocities[19]
            depths[12] = NAN
            velocities[14] = NAN
            depths[16] = 0 if pipe.offset <= pipe.bed else NAN
            depths[25] = pipe.d + 0.3
            velocities[30] = -0.3
        # Used for the medians: water flows or stands in the section and the flow is known; the mean flow counts an empty pipe as 0.
        used, flows = [], []
        for t, y, v in zip(times, depths, velocities):
            if begin <= t < end and y == y:
                if y == 0:
                    flows.append(0.0)
                elif v == v:
                    level = y + pipe.offset
                    used.append((t, level, pipe.k * v))
                    flows.append(pipe.k * v * pipe.area(level))
        law = [v / pipe.law(min(y, pipe.d)) for _, y, v in used]
        same = sum(1 for a, b in zip(used, used[1:]) if a[2] == b[2])
        rows.append([text(times), text(depths), text(velocities), zone, day, *pipe.row, len(used),
                     len({(t - begin) // 3600 for t, _, _ in used}) / ((end - begin) / 3600), float(np.median([y for _, y, _ in used])),
                     float(np.median([v for _, _, v in used])), float(np.median(law)), float(np.mean(flows)),
                     same / (len(used) - 1) if len(used) > 1 else 0.0])
    columns = [("times", "s"), ("depths", "m"), ("velocities", "m/s"), ("zone", "zone"), ("day", "days from 1 January 2001"), *SITE_COLUMNS,
               ("readings", "count"), ("coverage", "1"), ("level", "m"), ("velocity", "m/s"), ("ratio", "1"), ("flow", "m3/s"), ("unchanged", "1")]
    inputs = [("times", "text times"), ("depths", "text depths"), ("velocities", "text velocities"), ("zone", "text zone"), ("day", "day"), *SITE_INPUTS]
    write(folder, PROGRAM, "evidence-days", "What a monitor saw on a dry day", columns, inputs,
          [(c, "evidence.day." + c) for c in ("readings", "coverage", "level", "velocity", "ratio", "flow", "unchanged")], rows,
          tolerance="1e-12 relative or 1e-12")


def chance(values):
    """Two-sided p-value of Mann and Kendall: by counting orders up to ten values without ties, else from the normal law."""
    n = len(values)
    s = sum(int(np.sign(b - a)) for a, b in itertools.combinations(values, 2))
    ties = [values.count(v) for v in set(values)]
    variance = (n * (n - 1) * (2 * n + 5) - sum(t * (t - 1) * (2 * t + 5) for t in ties)) / 18
    if max(ties) == 1:
        exact = stats.kendalltau(range(n), values, method="exact").pvalue
    z = 0 if s == 0 else (abs(s) - 1) / math.sqrt(variance)
    return exact if max(ties) == 1 and n <= EXACT else 2 * stats.norm.sf(z) if s else 1.0, variance


EXACT = 50


def sen(times, values):
    slopes = sorted((b - a) / (u - t) for (t, a), (u, b) in itertools.combinations(zip(times, values), 2))
    slope = float(np.median(slopes))
    p, variance = chance(values)
    reach = stats.norm.ppf(0.975) * math.sqrt(variance)
    at = lambda rank: float(np.interp(rank - 1, np.arange(len(slopes)), slopes))
    lower, upper = min(slope, at((len(slopes) - reach) / 2)), max(slope, at((len(slopes) + reach) / 2 + 1))
    intercept = float(np.median(values) - slope * np.median(times))
    first, last = intercept + slope * times[0], intercept + slope * times[-1]
    return dict(slope=slope, lower=lower, upper=upper, p=p, last=last, change=0 if last == first else (last - first) / abs(first))


def bend(times, values):
    """The day from which on a straight line fits best, and all that fit not worse by F(1, n - 3)."""
    n = len(times)
    squares = []
    for t in times[:-2]:
        x = np.column_stack([np.ones(n), np.maximum(0, np.array(times) - t)])
        left = np.array(values) - x @ np.linalg.lstsq(x, np.array(values), rcond=None)[0]
        squares.append(float(left @ left))
    limit = min(squares) * (1 + stats.f.ppf(0.95, 1, n - 3) / (n - 3))
    inside = [i for i, s in enumerate(squares) if s <= limit]
    # Within rounding of a limit a table could fall either way.
    assert all(abs(s / limit - 1) > 1e-6 for s in squares)
    return squares.index(min(squares)), inside[0], inside[-1]


PATTERNS = ["BACKWATER", "VELOCITY_LOSS", "VELOCITY_FROZEN", "MORE_WATER", "LESS_WATER", "OTHER", "NONE", "TOO_FEW_DAYS"]


def pattern(level, velocity, flow, frozen):
    known = {(1, -1, 0): 0, (0, -1, -1): 1, (1, 0, 1): 3, (1, 1, 1): 3, (-1, 0, -1): 4, (-1, -1, -1): 4, (0, 0, 0): 2 if frozen else 6}
    return known.get((level, velocity, flow), 5)


def drift(folder):
    rows, trends = [], []
    soffit_seen = 0

    def case(dates, levels, velocities, flows, start=0, end=None, significance=0.05, change=0.1, cover=0.75, least=7, coverages=None,
             unchanged=None, pipe=PIPES[0], all_figures=True):
        nonlocal soffit_seen
        n = len(dates)
        end = dates[-1] if end is None else end
        coverages = coverages or [1.0] * n
        unchanged = unchanged or [0.02] * n
        ratios = [round(v / pipe.law(y), 4) for y, v in zip(levels, velocities)]
        given = [text(dates), text(coverages), text(levels), text(velocities), text(ratios), text(flows), text(unchanged), start, end,
                 significance, change, cover, least, *pipe.row]
        inside = [i for i in range(n) if start <= dates[i] <= end]
        covered = [i for i in inside if coverages[i] >= cover]
        used = [i for i in covered if unchanged[i] < 0.95]
        frozen = len(covered) - len(used)
        counts = [len(used), len(inside) - len(covered), frozen]
        if len(used) < least:
            rows.append(given + [2 if frozen else 7] + counts + [NONE] * 6)
            return
        t = [dates[i] - dates[used[0]] for i in used]
        found = {name: sen(t, [float(values[i]) for i in used])
                 for name, values in (("level", levels), ("velocity", velocities), ("flow", flows), ("ratio", ratios))}
        way = {}
        for name, line in found.items():
            assert abs(line["p"] / significance - 1) > 1e-9 and (abs(abs(line["change"]) / change - 1) > 1e-9 if change else True)
            way[name] = int(np.sign(line["slope"])) if line["p"] <= significance and abs(line["change"]) >= change else 0
        onset, soffit = [NONE] * 3, [NONE] * 3
        for name, values in (("level", levels), ("velocity", velocities), ("flow", flows)):
            if way[name]:
                b = bend(t, [float(values[i]) for i in used])
                onset = [dates[used[i]] for i in b]
                break
        if way["level"] == 1:
            rising = used[b[0]:] if len(used) - b[0] >= 5 else used
            line = sen([dates[i] - dates[rising[0]] for i in rising], [float(levels[i]) for i in rising])
            rise = pipe.d - line["last"]
            if rise > 0 and line["lower"] > 0 and rise / line["slope"] <= 365 and rise / line["lower"] <= 3650:
                soffit = [dates[rising[-1]] + math.ceil(rise / line[k]) for k in ("slope", "upper", "lower")]
                soffit_seen += 1
        rows.append(given + [pattern(way["level"], way["velocity"], way["flow"], frozen)] + counts + onset + soffit)
        if all_figures:
            for name, line in found.items():
                trends.append(given + [name, line["slope"], line["lower"], line["upper"], line["p"], float(line["change"])])

    random = np.random.default_rng(20260430)
    d12 = list(range(12))

    def course(base, growth, begin, noise, digits=4, dates=d12):
        return [round(base * (1 + growth * max(0, t - begin) + noise * random.standard_normal()), digits) for t in dates]

    signs = list(itertools.product((-1, 0, 1), repeat=3))
    for up, fast, more in signs:
        case(d12, course(0.12, 0.03 * up, 2, 0.01), course(0.8, 0.03 * fast, 2, 0.01), course(0.02, 0.03 * more, 2, 0.01, 5),
             all_figures=(up, fast, more) in ((1, -1, 0), (-1, 0, 1)))
    gaps = [1, 2, 4, 5, 6, 9, 10, 11, 13, 16, 17, 18, 20, 21]
    one = course(0.12, 0.04, 9, 0.02, dates=gaps)
    two = course(0.8, -0.01, 9, 0.02, dates=gaps)
    three = course(0.02, 0, 9, 0.05, 5, dates=gaps)
    case(gaps, one, two, three, start=2, end=20)
    # Just either side of each limit: coverage, frozen velocity, count of days, first and last date.
    cover = [0.75, 0.7499, 0.74, 1, 1, 1, 1, 1, 0.76, 1, 0.5, 1, 1, 1]
    case(gaps, one, two, three, coverages=cover)
    case(gaps, one, two, three, coverages=cover, cover=0.5)
    held = [0.95, 0.9499, 0.96, 0.94, 0.1, 0.2, 0.3, 0.949, 0.951, 1, 0.5, 0, 0, 0]
    case(gaps, one, two, three, unchanged=held)
    quiet = [0.5] * 14
    case(gaps, course(0.12, 0, 0, 0.01, dates=gaps), course(0.8, 0, 0, 0.01, dates=gaps), course(0.02, 0, 0, 0.01, 5, dates=gaps), unchanged=held)
    case(gaps, one, two, three, unchanged=[1] * 8 + quiet[8:])
    case(gaps, one, two, three, unchanged=[1] * 7 + quiet[7:])
    case(gaps, one, two, three, start=10, end=21)
    case(gaps, one, two, three, start=10, end=20)
    case(gaps, one, two, three, start=10, end=17, least=5)
    case(gaps, one, two, three, start=11, end=17, least=5)
    # Change and p-value on both sides of what is asked.
    base = sen(gaps, one)
    for factor in (0.999, 1.001):
        case(gaps, one, two, three, change=round(base["change"] * factor, 6), all_figures=False)
    slow = [round(0.12 * (1 + 0.002 * t + (0.05, -0.04, 0.01, 0.03, -0.05, 0.02)[k % 6]), 4) for k, t in enumerate(gaps)]
    p = sen(gaps, slow)["p"]
    for factor in (0.999, 1.001):
        case(gaps, slow, two, three, significance=round(min(0.5, p * factor), 6), change=0.0, all_figures=factor > 1)
    for flat in (0.0499, 0.0501):
        case(gaps, slow, two, three, significance=flat, change=0.01, all_figures=False)
    def latest(levels):
        """Days to the soffit at the slowest rise, of the days since the bend."""
        t = [day - gaps[0] for day in gaps]
        first = bend(t, levels)[0]
        rising = range(first, len(gaps)) if len(gaps) - first >= 5 else range(len(gaps))
        found = sen([gaps[i] - gaps[rising[0]] for i in rising], [levels[i] for i in rising])
        return (PIPES[0].d - found["last"]) / found["lower"] if found["lower"] > 0 else math.inf

    # Projections to the soffit: steep, slow beyond a year, uncertain beyond ten years, already there.
    line = lambda per_day, base=0.2, wobble=0.002: [round(base + per_day * t + wobble * (0, 1, -1, 0.5, -0.5, 0.2)[k % 6], 5) for k, t in enumerate(gaps)]
    for per_day, base_level, wobble in ((0.005, 0.2, 0.002), (0.0007, 0.2, 0.0004), (0.00062, 0.2, 0.0004), (0.0012, 0.1, 0.006), (0.0011, 0.2, 0.0009),
                                         (0.02, 0.2, 0.001), (0.013, 0.18, 0.001), (0.0009, 0.1, 0.0021), (0.0009, 0.13, 0.0027)):
        case(gaps, line(per_day, base_level, wobble), two, three, change=0.02, significance=0.2)
    # As uncertain as ten years, just less and just more: the wobble that is needed is looked for.
    for low, high in ((3560, 3645), (3655, 3740)):
        wobble = next(w for w in np.arange(0.0108, 0.012, 1e-5) if low < latest(line(0.0009, 0.13, float(w))) < high)
        case(gaps, line(0.0009, 0.13, float(wobble)), two, three, change=0.02, significance=0.2)
    # A pipe held up late: fewer than five days since the bend.
    late = [0.1, 0.1012, 0.0991, 0.1003, 0.0998, 0.1007, 0.0995, 0.1001, 0.1009, 0.0993, 0.1004, 0.12, 0.14, 0.16]
    case(gaps, late, two, three, change=0.01, significance=0.5)
    ties = [0.1, 0.1, 0.11, 0.11, 0.12, 0.12, 0.12, 0.13, 0.14, 0.14, 0.15, 0.15, 0.16, 0.17]
    case(gaps, ties, two, three)
    case(gaps, [0.12] * 14, two, three)
    # By the usual rule, a change and a p-value a little beyond what is asked.
    own = np.random.default_rng(20261130)

    def beside(wanted, steps, dates=gaps):
        """Levels that rise by a growth, shuffled by as much as is needed until a figure of their line lies where it is wanted."""
        while True:
            growth, noise = own.uniform(*steps), own.uniform(0, 0.08)
            levels = [round(0.12 * (1 + growth * t / 20 + noise * own.standard_normal()), 4) for t in dates]
            if wanted(sen(dates, levels)):
                return levels

    case(gaps, beside(lambda line: 0.1005 < line["change"] < 0.1045 and line["p"] < 0.01, (0.08, 0.12)), two, three, all_figures=False)
    case(gaps, beside(lambda line: 0.0955 < line["change"] < 0.0995 and line["p"] < 0.01, (0.08, 0.12)), two, three, all_figures=False)
    for least, most in ((0.0502, 0.0524), (0.0478, 0.0499)):
        eleven = list(range(11)) if least > 0.05 else list(range(13))
        case(eleven, beside(lambda line: least < line["p"] < most and line["change"] > 0.12, (0.1, 0.3), eleven), two[:len(eleven)], three[:len(eleven)], all_figures=False)
    assert soffit_seen > 4
    columns = [("dates", "days from 1 January 2001"), ("coverages", "1"), ("levels", "m"), ("velocities", "m/s"), ("ratios", "1"), ("flows", "m3/s"),
               ("unchanged", "1"), ("from_day", "day"), ("to_day", "day"), ("significance", "1"), ("change_asked", "1"), ("coverage", "1"),
               ("least_days", "count"), *SITE_COLUMNS]
    inputs = [(k, f"text {k}") for k in ("dates", "coverages", "levels", "velocities", "ratios", "flows", "unchanged")]
    inputs += [("from", "from_day"), ("to", "to_day"), ("significance", "significance"), ("change", "change_asked"), ("coverage", "coverage"),
               ("least_days", "least_days"), *SITE_INPUTS]
    names = [("pattern", "number in the list of patterns"), ("days", "count"), ("left_out", "count"), ("frozen", "count"), ("onset", "day, -9999 for none"),
             ("onset_earliest", "day"), ("onset_latest", "day"), ("soffit", "day"), ("soffit_earliest", "day"), ("soffit_latest", "day")]
    write(folder, PROGRAM, "evidence-drifts", "Drifts of dry days: patterns, onsets and projections, on both sides of each limit",
          columns + names, inputs, [(c, "evidence.drift." + c.replace("onset_", "onset.").replace("soffit_", "soffit.").replace("_", "-")) for c, _ in names],
          rows, tolerance="0", reason="counts, days and numbers of patterns")
    asked = [c for c, _ in columns].index("significance")
    usual = [r[:asked] + r[asked + 4:] for r in rows if r[asked:asked + 4] == [0.05, 0.1, 0.75, 7]]
    kept = lambda pairs, names: [pair for pair in pairs if pair[0] not in names]
    write(folder, PROGRAM, "evidence-drifts-usual", "Drifts of dry days by the usual rule, nothing said of significance, change, coverage and days", kept(columns + names, ("significance", "change_asked", "coverage", "least_days")),
          kept(inputs, ("significance", "change", "coverage", "least_days")), [(c, "evidence.drift." + c.replace("_", "-")) for c in ("pattern", "days", "left_out", "frozen")], usual, tolerance="0", reason="counts and numbers of patterns")
    figures = [("slope", "a day"), ("lower", "a day"), ("upper", "a day"), ("p_value", "1"), ("change", "1")]
    write(folder, PROGRAM, "evidence-trends", "Slopes, limits and p-values of the figures of dry days", columns + [("figure", "which")] + figures,
          inputs + [("figure", "text figure")], [(c, "evidence.trend." + c.replace("_", "-")) for c, _ in figures], trends,
          tolerance="1e-9 relative or 1e-12", reason="16 digits are given; exact chances add many small numbers")


def site_record(folder):
    """Depths with the velocities of the same second; rain of the steps that end up to a reading belongs to it.

    Of the first reading that of the last hour. A reading within a step that the gauge knows knows its rain; one whose last finished step
    is missing knows it only if other rain fell. In a gap of more than an hour each full hour becomes a reading of rain alone, but the
    last one if the next reading follows within the hour.
    """
    rows = []
    hour = 3600
    cases = [
        ([0, 300, 600, 1200, 1500], [0.1, 0.11, NAN, 0.13, 0.14], [0, 300, 450, 1200, 1600], [0.5, NAN, 0.7, 0.8, 0.9], -3900, 300,
         [round(0.1 * k, 1) for k in range(20)]),
        ([4000, 4600, 15000, 15600, 22800, 22860, 26460, 30061], [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8], [4000, 15600, 99999], [0.5, 0.6, 0.7], -7200, 900,
         [round(0.2 + 0.01 * k, 2) if k % 9 != 4 else NAN for k in range(41)]),
        ([0, 60, 7200, 10800, 14400, 18001], [0.1, 0.2, 0.3, 0.4, 0.5, 0.6], [0], [0.4], 3600, 3600, [1.5, NAN, 2.5, 0]),
    ]
    for times, depths, vt, v, begin, step, rains in cases:
        speed = dict(zip(vt, v))
        merged = []
        for k, t in enumerate(times):
            if k:
                full = (times[k - 1] // hour + 1) * hour
                merged += [(f, NAN, NAN) for f in range(full, t, hour) if t - f > hour]
            merged.append((t, depths[k], speed.get(t, NAN)))
        done = [begin + (k + 1) * step for k in range(len(rains))]
        next_step = sum(1 for e in done if e <= times[0] - hour)
        out = []
        for t, y, u in merged:
            fallen = [rains[k] for k in range(next_step, len(rains)) if done[k] <= t]
            before = next_step
            next_step += len(fallen)
            within = before < len(rains) and begin + before * step <= t and rains[before] == rains[before]
            known = fallen[-1] == fallen[-1] if fallen else within
            total = sum(r for r in fallen if r == r)
            out.append((t, y, u, total if known or total > 0 else NAN))
        steps = sorted(b[0] - a[0] for a, b in zip(out, out[1:]))
        for low, high in ((-1, 10**6), (times[1], times[-1]), (times[1] + 1, times[-1] + 1)):
            kept = [r for r in out if low <= r[0] < high]
            steps = sorted(b[0] - a[0] for a, b in zip(kept, kept[1:]))
            for i, r in enumerate(kept):
                rows.append([text(times), text(depths), text(vt), text(v), begin, step, text(rains), low, high, i, len(kept),
                             len(vt) - len([t for t in vt if t in times]), steps[len(steps) // 2]]
                            + [NONE if x != x else float(x) for x in r])
    columns = [("times", "s"), ("depths", "m"), ("velocity_times", "s"), ("velocities", "m/s"), ("rain_from", "s"), ("rain_step", "s"), ("rains", "mm"),
               ("slice_from", "s"), ("slice_to", "s"), ("which", "reading from 0"), ("size", "count"), ("alone", "velocities without a depth"), ("step", "s"),
               ("time", "s"), ("depth", "m, -9999 for none"), ("velocity", "m/s"), ("rain", "mm")]
    inputs = [(k, f"text {k}") for k in ("times", "depths", "velocity_times", "velocities", "rains")]
    inputs += [(k, k) for k in ("rain_from", "rain_step", "slice_from", "slice_to")]
    k = "input.which = which"
    write(folder, PROGRAM, "site-record", "A record of depth, velocity and rain", columns, inputs,
          [("size", "site-record.size"), ("alone", "site-record.velocities-alone"), ("step", "site-record.step"), ("time", "site-record.time", k),
           ("depth", "site-record.depth", k), ("velocity", "site-record.velocity", k), ("rain", "site-record.rain", k)], rows)


def main(folder):
    relation(folder)
    days(folder)
    drift(folder)
    site_record(folder)


if __name__ == "__main__":
    main(sys.argv[1])
