"""Hours of readings, dry and wet hours, and what is normal at a site, from the sentences of the pages on the baseline and on clocks.

Used by site_baselines.py and site_watches.py. Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import datetime as dt
import math
import zoneinfo

import numpy as np
from scipy import stats

import site_exchanges

from site_levels import Levels, lowest_hour

NAN = float("nan")
NONE = -9999.0
START = dt.datetime(2026, 3, 2, tzinfo=dt.timezone.utc)
FIRST_HOUR = int(START.timestamp()) // 3600
MOON = 12.4206012
known = lambda values: np.asarray([v for v in values if v == v], dtype=float)


def middle(values):
    values = known(values)
    return float(np.median(values)) if len(values) else NAN


def robust(values):
    values = known(values)
    return float(stats.median_abs_deviation(values, scale="normal")) if len(values) else NAN


def variance(values):
    values = known(values)
    return float(np.var(values, ddof=1)) if len(values) > 1 else NAN


class Pipe:
    """A circular pipe flowing part full: the segment by its angle; uniform flow by Manning's formula."""

    def __init__(self, diameter, n=0.013, gradient=0.005):
        self.diameter, self.n, self.gradient = diameter, n, gradient

    def angle(self, level):
        return 2 * math.acos(1 - 2 * min(level, self.diameter) / self.diameter)

    def area(self, level):
        angle = self.angle(level)
        return self.diameter ** 2 / 8 * (angle - math.sin(angle))

    def kappa(self, level):
        """d ln A / d ln y: the width times the depth over the area; a full pipe grows no more."""
        return 0.0 if level >= self.diameter else level * 2 * math.sqrt(level * (self.diameter - level)) / self.area(level)

    def uniform(self, level):
        radius = self.area(level) / (self.diameter * self.angle(level) / 2)
        return radius ** (2 / 3) * math.sqrt(self.gradient) / self.n


class Hour:
    """Of one hour: what the readings come to."""

    def __init__(self, number):
        self.number, self.readings, self.rain = number, 0, NAN
        self.mean_y = self.mean_v = NAN
        self.y = self.v = self.upstream = self.scatter = self.read_y = self.read_v = NAN
        self.spread, self.looked, self.zeros, self.low, self.lower, self.flips = 0.0, 0, 0, 0, 0, 0
        self.outside = self.dry_moving = self.compared = self.lone = 0
        self.held = self.stray_high = self.stray_low = 0
        self.step, self.stepped, self.leap, self.alone = NAN, None, 1.0, 0
        self.depth_run = self.velocity_run = (0.0, 0.0)
        self.moves = []
        self.gap = (0.0, 0.0, 0.0)
        self.rough_y = self.rough_v = NAN


class Runs:
    """Runs of one value: from the fourth reading on, not over a gap of more than 2 h."""

    def __init__(self, limit):
        self.limit, self.value, self.begin, self.last, self.count = limit, NAN, 0.0, 0.0, 0

    def look(self, hour, value, patient):
        """Length of the run up to this reading, 0 of fewer than four, and whether it is longer than it may be."""
        if value == self.value and hour - self.last <= 2:
            self.count += 1
        else:
            self.value, self.begin, self.count = value, hour, 1
        self.last = hour
        length = hour - self.begin if self.count >= 4 else 0.0
        return length, length > (max(self.limit, 24.0) if patient else self.limit)

    def forget(self):
        self.value, self.count = NAN, 0


class Bounds:
    """How long a value may stand, at which levels and velocities for a day, and which level is next to nothing."""

    def __init__(self, soffit, depth=24.0, velocity=10.0, high=math.inf, slow=0.0, nothing=-math.inf, step=0.0, scatter=0.0):
        self.soffit, self.depth, self.velocity, self.high, self.slow, self.nothing = soffit, depth, velocity, high, slow, nothing
        self.step, self.scatter = step, scatter

    def by_chance(self, count, speed):
        """Whether so many equal velocities in a row are more likely than one in a million, where each stays in its step by the normal law."""
        if not (self.step > 0 and self.scatter > 0):
            return False
        return (count - 1) * math.log(2 * stats.norm.cdf(0.5 * self.step / (self.scatter * speed)) - 1) >= math.log(1e-6)


