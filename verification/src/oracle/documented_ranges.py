"""Every range that the library documents of a number that it takes: values a little inside and outside of both ends. Plain Python.

    python3 documented_ranges.py FOLDER

writes ranges-of-structures, heads-of-structures, ranges-of-flow, ranges-of-sections, ranges-of-gaugings, ranges-of-monitors and
ranges-of-uncertainties into a folder named hydraulics, ranges-of-designs, ranges-of-gauges and ranges-of-samples into one named
rainfall: 1 where the library must refuse, 0 where it must answer. The ranges stand in the documentation of each
method and are written down here once more; every row is a comparison with them, and nothing is computed.
"""

import sys
from pathlib import Path

from documented_limits import INSIDE, OUTSIDE, table

PROGRAM = "documented_ranges.py"


def span(low, high, open_low=False, open_high=False):
    """Values on either side of both ends, None being no end, and whether they lie outside; an end itself counts with the range unless it is open."""
    values = []
    for end, opens in ((low, open_low), (high, open_high)):
        if end is None:
            continue
        for share in (INSIDE, 1, OUTSIDE):
            v = float(end * share if end else (share - 1) * max(abs(low or 0), abs(high or 1), 1e-6) / 10)
            inside = (low is None or v > low or v == low and not open_low) and (high is None or v < high or v == high and not open_high)
            values.append((v, int(not inside)))
    return values


def whole(low, high, step=1):
    return [(v, int(not low <= v <= high)) for v in (low - step, low, high, high + step)]


def write(folder, name, title, cases):
    table(folder, name, "ranges that the library documents of " + title, cases, [], PROGRAM)


def given(**inputs):
    return [f"input.{name} = {value}" for name, value in inputs.items()]


