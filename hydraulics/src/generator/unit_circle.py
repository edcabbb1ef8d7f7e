"""
Computes the polynomials of the unit circle (diameter 1) from which circular sections take areas and angles, and circular
conduits Manning's discharge, the critical discharge and the inverses of both.

    python3 hydraulics/src/generator/unit_circle.py hydraulics/src/main

It stands beside the sources it writes, as it is part of them, not of their proof: the proof is a file of values that come
from the defining formulas alone (unit_circle_reference.py). Needs mpmath. Everything is computed at 60 digits: the
function is interpolated at Chebyshev's points of each piece, turned into powers of the variable measured from the middle
of the piece, and only then rounded to double. The error bound in each header is measured at other points, with the
rounded coefficients, before any rounding of the evaluation; a piece above the bound stops the program.
"""

import hashlib
import struct
import sys
from pathlib import Path

from mpmath import asin, cos, findroot, mp, mpf, pi, sqrt

mp.dps = 60
FULL_MANNING = (pi / 4) ** (mpf(5) / 3) / pi ** (mpf(2) / 3)


# --- the circle of diameter 1, from the half angle phi that the water subtends: y = (1 - cos phi)/2 -------------------


def segment(w):
    """Area of the segment of height w, without cancellation at 60 digits (w is not below 1e-15)."""
    phi = 2 * asin(sqrt(w))
    return (phi - 2 * sqrt(w * (1 - w)) * (1 - 2 * w)) / 4


def area(x):
    return segment(x) if x <= mpf(1) / 2 else pi / 4 - segment(1 - x)


def perimeter(x):
    return 2 * asin(sqrt(x)) if x <= mpf(1) / 2 else pi - 2 * asin(sqrt(1 - x))


def manning(x):
    """Discharge over that of the full circle."""
    return area(x) ** (mpf(5) / 3) / perimeter(x) ** (mpf(2) / 3) / FULL_MANNING


def manning_slope(x):
    """d(ln manning)/dx."""
    width = 2 * sqrt(x * (1 - x))
    return mpf(5) / 3 * width / area(x) - mpf(2) / 3 * (2 / width) / perimeter(x)


def critical(x):
    """A sqrt(A/T): critical discharge over sqrt(g D^5)."""
    return area(x) ** mpf(1.5) / sqrt(2 * sqrt(x * (1 - x)))


CREST = findroot(manning_slope, (mpf("0.9381"), mpf("0.9382")))
MOST = manning(CREST)


# --- polynomials -------------------------------------------------------------------------------------------------------


def newton(nodes, values):
    """Coefficients, lowest first, of the polynomial through points: Newton's divided differences, then expanded."""
    n = len(nodes)
    table = list(values)
    for level in range(1, n):
        for i in range(n - 1, level - 1, -1):
            table[i] = (table[i] - table[i - 1]) / (nodes[i] - nodes[i - level])
    powers = [mpf(0)] * n
    for i in range(n - 1, -1, -1):
        shifted = [mpf(0)] + powers[:-1]
        powers = [shifted[j] - nodes[i] * powers[j] for j in range(n)]
        powers[0] += table[i]
    return powers


def interpolate(function, low, high, degree):
    """Coefficients, lowest first, in the variable less the middle of [low, high]."""
    middle = (low + high) / 2
    half = (high - low) / 2
    n = degree + 1
    nodes = [cos(pi * (2 * k + 1) / (2 * n)) for k in range(n)]
    values = [function(middle + half * t) for t in nodes]
    powers = newton(nodes, values)
    return [powers[j] / half**j for j in range(n)]


def value(coefficients, t):
    result = mpf(0)
    for c in reversed(coefficients):
        result = result * t + mpf(c)
    return result


def from_zero(function, high, degree):
    """
    Coefficients in the variable itself, fitted on (0, high] for use as first + w * polynomial: the error counts by its
    factor w, so that the places where it is none are those of Chebyshev stretched until the lowest lies at 0.
    """
    n = degree + 2
    places = [cos(pi * (2 * k + 1) / (2 * n)) for k in range(n)]
    lowest = places.pop()
    nodes = [(t - lowest) / (1 - lowest) * high for t in places]
    return newton(nodes, [function(w) for w in nodes])


