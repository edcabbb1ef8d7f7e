"""Corners of channels and structures: walls that cross for a moment, profiles so long that they end at normal depth, laws under standard
gravity, a weir with water below it and none above. mpmath with 30 digits, no code in common with the library.

    python3 channel_corners.py FOLDER

writes walls-that-cross, monitor-in-the-open, profiles-far-away, laws-under-standard-gravity, bores-nearly-half-full, laminar-flow-by-a-hair and crump-without-a-head, csv and descriptor, into the folder of
the hydraulics tables. Made with mpmath 1.3.
"""

import sys

from mpmath import inf, log10, mp, mpf, nstr, sqrt

from own_tables import write

mp.dps = 30
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "channel_corners.py"
G = mpf("9.80665")
show = lambda value: nstr(mpf(value), 17, min_fixed=-inf, max_fixed=inf)


def bisect(f, low, high):
    low, high = mpf(low), mpf(high)
    sign = f(low) > 0
    for _ in range(110):
        middle = (low + high) / 2
        low, high = (middle, high) if (f(middle) > 0) == sign else (low, middle)
    return (low + high) / 2


def walls():
    """A right wall, upright for a metre, then an arc of 3 m radius that bulges to the left over two; the left wall is upright at 0."""
    rows = []
    for deep, centre in (("6e-6", "0.7115"), ("-6e-6", "0.7115"), ("2e-4", "1.31"), ("-2e-4", "1.31"), ("0.002", "0.7"), ("-0.002", "0.7"), ("0.01", "0.9"), ("-0.01", "0.9")):
        r, cx, c = mpf(3), mpf(3) - mpf(deep), mpf(centre)
        foot, top = cx - sqrt(r**2 - c**2), cx - sqrt(r**2 - (2 - c) ** 2)
        right = f"{float(foot)!r} 0; line {float(foot)!r} 1; arc {float(top)!r} 3 {float(cx)!r} {float(1 + c)!r}"
        # Leftmost at the level of the centre, where the arc stands at cx - r.
        crosses = cx - r < 0
        rows.append(("0 0; line 0 3", right, int(crosses), "" if crosses else "3"))
    # Two arcs, of 3 m at the right and of 1.3 m at the left: they come closest at 3/4.3 of the way between their centres, where they slope alike.
    a, b, big, small = mpf(1), mpf(2), mpf(3), mpf("1.3")
    at = a + (b - a) * big / (big + small)
    reach = sqrt(small**2 - 1)
    for gap in ("-1.35e-6", "1.35e-6", "-1e-4", "1e-4", "-0.002", "0.002"):
        centre = mpf(gap) + sqrt(big**2 - (at - a) ** 2) - small + sqrt(small**2 - (b - at) ** 2)
        left = f"{float(reach - small)!r} 0; line {float(reach - small)!r} 1; arc {float(reach - small)!r} 3 {float(-small)!r} 2"
        right = f"{float(centre - big)!r} 0; line {float(centre - big)!r} 1; arc {float(centre - sqrt(big**2 - 4))!r} 3 {float(centre)!r} 1"
        rows.append((left, right, int(mpf(gap) < 0), "" if mpf(gap) < 0 else "3"))
    write(FOLDER, PROGRAM, "walls-that-cross", "walls of which one is an arc, or both, that touch or cross for a moment between their ends",
          [("left", "text, left wall"), ("right", "text, right wall"), ("crossing", "1, 1 if refused"), ("height", "m, to the level at which both walls end")], [("left", "text left"), ("right", "text right")],
          [("crossing", "refusal.walls.height"), ("height", "walls.height")], rows, tolerance="0", reason="a verdict, and the level to which both walls are given")


