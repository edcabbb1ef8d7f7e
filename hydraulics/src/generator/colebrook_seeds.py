"""
Computes which node of the unit circle stands next to a part r of the full-bore discharge by the law of Colebrook and White, for
every pipe nearly: what dev.runnel.hydraulics.flow.ColebrookSeeds reads.

    python3 hydraulics/src/generator/colebrook_seeds.py hydraulics/src/main

With 1/lambda the logarithm of the law in the full bore and p the part of the smooth wall in what that logarithm is of, the number
of the node is c0 + c1 m + c2 m^2 + c3 lambda p (1 - p) with m = lambda (1 + p/2) over a cell of r: through three rough walls and
one half smooth, solved here by halving. A start of a search and no more, so the coefficients have no digits below a millionth, and come out the
same wherever this runs. Needs NumPy. Cells and nodes are those of ColebrookCells and CircleNodes.
"""

import hashlib
import math
import sys
from pathlib import Path

import numpy

WALLS = [(-0.12, 0.0), (-0.16, 0.0), (-0.22, 0.0), (-0.12, 0.5)]

FIRST_OCTAVE, END_OCTAVE, PER_OCTAVE, BEYOND_CREST = -8, 20, 128, 1.08
NODES_PER_UNIT, FIRST_NODE = 200, -1540


def law(x, wall):
    """Q/Qfull of a part x of the diameter."""
    logarithm, smooth = 1 / wall[0], wall[1]
    inner = math.exp(logarithm)
    angle = numpy.arccos(1 - 2 * x)
    area = (angle - numpy.sin(angle) * numpy.cos(angle)) / 4
    radius = area / angle
    here = numpy.log((1 - smooth) * inner / (4 * radius) + smooth * inner / (8 * radius**1.5))
    return numpy.where(here < 0, area * numpy.sqrt(radius) * here / (math.pi / 8 * logarithm), 0)


def numbers(parts, wall):
    """Number of the depth of each part on the branch that rises; no number for more than the pipe carries."""
    grid = numpy.linspace(0.9, 1, 100001)
    crest = grid[numpy.argmax(law(grid, wall))]
    low, high = numpy.full(parts.shape, -25.0), numpy.full(parts.shape, math.log(crest / (1 - crest)))
    for _ in range(60):
        middle = (low + high) / 2
        is_below = law(1 / (1 + numpy.exp(-middle)), wall) < parts
        low, high = numpy.where(is_below, middle, low), numpy.where(is_below, high, middle)
    return numpy.where(parts <= law(crest, wall), NODES_PER_UNIT * high - FIRST_NODE, numpy.nan)


def main(root):
    starts = [BEYOND_CREST / (1 + math.ldexp(1 + k / PER_OCTAVE, octave)) for octave in range(FIRST_OCTAVE, END_OCTAVE) for k in range(PER_OCTAVE)]
    starts.append(BEYOND_CREST / (1 + math.ldexp(1, END_OCTAVE)))
    middles = [(a + b) / 2 for a, b in zip(starts, starts[1:])]
    terms = [[1, l * (1 + p / 2), (l * (1 + p / 2)) ** 2, l * p * (1 - p)] for l, p in WALLS]
    c = numpy.linalg.solve(terms, [numbers(numpy.array(middles), wall) for wall in WALLS])
    rows = numpy.column_stack([numpy.round(c.T * 2**20) / 2**20, middles, numpy.array(starts[:-1]) - middles])
    body = rows.astype(">f8").tobytes()
    head = [
        "# number of the node next to a part of the full-bore discharge, cell after cell: c0 to c3, the middle of the cell, half of its width",
        "# Made by src/generator/colebrook_seeds.py; do not edit.",
        f"# sha-256 of the big-endian doubles, row by row: {hashlib.sha256(body).hexdigest()}",
    ]
    path = root / "resources/dev/runnel/hydraulics/flow/colebrook-seeds.doubles"
    path.write_bytes(("\n".join(head) + "\n\n").encode("utf-8") + body)
    print(path.name, rows.shape, "of which none", int(numpy.isnan(rows[:, 0]).sum()))


if __name__ == "__main__":
    main(Path(sys.argv[1]))
