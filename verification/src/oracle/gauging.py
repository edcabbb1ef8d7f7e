"""Independent computation of gaugings, velocity profiles, calibration fits, rating curves and uncertainties: Python with mpmath,
NumPy and SciPy, no code in common with the library.

    python3 gauging.py NAME > NAME.csv

writes one of the tables named in TABLES below.
"""

import sys

import numpy as np
from mpmath import diff, log, mp, mpf, nstr, quad, sqrt
from scipy import optimize, stats

mp.dps = 30


def show(*cells):
    print(",".join(c if isinstance(c, str) else nstr(mpf(c), 15) for c in cells))


# ---- velocity and area ------------------------------------------------------------------------------------------------


def gaugings():
    """Strips as polygons: mid-section by Voronoi widths, mean-section by trapezoids; the budget term by term."""
    print("near,near_depth,far,far_depth,distances,depths,velocities,mid,mean,area_mean,u,v,share")
    m_table = ([5, 10, 15, 20, 25, 30, 35, 45], [7.5, 4.5, 3, 2.5, 2, 1.5, 1, 1])
    c_table = ([0.03, 0.1, 0.15, 0.25, 0.5], [10, 2.5, 1.25, 1, 0.5])
    e_table = ([0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 1], [20, 11, 6, 4, 3, 3, 3])
    for near, near_depth, far, far_depth, b, d, v in (
        (0, 0, 9, 0, [1.5, 3, 4.5, 6, 7.5], [1.3, 2.5, 1.7, 1, 0.4], [0.5, 0.75, 0.6, 0.5, 0.35]),
        (0.4, 0, 5.1, 0.8, [1.0, 1.9, 3.2, 4.4], [0.6, 0.9, 1.1, 1.0], [0.21, 0.34, 0.41, 0.33]),
        (0, 0.5, 1.2, 0.5, [0.15, 0.3, 0.5, 0.7, 0.9, 1.1], [0.5, 0.5, 0.52, 0.52, 0.51, 0.5], [0.8, 0.95, 1.1, 1.12, 1.0, 0.82]),
    ):
        wall = 0.91
        edges = [near] + b + [far]
        depths = [near_depth] + d + [far_depth]
        speeds = [v[0] * (wall if near_depth else 0)] + v + [v[-1] * (wall if far_depth else 0)]
        strips = [(x_depth * speed * (edges[min(i + 1, len(edges) - 1)] - edges[max(i - 1, 0)]) / 2, speed)
                  for i, (x_depth, speed) in enumerate(zip(depths, speeds))]
        strip_areas = [x_depth * (edges[min(i + 1, len(edges) - 1)] - edges[max(i - 1, 0)]) / 2 for i, x_depth in enumerate(depths)]
        mid = sum(q for q, _ in strips)
        mean = sum((edges[i + 1] - edges[i]) * (depths[i] + depths[i + 1]) / 2 * (speeds[i] + speeds[i + 1]) / 2 for i in range(len(edges) - 1))
        area = sum((edges[i + 1] - edges[i]) * (depths[i] + depths[i + 1]) / 2 for i in range(len(edges) - 1))
        um = np.interp(len(b), *m_table)
        part = 0
        for q, speed in strips:
            uv2 = 7.5**2 + np.interp(speed, *c_table) ** 2 + np.interp(speed, *e_table) ** 2
            part += q * q * (0.5**2 + 0.5**2 + uv2)
        u = np.sqrt(um**2 + 1 + part / mid**2) / 100
        text = lambda xs: " ".join(str(x) for x in xs)
        show(*[str(x) for x in (near, near_depth, far, far_depth)], text(b), text(d), text(v), mid, mean, area, u, mid / sum(w for w in strip_areas), max(q for q, _ in strips) / mid)


