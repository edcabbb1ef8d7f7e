"""Whether the columns of depth and velocity are exchanged, as the page on the watch has it under "Columns exchanged".

Used by site_hours.py, site_watching.py and site_exchange_limits.py. Hours are numbered from 1970. Knows nothing of the library. Python 3.11, numpy 2.
"""

import math

import numpy as np

NAN = float("nan")
LIMITS = dict(fits=0.4, lowest=-0.5, highest=1.5, hours=12, others=3, open=48, leapt=0.6, exact=0.2, small=0.12, large=0.2, over=1.5, follows=0.8, home=24,
              back=120)
BY_DRAWINGS = dict(apart=2.0, most=0.9, few=0.05, flattest=0.35, steepest=1.1, hours=48, readings=4)
FEW_HOURS, HOURS_BEFORE = 4, 24
FACTORS = (1.0, 100.0, 1000.0, 0.01, 0.001)


def middle(values):
    return float(np.median(values))


def robust(values):
    values = np.asarray(values)
    return float(np.median(np.abs(values - np.median(values)))) / 0.6744897501960817


def book(values):
    return float(sum((i + 1) * v for i, v in enumerate(values)))


def rough(values):
    """Mean second difference over the mean, of the inner readings of an hour."""
    if len(values) < BY_DRAWINGS["readings"]:
        return NAN
    x = np.asarray(values, dtype=float)
    inner = x[1:-1].sum()
    return float(np.abs(x[:-2] - 2 * x[1:-1] + x[2:]).sum() / inner) if inner > 0 else NAN


def uniform(pipe, depth, velocity):
    """Whether both may belong to uniform flow."""
    of = BY_DRAWINGS["apart"]
    expected = pipe.uniform(min(depth, pipe.diameter))
    return expected / of <= velocity <= of * expected


def by_drawings(pipe, hours, exponent):
    """Counts of all hours, of those that fit when exchanged and as they are written; None where nothing says that the columns are exchanged."""
    of = BY_DRAWINGS
    known = [h for h in hours if h.y == h.y and h.v == h.v]
    both = [(math.exp(h.y), math.exp(h.v)) for h in known]
    exchanged, written = (sum(uniform(pipe, a, b) for a, b in each) for each in ([(v, y) for y, v in both], both))
    apart = [h.rough_y - h.rough_v for h in known if h.rough_y == h.rough_y and h.rough_v == h.rough_v]
    if exchanged < of["most"] * len(both) or written > of["few"] * len(both) or len(apart) < of["hours"] or not middle(apart) > 0:
        return None
    steep = exponent(np.array([h.v for h in known]), np.array([h.y for h in known]))
    return (len(both), exchanged, written) if of["flattest"] <= steep <= of["steepest"] else None


