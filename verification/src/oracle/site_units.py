"""Whether depth or velocity leapt by the factor of another unit, as the page on the watch has it under "Another unit".

Used by site_watching.py and site_unit_limits.py. Hours are numbered from 1970. Knows nothing of the library. Python 3.11, numpy 2.
"""

import math

import numpy as np

from site_changes import CHANGED, CLOSED, DOWN, FOUND, RETURNED, STANDING, STEP, UP
from site_hours import NAN, middle, robust

FOOT, INCH = 0.3048, 0.0254
LIMITS = dict(days=120, least=24, home=0.6, level_home=0.3, dry_leap=0.3, across=3, open=48, small=0.12, large=0.2, over=1.5, unmoved=0.25,
              parted=0.5, steady=0.3, returns=3, back=24, feet_of_usual=0.6, of_usual=1.0, below=0.8, above=2.0, hours_large=6, hours_feet=12, hours=24,
              band_feet=0.3, band_thousand=0.7, band=0.45, exact_feet=0.08, exact_wide=0.4, exact=0.16, inch=INCH, foot=FOOT, largest=1000.0, hundred=100.0,
              ten=10.0, tenth=0.1, hundredth=0.01, thousandth=0.001, of_inch=INCH, of_foot=FOOT, least_rain=0.05, dry_hours=6, at_once=0.75)


class Unit:
    """One factor, and how sure it must be."""

    def __init__(self, name, factor, limits):
        self.name, self.ln, self.limits = name, math.log(factor), limits
        self.feet = name in ("FOOT", "OF_FOOT")
        self.thousand = name in ("MILLI", "OF_MILLI")
        self.many_times = name in ("MILLI", "CENTI", "INCH", "DECI")

    def band(self):
        return self.limits["band_feet" if self.feet else "band_thousand" if self.thousand else "band"]

    def of_usual(self):
        return self.limits["feet_of_usual" if self.feet else "of_usual"]

    def any_weather(self, x):
        return -self.limits["below"] < x - self.ln < self.limits["above"]

    def wanted(self, alone):
        return self.limits["hours_large" if self.many_times else "hours_feet" if self.feet and not alone else "hours"]

    def exact(self, dry):
        return self.limits["exact_feet" if self.feet else "exact_wide" if self.thousand or self.many_times and dry else "exact"]


def units(limits):
    of = limits
    return [Unit(n, f, limits) for n, f in (
        ("MILLI", of["largest"]), ("CENTI", of["hundred"]), ("INCH", 1 / of["inch"]), ("DECI", of["ten"]), ("FOOT", 1 / of["foot"]), ("OF_FOOT", of["of_foot"]),
        ("OF_DECI", of["tenth"]), ("OF_INCH", of["of_inch"]), ("OF_CENTI", of["hundredth"]), ("OF_MILLI", of["thousandth"]))]


