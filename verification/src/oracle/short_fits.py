"""Greatest likelihoods of short samples and limits by their profiles, by looking everywhere: NumPy, SciPy and mpmath, no code in common
with the library and no translation of it.

    python3 short_fits.py FOLDER

writes short-fits.* and short-peaks.* into the folder of the rainfall tables. Short samples have likelihoods of several maxima, so nothing
here begins somewhere and climbs: the likelihood is computed over a grid of shape and location (the scale found for each by Brent's method,
or following from the level that is held), every cell higher than its neighbours is refined, and the greatest is taken. Shapes are
those inside which the library promises to look: |k| < 1, of the generalised normal |k| < 2. Peaks above a threshold have one number left,
k/alpha, for given it the shape is minus the mean of ln(1 - k y/alpha); that one is solved with 30 digits.
Made with NumPy 2.4, SciPy 1.17, mpmath 1.3."""

import sys

import mpmath as mp
import numpy as np
from own_tables import text, write
from scipy import optimize, special, stats

FOLDER = sys.argv[1]
PROGRAM = "short_fits.py"
mp.mp.dps = 30


# The law of w = -ln(1 - k (x - xi)/alpha)/k for each family, its logarithm of the density, and where it exceeds with p.
def standard(family):
    return {
        "gev": (lambda w: -w - np.exp(-w), lambda p: -np.log(-np.log1p(-p))),
        "generalized-logistic": (lambda w: -w - 2 * np.logaddexp(0, -w), lambda p: np.log((1 - p) / p)),
        "generalized-normal": (lambda w: -w * w / 2 - np.log(2 * np.pi) / 2, lambda p: -special.ndtri(p)),
    }[family]


def log_likelihood(family, x, xi, alpha, k):
    """Of whole arrays of parameters; minus infinity where a value lies beyond the bound."""
    density, _ = standard(family)
    xi, alpha, k = np.broadcast_arrays(xi, alpha, k)
    total = np.zeros(xi.shape)
    with np.errstate(all="ignore"):
        for value in x:
            u = 1 - k * (value - xi) / alpha
            w = np.where(np.abs(k) < 1e-9, (value - xi) / alpha, -np.log(u) / np.where(k == 0, 1, k))
            total = total + density(w) + k * w - np.log(alpha)
        return np.where(np.isfinite(total) & (alpha > 0), total, -np.inf)


def one(family, x, xi, alpha, k):
    """Of one set of parameters."""
    if not alpha > 0:
        return -np.inf
    z = (x - xi) / alpha
    if np.any(k * z >= 1):
        return -np.inf
    w = z if abs(k) < 1e-9 else -np.log1p(-k * z) / k
    with np.errstate(all="ignore"):
        total = float(np.sum(standard(family)[0](w) + k * w)) - len(x) * np.log(alpha)
    return total if np.isfinite(total) else -np.inf


def bound(family):
    return 2 if family == "generalized-normal" else 1


def peaks_of(values):
    """Cells of a plane that no neighbour is higher than, the highest first."""
    padded = np.pad(values, 1, constant_values=-np.inf)
    rows, columns = values.shape
    around = [padded[1 + i:1 + i + rows, 1 + j:1 + j + columns] for i in (-1, 0, 1) for j in (-1, 0, 1) if i or j]
    high = np.isfinite(values) & (values >= np.max(around, axis=0))
    cells = np.argwhere(high)
    return sorted(map(tuple, cells), key=lambda c: -values[c])[:3]


def refined(negative, start, sides):
    at = np.array(start, float)
    for _ in range(2):
        simplex = np.array([at] + [at + side * np.eye(len(at))[i] for i, side in enumerate(sides)])
        found = optimize.minimize(negative, at, method="Nelder-Mead",
                                  options=dict(xatol=1e-12, fatol=1e-13, maxiter=6000, maxfev=6000, initial_simplex=simplex))
        at, sides = found.x, [s / 4 for s in sides]
    return found


def maximum(family, x):
    """The greatest inner maximum, as xi, alpha, k and the log-likelihood."""
    spread = np.std(x)
    shapes = np.linspace(-bound(family), bound(family), 81)[1:-1]
    places = np.linspace(np.min(x) - spread, np.max(x) + spread, 81)
    scales = spread * np.exp(np.linspace(-3, 1.5, 61))
    cube = log_likelihood(family, x, places[None, :, None], scales[None, None, :], shapes[:, None, None])
    plane = np.max(cube, axis=2)
    best = None
    for i, j in peaks_of(plane):
        scale = scales[np.argmax(cube[i, j])]

        def negative(p):
            return -one(family, x, p[0], np.exp(p[1]), p[2]) if abs(p[2]) < bound(family) else np.inf

        found = refined(negative, [places[j], np.log(scale), shapes[i]], [0.1 * spread, 0.1, 0.05])
        xi, alpha, k = found.x[0], np.exp(found.x[1]), found.x[2]
        if abs(k) < 0.995 * bound(family) and (best is None or -found.fun > best[3]):
            best = (xi, alpha, k, -found.fun)
    return best


