"""Flow where laws change and pieces end: mpmath with 40 digits, no code in common with the library.

    python3 flow_limits.py FOLDER

writes into the folder of the hydraulics tables

    circle-depths-sand-far      depths by Colebrook-White of very small parts of the full discharge, near the crest, and where parts of
                                1/1024 and 1/4096 of the full discharge end
    circle-films-manning        films of a circle by Manning, to a part of 1e-12 of the diameter, from depth and from discharge
    laminar-films               depths of circles about the end of laminar flow, on smooth walls and on very rough ones
    friction-transition         velocity, gradient and roughness from laminar through the transition to turbulent flow
    critical-ledges             critical depths of a section that narrows at a ledge, where the most passes at the ledge itself
    depths-in-necks             normal depths in sections with a neck
    jump-pressurised            jumps from fast flow into a pressurised end of a pipe

Circles by their angle; depths by bisection; profiles by quadrature. Made with mpmath 1.3.
"""

import random
import sys
from functools import cache

from mpmath import inf, log10, mp, mpf, nstr, pi, quad, sqrt

from flow_relations import bisect, critical
from open_channel import G, Circle, distance
from own_tables import write

mp.dps = 40
PROGRAM = "flow_limits.py"


def digits(value, count=18):
    return nstr(mpf(value), count, min_fixed=-inf, max_fixed=inf) if abs(value) > mpf("1e-12") else nstr(mpf(value), count)


def turbulent_root(reynolds, relative):
    """1/sqrt(f) of Colebrook and White: bisection, since nothing is quicker than sure."""
    return bisect(lambda x: x + 2 * log10(relative / mpf("3.7") + mpf("2.51") * x / reynolds), mpf("0.2"), mpf(30), 130)


@cache
def turbulent_end(relative):
    return turbulent_root(mpf(4000), relative) ** -2


def factor(reynolds, relative):
    """f at any Reynolds number: below 4000 a straight line to there from the laminar law at 2000, or from earlier where it would be too
    steep: where the line of f Re^2 would no longer rise twentyfold the slope left, which is the convention of the library."""
    if reynolds >= 4000:
        return turbulent_root(reynolds, relative) ** -2
    end = turbulent_end(relative)
    begin = min(mpf(2000), sqrt(mpf("0.95") * 64 * 4000 / end))
    if reynolds <= begin:
        return 64 / reynolds
    return 64 / begin + (end - 64 / begin) * (reynolds - begin) / (4000 - begin)


def friction(folder):
    rows = []
    rng = random.Random(41)
    for relative in ("0", "0.0007", "0.011", "0.06", "0.19", "0.47", "0.83", "1"):
        for reynolds in ("61", "499", "501", "900", "1270", "1730", "1999", "2001", "2080", "2600", "3170", "3999", "4001", "5200", "31000", "8100000", "1.4e10"):
            rel, re = mpf(relative), mpf(reynolds)
            f = factor(re, rel)
            r, nu, g = mpf(rng.choice(("0.011", "0.37", "1.9"))), mpf(rng.choice(("1.14e-6", "1.7e-6", "3.1e-5"))), mpf(rng.choice(("9.80665", "9.78")))
            v = re * nu / (4 * r)
            s = f * v * v / (8 * g * r)
            k = rel * 4 * r
            laminar = f == 64 / re
            if k > mpf("0.5") or s > mpf("0.5"):
                continue
            # Of a laminar flow no roughness is known: the wall asked with, of a millimetre, if it keeps the flow laminar, else a smooth one.
            asked = mpf("0.001") if factor(re, min(mpf("0.001") / (4 * r), mpf(1))) == 64 / re else mpf(0)
            fitted = "" if relative == "0" and not laminar else digits(asked if laminar else k, 18)
            rows.append([relative, reynolds, digits(f), digits(r, 6), digits(nu, 6), digits(g, 8), digits(k, 18), digits(v), digits(s), fitted])
    write(folder, PROGRAM, "friction-transition", "C. F. Colebrook (1939), Turbulent flow in pipes: velocity, gradient and roughness at any Reynolds number, with the convention of the library below 4000",
          [("relative", "1, k/4R"), ("reynolds", "1, Reynolds number"), ("factor", "1, friction factor"), ("radius", "m, hydraulic radius"), ("viscosity", "m2/s, kinematic viscosity"),
           ("gravity", "m/s2, gravity"), ("k", "m, equivalent sand roughness"), ("velocity", "m/s, velocity"), ("gradient", "m/m, gradient"), ("fitted", "m, roughness from the velocity")],
          [("radius", "radius"), ("gravity", "gravity"), ("viscosity", "viscosity")],
          [("factor", "friction.darcy-factor", "input.reynolds = reynolds", "input.relative_roughness = relative"),
           ("velocity", "resistance.velocity", "input.roughness = k", "input.gradient = gradient"),
           ("gradient", "resistance.gradient", "input.roughness = k", "input.velocity = velocity", "tolerance = 4e-15 relative", "reason = some units of the last digit"),
           ("fitted", "resistance.fitted-roughness", "input.velocity = velocity", "input.gradient = gradient", "tolerance = 1e-9 relative", "reason = the roughness magnifies the last digit of the velocity")],
          rows, tolerance="2e-14 relative", reason="18 digits are given; some units of the last digit of a double")


