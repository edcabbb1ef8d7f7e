"""Gaugings, bench checks and calibration lines at the verges of their rules. Python with mpmath, no code in common with the library.

    python3 gauging_verges.py FOLDER

writes bench-verdicts, gaugings-with-triangles, gaugings-as-they-come, calibrations-of-any-size, calibrations-turned-round into the folder
of the hydraulics tables. Lines with errors in both coordinates are minima of their chi-squared found by bisection of its slope with 40
digits; depths near a bank are straight lines, integrated.
"""

import sys

from mpmath import diff, mp, mpf, nstr, quad, sqrt

from own_tables import write

mp.dps = 40
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "gauging_verges.py"
show = lambda value: nstr(mpf(value), 17, min_fixed=-mp.inf, max_fixed=mp.inf)


def bench():
    rows = []
    for references, readings, u, tolerance, share in (
        ("1 2 3", "1.04 2 3", "0.004", "0.05", "0"), ("1 2 3", "1.04 2 3", "0.006", "0.05", "0"), ("1 2 3", "1.06 2 3", "0.006", "0.05", "0"), ("1 2 3", "1.06 2 3", "0.004", "0.05", "0"),
        ("1 2 3", "0.96 2 3", "0.004", "0.05", "0"), ("1 2 3", "0.94 2 3", "0.004", "0.05", "0"), ("1 2 3", "1.25 2 3", "0.125", "0.5", "0"), ("1 2 3", "1.75 2 3", "0.125", "0.5", "0"), ("1 2 3", "1 2 3.06", "0.001", "0.05", "0"),
        ("1 2 4", "1 2 4.06", "0.001", "0.03", "0.01"), ("1 2 4", "1.05 2 4", "0.001", "0.03", "0.01"), ("-1 2 4", "-1.035 2 4", "0.001", "0.03", "0.01"), ("1 2 4", "1 2.01 4", "0.001", "0.01", "0.01"), ("1 2 4", "1.02 2 4", "0", "0", "0.01"),
        ("1 1 2 2 3", "1.01 1.03 1.99 2 3.02", "0.002", "0.05", "0"), ("1 1 1 2 2 3 3", "1.01 1.03 1.05 1.9 2 3.02 3", "0.002", "0.1", "0.01"), ("1 1 2 3 5", "1 1.04 2.02 3 5", "0", "0.03", "0.004"),
    ):
        levels = {}
        for r, v in zip(references.split(), readings.split()):
            levels.setdefault(r, []).append(mpf(v) - mpf(r))
        freedom = sum(len(e) - 1 for e in levels.values())
        spread = lambda e: sum((x - sum(e) / len(e)) ** 2 for x in e)
        pooled = sqrt(sum(map(spread, levels.values())) / freedom) if freedom else mpf(0)
        verdicts = []
        for number, (level, errors) in enumerate(levels.items()):
            n = len(errors)
            bias = sum(errors) / n
            deviation = sqrt(spread(errors) / (n - 1)) if n > 1 else mpf(0)
            expanded = 2 * sqrt(mpf(u) ** 2 + (deviation if n > 1 else pooled) ** 2 / n)
            allowed = mpf(tolerance) + mpf(share) * abs(mpf(level))
            verdicts.append(0 if abs(bias) + expanded <= allowed else 1 if abs(bias) - expanded > allowed else 2)
            rows.append([references, readings, u, tolerance, share, number, show(bias), show(deviation), show(expanded), verdicts[-1], ""])
        rows[-1][-1] = 1 if 1 in verdicts else 2 if 2 in verdicts else 0
    columns = [("r", "m, reference levels"), ("v", "m, readings"), ("u", "m, standard uncertainty of the reference"), ("t", "m, tolerance"), ("s", "1, share of the reference allowed beside"), ("level", "1, which level"),
               ("bias", "m, bias"), ("d", "m, standard deviation"), ("e", "m, expanded uncertainty"), ("one", "0 within, 1 outside, 2 undecided, of the level"), ("all", "0 within, 1 outside, 2 undecided, of all levels")]
    write(FOLDER, PROGRAM, "bench-verdicts", "bench checks level by level: bias, scatter, expanded uncertainty and what they say of a tolerance", columns,
          [("references", "text r"), ("readings", "text v"), ("reference_uncertainty", "u"), ("tolerance", "t"), ("share", "s"), ("level", "level")],
          [("bias", "bench.level.bias"), ("d", "bench.level.deviation"), ("e", "bench.level.expanded"), ("one", "bench.level.verdict"), ("all", "bench.verdict")], rows, tolerance="1e-12 relative or 1e-13")
    rows = [("0.01", "0.01", 0), ("0", "0", 1), ("0", "0.02", 0), ("0", "0.985", 0), ("0", "1.015", 1), ("-0.01", "0.5", 1), ("0.5", "-0.01", 1)]
    write(FOLDER, PROGRAM, "bench-terms", "tolerances that a bench check takes", [("t", "m, tolerance"), ("s", "1, share"), ("refused", "1, 1 if refused")],
          [("references", "word 1 2 3"), ("readings", "word 1 2 3"), ("reference_uncertainty", "0"), ("tolerance", "t"), ("share", "s")], [("refused", "refusal.bench.verdict")], rows, tolerance="0", reason="a verdict")


