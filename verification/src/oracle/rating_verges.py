"""Rating curves in joined segments with offsets of their own, fitted offsets and their limits, and tables of exact steps. Python with
mpmath, SciPy for Student's t; no code in common with the library.

    python3 rating_verges.py FOLDER

writes ratings-in-segments, ratings-segments-refused, ratings-offset-exact, ratings-offset-limits, ratings-offset-bands, ratings-dry and
ratings-tables-exact into the folder of the hydraulics tables. Curves are solutions of the normal equations with 40 digits.
"""

import sys

from mpmath import exp, log, lu_solve, matrix, mp, mpf, nstr, sqrt
from scipy import stats

from own_tables import write

mp.dps = 40
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "rating_verges.py"
show = lambda value: nstr(mpf(value), 17, min_fixed=-mp.inf, max_fixed=mp.inf)
STAGES = "0.21 0.27 0.33 0.4 0.52 0.6 0.71 0.83 0.97 1.1 1.24 1.4"
DISCHARGES = "0.021 0.034 0.058 0.08 0.161 0.22 0.302 0.415 0.55 0.733 1.02 1.36"


def rise(stage, offsets, breaks):
    """1 and the logarithms that each exponent multiplies: from the break below, or from nothing, up to the stage or the break above."""
    row = [mpf(1)]
    for i, a in enumerate(offsets):
        low = breaks[i - 1] if i else None
        top = stage if i == len(breaks) or stage <= breaks[i] else breaks[i]
        if low is None:
            row.append(log(top - a))
        else:
            row.append(log((top - a) / (low - a)) if stage > low else mpf(0))
    return row


def least(rows, right):
    x, y = matrix(rows), matrix(right)
    normal = x.T * x
    return list(lu_solve(normal, x.T * y)), normal**-1


def segments():
    rows = []
    stages, logs = [mpf(w) for w in STAGES.split()], [log(mpf(w)) for w in DISCHARGES.split()]
    for offsets, breaks in (("0.05 0.05", "0.55"), ("0.1 -0.2", "0.65"), ("0 0.3 0.1", "0.45 0.9"), ("-0.1 0.2", "0.4"), ("0.02", "-")):
        a, k = [mpf(w) for w in offsets.split()], [mpf(w) for w in breaks.split() if w != "-"]
        c, inverse = least([rise(h, a, k) for h in stages], logs)
        curve = lambda h: sum(p * r for p, r in zip(c, rise(h, a, k)))
        s = sqrt(sum((q - curve(h)) ** 2 for h, q in zip(stages, logs)) / (len(stages) - 1 - len(a)))
        for i in range(len(a)):
            low, top = (k[i - 1] if i else stages[0]), (k[i] if i < len(k) else stages[-1])
            at = (low + 2 * top) / 3
            factor = exp(curve(top) - c[1 + i] * log(top - a[i]))
            g = matrix(rise(at, a, k))
            leverage = (g.T * inverse * g)[0]
            u = sqrt(s**2 * leverage + (c[1 + i] * mpf("0.004") / (at - a[i])) ** 2)
            rows.append((STAGES, DISCHARGES, offsets, breaks, i, show(factor), show(c[1 + i]), offsets.split()[i], show(k[i - 1]) if i else "", show(at), show(exp(curve(at))), show(u), show(s)))
    columns = [("x", "m, stages"), ("q", "m3/s, discharges"), ("a", "m, offset of each segment"), ("k", "m, where they join"), ("i", "1, which segment"), ("c", "m3/s at 1 m, its constant"), ("b", "1, its exponent"), ("own", "m, its offset"), ("from", "m, where it begins"),
               ("at", "m, stage"), ("out", "m3/s, discharge"), ("u", "1, relative uncertainty with a stage good to 4 mm"), ("s", "1, standard error")]
    given = [("stages", "text x"), ("discharges", "text q"), ("offsets", "text a"), ("breaks", "text k")]
    which = "input.which = i"
    write(FOLDER, PROGRAM, "ratings-in-segments", "ISO 1100-2: rating curves in joined segments by least squares of logarithms, each with an offset of its own", columns, given,
          [("c", "rating.segmented.constant", which), ("b", "rating.segmented.exponent", which), ("own", "rating.segmented.offset", which), ("from", "rating.segmented.from", which), ("out", "rating.segmented.discharge", "input.stage = at"),
           ("u", "rating.segmented.uncertainty", "input.stage = at", "input.stage_uncertainty = 0.004"), ("s", "rating.segmented.standard-error")], rows, tolerance="1e-10 relative", reason="17 digits are given")
    verdicts = [("0.05 0.5", "0.55", 0), ("0.05 0.56", "0.55", 1), ("0.22 0.05", "0.55", 1), ("0.205 0.05", "0.55", 0), ("0 0", "0.28", 0), ("0 0", "0.26", 1), ("0 0", "1.2", 0), ("0 0", "1.25", 1), ("0 0", "1.45", 1), ("0 0", "0.2", 1),
                ("0 0 0", "0.5 0.62", 0), ("0 0 0", "0.5 0.55", 1), ("0 0 0", "0.7 0.5", 1), ("0 0", "0.5 0.9", 1), ("0 NaN", "0.55", 1), ("NaN", "-", 1), ("-1e9 0", "0.55", 0)]
    write(FOLDER, PROGRAM, "ratings-segments-refused", "offsets at or above the foot of their segment, and segments with fewer than two gaugings", columns[:4] + [("refused", "1, 1 if refused")], given, [("refused", "refusal.rating.segmented.standard-error")],
          [(STAGES, DISCHARGES, *v) for v in verdicts], tolerance="0", reason="a verdict")


