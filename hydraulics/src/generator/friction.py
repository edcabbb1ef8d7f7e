"""
Computes the pieces of ln w(z), w + ln w = z (Wright's omega function), with which dev.runnel.hydraulics.flow.DarcyFriction
solves the equation of Colebrook and White:

    python3 hydraulics/src/generator/friction.py hydraulics/src/main

See unit_circle.py beside it.
"""

import sys
from pathlib import Path

from mpmath import exp, log, mp, mpf

from unit_circle import Piecewise, octaves


def log_omega(z):
    """The root y of exp(y) + y = z."""
    y = log(z)
    for _ in range(100):
        step = (exp(y) + y - z) / (exp(y) + 1)
        y -= step
        if abs(step) < mpf(10) ** -50:
            return y
    raise SystemExit("no root for " + str(z))


def main(root):
    pieces = Piecewise("log-omega", 9, mpf("2e-16"))
    octaves(pieces, log_omega, 2, 27, 8)
    pieces.write(
        root / "resources/dev/runnel/hydraulics/flow",
        "ln w, w + ln w = z, of z in [2^2, 2^27): 8 pieces an octave, in the mantissa less the middle of its piece",
        "friction.py",
    )


if __name__ == "__main__":
    mp.dps = 60
    main(Path(sys.argv[1]))
