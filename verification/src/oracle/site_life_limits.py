"""The life of a finding from states on its limits: when it is over or falls, how it began, what it is called, what comes back.

    python3 site_life_limits.py FOLDER

writes the table watch-life-limits into the folder of the tables of hydraulics. A watch with an open finding, or one that is over, goes
on from its state, in which hours, blocks, votes and times were put; what it then tells and keeps is computed by site_changes.py, which
knows nothing of the library. States are drawn at random and kept where one of the numbers or operators of site_changes.py, changed by
itself, would answer otherwise. Python 3.11, numpy 2, scipy 1.17.
"""

import copy
import math
import sys

import numpy as np

from one_change import module
from own_tables import write
from site_baselines import site, storm
from site_changes import D, Q, R, STEP, U
from site_detection_limits import PLACE, told
from site_hours import FIRST_HOUR, NAN, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import listed, shown
from site_recipes import Record
from site_watches import CHANGE, LEVEL_ONLY, place, step
from site_watching import Watch

PROGRAM = "site_life_limits.py"
book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))
KEPT = {"sums": "sums", "largest": "largest", "stands": "stands", "votes": "votes", "origin": "origin", "weak": "weak", "blocks": "blockValues", "times": "blocksOfTrack",
        "across": "across", "named": "named", "seen": "seenFrom", "risen": "risen", "may_be_water": "mayBeWater", "rests": "rests"}
ONE = ("largest", "named", "seen", "risen", "may_be_water", "rests")
PLACE_OF = lambda ray: -1 if ray is None else ray


def kept(c):
    return {"sums": book(c.sums.flatten()), "largest": float(c.largest), "stands": book(c.stands), "votes": book([PLACE_OF(v) for v in c.votes]), "origin": book(c.origin),
            "weak": book(c.weak.flatten()), "blocks": book(np.concatenate([b[1] for b in c.blocks] or [[]])), "times": book([c.start, c.opened, c.closed]),
            "across": book([PLACE_OF(c.across), PLACE_OF(c.across_too)]), "named": PLACE_OF(c.named), "seen": c.seen, "risen": int(c.risen), "may_be_water": int(c.may_be_water),
            "rests": int(c.rests)}


class Scene:
    """One record, watched up to the first hour of a block; it ends an hour later."""

    CALLS = ("hour", "block")
    ERRORS = ((0.5, 0.03, 0.04), (0.1, 0.02, 0.03))

    def __init__(self, recipe, changes, at, alarm):
        self.errors = self.ERRORS
        self.case, self.at = (recipe, list(changes) + [4, at + 1, 10 ** 5, 0, 0], "UTC", 0.6, alarm), at
        self.record = Record(self.case[0], self.case[1])
        self.base = learn(self.record, Pipe(0.6), "UTC")[0]
        self.calls = []

        def peep(w):
            c = w.changes
            self.before = copy.copy(c)
            self.before.track, self.before.other = copy.deepcopy(c.track), copy.deepcopy(c.other)
            for name in ("sums", "starts", "weak", "stands", "origin", "votes"):
                setattr(self.before, name, copy.copy(getattr(c, name)))
            for name in self.CALLS:
                setattr(c, name, lambda *of, name=name, real=getattr(c, name): (self.calls.append((name, *of)), real(*of)))

        Watch(self.base, self.record, alarm or None, (at, peep))
        self.block = (FIRST_HOUR + at - 1) // 3 - 1

    def changes(self, made, state):
        c = object.__new__(made.Changes)
        c.__dict__.update(self.before.__dict__)
        c.votes = list(c.votes)
        for name in ("sums", "starts", "weak", "stands", "origin"):
            setattr(c, name, np.array(getattr(c, name)))
        c.book = made.Book()
        c.book.last = self.before.book.last
        if c.near:
            c.near, c.settled = (made.Rays(self.base, *of) for of in self.errors)
        finding = lambda of: of and (lambda new: (new.__dict__.update(copy.deepcopy(of.__dict__)), new)[1])(made.Finding(0, "", 0, 0))
        c.track = finding(self.before.track)
        c.other = dict(self.before.other, track=finding(self.before.other["track"]), votes=list(self.before.other["votes"]))
        self.put(c, state)
        return c

    def put(self, c, state):
        put(c, state)

    def answer(self, made, state):
        c = self.changes(made, state)
        for name, *of in self.calls[:self.first()]:
            getattr(c, name)(*of)
        so_far = self.kept(c)
        for name, *of in self.calls[self.first():]:
            getattr(c, name)(*of)
        c.finish(FIRST_HOUR + self.at + 1)
        return c.book.events, so_far

    def kept(self, c):
        return kept(c)

    def first(self):
        """How many calls belong to the first hour."""
        return 2

    def compared(self, made, state):
        """For the search."""
        try:
            events, so_far = self.answer(made, state)
        except Exception:  # whatever a changed rule stumbles over
            return "broken"
        moved = [tuple(round(m[1], 9) for m in e[2].moved) for e in events]
        return repr((told(events), [round(float(v), 9) for v in so_far.values()], moved))

    def checked(self, state):
        """The same by the whole watch: nothing else tells anything."""
        watch = Watch(self.base, self.record, self.case[4] or None, (self.at, lambda w: self.put(w.changes, state)))
        events, so_far = self.answer(sys.modules["site_changes"], state)
        assert told(watch.book.events) == told(events), (told(watch.book.events), told(events))


