"""Structures at their edges and records longer than any block of a loop: mpmath with 30 digits, no code in common with the library.

    python3 structure_edges.py FOLDER [NAME ...]

writes the tables named below into the folder of the hydraulics tables. Made with mpmath 1.3.
"""

import sys

from mpmath import asin, findroot, inf, log10, mp, mpf, nstr, pi, quad, sqrt, tan

from flow_relations import bisect, critical
from open_channel import G, Circle
from own_tables import text, write

mp.dps = 30
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "structure_edges.py"
show = lambda value: nstr(mpf(value), 17, min_fixed=-inf, max_fixed=inf)


def openings():
    """Round openings in an upright wall, free and partly or wholly under the tailwater: strips of the opening, by quadrature."""
    rows = []
    for d, gap, c, h in (("0.4", "0.4", "0.61", "0.9"), ("0.4", "0.3", "0.61", "0.43"), ("0.4", "0.4", "0.6", "0.22"), ("1.2", "0.7", "0.62", "0.71"), ("1.2", "1.2", "0.58", "2.6")):
        D, a, H = mpf(d), mpf(gap), mpf(h)
        width = lambda z: 2 * sqrt(max(z * (D - z), mpf(0)))
        strips = lambda low, high, head: quad(lambda t: width(low + (high - low) * (3 * t**2 - 2 * t**3)) * sqrt(max(head - (low + (high - low) * (3 * t**2 - 2 * t**3)), mpf(0))) * (high - low) * (6 * t - 6 * t**2), [0, mpf("0.1"), mpf("0.5"), mpf("0.9"), 1])
        free = mpf(c) * sqrt(2 * G) * strips(mpf(0), min(a, H), H)
        for share in ("0.07", "0.2", "0.31", "0.45", "0.6", "0.83", "0.97", "1.3"):
            tail = mpf(share) * a
            if tail >= H:
                continue
            wet = min(tail, a)
            below = strips(mpf(0), wet, inf) if False else quad(lambda t: width(wet * (3 * t**2 - 2 * t**3)) * wet * (6 * t - 6 * t**2), [0, mpf("0.5"), 1]) * sqrt(H - tail)
            above = strips(wet, min(a, H), H) if wet < min(a, H) else 0
            rows.append((d, gap, c, h, show(tail), show(free), show(mpf(c) * sqrt(2 * G) * (below + above))))
    write(FOLDER, PROGRAM, "round-openings", "round openings, open or partly closed by a gate from above, strip by strip: by their own head above the tailwater, by the difference of the levels below it",
          [("d", "m, bore"), ("a", "m, opening"), ("c", "1, coefficient"), ("h", "m, head above the invert"), ("t", "m, tailwater above the invert"), ("free", "m3/s, without tailwater"), ("q", "m3/s, with it")],
          [("diameter", "d"), ("opening", "a"), ("coefficient", "c"), ("head", "h")], [("free", "orifice.round.discharge"), ("q", "orifice.round.drowned-discharge", "input.tailwater = t")], rows, tolerance="1e-10 relative", reason="a quadrature on the library's side too")


def refusals():
    """A little inside and outside of what each says of itself."""
    rows = []
    for size, s in (("0.6", "0.01"), ("1.2", "0.002")):
        unit = pi * mpf(size) ** 2 / 4 * sqrt(mpf(size)) * sqrt(mpf("0.3048"))  # Q/(A D^0.5) of 1 in feet
        for q, refused in (("11.5", 0), ("11.97", 0), ("12.03", 1), ("12.5", 1)):
            rows.append(("culvert", size, s, show(mpf(q) * unit), refused))
    write(FOLDER, PROGRAM, "refusals-of-culverts", "discharges of 12 and more in the units of the formulas, beyond which there are no tests (Federal Highway Administration, HDS 5)",
          [("kind", "text, what"), ("d", "m, bore"), ("s", "m/m, fall"), ("q", "m3/s, discharge"), ("refused", "1, 1 if refused, else 0")], [("edge", "word concrete-square-headwall"), ("shape", "word circular"), ("diameter", "d"), ("gradient", "s"), ("discharge", "q")],
          [("refused", "refusal.culvert.headwater")], [r for r in rows], tolerance="0", reason="a verdict")
    rows = []
    for crest, slope, width in (("0.5", "0.25", "1.0"), ("0.3", "1", "0.9"), ("1", "0.5", "1.4")):
        fills = (mpf(width) - mpf(crest)) / (2 * mpf(slope))
        for share, refused in (("0.9", 0), ("0.98", 0), ("1.02", 1), ("1.06", 1)):
            rows.append((crest, slope, width, show(fills * mpf(share)), refused))
    write(FOLDER, PROGRAM, "notches-that-fill", "heads at which the sloping sides of a notch reach the walls of its channel, and a little beyond",
          [("crest", "m, crest"), ("slope", "1, sides, horizontal to 1 upright"), ("width", "m, channel"), ("h", "m, head"), ("refused", "1, 1 if refused, else 0")],
          [("crest_length", "crest"), ("side_slope", "slope"), ("coefficient", "0.6"), ("approach_width", "width"), ("crest_height", "2"), ("head", "h")], [("refused", "refusal.weir.by-coefficient.within-limits")], rows, tolerance="0", reason="a verdict")
    rows = []
    for angle, p, B, refused in (("90.049", "0.6", "0.5", 1), ("90.0515", "0.6", "0.5", 0), ("89.951", "0.6", "0.5", 1), ("89.9485", "0.6", "0.5", 0), ("90", "0.505", "0.5", 1), ("90", "0.495", "0.5", 0), ("60", "0.74", "0.5", 0), ("60", "0.76", "0.5", 1), ("90", "0.0985", "1", 1), ("90", "0.1015", "1", 0),
                                 ("20.2", "0.3", "1", 0), ("19.8", "0.3", "1", 1), ("99.5", "0.3", "1", 0), ("100.5", "0.3", "1", 1)):
        rows.append((angle, p, B, "0.09", refused))
    for h, refused in (("0.0594", 1), ("0.0606", 0)):
        rows.append(("60", "0.3", "1", h, refused))
    write(FOLDER, PROGRAM, "limits-of-notches", "V-notches within and beyond the limits of ISO 1438 and Shen (1981): angle, head, vertex over width",
          [("angle", "degrees, angle"), ("p", "m, vertex"), ("b", "m, channel"), ("h", "m, head"), ("refused", "1, limits broken")], [("kind", "word notch"), ("size", "angle"), ("length", "0"), ("width", "b"), ("crest_height", "p"), ("head", "h"), ("tailwater", "0")], [("refused", "structure.outside")], rows,
          tolerance="0", reason="a verdict")


