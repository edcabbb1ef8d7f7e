"""Walls upside down, records with gaps, places along a profile, dry banks, and limits of fits: mpmath with 30 digits, no code in common
with the library.

    python3 flow_edges.py FOLDER

writes the tables named below into the folder of the hydraulics tables. Widths are quadratures, depths are found by bisection, profiles
by quadrature. Made with mpmath 1.3.
"""

import sys

from mpmath import inf, log, log10, mp, mpf, nstr, pi, sqrt

from flow_relations import bisect
from open_channel import G, Circle, Trapezoid, distance, friction_slope
from own_tables import text, write
from sections import Arc, Line, Walls

mp.dps = 30
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "flow_edges.py"
NAN = float("nan")
show = lambda value: nstr(mpf(value), 17, min_fixed=-inf, max_fixed=inf)


def turn(piece, top):
    if isinstance(piece, Arc):
        return Arc(piece.a, top - piece.b, piece.r, top - piece.top, top - piece.low, piece.hand)
    return Line(piece.x1, top - piece.top, piece.x0, top - piece.low)


def walls():
    """Each wall with what a drawing of it says, and the same for the program above: arcs by centre, radius and levels."""
    half = mpf("0.5")
    drawn = {
        "0 0; arc 0.5 0.5 0 0.5; line 0.5 1.2": [Arc(0, half, half, 0, half), Line(half, half, half, "1.2")],
        "0 0; arc 0.5 0.5 0 0.5; arc 0 1 0 0.5": [Arc(0, half, half, 0, half), Arc(0, half, half, half, 1)],
        "0 0; arc 0.3 0.1 0 0.5; line 0.6 0.4; line 0.4 1.1": [Arc(0, half, half, 0, "0.1"), Line("0.3", "0.1", "0.6", "0.4"), Line("0.6", "0.4", "0.4", "1.1")],
        "0.2 0; line 0.35 0.3; arc 0.75 0.7 0.35 0.7; line 0.75 0.9; arc 0.45 1.2 0.45 0.9; line 0.1 1.3": [Line("0.2", 0, "0.35", "0.3"), Arc("0.35", "0.7", "0.4", "0.3", "0.7"), Line("0.75", "0.7", "0.75", "0.9"),
                                                                                                Arc("0.45", "0.9", "0.3", "0.9", "1.2"), Line("0.45", "1.2", "0.1", "1.3")],
        "0 0; line 0.5 0.2; line 0.7 0.2; line 0.7 0.8; arc 0.45 1.05 0.45 0.8": [Line(0, 0, "0.5", "0.2"), Line("0.5", "0.2", "0.7", "0.2"), Line("0.7", "0.2", "0.7", "0.8"), Arc("0.45", "0.8", "0.25", "0.8", "1.05")],
    }
    # a wall that bulges inwards: the left half of a circle whose centre lies outside
    r = mpf("0.5")
    drawn["0.6 0; arc 0.5 0.3 1 0.3; arc 0.7 0.7 1 0.3"] = [Arc(1, "0.3", r, 0, "0.3", -1), Arc(1, "0.3", r, "0.3", "0.7", -1)]
    rows = []
    for wall, pieces in drawn.items():
        for turned in (0, 1, 2):
            right = pieces
            top = pieces[-1].top
            if turned == 1:
                right = [turn(p, top) for p in reversed(pieces)]
            shape = Walls(right)
            for share in ("0.03", "0.14", "0.31", "0.49", "0.66", "0.81", "0.97"):
                y = mpf(share) * top
                area = shape.area(y)
                rows.append((wall, turned, show(y), show(area), show(shape.perimeter(y)), show(2 * shape.piece(right, y).x(y)), show(shape.centroid(y)), show(y), show(top)))
    write(FOLDER, PROGRAM, "walls-turned", "sections of drawn walls, as they stand, upside down and turned twice: quadratures of the width with 30 digits",
          [("wall", "m, the wall"), ("turned", "1, how often it is turned"), ("y", "m, depth"), ("area", "m2, area"), ("perimeter", "m, wetted perimeter"), ("width", "m, top width"), ("centroid", "m, depth of the centroid"), ("back", "m, depth for the area"), ("height", "m, height")],
          [("wall", "text wall"), ("turned", "turned")],
          [("area", "wall.area", "input.depth = y"), ("perimeter", "wall.perimeter", "input.depth = y"), ("width", "wall.top-width", "input.depth = y", "tolerance = 1e-12", "reason = near a crown the width runs away"), ("centroid", "wall.centroid-depth", "input.depth = y"), ("back", "wall.depth-for-area", "input.area = area"), ("height", "wall.height")], rows,
          tolerance="4e-13 relative", reason="the limit of the library for a wall of several pieces")


