"""Single answers just beyond an edge: laws of air beyond their range, tails and special shapes of laws, ties, blocks of odd number, frost.
Python with mpmath, no code in common with the library.

    python3 small_edges.py FOLDER

writes the tables named below into the folder, those of air into one named hydraulics, of rain into one named rainfall, of lines into one
named timeseries. Made with mpmath 1.3.
"""

import math
import random
import sys
from pathlib import Path

from mpmath import exp, expm1, log, log1p, mp, mpf, nstr, quad

from own_tables import text, write

mp.dps = 40
FOLDER = Path(sys.argv[1] if len(sys.argv) > 1 else ".")
PROGRAM = "small_edges.py"
NAN = float("nan")
show = lambda value, digits=18: nstr(mpf(value), digits)


# ---- air ----------------------------------------------------------------------------------------------------------------


def air():
    from water_air import sound, vapour_fraction

    def ideal(t, humidity):
        w = vapour_fraction(t, humidity, 101325.0)
        return math.sqrt((7 + w) / (5 + w) * (t + 273.15) / (28.9635 - 10.948 * w))

    rows = []
    for t in (-38.0, -11.0, -1.2, -0.4, 0.0, 29.7, 30.0, 30.4, 31.2, 38.0, 57.0):
        for humidity in (0.0, 0.6, 1.0):
            limit = max(0.0, min(t, 30.0))
            rows.append((t, humidity, sound(t, humidity) if t == limit else sound(limit, humidity) * ideal(t, humidity) / ideal(limit, humidity)))
    write(FOLDER, PROGRAM, "air-sound-beyond", "O. Cramer (1993) from 0 to 30 degC; beyond, continued by the law of ideal gases with the water of D. A. Bohn (1988, from memory)",
          [("t", "degC, temperature"), ("h", "1, relative humidity"), ("c", "m/s, speed of sound")], [("celsius", "t"), ("humidity", "h"), ("carbon_dioxide", "0.0004")], [("c", "air.speed-of-sound")], rows, tolerance="1e-10 relative")


def cleansing():
    """Mean velocity of a circle by Manning, a little below and above what is asked."""
    from open_channel import Circle

    rows = []
    for d, s, n, y in (("0.3", "0.006", "0.013", "0.09"), ("0.9", "0.001", "0.012", "0.5")):
        pipe = Circle(mpf(d))
        v = pipe.radius(mpf(y)) ** (mpf(2) / 3) * mpf(s) ** mpf("0.5") / mpf(n)
        for share, met in (("0.97", 1), ("0.999999", 1), ("1.000001", 0), ("1.03", 0)):
            rows.append((d, s, n, y, show(v * mpf(share)), met))
    write(FOLDER, PROGRAM, "cleansing-near", "velocities a little below and above that of a circle", [("d", "m, bore"), ("s", "m/m, fall"), ("n", "s/m^(1/3), n"), ("y", "m, depth"), ("v", "m/s, velocity asked"), ("met", "1, 1 if met")],
          [("shape", "word circular"), ("diameter", "d"), ("gradient", "s"), ("n", "n"), ("depth", "y"), ("velocity", "v")], [("met", "cleansing.velocity-is-met")], rows, tolerance="0", reason="a verdict")
    rows = []
    for crest, sides in ((0.4, 1), (0.4, 2), (0.75, 2)):
        for share, refused in ((0.97, 0), (1.03, 1)):
            head = 5 * crest / sides * share
            # Francis: each contraction takes a tenth of the head off the crest
            flow = mpf("0.6") * 2 / 3 * (2 * mpf("9.80665")) ** mpf("0.5") * (mpf(str(crest)) - sides * mpf(head) / 10) * mpf(head) ** mpf("1.5")
            rows.append((crest, sides, head, refused, "" if refused else show(flow)))
    write(FOLDER, PROGRAM, "contracted-weirs", "heads up to five times the crest over the count of its contractions, and beyond (chosen by the library)", [("crest", "m, crest"), ("sides", "1, contractions"), ("h", "m, head"), ("refused", "1, 1 if refused, else 0"), ("q", "m3/s, discharge")],
          [("crest_length", "crest"), ("coefficient", "0.6"), ("contractions", "sides"), ("head", "h")],
          [("refused", "refusal.weir.by-coefficient.within-limits"), ("q", "weir.by-coefficient.within-limits")], rows, tolerance="1e-13 relative", reason="a verdict is 0 or 1; of the discharge 18 digits are given")