def exposures():
    """The budget of many verticals of even strips, so that u_m, u_e and u_c are read at many places of their tables."""
    print("count,velocity,seconds,distances,depths,velocities,far,u")
    counts = ([5, 10, 15, 20, 25, 30, 35, 45], [7.5, 4.5, 3, 2.5, 2, 1.5, 1, 1])
    c_table = ([0.03, 0.1, 0.15, 0.25, 0.5], [10, 2.5, 1.25, 1, 0.5])
    at = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 1]
    e_table = {30: [25, 14, 8, 5, 4, 4, 4], 60: [20, 11, 6, 4, 3, 3, 3], 120: [15, 8, 5, 3, 3, 2, 2], 180: [10, 7, 4, 3, 2, 2, 2]}
    for count, velocity, seconds in ((7, 0.04, 30), (12, 0.12, 45), (17, 0.18, 60), (22, 0.27, 90), (27, 0.35, 120), (33, 0.45, 150), (40, 0.7, 180), (50, 1.3, 600)):
        times = sorted(e_table)
        held = min(max(seconds, 30), 180)
        ue = np.interp(held, times, [np.interp(velocity, at, e_table[t]) for t in times])
        uc = np.interp(velocity, *c_table)
        um = np.interp(count, *counts)
        u = np.sqrt(um**2 + 1 + (2 * 0.5**2 + 7.5**2 + uc**2 + ue**2) / count) / 100
        row = lambda x: " ".join([str(x)] * count)
        show(str(count), str(velocity), str(seconds), " ".join(str(i + 1) for i in range(count)), row(0.5), row(velocity), str(count + 1), u)


def point_rules():
    """Means of verticals: ISO 748's sums in words, over ten."""
    print("rule,velocities,mean")
    for rule, v in (
        ("ONE", [0.63]),
        ("HALF_DEPTH", [0.71]),
        ("TWO", [0.82, 0.46]),
        ("THREE", [0.82, 0.63, 0.46]),
        ("FIVE", [0.9, 0.82, 0.63, 0.46, 0.2]),
        ("SIX", [0.9, 0.82, 0.74, 0.63, 0.46, 0.2]),
    ):
        mean = {
            "ONE": lambda: v[0],
            "HALF_DEPTH": lambda: 19 * v[0] / 20,
            "TWO": lambda: (v[0] + v[1]) / 2,
            "THREE": lambda: ((v[0] + v[2]) / 2 + v[1]) / 2,
            "FIVE": lambda: (v[0] + 3 * v[1] + 3 * v[2] + 2 * v[3] + v[4]) / 10,
            "SIX": lambda: (v[0] + 2 * sum(v[1:5]) + v[5]) / 10,
        }[rule]()
        show(rule, " ".join(map(str, v)), mean)


def meters():
    """Two ranges of a rating sheet."""
    print("revolutions,seconds,v")
    for n, t in ((20, 60), (74, 60), (90, 60), (91, 60), (300, 60)):
        r = mpf(n) / t
        show(str(n), str(t), mpf("0.02") + mpf("0.25") * r if r < mpf("1.5") else mpf("0.005") + mpf("0.26") * r)


# ---- profiles ---------------------------------------------------------------------------------------------------------


def power_profiles():
    print("m,centre,surface,point,at_point")
    for m in ("6", "7", "8.8", "10"):
        x = mpf(m)
        centre = quad(lambda r: 2 * r * (1 - r) ** (1 / x), [0, 1])
        surface = quad(lambda z: z ** (1 / x), [0, 1])
        show(m, centre, surface, "0.4", surface / mpf("0.4") ** (1 / x))


def log_profiles():
    print("f,centre,surface,point,at_point")
    for f in ("0.012", "0.02", "0.05"):
        us = sqrt(mpf(f) / 8) / mpf("0.41")
        # u/V = c + us ln(1 - r) with the mean 1
        centre = 1 - us * quad(lambda r: 2 * r * log(1 - r), [0, mpf("0.5"), 1])
        surface = 1 - us * quad(log, [0, mpf("0.5"), 1])
        show(f, 1 / centre, 1 / surface, "0.25", 1 / (surface + us * log(mpf("0.25"))))