def records():
    rows = []
    for shape, size in (("circular", "0.45"), ("circular", "1.2"), ("rectangular", "1.1")):
        section = Circle(mpf(size)) if shape == "circular" else Trapezoid(mpf(size), mpf(0))
        slope, n = mpf("0.004"), mpf("0.013")
        speed = lambda y: section.radius(y) ** (mpf(2) / 3) * sqrt(slope) / n
        flow = lambda y: section.area(y) * speed(y)
        high = mpf(size) if shape == "circular" else mpf(2000)
        crest = mpf(size) * mpf("0.93818") if shape == "circular" else mpf(2000)
        most = flow(crest)
        given = [NAN, 0.0, float(most * mpf("0.003")), -0.5, float(most * mpf("0.4")), float(most * mpf("1.02")), 1e15, NAN, float(most * mpf("0.91")), -1e-9, float(most * mpf("0.6"))]
        if shape == "rectangular":
            given = [NAN, 0.0, 0.05, -0.5, 4.0, 17.3, NAN, 0.9, -1e-9]
        depth, none = mpf(0), 0
        for i, q in enumerate(given, 1):
            if q != q:
                continue
            if q < 0 or q > most:
                none += 1
            elif q > 0:
                depth += i * bisect(lambda y: flow(y) - mpf(q), mpf(10) ** -9, crest, 150)
        rows.append((shape, size, text(given), show(depth), none, "", ""))
        given = [NAN, 0.1, -0.001, float(high * mpf("0.2")) if shape == "circular" else 7.0, float(mpf(size)) if shape == "circular" else 11.0, float(high * mpf("1.001")), 55.0, NAN, float(high * mpf("0.7")) if shape == "circular" else 0.3]
        if shape == "rectangular":
            given[5] = 1.7
        speeds, none = mpf(0), 0
        for i, y in enumerate(given, 1):
            if y != y:
                continue
            if y < 0 or y > float(high):
                none += 1
            elif shape == "circular" and y == float(size):
                speeds += i * (mpf(size) / 4) ** (mpf(2) / 3) * sqrt(slope) / n
            else:
                speeds += i * speed(mpf(y))
        rows.append((shape, size, text(given), "", "", show(speeds), none))
    write(FOLDER, PROGRAM, "records-with-gaps", "depths of a record of discharges and velocities of one of depths, with readings missing and others that have no answer",
          [("shape", "text, shape"), ("size", "m, bore or width"), ("record", "m3/s or m, readings"), ("depth", "m, depths times places"), ("none", "1, readings without a depth"), ("velocity", "m/s, velocities times places"), ("neither", "1, readings without a velocity")],
          [("record", "text record"), ("gradient", "0.004"), ("n", "0.013"), ("shape", "text shape"), ("diameter", "size"), ("width", "size")],
          [("depth", "flow.record.depth"), ("none", "flow.record.without-depth"), ("velocity", "flow.record.velocity"), ("neither", "flow.record.without-velocity")], rows, tolerance="1e-11 relative")