def bits(x):
    return struct.pack(">d", float(x))


class Piecewise:
    """Pieces of one table, all of one degree."""

    def __init__(self, name, degree, bound):
        self.name, self.degree, self.bound = name, degree, bound
        self.rows, self.worst = [], mpf(0)

    def add(self, function, low, high, error=None):
        row = [float(c) for c in interpolate(function, low, high, self.degree)]
        middle = (low + high) / 2
        for j in range(11):
            u = low + (high - low) * (mpf(j) + mpf("0.137")) / mpf("10.5")
            exact = function(u)
            got = value(row, u - middle)
            off = abs(got - exact) / abs(exact) if error is None else error(u, got, exact)
            self.worst = max(self.worst, off)
        self.rows.append(row)

    def head(self, text, program):
        if self.worst > self.bound:
            raise SystemExit(f"{self.name}: error {mp.nstr(self.worst, 3)} above {mp.nstr(self.bound, 3)}")
        print(self.name, len(self.rows), "pieces, error", mp.nstr(self.worst, 3))
        digest = hashlib.sha256(b"".join(bits(c) for row in self.rows for c in row)).hexdigest()
        return [
            f"# {text}",
            f"# Made by src/generator/{program} at 60 digits; do not edit.",
            f"# measured error of the rounded polynomials: {mp.nstr(self.worst, 3)}",
            f"# sha-256 of the big-endian doubles, row by row: {digest}",
        ]

    def write(self, folder, text, program="unit_circle.py", columns=None):
        body = "\n".join(",".join(repr(c) for c in row) for row in self.rows)
        head = self.head(text, program) + [",".join(columns or [f"c{j}" for j in range(self.degree + 1)])]
        (folder / f"{self.name}.csv").write_text("\n".join(head) + "\n" + body + "\n", encoding="utf-8")

    def write_bits(self, folder, text, program="unit_circle.py"):
        """For long tables: text would take longer to read than all else that a first question needs."""
        head = "\n".join(self.head(text, program)) + "\n\n"
        body = b"".join(bits(c) for row in self.rows for c in row)
        (folder / f"{self.name}.doubles").write_bytes(head.encode("utf-8") + body)


def octaves(piecewise, function, first, last, per_octave):
    for exponent in range(first, last):
        low = mpf(2) ** exponent
        for k in range(per_octave):
            # In the mantissa, so that the same digits serve each octave: u in [1 + k/n, 1 + (k+1)/n).
            piecewise.add(
                lambda m: function(m * low), 1 + mpf(k) / per_octave, 1 + mpf(k + 1) / per_octave
            )


# --- inverses at 60 digits ---------------------------------------------------------------------------------------------


def manning_depth_low(q):
    """Depth below the crest, of q up to 0.6 or so."""
    c = (mpf(4) / 3) ** (mpf(5) / 3) / 2 ** (mpf(2) / 3) / FULL_MANNING
    guess = (q / c) ** (mpf(6) / 13)
    x = min(guess, mpf("0.6"))
    for _ in range(60):
        step = (mp.log(manning(x)) - mp.log(q)) / manning_slope(x)
        # Newton in ln x, where the curve is nearly straight.
        x *= mp.exp(-step / x) if abs(step) > x / 10 else 1 - step / x
        if abs(step) < x * mpf(10) ** -52:
            return x
    raise SystemExit("no depth for " + str(q))


def manning_of_air(t):
    """Discharge ratio as a function of t = sqrt(1 - x); analytic through t = 0."""
    w = t * t
    phi = pi - 2 * asin(t)
    a = (phi + 2 * t * sqrt(1 - w) * (1 - 2 * w)) / 4
    return a ** (mpf(5) / 3) / phi ** (mpf(2) / 3) / FULL_MANNING


CREST_T = sqrt(1 - CREST)


