"""Limits of the watch on both sides: what is told when some numbers of its state stand just within a limit or just beyond.

    python3 site_limits.py FOLDER

writes the tables watch-gauge-limits, watch-silence-limits and watch-clock-limits into the folder of the tables of hydraulics. A watch
goes on from its state, in which lags, rises or days were put; what it then tells is computed by site_watching.py, which knows nothing
of the library. States are drawn at random and kept where a limit 5 % larger, or of silences as much smaller, would tell
something else. Python 3.11, numpy 2.
"""

import math
import sys

import numpy as np

from own_tables import write
from site_baselines import site, storm
from site_changes import NOTED
from site_hours import FIRST_HOUR, NONE, Pipe, learn
from site_recipes import Record
from site_watches import place
from site_watching import GaugeClock, GaugeSilence, MonitorClock, Watch

PROGRAM = "site_limits.py"
NANOS = 3_600_000_000_000
shown = lambda v: str(int(v)) if isinstance(v, (int, np.integer)) else repr(float(v))
listed = lambda values: "".join(shown(v) + ";" for v in values) or ";"


class Scene:
    """One record, watched up to an hour, from where the watch goes on from other numbers."""

    def __init__(self, case, at, part, name):
        self.case, self.at, self.part, self.name = case, at, part, name
        self.record = Record(case[0], case[1])
        self.base = learn(self.record, Pipe(case[3]), case[2])[0]

    def told(self, edit):
        watch = Watch(self.base, self.record, None, (self.at, edit))
        found = [e for e in watch.book.events if e[2].names[0] == self.name]
        book = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(found)))
        return [len(found), int(book(lambda e: e[0])), book(lambda e: e[2].since - FIRST_HOUR), book(lambda e: e[2].earliest - FIRST_HOUR),
                book(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR)]


CHECKS = [("events", "count"), ("kinds", "kind of each times its place"), ("since", "h of each times its place"), ("earliest", "h of each times its place"),
          ("closed", "h of each times its place")]


