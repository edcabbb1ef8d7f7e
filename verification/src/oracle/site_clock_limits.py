"""Limits of the clock where a level is all there is, and where more water is open: states just within a limit or just beyond.

    python3 site_clock_limits.py FOLDER

writes the table watch-clock-more-limits into the folder of the tables of hydraulics, as site_limits.py does of sites with a flow. A watch
goes on from its state, in which days were put; what it then tells is computed by site_watching.py, which knows nothing of the library.
Python 3.11, numpy 2.
"""

import sys

import numpy as np

from site_baselines import site, storm
from site_changes import NOTED, Book
from site_hours import FIRST_HOUR
from site_limits import NANOS, Scene, Told, further, listed, table
from site_watches import LEVEL_ONLY, step
from site_watching import MonitorClock

PROGRAM = "site_clock_limits.py"
COLUMNS = ("x", "unmoved", "moved", "other", "rest", "scatter", "evening")
#         hours late, what was done, its rules
SCENES = [(1.0, LEVEL_ONLY, "ALONE"), (0.5, LEVEL_ONLY, "ALONE"), (0.75, step(338, 1.35, 1.2), "RULES")]


def without_halves(days):
    """Of these days nobody knows how their mornings and evenings moved."""
    return "".join(f" clock{half}Numbers={listed([d['day'] for d in days])} clock{half}Values={'NaN;' * len(days) or ';'}" for half in ("Evenings", "Mornings"))


def days(random, today, rules):
    """Days before the last one, alike or nearly; often as far away, in their scatters, as one of the rules wants them, and in as many days."""
    found, gap, scale, like = [], 0, random.choice([1, 5, 20]), random.choice([0.05, 0.2, 0.5])
    base = today["x"] if random.random() < 0.5 else random.choice([0.3, 0.33, 0.36, 0.5, 0.6, 0.7, 0.8, 1.2]) * random.uniform(0.96, 1.06)
    spread, gains, count, gaps = random.choice([0.06, 0.12, 0.18, 0.25]), random.choice([0.2, 0.25, 0.4]) * random.uniform(0.9, 1.15), int(random.integers(1, 7)), [1, 1, 1, 2, 4]
    if random.random() < 0.6:
        n, within, _, _, scatters, gain = rules[int(random.integers(0, len(rules)))]
        count, gains, like = n - 1 + int(random.random() < 0.2), gain * random.uniform(0.99, 1.1) + 0.02, 0.02
        rest_of = scatters * np.sqrt(n) - min(6, abs(today["x"]) / today["scatter"])
        spread = (n - 1) * abs(base) / max(0.5, rest_of) * random.uniform(0.93, 1.03)
        gaps = [(within - 1) // (n - 1) + int(random.integers(0, 2))] if random.random() < 0.3 else [1, 1, 2]
    for _ in range(count):
        gap += int(random.choice(gaps))
        rest = bool(random.random() < 0.25)
        moved = float(np.round(today["moved"] * scale * random.uniform(0.6, 1.5), 5))
        gain = float(np.round(moved * gains, 5))
        found.insert(0, dict(day=today["day"] - gap, x=float(np.round(base * random.uniform(1 - like, 1 + like), 3)), unmoved=moved + gain, moved=moved,
                             other=float(np.round(moved * random.uniform(1.05, 1.6), 5)), rest=rest, scatter=float(np.round(spread * random.uniform(0.98, 1.02), 3)),
                             evening=float(np.round(gain * random.uniform(0.05, 0.3), 6)), depth=float(np.round(random.uniform(0.05, 0.5), 3))))
    return found


def rows_of(number, late, more, rules_name):
    case = (site(seed=207 + number, days=17, step=30), storm(60, 8, 2, 0.6, 1.0) + more + [11, 336, 10 ** 5, late, 0], "UTC", 0.6, 0)
    scene = Scene(case, 370, "watch:hourly-watch", "CLOCK_OF_MONITOR")
    seen = []

    def peep(w):
        w.clock.days.clear()
        w.clock.open = lambda day, small, end: seen.append((w.clock.days[-1], day, small, end))

    scene.told(peep)
    today, day, small, end = seen[0]
    random = np.random.default_rng(70 + number)

    def quick(before, limits, rules):
        c = object.__new__(MonitorClock)
        c.base, c.book, c.LIMITS = scene.base, Told(), limits
        setattr(c, rules_name, rules)
        c.days, c.tides, c.track, c.closed_soon = before + [today], [], None, 0
        c.moon = type("Moon", (), {"known": lambda self: False, "seen": lambda self: False})()
        c.open(day, small, end)
        return c.book.told, getattr(c, "late", 0)

    usual_rules = getattr(MonitorClock, rules_name)
    left = {("limit", k): further(MonitorClock.LIMITS, k) for k in MonitorClock.LIMITS}
    for r, rule in enumerate(usual_rules):
        for c, value in enumerate(rule):
            other = [list(each) for each in usual_rules]
            other[r][c] = value + 1 if c < 3 else value * 1.05
            left["rule", f"{r} {c}"] = other
    rows = []
    for _ in range(2000):
        before = days(random, today, usual_rules)
        told = quick(before, MonitorClock.LIMITS, usual_rules)
        shown = [k for k, other in left.items() if quick(before, *((other, usual_rules) if k[0] == "limit" else (MonitorClock.LIMITS, other))) != told]
        if not shown:
            continue
        for k in shown:
            del left[k]
        text = (f"clockPhasesNumbers={listed([d['day'] for d in before])} clockPhasesValues={listed([float(d[c]) for d in before for c in COLUMNS])} "
                f"clockDepthsNumbers={listed([d['day'] for d in before])} clockDepthsValues={listed([d['depth'] for d in before])}" + without_halves(before))
        rows.append((scene, text, f"{late} " + ", ".join(" ".join(k) for k in shown), scene.told(lambda w, before=before: setattr(w.clock, "days", list(before)))))
    print(late, rules_name, "small" if small else "large", today["x"], len(rows), "left", list(left), file=sys.stderr, flush=True)
    return rows


class Moved:
    """A day that ends in Berlin, two weeks after its clocks changed on the 28th day of the record; from where days and a leap of the stamps are put."""

    CHANGE = FIRST_HOUR + 27 * 24 + 1

    def __init__(self):
        case = (site(seed=215, days=43, step=60), storm(60, 8, 2, 0.6, 1.0) + [11, 649, 10 ** 5, -1, 0], "Europe/Berlin", 0.6, 0)
        self.scene, seen = Scene(case, 41 * 24 + 23, "watch:hourly-watch", "CLOCK_OF_MONITOR"), []

        def peep(w):
            w.clock.days.clear()
            w.clock.open = lambda day, small, end: seen.append((w.clock.days[-1], day, small, end))

        self.scene.told(peep)
        self.today, self.day, self.small, self.end = seen[0]

    def told(self, before, gap):
        c = object.__new__(MonitorClock)
        c.base, c.book, c.days, c.tides, c.track, c.closed_soon = self.scene.base, Book(), before + [self.today], [], None, 0
        c.moon = type("Moon", (), {"known": lambda self: False, "seen": lambda self: False})()
        c.leap = (self.CHANGE, gap)
        c.open(self.day, self.small, self.end)
        c.leapt(self.day, self.end)
        events = c.book.events
        if any(e[0] != NOTED for e in events):
            return None
        book = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(events)))
        return [len(events), int(book(lambda e: e[0])), book(lambda e: e[2].since - FIRST_HOUR), book(lambda e: e[2].earliest - FIRST_HOUR), book(lambda e: e[2].closed - FIRST_HOUR),
                book(lambda e: e[2].number)]

    def drawn(self, random):
        """Days until the leap that were early by less than an hour, or more, and days after it, about where an hour is as likely as none."""
        of = lambda *those: those[int(random.integers(0, len(those)))]
        last = self.day - of(7, 8, 8, 8, 9)
        scatters = [float(np.round(random.uniform(0.08, 0.4), 3)) for _ in range(4)]
        count = of(0, 1, 2, 3)
        until = [last - k for k in range(count)][::-1]
        if count and random.random() < 0.4:
            until[0] = self.day - 41 + 27 - of(0, 0, 1)
            until = sorted(set(until))
        after = [last + 1 + k + of(0, 1) * (k > 0) for k in range(of(1, 2, 3))]
        after = [d for d in after if d < self.day]
        made = lambda d, x, s: dict(day=d, x=float(np.round(x, 3)), unmoved=0.2, moved=0.1, other=0.2, rest=bool(random.random() < 0.2), scatter=s, evening=0.05, depth=0.0)
        variance = lambda d, s: s * s + (0.25 if d == last else 0)
        weights = [1 / variance(d, of(*scatters)) for d in until]
        v0, v1 = 1 / sum(weights) if weights else 1.0, 0.02
        apart = (1 + (v0 + v1) * random.uniform(0.9, 1.1)) / 2
        level = random.uniform(-0.1, 0.1)
        days = [made(d, level - apart + 0.02 * random.standard_normal(), of(*scatters)) for d in until] + [made(d, level, of(*scatters)) for d in after]
        return days, 24 * last + of(0.0, 9.25, 13.5)


