"""What is normal at sites whose hours lie on a limit: pumps, weak echoes, zeros, upstream velocities, tides and laws, on both sides of
where a count turns.

    python3 site_hour_limits.py FOLDER

writes the table site-hour-limits into the folder of the tables of hydraulics. The rule is followed by site_hours.py, which knows nothing
of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

from site_baseline_limits import COUNTED, EVER, LEVEL, QUIET, TWO_WEEKS, placed, turning
from site_baselines import site, tables

PROGRAM = "site_hour_limits.py"
STROKES = lambda swing: [18, 0, EVER, swing, 4]
HIGH_WATERS = [c for h in (60, 130, 200, 270) for c in (17, h, h + 9, 0.9, 2)]

# What turns: least, most, site and changes of a number, interval.
FAMILIES = {
    "tide beside high waters": (0.0872, 0.0882, lambda t: (site(seed=401, step=30, tide=t, **QUIET), HIGH_WATERS), TWO_WEEKS),
    "tide of a level beside high waters": (0.0869, 0.0879, lambda t: (site(seed=402, step=30, tide=t, **QUIET), LEVEL + HIGH_WATERS), TWO_WEEKS),
    "fast water": (2.335, 2.359, lambda t: (site(seed=403, step=30, speed=t), []), TWO_WEEKS),
    "slow water": (0.374, 0.379, lambda t: (site(seed=404, step=30, speed=t), []), TWO_WEEKS),
    "law that does not rise": (0.0797, 0.0805, lambda t: (site(seed=405, step=30, exponent=t), []), TWO_WEEKS),
    "zeros between strokes": (0.0682, 0.069, lambda t: (site(seed=407, step=15), STROKES(t) + [9, 0, EVER, 0, 4]), TWO_WEEKS),
    "zeros between strokes and at their height": (19.9, 20.3, lambda t: (site(seed=408, step=15), STROKES(0.9) + [9, 0, t, 0, 2]), TWO_WEEKS),
    "strong strokes": (0.155, 0.175, lambda t: (site(seed=409, step=15), STROKES(t)), TWO_WEEKS),
    "weak echoes of a restless sensor": (0.5, 0.75, lambda t: (site(seed=412, step=10, noise=0.12), [10, 60, 130, t, 4]), TWO_WEEKS),
    "hours of weak echoes": (62, 66, lambda t: (site(seed=413, step=10, noise=0.02), [10, 60, t, 0.5, 3]), TWO_WEEKS),
    "weak echoes of rising water": (0.09, 0.15, lambda t: (site(seed=414, step=10, noise=0.02), [18, 60, 130, t, 3, 10, 60, 130, 0.5, 6]), TWO_WEEKS),
    "upstream readings": (62, 66, lambda t: (site(seed=415, step=10), [10, 60, t, -1, 4]), TWO_WEEKS),
    "zeros under water": (62, 66, lambda t: (site(seed=416, step=10), [9, 60, t, 0, 3]), TWO_WEEKS),
    "zeros at little water": (0.025, 0.036, lambda t: (site(seed=417, step=10, depth=t, day=0.05), [9, 60, 84, 0, 3]), TWO_WEEKS),
    "nearly no velocity": (0.004, 0.007, lambda t: (site(seed=418, step=10), [9, 60, 84, t, 3]), TWO_WEEKS),
}
TURNING = (*COUNTED, "strokes", "swings", "zero_limit", "echo_limit", "flip_limit")


def main(folder):
    tables(folder, PROGRAM, "site-hour-limits", "What is normal at sites whose hours lie on a limit", placed(turning(FAMILIES, TURNING)))


if __name__ == "__main__":
    main(sys.argv[1])
