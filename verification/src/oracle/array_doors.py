"""Independent computation of many depths at once in a circle: Python with mpmath, no code in common with the library.

    python3 array_doors.py NAME > NAME.csv

writes one of the tables named in TABLES below. An array holds one usual value and another at one place; each place must have its own
answer, and what is wrong at any place must be refused or counted. Areas by quadrature of the width, inverses by bisection, in 30
digits.
"""

import sys
from functools import lru_cache

from mpmath import acos, mp, mpf, nstr, quad, sin, sqrt

mp.dps = 30
G = mpf("9.80665")
D, N, S = mpf("0.6"), mpf("0.013"), mpf("0.004")


def width(y):
    return 2 * sqrt(y * (D - y))


@lru_cache(None)
def area(y):
    return quad(lambda h: width(h), [0, y / 2, y])


def perimeter(y):
    return D * acos(1 - 2 * y / D)


def velocity(y):
    return (area(y) / perimeter(y)) ** (mpf(2) / 3) * sqrt(S) / N


def solved(f, lo, hi):
    for _ in range(90):
        middle = (lo + hi) / 2
        lo, hi = (middle, hi) if f(middle) < 0 else (lo, middle)
    return (lo + hi) / 2


@lru_cache(None)
def normal(q):
    return solved(lambda y: area(y) * velocity(y) - q, mpf("0.001"), D * mpf("0.9"))


@lru_cache(None)
def critical(q):
    return solved(lambda y: area(y) ** 3 / width(y) - q * q / G, mpf("0.001"), D * mpf("0.999"))


def cells(*all):
    print(",".join(c if isinstance(c, str) else str(c) if isinstance(c, int) else nstr(c, 15) for c in all))


COUNTS = [(1, 0), (2, 1), (3, 2), (4, 3), (5, 4), (15, 7), (16, 15), (17, 16), (33, 19), (37, 36), (1030, 1023), (1030, 1024), (2050, 2047), (2050, 2048)]


def depths():
    print("diameter,gradient,n,usual,count,other,at,place,area,perimeter,radius,width,discharge,velocity")
    for k, (count, at) in enumerate(COUNTS):
        usual, other = mpf("0.23") + mpf(k) / 100, mpf("0.51") - mpf(k) / 90
        usual, other = mpf(nstr(usual, 6)), mpf(nstr(other, 6))
        for place in {at, max(0, at - 1), count - 1}:
            y = other if place == at else usual
            cells(D, S, N, usual, count, other, at, place, area(y), perimeter(y), area(y) / perimeter(y), width(y), area(y) * velocity(y), velocity(y))


def discharges():
    print("diameter,gradient,n,usual,count,other,at,place,normal,critical")
    for k, (count, at) in enumerate(COUNTS):
        usual, other = mpf(nstr(mpf("0.05") + mpf(k) / 200, 6)), mpf(nstr(mpf("0.21") - mpf(k) / 90, 6))
        for place in {at, max(0, at - 1), count - 1}:
            q = other if place == at else usual
            cells(D, S, N, usual, count, other, at, place, normal(q), critical(q))
    for count, at in ((1, 0), (5, 2), (1030, 1024)):
        # no water has no depth, and nothing else has none beside it
        cells(D, S, N, mpf("0.1"), count, mpf(0), at, at, mpf(0), mpf(0))


def refused():
    print("diameter,gradient,n,usual,count,other,at,place,refused")
    usual = mpf("0.3")
    for count, at in [(37, i) for i in range(37)] + [(2050, 2047), (2050, 2048), (1030, 1023), (1030, 1024)]:
        for other in (D * mpf("1.01"), mpf("-0.01")) if at % 9 == 0 else (D * mpf("1.01"),):
            cells(D, S, N, usual, count, other, at, count - 1, 1)
    cells(D, S, N, usual, 37, mpf("0.31"), 3, 36, 0)


def defined():
    """What has no answer is counted and the others are answered."""
    print("diameter,gradient,n,usual,count,other,at,place,undefined,discharge,velocity,more,none,normal")
    usual, q = mpf("0.3"), mpf("0.15")
    for count, at in [(37, i) for i in (0, 1, 2, 3, 15, 16, 35, 36)] + [(2050, 2047), (2050, 2048), (1030, 1023), (1030, 1024), (5, 2)]:
        for other, bad in ((D * mpf("1.01"), 1), (mpf("-0.01"), 1), (mpf("0.4"), 0)):
            place = at - 1 if at else count - 1
            more = {0: mpf("0.2"), 1: mpf(9)}[bad] if other > 0 else -mpf("0.01")
            cells(D, S, N, usual, count, other, at, place, bad, area(usual) * velocity(usual), velocity(usual), more, bad, normal(q))


def monitored():
    """A reading above the soffit among those below it flows full at its own velocity."""
    print("diameter,gradient,n,usual,usual_velocity,count,other,other_velocity,at,place,flow")
    usual, v = mpf("0.3"), mpf("0.8")
    for count, at in [(39, i) for i in range(39)] + [(1030, 1023), (1030, 1024), (1, 0), (2, 1)]:
        for other, u in ((mpf("0.7"), mpf("1.1")),) + (((mpf("-0.02"), mpf("0.4")), (mpf("0.21"), mpf("-0.3")), (mpf("0"), mpf("0.5"))) if at % 13 == 0 else ()):
            full = mp.pi * D * D / 4
            flow = u * full if other > D else 0 * D if other <= 0 else u * area(other)
            cells(D, S, N, usual, v, count, other, u, at, at, flow)
            if count > 1:
                cells(D, S, N, usual, v, count, other, u, at, at - 1 if at else count - 1, v * area(usual))


def infinite():
    """A velocity without bound is refused wherever it stands."""
    print("diameter,gradient,n,usual,usual_velocity,count,other,other_velocity,at,place,refused")
    for count, at in [(39, i) for i in range(39)] + [(1030, 1023), (1030, 1024), (1, 0)]:
        for v, refused in (("1", 1), ("-1", 1)) if at % 7 == 0 else (("1", 1),):
            cells(D, S, N, mpf("0.3"), mpf("0.8"), count, mpf("0.25"), v, at, 0, refused)
    cells(D, S, N, mpf("0.3"), mpf("0.8"), 39, mpf("0.25"), "0", 5, 0, 0)


TABLES = {
    "refusals-of-velocities": infinite,
    "arrays-of-depths": depths,
    "arrays-of-discharges": discharges,
    "arrays-refused": refused,
    "arrays-where-defined": defined,
    "arrays-monitored": monitored,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
