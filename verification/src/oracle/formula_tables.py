"""Small tables of formulas and of records worked row by row: Python with NumPy, SciPy and mpmath, no code in common with the library.

    python3 formula_tables.py FOLDER

Reads the inputs of each table named in AGAIN below from its csv file in the folder, computes every other cell anew and writes the file
again. Formulas are those the descriptors cite; what a rule says of a record is asked of the whole record at once.
"""

import csv
import itertools
import math
import re
import sys
from fractions import Fraction
from pathlib import Path

import numpy as np
from mpmath import exp, findroot, log, mp, mpf, nstr
from long_record import scaled
from scipy import optimize, stats

mp.dps = 40
FOLDER = Path(sys.argv[1] if len(sys.argv) > 1 else ".")


def numbers(text):
    return [float(v) for v in re.split(r"[\s;,]+", text.strip())]


def column(file, name):
    with open(FOLDER / file, encoding="utf-8") as lines:
        rows = list(csv.DictReader(line for line in lines if not line.startswith("#")))
    return [float(r[name]) for r in rows]


def grid(file):
    """Columns of return periods and rows of durations."""
    with open(FOLDER / file, encoding="utf-8") as lines:
        rows = list(csv.reader(line for line in lines if not line.startswith("#")))
    return [float(v) for v in rows[0][1:]], {float(r[0]): [float(v) for v in r[1:]] for r in rows[1:]}


def short(x, digits=15):
    """As many digits as are given, without zeros at the end."""
    return f"{float(x):.{digits}g}"


def long(x):
    return nstr(mpf(x), 17)


# ---- intensity of rain ------------------------------------------------------------------------------------------------


def intensity(form, a, b, n, t):
    """t in min; the unit of a gives that of the answer in mm/h or in/h."""
    return {"montana": lambda: 60 * a * t**-n, "bernard": lambda: a * t**-n, "talbot": lambda: a / (t + b),
            "sherman": lambda: a / (t + b) ** n, "kimijima": lambda: a / (t**n + b)}[form]()


def chicago(row):
    form, a, b, n = row["form"], *(float(row[k] or "nan") for k in ("a", "b", "n"))
    d, r, step, k = float(row["d"]), float(row["r"]), float(row["step"]), int(row["k"])

    def depth(t):  # of the heaviest t min about the peak
        return mpf(0) if t <= 0 else mpf(t) / 60 * intensity(form, mpf(a), mpf(b), mpf(n), mpf(t))

    def until(t):  # the heaviest t min lie r t before the peak and (1 - r) t after it
        peak = mpf(r) * d
        return r * (depth(d) - depth((peak - t) / r)) if t <= peak else r * depth(d) + (1 - mpf(r)) * depth((t - peak) / (1 - mpf(r)))

    return {"p": repr(float(until(mpf(k * step)) - until(mpf((k - 1) * step))))}


def alternating(row):
    depth = lambda t: t / 60 * intensity("kimijima", 96.6, 13.9, 0.97, t) if t else 0.0
    rises = sorted((depth(10 * i) - depth(10 * i - 10) for i in range(1, 13)), reverse=True)
    places = [6, 7, 5, 8, 4, 9, 3, 10, 2, 11, 1, 12]
    d = float(row["d"])
    return {"i": repr(intensity("kimijima", 96.6, 13.9, 0.97, d)), "cum": repr(depth(d)), "p": repr(dict(zip(places, rises))[int(row["k"])])}


def double_triangle(row):
    d, i, H, h = (float(row[k]) for k in ("d", "i", "H", "h"))
    shoulder = 120 * (H - h) / (d - i)
    return {"i1": repr(shoulder), "i2": repr(120 * h / i - shoulder)}


def montana(row):
    a, b, d = float(row["a"]), float(row["b"]), float(row["d"])
    return {"p": repr(a * d ** (1 - b)), "i": repr(a * d ** (1 - b) * 60 / d)}


def sherman(row):
    return {"i": f"{float(row['a']) / (float(row['d']) + float(row['b'])) ** float(row['c']):.6f}"}