def traverses():
    print("section,size,depth,m,heights,velocities,v")
    for kind, size, depth, m, zs, vs in (
        ("circle", "0.6", "0.42", "7", "0.05 0.15 0.3 0.4", "0.5 0.7 0.85 0.9"),
        ("circle", "1.2", "1.2", "6", "0.1 0.6 1.1", "0.8 1.1 0.75"),
        ("box", "1.5", "0.8", "7", "0.2 0.5", "0.6 0.75"),
        ("egg", "0.6", "0.7", "8", "0.06 0.2 0.45 0.65", "0.4 0.55 0.7 0.66"),
    ):
        s, h, mm = mpf(size), mpf(depth), mpf(m)
        z = [mpf(x) for x in zs.split()]
        v = [mpf(x) for x in vs.split()]
        corners = []
        if kind == "circle":
            width = lambda y: 2 * sqrt(max(mpf(0), y * (s - y)))
        elif kind == "box":
            width = lambda y: s
        else:
            # the egg 2 : 3 of width s: top circle of radius R = s/2, sides of radius 3R, bottom of radius R/2
            R = s / 2
            low = mpf("0.2") * R

            def width(y):
                if y >= 2 * R:
                    return 2 * sqrt(max(mpf(0), R * R - (y - 2 * R) ** 2))
                if y <= low:
                    return 2 * sqrt(max(mpf(0), y * (R - y)))
                return 2 * (sqrt(9 * R * R - (2 * R - y) ** 2) - 2 * R)

            corners = [low, 2 * R]

        def u(y):
            if y < z[0]:
                return v[0] * (y / z[0]) ** (1 / mm)
            for i in range(len(z) - 1):
                if y <= z[i + 1]:
                    return v[i] + (v[i + 1] - v[i]) * (y - z[i]) / (z[i + 1] - z[i])
            return v[-1]

        cuts = sorted({mpf(0), z[0] / 1000, z[0] / 20, *z, *[c for c in corners if c < h], h})
        area = quad(width, cuts)
        show(kind, size, depth, m, zs, vs, quad(lambda y: u(y) * width(y), cuts) / area)


# ---- calibration ------------------------------------------------------------------------------------------------------


def fits():
    """Both axes: the sum of squares over coefficients and true stimuli, by SciPy's least_squares; the covariance by its Jacobian."""
    print("x,y,ux,uy,degree,a,b,c,ua,ub,chi2")
    cases = (
        ("1.2 1.9 2.9 4.0 4.7 5.9", "3.4 4.4 7.2 8.5 10.8 13.5", "0.2 0.2 0.2 0.2 0.2 0.2", "0.2 0.2 0.2 0.4 0.4 0.4", 1),
        ("0.1 0.3 0.6 0.9 1.3 1.8", "0.11 0.29 0.63 0.9 1.36 1.83", "0.01 0.01 0.02 0.02 0.03 0.03", "0.02 0.02 0.02 0.03 0.03 0.04", 1),
        ("0.1 0.3 0.6 0.9 1.3 1.8 2.2", "0.13 0.33 0.6 0.84 1.11 1.4 1.6", "0.01 0.01 0.02 0.02 0.03 0.03 0.03", "0.02 0.02 0.02 0.03 0.03 0.03 0.03", 2),
    )
    for xs, ys, uxs, uys, degree in cases:
        x, y, ux, uy = (np.array([float(t) for t in s.split()]) for s in (xs, ys, uxs, uys))
        n = len(x)

        def residual(p):
            c, xi = p[: degree + 1], p[degree + 1 :]
            return np.concatenate([(x - xi) / ux, (y - np.polyval(c[::-1], xi)) / uy])

        start = np.concatenate([np.polyfit(x, y, degree)[::-1], x])
        best = optimize.least_squares(residual, start, xtol=1e-15, ftol=1e-15, gtol=1e-15, method="lm")
        # coefficients by Gauss and Newton at the solution: the tangent model of the linear theory
        c, xi = best.x[: degree + 1], best.x[degree + 1 :]
        slope = np.polyval(np.polyder(c[::-1]), xi)
        weight = 1 / np.sqrt(uy**2 + slope**2 * ux**2)
        jac = np.vander(xi, degree + 1, increasing=True) * weight[:, None]
        cov = np.linalg.inv(jac.T @ jac)
        show(xs, ys, uxs, uys, str(degree), c[0], c[1], c[2] if degree == 2 else 0.0, np.sqrt(cov[0, 0]), np.sqrt(cov[1, 1]), 2 * best.cost)


