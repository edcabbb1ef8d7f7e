"""A level alone that leaps within what is open, from states just within a limit or just beyond, as the page on the watch has it.

    python3 site_leap_limits.py FOLDER

writes the table watch-leap-limits into the folder of the tables of hydraulics. Hours were put into the state of a watch of levels; what
it tells and keeps is computed by site_watching.py, which knows nothing of the library. Hours are drawn at random and kept where a limit
5 % larger, or one more, would answer otherwise. Python 3.11, numpy 2, scipy 1.17.
"""

import copy
import sys

import numpy as np

from own_tables import write
from site_baselines import site, storm
from site_changes import Book
from site_hours import FIRST_HOUR, NAN, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import further, listed, shown
from site_recipes import Record
from site_watches import LEVEL_ONLY, place, ramp, step
from site_watching import LevelLeap, Watch

PROGRAM = "site_leap_limits.py"
PART = "watch:hourly-watch/levelStep:level-step"
KEPT = {"leap": "leap", "size": "size", "before": "before", "usual": "usualValues", "hours": "hoursValues"}
NEVER = -2 ** 63


class Scene:
    """A level in a season, watched up to an hour after which blocks of three hours end; it ends an hour later."""

    def __init__(self, recipe, changes, at):
        self.case, self.at = (recipe, LEVEL_ONLY + changes + [4, at + 1, 10 ** 5, 0, 0], "UTC", 0.6, 0), at
        self.record = Record(self.case[0], self.case[1])
        self.base = learn(self.record, Pipe(0.6), "UTC")[0]
        self.calls, self.number = [], 0

        def peep(w):
            self.number, self.track = w.book.last, copy.deepcopy(w.leap.track)
            take = w.leap.take
            w.leap.take = lambda *of: (self.calls.append(of), take(*of))

        Watch(self.base, self.record, None, (at, peep))
        self.now = self.calls[0][0]

    def answer(self, s, limits, whole=False):
        leap = LevelLeap(Book())
        leap.book.last, leap.track, leap.LIMITS = self.number, copy.deepcopy(self.track), limits
        put(leap, s)
        leap.take(*self.calls[0])
        so_far = {"leap": NEVER if leap.leap is None else leap.leap, "size": leap.size, "before": leap.before, "usual": book(leap.usual),
                  "hours": book(v for h in sorted(leap.rows)[-396:] for v in (leap.rows[h][0], leap.rows[h][1], float(leap.rows[h][2])))}
        leap.take(*self.calls[1])
        leap.finish(FIRST_HOUR + self.at + 1)
        return leap.book.events, so_far

    def checked(self, s):
        """What the whole watch tells of it."""
        watch = Watch(self.base, self.record, None, (self.at, lambda w: put(w.leap, s)))
        events = self.answer(s, LevelLeap.LIMITS)[0]
        mine = [(k, t, f.since, f.closed) for k, t, f in watch.book.events if f.number in {e[2].number for e in events} or f.names == ["LEVEL_UP"] and f.number > self.number]
        assert mine == [(k, t, f.since, f.closed) for k, t, f in events], (mine, events)
        return watch.book.events


book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))


def put(leap, s):
    leap.rows = {n: (x, rain, other > 0) for n, (x, rain, other) in s["hours"]}
    leap.usual, leap.leap, leap.size, leap.before = list(s["usual"]), s["leap"], s["size"], s["before"]