def bilham(row):
    # N falls in ten years
    return {"p": repr((1.214e5 * float(row["d"]) / 60 * float(row["t"]) / 10) ** (1 / 3.55) - 2.54)}


def keers(row):
    area, d = float(row["a"]), float(row["d"])
    u = math.log(area)
    a = 0.40 - 0.0208 * math.log(4.6 - u) if area <= 20 else 0.40 - 0.00382 * (4.6 - u) ** 2 if area < 500 else 0.40 - 0.0208 * math.log(u - 4.6)
    b = 0.0394 * area**0.354 if area < 100 else 0.0627 * area**0.254 if area < 1000 else 0.1050 * area**0.180
    return {"f": repr(1 - b * (d / 60) ** -a)}


REGIONS = {
    "east coast north": (0.327, 0.241, 0.448, 0.36, 0.00096, 0.48, -0.21, 0.012, -0.0013),
    "semi arid inland queensland": (0.159, 0.283, 0.25, 0.308, 7.3e-07, 1, 0.039, 0, 0),
    "tasmania": (0.0605, 0.347, 0.2, 0.283, 0.00076, 0.347, 0.0877, 0.012, -0.00033),
    "south west western australia": (0.183, 0.259, 0.271, 0.33, 3.845e-06, 0.41, 0.55, 0.00817, -0.00045),
    "central new south wales": (0.265, 0.241, 0.505, 0.321, 0.00056, 0.414, -0.021, 0.015, -0.00033),
    "south east coast": (0.06, 0.361, 0, 0.317, 8.11e-05, 0.651, 0, 0, 0),
    "southern semi arid": (0.254, 0.247, 0.403, 0.351, 0.0013, 0.302, 0.058, 0, 0),
    "southern temperate": (0.158, 0.276, 0.372, 0.315, 0.000141, 0.41, 0.15, 0.01, -0.0027),
    "northern coastal": (0.326, 0.223, 0.442, 0.323, 0.0013, 0.58, -0.374, 0.013, -0.0015),
    "inland arid": (0.297, 0.234, 0.449, 0.344, 0.00142, 0.216, 0.129, 0, 0),
}


def australia(row):
    area, minutes, p = (float(row[k]) for k in ("area", "d", "p"))
    a, b, c, d, e, f, g, h, i = REGIONS[row["region"]]

    def long_rain(area, t):
        return min(1, 1 - a * (area**b - c * math.log10(t)) * t**-d + e * area**f * t**g * (0.3 + math.log10(p)) + h * 10 ** (i * area * t / 1440) * (0.3 + math.log10(p)))

    def short_rain(area, t):
        return min(1, 1 - 0.287 * (area**0.265 - 0.439 * math.log10(t)) * t**-0.36 + 2.26e-3 * area**0.226 * t**0.125 * (0.3 + math.log10(p))
                   + 0.0141 * area**0.213 * 10 ** (-0.021 * (t - 180) ** 2 / 1440) * (0.3 + math.log10(p)))

    def beyond_ten(area):
        if minutes <= 720:
            return short_rain(area, minutes)
        if minutes >= 1440:
            return long_rain(area, minutes)
        return short_rain(area, 720) + (long_rain(area, 1440) - short_rain(area, 720)) * (minutes - 720) / 720

    if area <= 1:
        return {"f": "1.0"}
    return {"f": repr(beyond_ten(area) if area >= 10 else 1 - 0.6614 * (1 - beyond_ten(10)) * (area**0.4 - 1))}


def antecedent(row):
    p, s = numbers(row["p"]), float(row["s"])
    index = 0.5**0.5 * sum(v * 0.5 ** i for i, v in enumerate(p))
    return {"api": repr(index), "u": repr(125 + 8 * index - s), "c": repr(125 + index - s)}


def gumbel_columns(row):
    place = {5: (8, 2), 60: (30, 8), 1440: (55, 15)}[int(float(row["d"]))]
    return {"p": long(place[0] - place[1] * log(-log(1 - 1 / mpf(row["t"]))))}


def symmetric(row):
    a, b, x = (float(row[k]) for k in ("a", "b", "x"))
    return {"y": repr((1 - a ** (x**b)) / (1 - a))}


