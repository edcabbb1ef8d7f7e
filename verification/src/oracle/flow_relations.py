"""Independent computation of chains of reaches, classes of profiles and small relations of flow: Python with mpmath, no code in
common with the library.

    python3 flow_relations.py NAME > NAME.csv

writes one of the tables named in TABLES below. Sections and the quadrature of varied flow are those of open_channel.py.
"""

import sys

from mpmath import inf, log10, mp, mpf, nstr, pi, quad, sqrt

from open_channel import G, Circle, Silted, Trapezoid, compound, distance, friction_slope

mp.dps = 30


def show(*cells):
    print(",".join(c if isinstance(c, str) else nstr(mpf(c), 15) for c in cells))


def bisect(f, low, high, steps=160):
    a, b = mpf(low), mpf(high)
    sign = f(a) > 0
    for _ in range(steps):
        m = (a + b) / 2
        if (f(m) > 0) == sign:
            a = m
        else:
            b = m
    return (a + b) / 2


def section_of(shape, size):
    return Circle(mpf(size)) if shape == "circular" else Trapezoid(mpf(size), mpf(0))


def height(section):
    return getattr(section, "d", inf)


def critical(section, q):
    top = height(section) * (1 - mpf(10) ** -12) if height(section) < inf else mpf(100)
    return bisect(lambda y: q**2 * section.width(y) - G * section.area(y) ** 3, mpf(10) ** -9, top)


def velocity(section, q, y):
    return q / section.area(min(y, height(section)))


def froude(section, q, y):
    return mpf(0) if y >= height(section) else q * sqrt(section.width(y) / (G * section.area(y) ** 3))


def energy(section, q, y):
    return y + velocity(section, q, y) ** 2 / (2 * G)


def up_the_reach(section, q, s0, n, start, length):
    """Slow depth at the upper end from that at the lower end; pressure is a straight line."""
    d = height(section)
    if start >= d:
        slope = s0 - friction_slope(section, q, n, start, d)
        if start - slope * length >= d:
            return start - slope * length
    rest = s0 - friction_slope(section, q, n, start, d)
    yc = critical(section, q)
    if rest > 0:  # falls upstream towards normal depth
        floor = yc
        if s0 > 0:
            normal = bisect(lambda y: s0 - friction_slope(section, q, n, y, d), yc / 50, min(start, d) * (1 - mpf(10) ** -15))
            floor = max(yc, normal * (1 + mpf(10) ** -18))
        low, high = floor, start
    else:
        low, high = start, start
        while True:
            high = high * mpf("1.02")
            if distance(section, q, s0, n, start, high, d) > length:
                break
    return bisect(lambda y: distance(section, q, s0, n, min(y, start), max(y, start), d) - length, low * (1 + mpf(10) ** -15), high, 55)


def down_the_reach(section, q, s0, n, start, length):
    """Fast depth at the lower end from that at the upper end."""
    yc = critical(section, q)
    rest = s0 - friction_slope(section, q, n, start, height(section))
    limit = bisect(lambda y: s0 - friction_slope(section, q, n, y, inf), start / 20, yc * 3)
    far = limit * (1 + (mpf(10) ** -12 if rest > 0 else -(mpf(10) ** -12)))
    return bisect(lambda y: distance(section, q, s0, n, min(y, start), max(y, start), inf) - length, start, far, 60)


