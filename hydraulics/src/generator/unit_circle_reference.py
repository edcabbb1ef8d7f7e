"""
Writes the values that the pieces of unit_circle.py are tested against, from the defining formulas alone at 100 digits:

    python3 hydraulics/src/generator/unit_circle_reference.py > \\
        hydraulics/src/test/resources/dev/runnel/hydraulics/flow/circle-curves.csv
"""

from mpmath import acos, mp, mpf, pi, sin, sqrt

mp.dps = 100


def parts():
    for exponent in range(1, 13):
        for digit in ("1.0", "1.37", "2.9", "6.1"):
            yield float(digit) * 10.0**-exponent
            yield 1 - float(digit) * 10.0**-exponent
    for i in range(1, 200):
        yield i / 200 + 0.0011
    yield 0.9381812161606071


print("# y/D, Q/Qfull by Manning and Q/sqrt(g D^5) critical; mpmath at 100 digits, unit_circle_reference.py")
print("part,manning,critical")
for part in parts():
    if not 0 < part < 1:
        continue
    x = mpf(part)
    theta = 2 * acos(1 - 2 * x)
    area = (theta - sin(theta)) / 8
    perimeter = theta / 2
    ratio = (area / (pi / 4)) ** (mpf(5) / 3) / (perimeter / pi) ** (mpf(2) / 3)
    critical = area * sqrt(area / (2 * sqrt(x * (1 - x))))
    print(f"{part!r},{mp.nstr(ratio, 25)},{mp.nstr(critical, 25)}")