def structures(folder):
    one = lambda kind, size, **other: given(kind=f"word {kind}", size=size, **{"length": 0, "width": 0, "crest_height": 0, **other})
    bar = given(bars="word circular", angle=90)
    jet = {"velocity": 3, "gravity": 9.8}
    tank = {"area": 2, "opening": 0.1, "coefficient": 0.6, "from": 2, "to": 1, "gravity": 9.8}
    crest = {"crest_length": 0.5, "side_slope": 0.5, "coefficient": 0.6}
    side = {"section": "word circle", "size": 1, "sill": 0.5, "length": 2, "coefficient": 0.5, "depth": 0.7, "discharge": 0.2}
    long = {"head": 0.3, "tailwater": 0.1, "shape": "word rectangular", "width": 0.3, "length": 0.9, "approach_width": 0.75, "hump": 0.1}
    with_ = lambda base, **new: given(**{**base, **new})
    write(folder, "ranges-of-structures", "structures", [
        ("g", "m/s2, gravity", "structure.at-gravity.discharge", one("orifice", 0.2, head=0.7, tailwater=0, gravity="g"), span(9.7, 9.9)),
        ("opening", "m, opening of a gate", "structure.highest-head", one("gate", "opening", width=2), span(1e-6, 1e6)),
        ("bore", "m, bore of an orifice", "structure.highest-head", one("orifice", "bore"), span(1e-6, 1e6)),
        ("crest", "m, crest of a weir along the flow", "structure.highest-head", one("square", 0, length="crest", width=2, crest_height=1), span(1e-6, 1e6)),
        ("wide", "m, channel", "structure.highest-head", one("rehbock", 0, width="wide", crest_height=1), span(1e-6, 1e6)),
        ("sill", "m, crest height", "structure.highest-head", one("rehbock", 0, width=1, crest_height="sill"), span(1e-6, 1e6)),
        ("tail", "m, tailwater", "structure.discharge", one("orifice", 0.2, head=9990, tailwater="tail"), [(-9850.0, 0), (-10150.0, 1), (9850.0, 0), (10150.0, 1)]),
        ("ratio", "1, a share", "structure.approach-velocity", given(ratio="ratio"), span(0, 1)),
        ("blinded", "1, blinded share", "screen.head-loss", bar + given(thickness=0.01, gap=0.02, velocity=1, blinded="blinded"), span(0, 1, open_high=True)),
        ("reach_g", "m/s2, gravity", "jet.reach", with_(jet, gravity="reach_g", drop=1), span(0.1, 100)),
        ("far", "m, distance", "jet.drop", with_(jet, distance="far"), span(0, 1e6)),
        ("fast", "m/s, velocity", "jet.reach", with_(jet, velocity="fast", drop=1), span(0, 1e3, open_low=True)),
        ("down", "m, drop", "jet.reach", with_(jet, drop="down"), span(0, None)),
        ("thrown_g", "m/s2, gravity", "jet.discharge", given(distance=1, drop=1, area=0.1, gravity="thrown_g"), span(0.1, 100)),
        ("plan", "m2, plan area", "tank.emptying-time", with_(tank, area="plan"), span(1e-12, 1e12)),
        ("tank_g", "m/s2, gravity", "tank.emptying-time", with_(tank, gravity="tank_g"), span(0.1, 100)),
        ("to", "m, level in the end", "tank.emptying-time", with_(tank, to="to"), span(0, 2)),
        ("hole", "1, coefficient", "orifice.discharge", given(head=2, diameter=0.3, coefficient="hole"), span(0, 1, open_low=True)),
        ("cd", "1, coefficient", "weir.by-coefficient.discharge", with_(crest, head=0.2, coefficient="cd"), span(0, 1, open_low=True)),
        ("slope", "1, sides of a notch", "weir.by-coefficient.discharge", with_(crest, head=0.2, side_slope="slope"), span(0, 100)),
        ("angle", "degrees, notch", "weir.by-coefficient.discharge", given(angle="angle", coefficient=0.6, head=0.2), span(1, 178)),
        ("contractions", "1, end contractions", "weir.by-coefficient.discharge", with_(crest, head=0.2, contractions="contractions"), [(-1, 1), (0, 0), (1, 0), (2, 0), (3, 0)]),
        ("over", "m, head over a crest without notch or contraction", "weir.by-coefficient.within-limits", given(crest_length=0.5, coefficient=0.6, head="over"), span(0, 1e4)),
        ("ends", "m, head over a crest of 0.5 m with two contractions", "weir.by-coefficient.within-limits", given(crest_length=0.5, coefficient=0.6, contractions=2, head="ends"), span(0, 1.25)),
        ("broad_ends", "m, head over a crest of 3 km with one contraction", "weir.by-coefficient.within-limits", given(crest_length=3000, coefficient=0.6, contractions=1, head="broad_ends"), span(0, 1e4)),
        ("rough", "m, roughness of a crest of 1 m", "weir.round-nosed.coefficient", given(head=0.3, width=1, crest_height=0.5, crest_length=1, roughness="rough"), span(0, 0.01)),
        ("narrow", "m, crest in a channel of 2 m", "weir.broad-crested.discharge", given(head=0.3, width="narrow", approach_width=2, crest_height=0.5, coefficient=0.85), span(1e-6, 2)),
        ("tapped", "m, head at the tapping under 0.3 m", "weir.crump.discharge", given(head=0.3, width=2, crest_height=0.4, tapping="tapped"), span(None, 0.279)),
        ("fall", "m/m, barrel", "culvert.headwater", given(edge="word concrete-square-headwall", shape="word circular", diameter=0.6, discharge=0.3, gradient="fall"), span(0, 0.2)),
        ("froude", "1, Froude number", "weir.side.coefficient", given(froude="froude"), span(0, 0.95)),
        ("side_sill", "m, sill in a bore of 1 m", "weir.side.spill", with_(side, sill="side_sill", depth=1, discharge=0.05, length=0.05), span(None, 1, open_high=True)),
        ("side_depth", "m, depth over a sill of 0.5 m", "weir.side.spill", with_(side, depth="side_depth", discharge=0.001, length=0.01), span(0.5, 1, open_low=True)),
        ("share", "1, share of the head for the tailwater", "flume.long-throated.discharge", with_(long, modular_limit="share"), span(0.6, 0.98)),
        ("lean", "1, sides of a throat", "flume.long-throated.discharge", with_(long, shape="word trapezoidal", approach_width=70, side_slope="lean"), span(0, 100)),
        ("gate", "1, contraction", "gate.sluice.discharge", given(width=2, opening=0.25, depth=1, tailwater=0, contraction="gate"), span(0, 1, open_low=True)),
        # Each throat of a small flume holds for a millimetre on either side.
        ("throat", "m, throat of a flume", "flume.parshall.constant", given(throat="throat"), [
            (row + sign * off, int(off > 0.001)) for row in (0.025, 0.051, 0.076, 0.152, 0.229, 0.25) for sign in (-1, 1) for off in (0.00097, 0.00103)] + [
            (v, out) for v, out in ((0.29897, 1), (0.29903, 0), (2.44097, 0), (2.44103, 1), (3.03897, 1), (3.03903, 0), (15.25097, 0), (15.25103, 1))]),
        ("wide_throat", "m, throat of a flume", "flume.khafagi.discharge", given(throat="wide_throat", head=0.1), span(1e-6, 1e6)),
    ])
    # How high a head may be: 10 km where nothing else bounds it, or what is printed of a structure.
    rows = []
    for kind, size, length, width, sill, highest in (
        ("orifice", 0.2, 0, 0, 0, 1e4), ("opening", 0.3, 0, 0.5, 0, 1e4), ("gate", 0.25, 0, 2, 0, 1e4), ("notch", 60, 0, 1.2, 0.5, 1e4), ("rehbock", 0, 0, 1, 0.4, 1e4), ("cipolletti", 0.9, 0, 2.7, 0.5, 1e4),
        ("square", 0, 1.5, 1.1, 0.6, 1e4), ("round", 0, 1.2, 0.8, 0.4, 1e4), ("finite", 0, 0.7, 0.9, 0.45, 1e4), ("khafagi", 0.32, 0, 0, 0, 1e4), ("parshall", 0.9, 0, 0, 0, 1e4), ("parshall", 4, 0, 0, 0, 1e4),
        ("parshall", 0.152, 0, 0, 0, 1e4), ("flume-rectangular", 0.3, 0.9, 0.75, 0.12, 1e4), ("brink-rectangular", 0.5, 0, 0, 0, 1e4), ("broad-known", 0.8, 0, 1.1, 0.6, 1e4),
        ("crump", 0, 0, 2, 3000, 1e4), ("plate", 1.4, 0, 1.4, 600, 1e4), ("crump", 0, 0, 2, 0.4, 2.4), ("plate", 0.5, 0, 1.4, 0.3, 7.5), ("plate", 1.4, 0, 1.4, 0.3, 7.5), ("brink-round", 0.6, 0, 0, 0, 0.6),
        ("brink-critical", 0.6, 0, 0, 0, 0.4275), ("flume-in-circle", 0.25, 0.8, 0.6, 0.1, 0.4994),
    ):
        rows += [(kind, size, length, width, sill, v, out, highest if share == 1 else "") for share, (v, out) in zip((INSIDE, 1, OUTSIDE), span(None, highest)) if share != 1 or highest == 1e4]
    from own_tables import write as plain

    plain(folder, PROGRAM, "heads-of-structures", "the highest head that each structure takes: 10 km, or what bounds its law",
          [("kind", "text, structure"), ("size", "m or degrees, its size"), ("length", "m, along the flow"), ("B", "m, channel"), ("p", "m, crest"), ("h", "m, head"), ("refused", "1, 1 if refused, else 0"), ("highest", "m, highest head")],
          [("kind", "text kind"), ("size", "size"), ("length", "length"), ("width", "B"), ("crest_height", "p")],
          [("refused", "refusal.structure.discharge", "input.head = h", "input.tailwater = 0"), ("highest", "structure.highest-head")], rows, tolerance="1e-12 relative", reason="a verdict, or a stated bound")


