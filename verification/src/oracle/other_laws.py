"""Laws beside the usual families, peaks found in a record, seasons and silent gauges: mpmath, NumPy, SciPy, no code in common.

    python3 other_laws.py ../main/resources/dev/runnel/verification/tables/rainfall [PART ...]

Moments and L-moments are integrals of the quantile function by mpmath; expected moments are summed over the density.
"""

import datetime as dt
import math
import random
import sys
from fractions import Fraction
from zoneinfo import ZoneInfo

import numpy as np
from mpmath import exp, findroot, log, mp, mpf, quad, sqrt
from scipy import optimize, stats

from own_tables import text, write

mp.dps = 30
FOLDER = sys.argv[1]
PROGRAM = "other_laws.py"


def table(*args, **more):
    write(FOLDER, PROGRAM, *args, **more)


def moments(quantile):
    """Mean, variance and the L-moments of a quantile function of (F, 1 - F)."""
    # x = 1/(1 + e^-t): both tails in full.
    def over(value):
        def inside(t):
            f, p = 1 / (1 + exp(-t)), 1 / (1 + exp(t))
            return value(quantile(f, p), f) * f * p

        return quad(inside, [-120, -40, -15, -5, 0, 5, 15, 40, 120])

    mean = over(lambda x, f: x)
    variance = over(lambda x, f: (x - mean) ** 2)
    l2 = over(lambda x, f: x * (2 * f - 1))
    l3 = over(lambda x, f: x * (6 * f * f - 6 * f + 1))
    l4 = over(lambda x, f: x * (20 * f**3 - 30 * f * f + 12 * f - 1))
    l5 = over(lambda x, f: x * (70 * f**4 - 140 * f**3 + 90 * f * f - 20 * f + 1))
    return [float(v) for v in (mean, variance, l2, l3 / l2, l4 / l2)] + [float(v) for v in (l3, l4, l5)]


def wakeby():
    laws = [(10, 30, 3.0, 8, 0.1), (0, 5, 0.5, 2, 0.2), (-4, 12, 1.5, 0, 0.0), (2, 6, 8.0, 4, -0.3), (1, 3, 0.0, 2, 0.25), (5, -1, 2.0, 4, 0.15)]
    points, sums, fits = [], [], []
    for xi, a, b, c, d in laws:
        xi_, a_, b_, c_, d_ = (mpf(v) for v in (xi, a, b, c, d))

        def x(f, p):
            first = -log(p) if b == 0 else (1 - p**b_) / b_
            second = -log(p) if d == 0 else (p**-d_ - 1) / d_
            return xi_ + a_ * first + c_ * second

        law = [float(v) for v in (xi, a, b, c, d)]
        for p in (0.03, 0.35, 0.8, 0.995):
            value = x(mpf(p), 1 - mpf(p))
            q = 1 - mpf(p)
            slope = a_ * q ** (b_ - 1) + c_ * q ** (-d_ - 1)
            points.append([*law, p, float(value), float(1 - mpf(p)), float(-log(slope)), float(x(1 - mpf(p) / 100, mpf(p) / 100)), p / 100])
        m = moments(x)
        bound = ""
        if d < 0 or (c == 0 and b > 0):
            bound = float(xi_ + (a_ / b_ if b > 0 else 0) - (c_ / d_ if c > 0 else 0))
        sums.append([*law, *m[:5], bound])
        if b != 0 and c != 0 and b > 0 and a > 0:
            fits.append([text([m[0], m[2], *m[5:]]), *law])
    law = [("xi", "location"), ("alpha", "alpha"), ("beta", "beta"), ("gamma", "gamma"), ("delta", "delta")]
    given = [(n, n) for n, _ in law]
    table("wakeby-values", "Wakeby distribution (Hosking and Wallis 1997, A.11) with mpmath", law + [("p", "1, probability"), ("x", "value"), ("e", "1, exceedance"), ("d", "log density"), ("y", "value of a small exceedance"), ("s", "1, small exceedance")],
          given, [("x", "wakeby.quantile", "input.p = p"), ("p", "wakeby.cdf", "input.x = x"), ("e", "wakeby.exceedance", "input.x = x"),
                  ("d", "wakeby.log-density", "input.x = x"), ("y", "wakeby.quantile-of-exceedance", "input.p = s")], points, tolerance="1e-11 relative or 1e-12")
    table("wakeby-moments", "moments of Wakeby distributions by quadrature with mpmath", law + [("mean", "mean"), ("variance", "variance"), ("l2", "second L-moment"), ("t3", "L-skewness"), ("t4", "L-kurtosis"), ("bound", "upper bound")],
          given, [("mean", "wakeby.mean"), ("variance", "wakeby.variance"), ("l2", "wakeby.l-moment", "input.moment = 2"), ("t3", "wakeby.l-moment", "input.moment = 3"),
                  ("t4", "wakeby.l-moment", "input.moment = 4"), ("bound", "wakeby.upper-bound")], sums, tolerance="1e-10 relative or 1e-11", reason="quadrature to 12 digits")
    table("wakeby-fits", "Wakeby distributions found again from their L-moments", [("lambda", "L-moments 1 to 5")] + law, [("lambda", "text lambda")],
          [(n, "wakeby.of-l-moments", f"input.parameter = word {n}") for n, _ in law], fits, tolerance="1e-8 relative or 1e-8", reason="the fit amplifies the rounding of the L-moments")


