"""Inputs a little inside and outside the limits that the library documents: 0 if it must answer, 1 if it must refuse. Python with mpmath.

    python3 documented_limits.py FOLDER

writes refusals-of-flow into a folder named hydraulics, refusals-of-laws, refusals-of-wakeby, infinite-moments,
infinite-moments-of-wakeby and log-normal-below-one into one named rainfall. The limits stand in the documentation of
each method; here they are lists of intervals, and every row is a comparison with them. Probabilities of the log-normal law have 40 digits.
"""

import math
import sys
from pathlib import Path

from mpmath import erfc, log, mp, mpf, nstr, sqrt

from own_tables import text, write

INSIDE, OUTSIDE = 0.985, 1.015


def around(low, high):
    """Values on either side of both ends of [low, high], and whether they lie outside."""
    values = []
    for end in (low, high):
        for share in (INSIDE, 1, OUTSIDE):
            v = end * share if end else (share - 1)
            values.append((v, 0 if low <= v <= high else 1))
    return values


def table(folder, name, title, cases, fixed, program="documented_limits.py"):
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
    write(folder, program, name, title, columns, fixed, checks, rows, tolerance="0", reason="a verdict")


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

    # L-moments by their formula, which goes on beyond the limits though the moments do not.
    def lambdas(alpha, beta, gamma, delta):
        sums = [0.0] * 5
        for factor, k in ((alpha, beta), (gamma, -delta)):
            term = factor / (1 + k)
            for r in range(5):
                sums[r] += term
                term *= (r - k) / (r + 2 + k) if r else 1 / (2 + k)
        return text([3 + sums[0], *sums[1:]])

    table(folder, "refusals-of-wakeby", "L-moments of Wakeby's law, and what its formulae give where it has none or is none", [
        ("beta", "of the variate, five L-moments", "wakeby.of-l-moments", ["input.lambda = text beta", "input.parameter = word beta"], [(lambdas(6.0, b, 1.0, 0.2), int(b <= -1)) for b in (-0.97, -1.015, -1.03)]),
        ("delta", "of the variate, five L-moments", "wakeby.of-l-moments", ["input.lambda = text delta", "input.parameter = word beta"], [(lambdas(2.0, 3.0, 1.0, d), int(d >= 1)) for d in (0.97, 1.015, 1.03)]),
        ("gamma", "of the variate, five L-moments", "wakeby.of-l-moments", ["input.lambda = text gamma", "input.parameter = word beta"], [(lambdas(6.0, 3.0, g, 0.2), int(g < 0)) for g in (0.02, 0.5, -0.02, -0.5)]),
        ("alpha", "of the variate, five L-moments", "wakeby.of-l-moments", ["input.lambda = text alpha", "input.parameter = word beta"], [(lambdas(a, 3.0, 1.0, 0.2), int(a < -1)) for a in (-0.97, -0.5, -1.02, -1.5)]),
    ], [])

    # Where the integral of the quantile function, or of its square, has no end: 1 if it grows without limit, -1 if it falls, 0 if it is finite.
    rows = []
    for limit, family, third, mean, square in (
        (-1.0, "gev", "", 1, ""), (-0.5, "gev", "", "", 1), (-1.0, "generalized-pareto", "", 1, ""), (-0.5, "generalized-pareto", "", "", 1),
        (-1.0, "generalized-logistic", "", 1, ""), (1.0, "generalized-logistic", "", -1, ""), (-0.5, "generalized-logistic", "", "", 1), (0.5, "generalized-logistic", "", "", 1),
        (-1.0, "kappa", " 0.4", 1, ""), (-0.5, "kappa", " 0.4", "", 1),
    ):
        for share in (0.97, 0.985, 1.0, 1.015, 1.03):
            inside = share < 1
            rows.append((family, f"30 8 {limit * share!r}{third}", 0 if mean != "" and inside else mean, 0 if square != "" and inside else square))
    for k, h, mean, square in ((0.5, -1.97, 0, 1), (0.5, -2.0, -1, 1), (0.5, -2.03, -1, 1), (0.5, -0.985, 0, 0), (0.5, -1.0, 0, 1), (0.5, -1.015, 0, 1), (-0.3, -4.0, 0, 0)):
        rows.append(("kappa", f"30 8 {k} {h}", mean, square))
    for skew in (0.97, 0.985, 1.015, 1.03):  # base 10: the mean of 10^x is a Gamma function at 1 - ln(10) sigma skew/2
        for sigma in (0.3, 0.7):
            rows.append(("log-pearson-iii", f"1.7 {sigma} {2 * skew / (sigma * math.log(10))!r}", int(skew > 1), ""))
            rows.append(("log-pearson-iii", f"1.7 {sigma} {skew / (sigma * math.log(10))!r}", "", int(skew > 1)))
    write(folder, "documented_limits.py", "infinite-moments", "where means and variances of laws are infinite: 1 above, -1 below, 0 finite",
          [("family", "text, family"), ("p", "of the variate, parameters"), ("mean", "1, of the mean"), ("variance", "1, of the variance")], [("family", "text family"), ("parameters", "text p")],
          [("mean", "frequency.infinite", "input.moment = word mean"), ("variance", "frequency.infinite", "input.moment = word variance")], rows, tolerance="0", reason="a verdict")
    # Either term alone, so that beta + delta may be what it likes.
    rows = [(2, b, 0, 0.1, int(b <= -1), int(b <= -0.5)) for b in (-0.45, -0.485, -0.5, -0.515, -0.97, -0.985, -1.0, -1.015)]
    rows += [(2, 0.5, 1, d, int(d >= 1), int(d >= 0.5)) for d in (0.0, 0.3, 0.485, 0.5, 0.515, 0.97, 0.985, 1.0, 1.015)]
    write(folder, "documented_limits.py", "infinite-moments-of-wakeby", "where mean and variance of Wakeby's law are infinite: 1, else 0",
          [("alpha", "1, alpha"), ("beta", "1, beta"), ("gamma", "1, gamma"), ("delta", "1, delta"), ("mean", "1, of the mean"), ("variance", "1, of the variance")],
          [("xi", "0"), ("alpha", "alpha"), ("beta", "beta"), ("gamma", "gamma"), ("delta", "delta")],
          [("mean", "wakeby.infinite", "input.moment = word mean"), ("variance", "wakeby.infinite", "input.moment = word variance")], rows, tolerance="0", reason="a verdict")
    # Laws of a logarithm below 1, where the logarithm is negative.
    mp.dps = 40
    rows = []
    for mu, sigma in (("0", "1"), ("-1.2", "0.4"), ("0.3", "1.7")):
        for x in ("-3", "0", "1e-9", "0.02", "0.31", "0.94", "1", "1.04", "6"):
            if float(x) <= 0:
                rows.append((f"{mu} {sigma}", x, 0, 1))
                continue
            z = (log(mpf(x)) - mpf(mu)) / mpf(sigma)
            below, above = erfc(-z / sqrt(mpf(2))) / 2, erfc(z / sqrt(mpf(2))) / 2
            rows.append((f"{mu} {sigma}", x, nstr(below, 18), nstr(above, 18)))
    write(folder, "documented_limits.py", "log-normal-below-one", "the log-normal law of small values and of those that it has not",
          [("p", "1, mean and standard deviation of the logarithm"), ("x", "of the variate, value"), ("below", "1, non-exceedance"), ("above", "1, exceedance")], [("family", "word log-normal"), ("parameters", "text p"), ("x", "x")],
          [("below", "frequency.non-exceedance"), ("above", "frequency.exceedance")], rows, tolerance="1e-13 relative or 1e-300")


if __name__ == "__main__":
    flow(sys.argv[1]) if Path(sys.argv[1]).resolve().name == "hydraulics" else laws(sys.argv[1])