def profiles():
    rows = []
    # One reach of 200 m has a station every metre: depths there are of the curve itself, between them on a straight line.
    for width, slope, n, q, outlet, length in (("2", "0.001", "0.013", "2", "1.1", "200"), ("2", "0.001", "0.013", "2", "0.55", "200"), ("1.5", "0", "0.015", "1.2", "0.8", "100"), ("1.5", "-0.001", "0.014", "1.2", "0.9", "100")):
        section = Trapezoid(mpf(width), mpf(0))
        flow, s0 = mpf(q), mpf(slope)

        def depth(x):
            up = mpf(length) - x
            if up == 0:
                return mpf(outlet)
            start = mpf(outlet)
            rises = friction_slope(section, flow, mpf(n), start, inf) > s0
            if rises:
                normal = bisect(lambda y: s0 - friction_slope(section, flow, mpf(n), y, inf), start, 50) if s0 > 0 else start + 3
                return bisect(lambda y: distance(section, flow, s0, mpf(n), start, y) - up, start + mpf(10) ** -12, normal - mpf(10) ** -9, 60)
            normal = bisect(lambda y: s0 - friction_slope(section, flow, mpf(n), y, inf), "0.05", start)
            return bisect(lambda y: up - distance(section, flow, s0, mpf(n), y, start), normal + mpf(10) ** -9, start - mpf(10) ** -12, 60)

        step = mpf(length) / 200
        for k in (0, 1, 37, 150, 199, 200):
            rows.append((width, length, slope, "0", n, q, outlet, "0", show(step * k), show(depth(step * k)), "", ""))
        low, high = depth(step * 60), depth(step * 61)
        for share in ("0.25", "0.8"):
            rows.append((width, length, slope, "0", n, q, outlet, "0", show(step * (60 + mpf(share))), show(low + mpf(share) * (high - low)), "", ""))
    for lengths, slopes, drops, outlet in (("80 40 25", "0.002 0.004 0.001", "0.1 0 0", "17.5"), ("30 30", "0.003 0.001", "0.25 0", "-2"), ("12 50 33 20", "0.001 0 0.005 0.002", "0 0.3 0.05 0", "4")):
        fall = sum(mpf(a) * mpf(b) for a, b in zip(lengths.split(), slopes.split())) + sum(mpf(d) for d in drops.split()[:-1])
        rows.append(("2", lengths, slopes, drops, "0.013", "1", "0.9", outlet, "", "", show(mpf(outlet) + fall), ""))
    write(FOLDER, PROGRAM, "profile-places", "depths along profiles by quadrature, on straight lines between 200 equal steps, and inverts of reaches with drops",
          [("width", "m, width"), ("lengths", "m, lengths"), ("slopes", "m/m, gradients"), ("drops", "m, drops"), ("n", "s/m^(1/3), Manning's n"), ("q", "m3/s, discharge"), ("outlet", "m, outlet depth"), ("invert", "m, invert there"), ("x", "m, distance"),
           ("depth", "m, depth"), ("inlet", "m, invert of the inlet"), ("none", "1, not used")],
          [("shape", "word rectangular"), ("width", "width"), ("lengths", "text lengths"), ("gradients", "text slopes"), ("drops", "text drops"), ("n", "n"), ("discharge", "q"), ("outlet_depth", "outlet"), ("outlet_invert", "invert")],
          [("depth", "varied-flow.profile.depth-at", "input.distance = x"), ("inlet", "varied-flow.profile.inlet-invert", "tolerance = 1e-13 relative")], rows, tolerance="2e-9 relative", reason="the stated error of a depth, 1e-9")


