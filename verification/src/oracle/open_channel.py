"""Independent computation of open-channel flow: Python with mpmath, no code in common with the library.

    python3 open_channel.py NAME > NAME.csv

writes one of the tables named in TABLES below, with 30 digits inside and 15 in the file. The circle has its formulas by the
angle at the centre; profiles are quadratures of the equation of varied flow.
"""

import sys

from mpmath import acos, findroot, inf, mp, mpf, nstr, quad, sin, sqrt

mp.dps = 30
G = mpf("9.80665")


class Section:
    def radius(self, y):
        return self.area(y) / self.perimeter(y)


class Circle(Section):
    def __init__(self, d):
        self.d = d

    def theta(self, y):
        return 2 * acos(1 - 2 * y / self.d)

    def area(self, y):
        t = self.theta(y)
        return self.d**2 * (t - sin(t)) / 8

    def perimeter(self, y):
        return self.d * self.theta(y) / 2

    def width(self, y):
        return 2 * sqrt(y * (self.d - y))


class Trapezoid(Section):
    def __init__(self, b, z):
        self.b, self.z = b, z

    def area(self, y):
        return (self.b + self.z * y) * y

    def perimeter(self, y):
        return self.b + 2 * y * sqrt(1 + self.z**2)

    def width(self, y):
        return self.b + 2 * self.z * y


SHAPES = {
    "circular": lambda size, slope: Circle(size),
    "rectangular": lambda size, slope: Trapezoid(size, mpf(0)),
    "trapezoidal": lambda size, slope: Trapezoid(size, slope),
}


def critical_energy():
    print("shape,size,side_slope,energy,yc,q")
    for shape, size, slope, energies in (
        ("circular", "0.45", "0", "0.013 0.11 0.29 0.47 0.9"),
        ("circular", "1.8", "0", "0.2 0.77 1.9"),
        ("rectangular", "0.6", "0", "0.05 0.33 1.7"),
        ("trapezoidal", "1.2", "1.5", "0.04 0.37 1.1 2.9"),
        ("trapezoidal", "0", "0.75", "0.21 1.3"),
    ):
        section = SHAPES[shape](mpf(size), mpf(slope))
        for energy in energies.split():
            e = mpf(energy)
            excess = lambda y: y + section.area(y) / (2 * section.width(y)) - e
            top = min(e, section.d * (1 - mpf(10) ** -20)) if shape == "circular" else e
            yc = findroot(excess, (e * mpf("1e-3"), top), solver="anderson", tol=1e-25)
            q = section.area(yc) * sqrt(G * section.area(yc) / section.width(yc))
            print(f"{shape},{size},{slope},{energy},{nstr(yc, 15)},{nstr(q, 15)}")


class Silted(Section):
    """A section above a level bed; depths count from the bed."""

    def __init__(self, clean, bed):
        self.clean, self.level = clean, bed

    def area(self, y):
        return self.clean.area(self.level + y) - self.clean.area(self.level)

    def perimeter(self, y):
        walls = self.clean.perimeter(self.level + y) - self.clean.perimeter(self.level)
        return walls + self.clean.width(self.level)

    def width(self, y):
        return self.clean.width(self.level + y)


def sediment():
    print("diameter,bed,depth,area,perimeter,radius,centroid")
    for d, bed, depths in (("0.6", "0.08", "0.01 0.05 0.1 0.25 0.5"), ("1.2", "0.5", "0.02 0.3 0.65"), ("0.3", "0.2", "0.04 0.09")):
        section = Silted(Circle(mpf(d)), mpf(bed))
        for depth in depths.split():
            y = mpf(depth)
            moment = quad(lambda t: section.width(t) * (y - t), [0, y])
            row = section.area(y), section.perimeter(y), section.radius(y), moment / section.area(y)
            print(f"{d},{bed},{depth}," + ",".join(nstr(x, 15) for x in row))