def sand(d, s, k, nu):
    pipe = Circle(d)

    def flow(y):
        a, r = pipe.area(y), pipe.radius(y)
        scale = sqrt(8 * G * r * s)
        return -2 * a * scale * log10(k / (4 * r) / mpf("3.7") + mpf("2.51") * nu / (4 * r * scale))

    return pipe, flow


def crest(flow, d):
    step = mpf(10) ** -12 * d
    return bisect(lambda y: flow(y + step) - flow(y - step), d * mpf("0.93"), d * mpf("0.96"), 80)


def worth(flow, y, q, d):
    """What some units of the last digit of the discharge are worth in depth."""
    step = mpf(d) * mpf(10) ** -12
    slope = (flow(y + step) - flow(y - step)) / (2 * step)
    return nstr(2e-15 * max(y, mpf(q) / slope), 3)


def far_sand(folder):
    rows = []
    tiny = [("40", "0.3", "0.00003", "1.1e-6"), ("18", "0.05", "0.0003", "1.31e-6"), ("9", "0.9", "0.0001", "1.0e-6")]
    for d, s, k, nu in tiny:
        pipe, flow = sand(mpf(d), mpf(s), mpf(k), mpf(nu))
        full = flow(mpf(d) * (1 - mpf(10) ** -30))
        for share in ("1.7e-9", "2.3e-8", "1.1e-7", "4.1e-7", "8.3e-7", "9.52e-7", "9.55e-7", "1.3e-6", "2.2e-6", "7e-6", "0.000031", "0.00019", "0.0011", "0.009", "0.061", "0.12", "0.3", "0.49", "0.51"):
            q = float(full * mpf(share))
            y = bisect(lambda t: flow(t) - mpf(q), mpf(d) / 10**7, mpf(d) * mpf("0.9"), 130)
            if 4 * mpf(q) / pipe.perimeter(y) / mpf(nu) > 4100 and mpf(k) < mpf("1.2") * pipe.radius(y):
                rows.append([d, s, k, nu, repr(q), digits(y, 20), nstr(1e-14 * y, 3)])
    rng = random.Random(77)
    pipes = [("0.15", "0.004", "0.0000015", "1.31e-6"), ("0.3", "0.0009", "0.0015", "1.14e-6"), ("0.6", "0.03", "0.006", "1.0e-6"), ("1.2", "0.002", "0.03", "1.2e-6"), ("2.4", "0.0004", "0.0003", "1.31e-6"),
             ("0.225", "0.0005", "0.00003", "1.5e-6")]
    for d, s, k, nu in pipes:
        pipe, flow = sand(mpf(d), mpf(s), mpf(k), mpf(nu))
        full = flow(mpf(d) * (1 - mpf(10) ** -30))
        top = crest(flow, mpf(d))
        most = flow(top)
        parts = [1 - mpf(10) ** -mpf(e) for e in ("1.5", "2", "2.5", "3", "3.5", "4", "5", "6", "7")]
        shares = [most * p for p in parts]
        # Just inside the ends of parts of 1/1024 below the full discharge, and of 1/4096 above it.
        for _ in range(18):
            i = rng.randrange(150, 1024)
            shares.append(full * (i + rng.choice((mpf("0.003"), mpf("0.997")))) / 1024)
        for _ in range(12):
            i = rng.randrange(4097, 4096 + 290)
            shares.append(full * (i + rng.choice((mpf("0.003"), mpf("0.997")))) / 4096)
        for share in shares:
            q = float(share)
            if mpf(q) >= most * (1 - mpf(10) ** -8):
                continue
            y = bisect(lambda t: flow(t) - mpf(q), mpf(d) / 10**5, top, 130)
            if 4 * mpf(q) / pipe.perimeter(y) / mpf(nu) > 4100 and mpf(k) < mpf("1.2") * pipe.radius(y):
                rows.append([d, s, k, nu, repr(q), digits(y, 20), worth(flow, y, q, d)])
    write(folder, PROGRAM, "circle-depths-sand-far", "C. F. Colebrook (1939), Turbulent flow in pipes: depths of very small parts of the full discharge, near the crest, and beside whole parts of the full discharge",
          [("diameter", "m, bore"), ("gradient", "m/m, fall"), ("roughness", "m, equivalent sand roughness"), ("viscosity", "m2/s, kinematic viscosity"), ("discharge", "m3/s, discharge"), ("depth", "m, lower depth"),
           ("again", "m, the same from a record"), ("tol", "m, tolerance")],
          [(c, c) for c in ("diameter", "gradient", "roughness", "viscosity", "discharge")],
          [("depth", "flow.normal-depth"), ("again", "flow.bulk-normal-depth")], [r[:6] + [r[5], r[6]] for r in rows], tolerance="column tol",
          reason="some units of the last digit of a double, of the discharge as of the depth; 1e-14 of the depth where the library says that its series leave out so much")