def steep_ends():
    """On a steep slope the slow line from the outlet ends at critical depth half a metre below the inlet: there flow begins critical."""
    rows = []
    for width, slope, n, q, outlet in (("2", "0.02", "0.013", "2", "0.9"), ("1.2", "0.04", "0.012", "0.8", "0.7")):
        section, flow = Trapezoid(mpf(width), mpf(0)), mpf(q)
        turning = (flow**2 / (G * mpf(width) ** 2)) ** (mpf(1) / 3)
        reach = distance(section, flow, mpf(slope), mpf(n), turning, mpf(outlet))
        for more in ("0.5", "0.9", "0.2"):
            rows.append((width, show(reach + mpf(more)), slope, n, q, outlet, show(turning), show(mpf(outlet))))
    write(FOLDER, PROGRAM, "profiles-steep-ends", "V. T. Chow (1959), section 9-4: flow through critical depth at the upper end of a steep reach whose slow line ends just below it",
          [("width", "m, width"), ("length", "m, length"), ("slope", "m/m, gradient"), ("n", "s/m^(1/3), Manning's n"), ("q", "m3/s, discharge"), ("outlet", "m, outlet depth"), ("inlet", "m, depth at the inlet"), ("end", "m, depth at the outlet")],
          [("shape", "word rectangular"), ("width", "width"), ("lengths", "text length"), ("gradients", "text slope"), ("drops", "word 0"), ("n", "n"), ("discharge", "q"), ("outlet_depth", "outlet"), ("outlet_invert", "0")],
          [("inlet", "varied-flow.profile.depth-at", "input.distance = 0"), ("end", "varied-flow.profile.depth-at", "input.distance = length * (1 - 1e-15)")], rows, tolerance="2e-9 relative", reason="the stated error of a depth, 1e-9")


def divided():
    rows = []
    surveys = [
        ("0 20 22 26 28 60", "3 3 0 0 3 3.4", "0.05 0.05 0.03 0.03 0.06"),
        ("0 0 10 10 14 14 30", "4 2 2 0 0 1.5 1.8", "0.04 0.04 0.03 0.03 0.03 0.05"),
        ("0 5 9 15 40", "2.5 2 0 1.2 2.2", "0.05 0.03 0.03 0.08"),
    ]
    for places, levels, roughnesses in surveys:
        xs, zs, ns = ([mpf(v) for v in t.split()] for t in (places, levels, roughnesses))
        for level in ("-0.1", "0.3", "0.9", "1.4", "1.6", "1.99", "2.3", "3", "3.01", "3.6", "5"):
            h = mpf(level)
            answers = []
            for wetted in (False, True):
                total, at = mpf(0), 0
                while at < len(ns):
                    end = at
                    while end < len(ns) and ns[end] == ns[at]:
                        end += 1
                    area = perimeter = mpf(0)
                    for i in range(at, end):
                        (x0, z0), (x1, z1) = (xs[i], zs[i]), (xs[i + 1], zs[i + 1])
                        if z0 >= h and z1 >= h:
                            continue
                        # the part of the ground that is under water
                        if z0 > h or z1 > h:
                            share = (h - min(z0, z1)) / abs(z1 - z0)
                            area += share * (x1 - x0) * (h - min(z0, z1)) / 2
                            perimeter += share * sqrt((x1 - x0) ** 2 + (z1 - z0) ** 2)
                        else:
                            area += (x1 - x0) * (h - (z0 + z1) / 2)
                            perimeter += sqrt((x1 - x0) ** 2 + (z1 - z0) ** 2)
                    for i, outer in ((at, at == 0), (end, end == len(ns))):
                        if outer or wetted:
                            perimeter += max(h - zs[i], mpf(0))
                    if area > 0:
                        total += area ** (mpf(5) / 3) / perimeter ** (mpf(2) / 3) / ns[at]
                    at = end
                answers.append(show(total * sqrt(mpf("0.0009"))))
            rows.append((places, levels, roughnesses, level, *answers))
    write(FOLDER, PROGRAM, "divided-channels", "Ven Te Chow (1959), Open-Channel Hydraulics, section 6-5: surveyed channels by parts, with banks dry and under water, upright walls and flat ground",
          [("places", "m, places"), ("levels", "m, levels"), ("n", "s/m^(1/3), Manning's n of the ground between"), ("level", "m, water"), ("plain", "m3/s, interfaces not wetted"), ("wetted", "m3/s, wetted")],
          [("places", "text places"), ("levels", "text levels"), ("roughnesses", "text n"), ("level", "level"), ("gradient", "0.0009")],
          [("plain", "divided-channel.plain-discharge"), ("wetted", "divided-channel.wetted-discharge")], rows, tolerance="1e-12 relative or 1e-14")