def compound(method, parts):
    """n of a whole from parts (n, perimeter), each with the hydraulic radius of the whole."""
    p = sum(part[1] for part in parts)
    if method == "HORTON_EINSTEIN":
        return (sum(q * n ** mpf("1.5") for n, q in parts) / p) ** (mpf(2) / 3)
    if method == "PAVLOVSKIJ":
        return sqrt(sum(q * n**2 for n, q in parts) / p)
    return p / sum(q / n for n, q in parts)


def composite():
    print("diameter,bed,depth,method,bed_n,wall_n,n,velocity,gradient")
    slope = "0.0025"
    for d, bed, bed_n, wall_n in (("0.6", "0.08", "0.025", "0.013"), ("0.9", "0.3", "0.03", "0.011")):
        section = Silted(Circle(mpf(d)), mpf(bed))
        for method in ("HORTON_EINSTEIN", "PAVLOVSKIJ", "LOTTER"):
            for depth in ("0.05", "0.1", "0.25", "0.4"):
                y = mpf(depth)
                width = section.width(mpf(0))
                n = compound(method, [(mpf(bed_n), width), (mpf(wall_n), section.perimeter(y) - width)])
                v = section.radius(y) ** (mpf(2) / 3) * sqrt(mpf(slope)) / n
                print(f"{d},{bed},{depth},{method},{bed_n},{wall_n},{nstr(n, 15)},{nstr(v, 15)},{slope}")


def friction_slope(section, q, n, y, height):
    depth = min(y, height)
    v = q / section.area(depth)
    return (n * v) ** 2 / section.radius(depth) ** (mpf(4) / 3)


def distance(section, q, s0, n, low, high, height=inf):
    """Distance between two depths of one profile, from dx = (1 - Fr^2)/(S0 - Sf) dy; above the soffit Fr = 0."""

    def slope(y):
        rest = s0 - friction_slope(section, q, n, y, height)
        if y >= height:
            return 1 / rest
        return (1 - q**2 * section.width(y) / (G * section.area(y) ** 3)) / rest

    cuts = [low, high] if not low < height < high else [low, height, high]
    return abs(quad(slope, cuts))


def varied():
    """Depth at a distance from a control in each class of profile, by root finding on the quadrature."""
    print("profile,shape,size,side_slope,gradient,n,discharge,control,from_outlet,length,depth")
    rows = (
        ("M1", "circular", "0.6", "0", "0.002", "0.013", "0.15", "0.55", 1, "60", ("0.33", "0.54")),
        ("M1", "trapezoidal", "1.5", "1", "0.001", "0.02", "1.4", "1.3", 1, "300", ("0.85", "1.29")),
        ("M2", "circular", "0.6", "0", "0.001", "0.013", "0.05", None, 1, "25", ("0.16", "0.2076")),
        ("M2", "rectangular", "2", "0", "0.0005", "0.013", "2", None, 1, "500", ("0.5", "0.845")),
        ("M3", "rectangular", "2", "0", "0.001", "0.013", "2", "0.12", 0, "8", ("0.13", "0.3")),
        ("S1", "rectangular", "2", "0", "0.02", "0.013", "2", "2.5", 1, "80", ("0.7", "2.4")),
        ("S2", "rectangular", "2", "0", "0.02", "0.013", "2", None, 0, "30", ("0.2625", "0.4")),
        ("S2", "circular", "0.6", "0", "0.03", "0.013", "0.15", None, 0, "6", ("0.165", "0.2")),
        ("S3", "rectangular", "2", "0", "0.02", "0.013", "2", "0.15", 0, "12", ("0.155", "0.26")),
        ("H2", "circular", "0.9", "0", "0", "0.013", "0.2", None, 1, "40", ("0.3", "0.6")),
        ("H3", "rectangular", "2", "0", "0", "0.013", "2", "0.1", 0, "12", ("0.11", "0.3")),
        ("A2", "rectangular", "2", "0", "-0.002", "0.013", "2", None, 1, "150", ("0.5", "1.2")),
        ("A3", "rectangular", "2", "0", "-0.002", "0.013", "2", "0.1", 0, "12", ("0.11", "0.3")),
        ("pressure", "circular", "0.6", "0", "0.003", "0.013", "0.13", "1.5", 1, "420", ("0.3", "0.9")),
    )
    for profile, shape, size, slope, s0, n, q, control, outlet, length, bracket in rows:
        section = SHAPES[shape](mpf(size), mpf(slope))
        height = section.d if shape == "circular" else inf
        flow = mpf(q)
        start = mpf(control) if control else findroot(
            lambda y: flow**2 * section.width(y) / (G * section.area(y) ** 3) - 1, (mpf("0.05"), mpf("0.58")), solver="anderson")
        excess = lambda y: distance(section, flow, mpf(s0), mpf(n), min(y, start), max(y, start), height) - mpf(length)
        depth = findroot(excess, tuple(mpf(b) for b in bracket), solver="anderson", tol=1e-18)
        shown = nstr(start, 17) if control is None else control
        print(f"{profile},{shape},{size},{slope},{s0},{n},{q},{shown},{outlet},{length},{nstr(depth, 15)}")