def profiles():
    """Far from what holds it up or draws it down the flow is uniform: the depth at which Manning's law carries the discharge."""
    rows = []
    for width, slope, n, q in (("2", "0.002", "0.013", "1"), ("1.2", "0.004", "0.015", "0.6"), ("0.8", "0.02", "0.012", "0.5"), ("3", "0.03", "0.014", "4")):
        b, s, m, d = mpf(width), mpf(slope), mpf(n), mpf(q)
        carried = lambda y: b * y / m * (b * y / (b + 2 * y)) ** (mpf(2) / 3) * sqrt(s)
        normal = bisect(lambda y: carried(y) - d, "0.001", "20")
        critical = (d**2 / (G * b**2)) ** (mpf(1) / 3)
        slow = normal > critical
        # Slow flow is held from its outlet, fast flow from its inlet; from below and from above.
        for control in ((critical * mpf("1.02"), normal * mpf("0.98"), normal * mpf("1.5")) if slow else (critical * mpf("0.98"), normal * mpf("0.6"), normal * mpf("1.02"))):
            for length in ("20000", "90000"):
                rows.append((width, slope, n, q, show(control), int(slow), length, show(normal)))
    write(FOLDER, PROGRAM, "profiles-far-away", "V. T. Chow (1959), Open-Channel Hydraulics, section 9-4: lines of slow flow up the channel and of fast flow down it end at normal depth",
          [("width", "m, width"), ("slope", "m/m, gradient"), ("n", "s/m^(1/3), Manning's n"), ("q", "m3/s, discharge"), ("control", "m, depth at the control"), ("from_outlet", "1, 1 if the control is the outlet"), ("length", "m, length"), ("depth", "m, depth at the other end")],
          [("shape", "word rectangular"), ("width", "width"), ("gradient", "slope"), ("n", "n"), ("discharge", "q"), ("control", "control"), ("from_outlet", "from_outlet"), ("length", "length")],
          [("depth", "varied-flow.depth")], rows, tolerance="2e-9 relative", reason="the stated error of a depth, 1e-9")


def gravity():
    rows = []
    for ks, nu in (("0.0003", "1.31e-6"), ("0.003", "1e-6"), ("0.00003", "1.14e-6")):
        for radius, slope in (("0.06", "0.002"), ("0.2", "0.0005"), ("0.5", "0.01")):
            r, s, k, v = mpf(radius), mpf(slope), mpf(ks), mpf(nu)
            root = sqrt(8 * G * r * s)
            velocity = -2 * root * log10(k / (mpf("14.8") * r) + mpf("2.51") * v / (4 * r * root))
            rows.append((ks, nu, radius, slope, show(velocity)))
    write(FOLDER, PROGRAM, "laws-under-standard-gravity", "the law of Colebrook and White by radius, g = 9.80665 m/s2 where none is given (ISO 80000-3)",
          [("ks", "m, roughness"), ("nu", "m2/s, viscosity"), ("radius", "m, hydraulic radius"), ("slope", "m/m, gradient"), ("velocity", "m/s, velocity")],
          [("roughness", "ks"), ("viscosity", "nu"), ("radius", "radius")],
          [("velocity", "resistance.standard-velocity", "input.gradient = slope"), ("slope", "resistance.standard-gradient", "input.velocity = velocity")],
          rows, tolerance="1e-11 relative", reason="17 digits are given; the gradient is found by a search")


def half_full():
    """Depths of areas just below and just above half of a bore, where one half of the circle takes over from the other."""
    rows = []
    for d in ("0.225", "1.2"):
        bore = mpf(d)
        whole = mp.pi * bore**2 / 4
        for share in ("0.45", "0.474", "0.477", "0.48", "0.49", "0.4999", "0.5", "0.5001", "0.51", "0.523", "0.526", "0.55"):
            angle = bisect(lambda t: t - mp.sin(t) - 2 * mp.pi * mpf(share), "0", 2 * mp.pi)
            rows.append((d, show(whole * mpf(share)), show(bore / 2 * (1 - mp.cos(angle / 2)))))
    write(FOLDER, PROGRAM, "bores-nearly-half-full", "depths of areas about half of a round bore, by its central angle",
          [("d", "m, bore"), ("area", "m2, area"), ("depth", "m, depth")], [("diameter", "d"), ("area", "area")], [("depth", "section.depth-for-area")],
          rows, tolerance="1e-13 relative", reason="17 digits are given")


