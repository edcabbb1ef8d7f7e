"""Sheets of gaugings, read and worked row by row, the budget of ISO 748 term by term, rules of points and usual factors: Python with
NumPy and SciPy, no code in common with the library.

    python3 gauging_sheets.py FOLDER

writes the tables named below into the folder, csv and descriptor. All sheets are invented.
"""

import sys

import numpy as np
from own_tables import text, write
from scipy import integrate, stats

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "gauging_sheets.py"
WALL = 0.91

RULES = {
    "ONE": ([0.6], [1], 7.5),
    "HALF_DEPTH": ([0.5], [0.95], 7.5),
    "TWO": ([0.2, 0.8], [0.5, 0.5], 3.5),
    "THREE": ([0.2, 0.6, 0.8], [0.25, 0.5, 0.25], 3.5),
    "FIVE": ([0, 0.2, 0.6, 0.8, 1], [0.1, 0.3, 0.3, 0.2, 0.1], 2.5),
    "SIX": ([0, 0.2, 0.4, 0.6, 0.8, 1], [0.1, 0.2, 0.2, 0.2, 0.2, 0.1], 2.5),
}


def rule_of(depths):
    return next(r for r in RULES.values() if len(r[0]) == len(depths) and max(abs(a - b) for a, b in zip(r[0], sorted(depths))) < 1e-9)


def read(sheet, pitch, start):
    """Edges and verticals (distance, depth, velocity, percent of the rule, points)."""
    lines = [line for line in sheet.split("\n") if line.strip() and not line.startswith("#")]
    names = [name.strip() for name in lines[0].split(",")]
    rows = []
    for line in lines[1:]:
        cells = dict(zip(names, (c.strip() for c in line.split(","))))
        v = float(cells["velocity_m_per_s"]) if cells.get("velocity_m_per_s") else None
        if cells.get("revolutions"):
            n = float(cells["revolutions"]) / float(cells["seconds"])
            v = start + pitch * n if n > 0 else 0.0
        rows.append((float(cells["distance_m"]), float(cells["depth_m"]), float(cells.get("relative_depth") or 0.6), v))
    verticals = []
    for x in dict.fromkeys(r[0] for r in rows[1:-1]):
        points = sorted((r[2], r[3]) for r in rows[1:-1] if r[0] == x)
        _, weights, percent = rule_of([p[0] for p in points])
        depth = next(r[1] for r in rows if r[0] == x)
        verticals.append((x, depth, sum(w * p[1] for w, p in zip(weights, points)), percent, len(points)))
    return rows[0][:2], verticals, rows[-1][:2]


def strips(near, verticals, far):
    """Width, depth, velocity, percent and points of each strip between the half ways; walls carry their share of the velocity."""
    stations = [near[0]] + [v[0] for v in verticals] + [far[0]]
    found = []
    if near[1] > 0:
        found.append(((stations[1] - stations[0]) / 2, near[1], WALL * verticals[0][2], verticals[0][3], verticals[0][4]))
    for i, (x, depth, v, percent, points) in enumerate(verticals, 1):
        found.append(((stations[i + 1] - stations[i - 1]) / 2, depth, v, percent, points))
    if far[1] > 0:
        found.append(((stations[-1] - stations[-2]) / 2, far[1], WALL * verticals[-1][2], verticals[-1][3], verticals[-1][4]))
    return found


def mean_section(near, verticals, far):
    x = [near[0]] + [v[0] for v in verticals] + [far[0]]
    d = [near[1]] + [v[1] for v in verticals] + [far[1]]
    u = [WALL * verticals[0][2] if near[1] > 0 else 0] + [v[2] for v in verticals] + [WALL * verticals[-1][2] if far[1] > 0 else 0]
    return sum((x[i + 1] - x[i]) * (d[i] + d[i + 1]) / 2 * (u[i] + u[i + 1]) / 2 for i in range(len(x) - 1))


VERTICALS = ([5, 10, 15, 20, 25, 30, 35, 45], [7.5, 4.5, 3, 2.5, 2, 1.5, 1, 1])
METER = ([0.03, 0.1, 0.15, 0.25, 0.5], [10, 2.5, 1.25, 1, 0.5])
AT = [0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 1]
EXPOSURE = {30: [25, 14, 8, 5, 4, 4, 4], 60: [20, 11, 6, 4, 3, 3, 3], 120: [15, 8, 5, 3, 3, 2, 2], 180: [10, 7, 4, 3, 2, 2, 2]}


def budget(parts, count, systematic, width, depth, seconds):
    times = sorted(EXPOSURE)
    total = sum(w * d * v for w, d, v, *_ in parts)
    share = 0
    for w, d, v, percent, points in parts:
        meter = np.interp(abs(v), *METER)
        pulse = np.interp(seconds, times, [np.interp(abs(v), AT, EXPOSURE[t]) for t in times])
        share += (w * d * v) ** 2 * (width**2 + depth**2 + (percent / 100) ** 2 + (meter**2 + pulse**2) / 1e4 / points)
    of_strips = share**0.5 / abs(total)
    of_verticals = np.interp(count, *VERTICALS) / 100
    return of_verticals, of_strips, (of_verticals**2 + systematic**2 + of_strips**2) ** 0.5