class Exchanges:
    def __init__(self, base, book, give_away, kinds, limits=LIMITS):
        self.base, self.book, self.give_away, self.limits = base, book, give_away, limits
        self.found, self.changed, self.returned, self.closed, self.standing, self.step, self.no_way = kinds
        self.first, self.track, self.asked, self.home = None, None, [], 0
        self.before = self.last_right = None
        self.right_before, self.rights = False, []
        self.factor = 1.0
        self.left, self.others = (0.0, 0.0), 0
        # Hours since the beginning that were known, that fit when exchanged, and as they are written.
        self.counts = [0, 0, 0]

    def is_open(self):
        return self.track is not None and self.track.open

    def take(self, hour, number, learning):
        known = hour.read_y == hour.read_y and hour.read_v == hour.read_v
        if self.base.exchanged:
            self.first = number if self.first is None else self.first
            if not learning and self.track is None:
                self.track = self.book.open("EXCHANGED_COLUMNS", self.first, number + 1)
                self.book.tell(self.found, number + 1, self.track)
                self.counts = list(self.base.exchanged)
            elif not learning and known and self.is_open():
                y, v = math.exp(hour.read_y), math.exp(hour.read_v)
                self.go_on(number, uniform(self.base.pipe, y, v), uniform(self.base.pipe, v, y))
        elif self.base.law is not None and known:
            right, exchanged = self.look(hour)
            if not learning:
                self.judge(number, right, exchanged)
            self.right_before = right or not exchanged and self.last_right == number - 1
            self.last_right = number if right else self.last_right
            self.rights = (self.rights + [right])[-HOURS_BEFORE:]
        if self.base.exchanged or self.is_open() or self.asked and (self.factor != 1 or self.may_be()):
            hour.y = hour.v = hour.read_y = hour.read_v = hour.upstream = NAN
            hour.depth_run = hour.velocity_run = (0.0, 0.0)
            hour.outside = hour.dry_moving = hour.compared = hour.lone = hour.looked = hour.zeros = hour.low = hour.lower = hour.flips = 0
            hour.held = hour.stray_high = hour.stray_low = 0

    def look(self, hour):
        """Whether an hour is as usual as it is written, and whether when exchanged alone; what the velocity leaves over is kept for both."""
        of, law = self.limits, self.base.law
        _, at, rest = self.base.calendar.of(hour.number)
        usual = self.base.depth.value(at, rest)
        fits = lambda y, v: abs(v - law.at(y)) < of["fits"] and of["lowest"] < y - usual < of["highest"]
        if fits(hour.read_y, hour.read_v):
            return True, False
        deeper, faster = hour.read_y - usual, hour.read_v - law.at(usual)
        if not (deeper * faster < 0 and min(abs(deeper), abs(faster)) > of["leapt"]):
            return False, False
        by = lambda k: (hour.read_v - math.log(k), hour.read_y + math.log(k))
        if not self.asked and not self.is_open():
            self.factor = min(FACTORS, key=lambda k: abs(by(k)[1] - law.at(by(k)[0])))
        y, v = by(self.factor)
        self.left = float(v - law.at(y)), float(hour.read_v - law.at(hour.read_y))
        return False, fits(y, v)

    def judge(self, number, right, exchanged):
        of = self.limits
        if self.is_open():
            self.go_on(number, right, exchanged)
            return
        if not self.asked:
            if not exchanged or not self.right_before or 2 * sum(self.rights) < HOURS_BEFORE:
                return
            self.since, self.others, self.before = number, 0, self.last_right
        if exchanged:
            self.asked.append(self.left)
            if self.sure():
                self.tell(number + 1)
                return
        else:
            self.others += 1
        if self.others >= of["others"] or number - self.since >= of["open"]:
            self.asked = []

    def may_be(self):
        """Whether few hours are known yet, or those that are follow the relation better when exchanged."""
        exchanged, written = zip(*self.asked)
        return len(self.asked) < self.limits["hours"] and (len(self.asked) < FEW_HOURS or robust(exchanged) < robust(written))

    def sure(self):
        of = self.limits
        if len(self.asked) < of["hours"]:
            return False
        exchanged, written = zip(*self.asked)
        narrow = min(of["large"], max(of["small"], of["over"] * self.base.law.scatter))
        return abs(middle(exchanged)) < of["exact"] and robust(exchanged) < min(narrow, of["follows"] * robust(written))

    def tell(self, end):
        back = self.track is not None and self.since - self.track.closed <= self.limits["back"]
        given = self.give_away(True, self.since, end)
        counts = [len(self.asked) + self.others, len(self.asked), 0]
        self.counts = [a + b for a, b in zip(self.counts, counts)] if back else counts
        self.home, self.asked = 0, []
        if back:
            self.track.stand_again(self.since)
            if given is not None:
                given.end(self.since)
                self.book.tell(self.closed, end, given)
            self.book.tell(self.returned, end, self.track)
            return
        t = self.track = given if given is not None else self.book.open("EXCHANGED_COLUMNS", self.since, end)
        t.names, t.since, t.earliest, t.latest, t.shape, t.direction = ["EXCHANGED_COLUMNS"], self.since, self.before, self.since + 1, self.step, self.no_way
        t.moved, t.alarm, t.soffit = [], None, None
        self.book.tell(self.changed if given is not None else self.found, end, t)

    def go_on(self, number, right, exchanged):
        self.home = self.home + 1 if right else 0
        self.counts = [self.counts[0] + 1, self.counts[1] + (exchanged and not right), self.counts[2] + right]
        if self.home >= self.limits["home"]:
            # The hours at home are none of it.
            self.counts[0] -= self.home
            self.counts[2] -= self.home
            self.track.end(number + 1 - self.limits["home"])
            self.book.tell(self.closed, number + 1, self.track)

    def kept(self):
        return {"exchanged_counts": book(self.counts), "exchanged_asked": book(v for pair in self.asked for v in pair), "exchanged_right": book(self.rights),
                "exchanged_home": self.home}

    def finish(self, end):
        if self.is_open():
            self.book.tell(self.standing, end, self.track)