def euler_two(file):
    def again(row):
        years, durations = grid(file)
        at = years.index(float(row["years"]))
        depth = lambda t: next((v[at] for k, v in durations.items() if k == t), None)
        n = int(float(row["d"]) / 5)
        total = [0.0]
        known = sorted(durations)
        for i in range(1, n + 1):
            t = 5.0 * i
            value = depth(t)
            if value is None:
                low, high = max(k for k in known if k < t), min(k for k in known if k > t)
                value = math.exp(np.interp(math.log(t), [math.log(low), math.log(high)], [math.log(depth(low)), math.log(depth(high))]))
            total.append(value)
        rises = sorted((b - a for a, b in zip(total, total[1:])), reverse=True)
        first = int(0.3 * n)  # the peak ends where three tenths of the duration do, or the step before
        storm = rises[:first][::-1] + rises[first:]
        return {"p": f"{storm[int(row['block']) - 1]:.6f}"}

    return again


FORMS = {"bernard": ("an", None), "talbot": ("ab", None), "sherman": ("abn", 1), "kimijima": ("abn", 1)}


def intensity_fit(row):
    t, p = np.array(numbers(row["d"])), np.array(numbers(row["p"]))
    i = p / t * 60
    form = row["form"]
    if form == "bernard":
        n, c = np.polyfit(np.log(t), np.log(i), 1)
        found = {"a": math.exp(c), "n": -n}
    elif form == "talbot":
        slope, c = np.polyfit(t, 1 / i, 1)
        found = {"a": 1 / slope, "b": c / slope}
    else:
        T, Y = [mpf(v) for v in t], [log(mpf(v)) for v in i]
        x = (lambda b, n: [n * log(v + b) for v in T]) if form == "sherman" else (lambda b, n: [log(v**n + b) for v in T])

        def squares(b, n):
            left = [y + v for y, v in zip(Y, x(b, n))]
            mean = sum(left) / len(left)
            return sum((v - mean) ** 2 for v in left)

        start = optimize.minimize(lambda q: float(squares(*map(mpf, q))) if q[0] > 0 and q[1] > 0 else 1e9, [8, 0.85], method="Nelder-Mead", options=dict(xatol=1e-8, fatol=1e-16, maxiter=4000)).x
        b, n = findroot(lambda b, n: (mp.diff(squares, (b, n), (1, 0)), mp.diff(squares, (b, n), (0, 1))), tuple(map(mpf, start)), tol=1e-30)
        found = {"a": exp(sum(y + v for y, v in zip(Y, x(b, n))) / len(T)), "b": b, "n": n}
    return {"v": short(found[row["c"]])}


# ---- return periods and ranks -----------------------------------------------------------------------------------------


def positions(row):
    a = {"weibull": "0", "blom": "0.375", "hazen": "0.5", "gringorten": "0.44", "cunnane": "0.4", "median": "0.3175", "apl": "0.35", "adamowski": "0.25", "tukey": "1/3", "california": "-1", "chegodayev": "0.3"}
    i, n = int(row["i"]), int(row["n"])
    share = Fraction(a[row["f"]])
    return {"p": short((i - share) / (n + 1 - 2 * share))}


def log_likelihood(name):
    def again(row):
        x = np.array(column(f"data/{name}.csv", "x"))
        law = stats.gumbel_r if row["f"] == "gumbel" else stats.genextreme

        def negative(q):
            with np.errstate(all="ignore"):
                value = -np.sum(law.logpdf(x, q[0], q[1]) if row["f"] == "gumbel" else law.logpdf(x, q[2], q[0], q[1]))
            return value if q[1] > 0 and np.isfinite(value) else 1e9

        at = [x.mean() - 0.45 * x.std(), 0.78 * x.std()] + ([] if row["f"] == "gumbel" else [-0.05])
        for _ in range(6):
            at = optimize.minimize(negative, at, method="Nelder-Mead", options=dict(xatol=1e-10 * x.std(), fatol=1e-13, maxiter=20000, maxfev=20000)).x
        return {"v": short(-negative(at))}

    return again


