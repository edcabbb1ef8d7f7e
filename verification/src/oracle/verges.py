"""Weirs, gates, sections, jumps and energies at the verges of their branches: zero, one, a step, a limit. Python with mpmath, no code in
common with the library.

    python3 verges.py FOLDER [NAME ...]

writes the tables named below into the folder of the hydraulics tables. Laws of structures come from structure_limits.py, side weirs from
de Marchi's integral, sections from widths between levels; roots by bisection with 30 digits.
"""

import sys

from mpmath import asin, cos, mp, mpf, nstr, pi, sin, sqrt

from flow_relations import bisect
from own_tables import write
from structure_limits import G, drowned, free

mp.dps = 30
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "verges.py"
show = lambda value: nstr(mpf(value), 17, min_fixed=-mp.inf, max_fixed=mp.inf)
TRADE = [("kind", "text, structure"), ("size", "m or degrees, its size"), ("length", "m, along the flow"), ("B", "m, channel"), ("p", "m, crest")]
GIVEN = [("kind", "text kind"), ("size", "size"), ("length", "length"), ("width", "B"), ("crest_height", "p")]


def laws():
    """Heads just below and beyond the ends of tables of coefficients, a gate under a deep tailwater, an opening hardly covered."""
    rows = []
    for line in """
        finite 0 0.7 0.9 0.45 0.05 0 | finite 0 0.7 0.9 0.45 0.0714 0 | finite 0 0.7 0.9 0.45 0.0722 0 | finite 0 0.7 0.9 0.45 1.11 0 | finite 0 0.7 0.9 0.45 1.13 0 | finite 0 0.2 0.9 3 0.31 0 | finite 0 0.2 0.9 3 0.33 0
        finite 0 2 0.9 0.11 0.175 0 | finite 0 2 0.9 0.11 0.178 0 | gate 0.25 0 2 0 0.45 0.43 | gate 0.25 0 2 0 0.3 0.28 | gate 0.7 0 2 0 1.3 1.27 | gate 0.7 0 2 0 1.21 1.2
        orifice 0.2 0 0 0 0.1 0.098 | orifice 0.2 0 0 0 0.106 0.1 | orifice 0.2 0 0 0 0.299 0.11 | orifice 0.2 0 0 0 0.301 0.11 | parshall 3.1 0 0 0 0.7 0 | parshall 3.1 0 0 0 0.7 0.6 | parshall 3.04 0 0 0 0.5 0.45
        parshall 2.44 0 0 0 0.5 0.3 | parshall 2.44 0 0 0 0.5 0.36 | parshall 0.3 0 0 0 0.3 0.2 | parshall 0.3 0 0 0 0.3 0.22 | crump 0 0 2 0.4 0.30 0.287 | crump 0 0 2 0.4 0.30 0.289
    """.replace("\n", "|").split("|"):
        cells = line.split()
        if cells:
            kind, *n = cells
            size, L, B, p, h, t = map(mpf, n)
            rows.append((*cells, show(drowned(kind, size, L, B, p, h, t) if t > 0 else free(kind, size, L, B, p, h))))
    write(FOLDER, PROGRAM, "structures-at-verges", "laws of weirs, flumes, gates and openings where one branch or table ends and the next begins", [*TRADE, ("h", "m, head"), ("t", "m, tailwater"), ("q", "m3/s, discharge")],
          [*GIVEN, ("head", "h"), ("tailwater", "t")], [("q", "structure.discharge")], rows, tolerance="1e-10 relative", reason="17 digits are given")
    rows = []
    for cells, h, u in (("brink-rectangular 0.5 0 0 0", "0.2", "0.03"), ("round 0 1.2 0.8 0.4", "0.2", ""), ("rehbock 0 0 0.9 0.4", "0.3", ""), ("parshall 4 0 0 0", "0.3", "0.05"), ("parshall 0.152 0 0 0", "0.3", "0.05"),
                        ("notch 90 0 1.2 0.4", "0.2", "0.01"), ("plate 0.5 0 1.4 0.3", "0.297", "0.015"), ("plate 0.5 0 1.4 0.3", "0.303", "0.02"), ("plate 0.5 0 1.4 0.3", "0.447", "0.02"), ("plate 0.5 0 1.4 0.3", "0.453", "0.03")):
        if u:
            rows.append((*cells.split(), h, u))
    write(FOLDER, PROGRAM, "structures-uncertain", "uncertainty (95 %) of coefficients as the standards give it, on either side of each step; from memory", [*TRADE, ("h", "m, head"), ("u", "1, relative uncertainty")],
          [*GIVEN, ("head", "h")], [("u", "structure.uncertainty")], rows, tolerance="1e-12", reason="a figure of the standard")
    # A record of heads over one tailwater: what is dry under it is flagged, what is dry without is not.
    rows = []
    for cells, heads, tail, flagged in (("plate 0.5 0 1.4 0.3", "0 -0.1 0.2 0 9", "0.15", 4), ("plate 0.5 0 1.4 0.3", "0 -0.1 0.2 0 9", "0", 2), ("orifice 0.2 0 0 0", "0 0.5 0.7 0", "0.3", 2), ("orifice 0.2 0 0 0", "0.5 0.7", "0.3", 0)):
        rows.append((*cells.split(), heads, tail, flagged))
    write(FOLDER, PROGRAM, "records-over-one-tailwater", "how many heads of a record no law covers: negative ones, those beyond its end, and dry ones under a tailwater",
          [*TRADE, ("heads", "m, heads"), ("t", "m, tailwater"), ("flagged", "1, readings")], [*GIVEN, ("heads", "text heads"), ("tailwater", "t")], [("flagged", "structure.record.flagged")], rows, tolerance="0", reason="a count")
    write(FOLDER, PROGRAM, "flaps-at-rest", "no loss needs no velocity", [("d", "m, bore"), ("v", "m/s, velocity")], [("diameter", "d"), ("loss", "0")], [("v", "flap.slow-velocity")], [("0.3", 0), ("1.2", 0)], tolerance="0", reason="0")