def own():
    rows = []
    for s in (0.7, 4.0, 25.0):
        m = moments(lambda f, p: s * sqrt(-2 * log(p)))
        rows.append([s, *m[:5], 1.3 * s, math.exp(-1.3**2 / 2), s * math.sqrt(2 * math.log(50))])
    table("own-law", "Rayleigh distribution given by its quantiles alone, with mpmath", [("s", "scale"), ("mean", "mean"), ("variance", "variance"), ("l2", "second L-moment"), ("t3", "L-skewness"),
          ("t4", "L-kurtosis"), ("x", "value"), ("e", "1, exceedance"), ("level", "level of 50 years")], [("scale", "s")],
          [("mean", "law.own.mean"), ("variance", "law.own.variance"), ("l2", "law.own.l-moment", "input.moment = 2"), ("t3", "law.own.l-moment", "input.moment = 3"), ("t4", "law.own.l-moment", "input.moment = 4"),
           ("e", "law.own.exceedance", "input.x = x"), ("level", "law.own.level", "input.years = 50")], rows, tolerance="1e-9 relative", reason="two quadratures")
    rows = []
    for mu, sigma in ((0, 0.5), (2, 0.9), (-1, 1.4)):
        nodes, weights = np.polynomial.legendre.leggauss(400)
        z = sigma + 13 * nodes
        f, x = stats.norm.cdf(z), np.exp(mu + sigma * z)
        w = 13 * weights * stats.norm.pdf(z) * x
        l2, l3, l4 = (float(np.sum(w * p)) for p in (2 * f - 1, 6 * f * f - 6 * f + 1, 20 * f**3 - 30 * f * f + 12 * f - 1))
        m = [0, 0, l2, l3 / l2, l4 / l2]
        rows.append([mu, sigma, math.exp(mu + sigma**2 / 2), m[2], m[3], m[4]])
    table("log-normal-l-moments", "L-moments of log-normal distributions by quadrature with NumPy", [("mu", "mean of ln"), ("sigma", "deviation of ln"), ("l1", "mean"), ("l2", "second L-moment"), ("t3", "L-skewness"), ("t4", "L-kurtosis")],
          [("mu", "mu"), ("sigma", "sigma")], [(c, "law.log-normal.l-moment", f"input.moment = {i}") for i, c in enumerate(("l1", "l2", "t3", "t4"), 1)], rows,
          tolerance="1e-9 relative", reason="two quadratures")
    rows = []
    for mu, sigma, skew in ((10, 2, 0.8), (3, 0.6, -0.9), (0, 1, 2)):
        rows.append([mu, sigma, skew, mu - 2 * sigma / skew if skew > 0 else "", mu - 2 * sigma / skew if skew < 0 else ""])
    table("pearson-iii-bounds", "bounds of Pearson III distributions, mean - 2 sigma/skew", [("mu", "mean"), ("sigma", "deviation"), ("skew", "1, skew"), ("lower", "lower bound"), ("upper", "upper bound")],
          [("mu", "mu"), ("sigma", "sigma"), ("skew", "skew")], [("lower", "law.pearson-iii.lower-bound"), ("upper", "law.pearson-iii.upper-bound")], rows)