def hours(minutes, depths, velocities, rains, bounds):
    depth_runs, velocity_runs = Runs(bounds.depth), Runs(bounds.velocity)
    found, levels, speeds, odd = [], [], [], ([], [])
    stamp, step = None, 0.0
    rests, near, beside, seen = [], [], None, []
    strays = Strays()
    for m, depth, velocity, rain in zip(minutes, depths, velocities, rains):
        t = m / 60.0
        if not found or found[-1].number != math.floor(t):
            if found:
                finish(found[-1], levels, speeds, odd, rests)
            found.append(Hour(math.floor(t)))
            levels, speeds, odd, rests = [], [], ([], []), []
        hour = found[-1]
        hour.readings += 1
        if stamp is not None:
            if t - stamp >= 1 and t - stamp > hour.gap[0]:
                hour.gap = (t - stamp, stamp, step)
            step = t - stamp
        stamp = t
        if rain == rain:
            hour.rain = rain if hour.rain != hour.rain else hour.rain + rain
        level = NAN
        if 0 < depth <= 0.002 or depth > 30:
            odd[0].append(depth)
        if 0 < velocity <= 0.005 or velocity > 12:
            odd[1].append(velocity)
        if depth == depth:
            if not -0.1 <= depth <= 30:
                hour.outside += 1
                hour.alone += 1
                near, beside = [], None
            else:
                level = max(0.0, depth)
                low = level <= bounds.nothing
                hour.outside += low
                if level > bounds.soffit or depth <= 0 or low:
                    depth_runs.forget()
                else:
                    patient = level > bounds.high
                    length, frozen = depth_runs.look(t, depth, patient)
                    if length > hour.depth_run[0] and (frozen or not patient):
                        hour.depth_run = (length, depth_runs.begin)
                    if frozen:
                        level = NAN
                if level == level:
                    levels.append(level)
                    seen = (seen + [(t, level)])[-3:]
                    hour.compared += len(seen) > 1 and t - seen[-2][0] <= NEAR
                    hour.lone += stands_alone(seen)
                    if beside and min(depth, beside[0]) > 0.001 and t - beside[1] <= 0.5:
                        hour.leap = max(hour.leap, depth / beside[0], beside[0] / depth)
                    else:
                        hour.alone += 1
                    beside = depth, t
                    near = [] if near and t - near[-1][1] > 0.5 or depth <= 0.001 else near
                    near = (near + [(depth, t)])[-6:] if depth > 0.001 else near
                    if len(near) == 6:
                        e = [n[0] for n in near]
                        before, step_of = np.median(e[:3]), e[3] - e[2]
                        moved = np.median(e[3:]) - before
                        stays = math.copysign(min(abs(step_of), abs(moved)), step_of) if step_of * moved > 0 else 0.0
                        if not abs(stays) <= abs(hour.step):
                            hour.step, hour.stepped = stays, (before, near[2][1], near[3][1])
                else:
                    hour.alone += 1
                    near, beside = [], None
        if velocity == velocity and abs(velocity) <= 12:
            moves = abs(velocity) > 0.005
            if moves:
                if t - velocity_runs.last <= 2 and abs(velocity - velocity_runs.value) < 0.5 * abs(velocity_runs.value):
                    hour.moves.append((abs(velocity - velocity_runs.value), abs(velocity_runs.value)))
                stands = velocity == velocity_runs.value and t - velocity_runs.last <= 2 and t - velocity_runs.begin > bounds.velocity
                patient = abs(velocity) < bounds.slow or stands and bounds.by_chance(velocity_runs.count + 1, abs(velocity))
                length, frozen = velocity_runs.look(t, velocity, patient)
                if length > hour.velocity_run[0] and (frozen or not patient):
                    hour.velocity_run = (length, velocity_runs.begin)
                if frozen:
                    continue
            hour.dry_moving += level <= 0.001 and velocity > 0.1
            if level <= 0.03 and not moves:
                continue
            hour.looked += 1
            hour.zeros += not moves
            if not moves and level == level:
                rests.append(level)
            if moves:
                speeds.append(velocity)
                if velocity > 0 and level > 0.03:
                    strays.take(hour, t, level, velocity / level ** (2 / 3))
    if found:
        found[-1].so_far = dict(levels=levels, speeds=speeds, odd=odd, rests=rests, looked=found[-1].looked, zeros=found[-1].zeros)
        finish(found[-1], levels, speeds, odd, rests)
    return found


class Strays:
    """Velocities beyond 1.35 times the median of the 48 before, or below it by as much, that come back to 1.15 within 12 readings and three hours."""

    def __init__(self):
        self.before, self.last, self.away, self.side, self.begin, self.level = [], -math.inf, 0, 0, 0.0, NAN

    def take(self, hour, t, level, value):
        if t - self.last > 3:
            self.before, self.away, self.side = [], 0, 0
        self.last = t
        if len(self.before) >= 12:
            ratio = value / float(np.median(self.before))
            side = 1 if ratio > 1.35 else -1 if ratio < 1 / 1.35 else 0
            if not side and (ratio > 1.15 and self.side > 0 or ratio < 1 / 1.15 and self.side < 0):
                side = self.side
            hour.held += 1
            if side != self.side:
                if self.away <= 12 and t - self.begin <= 3:
                    hour.stray_high += self.away if self.side > 0 else 0
                    hour.stray_low += self.away if self.side < 0 else 0
                self.away, self.side, self.begin = 0, side, t
            self.away += abs(side)
            if side and not 1 / 1.15 <= level / self.level <= 1.15:
                self.away = math.inf
        self.level = self.level if self.side else level
        self.before = (self.before + [value])[-48:]


NEAR = 1 / 3 + 1e-9


def stands_alone(three):
    """Whether the middle one of three levels stands far above or below both others, none of them more than 20 minutes away."""
    if len(three) < 3 or three[1][0] - three[0][0] > NEAR or three[2][0] - three[1][0] > NEAR:
        return False
    sides = [(middle - other, max(middle, other) / max(min(middle, other), 1e-300)) for other, middle in ((three[0][1], three[1][1]), (three[2][1], three[1][1]))]
    return all(abs(d) >= 0.02 and q >= 1.25 for d, q in sides) and sides[0][0] * sides[1][0] > 0


def finish(hour, levels, speeds, odd, rests):
    hour.rough_y, hour.rough_v = site_exchanges.rough(levels), site_exchanges.rough(speeds)
    of_readings(hour, levels, speeds, rests)
    # What no sewer reads may be of another unit.
    hour.read_y, hour.read_v = (math.log(np.median(o)) if o and 2 * len(o) >= hour.readings else ln for o, ln in zip(odd, (hour.y, hour.v)))


def of_readings(hour, levels, speeds, rests):
    by_depth(hour, levels)
    if hour.spread >= 0.22:
        hour.held = hour.stray_high = hour.stray_low = 0
    by_speed(hour, levels, speeds, rests)


def by_depth(hour, levels):
    if levels and 2 * len(levels) >= hour.readings and np.median(levels) > 0.001:
        hour.y = math.log(np.median(levels))
        hour.mean_y = hour.y + mean_from(levels)
        hour.spread = math.log(max(levels) / max(0.001, min(levels)))


