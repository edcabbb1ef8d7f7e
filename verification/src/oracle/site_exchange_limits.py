"""Columns of depth and velocity that are exchanged: whole records, those about each limit among them.

    python3 site_exchange_limits.py FOLDER

writes the tables watch-exchange-events, watch-exchange-findings and watch-exchange-kept into the folder of the tables of hydraulics. Of many records those are kept of which a limit 5 % larger, or one hour more, would tell something else. The mechanism by
site_exchanges.py, all else by site_watching.py; none knows anything of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

from site_baselines import site, storm
from site_changes import CHANGED, CLOSED, FOUND, NO_WAY, RETURNED, STANDING, STEP, Book
from site_exchanges import LIMITS, Exchanges
from site_hours import FIRST_HOUR, Bounds, Pipe, hours, learn
from site_limits import further
from site_recipes import Record
from site_watches import EVER, FOUR_STORMS, WATCH, tables

PROGRAM = "site_exchange_limits.py"
SWAP = 22


def swap(begin, end=EVER, factor=1.0):
    return [SWAP, begin, end, factor, 0]


def times(begin, end, depth=1.0, velocity=1.0):
    return [0, begin, end, depth, depth, 1, begin, end, velocity, velocity]


CASES = {
    "both in SI": (site(seed=301, days=20), swap(378), "UTC", 0.6, 0.3),
    "depth in millimetres, and right again": (site(seed=302, days=23), FOUR_STORMS + swap(383, 470, 1000.0), "UTC", 0.6, 0),
    "depth in centimetres within an hour": (site(seed=303, days=19), swap(385.5, EVER, 100.0), "Asia/Tokyo", 0.6, 0),
    "velocity in millimetres": (site(seed=304, days=19), swap(378, EVER, 0.001), "UTC", 0.6, 0),
    "velocity in centimetres": (site(seed=305, days=19), swap(378, EVER, 0.01), "UTC", 0.6, 0),
    "after an outage": (site(seed=306, days=20), [4, 370, 411, 0, 0] + swap(411), "UTC", 0.6, 0),
    "again within five days": (site(seed=307, days=26), swap(380, 420) + swap(520, 560), "UTC", 0.6, 0),
    "again after five days": (site(seed=307, days=26), swap(380, 420) + swap(545, 585), "UTC", 0.6, 0),
    "right for a day less an hour": (site(seed=308, days=22), swap(380, 410) + swap(433, 470), "UTC", 0.6, 0),
    "in a storm": (site(seed=309, days=20), storm(378, 9, 3, 0.9, 1.0) + swap(380), "UTC", 0.6, 0),
    "held up at once instead": (site(seed=310, days=20), times(380, EVER, 3.0, 0.25), "UTC", 0.6, 0.3),
    # Told with hours in between that are like neither.
    "just told": (site(seed=318, days=17), [c for k in (1, 2) for c in (0, 378 + 3 * k, 379 + 3 * k, 1.53, 1.53)] + swap(378), "UTC", 0.6, 0),
    "asked at the end": (site(seed=319, days=16), swap(376), "UTC", 0.6, 0),
    "from the first day": (site(seed=311, days=18), swap(0), "UTC", 0.6, 0),
    "from the first day, right again": (site(seed=312, days=21), swap(0, 400), "UTC", 0.6, 0),
    "from the first day, three readings an hour": (site(seed=313, days=18, step=20), swap(0), "UTC", 0.6, 0),
    "from the first day, read more smoothly than the depth": (site(seed=314, days=18, noise=0.0), swap(0), "UTC", 0.6, 0),
    "from the first day, twice as fast": (site(seed=315, days=18, speed=2.4), swap(0), "UTC", 0.9, 0),
    "from the first day, too flat": (site(seed=316, days=18, exponent=0.3), swap(0), "UTC", 0.6, 0),
    "from the first day, steep": (site(seed=317, days=18, exponent=1.0), swap(0), "UTC", 0.6, 0),
}


KEPT_OF = ("depth in millimetres, and right again", "from the first day", "from the first day, right again", "again within five days", "right for a day less an hour", "in a storm",
           "just told", "asked at the end")
MORE = [("exchanged_counts", WATCH, "exchangedCounts", -1), ("exchanged_asked", WATCH, "exchangedAskedValues", -1), ("exchanged_right", WATCH, "exchangedRightValues", -1),
        ("exchanged_home", WATCH, "exchangedHours", 4)]


def candidates():
    """Records about the limits: a leap, a few hours that stray, an offset, hours that scatter, a day that is flat."""
    for s in range(3):
        of = lambda k, **other: site(**dict(dict(seed=330 + 10 * k + s, days=18, step=30), **other))
        for over in (1.37, 1.47, 1.53):
            for stray in (2, 3, 4):
                # Hours in which what is the velocity then strays.
                yield of(0), [c for k in range(stray) for c in (0, 382 + 3 * k, 383 + 3 * k, over, over)], swap(378)
        for share in (0.57, 0.6, 0.64, 4.2, 4.45, 4.7):
            yield of(1), times(378, EVER, 1, 1), [1, 382, 384, share, share, 0, 382, 384, share ** 0.6, share ** 0.6] + swap(378)
        for share in (0.57, 0.6, 0.64, 4.2, 4.45, 4.7):
            # Three hours of a depth as it may be lifted or fallen.
            yield of(2), [0, 382, 385, share, share, 1, 382, 385, share ** 0.6, share ** 0.6], swap(378)
        for factor in (1.14, 1.2, 1.21, 1.24, 1.27):
            yield of(3), [1, 378, EVER, factor, factor], swap(378)
        for speed in (0.19, 0.2, 0.21, 0.22, 0.23):
            yield of(4, speed=speed), [], swap(378)
        for noise in (0.1, 0.14, 0.18, 0.22, 0.26):
            for day in (0.05, 0.1, 0.15, 0.25, 0.35):
                yield of(5, noise=noise, day=day), [], swap(378)
        for last in (11, 12, 13, 14):
            yield of(6), [], swap(378, 378 + last)
        for gap in (23, 24, 25):
            yield of(7), [], swap(378, 396) + swap(396 + gap, 420 + gap)
        for gap in (119, 120, 121):
            yield of(8, days=24), [], swap(378, 396) + swap(396 + gap, 420 + gap)
        for away in (30, 34, 35, 36, 37, 38):
            # Few readings: the question is open for long.
            yield of(9), [], swap(378) + [4, 384, 384 + away, 0, 0]


def quick(base, taken, limits):
    """What is told of exchanged columns alone: kinds and hours."""
    book = Book()
    of = Exchanges(base, book, lambda *_: None, (FOUND, CHANGED, RETURNED, CLOSED, STANDING, STEP, NO_WAY), limits)
    for hour in taken:
        kept = dict(vars(hour))
        of.take(hour, FIRST_HOUR + hour.number, base.begin <= hour.number < base.end)
        vars(hour).update(kept)
    return [(e[0], e[1]) for e in book.events]


def about_limits():
    """A record for each limit, of which the limit a little further tells something else."""
    left, found, known = {k: further(LIMITS, k) for k in LIMITS}, {}, {}
    for recipe, before, after in candidates():
        if not left:
            break
        record = Record(recipe, before + after)
        base, _ = learn(record, Pipe(0.6), "UTC", None)
        slow = 0.6 * base.velocity.extremes()[0]
        low, high = base.depth.extremes()
        taken = hours(record.minutes, record.depths, record.velocities, record.rains,
                      Bounds(0.6, base.depth_frozen, base.velocity_frozen, 1.25 * high, slow, 0.1 * low, base.velocity_step, base.velocity_scatter))
        told = quick(base, taken, LIMITS)
        shown = [k for k, limits in left.items() if quick(base, taken, limits) != told]
        if shown:
            found[" ".join(shown)] = (recipe, before + after, "UTC", 0.6, 0)
            left = {k: limits for k, limits in left.items() if k not in shown}
    print("no record for", list(left), file=sys.stderr)
    return found


def main(folder):
    tables(folder, PROGRAM, {**CASES, **about_limits()}, KEPT_OF, "watch-exchange", MORE)


if __name__ == "__main__":
    main(sys.argv[1])