def chain():
    """Energy level and depth carried from the control through every reach and every step between two of them."""
    print("shape,sizes,lengths,gradients,roughnesses,drops,losses,discharge,outlet_depth,inlet_depth,outlet_invert,inlet,"
          "level,energy_level,velocity,froude,friction_slope,outlet,outlet_level,pressurised,pressurised_within,distance,depth_there")
    rows = (
        # an inverted siphon: down, level, up; full throughout; the loss of the bends on the velocity before them
        ("circular", "0.3 0.3 0.3", "12 40 15", "0.15 0 -0.11", "0.013 0.013 0.015", "0 0 0", "0.25 0.3 0", "0.07", "0.9", "0", "101.3", "33.7"),
        # a siphon of two bores with a drop between them
        ("circular", "0.45 0.3", "30 22", "0.02 -0.015", "0.012 0.014", "0.12 0", "0.4 0", "0.09", "1.1", "0", "7.25", "17.1"),
        # slow flow in rectangles with a drop, a step up and losses
        ("rectangular", "2 1.6 2.4", "150 90 60", "0.0008 0.001 0.0005", "0.014 0.013 0.015", "0.05 -0.04 0", "0.3 0.2 0", "1.9", "1.2", "0", "3.5", "285"),
        # slow flow drawn down at a free outfall
        ("rectangular", "1.5 1.8", "120 80", "0.001 0.0007", "0.015 0.013", "0.03 0", "0.5 0", "1.2", "0", "0", "-2.5", "196.8"),
        # fast flow through a drop and a loss
        ("rectangular", "1.2 1", "20 15", "0.03 0.025", "0.014 0.013", "0.1 0", "0.15 0", "0.8", "0", "0.2", "12", "19"),
        # partly under pressure
        ("circular", "0.6", "420", "0.003", "0.013", "0", "0", "0.13", "1.5", "0", "5", "415.8"),
    )
    for shape, sizes, lengths, gradients, ns, drops, losses, q, outlet, inlet, datum, place in rows:
        flow = mpf(q)
        sections = [section_of(shape, s) for s in sizes.split()]
        L, S, N, D, K = ([mpf(x) for x in t.split()] for t in (lengths, gradients, ns, drops, losses))
        last = len(sections) - 1
        upper, lower = [None] * (last + 1), [None] * (last + 1)
        if mpf(inlet) > 0:
            y = mpf(inlet)
            for i, section in enumerate(sections):
                upper[i] = y
                lower[i] = down_the_reach(section, flow, S[i], N[i], y, L[i])
                if i < last:
                    head = energy(section, flow, lower[i]) + D[i] - K[i] * velocity(section, flow, lower[i]) ** 2 / (2 * G)
                    nxt = sections[i + 1]
                    yc = critical(nxt, flow)
                    y = bisect(lambda t: energy(nxt, flow, t) - head, yc / 30, yc)
        else:
            for i in range(last, -1, -1):
                section = sections[i]
                yc = critical(section, flow)
                if i == last:
                    lower[i] = max(mpf(outlet), yc)
                else:
                    head = energy(sections[i + 1], flow, upper[i + 1]) - D[i]
                    lower[i] = bisect(lambda t: energy(section, flow, t) - K[i] * velocity(section, flow, t) ** 2 / (2 * G) - head, yc, 50)
                upper[i] = up_the_reach(section, flow, S[i], N[i], lower[i], L[i])
        fall = sum(l * s for l, s in zip(L, S)) + sum(D[:-1])
        invert = mpf(datum) + fall
        first = sections[0]
        pressed, steps = mpf(0), mpf(0)
        for i, section in enumerate(sections):
            d = height(section)
            if lower[i] > d:
                slope = S[i] - friction_slope(section, flow, N[i], lower[i], d)
                pressed += L[i] if upper[i] >= d else (lower[i] - d) / slope
                steps += 0 if upper[i] >= d else L[i] / 200
        # the depth at a place, which is a station or under pressure, by the same way from the lower end
        x, start = mpf(place), mpf(0)
        for i, section in enumerate(sections):
            if x <= start + L[i]:
                there = (down_the_reach(section, flow, S[i], N[i], upper[i], x - start) if mpf(inlet) > 0
                         else up_the_reach(section, flow, S[i], N[i], lower[i], start + L[i] - x))
                break
            start += L[i]
        show(shape, sizes, lengths, gradients, ns, drops, losses, q, outlet, inlet, datum, upper[0], invert + upper[0],
             invert + energy(first, flow, upper[0]), velocity(first, flow, upper[0]), froude(first, flow, upper[0]),
             friction_slope(first, flow, N[0], upper[0], height(first)), lower[last], mpf(datum) + lower[last], pressed,
             steps + mpf(10) ** -9, place, there)


