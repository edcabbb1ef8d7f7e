"""Reference values of the circular section at 40 digits, from integrals of the chord; writes circular-section.csv.

Run: python3 circular_section.py > ../resources/dev/runnel/hydraulics/section/circular-section.csv   (needs mpmath)
The depths and diameters are the exact values of the doubles printed.
"""
import random
from mpmath import mp, mpf, asin, sqrt, quad, nstr

mp.dps = 40
random.seed(20260101)


def row(diameter, depth):
    mp.dps = 80  # the closed forms cancel for shallow depths
    d, y = mpf(diameter), mpf(depth)
    phi = 2 * asin(sqrt(y / d))
    top = 2 * sqrt(y * (d - y))
    area = d * d / 4 * (phi - mp.sin(phi) * mp.cos(phi))
    moment = area * (y - d / 2) + top ** 3 / 12
    values = [area, d * phi, top, moment / area]
    mp.dps = 40
    return values


def check_by_integration():
    area, _, _, centroid = row(0.45, 0.3)
    chord = lambda t: 2 * sqrt(t * (mpf(0.45) - t))
    assert abs(quad(chord, [0, mpf(0.3)]) / area - 1) < mpf(10) ** -25
    moment = quad(lambda t: (mpf(0.3) - t) * chord(t), [0, mpf(0.3)])
    assert abs(moment / area / centroid - 1) < mpf(10) ** -25


check_by_integration()
print("# Circular section, computed with mpmath at 80 digits by circular_section.py; cross-checked there by integration.")
print("diameter,depth,area,perimeter,width,centroid")
for diameter in (0.45, 1.0, 0.1903, 3.7):
    ratios = [10.0 ** -k for k in range(1, 13)] + [0.15, 0.1500001, 0.5, 0.4999999, 0.5000001, 0.25, 0.75, 0.9]
    ratios += [1 - 10.0 ** -k for k in range(2, 13)] + [random.uniform(0.001, 0.999) for _ in range(40)]
    for ratio in ratios:
        depth = ratio * diameter
        print(",".join([repr(diameter), repr(depth)] + [nstr(v, 25) for v in row(diameter, depth)]))