def flow(folder):
    law = given(radius=0.1, gradient=0.002)
    pipe = {"diameter": 0.3, "n": 0.013, "gradient": 0.01}
    box = {"shape": "word box", "width": 2, "height": 50, "n": 0.013, "gradient": 0.01}
    with_ = lambda base, **new: given(**{**base, **new})
    write(folder, "ranges-of-flow", "flow", [
        ("c", "m^(1/2)/s, Chezy's C", "resistance.velocity", law + given(chezy="c"), span(0.5, 300)),
        ("cf", "ft^(1/2)/s, Chezy's C", "resistance.velocity", law + given(chezy_feet="cf"), span(0.5 / 0.3048**0.5, 300 / 0.3048**0.5)),
        ("k", "m, roughness", "resistance.velocity", law + given(roughness="k"), span(0, 0.5)),
        ("nu", "m2/s, viscosity", "resistance.velocity", law + given(roughness=0.001, viscosity="nu"), span(0, None, open_low=True)),
        ("t", "degrees Celsius", "resistance.velocity", law + given(roughness=0.001, celsius="t"), span(-20, 110)),
        ("q", "m3/s, discharge", "flow.normal-depth", given(shape="word rectangular", width=1e5, n=0.013, gradient=0.01, discharge="q"), span(0, 1e9)),
        ("h", "m, head", "inlet.discharge", with_({**box, "height": 45, "width": 30}, loss=0.5, head="h"), span(0, None)),
        ("loss", "1, loss at the inlet", "inlet.discharge", with_(pipe, head=0.2, loss="loss"), span(0, 100)),
        ("multiple", "1, lengths of a rise", "jump.length-by-rise", given(shape="word rectangular", width=1, depth=0.1, discharge=0.5, multiple="multiple"), span(0, 100, open_low=True)),
        ("filled", "1, depth over diameter", "flow.diameter-at-filling", given(discharge=0.1, gradient=0.01, n=0.013, fullness="filled"), span(0, 1, open_low=True)),
        ("share", "1, depth over diameter", "roughness.by-fullness-velocity-ratio", given(fullness="share"), span(0, 1)),
        ("relative", "1, relative roughness", "friction.turbulent-factor", given(reynolds=20000, relative_roughness="relative"), span(0, 1)),
        ("bore", "m, bore by continuity", "flow.diameter-by-continuity", [*given(velocity=1, fullness=1), "input.discharge = pi / 4 * bore ^ 2"], [(v, out) for v, out in span(1e-6, 50) if v not in (1e-6, 50.0)]),
        ("bore_n", "m, bore by filling", "flow.diameter-at-filling", [*given(fullness=1, gradient=0.01, n=0.013), "input.discharge = pi / 4 * bore_n ^ 2 * (bore_n / 4) ^ (2 / 3) * sqrt(0.01) / 0.013"], [(v, out) for v, out in span(1e-6, 50) if v not in (1e-6, 50.0)]),
        ("bore_v", "m, bore by velocity", "flow.diameter-at-velocity", [*given(fullness=1, gradient=0.01, n=0.013), "input.velocity = (bore_v / 4) ^ (2 / 3) * sqrt(0.01) / 0.013"], [(v, out) for v, out in span(1e-6, 50) if v not in (1e-6, 50.0)]),
        ("broad", "m, width of so shallow a flow that its walls count for nothing", "flow.width", [*given(depth=1e-7, side_slope=0, gradient=0.01, n=0.013), "input.discharge = broad * 1e-7 ^ (5 / 3) * sqrt(0.01) / 0.013"], [(v, out) for v, out in span(None, 1e6) if v != 1e6]),
        ("wall", "1, side slope", "flow.width", given(discharge=1e9, depth=0.3, side_slope="wall", gradient=0.01, n=0.013), [(-0.015, 1)]),
    ])