def power(offset, constant, exponent, stages):
    return " ".join(repr(float(mpf(constant) * (mpf(h) - mpf(offset)) ** mpf(exponent))) for h in stages.split())


def offsets():
    rows = []
    for stages, a, c, b in (("0.3 0.4 0.55 0.7 0.9 1.2", "0.21", "1.3", "1.7"), ("10.3 10.4 10.6 11 12.3", "9.7", "0.4", "2.1"), ("0.3 0.35 0.4 0.5", "-0.6", "2", "0.7")):
        rows.append((stages, power(a, c, b, stages), a, b))
    write(FOLDER, PROGRAM, "ratings-offset-exact", "discharges that follow a power of the stage above an offset, with 16 digits: offset and exponent come back", [("x", "m, stages"), ("q", "m3/s, discharges"), ("a", "m, offset"), ("b", "1, exponent")],
          [("stages", "text x"), ("discharges", "text q")], [("a", "rating.fitted-offset"), ("b", "rating.fitted-offset.exponent")], rows, tolerance="1e-6 relative", reason="a least sum of squares is found to half the digits")
    # The offset is sought from 1/10 000 of the range below the lowest gauging to 30 ranges below it.
    rows = []
    for low, range_ in (("0.5", "2"), ("0.25", "0.25"), ("3", "8")):
        marks = [mpf(low) + mpf(range_) * mpf(s) for s in ("0", "0.1", "0.3", "0.6", "1")]
        stages = " ".join(repr(float(m)) for m in marks)
        for share, refused in (("0.000097", 1), ("0.000104", 0), ("29", 0), ("31", 1)):
            a = mpf(marks[0]) - mpf(range_) * mpf(share)
            rows.append((stages, power(a, "1.1", "1.6", stages), refused))
    write(FOLDER, PROGRAM, "ratings-offset-limits", "offsets nearer to the lowest gauging than 1/10 000 of the range of the gaugings, or farther below it than 30 ranges, are not determined", [("x", "m, stages"), ("q", "m3/s, discharges"), ("refused", "1, 1 if refused")],
          [("stages", "text x"), ("discharges", "text q")], [("refused", "refusal.rating.fitted-offset")], rows, tolerance="0", reason="a verdict")
    # Bands of a curve whose offset is fitted: three parameters of ln Q and their derivatives.
    stages = [mpf(w) for w in "0.31 0.36 0.42 0.5 0.61 0.74 0.9 1.12".split()]
    words = "0.0391 0.0822 0.142 0.246 0.412 0.646 0.968 1.49"
    logs = [log(mpf(w)) for w in words.split()]
    fit = lambda a: least([[mpf(1), log(h - a)] for h in stages], logs)[0]
    squares = lambda a: sum((q - c0 - c1 * log(h - a)) ** 2 for (c0, c1) in [fit(a)] for h, q in zip(stages, logs))
    low, high = mpf("-0.5"), mpf("0.3099")
    golden = (sqrt(mpf(5)) - 1) / 2
    for _ in range(180):
        m, n = high - golden * (high - low), low + golden * (high - low)
        low, high = (low, n) if squares(m) < squares(n) else (m, high)
    a = (low + high) / 2
    c0, c1 = fit(a)
    gradient = lambda h: [mpf(1), log(h - a), -c1 / (h - a)]
    inverse = (matrix([gradient(h) for h in stages]).T * matrix([gradient(h) for h in stages])) ** -1
    s = sqrt(squares(a) / (len(stages) - 3))
    t = mpf(float(stats.t.ppf(0.975, len(stages) - 3)))
    rows = []
    for at in ("0.33", "0.5", "0.87", "1.1"):
        g = matrix(gradient(mpf(at)))
        half = t * s * sqrt((g.T * inverse * g)[0])
        q = exp(c0 + c1 * log(mpf(at) - a))
        rows.append((" ".join(show(h) for h in stages), words, at, show(q * exp(-half)), show(q * exp(half)), show(q)))
    write(FOLDER, PROGRAM, "ratings-offset-bands", "limits of confidence (95 %) of a curve whose offset is fitted too", [("x", "m, stages"), ("q", "m3/s, discharges"), ("at", "m, stage"), ("lower", "m3/s, lower limit"), ("upper", "m3/s, upper limit"), ("middle", "m3/s, discharge")],
          [("stages", "text x"), ("discharges", "text q"), ("stage", "at")], [("lower", "rating.fitted-offset.lower"), ("upper", "rating.fitted-offset.upper"), ("middle", "rating.fitted-offset.discharge")], rows, tolerance="1e-6 relative", reason="the offset is a minimum, found to half the digits")


