"""
Computes the two tables with which dev.runnel.hydraulics.flow.ColebrookRoot solves the equation of Colebrook and White: the
logarithm of Reynolds' number, and ln w(z), w + ln w = z (the logarithm of Wright's omega function):

    python3 hydraulics/src/generator/friction.py hydraulics/src/main

Both tables take places whose value is a multiple of 2^-38 within 5e-18: sums of such values have no rounding, and a value
needs no second part (accurate tables, S. Gal, 1986; from memory). See unit_circle.py beside it.
"""

import hashlib
import sys
from pathlib import Path

from mpmath import exp, floor, log, mp, mpf

from unit_circle import Piecewise, bits, interpolate, value

GRID = mpf(2) ** 38
HIT = mpf("5e-18")
PER_OCTAVE = 32
LOG_ROWS = 256

# The kernel takes the piece before it has added the last part of z, which is below this.
OVERLAP = mpf("0.003")

# 1/sqrt(f) = (2/ln 10) X, and b = C/Re in X = -ln(k/3.7 + b X).
C = mpf("2.51") * 2 / log(mpf(10))


def log_omega(z):
    """The root y of exp(y) + y = z."""
    y = log(z)
    for _ in range(100):
        step = (exp(y) + y - z) / (exp(y) + 1)
        y -= step
        if abs(step) < mpf(10) ** -50:
            return y
    raise SystemExit("no root for " + str(z))


def accurate(near, place, error):
    """The value next to one wanted, on the grid, whose place is nearly a double; and that double."""
    start = floor(near * GRID + mpf("0.5"))
    for k in range(10_000):
        g = (start + (k + 1) // 2 * (-1) ** k) / GRID
        at = float(place(g))
        if error(mpf(at), g) <= HIT:
            return at, float(g)
    raise SystemExit("no accurate place near " + str(near))


class Accurate(Piecewise):
    """Pieces about accurate places: columns middle, c0, c1, ... in the variable itself less the middle."""

    def add(self, function, low, high, error=None):
        middle, c0 = accurate(
            function((low + high) / 2), lambda g: exp(g) + g, lambda z, g: abs(z - exp(g) - g) / (1 + exp(g))
        )
        half = (high - low) / 2
        exact = interpolate(function, mpf(middle) - half, mpf(middle) + half, self.degree)
        row = [c0] + [float(c) for c in exact[1:]]
        least, most = low - OVERLAP, high + OVERLAP
        for j in range(12):
            z = least + (most - least) * j / 11
            self.worst = max(self.worst, abs(value(row, z - mpf(middle)) - function(z)))
        self.rows.append([middle] + row)


def write_logarithm(folder):
    """i and ln(1/(i C)), i near the inverse of the middle of each of 256 parts of [1, 2)."""
    rows = []
    for j in range(LOG_ROWS):
        middle = 1 + (mpf(j) + mpf("0.5")) / LOG_ROWS
        rows.append(accurate(log(middle / C), lambda g: exp(-g) / C, lambda i, g: abs(log(i * C) + g)))
    worst = max(abs(mpf(g) + log(mpf(i) * C)) for i, g in rows)
    digest = hashlib.sha256(b"".join(bits(c) for row in rows for c in row)).hexdigest()
    head = [
        "# i near 1/m and ln(1/i) - ln(2.51 * 2/ln 10), m the middle of each of 256 parts of [1, 2)",
        "# Made by src/generator/friction.py at 60 digits; do not edit.",
        f"# measured error of the logarithms: {mp.nstr(worst, 3)}",
        f"# sha-256 of the big-endian doubles, row by row: {digest}",
        "inverse,logarithm",
    ]
    body = "\n".join(",".join(repr(c) for c in row) for row in rows)
    (folder / "reynolds-log.csv").write_text("\n".join(head) + "\n" + body + "\n", encoding="utf-8")
    print("reynolds-log", len(rows), "rows, error", mp.nstr(worst, 3))
    high = floor(log(mpf(2)) * GRID) / GRID
    print("ln 2:", float.hex(float(high)), float.hex(float(log(mpf(2)) - high)))


def main(root):
    folder = root / "resources/dev/runnel/hydraulics/flow"
    pieces = Accurate("log-omega", 7, mpf("2e-17"))
    for exponent in range(2, 27):
        for k in range(PER_OCTAVE):
            unit = mpf(2) ** exponent / PER_OCTAVE
            pieces.add(log_omega, (PER_OCTAVE + k) * unit, (PER_OCTAVE + k + 1) * unit)
    pieces.write(
        folder,
        "ln w, w + ln w = z, of z in [2^2, 2^27): 32 pieces an octave, in z less the middle (the first column); the error"
        " is absolute",
        "friction.py",
        ["middle"] + [f"c{j}" for j in range(8)],
    )
    write_logarithm(folder)


if __name__ == "__main__":
    mp.dps = 60
    main(Path(sys.argv[1]))