def lengths():
    froude = [mpf(v) for v in "1.7 2 2.5 3 3.5 4 5 6 8 10".split()]
    over = [mpf(v) for v in "4 4.35 4.85 5.28 5.55 5.8 6 6.1 6.12 6.1".split()]
    rows = []
    for y, width in (("0.2", "1.5"), ("0.61", "4")):
        for f in ("1.703", "1.77", "1.9", "2.2", "2.9", "3.3", "3.9", "4.4", "5.5", "7.1", "9", "9.98"):
            q = mpf(f) * sqrt(G * mpf(y)) * mpf(y) * mpf(width)
            q = mpf(float(q))
            fr = q / (mpf(width) * mpf(y)) / sqrt(G * mpf(y))
            behind = mpf(y) / 2 * (sqrt(1 + 8 * fr**2) - 1)
            i = max(k for k in range(9) if froude[k] <= fr)
            rows.append((width, y, show(q), show(behind * (over[i] + (over[i + 1] - over[i]) * (fr - froude[i]) / (froude[i + 1] - froude[i])))))
    write(FOLDER, PROGRAM, "jump-lengths", "J. N. Bradley and A. J. Peterka (1957), curve of the length of a jump on a level apron, its points from memory, straight lines between them",
          [("width", "m, width"), ("depth", "m, depth before"), ("q", "m3/s, discharge"), ("length", "m, length of the jump")], [("shape", "word rectangular"), ("width", "width"), ("depth", "depth"), ("discharge", "q")], [("length", "jump.length")], rows)


def fits():
    """A velocity above that of a smooth wall, or below that of one as rough as the section is deep, has no roughness."""
    rows = []
    for r, s, nu in (("0.1", "0.002", "1.31e-6"), ("0.6", "0.0004", "1.0e-6"), ("0.03", "0.02", "1.14e-6")):
        scale = sqrt(8 * G * mpf(r) * mpf(s))
        thin = mpf("2.51") * mpf(nu) / (4 * mpf(r) * scale)
        smooth, rough = -2 * scale * log10(thin), -2 * scale * log10(1 / mpf("3.7") + thin)
        for v, share, refused in ((smooth, "0.999", 0), (smooth, "1.0000000000004", 0), (smooth, "1.0000000000025", 1), (smooth, "1.003", 1), (smooth, "1.03", 1), (smooth, "1.2", 1), (rough, "1.003", 0), (rough, "0.997", 1), (rough, "0.99", 1), (rough, "0.96", 1), (rough, "0.8", 1)):
            rows.append((r, s, nu, show(v * mpf(share)), refused))
    write(FOLDER, PROGRAM, "refusals-of-fits", "C. F. Colebrook (1939): velocities that a roughness gives and that none gives",
          [("r", "m, hydraulic radius"), ("s", "m/m, gradient"), ("nu", "m2/s, viscosity"), ("v", "m/s, velocity"), ("refused", "1, 1 if refused, else 0")],
          [("radius", "r"), ("gradient", "s"), ("viscosity", "nu"), ("velocity", "v"), ("gravity", "9.80665")], [("refused", "refusal.resistance.fitted-roughness")], rows, tolerance="0", reason="a verdict")
    # Laminar beside a wall of a millimetre that would not leave it so: nothing is known of the wall, a smooth one is given.
    rows = []
    for r, re, nu in (("0.0003", "1500", "1.31e-6"), ("0.00027", "1900", "1.0e-6"), ("0.0004", "1700", "3e-5")):
        v = mpf(re) * mpf(nu) / (4 * mpf(r))
        rows.append((r, nu, show(v), show(64 / mpf(re) * v**2 / (8 * G * mpf(r))), 0))
    write(FOLDER, PROGRAM, "laminar-fits", "G. Hagen, J. Poiseuille: laminar flow, of which no roughness is known, beside a wall that would disturb it",
          [("r", "m, hydraulic radius"), ("nu", "m2/s, viscosity"), ("v", "m/s, velocity"), ("s", "m/m, gradient"), ("k", "m, roughness")], [("radius", "r"), ("gradient", "s"), ("viscosity", "nu"), ("velocity", "v"), ("gravity", "9.80665")],
          [("k", "resistance.fitted-roughness")], rows, tolerance="0", reason="smooth means 0")