def griffis(g, n):
    a = -17.75 / n**2 + 50.06 / n**3
    b = 3.92 * n**-0.3 - 31.10 * n**-0.6 + 34.86 * n**-0.9
    c = -7.31 * n**-0.59 + 45.90 * n**-1.18 - 86.50 * n**-1.77
    return (6 / n + a) * (1 + (1.5 + b) * g**2 + (15 / 48 + c) * g**4)


def bulletin(g, n):
    g = abs(g)
    a = -0.33 + 0.08 * g if g <= 0.9 else -0.52 + 0.30 * g
    b = 0.94 - 0.26 * g if g <= 1.5 else 0.55
    return 10 ** (a - b * math.log10(n / 10))


def expected(sample, low, low_years, mark, mark_years):
    """Moments by expected values; those inside an interval by Gauss-Legendre over the density."""
    x = np.log10(sample)
    n, total = len(x), len(x) + low_years + mark_years
    m, s, g = x.mean(), x.std(ddof=1), stats.skew(x, bias=False)
    ranges = ((-np.inf, math.log10(low), low_years), (math.log10(low), math.log10(mark), mark_years))
    nodes, weights = np.polynomial.legendre.leggauss(300)
    for _ in range(3000):
        law = stats.pearson3(g, m, s)
        inside = []
        for lower, upper, years in ranges:
            a = max(lower, m - 15 * s, m - 2 * s / g if g > 0 else -np.inf)
            q = (upper + a) / 2 + (upper - a) / 2 * nodes
            w = weights * law.pdf(q)
            inside.append((years, q, w / w.sum()))
        nm = (x.sum() + sum(y * np.sum(w * q) for y, q, w in inside)) / total
        v = (n / (n - 1) * np.sum((x - nm) ** 2) + sum(y * np.sum(w * (q - nm) ** 2) for y, q, w in inside)) / total
        ns = math.sqrt(v)
        ng = (n * n / ((n - 1) * (n - 2)) * np.sum((x - nm) ** 3) + sum(y * np.sum(w * (q - nm) ** 3) for y, q, w in inside)) / (total * ns**3)
        change = abs(nm - m) + abs(ns - s) + abs(ng - g)
        m, s, g = nm, ns, ng
        if change < 1e-11:
            break
    return m, s, g, total


def skews():
    rows = [[g, n, griffis(g, n)] for g, n in ((0.2, 25), (-0.9, 30), (1.4, 60), (-2.5, 120), (0, 15), (0.7, 400))]
    table("skew-errors-griffis", "mean square error of a skew (Griffis and Stedinger 2009, from memory)", [("g", "1, skew"), ("n", "years"), ("mse", "mean square error")], [("skew", "g"), ("years", "n")],
          [("mse", "low-outliers.skew.error-griffis")], rows)
    rng = random.Random(12)
    rows = []
    for _ in range(4):
        count = rng.randrange(18, 40)
        sample = [round(10 ** rng.gauss(2.4, 0.3), 1) for _ in range(count)]
        low, mark = round(10**2.05, 1), round(10**2.9, 1)
        known = [v for v in sample if v > low]
        low_years, mark_years = count - len(known) + 2, rng.randrange(10, 40)
        m, s, g, total = expected(known, low, low_years, mark, mark_years)
        region, error = round(rng.uniform(-0.4, 0.4), 2), round(rng.uniform(0.1, 0.35), 3)
        station = bulletin(g, total)
        weighted = (error * g + station * region) / (error + station)
        levels = [10 ** stats.pearson3(k, m, s).isf(1 / t) for k, t in ((g, 100), (g, 5), (weighted, 200))]
        rows.append([text(known), low, low_years, mark, mark_years, region, error, *levels])
    given = [("sample", "text known"), ("low", "low"), ("low_years", "low_years"), ("mark", "mark"), ("mark_years", "mark_years")]
    table("expected-moments-intervals", "expected moments (Cohn, Lane and Baier 1997) by quadrature over the density, with SciPy",
          [("known", "values known"), ("low", "level of low outliers"), ("low_years", "years below"), ("mark", "mark"), ("mark_years", "years below the mark"), ("region", "1, skew of the region"), ("error", "1, its mean square error"),
           ("x100", "level of 100 years"), ("x5", "level of 5 years"), ("w200", "level of 200 years, skew weighted")], given,
          [("x100", "low-outliers.expected-moments.censored-level", "input.years = 100"), ("x5", "low-outliers.expected-moments.censored-level", "input.years = 5"),
           ("w200", "low-outliers.expected-moments.weighted-level", "input.years = 200", "input.region = region", "input.region_error = error")], rows,
          tolerance="1e-6 relative", reason="two iterations to rest; the quadrature is good to seven digits")


