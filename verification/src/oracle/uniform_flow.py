"""Independent uniform and critical flow in drawn sections: Python 3 with mpmath, no code in common with the library.

    python3 uniform_flow.py NAME > NAME.csv

writes one of the tables named in TABLES below. Areas and perimeters are the quadratures of sections.py; the friction factor is
the root of its equation, the velocity the root of v^2 f(Re(v)) = 8 g R S. Below Re = 4000 f runs on a straight line to its value at 4000
from the laminar one at 2000, or from where the line would be steeper than 0.95 f(4000)/4000. 30 digits inside, 15 in the file.
"""

import sys

from mpmath import findroot, log, log10, mp, mpf, nstr, sqrt

import sections

mp.dps = 30
SIZES = "shape,width,height,side_slope,wall_height"
CASES = (
    ("circular,0.225,0,0,0", "0.0047", "0.03 0.081 0.153 0.17"),
    ("circular,0.9,0,0,0", "0.00083", "0.002 0.21 0.38 0.57 0.71"),
    ("circular,1.65,0,0,0", "0.0121", "0.0007 0.09 0.77 1.21"),
    ("egg,0.61,0,0,0", "0.0031", "0.04 0.19 0.53 0.7"),
    ("box,1.3,0.9,0,0", "0.0016", "0.07 0.43 0.71"),
    ("arch,1.2,0,0,0.37", "0.0072", "0.11 0.34 0.6 0.71"),
    ("trapezoidal,0.7,0,1.3,0", "0.00059", "0.06 0.49 1.7"),
)


def show(*values):
    return ",".join("" if v is None else nstr(mpf(v), 15) for v in values)


def walls(case):
    row = {key: "0" for key in sections.COLUMNS.split(",")}
    row.update(zip(SIZES.split(","), case.split(",")))
    return sections.of(row)


def turbulent(reynolds, relative):
    return findroot(lambda x: x + 2 * log10(relative / mpf("3.7") + mpf("2.51") * x / reynolds), 6) ** -2


def factor(reynolds, relative):
    if reynolds >= 4000:
        return turbulent(reynolds, relative)
    end = turbulent(mpf(4000), relative)
    begin = min(mpf(2000), sqrt(mpf("0.95") * 64 * 4000 / end))
    if reynolds <= begin:
        return 64 / reynolds
    return 64 / begin + (end - 64 / begin) * (reynolds - begin) / (4000 - begin)


def velocity(radius, slope, g, k, nu):
    f = lambda u: log(mp.e ** (2 * u) * factor(4 * radius * mp.e**u / nu, min(k / 4 / radius, 1)) / (8 * g * radius * slope))
    low, high = mpf(-16), mpf(4)
    for _ in range(110):
        mid = (low + high) / 2
        low, high = (mid, high) if f(mid) < 0 else (low, mid)
    return mp.e**low


def flows(law):
    for i, (case, slope, depths) in enumerate(CASES):
        section = walls(case)
        g = mpf("9.80665") if i % 2 else mpf("9.789")
        for j, depth in enumerate(depths.split()):
            y, s = mpf(depth), mpf(slope)
            a, p, t = section.area(y), section.perimeter(y), section.width(y)
            cells, v, fitted = law(i + j, a / p, s, g)
            head = v**2 / (2 * g)
            print(f"{case},{slope},{nstr(g, 15)},{depth},{cells}," + show(v, a * v, a / p, v / sqrt(g * a / t), head, y + head, 1000 * g * a / p * s, a * sqrt(g * a / t), *fitted))


def manning():
    print(SIZES + ",gradient,gravity,depth,n,velocity,discharge,radius,froude,head,energy,stress,critical_discharge")

    def law(i, r, s, g):
        n = ("0.011", "0.0137", "0.0173")[i % 3]
        return n, r ** (mpf(2) / 3) * sqrt(s) / mpf(n), ()

    flows(law)


def sand():
    print(SIZES + ",gradient,gravity,depth,roughness,viscosity,velocity,discharge,radius,froude,head,energy,stress,critical_discharge,fitted")

    def law(i, r, s, g):
        k, nu = (("0.00006", "1.31e-6"), ("0.0015", "1.14e-6"), ("0.0047", "9.3e-7"), ("0.003", "2.7e-5"))[i % 4]
        v = velocity(r, s, g, mpf(k), mpf(nu))
        # how much the roughness grows with the velocity decides whether fifteen digits of it give the roughness back
        rate = abs(log(velocity(r, s, g, mpf(k) * mpf("1.0001"), mpf(nu)) / v) / log(mpf("1.0001")))
        return f"{k},{nu}", v, (mpf(k) if rate > mpf("0.02") else None,)

    flows(law)


TABLES = {"uniform-flow-shapes": manning, "uniform-flow-sand": sand}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