def films(folder):
    rows = []
    with mp.workdps(80):
        for d, s, n in (("0.3", "0.004", "0.012"), ("1.7", "0.021", "0.015")):
            pipe = Circle(mpf(d))
            flow = lambda y: pipe.area(y) * pipe.radius(y) ** (mpf(2) / 3) * sqrt(mpf(s)) / mpf(n)
            full = flow(mpf(d) * (1 - mpf(10) ** -60))
            for part in ("1e-12", "3.3e-10", "4.7e-8", "9.53e-7", "9.54e-7", "2.1e-6", "0.00037"):
                y = float(mpf(part) * mpf(d))
                q = float(flow(mpf(y)))
                back = bisect(lambda t: flow(t) - mpf(q), mpf(y) / 2, mpf(y) * 2, 180)
                rows.append([d, s, n, repr(y), digits(flow(mpf(y)), 20) if q > 1e-11 else nstr(flow(mpf(y)), 20), repr(q), digits(back, 20) if y > 1e-11 else nstr(back, 20)])
            for exponent in ("-43.9", "-44.1", "-48", "-61", "-88"):
                q = float(full * mpf(2) ** mpf(exponent))
                back = bisect(lambda t: flow(t) - mpf(q), mpf(d) * mpf(10) ** -16, mpf(d) / 100, 250)
                rows.append([d, s, n, "", "", repr(q), digits(back, 20) if back > mpf("1e-11") else nstr(back, 20)])
    write(folder, PROGRAM, "circle-films-manning", "Ven Te Chow (1959), Open-Channel Hydraulics, chapter 6: films of a circle by Manning",
          [("diameter", "m, bore"), ("gradient", "m/m, fall"), ("n", "s/m^(1/3), Manning's n"), ("film", "m, depth"), ("discharge", "m3/s, its discharge"), ("record", "m3/s, the same from a record"), ("q", "m3/s, a discharge"),
           ("depth", "m, its depth"), ("again", "m, the same from a record")],
          [(c, c) for c in ("diameter", "gradient", "n")],
          [("discharge", "flow.discharge", "input.depth = film"), ("record", "flow.bulk-discharge", "input.depth = film"), ("depth", "flow.normal-depth", "input.discharge = q"),
           ("again", "flow.bulk-normal-depth", "input.discharge = q")],
          [[a, b, c, y, x, x, q, t, t] for a, b, c, y, x, q, t in rows], tolerance="4e-15 relative", reason="some units of the last digit of a double")