def dry():
    rows = []
    for offset, stage, q in (("0.05", "0.05", 0), ("0.05", "-1", 0), ("0.1", "0.02", 0)):
        rows.append((STAGES, DISCHARGES, offset, stage, q, "", ""))
    for offset, many, flagged in (("0.05", "0.3 0.5 0.9", 0), ("0.05", "0.2 0.5 1.5", 2), ("0.05", "0.21 1.4", 0), ("0.05", "NaN 0.3 -1 0.04", 3)):
        rows.append((STAGES, DISCHARGES, offset, "", "", many, flagged))
    write(FOLDER, PROGRAM, "ratings-dry", "no discharge at the offset or below it; how many stages of a record are not gauged", [("x", "m, stages"), ("q", "m3/s, discharges"), ("a", "m, offset"), ("at", "m, stage"), ("out", "m3/s, discharge"), ("many", "m, stages of a record"), ("flagged", "1, not gauged")],
          [("stages", "text x"), ("discharges", "text q"), ("offset", "a")], [("out", "rating.many-discharges", "input.stage = at"), ("flagged", "rating.flagged", "input.record = text many")], rows, tolerance="0", reason="none, or a count")
    rows = []
    for low, high, step in (("0.25", "0.75", "0.1"), ("0.3", "1.3", "0.05"), ("0.25", "1.25", "0.125"), ("0.3", "0.6", "0.07"), ("0.3", "1.2", "0.3"), ("0.3", "1.2", "2")):
        n = (mpf(high) - mpf(low)) / mpf(step)
        whole = abs(n - mp.nint(n)) < mpf(10) ** -20
        rows.append((STAGES, DISCHARGES, low, high, step, int(mp.nint(n) if whole else mp.ceil(n)) + 1))
    write(FOLDER, PROGRAM, "ratings-tables-exact", "rows of a table whose steps fit, or leave a short one", [("x", "m, stages"), ("q", "m3/s, discharges"), ("low", "m, first stage"), ("high", "m, last stage"), ("step", "m, step"), ("rows", "1, rows")],
          [("stages", "text x"), ("discharges", "text q"), ("offset", "0.05"), ("from", "low"), ("to", "high"), ("step", "step")], [("rows", "rating.table.rows")], rows, tolerance="0", reason="a count")


if __name__ == "__main__":
    for make in (segments, offsets, dry):
        make()