def backwater():
    print("diameter,gradient,n,discharge,raised,rise,length")
    for d, s0, n, q, raised, rise in (
        ("0.6", "0.003", "0.013", "0.15", "0.5", "0.01"),
        ("0.6", "0.003", "0.013", "0.15", "0.9", "0.05"),
        ("0.45", "0.0015", "0.013", "0.06", "0.42", "0.02"),
        ("1.2", "0.0005", "0.015", "0.3", "1.1", "0.1"),
        ("0.6", "0.003", "0.013", "0.24", "0.6", "0.0001"),
        ("0.6", "0.003", "0.013", "0.3", "0.59", "0.001"),
        ("0.6", "0.003", "0.013", "0.33", "0.6", "0.0005"),
        ("0.6", "0.003", "0.013", "0.33", "0.65", "0.02"),
    ):
        section, flow = Circle(mpf(d)), mpf(q)
        normal = findroot(
            lambda y: section.area(y) * section.radius(y) ** (mpf(2) / 3) * sqrt(mpf(s0)) / mpf(n) - flow,
            (mpf(d) / 10, mpf(d) * mpf("0.9")), solver="anderson")
        x = distance(section, flow, mpf(s0), mpf(n), normal + mpf(rise), mpf(raised), section.d)
        print(f"{d},{s0},{n},{q},{raised},{rise},{nstr(x, 15)}")


def cleansing():
    """Least gradient at which a discharge has a velocity or a shear stress rho g R S."""
    print("diameter,n,discharge,velocity,by_velocity,stress,by_stress")
    rho = mpf(1000)
    for d, n, q, v, stress in (("0.3", "0.013", "0.004", "0.7", "2"), ("0.45", "0.012", "0.02", "0.75", "1.5"), ("0.9", "0.015", "0.05", "0.6", "3")):
        section, flow = Circle(mpf(d)), mpf(q)
        def slope(y):
            u = flow / section.area(y)
            return (mpf(n) * u) ** 2 / section.radius(y) ** (mpf(4) / 3)
        one = findroot(lambda y: flow / section.area(y) - mpf(v), (mpf("0.02"), mpf(d) * mpf("0.9")), solver="anderson")
        two = findroot(lambda y: rho * G * section.radius(y) * slope(y) - mpf(stress), (mpf("0.01"), mpf(d) / 2), solver="anderson")
        print(f"{d},{n},{q},{v},{nstr(slope(one), 15)},{stress},{nstr(slope(two), 15)}")