def side():
    """De Marchi's integral for subcritical flow: from its upstream end, and over crests so long that the depth goes to the sill."""
    phi = lambda E, p, t: (2 * E - 3 * p) / (E - p) * sqrt((E - t) / (t - p)) - 3 * asin(sqrt((E - t) / (E - p)))
    down, up = [], []
    for b, p, c, y, q, L in (("0.05", "0.3", "0.6", "0.44", "0.006", "0.02"), ("0.04", "0.2", "0.5", "0.31", "0.004", "0.015"), ("1", "0.5", "0.5", "0.62", "0.4", "0.9"), ("0.03", "0.25", "0.4", "0.5", "0.01", "0.01")):
        width, sill, cd, depth = mpf(b), mpf(p), mpf(c), mpf(y)
        E = depth + (mpf(q) / (width * depth)) ** 2 / (2 * G)
        scale = 3 * width / (2 * cd)
        f = lambda t: abs(scale * (phi(E, sill, t) - phi(E, sill, depth))) - mpf(L)
        rest = E - mpf(10) ** -25
        if abs(scale * (phi(E, sill, rest) - phi(E, sill, depth))) < mpf(L):
            continue  # all is spilled before the end
        t = bisect(f, depth + mpf(10) ** -20, rest, 150)
        down.append((b, p, c, y, q, L, show(t)))
    # Fast flow: its depth falls along the crest, towards the sill.
    for b, p, c, y, q, L in (("1", "0.3", "0.5", "0.35", "0.9", "0.8"), ("0.5", "0.2", "0.6", "0.22", "0.3", "0.5"), ("1", "0.3", "0.5", "0.42", "1.2", "0.6"), ("2", "0.1", "0.4", "0.14", "0.7", "1.5")):
        width, sill, cd, depth = mpf(b), mpf(p), mpf(c), mpf(y)
        E = depth + (mpf(q) / (width * depth)) ** 2 / (2 * G)
        assert (mpf(q) / (width * depth)) ** 2 > G * depth
        scale = 3 * width / (2 * cd)
        t = bisect(lambda t: abs(scale * (phi(E, sill, t) - phi(E, sill, depth))) - mpf(L), sill + mpf(10) ** -12, depth - mpf(10) ** -22, 150)
        down.append((b, p, c, y, q, L, show(t)))
    for b, p, c, y, q, L in (("1", "0.5", "0.611", "0.7", "0.3", "12"), ("1", "0.5", "0.611", "0.7", "0.3", "60"), ("2", "0.7", "0.5", "0.8", "0.1", "40"), ("1", "0.5", "0.5", "0.6", "0", "25")):
        width, sill, cd, depth = mpf(b), mpf(p), mpf(c), mpf(y)
        E = depth + (mpf(q) / (width * depth)) ** 2 / (2 * G)
        assert 2 * E / 3 < sill  # never critical above the sill
        scale = 3 * width / (2 * cd)
        f = lambda t: abs(scale * (phi(E, sill, t) - phi(E, sill, depth))) - mpf(L)
        low, high = sill + mpf(10) ** -14, depth - mpf(10) ** -22
        t = bisect(f, low, high, 150)
        up.append((b, p, c, y, q, L, show(t), show(width * t * sqrt(2 * G * (E - t)) - mpf(q))))
    columns = [("b", "m, width"), ("p", "m, sill"), ("c", "1, coefficient"), ("y", "m, depth"), ("q", "m3/s, discharge"), ("l", "m, length")]
    given = [("section", "word rectangle"), ("size", "b"), ("sill", "p"), ("length", "l"), ("coefficient", "c"), ("depth", "y"), ("discharge", "q")]
    write(FOLDER, PROGRAM, "side-weirs-from-upstream", "G. de Marchi (1934): side weirs in narrow rectangular channels, from what is known upstream", [*columns, ("down", "m, depth downstream")], given, [("down", "weir.side.downstream-depth")], down,
          tolerance="1e-9 relative", reason="the library integrates to 1e-10")
    write(FOLDER, PROGRAM, "side-weirs-long", "G. de Marchi (1934): side weirs above critical depth so long that the water falls nearly to the sill", [*columns, ("up", "m, depth upstream"), ("spill", "m3/s, spill")], given,
          [("up", "weir.side.upstream-depth"), ("spill", "weir.side.spill")], up, tolerance="1e-9 relative", reason="the library integrates to 1e-10")


