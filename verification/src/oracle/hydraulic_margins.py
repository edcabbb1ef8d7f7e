"""What errors of a single constant or operator had been left to see: ends of cells of depths, arguments of exactly one or none, factories that
take what is usual. mpmath with 30 digits, no code in common with the library.

    python3 hydraulic_margins.py FOLDER [NAME ...]

writes the tables named below into the folder of the hydraulics tables. Made with mpmath 1.3.
"""

import random
import sys

from mpmath import inf, mp, mpf, nstr, pi, quad, radians, sqrt, tan, taylor

from flow_limits import crest, factor, sand, turbulent_end
from flow_relations import bisect
from open_channel import G, Circle
from own_tables import write
from structure_limits import at_total_head, coefficient, conjugate, drowned, free

mp.dps = 30
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "hydraulic_margins.py"
show = lambda value, count=17: nstr(mpf(value), count, min_fixed=-inf, max_fixed=inf)


def reverted(flow, y, q0):
    """b2 to b7 of the depth as a series of w = (q - q0)/q', from Taylor's series of the discharge: by Lagrange's formula."""
    c = taylor(flow, y, 7)
    a = [t / c[1] for t in c[1:]]  # h (1 + a1 h + ...), a[0] = 1
    found = []
    for n in range(2, 8):
        # [h^(n-1)] (1 + a1 h + ...)^(-n) / n
        power = [mpf(1)] + [mpf(0)] * (n - 1)
        for k in range(1, n):
            power[k] = sum(((-n + 1) * j - k) * a[j] * power[k - j] for j in range(1, k + 1)) / k
        found.append(power[n - 1] / n)
    return c[1], found


