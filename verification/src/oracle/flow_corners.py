"""Independent computation of flow at its corners: Python with mpmath, no code in common with the library.

    python3 flow_corners.py NAME > NAME.csv

writes one of the tables named in TABLES below. Depths of a backwater that has nearly died out, by quadrature and bisection; the water
that is meant where none is named; levels of a profile; limits of sections and of the curve of jump lengths at 2 %.
"""

import sys

from mpmath import acos, exp, log, log10, mp, mpf, nstr, pi, quad, sin, sqrt

mp.dps = 30
G = mpf("9.80665")


def cells(*all):
    print(",".join(c if isinstance(c, str) else str(c) if isinstance(c, int) else nstr(c, 15) for c in all))


def solved(f, lo, hi, rounds=100):
    for _ in range(rounds):
        middle = (lo + hi) / 2
        lo, hi = (middle, hi) if f(middle) < 0 else (lo, middle)
    return (lo + hi) / 2


class Channel:
    """Rectangular, by Manning."""

    def __init__(self, b, n, s, q):
        self.b, self.n, self.s, self.q = b, n, s, q

    def friction(self, y):
        a = self.b * y
        return (self.n * self.q / a) ** 2 / (a / (self.b + 2 * y)) ** (mpf(4) / 3)

    def froude2(self, y):
        return self.q**2 / (G * self.b**2 * y**3)

    def normal(self):
        return solved(lambda y: self.s - self.friction(y), mpf("1e-4"), mpf(50))

    def length(self, low, high):
        # in the logarithm of what is above normal depth
        yn = self.normal()
        f = lambda u: (1 - self.froude2(yn + exp(u))) / (self.s - self.friction(yn + exp(u))) * exp(u)
        return quad(f, [log(low - yn), log(high - yn)])


def backwater():
    print("width,n,gradient,q,raised,distance,depth")
    for b, n, s, q in (("1.2", "0.014", "0.002", "0.8"), ("0.5", "0.012", "0.0008", "0.07")):
        c = Channel(mpf(b), mpf(n), mpf(s), mpf(q))
        yn = c.normal()
        for share in ("1.02", "1.004", "1.1"):
            for distance in ("3", "40"):
                raised = mpf(nstr(yn * mpf(share), 12))
                low = solved(lambda v: -(c.length(yn + exp(v), raised) - mpf(distance)), log(mpf(10) ** -9), log(raised - yn - mpf(10) ** -25), 60)
                cells(b, n, s, q, nstr(raised, 12), distance, yn + exp(low))


def viscosity(celsius, density):
    """Kinematic viscosity at 0.1 MPa: IAPWS SR6-08, equation 7, over the density."""
    t = (mpf(celsius) + mpf("273.15")) / 300
    return mpf("1e-6") * sum(mpf(a) * t ** mpf(b) for a, b in (("280.68", "-1.9"), ("511.45", "-7.7"), ("61.131", "-19.6"), ("0.45903", "-40"))) / mpf(density)


def water():
    """Where no water is named, that of 15 degrees is meant."""
    nu = viscosity(15, "999.1026")
    print("diameter,depth,gradient,roughness,velocity")
    for d, y, s, k in (("0.15", "0.05", "0.004", "0.00003"), ("0.3", "0.12", "0.001", "0.00001"), ("0.6", "0.6", "0.0006", "0.00006"), ("0.1", "0.03", "0.01", "0.0000015")):
        D, h = mpf(d), mpf(y)
        angle = 2 * acos(1 - 2 * h / D)
        R = (angle - sin(angle)) * D / (4 * angle)
        v = sqrt(8 * G * R * mpf(s))
        cells(d, y, s, k, -v * 2 * log10(mpf(k) / (mpf("3.7") * 4 * R) + mpf("2.51") * nu / (4 * R * v)))


def steps():
    """One step of depth: its length by the mean friction slope, and the invert at its end."""
    print("width,n,gradient,q,from,to,length,invert")
    for b, n, s, q, a, e in (("2", "0.013", "0.001", "2", "0.9", "1.0"), ("2", "0.013", "0.001", "2", "1.3", "1.1"), ("6.1", "0.014", "0.002", "17", "1.5", "1.4"), ("1", "0.015", "0.02", "0.6", "0.2", "0.21")):
        c = Channel(mpf(b), mpf(n), mpf(s), mpf(q))
        a_, e_ = mpf(a), mpf(e)
        energy = lambda y: y + (c.q / (c.b * y)) ** 2 / (2 * G)
        length = (energy(e_) - energy(a_)) / (c.s - (c.friction(a_) + c.friction(e_)) / 2)
        cells(b, n, s, q, a, e, length, -length * c.s)