class Levels:
    """A section of straight pieces between levels, with steps where a level stands twice."""

    def __init__(self, levels, widths):
        self.pieces = [(mpf(a), mpf(b), mpf(w), mpf(v)) for a, b, w, v in zip(levels.split(), levels.split()[1:], widths.split(), widths.split()[1:])]
        self.widest = max(mpf(w) for w in widths.split())
        self.floor, self.height = mpf(widths.split()[0]), mpf(levels.split()[-1])

    def cut(self, y, measure):
        total = mpf(0)
        for low, top, w, v in self.pieces:
            if low < y and low < top:
                part = min(y, top) - low
                end = w + (v - w) * part / (top - low)
                total += measure(low, part, w, end)
            elif low < y:  # a step
                total += measure(low, mpf(0), w, v)
        return total

    def area(self, y):
        return self.cut(y, lambda low, part, w, end: part * (w + end) / 2)

    def moment(self, y):
        return self.cut(y, lambda low, part, w, end: part * (w + end) / 2 * (y - low) - part**2 * (w + 2 * end) / 6)

    def perimeter(self, y):
        lid = 0
        return self.floor + lid + self.cut(y, lambda low, part, w, end: 2 * sqrt(part**2 + (end - w) ** 2 / 4))


def sections():
    """Sections at the invert and at a depth of one metre, with steps; beds that leave an area of one."""
    rows = []
    for levels, widths in (("0 1 1 2", "1 2 1 1"), ("0 1 1 2", "1 1 2 1.5"), ("0 0.5 2.5", "0.4 1.7 0.9"), ("0 1 3", "2 2 1")):
        s = Levels(levels, widths)
        for y in ("0", "0.3", "1", "1.5", "1.9"):
            d = mpf(y)
            at_step = y == "1" and levels.count("1") > 1
            rows.append((levels, widths, y, show(s.area(d)), "" if at_step else show(s.perimeter(d) if d else mpf(0)), show(s.moment(d) / s.area(d)) if d else "0", show(s.widest)))
    write(FOLDER, PROGRAM, "sections-with-steps", "areas, perimeters, centroids and widest places of sections of straight pieces, some of them level", [("levels", "m, levels"), ("widths", "m, widths"), ("y", "m, depth"), ("a", "m2, area"), ("u", "m, wetted perimeter"), ("c", "m, centroid below the surface"), ("w", "m, greatest width")],
          [("shape", "word tabulated"), ("levels", "text levels"), ("widths", "text widths")], [("a", "section.area", "input.depth = y"), ("u", "section.perimeter", "input.depth = y"), ("c", "section.centroid-depth", "input.depth = y"), ("w", "section.widest")], rows, tolerance="1e-12 relative or 1e-13")
    write(FOLDER, PROGRAM, "sections-refused", "rows of a section that repeat, go down, or do not; walls that cross for a moment between their ends", [("levels", "m, levels"), ("widths", "m, widths"), ("table", "1, 1 if refused"), ("wall", "text, wall"), ("crossing", "1, 1 if refused")], [],
          [("table", "refusal.section.height", "input.shape = word tabulated", "input.levels = text levels", "input.widths = text widths"), ("crossing", "refusal.wall.height", "input.wall = text wall", "input.turned = 0")],
          [("0 1 1 2", "1 2 1 1", 0, "", ""), ("0 1 1 2", "1 2 2 1", 1, "", ""), ("0 1 0.9 2", "1 2 2 1", 1, "", ""), ("0.1 1 2", "1 2 1", 1, "", ""), *(("", "", "", *bulge(d, c), int(d > 0)) for d, c in ((0.002, 0.7), (-0.002, 0.7), (0.002, 1.33), (0.01, 0.9), (-0.01, 0.9)))],
          tolerance="0", reason="a verdict")
    rows = []
    for width, height, bed, y in (("2", "3", "1", "0.5"), ("2", "3", "1", "0"), ("2", "3", "1", "1"), ("0.5", "4", "1", "2"), ("1.5", "3", "0.5", "1"), ("1.5", "3", "0", "1")):
        w, d = mpf(width), mpf(y)
        rows.append((width, height, bed, y, show(w * d), show(w + 2 * d if d else mpf(0)), show(d / 2)))
    write(FOLDER, PROGRAM, "beds-of-one", "boxes above a level bed: at no depth, at a depth of one metre and an area of one", [("w", "m, width"), ("h", "m, height"), ("bed", "m, bed"), ("y", "m, depth above it"), ("a", "m2, area"), ("u", "m, wetted perimeter"), ("c", "m, centroid below the surface")],
          [("shape", "word box"), ("width", "w"), ("height", "h"), ("bed", "bed"), ("depth", "y")],
          [("a", "sediment.area"), ("u", "sediment.perimeter"), ("c", "sediment.centroid-depth"), ], rows, tolerance="1e-13 relative or 1e-15")
    write(FOLDER, PROGRAM, "beds-of-ones-own", "sections of one's own above a level bed: at no depth, at a depth of one metre and an area of one", [("w", "m, width"), ("h", "m, height"), ("bed", "m, bed"), ("y", "m, depth above it"), ("a", "m2, area"), ("u", "m, wetted perimeter"), ("c", "m, centroid below the surface"), ("q", "m3/s, discharge at that depth, n = 0.013, fall 0.002"), ("normal", "m, depth of the discharge")],
          [("shape", "word box"), ("width", "w"), ("height", "h"), ("bed", "bed"), ("depth", "y")],
          [("a", "sediment.own-area"), ("u", "sediment.own-perimeter"), ("c", "sediment.own-centroid-depth"), ("normal", "sediment.own-normal-depth", "input.discharge = q", "input.gradient = 0.002", "input.n = 0.013")],
          [(*r, show(w * y * (w * y / (w + 2 * y)) ** (mpf(2) / 3) * sqrt(mpf("0.002")) / mpf("0.013")), r[3]) if r[3] != "0" else (*r, "", "")
           for r in rows if r[2] != "0" for w, y in [(mpf(r[0]), mpf(r[3]))]], tolerance="1e-13 relative or 1e-15")
    asked = [("circular", d, d, d, show(mpf(part) * q)) for d, q in (("0.9", mpf("0.8")), ("0.25", mpf("0.026"))) for part in ("0.97", "0.93", "0.8", "0.55", "0.52", "0.48", "0.3", "0.2", "0.11", "0.06", "0.013", "0.0008", "3e-6", "1e-9")]
    asked += [("rectangular", "1.4", "1.4", "1.4", q) for q in ("5e7", "4000", "3.1", "0.22", "1e-5", "1e-14")] + [("trapezoidal", "1.4", "0.8", "1.4", q) for q in ("90", "3.3", "1.7", "0.3", "0.04", "0.0002")]
    write(FOLDER, PROGRAM, "own-sections-asked-again", "sections of one's own: who was asked for the depth of nearly the same discharge before need not ask again", [("shape", "text, shape"), ("d", "m, diameter"), ("w", "m, width"), ("h", "1 or m, slope of the sides"), ("q", "m3/s, discharge"), ("asked", "1, how often the area is asked for")],
          [("shape", "text shape"), ("diameter", "d"), ("width", "w"), ("side_slope", "h"), ("gradient", "0.004"), ("n", "0.013"), ("discharge", "q")], [("asked", "flow.own-asked-again")], [(*r, 0) for r in asked], tolerance="0", reason="a count")
    rows = []
    for d, bed in (("0.6", "0.15"), ("3", "1")):
        D, b = mpf(d), mpf(bed)
        segment = lambda y: D * D / 4 * (theta(y / D) - sin(theta(y / D))) / 2
        theta = lambda x: 2 * mp.acos(1 - 2 * x)
        whole = pi * D * D / 4 - segment(b)
        for y in ("0.2", "0.4"):
            rows.append((d, bed, y, show(segment(b + mpf(y)) - segment(b)), "", ""))
        for share, out in (("0.5", 0), ("0.985", 0), ("1.015", 1), ("1.2", 1)):
            rows.append((d, bed, "", "", show(whole * mpf(share)), out))
    write(FOLDER, PROGRAM, "beds-in-bores", "bores above a level bed: areas, and areas greater than there is", [("d", "m, bore"), ("bed", "m, bed"), ("y", "m, depth above it"), ("a", "m2, area"), ("asked", "m2, an area"), ("refused", "1, 1 if refused"), ],
          [("shape", "word circular"), ("diameter", "d"), ("bed", "bed")], [("a", "sediment.area", "input.depth = y"), ("refused", "refusal.sediment.own-depth-for-area", "input.area = asked")], rows, tolerance="1e-12 relative", reason="17 digits are given, or a verdict")


