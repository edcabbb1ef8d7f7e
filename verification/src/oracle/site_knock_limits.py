"""A depth that steps between two readings: whether it stays, from states just within a limit or just beyond, as the page on the watch has it.

    python3 site_knock_limits.py FOLDER

writes the table watch-knock-limits into the folder of the tables of hydraulics. Dry hours about a step were put into the state of a watch;
what it then tells and keeps is computed by site_changes.py, which knows nothing of the library. States are drawn at random and kept where
one of its numbers or operators, changed by itself, would answer otherwise. Python 3.11, numpy 2, scipy 1.17.
"""

import math
import sys

import numpy as np

from one_change import module
from own_tables import write
from site_baselines import site, storm
from site_changes import D, U
from site_detection_limits import PLACE
from site_hours import FIRST_HOUR
from site_level_limits import COLUMNS, INPUTS
from site_life_limits import Scene, book, kept
from site_limits import NANOS, listed
from site_watches import CHANGE, LEVEL_ONLY, place, step

PROGRAM = "site_knock_limits.py"
KEPT = {"still": "stillValues", "sums": "sums", "origin": "origin", "times": "blocksOfTrack", "blocks": "blockValues", "named": "named"}
FUNCTIONS = ("step", "stays", "leap")


class Knock(Scene):
    CALLS = ("hour", "block", "step")

    def first(self):
        return 1 + [c[0] for c in self.calls].index("step")

    def put(self, c, state):
        c.calm, c.asked, c.leapt = list(state["calm"]), state["asked"], None

    def kept(self, c):
        return {**kept(c), "still": book(v for _, d, u in c.calm for v in (d, 0.0 if u != u else u))}

    def natural(self):
        """Number, depth and velocity of the hour that comes next."""
        _, hour, number, d, u = next(c for c in self.calls if c[0] == "step")
        return number, d, u


def drawn(random, scene):
    of = lambda *those: those[int(random.integers(0, len(those)))]
    near = lambda x: x * random.uniform(0.955, 1.045)
    number, d0, u0 = scene.natural()
    alone = scene.before.near is None
    tight = of("before", "days", "least", "most", "usual", "odd", "odd", "name", "name", "late", "alone", "alone" if alone else "name", "enough", "none")
    needed = 12 if alone else 6
    # Hours after the step, the next one among them; hours before it and in the days before.
    after = needed - of(0, 0, 0, 1) * (tight == "enough") + of(0, 1) * (tight == "late")
    at = number - after - of(0, 1, 2)
    if tight == "late":
        at = number - of(35, 36, 37)
    ln = d0 * of(1.0, 1.2)
    if tight == "least":
        ln = d0 * near(1 / 0.6)
    if tight == "most":
        ln = d0 * near(1 / 1.6)
    stood = 0.0
    if tight == "alone":
        ln = d0 / near(0.4)
        stood = d0 - ln
    days_level = d0 - near(0.5) * ln if tight == "usual" else stood
    level = 0.15
    noise = of(0.0, 0.002)
    u_before = u0 if not alone else float("nan")
    shift = 0.0
    if tight == "name" and not alone:
        rays = scene.before.near
        ray = 4 if ln > 0 else 5
        tried = np.linspace(-0.6, 0.6, 500)
        far = [(lambda f: min(f[i] for i in range(8) if i != ray) - f[ray])(rays.distances((d0 - stood, t))) for t in tried]
        close = sorted(range(500), key=lambda i: abs(far[i] - 2))[:12]
        shift = float(tried[of(*close)])
    before = of(2, 3, 4) if tight == "before" else of(6, 9)
    days = of(23, 24, 25) if tight == "days" else 40
    calm = []
    earlier = days - before
    for k in range(earlier):
        calm.append([at - 12 - of(0, 1) * (tight == "days") - (earlier - k) if tight != "before" else at - 13 - (earlier - k), days_level, u_before - shift])
    calm += [[at - before + k, stood, u_before - shift] for k in range(before)]
    calm += [[at + 1 + k, d0, u_before] for k in range(after - 1)]
    if tight == "odd":
        for row in calm[-of(1, 1, 2):]:
            row[1] = stood + ln * near(0.5)
    if tight == "days" and random.random() < 0.5:
        calm[0][0] = at - of(71, 72, 73)
    calm = sorted(calm)
    rows = [(int(n), float(np.round(d + noise * random.standard_normal(), 4)), float(np.round(u, 4))) for n, d, u in calm]
    end = at + of(0.25, 0.5)
    return dict(calm=rows, asked=(float(np.round(level * math.expm1(ln), 5)), level, at - 0.25, end)), tight