# ---- rating -----------------------------------------------------------------------------------------------------------

STAGE = [1.13, 0.149, 1.02, 0.966, 1.07, 0.443, 0.648, 0.624, 0.516]
DISCHARGE = [4.34, 0.217, 3.47, 4.28, 4.51, 0.997, 2.48, 1.33, 1.54]


def ratings():
    print("offset,weights,stage,constant,exponent,s,q,lower,upper,gauging_lower,gauging_upper,u")
    for offset, weights in ((0.0, [0.1] * 9), (-0.05, [0.1] * 9), (0.0, [0.05] * 5 + [0.15] * 4)):
        x, y = np.log(np.array(STAGE) - offset), np.log(np.array(DISCHARGE))
        w = 1 / np.array(weights) ** 2
        w = w / w.mean()
        W = np.diag(w)
        X = np.vstack([np.ones_like(x), x]).T
        cov = np.linalg.inv(X.T @ W @ X)
        c = cov @ X.T @ W @ y
        s = np.sqrt((w * (y - X @ c) ** 2).sum() / 7)
        t = stats.t.ppf(0.975, 7)
        for stage in (0.3, 0.8):
            g = np.array([1, np.log(stage - offset)])
            q = np.exp(g @ c)
            lev = g @ cov @ g
            a, b = t * s * np.sqrt(lev), t * s * np.sqrt(1 + lev)
            u = np.hypot(s * np.sqrt(lev), c[1] * 0.005 / (stage - offset))
            show(str(offset), " ".join(str(v) for v in weights), str(stage), np.exp(c[0]), c[1], s, q, q * np.exp(-a), q * np.exp(a), q * np.exp(-b), q * np.exp(b), u)


def rating_offset():
    """Offset, constant and exponent together by SciPy's least_squares in ln Q."""
    print("stages,discharges,offset,constant,exponent,s")
    stage = np.array([0.31, 0.36, 0.42, 0.5, 0.61, 0.74, 0.9, 1.12])
    q = np.array([0.0391, 0.0822, 0.142, 0.246, 0.412, 0.646, 0.968, 1.49])
    f = lambda p: np.log(q) - p[0] - p[1] * np.log(stage - p[2])
    fit = optimize.least_squares(f, [0.5, 1.5, 0.2], xtol=1e-15, ftol=1e-15, gtol=1e-15, bounds=([-9, 0.1, -5], [9, 9, 0.3099]))
    p = fit.x
    text = lambda xs: " ".join(str(x) for x in xs)
    show(text(stage), text(q), p[2], np.exp(p[0]), p[1], np.sqrt((f(p) ** 2).sum() / 5))


def rating_breaks():
    """The break by minimising the profile of the sum of squares over a dense grid, then bounded search."""
    print("stages,discharges,break,lower_exponent,upper_exponent")
    stage = np.array([0.08, 0.12, 0.16, 0.21, 0.26, 0.31, 0.37, 0.44, 0.52, 0.61, 0.7, 0.82, 0.95])
    wobble = np.array([1.02, 0.985, 1.01, 0.99, 1.015, 0.99, 1.01, 0.98, 1.02, 0.99, 1.01, 0.995, 1.0])
    q = np.where(stage < 0.4, 1.3 * stage**2.4, 1.3 * 0.4**2.4 * (stage / 0.4) ** 1.5) * wobble
    q = np.array([float(f"{v:.4g}") for v in q])

    def fit(k):
        X = np.vstack([np.ones_like(stage), np.log(np.minimum(stage, k)), np.maximum(0, np.log(stage / k))]).T
        c, *_ = np.linalg.lstsq(X, np.log(q), rcond=None)
        return ((np.log(q) - X @ c) ** 2).sum(), c

    grid = np.linspace(0.2, 0.65, 9001)
    k = grid[np.argmin([fit(g)[0] for g in grid])]
    k = optimize.minimize_scalar(lambda z: fit(z)[0], bounds=(k - 1e-4, k + 1e-4), method="bounded", options={"xatol": 1e-13}).x
    c = fit(k)[1]
    show(" ".join(str(v) for v in stage), " ".join(str(v) for v in q), k, c[1], c[2])