def rough():
    """A wall rougher than its section is deep counts as rough as that: k/4R is at most 1."""
    rows = []
    for r, s, nu in (("0.1", "0.002", "1.31e-6"), ("0.05", "0.01", "1.0e-6")):
        for share in ("0.9", "0.99", "1", "1.02", "1.04", "1.3", "2"):
            scale = sqrt(8 * G * mpf(r) * mpf(s))
            rel = min(mpf(share), mpf(1))
            rows.append((r, s, nu, show(mpf(share) * 4 * mpf(r)), show(-2 * scale * log10(rel / mpf("3.7") + mpf("2.51") * mpf(nu) / (4 * mpf(r) * scale)))))
    write(FOLDER, PROGRAM, "velocities-of-roughest-walls", "C. F. Colebrook (1939): walls as rough as the section is deep and rougher, which count as the former (chosen by the library)",
          [("r", "m, hydraulic radius"), ("s", "m/m, gradient"), ("nu", "m2/s, viscosity"), ("k", "m, roughness"), ("v", "m/s, velocity")], [("radius", "r"), ("gradient", "s"), ("viscosity", "nu"), ("roughness", "k")], [("v", "resistance.velocity")],
          [r for r in rows if mpf(r[3]) <= mpf("0.5")], tolerance="1e-13 relative")


def crests():
    """Where a circle carries most and flows fastest: the zero of the derivative, by its angle, with 30 digits."""
    rows = []
    for d in ("0.45", "2.4", "9"):
        pipe = Circle(mpf(d))
        laws = [("", "0.013", "", lambda y: pipe.radius(y) ** (mpf(2) / 3)), ("55", "", "", lambda y: sqrt(pipe.radius(y)))]
        for k, nu in (("0.00003", "1.31e-6"), ("0.0015", "1.31e-6"), ("0.03", "1.0e-6")):
            def sand(y, k=mpf(k), nu=mpf(nu)):
                scale = sqrt(8 * G * pipe.radius(y) * mpf("0.003"))
                return -scale * log10(k / (4 * pipe.radius(y)) / mpf("3.7") + mpf("2.51") * nu / (4 * pipe.radius(y) * scale))
            laws.append(("", "", f"{k} {nu}", sand))
        for chezy, n, wall, speed in laws:
            answers = []
            for curve in (lambda y: pipe.area(y) * speed(y), speed):
                step = mpf(d) * mpf(10) ** -9
                low, high = (mpf("0.93"), mpf("0.96")) if not answers else (mpf("0.78"), mpf("0.84"))
                answers.append(bisect(lambda y: (curve(y - 2 * step) - curve(y + 2 * step)) + 8 * (curve(y + step) - curve(y - step)), mpf(d) * low, mpf(d) * high, 60))
            k, nu = wall.split() if wall else ("", "")
            rows.append((d, chezy, n, k, nu, *map(show, answers)))
    for kind, keep, given in (("manning", 2, [("n", "n")]), ("chezy", 1, [("chezy", "c")]), ("sand", 3, [("roughness", "k"), ("viscosity", "nu")])):
        some = [r for r in rows if r[keep]]
        columns = [("d", "m, bore"), ("c", "m^(1/2)/s, C"), ("n", "s/m^(1/3), n"), ("k", "m, roughness"), ("nu", "m2/s, viscosity"), ("most", "m, depth of the greatest discharge"), ("fastest", "m, depth of the greatest velocity")]
        used = [0, 5, 6] + {"manning": [2], "chezy": [1], "sand": [3, 4]}[kind]
        write(FOLDER, PROGRAM, f"crests-{kind}", "depths of the greatest discharge and velocity of a circle: the zeros of the derivatives, with 30 digits", [columns[i] for i in used],
              [("shape", "word circular"), ("diameter", "d"), ("gradient", "0.003"), *given], [("most", "flow.depth-of-maximum-discharge"), ("fastest", "flow.depth-of-maximum-velocity")], [[r[i] for i in used] for r in some],
              tolerance="1e-11 relative", reason="the library says about 1e-12 of the piece of the section")


