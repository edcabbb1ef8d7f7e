"""When a change is told: states in which one number of the rule more or less would tell something else.

    python3 site_detection_limits.py FOLDER

writes the table watch-detection-limits into the folder of the tables of hydraulics. A watch goes on from its state, in which hours,
blocks, sums and votes were put; what it then tells and keeps is computed by site_changes.py, which knows nothing of the library.
States are drawn at random and kept where one of the numbers or operators of site_changes.py, changed by itself, would answer otherwise.
Python 3.11, numpy 2, scipy 1.17.
"""

import copy
import sys

import numpy as np

from one_change import module
from own_tables import write
from site_baselines import site, storm
from site_changes import NAMES, D, Q, R, U
from site_hours import FIRST_HOUR, NAN, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import listed, shown
from site_recipes import Record
from site_watches import CHANGE, EVER, LEVEL_ONLY, place
from site_watching import Watch

PROGRAM = "site_detection_limits.py"
HOURS = 2


class Scene:
    def __init__(self, case, at):
        self.case, self.at = case, at
        self.record = Record(case[0], case[1])
        self.base = learn(self.record, Pipe(case[3]), case[2])[0]
        self.calls = []

        def peep(w):
            c = w.changes
            self.before, self.tide = copy.copy(c), c.tide
            self.before.track = copy.deepcopy(c.track)
            hour, block = c.hour, c.block
            c.hour = lambda number, row: (self.calls.append(("hour", number, row)), hour(number, row))
            c.block = lambda number: (self.calls.append(("block", number)), block(number))

        Watch(self.base, self.record, case[4] or None, (at, peep))
        self.calls = self.calls[:HOURS + HOURS // 3]

    def answer(self, made, state, hours=HOURS):
        """What the changes alone tell and keep."""
        c = object.__new__(made.Changes)
        c.__dict__.update(self.before.__dict__)
        c.book = made.Book()
        c.book.last = self.before.book.last
        if c.near:
            c.near, c.settled = made.Rays(self.base, 0.5, 0.03, 0.04), made.Rays(self.base, 0.1, 0.02, 0.03)
        if c.track:
            c.track = made.Finding(0, "", 0, 0)
            c.track.__dict__.update(copy.deepcopy(self.before.track.__dict__))
        put(c, state)
        try:
            for name, *of in self.calls[:hours + hours // 3]:
                getattr(c, name)(*of)
        except Exception:  # whatever a changed rule stumbles over
            return "broken"
        return told(c.book.events), [round(float(v), 9) for v in kept(c).values()]


def told(events):
    return [(k, t, tuple(f.names), f.shape, f.since, f.earliest, f.latest, f.closed, len(f.falls), f.every, f.alarm, f.soffit, f.direction) for k, t, f in events]


def kept(c):
    book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))
    return {"sums": book(c.sums.flatten()), "largest": float(c.largest), "stands": book(c.stands), "votes": book([-1 if v is None else v for v in c.votes]),
            "origin": book(c.origin), "weak": book(c.weak.flatten())}


KEYS = {"sums": "sums", "largest": "largest", "stands": "stands", "votes": "votes", "origin": "origin", "weak": "weak"}


def put(c, s):
    c.hours = [(n, np.array(row)) for n, row in s["hours"]]
    c.blocks = [(n, np.array(row)) for n, row in s["blocks"]]
    c.sums, c.starts, c.weak = np.array(s["sums"]), np.array(s["starts"]), np.array(s["weak"])
    c.last_dry = s["last_dry"]
    if c.is_open():
        c.start = c.seen = s["start"]
        c.opened, c.largest, c.risen = s["opened"], s["largest"], s["risen"]
        c.votes, c.stands = list(s["votes"]), np.array(s["stands"])


def text(s, is_open):
    flat = lambda rows: listed([float(v) for _, row in rows for v in row]).replace("nan;", "NaN;")
    of = dict(hourNumbers=listed([n for n, _ in s["hours"]]), hourValues=flat(s["hours"]), blockNumbers=listed([n for n, _ in s["blocks"]]), blockValues=flat(s["blocks"]),
              sums=listed([float(v) for v in np.array(s["sums"]).flatten()]), starts=listed([int(v) for v in np.array(s["starts"]).flatten()]),
              weak=listed([int(v) for v in np.array(s["weak"]).flatten()]), lastDryBlock=shown(s["last_dry"]))
    if is_open:
        of.update(blocksOfTrack=listed([s["start"], s["opened"], 0]), seenFrom=shown(s["start"]), largest=shown(s["largest"]), risen=str(s["risen"]).lower(),
                  votes=listed([-1 if v is None else v for v in s["votes"]]), stands=listed([float(v) for v in s["stands"]]))
    return " ".join(f"{k}={v}" for k, v in of.items())