PLAIN = """# a beck with two banks, one point each
distance_m,depth_m,velocity_m_per_s
0.4,0,
0.9,0.22,0.31

1.5,0.38,0.46
2.2,0.41,0.52
3.0,0.29,0.37
3.7,0,"""

MIXED = """distance_m,depth_m,relative_depth,velocity_m_per_s
0,0.45,,0
0.2,0.55,0.6,0.61
0.5,0.62,0.2,0.83
0.5,0.62,0.8,0.58
0.9,0.66,0.8,0.61
0.9,0.66,0.2,0.92
0.9,0.66,0.6,0.78
1.4,0.7,0,0.97
1.4,0.7,0.2,0.95
1.4,0.7,0.6,0.8
1.4,0.7,0.8,0.66
1.4,0.7,1,0.31
1.9,0.68,0,0.9
1.9,0.68,0.2,0.89
1.9,0.68,0.4,0.84
1.9,0.68,0.6,0.75
1.9,0.68,0.8,0.6
1.9,0.68,1,0.28
2.3,0.5,0.5,0.7
2.6,0.3,,"""

METERED = """distance_m,depth_m,revolutions,seconds,velocity_m_per_s
1,0,,,
1.4,0.3,31,60,
1.9,0.5,88,61,
2.5,0.52,97,60,
3.1,0.44,0,60,
3.6,0.35,,,0.12
4.2,0.1,,,"""

SLOW = """distance_m,depth_m,velocity_m_per_s
0,0,
1,0.4,0.06
2,0.6,-0.08
3,0.7,0.17
4,0.6,0.24
5,0.3,0.12
6,0,"""

CASES = [(PLAIN, "", ""), (MIXED, "", ""), (METERED, 0.2513, 0.017), (METERED, 0.13, 0), (SLOW, "", "")]

rows = []
for sheet, pitch, start in CASES:
    for read_velocity, systematic, width, depth, seconds in ((0.7, 0.01, 0.005, 0.005, 60), (-0.4, 0.02, 0.004, 0.013, 25), (1.3, 0.004, 0.011, 0.002, 100), (0.25, 0, 0.03, 0.02, 400)):
        near, verticals, far = read(sheet, pitch or 0, start or 0)
        parts = strips(near, verticals, far)
        area = sum(w * d for w, d, *_ in parts)
        q = sum(w * d * v for w, d, v, *_ in parts)
        ofv, ofs, u = budget(parts, len(verticals), systematic, width, depth, seconds)
        rows.append((sheet, pitch or 1, start or 0, read_velocity, systematic, width, depth, seconds, q, mean_section(near, verticals, far), area, q / area / read_velocity, ofv, ofs, u, 2 * u))
write(FOLDER, PROGRAM, "gauging-sheets", "sheets with one to six points, walls, banks, revolutions and a vertical that flows back; the budget of ISO 748 (2007), annex E",
      [("sheet", "text, rows of the sheet"), ("pitch", "m, of the meter"), ("start", "m/s, of the meter"), ("read", "m/s, velocity a sensor read"), ("s", "1, systematic"), ("w", "1, of a width"),
       ("d", "1, of a depth"), ("t", "s, exposure"), ("mid", "m3/s, mid-section"), ("mean", "m3/s, mean section"), ("area", "m2, area"), ("factor", "1, mean over read"), ("uv", "1, of the count of verticals"),
       ("us", "1, of the strips"), ("u", "1, standard"), ("ue", "1, expanded")],
      [("sheet", "text sheet"), ("pitch", "pitch"), ("start_up", "start")],
      [("mid", "gauging.sheet.mid-section"), ("mean", "gauging.sheet.mean-section"), ("area", "gauging.sheet.area"), ("factor", "gauging.sheet.factor", "input.read = read")]
      + [(c, "gauging.budget." + n, "input.systematic = s", "input.width = w", "input.depth = d", "input.exposure = t") for c, n in (("uv", "verticals"), ("us", "strips"), ("u", "standard"), ("ue", "expanded"))],
      rows)

rows = [(rule, i, z, percent / 100) for rule, (depths, _, percent) in RULES.items() for i, z in enumerate(depths)]
write(FOLDER, PROGRAM, "gauging-points", "where the rules of ISO 748 measure, and what they leave (annex E, from memory)",
      [("rule", "text, rule"), ("place", "1, from the surface"), ("z", "1, share of the depth"), ("u", "1, standard uncertainty")],
      [("rule", "text rule")], [("z", "gauging.rule.depth", "input.place = place"), ("u", "gauging.rule.uncertainty")], rows)

rows = [("greatest", 0.9, 0.05), ("surface", 0.85, 0.05), ("centre", 0.85, 0.03)]
write(FOLDER, PROGRAM, "velocity-factors-usual", "0.9 of the greatest, 0.85 of the surface and of the centre of a full pipe, with what they are worth",
      [("of", "text, what is read"), ("f", "1, factor"), ("u", "1, standard uncertainty")], [("of", "text of")],
      [("f", "velocity-factor.usual"), ("u", "velocity-factor.usual-uncertainty")], rows, source=("Common practice", 2026),
      provenance="common practice")