def bulge(depth, centre):
    """A wall 2 m high whose arc comes nearest to the middle at a level, and passes it by a depth or keeps away by one."""
    r = 3.0
    cx = r - depth
    foot, top = cx - math_sqrt(r * r - centre * centre), cx - math_sqrt(r * r - (2 - centre) ** 2)
    return (f"{foot!r} 0; arc {top!r} 2 {cx!r} {centre!r}",)


def math_sqrt(x):
    return float(sqrt(mpf(x)))


def energies():
    """A channel that widens at a bench: two critical depths, and depths of the same energy beyond the nearer one."""
    rows = []
    low, bench, wide = mpf("0.5"), mpf("0.8"), mpf(3)
    area = lambda y: low * y if y <= bench else low * bench + wide * (y - bench)
    width = lambda y: low if y <= bench else wide
    energy = lambda y, q: y + (q / area(y)) ** 2 / (2 * G)
    for words in ("0.9", "1.0"):
        q = mpf(words)
        below = (q / low) ** (mpf(2) / 3) / G ** (mpf(1) / 3)
        above = bisect(lambda y: G * area(y) ** 3 / wide - q * q, bench + mpf(10) ** -25, mpf(9), 150)
        assert below < bench < above
        # Between the two lies the top at the bench.
        for y in (bench - mpf("0.004"), bench + mpf("0.0005"), above - mpf("0.004"), above + mpf("0.004"), above + mpf("0.02"), below - mpf("0.01"), below + mpf("0.005")):
            at = mpf(show(y))
            nearest = below if abs(at - below) < abs(at - above) else above
            target = energy(at, q)
            f = lambda z: energy(z, q) - target
            cuts = [mpf("0.01"), below, bench, above, mpf(50)]
            roots = [bisect(f, a + mpf(10) ** -24, b - mpf(10) ** -24, 150) for a, b in zip(cuts, cuts[1:]) if f(a + mpf(10) ** -24) * f(b - mpf(10) ** -24) < 0]
            beyond = [z for z in roots if (z > nearest) != (at > nearest)]
            if beyond:
                rows.append((words, show(at), show(min(beyond, key=lambda z: abs(z - nearest)))))
    write(FOLDER, PROGRAM, "alternate-depths-over-a-bench", "Ven Te Chow (1959), Open-Channel Hydraulics, chapter 3: depths of the same energy in a channel with a bench, beyond the nearer of two critical depths",
          [("q", "m3/s, discharge"), ("y", "m, depth"), ("other", "m, alternate depth")], [("shape", "word open-tabulated"), ("levels", "word 0 0.8 0.8 3"), ("widths", "word 0.5 0.5 3 3"), ("discharge", "q"), ("depth", "y")], [("other", "energy.alternate-depth")], rows,
          tolerance="1e-10 relative", reason="17 digits are given")