def peaks():
    rng = random.Random(3)
    rows = []
    for k in range(8):
        step = rng.choice([5, 15, 60])
        values, level = [], 0.0
        for _ in range(160):
            level = max(0.0, level * 0.6 + rng.choice([0, 0, 0, 0, 3.0]) * rng.random())
            values.append(round(level, 2))
        for _ in range(k):
            i = rng.randrange(160)
            for j in range(i, min(160, i + rng.randrange(1, 9))):
                values[j] = float("nan")
        threshold, separation = rng.choice([0.4, 0.8]), step * rng.choice([2, 3, 5])
        # Peaks: exceedances in groups; a group ends where a quiet time, measured or a whole long gap, lies between.
        groups, by_gap = [], 0
        last = None
        for i, v in enumerate(values):
            if v == v and v > threshold:
                if last is None:
                    groups.append([v])
                else:
                    between = values[last + 1:i]
                    quiet = sum(1 for b in between if b == b) * step
                    gaps, run = [], 0
                    for b in [*between, 0.0]:
                        if b != b:
                            run += step
                        else:
                            gaps.append(run)
                            run = 0
                    long_gap = any(g >= separation for g in gaps if g > 0)
                    if quiet >= separation or long_gap:
                        by_gap += quiet < separation
                        groups.append([v])
                    else:
                        groups[-1].append(v)
                last = i
        found = [max(g) for g in groups]
        measured = sum(1 for v in values if v == v) * step / 60 / 24 / 365.25
        level = threshold + 0.3
        above = [p - level for p in found if p > level]
        rows.append([text(values), threshold, step, separation, len(found), sum(found), len(found) / measured, by_gap, level, sum(above) / len(above) if above else ""])
    table("peaks-of-runs", "peaks over a threshold found in a record, plain Python",
          [("values", "record"), ("threshold", "threshold"), ("step", "min, step"), ("separation", "min, least quiet time"), ("count", "peaks"), ("sum", "sum of peaks"), ("rate", "1/year, rate"), ("gaps", "peaks apart by gaps alone"), ("level", "level"), ("excess", "mean excess")],
          [("values", "text values"), ("threshold", "threshold"), ("step_minutes", "step"), ("separation_minutes", "separation")],
          [("count", "peaks.runs.count"), ("sum", "peaks.runs.sum"), ("rate", "peaks.runs.rate"), ("gaps", "peaks.runs.apart-by-gaps"), ("excess", "peaks.runs.mean-excess", "input.level = level")], rows)


