"""Rain where nothing is said of what may be said, and just beyond limits: Python with NumPy.

    python3 rain_plain.py FOLDER

writes kriging-plain, grid-means-beyond, field-bias-left-out, rational-plain, flow-paths-plain, tables-in-hours, tables-with-blanks, flood-studies-over-areas,
uplifts-doubtful, shares-of-limits, storms-just-enough-by-a-hair, chicago-inside-the-shortest, euler-two-of-ten, triangles-in-the-middle, fits-none-worse and
exponential-by-likelihood into the folder
of the rainfall tables.
"""

import csv
import math
import sys
from pathlib import Path

import numpy as np

from formula_tables import keers
from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "rain_plain.py"
FLOOD_STUDIES = Path(__file__).resolve().parent.parent / "main/resources/dev/runnel/verification/tables/rainfall/flood-studies-ten-year-depth-r040.csv"


def plain_kriging():
    """Ordinary kriging of a variogram of which nothing but the range is known: the sill is 1 mm2 and there is no nugget."""
    rows = []
    places = [(0, 0), (4000, 500), (1000, 3000), (5200, 4100)]
    for shape, span in (("spherical", 6000.0), ("exponential", 9000.0)):
        for x, y in ((1500, 1200), (4200, 2000), (-800, 2500)):
            def gamma(h):
                r = min(h / span, 1) if shape == "spherical" else h / span
                return 1.5 * r - 0.5 * r**3 if shape == "spherical" else 1 - math.exp(-3 * r)

            n = len(places)
            system = np.ones((n + 1, n + 1))
            system[n, n] = 0
            for i, a in enumerate(places):
                for j, b in enumerate(places):
                    system[i, j] = gamma(math.dist(a, b))
            right = np.array([gamma(math.dist(p, (x, y))) for p in places] + [1])
            solved = np.linalg.solve(system, right)
            rows.append((shape, span, "; ".join(f"{a} {b}" for a, b in places), f"{x} {y}", float(solved @ right)))
    write(FOLDER, PROGRAM, "kriging-plain", "variance of an estimate by a variogram with a sill of 1 mm2 and no nugget", [("shape", "text, variogram"), ("range", "m, range"), ("gauges", "m, places"), ("target", "m, place"), ("variance", "mm2, variance")],
          [("shape", "text shape"), ("range", "range"), ("gauges", "text gauges"), ("target", "text target")], [("variance", "areal.kriging.variance")], rows, tolerance="1e-10 relative", reason="two solutions of a system of five equations")