def nanaimo(row):
    x = np.array(column(f"data/nanaimo-{row['d']}min.csv", "x"))
    scale = x.std(ddof=1) * math.sqrt(6) / math.pi
    return {"p": f"{x.mean() - 0.57721566490153286 * scale - scale * math.log(-math.log1p(-1 / float(row['t']))):.9f}"}


def nanaimo_error(row):
    x = np.array(column(f"data/nanaimo-{row['d']}min.csv", "x"))
    k = -math.sqrt(6) / math.pi * (0.57721566490153286 + math.log(math.log(float(row["t"]) / (float(row["t"]) - 1))))
    return {"s": f"{x.std(ddof=1):.9f}", "e": f"{x.std(ddof=1) / math.sqrt(len(x)) * math.sqrt(1 + 1.14 * k + 1.1 * k * k):.9f}"}


def discordancy(row):
    n = np.array([numbers(row[k]) for k in ("t", "t3", "t4")]).T
    left = n - n.mean(axis=0)
    return {"d": short(len(n) / 3 * left[int(row["i"]) - 1] @ np.linalg.inv(left.T @ left) @ left[int(row["i"]) - 1], 12 if "tbl" not in row else 10)}


# ---- gauges and records -----------------------------------------------------------------------------------------------


def dry_day(row):
    rain, day = numbers(row["rain"]), int(row["day"])
    wins = [s for s in range(7, len(rain) - 6) if all(v == 0 for v in rain[s:s + 7]) and all(v <= 0.25 for v in rain[s - 7:s])]
    return {"dry": str(int(any(s <= day < s + 7 for s in wins)))}


def gaps(row):
    g, c = numbers(row["g"]), float(row["c"])
    kept = [v for v in g if v >= c]
    over = [v - c for v in g if v >= c]
    # gaps themselves about their own mean; of what exceeds the candidate the sample's deviation
    return {"p": f"{np.std(kept) / np.mean(kept):.5f}", "x": f"{np.std(over, ddof=1) / np.mean(over):.5f}"}


def groups(tips, gap):
    found = [[tips[0]]]
    for a, b in zip(tips, tips[1:]):
        found.append([b]) if b - a >= gap else found[-1].append(b)
    return found


def event_count(row):
    return {"n": str(sum(len(g) * 0.2 >= float(row["min"]) - 1e-9 for g in groups(numbers(row["tips"]), float(row["gap"]))))}


def event_measures(row):
    g = groups(numbers(row["tips"]), float(row["gap"]))[int(row["i"]) - 1]
    return {"start": short(g[0]), "dur": short(g[-1] - g[0]), "mm": short(0.2 * len(g), 12)}


def autocorrelation(row):
    x = [Fraction(v) for v in row["rain"].split()]
    mean, k = sum(x) / len(x), int(row["k"])
    d = [v - mean for v in x]
    # means of the products and of the squares, each of as many as there are
    return {"r": repr(float(sum(a * b for a, b in zip(d, d[k:])) / (len(d) - k) / (sum(v * v for v in d) / len(d))))}


def double_mass(row):
    g, a, k = numbers(row["g"]), numbers(row["a"]), int(row["k"])
    G, A = np.cumsum(g), np.cumsum(a)
    first, second = G[k - 1] / A[k - 1], (G[-1] - G[k - 1]) / (A[-1] - A[k - 1])
    left = np.array(g) - np.where(np.arange(len(g)) < k, first, second) * np.array(a)
    return {"b": repr(float(first)), "s": repr(float(second)), "e": repr(float(np.sum(left**2)))}


def ranks(row):
    return {"rho": repr(float(stats.spearmanr(numbers(row["g"]), numbers(row["a"])).statistic))}


def recession(row):
    y = np.array([float(v) for v in row["flow"].split()])
    t = 10.0 * np.arange(len(y))
    known = ~np.isnan(y)
    design = np.vstack([np.ones(known.sum()), t[known]]).T
    (c, slope), *_ = np.linalg.lstsq(design, np.log(y[known]), rcond=None)
    left = np.log(y[known]) - c - slope * t[known]
    return {"k": repr(float(-1 / slope)), "r2": repr(float(1 - np.sum(left**2) / np.sum((np.log(y[known]) - np.log(y[known]).mean()) ** 2)))}