def side():
    """The integral of de Marchi for a rectangular channel, with the coefficient of a thin plate at rest."""
    rows = []
    for b, p, cd, y, q, L in (("1", "0.5", "0", "0.7", "0.3", "2"), ("2", "0.4", "0", "0.55", "0.9", "3"), ("0.8", "0.3", "0.5", "0.45", "0.1", "1.5")):
        width, sill, depth = mpf(b), mpf(p), mpf(y)
        c = mpf(cd) if cd != "0" else mpf("0.611")
        energy = depth + (mpf(q) / (width * depth)) ** 2 / (2 * G)
        phi = lambda t: (2 * energy - 3 * sill) / (energy - sill) * sqrt((energy - t) / (t - sill)) - 3 * asin(sqrt((energy - t) / (energy - sill)))
        scale = 3 * width / (2 * c)
        flow = lambda t: width * t * sqrt(2 * G * (energy - t))
        # subcritical flow: upstream it is shallower and carries more
        least = max(2 * energy / 3, sill) + mpf(10) ** -15
        up = bisect(lambda t: abs(scale * (phi(t) - phi(depth))) - mpf(L), least, depth - mpf(10) ** -20, 120)
        rows.append((b, p, cd, y, q, L, show(flow(up) - mpf(q)), show(up)))
    write(FOLDER, PROGRAM, "side-weirs-by-integral", "G. de Marchi (1934): side weirs in rectangular channels by his integral, with the coefficient that they come with (0 here) or another",
          [("b", "m, width"), ("p", "m, sill"), ("c", "1, coefficient"), ("y", "m, depth downstream"), ("q", "m3/s, discharge downstream"), ("l", "m, length"), ("spill", "m3/s, spill"), ("up", "m, depth upstream")],
          [("section", "word rectangle"), ("size", "b"), ("sill", "p"), ("length", "l"), ("coefficient", "c"), ("depth", "y"), ("discharge", "q")], [("spill", "weir.side.spill"), ("up", "weir.side.upstream-depth")], rows, tolerance="1e-9 relative", reason="the library integrates to 1e-10")


def screens():
    rows = []
    for bars, beta in (("RECTANGULAR", "2.42"), ("CIRCULAR", "1.79")):
        for t, b, v in (("0.01", "0.02", "0.8"), ("0.006", "0.05", "1.3")):
            rows.append((bars, t, b, v, show(mpf(beta) * (mpf(t) / mpf(b)) ** (mpf(4) / 3) * mpf(v) ** 2 / (2 * G))))
    write(FOLDER, PROGRAM, "screens-upright", "O. Kirschmer (1926): clean upright screens", [("bars", "text, bars"), ("t", "m, bar"), ("b", "m, gap"), ("v", "m/s, velocity in front"), ("loss", "m, loss")],
          [("bars", "text bars"), ("thickness", "t"), ("gap", "b"), ("velocity", "v")], [("loss", "screen.upright-loss")], rows)


