"""When days that come late agree, told about every number and operator of the rule: states that would answer otherwise if one were changed.

    python3 site_agreement_limits.py FOLDER

writes the table watch-agreement-limits into the folder of the tables of hydraulics. A watch goes on from its state, in which days were put,
over one day more that is late by the record; what it then tells and keeps is computed by site_watching.py, which knows nothing of the
library. States are drawn at random and kept where a number or an operator of the rule, changed by itself, would tell something else.
Python 3.11, numpy 2.
"""

import math
import statistics
import sys

import numpy as np

import site_watching
from one_change import changed
from own_tables import write
from site_baselines import site, storm
from site_clock_return_limits import VALUES
from site_hours import FIRST_HOUR, NAN, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import Told, further, listed
from site_recipes import Record
from site_watches import LEVEL_ONLY, place, step
from site_watching import MonitorClock, Watch

PROGRAM = "site_agreement_limits.py"
WATCH = "watch:hourly-watch"
FUNCTIONS = ("agree", "of_clock", "evenings_moved", "open", "work")
STORM = storm(60, 8, 2, 0.6, 1.0)
AT = 370
#         seed, hours late, what was done, days before the last one that it is late by
SCENES = [(231, 0.5, []), (232, 0.8, []), (234, -0.75, []), (235, 0.75, LEVEL_ONLY), (237, 0.6, step(338, 1.35, 1.2))]
TRIES = 2500


class Scene:
    def __init__(self, seed, late, more):
        self.case = (site(seed=seed, days=17, step=60), STORM + more + [11, 336, 10 ** 5, late, 0], "UTC", 0.6, 0)
        self.record = Record(self.case[0], self.case[1])
        self.base = learn(self.record, Pipe(0.6), "UTC")[0]
        self.seen = []

        def peep(w):
            w.clock.days.clear()
            w.clock.open = lambda day, small, end: self.seen.append((w.clock.days[-1], day, small, end))

        Watch(self.base, self.record, None, (AT, peep))
        self.today, self.day, self.small, self.end = self.seen[0]

    def quick(self, made, before, limits, rules):
        """What the rule alone says, for the search."""
        c = object.__new__(made.MonitorClock)
        c.base, c.book, c.LIMITS = self.base, Told(), limits
        setattr(c, "RULES" if self.base.by_flow else "ALONE", rules)
        c.days, c.tides, c.track, c.closed_soon = before + [self.today], [], None, 0
        c.moon = type("Moon", (), {"known": lambda self: False, "seen": lambda self: False})()
        c.began = lambda: (0.0, 0.0, 0.0)
        try:
            c.open(self.day, self.small, self.end)
        except Exception:  # whatever a changed rule stumbles over
            return "broken"
        return len(c.book.told), getattr(c, "late", 0)

    def row(self, before, about):
        def edit(w):
            w.clock.days = [dict(d) for d in before]

        watch = Watch(self.base, self.record, None, (AT, edit))
        found = [e for e in watch.book.events if e[2].names[0] == "CLOCK_OF_MONITOR"]
        book = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(found)))
        put = f"clockPhasesNumbers={listed([d['day'] for d in before])} clockPhasesValues={listed([float(d[c]) for d in before for c in VALUES])}"
        for name, of in (("Depths", "depth"), ("Evenings", "evenings"), ("Mornings", "mornings")):
            put += f" clock{name}Numbers={listed([d['day'] for d in before])} clock{name}Values={listed([float(d[of]) for d in before])}".replace("nan;", "NaN;")
        return place(self.case) + [AT, WATCH, put, "CLOCK_OF_MONITOR", self.record.minutes[-1] // 60, about] + [
            len(found), int(book(lambda e: e[0])), book(lambda e: e[2].since - FIRST_HOUR), book(lambda e: e[2].earliest - FIRST_HOUR), book(lambda e: e[2].latest - FIRST_HOUR), watch.kept["late"]]


