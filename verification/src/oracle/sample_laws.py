"""Laws of extremes beside samples, the slow way: Python with mpmath, NumPy and SciPy, no code in common with the library.

    python3 sample_laws.py FOLDER

writes the tables named below into the folder, csv and descriptor. L-moments of samples come from all
subsets; fits from solving equations with 22 digits; errors from the matrix of second
derivatives; and what is drawn with chance is simulated many more times than the library does, with the standard errors of both.
"""

import sys

import numpy as np
from mpmath import exp, findroot, log, matrix, mp, mpf, nstr, sqrt
from wakeby_laws import l_moments, wakeby
from own_tables import text, write
from scipy import optimize, stats

mp.dps = 20
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "sample_laws.py"
HOSKING = ("J. R. M. Hosking, J. R. Wallis", 1997)


def digits(x):
    return nstr(mpf(x), 17)


# ---- samples ----------------------------------------------------------------------------------------------------------


SAMPLES = [
    [23.1, 31.4, 18.2, 44.9, 27.3, 35.2, 29.9, 61.0, 22.4, 38.8, 33.3, 25.7, 49.5, 30.1],
    [4.2, 5.1, 3.3, 9.8, 4.4, 6.0, 4.9, 5.5, 14.7, 3.9, 7.2, 5.2],
    [102.0, 98.5, 110.2, 87.3, 95.1, 104.4, 99.9, 120.6, 91.7, 100.3, 106.8, 93.2, 97.7, 101.5, 108.1],
]
LAWS = [("gumbel", [28, 8]), ("gev", [28, 8, -0.05]), ("gumbel", [4.6, 1.9]), ("generalized-logistic", [5.1, 1.1, -0.3]), ("normal", [101, 8]), ("generalized-normal", [100, 7, -0.2])]
ALPHA = {"weibull": 0, "hazen": 0.5, "gringorten": 0.44, "cunnane": 0.4, "blom": 0.375}


def law(family, p):
    if family == "normal":
        return stats.norm(p[0], p[1])
    if family == "gumbel":
        return stats.gumbel_r(p[0], p[1])
    if family == "gev":
        return stats.genextreme(p[2], p[0], p[1])

    class Own:
        def cdf(self, x):
            y = -np.log(1 - p[2] * (x - p[0]) / p[1]) / p[2]
            return 1 / (1 + np.exp(-y)) if family == "generalized-logistic" else stats.norm.cdf(y)

        def ppf(self, f):
            y = np.log(f / (1 - f)) if family == "generalized-logistic" else stats.norm.ppf(f)
            return p[0] + p[1] * (1 - np.exp(-p[2] * y)) / p[2]

    return Own()


