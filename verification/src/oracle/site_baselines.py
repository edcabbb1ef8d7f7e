"""What is normal at constructed sites: law, curves, scatters, limits, phases of days and lags of storms, each from its sentence.

    python3 site_baselines.py FOLDER

writes the table site-baselines into the folder of the tables of hydraulics. The records are made by site_recipes.py, the rule of the
pages on the baseline and on clocks is followed by site_hours.py; neither knows anything of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

from own_tables import text, write
from site_hours import NONE, Pipe, learn
from site_recipes import Record

PROGRAM = "site_baselines.py"
NANOS = 3.6e12


def storm(hour, rain, hours, rise, lag, length=3.0):
    """Rain at an even rate, and what runs off."""
    return [16, hour + 0.25, hour + hours + 0.25, rain / hours / 4, 0, 17, hour + lag, hour + lag + 40, rise, length]


#         seed days step depth day  exp  speed hourly daily noise parted tide
SOUND = [11, 16, 15, 0.12, 0.25, 0.60, 0.70, 0.02, 0.03, 0.04, 0.02, 0.0]
THREE = storm(52, 6.5, 2, 0.7, 1.2) + storm(130.5, 3.2, 3, 0.5, 0.4) + storm(200, 12, 5, 0.9, 1.8)


def site(**other):
    names = ("seed", "days", "step", "depth", "day", "exponent", "speed", "hourly", "daily", "noise", "parted", "tide")
    return [other.get(n, v) for n, v in zip(names, SOUND)]


def no_rain(days):
    return [15, 0, 24 * days, 0, 0]


CASES = [
    (site(), THREE, "UTC", 0.6, None),
    (site(seed=12, daily=0.06, parted=0.05), THREE + storm(260, 0.7, 1, 0.1, 0.5) + storm(265, 0.5, 1, 0.1, 0.5) + storm(300, 0.6, 1, 0.1, 1), "UTC", 0.6, None),
    (site(seed=13, depth=0.2, speed=0.9, exponent=0.4), storm(40, 30, 6, 0.8, 0.8) + storm(150, 8, 2, 0.6, -0.3) + storm(240, 5, 2, 0.5, 2.4), "Europe/Berlin", 0.5, None),
    (site(seed=14), no_rain(16) + storm(100, 0, 2, 0.6, 0.5), "UTC", 0.6, None),
    (site(seed=15, days=18), THREE + [6, 0, 432, 0, 0], "UTC", 0.6, None),
    (site(seed=16, tide=0.12), THREE, "UTC", 0.6, None),
    (site(seed=17, tide=0.10), [6, 0, 384, 0, 0], "UTC", 0.6, None),
    (site(seed=18), THREE + [18, 0, 384, 0.12, 4], "UTC", 0.6, None),
    (site(seed=19, days=15), [9, 0, 360, 0, 11, 10, 0, 360, 0.5, 7, 9, 0, 360, -0.4, 13], "UTC", 0.6, None),
    (site(seed=20, days=15, noise=0.09), [9, 30, 80, 0, 5, 9, 100, 109, -0.5, 2, 9, 105, 112, -0.4, 1, 10, 200, 250, 0.7, 9], "UTC", 0.6, None),
    (site(seed=21, days=40), [1, 192, 960, 0.8, 0.8], "UTC", 0.6, None),
    (site(seed=22, days=32), [1, 0, 336, 1, 0.7, 1, 336, 768, 0.7, 0.7], "UTC", 0.6, None),
    (site(seed=23, days=32), [7, 60, 78, 0, 0, 8, 300, 309, 0, 0], "UTC", 0.6, None),
    (site(seed=24, days=32), [7, 60, 75, 0, 0, 8, 100, 107, 0, 0], "UTC", 0.6, None),
    (site(seed=25, days=30), [4, 24, 200, 0, 0], "UTC", 0.6, None),
    (site(seed=26, days=30), [c for k in range(0, 14) for c in storm(24 * k + 5, 9, 2, 0.4, 1)], "UTC", 0.6, None),
    (site(seed=27, days=15, step=60, exponent=0.02, noise=0.05), [], "Asia/Kolkata", 0.6, None),
    (site(seed=28, days=15, noise=0.5), [], "UTC", 0.6, None),
    (site(seed=29, days=40), THREE + storm(420, 7, 2, 0.8, 0.9) + storm(600, 9, 3, 0.7, 1.1), "UTC", 0.6, (384, 720)),
    (site(seed=30, days=15, speed=0.2), storm(60, 4, 2, 0.5, 1), "UTC", 0.6, None),
    (site(seed=31, days=40), [6, 0, 960, 0, 0, 0, 200, 960, 1.3, 1.3], "UTC", 0.6, None),
    (site(seed=32, days=15, day=0.05, hourly=0.08), [], "UTC", 0.6, None),
    (site(seed=33, days=15), [6, 0, 310, 0, 0, 5, 100, 110, 0, 0], "UTC", 0.6, None),
    (site(seed=34, days=15), [9, 0, 360, 0, 4], "UTC", 0.6, None),
    (site(seed=35, days=17), [11, 120, 144, 1, 0, 11, 168, 192, -0.75, 0, 11, 240, 264, 0.5, 0], "UTC", 0.6, None),
    (site(seed=36, days=6, step=30), storm(20, 4, 2, 0.5, 1), "UTC", 0.6, (0, 120)),
    (site(seed=37, days=16, step=5), THREE, "UTC", 0.6, None),
    (site(seed=38, days=15), THREE + storm(280, 9, 2, 0.9, 1, 6.0), "UTC", 0.1175, None),
    (site(seed=38, days=15), THREE + storm(280, 9, 2, 0.9, 1, 6.0), "UTC", 0.12, None),
    (site(seed=39, days=15), [0, 170, 360, 1000, 1000], "UTC", 0.6, (0, 360)),
    (site(seed=39, days=15), [0, 190, 360, 1000, 1000], "UTC", 0.6, (0, 360)),
]

COLUMNS = [("learned", "0 or 1"), ("refused", "count"), ("reasons", "count"), ("begin", "h"), ("end", "h"), ("hours", "count"), ("dry_hours", "count"),
           ("rain", "0 or 1"), ("notes", "count"), ("not_tested", "count"), ("tidal", "0 or 1"), ("pumped", "0 or 1"), ("peak", "m"), ("rain_lag", "h, -9999 for none"),
           ("exponent", "1, -9999 for none"), ("scatter_of_law", "1, -9999 for none")]
PLAIN = {"learned": "site.learned", "refused": "site.refused", "reasons": "site.refused.reasons", "begin": "site.from", "end": "site.to",
         "rain_lag": "site.rain-lag", "exponent": "site.law.exponent", "scatter_of_law": "site.law.scatter", "dry_hours": "site.dry-hours",
         "not_tested": "site.not-tested"}
KEPT = [(f"centre_{c}", "centre", c) for c in range(4)] + [(f"scale_{c}", "scale", c) for c in range(4)] + [
    ("dd", "covariance", 0), ("du", "covariance", 1), ("uu", "covariance", 2), ("kappa", "kappa", 0), ("depth_frozen", "depthFrozen", 0),
    ("velocity_frozen", "velocityFrozen", 0), ("velocity_step", "velocityStep", 0), ("velocity_scatter", "velocityScatter", 0), ("depth_step", "depthStep", 0), ("swings", "swings", 0), ("strokes", "strokes", 0), ("narrow", "narrowEcho", 0), ("zero_limit", "zeroLimit", 0), ("echo_limit", "echoLimit", 0),
    ("flip_limit", "flipLimit", 0), ("lone_limit", "loneLimit", 0), ("stray_limit", "strayLimit", 0), ("upstream_hours", "upstreamHours", 0), ("clock", "clock", 0), ("work_phase", "clockCentre", 0),
    ("rest_phase", "clockCentre", 1), ("work_spread", "clockScatter", 0), ("rest_spread", "clockScatter", 1), ("storms", "stormLags", -1)] + [
    (f"{of}_{kind}_{what.lower()}", f"clock{of.capitalize()}{what}", k) for of in ("depth", "flow") for what in ("Centre", "Scatter")
    for k, kind in enumerate(("work", "rest"))] + [
    (f"{of}_{kind}_{half}", f"clock{of.capitalize()}Halves", 2 * late + k) for of in ("depth", "flow") for late, half in enumerate(("morning", "evening"))
    for k, kind in enumerate(("work", "rest"))]
AFTER_KAPPA = KEPT.index(("kappa", "kappa", 0)) + 1
# How far days stray is asked of the cases below alone.
ALL_KEPT = KEPT[:AFTER_KAPPA] + [("day_scatter", "dayScatter", 0)] + KEPT[AFTER_KAPPA:]
DAY = [("depth_work", 1, 7.5, 0), ("depth_rest", 1, 19.25, 1), ("velocity_work", 2, 3.25, 0), ("flow_rest", 3, 12.5, 1)]


def figures(base):
    quiet = lambda curve, *at: curve.value(*at) if curve else NONE
    some = lambda curve, name: getattr(curve, name) if curve else NONE
    return {"begin": base.begin, "end": base.end, "hours": base.hours, "dry_hours": base.dry_hours, "rain": int(base.rain), "notes": int(base.notes),
            "not_tested": int(base.not_tested), "tidal": int(base.tidal), "pumped": int(base.pumped), "peak": base.peak,
            "rain_lag": sorted_middle(base.lags), "exponent": some(base.law, "exponent"), "scatter_of_law": some(base.law, "scatter"),
            **{f"centre_{c}": base.centre[c] for c in range(4)}, **{f"scale_{c}": base.scale[c] for c in range(4)},
            "dd": base.covariance[0], "du": base.covariance[1], "uu": base.covariance[2], "kappa": base.kappa, "day_scatter": base.day_scatter,
            "depth_frozen": base.depth_frozen * NANOS, "velocity_frozen": base.velocity_frozen * NANOS, "velocity_step": base.velocity_step, "velocity_scatter": base.velocity_scatter, "swings": int(base.swings), "strokes": int(base.strokes), "depth_step": base.depth_step if base.depth_step == base.depth_step else "", "narrow": int(base.narrow),
            "zero_limit": base.limits[0], "echo_limit": base.limits[1], "flip_limit": base.limits[2], "lone_limit": base.lone_limit, "stray_limit": base.stray_limit, "upstream_hours": int(base.upstream_hours),
            "clock": int(base.tells_clock), "work_phase": base.usual_phase.centre[False], "rest_phase": base.usual_phase.centre[True],
            "work_spread": base.usual_phase.scatter[False], "rest_spread": base.usual_phase.scatter[True], "storms": len(base.lags),
            **{f"{of}_{kind}_{what}": getattr(phase.usual, what)[kind == "rest"] for of, phase in (("depth", base.by_depth), ("flow", base.by_flow))
               if phase and phase.water for what in ("centre", "scatter") for kind in ("work", "rest")},
            **{f"{of}_{kind}_{half}": phase.usual.halves[kind == "rest", half == "evening"] for of, phase in (("depth", base.by_depth), ("flow", base.by_flow))
               if phase and phase.water for half in ("morning", "evening") for kind in ("work", "rest")},
            "depth_work": quiet(base.depth, 7.5, False), "depth_rest": quiet(base.depth, 19.25, True), "velocity_work": quiet(base.velocity, 3.25, False),
            "flow_rest": quiet(base.flow, 12.5, True), "explained": base.depth.explained, "scatter_of_day": base.depth.scatter,
            "usual_scatter": base.scale[1] / 1.7 if base.scale[1] > 0 else NONE}


def sorted_middle(values):
    return NONE if not values else float(sorted(values)[len(values) // 2] if len(values) % 2 else sum(sorted(values)[len(values) // 2 - 1:len(values) // 2 + 1]) / 2)


def tables(folder, program, name, title, cases, few=None, only=(), kept=KEPT):
    """Of the cases up to a place in the list only some figures."""
    columns = [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h, -9999 for a search"), ("to_hour", "h")]
    inputs = [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour")]
    figured = COLUMNS + [(n, "as kept") for n, *_ in kept] + [(n, "ln of the usual") for n, *_ in DAY] + [
        ("explained", "share"), ("scatter_of_day", "1"), ("usual_scatter", "1")]
    rows = []
    for place, (recipe, changes, zone, diameter, interval) in enumerate(cases):
        base, refused = learn(Record(recipe, changes), Pipe(diameter), zone, interval)
        found = {"learned": int(base is not None), "refused": len(refused), "reasons": int(sum(r.reasons for r in refused))}
        found.update(figures(base) if base else {})
        if few is not None and place < few:
            found = {n: v for n, v in found.items() if n in only}
        rows.append([text(recipe), text(changes) or "-", zone, diameter, *(interval or (NONE, NONE))] + [found.get(n, "") for n, _ in figured])
    checks = [(n, PLAIN.get(n, f"site.{n}")) for n, _ in COLUMNS]
    checks += [(n, "site.kept", f"input.key = word {key}", f"input.which = {which}", *(["tolerance = 1e-6 relative", "reason = a difference quotient over a fifty-thousandth"] if n == "kappa" else []))
               for n, key, which in kept]
    checks += [(n, "site.day.value", f"input.quantity = {c}", f"input.hour = {at}", f"input.rest = {rest}") for n, c, at, rest in DAY]
    checks += [("explained", "site.day.explained", "input.quantity = 1"), ("scatter_of_day", "site.day.scatter", "input.quantity = 1"),
               ("usual_scatter", "site.scatter", "input.quantity = 1")]
    write(folder, program, name, title, columns + figured, inputs, checks, rows, tolerance="1e-9 relative or 1e-10",
          reason="16 digits are given; sums of some thousand logarithms")


STILL = dict(noise=0.003, hourly=0.002, daily=0.002, parted=0.002, step=30)
morning_lost = lambda days: [c for d in days for c in (5, 24 * d + 1, 24 * d + 11, 0, 0)]
WORK, REST = [d for d in range(14) if d % 7 < 5], [d for d in range(14) if d % 7 >= 5]
# Four weeks in which days hardly differ, so that the scatter is the least there is; and days too few for a usual phase.
QUIET_CASES = [
    (site(seed=41, days=30, **STILL), THREE, "UTC", 0.6, (0, 672)),
    (site(seed=42, days=30, **STILL), THREE + [6, 0, 720, 0, 0], "UTC", 0.6, (0, 672)),
    (site(seed=43, days=30, noise=0.02, hourly=0.02, daily=0.01, step=30), THREE, "Europe/Berlin", 0.6, (0, 672)),
    (site(seed=44, days=16, **STILL), THREE + morning_lost(WORK[2:]), "UTC", 0.6, (0, 336)),
    (site(seed=45, days=16, **STILL), THREE + morning_lost(WORK[3:]), "UTC", 0.6, (0, 336)),
    (site(seed=48, days=16, **STILL), THREE + morning_lost(WORK[1:]), "UTC", 0.6, (0, 336)),
    (site(seed=49, days=16, **STILL), THREE + morning_lost(WORK), "UTC", 0.6, (0, 336)),
    (site(seed=46, days=16, **STILL), THREE + morning_lost(REST), "UTC", 0.6, (0, 336)),
    (site(seed=47, days=16, **STILL), THREE + [6, 0, 384, 0, 0] + morning_lost(REST[1:] + WORK[1:]), "UTC", 0.6, (0, 336)),
]


moved = lambda hour, by: [19, hour, 720, by, 0]
wet = lambda days: [c for k in range(days) for c in storm(48 * k + 5, 9, 2, 0.4, 1)]
# A depth sensor that moves within the stretch, or what looks like it: what the week after it shows.
SHIFT_CASES = [
    (site(seed=51, days=30, step=30), THREE + moved(288, -0.03), "UTC", 0.6, None),
    (site(seed=52, days=30, step=30), THREE + moved(312, 0.03), "UTC", 0.6, None),
    (site(seed=53, days=30, step=30), wet(15) + moved(300, -0.03), "Europe/Berlin", 0.6, None),
    (site(seed=54, days=30, step=30), THREE + moved(290, -0.01), "UTC", 0.6, None),
    (site(seed=55, days=30, step=30), THREE + moved(336, -0.03), "UTC", 0.6, None),
    (site(seed=56, days=30, step=30), THREE + moved(400, 0.04), "UTC", 0.6, None),
    (site(seed=57, days=30, step=30), THREE + moved(192, 0.015), "UTC", 0.6, None),
    (site(seed=58, days=30, step=30), THREE + moved(168, 0.015), "UTC", 0.6, None),
    (site(seed=59, days=30, step=30), THREE + [1, 300, 720, 0.8, 0.8], "UTC", 0.6, None),
    (site(seed=60, days=30, step=30), THREE + moved(300, -0.02) + [1, 300, 720, 1.1, 1.1], "UTC", 0.6, None),
    (site(seed=60, days=30, step=30), THREE + moved(300, -0.03) + [1, 300, 720, 1.04, 1.04], "UTC", 0.6, None),
    (site(seed=61, days=30, step=30), [c for k in range(12) for c in storm(24 * k + 5, 9, 2, 0.4, 1)] + moved(290, -0.03), "UTC", 0.6, None),
    (site(seed=62, days=15, step=30), THREE + moved(290, -0.03), "UTC", 0.6, None),
    (site(seed=63, days=30, step=30, tide=0.12), THREE + moved(290, -0.03), "UTC", 0.6, None),
    (site(seed=64, days=30, step=30, exponent=0.05), THREE + moved(290, -0.03), "UTC", 0.6, None),
    (site(seed=65, days=30, step=30, depth=0.3), THREE + moved(290, -0.03), "UTC", 0.6, None),
    (site(seed=66, days=30, step=30, noise=0.2), THREE + moved(290, -0.03), "UTC", 0.6, None),
    (site(seed=67, days=30, step=30, depth=0.04, exponent=0.3), THREE + moved(290, 0.01), "UTC", 0.6, None),
    (site(seed=68, days=30, step=30), THREE + moved(290, -0.03) + [4, 360, 720, 0, 0], "UTC", 0.6, None),
    (site(seed=69, days=30, step=30), THREE + moved(290, -0.03) + [6, 300, 720, 0, 0], "UTC", 0.6, None),
]
SHIFTED = [n for n, _ in COLUMNS] + ["depth_work", "velocity_work", "scale_0", "scale_1"]


def main(folder):
    tables(folder, PROGRAM, "site-baselines-shift", "What the week after a stretch shows of a depth that moved within it", SHIFT_CASES, len(SHIFT_CASES), SHIFTED)
    tables(folder, PROGRAM, "site-baselines", "What is normal at constructed sites", CASES, kept=ALL_KEPT)
    tables(folder, PROGRAM, "site-baselines-quiet", "What is normal where days hardly differ, and where few are known", QUIET_CASES, kept=ALL_KEPT)


if __name__ == "__main__":
    main(sys.argv[1])