def drawn(random, today, day, rules):
    """Days before the last one that agree with it amply, but for one or two questions in which they stand near a limit."""
    of = lambda *those: those[int(random.integers(0, len(those)))]
    near = lambda limit: limit * random.uniform(0.94, 1.06)
    asked = {of("shift", "scatter", "gain", "other", "evening", "evenings", "mornings", "halves", "rest", "depth", "leapt", "within", "apart", "middle", "few", "none") for _ in range(of(1, 1, 2))}
    n, within, work, shift, scatters, gain = rules[int(random.integers(0, len(rules)))]
    count, sign, x = n - 1, math.copysign(1, today["x"]), abs(today["x"])
    more = of(0, 0, 2, 3, 3, 4) if n <= 3 else of(0, 0, 1)
    ways, base, like = [1, 1, 2], x, 0.03
    if "shift" in asked:
        base, like = near(of(shift, shift, 0.6, 0.8)), 0.02
    if "middle" in asked:
        base = round(2 * x) / 2 + of(-1, 1) * near(of(0.15, 0.2, 0.25))
    if "apart" in asked:
        base = of(0.6 * x, x / 0.6, 2 * x + 0.5, x + 3 * today["scatter"], x - 3 * today["scatter"], 0.2, 0.3, (x - 0.5) / 2) * random.uniform(0.94, 1.06)
    # As far away, in their scatters, as the rule wants them and fewer days would not be, or much farther; more than what the last day weighs.
    away = (scatters * math.sqrt(n) * random.uniform(*((0.97, 1.06) if "scatter" in asked else (1.005, 1.06))) - min(6, x / today["scatter"])) / count
    away = away if away > 0.05 and ("scatter" in asked or random.random() < 0.7) else of(3, 9)
    scale = of(10, 40) if asked & {"gain", "other", "evening"} else of(1, 1, 5)
    found, gap = [], 0
    for k in range(count + more):
        gap += of(*ways)
        if "within" in asked and k == count - 1:
            gap = within - of(0, 1)
        rest = bool(random.random() < (0.6 if "rest" in asked else 0.15))
        moved = float(np.round(today["moved"] * scale * random.uniform(0.8, 1.2), 5))
        late = base * random.uniform(1 - like, 1 + like) if k < count else random.uniform(-0.1, 0.1)
        if "rest" in asked and rest:
            late = near(of(0.3, 0.2, 0.3, base))
        if "few" in asked and k < count and random.random() < 0.5:
            late = near(of(0.2, 0.6 * base, 2 * base + 0.5))
        if "leapt" in asked:
            moved = float(np.round(moved * (near(3) if k < count and random.random() < 0.6 else 1), 5))
        gains = moved * (near(gain) if "gain" in asked else 2.5)
        scatter = late / away if k < count else near(of(0.06, 0.1))
        morning = near(of(0.5, 0.5, 1.0, 1.1, 1.3)) if asked & {"mornings", "halves"} else 1.0
        evening = near(of(0.5, 0.6, 0.7)) if asked & {"evenings", "halves"} else 1.05
        evening *= max(1.0, morning) if "halves" in asked and random.random() < 0.7 else 1.0
        found.insert(0, dict(day=day - gap, x=float(np.round(sign * late, 3)), unmoved=moved + float(np.round(gains, 5)), moved=moved,
                             other=float(np.round(moved * (near(1.2) if "other" in asked else 3), 5)), rest=rest, scatter=float(np.round(max(0.01, abs(scatter)), 3)),
                             evening=float(np.round(gains * (near(0.1) if "evening" in asked else 0.4), 6)),
                             depth=float(np.round(sign * late * (near(0.4) if "depth" in asked else 0.8), 3)),
                             evenings=NAN if random.random() < 0.03 else float(np.round(sign * late * evening, 3)),
                             mornings=NAN if random.random() < 0.03 else float(np.round(sign * late * morning, 3))))
    return found[-15:]


def middle(x):
    """The same median, sooner."""
    x = [v for v in x if v == v]
    return statistics.median(x) if x else NAN


def main(folder):
    source = open(site_watching.__file__).read()
    plain, count = changed(source, FUNCTIONS, -1)
    plain.middle = middle
    left = {("code", i): changed(source, FUNCTIONS, i)[0] for i in range(count)}
    for made in left.values():
        made.middle = middle
    left.update({("limit", k): further(MonitorClock.LIMITS, k) for k in MonitorClock.LIMITS})
    for name in ("RULES", "ALONE"):
        for r, rule in enumerate(getattr(MonitorClock, name)):
            for c, value in enumerate(rule):
                rules = [list(each) for each in getattr(MonitorClock, name)]
                rules[r][c] = value + 1 if c < 3 else value * 1.05
                left[name, f"{r} {c}"] = rules
    rows = []
    for seed, late, more in SCENES:
        scene, random = Scene(seed, late, more), np.random.default_rng(seed)
        name = "RULES" if scene.base.by_flow else "ALONE"
        rules, limits, before_rows = getattr(MonitorClock, name), MonitorClock.LIMITS, len(rows)

        def other(k, of, days):
            if k[0] == "code":
                return scene.quick(of, days, limits, rules)
            if k[0] == "limit":
                return scene.quick(plain, days, of, rules)
            return scene.quick(plain, days, limits, of)

        for _ in range(TRIES):
            days = drawn(random, scene.today, scene.day, rules)
            told = scene.quick(plain, days, limits, rules)
            shown = [k for k, of in left.items() if (k[0] in ("code", "limit") or k[0] == name) and other(k, of, days) != told]
            if shown:
                for k in shown:
                    del left[k]
                rows.append(scene.row(days, "%s hours late: " % late + ", ".join(f"{a} {b}" for a, b in shown)))
        print(seed, late, scene.today, len(rows) - before_rows, "left", list(left), file=sys.stderr, flush=True)
    asked = [("events", "count"), ("kinds", "kind of each times its place"), ("since", "h of each times its place"), ("earliest", "h of each times its place"), ("latest", "h of each times its place")]
    write(folder, PROGRAM, "watch-agreement-limits", "When days that come late agree, about every number of the rule",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what would be told otherwise")] + asked + [("late", "h, shift of the last")],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked] + [("late", "watch.after.kept", f"input.part = word {WATCH}", "input.key = word clockShift", "input.which = 0")], rows,
          tolerance="1e-8 relative or 1e-6", reason="whole hours, and shares of a day")


if __name__ == "__main__":
    main(sys.argv[1])
