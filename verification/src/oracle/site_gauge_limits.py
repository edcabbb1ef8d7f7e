"""When storms tell that the clock of a gauge is off, or right again: from lags on the limits, as the page on clocks and gauges has them.

    python3 site_gauge_limits.py FOLDER

writes the table watch-gauge-more-limits into the folder of the tables of hydraulics. Lags of storms, when they were, how well they fitted,
and a finding that is open or over were put into the state of a watch, which goes on over two storms more; what it then tells and keeps is
computed by site_watching.py, which knows nothing of the library. States are drawn at random and kept where a number or operator of
site_watching.py, changed by itself, would tell something else. Python 3.11, numpy 2, scipy 1.17.
"""

import sys
from pathlib import Path

import numpy as np

import site_watching
from one_change import changed
from own_tables import write
from site_baselines import site, storm
from site_changes import Book, DOWN, STEP, UP, Finding
from site_hours import FIRST_HOUR, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import NANOS, listed, shown
from site_recipes import Record
from site_watches import GAUGE, place
from site_watching import GaugeClock, Watch

PROGRAM = "site_gauge_limits.py"
SOURCE = Path(site_watching.__file__).read_text()
FUNCTIONS = ("has_returned", "scatter", "pass_on", "before", "agreements", "look", "tell")
AT, END = 372, 480
book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values) if v == v))


class Scene:
    def __init__(self, begin, seed):
        late = lambda at: storm(at, 9, 2, 0.7, begin, 1.5 if begin < 0 else 3.0)
        self.case = (site(seed=seed, days=20, step=30), storm(60, 8, 2, 0.6, 1.0) + late(374) + late(422), "UTC", 0.6, 0)
        self.record = Record(self.case[0], self.case[1])
        self.base = learn(self.record, Pipe(0.6), "UTC")[0]
        self.calls, self.lags = [], []

        def peep(w):
            real, ended = w.gauge.take, w.gauge.storms.take

            def take(*of):
                self.found = None
                real(*of)
                if self.found is not None:
                    self.calls.append((self.found, of))
                    self.lags.append(self.found)

            def take_storm(*of):
                self.found = ended(*of)
                return self.found

            w.gauge.take, w.gauge.storms.take = take, take_storm
            w.gauge.usual, w.gauge.pending = [0.8, 0.8], []

        Watch(self.base, self.record, None, (AT, peep))
        assert len(self.lags) == 2, self.lags

    def put(self, g, s):
        g.usual, g.pending, g.late, g.told_by, g.last_usual = list(s["usual"]), list(s["pending"]), s["late"], s["told_by"], s["last"]
        g.track = None
        if s["open"] is not None:
            t = g.track = Finding(1, "CLOCK_OF_GAUGE", s["since"], s["since"] + 60)
            t.direction, t.shape, t.open, t.closed = UP if s["late"] < 0 else DOWN, STEP, s["open"], None if s["open"] else s["since"] + 100

    def quick(self, made, s):
        g = made.GaugeClock(self.base, Book())
        g.storms = type("Storms", (), {})()
        self.put(g, s)
        try:
            for found, (hour, number, excess, shift, _, season) in self.calls:
                g.storms.take = lambda *of, found=found: found
                g.take(hour, number, excess, shift, lambda: False, season)
        except Exception:  # whatever a changed rule stumbles over
            return "broken"
        return repr([(kind, end, t.since, t.earliest, t.direction, t.open, t.closed) for kind, end, t in g.book.events] + [round(book(g.usual), 9), round(book(p[0] for p in g.pending), 9)])

    def told(self, s):
        watch, kept = None, []

        def edit(w):
            self.put(w.gauge, s)
            real = w.gauge.take

            def take(*of):
                if of[1] == FIRST_HOUR + END - 1:
                    kept.extend([book(w.gauge.usual), book(p[0] for p in w.gauge.pending)])
                real(*of)

            w.gauge.take = take

        watch = Watch(self.base, self.record, None, (AT, edit))
        found = [e for e in watch.book.events if e[2].names[0] == "CLOCK_OF_GAUGE"]
        total = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(found)))
        return [len(found), int(total(lambda e: e[0])), total(lambda e: e[2].since - FIRST_HOUR), total(lambda e: e[2].earliest - FIRST_HOUR),
                total(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR), *kept]