def sizes():
    """Velocity and discharge of a circle and a trapezoid, from which the size is to be found, by Manning."""
    print("size,depth_ratio,side_slope,gradient,n,pipe_velocity,pipe_discharge,depth,channel_discharge")
    rows = (("0.3", "0.5", "0", "0.004", "0.013"), ("1.05", "1", "1.5", "0.0008", "0.015"),
            ("2.4", "0.8", "3", "0.0002", "0.011"), ("0.15", "0.05", "0", "0.02", "0.009"))
    for size, ratio, z, s0, n in rows:
        d, s = mpf(size), sqrt(mpf(s0))
        def velocity(section, y):
            r = section.radius(y)
            return r ** (mpf(2) / 3) * s / mpf(n)
        pipe, y = Circle(d), d * mpf(ratio)
        v = velocity(pipe, y)
        channel, deep = Trapezoid(d, mpf(z)), mpf("0.7") * d
        values = (v, v * pipe.area(y), deep, velocity(channel, deep) * channel.area(deep))
        print(f"{size},{ratio},{z},{s0},{n}," + ",".join(nstr(x, 15) for x in values))


def inlets():
    """Depth at the inlet and discharge of a channel fed by still water: uniform where that is slow, else critical."""
    print("shape,size,side_slope,gradient,n,loss,head,control,depth,discharge")
    rows = (("rectangular", "2.5", "0", "0.0008", "0.014", "0.5", "0.9"), ("circular", "0.9", "0", "0.0012", "0.013", "0", "0.5"),
            ("circular", "0.9", "0", "0.02", "0.013", "0.2", "0.55"), ("trapezoidal", "1.2", "1.5", "0.03", "0.02", "0", "0.7"))
    for shape, size, slope, s0, n, k, head in rows:
        section, h, loss = SHAPES[shape](mpf(size), mpf(slope)), mpf(head), 1 + mpf(k)
        def uniform(y):
            return section.radius(y) ** (mpf(2) / 3) * sqrt(mpf(s0)) / mpf(n)
        def critical(y):
            return sqrt(G * section.area(y) / section.width(y))
        def solve(v):
            return findroot(lambda y: y + loss * v(y) ** 2 / (2 * G) - h, (h / 100, h * mpf("0.999")), solver="anderson")
        slow, turning = solve(uniform), solve(critical)
        y, v, control = (slow, uniform, 0) if uniform(slow) < critical(slow) else (turning, critical, 1)
        print(f"{shape},{size},{slope},{s0},{n},{k},{head},{control},{nstr(y, 15)},{nstr(v(y) * section.area(y), 15)}")


def emptying():
    """Time in which an upright tank falls through a rectangular opening in its wall, the exact integral of the opening."""
    print("area,width,opening,coefficient,from,to,time")
    for area, b, a, cd, high, low in (("1.13", "0.1", "0.1", "0.61", "2.5", "0.15"), ("50", "1", "0.2", "0.6", "1.8", "0.5"), ("4", "0.3", "0.15", "0.62", "3", "0.3")):
        width, edge, c = mpf(b), mpf(a), mpf(cd)
        def flow(h):
            return mpf(2) / 3 * c * width * sqrt(2 * G) * (h ** mpf("1.5") - (h - edge) ** mpf("1.5"))
        time = mpf(area) * quad(lambda h: 1 / flow(h), [mpf(low), (mpf(low) + mpf(high)) / 4, mpf(high)])
        print(f"{area},{b},{a},{cd},{high},{low},{nstr(time, 15)}")