# ---- check against gaugings -------------------------------------------------------------------------------------------


def checks():
    print("hand,monitor,bias,bias_low,bias_high,ratio,ratio_low,ratio_high,agreement_low,agreement_high")
    for hand, monitor in (
        ([0.62, 0.71, 0.55, 0.83, 0.94, 0.68], [0.66, 0.74, 0.61, 0.86, 1.02, 0.69]),
        ([0.031, 0.047, 0.052, 0.081, 0.12], [0.029, 0.048, 0.047, 0.079, 0.113]),
    ):
        d = np.array(monitor) - np.array(hand)
        r = np.log(np.array(monitor) / np.array(hand))
        low, high = stats.t.interval(0.95, len(d) - 1, d.mean(), stats.sem(d))
        rl, rh = stats.t.interval(0.95, len(r) - 1, r.mean(), stats.sem(r))
        s = d.std(ddof=1)
        text = lambda xs: " ".join(str(v) for v in xs)
        show(text(hand), text(monitor), d.mean(), low, high, np.exp(r.mean()), np.exp(rl), np.exp(rh), d.mean() - 1.96 * s, d.mean() + 1.96 * s)


# ---- uncertainty ------------------------------------------------------------------------------------------------------


def bench():
    print("references,readings,reference_uncertainty,bias,linearity,repeatability,expanded")
    rng = np.random.default_rng(3)
    x = np.repeat([0.1, 0.3, 0.6, 1.0], [3, 4, 3, 5])
    y = np.round(x * 1.004 + 0.002 + 0.003 * x * x + rng.normal(0, 0.001, len(x)), 5)
    levels = np.unique(x)
    errors = [y[x == v] - v for v in levels]
    means = np.array([e.mean() for e in errors])
    line = stats.linregress(levels, levels + means)
    linearity = np.abs(levels + means - line.intercept - line.slope * levels).max()
    pooled = np.sqrt(sum(((e - e.mean()) ** 2).sum() for e in errors) / (len(x) - len(levels)))
    first = errors[0]
    u = 2 * np.sqrt(0.0004**2 + first.var(ddof=1) / len(first))
    text = lambda xs: " ".join(repr(float(v)) for v in xs)
    show(text(x), text(y), "0.0004", means.mean(), linearity, pooled, u)


def volumes():
    print("flows,step,random,common,memory,volume,u_random,u_common")
    flows = [0.02, 0.025, 0.04, 0.11, 0.3, 0.22, 0.09, 0.05]
    for step, r, c, memory in ((300, 0.08, 0.03, 0), (900, 0.12, 0.05, 3600)):
        m = max(1.0, memory / step)
        v = sum(flows) * step
        show(" ".join(map(str, flows)), str(step), str(r), str(c), str(memory), v, r * step * np.sqrt(m * sum(q * q for q in flows)), c * v)


def exact_sums():
    """Sums of independent inputs: the exact distribution, as a convolution of boxes by SciPy's quadrature."""
    print("deviations,shape,standard,expanded,simulated")
    normal = stats.norm.ppf(0.975)

    def box_sum(widths):
        # distribution function of a sum of boxes: the alternating sum of powers over the corners
        from itertools import product
        from math import factorial, prod

        n = len(widths)

        def cdf(y):
            total = 0.0
            for signs in product((-1, 1), repeat=n):
                x = y + sum(s * w for s, w in zip(signs, widths))
                total += prod(signs) * (max(0.0, x) ** n)
            return total / (factorial(n) * prod(2 * w for w in widths))

        return optimize.brentq(lambda y: cdf(y) - 0.975, 0, sum(widths), xtol=1e-12)

    for deviations, shape in (([1, 1, 1, 1], "normal"), ([1, 1, 1, 1], "rectangular"), ([1, 1, 1, 10], "rectangular"), ([2, 3], "rectangular")):
        u = np.sqrt(sum(d * d for d in deviations))
        end = normal * u if shape == "normal" else box_sum([d * np.sqrt(3) for d in deviations])
        show(" ".join(map(str, deviations)), shape, u, normal * u, end)