def classes():
    """Letters M S C H A as 1 to 5, zones 1 to 3; from normal and critical depth, both found by bisection."""
    print("shape,size,gradient,n,discharge,depth,class")
    cases = []
    rect = Trapezoid(mpf(2), mpf(0))
    yc = critical(rect, mpf(2))
    for s, depths in (("0.001", "0.2 0.5 0.68 0.9 2"), ("0.02", "0.1 0.25 0.32 0.41 0.5 3"), ("0", "0.1 0.44 0.5 2"), ("-0.003", "0.2 0.46 0.48 5")):
        for y in depths.split():
            cases.append(("rectangular", "2", s, "0.013", "2", y))
    steep = friction_slope(rect, mpf(2), mpf("0.013"), yc, inf)
    for factor in ("0.6", "0.97", "1.04", "2"):
        cases.append(("rectangular", "2", nstr(steep, 17), "0.013", "2", nstr(yc * mpf(factor), 15)))
    for y in ("0.1", "0.2", "0.4", "0.58"):
        cases.append(("circular", "0.6", "0.003", "0.013", "0.15", y))
        cases.append(("circular", "0.6", "0.03", "0.013", "0.15", y))
    normal = bisect(lambda y: mpf("0.001") - friction_slope(rect, mpf(2), mpf("0.013"), y, inf), "0.1", 3)
    cases.append(("rectangular", "2", "0.001", "0.013", "2", nstr(normal, 17)))
    for shape, size, s0, n, q, y in cases:
        section, flow, slope, depth = section_of(shape, size), mpf(q), mpf(s0), mpf(y)
        turning = critical(section, flow)
        fast = depth < turning
        if slope <= 0:
            code = (50 if slope < 0 else 40) + (3 if fast else 2)
        else:
            top = height(section) if height(section) < inf else mpf(50)
            uniform = bisect(lambda t: slope - friction_slope(section, flow, mpf(n), t, top), "0.001", top * mpf("0.93"))
            if abs(depth / uniform - 1) < mpf(10) ** -12:
                code = 0
            elif abs(uniform / turning - 1) < mpf(10) ** -10:
                code = 30 + (1 if depth > uniform else 3)
            else:
                letter = 10 if uniform > turning else 20
                code = letter + (1 if depth > max(uniform, turning) else 3 if depth < min(uniform, turning) else 2)
        show(shape, size, s0, n, q, y, str(code))


def backwater():
    """Length from a raised depth to the end of the backwater: normal depth and a rise if mild, the depth behind the jump if steep."""
    print("diameter,gradient,n,discharge,raised,rise,length,end")
    for d, s0, n, q, raised, rise in (
        ("0.6", "0.02", "0.013", "0.15", "0.55", "0.01"), ("0.6", "0.02", "0.013", "0.15", "1.4", "0.01"),
        ("0.9", "0.015", "0.013", "0.3", "0.8", "0.05"), ("0.45", "0.002", "0.013", "0.05", "0.4", "0.03"),
        ("0.45", "0.002", "0.013", "0.05", "0.7", "0.015"),
    ):
        section, flow, s = Circle(mpf(d)), mpf(q), mpf(s0)
        yc = critical(section, flow)
        normal = bisect(lambda y: s - friction_slope(section, flow, mpf(n), y, section.d), mpf(d) / 100, mpf(d) * mpf("0.9"))
        if normal > yc:
            end = normal + mpf(rise)
        else:
            def momentum(y):
                return flow**2 / (G * section.area(y)) + quad(lambda t: section.width(t) * (y - t), [0, y / 2, y])
            end = bisect(lambda y: momentum(y) - momentum(normal), yc, section.d * mpf("0.999999"), 70)
        show(d, s0, n, q, raised, rise, distance(section, flow, s, mpf(n), end, mpf(raised), section.d), end)



def gradients():
    print("kind,value,length,gradient")
    for kind, value, length in (("ratio", "1", "150"), ("ratio", "0.37", "48.1"), ("percent", "0.45", "1"), ("percent", "-1.3", "1"), ("per-mille", "2.7", "1")):
        v = mpf(value) / mpf(length)
        show(kind, value, length, v / {"ratio": 1, "percent": 100, "per-mille": 1000}[kind])


def gentlest():
    """Laws without a roughest wall: the slowest velocity is 0. A channel fed by still water without loss: critical at a steep inlet."""
    print("n,chezy,width,gradient,head,slowest,depth")
    for n, c, b, s, h in (("0.013", "55", "1.5", "0.05", "0.6"), ("0.02", "40", "0.8", "0.09", "1.1")):
        show(n, c, b, s, h, "0", mpf(h) * 2 / 3)