def sections(folder):
    area = "section.area"
    shape = lambda name, **sizes: given(shape=f"word {name}", **sizes)
    write(folder, "ranges-of-sections", "sizes of sections", [
        ("d", "m, bore", "section.height", shape("circular", diameter="d"), span(1e-6, 50)),
        ("mm", "mm, bore", "section.height", shape("circular-mm", width="mm"), span(1e-3, 5e4)),
        ("open", "m, width", area, shape("rectangular", width="open") + given(depth=1), span(1e-6, 1e6)),
        ("box", "m, width", "section.height", shape("box", width="box", height=1), span(1e-6, 50)),
        ("high", "m, height", "section.height", shape("box", width=1, height="high"), span(1e-6, 50)),
        ("bed", "m, width", area, shape("trapezoidal", width="bed", side_slope=1) + given(depth=1), span(0, 1e6)),
        ("slope", "1, side slope", area, shape("trapezoidal", width=1, side_slope="slope") + given(depth=1), span(0, 1e4)),
        ("egg", "m, width", "section.height", shape("egg", width="egg"), span(4e-6, 50 / 1.5)),
        ("horseshoe", "m, bore", "section.height", shape("horseshoe", diameter="horseshoe"), span(1e-6, 50)),
        ("mouth", "m, width", "section.height", shape("mouth", width="mouth"), span(1e-6 / 0.75, 50)),
        ("u", "m, width", area, shape("u", width="u") + given(depth=0.1), span(1e-6, None)),
        ("covered", "m, height of a U 2 m wide", "section.height", shape("covered-u", width=2, height="covered"), span(1, None, open_low=True)),
        ("lid", "m, height of a V that falls 0.3 m", "section.height", shape("covered-v", width=2, fall=0.3, height="lid"), span(0.3, None, open_low=True)),
        ("wall", "m, wall", "section.height", shape("arch", width=1, wall_height="wall"), span(0, None)),
        ("deep", "m, channel 0.4 m wide", "section.area", shape("benched", width=0.4, channel_depth="deep", chamber_width=2, bench_slope=0.1) + given(depth=0.3), span(0.2, None)),
        ("chamber", "m, chamber round a channel of 0.4 m", "section.area", shape("benched", width=0.4, channel_depth=0.3, chamber_width="chamber", bench_slope=0.1) + given(depth=0.3), span(0.4, None, open_low=True)),
        ("silt", "m, bed in a bore of 0.6 m", "sediment.area", shape("circular", diameter=0.6) + given(bed="silt", depth=0), span(0, 0.6, open_high=True)),
    ])


