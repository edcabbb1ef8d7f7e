"""Constructed records of a site, from a line of numbers: the same recipe that the proof follows in Java, written here by itself.

A site is twelve numbers: seed, days, minutes between readings, mean depth (m), daily amplitude of ln depth, exponent of the velocity,
mean velocity (m/s), scatter of ln depth by the hour, by the day, scatter of ln velocity by the reading, by the day, and amplitude
of a tide in ln depth. What is done to it stands in rows of five numbers: what, from hour, to hour, a, b. Random numbers are whole
numbers of 64 bits, so that both sides draw the same. Readings are rounded to 0.1 mm and 0.1 mm/s,
but for those that were set.
"""

import numpy as np

LATE_AT_REST = 1.5
TIDE = 12.4206012
WORD = (1 << 64) - 1


class Draws:
    def __init__(self, seed):
        self.state = seed

    def normal(self):
        total = 0.0
        for _ in range(4):
            self.state = (self.state * 6364136223846793005 + 1442695040888963407) & WORD
            total += (self.state >> 11) * 2.0 ** -53
        return (total - 2.0) * 1.7320508075688772

    def normals(self, count):
        return np.array([self.normal() for _ in range(count)])


class Record:
    """Minutes since the begin (a Monday, UTC), depths, velocities and rains; rains are of the time up to the reading."""

    def __init__(self, site, changes):
        seed, days, step, depth, day, exponent, speed, hourly, daily, noise, parted, tide = site
        draws = Draws(int(seed))
        count = int(days) * 1440 // int(step)
        a_day = 1440 // int(step)
        self.minutes = int(step) * np.arange(count)
        hour = self.minutes / 60.0
        by_day = draws.normals(int(days) + 1)
        by_hour = draws.normals(int(days) * 24)
        apart = draws.normals(int(days) + 1)
        of_depth = draws.normals(count)
        of_velocity = draws.normals(count)
        number = np.arange(count) // a_day
        share = (np.arange(count) % a_day) / a_day
        rest = number % 7 >= 5
        clock = hour % 24 - np.where(rest, LATE_AT_REST, 0.0)
        wave = np.sin(2 * np.pi * (clock - 9) / 24) + 0.4 * np.sin(4 * np.pi * clock / 24)
        between = lambda v: v[number] + (v[number + 1] - v[number]) * share
        moon = tide * np.cos(2 * np.pi * hour / TIDE)
        usual = day * wave + daily * between(by_day) + hourly * by_hour[self.minutes // 60]
        self.depths = depth * np.exp(usual + moon + 0.25 * noise * of_depth)
        self.velocities = speed * np.exp(exponent * usual - 1.2 * moon + parted * between(apart) + noise * of_velocity)
        self.rains = np.zeros(count)
        self.lost = np.zeros(count, dtype=bool)
        self.step = int(step)
        self.exact = np.zeros((2, count), dtype=bool)
        for row in np.reshape(changes, (-1, 5)):
            self.change(int(row[0]), row[1], row[2], row[3], row[4])
        self.depths = np.where(self.exact[0], self.depths, np.rint(self.depths * 1e4) / 1e4)
        self.velocities = np.where(self.exact[1], self.velocities, np.rint(self.velocities * 1e4) / 1e4)
        keep = ~self.lost
        self.minutes, self.depths, self.velocities, self.rains = (v[keep] for v in (self.minutes, self.depths, self.velocities, self.rains))

    def index(self, hour):
        return int(min(len(self.depths), np.floor(hour * 60 / self.step + 0.5)))

    def change(self, what, begin, end, a, b):
        first, last = self.index(begin), self.index(end)
        at = slice(first, last)
        i = np.arange(first, last)
        between = a + (b - a) * (i - first) / max(1, last - first)
        d, v = self.depths, self.velocities
        if what == 0:
            d[at] *= between
        elif what == 1:
            v[at] *= between
        elif what == 2:
            d[at] = a
        elif what == 3:
            v[at] = a
        elif what == 4:
            self.lost[at] = True
        elif what == 5:
            d[at] = np.nan
        elif what == 6:
            v[at] = np.nan
        elif what == 7:
            d[at] = d[first]
        elif what == 8:
            v[at] = v[first]
        elif what == 9:
            v[at] = np.where(i % int(b) == 0, a, v[at])
        elif what == 10:
            v[at] *= np.where(i % int(b) == 0, a, 1.0)
        elif what in (11, 12):
            source = np.clip(i - int(np.floor(a * 60 / self.step + 0.5)), 0, len(d) - 1)
            if what == 11:
                d[at], v[at] = d[source], v[source]
            else:
                self.rains[at] = self.rains[source]
        elif what == 13:
            d[at] *= np.exp(a * np.sin(2 * np.pi * (self.minutes[at] / 60.0) / b))
        elif what == 14:
            self.minutes[at] += int(a)
        elif what == 15:
            self.rains[at] = np.nan
        elif what == 16:
            self.rains[at] += a
        elif what == 17:
            hours = (i - first) * self.step / 60.0
            runoff = np.exp(a * (hours / b) * np.exp(1 - hours / b))
            d[at] *= runoff
            v[at] *= runoff ** 0.6
        elif what == 18:
            d[at] *= 1 + a * (i % int(b))
        elif what == 19:
            d[at] += a
        elif what in (20, 21):
            (d if what == 20 else v)[at] = a
            self.exact[what - 20, at] = True
        elif what == 23:
            v[at] = a * np.rint(v[at] / a)
        elif what == 22:
            d[at], v[at] = v[at] / a, d[at] * a
            self.exact[:, at] = True
        else:
            raise ValueError(what)