def culverts():
    """Headwater of an inlet in control in the units of the source, feet: constants as printed in Mays 2001, table 16.2.1."""
    print("edge,shape,width,height,gradient,discharge,headwater")
    edges = {"concrete-square-headwall": (1, "0.0098", "2", "0.0398", "0.67"), "concrete-groove-headwall": (1, "0.0078", "2", "0.0292", "0.74"),
             "concrete-groove-projecting": (1, "0.0045", "2", "0.0317", "0.69"), "corrugated-headwall": (1, "0.0078", "2", "0.0379", "0.69"),
             "corrugated-mitred": (1, "0.0210", "1.33", "0.0463", "0.75"), "corrugated-projecting": (1, "0.0340", "1.50", "0.0553", "0.54"),
             "ring-bevel-45": (1, "0.0018", "2.50", "0.0300", "0.74"), "ring-bevel-33-7": (1, "0.0018", "2.50", "0.0243", "0.83"),
             "box-wingwalls-30-to-75": (1, "0.026", "1.0", "0.0385", "0.81"), "box-wingwalls-90-or-15": (1, "0.061", "0.75", "0.0400", "0.80"),
             "box-wingwalls-0": (1, "0.061", "0.75", "0.0423", "0.82"), "box-chamfered-headwall": (2, "0.515", "0.667", "0.0375", "0.79"),
             "box-bevel-45": (2, "0.495", "0.667", "0.0314", "0.82"), "box-bevel-33-7": (2, "0.486", "0.667", "0.0252", "0.865")}
    foot = mpf("0.3048")
    for number, (edge, (form, k, m, c, y)) in enumerate(edges.items()):
        box = edge.startswith("box")
        high, wide, s = mpf("1.2"), mpf("1.8") if box else mpf("1.2"), mpf("0.02")
        section = Trapezoid(wide, mpf(0)) if box else Circle(high)
        full = wide * high if box else mp.pi * high**2 / 4
        for q in ("1.5", "3", "3.7", "5.5", "4.1"):
            flow = mpf(q) * full / foot**2 * sqrt(high / foot) * foot**3
            def free(u):
                if form == 2:
                    return mpf(k) * u ** mpf(m)
                f = u * full * sqrt(high * foot)
                yc = findroot(lambda t: f**2 * section.width(t) - G * section.area(t) ** 3, (high / 20, high * mpf("0.98")), solver="anderson")
                return (yc + section.area(yc) / (2 * section.width(yc))) / high + mpf(k) * u ** mpf(m) - s / 2
            def drowned(u):
                return mpf(c) * u**2 + mpf(y) - s / 2
            u = mpf(q)
            low, top = free(mpf("3.5")), drowned(mpf(4))
            ratio = free(u) if u <= mpf("3.5") else drowned(u) if u >= 4 else low + (u - mpf("3.5")) / mpf("0.5") * (top - low)
            print(f"{edge},{'box' if box else 'circular'},{nstr(wide, 15)},{nstr(high, 15)},0.02,{nstr(flow, 17)},{nstr(ratio * high, 15)}")


def slots():
    """Area, moment and width of a circle with a slot for a wave speed, by the circle's angle and by hand above the slot's mouth."""
    print("diameter,speed,depth,area,centroid,width")
    for d, a in (("0.6", "150"), ("2", "1000")):
        pipe, full = Circle(mpf(d)), mp.pi * mpf(d) ** 2 / 4
        slot = G * full / mpf(a) ** 2
        mouth = (pipe.d + sqrt(pipe.d**2 - slot**2)) / 2
        moment = quad(lambda z: pipe.width(z) * (mouth - z), [0, pipe.d / 2, mouth])
        for ratio in ("1.2", "8"):
            y = mpf(ratio) * pipe.d
            area = pipe.area(mouth) + slot * (y - mouth)
            first = moment + pipe.area(mouth) * (y - mouth) + slot * (y - mouth) ** 2 / 2
            print(f"{d},{a},{nstr(y, 10)},{nstr(area, 15)},{nstr(first / area, 15)},{nstr(slot, 15)}")