def pareto_periods():
    with open(f"{FOLDER}/data/coles-rain-exceedances.csv") as lines:
        body = [line.strip().split(",")[0] for line in lines if line.strip() and not line.startswith("#")]
    x = np.array([float(v) for v in body[1:]])
    threshold, years = 30.0, 17531 / 365.25
    excess = x - threshold

    def negative(p):
        return -np.sum(stats.genpareto.logpdf(excess, p[1], 0, p[0])) if p[0] > 0 else np.inf

    best = optimize.minimize(negative, [7, 0.2], method="Nelder-Mead", options=dict(xatol=1e-11, fatol=1e-12, maxiter=5000))
    scale, shape = best.x
    rate = len(x) / years
    rows = []
    for level, confidence in ((60.0, 0.95), (80.0, 0.9)):
        period = 1 / (rate * stats.genpareto.sf(level - threshold, shape, 0, scale))

        def held(log_period):
            # The exceedance of the level is held: the scale follows from the shape.
            p = 1 / (rate * math.exp(log_period))

            def rest(k):
                return negative([(level - threshold) * k / (p**-k - 1), k])

            return optimize.minimize_scalar(rest, bounds=(-0.2, 1.2), method="bounded", options=dict(xatol=1e-12)).fun

        limit = best.fun + stats.chi2.ppf(confidence, 1) / 2
        centre = math.log(period)
        ends = [math.exp(optimize.brentq(lambda t: held(t) - limit, a, b, xtol=1e-12)) for a, b in ((centre - 4, centre), (centre, centre + 8))]
        rows.append([level, confidence, period, *ends])
    table("peaks-return-periods", "return periods of peaks by likelihood and its profile, with SciPy; data of Coles (2001)",
          [("level", "mm, level"), ("confidence", "1, of the limits"), ("years", "years, return period"), ("lower", "years, lower limit"), ("upper", "years, upper limit")],
          [("sample", "data data/coles-rain-exceedances.csv " + body[0]), ("threshold", "30"), ("record", "17531 / 365.25"), ("level", "level")],
          [("years", "peaks.return-period"), ("lower", "peaks.return-period.profile-lower", "input.confidence = confidence"), ("upper", "peaks.return-period.profile-upper", "input.confidence = confidence")], rows,
          tolerance="2e-5 relative", reason="two searches for a flat maximum")


def seasons():
    rows = []
    for first, last, zone, year in ((5, 9, "UTC", 2024), (11, 2, "Europe/London", 2023), (4, 3, "America/New_York", 2025), (7, 7, "Pacific/Auckland", 2020)):
        start = dt.datetime(year, first, 1, tzinfo=ZoneInfo(zone))
        end_year, end_month = (year, last + 1) if last >= first else (year + 1, last + 1)
        end = dt.datetime(end_year, end_month, 1, tzinfo=ZoneInfo(zone))
        rows.append([first, last, zone, year, start.timestamp() / 86400, end.timestamp() / 86400])
    table("seasons", "seasons of years by Python's calendar", [("first", "first month"), ("last", "last month"), ("zone", "zone"), ("year", "year"), ("start", "d, begin"), ("end", "d, end")],
          [("first", "first"), ("last", "last"), ("zone", "text zone"), ("year", "year")], [("start", "year.season.start-day"), ("end", "year.season.end-day")], rows)


def silent():
    rows = []
    day = 1440
    for tips, length in (([20 * day, 20 * day + 5, 25 * day], 40 * day), ([2 * day, 5 * day, 6 * day], 13.5 * day), ([2 * day, 5 * day, 6 * day], 12.5 * day),
                         ([8 * day, 8.2 * day], 30 * day), ([7 * day, 11 * day], 18 * day), ([day, 12 * day], 36 * day)):
        limit = max(2 * max(b - a for a, b in zip(tips, tips[1:])), 7 * day)
        found = []
        if tips[0] > limit:
            found.append(tips[0] - 720)
        if length - tips[-1] > limit:
            found.append(length - tips[-1] - 720)
        rows.append([text(tips), length, len(found), found[0] if found else "", found[1] if len(found) > 1 else ""])
    table("silent-ends", "silent ends of records of tips, plain Python", [("tips", "min, tips"), ("record", "min, length of the record"), ("count", "silent ends"), ("first", "min, the first of them"), ("second", "min, the second")],
          [("tips", "text tips"), ("record_minutes", "record")], [("count", "gauge.silent.count"), ("first", "gauge.silent.minutes", "input.which = 0"), ("second", "gauge.silent.minutes", "input.which = 1")], rows)