def lag(row):
    rain, flow = (np.array([float(v) for v in row[k].split()]) for k in ("rain", "flow"))
    best = None
    for k in range(16):
        a, b = rain[: len(rain) - k], flow[k:]
        known = ~(np.isnan(a) | np.isnan(b))
        r = np.corrcoef(a[known], b[known])[0, 1]
        if best is None or r > best[1]:
            best = (10 * k, r)
    return {"lag": short(best[0]), "r": repr(float(best[1]))}


def inverse_distance(row):
    x, y = numbers(row["target"])
    places = [numbers(p) for p in row["gauges"].split(";")]
    w = np.array([math.hypot(a - x, b - y) ** -float(row["power"]) for a, b in places])
    return {"mean": repr(float(np.sum(w / w.sum() * np.array(numbers(row["depths"])))))}


def polygon(text):
    points = [tuple(Fraction(c) for c in p.split()) for p in re.search(r"\(\((.*)\)\)", text).group(1).split(",")]
    return points[:-1]


def area(points):
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1]))) / 2 if points else Fraction(0)


def nearer(points, own, other):
    """The part of a shape nearer to one gauge than to another, as exact fractions; shapes that are not convex in pieces of their own."""
    side = lambda p: (p[0] - other[0]) ** 2 + (p[1] - other[1]) ** 2 - (p[0] - own[0]) ** 2 - (p[1] - own[1]) ** 2
    kept = []
    for a, b in zip(points, points[1:] + points[:1]):
        if side(a) >= 0:
            kept.append(a)
        if side(a) * side(b) < 0:
            t = side(a) / (side(a) - side(b))
            kept.append((a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])))
    return kept


def shares(row):
    shape = polygon(row["catchment"])
    gauges = [tuple(Fraction(c) for c in g.split()) for g in row["gauges"].split(";")]
    # a fan of triangles, each clipped by itself and counted with its sign
    total = Fraction(0)
    found = [Fraction(0)] * len(gauges)
    for a, b in zip(shape[1:], shape[2:]):
        triangle = [shape[0], a, b]
        sign = 1 if (a[0] - shape[0][0]) * (b[1] - shape[0][1]) - (b[0] - shape[0][0]) * (a[1] - shape[0][1]) > 0 else -1
        total += sign * area(triangle)
        for i, own in enumerate(gauges):
            part = triangle
            for other in gauges[:i] + gauges[i + 1:]:
                part = nearer(part, own, other) if part else part
            found[i] += sign * area(part)
    return found, abs(total), total


def weights(row):
    found, size, signed = shares(row)
    part = found[int(row["gauge"]) - 1] / signed
    return {"weight": repr(float(part)), "area": repr(float(part * size)), "total": short(float(size))}


def thiessen_mean(row):
    found, size, signed = shares(row)
    depths = [Fraction(v) for v in row["depths"].split()]
    return {"mean": repr(float(sum(f * d for f, d in zip(found, depths)) / signed)), "area": short(float(size))}


