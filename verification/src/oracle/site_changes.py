"""Changes of a site as the page on the watch has them: cumulative sums, what lasts, step or ramp, names, the life of a finding.

Used by site_watches.py. Hours and blocks of three are numbered from 1970. Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import math

import numpy as np
from scipy import stats

from site_hours import FACTOR, FIRST_HOUR, NAN, middle, known
from site_seasons import season_step
from site_slow import Weeks

SLACK, FULL, QUICK = 0.75, 7.0, 3.0
R, D, U, Q, PLAIN = range(5)
NAMES = ["HELD_UP", "RELEASED", "MORE_WATER", "LESS_WATER", "DEPTH_STEP", "DEPTH_DRIFT", "SEDIMENT", "VELOCITY_LOSS", "VELOCITY_GAIN", "VELOCITY_LOW_FOR_DEPTH",
         "VELOCITY_HIGH_FOR_DEPTH", "LEVEL_UP", "LEVEL_DOWN", "VELOCITY_ZEROS", "WEAK_ECHO", "SIGN_FLIPS", "REVERSED_SIGN", "REVERSE_FLOW", "FROZEN_DEPTH",
         "FROZEN_VELOCITY", "FROZEN_LOGGER", "CONTRADICTORY", "OUT_OF_RANGE", "CLOCK_OF_MONITOR", "CLOCK_OF_GAUGE", "SILENT_GAUGE", "FALSE_STAMPS", "TIDAL",
         "BASELINE_DOUBTFUL", "GAUGE_CATCHES_LESS", "GAUGE_WRITES_MORE"]
UP, DOWN, NO_WAY = range(3)
STEP, RAMP, UNCERTAIN = range(3)
FOUND, CHANGED, RETURNED, CLOSED, STANDING, NOTED = range(6)


class Finding:
    def __init__(self, number, name, since, found):
        self.number, self.names, self.direction, self.shape = number, [name], NO_WAY, UNCERTAIN
        self.since = self.earliest = self.latest = since
        self.found, self.closed, self.open, self.returns = found, None, True, 0
        self.falls, self.moved, self.alarm, self.soffit = [], [], None, None
        self.past, self.again = [], None

    def end(self, time):
        self.open, self.closed = False, max(self.found, time, self.found if self.again is None else self.again)

    def stand_again(self, time):
        """Back since a time: what was is a stretch of its own."""
        self.past.append((self.again, self.closed))
        self.again, self.open, self.returns = max(self.closed, time), True, self.returns + 1

    def begins_again(self, name, time):
        """The same name within a month is the same finding."""
        return not self.open and name in self.names and time - self.closed <= 720

    def stretches(self, end):
        """Hours from and to of every time in which it stood; the first begins where the finding does."""
        every = self.past + [(self.again, end if self.open else self.closed)]
        return [(self.since if a is None else a, max(b, self.since if a is None else a)) for a, b in every]

    def recurrence(self):
        """Days between falls: at least three, two days or more apart, regular."""
        if len(self.falls) < 3:
            return None
        apart = np.diff(self.falls) / 24.0
        m = float(np.median(apart))
        if len(apart) < 4:
            regular = np.std(apart, ddof=1) < 0.4 * np.mean(apart)
        else:
            regular = np.sum(np.abs(apart - m) < 0.4 * m) >= 0.7 * len(apart)
        return m if m >= 2 and regular else None

    def copy(self):
        twin = Finding(self.number, "", 0, 0)
        twin.__dict__.update(self.__dict__)
        twin.names, twin.falls, twin.moved, twin.every = list(self.names), list(self.falls), list(self.moved), self.recurrence()
        twin.past = list(self.past)
        return twin


class Book:
    """What is told, in order."""

    def __init__(self):
        self.last, self.events = 0, []

    def open(self, name, since, found):
        self.last += 1
        return Finding(self.last, name, since, found)

    def tell(self, kind, time, finding):
        self.events.append((kind, time, finding.copy()))


def doubts(names):
    """What readings are no longer good for while a finding of these names stands."""
    found = set()
    for name in names:
        if name in ("DEPTH_STEP", "DEPTH_DRIFT", "SEDIMENT", "LEVEL_UP", "LEVEL_DOWN"):
            found |= {"depth", "flow"}
        elif name in ("VELOCITY_LOSS", "VELOCITY_GAIN"):
            found |= {"velocity", "flow"}
        elif name in ("VELOCITY_LOW_FOR_DEPTH", "VELOCITY_HIGH_FOR_DEPTH"):
            found |= {"depth", "velocity", "flow"}
    return found


def named(names):
    return not {"VELOCITY_LOW_FOR_DEPTH", "VELOCITY_HIGH_FOR_DEPTH"} & set(names)


class Standing:
    """How far a quantity stood away over its last known hours, in scales."""

    def __init__(self, x):
        self.x = np.asarray(x)

    def median(self, back, count, least):
        part = self.x[max(0, len(self.x) - back - count):max(0, len(self.x) - back)]
        return float(np.median(part)) if len(part) >= least else NAN

    def quick(self):
        a, b, c = (self.median(k, 6, 6) for k in (12, 6, 0))
        return c > 3.5 or (a > SLACK and b - a > 0.7 and c - b > 0.7 and c > 3)

    def quick_over_tides(self):
        return self.median(0, 25, 25) > 3.5

    def days(self):
        least = math.inf
        for k, rung in enumerate((3, 2.5, 2.2, 1.9, 1.6, 1.3, 1.0)):
            day = self.median(24 * k, 24, 6)
            if not day > SLACK:
                return False
            least = min(least, day)
            if least > rung:
                return True
        return False

    def grown(self):
        before, now = self.median(9, 9, 9), self.median(0, 9, 9)
        return before > SLACK and now - before > 1 and now > 2


def shape_of(x, last):
    """Step or ramp, the block in which it begins, and from when to when that may lie; x is about 0 before."""
    n = len(x)
    there = np.where(np.isnan(x), 0.0, x)
    seen = ~np.isnan(x)
    total, count = float(there @ there), int(seen.sum())
    last = max(0, min(n - 1, last))

    after = np.arange(n)[None, :] - np.arange(n)[:, None]

    def left(length):
        f = np.where(after < 0, 0.0, np.minimum(1.0, (after + 0.5) / length) if np.all(length) else 1.0) * seen
        square = np.sum(f * f, axis=1)
        return total - np.divide((f @ there) ** 2, square, out=np.zeros(n), where=square > 0)

    steps = left(0)
    to_the_end = (n - np.arange(n))[:, None]
    ramps = np.minimum(total, left(to_the_end))
    for length in (3, 6, 12, 24, 48, 80, 120, 180, 240):
        ramps = np.where(length <= to_the_end[:, 0], np.minimum(ramps, left(length)), ramps)
    step, ramp = int(np.argmin(steps[:last + 1])), int(np.argmin(ramps[:last + 1]))
    effective = max(2.0, 0.3 * count)
    floor = 1e-12 + 1e-9 * total
    criterion = effective * math.log((steps[step] + floor) / (ramps[ramp] + floor)) - math.log(effective)
    fit, best = (ramps, ramp) if criterion > 0 else (steps, step)
    limit = (fit[best] + floor) * (1 + stats.chi2.ppf(0.95, 1) / max(2.0, 0.1 * count))
    first = final = best
    while first > 0 and fit[first - 1] <= limit:
        first -= 1
    while final < last and fit[final + 1] <= limit:
        final += 1
    unknown = len(known(x[:best])) < 4
    shape = UNCERTAIN if abs(criterion) < 2 or criterion < 0 and unknown else RAMP if criterion > 0 else STEP
    return shape, best, first, final, unknown


RAYS = ["HELD_UP", "RELEASED", "MORE_WATER", "LESS_WATER", "UP", "DOWN", "VELOCITY_LOSS", "VELOCITY_GAIN"]


class Rays:
    """Squared distances from the rays of the names, by a covariance."""

    def __init__(self, base, share, depth_error, velocity_error, more=None):
        b, kappa = base.law.exponent, base.kappa
        self.b = b
        self.rays = np.array([(1, -kappa), (-1, kappa), (1, b), (-1, -b), (1, 0), (-1, 0), (0, -1), (0, 1)], dtype=float)
        dd, du, uu = base.covariance
        self.covariance = share * np.array([[dd, du], [du, uu]]) + np.diag([depth_error ** 2, velocity_error ** 2])
        self.inverse = np.linalg.inv(self.covariance)

    def widened(self, m):
        twin = object.__new__(Rays)
        twin.rays, twin.b = self.rays, self.b
        twin.covariance = self.covariance + np.outer(m, m)
        twin.inverse = np.linalg.inv(twin.covariance)
        return twin

    def distances(self, at):
        at = np.asarray(at)
        found = []
        for g in self.rays:
            rest = at - max(0.0, g @ self.inverse @ at / (g @ self.inverse @ g)) * g
            found.append(float(rest @ self.inverse @ rest))
        return np.array(found)

    def away(self, at):
        return float(np.asarray(at) @ self.inverse @ np.asarray(at)) > 2


def rays_of(base, share, depth_error, velocity_error):
    """At a tidal site with the season that is too small to be told as a further error."""
    rays = Rays(base, share, depth_error, velocity_error)
    unseen = SLACK * base.scale[D]
    return rays.widened(np.array([unseen, rays.b * unseen])) if base.tidal else rays


def alike(distances, best):
    others = [i for i in range(8) if i != best]
    second = min(others, key=lambda i: distances[i])
    return second if distances[second] - distances[best] < 2 else None


def words(ray, shape):
    if RAYS[ray] == "UP":
        return [["DEPTH_STEP"], ["DEPTH_DRIFT", "SEDIMENT"], ["DEPTH_STEP", "DEPTH_DRIFT", "SEDIMENT"]][shape]
    if RAYS[ray] == "DOWN":
        return [["DEPTH_STEP"], ["DEPTH_DRIFT"], ["DEPTH_STEP", "DEPTH_DRIFT"]][shape]
    return [RAYS[ray]]


NEVER = -10 ** 12


def unborn():
    """What is known of a change before there is one; a spell is since it came, or came back last: begin, block and time told, sums."""
    return dict(spell=0, spell_told=0, spell_at=0, spell_stands=np.zeros(4), shut=None, shut_largest=0.0, apart_from=NEVER, track=None, channel=0, sign=0, start=0, opened=0, closed=0, seen=0, risen=False, largest=0.0, origin=np.zeros(4), votes=[], stands=np.zeros(4),
                across=None, across_too=None, named=None, reported=None, water_until=NEVER, water=None, may_be_water=False, leapt=None, slowly=False, rests=False, quiet=None)


class Changes:
    """The change that is followed, one that rests within it or before it, and the sums that look for the next."""

    def __init__(self, base, alarm, book, tide):
        self.base, self.alarm, self.book, self.tide = base, alarm, book, tide
        self.hours, self.blocks = [], []
        self.sums, self.starts = np.zeros((4, 2)), np.full((4, 2), NEVER)
        self.__dict__.update(unborn())
        self.other, self.by_relation = unborn(), False
        self.last_dry = NEVER
        self.weak, self.doubt = np.zeros((4, 2), dtype=int), None
        plane = base.scale[R] > 0 and base.scale[U] > 0
        self.near = rays_of(base, 0.5, 0.03, 0.04) if plane else None
        self.settled = rays_of(base, 0.1, 0.02, 0.03) if plane else None
        self.calm, self.asked = [], None
        self.small = Weeks(base, book, shape_of)

    def turn(self):
        """The other change becomes the one that is followed."""
        mine = {name: self.__dict__[name] for name in self.other}
        self.__dict__.update(self.other)
        self.other, self.by_relation = mine, not self.by_relation

    def is_open(self):
        return self.track is not None and self.track.open

    def is_water(self):
        return self.is_open() and self.channel != R and self.track.names[0] in ("MORE_WATER", "LESS_WATER")

    def slows(self):
        return self.is_open() and any(n in ("HELD_UP", "VELOCITY_LOSS", "VELOCITY_LOW_FOR_DEPTH") for n in self.track.names)

    def sinks(self):
        """Whether a depth sensor that reads too low is what is open."""
        down = self.sign > 0 if self.channel == R else self.sign < 0
        return self.is_open() and down and bool({"DEPTH_DRIFT", "DEPTH_STEP"} & set(self.track.names))

    def give_away(self, since, end):
        """Forgets all since an hour in which the unit changed, and gives the finding that is of it."""
        self.hours = [h for h in self.hours if h[0] < since]
        self.blocks = [b for b in self.blocks if b[0] < since // 3]
        self.sums[:] = 0
        self.calm, self.asked = [c for c in self.calm if c[0] < since], None
        self.small.drop(since // 24)
        if not self.is_open() or self.start < since // 3 - 16 and self.opened < since // 3:
            return None
        given, self.track = self.track, None
        self.resume(since // 3, end)
        return given

    def resume(self, seen, end):
        """Goes on with what rested, by what is seen from a block on."""
        if self.other["rests"]:
            self.turn()
            self.seen = seen
            self.show(True, seen, (math.floor(end) - 1) // 3, end)

    def since_hour(self, first):
        """Index of the first kept hour that is not before one."""
        return next((i for i, h in enumerate(self.hours) if h[0] >= first), len(self.hours))

    def since_block(self, first):
        return next((i for i, b in enumerate(self.blocks) if b[0] >= first), len(self.blocks))

    def hour(self, number, row):
        self.hours = (self.hours + [(number, np.array(row))])[-240:]
        if self.is_open() and self.channel == R:
            return
        found = self.add(number, (R,) if self.is_open() else (R, D, U, Q))
        if found and (not self.is_open() or self.is_another(int(self.starts[found]))):
            self.end_block(number // 3, 1)
            self.begin(found, number // 3, number + 1)
            self.blocks.pop()

    def is_another(self, start):
        """Whether what moves the velocity at its depth since a block is no part of what is open."""
        if start > self.opened and (self.is_water() or start <= self.water_until):
            return True
        if start - self.start < 56 or not self.may_be_water or self.near is None or self.named is None:
            return False
        at = self.dry_pair(self.hours[self.since_hour(3 * start):], 4)
        if at[0] != at[0]:
            return False
        far = self.near.distances(at - self.before(start)[[D, U]])
        return far[self.named] - min(far) > 4

    def moves_depth(self):
        return self.is_open() and not self.is_water() and not all(n in ("VELOCITY_LOSS", "VELOCITY_GAIN") for n in self.track.names)

    def step(self, hour, number, d, u):
        """A depth that stepped between two readings of a dry hour and stays there, while the velocity goes on."""
        if self.asked and number - math.floor(self.asked[3]) > 36:
            self.asked = None
        if d != d or (self.near and u != u):
            return
        self.calm = (self.calm + [(number, d, u)])[-276:]
        limit = self.base.depth_step if self.base.scale[D] > 0 and not (self.base.tidal and self.base.scale[R] > 0) else NAN
        if abs(hour.step) > limit:
            level, begin, end = hour.stepped
            first = number - hour.number
            if 0.12 < abs(math.log1p(hour.step / level)) < 1 and not (self.asked and abs(hour.step) <= abs(self.asked[0])):
                self.asked = hour.step, level, first + begin, first + end
        if not self.asked:
            return
        at = math.floor(self.asked[3])
        after = [c for c in self.calm if c[0] > at]
        if len(after) < (6 if self.near else 12):
            return
        leap, self.asked = self.asked, None
        if self.stays(leap, at, after):
            self.leap(leap, at // 3, number)

    def stays(self, leap, at, after):
        ln = math.log1p(leap[0] / leap[1])
        before = [c for c in self.calm if at - 12 <= c[0] < at][-6:]
        days = [c[1] for c in self.calm if at - 72 <= c[0] < at]
        if len(days) < 24:
            days = [c[1] for c in self.calm if at - 240 <= c[0] < at][-24:]
        if len(before) < 3 or len(days) < 24:
            return False
        stood, stand = np.median([c[1] for c in before]), np.median([c[1] for c in after])
        odd = sum(not (c[1] - stood) / ln > 0.5 for c in after)
        if not 0.6 < (stand - stood) / ln < 1.6 or not (stand - np.median(days)) / ln > 0.5 or 6 * odd > len(after):
            return False
        if not self.near:
            return stand / ln > 0.4
        far = self.near.distances((stand - stood, np.median([c[2] for c in after]) - np.median([c[2] for c in before])))
        ray = 4 if ln > 0 else 5
        return min(far[i] for i in range(8) if i != ray) - far[ray] > 2

    def leap(self, leap, start, number):
        block, end = number // 3, number + 1
        same = self.is_open() and self.opened >= start
        if self.is_open() and not same and not self.is_water():
            return
        self.end_block(block, 1)
        if same:
            self.leapt = leap
            self.judge(block, True)
            self.reported = self.summary()
            self.book.tell(CHANGED, end, self.track)
        else:
            origin = np.zeros(4)
            if self.is_open():
                origin = self.before(start)
                self.rest(start, end)
            up = leap[0] > 0
            self.fresh(*((R, -1 if up else 1) if self.near else (D, 1 if up else -1)), start, block, end)
            self.origin, self.leapt = origin, leap
            self.show(False, start, block, end)
        self.blocks.pop()

    def add(self, number, quantities):
        found = None
        for c in quantities:
            s = self.base.scale[c]
            x = self.hours[-1][1][c] - self.base.centre[c]
            if not s > 0 or x != x:
                continue
            z = min(6.0, max(-6.0, x / s))
            for way, sign in ((0, 1), (1, -1)):
                before = self.sums[c, way]
                self.sums[c, way] = max(0.0, before + (sign * z - SLACK) / 6)
                if before == 0 and self.sums[c, way] > 0:
                    self.starts[c, way] = number // 3
                if c != R and self.sums[c, way] > 0 and number - 3 * self.starts[c, way] > 336:
                    self.sums[c, way] = 0.0
                if self.sums[c, way] > (QUICK if c == R else FULL) and self.told(number, c, way, sign):
                    if found is None or self.sums[c, way] > self.sums[found]:
                        found = (c, way)
        return found

    def told(self, number, c, way, sign):
        rows = self.hours if c == R else self.hours[self.since_hour(number - 167):]
        standing = Standing(sign * (known([h[1][c] for h in rows]) - self.base.centre[c]) / self.base.scale[c])
        full = self.sums[c, way] > FULL
        if c == R:
            quick = standing.quick()
            if quick and self.base.strokes:
                quick = standing.quick_over_tides()
            elif quick and self.tide.seen():
                self.tide.tell(number + 1)
                quick = standing.quick_over_tides()
            away = quick or full and (standing.days() or not self.base.strokes and not self.tide.known() and standing.grown())
        else:
            away = standing.median(0, 24, 1) > 1
        if full and not away:
            self.sums[c, way] = FULL
        return away

    def end_block(self, block, least):
        rows = [h[1] for h in self.hours if h[0] >= 3 * block]
        row = np.full(4, NAN)
        for c in range(4):
            values = known([r[c] for r in rows])
            if len(values) >= least and self.base.scale[c] > 0:
                row[c] = np.median(values) - self.base.centre[c]
        self.blocks = (self.blocks + [(block, row)])[-336:]
        return row

    def block(self, block):
        row = self.end_block(block, 2)
        if row[D] == row[D]:
            self.last_dry = block
        if self.is_open():
            end = 3 * (block + 1)
            self.go_on(block, end)
            if (block + 1) % 8 == 0 and self.is_water():
                found = season_step(self.blocks, block, self.base, self.settled)
                if found:
                    self.overtake(R, found[1], found[0], block, end)
        else:
            first = min([block] + [int(self.starts[at]) for at in np.ndindex(4, 2) if self.sums[at] > 0])
            self.blocks = self.blocks[self.since_block(first - 96):]
        self.small.block(block, self.hours, self.start if self.is_open() and not self.is_water() else None)

    def last_day(self, c):
        return middle([b[1][c] for b in self.blocks[-8:]])

    def begin(self, found, block, end):
        c, sign = found[0], 1 - 2 * found[1]
        if self.is_open():
            self.overtake(c, sign, int(self.starts[found]), block, end)
            return
        earliest = min([int(self.starts[found])] + [int(self.starts[at]) for at in np.ndindex(4, 2) if self.sums[at] > FULL])
        told = c == R and self.small.is_now(self.hours)
        same = not told and self.comes_back(self.__dict__, c, sign, earliest)
        sooner = not told and not same and self.comes_back(self.other, c, sign, earliest)
        if not told and not same and not sooner and self.weak[found] >= 2 and not abs(self.last_day(c)) > 3 * self.base.scale[c]:
            self.sums[:] = 0
            if self.doubt is None:
                self.doubt = self.book.open("BASELINE_DOUBTFUL", 3 * int(self.starts[found]), end)
                self.doubt.latest, self.doubt.direction = end, UP if sign > 0 else DOWN
                self.book.tell(FOUND, end, self.doubt)
            return
        if sooner:
            self.turn()
        elif not same:
            self.fresh(c, sign, earliest, block, end)
        self.origin = np.zeros(4)
        self.show(same or sooner, earliest, block, end)

    def overtake(self, c, sign, earliest, block, end):
        """Lets what is open rest: something else began within it."""
        origin = self.before(earliest)
        self.rest(earliest, end)
        sooner = not (c == R and self.small.is_now(self.hours)) and self.comes_back(self.other, c, sign, earliest)
        if sooner:
            self.turn()
        else:
            self.fresh(c, sign, earliest, block, end)
        self.origin = origin
        self.show(sooner, earliest, block, end)

    def rest(self, since, end):
        if self.water_until >= since:
            self.track.names = [self.water]
        self.track.end(3 * since)
        self.closed, self.rests = since, True
        self.book.tell(CLOSED, end, self.track)

    def before(self, block):
        """Where things stood before a block: dry quantities over five days, the velocity at its depth from twelve to four days before."""
        found = np.zeros(4)
        rows = self.hours[self.since_hour(3 * block - 120):self.since_hour(3 * block)]
        for q in (D, U, Q):
            m = middle([h[1][q] for h in rows])
            found[q] = m - self.base.centre[q] if m == m else 0.0
        far = known([b[1][R] for b in self.blocks[self.since_block(block - 96):self.since_block(block - 32)]])
        found[R] = float(np.median(far)) if len(far) >= 12 else 0.0
        return found

    def fresh(self, c, sign, earliest, block, end):
        if self.by_relation != (c == R):
            self.turn()
        self.__dict__.update(unborn(), closed=self.closed)
        self.track = self.book.open("LEVEL_UP", 3 * earliest, end)
        self.channel, self.sign, self.start, self.seen, self.opened = c, sign, earliest, earliest, block
        self.spell, self.spell_told, self.spell_at = earliest, block, end
        if c != R and self.settled:
            for _, row in self.blocks[self.since_block(earliest):]:
                if row[D] == row[D] and row[U] == row[U]:
                    self.stands = 0.5 ** (1 / 56) * self.stands + [row[D], row[U], 1.0, row[U] - self.settled.b * row[D]]
            self.spell_stands = self.stands.copy()

    def show(self, returned, since, block, end):
        if returned:
            self.shut, self.shut_largest = self.track.copy(), self.largest
            self.spell, self.spell_told, self.spell_at, self.spell_stands = since, block, end, np.zeros(4)
            self.quiet = None
            self.track.stand_again(3 * since)
        self.risen, self.rests = True, False
        self.judge(block, returned)
        slowly = None if returned or self.is_water() or self.leapt else self.small.give(self.hours)
        if slowly is not None:
            mine, self.track, self.slowly = self.track, slowly, True
            for what in ("names", "direction", "moved", "alarm", "soffit"):
                setattr(slowly, what, getattr(mine, what))
            self.book.last -= 1
        self.reported = self.summary()
        self.book.tell(RETURNED if returned else FOUND if slowly is None else CHANGED, end, self.track)

    @staticmethod
    def comes_back(last, c, sign, earliest):
        track = last["track"]
        if track is None or track.open:
            return False
        length = last["closed"] - last["start"]
        held = track.names[0] == "HELD_UP" and last["origin"][D] == 0
        if earliest - last["closed"] > (168 if held else max(40, min(168, length + length // 2))):
            return False
        if c == last["channel"] and sign == last["sign"]:
            return True
        if last["origin"][D] != 0:
            return False
        more = {"MORE_WATER": 1, "LESS_WATER": -1}.get(track.names[0], 0)
        if more:
            return c != R and sign == more
        way = {"HELD_UP": 1, "RELEASED": -1}.get(track.names[0], 0)
        return bool(way and c != Q and sign == (way if c == D else -way))

    def summary(self):
        t = self.track
        return list(t.names), t.shape, t.recurrence() is not None, t.alarm is not None

    def go_on(self, block, end):
        self.fall(end)
        day = self.last_day(self.channel) - self.origin[self.channel]
        self.largest = max(self.largest, abs(day) / self.base.scale[self.channel] if day == day else 0.0)
        if self.there(block):
            self.vote(block)
        if self.over(block):
            self.judge(block, False)
            self.longer_name(block)
            self.track.end(self.last_away(block))
            self.closed = block
            if block - self.start < 480 and self.largest < 3 and self.track.returns == 0:
                self.weak[self.channel, 0 if self.sign > 0 else 1] += 1
            self.sums[:] = 0
            self.book.tell(CLOSED, end, self.track)
            if self.still_stands(self.other):
                self.resume(block - 15, end)
            else:
                self.other["rests"] = False
        elif (block + 1) % 8 == 0 or block - self.opened < 16:
            self.judge(block, True)
            if not self.part(block, end) and self.summary() != self.reported:
                self.reported = self.summary()
                self.book.tell(CHANGED, end, self.track)

    def away(self):
        return self.sign * (self.last_day(self.channel) - self.origin[self.channel]) / self.base.scale[self.channel]

    def there(self, block):
        """Whether it stands away, or is not known to be gone; on the first day it was told that it does."""
        return block - self.spell_told < 8 or not self.away() < SLACK

    def is_long(self, block):
        return block - self.spell >= 80

    def other_doubts(self):
        return self.shut is not None and doubts(self.shut.names) != doubts(self.track.names)

    def longer_name(self, block):
        """What came back for a short time leaves the name of what stood for longer."""
        if self.is_long(block) or not self.other_doubts():
            return
        then, now = self.shut.names, self.track.names
        if not named(now) or named(then) and block - self.spell < self.closed - self.start:
            self.track.names = list(then)

    def part(self, block, end):
        """What came back for long and doubts other readings is a finding of its own, if what closed was not small."""
        if not (self.is_long(block) and self.shut_largest >= 3 and self.other_doubts() and named(self.shut.names)):
            return False
        both = self.track
        self.book.tell(CLOSED, end, self.shut)
        own = self.track = self.book.open("LEVEL_UP", 3 * self.spell, self.spell_at)
        own.names, own.direction, own.latest, own.moved = both.names, both.direction, self.spell_at, both.moved
        self.start, self.opened, self.apart_from, self.shut, self.leapt, self.slowly = self.spell, self.spell_told, self.closed, None, None, False
        self.largest, self.water_until, self.may_be_water = self.away(), NEVER, False
        self.votes, self.stands, self.across, self.across_too = [], self.spell_stands.copy(), None, None
        self.judge(block, True)
        self.reported = self.summary()
        self.book.tell(FOUND, end, own)
        return True

    def still_stands(self, other):
        """Whether what another change began within is there, over the last two days."""
        c = other["channel"]
        last = known([b[1][c] for b in self.blocks[self.since_block(self.blocks[-1][0] - 15):]])
        return len(last) >= 3 and other["sign"] * float(np.median(last)) > 0.3 * self.base.scale[c]

    def over(self, block):
        """As usual for two days, and for twice as long with each return, up to sixteen, or four of water held up; but not within a season."""
        if not self.as_usual(block):
            if self.quiet is not None:
                self.spell, self.spell_told, self.spell_at, self.spell_stands = block, block, 3 * (block + 1), np.zeros(4)
            self.quiet = None
            return False
        self.quiet = block if self.quiet is None else self.quiet
        most = 4 if self.track.names[0] == "HELD_UP" else 16
        days = 2 if self.origin[D] != 0 else min(most, 2 * 2 ** self.track.returns)
        return block - self.quiet >= 8 * (days - 2)

    def as_usual(self, block):
        if block - self.spell_told < 8:
            return False
        rows = self.blocks[self.since_block(block - 15):]
        for c in range(4):
            if c != self.channel and self.origin[D] != 0:
                continue
            values = known([b[1][c] for b in rows])
            if c == self.channel and len(values) < 3:
                return False
            left = 0.3 if self.origin[D] != 0 else max(0.3, min(SLACK, 0.15 * self.largest))
            limit = (left if c == self.channel else 0.9) * self.base.scale[c]
            if len(values) and not abs(np.median(values) - self.origin[c]) < limit:
                return False
        dry = len(known([b[1][D] for b in rows]))
        return block - max(self.last_dry, self.opened) > 80 or dry >= 3 or self.base.scale[D] == 0

    def last_away(self, block):
        seen = block + 1
        for number, row in reversed(self.blocks):
            if number < self.start:
                break
            if self.sign * (row[self.channel] - self.origin[self.channel]) > SLACK * self.base.scale[self.channel]:
                return 3 * seen
            seen = number if np.isfinite(row).any() else seen
        return 3 * (block + 1)

    def fall(self, end):
        relation = self.base.scale[R] > 0
        sign = self.sign if not relation or self.channel == R else {"HELD_UP": -1, "RELEASED": 1}.get(self.track.names[0], 0)
        if self.largest < 2 or sign == 0:
            return
        c = R if relation else self.channel
        away = {b: sign * (row[c] - self.origin[c]) / self.base.scale[c] for b, row in self.blocks}
        now = away[self.blocks[-1][0]]
        risen, fallen = max(SLACK, 0.35 * self.largest), max(0.3, 0.15 * self.largest)
        if now != now:
            return
        if not self.risen:
            self.risen = now > risen
            return
        low = 0
        for b in sorted(away, reverse=True):
            if away[b] >= fallen:
                break
            before = [away[b - 8 * k] for k in (1, 2, 3) if b - 8 * k in away and away[b - 8 * k] == away[b - 8 * k]]
            low += away[b] < fallen and bool(before) and before[0] > risen
            if low == 2:
                break
        # What builds up anew at once is hardly ever as usual, but drops within a day.
        last = self.blocks[-1][0]
        now, then = ([away.get(last - back - day, NAN) for back in range(4)] for day in (0, 8))
        drop = np.array(then) - np.array(now)
        dropped = not np.isnan(drop).any() and np.median(drop) >= max(0.5 * self.largest, 1.5) and np.median(now) <= 0.3 * self.largest
        if low == 2 or dropped:
            self.risen = False
            self.track.falls.append(end)

    # Names

    def dry_pair(self, rows, least):
        both = [(h[1][D], h[1][U]) for h in rows if h[1][D] == h[1][D] and h[1][U] == h[1][U]]
        return np.median(np.array(both), axis=0) if len(both) >= least and both else np.array([NAN, NAN])

    def apart(self, rays, at):
        """Distances from the names; what the velocity at its depth told is never water alone."""
        found = rays.distances(at)
        if self.channel == R:
            found[2:4] = 1e300
            self.no_opposite(found)
        return found

    def no_opposite(self, found):
        """A name by which the velocity at its depth would have moved the other way is none."""
        parts = self.near.rays[:, 1] - self.near.rays[2, 1] * self.near.rays[:, 0]
        parts[2:4] = 0
        found[parts * self.sign < 0] = 1e300

    def stand(self, block):
        last, begin = 3 * (block + 1), 3 * self.seen
        for first in (max(last - 96, begin + 12), max(last - 96, begin)):
            at = self.dry_pair(self.hours[self.since_hour(first):], 4) - self.origin[[D, U]]
            if at[0] == at[0]:
                break
        return at

    def vote(self, block):
        at = self.stand(block)
        if at[0] == at[0]:
            keep = 0.5 ** (1 / 56)
            first = self.since_hour(max(3 * (block + 1) - 96, 3 * self.seen))
            apart = middle([h[1][PLAIN] for h in self.hours[first:] if h[1][D] == h[1][D]]) - self.base.centre[R]
            new = np.array([at[0], at[1], 1.0, 0.0 if apart != apart else apart])
            self.stands, self.spell_stands = keep * self.stands + new, keep * self.spell_stands + new
        if block - self.start <= 224:
            self.votes.append(None if self.near is None or at[0] != at[0] else int(np.argmin(self.apart(self.near, at))))

    def name(self, block):
        t = self.track
        if self.near and self.leapt:
            t.names, self.named = ["DEPTH_STEP"], 4 if self.leapt[0] > 0 else 5
            return
        at = self.stand(block)
        if self.near is None or at[0] != at[0]:
            if self.near is None or all(v is None for v in self.votes):
                up = self.sign > 0
                t.names = [("VELOCITY_HIGH_FOR_DEPTH" if up else "VELOCITY_LOW_FOR_DEPTH") if self.channel == R else "LEVEL_UP" if up else "LEVEL_DOWN"]
            return
        self.over_the_step(block)
        distances = self.apart(self.near, at)
        best = int(np.argmin(distances))
        second = alike(distances, best)
        cast = [v for v in self.votes[int(0.3 * len(self.votes)):] if v is not None]
        if len(cast) >= 8:
            counts = np.bincount(cast, minlength=8)
            most = int(np.argmax(counts))
            others = [i for i in range(8) if i != most and counts[i] >= 0.3 * len(cast)]
            following = max(others, key=lambda i: counts[i]) if others else None
            if most != best:
                second = best if distances[most] - distances[best] < 4 else following
                best = most
            elif second is None:
                second = following
        beside = self.across_too if self.across == best else self.across
        stepped = t.shape != RAMP and beside is not None
        if stepped:
            second = beside
        if self.stands[2] >= 50 and not (self.channel == R and stepped) and self.origin[D] == 0:
            best, second = self.weeks(best, second)
        self.named = best
        names = list(words(best, t.shape))
        if second is not None and second != best:
            names += [w for w in words(second, t.shape) if w not in names]
        d, u = self.spell_stands[:2]
        if best == 0 and self.is_long(block) and self.spell_shape(block) == RAMP and self.spell_stands[2] >= 50 and u > -0.8 * self.base.kappa * d and "SEDIMENT" not in names:
            names.append("SEDIMENT")
        t.names = names

    def weeks(self, best, second):
        far = self.apart(self.settled, self.stands[:2] / self.stands[2])
        nearest = int(np.argmin(far))
        first = nearest if far[best] - far[nearest] > 4 else best
        if second is None or far[second] - far[nearest] > 4:
            second = alike(far, first)
        if first in (2, 3) and second is not None and second >= 4:
            wanted = self.settled.b * self.stands[0] if second <= 5 else self.stands[1]
            if abs(self.stands[3]) < 0.4 * abs(wanted):
                second = None
        return first, second

    def over_the_step(self, block):
        t = self.track
        if t.shape != STEP or block - self.opened > 32:
            return
        first, after = math.floor(t.earliest), math.floor(t.latest)
        before = self.hours[self.since_hour(first - 120):self.since_hour(first)]
        m = self.dry_pair(before, 12)
        if m[0] != m[0] or not self.near.away(m):
            return
        moved = []
        for c in (D, U):
            differences = []
            for number, row in self.hours[self.since_hour(after):]:
                same = [r[c] for n, r in before if (number - n) % 24 == 0 and r[c] == r[c]]
                differences.append(row[c] - same[-1] if same else NAN)
            moved.append(middle(differences) if len(known(differences)) >= 6 else NAN)
        if moved[0] == moved[0] and moved[1] == moved[1]:
            distances = self.near.widened(m).distances(moved)
            if self.channel == R:
                self.no_opposite(distances)
            self.across = int(np.argmin(distances))
            self.across_too = alike(distances, self.across)

    # Shape, figures, forecasts

    def judge(self, block, again):
        t = self.track
        if self.leapt or self.there(block):
            if (block - self.start <= 240 or block == self.opened) and (again or t.shape == UNCERTAIN):
                self.shape(block)
            self.name(block)
        t.direction = UP if self.sign > 0 else DOWN
        stands = self.away()
        if not t.moved or stands >= 0.75 and stands >= 0.8 * self.largest:
            t.moved = self.medians(max(3 * (block + 1) - 96, math.floor(t.since)))
            if self.channel not in [m[0] for m in t.moved]:
                t.moved = self.medians(max(3 * (block + 1) - 96, 3 * self.start))
        self.forecast(block)
        self.may_be_water |= any(n in ("MORE_WATER", "LESS_WATER") for n in t.names)
        if self.is_water():
            self.water_until, self.water = block, t.names[0]

    def medians(self, hour):
        """How far each quantity lies from its usual over the hours from one on that know it, three at least."""
        rows, found = [row for number, row in self.hours if number >= hour], []
        for c in range(4):
            values = known([row[PLAIN if c == R else c] for row in rows])
            if self.base.scale[c] > 0 and len(values) > 2:
                found.append((c, math.expm1(np.median(values) - self.base.centre[c]), self.base.scale[c] / FACTOR[c], len(values)))
        return found

    def row_from(self, kept, block):
        x = np.full(block - kept[0][0] + 1, NAN)
        for number, row in kept:
            x[number - kept[0][0]] = row[self.channel] - self.origin[self.channel]
        return x

    def spell_shape(self, block):
        """How it came, or came back last."""
        if self.shut is None:
            return self.track.shape
        kept = self.blocks[self.since_block(max(self.spell - 96, self.closed + 1)):]
        return shape_of(self.row_from(kept, block), self.spell_told - kept[0][0])[0]

    def shape(self, block):
        t = self.track
        if self.leapt:
            t.shape, t.since, t.earliest, t.latest = STEP, self.leapt[3], self.leapt[2], self.leapt[3]
            return
        if self.slowly:
            return
        kept = self.blocks[self.since_block(max(self.start - 96, self.apart_from + 1, block - 336)):]
        first = kept[0][0]
        if (math.ceil(t.found) - 1) // 3 < first:
            return
        x = self.row_from(kept, block)
        t.shape, onset, earliest, latest, unknown = shape_of(x, (math.ceil(t.found) - 1) // 3 - first)
        t.since, t.earliest, t.latest = 3 * (first + onset), 3 * (first + max(0, earliest - 1)), 3 * (first + latest + 1)
        if unknown:
            t.earliest = min(3 * first, self.base.end + FIRST_HOUR)
        if t.shape == STEP:
            self.step_hour(3 * (first + onset))
        t.since = min(t.since, t.found)
        t.earliest = min(t.earliest, t.since)
        t.latest = max(t.since, min(t.latest, t.found))

    def step_hour(self, about):
        t = self.track
        if not self.hours or self.hours[0][0] > about - 3:
            return
        rows = [(n, r[self.channel] - self.base.centre[self.channel]) for n, r in self.hours if about - 24 <= n < about + 27 and r[self.channel] == r[self.channel]]
        if len(rows) < 8:
            return
        n, x = [r[0] for r in rows], np.array([r[1] for r in rows])
        tried = sum(hour < t.found for hour in n)
        if tried < 2:
            return
        left = np.array([NAN] + [k * np.var(x[:k]) + (len(x) - k) * np.var(x[k:]) for k in range(1, tried)])
        best = int(np.nanargmin(left))
        limit = left[best] * (1 + 4 / max(2.0, 0.25 * len(x)))
        first = final = best
        while first > 1 and left[first - 1] <= limit:
            first -= 1
        while final < tried - 1 and left[final + 1] <= limit:
            final += 1
        t.since, t.earliest, t.latest = n[best], n[first - 1], n[final] + 1

    def forecast(self, block):
        t = self.track
        t.alarm = t.soffit = None
        if not self.base.scale[D] > 0:
            return
        rows = [(n, r[D]) for n, r in self.blocks[self.since_block(max(self.start, block - 112)):] if r[D] == r[D]]
        if len(rows) < 8:
            return
        at = np.array([(n - block) / 8 for n, _ in rows])
        y = self.base.peak * np.exp([r for _, r in rows])
        slopes = np.sort([(y[j] - y[i]) / (at[j] - at[i]) for i in range(len(y)) for j in range(i + 1, len(y))])
        ties = np.unique(y, return_counts=True)[1]
        n = len(y)
        spread = stats.norm.ppf(0.975) * math.sqrt((n * (n - 1) * (2 * n + 5) - sum(k * (k - 1) * (2 * k + 5) for k in ties)) / 18)
        rank = lambda r: float(np.interp(r - 1, np.arange(len(slopes)), slopes))
        slope, lower, upper = float(np.median(slopes)), rank((len(slopes) - spread) / 2), rank((len(slopes) + spread) / 2 + 1)
        level = float(np.median(y) - slope * np.median(at))

        def reach(goal):
            rise = goal - level
            if not (rise > 0 and lower > 0 and rise / slope <= 365 and rise / lower <= 3650):
                return None
            when = lambda days: 3 * (block + 1) + math.floor(days * 86400 + 0.5) / 3600
            return when(rise / slope), when(rise / upper), when(rise / lower)

        t.alarm = reach(self.alarm) if self.alarm else None
        t.soffit = reach(self.base.pipe.diameter)

    def finish(self, end):
        if self.is_open():
            block = self.blocks[-1][0]
            self.judge(block, True)
            if not self.part(block, end):
                self.longer_name(block)
            self.book.tell(STANDING, end, self.track)
        self.small.finish(end)
