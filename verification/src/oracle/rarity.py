"""How rare rain was where limits come with it, what speaks against a fit of maxima, and likelihood ratios of trends. Python with SciPy and
mpmath, no code in common with the library.

    python3 rarity.py FOLDER

writes into the folder of the rainfall tables

    rarity-with-limits          return periods of depths by a table and its two limits, inside and outside, and what is refused
    rarity-of-events            the same of the rarest duration of an event
    critical-discordancies      by the formula that Hosking and Wallis (1997), section 3.2.4, take their table 3.1 from
    trends-against-others       likelihood ratios of Gumbel laws with trends, by roots of the derivatives with 30 digits
    bounds-nowhere              laws without a bound on one side
    periods-without-end         return periods that are infinite in all drawn samples, and in none
    warnings-of-maxima          sentences about annual maxima on either side of each limit
"""

import math
import random
import sys

from mpmath import exp, findroot, log, mp, mpf, nstr
from scipy.stats import chi2, f, t as student

from own_tables import text, write

PROGRAM = "rarity.py"
YEARS = (1, 2, 5, 10, 50)
ROWS = ((5, (4, 6, 8, 9, 12)), (15, (7, 10, 13, 15, 20)), (60, (12, 17, 22, 26, 35)), (360, (20, 27, 35, 41, 55)))
TABLE = [(m, [float(d) for d in depths]) for m, depths in ROWS]


def scaled(factors):
    return [(m, [d * k for d, k in zip(depths, factors)]) for m, depths in TABLE]


def body(rows):
    return "\n".join(["duration_min," + ",".join(str(y) for y in YEARS)] + [",".join([str(m)] + [repr(d) for d in depths]) for m, depths in rows])


def depths_of(rows, minutes):
    for (m1, d1), (m2, d2) in zip(rows, rows[1:]):
        if m1 <= minutes <= m2:
            share = math.log(minutes / m1) / math.log(m2 / m1)
            return [a * (b / a) ** share for a, b in zip(d1, d2)]
    return None


def period(rows, minutes, depth):
    """Standing and years: 0 more frequent than the table tells, 1 within, 2 rarer."""
    d = depths_of(rows, minutes)
    if depth < d[0]:
        return 0, float(YEARS[0])
    if depth > d[-1]:
        return 2, float(YEARS[-1])
    for k in range(len(d) - 1):
        if d[k] <= depth <= d[k + 1]:
            return 1, YEARS[k] * (YEARS[k + 1] / YEARS[k]) ** ((depth - d[k]) / (d[k + 1] - d[k]))


LOWER = scaled((0.9, 0.88, 0.85, 0.83, 0.8))
UPPER = scaled((1.1, 1.13, 1.16, 1.18, 1.22))
BAND = [("table", "text table"), ("lower", "text lower"), ("upper", "text upper"), ("basis_of_limits", "text basis"), ("confidence", "confidence")]
BAND_COLUMNS = [("table", "text, depths"), ("lower", "text, lower limits"), ("upper", "text, upper limits"), ("basis", "text, what return periods of the lower limits count"), ("confidence", "1, confidence")]