def held(family, x, level, p):
    """The greatest log-likelihood of all members whose level of exceedance p is the one given."""
    _, quantile = standard(family)
    spread = np.std(x)
    q = float(quantile(p))

    def alpha(xi, k):
        k = np.where(np.abs(k) < 1e-9, 1e-9, k)
        return (level - xi) * k / -np.expm1(-k * q)

    limit = bound(family) * (1 - 1e-9)
    shapes = np.linspace(-limit, limit, 101)
    places = np.linspace(np.min(x) - spread, np.max(x) + spread, 201)
    k, xi = np.meshgrid(shapes, places, indexing="ij")
    plane = log_likelihood(family, x, xi, alpha(xi, k), k)
    best = -np.inf
    for i, j in peaks_of(plane):
        def negative(v):
            return -one(family, x, v[0], float(alpha(v[0], v[1])), v[1]) if abs(v[1]) <= limit else np.inf

        best = max(best, -refined(negative, [places[j], shapes[i]], [0.05 * spread, -0.02 * np.sign(shapes[i])]).fun)
        if abs(shapes[i]) > 0.97 * limit:
            # On the end of the shapes the place alone is left.
            edge = np.copysign(limit, shapes[i])
            fine = np.linspace(places[max(0, j - 2)], places[min(len(places) - 1, j + 2)], 4001)
            at = fine[np.argmax(log_likelihood(family, x, fine, alpha(fine, edge), edge))]
            line = optimize.minimize_scalar(lambda v: negative([v, edge]), bounds=(at - 0.01 * spread, at + 0.01 * spread), method="bounded",
                                            options=dict(xatol=1e-11))
            best = max(best, -line.fun)
    return best


def limits(profile, estimate, greatest, confidence, width):
    line = greatest - stats.chi2.ppf(confidence, 1) / 2
    out = []
    for way in (-1, 1):
        inner, step = estimate, way * width
        while profile(inner + step) > line:
            inner += step
            step *= 1.4
        outer = inner + step
        out.append(optimize.brentq(lambda level: profile(level) - line, min(inner, outer), max(inner, outer), xtol=1e-9, rtol=1e-12))
    return out


def fits():
    random = np.random.default_rng(20261129)
    rows = []
    for size, shape in ((8, -0.1), (10, -0.2), (12, 0.1)):
        x = [round(float(v), 1) for v in 30 + 8 * ((1 - (-np.log(random.uniform(size=size))) ** shape) / shape if shape else -np.log(-np.log(random.uniform(size=size))))]
        rows += [fit_of(family, x) for family in ("gev", "generalized-logistic", "generalized-normal")]
    # Two maxima, of which the smaller lies where one looks first.
    for family, x in TWO:
        rows.append(fit_of(family, x))
    return [row for row in rows if row]


TWO = [
    ("generalized-normal", [41.4, 41.0, 50.5, 27.6, 49.9, 54.8, 25.9, 24.7]),
    ("generalized-logistic", [35.0, 23.6, 26.7, 25.6, 36.8, 33.2]),
    ("gev", [32.5, 34.8, 42.3, 45.7, 21.9, 32.5, 27.7, 31.7, 41.1, 44.1]),
]


def fit_of(family, x):
    x = np.array(x)
    found = maximum(family, x)
    if found is None:
        return None
    xi, alpha, k, greatest = found
    p, confidence = 1 / 30, 0.9
    level = xi - alpha * np.expm1(-k * float(standard(family)[1](p))) / k
    lower, upper = limits(lambda at: held(family, x, at, p), level, greatest, confidence, 0.05 * level)
    return (family, text(x), greatest, xi, alpha, k, lower, upper)


write(FOLDER, PROGRAM, "short-fits", "greatest likelihoods of samples of 6 to 14 values, some with several maxima, and 90 % limits of the level of 30 years by the profile",
      [("family", "text, family"), ("x", "text, the sample"), ("log_l", "1, greatest log-likelihood"), ("xi", "of the sample, location"),
       ("alpha", "of the sample, scale"), ("k", "1, shape"), ("lower", "of the sample, lower limit"), ("upper", "of the sample, upper limit")],
      [("family", "text family"), ("sample", "text x"), ("method", "word maximum-likelihood")],
      [("log_l", "frequency.fit.log-likelihood", "tolerance = 1e-10"),
       ("xi", "frequency.fit.parameter", "input.parameter = word xi"), ("alpha", "frequency.fit.parameter", "input.parameter = word alpha"),
       ("k", "frequency.fit.parameter", "input.parameter = word k"),
       ("lower", "frequency.profile.lower", "input.years = 30", "input.confidence = 0.9"),
       ("upper", "frequency.profile.upper", "input.years = 30", "input.confidence = 0.9")],
      fits(), tolerance="2e-6 relative or 2e-6", reason="simplexes end some 1e-7 from a maximum, where the likelihood is flat")