rows = []
for i, (family, p) in enumerate(LAWS):
    x = np.sort(np.array(SAMPLES[i // 2]))
    n = len(x)
    d = law(family, p)
    for formula, a in list(ALPHA.items())[: 2 + i % 3]:
        places = (np.arange(1, n + 1) - a) / (n + 1 - 2 * a)
        f = d.cdf(x)
        squared = -n - np.mean((2 * np.arange(1, n + 1) - 1) * (np.log(f) + np.log1p(-f[::-1])))
        distance = max(max(j / n - f[j - 1], f[j - 1] - (j - 1) / n) for j in range(1, n + 1))
        l = l_moments(SAMPLES[i // 2], 4)
        k = mpf(str(p[2])) if len(p) > 2 else 0
        own = {"gumbel": lambda: (16 * log(2) - 10 * log(3)) / log(2), "normal": lambda: 30 / mp.pi * mp.atan(sqrt(2)) - 9, "generalized-logistic": lambda: (1 + 5 * k * k) / 6,
               "gev": lambda: (1 - 6 * 2**-k + 10 * 3**-k - 5 * 4**-k) / (1 - 2**-k)}.get(family)
        rows.append((family, text(p), formula, text(SAMPLES[i // 2]), np.corrcoef(x, d.ppf(places))[0, 1], squared, distance, digits(l[3] / l[1] - own()) if own else ""))
write(FOLDER, PROGRAM, "measures-of-fit", "correlation of the plot, Anderson-Darling, Kolmogorov-Smirnov and distance of L-kurtosis of a given law",
      [("family", "text, family"), ("p", "text, parameters"), ("formula", "text, plotting position"), ("x", "mm, sample"), ("r", "1, correlation"), ("a2", "1, Anderson-Darling"), ("d", "1, Kolmogorov-Smirnov"), ("t4", "1, L-kurtosis of the sample less that of the law")],
      [("family", "text family"), ("parameters", "text p"), ("sample", "text x")],
      [("r", "law.plot-correlation", "input.formula = text formula"), ("a2", "law.anderson-darling", "input.formula = text formula"), ("d", "law.kolmogorov-smirnov", "input.formula = text formula"), ("t4", "law.l-kurtosis-distance")],
      rows, tolerance="1e-11 relative or 1e-12", reason="16 digits are given")

rows = []
for sample in SAMPLES + [[1.0, 1.1, 0.9, 5.0], [3.2, 3.1, 3.3, 3.2, -0.4, 3.2, 3.25], [1, 2, 4]]:
    for alpha in (0.05, 0.01, 0.2):
        x, n = np.array(sample, float), len(sample)
        g = abs(x - x.mean()) / x.std(ddof=1)
        t = stats.t.isf(alpha / (2 * n), n - 2)
        critical = (n - 1) / n**0.5 * (t * t / (n - 2 + t * t)) ** 0.5
        rows.append((alpha, text(sample), int(np.argmax(g)), g.max(), critical, int(g.max() > critical)))
write(FOLDER, PROGRAM, "outlier-grubbs", "F. E. Grubbs (1969), Procedures for detecting outlying observations in samples: the furthest value, two-sided",
      [("alpha", "1, significance"), ("x", "1, sample"), ("place", "1, of the furthest, from 0"), ("g", "1, G"), ("critical", "1, critical G"), ("found", "1, outlier or not")],
      [("significance", "alpha"), ("sample", "text x")], [(c, "outlier." + n) for c, n in (("place", "place"), ("g", "statistic"), ("critical", "critical"), ("found", "found"))], rows,
      tolerance="1e-10 relative or 1e-10", reason="16 digits are given; quantiles of t are good to 1e-12")

# ---- Wakeby of samples ------------------------------------------------------------------------------------------------


rng = np.random.default_rng(20261129)
rows = []
while len(rows) < 20:
    u = rng.uniform(size=16)
    x = [round(float(v), 1) for v in 10 + 8 * (1 - u**4) / 4 + 3 * (u**-0.15 - 1) / 0.15]
    found = wakeby(l_moments(x, 5))
    if found:
        rows += [(text(x), name, digits(v)) for name, v in zip(("xi", "alpha", "beta", "gamma", "delta"), found)]
write(FOLDER, PROGRAM, "wakeby-fits-of-samples", "five L-moments over all subsets, and the law that has them, solved with 22 digits",
      [("x", "mm, sample"), ("name", "text, parameter"), ("v", "1, value")], [("sample", "text x"), ("parameter", "text name")], [("v", "wakeby.fitted")], rows,
      tolerance="1e-7 relative or 1e-8", reason="17 digits are given; the equations lose up to eight of them", source=HOSKING)

# ---- errors of trends -------------------------------------------------------------------------------------------------


def trend_errors(family, kind, times, sample):
    slopes = [s for s in ("location", "scale") if s in kind]
    n_own = 3 if family == "gev" else 2
    mid, half = mpf(times[0] + times[-1]) / 2, mpf(times[-1] - times[0]) / 2
    u = [(t - mid) / half for t in times]
    x = [mpf(str(v)) for v in sample]

    def negative(*p):
        rest = list(p[n_own:])
        b = rest.pop(0) if "location" in kind else 0
        c = rest.pop(0) if "scale" in kind else 0
        total = mpf(0)
        for t, v in zip(u, x):
            scale = p[1] * exp(c * t)
            z = (v - p[0] - b * t) / scale
            if family == "gev":
                w = 1 - p[2] * z
                if w <= 0:
                    return mpf(10) ** 9
                y = -log(w) / p[2]
                total += log(scale) + (1 - p[2]) * y + exp(-y)
            else:
                total += log(scale) + z + exp(-z)
        return total

    def plain(p):
        rest = list(p[n_own:])
        b = rest.pop(0) if "location" in kind else 0
        c = rest.pop(0) if "scale" in kind else 0
        if p[1] <= 0:
            return 1e9
        us, scale = np.array([float(v) for v in u]), p[1] * np.exp(c * np.array([float(v) for v in u]))
        z = (np.array(sample) - p[0] - b * us) / scale
        if family == "gev":
            if np.any(1 - p[2] * z <= 0):
                return 1e9
            y = -np.log1p(-p[2] * z) / p[2]
            return float(np.sum(np.log(scale) + (1 - p[2]) * y + np.exp(-y)))
        return float(np.sum(np.log(scale) + z + np.exp(-z)))

    at = np.array([float(np.mean(sample)) - 0.45 * float(np.std(sample)), 0.78 * float(np.std(sample))] + ([-0.05] if family == "gev" else []) + [0.01] * len(slopes))
    for _ in range(4):
        at = optimize.minimize(plain, at, method="Nelder-Mead", options=dict(xatol=1e-9, fatol=1e-11, maxiter=6000)).x
    p = [mpf(v) for v in at]
    m = len(p)
    step = mpf(10) ** -8

    def derivatives(p):
        def move(i, j, a, b):
            q = list(p)
            q[i] += a * step
            q[j] += b * step
            return negative(*q)
        g = matrix(m, 1)
        h = matrix(m, m)
        for i in range(m):
            g[i] = (move(i, i, 1, 0) - move(i, i, -1, 0)) / (2 * step)
            for j in range(i + 1):
                h[i, j] = h[j, i] = (move(i, j, 1, 1) - move(i, j, 1, -1) - move(i, j, -1, 1) + move(i, j, -1, -1)) / (4 * step**2) if i != j else (move(i, i, 1, 0) - 2 * negative(*p) + move(i, i, -1, 0)) / step**2
        return g, h

    for _ in range(3):
        g, h = derivatives(p)
        move = mp.lu_solve(h, -g)
        p = [a + b for a, b in zip(p, move)]
    covariance = derivatives(p)[1] ** -1
    errors = [sqrt(covariance[i, i]) / half for i in range(n_own, m)]
    return (errors.pop(0) if "location" in kind else mpf(0)), (errors.pop(0) if "scale" in kind else mpf(0))


mp.dps = 40
rng = np.random.default_rng(5)
rows = []
times = [1961 + i for i in range(45) if i not in (7, 20, 21)]
x = [round(float(v), 1) for v in 30 + 0.25 * (np.array(times) - 1961) + np.exp(0.008 * (np.array(times) - 1961)) * 7 * -np.log(-np.log(rng.uniform(size=len(times))))]
for family in ("gumbel", "gev"):
    for kind in ("location", "scale", "location and scale"):
        b, c = trend_errors(family, kind, times, x)
        rows.append((family, kind.replace(" ", "-"), text(times), text(x), digits(b), digits(c)))
mp.dps = 22
write(FOLDER, PROGRAM, "trend-fit-errors", "standard errors of slopes from the inverse of the matrix of second derivatives, with 40 digits",
      [("family", "text, family"), ("trend", "text, trend"), ("t", "years, times"), ("x", "mm, sample"), ("b", "mm/year, of the location"), ("c", "1/year, of the logarithm of the scale")],
      [("family", "text family"), ("trend", "text trend"), ("times", "text t"), ("sample", "text x")], [("b", "trend-fit.location-slope-error"), ("c", "trend-fit.scale-slope-error")], rows,
      tolerance="1e-4 relative", reason="the library differentiates numerically, at a maximum found to eight digits")

# ---- drawn with chance ------------------------------------------------------------------------------------------------

MANY, LIBRARY = 400_000, 20_000
rng = np.random.default_rng(77)


def batch_l_moments(x):
    x = np.sort(x, axis=1)
    n = x.shape[1]
    j = np.arange(n)
    b = [np.mean(x * np.prod([(j - k) / (n - 1 - k) for k in range(r)], axis=0) if r else x, axis=1) for r in range(3)]
    return b[0], 2 * b[1] - b[0], 6 * b[2] - 6 * b[1] + b[0]


def fitted(family, x):
    l1, l2, l3 = batch_l_moments(x)
    if family == "gumbel":
        scale = l2 / np.log(2)
        return l1 - 0.5772156649015329 * scale, scale, None
    k = -l3 / l2
    k = np.where(np.abs(k) < 1e-9, 1e-9, k)
    scale = l2 * np.sin(k * np.pi) / (k * np.pi)
    return l1 - scale * (1 / k - np.pi / np.sin(k * np.pi)), scale, k


def level(p, years):
    f = 1 - 1 / years
    return p[0] - p[1] * np.log(-np.log(f)) if p[2] is None else p[0] + p[1] / p[2] * (1 - ((1 - f) / f) ** p[2])


def period(p, value):
    z = (value - p[0]) / p[1]
    if p[2] is None:
        return 1 / -np.expm1(-np.exp(-z))
    with np.errstate(all="ignore"):
        y = np.maximum(1 - p[2] * z, 0) ** (1 / p[2])
    return 1 + 1 / y


def end(values, share):
    values = np.sort(values)
    at = np.quantile(values, share)
    width = 0.01
    slope = (np.quantile(values, min(share + width, 1)) - np.quantile(values, max(share - width, 0))) / (2 * width)
    return at, 4 * slope * (share * (1 - share) * (1 / MANY + 1 / LIBRARY)) ** 0.5


rows = []
for family, sample, confidence, years, value in (("gumbel", SAMPLES[0], 0.9, 20, 70.0), ("generalized-logistic", SAMPLES[2], 0.8, 10, 104.0), ("gumbel", SAMPLES[1], 0.7, 5, 12.0)):
    x = np.array(sample)[rng.integers(0, len(sample), size=(MANY, len(sample)))]
    p = fitted(family, x)
    levels, periods = level(p, years), period(p, value)
    levels, periods = levels[np.isfinite(levels)], periods[~np.isnan(periods)]
    sd = levels.std(ddof=1)
    kurtosis = stats.kurtosis(levels, fisher=False)
    low, low_e = end(levels, (1 - confidence) / 2)
    high, high_e = end(levels, (1 + confidence) / 2)
    plow, plow_e = end(periods, (1 - confidence) / 2)
    phigh, phigh_e = end(periods, (1 + confidence) / 2)
    rows.append((family, text(sample), confidence, years, value, sd, 4 * sd * ((kurtosis - 1) / 4 * (1 / MANY + 1 / LIBRARY)) ** 0.5, low, low_e, high, high_e, plow, plow_e, phigh, phigh_e))
write(FOLDER, PROGRAM, "drawn-again", f"samples drawn from the sample, fitted by L-moments: {MANY} of them here, {LIBRARY} in the library",
      [("family", "text, family"), ("x", "mm, sample"), ("confidence", "1, confidence"), ("years", "years, return period"), ("value", "mm, value"), ("sd", "mm, standard error of the level"), ("sd_e", "mm, four standard errors"),
       ("low", "mm, lower end"), ("low_e", "mm, four standard errors"), ("high", "mm, upper end"), ("high_e", "mm, four standard errors"), ("plow", "years, lower end of the period"), ("plow_e", "years, four standard errors"), ("phigh", "years, upper end"), ("phigh_e", "years, four standard errors")],
      [("family", "text family"), ("sample", "text x"), ("replicates", str(LIBRARY)), ("confidence", "confidence")],
      [(c, "drawn." + n, f"input.{'years = years' if n.startswith('level') else 'value = value'}", f"tolerance = column {c}_e") for c, n in (("sd", "level-error"), ("low", "level-lower"), ("high", "level-upper"), ("plow", "period-lower"), ("phigh", "period-upper"))],
      rows, reason="four standard errors of the difference of two simulations")

rows = []
MANY, LIBRARY = 100_000, 4_000
for sample in SAMPLES[:2] + [[12, 13, 12.5, 40, 11.8, 12.2, 13.4, 12.9, 14, 39, 12.1, 13.3]]:
    def ad(x):
        p = fitted("gumbel", x)
        x = np.sort(x, axis=1)
        n = x.shape[1]
        z = np.exp(-(x - p[0][:, None]) / p[1][:, None])
        logf, logu = -z, np.log(-np.expm1(-z))
        return -n - np.mean((2 * np.arange(1, n + 1) - 1) * (logf + logu[:, ::-1]), axis=1)

    observed = ad(np.array([sample], float))[0]
    drawn = ad(-np.log(-np.log(rng.uniform(size=(MANY, len(sample))))))
    p = np.mean(drawn >= observed)
    rows.append(("gumbel", text(sample), p, 4 * (max(p * (1 - p), 1 / LIBRARY) * (1 / MANY + 1 / LIBRARY)) ** 0.5 + 1 / LIBRARY))
write(FOLDER, PROGRAM, "drawn-significance", f"share of samples of a fitted Gumbel law that fit no better by Anderson-Darling: {MANY} here, {LIBRARY} in the library",
      [("family", "text, family"), ("x", "mm, sample"), ("p", "1, significance"), ("e", "1, tolerance")], [("family", "text family"), ("sample", "text x"), ("replicates", str(LIBRARY))],
      [("p", "drawn.significance")], rows, tolerance="column e", reason="four standard errors of the difference of two simulations, and the one that is added")