def triangles():
    """Halfway between verticals the strips meet; towards a bank the depth is the straight line through the bank and the vertical."""
    rows = []
    for near, far, x, d, v in (("0.4", "3.9", "0.9 1.7 2.6 3.4", "0.2 0.5 0.6 0.3", "0.3 0.6 0.7 0.2"), ("1.5", "2.8", "1.8 2.1", "0.2 0.3", "0.3 0.5"), ("-0.3", "2", "0.1 0.9 1.2", "0.3 0.4 0.25", "0.2 0.8 0.4")):
        at, depth, speed = ([mpf(c) for c in words.split()] for words in (x, d, v))
        last = len(at) - 1
        total = mpf(0)
        for i in range(len(at)):
            if i == 0:
                outer, end = at[0] - mpf(near), (at[0] + at[1]) / 2
                area = quad(lambda z: depth[0] * (z - mpf(near)) / outer, [mpf(near), end])
            elif i == last:
                outer, end = mpf(far) - at[i], (at[i - 1] + at[i]) / 2
                area = quad(lambda z: depth[i] * (mpf(far) - z) / outer, [end, mpf(far)])
            else:
                area = depth[i] * (at[i + 1] - at[i - 1]) / 2
            total += area * speed[i]
        rows.append((near, far, x, d, v, show(total)))
    write(FOLDER, PROGRAM, "gaugings-with-triangles", "gaugings between banks whose depth is taken for a straight line beyond the outermost verticals", [("near", "m, near bank"), ("far", "m, far bank"), ("x", "m, verticals"), ("d", "m, depths"), ("v", "m/s, velocities"), ("q", "m3/s, discharge")],
          [("near", "near"), ("far", "far"), ("distances", "text x"), ("depths", "text d"), ("velocities", "text v")], [("q", "gauging.triangles.discharge")], rows)


def as_they_come():
    """What stands in a budget and in a meter if nothing is said: one exposure of a minute, no start-up."""
    rows = [("0.25", "40", "20", "0.5"), ("0.25", "0", "30", "0"), ("0.1", "7", "50", "0.014")]
    write(FOLDER, PROGRAM, "meters-without-start-up", "meters of one pitch and no start-up: pitch times revolutions over time", [("b", "m, pitch"), ("n", "1, revolutions"), ("t", "s, time"), ("v", "m/s, velocity")], [("pitch", "b"), ("revolutions", "n"), ("seconds", "t")],
          [("v", "gauging.meter.velocity")], rows, tolerance="1e-14")


def fit(x, y, ux, uy):
    """Constant, slope and chi-squared of the line with the least sum of squares over the variances of y - b x."""
    weight = lambda b: [1 / (v * v + b * b * u * u) for u, v in zip(ux, uy)]

    def constant(b):
        w = weight(b)
        return sum(k * (t - b * s) for k, s, t in zip(w, x, y)) / sum(w)

    chi = lambda b: sum(k * (t - constant(b) - b * s) ** 2 for k, s, t in zip(weight(b), x, y))
    mean = (y[-1] - y[0]) / (x[-1] - x[0])
    low, high = mean * mpf("0.5"), mean * mpf("1.7")
    slope = lambda b: diff(chi, b, h=abs(mean) * mpf(10) ** -14)
    with mp.workdps(60):
        sign = slope(low) > 0
        assert sign != (slope(high) > 0)
        for _ in range(90):
            m = (low + high) / 2
            low, high = (m, high) if (slope(m) > 0) == sign else (low, m)
    return constant(low), low, chi(low)


