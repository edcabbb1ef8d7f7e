"""Independent computation for the statistics of extremes: mpmath, NumPy and SciPy, no code in common with the library.

    python3 extremes.py ../main/resources/dev/runnel/verification/tables/rainfall

writes the tables named below into that folder, and reads the samples that stand in its folder data. Made with mpmath 1.3, NumPy 2
and SciPy 1.17.

    distribution-moments.csv    mean and variance by quadrature of 30 digits over the quantiles or the density
    profile-limits-NAME.csv     limits by the profile of the likelihood: SciPy's simplex on the likelihood with the level held
    peaks-limits.csv            peaks over a threshold: likelihood, delta method with a Poisson rate, profile
    conditional-probability.csv Bulletin 17B, appendix 5, with SciPy's Pearson III
"""

import csv
import math
import sys

import numpy as np
from mpmath import exp, expm1, linspace, log, log1p, loggamma, mp, mpf, ncdf, npdf, nstr, quad, sign, sqrt
from scipy import optimize, stats

mp.dps = 30
FOLDER = sys.argv[1]
GRID = linspace(-30, 30, 61)


def write(name, header, rows):
    with open(f"{FOLDER}/{name}.csv", "w") as out:
        out.write(header + "\n")
        for row in rows:
            out.write(",".join(str(cell) for cell in row) + "\n")


def data(name):
    with open(f"{FOLDER}/data/{name}.csv") as text:
        rows = [line.strip() for line in text if line.strip() and not line.startswith("#")]
    return [float(line.split(",")[0]) for line in rows[1:]]


# ---------------------------------------------------------------- moments


def over_quantiles(value):
    mean = quad(lambda z: value(ncdf(z), ncdf(-z)) * npdf(z), GRID)
    return mean, quad(lambda z: (value(ncdf(z), ncdf(-z)) - mean) ** 2 * npdf(z), GRID)


def shaped(variate):
    def member(xi, a, k=0):
        return lambda f, p: xi + a * (variate(f, p) if k == 0 else (1 - exp(-k * variate(f, p))) / k)

    return member


GUMBEL = shaped(lambda f, p: -log(-log1p(-p)) if p < f else -log(-log(f)))
LOGISTIC = shaped(lambda f, p: log(f) - log(p))
TAIL = shaped(lambda f, p: -log(p) if p < 0.5 else -log1p(-f))


def of_normal(value):
    mean = quad(lambda z: value(z) * npdf(z), GRID)
    return mean, quad(lambda z: (value(z) - mean) ** 2 * npdf(z), GRID)


def log_pearson(mu, s, g):
    a, b, x0 = 4 / g**2, s * abs(g) / 2, mu - 2 * s / g

    def average(of):
        lowest = max(mpf(10) ** -25, a - 20 * sqrt(a))
        return quad(
            lambda t: of(mpf(10) ** (x0 + sign(g) * b * t)) * exp((a - 1) * log(t) - t - loggamma(a)),
            linspace(lowest, a + 20 * sqrt(a) + 60, 81),
        )

    mean = average(lambda x: x)
    return mean, average(lambda x: (x - mean) ** 2)


def kappa(xi, a, k, h):
    def value(f, p):
        logf = log1p(-p) if p < 0.5 else log(f)
        y = -logf if h == 0 else -expm1(h * logf) / h
        return xi + a * (1 - y**k) / k

    return over_quantiles(value)


def wakeby(xi, a, b, c, d):
    return over_quantiles(lambda f, p: xi + a / b * (1 - p**b) - c / d * (1 - p**-d))