def bands(folder):
    rows = []
    band = [body(TABLE), body(LOWER), body(UPPER), "peaks", 0.9]
    for minutes in (5, 9, 60, 200):
        for share in (0.5, 0.95, 1.02, 1.4, 1.9, 2.6, 2.95, 3.3, 3.9):
            depth = round(depths_of(TABLE, minutes)[0] * share, 3)
            found = [period(rows_, minutes, depth) for rows_ in (TABLE, UPPER, LOWER)]
            rows.append([*band, minutes, depth, "", *(years for _, years in found), found[0][0] + 10 * found[1][0] + 100 * found[2][0], "", "", "", ""])
        for years in (1, 3, 10, 44, 50):
            limits = []
            for rows_ in (LOWER, UPPER):
                d = depths_of(rows_, minutes)
                k = min(k for k in range(4) if years <= YEARS[k + 1])
                limits.append(d[k] + (d[k + 1] - d[k]) * math.log(years / YEARS[k]) / math.log(YEARS[k + 1] / YEARS[k]))
            rows.append([*band, minutes, "", years, "", "", "", "", *limits, "", ""])
    for confidence, refused in ((0, 1), (1, 1), (0.02, 0), (0.98, 0), (-0.1, 1), (1.02, 1)):
        rows.append([*band[:4], confidence, 60, 20, "", "", "", "", "", "", "", refused, ""])
    rows.append([*band[:3], "annual", 0.9, 60, 20, "", "", "", "", "", "", "", 1, ""])
    # A band that does not hold the depth has no limits of it.
    for lower, upper, refused in ((LOWER, UPPER, 0), (UPPER, UPPER, 1), (LOWER, LOWER, 1), (TABLE, TABLE, 0)):
        rows.append([body(TABLE), body(lower), body(upper), "peaks", 0.9, 60, "", 5, "", "", "", "", "", "", "", refused])
    write(folder, PROGRAM, "rarity-with-limits", "return periods by a table of depths and its limits, the rarer by the lower one",
          BAND_COLUMNS + [("minutes", "min, duration"), ("depth", "mm, depth"), ("years", "years, return period asked"), ("estimate", "years, by the table"), ("low", "years, by the upper limit"), ("high", "years, by the lower limit"),
                          ("standing", "1, places of below, within and above"), ("lower_mm", "mm, lower limit"), ("upper_mm", "mm, upper limit"), ("refused", "1, whether the rarity is refused"), ("none", "1, whether the limits are refused")],
          BAND + [("minutes", "minutes")],
          [("estimate", "ddf.band.estimate", "input.depth = depth"), ("low", "ddf.band.lower", "input.depth = depth"), ("high", "ddf.band.upper", "input.depth = depth"), ("standing", "ddf.band.standing", "input.depth = depth"),
           ("lower_mm", "ddf.band.depth-lower", "input.years = years"), ("upper_mm", "ddf.band.depth-upper", "input.years = years"), ("refused", "refusal.ddf.band.estimate", "input.depth = depth"),
           ("none", "refusal.ddf.band.depth-lower", "input.years = years")], rows, tolerance="1e-10 relative", reason="durations in whole nanoseconds")


