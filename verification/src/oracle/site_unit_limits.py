"""Readings that come in another unit: whole records, and states just within a limit or just beyond.

    python3 site_unit_limits.py FOLDER

writes the tables watch-unit-events, watch-unit-findings, watch-unit-kept and watch-unit-limits into the folder of the tables of
hydraulics. Units by site_units.py, all else by site_watching.py; none knows anything of the library. States are drawn at random and
kept where a limit 5 % larger, or one hour more, would tell something else. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

from site_baselines import site, storm
from site_limits import Scene, Told, further, listed, shown, table
from site_units import LIMITS, Question, units
from site_watches import EVER, FOUR_STORMS, LEVEL_ONLY, often, tables

PROGRAM = "site_unit_limits.py"
FEET = 1 / 0.3048
CASES = {
    "depth in feet": (site(seed=191, days=24), [0, 430, EVER, FEET, FEET], "UTC", 0.6, 0),
    "depth in millimetres and back": (site(seed=192, days=28), FOUR_STORMS + [0, 440, 560, 1000, 1000], "UTC", 0.6, 0.3),
    "depth in centimetres in rain": (site(seed=193, days=26), FOUR_STORMS + often(400, 620, 30) + [0, 470, EVER, 100, 100], "UTC", 0.6, 0),
    "velocity in feet": (site(seed=194, days=26), [1, 431, EVER, FEET, FEET], "UTC", 0.6, 0),
    "velocity in millimetres": (site(seed=195, days=26), [1, 431, 540, 1000, 1000], "UTC", 0.6, 0),
    "a tenth of the depth": (site(seed=196, days=26), [0, 450, EVER, 0.1, 0.1], "UTC", 0.6, 0),
    "level in feet": (site(seed=197, days=28), LEVEL_ONLY + [0, 450, 560, FEET, FEET], "UTC", 0.6, 0),
    "depth in inches twice": (site(seed=198, days=34), FOUR_STORMS + [0, 430, 500, 39.37, 39.37, 0, 600, 680, 39.37, 39.37], "UTC", 0.6, 0),
    "depth in inches late again": (site(seed=198, days=36), FOUR_STORMS + [0, 430, 500, 39.37, 39.37, 0, 621, 680, 39.37, 39.37], "UTC", 0.6, 0),
    "back for a day less an hour": (site(seed=199, days=28), [0, 440, 490, 10, 10, 0, 513, 560, 10, 10], "UTC", 0.6, 0),
    "back for a day": (site(seed=199, days=28), [0, 440, 490, 10, 10, 0, 514, 560, 10, 10], "UTC", 0.6, 0),
    "drops before the leap": (site(seed=190, days=24), [16, 446, 446.25, 0.0501, 0, 0, 453, EVER, 10, 10, 17, 453, 500, 0.9, 6], "UTC", 0.6, 0),
    "rain before the leap": (site(seed=190, days=24), [16, 447, 447.25, 0.0501, 0, 0, 453, EVER, 10, 10, 17, 453, 500, 0.9, 6], "UTC", 0.6, 0),
    "less than a drop before the leap": (site(seed=190, days=24), [16, 450, 450.25, 0.0499, 0, 0, 453, EVER, 10, 10, 17, 453, 500, 0.9, 6], "UTC", 0.6, 0),
}
DEPTH, VELOCITY = ("watch:hourly-watch/%sUnit:reading-unit" % q for q in ("depth", "velocity"))
KEPT = [("depth_before", DEPTH, "beforeValues", -1), ("depth_leapt", DEPTH, "leaptValues", -1), ("depth_home", DEPTH, "home", 0),
        ("velocity_before", VELOCITY, "beforeValues", -1), ("velocity_leapt", VELOCITY, "leaptValues", -1), ("velocity_last", VELOCITY, "lastValues", -1)]


def sequence(scene):
    """Of the hours from the edit on: number, figures, rain."""
    rows = []

    def peep(w):
        w.units.hour = lambda hour, number: rows.append((number, *w.units.figures(hour), hour.rain))

    scene.told(peep)
    return rows


def drawn(random, rows, of_depth, unit):
    """A state before the first of the hours."""
    now = rows[0][0]
    count = int(random.choice([random.integers(20, 27), random.integers(24, 30), 119]))
    middle, scatter = random.choice([0.0, 0.3, 0.6, -0.3, -0.6, 0.8, -2.0]) * random.uniform(0.85, 1.15), random.choice([0.05, 0.1, 0.14, 0.28]) * random.uniform(0.8, 1.2)
    other, moved = random.normal(0, 0.05), random.choice([0, 0, 0.25, 0.5]) * random.choice([-1, 1]) * random.uniform(0.85, 1.15)
    values = lambda n, m, o, s: [[float(np.round(m + s * random.standard_normal(), 2)), float(np.round(o + 0.03 * random.standard_normal(), 2))] for _ in range(n)]
    before = values(count, middle, other + moved, scatter)
    asked = random.random() < 0.6
    known = int(random.choice([unit.wanted(False) - 1, random.integers(0, 24)]))
    leapt = values(known, unit.ln + random.choice([0, 0, unit.exact(True), unit.exact(False), unit.band()]) * random.uniform(-1.2, 1.2), other,
                   random.choice([0.03, min(0.2, max(0.12, 1.5 * scatter))]) * random.uniform(0.85, 1.15)) if asked else []
    from_home = random.choice([0.0, middle])
    gap = int(random.choice([1, 1, 2, 3, 4]))
    return dict(before=before, beforeNumbers=[now - gap - count + k for k in range(count)], asked=unit.name if asked else "", leapt=leapt,
                askedSince=int(now - random.integers(1, 50)) if asked else 0, leaptDry=bool(random.random() < 0.5), home=int(random.integers(0, 3)) if asked else 0,
                last=[(now - gap - k, float(np.round(from_home + random.normal(0, 0.25), 3))) for k in (1, 0)])


def put(question, s):
    question.before = [(n, x, o) for n, (x, o) in zip(s["beforeNumbers"], s["before"])]
    question.last, question.leapt, question.since = list(s["last"]), [tuple(r) for r in s["leapt"]], s["askedSince"]
    question.asked = next((u for u in question.units if u.name == s["asked"]), None)
    question.leapt_dry, question.times_home, question.track = s["leaptDry"], s["home"], None


def text(s):
    of = [f"beforeNumbers={listed(s['beforeNumbers'])}", f"beforeValues={listed([v for r in s['before'] for v in r])}", f"asked={s['asked']}",
          f"leaptNumbers={listed(range(s['askedSince'], s['askedSince'] + len(s['leapt'])))}", f"leaptValues={listed([v for r in s['leapt'] for v in r])}",
          f"askedSince={s['askedSince']}", f"leaptDry={str(s['leaptDry']).lower()}", f"home={s['home']}",
          f"lastNumbers={listed([n for n, _ in s['last']])}", f"lastValues={listed([x for _, x in s['last']])}"]
    return " ".join(of)


def quick(rows, of_depth, s, limits):
    """What the rule alone tells."""
    q = Question(of_depth, Told(), lambda *a: None, limits)
    put(q, s)
    wet = -10 ** 12
    for number, y, v, day, rain in rows:
        wet = wet if rain <= limits["least_rain"] else number
        q.hour(number, *((y, day) if of_depth else (v, y)), number - limits["dry_hours"] > wet)
    return [t for t in q.book.told if len(t) == 2], len(q.before), q.asked is None


EVERYWHERE = ("days", "least", "home", "dry_leap", "across", "open", "returns", "below", "above", "unmoved", "parted", "steady")
GENERAL = ((True, "FOOT"), (True, "DECI"), (False, "OF_DECI"))
OF_UNIT = {"FOOT": ("foot", "small", "large", "over", "feet_of_usual", "hours_feet", "band_feet", "exact_feet"), "OF_FOOT": ("of_foot", "band_feet", "exact_feet", "hours_feet"),
           "DECI": ("ten", "hours_large", "band", "exact", "exact_wide", "of_usual"), "OF_DECI": ("tenth", "hours", "exact", "band"), "MILLI": ("largest", "band_thousand", "exact_wide"),
           "CENTI": ("hundred", "exact", "of_usual"), "INCH": ("inch", "exact", "hours_large"), "OF_INCH": ("of_inch", "hours", "exact"),
           "OF_CENTI": ("hundredth", "exact"), "OF_MILLI": ("thousandth", "band_thousand", "exact_wide")}


def main(folder):
    tables(folder, PROGRAM, CASES, tuple(CASES), "watch-unit", KEPT)
    random = np.random.default_rng(9)
    scenes, missing = [], []
    of_units = [(True, u, False) for u in units(LIMITS)] + [(False, u, False) for u in units(LIMITS) if u.name in ("FOOT", "DECI", "OF_DECI")]
    of_units += [(True, u, True) for u in units(LIMITS) if u.name in ("FOOT", "OF_FOOT")]
    for of_depth, unit, level in of_units:
        factor = float(np.exp(unit.ln))
        leap = 379 if level else 378
        recipe = site(seed=230 + int(10 * unit.ln), days=18, step=30, depth=0.2)
        changes = (LEVEL_ONLY if level else []) + [0 if of_depth else 1, leap, EVER, factor, factor]
        scene = Scene((recipe, changes, "UTC", 0.6, 0), leap + 1, DEPTH if of_depth else VELOCITY, "DEPTH_UNIT" if of_depth else "VELOCITY_UNIT")
        rows = sequence(scene)[:30]
        wanted = (("level_home", "hours", "home") if level else EVERYWHERE if (of_depth, unit.name) in GENERAL else ()) + (() if level else OF_UNIT[unit.name])
        left = list(wanted)
        for _ in range(400):
            s = drawn(random, rows, of_depth, unit)
            if level:
                s["before"], s["leapt"] = [[x, float("nan")] for x, _ in s["before"]], [[x, float("nan")] for x, _ in s["leapt"]]
            told = quick(rows, of_depth, s, LIMITS)
            seen = [which for which in left if quick(rows, of_depth, s, further(LIMITS, which)) != told]
            if seen:
                edit = lambda w, s=s: put(w.units.depth if of_depth else w.units.velocity, s)
                scenes.append((scene, text(s).replace("nan;", "NaN;"), unit.name + " " + " ".join(seen), scene.told(edit)))
                left = [which for which in left if which not in seen]
            if not left:
                break
        missing += [(unit.name, which) for which in left]
    print("no state for", missing, file=sys.stderr)
    table(folder, "watch-unit-limits", "When readings tell of another unit", scenes, PROGRAM)


if __name__ == "__main__":
    main(sys.argv[1])