def put(c, s):
    c.hours = [(n, np.array(row)) for n, row in s["hours"]]
    c.blocks = [(n, np.array(row)) for n, row in s["blocks"]]
    for name in ("sums", "starts", "weak", "stands", "origin"):
        setattr(c, name, np.array(s[name], dtype=int if name in ("starts", "weak") else float))
    for name in ("start", "opened", "closed", "seen", "largest", "risen", "water_until", "may_be_water", "named", "across", "across_too", "last_dry"):
        setattr(c, name, s[name])
    c.votes = list(s["votes"])
    c.spell, c.spell_told, c.spell_at, c.spell_stands, c.shut, c.apart_from = s["start"], s["opened"], 0, c.stands.copy(), None, -10 ** 12


def text(s):
    flat = lambda rows: listed([float(v) for _, row in rows for v in row]).replace("nan;", "NaN;")
    of = dict(hourNumbers=listed([n for n, _ in s["hours"]]), hourValues=flat(s["hours"]), blockNumbers=listed([n for n, _ in s["blocks"]]), blockValues=flat(s["blocks"]),
              blocksOfTrack=listed([s["start"], s["opened"], s["closed"]]), spell=listed([s["start"], s["opened"], 0, -10 ** 12]), closedAs="",
              spellStands=listed([float(v) for v in np.array(s["stands"]).flatten()]), seenFrom=shown(s["seen"]), largest=shown(s["largest"]), risen=str(s["risen"]).lower(),
              votes=listed([PLACE_OF(v) for v in s["votes"]]), across=listed([PLACE_OF(s["across"]), PLACE_OF(s["across_too"])]), named=shown(PLACE_OF(s["named"])),
              waterUntil=shown(s["water_until"]), mayBeWater=str(s["may_be_water"]).lower(), lastDryBlock=shown(s["last_dry"]))
    of.update({k: listed([float(v) for v in np.array(s[k]).flatten()]) for k in ("sums", "stands", "origin")})
    of.update({k: listed([int(v) for v in np.array(s[k]).flatten()]) for k in ("starts", "weak")})
    return " ".join(f"{k}={v}" for k, v in of.items())