rows = []
for xs, ys in (([0.21, 0.34, 0.5, 0.77, 0.93, 1.2], [0.2, 0.3, 0.45, 0.68, 0.8, 1.05]), ([0.4, 0.45, 0.6, 0.62, 0.7], [0.45, 0.47, 0.66, 0.65, 0.79])):
    fit = stats.linregress(xs, ys)
    left = np.array(ys) - fit.intercept - fit.slope * np.array(xs)
    s2 = sum(left**2) / (len(xs) - 2)
    sxx = sum((np.array(xs) - np.mean(xs)) ** 2)
    for at in (xs[0], 0.55, xs[-1]):
        mean = fit.intercept + fit.slope * at
        u = (s2 * (1 / len(xs) + (at - np.mean(xs)) ** 2 / sxx)) ** 0.5
        rows.append((text(xs), text(ys), at, mean / at, u / at))
write(FOLDER, PROGRAM, "profile-index-factor", "mean over index velocity on a fitted line, with the uncertainty of the line",
      [("x", "m/s, index velocities"), ("y", "m/s, mean velocities"), ("at", "m/s, index"), ("f", "1, factor"), ("u", "1, standard uncertainty")],
      [("x", "text x"), ("y", "text y"), ("index", "at")], [("f", "profile.index.factor"), ("u", "profile.index.factor-uncertainty")], rows, tolerance="1e-10 relative",
      reason="16 digits are given; the normal equations lose some")

rows = []
for D, h, m, zs, vs in ((0.6, 0.42, 7, [0.05, 0.15, 0.3, 0.4], [0.5, 0.7, 0.85, 0.81]), (1.2, 0.9, 6, [0.1, 0.6, 0.8], [0.8, 1.3, 1.1])):
    def u(y):
        return vs[0] * (y / zs[0]) ** (1 / m) if y < zs[0] else np.interp(y, zs, vs)
    def width(y):
        return 2 * (y * (D - y)) ** 0.5
    # y = z1 s^m takes away the corner at the bed
    cuts = [*zs, h]
    part = integrate.quad(lambda s: vs[0] * s * width(zs[0] * s**m) * zs[0] * m * s ** (m - 1), 0, 1, epsabs=0, epsrel=1e-13)[0]
    part += sum(integrate.quad(lambda y: u(y) * width(y), a, b, epsabs=0, epsrel=1e-13)[0] for a, b in zip(cuts, cuts[1:]) if b > a)
    area = integrate.quad(width, 0, h, epsabs=0, epsrel=1e-13)[0]
    rows.append((D, h, m, text(zs), text(vs), part / area / max(vs)))
write(FOLDER, PROGRAM, "profile-traverse-greatest", "mean over the greatest velocity of a traverse, by quadrature over the width",
      [("diameter", "m, bore"), ("depth", "m, depth"), ("m", "1, of the power law at the bed"), ("z", "m, heights"), ("v", "m/s, velocities"), ("f", "1, mean over greatest")],
      [("diameter", "diameter"), ("depth", "depth"), ("m", "m"), ("heights", "text z"), ("velocities", "text v")], [("f", "profile.traverse.mean-to-greatest")], rows,
      tolerance="1e-9 relative", reason="the library's quadrature is good to that")

rows = []
for n, spread in ((4, 1.0), (4, 1.6), (7, 1.2), (7, 1.48), (7, 1.5), (7, 2.0)):
    x = [1 + 0.5 * i for i in range(n)]
    # residuals of alternate signs that sum, with their moments, to nearly nothing
    y = [0.3 + 1.1 * xi + 0.05 * spread * (1 if i % 2 else -1) for i, xi in enumerate(x)]
    fit = stats.linregress(x, y)
    chi2 = sum(((yi - fit.intercept - fit.slope * xi) / 0.05) ** 2 for xi, yi in zip(x, y))
    rows.append((text(x), text(y), text([0.05] * n), int(chi2 <= stats.chi2.ppf(0.95, n - 2))))
for factor in (0.985, 1.015):  # on both sides of the quantile
    x, z = [1, 2, 3, 4, 5, 6], [1, -1, 0.5, -0.5, 1, -1]
    fit = stats.linregress(x, z)
    left = [b - fit.intercept - fit.slope * a for a, b in zip(x, z)]
    size = (stats.chi2.ppf(0.95, 4) * factor / sum(e * e for e in left)) ** 0.5
    rows.append((text(x), text([2 + 0.7 * a + 0.1 * size * e for a, e in zip(x, left)]), text([0.1] * 6), int(factor < 1)))
write(FOLDER, PROGRAM, "calibration-consistent", "whether chi-squared is above its 95 % quantile (ISO/TS 28037, 6.3)",
      [("x", "1, stimuli"), ("y", "1, responses"), ("uy", "1, their uncertainties"), ("yes", "1, consistent or not")],
      [("x", "text x"), ("y", "text y"), ("uy", "text uy")], [("yes", "calibration.is-consistent")], rows, tolerance="0", reason="yes or no")
