"""Independent computation of what Runnel makes of a long record: Python with NumPy and SciPy, no code in common.

    python3 long_record.py FOLDER

writes the tables long-record-*.csv into FOLDER, and leaves the column r as it is. The record is invented: whole numbers
from a linear congruential generator (multiplier and increment of Knuth's MMIX), so that any language makes the same one
to the last digit. The Java twin is InventedRecord in dev.runnel.verification.oracle.
"""

import datetime as dt
import math
import sys

import numpy as np
from scipy import optimize, special, stats

FIRST_YEAR, YEARS = 1991, 30
MINUTES = [10, 20, 30, 60, 120, 360, 720, 1440]
PERIODS = [2, 10, 30, 100]
MISSING = -1


def record():
    """Depth of every 10-minute step of 30 years, in tenths of a millimetre; -1 where nothing was measured."""
    start = dt.datetime(FIRST_YEAR, 1, 1)
    steps = (dt.datetime(FIRST_YEAR + YEARS, 1, 1) - start) // dt.timedelta(minutes=10)
    bad_from = (dt.datetime(1997, 5, 1) - start) // dt.timedelta(minutes=10)
    bad_to = bad_from + 100 * 144
    tenths = np.zeros(steps, dtype=np.int64)
    state = 20261125
    wet = gap = scale = 0

    def draw():
        nonlocal state
        state = (state * 6364136223846793005 + 1442695040888963407) & 0xFFFFFFFFFFFFFFFF
        return state >> 33

    for i in range(steps):
        season = (i % 52560) // 4380
        if wet == 0 and draw() % 100000 < 180 + 30 * min(season, 11 - season):
            longest = 1 + draw() % 90
            wet = 1 + draw() % longest
            bits = draw()
            level = 0
            while level < 20 and (bits >> level) & 1 == 0:
                level += 1
            scale = (2 + level * (level + 1) // 2) * 40 // (10 + wet)
        if wet > 0:
            wet -= 1
            u = draw() % 8
            tenths[i] = u * u * scale // 40
        if gap == 0 and draw() % 20000 == 0:
            gap = 1 + draw() % 500
        if gap > 0:
            gap -= 1
            tenths[i] = MISSING
        if bad_from <= i < bad_to:
            tenths[i] = MISSING
    return start, tenths


def year_slices(start):
    for year in range(FIRST_YEAR, FIRST_YEAR + YEARS):
        a = (dt.datetime(year, 1, 1) - start) // dt.timedelta(minutes=10)
        b = (dt.datetime(year + 1, 1, 1) - start) // dt.timedelta(minutes=10)
        yield year, a, b


def annual_maxima(start, tenths):
    """Greatest sliding sum inside each year, mm, by minutes; and the share measured of each year."""
    years, rows, excluded = [], [], []
    for year, a, b in year_slices(start):
        part = tenths[a:b]
        coverage = np.count_nonzero(part != MISSING) / len(part)
        if coverage < 0.8:
            excluded.append((year, coverage))
            continue
        sums = np.concatenate([[0], np.cumsum(np.where(part == MISSING, 0, part))])
        years.append(year)
        rows.append([int((sums[m // 10:] - sums[: len(sums) - m // 10]).max()) / 10 for m in MINUTES])
    return years, np.array(rows), excluded


def l_moments(x):
    x = np.sort(x)
    n = len(x)
    j = np.arange(n)
    b = [(special.comb(j, r) * x).sum() / special.comb(n - 1, r) / n for r in range(4)]
    l2 = 2 * b[1] - b[0]
    return b[0], l2, (6 * b[2] - 6 * b[1] + b[0]) / l2, (20 * b[3] - 30 * b[2] + 12 * b[1] - b[0]) / l2


def gev_by_l_moments(x):
    l1, l2, t3, _ = l_moments(x)
    k = optimize.brentq(lambda k: 2 * math.expm1(-k * math.log(3)) / math.expm1(-k * math.log(2)) - 3 - t3,
                        -0.999, 20.1, xtol=1e-15)
    g = special.gamma(1 + k)
    alpha = -l2 * k / (math.expm1(-k * math.log(2)) * g)
    return l1 - alpha * (1 - g) / k, alpha, k


def minimise(negative, start):
    best = optimize.minimize(negative, start, method="Nelder-Mead",
                             options={"xatol": 1e-12, "fatol": 1e-13, "maxiter": 20000, "maxfev": 20000})
    best = optimize.minimize(negative, best.x, method="Nelder-Mead",
                             options={"xatol": 1e-12, "fatol": 1e-13, "maxiter": 20000, "maxfev": 20000})
    return best.x


def frozen(family, method, x):
    """The fitted distribution as SciPy has it, and the parameters with the names and signs of Hosking."""
    if family == "gumbel":
        if method == "l-moments":
            l1, l2, _, _ = l_moments(x)
            alpha = l2 / math.log(2)
            xi = l1 - np.euler_gamma * alpha
        elif method == "moments":
            alpha = np.std(x, ddof=1) * math.sqrt(6) / math.pi
            xi = np.mean(x) - np.euler_gamma * alpha
        else:
            # The scale solves one equation; the location follows.
            f = lambda a: x.mean() - (x * np.exp(-x / a)).sum() / np.exp(-x / a).sum() - a
            alpha = optimize.brentq(f, 0.05 * x.std(), 5 * x.std(), xtol=1e-14)
            xi = -alpha * math.log(np.exp(-x / alpha).mean())
        return stats.gumbel_r(xi, alpha), [("xi", xi), ("alpha", alpha)]
    if family == "gev":
        xi, alpha, k = gev_by_l_moments(x)
        if method == "maximum-likelihood":
            def negative(p):
                if p[1] <= 0:
                    return math.inf
                return -stats.genextreme(p[2], p[0], p[1]).logpdf(x).sum()
            xi, alpha, k = minimise(negative, [xi, alpha, k])
        return stats.genextreme(k, xi, alpha), [("xi", xi), ("alpha", alpha), ("k", k)]
    if family == "log-normal":
        mu, sigma = np.log(x).mean(), np.log(x).std(ddof=1 if method == "moments" else 0)
        return stats.lognorm(sigma, scale=math.exp(mu)), [("mu", mu), ("sigma", sigma)]
    if family == "pearson-iii":
        mu, sigma, gamma = x.mean(), x.std(ddof=1), stats.skew(x, bias=False)
        return stats.pearson3(gamma, mu, sigma), [("mu", mu), ("sigma", sigma), ("gamma", gamma)]
    raise ValueError(family)


FITS = [("gumbel", "l-moments"), ("gumbel", "moments"), ("gumbel", "maximum-likelihood"), ("gev", "l-moments"),
        ("gev", "maximum-likelihood"), ("log-normal", "moments"), ("log-normal", "maximum-likelihood"),
        ("pearson-iii", "moments")]


def scaled(depths, minutes):
    """theta and eta of i = y/(D + theta)^eta by least squares of the logarithm of the mean intensity; y pooled."""
    hours = np.array(minutes) / 60
    target = np.log(depths.mean(axis=0) / hours)

    def squares(theta):
        line = np.log(hours + theta)
        slope, level = np.polyfit(line, target, 1)
        return ((target - level - slope * line) ** 2).sum()

    grid = np.linspace(0, 12, 4001)
    at = int(np.argmin([squares(t) for t in grid]))
    low, high = grid[max(at - 1, 0)], grid[min(at + 1, 4000)]
    theta = optimize.minimize_scalar(squares, bounds=(low, high), method="bounded", options={"xatol": 1e-12}).x
    eta = -np.polyfit(np.log(hours + theta), target, 1)[0]
    pooled = (depths / hours * (hours + theta) ** eta).ravel()
    return theta, eta, pooled


def events(tenths):
    """First and last step of each event: 6 dry hours (36 steps) part two events; a missing step is dry."""
    wet = np.flatnonzero(tenths > 0)
    first = wet[np.concatenate([[True], np.diff(wet) - 1 >= 36])]
    last = wet[np.concatenate([np.diff(wet) - 1 >= 36, [True]])]
    return first, last


def greatest_windows(tenths, minutes, wanted, apart):
    """The greatest sliding sums, tenths: the greatest first, each at least so many steps from the end of another."""
    n = minutes // 10
    sums = np.concatenate([[0], np.cumsum(np.where(tenths == MISSING, 0, tenths))])
    depth = sums[n:] - sums[: len(sums) - n]
    free = np.ones(len(depth), dtype=bool)
    found = []
    for at in np.argsort(-depth, kind="stable"):
        if free[at]:
            found.append((int(at), int(depth[at])))
            free[max(0, at - n - apart + 1): at + n + apart] = False
            if len(found) == wanted:
                return found
    raise ValueError("too few windows")


def write(folder, name, head, rows):
    with open(f"{folder}/long-record-{name}.csv", "w", newline="\n") as out:
        out.write(head + "\n")
        for row in rows:
            out.write(",".join(repr(float(v)) if isinstance(v, float) else str(v) for v in row) + "\n")


def column_r(folder, name):
    """What long_record.R found, by the first four cells; it writes that column itself."""
    try:
        with open(f"{folder}/long-record-{name}.csv", encoding="utf-8") as file:
            return {tuple(line.rstrip("\n").split(",")[:4]): line.rstrip("\n").split(",")[5] for line in list(file)[1:]}
    except FileNotFoundError:
        return {}


def write_fits(folder, name, rows):
    found = column_r(folder, name)
    write(folder, name, "minutes,f,m,w,scipy,r", [row + [found.get(tuple(map(str, row[:4])), "")] for row in rows])


def main(folder):
    start, tenths = record()
    years, depths, excluded = annual_maxima(start, tenths)
    write(folder, "maxima", "year," + ",".join(f"d{m}" for m in MINUTES),
          [[y] + [float(v) for v in row] for y, row in zip(years, depths)])
    corrected = depths * np.array([m / 10 / (m / 10 - 0.125) for m in MINUTES])
    parameters, quantiles = [], []
    for j, m in enumerate(MINUTES):
        for family, method in FITS:
            distribution, named = frozen(family, method, corrected[:, j])
            parameters += [[m, family, method, name, float(v)] for name, v in named]
            quantiles += [[m, family, method, t, float(distribution.isf(1 / t))] for t in PERIODS]
    write_fits(folder, "parameters", parameters)
    write_fits(folder, "quantiles", quantiles)

    random = np.random.default_rng(7)
    rows = []
    for m in (10, 60, 1440):
        x = corrected[:, MINUTES.index(m)]
        xi, alpha, k = gev_by_l_moments(x)
        drawn = []
        for _ in range(20000):
            a, b, c = gev_by_l_moments(stats.genextreme(k, xi, alpha).rvs(len(x), random_state=random))
            drawn.append([a + b / c * (1 - (-math.log1p(-1 / t)) ** c) for t in (10, 30)])
        for i, t in enumerate((10, 30)):
            column = np.array(drawn)[:, i]
            lower, upper = np.quantile(column, [0.05, 0.95])
            # Four standard errors of the difference from a simulation with 5000 samples.
            n = 1 / (1 / 20000 + 1 / 5000)
            shift = 4 * math.sqrt(0.05 * 0.95 / n)
            rough = [(np.quantile(column, p + shift) - np.quantile(column, p - shift)) / 2 for p in (0.05, 0.95)]
            error = column.std(ddof=1)
            rough.append(4 * error * math.sqrt((stats.kurtosis(column, fisher=False) - 1) / (4 * n)))
            rows.append([m, t, float(lower), float(upper), float(error)] + [float(f"{v:.3g}") for v in rough])
    write(folder, "limits", "minutes,years,lower,upper,error,tl,tu,te", rows)

    theta, eta, pooled = scaled(corrected, MINUTES)
    xi, alpha, k = gev_by_l_moments(pooled)
    y = stats.genextreme(k, xi, alpha)
    write(folder, "scaled-parameters", "theta,eta", [[float(theta), float(eta)]])
    write(folder, "scaled-depths", "minutes,years,depth",
          [[m, t, float(y.isf(1 / t) * m / 60 / (m / 60 + theta) ** eta)] for m in (10, 15, 60, 90, 1440) for t in (2, 10, 30, 58)])

    measured = (tenths != MISSING).sum() / 6 / 24 / 365.25
    rows = []
    for m in (10, 60, 360, 1440):
        found = [depth / 10 * (m / 10 / (m / 10 - 0.125))
                 for _, depth in greatest_windows(tenths, m, int(3 * measured) + 1, 36)]
        threshold = found[-1]
        x = np.array([v for v in found if v > threshold + 1e-9])
        l1, l2, _, _ = l_moments(x)
        k = (l1 - threshold) / l2 - 2
        alpha = (1 + k) * (l1 - threshold)
        rate = len(x) / measured
        rows.append([m, float(threshold), len(x)]
                    + [float(stats.genpareto(-k, threshold, alpha).isf(1 / (rate * t))) for t in (1, 5, 30)])
    write(folder, "peaks", "minutes,threshold,count,t1,t5,t30", rows)

    first, last = events(tenths)
    total = np.array([tenths[a:b + 1][tenths[a:b + 1] > 0].sum() for a, b in zip(first, last)])
    rows = []
    for rank in (0, 4, 29):
        e = np.argsort(-total, kind="stable")[rank]
        part = np.where(tenths[first[e]:last[e] + 1] == MISSING, 0, tenths[first[e]:last[e] + 1])
        sums = np.concatenate([[0], np.cumsum(part)])
        for m in MINUTES:
            n = min(m // 10, len(part))
            depth = int((sums[n:] - sums[: len(sums) - n]).max()) / 10
            h = m / 60
            rows.append([rank + 1, m, float(depth), float(1 / y.sf(depth / h * (h + theta) ** eta))])
    write(folder, "events", "rank,minutes,depth,years", rows)
    write(folder, "counts", "coverage,events", [[float(dict(excluded)[1997]), len(first)]])


if __name__ == "__main__":
    main(sys.argv[1])