def table(folder, name, title, scenes, program=PROGRAM, more=()):
    columns = [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h, -9999 for a search"), ("to_hour", "h"),
               ("alarm", "m, 0 for none"), ("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("about", "the limit")]
    inputs = [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour"),
              ("alarm", "alarm"), ("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name")]
    rows = [place(scene.case) + [scene.at, scene.part, put, scene.name, about] + answer for scene, put, about, answer in scenes]
    checks = CHECKS + list(more)
    write(folder, program, name, title, columns + checks, inputs, [(n, "watch.after." + {"events": "events"}.get(n, n + ".book")) for n, _ in checks], rows,
          tolerance="1e-6", reason="whole hours, and shares of a day")


def gauges(folder):
    """One storm more: its lag is that of the record, the others are put."""
    scenes = []
    for begin, wanted in ((-0.6, [("limit", k) for k in ("high", "each", "prior", "storms", "row", "half", "sure", "known", "near")] + [("rule", (r, c)) for r in (0, 1) for c in (0, 2, 3, 4, 5)]),
                          (1.2, [("limit", k) for k in ("low", "each", "prior", "half", "sure", "near", "long")] + [("rule", (r, c)) for r in (2, 3) for c in (0, 2, 3, 4, 5)])):
        case = (site(seed=201, days=18, step=30), storm(60, 8, 2, 0.6, 1.0) + storm(370, 9, 2, 0.7, begin, 1.5 if begin < 0 else 3.0), "UTC", 0.6, 0)
        scene = Scene(case, 376, "watch:hourly-watch/gauge:gauge-clock", "CLOCK_OF_GAUGE")
        seen = []

        def peep(w):
            w.gauge.usual = [0.5, 0.5]
            w.gauge.look = lambda shift, end, season: seen.append((w.gauge.pending[-1], shift))

        scene.told(peep)
        (lag, end, fit), day_shift = seen[0]
        scenes += [(scene, put, about, scene.told(edit)) for put, about, edit in lags_at_limits(wanted, scene.base, lag, end, fit, day_shift)]
    table(folder, "watch-gauge-limits", "When lags of storms tell of the clock of a gauge", scenes)


MANY = ("half", "sure", "known", "near", "long")


def lags_at_limits(wanted, base, lag, end, fit, day_shift):
    random = np.random.default_rng(5)

    def quick(usual, lags, times, fits, limits, rules):
        """What the rule alone says of them, for the search."""
        g = object.__new__(GaugeClock)
        g.base, g.usual, g.pending, g.track, g.LIMITS, g.RULES = base, list(usual), list(zip(lags, times, fits)) + [(lag, end, fit)], None, limits, rules
        g.last_usual, g.found = 0, None
        g.book = type("B", (), {"open": lambda self, n, s, e: setattr(g, "found", (s, e)) or type("T", (), {"open": True})(), "tell": lambda self, *a: None})()
        m = float(np.median(usual))
        if limits["low"] < m < limits["high"]:
            g.look(day_shift, end)
        return g.found

    for kind, which in wanted:
        for _ in range(16000):
            n, k = int(random.integers(2, 12)), int(random.integers(1, 4))
            count, side, limit = GaugeClock.RULES[which[0] if kind == "rule" else random.integers(0, len(GaugeClock.RULES))][:3]
            usual = lag - side * limit * random.uniform(0.9, 1.6) + random.choice([0.02, 0.3, 0.8]) * random.standard_normal(n)
            if which in ("low", "high"):
                usual = (-0.82 if which == "low" else 2.56) + 0.02 * random.standard_normal(n)
            usual, lags = np.round(usual, 3), np.round(lag + random.choice([0.05, 0.4]) * random.standard_normal(k), 3)
            if which in MANY:
                n, k = int(random.integers(2, 21)), int(random.integers(4, 12))
                usual = np.round(lag - side * random.uniform(0.4, 1.2) + random.choice([0.02, 0.3]) * random.standard_normal(n), 3)
                lags = np.round(lag + random.choice([0.05, 0.3]) * random.standard_normal(k), 3)
            fits = np.round(random.choice([0.73, 0.77, 0.84, 0.87, 1.0], k), 2)
            times = sorted(int(end - t) for t in random.uniform(30, 4600 if which == "long" else 800 if which == "row" else 300, k))
            limits, rules = dict(GaugeClock.LIMITS), [list(r) for r in GaugeClock.RULES]
            if kind == "limit":
                limits[which] *= 1.05
            else:
                rules[which[0]][which[1]] = rules[which[0]][which[1]] + 1 if which[1] == 0 else rules[which[0]][which[1]] * 1.05
            if quick(usual, lags, times, fits, GaugeClock.LIMITS, GaugeClock.RULES) != quick(usual, lags, times, fits, limits, rules):
                break
        else:
            print("no state for", kind, which, file=sys.stderr)
            continue

        def edit(w, usual=usual, lags=lags, times=times, fits=fits):
            w.gauge.usual, w.gauge.pending = list(usual), list(zip(lags, times, fits))

        about = kind + " " + (which if kind == "limit" else f"{which[0]} {which[1]}")
        yield f"usual={listed(usual)} lags={listed(lags)} times={listed([t * NANOS for t in times])} fits={listed([float(f) for f in fits])}", about, edit


def further(limits, which, side=1):
    """The limits with one of them 5 % larger, or one more where it counts; or as much less."""
    other = dict(limits)
    other[which] = limits[which] + side if isinstance(limits[which], int) else limits[which] * (1 + 0.05 * side)
    return other


class Told:
    """Takes what is told, for the search."""

    def __init__(self):
        self.told = []

    def open(self, *of):
        self.told.append(of)
        return type("Track", (), {"open": True, "returns": 0, "since": of[1]})()

    def tell(self, kind, time, track):
        self.told.append((kind, time))


def silences(folder):
    """A rise that has just run off, or some that stand already, in dry hours."""
    case = (site(seed=203, days=18, step=30), storm(60, 8, 2, 0.6, 1.0), "UTC", 0.6, 0)
    scene = Scene(case, 376, "watch:hourly-watch/silence:gauge-silence", "SILENT_GAUGE")
    hours = []

    def peep(w):
        w.silence.take = lambda hour, number, excess, above, other: hours.append((hour, number, excess, above, other))

    scene.told(peep)
    now = hours[0][1]
    random = np.random.default_rng(6)

    def state(rise, which):
        count = int(random.integers(0 if rise else 1, 5))
        begins = sorted(int(now - random.integers(1 if rise else 20, 500)) for _ in range(count))
        begin = int(now - random.integers(2, 52))
        size = float(np.round(random.uniform(0.25, 3), 3))
        quiet = int(random.integers(200, 1500))
        before = float(np.round(random.uniform(-0.5, 0), 3))
        height = float(np.round(random.uniform(0.25, 0.9), 3))
        gap = int(random.integers(60, 700))
        if which == "apart" and begins:
            begins[-1] = begin - int(random.integers(11, 15))
        if which == "gap":
            quiet, gap = int(random.integers(164, 169)), int(random.integers(40, 80))
        lost = int(random.integers(2, 40)) if rise and random.random() < 0.2 else 900
        dropped = int(random.integers(2, 40)) if rise and random.random() < 0.2 else quiet
        speed = float(np.round(before + random.choice([0.3, -0.25]) * height * random.uniform(0.8, 1.2), 3))
        # What is supposed of a size hides what the site has shown, where it is large; from some size on no more is supposed.
        lowest, highest = {"season": (0.8, 1.2), "crowded": (0.8, 1.2), "supposed_most": (3, 6)}.get(which, (0.8, 3))
        wet, dry = ([float(v) for v in sorted(np.round(random.uniform(low, highest, int(random.integers(least, 9))), 3), reverse=True)] for low, least in ((lowest, 1), (0.1, 0)))
        hours = [int(random.integers(60, 900)), int(random.integers(200, 4000))]
        spells, large = int(random.integers(4, 60)), which in ("near", "wonder", "crowded", "season")
        if large:
            # Two or three large rises, after a long record.
            begins = [now - 400 + k * int(random.integers(22, 26) if which == "near" else random.integers(53, 65)) for k in range(3 if which == "crowded" else 2)]
            hours[1], quiet, count = int(random.integers(1300 if which == "season" else 2000, 4000)), int(random.integers(420, 900)), len(begins)
            half = math.log(0.5) / -math.log1p(0.25 * quiet / sum(hours)) - 0.5
            spells = max(1, int(half + random.integers(-1, 3)) if which == "wonder" else int(half * random.uniform(0.5, 3)))
        if which == "supposed_most":
            # One rise, larger than any, in a silence without like.
            begins, count, gap, spells = [now - int(random.integers(20, 120))], 1, int(random.integers(60, 120)), int(random.integers(9, 20))
        peak = begin + int(random.integers(0, min(9, now - begin)))
        return dict(begins=begins, sizes=[float(v) for v in np.round(random.uniform(0.9 * highest if large else lowest if which == "supposed_most" else 0.5, highest, count), 3)],
                    climbs=[int(v) for v in random.integers(0, 4 if large else 7, count)],
                    risesWith=wet, risesWithout=dry, countWithout=len(dry), spells=spells,
                    wetHours=hours[0], dryHours=hours[1], lastRain=now - dropped, lastUnknown=now - lost, silentHours=quiet, longestSilence=gap,
                    riseBegin=begin if rise else -2 ** 63, riseBase=(base := float(np.round(hours_of(0)[2] - random.uniform(0.3, 0.6) * height, 3)) if rise else 0.0),
                    riseHighest=base + height, risePeak=peak if rise else 0, riseSpeedBefore=before, riseSpeed=speed, riseSize=size)

    def hours_of(i):
        return hours[i]

    def put(g, s):
        g.rises = list(zip(s["begins"], s["sizes"], s["climbs"]))
        g.wet_sizes, g.dry_sizes, g.dry_count, g.spells = sorted(s["risesWith"]), sorted(s["risesWithout"]), s["countWithout"], s["spells"]
        g.wet_hours, g.dry_hours, g.quiet_hours, g.longest_gap = s["wetHours"], s["dryHours"], s["silentHours"], s["longestSilence"]
        g.rained, g.unknown = s["lastRain"], s["lastUnknown"]
        following = s["riseBegin"] > 0
        g.rise = dict(begin=s["riseBegin"], base=s["riseBase"], top=s["riseHighest"], peak=s["risePeak"], size=s["riseSize"], before=s["riseSpeedBefore"], speed=s["riseSpeed"]) if following else None

    def quick(s, limits):
        g = GaugeSilence(scene.base, Told())
        g.LIMITS = limits
        put(g, s)
        for hour in hours[:3]:
            g.take(*hour)
        g.finish(hours[2][1] + 1)
        return g.book.told

    scenes = []
    for which in GaugeSilence.LIMITS:
        for side in (1, -1):
            for _ in range(6000):
                s = state(which in ("fallen", "longest", "slower", "before", "apart"), which)
                if quick(s, GaugeSilence.LIMITS) != quick(s, further(GaugeSilence.LIMITS, which, side)):
                    text = " ".join(f"{k}={listed(v) if isinstance(v, list) else shown(v)}" for k, v in s.items())
                    scenes.append((scene, text, which if side > 0 else f"{which} from below", scene.told(lambda w, s=s: put(w.silence, s))))
                    break
            else:
                # One rise is told by another rule, whatever is asked of two; those about a day apart are at one hour of the day.
                if (which, side) != ("least", -1) and which != "near":
                    print("no state for", which, side, file=sys.stderr)
    table(folder, "watch-silence-limits", "When rises without rain tell of a silent gauge", scenes)


def clocks(folder):
    """One day more, late by the record; the days before are put."""
    scenes = []
    for late, step, seed in ((0.5, 30, 205), (0.25, 15, 206), (1.0, 30, 205)):
        case = (site(seed=seed, days=17, step=step), storm(60, 8, 2, 0.6, 1.0) + [11, 336, 10 ** 5, late, 0], "UTC", 0.6, 0)
        scene = Scene(case, 370, "watch:hourly-watch", "CLOCK_OF_MONITOR")
        seen = []

        def peep(w):
            w.clock.days.clear()
            w.clock.open = lambda day, small, end: seen.append((w.clock.days[-1], day, end))

        scene.told(peep)
        if not seen:
            continue
        today, day, end = seen[0]
        random = np.random.default_rng(7)
        columns = ("x", "unmoved", "moved", "other", "rest", "scatter", "evening")
        by_depth = today["depth"]
        assert by_depth == by_depth

        def days(which):
            found, gap, scale = [], 0, random.choice([1, 5, 20])
            few = which in ("wide", "near", "apart") or which in ((0, c) for c in range(6))
            for k in range(1 if few else int(random.integers(1, 7))):
                gap += int(random.choice([1, 1, 1, 2, 4]))
                rest = bool(random.random() < 0.25)
                moved = float(np.round(today["moved"] * scale * random.uniform(0.6, 1.5), 5))
                gain = float(np.round(moved * random.uniform(0.1, 0.6), 5))
                found.insert(0, dict(day=day - gap, x=float(np.round(random.uniform(0.19, 0.5) if random.random() < 0.7 else random.uniform(0.5, 1.1), 3)), unmoved=moved + gain, moved=moved,
                                     other=float(np.round(moved * random.uniform(1.05, 1.6), 5)), rest=rest, scatter=float(np.round(random.choice([0.05, 0.12, 0.18]) * random.uniform(0.9, 1.1), 3)),
                                     evening=float(np.round(gain * random.uniform(0.02, 0.3), 6)),
                                     depth=float(np.round(random.uniform(0.05, 0.5), 3)),
                                     evenings=0.0, mornings=0.0))
                share, steep = random.choice([0.4, 0.62, 0.72, 1.05] if which not in ("home", "evening", "holiday", "apart", "near", "most") else [1.1]) * random.uniform(0.97, 1.03), random.choice([0.51, 0.8, 1.0, 1.1]) * random.uniform(0.97, 1.03)
                found[0].update(evenings=float(np.round(share * found[0]["x"], 3)), mornings=float(np.round(steep * found[0]["x"], 3)))
            return found

        def quick(before, limits, rules):
            c = object.__new__(MonitorClock)
            c.base, c.book, c.LIMITS, c.RULES = scene.base, Told(), limits, rules
            c.days, c.tides, c.track, c.closed_soon = before + [today], [], None, 0
            c.moon = type("Moon", (), {"known": lambda self: False, "seen": lambda self: False})()
            # Since when is asked of the states that are chosen.
            c.began = lambda: (0.0, 0.0, 0.0)
            c.open(day, True, end)
            return c.book.told, getattr(c, "late", 0)

        wanted = [("limit", k) for k in MonitorClock.LIMITS if k != "near_by_depth"] + [("rule", (r, c)) for r in range(6) for c in range(6)]
        if late == 1.0:
            wanted = [("limit", k) for k in ("wide", "most", "apart", "near")]
        for kind, which in wanted:
            for _ in range(800):
                before = days(which)
                limits, rules = MonitorClock.LIMITS, [list(r) for r in MonitorClock.RULES]
                if kind == "limit":
                    limits = further(limits, which)
                else:
                    value = rules[which[0]][which[1]]
                    rules[which[0]][which[1]] = value + 1 if which[1] < 3 else value * 1.05
                if quick(before, MonitorClock.LIMITS, MonitorClock.RULES)[0] != quick(before, limits, rules)[0]:
                    text = (f"clockPhasesNumbers={listed([d['day'] for d in before])} "
                            f"clockPhasesValues={listed([float(d[c]) for d in before for c in columns])} "
                            f"clockDepthsNumbers={listed([d['day'] for d in before])} clockDepthsValues={listed([d['depth'] for d in before])} "
                            f"clockEveningsNumbers={listed([d['day'] for d in before])} clockEveningsValues={listed([d['evenings'] for d in before])} "
                            f"clockMorningsNumbers={listed([d['day'] for d in before])} clockMorningsValues={listed([d['mornings'] for d in before])}")
                    about = f"{late} " + kind + " " + (which if kind == "limit" else f"{which[0]} {which[1]}")
                    scenes.append((scene, text, about, scene.told(lambda w, before=before: setattr(w.clock, "days", list(before)))))
                    break
            else:
                print("no state for", late, kind, which, file=sys.stderr)
    table(folder, "watch-clock-limits", "When days that come late tell of a clock", scenes)


def main(folder):
    gauges(folder)
    silences(folder)
    clocks(folder)


if __name__ == "__main__":
    main(sys.argv[1])