def coefficients(wanted):
    """Velocity by a coefficient of Strickler, or by one of Chezy in feet."""
    print("coefficient,radius,gradient,velocity")
    for law, c, r, s in (("strickler", "77", "0.13", "0.0042"), ("strickler", "45", "0.9", "0.0003"), ("feet", "120", "0.21", "0.0017"), ("feet", "65", "1.1", "0.0006")):
        radius, slope = mpf(r), mpf(s)
        v = mpf(c) * radius ** (mpf(2) / 3) * sqrt(slope) if law == "strickler" else mpf(c) * sqrt(mpf("0.3048")) * sqrt(radius * slope)
        if law == wanted:
            show(c, r, s, v)


def turbulent(reynolds, relative):
    f = lambda x: x + 2 * log10(relative / mpf("3.7") + mpf("2.51") * x / reynolds)
    return bisect(f, mpf(10) ** -6, 60) ** -2


def friction():
    """Friction factor by the law of the turbulent pipe at any Reynolds number, and of the laminar one."""
    print("reynolds,relative_roughness,factor,laminar")
    for re, k in (("6", "0.01"), ("15", "0.3"), ("30", "0"), ("39", "0.6"), ("3000", "0.002"), ("52000", "0.0004"), ("3.3e6", "0.03"), ("4e9", "0.9"), ("7e11", "0.0001"), ("2e14", "0.02")):
        show(re, k, turbulent(mpf(re), mpf(k)), 64 / mpf(re))


def pipe_factor(reynolds, relative):
    if reynolds >= 4000:
        return turbulent(reynolds, relative)
    end = turbulent(mpf(4000), relative)
    begin = min(mpf(2000), sqrt(mpf("0.95") * 64 * 4000 / end))
    return 64 / reynolds if reynolds <= begin else 64 / begin + (end - 64 / begin) * (reynolds - begin) / (4000 - begin)


def law_velocity(r, s, k, nu):
    return bisect(lambda v: v**2 * pipe_factor(4 * r * v / nu, min(k / (4 * r), 1)) - 8 * G * r * s, mpf(10) ** -7, 60, 110)


def fits():
    """A roughness, its velocity, and the velocities of the smoothest and the roughest wall; laminar walls are told by none."""
    print("roughness,viscosity,radius,gradient,velocity,fastest,slowest")
    for k, nu, r, s in (("0.0003", "1.14e-6", "0.11", "0.003"), ("0.006", "1.14e-6", "0.4", "0.0009"), ("0.004", "1.3e-5", "0.03", "0.0011"),
                        ("0.03", "1.3e-5", "0.03", "0.0009"), ("0.012", "3e-5", "0.035", "0.004"), ("0.002", "2e-6", "0.012", "0.0008")):
        kk, v, radius, slope = mpf(k), mpf(nu), mpf(r), mpf(s)
        show(k, nu, r, s, law_velocity(radius, slope, kk, v), law_velocity(radius, slope, mpf(0), v), law_velocity(radius, slope, 4 * radius, v))


def upper_depths(law):
    """Both depths of a discharge between full bore and the greatest, in circles by one law, and their count."""
    print(f"diameter,gradient,{law},discharge,count,lower,upper,fullness")
    nu = mpf("1.14e-6")
    for d, s, n, k, share in (("0.45", "0.004", "0.013", "0", "0.3"), ("0.9", "0.001", "0.015", "0", "0.85"), ("0.6", "0.002", "0", "0.0015", "0.4"),
                              ("1.5", "0.0008", "0", "0.0003", "0.9"), ("0.3", "0.01", "0", "0.003", "0.1")):
        if (n == "0") == (law == "n"):
            continue
        pipe, slope = Circle(mpf(d)), mpf(s)
        def flow(y):
            r = pipe.radius(y) if y < pipe.d else pipe.d / 4
            a = pipe.area(y) if y < pipe.d else pi * pipe.d**2 / 4
            if n != "0":
                v = r ** (mpf(2) / 3) * sqrt(slope) / mpf(n)
            else:  # turbulent throughout: explicit in the gradient
                scale = sqrt(8 * G * r * slope)
                v = -2 * scale * log10(mpf(k) / (4 * r) / mpf("3.7") + mpf("2.51") * nu / (4 * r * scale))
            return a * v
        low, high = pipe.d * mpf("0.9"), pipe.d * mpf("0.98")
        golden = (sqrt(mpf(5)) - 1) / 2
        for _ in range(70):
            a, b = high - golden * (high - low), low + golden * (high - low)
            low, high = (a, high) if flow(a) < flow(b) else (low, b)
        crest = (low + high) / 2
        q = flow(pipe.d) + mpf(share) * (flow(crest) - flow(pipe.d))
        q = mpf(nstr(q, 15))
        lower = bisect(lambda y: flow(y) - q, crest / 2, crest, 70)
        upper = bisect(lambda y: flow(y) - q, crest, pipe.d, 70)
        show(d, s, n if law == "n" else k, q, "2", lower, upper, lower / pipe.d)
    if law != "n":
        return
    pipe = Circle(mpf("0.45"))
    q = mpf("0.05")
    lower = bisect(lambda y: pipe.area(y) * pipe.radius(y) ** (mpf(2) / 3) * sqrt(mpf("0.004")) / mpf("0.013") - q, "0.01", "0.4")
    show("0.45", "0.004", "0.013", q, "1", lower, lower, lower / pipe.d)