def jumps():
    """Place of a jump between fast flow from the inlet and slow flow from the outlet: both quadratures meet in conjugate depths."""
    print("shape,size,side_slope,gradient,n,discharge,inlet_depth,outlet_depth,length,place,upstream_depth")
    rows = (("rectangular", "2", "0", "0.02", "0.013", "2", "0.15", "1.5", "100", ("0.2", "0.25")),
            ("rectangular", "2", "0", "0.02", "0.013", "2", "0.4", "2", "120", ("0.27", "0.3")),
            ("trapezoidal", "1", "1", "0.015", "0.014", "1.5", "0.2", "1.6", "90", ("0.28", "0.31")),
            ("rectangular", "2", "0", "0.001", "0.013", "2", "0.12", "0.9", "60", ("0.2", "0.3")))
    for shape, size, slope, s0, n, q, head, tail, length, bracket in rows:
        section, flow = SHAPES[shape](mpf(size), mpf(slope)), mpf(q)
        z, b = mpf(slope), mpf(size)
        def momentum(y):
            return flow**2 / (G * section.area(y)) + b * y**2 / 2 + z * y**3 / 3
        critical = findroot(lambda y: flow**2 * section.width(y) - G * section.area(y) ** 3, (mpf("0.1"), mpf(1)), solver="anderson")
        def conjugate(y):
            return findroot(lambda t: momentum(t) - momentum(y), (critical * mpf("1.0001"), 12 * critical), solver="anderson")
        def from_inlet(y):
            return distance(section, flow, mpf(s0), mpf(n), min(mpf(head), y), max(mpf(head), y))
        def from_outlet(y):
            other = conjugate(y)
            return distance(section, flow, mpf(s0), mpf(n), min(other, mpf(tail)), max(other, mpf(tail)))
        y = findroot(lambda t: from_inlet(t) + from_outlet(t) - mpf(length), tuple(mpf(v) for v in bracket), solver="anderson", tol=1e-18)
        print(f"{shape},{size},{slope},{s0},{n},{q},{head},{tail},{length},{nstr(from_inlet(y), 15)},{nstr(y, 15)}")


class Benched(Section):
    """Semicircular invert of a width, upright to the lips, sloping benches to the walls of the chamber."""

    def __init__(self, width, lip, chamber, slope):
        self.r, self.lip, self.half, self.slope = width / 2, lip, chamber / 2, slope
        self.foot = lip + (self.half - self.r) * slope

    def width(self, y):
        if y <= self.r:
            return 2 * sqrt(y * (2 * self.r - y))
        if y <= self.lip:
            return 2 * self.r
        return 2 * min(self.r + (y - self.lip) / self.slope, self.half)

    def area(self, y):
        if y <= self.r:
            return Circle(2 * self.r).area(y)
        full = mp.pi * self.r**2 / 2
        if y <= self.lip:
            return full + 2 * self.r * (y - self.r)
        full += 2 * self.r * (self.lip - self.r)
        part = min(y, self.foot) - self.lip
        full += part * (2 * self.r + part / self.slope)
        return full + 2 * self.half * max(y - self.foot, 0)


def benched():
    """All critical depths of a discharge in a benched channel: every change of sign of Q^2 T - g A^3."""
    print("width,lip,chamber,slope,discharge,count,first,second,third")
    for w, lip, chamber, slope, q in (("0.3", "0.3", "1.5", "0.02", "0.11"), ("0.4", "0.4", "3", "0.02", "0.2"), ("0.5", "0.35", "1.8", "0.05", "0.23")):
        section, flow = Benched(mpf(w), mpf(lip), mpf(chamber), mpf(slope)), mpf(q)
        def excess(y):
            return flow**2 * section.width(y) - G * section.area(y) ** 3
        grid = [mpf(i) / 2000 * 2 for i in range(5, 2000)]
        roots = [findroot(excess, (a, b), solver="anderson") for a, b in zip(grid, grid[1:]) if excess(a) * excess(b) < 0]
        print(f"{w},{lip},{chamber},{slope},{q},{len(roots)}," + ",".join(nstr(y, 15) for y in roots))


TABLES = {
    "critical-depths-benched": benched,
    "jump-place": jumps,
    "culvert-headwater": culverts,
    "slotted-circle": slots,
    "reservoir-inlet": inlets,
    "tank-emptying-by-quadrature": emptying,
    "size-for-a-flow": sizes,
    "critical-flow-of-an-energy": critical_energy,
    "sediment-bed": sediment,
    "composite-roughness-over-sediment": composite,
    "varied-flow-by-quadrature": varied,
    "backwater-by-quadrature": backwater,
    "cleansing-gradient": cleansing,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