def silent_steps():
    """Wet steps as signs of a gauge at work; steps that are missing (-1) are no part of a time without rain."""
    def row(count, step, wet, missing=()):
        depths = [0.0] * count
        for at in missing:
            depths[at] = -1.0
        for k, at in enumerate(wet):
            depths[at] = 0.2 * (1 + k % 3)
        known = lambda a, b: sum(depths[i] >= 0 for i in range(a, b)) * step
        longest = max([known(a + 1, b) for a, b in zip(wet, wet[1:])], default=0)
        limit = max(2 * longest, 7 * 1440)
        found = []
        if wet and known(0, wet[0]) > limit:
            found.append(wet[0] * step - 720)
        if wet and known(wet[-1] + 1, count) > limit:
            found.append((count - wet[-1] - 1) * step - 720)
        return [text(depths), step, len(found), found[0] if found else "", found[1] if len(found) > 1 else ""]
    rows = [row(60, 720, (2, 9, 20, 31)), row(40, 720, (3, 4, 9, 25)), row(80, 720, (20, 24, 30, 41)), row(81, 720, (34, 36, 41, 52)), row(24, 720, ()),
            row(30, 720, (9, 15)), row(31, 720, (15, 16)), row(30, 720, (15, 15)), row(60, 360, (3, 12, 22), range(30, 44)), row(80, 360, (3, 12, 40, 46), range(14, 38)),
            row(30, 1440, (8, 11, 20)), row(31, 1440, (8, 11, 22)), row(32, 1440, (9, 11, 14, 15)), row(15, 1440, (7,)), row(17, 1440, (8,))]
    table("silent-ends-by-step", "silent ends of records by the step, plain Python", [("depths", "mm, depth of each step, -1 for missing"), ("step", "min, length of a step"), ("count", "silent ends"), ("first", "min, the first of them"), ("second", "min, the second")],
          [("depths", "text depths"), ("step_minutes", "step")], [("count", "gauge.silent.steps.count"), ("first", "gauge.silent.steps.minutes", "input.which = 0"), ("second", "gauge.silent.steps.minutes", "input.which = 1")], rows)


def impossible():
    """Each window of a day by itself, in exact fractions."""
    def row(step, count, rain, missing=()):
        depths = [0.0] * count
        for first, last, mm in rain:
            for i in range(first, last):
                depths[i] = mm
        for i in missing:
            depths[i] = -1.0
        wet = [max(Fraction(d), Fraction(0)) for d in depths]
        most = lambda minutes: Fraction(491 * (minutes / 60) ** 0.452)
        bad = {i for i in range(count) if wet[i] > most(step)}
        n = 1440 // step
        for end in range(1, count + 1):
            window = range(max(0, end - n), end)
            if n and sum(wet[i] for i in window) > most(1440):
                bad.update(i for i in window if wet[i] > 0)
        return [text(depths), step, len(bad), float(sum(wet[i] for i in bad)), float(sum(w for i, w in enumerate(wet) if i not in bad)), min(bad) * step if bad else ""]

    rows = [row(60, 60, [(20, 44, 86.0)]), row(60, 60, [(20, 44, 86.1)]), row(60, 70, [(8, 40, 91.5), (55, 57, 12.0)], (20,)), row(60, 30, [(5, 6, 490.0), (9, 10, 492.0)]),
            row(1, 12, [(3, 4, 77.1), (7, 8, 77.2), (9, 10, 30.0)]), row(5, 20, [(2, 3, 159.5), (6, 7, 160.0)]), row(5, 300, [(0, 140, 15.0)]), row(5, 300, [(10, 30, 120.0), (200, 210, 4.0)], (12, 15)),
            row(720, 9, [(1, 3, 1032.0), (5, 7, 1033.5)]), row(1440, 6, [(1, 2, 2064.0), (3, 4, 2066.0)]), row(2880, 5, [(1, 2, 2820.0), (3, 4, 2830.0)]), row(60, 100, [(0, 3, 480.0), (22, 25, 480.0), (60, 90, 86.2)]),
            # By less than a millimetre within; beside steps that are not known; and with less than a millimetre in one step of such a day.
            row(60, 40, [(2, 26, 86.03)]), row(60, 40, [(2, 14, 172.0)], range(14, 26)), row(60, 40, [(2, 25, 90.0), (25, 26, 0.5)])]
    table("impossible-rain", "rain by the step above the greatest known, window by window in exact fractions", [("depths", "mm, depth of each step, -1 for missing"), ("step", "min, length of a step"), ("count", "impossible steps"),
          ("mm", "mm, what they hold"), ("others", "mm, the other rain"), ("first", "min, the first of them")], [("depths", "text depths"), ("step_minutes", "step")],
          [("count", "gauge.impossible.steps"), ("mm", "gauge.impossible.mm"), ("others", "gauge.impossible.others"), ("first", "gauge.impossible.first")], rows)