def cleansing():
    """Least discharge of a conduit that has a velocity or a shear stress: the lowest depth that has it."""
    print("diameter,gradient,n,velocity,by_velocity,stress,by_stress,depth,critical_velocity")
    for d, s, n, v, stress, depth in (("0.3", "0.004", "0.013", "0.6", "1.3", "0.11"), ("0.9", "0.001", "0.015", "0.7", "1.9", "0.4"), ("0.45", "0.02", "0.011", "2.1", "20", "0.3")):
        pipe, slope = Circle(mpf(d)), mpf(s)
        u = lambda y: pipe.radius(y) ** (mpf(2) / 3) * sqrt(slope) / mpf(n)
        one = bisect(lambda y: u(y) - mpf(v), "0.001", pipe.d * mpf("0.81"))
        two = bisect(lambda y: 1000 * G * pipe.radius(y) * slope - mpf(stress), "0.001", pipe.d * mpf("0.81"))
        y = mpf(depth)
        show(d, s, n, v, u(one) * pipe.area(one), stress, u(two) * pipe.area(two), depth, sqrt(G * pipe.area(y) / pipe.width(y)))


def momenta():
    """Both depths of a momentum function Q^2/gA + A z, and the conjugate of a depth, also where that is above the soffit."""
    print("shape,size,discharge,momentum,lower,upper,depth,conjugate")
    for shape, size, q, share, depth in (("circular", "0.6", "0.12", "1.1", "0.15"), ("circular", "0.6", "0.25", "1.005", "0.14"), ("rectangular", "1.5", "1.1", "1.4", "0.2"), ("circular", "0.9", "0.3", "1.2", "0.2")):
        section, flow = section_of(shape, size), mpf(q)
        top = height(section)
        def momentum(y):
            return flow**2 / (G * section.area(y)) + quad(lambda t: section.width(t) * (y - t), [0, y / 2, y])
        yc = critical(section, flow)
        m = mpf(nstr(momentum(yc) * mpf(share), 15))
        low = bisect(lambda y: momentum(y) - m, yc / 20, yc, 80)
        high = bisect(lambda y: momentum(y) - m, yc, min(top, 20) * (1 - mpf(10) ** -15), 80)
        y = mpf(depth)
        at_top = momentum(top * (1 - mpf(10) ** -25)) if top < inf else inf
        other = (bisect(lambda t: momentum(t) - momentum(y), yc, min(top, 20) * (1 - mpf(10) ** -15), 80) if momentum(y) < at_top
                 else top + (momentum(y) - at_top) / (pi * top**2 / 4))
        show(shape, size, q, m, low, high, depth, other)


def banded():
    """A bed and walls of two roughnesses in a circle: perimeters of the parts by the circle's angle."""
    print("diameter,bed,method,bed_n,wall_n,change,upper_n,gradient,depth,n,discharge,bed_shear,mean_shear")
    for d, bed, change in (("0.9", "0.15", "0.4"), ("0.6", "0", "0.25"), ("1.2", "0.3", "0.2")):
        for method in ("HORTON_EINSTEIN", "PAVLOVSKIJ", "LOTTER"):
            for depth in ("0.07", "0.22", "0.39"):
                pipe, level = Circle(mpf(d)), mpf(bed)
                section = Silted(pipe, level) if level else pipe
                y, ns = mpf(depth), (mpf("0.027"), mpf("0.012"), mpf("0.018"))
                width = section.width(mpf(0)) if level else mpf(0)
                walls = section.perimeter(y) - width
                below = min(max(mpf(change) - level, 0), y)
                lower = (section.perimeter(below) - width) if below > 0 else mpf(0)
                parts = [(ns[0], width), (ns[1], lower), (ns[2], walls - lower)]
                n = compound(method, [p for p in parts if p[1] > 0])
                s0 = "0.0017"
                v = section.radius(y) ** (mpf(2) / 3) * sqrt(mpf(s0)) / n
                mean = 1000 * G * section.radius(y) * mpf(s0)
                einstein = compound("HORTON_EINSTEIN", [p for p in parts if p[1] > 0])
                first = ns[0] if level else ns[1]
                show(d, bed, method, "0.027", "0.012", change, "0.018", s0, depth, n, v * section.area(y), mean * (first / einstein) ** mpf("1.5"), mean)