class Question:
    """One quantity: what it was before, what is asked, what was told."""

    def __init__(self, of_depth, book, give_away, limits=LIMITS):
        self.of_depth, self.book, self.give_away, self.limits = of_depth, book, give_away, limits
        self.units = units(limits)
        self.before, self.last, self.leapt = [], [], []
        self.asked, self.since, self.leapt_dry, self.times_home, self.track = None, 0, False, 0, None
        self.known = (None, NAN, NAN)
        self.leaps = {}

    def is_open(self):
        return self.track is not None and self.track.open

    def soon_sure(self):
        return self.is_open() or self.asked is not None and self.asked.many_times

    def remember(self, row):
        self.before = (self.before + [row])[-self.limits["days"]:]

    def seen(self, number, x):
        self.last = (self.last + [(number, x)])[-2:]

    def learn(self, number, x, other):
        if x == x:
            self.remember((number, x, other))
            self.seen(number, x)

    def hour(self, number, x, other, dry):
        if x != x:
            return
        of = self.limits
        if len(self.before) < of["least"]:
            self.remember((number, x, other))
        elif self.is_open():
            self.go_on(number, x - self.usual())
        else:
            near = [(n, y) for n, y in self.last if number - n <= of["across"]]
            unit = self.leap(x, x - self.usual(), near, other != other, dry) if any(abs(x - y) > 0.88 for _, y in near) or self.asked else None
            if unit and (self.asked is None or not unit.feet and abs(x - self.usual() - self.asked.ln) > of["home"]):
                self.asked, self.since, self.leapt_dry, self.times_home, self.leapt = unit, number, dry, 0, []
            if self.asked:
                self.ask(number, x - self.usual(), other)
            else:
                self.remember((number, x, other))
        self.seen(number, x)

    def home(self):
        """Median and scatter of what was before."""
        key = (len(self.before), self.before[-1][0])
        if self.known[0] != key:
            x = [b[1] for b in self.before]
            self.known = (key, middle(x), robust(x))
        return self.known

    def usual(self):
        return self.home()[1]

    def leap(self, x, away, near, alone, dry):
        of = self.limits
        for n, y in near:
            by = x - y
            unit = min(self.units, key=lambda u: abs(u.ln - by))
            free = unit.many_times and dry
            if not abs(by - unit.ln) < (of["dry_leap"] if free else unit.band()):
                continue
            if free:
                there = unit.any_weather(x) and unit.any_weather(away)
            else:
                there = abs(x - unit.ln) < unit.of_usual() and abs(away - unit.ln) < of["home"]
            from_home = not (alone and unit.feet) or abs(y - (x - away)) <= of["level_home"]
            if alone and self.gradual(n, by):
                continue
            if there and from_home and (free or self.home()[2] < of["steady"]):
                return unit
        return None

    def gradual(self, first, by):
        """Whether every step between two readings since an hour is known, and none is most of the leap."""
        between = [self.leaps.get(n) for n in range(first, max(self.leaps, default=first) + 1)]
        return None not in between and max(between, default=0.0) < self.limits["at_once"] * abs(by)

    def ask(self, number, away, other):
        of, unit = self.limits, self.asked
        self.times_home += abs(away) < of["home"]
        if self.times_home >= of["returns"] or number - self.since > of["open"]:
            self.asked = None
            return
        if not (unit.any_weather(away) if unit.many_times and self.leapt_dry else abs(away - unit.ln) < unit.band()):
            return
        self.leapt = (self.leapt + [(away, other)])[-24:]
        others = [o for _, o in self.leapt if o == o]
        alone = 2 * len(others) < len(self.leapt)
        moved = 0.0 if alone else middle(others) - middle([b[2] for b in self.before])
        if (math.copysign(1, unit.ln) * moved < -of["parted"]) if self.of_depth else abs(moved) > of["parted"]:
            self.asked = None
            return
        wanted = unit.wanted(alone)
        last = [a for a, _ in self.leapt[-wanted:]]
        scatter = min(of["large"], max(of["small"], of["over"] * self.home()[2]))
        same = abs(middle(last) - unit.ln) < unit.exact(self.leapt_dry) and (unit.many_times or robust(last) < scatter)
        if len(last) == wanted and same and not abs(moved) > of["unmoved"]:
            self.asked = None
            self.tell(middle(last), number + 1)

    def tell(self, median, end):
        self.times_home = 0
        back = self.track is not None and self.since - self.track.closed <= self.limits["days"]
        given = self.give_away(self.of_depth, self.since, end)
        name = "DEPTH_UNIT" if self.of_depth else "VELOCITY_UNIT"
        if not back:
            self.track = given if given is not None else self.book.open(name, self.since, end)
        t = self.track
        t.names = [name]
        if back:
            t.stand_again(self.since)
            if given is not None:
                given.end(self.since)
                self.book.tell(CLOSED, end, given)
        else:
            t.earliest, t.latest, t.shape, t.direction = self.since - 1, self.since + 1, STEP, UP if median > 0 else DOWN
        self.book.tell(RETURNED if back else CHANGED if given is not None else FOUND, end, t)

    def go_on(self, number, away):
        self.times_home = self.times_home + 1 if abs(away) < self.limits["home"] else 0
        if self.times_home >= self.limits["back"]:
            self.track.end(number + 1 - self.limits["back"])
            self.book.tell(CLOSED, number + 1, self.track)

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)


class Units:
    def __init__(self, base, book, give_away, limits=LIMITS):
        self.base, self.limits = base, limits
        self.depth, self.velocity = Question(True, book, give_away, limits), Question(False, book, give_away, limits)
        self.last_wet = -10 ** 12

    def figures(self, hour):
        """ln over usual: the depth by its day, the velocity by its depth, the velocity by its day."""
        _, at, rest = self.base.calendar.of(hour.number)
        b = self.base
        by_depth = hour.read_v - b.law.at(hour.y) if b.law and hour.y == hour.y else NAN
        by_day = hour.read_v - b.velocity.value(at, rest) if b.velocity else NAN
        return hour.read_y - b.depth.value(at, rest), by_depth, by_day

    def learn(self, hour, number):
        y, v, day = self.figures(hour)
        self.steps(hour, number)
        self.depth.learn(number, y, day)
        self.velocity.learn(number, v, y)

    def steps(self, hour, number):
        self.depth.leaps[number] = math.log(hour.leap) if not hour.alone else None

    def hour(self, hour, number):
        y, v, day = self.figures(hour)
        if not hour.rain <= self.limits["least_rain"]:
            self.last_wet = number
        dry = not self.base.pumped and number - self.limits["dry_hours"] > self.last_wet
        self.steps(hour, number)
        self.depth.hour(number, y, day, dry)
        self.velocity.hour(number, NAN if self.depth.soon_sure() else v, y, dry)
        if self.depth.soon_sure():
            hour.y, hour.depth_run, hour.outside, hour.dry_moving, hour.compared, hour.lone = NAN, (0.0, 0.0), 0, 0, 0, 0
        if self.velocity.soon_sure():
            hour.v, hour.velocity_run = NAN, (0.0, 0.0)
            hour.looked = hour.zeros = hour.low = hour.lower = hour.flips = 0

    def finish(self, end):
        self.depth.finish(end)
        self.velocity.finish(end)