def air_root(s):
    """t = sqrt(1 - x) from s = +-sqrt(1 - q/most), positive below the crest."""
    if s == 0:
        return CREST_T
    q = MOST * (1 - s * s)
    # q - most = -k (t - crest)^2 ...: start on the right side of the crest.
    t = CREST_T + s * mpf("0.55")
    for _ in range(200):
        # Newton on the root of the deficit, which is nearly straight.
        deficit = 1 - manning_of_air(t) / MOST
        root = mp.sign(t - CREST_T) * sqrt(abs(deficit))
        slope = mp.diff(manning_of_air, t) / MOST
        step = (root - s) / (-slope / (2 * root))
        t -= step
        if abs(step) < mpf(10) ** -45:
            return t
    raise SystemExit("no air for " + str(s))


def root_of(v):
    """t = sqrt(1 - x) in (0, 1) of v = x (1 - t (3/2 - 3/4 t)), which falls from 1 to 0 while t rises."""
    t, low, high = mpf(1) / 2, mpf(0), mpf(1)
    for _ in range(400):
        x = 1 - t * t
        bracket = 1 - t * (mpf(3) / 2 - mpf(3) / 4 * t)
        excess = x * bracket - v
        low, high = (t, high) if excess > 0 else (low, t)
        step = excess / (-2 * t * bracket - x * (mpf(3) / 2 - mpf(3) / 2 * t))
        if abs(step) < mpf(10) ** -(mp.dps - 3):
            return t - step
        t = t - step if low < t - step < high else (low + high) / 2
    raise SystemExit("no root for " + str(v))


def manning_depth(v):
    """Depth below the crest of the variable of its pieces."""
    with mp.workdps(mp.dps + 20):
        s = root_of(v)
        q = MOST * (1 - s * s)
    return manning_depth_low(q) if q < mpf(1) / 2 else 1 - air_root(s) ** 2


def critical_ratio(r):
    """x/r with r = sqrt(q); analytic in r."""
    target = r * r
    x = min(r * mpf(0.8), mpf("0.9"))
    for _ in range(200):
        width = 2 * sqrt(x * (1 - x))
        slope = mpf(1.5) * width / area(x) - mpf(0.5) * (1 - 2 * x) * 2 / width / width
        step = mp.log(critical(x) / target) / slope
        x = x - step if 0 < x - step < 1 else (x / 2 if step > 0 else (x + 1) / 2)
        if abs(step) < mpf(10) ** -50 * x:
            return x / r
    raise SystemExit("no critical depth for " + str(r))


def critical_air(z):
    """t/z with t = sqrt(1 - x) and z = 1/q^2; from t = A^3/(2 sqrt(x)) z, analytic in z."""
    t = min(z / 5, mpf("0.3"))
    for _ in range(400):
        w = t * t
        a = pi / 4 - (segment(w) if w > mpf(10) ** -16 else mpf(4) / 3 * t**3)
        new = a**3 / (2 * sqrt(1 - w)) * z
        if abs(new - t) < mpf(10) ** -50 * t:
            return new / z
        t = (t + new) / 2 if z > 1 else new
    raise SystemExit("no critical air for " + str(z))


