"""Small changes by weeks, from days just within a limit or just beyond, as the page on the watch has them.

    python3 site_slow_limits.py FOLDER

writes the table watch-slow-limits into the folder of the tables of hydraulics. The days of a constructed record are put, and a finding
that is open or over; what its next days then tell is computed by site_watching.py. States are drawn at random and kept where a limit, or
a number or operator of site_slow.py changed by itself, would tell something else. Knows nothing of the library. Python 3.11, numpy 2,
scipy 1.17.
"""

import sys
from pathlib import Path

import numpy as np

import site_slow
from one_change import changed
from site_baselines import site
from site_changes import Book, Finding, shape_of
from site_hours import FIRST_HOUR
from site_limits import NANOS, Scene, further, listed, shown, table
from site_slow import LIMITS, WORDS, Weeks, DOWN, UP
from site_watches import step
from site_watching import Watch

PROGRAM = "site_slow_limits.py"
PART = "watch:hourly-watch/change:change-watch/slow:slow-change"
AT, LAST_DAY = 452, 18
FIRST_DAY = FIRST_HOUR // 24


class Silent:
    """A book that only counts."""

    def open(self, name, since, found):
        track = type("Track", (), {})()
        track.found, track.open, track.returns = found, True, 0
        track.stand_again = lambda time: (setattr(track, "open", True), setattr(track, "returns", track.returns + 1))
        return track

    def tell(self, *event):
        pass


def drawn(random, limit):
    """Days before the last one: some usual, then some that stand away, with gaps."""
    n, away = int(random.integers(13, 34)), int(random.integers(5, 22))
    sign, size = random.choice([-1, 1]), limit * random.choice([random.uniform(0.94, 1.06), random.uniform(1.1, 2.0)])
    later = random.choice([1.0, random.uniform(0.3, 0.6)])
    days = {}
    for k in range(n, 0, -1):
        if k < n and random.random() < random.choice([0.0, 0.3]):
            continue
        x = size if k <= away else 0.0
        if later < 1:
            x = limit * 1.3 if k > 7 else limit * later
        days[FIRST_DAY + LAST_DAY - k] = (float(np.round(sign * x + random.choice([0.0005, 0.004]) * random.standard_normal(), 4)), int(random.integers(8, 25)))
    return days


class Told(Scene):
    """Tells of the findings of every name, or of one, and when they began at the latest, their shape and what moved."""

    def told(self, edit):
        watch = Watch(self.base, self.record, None, (self.at, edit))
        found = [e for e in watch.book.events if self.name in ("-", e[2].names[0])]
        book = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(found)))
        return [len(found), int(book(lambda e: e[0])), book(lambda e: e[2].since - FIRST_HOUR), book(lambda e: e[2].earliest - FIRST_HOUR),
                book(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR), book(lambda e: e[2].latest - FIRST_HOUR), int(book(lambda e: e[2].shape)),
                book(lambda e: float(sum((j + 1) * m[1] for j, m in enumerate(e[2].moved))))]


MORE = [("latest", "h of each times its place"), ("shape", "0 step, 1 ramp, 2 either of each times its place"), ("moved", "changes of each times its place")]
FUNCTIONS = ("block", "drop", "close", "end_day", "look", "go_on", "show", "shape", "sign")
SOURCE = Path(site_slow.__file__).read_text()


class Life(Told):
    """A record whose days go on after a finding was put."""

    def __init__(self, case, at):
        super().__init__(case, at, PART, "-")
        self.calls = []

        def peep(w):
            real = w.changes.small.block
            w.changes.small.block = lambda block, hours, quick: (self.calls.append((block, list(hours), quick)), real(block, hours, quick))

        self.told(peep)
        self.day = (FIRST_HOUR + at - 1) // 24

    def put(self, weeks, state):
        weeks.days, weeks.today, of = dict(state["days"]), self.day, state["track"]
        weeks.track = None
        if of:
            t = weeks.track = Finding(1, WORDS[of["direction"]], of["since"], of["found"])
            t.direction, t.earliest, t.latest, t.closed, t.open, t.returns, t.shape, t.again = (of[k] for k in ("direction", "earliest", "latest", "closed", "open", "returns", "shape", "again"))
            t.past = [(None, of["first_end"])] if of["returns"] else []

    def quick(self, made, state):
        """For the search: what the weeks by themselves tell."""
        book = Book()
        weeks = made.Weeks(self.base, book, shape_of)
        self.put(weeks, state)
        try:
            for call in self.calls:
                weeks.block(*call)
        except Exception:  # whatever a changed rule stumbles over
            return "broken"
        weeks.finish(FIRST_HOUR)
        return repr([(kind, end, t.since, t.earliest, t.latest, t.shape, t.direction, t.open, t.closed, t.returns, [round(m[1], 9) for m in t.moved]) for kind, end, t in book.events])