def jumps():
    """Jumps that fill a box, and those that stay under its lid; lengths only where walls stand upright."""
    rows = []
    for height in ("0.5", "1"):
        for y, f in (("0.1", "2"), ("0.1", "4"), ("0.1", "6"), ("0.2", "3"), ("0.2", "1.6")):
            d, froude, h = mpf(y), mpf(f), mpf(height)
            other = d / 2 * (sqrt(1 + 8 * froude**2) - 1)
            rows.append((height, y, show(froude * sqrt(G * d**3)), int(other >= h)))
    write(FOLDER, PROGRAM, "jumps-that-fill", "whether a jump in a box 1 m wide fills it", [("h", "m, height"), ("y", "m, depth before it"), ("q", "m3/s, discharge"), ("fills", "1, 1 if it does")], [("shape", "word box"), ("width", "1"), ("height", "h"), ("depth", "y"), ("discharge", "q")], [("fills", "jump.is-filling")], rows,
          tolerance="0", reason="a verdict")
    rows = []
    for width, bend, refused in (("0.001", "0.001", 0), ("0.001", "0.0010001", 1), ("0.001", "0.00100001", 1), ("300", "300", 0), ("300", "300.003", 1), ("1", "1", 0), ("1", "1.0001", 1)):
        w = mpf(width)
        y = mpf("0.0004") if w < 1 else mpf(1)
        other = y / 2 * (sqrt(1 + 8 * mpf(9)) - 1)
        rows.append((f"0 {show(other / 3)} {show(other * 2 / 3)} {show(other * 2)}", f"{width} {bend} {width} {width}", show(y), show(w * 3 * sqrt(G * y**3)), refused))
    write(FOLDER, PROGRAM, "lengths-of-jumps-refused", "lengths of jumps are known between upright walls: channels that bulge by a hundred thousandth are none", [("levels", "m, levels"), ("widths", "m, widths"), ("y", "m, depth"), ("q", "m3/s, discharge"), ("refused", "1, 1 if refused")],
          [("shape", "word open-tabulated"), ("levels", "text levels"), ("widths", "text widths"), ("depth", "y"), ("discharge", "q")], [("refused", "refusal.jump.length")], rows, tolerance="0", reason="a verdict")