def drawn(random, scene):
    c, base, now = scene.before, scene.base, FIRST_HOUR + scene.at - 1
    block, s = now // 3, np.array([x if x > 0 else 0.1 for x in base.scale])
    law = base.law is not None
    near = lambda x: x * random.uniform(0.94, 1.06)
    k, b = (base.kappa, base.law.exponent) if law else (1.0, 0.5)
    rays = [(1, -k), (-1, k), (1, b), (-1, -b), (1, 0), (-1, 0), (0, -1), (0, 1)]
    ray = rays[int(random.integers(0, 8))]
    size, noise = random.choice([0.5, 1, 1.5, 2.5, 4]) * random.uniform(0.8, 1.2), random.choice([0.05, 0.15, 0.4])
    away = np.array([ray[1] - b * ray[0], ray[0], ray[1], ray[0] * k + ray[1]]) * size * s[D]
    wet = random.choice([0.0, 0.3, 0.9])

    def row(share):
        x = base.centre + share * away + noise * s * random.standard_normal(4)
        if random.random() < wet:
            x[[D, U, Q]] = NAN
        if not law:
            x[[R, U, Q]] = NAN
        return x

    if c.is_open():
        length = int(random.choice([random.integers(241, 245), random.integers(222, 228) + 18, random.integers(250, 300)]))
        start = block - length
        opened = block - int(random.choice([min(length, int(random.integers(1, 20))), random.integers(1, length + 1), min(length, int(random.integers(78, 84)))]))
    else:
        length, start, opened = int(random.choice([2, 4, 12, 40, 110])), 0, 0
        start = block - length
    grows = random.random() < 0.4
    of_hour = lambda n: 0.0 if n < 3 * start else min(1.0, (n - 3 * start) / (3 * length)) if grows else 1.0
    first = now - int(random.choice([60, 60, 150, 240] if c.is_open() else [200]))
    hours = [(n, row(of_hour(n))) for n in range(first, now)]
    hours = [(n, np.append(x, x[R] + 0.3 * noise * s[R] * random.standard_normal())) for n, x in hours]
    quantity, sign = int(random.choice([R, R, R, D])) if law else D, random.choice([-1, 1])
    if not c.is_open() and random.random() < 0.9:
        # What a full sum, or one of the velocity at its depth that grows, is asked: the last spans of hours stand away by so much.
        u = lambda x: x * random.uniform(0.955, 1.045)
        high = u(3)
        days = int(random.integers(1, 8))
        span, steps = {0: (6, [u(3.5), 1.0]), 1: (6, [high, high - u(0.7), high - u(0.7) - u(0.7)]), 2: (6, [3.2, 2.0, u(0.75)]), 3: (9, [u(2), 0.85]), 4: (9, [1.85 + u(0.3), u(0.75)]),
                       5: (9, [2.5, 2.5 - u(1)]), 6: (24, [u((3, 2.5, 2.2, 1.9, 1.6, 1.3, 1.0)[days - 1])] * days), 7: (24, [1.1] * 6 + [u(0.75)]),
                       8: (24, [u(1.0)] * 2)}[8 if quantity == D else int(random.choice([0, 1, 2, 3, 4, 5, 6, 6, 6, 6, 6, 7]))]
        for j, (n, x) in enumerate(reversed(hours)):
            if j // span < len(steps):
                x[quantity] = base.centre[quantity] + sign * s[quantity] * (steps[j // span] + 0.002 * random.standard_normal())
    far = int(random.choice([20, 60, 100, 130]))
    blocks = [(n, row(of_hour(3 * n)) - base.centre) for n in range(max(block - far, start - 96), block - 1)]
    if c.is_open() and random.random() < 0.5:
        # The last two days about where it is over; or falls; or a rise of the level.
        kind = random.integers(0, 3)
        limit = [near(random.choice([0.0, 0.2, 0.3 if q == c.channel else 0.9])) for q in range(4)]
        known, low = int(random.choice([2, 3, 4, 16])), int(random.integers(1, 5))
        for j, (n, x) in enumerate(reversed(blocks)):
            if kind == 0 and j < 15:
                x[:] = [random.choice([-1, 1]) * l * t + 0.002 * random.standard_normal() for l, t in zip(limit, s)]
                if j >= known:
                    x[[D, U, Q] if random.random() < 0.7 else [R, D, U, Q]] = NAN
            if kind == 1 and law:
                x[R] = c.sign * s[R] * (near(0.3) if j < low else near(random.choice([0.75, 0.9, 1.3])) if j < 24 else 1.0)
    votes = [int(random.integers(0, 8)) if random.random() < 0.3 else int(random.choice([0, 2])) for _ in range(int(random.choice([7, 10, 30, 224])))]
    weight = float(np.round(random.choice([48.5, 49.5, 50.5, 52.0, 20.0, 70.0]), 2))
    stand = np.array([away[D], away[U], 1.0, (away[U] - b * away[D]) * random.choice([0.2, 0.4, 1.0])]) * weight
    sums = np.zeros((4, 2))
    for q in range(4) if law else (D,):
        sums[q, int(random.integers(0, 2))] = random.choice([0.0, 0.0, 3.1, 7.05, 7.3, 2.95, 6.9]) + random.choice([0.0, 0.1])
    if not c.is_open():
        sums[quantity, int(sign < 0)] = random.choice([3.14, 7.14, 7.2, 7.3] if quantity == R else [7.14, 7.3])
    starts = block - np.array(random.choice([2, 10, 40, 111, 112, 113], (4, 2)))
    exact = lambda rows: [(n, [float(np.round(v, 3)) for v in x]) for n, x in rows]
    return dict(hours=exact(hours), blocks=exact(blocks), sums=np.round(sums, 3).tolist(), starts=starts.tolist(), weak=random.integers(0, 4, (4, 2)).tolist(),
                last_dry=int(block - random.choice([1, 79, 80, 81, 82])), start=int(start), opened=int(opened), largest=float(np.round(near(random.choice([1.0, 2.0, 3.0, 4.0])), 3)),
                risen=bool(random.random() < 0.7), votes=votes, stands=[float(np.round(v, 4)) for v in stand])


DETECT = ("quick", "days", "grown", "median", "hour", "add", "told", "begin", "comes_back", "end_block", "block", "last_day")
RECORDS = [
    ((site(seed=281, days=18, step=60), storm(60, 8, 2, 0.6, 1.0), "UTC", 0.6, 0), 421, DETECT, 420),
    ((site(seed=282, days=18, step=60), LEVEL_ONLY, "UTC", 0.6, 0), 421, DETECT, 60),
]


def rows_of(records, seed, hours):
    """States of each record that tell what others do not yet."""
    rows, made = [], {}
    for case, at, functions, tries in records:
        random, seed = np.random.default_rng(seed), seed + 1
        scene = Scene(case, at)
        if functions not in made:
            made[functions] = {i: module(functions, i)[0] for i in range(module(functions, -1)[1])}
        plain = module((), -1)[0]
        for _ in range(tries):
            state = drawn(random, scene)
            usual = scene.answer(plain, state, hours)
            seen = [] if usual == "broken" else [i for i, m in made[functions].items() if scene.answer(m, state, hours) != usual]
            if not seen:
                continue
            made[functions] = {i: m for i, m in made[functions].items() if i not in seen}

            watch = Watch(scene.base, scene.record, case[4] or None, (at, lambda w: put(w.changes, state)))
            events = watch.book.events
            book = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(events)))
            rows.append(place(case) + [at, CHANGE, text(state, scene.before.is_open()), "-", EVER, f"{len(seen)} numbers"]
                        + [len(events), int(book(lambda e: e[0])), book(lambda e: e[2].since - FIRST_HOUR), book(lambda e: e[2].earliest - FIRST_HOUR),
                           book(lambda e: e[2].latest - FIRST_HOUR), book(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR),
                           book(lambda e: float(sum((j + 1) * PLACE[n] for j, n in enumerate(e[2].names)))), book(lambda e: e[2].shape), book(lambda e: len(e[2].falls)),
                           book(lambda e: float(sum((j + 1) * m[1] for j, m in enumerate(e[2].moved)))),
                           book(lambda e: sum(t - FIRST_HOUR for goal in (e[2].alarm, e[2].soffit) if goal for t in goal))]
                        + [watch.kept_changes[n] for n in KEYS])
        print(at, len(rows), "left", sorted(made[functions]), file=sys.stderr, flush=True)
    return rows


