"""What is normal at sites that lie on a limit: families of one number, and the sites on both sides of where the answer turns.

    python3 site_baseline_limits.py FOLDER

writes the table site-baseline-limits into the folder of the tables of hydraulics. The rule is followed by site_hours.py, which knows
nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

from site_baselines import figures, site, storm, tables
from site_hours import Pipe, learn
from site_recipes import Record

PROGRAM = "site_baseline_limits.py"
EVER = 10 ** 5
LEVEL = [6, 0, EVER, 0, 0]
QUIET = dict(noise=0.01, hourly=0.005, daily=0.005, parted=0.005)
TWO_WEEKS = (0, 336)
COUNTED = ("hours", "dry_hours", "notes", "not_tested", "tidal", "pumped", "narrow", "clock", "storms", "upstream_hours", "rain")
round4 = lambda t: round(float(t), 4)

# What turns: least, most, site and changes of a number, interval.
FAMILIES = {
    "step of the velocity": (0.05, 0.3, lambda t: (site(seed=301, step=30, **QUIET), [1, 192, EVER, 1 - t, 1 - t]), TWO_WEEKS),
    "step of a restless velocity": (0.05, 0.6, lambda t: (site(seed=302, step=30, parted=0.07), [1, 168, EVER, 1 - t, 1 - t]), TWO_WEEKS),
    "step of two days": (0.05, 0.5, lambda t: (site(seed=303, step=30, **QUIET), [1, 0, 48, 1 - t, 1 - t]), TWO_WEEKS),
    "step of a level": (0.1, 0.5, lambda t: (site(seed=304, step=30, **QUIET), LEVEL + [0, 192, EVER, 1 + t, 1 + t]), TWO_WEEKS),
    "step of the water": (0.05, 0.5, lambda t: (site(seed=305, step=30, **QUIET), [0, 192, EVER, 1 + t, 1 + t, 1, 192, EVER, 1 + t, 1 + t]), TWO_WEEKS),
    "drift of the velocity": (0.03, 0.4, lambda t: (site(seed=306, step=30, parted=0.03), [1, 0, 384, 1, 1 - t]), TWO_WEEKS),
    "drift of a restless level": (0.05, 0.8, lambda t: (site(seed=307, step=30, daily=0.12), LEVEL + [0, 0, 384, 1, 1 + t]), TWO_WEEKS),
    "tide": (0.02, 0.2, lambda t: (site(seed=308, step=30, tide=t, **QUIET), []), TWO_WEEKS),
    "tide on restless days": (0.02, 0.4, lambda t: (site(seed=309, step=30, tide=t, hourly=0.16), []), TWO_WEEKS),
    "pumps": (0.02, 0.3, lambda t: (site(seed=310, step=15), [18, 0, EVER, t, 4]), TWO_WEEKS),
    "zeros": (20, 330, lambda t: (site(seed=311, step=30), [9, 0, t, 0, 2]), TWO_WEEKS),
    "still depth": (10, 30, lambda t: (site(seed=312, step=15), [7, 60, 60 + t, 0, 0]), TWO_WEEKS),
    "still velocity": (4, 20, lambda t: (site(seed=313, step=15), [8, 60, 60 + t, 0, 0]), TWO_WEEKS),
    "hours": (60, 330, lambda t: (site(seed=314, step=30), [4, t, EVER, 0, 0]), TWO_WEEKS),
    "velocities": (20, 200, lambda t: (site(seed=315, step=30), [6, t, EVER, 0, 0]), TWO_WEEKS),
    "scatter of the law": (0.05, 1.5, lambda t: (site(seed=316, step=30, hourly=0.2, exponent=0.0, noise=t), []), TWO_WEEKS),
    "course of the day": (0.02, 0.3, lambda t: (site(seed=317, step=30, day=t, hourly=0.1), []), TWO_WEEKS),
    "scatter of an hour": (0.01, 0.15, lambda t: (site(seed=318, step=10, noise=t), []), TWO_WEEKS),
    "rain of a storm": (1.0, 6.0, lambda t: (site(seed=319, step=30), [c for h in (60, 150) for c in storm(h, t, 2, 0.6, 1)]), TWO_WEEKS),
    "a weak storm": (0.02, 0.6, lambda t: (site(seed=320, step=30), [c for h in (60, 150, 230) for c in storm(h, 12, 2, t, 1)]), TWO_WEEKS),
    "a storm that is like none": (0.1, 2.0, lambda t: (site(seed=321, step=30, hourly=0.15), [c for h in (60, 150, 230) for c in storm(h, 12, 2, t, 1)]), TWO_WEEKS),
    "a late storm": (0.0, 9.0, lambda t: (site(seed=322, step=15), [c for h in (60, 150, 230) for c in storm(h, 12, 2, 0.8, t)]), TWO_WEEKS),
    "a long storm": (10, 70, lambda t: (site(seed=323, step=30), storm(100, t, t, 0.9, 1)), TWO_WEEKS),
    "depths of a storm": (0, 20, lambda t: (site(seed=324, step=30), storm(100, 12, 2, 0.9, 1) + [5, 104, 104 + t, 0, 0]), TWO_WEEKS),
    "a drop": (0.02, 0.2, lambda t: (site(seed=325, step=30), [16, 100, 101, t / 2, 0]), TWO_WEEKS),
    "a small event": (0.3, 2.0, lambda t: (site(seed=326, step=30), [16, 100, 101, t / 2, 0]), TWO_WEEKS),
    "a small event in two": (0.3, 0.8, lambda t: (site(seed=327, step=30), [16, 100, 101, t / 2, 0, 16, 106, 107, t / 2, 0]), TWO_WEEKS),
    "hours between two": (3, 12, lambda t: (site(seed=328, step=30), [16, 100, 101, 0.3, 0, 16, 100 + t, 101 + t, 0.3, 0]), TWO_WEEKS),
    "a large event": (5, 60, lambda t: (site(seed=329, step=30), [16, 40, 42, t / 4, 0]), TWO_WEEKS),
    "a rise without a gauge": (0.1, 0.6, lambda t: (site(seed=330, step=30, **QUIET), [15, 0, EVER, 0, 0] + storm(230, 0, 1, t, 0.5)), TWO_WEEKS),
    "a slow rise without a gauge": (2, 20, lambda t: (site(seed=331, step=30, **QUIET), [15, 0, EVER, 0, 0] + storm(230, 0, 1, 0.5, 0.5, t)), TWO_WEEKS),
    "step of the last two days": (0.05, 0.5, lambda t: (site(seed=333, step=30, **QUIET), [1, 288, EVER, 1 - t, 1 - t]), TWO_WEEKS),
    "step of the last two days of a level": (0.1, 0.6, lambda t: (site(seed=334, step=30, **QUIET), LEVEL + [0, 288, EVER, 1 + t, 1 + t]), TWO_WEEKS),
    "a few days": (0.05, 0.5, lambda t: (site(seed=335, step=30, **QUIET), [1, 72, EVER, 1 - t, 1 - t]), (0, 120)),
    "hours upstream": (1, 9, lambda t: (site(seed=332, step=30), [1, 60, 60 + t, -1, -1]), TWO_WEEKS),
}
DAYS = {
    **{f"{n} days": (site(seed=340 + n, step=30), storm(30, 6, 2, 0.6, 1), (0, 24 * n)) for n in range(5, 13)},
    **{f"{n} days of a level": (site(seed=350 + n, step=30), LEVEL, (24, 24 + 24 * n)) for n in (5, 8, 10)},
    "nothing moves": (site(seed=361, step=30, noise=0.0, hourly=0.0, daily=0.0, parted=0.0), [], TWO_WEEKS),
    "a level of which nothing moves": (site(seed=362, step=30, noise=0.0, hourly=0.0, daily=0.0, parted=0.0), LEVEL, TWO_WEEKS),
    "restless": (site(seed=363, step=30, noise=0.12, hourly=0.06, daily=0.12, parted=0.07), [], TWO_WEEKS),
    "clocks of days": (site(seed=364, step=30), [c for k in range(1, 13) for c in (11, 24 * k, 24 * k + 24, 0.25 * (k % 5 - 2), 0)], TWO_WEEKS),
    "steep law": (site(seed=365, step=30, exponent=1.5), [], TWO_WEEKS),
    "falling law": (site(seed=366, step=30, exponent=-0.4), [], TWO_WEEKS),
    "follows itself": (site(seed=367, step=30, daily=0.09, parted=0.08), [], TWO_WEEKS),
    "full": (site(seed=368, step=30, depth=0.36, day=0.1), [], TWO_WEEKS, 0.45),
    "twice as fast": (site(seed=369, step=30, speed=2.9), [], TWO_WEEKS),
    "half as fast": (site(seed=370, step=30, speed=0.44), [], TWO_WEEKS),
}


def answer(case, counted=COUNTED):
    recipe, changes, interval = case[:3]
    base, refused = learn(Record(recipe, changes), Pipe(case[3] if len(case) > 3 else 0.6), "UTC", interval)
    return (len(refused), sum(r.reasons for r in refused), *((figures(base)[n] for n in counted) if base else ()))


def turning(families, counted=COUNTED):
    """Two sites of each family, close to each other, between which what is counted turns."""
    cases = []
    for name, (least, most, family, *rest) in families.items():
        of = lambda t: (*family(round4(t)), *rest)
        low, high = answer(of(least), counted), answer(of(most), counted)
        if low == high:
            print("never turns:", name, file=sys.stderr)
            continue
        a, b = least, most
        while b - a > 0.004 * b:
            middle = (a + b) / 2
            if answer(of(middle), counted) == low:
                a = middle
            else:
                b = middle
        print(name, round4(a), round4(b), low, answer(of(b), counted), file=sys.stderr)
        cases += [of(a), of(b)]
    return cases


def placed(cases):
    return [(r, c, "UTC", rest[0] if rest else 0.6, i) for r, c, i, *rest in cases]


def main(folder):
    cases = turning(FAMILIES)
    tables(folder, PROGRAM, "site-baseline-limits", "What is normal at sites on a limit", placed(cases + list(DAYS.values())),
           len(cases), ("learned", "refused", "reasons", *COUNTED, "scale_0", "scale_1"))


if __name__ == "__main__":
    main(sys.argv[1])