def states():
    """Flow through a wetted area of one, through none and through a full box; inlets of steep channels at no head, one metre and others."""
    rows = []
    for width, height, y in (("2", "1.5", "0.5"), ("1", "1.5", "1"), ("0.8", "1.5", "1.25"), ("2", "1.5", "0"), ("2", "1.5", "1.5"), ("4", "1", "0.25")):
        w, h, d = mpf(width), mpf(height), mpf(y)
        full = d == h
        radius = w * d / (w + 2 * d + (w if full else 0)) if d else mpf(0)
        v = radius ** (mpf(2) / 3) * sqrt(mpf("0.002")) / mpf("0.013")
        rows.append((width, height, y, show(v), show(v / sqrt(G * d)) if d and not full else "0"))
    write(FOLDER, PROGRAM, "flow-through-one", "uniform flow in boxes: where the wetted area is one, where there is none, and where there is no surface", [("w", "m, width"), ("h", "m, height"), ("y", "m, depth"), ("v", "m/s, velocity"), ("f", "1, Froude number")],
          [("shape", "word box"), ("width", "w"), ("height", "h"), ("depth", "y"), ("gradient", "0.002"), ("n", "0.013")], [("v", "flow.velocity"), ("f", "flow.froude-number")], rows, tolerance="1e-12 relative or 1e-14")
    rows = []
    for width, head, loss in (("1", "0", "0.5"), ("1", "1", "0.5"), ("1", "1", "0"), ("2", "1", "1"), ("1.5", "0.4", "0.2"), ("1.5", "2.1", "0.5")):
        # Critical flow at the inlet of a steep channel: the head is the depth and (1 + loss) halves of it.
        y = mpf(head) / (1 + (1 + mpf(loss)) / 2)
        rows.append((width, head, loss, show(y), show(mpf(width) * y * sqrt(G * y))))
    write(FOLDER, PROGRAM, "inlets-of-steep-channels", "Ven Te Chow (1959), Open-Channel Hydraulics, chapter 4: inlets of steep rectangular channels, where flow is critical", [("w", "m, width"), ("head", "m, head"), ("loss", "1, loss of the inlet"), ("y", "m, depth"), ("q", "m3/s, discharge")],
          [("shape", "word rectangular"), ("width", "w"), ("gradient", "0.08"), ("n", "0.012"), ("head", "head"), ("loss", "loss")], [("y", "inlet.depth"), ("q", "inlet.discharge")], rows, tolerance="1e-11 relative or 1e-14", reason="17 digits are given")