def calibrations():
    rows = []
    base = ("1 2 3 4.5 6", "2.1 3.8 6.3 8.7 12.4", "0.3 0.2 0.4 0.3 0.5", "0.2 0.3 0.2 0.4 0.3")
    for sx, sy, su in ((1, 1, 1), (-3, -6, 1), (-6, -9, 1), (4, 0, 1), (0, 0, 0.1), (2, 7, 0.5)):
        x, y, ux, uy = ([repr(float(w) * 10.0**s * k) for w in words.split()] for words, s, k in zip(base, (sx, sy, sx, sy), (1, 1, su, su)))
        a, b, chi = fit(*([mpf(w) for w in words] for words in (x, y, ux, uy)))
        rows.append((" ".join(x), " ".join(y), " ".join(ux), " ".join(uy), show(a), show(b), show(chi)))
    for ux, uy in (("0 0.2 0 0.3 0", "0.2 0.3 0.2 0.4 0.3"), ("0.1 0 0.4 0 0.5", "0.2 0.3 0.2 0.4 0.3"), ("0 0 0 0 0", "0.2 0.3 0.2 0.4 0.3"), ("0 0 0 0 0", "2e14 3e14 2e14 4e14 3e14"), ("0.3 0.2 0.4 0.3 0.5", "2e15 3e15 2e15 4e15 3e15"), ("0 0 0 0 0", "2e-14 3e-14 2e-14 4e-14 3e-14")):
        a, b, chi = fit(*([mpf(w) for w in words.split()] for words in (*base[:2], ux, uy)))
        rows.append((*base[:2], ux, uy, show(a), show(b), show(chi)))
    write(FOLDER, PROGRAM, "calibrations-of-any-size", "ISO/TS 28037: lines with errors in both coordinates, or in some of them, in units of any size", [("x", "text, stimuli"), ("y", "text, responses"), ("ux", "text, their uncertainties"), ("uy", "text, their uncertainties"), ("a", "1, constant"), ("b", "1, slope"), ("chi", "1, chi-squared")],
          [("x", "text x"), ("y", "text y"), ("ux", "text ux"), ("uy", "text uy")], [("a", "calibration.coefficient", "input.place = 0"), ("b", "calibration.coefficient", "input.place = 1"), ("chi", "calibration.chi-squared")], rows, tolerance="1e-9 relative", reason="a search that ends at 1e-13 of the uncertainty of a coefficient")
    rows = [("1e99 1 1", 0), ("1.015e100 1 1", 1), ("9.85e99 1 1", 0), ("0 1 1", 1), ("1e-9 1 1", 0), ("-1 1 1", 1)]
    write(FOLDER, PROGRAM, "calibrations-refused", "uncertainties of a response that a fit takes", [("uy", "text, uncertainties"), ("refused", "1, 1 if refused")], [("x", "word 1 2 3"), ("y", "word 1 2 4"), ("uy", "text uy"), ("place", "0")], [("refused", "refusal.calibration.coefficient")], rows, tolerance="0", reason="a verdict")
    rows = []
    for c0, c1, c2, asked in (("1", "2", "0.3", "5"), ("1", "2", "-0.1", "8"), ("1", "2", "-0.1", "10.6"), ("1", "2", "-0.1", "11.5"), ("4", "-3", "0.2", "-1"), ("4", "-3", "0.2", "-7.1"), ("4", "-3", "0.2", "-7.5"), ("0", "1", "0.5", "0"), ("2", "-1", "-0.4", "2")):
        a, b, c, r = map(mpf, (c0, c1, c2, asked))
        under = b * b - 4 * c * (a - r)
        x = "" if under < 0 else show((-b + (1 if b > 0 else -1) * sqrt(under)) / (2 * c))
        rows.append(("0 0.7 1.5 2 3", " ".join(repr(float(a + b * s + c * s * s)) for s in map(mpf, "0 0.7 1.5 2 3".split())), asked, x, int(under < 0)))
    write(FOLDER, PROGRAM, "calibrations-turned-round", "stimuli of a response by the quadratic formula on the branch of the first term, and responses that a parabola does not reach", [("x", "text, stimuli"), ("y", "text, responses"), ("r", "1, response"), ("s", "1, stimulus"), ("refused", "1, 1 if refused")],
          [("x", "text x"), ("y", "text y"), ("degree", "2"), ("response", "r")], [("s", "calibration.stimulus"), ("refused", "refusal.calibration.stimulus")], rows, tolerance="1e-9 relative or 1e-11", reason="the coefficients are fitted to responses of 16 digits")


if __name__ == "__main__":
    for make in (bench, triangles, as_they_come, calibrations):
        make()