def lids():
    """A box just below its lid carries most, since the lid adds to the wetted length at once."""
    rows = []
    for b, h in (("1.3", "0.9"), ("0.6", "1.1"), ("3", "1.5")):
        for law in ("n", "k", "smooth"):
            area, wet = mpf(b) * mpf(h), mpf(b) + 2 * mpf(h)
            radius = area / wet

            def speed(r):
                if law == "n":
                    return r ** (mpf(2) / 3) * sqrt(mpf("0.003")) / mpf("0.013")
                k = mpf("0.0015") if law == "k" else mpf(0)
                scale = sqrt(8 * G * r * mpf("0.003"))
                return -2 * scale * log10(k / (4 * r) / mpf("3.7") + mpf("2.51") * mpf("1.31e-6") / (4 * r * scale))

            carried = lambda y: mpf(b) * y * speed(mpf(b) * y / (mpf(b) + 2 * y))
            full = area * speed(area / (wet + mpf(b)))
            for share in ("0.2", "0.7", "0.93", "0.999", "1.02", "1.1"):
                q = full * mpf(share)
                if q >= carried(mpf(h)):
                    continue
                back = bisect(lambda y: carried(y) - q, mpf(h) / 10**6, mpf(h), 100)
                rows.append((b, h, "0.013" if law == "n" else "", {"n": "", "k": "0.0015", "smooth": "0"}[law], h, show(carried(mpf(h))), show(q), show(back)))
    for kind, pick, given in (("manning", lambda r: r[2], [("n", "n")]), ("sand", lambda r: r[3], [("roughness", "k"), ("viscosity", "1.31e-6")])):
        used = [0, 1, 2 if kind == "manning" else 3, 4, 5, 6, 7]
        columns = [("b", "m, width"), ("h", "m, height"), ("n", "s/m^(1/3), n"), ("k", "m, roughness"), ("at", "m, depth of the greatest discharge"), ("most", "m3/s, greatest discharge"), ("q", "m3/s, a discharge"), ("y", "m, its lowest depth")]
        write(FOLDER, PROGRAM, f"box-lids-{kind}", "boxes up to their lid: the most is carried just below it", [columns[i] for i in used], [("shape", "word box"), ("width", "b"), ("height", "h"), ("gradient", "0.003"), *given],
              [("at", "flow.depth-of-maximum-discharge"), ("most", "flow.maximum-discharge"), ("y", "flow.normal-depth", "input.discharge = q", "tolerance = 1e-11 relative")], [[r[i] for i in used] for r in rows if pick(r)], tolerance="1e-12 relative")


def counts():
    """How many depths have a specific energy: none below the least, one at it, two above; of a rectangle by the cubic."""
    rows = []
    for b, q in (("2", "1.5"), ("0.7", "0.2"), ("1.1", "4")):
        turning = ((mpf(q) / mpf(b)) ** 2 / G) ** (mpf(1) / 3)
        least = mpf(3) / 2 * turning
        for share, count in (("0.99", 0), ("0.9999999", 0), ("1.0000001", 2), ("1.001", 2), ("1.02", 2), ("1.4", 2), ("6", 2)):
            rows.append((b, q, show(least * mpf(share)), count))
    write(FOLDER, PROGRAM, "counts-of-depths", "V. T. Chow (1959), section 3-3: how many depths of a rectangular channel have a specific energy", [("b", "m, width"), ("q", "m3/s, discharge"), ("e", "m, energy"), ("count", "1, depths")],
          [("shape", "word rectangular"), ("width", "b"), ("discharge", "q"), ("energy", "e")], [("count", "energy.count-of-depths")], rows, tolerance="0", reason="a count")