def ledges(folder):
    """Below the ledge a rectangle, above it a narrower one: areas are sums of rectangles, the most at an energy is searched on a fine grid
    and then by thirds, so that no condition for a critical depth is used."""
    rows = []
    wide, narrow, ledge = mpf("1.8"), mpf("0.5"), mpf("0.6")

    def area(y):
        return wide * min(y, ledge) + narrow * max(y - ledge, 0)

    def best(energy, top):
        carried = lambda y: area(y) * sqrt(2 * G * max(energy - y, mpf(0)))
        high = min(energy, top)
        grid = sorted([high * i / 2000 for i in range(2001)] + ([ledge] if ledge < high else []))
        at = max(grid, key=carried)
        if abs(at - ledge) < mpf("0.001") and carried(ledge) >= carried(ledge - mpf("1e-9")) and carried(ledge) >= carried(ledge + mpf("1e-9")):
            return ledge, carried(ledge)
        a, b = at - high / 2000, at + high / 2000
        for _ in range(170):
            c, e = a + (b - a) / 3, b - (b - a) / 3
            a, b = (c, b) if carried(c) < carried(e) else (a, e)
        return (a + b) / 2, carried((a + b) / 2)

    for shape, top in (("open-tabulated", mpf(9)), ("tabulated", mpf("1.2"))):
        levels, widths = ("0 0.6 0.6 9", "1.8 1.8 0.5 0.5") if shape.startswith("open") else ("0 0.6 0.6 1.2", "1.8 1.8 0.5 0.5")
        for energy in ("0.31", "0.85", "0.899", "0.901", "1.2", "1.6") + (("2.2", "3.7", "6.1") if shape.startswith("open") else ()):
            y, q = best(mpf(energy), top)
            rows.append([shape, levels, widths, energy, digits(y, 18), digits(q, 18), "", "", ""])
        for q in ("0.7", "2.5", "2.7", "3.9", "4.9", "5.05", "6.3"):
            flow = mpf(q)
            # Critical: the wave on the flow stands. Below the ledge by the wide surface, above it by the narrow one; in between it is the ledge.
            low = bisect(lambda y: flow**2 * wide - G * (wide * y) ** 3, mpf("0.001"), 5, 150)
            high = bisect(lambda y: flow**2 * narrow - G * (wide * ledge + narrow * (y - ledge)) ** 3, mpf("-1"), 9, 150)
            y = low if low < ledge else high if high > ledge else ledge
            if y < top:
                e = y + flow**2 / (2 * G * area(y) ** 2)
                rows.append([shape, levels, widths, "", "", "", q, digits(y, 18), digits(e, 18)])
    write(folder, PROGRAM, "critical-ledges", "Ven Te Chow (1959), Open-Channel Hydraulics, chapter 4: critical flow in a section that narrows at a ledge: the most at an energy by search, no condition for it",
          [("shape", "text, the section"), ("levels", "m, levels"), ("widths", "m, widths"), ("energy", "m, specific energy"), ("at", "m, depth at which most passes"), ("most", "m3/s, the most"), ("discharge", "m3/s, discharge"),
           ("critical", "m, critical depth"), ("least", "m, its energy, the least")],
          [("shape", "text shape"), ("levels", "text levels"), ("widths", "text widths")],
          [("at", "flow.critical-depth-for-energy", "input.energy = energy"), ("most", "flow.discharge-for-energy", "input.energy = energy"), ("critical", "flow.critical-depth", "input.discharge = discharge"),
           ("least", "energy.minimum", "input.discharge = discharge")],
          rows, tolerance="1e-11 relative", reason="18 digits are given; a most is flat, the depth of it good to some 1e-12")