def text(s):
    size, level, begin, end = s["asked"]
    return (f"stillNumbers={listed([n for n, *_ in s['calm']])} stillValues={listed([0.0 if v != v else v for _, *of in s['calm'] for v in of])} askedStep={listed([size, level])} "
            f"askedTimes={listed([int(begin * NANOS), int(end * NANOS)])}")


def scenes():
    of = lambda seed, days=20: site(seed=seed, days=days, step=60, noise=0.02)
    first = storm(60, 8, 2, 0.6, 1.0)
    yield Knock(of(341), first + step(406, 1.3), 410, 0.3)
    yield Knock(of(342), first + step(406, 0.75), 410, 0)
    yield Knock(of(343), first + LEVEL_ONLY + step(406, 1.3), 410, 0)
    yield Knock(of(344, 22), first + step(370, 1.4, 1.2) + step(438, 1.25), 442, 0)
    yield Knock(of(345), first + step(398, 1.4), 415, 0.3)
    yield Knock(of(346, 22), first + step(380, 1.3, 0.7) + step(438, 1.25), 442, 0)
    yield Knock(of(347), first + LEVEL_ONLY + step(406, 0.75), 410, 0)


def main(folder):
    plain, count = module((), -1)[0], module(FUNCTIONS, -1)[1]
    others = {i: module(FUNCTIONS, i)[0] for i in range(count)}
    left, rows = {i: 2 for i in others}, []
    for number, scene in enumerate(scenes()):
        random, taken, told_of = np.random.default_rng(91 + number), 0, {}
        for trial in range(40):
            s, about = drawn(random, scene)
            usual = scene.compared(plain, s)
            seen = [i for i in left if scene.compared(others[i], s) != usual]
            if usual == "broken" or not seen and trial % 8:
                continue
            for i in seen:
                left[i] -= 1
            left = {i: n for i, n in left.items() if n > 0}
            if taken == 0:
                scene.checked(s)
            taken += 1
            events, so_far = scene.answer(sys.modules["site_changes"], s)
            told_of[len(events)] = told_of.get(len(events), 0) + 1
            total = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(events)))
            rows.append(place(scene.case) + [scene.at, CHANGE, text(s), "-", scene.at + 1, about, len(events), int(total(lambda e: e[0])), total(lambda e: e[2].since - FIRST_HOUR),
                                             total(lambda e: e[2].earliest - FIRST_HOUR), total(lambda e: e[2].latest - FIRST_HOUR), total(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR),
                                             total(lambda e: float(sum((j + 1) * PLACE[n] for j, n in enumerate(e[2].names)))), total(lambda e: e[2].shape)] + [so_far[n] for n in KEPT])
        print(number, scene.natural(), scene.before.is_open(), taken, told_of, "left", len(left), file=sys.stderr, flush=True)
    asked = [("events", "count"), ("kinds", "kind"), ("since", "h"), ("earliest", "h"), ("latest", "h"), ("closed", "h"), ("names", "place of each name"), ("shape", "0 step, 1 ramp, 2 either")]
    write(folder, PROGRAM, "watch-knock-limits", "Depths that step between two readings, from states on their limits",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what is on its limit")]
          + [(n, u if n == "events" else f"{u} of each times its place") for n, u in asked] + [(n, "as kept, or the sum of all, each times its place") for n in KEPT],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.part = word {CHANGE}", f"input.key = word {key}", f"input.which = {0 if n == 'named' else -1}") for n, key in KEPT.items()], rows,
          tolerance="1e-8 relative or 1e-6", reason="16 digits are given; whole hours and shares of an hour")


if __name__ == "__main__":
    main(sys.argv[1])