class Draw:
    """Draws states of a scene; each kind is near other limits."""

    def __init__(self, random, scene):
        self.random, self.scene, self.c, self.base = random, scene, scene.before, scene.base
        self.s = np.array([x if x > 0 else 0.1 for x in scene.base.scale])
        law = scene.base.law
        self.law, self.k, self.b = law is not None, scene.base.kappa if law else 1.0, law.exponent if law else 0.5
        self.rays = [(1, -self.k), (-1, self.k), (1, self.b), (-1, -self.b), (1, 0), (-1, 0), (0, -1), (0, 1)]

    def near(self, x):
        return x * self.random.uniform(0.955, 1.045)

    def of(self, *those):
        return those[int(self.random.integers(0, len(those)))]

    def row(self, way, share, noise, wet=0.0):
        x = share * np.array([way[1] - self.b * way[0], way[0], way[1], way[0] * self.k + way[1]]) + noise * self.s * self.random.standard_normal(4)
        if self.random.random() < wet:
            x[[D, U, Q]] = NAN
        if not self.law:
            x[[R, U, Q]] = NAN
        return x

    def state(self, kind):
        c, block, now = self.c, self.scene.block, 3 * (self.scene.block + 1)
        length = int(self.of(12, 30, 60, 100, 240, 241, 224, 225, 242))
        if kind == "end":
            length = int(self.of(12, 30, 90, 478, 479, 480, 481))
        if kind in ("shape", "hour"):
            length = int(self.of(4, 8, 12, 30, 60, 90))
        start = block - length
        opened = block - min(length, int(self.of(1, 7, 8, 9, 15, 16, 17, 31, 32, 33, 79, 80, 81, 82, length // 2)))
        ray = self.rays[int(self.random.integers(0, 8))]
        way = np.array(ray) * self.of(0.5, 1, 2, 3) * self.random.uniform(0.9, 1.1) * self.s[D]
        noise, wet, grows = self.of(0.03, 0.1, 0.3), self.of(0, 0, 0.3, 0.9), self.random.random() < 0.4
        if not self.law:
            way = np.array([abs(way[0]) * c.sign + 0.05 * c.sign, 0])
        if kind == "names":
            way, grows = self.between_names(), False
        if kind == "weeks":
            way, grows = self.between_names(True, self.of(2, 3), int(self.random.integers(0, 8))), False
        share = lambda n: 0.0 if n < 3 * start else min(1.0, (n - 3 * start) / (3 * length)) if grows else 1.0
        origin = np.array(c.origin)
        hours = []
        kept = {"across": (160,), "names": (50, 99), "returns": (150,) if c.is_open() else (60,)}.get(kind, (50,))
        for n in range(now - self.of(*kept), now):
            x = self.row(way, share(n), noise, wet) + origin
            hours.append((n, np.append(x + self.base.centre, x[R] + self.base.centre[R] + 0.3 * noise * self.s[R] * self.random.standard_normal())))
        blocks = [(n, self.row(way, share(3 * n), noise, wet if kind != "end" else 0) + origin) for n in range(max(start - 90, block - {"figures": 118, "shape": 150, "hour": 90, "returns": 98}.get(kind, 40)), block)]
        weight = self.of(20.0, 49.0, 49.6, 50.6, 53.0, 120.0)
        weight = self.of(51.0, 120.0) if kind == "weeks" else weight
        settled = way if kind != "names" or self.random.random() < 0.5 else self.between_names(True)
        stands = np.array([settled[0], settled[1], 1.0, self.near(0.4) * self.of(self.b * settled[0], settled[1]) * self.of(-1, 1) if self.random.random() < 0.6 else settled[1] - self.b * settled[0]]) * weight
        s = dict(hours=hours, blocks=blocks, sums=np.zeros((4, 2)), starts=np.full((4, 2), block - 5), weak=self.random.integers(0, 3, (4, 2)), stands=stands, origin=origin, start=start,
                 opened=opened, closed=block - 3, seen=start, largest=self.of(1.96, 2.04, 2.9, 3.05, 4.0, 1.0), risen=bool(self.random.random() < 0.7), water_until=self.of(block - 3, -10 ** 6),
                 may_be_water=bool(self.random.random() < 0.5), named=self.of(0, 2, 4, 6), across=self.of(None, None, 2, 4), across_too=self.of(None, 0, 6),
                 last_dry=block - self.of(1, 79, 80, 81, 82), votes=self.votes(way))
        getattr(self, "of_" + kind)(s, way)
        digits = 4 if kind in ("end", "falls") else 3
        exact = lambda rows: [(n, [float(np.round(v, digits)) for v in x]) for n, x in rows]
        s.update(hours=exact(s["hours"]), blocks=exact(s["blocks"]), sums=np.round(s["sums"], 3), stands=np.round(s["stands"], 4), largest=float(np.round(s["largest"], 4)))
        return s

    def votes(self, way):
        """Some hardly enough, some with a second name at three tenths; often of the nearest two names."""
        if not self.law:
            return [None] * self.of(3, 20)
        nearest = list(np.argsort(self.c.near.distances(way))[:2])
        rest = [i for i in self.random.permutation(8) if i not in nearest]
        one, two, three = self.of([*nearest, rest[0]], [nearest[1], nearest[0], rest[0]], [nearest[1], rest[0], nearest[0]], [nearest[0], rest[0], rest[1]], rest[:3])
        count = self.of(8, 10, 11, 12, 40, 60, 223, 224)
        left = int(0.3 * count)
        cast = count - left
        second = int(math.ceil(0.3 * cast)) - self.of(0, 1)
        votes = [int(two)] * second + [int(one)] * (cast - second)
        if self.random.random() < 0.3:
            votes[second:second + second // 2] = [int(three)] * (second // 2)
        if self.random.random() < 0.3:
            votes[-2:] = [None] * min(2, len(votes))
        return [int(self.of(one, three))] * left + votes

    def between_names(self, settled=False, g=None, other=None):
        """A place where two names are farther by about 2, or 4, than the nearest."""
        rays = self.c.settled if settled else self.c.near
        g = np.array(self.rays[int(self.random.integers(0, 8)) if g is None else g])
        other = np.array(self.rays[int(self.random.integers(0, 8)) if other is None else other])
        size, goal = self.of(0.1, 0.2, 0.4) * self.random.uniform(0.9, 1.1), self.of(2, 2, 4)
        best = None
        for t in np.linspace(0, 1, 60):
            at = size * ((1 - t) * g + t * other)
            far = np.sort(rays.distances(at))
            miss = abs(far[1] - far[0] - goal)
            best = (miss, at) if best is None or miss < best[0] else best
        return best[1] * self.random.uniform(0.985, 1.015)

    def of_end(self, s, way):
        """The last two days about where it is over: limits of each quantity, few known, long wet."""
        c, which = self.c, int(self.random.integers(0, 4))
        known, tight = self.of(2, 3, 4, 16), self.of(0, 1, 2, 3)
        for j, (n, x) in enumerate(reversed(s["blocks"])):
            if j < 15:
                for q in range(4):
                    limit = 0.3 if q == c.channel else 0.9
                    share = self.near(1) if q == tight else 0.3
                    x[q] = s["origin"][q] + limit * share * self.s[q] * (1 if which else -1) + 0.002 * self.s[q] * self.random.standard_normal()
                if j >= known:
                    x[[D, U, Q] if self.random.random() < 0.7 and c.channel == R else [R, D, U, Q]] = NAN
            elif self.random.random() < 0.3:
                x[c.channel] = s["origin"][c.channel] + c.sign * self.s[c.channel] * self.near(0.75)
        self.last_hours(s, lambda q: s["origin"][q])
        if which > 1:
            s["opened"] = s["start"] + 2

    def last_hours(self, s, of):
        for n, x in s["hours"][-3:]:
            x[:4] = [of(q) + self.base.centre[q] for q in range(4)]
            if not self.law:
                x[[R, U, Q]] = NAN

    def of_falls(self, s, way):
        c = self.c
        q = R if self.law else c.channel
        sign = c.sign if c.channel == R or not self.law else {"HELD_UP": -1, "RELEASED": 1}.get(c.track.names[0], 0)
        s["largest"] = self.near(self.of(2.0, 2.1, 2.2, 3.0, 5.0))
        risen, fallen = max(0.75, 0.35 * s["largest"]), max(0.3, 0.15 * s["largest"])
        low, gap, tight = self.of(0, 1, 1, 1, 2), self.of(0, 0, 1, 2, 3), self.of("low", "stood", "now", "none")
        s["risen"] = bool(self.random.random() < 0.75)
        s["opened"] = self.scene.block - self.of(1, 15, 16, 17, 18)
        for j, (n, x) in enumerate(reversed(s["blocks"])):
            stood = self.near(risen) if tight == "stood" and 7 <= j <= 8 + low else 1.2 * risen
            x[q] = s["origin"][q] + sign * self.s[q] * ((self.near(fallen) if tight == "low" and j == 0 else 0.9 * fallen) if j < low else stood)
            if 6 <= j < 7 + 8 * gap and gap:
                x[q] = NAN
        now = self.near(fallen if s["risen"] else risen) if tight == "now" else 0.9 * fallen if s["risen"] else 1.2 * risen
        self.last_hours(s, lambda quantity: s["origin"][quantity] + (sign * self.s[q] * now if quantity == q else 0))

    def of_names(self, s, way):
        """Hours hardly enough; the first twelve not; or a step within what stood away before."""
        if self.random.random() < 0.3:
            known = self.of(3, 4, 5)
            for j, (n, x) in enumerate(reversed(s["hours"])):
                if j >= known:
                    x[[D, U]] = NAN
        if self.random.random() < 0.3:
            s["seen"] = s["start"] = self.scene.block - self.of(1, 2, 3, 4, 5)
            s["opened"] = s["start"] + 1
            for j, (n, x) in enumerate(reversed(s["hours"])):
                if n < 3 * s["start"] + 12:
                    x[:4] += np.array([0, 0.2, -0.15, 0.1])

    def of_weeks(self, s, way):
        """A sensor beside water that hardly parted velocity and depth, or enough."""
        if self.random.random() < 0.8:
            s["stands"][3] = self.near(0.4) * s["stands"][2] * abs(self.of(self.b * way[0], way[1])) * self.of(-1, 1)
            for n, x in s["hours"]:
                x[4] = self.base.centre[R] + s["stands"][3] / s["stands"][2]

    def of_across(self, s, way):
        """A step some days ago where the water stood away from usual by a squared distance of about 2."""
        block = self.scene.block
        s["start"] = s["seen"] = block - self.of(10, 25, 40)
        s["opened"] = block - self.of(5, 31, 32, 33) if s["start"] < block - 33 else s["start"] + 2
        g = np.array(self.of(self.rays[2], self.rays[3], self.rays[1]))
        reach = [t for t in np.linspace(0.01, 0.6, 400) if self.c.near.away(t * g)]
        m = g * (reach[0] if reach else 0.3) * self.of(0.98, 1.02, 1.02, 1.5)
        moved = self.between_names()
        known, pairs = self.of(11, 12, 13, 100), self.of(5, 6, 7, 100)
        first = 3 * s["start"]
        for n, x in s["hours"]:
            on = n >= first
            at = m + (moved if on else 0)
            x[:4] = self.base.centre + self.row(at, 1, 0.01)
            if not on and (first - n > known or n < first - 119 - self.of(0, 1, 2)):
                x[[D, U]] = NAN
            if on and n - first > pairs + 11:
                x[[D, U]] = NAN
        for n, x in s["blocks"]:
            on = n >= s["start"]
            x[:] = self.row(moved * (1 if on else 0), 1, 0.01) + (0 if self.c.channel == R else self.row(m, 1, 0.0) if on else 0)
        s["stands"] = s["stands"] * 0.3

    def of_shape(self, s, way):
        """Step, ramp or either: a criterion about 0 or 2; bounds by what is worse."""
        c, q = self.c, self.c.channel
        size = c.sign * self.s[q] * self.random.uniform(1, 3)
        length, noise = self.of(1, 2, 3, 5, 8, 12, 30), self.s[q] * self.of(0.15, 0.4, 0.8)
        onset = s["start"] + self.of(-2, 0, 0, 1)
        for n, x in s["blocks"]:
            x[:] = NAN
            x[q] = s["origin"][q] + size * min(1.0, max(0.0, (n - onset + 0.5) / length)) + noise * self.random.standard_normal()
            if self.random.random() < 0.2:
                x[q] = NAN
        for n, x in s["hours"]:
            x[q] = self.base.centre[q] + s["origin"][q] + size * min(1.0, max(0.0, (n / 3 - onset) / length)) + noise * self.random.standard_normal()
        s["blocks"] = [b for b in s["blocks"] if b[0] >= s["start"] - self.of(0, 3, 20, 90)]

    def of_hour(self, s, way):
        """The hour of a plain step, of few hours or many, some days ago or hardly within what is kept."""
        c, q = self.c, self.c.channel
        size, noise = c.sign * self.s[q] * self.of(1.0, 2.5), self.s[q] * self.of(0.1, 0.3, 0.6)
        at = 3 * s["start"] + self.of(0, 1, 2)
        known = self.of(4, 4, 5, 30)
        for n, x in s["hours"]:
            x[q] = self.base.centre[q] + s["origin"][q] + (size if n >= at else 0) + noise * self.random.standard_normal()
            if not at - known <= n < at + 4 and known < 10:
                x[q] = NAN
        for n, x in s["blocks"]:
            x[:] = NAN
            x[q] = s["origin"][q] + (size if n >= s["start"] else 0) + 0.05 * noise * self.random.standard_normal()
        if self.random.random() < 0.2:
            s["hours"] = [h for h in s["hours"] if h[0] >= at - self.of(2, 3, 4)]

    def of_figures(self, s, way):
        """A level that rises to its goal about the last day that is told; what stands at 0.8 of its largest."""
        c, q = self.c, self.c.channel
        slope, noise = self.of(0.00005, 0.0003, 0.001, 0.004) * self.random.uniform(0.5, 2), self.of(0.001, 0.01, 0.03)
        span, known = self.of(111, 112, 113, 40, 9), self.of(7, 8, 9, 200)
        block = self.scene.block
        s["start"] = s["seen"] = block - self.of(span, 120)
        s["opened"] = block - 2
        for n, x in s["blocks"]:
            x[:] = NAN
            x[D] = s["origin"][D] + slope * (n - block) + 0.2 + np.round(noise * self.random.standard_normal(), 3)
            if n < block - known + 1:
                x[D] = NAN
        for j, (n, x) in enumerate(reversed(s["blocks"])):
            if j < 7:
                x[q] = s["origin"][q] + c.sign * self.s[q] * 2
        self.last_hours(s, lambda k: s["origin"][k] + (c.sign * self.s[q] * 2 if k == q else 0.1))
        s["largest"] = 2 / self.near(0.8)
        if self.random.random() < 0.4:
            keep = self.of(3, 4, 5)
            for j, (n, x) in enumerate(reversed(s["hours"])):
                if j >= keep:
                    x[self.of(R, D, U, Q)] = NAN

    def of_returns(self, s, way):
        """A full sum after a finding that is over, or of the velocity at its depth within water."""
        c, block = self.c, self.scene.block
        q = self.of(R, D, U, Q) if self.law else D
        sign = self.of(-1, 1)
        length = self.of(4, 26, 27, 28, 60, 111, 112, 113, 150)
        window = max(40, min(168, length + length // 2))
        began = block - self.of(3, 6, 10)
        s["closed"] = began - window + self.of(-1, 0, 1)
        s["start"], s["opened"] = s["closed"] - length, s["closed"] - length + 1
        if c.is_open():
            q = R
            s["start"] = began - self.of(54, 55, 56, 57, 90)
            s["opened"] = self.of(began - 1, began, began + 1, s["start"] + 2)
            s["water_until"] = self.of(began - 1, began, began + 1, -10 ** 6)
            s["seen"] = s["start"]
            moved = self.between_names() if self.random.random() < 0.7 else np.array(self.rays[int(self.random.integers(0, 8))]) * 0.3
            s["named"] = int(np.argsort(c.near.distances(moved))[self.of(0, 1, 1, 2)])
            m = np.array(self.rays[2]) * self.of(0.05, 0.2)
            for n, x in s["hours"]:
                x[:4] = self.base.centre + self.row(m + (moved if n >= 3 * began else 0), 1, 0.02)
            for n, x in s["blocks"]:
                x[:] = self.row(m + (moved if n >= began else 0), 1, 0.02)
                x[R] += 0.1 * self.s[R] if n < block - 32 else 0
                if n < block - self.of(43, 44, 45, 46, 90) and self.random.random() < 0.9:
                    x[R] = NAN
        for j, (n, x) in enumerate(reversed(s["hours"])):
            if j < 170 and not c.is_open() or j < 30:
                x[q] = self.base.centre[q] + sign * self.s[q] * (4.0 if j < 30 else 0.2)
        s["sums"][q, int(sign < 0)] = 7.5
        other = self.of(*[k for k in range(4) if self.law or k == D])
        s["sums"][other, 0] = max(s["sums"][other, 0], self.of(0, 6.9, 7.2))
        s["starts"][:] = began
        s["starts"][other, 0] = began - self.of(0, 1)
        s["last_dry"] = block


EVERYWHERE = ("end", "falls", "shape", "hour", "figures")
FUNCTIONS = {"end": ("go_on", "over", "last_away", "still_stands", "resume", "block", "end_block"), "falls": ("fall", "go_on"),
             "names": ("stand", "vote", "name", "weeks", "apart", "dry_pair", "distances", "alike"), "weeks": ("weeks", "vote"), "across": ("over_the_step", "name", "away", "widened", "dry_pair"),
             "shape": ("shape", "shape_of"), "hour": ("step_hour", "shape"), "figures": ("judge", "forecast", "last_day"),
             "returns": ("begin", "comes_back", "fresh", "is_another", "rest", "before", "overtake", "hour", "show")}
HEAVY = ("end", "falls", "names", "weeks", "returns", "across")


def scenes():
    of = lambda seed, days=20: site(seed=seed, days=days, step=60)
    first = storm(60, 8, 2, 0.6, 1.0)
    yield Scene(of(291), first + step(408, 1.3, 0.7), 469, 0.3), EVERYWHERE + ("names", "across")
    yield Scene(of(292), first + step(400, 1.35, 1.2), 457, 0.25), EVERYWHERE + ("names", "weeks", "weeks", "across", "returns", "returns")
    yield Scene(of(293), first + LEVEL_ONLY + step(400, 1.45), 469, 0.3), EVERYWHERE
    yield Scene(of(294, 22), first + step(370, 1.4, 1.2) + step(430, 1, 0.7), 481, 0), ("end", "end", "falls", "names", "shape", "figures")
    for seed, depth, speed in ((295, 1.35, 0.65), (296, 1.4, 1.25), (297, 0.75, 1.35), (298, 0.7, 0.8)):
        yield Scene(of(seed, 22), first + step(390, depth, speed, 440), 517, 0), ("returns",)


def search(random, scene, kind, others, wanted, tries):
    """States of a kind that tell what no other does yet."""
    draw, plain, found = Draw(random, scene), module((), -1)[0], []
    light = lambda made: light_of(made, kind)
    light(plain)
    for _ in range(tries):
        if not wanted:
            break
        state = draw.state(kind)
        usual = scene.compared(plain, state)
        if usual == "broken":
            print("broken", kind, file=sys.stderr)
            continue
        seen = [i for i in wanted if scene.compared(light(others[i]), state) != usual]
        if seen:
            for i in seen:
                wanted[i] -= 1
                if not wanted[i]:
                    del wanted[i]
            found.append((state, len(seen)))
    return found


def light_of(made, kind):
    """Without the fits that a kind does not look at."""
    if kind in HEAVY:
        made.shape_of = lambda x, last: (STEP, max(0, min(last, len(x) - 1)), 0, max(0, min(last, len(x) - 1)))
        made.Changes.forecast = lambda self, block: None
    return made


def tied(scene, state):
    """Whether the last digit of a sum decides: such a state shows nothing."""
    def answer(share):
        other = dict(state, hours=[(n, [v * share for v in row]) for n, row in state["hours"]], blocks=[(n, [v * share for v in row]) for n, row in state["blocks"]])
        return [e[:4] + e[7:9] for e in told(scene.answer(sys.modules["site_changes"], other)[0])]

    return answer(1 - 1e-9) != answer(1 + 1e-9)


def row_of(scene, state, about):
    events, so_far = scene.answer(sys.modules["site_changes"], state)
    total = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(events)))
    return (place(scene.case) + [scene.at, CHANGE, text(state), "-", scene.at + 1, about]
            + [len(events), int(total(lambda e: e[0])), total(lambda e: e[2].since - FIRST_HOUR), total(lambda e: e[2].earliest - FIRST_HOUR),
               total(lambda e: e[2].latest - FIRST_HOUR), total(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR),
               total(lambda e: float(sum((j + 1) * PLACE[n] for j, n in enumerate(e[2].names)))), total(lambda e: e[2].shape), total(lambda e: len(e[2].falls)),
               total(lambda e: float(sum((j + 1) * m[1] for j, m in enumerate(e[2].moved)))),
               total(lambda e: sum(t - FIRST_HOUR for goal in (e[2].alarm, e[2].soffit) if goal for t in goal))]
            + [so_far[n] for n in KEPT])


def save(folder, name, rows, program=PROGRAM, title="The life of a finding, from states on its limits"):
    asked = [("events", "count"), ("kinds", "kind"), ("since", "h"), ("earliest", "h"), ("latest", "h"), ("closed", "h"), ("names", "place of each name"), ("shape", "0 step, 1 ramp, 2 either"),
             ("falls", "count"), ("moved", "changes"), ("forecasts", "h")]
    write(folder, program, name, title,
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what is on its limits")]
          + [(n, u if n == "events" else f"{u} of each times its place") for n, u in asked] + [(n, "as kept") for n in KEPT],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.part = word {CHANGE}", f"input.key = word {key}", f"input.which = {0 if n in ONE else -1}") for n, key in KEPT.items()], rows,
          tolerance="1e-8 relative or 1e-6", reason="16 digits are given; whole hours and shares of an hour")


def main(folder):
    rows, left_of, open_of = [], {}, {}
    for number, (scene, kinds) in enumerate(scenes()):
        random = np.random.default_rng(41 + number)
        for kind in kinds:
            if kind not in left_of:
                count = module(FUNCTIONS[kind], -1)[1]
                left_of[kind] = {i: module(FUNCTIONS[kind], i)[0] for i in range(count)}
                open_of[kind] = {i: 1 for i in range(count)}
            # The first scene of a kind shows most; the others what it cannot, and some states as they come.
            tries = TRIES[kind] if len(open_of[kind]) == len(left_of[kind]) else 5
            found = search(random, scene, kind, left_of[kind], open_of[kind], tries)
            wanted, draw = open_of[kind], Draw(random, scene)
            found += [(draw.state(kind), 0) for _ in range(2)]
            for k, (state, seen) in enumerate(found):
                if k == 0:
                    scene.checked(state)
                if not tied(scene, state):
                    rows.append(row_of(scene, state, kind))
            print(number, kind, len(found), "not", len(wanted), "of", len(left_of[kind]), file=sys.stderr, flush=True)
    save(folder, "watch-life-limits", rows)


TRIES = {"weeks": 12, "end": 14, "falls": 12, "names": 14, "across": 10, "shape": 8, "hour": 8, "figures": 8, "returns": 10}

if __name__ == "__main__":
    main(sys.argv[1])