def means_beyond():
    """Rectangles that reach beyond the grid, with cells that are missing."""
    rows = []
    for x0, y0, x1, y1, depths in ((-500, 200, 1500, 1800, (3, math.nan, 5, 7)), (400, 400, 2600, 2200, (1, 2, math.nan, 4)), (100, 100, 900, 2300, (6, 1, 2, 3)), (-700, -300, 2100, 2500, (math.nan, 8, 1, math.nan))):
        volume = known = 0.0
        for i, depth in enumerate(depths):
            west, south = 1000 * (i % 2), 1000 * (1 - i // 2)
            shared = max(0, min(x1, west + 1000) - max(x0, west)) * max(0, min(y1, south + 1000) - max(y0, south))
            volume += 0 if depth != depth else shared * depth
            known += 0 if depth != depth else shared
        rows.append((f"POLYGON (({x0} {y0}, {x1} {y0}, {x1} {y1}, {x0} {y1}, {x0} {y0}))", text(depths), volume / known, known / ((x1 - x0) * (y1 - y0))))
    write(FOLDER, PROGRAM, "grid-means-beyond", "means over rectangles that reach beyond a grid of 2 by 2 km", [("catchment", "m, polygon"), ("depths", "mm, from the north"), ("mean", "mm, mean"), ("known", "1, share of the catchment known")],
          [("catchment", "text catchment"), ("corner", "word 0 0"), ("cell", "1000"), ("columns", "2"), ("depths", "text depths")], [("mean", "areal.grid.mean"), ("known", "areal.grid.known-share")], rows)
    rows = [(g, c, least, left) for g, c, least, left in (("1 2 3 4", "2 2 2 2", 0, 0), ("1 2 3 4", "2 2 2 2", 2.5, 2), ("1 NaN 3 4", "2 2 2 NaN", 0, 2), ("0 0 5", "0.5 1 5", 1, 1))]
    write(FOLDER, PROGRAM, "field-bias-left-out", "pairs of gauge and cell that are left out", [("g", "mm, gauges"), ("c", "mm, cells"), ("least", "mm, limit"), ("left", "1, pairs")],
          [("gauge_mm", "text g"), ("grid_mm", "text c"), ("least_mm", "least")], [("left", "areal.mean-field-bias.left-out")], rows)


def plain_design():
    rows = [(text(h), text(c), i, sum(a * b for a, b in zip(h, c)) * 1e4 * i / 3.6e6) for h, c, i in (((2.5,), (0.8,), 42.0), ((1, 3), (0.9, 0.3), 25.5), ((0.4, 0.2, 5), (0.7, 1, 0.15), 60.0))]
    write(FOLDER, PROGRAM, "rational-plain", "C i A with no factor of routing", [("hectares", "ha, areas"), ("coefficients", "1, coefficients"), ("intensity", "mm/h, intensity"), ("peak", "m3/s, peak")],
          [("hectares", "text hectares"), ("coefficients", "text coefficients"), ("entry_minutes", "5"), ("flow_minutes", "7"), ("intensity", "intensity")], [("peak", "rational.peak")], rows)
    rows = [(m, 0.0078 * (m / 0.3048) ** 0.77 * 0.01**-0.385) for m in (40.0, 250.0, 1800.0)]
    write(FOLDER, PROGRAM, "flow-paths-plain", "Kirpich's time of a way that falls 1 in 100, as one of which no gradient is known does", [("metres", "m, length"), ("time", "min, time")], [("length", "metres")], [("time", "flow-path.kirpich")], rows, tolerance="1e-10 relative",
          reason="whole nanoseconds")


def tables():
    rows = []
    for word, unit in (("duration_h", 60.0), ("duration_min", 1.0)):
        table = f"{word},2,10\n0.25,8,13\n1,14,22\n6,30,47\n"
        knots = [(0.25 * unit, 8, 13), (1 * unit, 14, 22), (6 * unit, 30, 47)]
        for minutes in (0.25 * unit, 0.5 * unit, 1 * unit, 3 * unit, 6 * unit):
            (t0, *low), (t1, *high) = next((a, b) for a, b in zip(knots, knots[1:]) if a[0] <= minutes <= b[0])
            share = math.log(minutes / t0) / math.log(t1 / t0)
            two, ten = (a * (b / a) ** share for a, b in zip(low, high))
            rows.append((table, minutes, 5, two + (ten - two) * math.log(2.5) / math.log(5)))
    write(FOLDER, PROGRAM, "tables-in-hours", "depths of a table whose durations are in hours, or in minutes", [("table", "text, table"), ("minutes", "min, duration"), ("years", "years, return period"), ("depth", "mm, depth")],
          [("table", "text table"), ("minutes", "minutes"), ("years", "years")], [("depth", "ddf.table.depth")], rows, tolerance="1e-11 relative", reason="logarithms")
    rows = []
    table = "duration_min,1,2,5,10\n10,,6,8,\n60,11,,20,25\n"
    for minutes, lowest, greatest in ((10, 2, 5), (60, 1, 10)):
        for years in (lowest * 0.98, lowest, (lowest * greatest) ** 0.5, greatest, greatest * 1.02):
            rows.append((table, minutes, years, int(not lowest <= years <= greatest)))
    write(FOLDER, PROGRAM, "tables-with-blanks", "return periods that are refused where a table is blank at its sides", [("table", "text, table"), ("minutes", "min, duration"), ("years", "years, return period"), ("refused", "1, whether it is refused")],
          [("table", "text table"), ("minutes", "minutes"), ("years", "years")], [("refused", "refusal.ddf.table.depth")], rows)
    rows = []
    with open(FLOOD_STUDIES, newline="") as file:
        for row in csv.DictReader(file):
            for area in (5, 60, 700):
                factor = float(keers({"a": area, "d": row["d"]})["f"])
                rows.append((float(row["d"]), area, float(row["m10"]) * factor, float(row["tol"]) * factor))
    write(FOLDER, PROGRAM, "flood-studies-over-areas", "ten-year depths of a calculation sheet (Gyoury Self Partnership 2017, M5-60 = 20 mm, r = 0.40), times a factor of areal reduction", [("d", "min, duration"), ("area", "km2, area"), ("m10", "mm, ten-year depth"), ("tol", "mm, its rounding")],
          [("m5_60", "20"), ("ratio", "0.40"), ("minutes", "d"), ("years", "10"), ("area_km2", "area")], [("m10", "ddf.flood-studies.areal-depth")], rows, tolerance="column tol", reason="the sheet rounds Z1 and Z2 to 0.01")
    rows = [(minutes, depth, percent, int(depth / (1 + percent / 100) / minutes * 60 > 31.75)) for minutes, depth, percent in ((60, 32.0, 0), (60, 32.0, 20), (60, 37.0, 20), (60, 39.0, 20), (30, 18.0, 40), (30, 23.0, 40))]
    write(FOLDER, PROGRAM, "uplifts-doubtful", "depths above 1.25 in/h of today", [("minutes", "min, duration"), ("depth", "mm, depth"), ("percent", "%, uplift"), ("doubtful", "1, whether it is doubtful")],
          [("minutes", "minutes"), ("depth", "depth"), ("percent", "percent")], [("doubtful", "ddf.bilham.raised-doubtful")], rows)
    rows = []
    table = "duration_min,1,10\n10,6,12\n60,11,25\n"
    for depths in ((0, 3, 0), (0, 9, 0), (1, 15, 2), (2, 12.6, 0)):
        deepest = max(depths)
        rows.append((table, text(depths), deepest / 12 if deepest > 12 else deepest / 6 if deepest < 6 else 1))
    write(FOLDER, PROGRAM, "shares-of-limits", "depth of an event over the greatest or least of a table", [("table", "text, table"), ("depths", "mm, depths"), ("share", "1, depth over that of the limit; 1 between the limits")],
          [("table", "text table"), ("depths", "text depths"), ("step_minutes", "10"), ("windows_minutes", "10")], [("share", "ddf.event-rarity.share-of-limit")], rows)


def just_enough():
    rows = [(d, int(6 >= float(d) - 1e-9)) for d in ("6.00000000098", "6.00000000102", "5.9999")]
    write(FOLDER, PROGRAM, "storms-just-enough-by-a-hair", "a storm of 6 mm whose depth misses what is asked for by about a millionth of a micrometre", [("depth", "mm, least depth"), ("verdict", "1 met, 0 not")],
          [("gauges", "word 1 2 3; 2 2 2"), ("step_minutes", "60"), ("depth_mm", "depth"), ("intensity", "2"), ("over_minutes", "60"), ("spread", "0.5"), ("concentration_minutes", "60")], [("verdict", "storm.criteria.verdict")], rows, tolerance="0", reason="a verdict")


def chicago():
    """Nearer to the peak than the shortest duration rain is steady."""
    rows = []
    a, n, shortest, whole, step = 300.0, 0.6, 8.0, 60.0, 10.0

    def depth(t):
        return a * t ** (1 - n) / 60 if t >= shortest else a * shortest ** (1 - n) / 60 * t / shortest

    for r in (0.35, 0.48, 0.52):
        peak = r * whole

        def until(t):
            return r * (depth(whole) - depth((peak - t) / r)) if t < peak else r * depth(whole) + (1 - r) * depth((t - peak) / (1 - r))

        for block in range(1, 7):
            rows.append((r, block, until(block * step) - until(block * step - step)))
    write(FOLDER, PROGRAM, "chicago-inside-the-shortest", "a Chicago storm whose peak lies nearer to the edge of a step than its formula holds", [("r", "1, place of the peak"), ("block", "1, block"), ("depth", "mm, depth")],
          [("form", "word bernard"), ("a", str(a)), ("n", str(n)), ("shortest", str(shortest)), ("minutes", str(whole)), ("step", str(step)), ("peak_at", "r"), ("block", "block")], [("depth", "design.chicago.depth")], rows, tolerance="1e-9 relative", reason="whole nanoseconds")
    rows = []
    table = "duration_min,1,10\n5,6,12\n500,60,120\n"
    sums = [0.0] + [12 * 10 ** (math.log(t / 5) / math.log(100)) for t in range(5, 55, 5)]
    rises = [b - a for a, b in zip(sums, sums[1:])]
    storm = rises[2::-1] + rises[3:]
    for block, depth in enumerate(storm, 1):
        rows.append((table, block, depth))
    write(FOLDER, PROGRAM, "euler-two-of-ten", "Euler's storm of ten steps: the first three turned round", [("table", "text, table"), ("block", "1, block"), ("depth", "mm, depth")],
          [("table", "text table"), ("minutes", "50"), ("step", "5"), ("years", "10"), ("block", "block")], [("depth", "design.euler-two.depth")], rows, tolerance="1e-10 relative", reason="logarithms")
    rows = []
    D, d, H, h = 120.0, 40.0, 30.0, 18.0
    i1 = 2 * (H - h) / (D - d)
    i2 = 2 * h / d - i1
    for position in (0.25, 1.0):
        rise = position * (D - d)
        knots, heights = np.array([0, rise, rise + d / 2, rise + d, D]), np.array([0, i1, i2, i1, 0])
        for into in (0.3, 0.485, 0.495, 0.505, 0.7, 1.0):
            t = rise + into * d
            inner = [x for x in knots if x < t] + [t]
            share = sum((b - a) * (np.interp(a, knots[:4 if position == 1 else 5], heights[:4 if position == 1 else 5]) + np.interp(b, knots[:4 if position == 1 else 5], heights[:4 if position == 1 else 5])) / 2 for a, b in zip(inner, inner[1:])) / H
            rows.append((position, t / D, float(share)))
    write(FOLDER, PROGRAM, "triangles-in-the-middle", "share of the depth about the middle of the intense part", [("position", "1, share of the rest before it"), ("at", "1, share of the time"), ("share", "1, share of the depth")],
          [("depth", str(H)), ("minutes", str(D)), ("intense_depth", str(h)), ("intense_minutes", str(d)), ("position", "position"), ("fraction", "at")], [("share", "design.double-triangle.share")], rows, tolerance="1e-12", reason="16 digits are given")


def laws():
    rows = []
    for name, values in (("fifteen here and fifteen there", [100 + 0.1 * i for i in range(15)] + [500 + 0.1 * i for i in range(15)]), ("eighteen and twelve", [20 + 0.01 * i for i in range(18)] + [90 + 0.01 * i for i in range(12)])):
        for family in ("normal", "gumbel"):
            for replicates in (20, 37):
                rows.append((family, text(values), replicates, 1 / (replicates + 1), 0))
    write(FOLDER, PROGRAM, "fits-none-worse", "significance of a fit to two heaps far apart, which no sample drawn from it fits as badly: one over the samples and the one itself", [("family", "text, family"), ("x", "mm, sample"), ("n", "1, replicates"), ("p", "1, significance"), ("failed", "1, replicates not fitted")],
          [("family", "text family"), ("sample", "text x"), ("replicates", "n")], [("p", "drawn.significance"), ("failed", "drawn.significance-failed")], rows)
    rows = []
    for values, level in (([12.0, 15.5, 11.2, 30.1, 18.4, 22.7, 14.9, 13.3], 40.0), ([3.1, 2.2, 9.6, 4.4, 2.9, 2.5], 7.5)):
        n, low, mean = len(values), min(values), sum(values) / len(values)
        for years in (5, 50):
            y = math.log(years)
            rows.append((text(values), years, level, math.hypot((mean - low) / n, y * (mean - low) / math.sqrt(n)), math.exp((level - low) / (mean - low))))
    write(FOLDER, PROGRAM, "exponential-by-likelihood", "error of a level of an exponential law of which smallest value and mean above it are independent, and the period of a level", [("x", "mm, sample"), ("years", "years, return period"), ("level", "mm, level"), ("error", "mm, standard error"), ("period", "years, return period of the level")],
          [("family", "word exponential"), ("sample", "text x")], [("error", "frequency.fit.quantile-standard-error", "input.years = years"), ("period", "frequency.profile.period", "input.level = level", "input.confidence = 0.9")], rows, tolerance="1e-9 relative", reason="slopes are taken by differences")


if __name__ == "__main__":
    for part in (plain_kriging, means_beyond, plain_design, tables, just_enough, chicago, laws):
        part()
