"""Independent fits of extremes with a trend: NumPy and SciPy, no code in common with the library.

    python3 trend_fits.py FOLDER_OF_TABLES

reads data/fort-collins.csv and data/port-pirie.csv there, takes the years as 1, 2, 3 ..., and writes trend-fits-NAME.csv. Each fit
is SciPy's simplex from several starts; location straight, scale exponential in time. Made with NumPy 2 and SciPy 1.17.
"""

import sys

import numpy as np
from scipy import optimize, stats

FOLDER = sys.argv[1]


def data(name):
    with open(f"{FOLDER}/data/{name}.csv") as text:
        rows = [line.strip() for line in text if line.strip() and not line.startswith("#")]
    return np.array([float(line.split(",")[0]) for line in rows[1:]])


def split(p, kind, family, u):
    shape = p[2] if family == "gev" else 0.0
    rest = list(p[3:] if family == "gev" else p[2:])
    b = rest.pop(0) if "location" in kind else 0.0
    c = rest.pop(0) if "scale" in kind else 0.0
    return p[0] + b * u, np.exp(p[1] + c * u), shape


def fit(x, u, kind, family):
    def negative(p):
        location, scale, shape = split(p, kind, family, u)
        with np.errstate(all="ignore"):
            # ln f of the GEV, exp(-exp(-s)) with s = -ln(1 - k z)/k
            z = (x - location) / scale
            v = -np.log1p(-shape * z) / shape if abs(shape) > 1e-9 else z
            value = np.sum(np.log(scale) + (1 - shape) * v + np.exp(-v))
        return value if np.isfinite(value) else 1e10

    slopes = ("location" in kind) + ("scale" in kind)
    best = None
    for tilt in (0, 0.2, -0.2):
        start = [np.mean(x) - 0.45 * np.std(x), np.log(0.78 * np.std(x))] + ([-0.05] if family == "gev" else [])
        start += [tilt * np.std(x)] * ("location" in kind) + [tilt] * ("scale" in kind)
        at = np.array(start)
        for _ in range(4):
            found = optimize.minimize(negative, at, method="Nelder-Mead", options=dict(xatol=1e-10, fatol=1e-13, maxiter=40000, maxfev=40000))
            at = found.x
        if best is None or found.fun < best.fun:
            best = found
    return best, slopes


for name in ("fort-collins", "port-pirie"):
    x = data(name)
    t = np.arange(1.0, len(x) + 1)
    centre, half = (t[0] + t[-1]) / 2, (t[-1] - t[0]) / 2
    u = (t - centre) / half
    with open(f"{FOLDER}/trend-fits-{name}.csv", "w") as out:
        out.write("family,trend,loglik,location_slope,scale_slope,level,statistic,p\n")
        for family in ("gev", "gumbel"):
            plain = fit(x, u, "nothing", family)[0].fun
            for kind in ("location", "scale", "location and scale"):
                best, slopes = fit(x, u, kind, family)
                location, scale, shape = split(best.x, kind, family, u[-1])
                rest = list(best.x[3:] if family == "gev" else best.x[2:])
                b = rest.pop(0) / half if "location" in kind else 0.0
                c = rest.pop(0) / half if "scale" in kind else 0.0
                statistic = 2 * (plain - best.fun)
                row = (-best.fun, b, c, stats.genextreme.isf(0.02, shape, location, scale), statistic, stats.chi2.sf(statistic, slopes))
                out.write(",".join([family, kind.replace(" ", "-")] + [repr(float(v)) for v in row]) + "\n")
