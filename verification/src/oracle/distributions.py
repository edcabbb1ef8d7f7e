"""Distribution functions, quantiles and L-moments from their definitions: mpmath with 60 digits, no code in common with the library.

    python3 distributions.py FOLDER

FOLDER holds the rainfall tables probability-*, quantile-* and population-l-moments*, and pearson3-frequency-factors. Which
parameters and which arguments are asked stands in the tables; every result is computed and written anew. Parameters after Hosking
and Wallis (1997); Pearson III by mean, standard deviation and skew.

A probability is the explicit formula, or for Pearson III the regularised incomplete gamma function, and where the skew is too small
for its series the quadrature of the density over the tail. A quantile is the explicit inverse, or a root of the tail. An L-moment is a
quadrature over the quantiles or over F (1 - F), so that no closed form of the library's is used twice. Made with mpmath 1.3.
"""

import csv
import glob
import os
import sys

from mpmath import erfc, erfinv, exp, expm1, gammainc, inf, log, log1p, loggamma, mp, mpf, ncdf, nstr, pi, quad, sqrt

mp.dps = 60


def powered(k, y):
    """(1 - exp(-k y)) / k, and y where k is 0."""
    return -expm1(-k * y) / k if k else y


def unpowered(k, z):
    """The inverse of the same: -log(1 - k z) / k, and None beyond the bound."""
    if not k:
        return z
    return -log1p(-k * z) / k if k * z < 1 else None


class Reduced:
    """Distributions of x = xi + alpha (1 - exp(-k y)) / k with a simple distribution of y."""

    def __init__(self, xi, alpha, k=mpf(0)):
        self.xi, self.alpha, self.k = xi, alpha, k

    def tails(self, x):
        y = unpowered(self.k, (x - self.xi) / self.alpha)
        if y is None:
            return (mpf(1), mpf(0)) if self.k > 0 else (mpf(0), mpf(1))
        return self.of(y)

    def quantile(self, f, e):
        return self.xi + self.alpha * powered(self.k, self.y(f, e))


class Extreme(Reduced):
    def of(self, y):
        return exp(-exp(-y)), -expm1(-exp(-y))

    def y(self, f, e):
        return -log(-log(f)) if e is None else -log(-log1p(-e))


class Logistic(Reduced):
    def of(self, y):
        return 1 / (1 + exp(-y)), 1 / (1 + exp(y))

    def y(self, f, e):
        return log(f / (1 - f)) if e is None else log((1 - e) / e)


class Pareto(Reduced):
    def of(self, y):
        return (-expm1(-y), exp(-y)) if y > 0 else (mpf(0), mpf(1))

    def y(self, f, e):
        return -log1p(-f) if e is None else -log(e)


class Normal3(Reduced):
    """Generalized normal after Hosking: here y is a standard normal variate."""

    def of(self, y):
        return ncdf(y), ncdf(-y)

    def y(self, f, e):
        return normal_score(f) if e is None else -normal_score(e)


def normal_score(p):
    """The root of the normal distribution function: Newton's steps on the tail."""
    x = -sqrt(2) * erfinv(1 - 2 * p) if p > mpf("1e-20") else -sqrt(-2 * log(p))
    for _ in range(100):
        step = (erfc(-x / sqrt(2)) / 2 - p) / (exp(-x * x / 2) / sqrt(2 * pi))
        x -= step
        if abs(step) < mpf(10) ** (15 - mp.dps) * max(1, abs(x)):
            return x
    raise ArithmeticError("no normal score")


class Kappa:
    def __init__(self, xi, alpha, k, h):
        self.xi, self.alpha, self.k, self.h = xi, alpha, k, h

    def tails(self, x):
        y = unpowered(self.k, (x - self.xi) / self.alpha)
        if y is None:
            return (mpf(1), mpf(0)) if self.k > 0 else (mpf(0), mpf(1))
        z = unpowered(self.h, exp(-y))
        return (mpf(0), mpf(1)) if z is None else (exp(-z), -expm1(-z))

    def quantile(self, f, e):
        z = -log(f) if e is None else -log1p(-e)
        return self.xi + self.alpha * powered(self.k, -log(powered(self.h, z)))


class Pearson:
    def __init__(self, mu, sigma, gamma):
        self.mu, self.sigma, self.gamma = mu, sigma, gamma

    def density(self, t):
        g = abs(self.gamma)
        if not g:
            return exp(-t * t / 2) / sqrt(2 * pi)
        a = 4 / g**2
        z = a + t * 2 / g
        return exp((a - 1) * log(z) - z - loggamma(a)) * 2 / g if z > 0 else mpf(0)

    def standard(self, t):
        """Both tails of the variate with mean 0, deviation 1 and the skew's size."""
        g = abs(self.gamma)
        if not g:
            return ncdf(t), ncdf(-t)
        a = 4 / g**2
        z = a + t * 2 / g
        if z <= 0:
            return mpf(0), mpf(1)
        if g > mpf("0.06"):
            return gammainc(a, 0, z, regularized=True), gammainc(a, z, inf, regularized=True)
        with mp.workdps(56):  # logarithms of Gamma of a large shape lose as many digits as the shape has
            tail = lambda low, high: quad(self.density, [low + (high - low) * i / 12 for i in range(13)])
            lower = max(-2 / g, mpf(-20))
            return (tail(lower, t), 1 - tail(lower, t)) if t < 0 else (1 - tail(t, mpf(24)), tail(t, mpf(24)))

    def tails(self, x):
        t = (x - self.mu) / self.sigma
        if self.gamma < 0:
            return self.standard(-t)[::-1]
        return self.standard(t)

    def quantile(self, f, e):
        if self.gamma < 0:
            f, e = e, f
        side, p = (0, f) if e is None else (1, e)
        if p > mpf("0.5"):  # the other tail holds the same with more to lose
            side, p = 1 - side, 1 - p
        t = self.root(side, p)
        return self.mu + self.sigma * (-t if self.gamma < 0 else t)

    def root(self, side, p):
        """Newton's steps on the logarithm of a tail, kept between bounds."""
        g = abs(self.gamma)
        low, high = (max(-2 / g, mpf(-40)) if g else mpf(-40)), mpf(400)
        t = normal_score(p) * (1 if side == 0 else -1) + (g / 6 * (normal_score(p) ** 2 - 1) if g else 0)
        t = min(max(t, low + mpf("1e-3")), high)
        for _ in range(400):
            value = self.standard(t)[side]
            above = value > p if side == 0 else value < p
            low, high = (low, t) if above else (t, high)
            slope = self.density(t) * (1 if side == 0 else -1)
            following = t - value * log(value / p) / slope if value > 0 and slope else (low + high) / 2
            if not low < following < high:
                following = (low + high) / 2
            if abs(following - t) < mpf(10) ** -24 * max(1, abs(t)) or following == t:
                return following
            t = following
        raise ArithmeticError(f"no quantile of skew {self.gamma} at {p}")