def necks(folder):
    """Closed sections of straight pieces with a neck: areas and perimeters are sums; the first crossing from below, then bisection."""
    rows = []
    for levels, widths, s, n in (("0 0.3 0.5 0.8 1.2", "0.6 1.2 0.4 1 0.2", "0.004", "0.013"), ("0 0.45 0.5 1.1 1.3", "0.3 0.9 0.35 0.8 0.3", "0.0009", "0.016"), ("0 0.2 0.7 0.9", "1.1 1.1 0.3 0.25", "0.02", "0.012")):
        ys, ws = [mpf(v) for v in levels.split()], [mpf(v) for v in widths.split()]

        def flow(y):
            area, wet = mpf(0), ws[0]
            for (a, u), (b, v) in zip(zip(ys, ws), list(zip(ys, ws))[1:]):
                top = min(y, b)
                if top <= a:
                    break
                w = u + (v - u) * (top - a) / (b - a)
                area += (u + w) / 2 * (top - a)
                wet += 2 * sqrt((top - a) ** 2 + ((w - u) / 2) ** 2)
            return area * (area / wet) ** (mpf(2) / 3) * sqrt(mpf(s)) / mpf(n)

        grid = [ys[-1] * i / 1500 for i in range(1, 1500)]
        flows = [flow(y) for y in grid]
        most = max(flows)
        for part in ("1e-7", "0.0004", "0.007", "0.03", "0.09", "0.17", "0.26", "0.33", "0.41", "0.47", "0.53", "0.6", "0.68", "0.76", "0.85", "0.93", "0.985"):
            q = float(most * mpf(part))
            i = next(i for i, f in enumerate(flows) if f > q)
            y = bisect(lambda t: flow(t) - mpf(q), grid[i - 1] if i else mpf(0), grid[i], 120)
            step = mpf(10) ** -13
            slope = (flow(y + step) - flow(y - step)) / (2 * step)
            rows.append([levels, widths, s, n, repr(q), digits(y, 18), digits(y, 18), nstr(1e-12 * max(y, mpf(q) / slope), 3)])
    write(folder, PROGRAM, "depths-in-necks", "Ven Te Chow (1959), Open-Channel Hydraulics, chapter 6: normal depths in closed sections of straight pieces with necks",
          [("levels", "m, levels"), ("widths", "m, widths"), ("gradient", "m/m, fall"), ("n", "s/m^(1/3), Manning's n"), ("discharge", "m3/s, discharge"), ("depth", "m, lowest depth"), ("again", "m, the same from a record"), ("tol", "m, tolerance")],
          [("shape", "word tabulated"), ("levels", "text levels"), ("widths", "text widths"), ("gradient", "gradient"), ("n", "n"), ("discharge", "discharge")],
          [("depth", "flow.normal-depth"), ("again", "flow.bulk-normal-depth")], rows, tolerance="column tol", reason="what 1e-12 of the discharge, which the library promises, is worth in depth")


def jumps(folder):
    """Fast flow from the inlet by quadrature; the pressure line from the outlet is straight; equal momentum where they meet."""
    rows = []
    for d, s0, n, q, head, tail, length in (("0.6", "0.05", "0.013", "0.5", "0.22", "2.4", "60"), ("0.6", "0.05", "0.013", "0.5", "0.34", "2.9", "75"), ("1.2", "0.03", "0.014", "2.6", "0.4", "2.84", "110"),
                                            ("0.9", "0", "0.012", "1.4", "0.3", "1.5", "18"), ("0.45", "0.08", "0.011", "0.3", "0.14", "2.86", "49")):
        pipe, flow, bore = Circle(mpf(d)), mpf(q), mpf(d)
        full, slope = pi * bore**2 / 4, mpf(s0)
        friction_full = (flow * mpf(n) / full) ** 2 / (bore / 4) ** (mpf(4) / 3)

        def pressed(height):
            return flow**2 / (G * full) + full * (height - bore / 2)

        def momentum(y):
            return flow**2 / (G * pipe.area(y)) + quad(lambda t: pipe.width(t) * (y - t), [0, y / 2, y])

        yc = critical(pipe, flow)
        normal = bisect(lambda y: slope - (flow * mpf(n) / pipe.area(y)) ** 2 / pipe.radius(y) ** (mpf(4) / 3), bore / 50, bore * mpf("0.9"), 120) if slope > 0 else inf
        start = mpf(head)
        rises = start < normal
        end = min(normal, yc) if rises else normal
        at = lambda y: distance(pipe, flow, slope, mpf(n), min(start, y), max(start, y), bore)
        level = lambda x: mpf(tail) - (slope - friction_full) * (mpf(length) - x)
        near = start + (end - start) * (1 - mpf(10) ** -9)
        y = bisect(lambda t: momentum(t) - pressed(level(at(t))), start + (end - start) * mpf(10) ** -9, near, 70)
        x = at(y)
        assert level(x) > bore and 0 < x < mpf(length), (d, q, level(x), x)
        rows.append([d, s0, n, q, head, tail, length, digits(x, 15), digits(y, 15)])
    write(folder, PROGRAM, "jump-pressurised", "Ven Te Chow (1959), Open-Channel Hydraulics, chapters 3 and 9: jumps from fast flow into a pressurised end of a pipe: quadrature from the inlet, a straight pressure line from the outlet, equal momentum",
          [("diameter", "m, bore"), ("gradient", "m/m, fall"), ("n", "s/m^(1/3), Manning's n"), ("discharge", "m3/s, discharge"), ("inlet_depth", "m, fast depth at the inlet"), ("outlet_depth", "m, level at the outlet above its invert"),
           ("length", "m, length"), ("place", "m, of the jump from the inlet"), ("upstream_depth", "m, depth before it")],
          [(c, c) for c in ("diameter", "gradient", "n", "discharge", "inlet_depth", "outlet_depth", "length")],
          [("place", "varied-flow.jump-place"), ("upstream_depth", "varied-flow.depth-before-jump")], rows, tolerance="1e-8 relative", reason="the stated error of a depth")