def exact_losses():
    """x1^2 + x2^2 of normal inputs is a non-central chi-squared: moments in closed form, shortest interval by SciPy."""
    print("x1,mean,standard,end")
    for x1 in (0.0, 0.010, 0.050):
        u = 0.005
        law = stats.ncx2(2, (x1 / u) ** 2) if x1 else stats.chi2(2)
        best = optimize.minimize_scalar(lambda p: law.ppf(0.95 + p) - law.ppf(p), bounds=(0, 0.0499), method="bounded", options={"xatol": 1e-10})
        p = 0.0 if law.ppf(0.95) < best.fun else best.x
        show(str(x1), 1e6 * (x1**2 + 2 * u**2), 1e6 * law.std() * u**2, 1e6 * law.ppf(0.95 + p) * u**2)


def readings():
    print("readings,half_width,value,u")
    for values, a in (([0.201, 0.203, 0.202, 0.206], 0.004), ([1.31, 1.29, 1.36, 1.3, 1.33, 1.28], 0.02)):
        x = np.array(values)
        # sum of the mean and of an offset known to lie between -a and a, most likely near 0
        show(" ".join(map(str, values)), str(a), x.mean(), np.sqrt(stats.sem(x) ** 2 + a * a / 6))


def index_uncertainty():
    print("x,y,index,u,response_u")
    x = np.array([0.2, 0.35, 0.52, 0.71, 0.93, 1.1])
    y = np.array([0.18, 0.33, 0.45, 0.66, 0.82, 1.01])
    n = len(x)
    line = stats.linregress(x, y)
    s2 = ((y - line.intercept - line.slope * x) ** 2).sum() / (n - 2)
    text = lambda xs: " ".join(str(v) for v in xs)
    for at in (0.3, 0.8):
        lev = 1 / n + (at - x.mean()) ** 2 / ((x - x.mean()) ** 2).sum()
        show(text(x), text(y), str(at), np.sqrt(s2 * (1 + lev)), np.sqrt(s2 * lev + (line.slope * 0.02) ** 2))


def power_through():
    print("z1,v1,z2,v2,m")
    for z1, v1, z2, v2 in (("0.05", "0.61", "0.30", "0.82"), ("0.1", "0.4", "0.4", "0.5")):
        show(z1, v1, z2, v2, log(mpf(z2) / mpf(z1)) / log(mpf(v2) / mpf(v1)))


def weir_budgets():
    """Flow of a rectangular weir: width, head and a coefficient of 1, sensitivities by mpmath's derivative."""
    print("b,p,head,ub,uh,uc,q,u,share_head")
    for b, p, h, ub, uh, uc in (("1.0", "0.5", "0.20", "0.002", "0.003", "0.0075"), ("2.0", "0.8", "0.35", "0.004", "0.002", "0.01")):
        P = mpf(p)
        q = lambda B, H: (mpf("0.602") + mpf("0.075") * H / P) * mpf(2) / 3 * sqrt(2 * mpf("9.80665")) * (B - mpf("0.0009")) * (H + mpf("0.001")) ** mpf("1.5")
        B, H = mpf(b), mpf(h)
        parts = [diff(lambda t: q(t, H), B) * mpf(ub), diff(lambda t: q(B, t), H) * mpf(uh), q(B, H) * mpf(uc)]
        u = sqrt(sum(x * x for x in parts))
        show(b, p, h, ub, uh, uc, q(B, H), u, (parts[1] / u) ** 2)