def drawn(random, scene):
    of = lambda *those: those[int(random.integers(0, len(those)))]
    lag, now = scene.lags[0][0], FIRST_HOUR + AT
    many = random.random() < 0.5
    count, size, side = (of(6, 8, 10, 12), of(0.5, 0.7, 1.2), of(-1, 1)) if many else (lambda r: (r[0], r[2], r[1]))(of(*GaugeClock.RULES))
    late = of(None, None, True, True, False)
    n, k = of(2, 3, 4, 5, 12, 19, 20), of(count - 2, count - 1, count - 1, count, 11)
    away = size * random.uniform(0.93, 1.5)
    middle = lag - side * away
    usual = middle + of(0.02, 0.1, 0.3, 0.5) * random.standard_normal(n)
    spread = of(0.02, 0.1, 0.3)
    lags = lag + spread * random.standard_normal(k) - (spread > 0.2) * 0.1 * side
    if k > 2 and random.random() < 0.4:
        for at in random.integers(0, k, of(1, 2)):
            lags[at] = middle + side * away * of(0.36, 0.39, 0.41, 0.44, -0.2)
    if k and random.random() < 0.3:
        lags[int(random.integers(0, k))] = lag - side * of(0.86, 0.94, 1.04)
    s = dict(late=0.0, told_by=4, open=late, since=now - of(100, 300, 700), last=now - of(400, 900, 5000))
    if late:
        back = of(0.9, 0.98, 1.02, 1.1)
        s.update(late=float(np.round(of(-1, 1) * abs(lag - middle) / 0.5 / back, 4)), told_by=of(2, 3, 4, 6, 8, 12))
        if random.random() < 0.6:
            usual = lag - np.sign(s["late"]) * of(0.1, 0.3, 0.5) * abs(s["late"]) + of(0.05, 0.2, 0.4) * random.standard_normal(n)
    longest = of(300, 660, 690, 4200, 4330, 4420) if many else of(200, 640, 700, 740)
    times = sorted(int(now - t) for t in random.uniform(30, longest - 12, k))
    if k > 1:
        times[max(0, k - count + 1)] = int(now + 14 - longest)
        times = sorted(times)
    fits = [float(np.round(of(0.73, 0.77, 0.84, 0.86, 1.0, 1.0), 2)) for _ in range(k)]
    s.update(usual=[float(v) for v in np.round(usual, 3)], pending=[(float(np.round(a, 3)), t, f) for a, t, f in zip(lags, times, fits)])
    return s


def text(s):
    of = s["pending"]
    pairs = [f"usual={listed(s['usual'])}", f"lags={listed([p[0] for p in of])}", f"times={listed([p[1] * NANOS for p in of])}", f"fits={listed([p[2] for p in of])}",
             f"shift={shown(s['late'])}", f"shifted={s['told_by']}", f"lastUsual={s['last'] * NANOS}"]
    if s["open"] is not None:
        times = [s["since"], s["since"], s["since"], s["since"] + 60, 0 if s["open"] else s["since"] + 100, 0]
        pairs += ["track:finding/" + p for p in ("number=1", "names=CLOCK_OF_GAUGE;", f"direction={'UP' if s['late'] < 0 else 'DOWN'}", "shape=STEP", f"times={listed([t * NANOS for t in times])}",
                                                 f"open={str(s['open']).lower()}", "stretches=;", "falls=;", "moved=;", "alarm=", "soffit=", "detail=")]
    return " ".join(pairs)


def main(folder):
    # Those of the class that is asked here come first.
    count = changed(SOURCE[:SOURCE.index("class GaugeCatch")], FUNCTIONS, -1)[1]
    others = {i: changed(SOURCE, FUNCTIONS, i)[0] for i in range(count)}
    seen, rows = {i: 0 for i in others}, []
    for number, scene in enumerate((Scene(-0.6, 201), Scene(1.2, 202))):
        random, taken = np.random.default_rng(91 + number), 0
        for _ in range(220):
            s = drawn(random, scene)
            answer = scene.quick(site_watching, s)
            new = [i for i in others if not seen[i] and scene.quick(others[i], s) != answer]
            if not new:
                continue
            for i in new:
                seen[i] += 1
            rows.append(place(scene.case) + [AT, GAUGE, text(s), "CLOCK_OF_GAUGE", END, "lags on a limit"] + scene.told(s))
            taken += 1
        print(number, taken, "not", [i for i in seen if not seen[i]], "of", count, file=sys.stderr, flush=True)
    asked = [("events", "count"), ("kinds", "kind"), ("since", "h"), ("earliest", "h"), ("closed", "h")]
    keys = [("usual", "usual"), ("lags", "lags")]
    write(folder, PROGRAM, "watch-gauge-more-limits", "When lags of storms tell of the clock of a gauge, or that it is right again",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "what is on its limit")]
          + [(n, u if n == "events" else f"{u} of each times its place") for n, u in asked] + [(n, "sum of all, each times its place") for n, _ in keys],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.part = word {GAUGE}", f"input.key = word {key}", "input.which = -1") for n, key in keys], rows,
          tolerance="1e-9 relative or 1e-6", reason="16 digits are given; whole hours, and sums of some numbers")


if __name__ == "__main__":
    main(sys.argv[1])