def laminar(folder):
    """From a Reynolds number that laminar flow would have follows the radius, from a filling the bore; then the velocity by the law."""
    rows = []
    for relative in ("0", "0.0007", "0.02", "0.0249", "0.026", "0.06", "0.19", "0.47"):
        for reynolds in ("0.0004", "23", "470", "620", "990", "1310", "1620", "1990", "1997.5", "1999", "2000.4", "2040", "2090", "2600"):
            for filling, s, nu in (("0.0009", "0.00021", "0.000011"), ("0.07", "0.0031", "1.31e-6"), ("0.31", "0.00043", "1.6e-6"), ("0.497", "0.017", "0.0000023")):
                slope, viscosity, part = mpf(s), mpf(nu), mpf(filling)
                unit = Circle(mpf(1))
                r = (mpf(reynolds) * viscosity**2 / (2 * G * slope)) ** (mpf(1) / 3)
                # Sizes of few digits; all else follows from them.
                d = mpf(nstr(r / (unit.area(part) / unit.perimeter(part)), 8))
                y = d * part
                pipe = Circle(d)
                r = pipe.area(y) / pipe.perimeter(y)
                k = mpf(nstr(mpf(relative) * 4 * r, 8))
                if not (mpf("0.001") < d < 40) or k > mpf("0.5"):
                    continue
                # ln of v^2 f / (8 g R S), which rises with the velocity.
                v = mp.e ** bisect(lambda u: 2 * u + mp.log(factor(4 * r * mp.e**u / viscosity, k / (4 * r)) / (8 * G * r * slope)), mpf(-40), mpf(4), 150)
                rows.append([digits(d, 8), s, digits(k, 8), nu, digits(pipe.area(y) * v, 20), digits(y, 20), digits(4 * r * v / viscosity, 6)])
    write(folder, PROGRAM, "laminar-films", "G. Hagen, J. Poiseuille, C. F. Colebrook: depths of circles about the end of laminar flow, with the convention of the library below a Reynolds number of 4000",
          [("diameter", "m, bore"), ("gradient", "m/m, fall"), ("roughness", "m, equivalent sand roughness"), ("viscosity", "m2/s, kinematic viscosity"), ("discharge", "m3/s, discharge"), ("depth", "m, depth"), ("reynolds", "1, Reynolds number")],
          [(c, c) for c in ("diameter", "gradient", "roughness", "viscosity", "discharge")],
          [("depth", "flow.normal-depth")], rows, tolerance="2e-14 relative", reason="20 digits are given; some units of the last digit of a double, of the discharge as of the depth")


if __name__ == "__main__":
    for make in (friction, far_sand, films, laminar, ledges, necks, jumps):
        if not sys.argv[2:] or make.__name__ in sys.argv[2:]:
            make(sys.argv[1])