def main(root):
    resources = root / "resources/dev/runnel/hydraulics/flow"
    resources.mkdir(parents=True, exist_ok=True)
    java(root / "java/dev/runnel/hydraulics/internal/SegmentPolynomials.java")

    tiny = mpf("2e-16")
    forward = Piecewise("circle-manning", 6, tiny)
    octaves(forward, lambda v: manning_of_air(root_of(v)), -22, 0, 64)
    forward.write_bits(
        resources,
        "Q/Qfull of v = x (1 - t (3/2 - 3/4 t)) in [2^-22, 1), x = y/D, t = sqrt(1 - x):"
        " 64 pieces an octave, in the mantissa less the middle of its piece",
    )
    inverse = Piecewise("circle-manning-depth", 6, tiny)
    octaves(inverse, manning_depth, -47, 0, 64)
    inverse.write_bits(
        resources,
        "y/D below the crest of v = x (1 - s (3/2 - 3/4 s)) in [2^-47, 1), x = Q/Qmax, s = sqrt(1 - x):"
        " 64 pieces an octave, in the mantissa less the middle of its piece",
    )
    # Above the crest the pieces are short: dQ/dt is 0 again at a t below 0, a branch point of t near s = -0.37.
    crest = Piecewise("circle-manning-above", 9, tiny)
    for k in range(-34, 0):
        crest.add(air_root, mpf(k) / 128, mpf(k + 1) / 128, lambda u, got, exact: abs(got - exact))
    crest.write(
        resources,
        "sqrt(1 - y/D) above the crest, of s = -sqrt(1 - Q/Qmax) in [-34/128, 0):"
        " pieces of 1/128, in s less their middle; the error is absolute",
    )
    lower = Piecewise("circle-critical-depth", 9, tiny)
    for k in range(28):
        lower.add(critical_ratio, mpf(k) / 32, mpf(k + 1) / 32)
    lower.write(resources, "(y/D)/r of r = sqrt(q) in [0, 28/32), q = Q/sqrt(g D^5): pieces of 1/32, in r less their middle")
    top = Piecewise("circle-critical-air", 9, tiny)
    for k in range(28):
        top.add(critical_air, mpf(k) / 16, mpf(k + 1) / 16)
    top.write(resources, "sqrt(1 - y/D)/z of z = 1/q^2 in [0, 28/16), q = Q/sqrt(g D^5): pieces of 1/16, in z less their middle")
    print("crest", mp.nstr(CREST, 25), "most", mp.nstr(MOST, 25), "crest t", mp.nstr(CREST_T, 25))


def java(path):
    half = mpf(1) / 2
    a = from_zero(lambda w: (segment(w) / w ** mpf(1.5) - mpf(4) / 3) / w, half, AREA_DEGREE)
    p = from_zero(lambda w: (2 * asin(sqrt(w)) / sqrt(w) - 2) / w, half, ANGLE_DEGREE)
    worst_a = worst_p = mpf(0)
    for j in range(1, 400):
        w = half * j / 400
        worst_a = max(worst_a, abs(w**mpf(1.5) * (mpf(4) / 3 + w * value([float(c) for c in a], w)) / segment(w) - 1))
        worst_p = max(worst_p, abs(sqrt(w) * (2 + w * value([float(c) for c in p], w)) / (2 * asin(sqrt(w))) - 1))
    if max(worst_a, worst_p) > mpf("1e-16"):
        raise SystemExit(f"segment polynomials: {mp.nstr(worst_a, 3)}, {mp.nstr(worst_p, 3)}")
    digest = hashlib.sha256(b"".join(bits(c) for c in a + p)).hexdigest()
    lines = [
        "package dev.runnel.hydraulics.internal;",
        "",
        "/**",
        " * Polynomials of a segment of the unit circle, made by src/generator/unit_circle.py at 60 digits; do not edit. Constants",
        " * of a class, not a table: the compiler writes them into the vector loops.",
        " *",
        " * <p>Measured error before any rounding of the evaluation: area " + mp.nstr(worst_a, 3) + ", angle " + mp.nstr(worst_p, 3) + ". SHA-256 of",
        " * the big-endian doubles, A then P: {@value #DIGEST}.",
        " */",
        "final class SegmentPolynomials {",
    ]
    for name, row, text in (
        ("A", a, "Area of the segment of height w up to 1/2 is w^(3/2) (4/3 + w (A0 + A1 w + ...))."),
        ("P", p, "Half of the angle that its chord subtends is w^(1/2) (2 + w (P0 + P1 w + ...))."),
    ):
        lines.append(f"    /** {text} */")
        for j, c in enumerate(row):
            lines.append(f"    static final double {name}{j} = {float(c)!r};")
            lines.append("")
    lines += [
        "    /** Of the numbers above. */",
        f'    static final String DIGEST = "{digest}";',
        "",
        "    private SegmentPolynomials() {}",
        "}",
    ]
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("segment", len(a), len(p), mp.nstr(worst_a, 3), mp.nstr(worst_p, 3))


AREA_DEGREE = 15
ANGLE_DEGREE = 17

if __name__ == "__main__":
    main(Path(sys.argv[1]))