def text(s, now):
    numbers = listed([n for n, _ in s["hours"]])
    values = listed([float(v) for _, row in s["hours"] for v in row]).replace("nan;", "NaN;").replace("0.0;", "0;").replace("1.0;", "1;")
    usual = listed([now // 24 * 24 - 24 * (len(s["usual"]) - i) for i in range(len(s["usual"]))])
    return (f"hoursNumbers={numbers} hoursValues={values} usualNumbers={usual} usualValues={listed([float(v) for v in s['usual']])} "
            f"leap={NEVER if s['leap'] is None else s['leap']} size={shown(s['size'])} before={shown(s['before'])}")


def drawn(random, scene):
    now, k, is_open = scene.now, LevelLeap.LIMITS, scene.track is not None and scene.track.open
    of = lambda *those: those[int(random.integers(0, len(those)))]
    near = lambda x: x * random.uniform(0.955, 1.045)
    end = now + 1
    asked = not is_open and random.random() < 0.3
    when = end - (of(71, 72, 73, 75, 96, 239, 240, 241) if asked else 24)
    tight = of("least", "largest", "scatters", "prior", "rain", "at_once", "share", "pairs", "about", "back", "quarter", "many")
    tight = "pairs" if asked and end - when > 200 else tight
    with_days = {"least": (0.005, 60), "scatters": (0.05, 50), "prior": (0.03, 4)}.get(tight, (0.01, of(0, 5, 20)))
    usual = np.round(with_days[0] * random.standard_normal(with_days[1]), 3).tolist()
    n, scatter = len(usual), float(np.median(np.abs(usual))) / 0.6745 if usual else 0.0
    limit = max(0.12, 4 * np.sqrt((8 * 0.04 ** 2 + n * scatter ** 2) / (8 + n)))
    size = float(np.round(near(0.8) if tight == "largest" else near(limit) if tight in ("least", "scatters", "prior") else 0.4, 3))
    after = size * (near(0.6) if asked and tight in ("share", "quarter", "least", "prior") else 0.9 if asked else 1)
    noise = of(0.0, 0.0005)
    quarter, about = tight in ("share", "quarter"), near(0.7) if tight == "at_once" else 1
    gone, known = 0.4 if tight == "many" else 0.0, of(2, 3, 4) if tight == "about" else 24
    pairs = of(7, 8, 9) if tight == "pairs" else 24
    rain = near(0.8) / 2 if tight == "rain" else 0.0
    back = of(2, 5, 6) if tight == "back" else 1
    first_wet, short = when - 12 - of(0, 0, 1), of(0, 6) if tight == "back" else 0
    rows = []
    for h in range(when - 148, now):
        x = 0.3 + noise * random.standard_normal()
        if h >= when:
            x += after
            if not asked and (h - when) % 4 == 1 and quarter:
                x -= after * (1 - near(0.6))
            if not asked and h - when < 6 and tight == "at_once":
                x += (about - 1) * size
            if not asked and h - when >= 24 - (24 - pairs) and pairs < 24 or asked and end - h > pairs:
                x = NAN
            if h - when < 6 and h - when >= known:
                x = NAN
        elif h >= when - 24 * (back - 1) - short:
            x = NAN if back > 1 else x
        if h < when and random.random() < gone:
            x = NAN
        fall = rain if h in (first_wet, when + 20) and not asked else 0.0
        rows.append((h, [float(np.round(x, 3)), fall, 1.0]))
    if random.random() < 0.15 and not asked:
        rows = [(h, [x, NAN if h == when - of(12, 13) else r, o]) for h, (x, r, o) in rows]
    if random.random() < 0.15:
        rows = [(h, [x, r, 0.0 if h == when - 1 else o]) for h, (x, r, o) in rows]
    before = 0.3
    if is_open:
        size, before = 0.3, float(np.round(0.3 - 0.25 * 0.3 * of(near(1), near(1), 0.5), 3))
        count = of(7, 8, 9, 40)
        rows = [(h, [x if end - h <= count + 1 else NAN, r, o]) for h, (x, r, o) in [(h, [0.3, r, o]) for h, (x, r, o) in rows][-60:]]
        if random.random() < 0.3:
            rows = [(h, [0.3 if end - h in (47, 48) or end - h < 7 else 0.9 if end - h > 48 else NAN, r, o]) for h, (x, r, o) in rows]
    return dict(hours=rows, usual=usual, leap=when if asked else None, size=size if asked or is_open else 0.0, before=before if is_open else 0.0)


def scenes():
    first = storm(60, 8, 2, 0.6, 1.0)
    of = lambda seed, days=20: site(seed=seed, days=days, step=60, noise=0.01, hourly=0.01, daily=0.01)
    yield Scene(of(311), first + ramp(370, 400, 1.35), 456)
    yield Scene(of(312), first + ramp(370, 400, 1.35), 465)
    yield Scene(of(313, 26), first + ramp(370, 440, 1.35) + step(500, 1.3), 600)


def main(folder):
    rows, left = [], {k: 3 for k in LevelLeap.LIMITS}
    for i, scene in enumerate(scenes()):
        random = np.random.default_rng(61 + i)
        is_open = scene.track is not None and scene.track.open

        def shown_of(s, limits):
            events, so_far = scene.answer(s, limits)
            return repr([(k, t, f.since, f.closed) for k, t, f in events]) + repr(so_far)

        taken = 0
        for trial in range(TRIES):
            s = drawn(random, scene)
            usual = shown_of(s, LevelLeap.LIMITS)
            seen = [k for k in left if shown_of(s, further(LevelLeap.LIMITS, k)) != usual]
            if not seen and trial % 25:
                continue
            for k in seen:
                left[k] -= 1
            left = {k: n for k, n in left.items() if n > 0}
            events, so_far = scene.answer(s, LevelLeap.LIMITS)
            everything = scene.checked(s)
            mine = [e for e in everything if e[2].names[0] == "LEVEL_UP"]
            total = lambda of: float(sum((j + 1) * of(e) for j, e in enumerate(mine)))
            rows.append(place(scene.case) + [scene.at, PART, text(s, scene.now), "LEVEL_UP", scene.at + 1, " ".join(seen) or "as it came"]
                        + [len(mine), int(total(lambda e: e[0])), total(lambda e: e[2].since - FIRST_HOUR), total(lambda e: e[2].earliest - FIRST_HOUR),
                           total(lambda e: e[2].latest - FIRST_HOUR), total(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR)] + [so_far[n] for n in KEPT])
            taken += 1
            if not left and taken > 6:
                break
        print(scene.at, is_open, taken, "left", left, file=sys.stderr, flush=True)
    asked = [("events", "count"), ("kinds", "kind"), ("since", "h"), ("earliest", "h"), ("latest", "h"), ("closed", "h")]
    write(folder, PROGRAM, "watch-leap-limits", "A level alone that leaps within a season, from states on its limits",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "the limits")]
          + [(n, u if n == "events" else f"{u} of each times its place") for n, u in asked] + [(n, "as kept, or the sum of all, each times its place") for n in KEPT],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.part = word {PART}", f"input.key = word {key}", f"input.which = {0 if n in ('leap', 'size', 'before') else -1}") for n, key in KEPT.items()],
          rows, tolerance="1e-9 relative or 1e-9", reason="16 digits are given; sums of some hundred numbers")


TRIES = 160

if __name__ == "__main__":
    main(sys.argv[1])