def widths():
    rows = []
    for depth in ("0.5", "2"):
        for b, refused in (("9.8e-7", 1), ("1.02e-6", 0), ("1.04e-6", 0), ("980000", 0), ("1020000", 1), ("1040000", 1)):
            y, width = mpf(depth), mpf(b)
            q = width * y * (width * y / (width + 2 * y)) ** (mpf(2) / 3) * sqrt(mpf("0.001")) / mpf("0.015")
            rows.append((depth, show(q) if q > mpf("1e-8") else nstr(q, 17), refused))
    write(FOLDER, PROGRAM, "refusals-of-widths", "channels between a millionth of a metre and a million metres wide, and beyond",
          [("depth", "m, depth"), ("q", "m3/s, discharge"), ("refused", "1, 1 if refused, else 0")], [("discharge", "q"), ("depth", "depth"), ("side_slope", "0"), ("gradient", "0.001"), ("n", "0.015")], [("refused", "refusal.flow.width")], rows, tolerance="0", reason="a verdict")


def classes():
    """Depths so near the normal and slopes so near the critical one that they count as it: within 1e-9 of the slope."""
    rows = []
    for width, n, q in (("2", "0.013", "2"), ("1.2", "0.017", "0.7")):
        section, flow = Trapezoid(mpf(width), mpf(0)), mpf(q)
        turning = (flow**2 / (G * mpf(width) ** 2)) ** (mpf(1) / 3)
        for y, kind in (("1.3", "mild"), ("0.9", "mild"), ("0.12", "steep")):
            at = friction_slope(section, flow, mpf(n), mpf(y), inf)
            for miss, code in (("0.97e-9", 0), ("-0.97e-9", 0), ("1.03e-9", 1), ("-1.03e-9", -1)):
                slope = float(at * (1 + mpf(miss)))
                if code == 0:
                    number = 0
                elif kind == "mild":
                    number = 11 if code > 0 else 12  # less friction than fall: deeper than normal
                else:
                    number = 22 if code > 0 else 23
                rows.append((width, n, q, y, repr(slope), number))
        at = friction_slope(section, flow, mpf(n), turning, inf)
        for miss in ("0.97e-9", "-0.97e-9", "1.03e-9", "-1.03e-9"):
            slope = float(at * (1 + mpf(miss)))
            near = abs(mpf(miss)) < mpf("1e-9")
            for y in ("2", "0.2"):
                deep = y == "2"
                rows.append((width, n, q, y, repr(slope), (31 if deep else 33) if near else (21 if deep else 23) if mpf(miss) > 0 else (11 if deep else 13)))
    write(FOLDER, PROGRAM, "profile-classes-near", "Ven Te Chow (1959), section 9-3: classes of profiles within and beyond 1e-9 of a uniform or a critical slope, which is what the library takes for equal",
          [("width", "m, width"), ("n", "s/m^(1/3), Manning's n"), ("q", "m3/s, discharge"), ("y", "m, depth"), ("s", "m/m, gradient"), ("code", "1, class")], [("shape", "word rectangular"), ("width", "width"), ("n", "n"), ("discharge", "q"), ("depth", "y"), ("gradient", "s")],
          [("code", "varied-flow.class")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    for make in (walls, records, profiles, steep_ends, divided, lengths, fits, rough, crests, lids, counts, widths, classes):
        if not sys.argv[2:] or make.__name__ in sys.argv[2:]:
            make()