def moments():
    cases = []
    for family, member, parameters in [
        ("gumbel", GUMBEL, ["30 8"]),
        ("gev", GUMBEL, ["30 8 -0.12", "30 8 0.17", "30 8 0.0001"]),
        ("generalized logistic", LOGISTIC, ["30 8 -0.12", "30 8 0.23", "30 8 -0.0001"]),
        ("exponential", TAIL, ["10 5"]),
        ("generalized Pareto", TAIL, ["10 5 -0.12", "10 5 0.4"]),
    ]:
        for text in parameters:
            cases.append((family, text, over_quantiles(member(*map(mpf, text.split())))))
    for text in ["30 8 -0.3", "30 8 0.5"]:
        xi, a, k = map(mpf, text.split())
        cases.append(("generalized normal", text, of_normal(lambda z: xi + a * (1 - exp(-k * z)) / k)))
    mu, s = mpf("3.2"), mpf("0.4")
    cases.append(("log-normal", "3.2 0.4", of_normal(lambda z: exp(mu + s * z))))
    cases.append(("normal", "31.5 7.25", of_normal(lambda z: mpf("31.5") + mpf("7.25") * z)))
    for text in ["1.5 0.2 0.4", "1.5 0.2 -0.7", "1.5 0.2 0.01"]:
        cases.append(("log-Pearson III", text, log_pearson(*map(mpf, text.split()))))
    for text in ["30 8 -0.12 0.3", "30 8 0.2 -0.4", "30 8 0.1 0"]:
        cases.append(("kappa", text, kappa(*map(mpf, text.split()))))
    for text in ["2 30 7 4 0.15", "5 12 3 2.5 -0.2"]:
        cases.append(("wakeby", text, wakeby(*map(mpf, text.split()))))
    write(
        "distribution-moments",
        "family,parameters,mean,variance",
        [(f, p, nstr(m, 16), nstr(v, 16)) for f, p, (m, v) in cases],
    )


# ---------------------------------------------------------------- profile likelihood


def climb(negative, start):
    best = None
    at = np.array(start, float)
    for _ in range(6):
        found = optimize.minimize(
            negative, at, method="Nelder-Mead", options=dict(xatol=1e-11, fatol=1e-13, maxiter=20000, maxfev=20000)
        )
        best, at = found, found.x
    return best


def profile_limits(negative_held, estimate, least, step, confidence):
    """Where the held negative log-likelihood has risen by half the quantile of chi-square."""
    line = least + stats.chi2.ppf(confidence, 1) / 2
    out = []
    for direction in (-1, 1):
        inner, width = estimate, step
        while negative_held(inner + direction * width) < line:
            inner += direction * width
        outer = inner + direction * width
        out.append(optimize.brentq(lambda level: negative_held(level) - line, min(inner, outer), max(inner, outer), xtol=1e-9))
    return out


def gev_case(name, years, confidence):
    x = np.array(data(name))

    def negative(p):
        return -np.sum(stats.genextreme.logpdf(x, p[2], p[0], p[1])) if p[1] > 0 else np.inf

    fit = climb(negative, [np.mean(x) - 0.45 * np.std(x), 0.78 * np.std(x), 0.01])
    level = stats.genextreme.isf(1 / years, fit.x[2], fit.x[0], fit.x[1])
    last = [fit.x[1:]]

    def held(at):
        def rest(q):
            if q[0] <= 0:
                return np.inf
            location = at - q[0] * stats.genextreme.isf(1 / years, q[1])
            return negative([location, q[0], q[1]])

        found = climb(rest, last[0])
        last[0] = found.x
        return found.fun

    return [level] + profile_limits(held, level, fit.fun, 0.05 * level, confidence)


def gumbel_case(name, years, confidence):
    x = np.array(data(name))

    def negative(p):
        return -np.sum(stats.gumbel_r.logpdf(x, p[0], p[1])) if p[1] > 0 else np.inf

    fit = climb(negative, [np.mean(x) - 0.45 * np.std(x), 0.78 * np.std(x)])
    level = stats.gumbel_r.isf(1 / years, *fit.x)

    def held(at):
        return optimize.minimize_scalar(
            lambda s: negative([at - s * stats.gumbel_r.isf(1 / years), s]),
            bounds=(0.2 * fit.x[1], 5 * fit.x[1]),
            method="bounded",
            options=dict(xatol=1e-12),
        ).fun

    return [level] + profile_limits(held, level, fit.fun, 0.05 * level, confidence)


