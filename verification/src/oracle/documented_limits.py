"""Inputs a little inside and outside the limits that the library documents: 0 if it must answer, 1 if it must refuse. Plain Python.

    python3 documented_limits.py FOLDER

writes refusals-of-flow into a folder named hydraulics, refusals-of-laws into one named rainfall. The limits stand in the documentation of
each method; here they are lists of intervals, and every row is a comparison with them.
"""

import sys
from pathlib import Path

from own_tables import write

INSIDE, OUTSIDE = 0.985, 1.015


def around(low, high):
    """Values on either side of both ends of [low, high], and whether they lie outside."""
    values = []
    for end in (low, high):
        for share in (INSIDE, 1, OUTSIDE):
            v = end * share if end else (share - 1)
            values.append((v, 0 if low <= v <= high else 1))
    return values


def table(folder, name, title, cases, fixed):
    """cases: name of the column, its unit, calculation, more lines, values with verdicts."""
    columns, checks, rows = [], [], []
    for column, unit, calculation, lines, values in cases:
        columns += [(column, unit), (column + "_refused", "1, 1 if refused, else 0")]
        checks.append((column + "_refused", "refusal." + calculation, *lines))
    width = max(len(values) for *_, values in cases)
    for i in range(width):
        row = []
        for *_, values in cases:
            row += [repr(values[i][0]) if isinstance(values[i][0], float) else values[i][0], values[i][1]] if i < len(values) else ["", ""]
        rows.append(row)
    write(folder, "documented_limits.py", name, title, columns, fixed, checks, rows, tolerance="0", reason="a verdict")


def flow(folder):
    pipe = ["input.diameter = 0.3", "input.n = 0.013"]
    both_signs = [(s * v, out) for v, out in around(1e-12, 1.0) for s in (1, -1)] + [(0.0, 0)]
    # An adverse or level pipe has no uniform flow, so only falling ones are asked for it here.
    falling = [(v, out) for v, out in both_signs if v > 0]
    table(folder, "refusals-of-flow", "limits that the library documents of sections, gradients and roughness", [
        ("n", "s/m^(1/3), Manning's n", "resistance.velocity", ["input.radius = 0.1", "input.gradient = 0.002", "input.n = n"], around(0.001, 1.0)),
        ("k", "m^(1/3)/s, Strickler's coefficient", "resistance.velocity", ["input.radius = 0.1", "input.gradient = 0.002", "input.strickler = k"], around(1.0, 1000.0)),
        ("s", "m/m, gradient", "flow.discharge", [*pipe, "input.depth = 0.1", "input.gradient = s"], falling),
        ("d", "m, bore", "flow.discharge", ["input.n = 0.013", "input.gradient = 0.01", "input.diameter = d"], around(1e-6, 50.0)),
        ("y", "m, depth", "flow.discharge", [*pipe, "input.gradient = 0.01", "input.depth = y"], around(0.0, 0.3)),
        ("r", "1, relative roughness", "friction.darcy-factor", ["input.reynolds = 20000", "input.relative_roughness = r"], around(0.0, 1.0)),
    ], [])


def laws(folder):
    shape = lambda family, k: f"30 8 {k!r}"
    open_below = lambda limit: [(limit * s, 1 if abs(limit * s) >= abs(limit) else 0) for s in (INSIDE, 1, OUTSIDE)]
    lines = lambda family, column: [f"input.family = word {family}", f"input.parameters = text {column}", "input.moment = word tau3"]
    texts = lambda values: [(f"30 8 {v!r}", out) for v, out in values]
    wakeby = lambda **given: [f"input.{key} = {given.get(key, default)}" for key, default in (("xi", 0), ("alpha", 2), ("beta", 0.5), ("gamma", 1), ("delta", 0.1))]
    table(folder, "refusals-of-laws", "limits that the library documents of laws, samples and ranks", [
        ("gev", "text, parameters", "frequency.l-moment", lines("gev", "gev"), texts(open_below(-1.0))),
        ("glo", "text, parameters", "frequency.l-moment", lines("generalized-logistic", "glo"), texts(open_below(-1.0) + open_below(1.0))),
        ("gno", "text, parameters", "frequency.l-moment", lines("generalized-normal", "gno"), texts(around(-6.0, 6.0))),
        ("kap", "text, parameters", "frequency.l-moment", lines("kappa", "kap"), [("30 8 -0.985 0.3", 0), ("30 8 -1.015 0.3", 1), ("30 8 0.5 -1.97", 0), ("30 8 0.5 -2.03", 1), ("30 8 -0.5 -3", 0)]),
        ("beta", "1, beta", "wakeby.l-moment", [*wakeby(beta="beta", gamma=0, delta=0), "input.moment = 3"], open_below(-1.0)),
        ("delta", "1, delta", "wakeby.l-moment", [*wakeby(delta="delta"), "input.moment = 3"], open_below(1.0)),
        ("alpha", "1, alpha", "wakeby.mean", wakeby(alpha="alpha"), [(-0.985, 0), (-1.0, 0), (-1.015, 1)]),
        ("skew", "1, skew", "low-outliers.skew.error-17b", ["input.skew = skew", "input.years = 30"], around(-3.0, 3.0)),
        ("years", "1, years", "low-outliers.skew.error-17b", ["input.skew = 0.4", "input.years = years"], [(9, 1), (10, 0), (10000, 0), (10001, 1)]),
        ("size", "1, values", "low-outliers.critical-deviate", ["input.size = size"], [(9, 1), (10, 0), (149, 0), (150, 1)]),
        ("rank", "1, rank", "frequency.plotting-position", ["input.formula = word weibull", "input.rank = rank", "input.size = 7"], [(0, 1), (1, 0), (7, 0), (8, 1)]),
        ("zeros", "mm, a sample", "low-outliers.count", ["input.sample = text zeros"], [("0 0 0 0 0 3 4 5 6 7", 1), ("0 0 0 0 2 3 4 5 6 7", 0), ("0 0 0 1 1 5 5 5 5 5", 1), ("0 0 0 1 1 5 5 5 5 6", 0)]),
    ], [])


if __name__ == "__main__":
    flow(sys.argv[1]) if Path(sys.argv[1]).resolve().name == "hydraulics" else laws(sys.argv[1])