def gaugings(folder):
    write(folder, "ranges-of-gaugings", "gaugings and their profiles", [
        ("f", "1, friction factor", "profile.log.mean-to-centre", given(friction_factor="f"), span(0.004, 0.2)),
        ("z", "1, height over depth", "profile.log.mean-to-point", given(friction_factor=0.02, height="z"), span(0.01, 1)),
        ("m", "1, exponent", "profile.power.mean-to-surface", given(m="m"), span(2, 20)),
        ("re", "1, Reynolds number", "profile.power.mean-to-centre", given(reynolds="re"), span(4e3, 3.2e6)),
        ("n", "1/s, revolutions in a second", "gauging.meter.velocity", given(pitch=0.01, revolutions="n", seconds=1), span(0, 1000)),
        ("v0", "m/s, start-up", "gauging.meter.velocity", given(pitch=0.25, start_up="v0", revolutions=1000, seconds=10), span(-1, 1)),
        ("s", "s, exposure", "gauging.uncertainty", given(near=0, far=2, distances="word 0.5 1 1.5", depths="word 0.3 0.4 0.3", velocities="word 0.5 0.6 0.5", exposure="s"), span(10, 3600)),
        ("v", "m/s, velocities of a vertical", "gauging.vertical.velocity", given(rule="word TWO", velocities="text v"), [(f"0.5 {20.0 * share * sign!r}", int(share > 1)) for share in (INSIDE, 1, OUTSIDE) for sign in (-1, 1)]),
        ("y", "m, deepest vertical", "gauging.mean-velocity", given(near=0, far=2, distances="word 0.5 1", depths="text y", velocities="word 0.5 0.6"), [("0.3 985", 0), ("0.3 1000", 0), ("0.3 1015", 1)]),
        ("w", "m/s, velocity of a vertical", "gauging.mean-velocity", given(near=0, far=2, distances="word 0.5 1", depths="word 0.3 0.3", velocities="text w"), [("0.5 19.7", 0), ("0.5 20", 0), ("0.5 20.3", 1), ("0.5 -19.7", 0), ("0.5 -20.3", 1)]),
        ("x", "m, place of a vertical", "gauging.mean-velocity", given(near=0, far=10000, distances="text x", depths="word 0.3 0.3", velocities="word 0.5 0.5"), [("1 9850", 0), ("1 10150", 1)]),
        ("edge", "m, far edge", "gauging.mean-velocity", given(near=0, far="edge", distances="word 0.5 1", depths="word 0.3 0.3", velocities="word 0.5 0.5"), span(None, 1e4)),
        ("wall", "m, depth at a wall", "gauging.mean-velocity", given(near=0, far=2, far_depth="wall", distances="word 0.5 1", depths="word 0.3 0.3", velocities="word 0.5 0.5"), span(None, 1000)),
        ("index", "m/s, index velocities", "profile.index.mean", given(x="text index", y="word 0.4 0.6 0.8 1", index=0.5), [("0.4 0.6 0.8 19.7", 0), ("0.4 0.6 0.8 20.3", 1), ("-19.7 0.6 0.8 1", 0), ("-20.3 0.6 0.8 1", 1)]),
        ("mean", "m/s, mean velocities", "profile.index.mean", given(x="word 0.4 0.6 0.8 1", y="text mean", index=0.5), [("0.4 0.6 0.8 19.7", 0), ("0.4 0.6 0.8 20.3", 1), ("-19.7 0.6 0.8 1", 0), ("-20.3 0.6 0.8 1", 1)]),
        ("asked", "m/s, index velocity", "profile.index.mean", given(x="word 0.4 0.6 0.8 1", y="word 0.3 0.5 0.7 0.9", index="asked"), span(0.4, 1)),
        ("pairs", "text, stimuli", "calibration.coefficient", given(x="text pairs", y="text pairs", place=0), [("1 2", 1), ("1 2 3", 0)]),
        ("stages", "text, stages", "rating.exponent", given(stages="text stages", discharges="text stages", offset=0), [("0.1 0.2", 1), ("0.1 0.2 0.4", 0)]),
        ("four", "text, stages", "rating.fitted-offset", given(stages="text four", discharges="text four"), [("0.3 0.4 0.6", 1)]),
        ("stage", "m, stage", "rating.discharge", given(stages="word 0.2 0.3 0.5 0.9", discharges="word 0.1 0.2 0.5 1.4", offset=0, stage="stage"), span(0.2, 0.9)),
        ("step", "m, stage of a table", "rating.table.discharge", given(stages="word 0.2 0.3 0.5 0.9", discharges="word 0.1 0.2 0.5 1.4", offset=0, **{"from": 0.3, "to": 0.7, "step": 0.1, "stage": "step"}), span(0.3, 0.7)),
        ("rows", "m, step of a table", "rating.table.rows", given(stages="word 0.2 0.3 0.5 0.9", discharges="word 0.1 0.2 0.5 1.4", offset=0, **{"from": 0.2, "to": 0.9, "step": "rows"}), [(7.2e-7, 0), (6.8e-7, 1)]),
        ("levels", "text, reference levels", "bench.linearity", given(references="text levels", readings="text levels", reference_uncertainty=0.01), [("1 1 2 2 1 2", 1), ("1 1 2 2 3 3", 0)]),
    ])