def laminar():
    """In laminar flow V = g S R2/(2 nu), under any wall: what is faster by more than a rounding, 1e-9 in the library, no wall explains."""
    rows = []
    for nu, radius, slope in (("1.1e-6", "0.0005", "0.001"), ("1e-6", "0.001", "0.0002"), ("2e-5", "0.004", "0.0005")):
        v = G * mpf(slope) * mpf(radius) ** 2 / (2 * mpf(nu))
        assert 4 * v * mpf(radius) / mpf(nu) < 1900
        for more, refused in (("-0.9e-9", 0), ("0", 0), ("0.97e-9", 0), ("1.03e-9", 1), ("1e-8", 1), ("0.01", 1)):
            rows.append((nu, radius, slope, show(v * (1 + mpf(more))), refused))
    write(FOLDER, PROGRAM, "laminar-flow-by-a-hair", "velocities of laminar flow between walls of any roughness, met within 1e-9 and missed",
          [("nu", "m2/s, viscosity"), ("radius", "m, hydraulic radius"), ("slope", "m/m, gradient"), ("v", "m/s, velocity"), ("refused", "1, 1 if refused")],
          [("viscosity", "nu"), ("radius", "radius"), ("gradient", "slope"), ("gravity", "9.80665"), ("velocity", "v")], [("refused", "refusal.resistance.fitted-roughness")],
          rows, tolerance="0", reason="a verdict")


def crump():
    """Without a head nothing flows forward, whatever stands below: the ratio of the heads is infinite. With one the head is the one given."""
    rows = []
    for width, crest, tail in (("1", "0.5", "0.1"), ("2.5", "0.3", "0.02"), ("4", "0.8", "0.6")):
        rows.append((width, crest, tail, "0", "0", "0", 1))
        rows.append((width, crest, tail, "0.45", "0.45", "", 0))
    write(FOLDER, PROGRAM, "crump-without-a-head", "Crump weirs under a tailwater, with no head above them and with one",
          [("width", "m, width"), ("crest", "m, height of the crest"), ("tail", "m, tailwater above it"), ("head", "m, head"), ("rated", "m, head told"), ("q", "m3/s, discharge"), ("infinite", "1, whether the ratio is infinite")],
          [("width", "width"), ("crest_height", "crest"), ("tailwater", "tail"), ("head", "head")],
          [("rated", "weir.crump.rated-head"), ("q", "weir.crump.rated-discharge"), ("infinite", "weir.crump.rated-ratio-is-infinite")], rows, tolerance="0", reason="numbers as they are given, 0, or a verdict")


def open_channel():
    """Flow in an open rectangle is width times depth times velocity, up to the 50 m beyond which a depth is none."""
    depths, velocities = ["0.3", "49.9", "50", "50.5", "52.4", "1.2"], ["0.4", "0.02", "0.03", "0.05", "0.06", "0.7"]
    rows = []
    for width, offset in (("2", "0"), ("1.5", "0.2")):
        for i, (y, v) in enumerate(zip(depths, velocities)):
            known = mpf(y) <= 50
            rows.append((width, offset, " ".join(str(120 * k) for k in range(len(depths))), " ".join(depths), " ".join(velocities), i,
                         show(mpf(width) * (mpf(y) + mpf(offset)) * mpf(v)) if known else "", 1 if known else 5, 2))
    write(FOLDER, PROGRAM, "monitor-in-the-open", "a monitored open channel, depths among its readings that no channel has",
          [("width", "m, width"), ("offset", "m, sensor above the invert"), ("times", "s, times"), ("depths", "m, depth readings"), ("velocities", "m/s, velocity readings"), ("which", "1, reading"),
           ("flow", "m3/s, flow"), ("quality", "1, quality of the flow, 1 not checked, 5 missing"), ("impossible", "1, depths that none can be"), ("of_two", "1, of two such records")],
          [("shape", "word rectangular"), ("width", "width"), ("offset", "offset"), ("bed", "0"), ("factor", "1"), ("n", "0.013"), ("gradient", "0.002"),
           ("times", "text times"), ("depths", "text depths"), ("velocity_times", "text times"), ("velocities", "text velocities")],
          [("flow", "monitor.record.flow", "input.which = which"), ("quality", "monitor.record.flow-quality", "input.which = which"), ("impossible", "monitor.record.depth-count", "input.condition = word IMPOSSIBLE"),
           ("of_two", "monitor.record.depth-count-of-two", "input.condition = word IMPOSSIBLE")],
          [(*row, 2 * row[-1]) for row in rows], tolerance="1e-12 relative", reason="17 digits are given")


walls()
open_channel()
profiles()
gravity()
half_full()
laminar()
crump()