def events(folder):
    rng = random.Random(51)
    rows = []
    band = [body(TABLE), body(LOWER), body(UPPER), "peaks", 0.9]
    for size in (0.2, 0.5, 0.9, 1.2, 1.6, 2.2, 3.4, 6):
        x = [round(size * rng.uniform(0.2, 3), 1) or 0.1 for _ in range(30)]
        windows = [5, 10, 30, 120]
        peaks = {w: max(math.fsum(x[i:i + w // 5]) for i in range(len(x))) for w in windows}
        found = [max(period(rows_, w, d) for w, d in peaks.items()) for rows_ in (TABLE, UPPER, LOWER)]
        rows.append([*band, text(x), 5, text(windows), *(years for _, years in found), found[0][0] + 10 * found[1][0] + 100 * found[2][0], 0])
    rows.append([*band, "1 2 1", 5, "400", "", "", "", "", 1])
    rows.append([*band, "1 2 1", 2, "4", "", "", "", "", 1])
    rows.append([*band, "1 2 1", 5, "4000 15", "", "", "", "", 0])
    write(folder, PROGRAM, "rarity-of-events", "return period of the rarest duration of an event, by a table of depths and its limits",
          BAND_COLUMNS + [("x", "mm, depths"), ("step", "min, step"), ("windows", "min, durations"), ("estimate", "years, by the table"), ("low", "years, by the upper limit"), ("high", "years, by the lower limit"),
                          ("standing", "1, places of below, within and above"), ("refused", "1, whether it is refused")],
          BAND + [("depths", "text x"), ("step_minutes", "step"), ("windows_minutes", "text windows")],
          [("estimate", "ddf.band-of-event.estimate"), ("low", "ddf.band-of-event.lower"), ("high", "ddf.band-of-event.upper"), ("standing", "ddf.band-of-event.standing"), ("refused", "refusal.ddf.band-of-event.estimate")], rows,
          tolerance="1e-10 relative", reason="durations in whole nanoseconds")


def discordancies(folder):
    rows = [[4, "", 1], [3, "", 1]]
    for n in (5, 6, 7, 8, 9, 10, 11, 12, 13, 14):
        z = f.isf(0.10 / n, 3, n - 4)
        rows.append([n, f"{(n - 1) * z / (n - 4 + 3 * z):.3f}", 0])
    rows += [[n, "3.000", 0] for n in (15, 16, 40)]
    write(folder, PROGRAM, "critical-discordancies", "J. R. M. Hosking and J. R. Wallis (1997), Regional Frequency Analysis, section 3.2.4: critical discordancy from the F distribution at 10 %, 3 for 15 sites and more",
          [("n", "sites, number"), ("d", "1, critical discordancy"), ("refused", "1, whether it is refused")], [("sites", "n")], [("d", "region.critical-discordancy"), ("refused", "refusal.region.critical-discordancy")], rows,
          tolerance="0.51 digit", reason="three decimals")


def trends(folder):
    mp.dps = 30
    samples = ("31 44 28 39 52 41 36 60 47 55 43 66 58 49 71", "12.1 15.3 9.8 14.9 22.5 11.7 18.2 25.4 13.3 29.8 17.6 8.9", "70 64 81 59 66 75 52 61 57 49 63 46 55 41 58 37")

    def likeliest(x, in_location, in_scale):
        n = len(x)
        times = [(2 * mpf(i) - (n - 1)) / (n - 1) for i in range(n)]
        mean = sum(x) / n
        sd = mp.sqrt(sum((v - mean) ** 2 for v in x) / (n - 1))

        def parts(p):
            p = list(p)
            location, scale = p[0], p[1]
            b = p[2] if in_location else mpf(0)
            c = p[-1] if in_scale else mpf(0)
            return location, scale, b, c

        def minus(*p):
            location, scale, b, c = parts(p)
            total = mpf(0)
            for s, v in zip(times, x):
                a = exp(scale + c * s)
                y = (v - location - b * s) / a
                total += scale + c * s + y + exp(-y)
            return total

        count = 2 + in_location + in_scale

        def slopes(*p):
            location, scale, b, c = parts(p)
            g = [mpf(0)] * 4
            for s, v in zip(times, x):
                a = exp(scale + c * s)
                y = (v - location - b * s) / a
                w = 1 - exp(-y)
                g[0] -= w / a
                g[2] -= w * s / a
                g[1] += 1 - y * w
                g[3] += s * (1 - y * w)
            return g[:2] + ([g[2]] if in_location else []) + ([g[3]] if in_scale else [])

        start = [mean - sd * mpf("0.45"), log(sd * mpf("0.78"))] + [mpf(0)] * (count - 2)
        if in_location:
            start[2] = 3 * sum(s * v for s, v in zip(times, x)) / n
        found = findroot(slopes, start, tol=1e-40, maxsteps=80)
        return -minus(*found)

    kinds = {"nothing": (0, 0), "location": (1, 0), "scale": (0, 1), "location-and-scale": (1, 1)}
    rows = []
    for sample in samples:
        x = [mpf(v) for v in sample.split()]
        best = {kind: likeliest(x, *of) for kind, of in kinds.items()}
        for trend, (bl, bs) in kinds.items():
            for simpler, (sl, ss) in kinds.items():
                nested = (bl + bs > sl + ss) and bl >= sl and bs >= ss
                if nested:
                    d = 2 * (best[trend] - best[simpler])
                    more = bl + bs - sl - ss
                    rows.append(["gumbel", trend, simpler, sample, nstr(d, 12), more, nstr(mpf(chi2.sf(float(d), more)), 10), 0])
                elif sample == samples[0]:
                    rows.append(["gumbel", trend, simpler, sample, "", "", "", 1])
    write(folder, PROGRAM, "trends-against-others", "S. Coles (2001), An introduction to statistical modeling of extreme values, section 6.2: likelihood ratio of Gumbel laws with a trend in location, in ln scale, or both",
          [("family", "text, family"), ("trend", "text, trend"), ("simpler", "text, the simpler trend"), ("sample", "text, sample"), ("d", "1, statistic"), ("more", "1, degrees of freedom"), ("p", "1, p-value"), ("refused", "1, whether it is refused")],
          [("family", "text family"), ("trend", "text trend"), ("simpler", "text simpler"), ("sample", "text sample")],
          [("d", "trend-fit.against.statistic"), ("more", "trend-fit.against.freedom"), ("p", "trend-fit.against.p-value"), ("refused", "refusal.trend-fit.against.statistic")], rows, tolerance="1e-8 relative or 1e-9",
          reason="the library ends its search where the likelihood no longer tells two points apart")


def nowhere(folder):
    rows = []
    for law, parameters, low, high in (
        ("normal", "3 2", -1, 1), ("gumbel", "3 2", -1, 1), ("exponential", "3 2", 0, 1), ("gev", "3 2 0.3", -1, 0), ("gev", "3 2 -0.3", 0, 1), ("gev", "3 2 0", -1, 1), ("generalized-logistic", "3 2 0.3", -1, 0),
        ("generalized-logistic", "3 2 -0.3", 0, 1), ("generalized-logistic", "3 2 0", -1, 1), ("generalized-normal", "3 2 0.3", -1, 0), ("generalized-normal", "3 2 -0.3", 0, 1), ("generalized-normal", "3 2 0", -1, 1),
        ("generalized-pareto", "3 2 0.3", 0, 0), ("generalized-pareto", "3 2 -0.3", 0, 1), ("generalized-pareto", "3 2 0", 0, 1), ("pearson-iii", "3 2 0.5", 0, 1), ("pearson-iii", "3 2 -0.5", -1, 0), ("pearson-iii", "3 2 0", -1, 1),
        ("pearson-iii", "3 2 1.5", 0, 1), ("pearson-iii", "3 2 -1.5", -1, 0), ("kappa", "3 2 0.3 0.5", 0, 0), ("kappa", "3 2 -0.3 0.5", 0, 1), ("kappa", "3 2 0.3 -0.5", -1, 0), ("kappa", "3 2 0.3 0", -1, 0), ("kappa", "3 2 -0.3 -0.5", 0, 1),
        ("kappa", "3 2 0 0.5", 0, 1), ("kappa", "3 2 0 -0.5", -1, 1), ("log-pearson-iii", "1 0.2 0.5", 0, 1), ("log-pearson-iii", "1 0.2 -0.5", 0, 0), ("log-normal", "1 0.2", 0, 1)):
        rows.append([law, parameters, low, high])
    write(folder, PROGRAM, "bounds-nowhere", "J. R. M. Hosking and J. R. Wallis (1997), Regional Frequency Analysis, appendix: ranges of laws, which end somewhere or nowhere",
          [("family", "text, family"), ("p", "text, parameters"), ("low", "1, infinite below is -1"), ("high", "1, infinite above is 1")], [("family", "text family"), ("parameters", "text p")],
          [("low", "frequency.infinite-lower-bound"), ("high", "frequency.infinite-upper-bound")], rows, tolerance="0", reason="a sign")


def endless(folder):
    rng = random.Random(53)
    bounded = text([round(100 * (1 - rng.expovariate(1) / 20), 2) for _ in range(40)])
    rows = [["gev", bounded, 200, 0.995, 400, 1, 1], ["gev", bounded, 200, 0.995, 92, 0, 0], ["gev", bounded, 20, 0.5, 400, 1, 1], ["gumbel", bounded, 200, 0.995, 100, 0, 0], ["gumbel", bounded, 20, 0.9, 100, 0, 0]]
    write(folder, PROGRAM, "periods-without-end", "return periods of a value beyond the bound of every drawn law, and of one within all",
          [("family", "text, family"), ("x", "of the variate, sample"), ("replicates", "1, samples drawn"), ("confidence", "1, confidence"), ("value", "of the variate, value"), ("low", "1, whether the lower limit is infinite"), ("high", "1, whether the upper one is")],
          [("family", "text family"), ("sample", "text x"), ("replicates", "replicates"), ("confidence", "confidence"), ("value", "value")], [("low", "drawn.period-lower-infinite"), ("high", "drawn.period-upper-infinite")], rows, tolerance="0",
          reason="a sign")


def order_with(n, s):
    """The numbers 1 to n in an order whose rising pairs exceed its falling ones by s."""
    values, falling = list(range(1, n + 1)), (n * (n - 1) // 2 - s) // 2
    for _ in range(falling):
        i = next(i for i in range(n - 1) if values[i] < values[i + 1])
        values[i], values[i + 1] = values[i + 1], values[i]
    return values


def warnings(folder):
    rows = []

    def row(x, word, count):
        rows.append([text(x), word, count])

    # Trend: the normal approximation with its correction, for samples longer than those whose orders are counted.
    for n in range(40, 80):
        sd = math.sqrt(n * (n - 1) * (2 * n + 5) / 18)
        p = {s: math.erfc((s - 1) / sd / math.sqrt(2)) for s in range(2 + (n * (n - 1) // 2) % 2, n * 6, 2)}
        near = [s for s in p if 0.0490 < p[s] < 0.05 or 0.05 < p[s] < 0.0520]
        for s in near[:2]:
            row([20 + 0.1 * v for v in order_with(n, s)], "Trend", int(p[s] < 0.05))
        if len(rows) > 8:
            break
    # Outlier: Grubbs, two-sided 10 %, in the logarithms.
    rng = random.Random(54)
    for n in (12, 25, 60):
        base = [rng.gauss(3, 0.3) for _ in range(n - 1)]

        def grubbs(last, level):
            x = base + [last]
            m = math.fsum(x) / n
            sd = math.sqrt(math.fsum((v - m) ** 2 for v in x) / (n - 1))
            t = student.isf(level / (2 * n), n - 2)
            return max(abs(v - m) for v in x) / sd - (n - 1) / math.sqrt(n) * math.sqrt(t * t / (n - 2 + t * t))

        for level, count in ((0.1020, 0), (0.0980, 1)):
            low, high = 3.5, 9.0
            for _ in range(80):
                mid = (low + high) / 2
                low, high = (mid, high) if grubbs(mid, level) < 0 else (low, mid)
            row([math.exp(v) for v in base + [high]], "Outlier", count)
    plain = [23.0, 31.5, 27.2, 29.9, 25.4, 33.3, 28.1, 26.6, 30.2, 24.7, 32.0, 27.9, 29.1, 26.0, 31.1, 25.9, 30.8, 28.8, 27.5, 29.5]
    row(plain, "Only", 0)
    row(plain[:19], "Only", 1)
    row(plain + [0.0], "no rain", 1)
    row(plain, "no rain", 0)
    row([v / 50 for v in plain], "no rain", 0)
    row([30.0] * 22, "equal", 1)
    row([0.0] * 22, "equal", 1)
    row(plain + [0.0], "Outlier", 0)
    row([30.0] * 21 + [30.1], "equal", 0)
    row(plain, "e", 0)
    write(folder, PROGRAM, "warnings-of-maxima", "sentences about annual maxima: a trend below 5 % (Mann-Kendall), an outlier of the logarithms at 10 % (Grubbs 1969), few, dry and equal years",
          [("x", "mm, maxima"), ("word", "text, word looked for"), ("count", "sentences, that hold it")], [("maxima", "text x"), ("word", "text word")], [("count", "maxima.warnings")], rows, tolerance="0", reason="a count")


if __name__ == "__main__":
    for part in (bands, events, discordancies, trends, nowhere, endless, warnings):
        if not sys.argv[2:] or part.__name__ in sys.argv[2:]:
            part(sys.argv[1])