def sliding(row):
    rain, window = [Fraction(v) for v in row["rain"].split()], Fraction(row["w"]).limit_denominator(10**6) * 60
    total = [Fraction(0)]
    for v in rain:
        total.append(total[-1] + v)
    end = 120 * len(rain)

    def until(s):
        s = min(max(s, 0), end)
        k = int(s // 120)
        return total[k] + (rain[k] * (s - 120 * k) / 120 if k < len(rain) else 0)

    # the depth of a window is straight in its start between corners, which lie where either end meets a step
    starts = {Fraction(120 * k) for k in range(len(rain) + 1)} | {120 * k - window for k in range(len(rain) + 1)}
    return {"p": f"{float(max(until(s + window) - until(s) for s in starts)):.17g}"}


def lost_time(row):
    tip, tau, i = (float(row[k]) for k in ("tip", "tau", "i"))
    gap = 3600 * tip / i + tau
    return {"rec": f"{3600 * tip / gap:.5f}", "gap": f"{gap:.5f}"}


# ---- series -----------------------------------------------------------------------------------------------------------


def alarm(row):
    x, i = numbers(row["vals"]), int(row["i"])

    def active(band, delay):
        """It begins with as many readings above the limit as the delay asks for, and ends with as many that are back by the deadband."""
        state = False
        for k in range(i + 1):
            last = x[k - delay:k + 1] if k >= delay else []
            if last and not state and all(v > 100 for v in last):
                state = True
            elif last and state and all(v < 100 - band if band else v <= 100 for v in last):
                state = False
        return str(int(state))

    return {"plain": active(0, 0), "band": active(5, 0), "delay": active(0, 2), "both": active(5, 2)}


def kendall_s(x):
    return sum((b > a) - (b < a) for a, b in itertools.combinations(x, 2))


def kendall_exact(row):
    x = numbers(row["v"])
    n, s = len(x), kendall_s(x)
    ways = [1]  # of pairs in wrong order, by n
    for k in range(2, n + 1):
        ways = [sum(ways[j] for j in range(max(0, i - k + 1), min(i, len(ways) - 1) + 1)) for i in range(len(ways) + k - 1)]
    pairs = n * (n - 1) // 2
    at_most = sum(w for wrong, w in enumerate(ways) if pairs - 2 * wrong <= -abs(s))
    return {"s": str(s), "p": f"{at_most / math.factorial(n):.5f}"}


def kendall_nile(row):
    x = numbers(row["v"])
    n, s = len(x), kendall_s(x)
    ties = [x.count(v) for v in set(x)]
    var = (n * (n - 1) * (2 * n + 5) - sum(t * (t - 1) * (2 * t + 5) for t in ties)) / 18
    pairs = n * (n - 1) / 2
    tau = s / math.sqrt(pairs * (pairs - sum(t * (t - 1) / 2 for t in ties)))
    z = (abs(s) - 1) / math.sqrt(var)
    return {"s": str(s), "var": f"{var:.2f}", "tau": f"{tau:.7f}", "p": f"{2 * stats.norm.sf(z):.7e}"}


def efficiency(row):
    o, m = np.array(numbers(row["observed"])), np.array(numbers(row["modelled"]))
    r, alpha, beta = np.corrcoef(o, m)[0, 1], m.std() / o.std(), m.mean() / o.mean()
    values = {"nse": 1 - np.sum((m - o) ** 2) / np.sum((o - o.mean()) ** 2), "r": r, "alpha": alpha, "beta": beta, "gamma": alpha / beta,
              "kge": 1 - math.sqrt((r - 1) ** 2 + (alpha - 1) ** 2 + (beta - 1) ** 2), "kge2012": 1 - math.sqrt((r - 1) ** 2 + (alpha / beta - 1) ** 2 + (beta - 1) ** 2),
              "rms": math.sqrt(np.mean((m - o) ** 2)), "volume": m.sum() / o.sum() - 1, "peak": m.max() / o.max() - 1, "lag": float(np.argmax(m) - np.argmax(o))}
    return {k: f"{v:.{len(row[k].partition('.')[2])}f}" for k, v in values.items()}


def moving_minimum(row):
    flows, day = column("data/moving-minimum-flows.csv", "flow"), int(row["day"])
    least = min(flows[max(0, day - 20):day + 1])
    return {"minimum": repr(least), "infiltration": repr(max(0.0, round(least - 80, 10)))}


def qartod(row):
    x, i = numbers(row["v"]), int(row["i"])
    off = abs(x[i] - (x[i - 1] + x[i + 1]) / 2) if 0 < i < len(x) - 1 else None
    run = 1
    while i - run >= 0 and abs(x[i - run] - x[i]) <= 0.001:
        run += 1
    return {"range": "1" if -0.5 <= x[i] <= 10 else "4", "spike": "2" if off is None else "4" if off > 0.2 else "3" if off > 0.1 else "1", "flat": "4" if run >= 5 else "3" if run >= 3 else "1"}


def intervals(text):
    return [tuple(float(v) for v in part.split("-")) for part in re.split(r"[;\s]+", text.strip()) if part]


def blocks(row):
    """A block of 12 h begins with the first discharge; blocks of 24 h follow each other as long as one has a discharge in it."""
    d = intervals(row["d"])
    count, at = 0, -math.inf
    while any(b > at for _, b in d):
        start = max(at, min(max(a, at) for a, b in d if b > at))
        count += 1
        at = start + 720
        while any(a < at + 1440 and b > at for a, b in d):
            count += 1
            at += 1440
    return {"n": str(count)}


def other_rules(row):
    d = intervals(row["discharges"])
    events = [list(d[0])]
    for a, b in d[1:]:
        if a - events[-1][1] < 1440:
            events[-1][1] = b
        else:
            events.append([a, b])
    days = {k for a, b in d for k in range(int(a // 1440), int(-(-b // 1440)))}
    return {"events": str(len(d)), "apart": str(len(events)), "split": str(sum(math.ceil((b - a) / 7200) for a, b in events)), "days": str(len(days))}


def station(row):
    """L-moments of unbiased weighted moments; shapes solved for; 45 min between 30 and 60 min, straight in the logarithms."""
    minutes, years = int(row["minutes"]), float(row["t"])

    def depth(m):
        x = np.sort(column("data/ten-minute-station.csv", f"d{m}"))
        n, j = len(x), np.arange(len(x))
        b0, b1, b2 = x.mean(), np.mean(x * j) / (n - 1), np.mean(x * j * (j - 1)) / (n - 1) / (n - 2)
        l1, l2, t3 = b0, 2 * b1 - b0, (6 * b2 - 6 * b1 + b0) / (2 * b1 - b0)
        f = 1 - 1 / years
        if row["f"] == "gumbel":
            scale = l2 / math.log(2)
            return l1 - 0.57721566490153286 * scale - scale * math.log(-math.log(f))
        if row["f"] == "gev":
            k = optimize.brentq(lambda k: 2 * (1 - 3**-k) / (1 - 2**-k) - 3 - t3 if abs(k) > 1e-9 else 2 * math.log(3) / math.log(2) - 3 - t3, -0.9, 3, xtol=1e-14)
            scale = l2 * k / (1 - 2**-k) / math.gamma(1 + k)
            return l1 - scale * (1 - math.gamma(1 + k)) / k + scale / k * (1 - (-math.log(f)) ** k)
        k = -t3
        scale = l2 * math.sin(k * math.pi) / k / math.pi
        return l1 - scale * (1 / k - math.pi / math.sin(k * math.pi)) + scale / k * (1 - ((1 - f) / f) ** k)

    if minutes == 45:
        value = math.exp(np.interp(math.log(45), [math.log(30), math.log(60)], [math.log(depth(30)), math.log(depth(60))]))
    else:
        value = depth(minutes)
    return {"depth": short(value, 9)}


def station_maxima():
    minutes = [10, 20, 30, 60, 120, 180, 360, 720, 1440]
    return np.array([column("data/ten-minute-station.csv", f"d{m}") for m in minutes]).T, minutes


def scaled_relation(family):
    """All durations together, see long_record.py: theta and eta by least squares, y pooled and fitted by L-moments."""
    depths, minutes = station_maxima()
    theta, eta, y = scaled(depths, minutes)
    y = np.sort(y)
    n, j = len(y), np.arange(len(y))
    b0, b1, b2 = y.mean(), np.mean(y * j) / (n - 1), np.mean(y * j * (j - 1)) / (n - 1) / (n - 2)
    l1, l2, t3 = b0, 2 * b1 - b0, (6 * b2 - 6 * b1 + b0) / (2 * b1 - b0)
    if family == "gumbel":
        scale = l2 / math.log(2)
        return theta, eta, lambda f: l1 - 0.57721566490153286 * scale - scale * math.log(-math.log(f))
    k = optimize.brentq(lambda k: 2 * (1 - 3**-k) / (1 - 2**-k) - 3 - t3, -0.9, -1e-6, xtol=1e-14)
    scale = l2 * k / (1 - 2**-k) / math.gamma(1 + k)
    return theta, eta, lambda f: l1 - scale * (1 - math.gamma(1 + k)) / k + scale / k * (1 - (-math.log(f)) ** k)


def scaled_depth(row):
    theta, eta, level = scaled_relation(row["f"])
    hours = float(row["minutes"]) / 60
    return {"depth": repr(float(hours * level(1 - 1 / float(row["t"])) / (hours + theta) ** eta))}


def scaled_shape(row):
    theta, eta, _ = scaled_relation("gumbel")
    depths, minutes = station_maxima()
    hours = np.array(minutes) / 60
    mean = depths.mean(axis=0) / hours
    # A line through the logarithms passes through their means.
    line = np.mean(np.log(mean)) - eta * (np.log(hours + theta) - np.mean(np.log(hours + theta)))
    return {"theta": repr(float(theta)), "eta": repr(float(eta)), "worst": repr(float(100 * np.max(np.abs(np.exp(line) / mean - 1))))}


AGAIN = {
    "alternating-block-denver": alternating, "antecedent-index": antecedent, "areal-reduction-australia-2019": australia,
    "areal-reduction-keers-wescott": keers, "bilham": bilham, "chicago-storm": chicago, "double-mass-wsp1541b": double_mass,
    "double-triangle-storm": double_triangle, "dry-day-seven-after-seven": dry_day, "dry-gaps-variation": gaps,
    "euler-two-kostra-42016": euler_two("data/kostra-42016-5min.csv"), "euler-two-kostra-49011": euler_two("data/kostra-49011-5min.csv"),
    "event-count": event_count, "event-measures": event_measures, "gumbel-annual-maxima": gumbel_columns, "intensity-fits": intensity_fit,
    "inverse-distance": inverse_distance,
    "langbein-annual-maximum": lambda r: {"a": short(1 / (1 - exp(-1 / mpf(r["p"]))))},
    "langbein-peaks-over-threshold": lambda r: {"p": short(-1 / log(1 - 1 / mpf(r["a"])))},
    **{f"log-likelihood-{n}": log_likelihood(n) for n in ("amarillo-7day", "chicago-10min", "fort-collins", "moose-river", "port-pirie", "presque-isle")},
    "lost-time-round-trip": lost_time, "montana-astee": montana, "nanaimo-gumbel-errors": nanaimo_error, "nanaimo-gumbel": nanaimo,
    "plotting-positions": positions, "rain-autocorrelation": autocorrelation, "rank-correlation": ranks, "recession": recession,
    "region-discordancy-cascades": discordancy, "region-discordancy-tables": discordancy, "response-lag": lag, "sherman-wenzel": sherman,
    "sliding-maxima": sliding, "symmetric-profile": symmetric, "thiessen-means": thiessen_mean, "thiessen-weights": weights,
    "tip-depth-by-funnel": lambda r: {"vol": f"{float(r['tip']) * float(r['a']) / 10:.4f}"},
    "tip-depth-tharandt": lambda r: {"tip": f"{10 * float(r['m']) / (math.pi / 4 * 16.5**2):.5f}"},
    "tip-intensity": lambda r: {"s": f"{3600 * float(r['tip']) / float(r['i']):.4f}"},
    "ten-minute-station-table-depths": station, "ten-minute-station-scaled-depths": scaled_depth,
    "ten-minute-station-scaled-parameters": scaled_shape,
    "alarm-truth-table": alarm, "mann-kendall-exact": kendall_exact, "mann-kendall-nile": kendall_nile, "model-efficiency": efficiency,
    "moving-minimum": moving_minimum, "quality-qartod": qartod, "spill-count-other-rules": other_rules, "spill-count-twelve-twenty-four": blocks,
}

if __name__ == "__main__":
    for name, again in AGAIN.items():
        path = FOLDER / f"{name}.csv"
        if not path.exists():
            continue
        text = path.read_text(encoding="utf-8")
        comments = [line for line in text.splitlines() if line.startswith("#")]
        rows = list(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))
        for row in rows:
            row.update(again(row))
        with open(path, "w", newline="", encoding="utf-8") as out:
            out.write("".join(line + "\n" for line in comments))
            table = csv.DictWriter(out, rows[0].keys(), lineterminator="\n")
            table.writeheader()
            table.writerows(rows)