# ---- rain ---------------------------------------------------------------------------------------------------------------


def bisect(f, low, high, steps=200):
    low, high = mpf(low), mpf(high)
    sign = f(low) > 0
    for _ in range(steps):
        middle = (low + high) / 2
        low, high = (middle, high) if (f(middle) > 0) == sign else (low, middle)
    return (low + high) / 2


def wakeby():
    """x(s) with s = -ln(1 - F); the density is exp(-s) over dx/ds. Factors of exactly 1 among the parameters."""
    rows = []
    for xi, a, b, c, d in (("5", "1", "2", "3", "0.2"), ("5", "4", "0.7", "1", "0.1"), ("0", "1", "1", "1", "0.3"), ("2", "1", "0.5", "0", "0"), ("2", "0", "0", "1", "0.4")):
        A, B, C, D = mpf(a), mpf(b), mpf(c), mpf(d)
        value = lambda s: mpf(xi) + (A * (-expm1(-B * s) / B if B else s) if A else 0) + (C * (expm1(D * s) / D if D else s) if C else 0)
        slope = lambda s: A * exp(-B * s) + C * exp(D * s)
        for more in ("0.02", "0.4", "1.1", "3", "9"):
            x = mpf(xi) + mpf(more)
            if A and not C and B > 0 and x >= mpf(xi) + A / B:
                continue
            s = bisect(lambda t: value(t) - x, 0, 400)
            rows.append((xi, a, b, c, d, show(x), show(-expm1(-s)), show(exp(-s)), show(-s - log(slope(s)))))
    write(FOLDER, PROGRAM, "wakeby-of-ones", "J. C. Houghton (1978): Wakeby's law with factors of 1, by bisection with 40 digits",
          [(n, f"of the variate, {n}") for n in ("xi", "alpha", "beta", "gamma", "delta", "x")] + [("f", "1, non-exceedance"), ("e", "1, exceedance"), ("density", "1, ln f")],
          [(n, n) for n in ("xi", "alpha", "beta", "gamma", "delta", "x")], [("f", "wakeby.cdf"), ("e", "wakeby.exceedance"), ("density", "wakeby.log-density")], rows, tolerance="1e-12 relative or 1e-13")


def kappa():
    """Far lower tails, and L-moments without the first shape."""
    rows = []
    for h in ("-0.5", "-0.02", "-1.3"):
        for s in ("-20", "-60", "-99.5", "-100.5", "-101", "-140", "-300"):
            H, x = mpf(h), mpf(30) + 8 * mpf(s)
            f = (1 - H * exp(-mpf(s))) ** (1 / H)
            density = -mpf(s) + (1 - H) * log(f) - log(mpf(8))
            rows.append((f"30 8 0 {h}", show(x), show(f, 18) if f > mpf("1e-290") else "", show(density)))
    write(FOLDER, PROGRAM, "kappa-far-tails", "J. R. M. Hosking (1994): the four-parameter kappa law far below, F = (1 - h exp(-s))^(1/h)", [("p", "of the variate, parameters"), ("x", "of the variate, value"), ("f", "1, non-exceedance"), ("density", "1, ln f")],
          [("family", "word kappa"), ("parameters", "text p"), ("x", "x")], [("f", "frequency.non-exceedance"), ("density", "frequency.log-density")], rows, tolerance="2e-12 relative")
    rows = []
    mp.dps = 25
    for k, h in (("0", "-3"), ("0", "-0.7"), ("0", "0.4"), ("0", "1.6"), ("0.3", "-2.5"), ("-0.2", "-3.5"), ("0.15", "4")):
        K, H = mpf(k), mpf(h)
        of = lambda y: -log(y) if K == 0 else (1 - y**K) / K
        low = lambda f: of((1 - f**H) / H)
        high = lambda e: of(-expm1(H * log1p(-e)) / H)  # of the exceedance, so that nothing is lost near 1
        polynomials = [lambda f: 1, lambda f: 2 * f - 1, lambda f: 6 * f**2 - 6 * f + 1, lambda f: 20 * f**3 - 30 * f**2 + 12 * f - 1]

        def ends(p):
            """Both halves from their ends, in which t^4 takes the roughness off."""
            share = lambda t: t**4 / (t**4 + (1 - t) ** 4)
            rate = lambda t: 4 * t**3 * (1 - t) ** 3 / (t**4 + (1 - t) ** 4) ** 2
            return quad(lambda t: low(share(t)) * p(share(t)) * rate(t), [0, mpf("0.2"), mpf("0.5")]) + quad(lambda t: high(share(t)) * p(1 - share(t)) * rate(t), [0, mpf("0.2"), mpf("0.5")])

        l1, l2, l3, l4 = (ends(p) for p in polynomials)
        rows.append((f"0 1 {k} {h}", show(l1, 15), show(l2, 15), show(l3 / l2, 15), show(l4 / l2, 15)))
    mp.dps = 40
    write(FOLDER, PROGRAM, "kappa-moments-at-edges", "J. R. M. Hosking (1994): L-moments of the kappa law as integrals of its quantile function, some without the first shape",
          [("p", "of the variate, parameters"), ("l1", "1, mean"), ("l2", "1, second"), ("t3", "1, third over second"), ("t4", "1, fourth over second")], [("family", "word kappa"), ("parameters", "text p")],
          [("l1", "frequency.l-moment", "input.moment = word lambda1"), ("l2", "frequency.l-moment", "input.moment = word lambda2"), ("t3", "frequency.l-moment", "input.moment = word tau3"), ("t4", "frequency.l-moment", "input.moment = word tau4")], rows,
          tolerance="1e-9 relative or 1e-10", reason="what the quadrature leaves at its ends")


