"""When readings tell of another unit, about every number and operator of the rule: states that would answer otherwise if one were changed.

    python3 site_unit_more_limits.py FOLDER

writes the table watch-unit-more-limits into the folder of the tables of hydraulics. A watch goes on from its state, in which hours, steps
between readings and what is asked were put; what it keeps some hours later and tells is computed by site_units.py, which knows nothing
of the library. States are drawn at random and kept where a number or an operator of the rule, changed by itself, would answer
otherwise. Python 3.11, numpy 2.
"""

import math
import sys

import numpy as np

import site_units
from one_change import changed
from own_tables import write
from site_baselines import site
from site_hours import FIRST_HOUR, NAN
from site_level_limits import COLUMNS, INPUTS
from site_limits import Scene, Told, listed
from site_units import LIMITS, units
from site_unit_limits import DEPTH, VELOCITY
from site_watches import EVER, LEVEL_ONLY, place
from site_watching import Watch

PROGRAM = "site_unit_more_limits.py"
FUNCTIONS = ("hour", "leap", "gradual", "ask", "tell", "go_on", "band", "of_usual", "any_weather", "wanted", "exact", "home")
LATER = 4
NOT_OF_RULE = ("inch", "foot", "largest", "hundred", "ten", "tenth", "hundredth", "thousandth", "of_inch", "of_foot", "least_rain", "dry_hours")
UNIT = {u.name: u for u in units(LIMITS)}
FEET = 1 / 0.3048


def slowly(begin, factor):
    return [0, begin, begin + 3, 1, factor, 0, begin + 3, EVER, factor, factor]


#         seed, what was done, put at, of the depth, unit, open already
SCENES = [(251, LEVEL_ONLY + slowly(379, FEET), 380, True, "FOOT", False), (252, LEVEL_ONLY + slowly(379, 10), 380, True, "DECI", False),
          (253, [0, 378, EVER, FEET, FEET], 379, True, "FOOT", False), (254, [0, 378, EVER, 10, 10], 379, True, "DECI", False),
          (255, [1, 378, EVER, 0.1, 0.1], 379, False, "OF_DECI", False), (256, [0, 366, 378, 10, 10], 379, True, "DECI", True),
          (257, [0, 378, EVER, 0.001, 0.001], 379, True, "OF_MILLI", False)]
TRIES = 130


class Case(Scene):
    def __init__(self, seed, changes, at, of_depth, unit, is_open):
        self.of_depth, self.unit, self.is_open = of_depth, UNIT[unit], is_open
        super().__init__((site(seed=seed, days=18, step=30, depth=0.2), list(changes), "UTC", 0.6, 0), at, DEPTH if of_depth else VELOCITY, "-")
        self.rows = []

        def peep(w):
            self.before = w.units.depth if of_depth else w.units.velocity
            real = w.units.hour

            def hour(hour, number):
                figures = w.units.figures(hour)
                self.rows.append((number, figures, hour.rain, math.log(hour.leap) if not hour.alone else None))
                real(hour, number)

            w.units.hour = hour

        Watch(self.base, self.record, None, (at, peep))
        self.rows, self.alone = self.rows[:29], LEVEL_ONLY[0] in changes[::5]
        # What was told before has its place in the library as well.
        self.track = self.before.track.copy() if is_open else None

    def quick(self, made, limits, s):
        q = made.Question(self.of_depth, Told(), lambda *a: None, limits)
        if self.is_open:
            q.track = self.track.copy()
        put(q, s)
        wet, kept = -10 ** 12, None
        try:
            for k, (number, (y, v, day), rain, leap) in enumerate(self.rows):
                wet = wet if rain <= LIMITS["least_rain"] else number
                q.leaps[number] = leap
                if k == LATER - 1:
                    kept = self.kept(q)
                q.hour(number, *((y, day) if self.of_depth else (v, y)), number - LIMITS["dry_hours"] > wet)
        except Exception:  # whatever a changed rule stumbles over
            return "broken"
        return [t for t in q.book.told if len(t) == 2], kept

    def kept(self, q):
        book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))
        return [round(book(v for b in q.before for v in b[1:]), 9), round(book(v for r in q.leapt for v in r), 9), int(q.times_home), int(q.since)]

    def row(self, s, about):
        so_far = []

        def edit(w):
            q = w.units.depth if self.of_depth else w.units.velocity
            put(q, s)
            real, count = w.units.hour, [0]

            def hour(hour, number):
                count[0] += 1
                if count[0] == LATER:
                    so_far.extend(self.kept(q))
                real(hour, number)

            w.units.hour = hour

        watch = Watch(self.base, self.record, None, (self.at, edit))
        found = [e for e in watch.book.events]
        total = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(found)))
        return place(self.case) + [self.at, self.part, text(s), "-", self.at + LATER - 1, about, len(found), int(total(lambda e: e[0])), total(lambda e: e[2].since - FIRST_HOUR)] + so_far