def index_by_hand():
    """Least squares with figures that come out even: the normal equations in whole numbers, hundredths as unit."""
    from fractions import Fraction

    print("x,y,index,v")
    for x, y, index in (("0.2 0.4 0.6 0.8 1.0", "0.19 0.35 0.52 0.71 0.86", "0.5"), ("0.3 0.5 0.7 0.9", "0.25 0.43 0.57 0.77", "0.6")):
        xs, ys = [Fraction(a) for a in x.split()], [Fraction(a) for a in y.split()]
        n, sx, sy = len(xs), sum(xs), sum(ys)
        slope = (n * sum(a * b for a, b in zip(xs, ys)) - sx * sy) / (n * sum(a * a for a in xs) - sx**2)
        print(f"{x},{y},{index},{float(sy / n + slope * (Fraction(index) - sx / n)):.15g}")


def velocity_factors():
    """Factors of a power law; their uncertainty is half the difference of the factors of m - 1 and m + 1."""
    print("m,height,read,mean,relative,centre_mean,centre_relative")
    for m, h, read in (("7", "0.3", "0.8"), ("6", "0.62", "1.37"), ("8.5", "0.11", "0.43")):
        def point(k):
            return quad(lambda y: y ** (1 / k), [0, 1]) / mpf(h) ** (1 / k)
        def centre(k):
            return 2 * quad(lambda y: (1 - y) * y ** (1 / k), [0, 1])
        k, one = mpf(m), mpf(1)
        cells = []
        for law in (point, centre):
            cells += [law(k) * mpf(read), abs(law(k + one) - law(k - one)) / 2 / law(k)]
        show(m, h, read, *cells)


def rating_criterion():
    """Criterion of Schwarz n ln(SSE/n) + k ln n of a fit of ln Q, its discharge beside the gaugings, and a table by straight lines."""
    print("stages,discharges,offset,criterion,stage,discharge,gauged,from,to,step,rows,between")
    xs, qs = "1.13 0.149 1.02 0.966 1.07 0.443 0.648 0.624 0.516", "4.34 0.217 3.47 4.28 4.51 0.997 2.48 1.33 1.54"
    x, q = np.array([float(v) for v in xs.split()]), np.array([float(v) for v in qs.split()])
    for offset, stage in ((0.0, 0.7), (0.02, 0.9), (-0.05, 1.3)):
        b, a = np.polyfit(np.log(x - offset), np.log(q), 1)
        sse = float(((np.log(q) - a - b * np.log(x - offset)) ** 2).sum())
        n = len(x)
        law = lambda s: float(np.exp(a + b * np.log(s - offset)))
        grid = [0.2 + 0.15 * i for i in range(6)] + [1.0]
        print(f"{xs},{qs},{offset},{n * np.log(sse / n) + 2 * np.log(n):.13g},{stage},{law(stage):.13g},{int(x.min() <= stage <= x.max())},0.2,1,0.15,"
              f"{len(grid)},{np.interp(0.73, grid, [law(s) for s in grid]):.13g}")


TABLES = {
    "velocity-factors": velocity_factors,
    "rating-criterion": rating_criterion,
    "profile-index-by-hand": index_by_hand,
    "gauging-strips": gaugings,
    "gauging-exposure": exposures,
    "gauging-point-rules": point_rules,
    "gauging-meter-ranges": meters,
    "profile-power": power_profiles,
    "profile-log": log_profiles,
    "profile-traverse": traverses,
    "calibration-both-axes": fits,
    "rating-weighted": ratings,
    "rating-break": rating_breaks,
    "rating-offset": rating_offset,
    "uncertainty-readings": readings,
    "profile-index-uncertainty": index_uncertainty,
    "profile-power-through": power_through,
    "gauging-check": checks,
    "bench-check": bench,
    "volume-uncertainty": volumes,
    "uncertainty-of-a-weir": weir_budgets,
    "uncertainty-exact-sums": exact_sums,
    "uncertainty-exact-losses": exact_losses,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