def grains():
    """The smallest amounts of blocks of twenty wet steps; a change is looked for at all partings of the blocks."""
    def fits(values, grain):
        few = [v / grain for v in values if v / grain < 6.5]
        return len(few) >= 20 and sum(abs(f - round(f)) < 0.15 for f in few) >= 0.95 * len(few)

    def found(values):
        least = [min(values[i:i + 20]) for i in range(0, len(values) - 19, 20)]
        partings = [k for k in range(2, len(least) - 1) if min(least[k:]) > 1.5 * max(least[:k]) or min(least[:k]) > 1.5 * max(least[k:])]
        if len(least) < 2:
            return None
        if not partings:
            return (min(least),) if fits(values, min(least)) else None
        k = partings[0]
        before, after = min(least[:k]), min(least[k:])
        limit = math.sqrt(before * after)
        near = range(20 * (k - 1), min(len(values), 20 * (k + 1)))
        at = max(i for i in near if values[i] < limit) + 1 if after > before else min((i for i in near if values[i] < limit), default=20 * k)
        return (before, after, at) if fits(values[:at], before) and fits(values[at:], after) else None

    rng = random.Random(20261130)
    tip = lambda size: size * rng.choice((1, 1, 1, 2, 2, 3, 4, 7))
    cases = [[tip(0.2) for _ in range(n)] for n in (39, 40, 77)]
    cases += [[tip(0.2 if i < at else 0.2 * f) for i in range(n)] for n, at, f in ((130, 47, 1 / 25.4), (130, 53, 5.0), (100, 40, 1.55), (100, 45, 1.45), (100, 61, 0.5), (95, 70, 3.0), (120, 25, 2.0), (160, 59, 0.64))]
    cases += [[tip(s) for _ in range(60)] for s in (0.2 / 25.4, 0.254 / 25.4, 1.0, 0.5, 0.00815, 0.00755)]
    cases += [[rng.uniform(0.05, 2) for _ in range(90)], [tip(0.2) * (1.16 if i % share == 0 else 1) for i in range(100) for share in (25,)], [tip(0.2) * (1.16 if i % 9 == 0 else 1) for i in range(100)],
              [tip(0.2) + (0.02 if i % 3 == 0 else 0) for i in range(100)], [0.2 if i % 40 == 0 else 2.0 for i in range(100)]]
    # Just outside of a whole number; just above the largest that must be whole; a step down by little more than half; blocks that lie
    # between both grains; the smallest of a block at its beginning alone.
    cases += [[0.2 * (1.153 if i % 8 == 0 else 1 + i % 3) for i in range(90)], [0.2 * (6.6 if i % 3 == 0 else 1 + i % 2) for i in range(90)], [(0.31 if i < 50 else 0.2) * (1 + i % 2) for i in range(110)],
              [1.0 * (1 + i % 2) for i in range(60)] + [0.6] * 20 + [0.1 * (1 + i % 3) for i in range(60)], [0.2 if i % 20 == 0 else 1.2 for i in range(60)] + [0.5 * (1 + i % 2) for i in range(60)]]
    rows = []
    for k, values in enumerate(cases):
        depths, step = [], (5, 15, 60)[k % 3]
        at = []
        for v in values:
            depths += [0.0] * rng.choice((0, 0, 1)) + [-1.0] * (rng.random() < 0.03)
            at.append(len(depths))
            depths.append(v)
        f = found(values)
        bucket = (0.2, 0.2, 0.254, 0.7)[k % 4] if k < 11 else 0.2
        inches = f and abs(f[0] / (bucket / 25.4) - 1) < 0.04 and not abs(f[0] / 0.01 - 1) < 0.04
        rows.append([text(depths), step, bucket, 1 if f else 0, f[0] if f else "", f[1] if f and len(f) > 1 else "", at[f[2]] * step if f and len(f) > 1 else "", "" if not f else int(inches),
                     "" if not f else int(f[0] == 1 and bucket < 1 / 1.5)])
    table("rain-grains", "smallest amounts of records by the step, and where they become others, plain Python", [("depths", "mm, depth of each step, -1 for missing"), ("step", "min, length of a step"), ("tip", "mm, tip of the bucket"), ("found", "1 if there is a grain"),
          ("grain", "mm, the smallest amount, up to a change"), ("after", "mm, the other one"), ("since", "min, the first step with it"), ("inches", "1 for a tip in inches"), ("counts", "1 for counts of tips")],
          [("depths", "text depths"), ("step_minutes", "step")], [("found", "gauge.grain.found"), ("grain", "gauge.grain.mm"), ("after", "gauge.grain.after"), ("since", "gauge.grain.since"),
           ("inches", "gauge.grain.inches", "input.tip = tip"), ("counts", "gauge.grain.counts", "input.tip = tip")], rows)


