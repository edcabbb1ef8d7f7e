"""Storms that hardly give a lag, and tides that are hardly seen: from states on their limits, as the pages on the watch and on clocks have them.

    python3 site_storm_limits.py FOLDER

writes the tables watch-storm-limits and watch-tide-limits into the folder of the tables of hydraulics. Hours of a storm, or what the moon
left in the dry hours of some weeks, were put into the state of a watch; what it then keeps is computed by site_hours.py and
site_watching.py, which know nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import copy
import math
import sys

import numpy as np

from own_tables import write
from site_baselines import site, storm
from site_changes import Book
from site_hours import FIRST_HOUR, MOON, NAN, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import NANOS, listed, shown
from site_recipes import Record
from site_watches import GAUGE, WATCH, often, place
from site_watching import Moon, Watch

PROGRAM = "site_storm_limits.py"
book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))


class Scene:
    def __init__(self, recipe, changes, at):
        self.case, self.at = (recipe, changes + [4, at + 1, 10 ** 5, 0, 0], "UTC", 0.6, 0), at
        self.record = Record(self.case[0], self.case[1])
        self.base = learn(self.record, Pipe(0.6), "UTC")[0]
        self.of_gauge, self.of_moon = [], []

        def peep(w):
            gauge, moon = w.gauge.take, w.moon.take
            self.gauge, self.tides = copy.copy(w.gauge), list(w.clock.tides)
            w.gauge.take = lambda *of: (self.of_gauge.append(of), gauge(*of))
            w.moon.take = lambda *of: (self.of_moon.append(of), moon(*of))

        Watch(self.base, self.record, None, (at, peep))

    def kept(self, edit, question):
        """What the whole watch knows an hour later."""
        answers = []

        def watched(w):
            edit(w)
            take, calls = w.gauge.take, []

            def asked(*of):
                calls.append(of)
                if len(calls) == 2:
                    answers.append(question(w))
                take(*of)

            w.gauge.take = asked

        Watch(self.base, self.record, None, (self.at, watched))
        return answers[0]


def near(random, x):
    return x * random.uniform(0.96, 1.04)


def drawn_storm(random, now):
    """Hours of rain and of what runs off, the last four of them dry; one thing hardly enough, or too much."""
    of = lambda *those: those[int(random.integers(0, len(those)))]
    tight = of("late", "late", "rain", "short", "long", "known", "rise", "fit", "edge", "lag", "lag", "gap", "drop", "dry")
    length = {"short": of(1, 1, 2), "long": of(49, 50, 51, 52)}.get(tight, of(2, 4, 9))
    ahead = of(4, 5) if tight != "short" else of(3, 4, 5)
    rain = [0.0] * ahead + [float(np.round(random.uniform(0.4, 3), 2)) for _ in range(length)]
    total = sum(rain)
    if tight == "rain":
        goal = near(random, 2.0)
        rain = [float(np.round(r * goal / total, 3)) for r in rain]
    if tight == "drop":
        rain = [float(np.round(near(random, 0.05), 4)) if r == 0 and random.random() < 0.3 else r for r in rain]
    calm = 4 if tight != "dry" else of(2, 3, 4)
    rain += [0.0] * calm
    n = len(rain) + 1
    lag = {"edge": of(-5.0, -4.6, 4.6, 5.4, 6.0), "late": random.uniform(3.05, 3.4)}.get(tight, random.uniform(-2, 3.5))
    held = np.convolve(rain + [0.0], np.exp(-np.arange(n) / 1.5))[:n]
    answer = np.interp(np.arange(n) - lag, np.arange(n), held)
    size = near(random, 0.15) if tight == "rise" else random.uniform(0.3, 0.9)
    excess = size * answer / max(np.ptp(answer[:-1]), 1e-9) + (0.0 if tight == "rise" else random.choice([0.0, 0.02, 0.3 if tight == "fit" else 0.05]) * size) * random.standard_normal(n)
    if tight == "known":
        gone = int(math.floor(0.2 * n + 0.5)) + of(-1, 0, 0, 1)
        excess[random.choice(np.arange(1, n - 1), max(0, gone), replace=False)] = NAN
    last = now - 1 - of(0, 0, 1) * (tight == "gap")
    return dict(rain=rain, excess=[float(np.round(v, 3)) for v in excess[:-1]], last=int(last), sum=float(sum(r for r in rain if r > 0.05)), dry=calm), tight


def put(g, s, usual, pending, late):
    g.usual, g.pending, g.late = list(usual), list(pending), late
    g.storms.rain, g.storms.excess, g.storms.last, g.storms.sum, g.storms.dry = list(s["rain"]), list(s["excess"]), s["last"], s["sum"], s["dry"]


def kept(g):
    of = g.storms
    return [book(p[0] for p in g.pending), book(p[2] for p in g.pending), book(g.usual), of.sum, of.dry, book(of.rain), book(of.excess)]


def after(scene, s, usual, pending, late):
    g = copy.copy(scene.gauge)
    g.storms, g.track, g.book = copy.copy(scene.gauge.storms), copy.deepcopy(scene.gauge.track), Book()
    put(g, s, usual, pending, late)
    g.take(*scene.of_gauge[0])
    return g


def storms_of(scene, random, count, is_open):
    """Storms that run off in the next hour; where a clock of the gauge is open, about half of its shift."""
    first, rows = scene.of_gauge[0], []
    assert scene.base.tests_gauge and first[0].rain == 0 and first[2] == first[2] and scene.gauge.is_open() == is_open, first
    while len(rows) < count:
        s, about = drawn_storm(random, first[1])
        usual = np.round(0.8 + 0.3 * random.standard_normal(int(random.choice([1, 2, 3, 4, 12]))) + (0.75 if random.random() < 0.2 else 0), 3).tolist()
        pending = [(float(np.round(0.8 + 0.2 * random.standard_normal(), 3)), int(first[1] - 60 * (j + 1)), 0.9) for j in range(int(random.integers(0, 4)))]
        late = scene.gauge.late
        if is_open:
            alone = after(scene, s, [0.5, 0.5], [], 9.0)
            if about in ("edge", "late") or not alone.pending or len(pending) < 3:
                continue
            lag, m, about = alone.pending[-1][0], float(np.median(usual)), "back"
            late = float(np.round(abs(lag - m) / near(random, 0.5) * random.choice([-1, 1]), 3))
            pending[-1] = (float(np.round(m + (lag - m) * random.choice([0.9, 1.1]), 3)), *pending[-1][1:])
        g = after(scene, s, usual, pending, late)
        if len(rows) % 55 == 0:
            assert scene.kept(lambda w: put(w.gauge, s, usual, pending, late), lambda w: kept(w.gauge)) == kept(g)
        text = (f"stormRain={listed(s['rain'])} stormExcess={listed(s['excess'])} stormLast={s['last']} stormSum={shown(s['sum'])} stormDry={s['dry']} usual={listed(usual)} "
                f"lags={listed([p[0] for p in pending])} fits={listed([p[2] for p in pending])} times={listed([p[1] * NANOS for p in pending])} shift={shown(late)}").replace("nan;", "NaN;")
        rows.append(place(scene.case) + [scene.at, GAUGE, text, "-", scene.at + 1, about] + kept(g))
    return rows


def storms(folder):
    random = np.random.default_rng(81)
    scene = Scene(site(seed=331, days=18, step=60), storm(60, 8, 2, 0.6, 1.0) + storm(150, 9, 2, 0.7, 1.2) + storm(230, 7, 2, 0.7, 0.9), 420)
    rows = storms_of(scene, random, 120, False)
    scene = Scene(site(seed=171, days=50), often(52, 1150, 61) + [12, 480, 900, 1.0, 0], 821)
    rows += storms_of(scene, random, 14, True)
    print(len(rows), file=sys.stderr)
    save(folder, "watch-storm-limits", "Storms that hardly give a lag", rows, GAUGE,
         [("lags", "lags", -1), ("fits", "fits", -1), ("usual", "usual", -1), ("sum", "stormSum", 0), ("dry", "stormDry", 0), ("rain", "stormRain", -1), ("excess", "stormExcess", -1)])


def save(folder, name, title, rows, part, keys):
    write(folder, PROGRAM, name, title, COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what is on its limit")]
          + [(n, "as kept, or the sum of all, each times its place") for n, *_ in keys],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after.kept", f"input.part = word {part}", f"input.key = word {key}", f"input.which = {which}") for n, key, which in keys], rows,
          tolerance="1e-9 relative or 1e-9", reason="16 digits are given; sums of some numbers")


def tides(folder):
    """What the moon left in some weeks of dry hours, so that its amplitude, its share or the weight of the hours is hardly enough."""
    scene = Scene(site(seed=332, days=19, step=60), storm(60, 8, 2, 0.6, 1.0), 17 * 24 + 1)
    random, rows = np.random.default_rng(83), []
    number, left = scene.of_moon[0]
    seen_of = {}
    for k in range(30):
        tight = ("amplitude", "share", "weight")[k % 3]
        want = random.uniform(0.965, 1.035)
        every = int(random.choice([1, 2]))
        if tight == "weight":
            count = int(random.choice([143, 145, 146, 147, 148, 149, 152]))
            at = number - 1 - np.arange(count)[::-1]
        else:
            at = number - 1 - every * np.arange(400 // every)[::-1]
        sun = 0.05 * np.cos(2 * np.pi * at / 24 + 1) + 0.03 * np.sin(2 * np.pi * at / 12)
        moon, noise = np.cos(2 * np.pi * at / MOON + random.uniform(0, 6)), random.standard_normal(len(at))

        def series(amplitude, scatter):
            return np.round(0.01 + sun + amplitude * moon + scatter * noise, 6)

        def measures(x):
            m = Moon(False, None)
            m.at, m.x = at.tolist(), x.tolist()
            weights, columns, values = m.weighted()
            root = np.sqrt(weights)
            fits = [np.linalg.lstsq(columns[:, :c] * root[:, None], values * root, rcond=None)[0] for c in (7, 5)]
            over = [float(np.sum(weights * (values - columns[:, :len(f)] @ f) ** 2)) for f in fits]
            return math.hypot(fits[0][5], fits[0][6]), (over[1] - over[0]) / over[1]

        low, high = 0.0, 1.0
        for _ in range(30):
            middle = (low + high) / 2
            if tight == "share":
                low, high = (middle, high) if measures(series(0.09, middle))[1] > 0.15 * want else (low, middle)
            else:
                low, high = (middle, high) if measures(series(middle, 0.02))[0] < (0.05 * want if tight == "amplitude" else 0.1) else (low, middle)
        x = series(0.09, low) if tight == "share" else series(low, 0.02)
        moon_of = Moon(False, None)
        moon_of.at, moon_of.x = at.tolist(), x.tolist()
        weights, columns, values = moon_of.weighted()
        text = (f"tideNormal={listed([float(v) for v in (columns.T @ (weights[:, None] * columns)).flatten()])} tideRight={listed([float(v) for v in columns.T @ (weights * values)])} "
                f"tideSquares={shown(float(weights @ (values * values)))} tideLast={number - 1}")
        seen = moon_of.runs()
        day = (scene.tides + [(0, seen)])[-16:]

        def put(w, at=at, x=x):
            w.moon.at, w.moon.x, w.moon.kept = at.tolist(), x.tolist(), {}

        if k in (0, 1):
            assert scene.kept(put, lambda w: w.clock.tides[-1][1]) == seen
        moon_of.take(number, left)
        weights, columns, values = moon_of.weighted()
        rows.append(place(scene.case) + [scene.at, WATCH, text, "-", scene.at + 1, tight, book(int(s) for _, s in day),
                                         book((columns.T @ (weights[:, None] * columns)).flatten()), book(columns.T @ (weights * values)), float(weights @ (values * values))])
        seen_of[tight, seen] = seen_of.get((tight, seen), 0) + 1
    print(seen_of, file=sys.stderr)
    save(folder, "watch-tide-limits", "Tides that are hardly seen", rows, WATCH,
         [("seen", "clockTideValues", -1), ("normal", "tideNormal", -1), ("right", "tideRight", -1), ("squares", "tideSquares", 0)])


def main(folder):
    storms(folder)
    tides(folder)


if __name__ == "__main__":
    main(sys.argv[1])