class Powered:
    """A variate whose logarithm has another distribution."""

    def __init__(self, inner, base):
        self.inner, self.base = inner, base

    def tails(self, x):
        return self.inner.tails(log(x) / log(self.base)) if x > 0 else (mpf(0), mpf(1))

    def quantile(self, f, e):
        return self.base ** self.inner.quantile(f, e)


FAMILIES = {
    "gumbel": Extreme,
    "gev": Extreme,
    "generalized-logistic": Logistic,
    "generalized-pareto": Pareto,
    "exponential": Pareto,
    "generalized-normal": Normal3,
    "normal": Normal3,
    "kappa": Kappa,
    "pearson-iii": Pearson,
    "log-pearson-iii": lambda *p: Powered(Pearson(*p), mpf(10)),
    "log-normal": lambda *p: Powered(Normal3(*p), exp(mpf(1))),
}


def l_moments(d):
    """lambda 1, lambda 2, tau 3 and tau 4."""
    if isinstance(d, Pearson):
        # By parts: the r-th is an integral of F (1 - F) times a polynomial over x, which needs no quantile.
        sign, s = (-1 if d.gamma < 0 else 1), abs(d.gamma)
        places = [max(-2 / s, mpf(-14)), -3, -1, 0, 1, 2, 4, 8, 16, 30, 60] if s else [-14, -4, 0, 4, 14]
        places = sorted(p for p in map(mpf, places) if p >= places[0])
        with mp.workdps(25):
            part = lambda q: quad(lambda t: (lambda f, e: f * e * q(f))(*d.standard(t)), places)
            l2, l3, l4 = part(lambda f: 1), part(lambda f: 2 * f - 1), part(lambda f: 5 * f * f - 5 * f + 1)
        return d.mu, d.sigma * l2, sign * l3 / l2, l4 / l2
    half = mpf("0.5")
    legendre = [
        (lambda f: 1, lambda e: 1),
        (lambda f: 2 * f - 1, lambda e: 1 - 2 * e),
        (lambda f: (6 * f - 6) * f + 1, lambda e: (6 * e - 6) * e + 1),
        (lambda f: ((20 * f - 30) * f + 12) * f - 1, lambda e: -(((20 * e - 30) * e + 12) * e - 1)),
    ]
    l1, l2, l3, l4 = (
        quad(lambda f: d.quantile(f, None) * low(f), [0, half], maxdegree=9)
        + quad(lambda e: d.quantile(None, e) * high(e), [0, half], maxdegree=9)
        for low, high in legendre
    )
    return l1, l2, l3 / l2, l4 / l2


def show(value):
    return nstr(value, 17)


def rounded(value):
    """A quantile or an L-moment that is zero but for the last of 60 digits."""
    return "0.0" if abs(value) < mpf(10) ** -23 else nstr(value, 17)


def remake(path):
    with open(path, newline="") as file:
        rows = list(csv.DictReader(file))
    name = os.path.basename(path)[:-4]
    for row in rows:
        family = row.get("family") or next((f for f in sorted(FAMILIES, key=len, reverse=True) if f in name), "pearson-iii")
        d = FAMILIES[family](*map(mpf, row["p"].split()))
        if "l1" in row:
            row["l1"], row["l2"], row["t3"], row["t4"] = map(rounded, l_moments(d))
        elif "k" in row:
            row["k"] = nstr(d.quantile(None, mpf(row["e"])), 12)
        elif "lower" in row:
            q = mpf(row["q"])
            row["lower"], row["upper"] = rounded(d.quantile(q, None)), rounded(d.quantile(None, q))
        elif "e" in row:
            row["f"], row["e"] = map(show, d.tails(mpf(row["x"])))
        else:
            f = mpf(row["f"])
            row["x"] = rounded(d.quantile(f, None) if name.endswith("lower") else d.quantile(None, f))
    with open(path, "w", newline="") as file:
        out = csv.DictWriter(file, rows[0].keys(), lineterminator="\n")
        out.writeheader()
        out.writerows(rows)


def main(folder):
    for pattern in ("probability-*", "quantile-*", "population-l-moments*", "pearson3-frequency-factors"):
        for table in sorted(glob.glob(os.path.join(folder, pattern + ".csv"))):
            if not table.endswith("quantile-standard-errors.csv"):  # a matter of samples, not of distributions
                remake(table)


if __name__ == "__main__":
    main(sys.argv[1])