def save(folder, program, name, title, rows):
    asked = [("events", "count"), ("kinds", "kind"), ("since", "h"), ("earliest", "h"), ("latest", "h"), ("closed", "h"), ("names", "place of each name"), ("shape", "0 step, 1 ramp, 2 either"),
             ("falls", "count"), ("moved", "changes"), ("forecasts", "h")]
    write(folder, program, name, title,
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what would change it")]
          + [(n, u if n == "events" else f"{u} of each times its place") for n, u in asked] + [(n, "as kept") for n in KEYS],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.part = word {CHANGE}", f"input.key = word {key}", f"input.which = {0 if n == 'largest' else -1}") for n, key in KEYS.items()], rows,
          tolerance="1e-8 relative or 1e-6", reason="16 digits are given; whole hours and shares of an hour")


def main(folder):
    save(folder, PROGRAM, "watch-detection-limits", "When a change is told, from states on its limits", rows_of(RECORDS, 31, HOURS))


PLACE = {n: i for i, n in enumerate(NAMES[:NAMES.index("OUT_OF_RANGE") + 1] + ["DEPTH_UNIT", "VELOCITY_UNIT"] + NAMES[NAMES.index("OUT_OF_RANGE") + 1:])}

if __name__ == "__main__":
    main(sys.argv[1])