def monitors(folder):
    pipe = {"offset": 0, "bed": 0, "factor": 1, "n": 0.013, "gradient": 0.004, "shape": "word circular", "diameter": 0.6}
    with_ = lambda **new: given(**{**pipe, **new})
    write(folder, "ranges-of-monitors", "monitors, water and air", [
        ("factor", "1, velocity factor", "monitor.discharge", with_(depth=0.3, velocity=0.5, factor="factor"), span(0.1, 2)),
        ("depth", "m, depth reading", "monitor.one-discharge", with_(depth="depth", velocity=0.5), [(v, int(abs(v) > 50)) for v in (-50.75, 49.25, 50.0, 50.75)]),
        ("bulk", "m, depth readings", "monitor.bulk-flow", with_(which=1, depths="text bulk", velocities="word 0.5 0.5"), [("0.3 49.25", 0), ("0.3 50", 0), ("0.3 50.75", 1), ("0.3 -50.75", 1)]),
        ("share", "1, fullness", "monitor.time-above-fullness", with_(times="word 0 60 120", depths="word 0.1 0.4 0.2", gap=600, share="share"), span(0, 100)),
        ("crest", "m, level of a crest", "level-flow.flow", given(width=1, crest_height=0.5, crest="crest", levels="word 0.1 0.2", which=0), [(-10150.0, 1), (9850.0, 0), (1e4, 0), (10150.0, 1)]),
        ("water", "degrees Celsius", "water.density", given(celsius="water"), span(-20, 110)),
        ("air", "degrees Celsius", "air.speed-of-sound", given(celsius="air", humidity=0.5, carbon_dioxide=0.0004), span(-40, 60)),
        ("humid", "1, humidity", "air.speed-of-sound", given(celsius=15, humidity="humid", carbon_dioxide=0.0004), span(0, 1)),
        ("carbon", "1, carbon dioxide", "air.speed-of-sound", given(celsius=15, humidity=0.5, carbon_dioxide="carbon"), span(0, 0.01)),
    ])


