"""The North Cascades of Hosking and Wallis (1997), table 3.4, without their programs: growth curves, heterogeneity and goodness of fit.

    python3 region_tables.py NAME > NAME.csv

writes one of the tables named in TABLES below. Growth curves are roots of L-moment ratios, found with mpmath and 30 digits (for the kappa
law from its Gamma functions); the simulations draw 20,000 groups of sites from the kappa law with numpy.random and seed 1. Made with
NumPy 2, SciPy 1.15 and mpmath 1.3.
"""

import math
import sys

import numpy as np
from mpmath import betainc, erf, exp, findroot, gamma, log, mp, mpf, nstr, pi, sqrt
from scipy import integrate, stats

mp.dps = 30
YEARS = "98 59 90 61 65 86 78 72 67 99 49 61 69 73 70 66 59 74 82"
LCV = "0.1209 0.0915 0.1124 0.1032 0.0967 0.1328 0.1008 0.1143 0.1107 0.1179 0.1308 0.1119 0.1018 0.1025 0.1054 0.1174 0.1115 0.1003 0.1046"
LSKEW = "0.0488 0.0105 0.0614 0.0417 -0.0134 -0.0176 0.0943 0.0555 0.0478 0.0492 0.094 -0.0429 0.0435 0.0182 -0.0224 0.0124 -0.0346 0.0446 0.0128"
LKURT = "0.1433 0.1569 0.1541 0.1429 0.1568 0.1206 0.1967 0.121 0.1371 0.09 0.1273 0.0927 0.1446 0.1047 0.1664 0.1317 0.1032 0.145 0.1583"
ROW = ",".join((YEARS, LCV, LSKEW, LKURT))
n = [int(v) for v in YEARS.split()]


def average(text):
    return sum(mpf(v) * w for v, w in zip(text.split(), n)) / sum(n)


T, T3, T4 = average(LCV), average(LSKEW), average(LKURT)


def kappa_moments(k, h):
    """First L-moments of the standard kappa law from g_r (Hosking and Wallis, A.10)."""
    if h > 0:
        g = [r * gamma(1 + k) * gamma(r / h) / (h ** (1 + k) * gamma(1 + k + r / h)) for r in (1, 2, 3, 4)]
    else:
        g = [r * gamma(1 + k) * gamma(-k - r / h) / ((-h) ** (1 + k) * gamma(1 - r / h)) for r in (1, 2, 3, 4)]
    return (1 - g[0]) / k, (g[0] - g[1]) / k, (-g[0] + 3 * g[1] - 2 * g[2]) / (g[0] - g[1]), (g[0] - 6 * g[1] + 10 * g[2] - 5 * g[3]) / (g[0] - g[1])


def kappa():
    k, h = findroot(lambda a, b: [kappa_moments(a, b)[2] - T3, kappa_moments(a, b)[3] - T4], (mpf("0.15"), mpf("-0.25")))
    l1, l2, *_ = kappa_moments(k, h)
    alpha = T / l2
    return {"xi": 1 - alpha * l1, "alpha": alpha, "k": k, "h": h}


def logistic():
    k = -T3
    alpha = T * mp.sin(k * pi) / (k * pi)
    return {"xi": 1 - alpha * (1 / k - pi / mp.sin(k * pi)), "alpha": alpha, "k": k}


def gev():
    k = findroot(lambda x: 2 * (1 - mpf(3) ** -x) / (1 - mpf(2) ** -x) - 3 - T3, mpf("0.2"))
    alpha = T * k / ((1 - mpf(2) ** -k) * gamma(1 + k))
    return {"xi": 1 - alpha * (1 - gamma(1 + k)) / k, "alpha": alpha, "k": k}


def normal():
    """Shape by the third L-moment as an integral over the normal law."""
    def tau3(k):
        value = lambda z: (1 - exp(-k * z)) / k
        third = mp.quad(lambda z: value(z) * (6 * mp.ncdf(z) * (mp.ncdf(z) - 1) + 1) * mp.npdf(z), [-12, -4, 0, 4, 12])
        return third / (exp(k * k / 2) * erf(k / 2) / k)
    with mp.workdps(20):
        k = findroot(lambda x: tau3(x) - T3, (mpf("-0.05"), mpf("-0.06")), solver="secant", tol=1e-15)
    alpha = T * k / (exp(k * k / 2) * erf(k / 2))
    return {"xi": 1 - alpha * (1 - exp(k * k / 2)) / k, "alpha": alpha, "k": k}


def pearson():
    def tau3(skew):
        a = 4 / skew**2
        return 6 * betainc(a, 2 * a, 0, mpf(1) / 3, regularized=True) - 3
    skew = findroot(lambda g: tau3(g) - T3, (mpf("0.16"), mpf("0.18")), solver="secant")
    a = 4 / skew**2
    return {"mu": mpf(1), "sigma": T * sqrt(pi * a) * gamma(a) / gamma(a + mpf("0.5")), "gamma": skew}


def pareto():
    k = (1 - 3 * T3) / (1 + T3)
    alpha = (1 + k) * (2 + k) * T
    return {"xi": 1 - (2 + k) * T, "alpha": alpha, "k": k}


LAWS = {"kappa": kappa, "generalized-logistic": logistic, "gev": gev, "generalized-normal": normal, "pearson-iii": pearson, "generalized-pareto": pareto}