def life(random, scene, limit):
    """Days that stood away some time ago, with a finding that is open, or over, of one way or the other, at times about its limits."""
    of = lambda *those: those[int(random.integers(0, len(those)))]
    n, away = of(16, 22, 40, 90, 118, 119, 120), of(0, 3, 6, 7, 8, 11, 13, 20, 60)
    sign, size, after = of(-1, 1), limit * of(1.06, 1.3, 2.0), of(0.0, 0.0, 0.46, 0.54, 0.96, 1.04)
    noise, holes, slope = of(0.0005, 0.004), of(0.0, 0.0, 0.3), of(0, 0, 1)
    back = of(0, 3, 5, 7, 8, 9, 10)
    days = {}
    for k in range(n, 0, -1):
        if k < n and k > 1 and random.random() < holes:
            continue
        x = 0.0 if k > away + back else after * limit if k <= back else size * (min(1.0, (away + back - k + 1) / away) if slope else 1.0)
        days[scene.day - k] = (float(np.round(sign * x + noise * random.standard_normal(), 4)), int(random.integers(8, 25)))
    hour = 24 * scene.day + 3
    found = hour - 24 * of(1, 5, 26, 27, 28, 29, 30, 31, 60, 150)
    since = found - 24 * of(1, 6, 15)
    track = dict(direction=UP if sign * of(1, 1, 1, -1) > 0 else DOWN, since=since, earliest=since - 24, latest=since + 24, found=found, shape=of(0, 1, 2),
                 open=of(True, True, False), closed=None, returns=of(0, 0, 0, 1))
    track["again"], track["first_end"] = (found + 72, found + 24) if track["returns"] else (None, None)
    if not track["open"]:
        track["closed"] = max(track["again"] or found, hour - 24 * of(2, 38, 39, 40, 41, 42, 43))
    return dict(days=days, track=track if random.random() < 0.8 else None)


def text_of(state):
    days, of, path = state["days"], state["track"], "track:finding/"
    pairs = [f"daysNumbers={listed(list(days))}", f"daysValues={listed([v for day in days.values() for v in day])}"]
    if of:
        times = [int(t) * NANOS for t in (of["since"], of["earliest"], of["latest"], of["found"], of["closed"] or 0, of["again"] or 0)]
        pairs += [path + p for p in ("number=1", f"names={WORDS[of['direction']]};", f"direction={('UP', 'DOWN')[of['direction']]}", f"shape={('STEP', 'RAMP', 'UNCERTAIN')[of['shape']]}",
                                     f"times={listed(times)}", f"open={str(of['open']).lower()}",
                                     f"stretches={listed([int(of['since']) * NANOS, int(of['first_end']) * NANOS] if of['returns'] else [])}", "falls=;", "moved=;", "alarm=", "soffit=", "detail=")]
    return " ".join(pairs)


def lives():
    """Some records: days as usual, some of them nearly without readings; a quick change while a small one stands."""
    few = [c for h, n in ((458, 17), (482, 16), (507, 14)) for c in (4, h, h + n, 0, 0)]
    records = {"as usual": [], "few readings": few, "a quick change": step(515, 1.3, 0.6), "a little lower": [1, 452, 10 ** 5, 0.955, 0.955]}
    left = None
    for number, (about, changes) in enumerate(records.items()):
        scene = Life((site(seed=273 + number, days=27, step=60, parted=0.01), changes, "UTC", 0.6, 0), AT)
        limit, random, taken, idle = Weeks(scene.base, None, shape_of).limit(), np.random.default_rng(31 + number), 0, 0
        if left is None:
            left = {i: changed(SOURCE, FUNCTIONS, i)[0] for i in range(changed(SOURCE, FUNCTIONS, -1)[1])}
            seen_by = {i: 0 for i in left}
        while idle < 16 and taken < 14:
            state = life(random, scene, limit)
            answer = scene.quick(site_slow, state)
            new = [i for i, made in left.items() if seen_by[i] < 2 and scene.quick(made, state) != answer]
            if not [i for i in new if not seen_by[i]] and (len(new) < 2 or idle < 8):
                idle += 1
                continue
            idle, taken = 0, taken + 1
            for i in new:
                seen_by[i] += 1
            yield scene, text_of(state), about, scene.told(lambda w, state=state: scene.put(w.changes.small, state))
        print(number, taken, "not", sorted(i for i in left if not seen_by[i]), "of", len(left), file=sys.stderr)


def main(folder):
    random, scenes = np.random.default_rng(29), []
    for seed, noise, wanted in ((271, 0.0, ["least", "days", "least_days", "within", "now", "over"]), (272, 0.07, ["scatters", "days", "over"])):
        case = (site(seed=seed, days=20, step=60, parted=0.01 + noise), [], "UTC", 0.6, 0)
        last = []

        def peep(w):
            end_day = w.changes.small.end_day
            w.changes.small.end_day = lambda hours, end: (end_day(hours, end), last.append((w.changes.small.days[w.changes.small.today], end)))

        scene = Told(case, AT, PART, WORDS[DOWN])
        scene.told(peep)
        (value, end), base = last[0], scene.base
        left = [w for w in wanted for _ in range(2)]

        def answer(days, limits):
            w = Weeks(base, Silent(), shape_of, limits)
            w.today, w.days = FIRST_DAY + LAST_DAY, {**days, FIRST_DAY + LAST_DAY: value}
            w.look(end)
            return None if w.track is None else (w.track.direction, w.track.since, w.track.earliest)

        for _ in range(20000):
            days = drawn(random, Weeks(base, Silent(), shape_of).limit())
            told = answer(days, LIMITS)
            seen = sorted({w for w in set(left) if answer(days, further(LIMITS, w)) != told})
            if not seen:
                continue
            for w in seen:
                left.remove(w)
            one = Told(case, AT, PART, WORDS[told[0] if told else DOWN])
            put = f"daysNumbers={listed(list(days))} daysValues={listed([v for day in days.values() for v in day])}"

            def edit(w, days=days):
                w.changes.small.days = dict(days)

            scenes.append((one, put, " ".join(seen), one.told(edit)))
            if not left:
                break
        print(seed, base.day_scatter, len(scenes), "no state for", left, file=sys.stderr)
    table(folder, "watch-slow-limits", "Small changes of the velocity at its depth, from days on their limits", scenes + list(lives()), PROGRAM, MORE)


if __name__ == "__main__":
    main(sys.argv[1])