def by_fullness():
    """n times a ratio that runs straight between points of fullness and is held beyond them."""
    print("diameter,gradient,n,fullnesses,ratios,depth,velocity,discharge")
    xs, rs = [mpf(x) for x in "0.1 0.35 0.8 1".split()], [mpf(x) for x in "1.4 1.27 1.08 1".split()]
    for d, s, n, depth in (("0.6", "0.003", "0.012", "0.04"), ("0.6", "0.003", "0.012", "0.17"), ("1.1", "0.0008", "0.014", "0.6"), ("0.45", "0.01", "0.013", "0.39")):
        pipe, y = Circle(mpf(d)), mpf(depth)
        x = y / pipe.d
        ratio = rs[0]
        for (x0, r0), (x1, r1) in zip(zip(xs, rs), list(zip(xs, rs))[1:]):
            if x0 < x <= x1:
                ratio = r0 + (r1 - r0) * (x - x0) / (x1 - x0)
        v = pipe.radius(y) ** (mpf(2) / 3) * sqrt(mpf(s)) / (mpf(n) * ratio)
        show(d, s, n, "0.1 0.35 0.8 1", "1.4 1.27 1.08 1", depth, v, v * pipe.area(y))


def slots():
    """A circle with a slot of a width in its crown, below and above the mouth of the slot."""
    print("diameter,slot,depth,area,perimeter,centroid,depth_again")
    for d, w, depths in (("0.6", "0.006", "0.2 0.41 0.7 2.2"), ("1.5", "0.03", "0.9 1.6 4")):
        pipe, slot = Circle(mpf(d)), mpf(w)
        mouth = (pipe.d + sqrt(pipe.d**2 - slot**2)) / 2
        moment = quad(lambda z: pipe.width(z) * (mouth - z), [0, pipe.d / 2, mouth])
        for depth in depths.split():
            y = mpf(depth)
            if y <= mouth:
                area, first = pipe.area(y), quad(lambda z: pipe.width(z) * (y - z), [0, y / 2, y])
            else:
                area = pipe.area(mouth) + slot * (y - mouth)
                first = moment + pipe.area(mouth) * (y - mouth) + slot * (y - mouth) ** 2 / 2
            show(d, w, depth, area, pipe.perimeter(min(y, pipe.d)), first / area, y)


def fine(kind):
    """Depths of circles to the last digit of a double, at random places: discharges are doubles, written so that they come back."""
    import random

    rng = random.Random(20_26)
    columns = {"manning": "gradient,n", "sand": "gradient,roughness,viscosity", "critical": ""}[kind]
    print("diameter," + (columns + "," if columns else "") + "discharge,depth")
    for _ in range(90):
        d = mpf(rng.choice(("0.225", "0.45", "0.9", "1.65")))
        s = rng.choice(("0.0011", "0.0047", "0.021"))
        k, nu, n = rng.choice(("0.00006", "0.0006", "0.003")), rng.choice(("1.14e-6", "1.31e-6")), rng.choice(("0.0117", "0.014"))
        pipe = Circle(d)

        def flow(y):
            a, r = pipe.area(y), pipe.radius(y)
            if kind == "critical":
                return a * sqrt(G * a / pipe.width(y))
            if kind == "manning":
                return a * r ** (mpf(2) / 3) * sqrt(mpf(s)) / mpf(n)
            scale = sqrt(8 * G * r * mpf(s))
            return -2 * a * scale * log10(mpf(k) / (4 * r) / mpf("3.7") + mpf("2.51") * mpf(nu) / (4 * r * scale))

        place = d * mpf(rng.uniform(0.04, 0.93))
        if kind == "sand" and 4 * flow(place) / pipe.perimeter(place) / mpf(nu) < 5000:
            continue  # not turbulent: another law
        q = float(flow(place))
        y = bisect(lambda t: flow(t) - mpf(q), d / 100, d * mpf("0.9379"), 80)
        cells = {"manning": f"{s},{n},", "sand": f"{s},{k},{nu},", "critical": ""}[kind]
        print(f"{nstr(d, 5)},{cells}{q!r},{nstr(y, 20)}")


