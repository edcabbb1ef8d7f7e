"""Small changes of the velocity at its depth, by weeks of days, as the page on the watch has them.

Used by site_changes.py and site_slow_limits.py. Hours, blocks of three and days are numbered from 1970. Knows nothing of the library.
Python 3.11, numpy 2.
"""

import math

import numpy as np

from site_hours import FIRST_HOUR, known, middle

LIMITS = dict(scatters=3.0, least=0.06, days=21, least_days=14, within=28, now=7, over=0.5, other=3.0, returns=42, shapes=30, hours=8, kept=120)
FOUND, CHANGED, RETURNED, CLOSED, STANDING = range(5)
UP, DOWN = 0, 1
WORDS = {UP: "VELOCITY_HIGH_FOR_DEPTH", DOWN: "VELOCITY_LOW_FOR_DEPTH"}


class Weeks:
    def __init__(self, base, book, shape_of, limits=None):
        self.base, self.book, self.shape_of, self.of = base, book, shape_of, limits or LIMITS
        self.days, self.today, self.track = {}, None, None

    def limit(self):
        return max(self.of["least"], self.of["scatters"] * self.base.day_scatter) if self.base.scale[0] > 0 else math.inf

    def is_open(self):
        return self.track is not None and self.track.open

    def sign(self):
        return 1 if self.track.direction == UP else -1

    def drop(self, day):
        self.days = {n: v for n, v in self.days.items() if n < day}

    def block(self, block, hours, quick):
        """Ends a block; hours are the last ones kept, quick is the block since which a quick change stands."""
        end = 3 * (block + 1)
        if quick is not None:
            self.drop(quick // 8)
            if self.is_open():
                self.close(3 * quick, end)
        elif self.today not in (None, block // 8):
            self.end_day(hours, end)
        self.today = block // 8

    def close(self, at, end):
        self.track.end(at)
        self.book.tell(CLOSED, end, self.track)

    def end_day(self, hours, end):
        values = known([row[0] for number, row in hours if number // 24 == self.today])
        if len(values) < self.of["hours"]:
            return
        self.days[self.today] = (float(np.median(values)) - self.base.centre[0], len(values))
        self.days = dict(sorted(self.days.items())[-self.of["kept"]:])
        self.look(end)

    def look(self, end):
        last = [v for n, v in self.days.items() if n > self.today - self.of["within"]][-self.of["days"]:]
        if len(last) < self.of["least_days"]:
            return
        x = np.array([v[0] for v in last])
        m, hours = float(np.median(x)), sum(v[1] for v in last)
        if self.is_open():
            self.go_on(m, hours, end)
        elif abs(m) > self.limit() and math.copysign(1, m) * np.median(x[-self.of["now"]:]) > self.of["over"] * self.limit():
            way, old = UP if m > 0 else DOWN, self.track
            if old is not None and old.direction == way and end - old.closed < 24 * self.of["returns"]:
                kind = RETURNED
                old.stand_again(24 * [n for n in self.days if n > self.today - self.of["within"]][-self.of["days"]:][0])
            else:
                self.track, kind = self.book.open(WORDS[way], 0, end), FOUND
                self.track.direction = way
                self.shape()
            self.show(m, hours)
            self.book.tell(kind, end, self.track)

    def go_on(self, m, hours, end):
        t = self.track
        if self.sign() * m < self.of["over"] * self.limit():
            away = [n for n, v in self.days.items() if self.sign() * v[0] >= self.of["over"] * self.limit()]
            self.close(24 * (max(away) + 1) if away else 24 * (min(self.days) + 1), end)
            return
        if self.sign() * m > self.limit():
            self.show(m, hours)
        before = t.shape
        if t.returns == 0 and end - t.found <= 24 * self.of["shapes"]:
            self.shape()
        if t.shape != before:
            self.book.tell(CHANGED, end, t)

    def show(self, m, hours):
        self.track.moved = [(0, math.expm1(m), self.base.day_scatter, hours)]

    def shape(self):
        t, first = self.track, min(self.days)
        told = math.floor(t.found) // 24 - first
        if told < 0:
            return
        x = np.array([self.days[n][0] if n in self.days else math.nan for n in range(first, self.today + 1)])
        t.shape, onset, earliest, latest, unknown = self.shape_of(x, told)
        t.since, t.earliest, t.latest = (24 * (first + n) for n in (onset, max(0, earliest - 1), latest + 1))
        if unknown:
            t.earliest = min(24 * first, self.base.end + FIRST_HOUR)
        t.since = min(t.since, t.found)
        t.earliest = min(t.earliest, t.since)
        t.latest = max(t.since, min(t.latest, t.found))

    def is_now(self, hours):
        """Whether the last hours stand away as its open finding does, and not by a multiple of the last day."""
        if not self.is_open() or not self.days:
            return False
        last = self.sign() * self.days[max(self.days)][0]
        now = self.sign() * (middle(known([row[0] for _, row in hours])[-6:]) - self.base.centre[0])
        return 0 < now <= self.of["other"] * max(self.limit(), last)

    def give(self, hours):
        if not self.is_now(hours):
            return None
        given, self.track = self.track, None
        self.drop(math.floor(given.since) // 24)
        return given

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)
