"""Small changes by weeks, from days just within a limit or just beyond, as the page on the watch has them.

    python3 site_slow_limits.py FOLDER

writes the table watch-slow-limits into the folder of the tables of hydraulics. The days of a constructed record are put; what its next
day then tells is computed by site_watching.py. Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

from site_baselines import site
from site_changes import shape_of
from site_hours import FIRST_HOUR
from site_limits import Scene, further, listed, table
from site_slow import LIMITS, WORDS, Weeks, DOWN, UP

PROGRAM = "site_slow_limits.py"
PART = "watch:hourly-watch/change:change-watch/slow:slow-change"
AT, LAST_DAY = 452, 18
FIRST_DAY = FIRST_HOUR // 24


class Silent:
    """A book that only counts."""

    def open(self, name, since, found):
        track = type("Track", (), {})()
        track.found, track.open, track.returns = found, True, 0
        track.stand_again = lambda time: (setattr(track, "open", True), setattr(track, "returns", track.returns + 1))
        return track

    def tell(self, *event):
        pass


def drawn(random, limit):
    """Days before the last one: some usual, then some that stand away, with gaps."""
    n, away = int(random.integers(13, 34)), int(random.integers(5, 22))
    sign, size = random.choice([-1, 1]), limit * random.choice([random.uniform(0.94, 1.06), random.uniform(1.1, 2.0)])
    later = random.choice([1.0, random.uniform(0.3, 0.6)])
    days = {}
    for k in range(n, 0, -1):
        if k < n and random.random() < random.choice([0.0, 0.3]):
            continue
        x = size if k <= away else 0.0
        if later < 1:
            x = limit * 1.3 if k > 7 else limit * later
        days[FIRST_DAY + LAST_DAY - k] = (float(np.round(sign * x + random.choice([0.0005, 0.004]) * random.standard_normal(), 4)), int(random.integers(8, 25)))
    return days


def main(folder):
    random, scenes = np.random.default_rng(29), []
    for seed, noise, wanted in ((271, 0.0, ["least", "days", "least_days", "within", "now", "over"]), (272, 0.07, ["scatters", "days", "over"])):
        case = (site(seed=seed, days=20, step=60, parted=0.01 + noise), [], "UTC", 0.6, 0)
        last = []

        def peep(w):
            end_day = w.changes.small.end_day
            w.changes.small.end_day = lambda hours, end: (end_day(hours, end), last.append((w.changes.small.days[w.changes.small.today], end)))

        scene = Scene(case, AT, PART, WORDS[DOWN])
        scene.told(peep)
        (value, end), base = last[0], scene.base
        left = [w for w in wanted for _ in range(2)]

        def answer(days, limits):
            w = Weeks(base, Silent(), shape_of, limits)
            w.today, w.days = FIRST_DAY + LAST_DAY, {**days, FIRST_DAY + LAST_DAY: value}
            w.look(end)
            return None if w.track is None else (w.track.direction, w.track.since, w.track.earliest)

        for _ in range(20000):
            days = drawn(random, Weeks(base, Silent(), shape_of).limit())
            told = answer(days, LIMITS)
            seen = sorted({w for w in set(left) if answer(days, further(LIMITS, w)) != told})
            if not seen:
                continue
            for w in seen:
                left.remove(w)
            one = Scene(case, AT, PART, WORDS[told[0] if told else DOWN])
            put = f"daysNumbers={listed(list(days))} daysValues={listed([v for day in days.values() for v in day])}"

            def edit(w, days=days):
                w.changes.small.days = dict(days)

            scenes.append((one, put, " ".join(seen), one.told(edit)))
            if not left:
                break
        print(seed, base.day_scatter, len(scenes), "no state for", left, file=sys.stderr)
    table(folder, "watch-slow-limits", "Small changes of the velocity at its depth, from days on their limits", scenes, PROGRAM)


if __name__ == "__main__":
    main(sys.argv[1])