def approaches():
    """Francis's way with the velocity of the approach: what flows at the total head less what flows at the velocity head."""
    rows = []
    for L, z, n, c, B, p, h in (("1", "0", "0", "0.62", "1", "0.3", "0.05"), ("1", "0", "0", "0.62", "1", "0.3", "0.6"), ("0.8", "0", "2", "0.6", "1.5", "0.4", "0.02"), ("0.8", "0", "1", "0.6", "1.5", "0.4", "0.4"), ("0.5", "0.25", "0", "0.6", "1.2", "0.5", "0.01"), ("0.5", "0.25", "2", "0.6", "1.2", "0.5", "0.3"),
                            ("3", "0", "0", "0.6", "3", "1", "0.001")):
        length, slope, ends, head = mpf(L), mpf(z), mpf(n), mpf(h)
        def flow(v):
            total = head + v
            crest = total ** mpf("1.5") - v ** mpf("1.5")
            sides = total ** mpf("2.5") - v ** mpf("2.5")
            return mpf(2) / 3 * sqrt(2 * G) * mpf(c) * ((length - mpf("0.1") * ends * head) * crest + mpf("0.8") * slope * sides)
        v = mpf(0)
        for _ in range(3000):
            v = (flow(v) / (mpf(B) * (head + mpf(p)))) ** 2 / (2 * G)
        rows.append((L, z, n, c, B, p, h, show(flow(v))))
    write(FOLDER, PROGRAM, "weirs-with-approach", "J. B. Francis (1883): crests and notches by a coefficient, the velocity head of the approach added to the head and its own flow taken off", [("l", "m, crest"), ("z", "1, sides"), ("n", "1, contractions"), ("c", "1, coefficient"), ("B", "m, channel"), ("p", "m, crest height"), ("h", "m, head"), ("q", "m3/s, discharge")],
          [("crest_length", "l"), ("side_slope", "z"), ("contractions", "n"), ("coefficient", "c"), ("approach_width", "B"), ("crest_height", "p"), ("head", "h")], [("q", "weir.by-coefficient.discharge")], rows, tolerance="1e-11 relative", reason="17 digits are given")


def crowns():
    """Inlets whose headwater is at the crown of a box: critical energy, K q^M and half of the fall."""
    rows = []
    for edge, k, m in (("box-wingwalls-30-to-75", "0.026", "1.0"), ("box-wingwalls-90-or-15", "0.061", "0.75")):
        for wide, high, fall in (("1.8", "1.2", "0.02"), ("2", "1", "0"), ("1", "1", "0.01")):
            b, d = mpf(wide), mpf(high)
            unit = b * d * sqrt(d) * sqrt(mpf("0.3048"))
            for share in ("0.985", "1", "1.015"):
                head = mpf(share) * d
                ratio = lambda q: mpf(3) / 2 * ((q / b) ** 2 / G) ** (mpf(1) / 3) / d + mpf(k) * (q / unit) ** mpf(m) - mpf(fall) / 2 - head / d
                q = bisect(ratio, mpf("1e-9"), mpf(3.5) * unit, 150)
                assert q / unit < mpf("3.49")
                rows.append((edge, wide, high, fall, show(head), show(q)))
    write(FOLDER, PROGRAM, "culverts-at-the-crown", "Federal Highway Administration, HDS 5: inlets of boxes with the headwater at the crown, a little below and above", [("edge", "text, edge"), ("w", "m, width"), ("h", "m, height"), ("s", "m/m, fall"), ("head", "m, headwater"), ("q", "m3/s, discharge")],
          [("edge", "text edge"), ("shape", "word box"), ("width", "w"), ("height", "h"), ("gradient", "s"), ("headwater", "head")], [("q", "culvert.discharge")], rows, tolerance="1e-10 relative", reason="17 digits are given")


if __name__ == "__main__":
    for make in (laws, side, sections, energies, jumps, states, approaches, crowns):
        if not sys.argv[2:] or make.__name__ in sys.argv[2:]:
            make()