def uncertainties(folder):
    model = {"estimates": "word 1 2", "deviations": "word 0.1 0.2", "shapes": "word normal normal"}
    with_ = lambda **new: given(**{**model, **new})
    volume = {"flows": "word 1 2 3", "step": 60, "random": 0.1, "common": 0.1, "memory": 0}
    write(folder, "ranges-of-uncertainties", "uncertainties", [
        ("random", "1, random error", "uncertainty.volume", given(**{**volume, "random": "random"}), span(0, 5)),
        ("common", "1, common error", "uncertainty.volume", given(**{**volume, "common": "common"}), span(0, 5)),
        ("flows", "m3/s, flows", "uncertainty.volume", given(**{**volume, "flows": "text flows"}), [("1 9.85e8", 0), ("1 1.015e9", 1), ("1 -9.85e8", 0), ("1 -1.015e9", 1)]),
        ("correlation", "1, correlation", "uncertainty.relative", with_(correlation="correlation"), [(-0.985, 0), (-1.015, 1), (0.985, 0), (1.015, 1)]),
        ("trials", "1, trials", "uncertainty.validation.low", with_(digits=1, trials="trials"), [(999, 1), (1000, 0)]),
        ("digits", "1, digits", "uncertainty.validation.low", with_(digits="digits", trials=2000), [(0, 1), (1, 0), (2, 0), (3, 1)]),
        ("probability", "1, probability", "uncertainty.adaptive.end", with_(digits=1, probability="probability"), [(0.4925, 1), (0.5, 0)]),
        ("readings", "text, readings", "uncertainty.readings.value", given(readings="text readings", half_width=0.1), [("1", 1), ("1 2", 0), ("1 9.85e99", 0), ("1 1.015e100", 1)]),
    ])


def designs(folder):
    area = {"hectares": "word 1 2", "coefficients": "word 0.5 0.6", "entry_minutes": 5, "flow_minutes": 10, "routing": 1, "intensity": 30}
    with_ = lambda base, **new: given(**{**base, **new})
    heads = {"heads": 5000, "litres": 150, "infiltration": 0, "trade": 0}
    write(folder, "ranges-of-designs", "design storms, runoff and depths", [
        ("share", "1, runoff coefficient", "rational.coefficient", given(hectares="word 1", coefficients="share"), span(0, 1)),
        ("routing", "1, routing coefficient", "rational.peak", with_(area, routing="routing"), span(0.5, 2)),
        ("rain", "mm/h, intensity", "rational.peak", with_(area, intensity="rain"), span(0, None)),
        ("rough", "1, retardance", "flow-path.kerby", given(length=100, gradient=0.01, retardance="rough"), span(0.01, 1)),
        ("path", "m, length of overland flow", "flow-path.kerby", given(length="path", gradient=0.01, retardance=0.4), span(None, 365.76)),
        ("paved", "1, runoff coefficient", "flow-path.airport", given(length=100, gradient=0.01, coefficient="paved"), span(0, 1)),
        ("people", "1, population", "dry-weather.babbitt", with_(heads, heads="people"), span(1000, None)),
        ("fraction", "1, share of a storm", "design.huff.share", given(quartile=1, fraction="fraction"), span(0, 1)),
        ("part", "1, share of a profile", "design.symmetric-profile.share", given(profile_a=0.06, profile_b=1.026, fraction="part"), span(0, 1)),
        ("peak", "1, place of a peak", "design.double-triangle.share", given(depth=40, minutes=60, intense_depth=20, intense_minutes=15, position="peak", fraction=0.4), span(0, 1)),
        ("deep", "mm, depth of the intense part of 40 mm", "design.double-triangle.share", given(depth=40, minutes=60, intense_depth="deep", intense_minutes=30, position=0.5, fraction=0.4), span(None, 40)),
        ("hour", "mm, depth of an hour in five years", "ddf.flood-studies.depth", given(m5_60="hour", ratio=0.3, minutes=60, years=5), span(10, 25)),
        ("rare", "years, return period", "ddf.bilham.depth", given(minutes=60, years="rare"), span(0.1, 100)),
        ("km2", "km2, area", "areal-reduction.keers-wescott", given(area_km2="km2", minutes=60), span(1, 20000)),
        ("small", "km2, area", "areal-reduction.australia-2019", given(region="word tasmania", area_km2="small", minutes=60, aep=0.1), span(None, 1000)),
        ("large", "km2, area", "areal-reduction.australia-2019", given(region="word tasmania", area_km2="large", minutes=1440, aep=0.1), span(None, 30000)),
        ("aep", "1, annual chance", "areal-reduction.australia-2019", given(region="word tasmania", area_km2=100, minutes=1440, aep="aep"), span(0.0005, 0.5)),
        ("nugget", "mm2, nugget under a sill of 4", "areal.kriging.mean", given(shape="word spherical", range=5000, sill=4, nugget="nugget", gauges="word 0 0; 3000 0; 0 4000", target="word 100 100", depths="word 3 4 5"), span(0, 4)),
        ("deficit", "mm, soil moisture deficit", "antecedent.wetness", given(index_mm=2, deficit_mm="deficit"), span(0, 127)),
        ("urban", "mm, soil moisture deficit", "antecedent.urban-wetness", given(index_mm=2, deficit_mm="urban"), span(0, 141)),
        ("columns", "1, columns of a grid", "areal.grid.cells", given(corner="word 0 0", cell=1000, columns="columns", rows=2, catchment="word POLYGON ((0 0, 500 0, 500 500, 0 500, 0 0))"), [(0, 1), (1, 0)]),
        ("rows", "1, rows of a grid", "areal.grid.cells", given(corner="word 0 0", cell=1000, columns=2, rows="rows", catchment="word POLYGON ((0 0, 500 0, 500 500, 0 500, 0 0))"), [(0, 1), (1, 0)]),
    ])