def moved(folder):
    """Whether stamps that leapt by an hour some days after the civil clocks are a logger that was moved late."""
    at, random, rows = Moved(), np.random.default_rng(75), []
    counts = {0: 0, 1: 0}
    for _ in range(400):
        days, gap = at.drawn(random)
        told = at.told(days, gap)
        if told is None or counts[min(1, told[0])] >= 18:
            continue
        counts[min(1, told[0])] += 1
        text = (f"clockPhasesNumbers={listed([d['day'] for d in days])} clockPhasesValues={listed([float(d[c]) for d in days for c in COLUMNS])} "
                f"clockDepthsNumbers={listed([d['day'] for d in days])} clockDepthsValues={listed([d['depth'] for d in days])} "
                f"clockMoved={listed([int(at.CHANGE * NANOS), int(gap * NANOS), int(1.25 * NANOS)])}" + without_halves(days))
        if sum(counts.values()) in (1, 9):
            def edit(w, days=days, gap=gap):
                w.clock.days, w.clock.leap = list(days), (at.CHANGE, gap)

            assert at.scene.told(edit) == told[:-1], (at.scene.told(edit), told)
        rows.append((at.scene, text, "an hour or none", told))
    print(counts, file=sys.stderr)
    table(folder, "watch-moved-limits", "Whether stamps that leapt are a logger that was moved after the civil clocks", rows, PROGRAM,
          [("numbers", "number of each times its place")])


def main(folder):
    moved(folder)
    rows = [row for number, scene in enumerate(SCENES) for row in rows_of(number, *scene)]
    table(folder, "watch-clock-more-limits", "When days that come late tell of a clock, by a level alone or within more water", rows, PROGRAM)


if __name__ == "__main__":
    main(sys.argv[1])