def blocks():
    """Increments of a depth a t^(1 - n)/60, the greatest in the middle, the others to its right and left by turns."""
    rows = []
    for count in (1, 2, 3, 5, 6, 9):
        a, n, step = 600.0, 0.7, 10
        depth = lambda t: a * t ** (1 - n) / 60 if t else 0.0
        falling = [depth(step * (i + 1)) - depth(step * i) for i in range(count)]
        order = [None] * count
        middle = (count - 1) // 2
        order[middle] = falling[0]
        for rank in range(1, count):
            order[middle + (rank + 1) // 2 if rank % 2 else middle - rank // 2] = falling[rank]
        for k, value in enumerate(order, 1):
            rows.append((count * step, step, k, value))
    write(FOLDER, PROGRAM, "alternating-blocks", "storms of alternating blocks, odd and even in number: V. T. Chow, D. R. Maidment, L. W. Mays (1988), section 14.4", [("minutes", "min, duration"), ("step", "min, block"), ("block", "1, which"), ("depth", "mm, depth")],
          [("minutes", "minutes"), ("step", "step"), ("block", "block"), ("form", "word bernard"), ("a", "600"), ("n", "0.7")], [("depth", "design.alternating-block.depth")], rows, tolerance="1e-10 relative")


def storms():
    """Two-minute steps at two gauges, each a little within or beyond one of the limits."""
    rows = []
    flat = lambda total, steps: [total / steps] * steps
    for intensity, depth, other, met in ((6.15, 8.0, 8.0, 1), (5.9, 8.0, 8.0, 0), (6.15, 5.1, 5.1, 1), (6.15, 4.9, 4.9, 0), (6.15, 8.0, 5.8, 1), (6.15, 8.0, 5.2, 0)):
        gauges = []
        for d in (depth, other):
            peak = intensity * 4 / 60
            rest = flat(d - peak, 40)
            gauges.append(text([round(v, 9) for v in rest[:20] + [peak / 2, peak / 2] + rest[20:]]))
        rows.append(("; ".join(gauges), 2, "short-term-survey", met))
    for intensity, depth, met in ((10.3, 22.0, 1), (9.8, 22.0, 0), (10.3, 20.5, 1), (10.3, 19.5, 0)):
        peak = intensity * 10 / 60
        rest = flat(depth - peak, 120)
        rows.append((text([round(v, 9) for v in rest[:60] + [peak / 5] * 5 + rest[60:]]), 2, "calibration-2020", met))
    write(FOLDER, PROGRAM, "storms-named-near", "storms a little within and beyond the limits of two named criteria: 5 mm, 6 mm/h over 4 min, gauges within 20 % (from memory); 20 mm, 10 mm/h over 10 min (Wellington Water 2020)",
          [("gauges", "mm, depths"), ("step", "min, step"), ("criteria", "text, criteria"), ("met", "1, 1 if met")], [("gauges", "text gauges"), ("step_minutes", "step"), ("criteria", "text criteria")], [("met", "storm.criteria.named")], rows, tolerance="0", reason="a verdict")


def profiles():
    """y = (1 - a^(x^b))/(1 - a) around the middle, Flood Studies Report (1975), its numbers from memory."""
    rows = []
    for season, a, b in (("summer", "0.1", "0.815"), ("winter", "0.06", "1.026")):
        for x in ("0.05", "0.3", "0.45", "0.5", "0.52", "0.7", "0.99"):
            around = abs(2 * mpf(x) - 1)
            y = (1 - mpf(a) ** (around ** mpf(b))) / (1 - mpf(a))
            rows.append((season, x, show(mpf("0.5") + (y / 2 if mpf(x) > mpf("0.5") else -y / 2))))
    write(FOLDER, PROGRAM, "named-profiles", "profiles of the Flood Studies Report (1975): half of summer storms, three quarters of winter ones, their numbers from memory", [("season", "text, season"), ("x", "1, share of the time"), ("y", "1, share of the depth")],
          [("season", "text season"), ("fraction", "x")], [("y", "design.named-profile")], rows)


def frost(rng):
    rows = []
    for _ in range(12):
        tips = sorted(round(rng.uniform(0, 400000), 1) for _ in range(25))
        at, air, t = [], [], rng.choice([-50000.0, 5000.0])
        while t < 400000:
            at.append(t), air.append(NAN if rng.random() < 0.25 else round(rng.uniform(-2, 9), 1))
            t += rng.choice([1800, 3600, 7200, 40000])
        limit, back = rng.choice([0.0, 1.0, 1.5]), rng.choice([3600, 14400])
        snow, unknown = [], []
        for tip in tips:
            near = [v for s, v in zip(at, air) if tip - back <= s <= tip and v == v]
            snow.append(any(v <= limit for v in near)), unknown.append(not near)
        place = lambda flags: sum(i for i, f in enumerate(flags, 1) if f)
        rows.append((text(tips), text(at), text(air), limit, back, place(snow), place(unknown)))
    write(FOLDER, PROGRAM, "tips-in-frost", "tips that may be snow by the temperature before them, and those of which none is known", [("t", "s, tips"), ("at", "s, times of temperatures"), ("air", "degC, temperatures"), ("limit", "degC, limit"), ("back", "s, looked back"),
          ("snow", "1, places of those in frost"), ("unknown", "1, places of those unknown")], [("tip_seconds", "text t"), ("tip_mm", "0.2"), ("temperature_seconds", "text at"), ("celsius", "text air"), ("limit", "limit"), ("back_seconds", "back")],
          [("snow", "gauge.checks.frost", "input.flag = word snow"), ("unknown", "gauge.checks.frost", "input.flag = word temperature_unknown")], rows)


def equals():
    rows = [("2 2 2 2", "1 5 3 7", 0), ("1 4 2 9", "3 3 3 3", 0), ("1 4 2 9", "2 5 3 30", 1), ("1 4 2 9", "9 2 4 1", -1)]
    write(FOLDER, PROGRAM, "rank-correlations-plain", "C. Spearman (1904): gauges that never vary, and those of one order", [("x", "mm, gauge"), ("a", "mm, reference"), ("r", "1, rank correlation")], [("gauge", "text x"), ("reference", "text a")],
          [("r", "double-mass.rank-correlation")], rows)


# ---- lines --------------------------------------------------------------------------------------------------------------


def lines():
    # Of three points one degree of freedom is left, whose law is an arc tangent: p = 1 - 2/pi atan(slope/error).
    rows = [("-1 0 1", "0 5 2", 1, 1 - 2 / math.pi * math.atan(1 / math.sqrt((16 / 9 + 64 / 9 + 16 / 9) / 2))), ("0 1 2", "1 2 1", 0, 1), ("0 1 2 3 4", "3 1 5 1 3", 0, 1), ("-2 -1 0 1 2", "4 7 0 7 4", 0, 1)]
    write(FOLDER, PROGRAM, "level-lines", "least squares lines without a slope, whose probability by chance is 1, and one of slope 1", [("t", "1, times"), ("x", "1, values"), ("slope", "1, slope"), ("p", "1, probability")], [("times", "text t"), ("sample", "text x"), ("confidence", "0.95")],
          [("slope", "trend.least-squares.slope"), ("p", "trend.least-squares.p-value")], rows)


if FOLDER.name == "hydraulics":
    air(), cleansing()
elif FOLDER.name == "rainfall":
    wakeby(), kappa(), blocks(), storms(), profiles(), frost(random.Random(3)), equals()
else:
    lines()