def gauges(folder):
    write(folder, "ranges-of-gauges", "gauges and their records", [
        ("tip", "mm, tip", "gauge.resolution.depth-uncertainty", given(tip_mm="tip"), span(0.01, 5)),
        ("funnel", "cm2, funnel", "gauge.tip-depth", given(funnel_cm2="funnel") + ["input.volume_ml = funnel * 0.02"], span(20, 1e4)),
        ("lost", "s, lost while it turns", "gauge.lost-time.factor", given(lost_seconds="lost", tip_mm=0.2, recorded_intensity=10), span(0, 5)),
        ("share", "1, share wanted", "gauge.resolution.window", given(tip_mm=0.2, intensity=10, share="share"), span(0, 1, open_low=True)),
        ("tips", "1, tips", "gauge.resolution.least", given(tip_mm=0.2, tips="tips"), [(-1, 1), (0, 0), (1, 0)]),
        ("many", "1, tips", "gauge.resolution.most", given(tip_mm=0.2, tips="many"), [(-1, 1), (0, 0), (1, 0)]),
        ("slow", "1, factor of a slow tip", "gauge.curve.factor", given(form="word linear", a=0, b=1, c=0, lowest=5, highest=100, static_factor="slow", recorded=2), span(0.5, 2)),
        ("tolerance", "1, tolerance", "gauge.neighbours.settled-ratio", given(gauges="word 1 2 3 4; 1 2 3 4; 1 2 3 4; 1 2 3 4", wet_mm=0.5, gauge=1, tolerance="tolerance"), span(0, 10, open_low=True)),
        ("wet", "text, rain of gauges", "gauge.neighbours.ratio", given(gauges="text wet", wet_mm=0.5, gauge=1), [("1 2 3 4", 1), ("1 2 3 4; 1 2 3 4", 0)]),
        ("spell", "days, shortest dry spell", "dry-spells.days", given(daily="word 0 0 5 0 0 0", most_mm=0.1, least_days="spell", spell=1), [(0, 1), (1, 0)]),
        ("allowance", "1, allowance", "gauge.storage.ratio", given(depths="word 1 2 3 4 5 6 7 8", reading_hours="word 4 8", stored_mm="word 10 26", allowance="allowance", resolution_mm=0.1), span(0, 1)),
        ("shuffles", "1, shuffles", "gauge.double-mass.chance", given(gauge_mm="word 1 2 3 4 5 6", reference_mm="word 1 2 3 4 6 7", least=2, shuffles="shuffles"), [(98, 1), (99, 0)]),
    ])


def samples(folder):
    sample = "word 12 15 19 23 24 28 31 35 41 52"
    write(folder, "ranges-of-samples", "samples, records and simulations", [
        ("confidence", "1, confidence", "drawn.level-lower", given(family="word gumbel", sample=sample, replicates=100, confidence="confidence", years=20), span(0.5, 0.999)),
        ("years", "years, record of a site", "region.discordancy", given(site=1, years="text years", lcv="word 0.2 0.21 0.22 0.2 0.19", lskew="word 0.1 0.12 0.2 0.15 0.1", lkurt="word 0.1 0.12 0.13 0.15 0.2"), [("30 30 30 30 3", 1), ("30 30 30 30 4", 0)]),
        ("sites", "1, sites", "region.critical-discordancy", given(sites="sites"), [(4, 1), (5, 0)]),
        ("values", "mm, sample", "frequency.gumbel.moments-error", given(standard_deviation=8, size="values", years=20), [(3, 1), (4, 0)]),
    ])


if __name__ == "__main__":
    folder = sys.argv[1]
    if Path(folder).resolve().name == "hydraulics":
        for make in (structures, flow, sections, gaugings, monitors, uncertainties):
            make(folder)
    else:
        for make in (designs, gauges, samples):
            make(folder)