def edges(kind):
    """Depths of circles where a table of pieces would have its ends: shares of the full discharge at whole parts, halves of powers of
    two, up to the crest; rough and smooth walls, and flows hardly turbulent. The last column is what rounding of the discharge is worth."""
    columns = {"manning": "gradient,n", "sand": "gradient,roughness,viscosity"}[kind]
    print(f"diameter,{columns},discharge,depth,tol")
    pipes = [("0.15", "0.004", "0.0000015", "1.31e-6"), ("0.3", "0.0009", "0.0015", "1.14e-6"), ("0.6", "0.03", "0.006", "1.0e-6"), ("1.2", "0.002", "0.03", "1.2e-6"), ("2.4", "0.0004", "0.0003", "1.31e-6")]
    shares = ["0.0000021", "0.0000153", "0.00012207", "0.000977", "0.00390625", "0.0157", "0.0312501", "0.0624", "0.124999", "0.125001", "0.1259766", "0.2001953", "0.3330078", "0.4326172", "0.5654297", "0.7001953",
              "0.8222656", "0.9189453", "0.9990235", "1.000122", "1.0001831", "1.0100098", "1.0310059", "1.0499878", "1.0610352"]
    for i, (d, s, k, nu) in enumerate(pipes):
        pipe = Circle(mpf(d))
        n = ("0.0095", "0.0117", "0.013", "0.016", "0.021")[i]

        def flow(y):
            a, r = pipe.area(y), pipe.radius(y)
            if kind == "manning":
                return a * r ** (mpf(2) / 3) * sqrt(mpf(s)) / mpf(n)
            scale = sqrt(8 * G * r * mpf(s))
            return -2 * a * scale * log10(mpf(k) / (4 * r) / mpf("3.7") + mpf("2.51") * mpf(nu) / (4 * r * scale))

        full = flow(mpf(d) * (1 - mpf(10) ** -25))
        for share in shares[i % 2::2] if kind == "manning" else shares:
            q = float(full * mpf(share))
            y = bisect(lambda t: flow(t) - mpf(q), mpf(d) / 10**5, mpf(d) * mpf("0.9379"), 90)
            if y > mpf(d) * mpf("0.9378") or y < mpf(d) / 5000:
                continue  # past the crest
            if kind == "sand" and (4 * mpf(q) / pipe.perimeter(y) / mpf(nu) < 4010 or mpf(k) > 4 * pipe.radius(y) / 3):
                continue  # not turbulent, or a wall as rough as deep
            step = mpf(d) * mpf(10) ** -12
            slope = (flow(y + step) - flow(y - step)) / (2 * step)
            cells = {"manning": f"{s},{n}", "sand": f"{s},{k},{nu}"}[kind]
            print(f"{d},{cells},{q!r},{nstr(y, 20)},{nstr(2e-15 * max(y, mpf(q) / slope), 3)}")


TABLES = {
    "circle-depths-manning-ends": lambda: edges("manning"),
    "circle-depths-sand-ends": lambda: edges("sand"),
    "circle-depths-manning": lambda: fine("manning"),
    "circle-depths-sand": lambda: fine("sand"),
    "circle-depths-critical": lambda: fine("critical"),
    "chain-of-reaches": chain,
    "profile-classes": classes,
    "backwater-ends": backwater,
    "gradient-units": gradients,
    "inlet-without-loss": gentlest,
    "resistance-strickler": lambda: coefficients("strickler"),
    "resistance-chezy-feet": lambda: coefficients("feet"),
    "friction-any-reynolds": friction,
    "roughness-fitted": fits,
    "normal-depth-branches-manning": lambda: upper_depths("n"),
    "normal-depth-branches-sand": lambda: upper_depths("roughness"),
    "cleansing-discharge": cleansing,
    "momentum-depths": momenta,
    "roughness-banded": banded,
    "roughness-by-fullness": by_fullness,
    "slotted-by-width": slots,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