def dry():
    """A monitor whose reading lies on the bed or below: no area, and no velocity of it."""
    rows = []
    for depth, velocity, offset, bed in (("0", "0.4", "0", "0"), ("0", "0.7", "0.02", "0.02"), ("0.03", "0.4", "0", "0.03"), ("0.0301", "0.4", "0", "0.03"), ("0.01", "0.5", "0.02", "0.03"), ("0.0101", "0.5", "0.02", "0.03")):
        level = mpf(depth) + mpf(offset)
        wet = level > mpf(bed)
        pipe = Circle(mpf("0.45"))
        area = pipe.area(level) - (pipe.area(mpf(bed)) if mpf(bed) > 0 else 0) if wet else mpf(0)
        rows.append((depth, velocity, offset, bed, show(mpf("0.9") * mpf(velocity)) if wet else "0", show(mpf("0.9") * mpf(velocity) * area) if wet else "0"))
    write(FOLDER, PROGRAM, "monitor-dry", "readings of a monitor on the bed, just above it and below it",
          [("depth", "m, reading"), ("velocity", "m/s, reading"), ("offset", "m, height of the sensor"), ("bed", "m, bed"), ("v", "m/s, mean velocity"), ("q", "m3/s, discharge")],
          [("depth", "depth"), ("velocity", "velocity"), ("offset", "offset"), ("bed", "bed"), ("factor", "0.9"), ("n", "0.013"), ("gradient", "0.004"), ("shape", "word circular"), ("diameter", "0.45")],
          [("v", "monitor.reading-velocity"), ("q", "monitor.discharge")], rows, tolerance="1e-11 relative or 1e-15")


def long():
    """Sixteen values over and over, each answer times its place."""
    rows = []
    size = 2600
    d, slope = mpf("0.6"), mpf("0.004")
    pipe = Circle(d)
    depths = [float(d * mpf(k) / 1000) for k in (1, 13, 60, 121, 230, 333, 402, 480, 555, 640, 700, 777, 850, 910, 960, 993)]
    n, k, nu = mpf("0.013"), mpf("0.0015"), mpf("1.31e-6")

    def speed(law, y):
        r = pipe.radius(y)
        if law == "manning":
            return r ** (mpf(2) / 3) * sqrt(slope) / n
        scale = sqrt(8 * G * r * slope)
        return -2 * scale * log10(k / (4 * r) / mpf("3.7") + mpf("2.51") * nu / (4 * r * scale))

    def total(values):
        return show(sum((i + 1) * values[i % len(values)] for i in range(size)))

    exact = [mpf(y) for y in depths]
    empty = [""] * 8
    for at, values in enumerate(([pipe.area(y) for y in exact], [pipe.perimeter(y) for y in exact], [pipe.radius(y) for y in exact], [pipe.width(y) for y in exact])):
        row = list(empty)
        row[at] = total(values)
        rows.append((text(depths), "", "", "0.013", "", "", *row))
    for law in ("manning", "sand"):
        given = depths if law == "manning" else depths[4:]
        given_exact = [mpf(y) for y in given]
        laws = ("0.013", "", "") if law == "manning" else ("", "0.0015", "1.31e-6")
        flows = [float(pipe.area(y) * speed(law, y)) for y in given_exact if y < d * mpf("0.9")]
        rows.append((text(given), "", "", *laws, *empty[:4], total([pipe.area(y) * speed(law, y) for y in given_exact]), total([speed(law, y) for y in given_exact]), "", ""))
        back = [bisect(lambda y: pipe.area(y) * speed(law, y) - mpf(q), d / 10**5, d * mpf("0.93"), 110) for q in flows]
        rows.append(("", text(flows), "", *laws, *empty[:6], total(back), ""))
        if law == "manning":
            rows.append(("", "", text(flows), *laws, *empty[:7], total([critical(pipe, mpf(q)) for q in flows])))
    names = ["area", "perimeter", "radius", "width", "discharge", "velocity", "normal-depth", "critical-depth"]
    given = ["y", "y", "y", "y", "y", "y", "q", "qc"]
    for law, file in (("0.013", "long-records-manning"), ("", "long-records-sand")):
        some = [r for r in rows if r[3] == law]
        used = [i for i in range(8) if any(r[6 + i] != "" for r in some)]
        keep = [0, 1, 2] + ([3] if law else [4, 5]) + [6 + i for i in used]
        columns = [("y", "m, depths"), ("q", "m3/s, discharges"), ("qc", "m3/s, discharges"), ("n", "s/m^(1/3), Manning's n"), ("k", "m, roughness"), ("nu", "m2/s, viscosity")] + [(f"v{i}", f"1, {names[i]} times places") for i in range(8)]
        write(FOLDER, PROGRAM, file, "a record of 2600 readings of a circle, sixteen values over and over, with each answer times its place: by its angle, depths by bisection",
              [columns[j] for j in keep], [("size", str(size)), ("gradient", "0.004"), ("shape", "word circular"), ("diameter", "0.6")] + ([("n", "n")] if law else [("roughness", "k"), ("viscosity", "nu")]),
              [(f"v{i}", f"long-record.{names[i]}", f"input.values = text {given[i]}") for i in used], [[r[j] for j in keep] for r in some], tolerance="1e-13 relative", reason="thousands of terms, each with some units of the last digit")


if __name__ == "__main__":
    for make in (openings, refusals, side, screens, dry, long):
        if not sys.argv[2:] or make.__name__ in sys.argv[2:]:
            make()
