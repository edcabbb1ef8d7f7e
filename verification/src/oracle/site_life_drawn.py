"""The life of a finding from states drawn at random: drops from one day to the next, few known blocks, plain steps, slow rises, and what stands beside another change.

    python3 site_life_drawn.py FOLDER

writes the table watch-life-drawn into the folder of the tables of hydraulics. Scenes and most kinds of states are those of
site_life_limits.py; each state is drawn by a seed of its own, so that any can be drawn alone. Of some thousand those are named
below in which a changed number or operator shows; what the watch then tells and keeps is computed by site_changes.py, which knows
nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import copy
import math
import sys

import numpy as np

from site_changes import D, R
from site_hours import NAN
from site_life_limits import TRIES, Draw, row_of, save, scenes, tied

PROGRAM = "site_life_drawn.py"
SEED = 77
BASE = {"drop": "falls", "few": "shape", "exact": "shape", "rise": "figures"}
BASE.update({f"beside-{kind}": kind for kind in TRIES})
KINDS = list(TRIES) + list(BASE)
# By scene and kind, the draws that are shown.
SHOWN = {
    0: {"drop": (2, 3, 6), "end": (16,), "falls": (1,), "few": (2,), "rise": (3, 24)},
    1: {"across": (4,), "hour": (10,), "names": (6,), "returns": (5, 11, 17), "weeks": (8,)},
    3: {"end": (9,), "falls": (20,), "few": (12,)},
    4: {"returns": (4,)},
    5: {"returns": (13,)},
}


def sure_slope(at, x):
    """Median and lower 95 % limit of all slopes."""
    i, j = np.triu_indices(len(x), 1)
    slopes = np.sort((x[j] - x[i]) / (at[j] - at[i]))
    spread = 1.959963984540054 * math.sqrt(len(x) * (len(x) - 1) * (2 * len(x) + 5) / 18)
    return np.median(slopes), np.interp((len(slopes) - spread) / 2 - 1, np.arange(len(slopes)), slopes)


class Drawn(Draw):
    """More kinds of states."""

    def state(self, kind):
        if kind not in BASE:
            return super().state(kind)
        if kind.startswith("beside"):
            self.c = copy.copy(self.c)
            self.c.origin = np.round(self.s * self.random.uniform(-0.8, 0.8, 4), 3)
        s = super().state(BASE[kind])
        if not kind.startswith("beside"):
            getattr(self, "more_" + kind)(s)
        return s

    def quantity(self):
        """Which one tells of falls, and its direction."""
        c = self.c
        if c.channel == R or not self.law:
            return c.channel, c.sign
        return R, {"HELD_UP": -1, "RELEASED": 1}.get(c.track.names[0], 0)

    def more_drop(self, s):
        """The last half day dropped from the same hours of the day before, about enough, to about low enough."""
        q, sign = self.quantity()
        largest = s["largest"] = float(np.round(self.of(2.2, 2.6, 2.95, 3.05, 4.0, 6.0), 3))
        s["risen"], kind, count = True, self.of("low", "share", "scales", "both"), self.of(3, 4, 4, 4, 5)
        low = 0.3 * largest * (self.near(1) if kind in ("low", "both") else 0.6)
        drop = max(0.5 * largest, 1.5) * (self.near(1) if kind != "low" else 1.4)
        for j, (n, x) in enumerate(reversed(s["blocks"])):
            if j < 12:
                x[q] = float(np.round(s["origin"][q] + sign * self.s[q] * (low if j < count else low + drop + (0.3 if j < 8 else 0)), 4))
        s["hours"] = [(n, [float(np.round(s["origin"][q] + self.base.centre[q] + sign * self.s[q] * low, 4)) if k == q else v for k, v in enumerate(x)]) for n, x in s["hours"]]

    def more_few(self, s):
        """Hardly any block is known."""
        q = self.c.channel
        known = [x for n, x in s["blocks"] if x[q] == x[q]]
        first = int(self.random.integers(0, max(1, len(known) - 8)))
        for x in known[:first] + known[first + self.of(3, 4, 5, 6, 7):]:
            x[q] = NAN

    def more_exact(self, s):
        """Hardly any scatter."""
        q, c = self.c.channel, self.c
        size, noise = c.sign * self.s[q] * self.random.uniform(1, 3), self.of(3e-6, 1e-5, 3e-5, 6e-5)
        length, onset = self.of(1, 1, 2, 3, 6), s["start"] + self.of(-1, 0, 0, 1)
        for n, x in s["blocks"]:
            if x[q] == x[q]:
                x[q] = float(np.round(s["origin"][q] + size * (min(1.0, max(0.0, (n - onset + 0.5) / length)) + noise * self.random.standard_normal()), 8))

    def more_rise(self, s):
        """A rise that reaches its goal in about a year, or at the latest in about ten."""
        goal = self.of(*[g for g in (self.scene.case[4], 0.6) if g])
        blocks = [(n, x) for n, x in s["blocks"] if x[D] == x[D]]
        at, level = np.array([(n - self.scene.block) / 8 for n, _ in blocks]), goal * 0.9
        noise = self.random.standard_normal(len(at))
        late = self.random.random() < 0.5
        days = 200 if late else self.near(365)
        slope, wide = (goal - level) / days, 1e-7
        if late:
            aim, low, high = (goal - level) / self.near(3650), 0.0, 1.0
            for _ in range(50):
                wide = (low + high) / 2
                low, high = (wide, high) if sure_slope(at, slope * at + wide * noise)[1] > aim else (low, wide)
        for (n, x), value in zip(blocks, level + slope * at + wide * noise):
            x[D] = float(np.round(math.log(value / self.base.peak), 9))


def drawn(scene, number, kind, i):
    return Drawn(np.random.default_rng([SEED, number, KINDS.index(kind), i]), scene).state(kind)


def main(folder):
    rows = []
    for number, (scene, _) in enumerate(scenes()):
        for kind, draws in SHOWN.get(number, {}).items():
            for i in draws:
                state = drawn(scene, number, kind, i)
                assert not tied(scene, state), (number, kind, i)
                rows.append(row_of(scene, state, kind))
            scene.checked(state)
    save(folder, "watch-life-drawn", rows, PROGRAM, "The life of a finding, from states drawn at random")


if __name__ == "__main__":
    main(sys.argv[1])