def by_speed(hour, levels, speeds, rests):
    if hour.spread >= 0.22:
        # In the lower half of an hour that swings, water stands between two strokes.
        still = sum(e < math.sqrt(max(0.001, min(levels)) * max(levels)) for e in rests)
        hour.zeros -= still
        hour.looked -= still
    forward = sorted(v for v in speeds if v > 0)
    back = [v for v in speeds if v < 0]
    if len(back) > len(forward):
        hour.upstream = -float(np.median(back))
        return
    n = len(forward)
    if not n:
        return
    hour.flips = len(back)
    if 2 * n < hour.readings and 2 * n < hour.looked:
        return
    if 2 * n >= hour.readings:
        hour.v = math.log(np.median(forward))
        hour.mean_v = hour.v + mean_from(forward)
    if hour.spread < 0.22:
        upper = forward[int(0.75 * (n - 1) + 0.5)]
        lower = forward[(n - 1) // 4]
        hour.lower = sum(v < 0.75 * upper for v in forward)
        hour.low = sum(v < 0.6 * upper for v in forward)
        hour.scatter = math.log(upper / lower) / 1.349 if n >= 4 else NAN


def mean_from(values):
    """Mean logarithm of readings over their median, none held farther away than by a factor of two."""
    return float(np.mean(np.log2(np.clip(np.asarray(values) / np.median(values), 0.5, 2.0)))) * math.log(2)


class Weather:
    """Hours up to which it is wet: by the common rule, by the longer one for flows and by the shorter one for clocks."""

    def __init__(self):
        self.event, self.rained = 0.0, -math.inf
        self.wet = self.long = self.short = -math.inf
        self.ys, self.excess = {}, {}

    def take(self, hour, rain):
        now = hour.number
        rise = self.rise(now, hour.y) if hour.y == hour.y else 0.0
        if rain != rain:
            if rise > math.log(1.25):
                self.extend(now, 18, 36, 18)
        elif rain > 0.05:
            self.event = rain + (self.event if now - self.rained <= 6 else 0.0)
            self.rained = now
            e = self.event
            if e >= 0.8:
                self.extend(now, int(min(72, 18 + 2 * e)), int(min(144, 24 + 5 * e)), int(min(36, 6 + e)))
            else:
                self.extend(now, 3, 3, 2)
        return now > self.wet, now > self.long, now > self.short

    def extend(self, now, wet, long, short):
        self.wet, self.long, self.short = max(self.wet, now + wet), max(self.long, now + long), max(self.short, now + short)

    def rise(self, now, y):
        same = sorted(self.ys[now - 24 * k] for k in range(1, 8) if now - 24 * k in self.ys)
        self.ys[now] = y
        if len(same) < 2:
            return 0.0
        above = y - same[len(same) // 2]
        least = min([above] + [self.excess[now - k] for k in range(1, 5) if now - k in self.excess])
        self.excess[now] = above
        return min(above, above - least)


class Calendar:
    def __init__(self, zone):
        self.zone = zoneinfo.ZoneInfo(zone)
        self.kept = {}

    def of(self, number):
        """Day since 1970 of the civil day, the middle of the hour in it, and whether it is a day of rest."""
        if number not in self.kept:
            local = dt.datetime.fromtimestamp((FIRST_HOUR + number) * 3600, self.zone)
            of_day = local.hour + local.minute / 60 + 0.5
            self.kept[number] = (local.date().toordinal() - 719163, of_day % 24, local.weekday() >= 5)
        return self.kept[number]

    def first_hour(self, day):
        date = dt.date.fromordinal(day + 719163)
        return int(dt.datetime(date.year, date.month, date.day, tzinfo=self.zone).timestamp()) // 3600 - FIRST_HOUR


class Curve:
    """The usual day: harmonics with weights after Huber and a ridge of 0.3, as on its page."""

    def __init__(self, at, rest, values, harmonics=4):
        self.harmonics = harmonics
        x = self.rows(np.asarray(at), np.asarray(rest, dtype=float))
        values = np.asarray(values)
        ridge = np.sqrt(0.3 * np.diag([0.0] + [1.0] * (x.shape[1] - 1)))
        weights = np.ones(len(values))
        for _ in range(8):
            root = np.sqrt(weights)
            self.figures = np.linalg.lstsq(np.vstack([x * root[:, None], ridge]), np.concatenate([values * root, np.zeros(x.shape[1])]), rcond=None)[0]
            left = values - x @ self.figures
            self.scatter = float(np.median(np.abs(left)) / 0.6744897501960817)
            weights = np.minimum(1, 1.5 * self.scatter / np.maximum(np.abs(left), 1e-300))
        total = np.sum((values - values.mean()) ** 2)
        self.explained = max(0.0, 1 - float(np.sum((left - left.mean()) ** 2) / total)) if total > 0 else 0.0
        self.table = {}

    def rows(self, at, rest):
        turn = 2 * np.pi * at / 24
        waves = [f(k * turn) for k in range(1, self.harmonics + 1) for f in (np.cos, np.sin)]
        return np.column_stack([np.ones_like(turn)] + waves + [rest] + [rest * w for w in waves[:4]])

    def value(self, at, rest):
        key = (at, rest)
        if key not in self.table:
            self.table[key] = float((self.rows(np.array([at]), np.array([float(rest)])) @ self.figures)[0])
        return self.table[key]

    def extremes(self):
        values = [self.value(q / 4, rest) for q in range(96) for rest in (False, True)]
        return math.exp(min(values)), math.exp(max(values))


class Law:
    """The velocity usual at a depth: classes of equal count, a line by Theil and Sen, 0.8 of what it leaves over."""

    def __init__(self, y, v):
        order = np.argsort(y, kind="stable")
        y, v = np.asarray(y)[order], np.asarray(v)[order]
        n = len(y)
        count = min(12, n // 24)
        groups = [slice(k * n // count, (k + 1) * n // count) for k in range(count)]
        self.ys = np.array([np.median(y[g]) for g in groups])
        vs = np.array([np.median(v[g]) for g in groups])
        self.exponent = float(np.clip(stats.theilslopes(vs, self.ys)[0], -0.2, 1.2))
        self.level = float(np.median(vs - self.exponent * self.ys))
        self.left = 0.8 * (vs - self.exponent * self.ys - self.level)
        self.scatters = np.array([robust(v[g] - self.at(y[g])) for g in groups])
        self.scatter = float(np.median(self.scatters))
        self.lowest, self.highest = (float(q) for q in np.quantile(y, [0.005, 0.99]))

    def at(self, y):
        return self.level + self.exponent * y + np.interp(y, self.ys, self.left)

    def relative(self, y):
        """Scatter at a depth over that of all classes, of which three quarters are believed; at least 1."""
        return max(1.0, 0.75 * float(np.interp(y, self.ys, self.scatters)) / self.scatter) if self.scatter > 0 else 1.0


class Ebb:
    """What the sewer does when the sea lets it: the lowest of the last 25 hours, of which 20 must be known, and the velocity of that hour."""

    def __init__(self):
        self.rows = []

    def take(self, number, y, v):
        if y == y:
            self.rows.append((y, number, v))
        self.rows = [row for row in self.rows if number - row[1] < 25]
        if y != y or len(self.rows) < 20:
            return NAN, NAN
        lowest = min(self.rows, key=lambda row: row[:2])
        return lowest[0], lowest[2]

    def forget(self, since):
        self.rows = [row for row in self.rows if row[1] < since]


def is_tidal(numbers, left):
    """A constituent of the moon in what the day leaves over: 72 h or more, amplitude above 0.05, more than 15 % of the variance."""
    at = np.array([FIRST_HOUR + n for n, x in zip(numbers, left) if x == x]) % 1_000_000
    x = known(left)
    if len(x) < 72:
        return False
    x = x - x.mean()
    turn = 2 * np.pi * at / MOON
    waves = np.column_stack([np.cos(turn), np.sin(turn)])
    fit = np.linalg.lstsq(waves, x, rcond=None)[0]
    return bool(np.hypot(*fit) > 0.05 and 1 - np.sum((x - waves @ fit) ** 2) / np.sum(x ** 2) > 0.15)


def blocks(numbers, left, length, least):
    """Medians by blocks of hours that know enough of them."""
    found = {}
    for n, x in zip(numbers, left):
        if x == x:
            found.setdefault((FIRST_HOUR + n) // length, []).append(x)
    return {k: float(np.median(v)) for k, v in sorted(found.items()) if len(v) >= least}


USUAL = (0.04, 0.05, 0.06, 0.08)
FACTOR = (1.4, 1.7, 1.7, 1.7)
FLOOR = (0.08, 0.145, 0.145, 0.24)


def scale(quantity, numbers, left):
    six, days = blocks(numbers, left, 6, 3), blocks(numbers, left, 24, 8)
    x = np.array(list(six.values()))
    centre = middle(x)
    found = NAN
    if len(x) >= 4:
        pairs = [(six[k] - centre) * (six[k - 1] - centre) for k in six if k - 1 in six]
        square = float(np.mean((x - centre) ** 2))
        phi = float(np.clip(np.mean(pairs) / square, 0, 0.9)) if len(pairs) >= 4 and square > 0 else 0.0
        found = (robust(x) ** 2 + variance(x)) / 2 * (1 + phi) / (1 - phi)
    daily = 4 * variance(list(days.values())) if len(days) >= 3 else 0.0
    found = max(daily, found) if found == found else daily
    s0 = max(USUAL[0], 0.9 * robust(left)) if quantity == 0 else USUAL[quantity]
    seen = max(0, len(days) - 1)
    shrunk = (12 * 4 * s0 ** 2 + seen * found) / (12 + seen)
    return (centre if centre == centre else 0.0), max(FACTOR[quantity] * math.sqrt(shrunk), FLOOR[quantity] / 0.75)


def day_scatter(numbers, left):
    """How far days stray, two weeks of which say as much as what hours scatter."""
    days = list(blocks(numbers, left, 24, 8).values())
    seen = max(0, len(days) - 1)
    return math.sqrt((12 * (0.6 * robust(left)) ** 2 + (seen * variance(days) if seen else 0.0)) / (12 + seen))


def unstable(numbers, left, least, limit):
    """Whether the days step or drift; of a step the hour."""
    days = blocks(numbers, left, 24, least)
    at, x = list(days), np.array(list(days.values()))
    n = len(x)
    if n < 5:
        return None
    worst, where, change = 0.0, 0, 0.0
    for k in range(2, n - 1):
        a, b = x[:k], x[k:]
        pooled = math.sqrt(((k - 1) * np.var(a, ddof=1) + (n - k - 1) * np.var(b, ddof=1)) / (n - 2))
        difference = float(np.median(b) - np.median(a))
        statistic = abs(difference) / (max(0.015, pooled) * math.sqrt(1 / k + 1 / (n - k)))
        if statistic > worst:
            worst, where, change = statistic, k, difference
    if worst >= 5 and abs(change) >= limit:
        return at[where] * 24 - FIRST_HOUR
    if abs(stats.theilslopes(x, at)[0] * (at[-1] - at[0])) >= limit and mann_kendall(x) <= 0.002:
        return -math.inf
    return None


def jump(step, numbers, left, least):
    """By how much the days from an hour on lie above those before, and how many standard errors that is; two days on each side."""
    days = blocks(numbers, left, 24, least)
    a, b = (np.array([x for k, x in days.items() if (k * 24 - FIRST_HOUR >= step) is late]) for late in (False, True))
    if min(len(a), len(b)) < 2:
        return 0.0, 0.0
    moved = float(np.median(b) - np.median(a))
    pooled = math.sqrt(((len(a) - 1) * np.var(a, ddof=1) + (len(b) - 1) * np.var(b, ddof=1)) / (len(a) + len(b) - 2))
    return moved, abs(moved) / (max(0.015, pooled) * math.sqrt(1 / len(a) + 1 / len(b)))


def part_at(step, numbers, r, d):
    """Whether r moved against d where d stepped, by three standard errors and 0.04."""
    moved, sure = jump(step, numbers, r, 12)
    return sure >= 3 and abs(moved) >= 0.04 and moved * jump(step, numbers, d, 6)[0] < 0


def shifted_from(base, taken, weather):
    """The hour from which on the velocities of a stretch and the week after follow depths that are moved much better; None if they do not."""
    rows = np.array([(h.number, h.y, h.v) for h in taken if base.begin <= h.number < base.end + 168 and h.y == h.y and h.v == h.v])
    if len(rows) < 72:
        return None
    day = (FIRST_HOUR + rows[:, 0].astype(int)) // 24
    days, place, hours_of = np.unique(day, return_inverse=True, return_counts=True)
    level, middle_y = np.exp(rows[:, 1]), float(np.median(rows[:, 1]))
    apart = lambda x: x - 0.75 * (np.bincount(place, x) / hours_of)[place]
    target = apart(rows[:, 2])

    def law(on, shift):
        x = np.log(level - shift * on) - middle_y
        return [apart(t) for t in (np.ones(len(x)), x, x * x)]

    def over(terms, weights):
        """What a weighted fit leaves; a thousandth of each figure is asked to be nothing."""
        a = np.vstack([np.array(terms).T * np.sqrt(weights)[:, None], 1e-3 * np.eye(len(terms))])
        b = np.concatenate([target * np.sqrt(weights), np.zeros(len(terms))])
        return target - np.array(terms).T @ np.linalg.lstsq(a, b, rcond=None)[0]

    none = law(np.zeros(len(level)), 0.0)
    weights = np.ones(len(level))
    for _ in range(3):
        left = over(none, weights)
        weights = np.minimum(1.0, 2 * robust(left) / np.maximum(np.abs(left), 1e-300))
    scatter = robust(over(none, weights))
    squares = lambda terms: float(np.sum(weights * over(terms, weights) ** 2))
    still = squares(none)
    tried = []
    for k in range(1, len(days)):
        on = (place >= k) * 1.0
        for mm in [*range(-60, -5, 5), *range(10, 65, 5)]:
            if level[place >= k].min() - mm / 1000 >= 0.005:
                tried.append((still - squares(law(on, mm / 1000)), k, mm, on))
    if not tried:
        return None
    gain, k, mm, on = max(tried, key=lambda t: t[0])
    if min((hours_of[:k] >= 6).sum(), (hours_of[k:] >= 6).sum()) < 3 or gain <= 30 * scatter ** 2 or still - squares(none + [apart(on)]) < gain / 3:
        return None
    at = int(days[k]) * 24 - FIRST_HOUR
    if mm < 0:
        seen = [(h.number, h.v, *base.calendar.of(h.number)[1:]) for h, w in zip(taken, weather) if base.begin <= h.number < base.end + 168 and w[0] and h.v == h.v]
        if len(seen) >= 50:
            curve = Curve([s[2] for s in seen], [s[3] for s in seen], np.array([s[1] for s in seen]))
            if jump(at, [s[0] for s in seen], [s[1] - curve.value(*s[2:]) for s in seen], 6)[0] > 0.06:
                return None
    return at


def mann_kendall(x):
    """Normal approximation with ties and continuity."""
    n = len(x)
    s = sum(np.sign(x[j] - x[i]) for i in range(n) for j in range(i + 1, n))
    ties = np.unique(x, return_counts=True)[1]
    var = (n * (n - 1) * (2 * n + 5) - sum(t * (t - 1) * (2 * t + 5) for t in ties)) / 18
    z = (s - np.sign(s)) / math.sqrt(var) if s else 0.0
    return 2 * stats.norm.sf(abs(z))


class Phase:
    """By how many hours the usual day must be moved to fit one day best; where water is free, so is a multiple of one over the usual."""

    def __init__(self, curve, water, usual=None):
        self.curves = {rest: np.array([curve.value(q / 4, rest) for q in range(96)]) for rest in (False, True)}
        self.water, self.usual = water, usual

    def left(self, rest, at, y, quarters):
        """What a day leaves over of the usual one that comes so many quarters of an hour late."""
        places = np.mod(np.asarray(at) * 4 - quarters, 96)
        table = self.curves[rest]
        read = lambda values: np.interp(places, np.arange(97), np.append(values, values[0]))
        free = [np.ones(len(y)), np.arange(len(y))]
        bare = lambda z: z - np.column_stack(free) @ np.linalg.lstsq(np.column_stack(free), z, rcond=None)[0]
        if self.water:
            more = bare(read(np.exp(table[0] - table)))
            if more @ more > 1e-9 * len(y):
                free.append(more)
        x, z = bare(read(table)), bare(np.asarray(y))
        xx = float(x @ x)
        return z - (float(np.clip(x @ z / xx, 0.6, 1.6)) if xx > 0 else 1.0) * x

    def squares(self, rest, at, y, quarters):
        return float(np.sum(self.left(rest, at, y, quarters) ** 2))

    def of(self, rest, at, y, centre):
        """Shift in hours; squares at the usual shift and at this one; what the evening gains. None at the end of what is tried."""
        tried = [self.squares(rest, at, y, k) for k in range(-20, 21)]
        best = int(np.argmin(tried))
        if best in (0, 40):
            return None
        below, here, above = tried[best - 1:best + 2]
        bend = below - 2 * here + above
        shift = (best - 20 + ((below - above) / (2 * bend) if bend > 0 else 0.0)) / 4
        usual = min(20, max(-20, self.quarters(centre)))
        evening = (np.asarray(at) >= 14) | (np.asarray(at) < 3)
        gain = sum(sign * float(np.sum(self.left(rest, at, y, k)[evening] ** 2)) for sign, k in ((1, usual), (-1, best - 20)))
        return shift, tried[20 + usual], here, gain

    def half(self, rest, at, y, evening):
        """Shift in hours of the evening (from 14 to 3 h) or the morning by itself: least squares, level and amplitude free; NaN if none."""
        at, y = np.asarray(at, float), np.asarray(y, float)
        of = ((at >= 14) | (at < 3)) == evening
        if of.sum() < 9:
            return math.nan
        at, z = at[of], y[of] - y[of].mean()
        table = np.append(self.curves[rest], self.curves[rest][0])
        tried = []
        for k in range(-20, 21):
            x = np.interp(np.mod(4 * at - k, 96), np.arange(97), table)
            x = x - x.mean()
            a = min(1.6, max(0.6, (x @ z) / (x @ x))) if x @ x > 0 else 1.0
            tried.append(float(np.sum((z - a * x) ** 2)))
        best = int(np.argmin(tried))
        if best in (0, 40):
            return math.nan
        below, here, above = tried[best - 1:best + 2]
        bend = below - 2 * here + above
        return (best - 20 + ((below - above) / (2 * bend) if bend > 0 else 0.0)) / 4

    @staticmethod
    def quarters(hours):
        return math.floor(4 * hours + 0.5)


class UsualPhase:
    def __init__(self, work, rest, by_flow=False, halves=None):
        # Mostly days of rest: the curve of the working day is theirs.
        borrowed = len(work) < 3 and len(rest) > len(work)
        c_work = float(np.median(work)) if len(work) >= 3 or borrowed and len(work) else 0.0
        c_rest = float(np.median(rest)) * len(rest) / (len(rest) + 1) if len(rest) else 0.0
        self.centre = {False: c_work, True: c_rest}
        self.halves = {}
        for (kind, late), of in (halves or {}).items():
            x, c = [v for v in of if v == v], c_rest if kind else c_work
            self.halves[kind, late] = c if len(x) < (1 if kind else 3) else float(np.median(x)) if not kind else (len(x) * float(np.median(x)) + c) / (len(x) + 1)
        prior = ((0.15, 0.08), (0.4, 0.25)) if by_flow else ((0.25, 0.12), (0.5, 0.3))
        of_work = (prior[1][0] if len(work) else 24.0) if borrowed else self.spread(work, c_work, *prior[0])
        self.scatter = {False: of_work, True: self.spread(rest, c_rest, *prior[1])}

    @staticmethod
    def spread(x, centre, prior, least):
        n = len(x)
        if n < 2:
            return prior
        found = (robust(x) ** 2 + float(np.mean((np.asarray(x) - centre) ** 2))) / 2
        return max(least, math.sqrt((4 * prior ** 2 + n * found) / (4 + n)))


class Storms:
    """Storms of 2 mm or more between 5 dry hours, at most 60 h long with them; each gives a lag, if it gives one."""

    def __init__(self, told=None):
        self.told = told or storm_lag
        self.rain, self.excess, self.last, self.sum, self.dry = [], [], None, 0.0, 0

    def take(self, number, rain, excess):
        if rain != rain or self.last is not None and number - self.last > 1:
            self.rain, self.excess, self.sum, self.dry = [], [], 0.0, 0
        self.last = number
        if rain != rain:
            return None
        self.rain.append(rain)
        self.excess.append(excess)
        if rain > 0.05:
            self.sum, self.dry = self.sum + rain, 0
            return None
        self.dry += 1
        lag = None
        if self.sum > 0:
            if self.dry < 5:
                return None
            if self.sum >= 2 and 10 <= len(self.rain) <= 60:
                lag = self.told(self.rain, self.excess)
            self.sum = 0.0
        self.rain, self.excess = self.rain[-5:], self.excess[-5:]
        return lag


def storm_lag(rain, excess):
    """The lag, h, and its correlation."""
    found = storm_fit(rain, excess, 0.15)
    return found and found[:2]


def storm_fit(rain, excess, rise):
    """The lag, h, its correlation, and the slope at its whole hour."""
    n = len(rain)
    weights = np.exp(-np.arange(n) / 1.5)
    held = np.convolve(rain, weights)[:n]
    x = np.asarray(excess, dtype=float)
    there = x == x
    if there.sum() < 0.8 * n or not np.ptp(x[there]) > rise:
        return None
    found, slopes = [], []
    for lag in range(-5, 7):
        pairs = [(held[i - lag], x[i]) for i in range(n) if there[i] and 0 <= i - lag < n]
        a, b = np.array(pairs).T
        found.append(float(np.corrcoef(a, b)[0, 1]) if np.ptp(a) > 0 and np.ptp(b) > 0 else 0.0)
        slopes.append(float(np.cov(a, b)[0, 1] / np.var(a, ddof=1)) if np.ptp(a) > 0 else 0.0)
    best = int(np.argmax(found))
    if best in (0, 11) or not found[best] > 0.7:
        return None
    below, here, above = found[best - 1:best + 2]
    bend = below - 2 * here + above
    return best - 5 + ((below - above) / (2 * bend) if bend < 0 else 0.0), here, slopes[best]


def largest_by_day(numbers, values):
    """The largest of each day of 24 h in which twelve hours know one."""
    days = {}
    for n, v in zip(numbers, values):
        if v == v:
            days.setdefault((FIRST_HOUR + n) // 24, []).append(v)
    return np.array([max(v) for v in days.values() if len(v) >= 12])


def once_in_ten_years(largest):
    """Of Gumbel's law by its moments, of 3650 days; 0 of fewer than three."""
    return float(np.mean(largest) + 5.945 * np.std(largest, ddof=1)) if len(largest) >= 3 else 0.0


class Baseline:
    """What one stretch of hours says is normal, or why it says nothing."""

    def __init__(self, pipe, taken, weather, begin, end, calendar, least_dry=100):
        at = [i for i, h in enumerate(taken) if begin <= h.number < end]
        hs = [taken[i] for i in at]
        dry = np.array([weather[i][0] for i in at], dtype=bool)
        long_dry = np.array([weather[i][1] for i in at], dtype=bool)
        nearly = [weather[i][2] for i in at]
        self.pipe, self.begin, self.end, self.calendar = pipe, begin, end, calendar
        self.reasons, self.notes, self.lacks, self.go_on, self.fault_first = 0, 0, False, -math.inf, False
        numbers = [h.number for h in hs]
        y, v = np.array([h.y for h in hs]), np.array([h.v for h in hs])
        sees = y == y
        self.hours, self.dry_hours = int(sees.sum()), int((sees & dry).sum())
        both = sees & (v == v)
        self.rain = any(h.rain == h.rain for h in hs)
        runs = [max([h.depth_run[0] for h in hs], default=0), max([h.velocity_run[0] for h in hs], default=0)]
        frozen = int(runs[0] > 16) + int(runs[1] > 8)
        self.learned = False
        if self.hours < 0.5 * (end - begin):
            read = sum(h.readings for h in hs)
            self.reasons = frozen + 1 + (2 * sum(h.outside for h in hs) > read)
            return
        if self.dry_hours < least_dry:
            self.lacks, self.reasons = True, 1
            return
        shown = [h.spread for h, w in zip(hs, dry) if w and h.y == h.y]
        self.strokes = bool(np.quantile(shown, 0.5) > 0.4)
        self.pumped, self.swings = bool(np.quantile(shown, 0.5) > 0.25), bool(np.quantile(shown, 0.75) > 0.5)
        self.echo(hs)
        self.reasons = frozen + int(self.zeros > 0.2)
        self.civil = [calendar.of(n) for n in numbers]
        fit = lambda values, where: Curve([self.civil[i][1] for i in where], [self.civil[i][2] for i in where], values[where])
        over = lambda curve, values, where: np.array([values[i] - curve.value(self.civil[i][1], self.civil[i][2]) if w else NAN
                                                      for i, w in enumerate(where)])
        dry_y = np.flatnonzero(dry & sees)
        self.depth = fit(y, dry_y)
        self.velocity = self.flow = self.law = None
        moving = int(both.sum()) >= 72
        self.notes += not moving and both.any()
        r = u = q = np.full(len(hs), NAN)
        flow = np.full(len(hs), NAN)
        self.exchanged = site_exchanges.by_drawings(pipe, hs, lambda y, v: Law(y, v).exponent) if moving else None
        self.notes += self.exchanged is not None
        if moving:
            law = Law(y[both], v[both])
            flow = np.where(both, v + np.log([pipe.area(math.exp(e)) if b else 1.0 for e, b in zip(y, both)]), NAN)
            if law.scatter > 0.25:
                self.notes += 1
                moving = False
            else:
                self.law = law
                r = np.where(both, v - law.at(y), NAN)
                self.words(y, both, sees)
        d = over(self.depth, y, dry)
        self.tidal = is_tidal(numbers, d)
        if moving and np.sum(dry & (v == v)) >= 50:
            where = np.flatnonzero(dry & (v == v))
            self.velocity = fit(v, where)
            u = over(self.velocity, v, dry)
            flow_dry = long_dry if np.sum(long_dry & (flow == flow)) >= 50 else dry
            self.flow = fit(flow, np.flatnonzero(flow_dry & (flow == flow)))
            q = over(self.flow, flow, flow_dry)
        self.ebb = None
        if self.tidal:
            ebb = Ebb()
            lowest = np.array([ebb.take(*row) if w else (ebb.take(*row), (NAN, NAN))[1] for row, w in zip(zip(numbers, y, v), dry)])
            self.ebb = middle(lowest[:, 0]), middle(lowest[:, 1])
            d, u = (lowest - self.ebb).T
        if moving:
            self.refuse(unstable(numbers, r, 12, 0.12))
            step = unstable(numbers, d, 6, 0.18)
            if not self.reasons and step is not None and step > -math.inf and part_at(step, numbers, r, d):
                self.refuse(step)
            if self.go_on > -math.inf:
                self.fault_first = jump(self.go_on, numbers, r, 12)[0] > 0 and jump(self.go_on, numbers, u, 6)[0] > 0.06
            if unstable(numbers, d, 6, 0.18) is not None and unstable(numbers, u, 6, 0.18) is not None:
                self.notes += 1
        elif not self.tidal:
            self.refuse(unstable(numbers, d, 6, 0.20))
            self.fault_first = self.go_on > -math.inf and jump(self.go_on, numbers, d, 6)[0] < 0
        if self.reasons:
            return
        self.learned = True
        self.moving = moving
        parts = self.velocity is not None and moving
        enough = lambda of: not self.tidal or int(np.sum(of == of)) >= 50
        watched = (moving, enough(d), parts and enough(u), parts and not self.tidal)
        self.centre, self.scale = [0.0] * 4, [0.0] * 4
        for c, left in enumerate((r, d, u, q)):
            if watched[c]:
                self.centre[c], s = scale(c, numbers, left)
                self.scale[c] = s * (1.5 if self.tidal or self.strokes and c > 0 else 1)
        self.day_scatter = day_scatter(numbers, r) * (1.5 if self.tidal or self.strokes else 1) if moving else 0.0
        pair = (d == d) & (u == u)
        self.covariance = [float(np.mean(a[pair] * b[pair])) if pair.any() else 0.0 for a, b in ((d, d), (d, u), (u, u))]
        self.kappa = pipe.kappa(math.exp(middle(y[dry_y])))
        rare = lambda of: once_in_ten_years(largest_by_day(numbers, of))
        self.depth_frozen = max(8.0, 2 * runs[0], rare([h.depth_run[0] for h in hs]))
        self.velocity_frozen = max(3.0, 2 * runs[1], rare([h.velocity_run[0] for h in hs]))
        moves = [m for h in hs for m in h.moves]
        self.velocity_step = min((d for d, v in moves if d > 1e-9 * v), default=0.0)
        self.velocity_scatter = math.fsum(d for d, _ in moves) / math.fsum(v for _, v in moves) * math.sqrt(math.pi) / 2 if self.velocity_step else 0.0
        steps = [abs(h.step) if w else NAN for h, w in zip(hs, dry)]
        self.depth_step = max(rare(steps), 1.5 * max(largest_by_day(numbers, steps))) if rare(steps) > 0 else NAN
        by_day = {}
        for h in hs:
            by_day[(FIRST_HOUR + h.number) // 24] = by_day.get((FIRST_HOUR + h.number) // 24, 0) + (h.upstream == h.upstream)
        self.upstream_hours = max(by_day.values())
        self.tells_clock = not self.tidal and self.depth.explained >= 0.3
        self.highest(y, dry)
        mean_y = np.array([h.mean_y for h in hs])
        self.usual_phase = self.phases(mean_y, nearly, Phase(self.depth, False), False)
        self.by_depth, self.by_flow = Phase(self.depth, False, self.usual_phase), None
        if not self.tidal and not self.pumped:
            mean_flow = np.array([h.mean_v + math.log(pipe.area(math.exp(h.mean_y))) if f == f else NAN for h, f in zip(hs, flow)])
            self.by_depth = self.steep(mean_y, dry, nearly, False) or self.by_depth
            self.by_flow = self.steep(mean_flow, dry, nearly, True) if self.flow else None
        storms = Storms()
        lags = [storms.take(h.number, h.rain, h.y - self.depth.value(*self.civil[i][1:])) for i, h in enumerate(hs)]
        self.lags = [lag[0] for lag in lags if lag is not None]
        self.level_usual = None
        if not moving and not self.tidal:
            levels = Levels(lowest_hour(self.depth))
            for i, h in enumerate(hs):
                levels.hour(FIRST_HOUR + h.number, h.rain, h.y, self.civil[i][1], self.depth.value(*self.civil[i][1:]), dry[i])
            kept = levels.kept()
            self.level_usual = dict(nights=kept["nights"], falls=kept["falls"], rises=len(levels.rises), days=float((end - begin) // 24))
        self.peculiar()

    def refuse(self, step):
        if step is not None:
            self.reasons += 1
            self.go_on = max(self.go_on, step)

    def words(self, y, both, sees):
        full = int(sum(math.exp(e) >= self.pipe.diameter for e in y[sees]))
        if full > 0.5 * self.hours:
            self.notes += 1
            return
        self.notes += self.law.exponent < 0.1
        level = math.exp(middle(y[both]))
        ratio = math.exp(self.law.at(math.log(level))) / self.pipe.uniform(min(level, self.pipe.diameter))
        self.notes += not 1 / 2.5 < ratio < 2.5

    def echo(self, hs):
        self.narrow = middle([h.scatter for h in hs]) < 0.05
        days = {}
        for h in hs:
            day = days.setdefault((FIRST_HOUR + h.number) // 24, np.zeros(8))
            day += (h.looked, h.zeros, h.lower if self.narrow else h.low, h.flips, h.compared, h.lone, h.held, h.stray_high)
        total = sum(days.values())
        self.zeros = total[1] / total[0] if total[0] else 0.0
        shares = np.array([d[1:4] / d[0] for d in days.values() if d[0] >= 12])
        self.lone_limit = self.beyond([d[5] / d[4] for d in days.values() if d[4] >= 12], 0.05)
        self.stray_limit = self.beyond([d[7] / d[6] for d in days.values() if d[6] >= 12], 0.04)
        more = [0.2, 0.2, 0.1] if self.strokes else [0.1] * 3
        self.limits = [2 * e for e in more] if len(shares) < 2 else [
            float(m + max(e, 1.5 * m) + 4 * s) for e, m, s in zip(more, shares.mean(axis=0), shares.std(axis=0, ddof=1))]

    @staticmethod
    def beyond(shares, more):
        """What the shares of days say of the share of a sound sensor at most."""
        return float(np.mean(shares) + max(more, 1.5 * np.mean(shares)) + 4 * np.std(shares, ddof=1)) if len(shares) > 1 else 2 * more

    def highest(self, y, dry):
        days = {}
        for c, e, w in zip(self.civil, y, dry):
            if w and e == e:
                days.setdefault(c[0], []).append(e)
        peaks = [max(v) for v in days.values() if len(v) >= 16]
        self.peak = math.exp(np.median(peaks)) if peaks else math.exp(np.quantile([e for e, w in zip(y, dry) if w and e == e], 0.95))

    def steep(self, values, dry, nearly, by_flow):
        """The usual day of eight harmonics that places a clock, with where its phases lie; None where it says too little."""
        where = np.flatnonzero(dry & (values == values))
        if len(where) < 50:
            return None
        curve = Curve([self.civil[i][1] for i in where], [self.civil[i][2] for i in where], values[where], 8)
        if curve.explained < 0.3:
            return None
        phase = Phase(curve, True)
        phase.usual = self.phases(values, nearly, phase, by_flow)
        return phase

    def phases(self, values, nearly, phase, by_flow):
        days = {}
        for c, e, w in zip(self.civil, values, nearly):
            day = days.setdefault(c[0], (c[2], [], []))
            if w and e == e:
                day[1].append(c[1])
                day[2].append(e)
        shifts, halves = {False: [], True: []}, {(k, late): [] for k in (False, True) for late in (False, True)}
        for rest, at, of in days.values():
            if len(of) >= 16:
                found = phase.of(rest, at, of, 0.0)
                if found:
                    shifts[rest].append(found[0])
                    for late in (False, True):
                        halves[rest, late].append(phase.half(rest, at, of, late))
        return UsualPhase(shifts[False], shifts[True], by_flow, halves)

    def peculiar(self):
        """Counts what cannot be tested with it."""
        count = 2 * (self.law is None) + self.tidal + (not self.rain) + (not self.tells_clock and not self.tidal) + (self.law is not None)
        self.tests_gauge = self.rain and not self.tidal and not self.pumped
        self.not_tested = count + (not self.rain or not self.tests_gauge or len(self.lags) < 2)


def taken_hours(record, pipe, begin=None, end=None):
    keep = slice(0, len(record.minutes)) if begin is None else slice(int(np.searchsorted(record.minutes, (begin - 168) * 60)),
                                                                     int(np.searchsorted(record.minutes, end * 60)))
    found = hours(record.minutes[keep], record.depths[keep], record.velocities[keep], record.rains[keep], Bounds(pipe.diameter))
    weather = Weather()
    return found, [weather.take(h, h.rain) for h in found]


def learn(record, pipe, zone, interval=None, days=14):
    """The baseline of an interval, or of the first stretch that passes, and the reasons of those refused."""
    calendar = Calendar(zone)
    if interval:
        taken, weather = taken_hours(record, pipe, *interval)
        base = Baseline(pipe, taken, weather, *interval, calendar)
        return (base if base.learned else None), [] if base.learned else [base]
    taken, weather = taken_hours(record, pipe)
    begin, last = taken[0].number, taken[-1].number + 1
    refused = []
    while True:
        length = 24 * days
        base = Baseline(pipe, taken, weather, begin, begin + length, calendar)
        while base.lacks and length < 42 * 24 and begin + length + 24 <= last:
            length += 24
            base = Baseline(pipe, taken, weather, begin, begin + length, calendar)
        if base.learned:
            at = shifted_from(base, taken, weather) if base.law is not None and not base.tidal else None
            if at is not None and base.begin + 192 <= at < base.end:
                before = Baseline(pipe, taken, weather, base.begin, at, calendar, 50)
                if before.learned:
                    base.reasons = 1
                    return before, refused + [base]
            return base, refused
        refused.append(base)
        if base.go_on - begin >= 8 * 24 and not base.fault_first:
            before = Baseline(pipe, taken, weather, begin, int(base.go_on), calendar, 50)
            if before.learned:
                return before, refused
        begin = int(max(begin + 24, base.go_on))
        if begin + 24 * days > last:
            return None, refused