def profiles():
    for name in ("port-pirie", "fort-collins", "amarillo-7day"):
        rows = []
        if name != "amarillo-7day":
            for years in (10, 100):
                rows.append(("gev", years, 0.95, *map(repr, map(float, gev_case(name, years, 0.95)))))
        if name != "fort-collins":
            rows.append(("gumbel", 50, 0.9, *map(repr, map(float, gumbel_case(name, 50, 0.9)))))
        write(f"profile-limits-{name}", "family,years,confidence,level,lower,upper", rows)


# ---------------------------------------------------------------- peaks over a threshold


def peaks():
    x = np.array(data("coles-rain-exceedances"))
    threshold, years_of_record = 30.0, 17531 / 365.25
    excess = x - threshold

    def negative(p):
        return -np.sum(stats.genpareto.logpdf(excess, p[1], 0, p[0])) if p[0] > 0 else np.inf

    fit = climb(negative, [np.mean(excess), 0.1])
    # Second derivatives by differences of the fourth order.
    h = np.array([1e-3 * fit.x[0], 1e-3])
    information = np.zeros((2, 2))
    for i in range(2):
        for j in range(2):
            total = 0
            for a, wa in ((-2, 1 / 12), (-1, -2 / 3), (1, 2 / 3), (2, -1 / 12)):
                for b, wb in ((-2, 1 / 12), (-1, -2 / 3), (1, 2 / 3), (2, -1 / 12)):
                    point = fit.x.copy()
                    point[i] += a * h[i]
                    point[j] += b * h[j]
                    total += wa * wb * negative(point)
            information[i, j] = total / (h[i] * h[j])
    covariance = np.linalg.inv(information)
    rate = len(x) / years_of_record
    rows = []
    for years in (10, 100, 500):
        m = rate * years
        s, xi = fit.x
        level = threshold + s / xi * (m**xi - 1)
        gradient = np.array([(m**xi - 1) / xi, -s / xi**2 * (m**xi - 1) + s / xi * m**xi * math.log(m)])
        of_rate = s * m**xi / rate
        variance = gradient @ covariance @ gradient + of_rate**2 * rate / years_of_record

        def held(at):
            def rest(shape):
                scale = (at - threshold) * shape / (m**shape - 1) if shape != 0 else (at - threshold) / math.log(m)
                return negative([scale, shape])

            return optimize.minimize_scalar(rest, bounds=(-0.5, 1.5), method="bounded", options=dict(xatol=1e-12)).fun

        lower, upper = profile_limits(held, level, fit.fun, 0.1 * level, 0.95)
        rows.append([years] + [repr(float(v)) for v in (level, math.sqrt(variance), lower, upper)])
    write("peaks-limits", "years,level,error,lower,upper", rows)


# ---------------------------------------------------------------- conditional probability


def conditional():
    sample = [0, 0, 12.1, 15.4, 9.8, 22.7, 31.0, 18.3, 14.9, 26.2, 11.7, 44.5, 20.1, 16.6, 28.9, 13.3, 35.7, 19.2, 24.8, 1.3]
    kept = np.log10([v for v in sample if v >= 5])
    n, total = len(kept), len(sample)
    skew = stats.skew(kept, bias=False)
    law = stats.pearson3(skew, np.mean(kept), np.std(kept, ddof=1))
    q50, q10, q01 = (law.isf(p * total / n) for p in (0.5, 0.1, 0.01))
    g = -2.50 + 3.12 * (q01 - q10) / (q10 - q50)
    k50, k01 = stats.pearson3(g).isf([0.5, 0.01])
    s = (q01 - q50) / (k01 - k50)
    m = q50 - k50 * s
    row = [" ".join(map(str, sample)), 5] + [repr(float(v)) for v in (m, s, g, 10 ** law.isf(0.02 * total / n))]
    write("conditional-probability", "sample,lowest,mean,deviation,skew,level50", [row])


moments()
profiles()
peaks()
conditional()
