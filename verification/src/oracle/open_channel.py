"""Independent computation of open-channel flow: Python with mpmath, no code in common with the library.

    python3 open_channel.py NAME > NAME.csv

writes one of the tables named in TABLES below, with 40 digits inside and 15 in the file. Sections are widths over the depth,
integrated by quadrature; only the circle has its formulas by the angle at the centre.
"""

import sys

from mpmath import acos, findroot, inf, log, mp, mpf, nstr, pi, quad, sin, sqrt

mp.dps = 30
G = mpf("9.80665")


class Section:
    """Width at a depth, with the depths between which it is smooth."""

    def __init__(self, width, breaks, walls=None, bed=0):
        self.width, self.breaks, self.bed = width, breaks, bed
        self.walls = walls or self.numeric_walls

    def area(self, y):
        return quad(self.width, self.cuts(y))

    def moment(self, y):
        return quad(lambda t: self.width(t) * (y - t), self.cuts(y))

    def perimeter(self, y):
        return self.bed + self.walls(y)

    def numeric_walls(self, y):
        h = mpf(10) ** -12
        slope = lambda t: (self.width(t + h) - self.width(t - h)) / (4 * h)
        return quad(lambda t: 2 * sqrt(1 + slope(t) ** 2), self.cuts(y))

    def cuts(self, y):
        return [mpf(0)] + [b for b in self.breaks if 0 < b < y] + [y]

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


def trapezoid(b, z):
    return Section(lambda y: b + 2 * z * y, [], lambda y: 2 * y * sqrt(1 + z**2), b)


SHAPES = {
    "circular": lambda size, slope: Circle(size),
    "rectangular": lambda size, slope: trapezoid(size, mpf(0)),
    "trapezoidal": lambda size, slope: trapezoid(size, slope),
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


TABLES = {"critical-flow-of-an-energy": critical_energy}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