def falls():
    """Invert at the inlet: that at the outlet, all falls, and the drops between reaches; none behind the last one."""
    print("lengths,slopes,drops,invert,inlet")
    for lengths, slopes, drops, invert in (("80 40 25", "0.002 0.004 0.001", "0.1 0 0.2", "17.5"), ("30 30", "0.003 0.001", "0.25 0.4", "-2"), ("120", "0.002", "0.3", "3")):
        x, s, d = ([mpf(v) for v in t.split()] for t in (lengths, slopes, drops))
        cells(lengths, slopes, drops, invert, mpf(invert) + sum(a * b for a, b in zip(x, s)) + sum(d[:-1]))


def jumps():
    """The curve of jump lengths ends at Froude numbers of 1.7 and 10."""
    print("width,depth,q,refused")
    for b, y in (("1", "0.1"), ("2.5", "0.3"), ("40", "1.5")):
        for fr, refused in (("1.67", 1), ("1.73", 0), ("9.8", 0), ("10.2", 1)):
            cells(b, y, mpf(fr) * mpf(b) * mpf(y) * sqrt(G * mpf(y)), refused)


def sections():
    """Bores, areas and depths 2 % within and beyond their limits."""
    print("diameter,bed,value,bore,area,depth")
    for d, refused in (("49", 0), ("51", 1), ("0.00000098", 1), ("0.00000102", 0)):
        cells(d, "0", "0", refused, "", "")
    circle = lambda D, y: (acos(1 - 2 * y / D) * D**2 / 4 - (D / 2 - y) * sqrt(y * (D - y)))
    for d, bed in (("0.6", "0.1"), ("1.5", "0.4"), ("0.3", "0.02")):
        D, h = mpf(d), mpf(bed)
        room = pi * D**2 / 4 - circle(D, h)
        for share, refused in (("0.98", 0), ("1.02", 1)):
            cells(d, bed, room * mpf(share), "", refused, "")
            cells(d, bed, (D - h) * mpf(share), "", "", refused)
        for below in ("-0.001", "-0.2"):
            cells(d, bed, below, "", 1, 1)


def full():
    """A box runs full where two thirds of the energy reach its lid."""
    print("width,height,energy,refused")
    for b, h in (("1.2", "0.8"), ("0.4", "0.3"), ("3", "2.5")):
        for share, refused in (("0.98", 0), ("1.02", 1), ("0.5", 0), ("2", 1)):
            cells(b, h, mpf(h) * 3 / 2 * mpf(share), refused)


def rounded():
    """Depths and areas that miss a limit by 1e-12 of the height count as the limit; further off they are refused."""
    print("shape,width,height,depth,area,refused,wanted,found,none")
    for shape, b, h in (("circular", "0.6", "0.6"), ("box", "1.2", "0.8"), ("box", "0.02", "0.03"), ("circular", "3.1", "3.1")):
        B, H = mpf(b), mpf(h)
        full = pi * H**2 / 4 if shape == "circular" else B * H
        for miss, refused in (("5e-13", 0), ("8e-13", 0), ("2e-12", 1), ("1e-10", 1)):
            for depth, area in ((H * (1 + mpf(miss)), full), (-H * mpf(miss), mpf(0))):
                wanted = full * (1 + mpf(miss)) if depth > 0 else -full * mpf(miss)
                cells(shape, b, h, nstr(depth, 17), "" if refused else area, refused, nstr(wanted, 17), "" if refused else H if depth > 0 else mpf(0), refused)


def slots():
    """Wave speeds 2 % within and beyond the root of 10 g H and 1500 m/s; slots 2 % within and beyond a tenth of the mean width."""
    print("diameter,speed,slot,speed_refused,slot_refused")
    for d in ("0.3", "0.6", "2.5"):
        D = mpf(d)
        for speed, refused in ((sqrt(10 * G * D) * mpf("0.98"), 1), (sqrt(10 * G * D) * mpf("1.02"), 0), (mpf(1470), 0), (mpf(1530), 1)):
            cells(d, speed, "0", refused, "")
        for slot, refused in ((pi * D / 40 * mpf("0.98"), 0), (pi * D / 40 * mpf("1.02"), 1)):
            cells(d, "0", slot, "", refused)


TABLES = {
    "refusals-of-slots": slots,
    "depths-at-their-limits": rounded,
    "refusals-of-energies": full,
    "backwater-nearly-over": backwater,
    "water-not-named": water,
    "profile-steps": steps,
    "profile-falls": falls,
    "refusals-of-jumps": jumps,
    "refusals-of-sections": sections,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