# ---------------------------------------------------------------- peaks above a known threshold


def of_peaks(y, theta):
    """ln L and k with theta = k/alpha: 1/n sum ln(1 - theta y) = -k."""
    n = len(y)
    k = -mp.fsum(mp.log(1 - theta * v) for v in y) / n
    return (-n * mp.log(k / theta) + (n * k - n), k) if k < 1 else (-mp.inf, k)


def greatest_of_peaks(y):
    """The greatest inner maximum with k below 1: roots of the derivative by theta between the cells of a fine grid."""
    n, largest = len(y), max(y)

    def slope(theta):
        k = -mp.fsum(mp.log(1 - theta * v) for v in y) / n
        dk = mp.fsum(v / (1 - theta * v) for v in y) / n
        return n / theta - n * dk / k + n * dk

    grid = [-mp.mpf(10) ** e / largest for e in np.linspace(2.5, -4, 120)] + [(1 - mp.mpf(10) ** e) / largest for e in np.linspace(-1e-4, -9, 120)]
    slopes = [slope(t) for t in grid]
    best = None
    for a, b, sa, sb in zip(grid, grid[1:], slopes, slopes[1:]):
        if sa > 0 >= sb:
            theta = mp.findroot(slope, (a, b), solver="anderson", tol=1e-25)
            value, k = of_peaks(y, theta)
            if k < 1 and (best is None or value > best[0]):
                best = (value, k, k / theta)
    return best


def held_peaks(y, level, p):
    """Greatest ln L with the level of p held: alpha follows from k; a fine grid of k, then the bounded search about its highest cell."""
    y = np.array([float(v) for v in y])

    def value(k):
        k = np.where(np.abs(k) < 1e-9, 1e-9, k)
        alpha = level * k / -np.expm1(k * np.log(p))
        with np.errstate(all="ignore"):
            u = 1 - np.multiply.outer(k / alpha, y)
            total = -len(y) * np.log(alpha) + (1 / k - 1) * np.sum(np.log(u), axis=-1)
        return np.where(np.isfinite(total), total, -np.inf)

    shapes = np.linspace(-12, 1 - 1e-12, 6501)
    at = shapes[np.argmax(value(shapes))]
    return -optimize.minimize_scalar(lambda k: -float(value(np.array(k))), bounds=(at - 2e-3, min(1, at + 2e-3)), method="bounded",
                                     options=dict(xatol=1e-13)).fun


def peaks():
    random = np.random.default_rng(1129)
    rows = []
    for size, shape in ((5, -0.3), (6, 0.0), (7, -0.1), (8, 0.2), (10, -0.2), (12, 0.1), (15, 0.3), (6, -0.8)):
        u = random.uniform(size=size)
        excess = [round(float(v), 2) for v in 8 * ((1 - u ** shape) / shape if shape else -np.log(u))]
        excess = [v if v > 0 else 0.01 for v in excess]
        found = greatest_of_peaks([mp.mpf(repr(v)) for v in excess])
        if found is None:
            continue
        greatest, k, alpha = found
        p = 1 / 30
        level = float(alpha * (1 - mp.mpf(p) ** k) / k)
        lower, upper = limits(lambda at: held_peaks(excess, at, p), level, float(greatest), 0.9, 0.05 * level)
        rows.append((text(excess), float(size) / 5, float(alpha), float(k), level, lower, upper))
    return rows


rows = peaks()
write(FOLDER, PROGRAM, "short-peaks", "generalised Pareto laws above 0 of 5 to 15 peaks: parameters by the one number left, limits of a level exceeded by one peak in 30 by the profile",
      [("x", "text, the peaks"), ("rate", "1/year, peaks a year if the record had 5 years"), ("alpha", "mm, scale"), ("k", "1, shape"), ("level", "mm, level"),
       ("lower", "mm, lower limit"), ("upper", "mm, upper limit")],
      [("sample", "text x"), ("threshold", "0"), ("record", "5"), ("years", "30 / rate"), ("confidence", "0.9")],
      [("alpha", "peaks.parameter", "input.parameter = word alpha"), ("k", "peaks.parameter", "input.parameter = word k"),
       ("level", "peaks.level"), ("lower", "peaks.profile.lower"), ("upper", "peaks.profile.upper")],
      rows, tolerance="2e-6 relative or 2e-7", reason="the parameters are solved; the limits are searches in the library and here")
