"""A site watched hour by hour, as the pages on the watch and on clocks have it: single readings, clocks, gauge, tide; changes beside.

Used by site_watches.py. Hours are numbered from 1970. Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import datetime as dt
import math

import numpy as np

from site_changes import CHANGED, CLOSED, DOWN, FOUND, NO_WAY, NOTED, RETURNED, STANDING, STEP, UNCERTAIN, UP, Book, Changes, Finding
from site_hours import FIRST_HOUR, MOON, NAN, Bounds, Ebb, Storms, Weather, hours, middle, robust, storm_fit
from site_levels import Levels, lowest_hour
from site_exchanges import Exchanges
from site_units import Units

BOOK = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))


class Moon:
    """A tide that the baseline did not show: least squares of what the dry depth leaves over, half forgotten after ten days."""

    def __init__(self, by_baseline, book):
        self.by_baseline, self.book, self.was_told = by_baseline, book, False
        self.at, self.x, self.kept = [], [], {}

    def take(self, number, left):
        if not self.by_baseline and left == left:
            self.at.append(number)
            self.x.append(left)

    def weighted(self):
        at = np.array(self.at, dtype=float)
        weights = 0.5 ** ((at[-1] - at) / 240)
        turns = [2 * np.pi * (np.array(self.at) % 1_000_000) / period for period in (24, 12, MOON)]
        return weights, np.column_stack([np.ones(len(at))] + [f(t) for t in turns for f in (np.cos, np.sin)]), np.array(self.x)

    def runs(self):
        if not self.at:
            return False
        if self.at[-1] not in self.kept:
            weights, rows, x = self.weighted()
            seen = False
            if weights.sum() >= 120:
                root = np.sqrt(weights)
                left = []
                for columns in (7, 5):
                    fit = np.linalg.lstsq(rows[:, :columns] * root[:, None], x * root, rcond=None)[0]
                    left.append(float(np.sum(weights * (x - rows[:, :columns] @ fit) ** 2)))
                    if columns == 7:
                        amplitude = math.hypot(fit[5], fit[6])
                seen = amplitude > 0.05 and left[1] - left[0] > 0.15 * left[1]
            self.kept[self.at[-1]] = seen
        return self.kept[self.at[-1]]

    def known(self):
        return self.by_baseline or self.was_told

    def seen(self):
        return self.known() or self.runs()

    def tell(self, end):
        if not self.known():
            self.was_told = True
            remark = Finding(0, "TIDAL", end, end)
            remark.open, remark.closed = False, end
            self.book.tell(NOTED, end, remark)


class Faults:
    """Single readings: each kind by what the last 24 hours hold."""

    KINDS = ("depth", "velocity", "zeros", "echo", "flips", "upstream", "dry", "outside", "lone", "stray")
    LABELS = {"depth": "FROZEN_DEPTH", "velocity": "FROZEN_VELOCITY", "zeros": "VELOCITY_ZEROS", "echo": "WEAK_ECHO", "lone": "FALSE_ECHO", "stray": "FALSE_VELOCITY", "flips": "SIGN_FLIPS",
              "dry": "CONTRADICTORY", "outside": "OUT_OF_RANGE"}

    def __init__(self, base, book):
        self.base, self.book = base, book
        self.tracks = {}
        self.seen_at, self.stands_from = {k: 0 for k in self.KINDS}, {}
        self.beyond = {k: 0 for k in self.KINDS}
        self.rows, self.depths, self.speeds = [], [], []

    def is_open(self, kind):
        return kind in self.tracks and self.tracks[kind].open

    def lifts(self):
        """Depths that rise and fall with no rain: false echoes, and water from below."""
        return any(self.is_open(k) and self.tracks[k].names[0] in ("FALSE_ECHO", "REVERSE_FLOW") for k in self.tracks)

    def explains(self):
        return any(self.is_open(k) for k in ("zeros", "echo", "upstream", "stray"))

    def take(self, hour, number, slows, sinks):
        end = number + 1
        self.froze("depth", "velocity", hour.depth_run, self.base.depth_frozen, end)
        self.froze("velocity", "depth", hour.velocity_run, self.base.velocity_frozen, end)
        up = hour.upstream == hour.upstream
        speed = math.log(hour.upstream) - self.base.law.at(hour.y) if up and hour.y == hour.y and self.base.law else NAN
        self.rows.append((number, dict(looked=hour.looked, zeros=hour.zeros, echo=hour.lower if self.base.narrow else hour.low, flips=hour.flips,
                                       upstream=int(up), dry=int(2 * hour.dry_moving >= hour.readings), outside=int(2 * hour.outside >= hour.readings),
                                       speed=speed)))
        self.depths = [d for d in self.depths if d[0] > number - 24] + [(number, dict(compared=hour.compared, lone=hour.lone))]
        self.rows = [r for r in self.rows if r[0] > number - 24]
        self.speeds = [s for s in self.speeds if s[0] > number - 24] + [(number, dict(held=hour.held, stray=hour.stray_high, below=hour.stray_low))]
        tests = self.base.moving and self.tells("looked")
        limits = dict(zip(("zeros", "echo", "flips"), self.base.limits), lone=self.base.lone_limit, stray=self.base.stray_limit)
        high = sum(s[1]["stray"] > 0 for s in self.speeds) >= 4 and self.total("stray") >= 2 * self.total("below")
        for kind, test in (("lone", self.tells("compared", 18) and not self.base.swings), ("zeros", tests and not slows),
                           ("stray", self.base.moving and not slows and self.tells("held", 18) and high and not self.base.swings), ("echo", tests and not slows), ("flips", None)):
            if kind == "flips":
                test = tests and not self.is_open("upstream")
            if kind == "echo":
                beside = self.total("below") <= self.total("stray") if self.is_open("stray") else high and self.total("stray") > limits["stray"] * self.total("held")
                test = test and not beside
            if not test:
                self.beyond[kind] = 0
                continue
            share = self.total(kind) / self.total({"lone": "compared", "stray": "held"}.get(kind, "looked"))
            self.beyond[kind] = self.beyond[kind] + 1 if share > limits[kind] else 0
            if self.beyond[kind] >= 6 or kind != "stray" and share > 1.25 * limits[kind]:
                self.fault(kind, self.LABELS[kind], self.first(kind), end - 24, end)
        row = not self.is_open("flips") and sum(r[1]["upstream"] for r in self.rows[-3:]) == 3
        if self.base.moving and (row or self.is_open("upstream")) and self.total("upstream") >= self.base.upstream_hours + 3:
            usual = abs(middle([r[1]["speed"] for r in self.rows])) < 0.35
            self.fault("upstream", "REVERSED_SIGN" if usual else "REVERSE_FLOW", self.first("upstream"), self.first("upstream") - 1, end)
        for kind in ("dry", "outside"):
            if self.total(kind) >= 3 and not sinks and not (kind == "outside" and self.is_open("dry")):
                self.fault(kind, self.LABELS[kind], self.first(kind), self.first(kind) - 1, end)
        for kind in self.KINDS:
            quiet = 6 if kind in ("depth", "velocity") else 24
            if self.is_open(kind) and end - self.seen_at[kind] >= quiet:
                self.tracks[kind].open, self.tracks[kind].closed = False, self.seen_at[kind]
                self.book.tell(CLOSED, end, self.tracks[kind])

    def give_away(self, since):
        """The open finding of depths that cannot be, if it began with what another unit explains."""
        for kind in ("dry", "outside"):
            if self.is_open(kind) and abs(self.tracks[kind].since - since) <= 3:
                self.rows = []
                return self.tracks.pop(kind)
        return None

    def of(self, column):
        return self.depths if column in ("compared", "lone") else self.speeds if column in ("held", "stray", "below") else self.rows

    def total(self, column):
        return sum(r[1][column] for r in self.of(column))

    def tells(self, column, hours=6):
        return self.total(column) >= 12 and sum(r[1][column] > 0 for r in self.of(column)) >= hours

    def first(self, column):
        return next((n for n, r in self.of(column) if r[column]), self.of(column)[-1][0])

    def froze(self, kind, other, run, limit, end):
        length, begin = run[0], run[1] + FIRST_HOUR
        if length <= limit:
            return
        if not self.is_open(kind) and self.is_open(other) and abs(self.stands_from[other] - begin) <= 3:
            self.seen_at[other] = end
            if "FROZEN_LOGGER" not in self.tracks[other].names:
                self.tracks[other].names = ["FROZEN_LOGGER"]
                self.book.tell(CHANGED, end, self.tracks[other])
            return
        self.fault(kind, self.LABELS[kind], begin, begin, end)

    @staticmethod
    def again(old, name, since):
        return old is not None and not old.open and (since - old.closed <= 120 or old.begins_again(name, since) or old.begins_again("FROZEN_LOGGER", since))

    def fault(self, kind, name, since, earliest, end):
        old = self.tracks.get(kind)
        back = self.again(old, name, since)
        partner = {"depth": "velocity", "velocity": "depth"}.get(kind)
        if partner and not back and not self.is_open(kind) and partner in self.tracks and self.tracks[partner].begins_again("FROZEN_LOGGER", since):
            old = self.tracks[kind] = self.tracks.pop(partner)
            back = True
        self.seen_at[kind] = end
        if back:
            old.stand_again(since)
            self.stands_from[kind] = since
            if old.names != ["FROZEN_LOGGER"]:
                old.names = [name]
            self.book.tell(RETURNED, end, old)
        elif not self.is_open(kind):
            track = self.book.open(name, since, end)
            track.earliest, track.latest, track.shape = min(earliest, since), since + 1, STEP
            self.tracks[kind], self.stands_from[kind] = track, since
            self.book.tell(FOUND, end, track)

    def finish(self, end):
        for kind in self.KINDS:
            if self.is_open(kind):
                self.book.tell(STANDING, end, self.tracks[kind])


#         days within work shift scatters gain
AGREED = [(2, 6, 2, 0.4, 5.5, 0.5), (3, 8, 2, 0.3, 5, 0.4), (4, 12, 2, 0.3, 4.5, 0.4), (5, 16, 3, 0.3, 4, 0.4), (6, 16, 3, 0.3, 3.6, 0.4),
          (7, 16, 3, 0.28, 3.6, 0.4)]
WITHOUT_FLOW = [(3, 8, 2, 0.7, 4.2, 0.4), (4, 12, 2, 0.5, 4, 0.4), (5, 16, 3, 0.36, 3.8, 0.4), (6, 16, 3, 0.33, 3.6, 0.4), (7, 16, 3, 0.3, 3.6, 0.4)]
AFTER_CIVIL_CHANGE = (2, 2, 1, 0.6, 3.5, 0.4)
# Of the beginning: error of the share of a day that went by both clocks, squares of one day at most, and 95 % of chi-squared.
MIXED_DAY, ONE_DAY, NEARLY_AS_WELL = 0.4, 9.0, 3.84


class MonitorClock:
    RULES, ALONE = AGREED, WITHOUT_FLOW
    LIMITS = dict(work=0.2, rest=0.3, most=6.0, home=1.2, evening=0.1, mixed=0.2, holiday=6, near=0.15, apart=3.0, depth=0.4, near_by_depth=0.2,
                  evening_day=0.6, wide=0.8, small=0.8, evening_alone=0.7, morning_day=0.5, evening_rest=0.5, before=3)

    def __init__(self, base, book, moon):
        self.base, self.book, self.moon = base, book, moon
        self.tests = base.tells_clock
        self.of_depth, self.of_flow, self.days, self.tides = [], [], [], []
        self.track, self.late, self.closed_soon, self.leap = None, 0.0, 0, None

    def is_open(self):
        return self.track is not None and self.track.open

    def shift(self):
        return self.late if self.is_open() else 0.0

    def last_shift(self):
        return self.work(self.days[-3:]) if self.tests and len(self.days) >= 3 else NAN

    @staticmethod
    def work(days):
        return middle([d["x"] for d in days if not d["rest"]])

    def take(self, of_day, y, flow):
        self.of_depth.append((of_day, y))
        if flow == flow:
            self.of_flow.append((of_day, flow))

    def changes(self, first_second, last_second):
        """Instants, in seconds, at which civil clocks change, and by how much."""
        zone, found = self.base.calendar.zone, []
        offset = lambda s: dt.datetime.fromtimestamp(s, zone).utcoffset().total_seconds()
        for s in range(first_second // 3600 * 3600, last_second + 3600, 3600):
            if offset(s) != offset(s - 1):
                found.append((s, offset(s) - offset(s - 1)))
        return found

    def stamps(self, hour):
        gap, before, step = hour.gap
        if not gap or not self.tests or self.is_open():
            return
        if not (0 < step <= 20 / 60 and 1 + step / 2 <= gap <= 1.75):
            return
        now = int((before + FIRST_HOUR) * 3600)
        past = [c for c in self.changes(now - 9 * 86400, now) if c[0] <= now]
        if past and past[-1][1] == 3600 and 12 <= (now - past[-1][0]) / 3600 <= 192:
            self.leap = (past[-1][0] / 3600, before + FIRST_HOUR)

    def end_day(self, day, rest, quiet, water, end):
        if not self.tests:
            return
        self.tides = (self.tides + [(day, self.moon.seen())])[-16:]
        tried = ((self.base.by_flow, self.of_flow[:25]), (self.base.by_depth, self.of_depth[:25]))
        self.rows_of_depth = self.of_depth[:25]
        self.of_depth, self.of_flow = [], []
        if not quiet or not any(self.place(phase, rows, day, rest) for phase, rows in tried):
            return
        if self.is_open():
            self.close(end)
        else:
            self.open(day, not water, end)
        if self.leap:
            self.leapt(day, end)

    def place(self, phase, rows, day, rest):
        if phase is None or len(rows) < 16:
            return False
        at, values = zip(*rows)
        usual = phase.usual
        found = phase.of(rest, at, values, usual.centre[rest])
        if found is None:
            return False
        other = phase.squares(not rest, at, values, phase.quarters(usual.centre[not rest]))
        self.days = (self.days + [dict(day=day, x=found[0] - usual.centre[rest], unmoved=found[1], moved=found[2], other=other, rest=rest,
                                       scatter=usual.scatter[rest], evening=found[3], depth=self.by_depth(rest),
                                       **{name: phase.half(rest, at, values, late) - usual.halves[rest, late] for name, late in (("mornings", False), ("evenings", True))})])[-16:]
        return True

    def by_depth(self, rest):
        """The shift of the day as the depth alone has it."""
        if len(self.rows_of_depth) < 16:
            return NAN
        at, values = zip(*self.rows_of_depth)
        usual = self.base.by_depth.usual
        found = self.base.by_depth.of(rest, at, values, usual.centre[rest])
        return NAN if found is None else found[0] - usual.centre[rest]

    def agree(self, today, rule):
        n, within, work, shift, scatters, gain = rule
        days = self.days[-n:]
        if len(days) < n or today - days[0]["day"] >= within:
            return False
        sign = math.copysign(1, days[-1]["x"])
        if any(not sign * d["x"] > self.LIMITS['rest' if d["rest"] else 'work'] for d in days):
            return False
        working = [d for d in days if not d["rest"]]
        m, before = abs(self.work(days)), [d["moved"] for d in self.days[:-n] if not d["rest"]]
        leapt = 3 * float(np.median(before)) if n <= 3 and len(before) >= 3 else math.inf
        if any((n <= 3 and sign * d["x"] < 0.6 * m) or (n < self.LIMITS['holiday'] and sign * d["x"] > 2 * m + 0.5) or d["moved"] > leapt for d in working):
            return False
        apart = sum(min(self.LIMITS['most'], sign * d["x"] / d["scatter"]) for d in days)
        total = lambda name, of=working: sum(d[name] for d in of)
        moved = total("moved", days)
        return (len(working) >= work and abs(self.work(days)) > shift and apart > scatters * math.sqrt(n)
                and total("unmoved", days) > (1 + gain) * moved and self.evenings_moved(n, self.LIMITS["evening_day"])
                and (n >= self.LIMITS['holiday'] or total("other") > self.LIMITS['home'] * total("moved") and total("evening") > self.LIMITS['evening'] * (total("unmoved") - total("moved"))))

    def of_clock(self, n):
        """Two days by the flow, and three by the depth alone, must have moved as a clock moves them."""
        m, k = abs(self.work(self.days[-n:])), self.LIMITS
        late = lambda d: not math.copysign(1, d["x"]) * d.get("evenings", NAN) < k["evening_rest"] * abs(d["x"])
        if m <= k["small"] and not any(d["rest"] and late(d) for d in self.days[-n:]) and not self.evenings_moved(n, k["evening_alone"]):
            return False
        away = abs(m - round(2 * m) / 2)
        if n > 3 or n == 3 and self.base.by_flow:
            return True
        if n == 3:
            return away <= k["near_by_depth"]
        if sum(not d["rest"] for d in self.days[:-2]) < k["before"]:
            return False
        last, other = self.days[-1], self.days[-2]
        return (away <= k["near"] and abs(last["x"] - other["x"]) <= k["apart"] * last["scatter"]
                and all(math.copysign(1, d["x"]) * d["depth"] >= k["depth"] * abs(d["x"]) for d in (last, other)))

    def evenings_moved(self, n, share):
        """Those of the working days by that share of what the days did, or their mornings if that is more of a shift that is not wide."""
        days = [d for d in self.days[-n:] if not d["rest"]]
        x = self.work(days)
        by = lambda name: math.copysign(1, x) * middle([d.get(name, NAN) for d in days])
        evening, morning = by("evenings"), by("mornings")
        whole = max(abs(x), morning) if morning == morning and abs(x) <= self.LIMITS["wide"] else abs(x)
        return not evening < share * whole and not morning < self.LIMITS["morning_day"] * abs(x)

    def after_civil_change(self, day):
        first, last = (day - 8) * 86400, (day + 1) * 86400
        return any(first < c[0] < last for c in self.changes(first, last))

    def open(self, day, small, end):
        n = next((rule[0] for rule in (self.RULES if self.base.by_flow else self.ALONE) if self.agree(day, rule) and self.of_clock(rule[0]) and (small or abs(self.work(self.days[-rule[0]:])) > 0.6)), 0)
        if not n and self.agree(day, AFTER_CIVIL_CHANGE) and self.after_civil_change(self.days[-2]["day"]):
            n = 2
        if not n or self.closed_soon >= 2 or self.moon.known():
            return
        before = [seen for d, seen in self.tides if d < self.days[-n]["day"]]
        if self.closed_soon and self.moon.seen() or before and before[-1]:
            self.moon.tell(end)
            return
        self.late = self.work(self.days[-n:])
        first, earliest, latest = self.began()
        back = self.track is not None and first - self.track.closed <= 120
        if not back:
            self.track = self.book.open("CLOCK_OF_MONITOR", first, end)
            self.track.earliest, self.track.latest = earliest, latest
        t = self.track
        if back:
            t.stand_again(first)
        t.direction, t.shape = UP if self.late > 0 else DOWN, STEP
        self.book.tell(RETURNED if back else FOUND, end, t)

    def began(self):
        """At every hour, how badly the days fit a clock that went wrong then: the middle of the best, and where it is hardly worse."""
        begins = [(self.base.calendar.first_hour(d["day"]), self.base.calendar.first_hour(d["day"] + 1)) for d in self.days]
        tried = np.arange(begins[0][0], begins[-1][0] + 1)
        misfit = np.zeros(len(tried))
        for d, (begin, end) in zip(self.days, begins):
            share = np.clip((end - tried) / (end - begin), 0.0, 1.0)
            error = np.where((share > 0) & (share < 1), MIXED_DAY * self.late, 0.0)
            misfit += np.minimum(ONE_DAY, (d["x"] - share * self.late) ** 2 / (d["scatter"] ** 2 + error ** 2))
        best, near = (np.flatnonzero(misfit <= misfit.min() + more) for more in (1e-9, NEARLY_AS_WELL))
        earliest = tried[near[0]] if near[0] else min(tried[0], self.base.end)
        return tuple(float(h + FIRST_HOUR) for h in (tried[(best[0] + best[-1]) // 2], earliest, tried[near[-1]]))

    def mixed(self, x):
        """Share of a day that went by the clock that is off, where its phase lies between the two."""
        return min(1.0, x / self.late) if abs(x) > self.LIMITS['mixed'] and x / self.late > 0 else 0.0

    def close(self, end):
        days = self.days[-2:]
        if any(not abs(d["x"]) < max(0.2, abs(self.late) / 2) for d in days):
            return
        t = self.track
        t.end(self.base.calendar.first_hour(days[0]["day"]) + FIRST_HOUR + 24 * self.mixed(days[0]["x"]))
        civil = self.after_civil_change(self.base.calendar.of(math.floor(t.since) - FIRST_HOUR)[0])
        self.closed_soon += t.closed - t.since < 21 * 24 and not civil
        self.book.tell(CLOSED, end, t)

    def leapt(self, day, end):
        change, gap = self.leap
        first, last = (self.base.calendar.of(math.floor(h) - FIRST_HOUR)[0] for h in (change, gap))
        if day > last + 8 or self.track is not None and self.track.since >= change - 24:
            self.leap = None
            return
        variance = lambda d: d["scatter"] ** 2 + (0.25 if d["day"] == last else 0.0)

        def mean(days):
            weights = np.array([1 / variance(d) for d in days])
            return float(np.average([d["x"] for d in days], weights=weights)), 1 / weights.sum()

        after = [d for d in self.days if last < d["day"] <= day][:2]
        if len(after) < 2:
            return
        self.leap = None
        until = [d for d in self.days if first <= d["day"] <= last]
        if not until:
            return
        (x1, v1), (x0, v0) = mean(after), mean(until)
        if (2 * (x1 - x0) - 1) / (v1 + v0) > 1:
            remark = Finding(0, "CLOCK_OF_MONITOR", change, end)
            remark.direction, remark.shape, remark.open, remark.closed = DOWN, STEP, False, gap
            self.book.tell(NOTED, end, remark)

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)


class GaugeClock:
    #       storms side limit scatters apart fit
    RULES = [(2, -1, 1.5, 4, 1.0, 0.85), (3, -1, 0.8, 4.5, 0.9, 0.75), (3, 1, 1.5, 4, 0.9, 0.75), (4, 1, 1.0, 4.5, 0.9, 0.75)]
    #      storms, and how many of them may lie near
    MANY = [(6, 1), (8, 1), (10, 2), (12, 2)]
    #              storms, h by what a fit lacks, h of a perfect one, least h, errors, h apart, limits earlier and later
    BY_FIT = dict(count=3, lacking=2.2, perfect=0.04, least=0.1, errors=4.5, apart=0.9, earlier=0.8, later=1.5)
    #         storms that are back, and how many of them may not be
    RETURNS = [(2, 0), (3, 0), (4, 0), (6, 1), (8, 1)]
    LIMITS = dict(returned=4.0, latest=3.2, low=-0.8, high=2.5, each=0.6, prior=0.4, storms=4.0, monitor=0.3, row=720.0, back=0.5, near=0.4, half=0.5, sure=5.0, known=4, long=4320.0)

    def __init__(self, base, book):
        self.base, self.book = base, book
        self.storms, self.usual, self.pending = Storms(), list(base.lags)[-20:], []
        self.track, self.late, self.last_usual, self.told_by = None, 0.0, base.end + FIRST_HOUR, 4

    def is_open(self):
        return self.track is not None and self.track.open

    def take(self, hour, number, excess, day_shift, tide, season):
        if not self.base.tests_gauge or tide():
            return
        found = self.storms.take(number, hour.rain, excess)
        if found is None or found[0] > self.LIMITS['latest']:
            return
        lag, fit = found
        end = number + 1
        if len(self.usual) < 2 or len(self.usual) < 4 and np.median(self.usual) > 1.5:
            self.usual.append(lag)
            self.last_usual = end
            return
        self.pending.append((lag, end, fit))
        m = float(np.median(self.usual))
        if not self.LIMITS['low'] < m < self.LIMITS['high']:
            self.pass_on(0)
        elif self.is_open():
            count = next((n for n, strays in self.RETURNS if self.has_returned(n, strays, m)), 0)
            if count:
                self.pending = self.pending[-count:]
                self.track.end(self.pending[0][1])
                self.book.tell(CLOSED, end, self.track)
        else:
            self.look(day_shift, end, season)
        self.pass_on(11)

    def has_returned(self, count, strays, m):
        if len(self.pending) < count:
            return False
        side = 1 if self.late > 0 else -1
        away = [side * (p[0] - m) for p in self.pending[-count:]]
        limit = abs(self.late) * self.LIMITS['back']
        mean = sum(away) / count
        error = self.scatter(self.usual, m) * math.sqrt(1 / count + 1 / self.told_by)
        return (away[0] < limit and sum(a >= limit for a in away) <= strays and mean < limit
                and abs(self.late) - max(0.0, mean) > self.LIMITS['returned'] * error)

    def scatter(self, known, m):
        n, k = len(known), self.LIMITS['storms']
        found = (robust(known) ** 2 + float(np.mean((np.array(known) - m) ** 2))) / 2
        return math.sqrt((k * self.LIMITS['prior'] ** 2 + n * found) / (k + n))

    def pass_on(self, keep):
        while len(self.pending) > keep:
            lag, end, _ = self.pending.pop(0)
            if not self.is_open():
                self.usual = (self.usual + [lag])[-20:]
                self.last_usual = end

    def before(self, count):
        """Lags before the last storms, the middle of them, and the error of the mean of those against it."""
        known = (self.usual + [p[0] for p in self.pending[:-count]])[-20:]
        n, m = len(known), float(np.median(known))
        return n, m, self.scatter(known, m) * math.sqrt(1 / count + 1 / n)

    def look(self, day_shift, end, season=False):
        for count, mean, worth in [(c, a, c) for c, a in self.agreements(season)] + self.by_fit(season):
            if not abs(day_shift) > self.LIMITS['monitor'] * abs(mean) and not (season and mean > 0):
                self.tell(count, mean, end, worth)
                return

    def by_fit(self, season):
        """The last storms, each as sure as its fit: their mean against the middle of those before, and how many usual ones say as much."""
        f = self.BY_FIT
        last = self.pending[-f['count']:]
        if len(last) < f['count'] or last[-1][1] - last[0][1] > self.LIMITS['row']:
            return []
        known = (self.usual + [p[0] for p in self.pending[:-f['count']]])[-20:]
        m = float(np.median(known))
        usual = self.scatter(known, m)
        lag, fit = np.array([p[0] for p in last]), np.array([p[2] for p in last])
        precision = np.maximum(f['least'], f['perfect'] + f['lacking'] * (1 - fit)) ** -2.0
        mean = float(np.average(lag, weights=precision)) - m
        total = float(precision.sum())
        if season and abs(mean) <= 1.5 and fit.min() <= 0.85:
            return []
        limit = f['earlier'] if mean < 0 else f['later']
        away = np.sign(mean) * (lag - m)
        if (abs(mean) > limit and away.min() > self.LIMITS['each'] * limit and np.ptp(lag) < f['apart']
                and abs(mean) > f['errors'] * math.sqrt(1 / total + usual ** 2 / len(known))):
            return [(f['count'], mean, max(f['count'], round(usual ** 2 * total)))]
        return []

    def agreements(self, season):
        for count, side, limit, scatters, apart, fits in self.RULES:
            last = self.pending[-count:]
            if len(last) < count or last[-1][1] - last[0][1] > self.LIMITS['row']:
                continue
            _, m, error = self.before(count)
            away = [side * (p[0] - m) for p in last]
            mean = sum(away) / count
            if season and count < 4 and mean <= 1.5 and not all(p[2] > 0.85 for p in last):
                continue
            if all(p[2] >= fits for p in last) and min(away) > self.LIMITS['each'] * limit and mean > limit and mean > scatters * error and max(away) - min(away) < apart:
                yield count, side * mean
        for count, strays in self.MANY:
            last = self.pending[-count:]
            if len(last) < count or last[-1][1] - last[0][1] > self.LIMITS['long']:
                continue
            n, m, error = self.before(count)
            mean = sum(p[0] for p in last) / count - m
            near = sum((p[0] - m) / mean < self.LIMITS['near'] for p in last)
            if n >= self.LIMITS['known'] and abs(mean) > self.LIMITS['half'] and abs(mean) > self.LIMITS['sure'] * error and near <= strays:
                yield count, mean

    def tell(self, count, mean, end, worth):
        self.late, self.told_by = mean, worth
        while len(self.pending) > count:
            lag, when, _ = self.pending.pop(0)
            self.usual, self.last_usual = (self.usual + [lag])[-20:], when
        t = self.book.open("CLOCK_OF_GAUGE", self.pending[0][1], end)
        t.earliest = min(self.last_usual, self.pending[0][1])
        t.direction, t.shape = UP if mean < 0 else DOWN, STEP
        self.track = t
        self.book.tell(FOUND, end, t)

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)


class GaugeCatch:
    """Storms in a row whose flow rises by another amount for each millimetre."""

    LIMITS = dict(usual=3, most=40, pending=16, sure=4.5, prior=0.4, storms=6, few=4, more=6, many=8, dozen=12, all=16, none=0, one=1, two=1, three=2, four=3, back=0.5, little=0.4)

    def __init__(self, base, book):
        self.book, self.track, self.change, self.last_usual = book, None, 0.0, 0
        self.tests = base.tests_gauge and base.flow is not None
        self.storms = Storms(lambda rain, more: storm_fit(rain, more, 0.0))
        self.usual, self.pending = [], []

    def is_open(self):
        return self.track is not None and self.track.open

    def take(self, hour, number, more, other):
        if not self.tests or other:
            return
        found = self.storms.take(number, hour.rain, more)
        if found is None or not found[2] > 0:
            return
        self.storm(math.log(found[2]), number + 1)

    def storm(self, answer, end):
        if len(self.usual) < self.LIMITS["usual"]:
            self.accept(answer, end)
            return
        self.pending.append((answer, end))
        if self.is_open():
            last = self.pending[-self.LIMITS["few"]:]
            m = float(np.median(self.usual))
            if len(last) == self.LIMITS["few"] and all(abs(a - m) < self.LIMITS["back"] * abs(self.change) for a, _ in last):
                self.track.end(last[0][1])
                self.book.tell(CLOSED, end, self.track)
                self.pending = last
        else:
            self.look(end)
        while len(self.pending) >= self.LIMITS["pending"]:
            oldest = self.pending.pop(0)
            if not self.is_open():
                self.accept(*oldest)

    def accept(self, answer, end):
        self.usual = (self.usual + [answer])[-self.LIMITS["most"]:]
        self.last_usual = end

    def look(self, end):
        for count, strays in (("few", "none"), ("more", "one"), ("many", "two"), ("dozen", "three"), ("all", "four")):
            count = self.LIMITS[count]
            if len(self.pending) < count:
                return
            before = np.array((self.usual + [a for a, _ in self.pending[:-count]])[-self.LIMITS["most"]:])
            n, k, m = len(before), self.LIMITS["storms"], float(np.median(before))
            scatter = math.sqrt((k * self.LIMITS["prior"] ** 2 + float(np.sum((before - m) ** 2))) / (k + n - 1))
            last = self.pending[-count:]
            mean = float(np.mean([a for a, _ in last])) - m
            astray = sum((a - m) * mean <= 0 for a, _ in last)
            if abs(mean) > self.LIMITS["little"] and abs(mean) > self.LIMITS["sure"] * scatter * math.sqrt(1 / count + 1 / n) and astray <= self.LIMITS[strays]:
                self.change = mean
                since = next(i for i, (a, _) in enumerate(self.pending) if i >= len(self.pending) - count and abs(a - m) * np.sign((a - m) * mean) > self.LIMITS["back"] * abs(mean))
                for each in self.pending[:since]:
                    self.accept(*each)
                self.pending = self.pending[since:]
                t = self.book.open("GAUGE_CATCHES_LESS" if mean > 0 else "GAUGE_WRITES_MORE", self.pending[0][1], end)
                t.earliest = self.last_usual
                t.direction, t.shape = DOWN if mean > 0 else UP, UNCERTAIN
                self.track = t
                self.book.tell(FOUND, end, t)
                return

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)


class GaugeSilence:
    LIMITS = dict(fallen=0.5, longest=48, chance=0.009, wonder=0.5, least=2, near=24, drier=0.25, half=0.5,
                  slower=0.25, before=12, apart=12, usual=2, same=3, climb=6,
                  day=24, back=1.05, chance_long=0.035, times_longer=2.0, gaps=8, gap=168, crowded=1.5, season=2160.0,
                  supposed=60.0, supposed_most=8760.0, suspect=0.02)
    KEPT = 40

    def __init__(self, base, book):
        self.base, self.book, self.track = base, book, None
        # Rises since the last drop are (begin, size, hours to the top).
        self.recent, self.rises, self.wet_sizes, self.dry_sizes = [], [], [], []
        self.rained = self.unknown = -10 ** 12
        self.wet_hours = self.dry_hours = self.quiet_hours = self.spells = self.dry_count = 0
        self.rise, self.longest_gap = None, 0

    def is_open(self):
        return self.track is not None and self.track.open

    def take(self, hour, number, excess, above, other):
        if not self.base.tests_gauge:
            return
        self.gauge(number, hour.rain)
        if other or excess != excess:
            self.rise = None if other else self.rise
            return
        r = self.rise
        if r is None:
            self.look(number, excess, above, hour.v)
        else:
            r["size"] += self.more(excess, r["base"])
            if excess > r["top"]:
                r.update(top=excess, speed=hour.v, peak=number)
            elif number - r["begin"] > self.LIMITS['longest']:
                self.rise = None
            elif excess - r["base"] < self.LIMITS['fallen'] * (r["top"] - r["base"]):
                self.fallen()
                self.rise = None
        self.recent = (self.recent + [(number, excess, hour.v)])[-self.LIMITS['day']:]

    @staticmethod
    def more(excess, base):
        return max(0.0, excess - max(0.0, base))

    def gauge(self, number, rain):
        if rain != rain:
            self.unknown = number
            return
        self.quiet_hours += 1
        if rain > 0.05:
            if not self.is_open():
                self.doubt(number, number + 1)
            self.spells += number - self.rained > 12
            first, self.rained = self.rained < 0, number
            if not self.is_open():
                if not first:
                    self.longest_gap = max(self.longest_gap, self.quiet_hours)
                after = min(self.LIMITS['before'], self.quiet_hours)
                self.wet_hours += after
                self.dry_hours += self.quiet_hours - after
                for _, size, _ in self.rises:
                    self.dry_sizes = sorted(self.dry_sizes + [size])[-self.KEPT:]
                    self.dry_count += 1
            else:
                self.track.end(number)
                self.book.tell(CLOSED, number + 1, self.track)
            self.rises, self.quiet_hours = [], 0
        elif not self.is_open() and self.rises:
            missed = self.missed()
            if missed and self.is_back(number) and not self.by_chance(number, missed):
                self.track = self.drawn(self.book.open("SILENT_GAUGE", missed[0], number + 1))
                self.book.tell(FOUND, number + 1, self.track)

    def drawn(self, t):
        """A finding, or a remark, that began after the last drop."""
        t.earliest = min(t.since, self.rained + 1) if self.rained > 0 else t.since
        t.shape = STEP
        return t

    def doubt(self, until, end):
        """A silence that ends, untold, with rises that are hardly by chance is remarked."""
        missed = self.missed()
        if missed and math.prod(self.chances(missed)) <= self.LIMITS['suspect']:
            remark = self.drawn(Finding(0, "SILENT_GAUGE", missed[0], end))
            remark.open, remark.closed = False, until
            self.book.tell(NOTED, end, remark)

    def is_back(self, number):
        """Whether half of the hours of the last day stood near the usual: what stays up is something else."""
        day = [e for n, e, _ in self.recent if n >= number - self.LIMITS['day']]
        return bool(day) and float(np.median(day)) <= math.log(self.LIMITS['back'])

    def as_large(self, size):
        """Rises without rain not smaller, of those that are kept; more than are kept may be all of them."""
        found = sum(s >= size for s in self.dry_sizes)
        return self.dry_count if found == self.KEPT else found

    def law(self, size):
        """Gamma law of the rate of rises without rain not smaller than this: its shape before crowds, and its mean an hour."""
        weight = min(1.0, self.LIMITS['season'] / max(1, self.dry_hours))
        events = self.LIMITS['half'] + weight * self.as_large(size)
        hours = weight * self.dry_hours + min(self.LIMITS['supposed_most'], self.LIMITS['supposed'] * math.exp(4 * math.log(size)))
        return events, events / max(1, hours)

    def counts_from(self):
        """The size at which the divergence of the law of a dead gauge from that of a sound one, an hour, is largest."""
        found, most = None, 0.0
        hours = max(1, self.wet_hours + self.dry_hours)
        for size in sorted(self.wet_sizes, reverse=True):
            count = sum(s >= size for s in self.wet_sizes)
            mu = self.law(size)[1]
            nu = (count - mu * self.wet_hours) / hours
            if count < self.LIMITS['usual'] or nu <= 0:
                continue
            gain = (nu + mu) * math.log1p(nu / mu) - nu
            if gain > most:
                found, most = size, gain
        return found

    def missed(self):
        least, found = self.counts_from(), []
        for begin, size, climb in self.rises:
            if least is None or size < least or climb >= self.LIMITS['climb']:
                continue
            if found and begin - found[-1] <= self.LIMITS['apart']:
                continue
            if not any(min((begin - s) % 24, (s - begin) % 24) <= self.LIMITS['same'] for s in found):
                found.append(begin)
        return found

    def as_many(self, count, size, hours):
        """Chance of so many rises of this size or more in these hours, of a rate that has a gamma law."""
        events, rate = self.law(size)
        shape = min(events, self.LIMITS['crowded'])
        p = shape / (shape + rate * hours)
        return 1 - sum(math.exp(math.lgamma(shape + k) - math.lgamma(shape) - math.lgamma(k + 1)) * p ** shape * (1 - p) ** k for k in range(count))

    def chances(self, missed):
        """Of such rises, and of so long a silence."""
        least = self.counts_from()
        large = self.as_large(least)
        hours = max(1, self.quiet_hours - self.LIMITS['before'])
        small = sum(size < least for _, size, _ in self.rises)
        restless = max(1.0, (small + 1) / ((self.dry_count - large) * hours / max(1, self.dry_hours) + 1))
        sizes = sorted((size for begin, size, _ in self.rises if begin in missed), reverse=True)
        looks = [(len(sizes), least)] + [(k, size) for k, size in enumerate(sizes, 1)]
        unlikely = min(self.as_many(k, size, hours * restless) for k, size in looks)
        known = max(1, self.wet_hours + self.dry_hours)
        return unlikely, (1 + self.LIMITS['drier'] * self.quiet_hours / known) ** -(self.spells + self.LIMITS['half'])

    def by_chance(self, number, missed):
        unlikely, no_rain = self.chances(missed)
        both = unlikely * no_rain
        long = self.spells > self.LIMITS['gaps'] and self.quiet_hours >= self.LIMITS['gap'] and self.quiet_hours > self.LIMITS['times_longer'] * self.longest_gap
        if long and number - missed[-1] <= self.LIMITS['times_longer'] * self.longest_gap and both <= self.LIMITS['chance_long']:
            return False
        if len(missed) < self.LIMITS['least'] or missed[-1] - missed[0] < self.LIMITS['near'] or both > self.LIMITS['chance']:
            return True
        return len(missed) == 2 and no_rain > self.LIMITS['wonder']

    def look(self, number, excess, above, speed):
        rows = [r for r in self.recent if r[0] >= number - 6]
        if not above > math.log(1.1) or not rows:
            return
        lowest = min(range(len(rows)), key=lambda i: rows[i][1])
        base = rows[lowest][1]
        if not excess - base > math.log(1.25):
            return
        begin = number
        for n, e, _ in reversed(rows[lowest + 1:]):
            if not e - base > math.log(1.25) / 2:
                break
            begin = n
        size = self.more(excess, base)
        for _, e, _ in rows[lowest:]:
            size += self.more(e, base)
        self.rise = dict(begin=begin, base=base, top=excess, before=rows[lowest][2], speed=speed, peak=number, size=size)

    def fallen(self):
        r = self.rise
        begin, climb = r["begin"], r["peak"] - r["begin"]
        if r["speed"] - r["before"] < -self.LIMITS['slower'] * (r["top"] - r["base"]) or self.unknown >= begin - self.LIMITS['before']:
            return
        if self.rained < begin - self.LIMITS['before']:
            self.rises.append((begin, r["size"], climb))
        elif climb < self.LIMITS['climb']:
            self.wet_sizes = sorted(self.wet_sizes + [r["size"]])[-self.KEPT:]

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)
        else:
            self.doubt(end, end)


class LevelLeap:
    """A level alone that leaps up in dry weather within what is open, and stays."""

    LIMITS = dict(pairs=8, rain=0.8, least=0.12, largest=0.8, scatters=4.0, prior=0.04, days=8.0, about=3, at_once=0.7, share=0.6, soonest=72, latest=240, over=0.25)

    def __init__(self, book):
        self.book, self.rows, self.usual, self.leap, self.track = book, {}, [], None, None
        self.size = self.before = 0.0

    def is_open(self):
        return self.track is not None and self.track.open

    def take(self, number, rain, excess, other, tide):
        self.rows[number] = (excess, rain, other)
        if tide or number % 3 != 2:
            return
        end = number + 1
        if self.is_open():
            now = [self.at(h) for h in range(end - 48, end)]
            now = [x for x in now if x == x]
            if len(now) >= self.LIMITS["pairs"] and float(np.median(now)) - self.before < self.LIMITS["over"] * self.size:
                self.track.end(end - 48)
                self.book.tell(CLOSED, end, self.track)
        elif self.leap is None:
            self.look(end - 24)
        elif end - self.leap >= self.LIMITS["soonest"]:
            later = self.above(end - 24, end, self.leap)
            if len(later) < self.LIMITS["pairs"] and end - self.leap < self.LIMITS["latest"]:
                return
            if len(later) >= self.LIMITS["pairs"] and float(np.median(later)) > self.LIMITS["share"] * self.size:
                self.before = middle([self.at(h) for h in range(self.leap - 120, self.leap)])
                back = self.track is not None and self.track.begins_again("LEVEL_UP", self.leap)
                if back:
                    self.track.stand_again(self.leap)
                else:
                    t = self.track = self.book.open("LEVEL_UP", self.leap, end)
                    t.earliest, t.latest, t.direction, t.shape = self.leap - 3, self.leap + 3, UP, STEP
                self.book.tell(RETURNED if back else FOUND, end, self.track)
            self.leap = None

    def at(self, hour):
        return self.rows[hour][0] if hour in self.rows else NAN

    def above(self, first, last, leap):
        """Each dry hour over the last dry one before the leap at its time of the day, of five days."""
        found = []
        for h in range(first, last):
            x = self.at(h)
            thens = [self.at(h - 24 * k) for k in range((h - leap) // 24 + 1, (h - leap) // 24 + 6)]
            thens = [then for then in thens if then == then]
            if x == x and thens:
                found.append(x - thens[0])
        return found

    def look(self, when):
        k = self.LIMITS
        rains = [self.rows[h][1] if h in self.rows else NAN for h in range(when - 12, when + 24)]
        if not sum(rains) < k["rain"]:
            return
        after = self.above(when, when + 24, when)
        if len(after) < k["pairs"]:
            return
        x = float(np.median(after))
        n, scatter = len(self.usual), float(np.median(np.abs(self.usual))) / 0.6745 if self.usual else 0.0
        limit = max(k["least"], k["scatters"] * math.sqrt((k["days"] * k["prior"] ** 2 + n * scatter ** 2) / (k["days"] + n)))
        if when % 24 == 0:
            self.usual = (self.usual + [x])[-60:]
        first, last = self.above(when, when + 6, when), self.above(when - 6, when, when - 6)
        within = when - 1 in self.rows and self.rows[when - 1][2]
        if not within or not limit < x <= k["largest"] or min(len(first), len(last)) < k["about"]:
            return
        if float(np.median(first)) - float(np.median(last)) >= k["at_once"] * x and float(np.quantile(after, 0.25)) >= k["share"] * x:
            self.leap, self.size = when, x

    def finish(self, end):
        if self.is_open():
            self.book.tell(STANDING, end, self.track)


def accepted(minutes):
    """How many readings are taken: stamps that leap by more than 3 h are held until four of them span an hour; the first as well."""
    taken, held = 0, []
    for i, m in enumerate(minutes):
        if held:
            if taken == 0 and m - held[-1] > 180:
                taken, held = i, [m]
            else:
                held.append(m)
            if len(held) >= 4 and held[-1] - held[0] >= 60:
                taken, held = i + 1, []
        elif taken == 0 or m - minutes[taken - 1] > 180:
            held = [m]
        else:
            taken = i + 1
    return (len(minutes), 0) if taken == 0 else (taken, len(held))


def bounds_of(base):
    """What a reading is held against in the watch."""
    slow = 0.6 * base.velocity.extremes()[0] if base.velocity else 0.0
    low, high = base.depth.extremes()
    return Bounds(base.pipe.diameter, base.depth_frozen, base.velocity_frozen, 1.25 * high, slow,
                  -math.inf if base.pumped or base.swings else 0.1 * low, base.velocity_step, base.velocity_scatter)


class Watch:
    def __init__(self, base, record, alarm=None, edit=None):
        self.base, self.book = base, Book()
        moon = Moon(base.tidal, self.book)
        changes = Changes(base, alarm, self.book, moon)
        faults, clock = Faults(base, self.book), MonitorClock(base, self.book, moon)
        units = Units(base, self.book, lambda of_depth, since, end: self.give_away(of_depth, since, end))
        exchanges = self.exchanges = Exchanges(base, self.book, self.give_away, (FOUND, CHANGED, RETURNED, CLOSED, STANDING, STEP, NO_WAY))
        gauge, silence, weather = GaugeClock(base, self.book), GaugeSilence(base, self.book), Weather()
        catch = self.catch = GaugeCatch(base, self.book)
        self.units, self.moon, self.changes, self.faults, self.clock, self.gauge, self.silence, self.weather = units, moon, changes, faults, clock, gauge, silence, weather
        leap = self.leap = LevelLeap(self.book) if base.level_usual else None
        self.ebb = Ebb()
        count, left = accepted(record.minutes)
        bounds = bounds_of(base)
        self.levels = Levels(lowest_hour(base.depth)) if base.level_usual else None
        block = day = last = None
        civil = base.calendar.of
        taken = hours(record.minutes[:count], record.depths[:count], record.velocities[:count], record.rains[:count], bounds)
        for hour in taken:
            if hour is taken[-1]:
                self.kept = self.keep()
                c = changes
                self.kept_changes = {"sums": BOOK(c.sums.flatten()), "largest": float(c.largest), "stands": BOOK(c.stands),
                                     "votes": BOOK([-1 if v is None else v for v in c.votes]), "origin": BOOK(c.origin), "weak": BOOK(c.weak.flatten())}
            if edit and hour.number == edit[0] - 1:
                edit[1](self)
                self.book.events.clear()
            n, number = hour.number, FIRST_HOUR + hour.number
            today, of_day, rest = civil(n)
            exchanges.take(hour, number, base.begin <= n < base.end)
            (units.learn if base.begin <= n < base.end else units.hour)(hour, number)
            excess = hour.y - base.depth.value(of_day, rest)
            highest = max(base.depth.value((of_day + k) % 24, kind) for k in range(-4, 5) for kind in (False, True))
            silence.take(hour, number, excess, hour.y - highest, changes.is_open() and not changes.is_water() or moon.seen() or faults.lifts())
            if base.flow:
                known = hour.y == hour.y and hour.v == hour.v
                more = math.exp(hour.v) * base.pipe.area(math.exp(hour.y)) - math.exp(base.flow.value(of_day, rest)) if known else NAN
                catch.take(hour, number, more, changes.is_open() or moon.seen() or silence.is_open())
            dry, long_dry, nearly = weather.take(hour, NAN if silence.is_open() else hour.rain)
            if block is not None and number // 3 != block:
                changes.block(block)
            if day is not None and today != day:
                water = changes.is_water()
                clock.end_day(day, civil(last)[2], (not changes.is_open() or water) and not silence.is_open(), water, FIRST_HOUR + last + 1)
            last = n
            if base.begin <= n < base.end:
                block = day = None
                continue
            block, day = number // 3, today
            faults.take(hour, number, changes.slows(), changes.sinks())
            clock.stamps(hour)
            if self.levels:
                self.levels.hour(number, hour.rain, hour.y, of_day, base.depth.value(of_day, rest), dry)
            both = hour.y == hour.y and hour.v == hour.v and not faults.explains()
            flow = hour.v + math.log(base.pipe.area(math.exp(hour.y))) if both else NAN
            if nearly and hour.y == hour.y:
                clock.take(of_day, hour.mean_y, hour.mean_v + math.log(base.pipe.area(math.exp(hour.mean_y))) if both else NAN)
            gauge.take(hour, number, excess, clock.last_shift(), lambda: moon.seen() or changes.moves_depth(), changes.is_water())
            moon.take(number, excess if dry else NAN)
            if leap:
                leap.take(number, hour.rain, excess if dry else NAN, changes.is_open(), moon.seen())
            at = (of_day - clock.shift()) % 24
            d = hour.y - base.depth.value(at, rest) if dry else NAN
            u = hour.v - base.velocity.value(at, rest) if dry and both and base.velocity else NAN
            q = flow - base.flow.value(at, rest) if long_dry and both and base.flow else NAN
            plain = hour.v - base.law.at(hour.y) if both and base.law and math.exp(hour.y) <= base.pipe.diameter else NAN
            beyond = d, u, q
            if base.ebb:
                at_ebb = self.ebb.take(number, hour.y, hour.v if both else NAN)
                beyond = (at_ebb[0] - base.ebb[0], at_ebb[1] - base.ebb[1], NAN) if dry else (NAN,) * 3
            changes.hour(number, (self.at_depth(hour.y, plain, dry, nearly), *beyond, plain))
            changes.step(hour, number, d, u)
        if block is not None:
            changes.block(block)
        end = FIRST_HOUR + last + 1
        for each in (changes, exchanges, units, faults, clock, gauge, silence, catch) + ((leap,) if leap else ()):
            each.finish(end)
        if left:
            stamp = record.minutes[count - 1] / 60 + FIRST_HOUR
            remark = Finding(0, "FALSE_STAMPS", stamp, stamp)
            remark.open, remark.closed = False, stamp
            self.book.events.insert(self.held_first(), (NOTED, stamp, remark.copy()))

    def give_away(self, of_depth, since, end):
        impossible = self.faults.give_away(since) if of_depth else None
        changed = self.changes.give_away(since, end)
        self.ebb.forget(since)
        return changed if impossible is None else impossible

    def keep(self):
        """What is known before the last hour ends, by part and name; of many numbers the sum of each times its place."""
        c, g, s, f, w = self.changes, self.gauge, self.silence, self.faults, self.weather
        book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))
        kept = {"sums": book(c.sums.flatten()), "largest": c.largest, "stands_d": c.stands[0], "stands_u": c.stands[1], "stands_r": c.stands[3],
                "votes": book([-1 if v is None else v for v in c.votes]), "origin": book(c.origin),
                "hours": book(np.concatenate([h[1] for h in c.hours] or [[]])), "blocks": book(np.concatenate([b[1] for b in c.blocks] or [[]])),
                "days": book([v for d in self.clock.days for v in (d["x"], d["unmoved"], d["moved"], d["other"], d["rest"], d["scatter"], d["evening"])]),
                "days_by_depth": book(d["depth"] for d in self.clock.days), "evenings": book(d.get("evenings", NAN) for d in self.clock.days),
                "mornings": book(d.get("mornings", NAN) for d in self.clock.days), "late": self.clock.late, "closed_soon": int(self.clock.closed_soon), "usual_lags": book(g.usual), "lags": book(p[0] for p in g.pending),
                "gauge_late": g.late, "rises_with": book(s.wet_sizes[::-1]), "rises_without": book(s.dry_sizes[::-1]),
                "without": s.dry_count, "silent": book(r[1] for r in s.rises), "dry_hours": s.dry_hours, "wet_hours": s.wet_hours, "spells": int(s.spells),
                "quiet": s.quiet_hours, "faults": book(v for _, row in f.rows for v in row.values()), "beyond": book([0] * 2 + [f.beyond[k] for k in f.KINDS[2:]]),
                "event": w.event}
        kept.update(self.levels.kept() if self.levels else {})
        for name, q in (("depth", self.units.depth), ("velocity", self.units.velocity)):
            kept.update({f"{name}_before": book(v for r in q.before for v in r[1:]), f"{name}_leapt": book(v for r in q.leapt for v in r),
                         f"{name}_last": book(r[1] for r in q.last), f"{name}_home": q.times_home})
        if self.moon.at:
            weights, rows, x = self.moon.weighted()
            kept.update(tide=book((rows.T @ (weights[:, None] * rows)).flatten()), tide_right=book(rows.T @ (weights * x)), tide_squares=float(weights @ (x * x)))
        kept.update(self.exchanges.kept())
        return kept

    def held_first(self):
        return len(self.book.events) - sum(1 for e in self.book.events if e[0] == STANDING)

    def at_depth(self, y, plain, dry, nearly):
        if plain != plain:
            return NAN
        law = self.base.law
        outside = max(law.lowest - y, y - law.highest)
        if outside > 0.05:
            if not dry and not (nearly and y > law.highest and plain < 0):
                return NAN
            plain = math.copysign(max(0.0, abs(plain) - 0.6 * outside), plain)
        return plain / law.relative(y)

    def findings(self):
        last = {}
        for kind, _, finding in self.book.events:
            if kind != NOTED:
                last[finding.number] = finding
        return [last[n] for n in sorted(last)]