def cells():
    """The library keeps depths by Colebrook's law in cells, 128 to each octave of z = r/(1.08 - r), r = Q/Qfull, as series of six terms about
    a depth near the middle. Where the sixth is 4e-13 of the depth it stops: asked are the ends of the last cells before, and of others."""
    rows = []
    rng = random.Random(20261130)
    pipes = [("0.1", "0.02", "0.0000015", "1.31e-6"), ("0.15", "0.004", "0", "1.14e-6"), ("0.225", "0.0005", "0.00003", "1.5e-6"), ("0.3", "0.0009", "0.0015", "1.14e-6"), ("0.45", "0.0067", "0.0015", "1.139e-6"), ("0.6", "0.03", "0.006", "1.0e-6"),
             ("0.9", "0.001", "0.003", "1.31e-6"), ("1.2", "0.002", "0.03", "1.2e-6"), ("1.8", "0.012", "0.0003", "1.0e-6"), ("2.4", "0.0004", "0.0003", "1.31e-6"), ("4", "0.0001", "0.0000001", "1.0e-6"), ("0.2", "0.05", "0.005", "0.9e-6"), ("5", "0.09", "0.00001", "1.0e-7"), ("0.08", "0.0003", "0", "1.31e-6"),
             ("0.5", "0.02", "0.02", "1.1e-6"), ("1", "0.01", "0.08", "1.0e-6"), ("2", "0.003", "0.19", "1.2e-6"), ("0.05", "0.2", "0.0004", "1.6e-6"), ("3", "0.15", "0.0000002", "1.0e-7")]
    for d, s, k, nu in pipes:
        pipe, flow = sand(mpf(d), mpf(s), mpf(k), mpf(nu))
        full = flow(mpf(d) * (1 - mpf(10) ** -30))
        top = crest(flow, mpf(d))
        most = flow(top)
        start = lambda cell: (lambda z: mpf("1.08") * z / (1 + z))(mpf(2) ** (cell // 128) * (1 + mpf(cell % 128) / 128)) * full

        def series(cell):
            low, high = start(cell), start(cell + 1)
            middle = (low + high) / 2
            if high >= most:
                return inf, None
            y = bisect(lambda t: flow(t) - middle, mpf(d) / 10**5, top, 90)
            slope, b = reverted(flow, y, middle)
            w = (high - low) / 2 / slope
            return abs(b[4] * w**6) / y, (slope, b, w)

        low, high = 0, 128 * 8
        while high - low > 1:
            mid = (low + high) // 2
            low, high = (mid, high) if series(mid)[0] < mpf("4e-13") else (low, mid)
        asked = [low - i for i in (0, 1, 2, 3, 5, 8, 13, 21, 34)] + [rng.randrange(-9 * 128, low) for _ in range(16)]
        for cell in asked:
            for part in ("0.00001", "0.99999"):
                q = float(start(cell) + (start(cell + 1) - start(cell)) * mpf(part))
                y = bisect(lambda t: flow(t) - mpf(q), mpf(d) / 10**5, top, 110)
                if not (4 * mpf(q) / pipe.perimeter(y) / mpf(nu) > 4600 and mpf(k) < pipe.radius(y)):
                    continue
                slope, b, w = series(cell)[1]
                # Twice what a series about the very middle leaves out, since the node is only near it.
                rows.append((d, s, k, nu, repr(q), show(y, 20), nstr(2e-15 * max(y, mpf(q) / slope) + 2 * abs(b[5] * w**7), 3)))
    write(FOLDER, PROGRAM, "circle-depths-sand-cells", "C. F. Colebrook (1939), Turbulent flow in pipes: depths at the ends of the cells in which the library keeps them, up to the last before the crest",
          [("diameter", "m, bore"), ("gradient", "m/m, fall"), ("roughness", "m, equivalent sand roughness"), ("viscosity", "m2/s, kinematic viscosity"), ("discharge", "m3/s, discharge"), ("depth", "m, lower depth"), ("tol", "m, tolerance")],
          [(c, c) for c in ("diameter", "gradient", "roughness", "viscosity", "discharge")], [("depth", "flow.normal-depth")], rows, tolerance="column tol",
          reason="some units of the last digit of a double, of the discharge as of the depth, and twice what a series of six terms about the middle of the cell leaves out")


STRUCTURE = [("kind", "text kind"), ("size", "size"), ("length", "length"), ("width", "B"), ("crest_height", "p")]
SIZES = [("kind", "text, structure"), ("size", "m, its size"), ("length", "m, its length"), ("B", "m, channel"), ("p", "m, crest height")]
DIGITS = "17 digits are given"


def structures():
    """Heads and discharges of exactly one and of none, structures that stand in still water, and what is taken where nothing is said."""
    rows = []
    brink = lambda b, y: mpf(b) * sqrt(G) * (mpf(y) / mpf("0.715")) ** mpf("1.5")
    bed = lambda b, z, y: sqrt(G * ((mpf(b) + mpf(z) * y) * y) ** 3 / (mpf(b) + 2 * mpf(z) * y))
    for h in ("1", "0", "0.4", "7.5"):
        rows.append(("brink-rectangular", "0.5", "0", "1", "0", h, show(brink("0.5", h)) if h != "0" else "0", ""))
        rows.append(("brink-open", "0.8", "1.5", "1", "0", h, show(bed("0.8", "1.5", mpf(h) / mpf("0.75"))) if h != "0" else "0", "10000" if h == "1" else ""))
    for b, high, h in (("0.3", "0.2", "0.9"), ("1.2", "0.05", "1"), ("0.3", "0.2", "0")):
        rows.append(("orifice-rectangular", high, "0", b, "0", h, show(mpf("0.61") * mpf(b) * mpf(high) * sqrt(2 * G * (mpf(h) - mpf(high) / 2)) if h != "0" else 0), ""))
    for b, L, h in (("0.3", "0.9", "0.33"), ("1", "2", "0.7")):
        still = coefficient("flume", mpf(b), mpf(L), mpf(h)) * mpf(b) * sqrt(G) * (2 * mpf(h) / 3) ** mpf("1.5")
        rows.append(("flume-still", b, L, "1", "0", h, show(still), "10000"))
    for b, L, B, p, h in (("0.4", "1", "1", "0.2", "0.4"), ("1", "2.5", "2", "0", "0.9")):
        area = (mpf(B) + mpf(h) + mpf(p)) * (mpf(h) + mpf(p))
        cd = coefficient("flume", mpf(b), mpf(L), mpf(h))
        rows.append(("flume-in-open", b, L, B, p, h, show(at_total_head(lambda H: cd * mpf(b) * sqrt(G) * (2 * H / 3) ** mpf("1.5"), mpf(h), area)), "10000"))
    write(FOLDER, PROGRAM, "structures-at-one-and-none", "brinks, openings and flumes: discharges at heads of exactly one metre and of none, in still water, in an open channel; highest heads where nothing ends them",
          SIZES + [("h", "m, head"), ("q", "m3/s, discharge"), ("highest", "m, highest head")], STRUCTURE, [("q", "structure.discharge", "input.head = h", "input.tailwater = 0"), ("highest", "structure.highest-head")], rows, tolerance="1e-11 relative or 1e-14", reason=DIGITS)
    rows = []
    for L, p, h in (("3", "1", "2"), ("1", "2", "1.5"), ("0.6", "0.2", "0.3")):
        plain = lambda v: mpf(2) / 3 * sqrt(2 * G) * mpf("0.6") * mpf(L) * ((mpf(h) + v) ** mpf("1.5") - v ** mpf("1.5"))
        v = mpf(0)
        for _ in range(3000):
            v = (plain(v) / (mpf(L) * (mpf(h) + mpf(p)))) ** 2 / (2 * G)
        rows.append((L, p, h, show(plain(v))))
    write(FOLDER, PROGRAM, "weirs-with-fast-approach", "J. B. Francis (1883): crests by a coefficient, as wide as their channel, with metres of water over them", [("l", "m, crest"), ("p", "m, crest height"), ("h", "m, head"), ("q", "m3/s, discharge")],
          [("crest_length", "l"), ("coefficient", "0.6"), ("approach_width", "l"), ("crest_height", "p"), ("head", "h")], [("q", "weir.by-coefficient.discharge")], rows, tolerance="1e-11 relative", reason=DIGITS)
    rows = []
    for kind, size, L, B, p in (("khafagi", "0.3", "0", "1", "0"), ("parshall", "1.2192", "0", "1", "0"), ("orifice", "0.2", "0", "1", "0"), ("opening", "0.3", "0", "0.8", "0"), ("plate", "0.8", "0", "0.8", "0.6"), ("cipolletti", "0.9", "0", "3", "1")):
        numbers = [mpf(x) for x in (size, L, B, p)]
        for h, share in (("1", "0.93"), ("1.3", "0.9"), ("1", "0.9")):
            if kind in ("khafagi", "parshall"):
                continue
            rows.append((kind, size, L, B, p, h, show(mpf(share) * mpf(h)), show(drowned(kind, *numbers, mpf(h), mpf(share) * mpf(h)))))
        if kind != "khafagi":
            rows.append((kind, size, L, B, p, "0", "0.1", "0"))
            rows.append((kind, size, L, B, p, "1", "1", "0"))
            rows.append((kind, size, L, B, p, "0.6", "1", "0"))
    # Drowning takes 0.95 of the free discharge at most.
    for size in ("0.3", "0.6096"):
        for h in ("0.02", "0.015"):
            rows.append(("parshall", size, "0", "1", "0", h, show(mpf(h) * mpf("0.9")), show(mpf("0.05") * free("parshall", mpf(size), 0, 1, 0, mpf(h)))))
    write(FOLDER, PROGRAM, "drowned-at-one-and-none", "structures under a tailwater: heads of one metre, of none, level with the tailwater and below it; flumes of which drowning takes as much as it may",
          SIZES + [("h", "m, head"), ("t", "m, tailwater"), ("q", "m3/s, discharge")], STRUCTURE, [("q", "structure.discharge", "input.head = h", "input.tailwater = t")], rows, tolerance="1e-10 relative or 1e-14", reason=DIGITS)
    rows = []
    francis = mpf(2) / 3 * sqrt(2 * G) * mpf("0.62")
    for h in ("0", "1", "0.3"):
        rows.append(("1.5", "0.62", h, show(francis * mpf("1.5") * mpf(h) ** mpf("1.5")), "", ""))
    for q in ("0", "1", "0.2"):
        rows.append(("1.5", "0.62", "", "", q, show((mpf(q) / francis / mpf("1.5")) ** (mpf(2) / 3))))
    write(FOLDER, PROGRAM, "weirs-at-one-and-none", "weirs by a coefficient at a head or a discharge of one and of none", [("b", "m, crest"), ("c", "1, coefficient"), ("h", "m, head"), ("q", "m3/s, discharge"), ("asked", "m3/s, a discharge"), ("head", "m, its head")],
          [("crest_length", "b"), ("coefficient", "c")], [("q", "weir.by-coefficient.within-limits", "input.head = h"), ("head", "weir.by-coefficient.head", "input.discharge = asked")], rows, tolerance="1e-11 relative or 1e-14", reason=DIGITS)
    rows = [(angle, show(mpf(8) / 15 * mpf("0.6") * sqrt(2 * G) * tan(radians(mpf(angle)) / 2) * mpf("0.31") ** mpf("2.5"))) for angle in ("90", "53.13", "120")]
    write(FOLDER, PROGRAM, "notches-of-the-usual-coefficient", "notches with the usual coefficient, 0.6", [("angle", "degrees, notch"), ("q", "m3/s, discharge")], [("angle", "angle"), ("head", "0.31")], [("q", "weir.by-coefficient.discharge")], rows, tolerance="1e-13 relative", reason=DIGITS)
    rows = []
    for size, L, B, p in (("0.3", "0", "0.8", "0"), ("0.5", "0", "1.2", "0")):
        for q, t in (("0", "0.4"), ("1", "0.9"), ("1", "0.2"), ("0.3", "0.7")):
            over = mpf(q) and bisect(lambda h: drowned("opening", mpf(size), 0, mpf(B), 0, h, mpf(t)) - mpf(q), mpf(t) * mpf("1.0000001"), 90, 110)
            rows.append(("opening", size, L, B, p, t, q, show(over or mpf(t))))
    write(FOLDER, PROGRAM, "heads-of-one-and-none", "openings under a tailwater: heads of discharges of one and of none", SIZES + [("t", "m, tailwater"), ("q", "m3/s, discharge"), ("h", "m, head")], STRUCTURE, [("h", "structure.head", "input.discharge = q", "input.tailwater = t")], rows, tolerance="1e-10 relative", reason=DIGITS)
    rows = [(s, n, show((1 - mpf(s) ** mpf(n)) ** mpf("0.385"))) for s in ("0", "1e-7", "0.2", "0.999", "1") for n in ("1.5", "2.5", "1")]
    write(FOLDER, PROGRAM, "drowned-shares", "J. R. Villemonte (1947): the share that a tailwater leaves, from none to a level one", [("s", "1, tailwater over head"), ("n", "1, exponent"), ("share", "1, share")], [("submergence", "s"), ("exponent", "n")], [("share", "structure.drowned-share")], rows, tolerance="1e-13 relative or 1e-15", reason=DIGITS)
    rows = [("1e-9", "1"), ("0", "1"), ("9e-9", "1"), ("1.03e-8", "1"), ("1", show((3 * mp.sin(mp.asin(1) / 3)) ** mpf("1.5")))]
    write(FOLDER, PROGRAM, "approaches-at-rest", "velocity of the approach: its coefficient where it hardly moves", [("ratio", "1, Cd b h/A"), ("cv", "1, coefficient")], [("ratio", "ratio")], [("cv", "structure.approach-velocity")], rows, tolerance="2e-15 relative", reason=DIGITS)
    rows = []
    for L, ks, B, p, h in (("0.6", "0", "1", "0.3", "0.2"), ("0.6", "0.0006", "1", "0.3", "0.12"), ("2", "0.0001", "0.8", "0.5", "0.4"), ("2", "0.02", "1.5", "0.5", "0.9")):
        delta = mpf(L) * (mpf("0.001") + mpf("0.2") * sqrt(mpf(ks) / mpf(L)))
        share = 1 - delta / mpf(h) if mpf(h) >= 2 * delta else mpf(h) / (4 * delta)
        rows.append((L, ks, B, p, h, show((1 - 2 * delta / mpf(B)) * share ** mpf("1.5"))))
    write(FOLDER, PROGRAM, "crests-of-known-walls", "round-nosed crests of a given roughness: their coefficient", [("L", "m, crest along the flow"), ("ks", "m, roughness"), ("B", "m, channel"), ("p", "m, crest height"), ("h", "m, head"), ("cd", "1, coefficient")],
          [("head", "h"), ("width", "B"), ("crest_height", "p"), ("crest_length", "L"), ("roughness", "ks")], [("cd", "weir.round-nosed.coefficient")], rows, tolerance="1e-13 relative", reason=DIGITS)
    rows = []
    for length, refused in (("16", 0), ("16.5", 0), ("16.8", 1), ("40", 1)):
        rows.append(("flume-rectangular", "0.1", length, "1", "0.2", "0.3", refused))
    write(FOLDER, PROGRAM, "throats-too-long", "throats whose boundary layers, 0.003 of their length on either side, leave no width", SIZES + [("h", "m, head"), ("refused", "1, 1 if refused")], STRUCTURE, [("refused", "refusal.structure.discharge", "input.head = h", "input.tailwater = 0")], rows, tolerance="0", reason="a verdict")
    rows = []
    for size, greatest, kilpatrick in (("0.25", "0.6", ""), ("0.3", "0.95", 0), ("0.3048", "0.95", 0), ("2.44", "0.95", 0), ("3.048", "0.95", 1), ("3.1", "0.95", 1), ("6.096", "0.95", 1)):
        rows.append(("parshall", size, "0", "1", "0", "0.4", "0.3", "1", greatest, kilpatrick))
    write(FOLDER, PROGRAM, "drowned-flumes-by", "up to which share of the tailwater drowned Parshall flumes are known, and by whom", SIZES + [("h", "m, head"), ("t", "m, tailwater"), ("which", "1, place of the limit"), ("greatest", "1, greatest share"), ("by", "1, 1 if by Kilpatrick and Schneider, 0 if by Parshall")], STRUCTURE + [("head", "h"), ("tailwater", "t"), ("which", "which")],
          [("greatest", "structure.limit.greatest"), ("by", "structure.limit.is-of", "input.author = word Kilpatrick")], rows, tolerance="1e-15", reason=DIGITS)
    rows = []
    for q in ("1", "0", "0.35"):
        rows.append(("1", "0.2", q, "0.9", show(gate_depth("0.2", "1", q, "0.9") if q != "0" else mpf("0.9"))))
    # Hardly drowned at the least depth: critical depth is half of it.
    for a, B, h in (("0.1", "1", "0.202"), ("0.1", "0.7", "0.23"), ("0.5", "2", "1.03"), ("1.5", "2", "3.1")):
        q0 = free("gate", mpf(a), 0, mpf(B), 0, mpf(h)) / mpf(B)
        t = conjugate(mpf("0.61") * mpf(a), q0) * mpf("1.01")
        rows.append((B, a, show(drowned("gate", mpf(a), 0, mpf(B), 0, mpf(h), t), 25), show(t, 25), h))
    write(FOLDER, PROGRAM, "gates-hardly-drowned", "H. R. Henry (1950): depths before gates at their least depth and little drowned, at a discharge of one and of none", [("B", "m, width"), ("a", "m, opening"), ("q", "m3/s, discharge"), ("t", "m, tailwater"), ("depth", "m, depth")],
          [("width", "B"), ("opening", "a"), ("contraction", "0.61"), ("discharge", "q"), ("tailwater", "t")], [("depth", "gate.sluice.depth")], rows, tolerance="1e-11 relative", reason=DIGITS)
    rows = []
    for t, flagged in (("-9900", 0), ("-10200", 1), ("-9999", 0)):
        rows.append(("crump", "0", "0", "2", "0.4", "0.3", t, "0", flagged))
    write(FOLDER, PROGRAM, "tailwaters-far-below", "tailwaters ten kilometres below a crest, from where on a reading counts as missing", SIZES + [("h", "m, head"), ("t", "m, tailwater"), ("place", "1, place"), ("flagged", "1, readings flagged")], STRUCTURE + [("heads", "text h"), ("tailwaters", "text t"), ("place", "place")], [("flagged", "structure.many.flagged")], rows, tolerance="0", reason="a count")


def gate_depth(a, B, q, t):
    return bisect(lambda h: drowned("gate", mpf(a), 0, mpf(B), 0, h, mpf(t)) - mpf(q), mpf(t) * mpf("1.0000001"), mpf(60), 110)


def flaps_and_screens():
    rows = []
    for d, loss in (("30", "1"), ("30", "0.6"), ("0.6", "0.01"), ("100", "1")):
        law = lambda v: 8 * mp.exp(-mpf("1.15") / sqrt(mpf("0.3048")) * v / sqrt(mpf(d))) * v * v / (2 * G)
        worst = 2 * sqrt(mpf(d)) / (mpf("1.15") / sqrt(mpf("0.3048")))
        rows.append((d, loss, show(bisect(lambda v: law(v) - mpf(loss), mpf("1e-9"), worst, 110)), show(bisect(lambda v: mpf(loss) - law(v), worst, mpf(400), 110))))
    write(FOLDER, PROGRAM, "flaps-of-one", "F. A. Nagler (1923): velocities through a flap with a loss of one metre and others", [("d", "m, bore"), ("loss", "m, loss"), ("slow", "m/s, slower velocity"), ("fast", "m/s, faster")], [("diameter", "d"), ("loss", "loss")], [("slow", "flap.slow-velocity"), ("fast", "flap.fast-velocity")], rows, tolerance="1e-11 relative", reason=DIGITS)
    rows = []
    for b, p, h in (("2", "0.8", "1"), ("1.4", "1.1", "1"), ("2", "0.8", "0.4")):
        b, p, h = mpf(b), mpf(p), mpf(h)
        zeta = mpf("2.42") * (mpf("0.006") / mpf("0.010")) ** (mpf(4) / 3)
        weir = lambda x: (mpf("0.602") + mpf("0.075") * x / p) * mpf(2) / 3 * sqrt(2 * G) * (b - mpf("0.0009")) * (x + mpf("0.001")) ** mpf("1.5")
        left = bisect(lambda x: x + zeta * (weir(x) / (b * (h + p))) ** 2 / (2 * G) - h, mpf("0.01"), h, 110)
        rows.append((show(b), show(p), show(h), show(left)))
    write(FOLDER, PROGRAM, "screens-before-one", "weirs behind a screen: what is left of a head of one metre and another", [("b", "m, channel"), ("p", "m, crest height"), ("h", "m, head"), ("left", "m, head on the weir")], [("width", "b"), ("crest_height", "p"), ("head", "h"), ("bars", "word rectangular"), ("thickness", "0.006"), ("gap", "0.01"), ("blinded", "0")],
          [("left", "weir.screened.head-behind")], rows, tolerance="1e-11 relative", reason=DIGITS)
    rows = []
    for b, p, cd, y, q in (("2.5", "0.84", "0.7", "1.5", "2.2"), ("1", "0.5", "0.6", "0.8", "0.3")):
        energy = mpf(y) + (mpf(q) / (mpf(b) * mpf(y))) ** 2 / (2 * G)
        most = mpf(b) * (2 * energy / 3) * sqrt(2 * G * energy / 3)
        for share, refused in (("0.4", 0), ("0.99", 0), ("1.01", 1), ("1.3", 1)):
            rows.append((b, p, cd, y, q, show((most - mpf(q)) * mpf(share)), refused))
    write(FOLDER, PROGRAM, "side-weirs-that-spill-too-much", "G. De Marchi (1934): whether there is a crest that spills so much before the flow turns critical", [("b", "m, width"), ("p", "m, sill"), ("cd", "1, coefficient"), ("y", "m, depth downstream"), ("q", "m3/s, going on"), ("spill", "m3/s, spill"), ("refused", "1, 1 if refused")],
          [("section", "word box"), ("size", "b"), ("sill", "p"), ("length", "3"), ("coefficient", "cd"), ("depth", "y"), ("discharge", "q"), ("spill", "spill")], [("refused", "refusal.weir.side.length")], rows, tolerance="0", reason="a verdict")
    rows = []
    for edge, k, m, c, y in (("box-wingwalls-30-to-75", "0.026", "1.0", "0.0385", "0.81"), ("box-wingwalls-90-or-15", "0.061", "0.75", "0.0400", "0.80")):
        for wide, high, fall in (("1", "1", "0.02"), ("1", "1", "0"), ("1.8", "1.2", "0.01")):
            b, d = mpf(wide), mpf(high)
            unit = b * d * sqrt(d) * sqrt(mpf("0.3048"))
            at = lambda x: mpf(3) / 2 * ((x * unit / b) ** 2 / G) ** (mpf(1) / 3) / d + mpf(k) * x ** mpf(m) - mpf(fall) / 2
            under = lambda x: mpf(c) * x * x + mpf(y) - mpf(fall) / 2
            for q in ("0.05", "0.4", "0.96", "1", "1.1", "3.4", "3.49", "3.51", "3.56", "3.61", "3.66", "3.7", "3.9", "4.05", "11.5", "11.99"):
                x = mpf(q)
                head = at(x) if x <= mpf("3.5") else under(x) if x >= 4 else at(mpf("3.5")) + (x - mpf("3.5")) * 2 * (under(mpf(4)) - at(mpf("3.5")))
                rows.append((edge, wide, high, fall, repr(float(sqrt(mpf("0.3048")))) if q == "1" and wide == "1" else show(x * unit), show(head * d), ""))
            last = under(mpf(12)) * d
            for share, refused in (("0.97", 0), ("0.999", 0), ("1.001", 1), ("1.05", 1)):
                rows.append((edge, wide, high, fall, "", show(last * mpf(share)), refused))
            rows.append((edge, wide, high, fall, "0", "0", ""))
    asked = [(*r[:5], r[5], r[5] if r[4] else "", r[6]) if r[4] else (*r[:5], "", r[5], r[6]) for r in rows]
    write(FOLDER, PROGRAM, "culverts-between", "Federal Highway Administration, HDS 5: inlets of boxes at a discharge of one in the units of the formulas, at none, between the formulas, at their end and beyond it",
          [("edge", "text, edge"), ("w", "m, width"), ("h", "m, height"), ("s", "m/m, fall"), ("q", "m3/s, discharge"), ("head", "m, headwater"), ("back", "m, a headwater"), ("refused", "1, 1 if it is beyond the formulas")],
          [("edge", "text edge"), ("shape", "word box"), ("width", "w"), ("height", "h"), ("gradient", "s")],
          [("head", "culvert.headwater", "input.discharge = q"), ("q", "culvert.discharge", "input.headwater = back"), ("refused", "refusal.culvert.discharge", "input.headwater = back", "tolerance = 0")], asked, tolerance="1e-11 relative or 1e-15", reason=DIGITS)


def laws():
    """Velocities of walls at a radius, a gradient and a velocity of one, of none and others."""
    rows = []
    for law, value in (("n", "0.013"), ("chezy", "55"), ("strickler", "80"), ("roughness", "0.0015")):
        for r, s in (("1", "0.004"), ("0.2", "1"), ("1", "1"), ("0", "0.004"), ("0.2", "0"), ("0.3", "0.01")):
            radius, slope = mpf(r), mpf(s)
            if law in ("n", "strickler"):
                v = radius ** (mpf(2) / 3) * sqrt(slope) * (mpf(value) if law == "strickler" else 1 / mpf(value))
            elif law == "chezy":
                v = mpf(value) * sqrt(radius * slope)
            else:
                scale = sqrt(8 * G * radius * slope)
                v = -2 * scale * mp.log10(mpf(value) / (mpf("14.8") * radius) + mpf("2.51") * mpf("1.139e-6") / (4 * radius * scale)) if scale else mpf(0)
            rows.append([value if law == name else "" for name in ("n", "chezy", "strickler", "roughness")] + ["1.139e-6" if law == "roughness" else "", r, s, show(v), "", ""])
        for v in ("0", "1", "2.3"):
            radius, speed = mpf("0.25"), mpf(v)
            if law in ("n", "strickler"):
                s = (speed / radius ** (mpf(2) / 3) / (mpf(value) if law == "strickler" else 1 / mpf(value))) ** 2
            elif law == "chezy":
                s = (speed / mpf(value)) ** 2 / radius
            else:
                s = factor(4 * radius * speed / mpf("1.139e-6"), mpf(value) / (4 * radius)) * speed**2 / (8 * G * radius) if speed else mpf(0)
            rows.append([value if law == name else "" for name in ("n", "chezy", "strickler", "roughness")] + ["1.139e-6" if law == "roughness" else "", "0.25", "", "", v, show(s)])
    for law in ("n", "chezy", "strickler", "roughness"):
        kept = [r for r in rows if r[("n", "chezy", "strickler", "roughness").index(law)]]
        at = ("n", "chezy", "strickler", "roughness").index(law)
        viscous = [("viscosity", "m2/s, viscosity")] if law == "roughness" else []
        write(FOLDER, PROGRAM, f"walls-at-one-and-none-{law}", f"velocities and gradients by one law, {law}, at a radius, a gradient and a velocity of one, of none and others",
              [(law, "of the law, wall")] + viscous + [("radius", "m, hydraulic radius"), ("gradient", "m/m, gradient"), ("velocity", "m/s, velocity"), ("v", "m/s, a velocity"), ("needed", "m/m, its gradient")],
              [(law, law), ("radius", "radius")] + ([("viscosity", "viscosity")] if viscous else []), [("velocity", "resistance.velocity", "input.gradient = gradient"), ("needed", "resistance.gradient", "input.velocity = v")],
              [[r[at]] + ([r[4]] if viscous else []) + r[5:] for r in kept], tolerance="2e-14 relative or 1e-16", reason=DIGITS)


def conduits():
    """Depths and discharges of exactly one and of none."""
    rows = []
    n, slope = mpf("0.013"), mpf("0.004")
    for shape, d, w, h, z in (("circular", "2.5", "", "", ""), ("circular", "1", "", "", ""), ("circular", "1.1", "", "", ""), ("box", "", "2", "3", ""), ("box", "", "1", "1", ""), ("rectangular", "", "1.5", "", ""), ("trapezoidal", "", "0.8", "", "1.5"), ("trapezoidal", "", "1", "", "1")):
        pipe = Circle(mpf(d)) if d else None
        side = mpf(z or 0)
        area = pipe.area if d else lambda y: (mpf(w) + side * y) * y
        perimeter = pipe.perimeter if d else lambda y: mpf(w) + 2 * y * sqrt(1 + side**2)
        width = (lambda y: 2 * sqrt(y * (mpf(d) - y))) if d else lambda y: mpf(w) + 2 * side * y
        flow = lambda y: area(y) ** (mpf(5) / 3) / perimeter(y) ** (mpf(2) / 3) * sqrt(slope) / n
        rest = lambda y: area(y) * sqrt(G * area(y) / width(y))
        top = mpf(d) * mpf("0.938") if d else mpf(h) * mpf("0.999999999") if h else mpf(90)
        high = mpf(d or h or 900)
        given = [shape, d, w, h, z]
        for y in ("1", "0"):
            if y == "0":
                rows.append(given + [y, "0", "0", "0", "", "", ""])
            elif mpf(y) < high:
                rows.append(given + [y, show(flow(mpf(y))), show(flow(mpf(y)) / area(mpf(y))), show(rest(mpf(y))), "", "", ""])
        for q in ("1", "0"):
            if q == "0":
                rows.append(given + ["", "", "", "", q, "0", "0"])
                continue
            normal = show(bisect(lambda y: flow(y) - 1, mpf("1e-6"), top, 120)) if flow(top) > mpf("1.001") else ""
            slow = mpf(d or h or 900) * mpf("0.99999")
            critical = show(bisect(lambda y: rest(y) - 1, mpf("1e-6"), slow, 120)) if rest(slow) > mpf("1.001") else ""
            rows.append(given + ["", "", "", "", q, normal, critical])
    for shape, sizes in (("circular", ("diameter",)), ("box", ("width", "height")), ("rectangular", ("width",)), ("trapezoidal", ("width", "side_slope"))):
        at = {"diameter": 1, "width": 2, "height": 3, "side_slope": 4}
        write(FOLDER, PROGRAM, f"conduits-at-one-and-none-{shape}", f"Ven Te Chow (1959), Open-Channel Hydraulics, chapters 4 and 6: {shape} conduits by Manning, at depths and discharges of one and of none",
              [(size, "m or 1, " + size.replace("_", " ")) for size in sizes] + [("y", "m, depth"), ("q", "m3/s, discharge"), ("v", "m/s, velocity"), ("qc", "m3/s, critical discharge"), ("asked", "m3/s, a discharge"), ("normal", "m, its normal depth"), ("critical", "m, its critical depth")],
              [("shape", "word " + shape), ("n", "0.013"), ("gradient", "0.004")] + [(size, size) for size in sizes],
              [("q", "flow.discharge", "input.depth = y"), ("v", "flow.velocity", "input.depth = y"), ("qc", "flow.critical-discharge", "input.depth = y"), ("normal", "flow.normal-depth", "input.discharge = asked"), ("critical", "flow.critical-depth", "input.discharge = asked")],
              [[r[at[size]] for size in sizes] + r[5:] for r in rows if r[0] == shape], tolerance="1e-12 relative or 1e-15", reason="17 digits are given; the inverses are stated to be good to 1e-12 of the discharge")


def breaks():
    """Where along the depth flow by Colebrook's law ceases to be laminar, becomes turbulent, and where the roughness is as large as four radii."""
    rows = []
    for shape, size, s, k, nu in (("circular", "0.3", "0.000001", "0", "1.1e-6"), ("circular", "0.3", "0.000001", "0.002", "1.1e-6"), ("circular", "0.3", "0.0000004", "0.0004", "1.1e-6"), ("circular", "0.45", "0.002", "0.1", "1.1e-6"), ("circular", "0.4", "0.001", "0.44", "1.3e-6"), ("circular", "1", "0.00002", "0.01", "1.6e-5"),
                                  ("circular", "0.3", "0.0000002", "0.00001", "1.1e-6"), ("rectangular", "2", "0.000003", "0.01", "1.1e-6"), ("rectangular", "0.2", "0.001", "0.3999", "1.1e-6"), ("rectangular", "0.2", "0.001", "0.3999608", "1.1e-6"), ("rectangular", "0.2", "0.001", "0.41", "1.1e-6"), ("rectangular", "3", "0.4", "0.3", "0.0005")):
        slope, wall, viscosity, d = mpf(s), mpf(k), mpf(nu), mpf(size)
        end = lambda r: turbulent_end(min(wall / (4 * r), mpf(1)))
        begin = lambda r: min(mpf(2000), sqrt(mpf("0.95") * 64 * 4000 / end(r)))
        # Laminar flow has Re = 2 g S R^3 / nu^2; at Re = 4000 the velocity is 1000 nu / R.
        laminar = bisect(lambda r: 2 * G * slope * r**3 / viscosity**2 - begin(r), mpf("1e-7"), mpf(1000), 130)
        turbulent = bisect(lambda r: 8 * G * r * slope - end(r) * (1000 * viscosity / r) ** 2, mpf("1e-7"), mpf(1000), 130)
        depths = []
        for r in (laminar, turbulent, wall / 4):
            if r == 0:
                continue
            if shape == "rectangular":
                y = r * d / (d - 2 * r) if 2 * r < d else inf
                depths += [y] if y < 1000 else []
            else:
                pipe = Circle(d)
                top = bisect(lambda y: pipe.radius(y - d / 10**12) - pipe.radius(y + d / 10**12), d * mpf("0.7"), d * mpf("0.9"), 90)
                if r < pipe.radius(top):
                    depths.append(bisect(lambda y: pipe.radius(y) - r, d * mpf(10) ** -12, top, 120))
                    if r > d / 4:
                        depths.append(bisect(lambda y: r - pipe.radius(y), top, d * (1 - mpf(10) ** -25), 120))
        rows.append((shape, size, s, k, nu, show(sum((i + 1) * y for i, y in enumerate(depths)))))
    write(FOLDER, PROGRAM, "ends-of-laminar-flow", "C. F. Colebrook (1939), Turbulent flow in pipes: depths at which flow ceases to be laminar and becomes turbulent and at which the wall is as rough as it counts, times their places",
          [("shape", "text, section"), ("size", "m, bore or width"), ("s", "m/m, fall"), ("k", "m, equivalent sand roughness"), ("nu", "m2/s, kinematic viscosity"), ("sum", "m, sum")], [("shape", "text shape"), ("diameter", "size"), ("width", "size"), ("gradient", "s"), ("roughness", "k"), ("viscosity", "nu")],
          [("sum", "resistance.break-depths")], rows, tolerance="1e-10 relative", reason="17 digits are given; near its greatest a radius tells the depth to half of its digits")


def backwaters():
    """Backwater that ends just below the second of two normal depths, where the friction slope nears that of the bed once more."""
    rows = []
    for d, s, share in (("0.9", "0.0006", "1.03"), ("0.3", "0.002", "1.05"), ("2", "0.0003", "1.01"), ("0.9", "0.0006", "1.075")):
        pipe, slope, n = Circle(mpf(d)), mpf(s), mpf("0.013")
        law = lambda y: pipe.area(y) * pipe.radius(y) ** (mpf(2) / 3) * sqrt(slope) / n
        top = bisect(lambda y: law(y - mpf(d) / 10**12) - law(y + mpf(d) / 10**12), mpf(d) * mpf("0.9"), mpf(d) * mpf("0.97"), 90)
        q = mpf(float(mpf(share) * law(mpf(d) * (1 - mpf(10) ** -28))))
        lower = bisect(lambda y: law(y) - q, mpf(d) / 100, top, 110)
        upper = bisect(lambda y: q - law(y), top, mpf(d) * (1 - mpf(10) ** -26), 110)
        per_depth = lambda y: (1 - q**2 * 2 * sqrt(y * (mpf(d) - y)) / (G * pipe.area(y) ** 3)) / (slope * (1 - (q / law(y)) ** 2))
        rows.append((d, s, repr(float(q)), repr(float(lower + mpf("0.0004"))), "0.0005", "0", ""))
        for below in ("0.02", "0.002", "1e-4", "1e-6"):
            # As the library takes it: a double.
            raised = mpf(float(upper - mpf(below) * mpf(d)))
            # Close to the most that a pipe carries the two depths are close together.
            rise = "0.01" if upper > mpf("1.05") * lower else "0.001"
            middle = (lower + upper) / 2
            end = lower + mpf(rise)
            if raised <= middle:
                continue
            # Logarithms of the heights over and under the two depths.
            length = quad(lambda u: mp.e**u * per_depth(lower + mp.e**u), [mp.log(end - lower), mp.log(middle - lower)]) + quad(lambda u: mp.e**u * per_depth(upper - mp.e**u), list(mp.linspace(mp.log(upper - raised), mp.log(upper - middle), 4)))
            rows.append((d, s, repr(float(q)), repr(float(raised)), rise, show(length), show(raised, 18)))
    write(FOLDER, PROGRAM, "backwater-under-a-second-depth", "Ven Te Chow (1959), Open-Channel Hydraulics, chapter 9: lengths of backwater in pipes that carry more than when full, up to a hair below the upper of their two normal depths",
          [("d", "m, bore"), ("s", "m/m, fall"), ("q", "m3/s, discharge"), ("raised", "m, raised depth"), ("rise", "m, rise that counts as the end"), ("length", "m, length"), ("back", "m, the raised depth of that length")],
          [("shape", "word circular"), ("diameter", "d"), ("gradient", "s"), ("n", "0.013"), ("discharge", "q"), ("rise", "rise")], [("length", "backwater.length", "input.raised_depth = raised"), ("back", "backwater.raised-depth", "input.distance = length")], rows, tolerance="1e-9 relative", reason="17 digits are given; near the upper depth its own last digits count")


def parts():
    """Walls whose roughness changes twice, parts with their own radii, and where the walls of a silted section change."""
    rows = []
    mixed = {"HORTON_EINSTEIN": lambda p, n: (sum(a * b ** mpf("1.5") for a, b in zip(p, n)) / sum(p)) ** (mpf(2) / 3), "PAVLOVSKIJ": lambda p, n: sqrt(sum(a * b * b for a, b in zip(p, n)) / sum(p)), "LOTTER": lambda p, n: sum(p) / sum(a / b for a, b in zip(p, n))}
    for method, law in mixed.items():
        for bed, changes in (("0.1", ("0.5", "0.9")), ("0", ("0.3", "1.2")), ("0.4", ("0.35", "0.8"))):
            for y in ("0.05", "0.3", "0.6", "1.1"):
                w, level = mpf("1.4"), mpf(bed) + mpf(y)
                edges = [mpf(bed)] + [max(mpf(c), mpf(bed)) for c in changes] + [inf]
                walls = [max(2 * (min(level, hi) - lo), mpf(0)) for lo, hi in zip(edges, edges[1:])]
                rows.append((method, bed, *changes, y, show(law([w, *walls], [mpf(x) for x in ("0.027", "0.012", "0.018", "0.015")]))))
    write(FOLDER, PROGRAM, "roughness-changes-twice", "Ven Te Chow (1959), Open-Channel Hydraulics, section 6-5: boxes whose walls change at two levels above a bed", [("method", "text, how parts are compounded"), ("bed", "m, bed"), ("first", "m, first change"), ("second", "m, second change"), ("y", "m, depth above the bed"), ("n", "s/m^(1/3), n of the whole")],
          [("shape", "word box"), ("width", "1.4"), ("height", "2"), ("bed", "bed"), ("method", "text method"), ("bed_n", "0.027"), ("wall_n", "0.012"), ("change", "first"), ("upper_n", "0.018"), ("second_change", "second"), ("highest_n", "0.015"), ("depth", "y")], [("n", "roughness.banded")], rows, tolerance="1e-13 relative", reason=DIGITS)
    write(FOLDER, PROGRAM, "roughness-changes-refused", "walls that change at levels which do not rise", [("first", "m, first change"), ("second", "m, second change"), ("refused", "1, 1 if refused")],
          [("shape", "word box"), ("width", "1.4"), ("height", "2"), ("bed", "0.1"), ("method", "word LOTTER"), ("bed_n", "0.027"), ("wall_n", "0.012"), ("change", "first"), ("upper_n", "0.018"), ("second_change", "second"), ("highest_n", "0.015"), ("depth", "0.7")], [("refused", "refusal.roughness.banded")],
          [("0.5", "0.6", 0), ("0.5", "0.5", 1), ("0.5", "0.4", 1), ("0.5", "0.01", 1)], tolerance="0", reason="a verdict")
    rows = []
    for n, p, r, whole in (("0.03 0.012 0.02", "2 1.1 0.7", "0.4 0.7 1.3", "0.6"), ("0.025 0.014", "3 1", "0.5 0.5", "0.5"), ("0.025 0.014", "1 0", "0.2 0.9", "0.3")):
        ns, ps, rs = ([mpf(x) for x in t.split()] for t in (n, p, r))
        for method, law in mixed.items():
            flows = mpf(whole) ** (mpf(5) / 3) * sum(ps) / sum(a * b ** (mpf(5) / 3) / c for a, b, c in zip(ps, rs, ns))
            rows.append((method, n, p, r, whole, show(flows if method == "LOTTER" else law(ps, ns))))
    write(FOLDER, PROGRAM, "roughness-of-parts", "Ven Te Chow (1959), Open-Channel Hydraulics, section 6-5: n of a whole whose parts have their own hydraulic radii", [("method", "text, how parts are compounded"), ("parts", "s/m^(1/3), n of the parts"), ("p", "m, perimeters"), ("r", "m, radii"), ("whole", "m, radius of the whole"), ("n", "s/m^(1/3), n of the whole")],
          [("method", "text method"), ("parts", "text parts"), ("perimeters", "text p"), ("radii", "text r"), ("radius", "whole")], [("n", "roughness.compounded")], rows, tolerance="1e-13 relative", reason=DIGITS)
    rows = []
    for levels, widths, bed in (("0 0.4 1 1.5", "1 1.2 1.9 0.6", "0.2"), ("0 0.4 1 1.5", "1 1.2 1.9 0.6", "0.4"), ("0 0.4 1 1.5", "1 1.2 1.9 0.6", "0.7"), ("0 0.4 1 1.5", "1 1.2 1.9 0.6", "1.2")):
        inner = [mpf(x) - mpf(bed) for x in levels.split() if mpf(x) > mpf(bed)]
        rows.append((levels, widths, bed, show(sum((i + 2) * y for i, y in enumerate(inner)))))
    write(FOLDER, PROGRAM, "beds-between-corners", "where the walls of a section above a bed change: depths times their places, the bed itself the first", [("levels", "m, levels"), ("widths", "m, widths"), ("bed", "m, bed"), ("sum", "m, sum")], [("shape", "word tabulated"), ("levels", "text levels"), ("widths", "text widths"), ("bed", "bed"), ("depth", "0.1")], [("sum", "sediment.break-depths")], rows, tolerance="1e-14", reason=DIGITS)
    rows = [(v, lo, hi, x, int(mpf(lo) <= mpf(x) <= mpf(hi))) for v, lo, hi in (("0.1", "-0.2", "0.5"), ("1", "1", "1")) for x in ("-0.3", "-0.2", "0", "0.5", "0.6", "1")]
    write(FOLDER, PROGRAM, "estimates-that-hold", "whether a figure lies in the interval of an estimate", [("v", "1, estimate"), ("lower", "1, lower end"), ("upper", "1, upper end"), ("x", "1, figure"), ("holds", "1, 1 if it does")], [("value", "v"), ("lower", "lower"), ("upper", "upper"), ("figure", "x")], [("holds", "evidence.estimate.holds")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    for make in (cells, structures, flaps_and_screens, laws, conduits, breaks, backwaters, parts):
        if not sys.argv[2:] or make.__name__ in sys.argv[2:]:
            make()