def pairs():
    """Tips that come twice, in whole milliseconds. By a clock that cuts to c a gap is out by less than c, either way."""
    rng = random.Random(77)
    records = []
    for delay, share, quick in ((7000, 1.0, 0), (7000, 0.4, 0), (12000, 0.5, 0.2), (19000, 0.7, 0), (21000, 0.7, 0), (3000, 0.3, 0.4), (0, 0, 0.3)):
        at, tips = 0, []
        for _ in range(40):
            at += int(rng.uniform(1500, 25000) if rng.random() < quick else rng.uniform(25000, 300000))
            tips.append(at)
            if rng.random() < share:
                tips.append(at + delay)
        records.append((sorted(tips), 0))
        for clock in (1000, 2000, 5000):
            records.append((sorted(t // clock * clock for t in tips), clock))
    records += [([0, 10000, 50000, 60000, 99999, 109999, 150000], 0), ([0, 20000, 100000], 0), ([0, 20001, 100005], 0), ([0, 80000, 100000, 180000], 0), ([0, 79999, 99999, 180000], 0), ([0, 80000, 100000, 179999], 0),
                ([0, 1440, 9000], 0), ([0, 1439, 9000], 0), ([5000, 5000 + 7 * 3600 * 1000, 12000 + 7 * 3600 * 1000], 0), ([0, 19000, 100000], 1000), ([0, 20000, 102000], 1000), ([0, 81000, 100000, 181000], 1000), ([0, 80000, 99000, 181000], 1000)]
    rows = []
    for tips, c in records:
        places = set()
        for i in range(1, len(tips)):
            gap = tips[i] - tips[i - 1]
            around = ([tips[i - 1] - tips[i - 2]] if i > 1 else []) + ([tips[i + 1] - tips[i]] if i + 1 < len(tips) else [])
            is_double = gap + c < 1440
            if 0 < gap <= 20000 - c and not is_double and all(g - c >= 4 * (gap + c) for g in around):
                places.add(i)
        rows.append([text([t / 1000 for t in tips]), c / 1000, len(places)])
    table("tips-in-pairs", "tips that come twice within seconds, in whole milliseconds", [("tips", "s, instants"), ("clock", "s, resolution of the clock"), ("count", "tips flagged")],
          [("tip_seconds", "text tips"), ("tip_mm", "0.2"), ("clock_seconds", "clock"), ("flag", "word paired")],
          [("count", "gauge.checks.flagged")], rows, tolerance="0", reason="counts")


for each in (wakeby, own, skews, peaks, pareto_periods, seasons, silent, silent_steps, impossible, grains, pairs):
    if not sys.argv[2:] or each.__name__ in sys.argv[2:]:
        each()