def growth():
    print("n,t,t3,t4,f,p,v")
    for name, law in LAWS.items():
        for parameter, value in law().items():
            print(f"{ROW},{name},{parameter},{nstr(value, 15)}")


def factor(name, law, years):
    """The value that is not exceeded with probability 1 - 1/T, from the quantile of each law."""
    f = 1 - 1 / mpf(years)
    if name == "pearson-iii":
        a, sign = 4 / law["gamma"] ** 2, 1 if law["gamma"] > 0 else -1
        tail = f if sign > 0 else 1 - f
        with mp.workdps(25):
            y = findroot(lambda x: mp.gammainc(a, 0, x, regularized=True) - tail, (a, a + 2 * sqrt(a)), solver="secant", tol=1e-20)
        return law["mu"] + law["sigma"] * sign * (y - a) / sqrt(a)
    k = law["k"]
    if name == "generalized-normal":
        return law["xi"] + law["alpha"] * (1 - exp(-k * sqrt(2) * mp.erfinv(2 * f - 1))) / k
    part = {"kappa": lambda: (1 - f ** law["h"]) / law["h"], "generalized-logistic": lambda: (1 - f) / f, "gev": lambda: -log(f), "generalized-pareto": lambda: 1 - f}[name]()
    return law["xi"] + law["alpha"] * (1 - part**k) / k


def levels():
    print("n,t,t3,t4,f,mean,years,v")
    for name, law in LAWS.items():
        parameters = law()
        for mean, years in (("0.02", "1.5"), ("1", "10"), ("38.5", "100"), ("1730", "1000")):
            print(f"{ROW},{name},{mean},{years},{nstr(mpf(mean) * factor(name, parameters, years), 15)}")


def drawn(groups=20_000):
    """Sample L-moment ratios of each site in each group: t, t3, t4."""
    law = {key: float(value) for key, value in kappa().items()}
    rng = np.random.default_rng(1)
    found = np.empty((3, groups, len(n)))
    for site, size in enumerate(n):
        f = rng.random((groups, size))
        x = np.sort(law["xi"] + law["alpha"] / law["k"] * (1 - ((1 - f ** law["h"]) / law["h"]) ** law["k"]), axis=1)
        j = np.arange(1, size + 1)
        weights = [np.ones(size) / size]
        for r in (1, 2, 3):
            weights.append(weights[-1] * (j - r) / (size - r))
        b = [x @ w for w in weights]
        l2, l3, l4 = 2 * b[1] - b[0], 6 * b[2] - 6 * b[1] + b[0], 20 * b[3] - 30 * b[2] + 12 * b[1] - b[0]
        found[0, :, site], found[1, :, site], found[2, :, site] = l2 / b[0], l3 / l2, l4 / l2
    return found


def tolerance(value):
    return f"{4 * math.sqrt((1 + value**2 / 2) * (1 / 20_000 + 1 / 5000)):.4g}"


def heterogeneity():
    found, w = drawn(), np.array(n) / sum(n)

    def first(t):
        mean = t @ w
        return np.sqrt((t - mean[..., None]) ** 2 @ w)

    def third(t3, t4):
        return np.hypot(t3 - (t3 @ w)[..., None], t4 - (t4 @ w)[..., None]) @ w

    sites = [np.array([[float(v) for v in text.split()]]) for text in (LCV, LSKEW, LKURT)]
    print("n,t,t3,t4,m,v,e")
    for measure, simulated, observed in ((1, first(found[0]), first(sites[0])[0]), (3, third(found[1], found[2]), third(sites[1], sites[2])[0])):
        value = (observed - simulated.mean()) / simulated.std(ddof=1)
        print(f"{ROW},{measure},{value:.10f},{tolerance(value)}")


def kurtosis(name):
    """L-kurtosis of a law with the region's L-skewness."""
    law = LAWS[name]()
    k = law.get("k")
    if name == "generalized-logistic":
        return (1 + 5 * k * k) / 6
    if name == "generalized-pareto":
        return (1 - k) * (2 - k) / (3 + k) / (4 + k)
    if name == "gev":
        return (5 * (1 - mpf(4) ** -k) - 10 * (1 - mpf(3) ** -k) + 6 * (1 - mpf(2) ** -k)) / (1 - mpf(2) ** -k)
    g = float(law["gamma"])
    f = lambda x: stats.pearson3.cdf(x, g)
    part = lambda q: integrate.quad(lambda x: f(x) * (1 - f(x)) * q(f(x)), -8, 10, epsabs=1e-13, epsrel=1e-12, limit=300)[0]
    return part(lambda p: 5 * p * p - 5 * p + 1) / part(lambda p: 1)


def fit():
    w = np.array(n) / sum(n)
    simulated = drawn()[2] @ w
    bias = simulated.mean() - float(T4)
    print("n,t,t3,t4,f,v,e")
    for name in ("generalized-logistic", "gev", "pearson-iii", "generalized-pareto"):
        value = (float(kurtosis(name)) - float(T4) + bias) / simulated.std(ddof=1)
        print(f"{ROW},{name},{value:.10f},{tolerance(value)}")


TABLES = {"region-growth-curves-cascades": growth, "region-levels-cascades": levels, "region-heterogeneity-cascades": heterogeneity, "region-z-cascades": fit}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