def drawn(random, case):
    of = lambda *those: those[int(random.integers(0, len(those)))]
    near = lambda limit: limit * random.uniform(0.94, 1.06)
    now, unit = case.rows[0][0], case.unit
    x = case.rows[0][1][0 if case.of_depth else 1]
    asked = {of("place", "last", "scatter", "steps", "gap", "few", "moved", "exact", "home", "open", "dry", "none") for _ in range(of(1, 1, 2))}
    count = of(20, 23, 24, 25) if "few" in asked else of(26, 30)
    middle = 0.0
    if "place" in asked:
        middle = x - unit.ln + of(-1, 1) * near(of(0.6, 0.8, 1.0, 2.0)) if not case.is_open else 0.0
    scatter = near(0.3) if "scatter" in asked and random.random() < 0.5 else near(of(0.08, 0.09, 0.1, 0.13)) if "scatter" in asked else 0.05
    other = random.normal(0, 0.05)
    moved = of(-1, 1) * near(of(0.25, 0.5)) if "moved" in asked else 0.0
    if case.is_open:
        middle = x + of(-1, 1) * near(0.6) if "home" in asked else x + of(0.0, 1.0)
    draw = lambda n, m, o, s: [[float(np.round(m + s * random.standard_normal(), 3)), NAN if case.alone else float(np.round(o + 0.03 * random.standard_normal(), 3))] for _ in range(n)]
    before = draw(count, middle, other + moved, scatter)
    question = bool(random.random() < 0.5) and not case.is_open
    wanted = unit.wanted(case.alone)
    leapt = []
    if question:
        edge = of(unit.exact(True), unit.exact(False), unit.band()) if "exact" in asked else 0.0
        leapt = draw(of(wanted - 2, wanted - 1, wanted), unit.ln + of(-1, 1) * near(edge), other, near(of(0.12, 0.2, 1.5 * scatter)) if "scatter" in asked else 0.03)
    gap = of(2, 3, 4) if "gap" in asked else of(1, 1, 2)
    by = unit.ln + (of(-1, 1) * near(of(unit.band(), 0.3)) if "last" in asked else 0.02 * random.standard_normal())
    last = [(now - gap - 1, float(np.round(x - of(by, 0.0, by + 0.3), 3))), (now - gap, float(np.round(x - by, 3)))]
    if "last" in asked and case.alone and random.random() < 0.5:
        last[1] = (now - gap, float(np.round(middle + of(-1, 1) * near(0.3), 3)))
    steps = []
    for k in range(3, 0, -1):
        known = random.random() < (0.85 if "steps" in asked else 0.95)
        large = near(0.75) * abs(x - last[1][1]) if "steps" in asked else of(0.1, 0.1, abs(unit.ln))
        steps.append((now - k, float(np.round(large if random.random() < 0.6 else 0.05, 3)) if known else None))
    if random.random() < 0.15:
        del steps[int(random.integers(0, 3))]
    return dict(before=before, beforeNumbers=[now - gap - count + k for k in range(count)], asked=unit.name if question else "", leapt=leapt,
                askedSince=int(now - (of(46, 47, 48, 49) if "open" in asked else random.integers(1, 30))) if question else 0, leaptDry=bool(random.random() < 0.5),
                home=of(0, 1, 2) if question else of(19, 20, 21, 22, 23) if case.is_open else 0, last=last, steps=steps)


def put(question, s):
    question.before = [(n, x, o) for n, (x, o) in zip(s["beforeNumbers"], s["before"])]
    question.last, question.leapt, question.since = list(s["last"]), [tuple(r) for r in s["leapt"]], s["askedSince"]
    question.asked = next((u for u in question.units if u.name == s["asked"]), None)
    question.leapt_dry, question.times_home, question.leaps = s["leaptDry"], s["home"], dict(s["steps"])


def text(s):
    of = [f"beforeNumbers={listed(s['beforeNumbers'])}", f"beforeValues={listed([v for r in s['before'] for v in r])}", f"asked={s['asked']}",
          f"leaptNumbers={listed(range(s['askedSince'], s['askedSince'] + len(s['leapt'])))}", f"leaptValues={listed([v for r in s['leapt'] for v in r])}",
          f"askedSince={s['askedSince']}", f"leaptDry={str(s['leaptDry']).lower()}", f"home={s['home']}",
          f"lastNumbers={listed([n for n, _ in s['last']])}", f"lastValues={listed([x for _, x in s['last']])}",
          f"stepsNumbers={listed([n for n, _ in s['steps']])}", f"stepsValues={listed([v for _, step in s['steps'] for v in ((0.0, 0.0) if step is None else (1.0, step))])}"]
    return " ".join(of).replace("nan;", "NaN;")


def main(folder):
    source = open(site_units.__file__).read()
    plain, count = changed(source, FUNCTIONS, -1)
    left = {("code", i): changed(source, FUNCTIONS, i)[0] for i in range(count)}
    left.update({("limit", k): {**LIMITS, k: v + 1 if isinstance(v, int) else v * 1.05} for k, v in LIMITS.items() if k not in NOT_OF_RULE})
    often = {k: 1 for k in left}
    rows = []
    for scene in SCENES:
        case, random, before = Case(*scene), np.random.default_rng(scene[0]), len(rows)
        for _ in range(TRIES):
            s = drawn(random, case)
            told = case.quick(plain, LIMITS, s)
            assert told != "broken", s
            shown = [k for k, of in left.items() if (case.quick(of, LIMITS, s) if k[0] == "code" else case.quick(plain, of, s)) != told]
            if shown:
                for k in shown:
                    often[k] -= 1
                    if not often[k]:
                        del left[k]
                rows.append(case.row(s, scene[4] + ": " + ", ".join(f"{a} {b}" for a, b in shown)))
        print(scene[0], scene[4], len(rows) - before, "left", list(left), file=sys.stderr, flush=True)
    asked = [("events", "count"), ("kinds", "kind of each times its place"), ("since", "h of each times its place")]
    kept = [("before", "sum of each times its place", "beforeValues", -1), ("leapt", "sum of each times its place", "leaptValues", -1), ("home", "h", "home", 0), ("asked_since", "h", "askedSince", 0)]
    write(folder, PROGRAM, "watch-unit-more-limits", "When readings tell of another unit, about every number of the rule",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what would be told otherwise")] + asked + [(n, u) for n, u, *_ in kept],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.key = word {key}", f"input.which = {which}") for n, _, key, which in kept], rows,
          tolerance="1e-9 relative or 1e-8", reason="16 digits are given")


if __name__ == "__main__":
    main(sys.argv[1])
