"""Stamps, rain and readings on limits: stamps that go back while readings are held, stamps that leap by about an hour some time after the
civil clocks, rain that makes an hour wet by three rules, and hours of readings of every kind.

    python3 site_stamp_limits.py FOLDER

writes the tables watch-stamps-refused, watch-moved-stamps, watch-rain-limits and watch-odd-hours into the folder of the tables of hydraulics. All but
the first are followed by site_watching.py, which knows nothing of the library. Python 3.11, numpy 2.
"""

import sys

import numpy as np

from own_tables import text, write
from site_baselines import site, storm
from site_hours import FIRST_HOUR, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import NANOS
from site_recipes import Record
from site_watches import KEPT, place
from site_watching import Watch

PROGRAM = "site_stamp_limits.py"
WATCH = "watch:hourly-watch"
DEEP = storm(60, 8, 2, 0.6, 1.0)
HOUR, MINUTE, TWENTY = 3600, 60, 20 * 86400
SPRING = 27 * 24 + 1


def refused(stamps):
    """Until four stamps span an hour the first are held: one that goes back behind the first of them by no more than 3 h is refused, and one that comes twice."""
    taken, held, latest = None, [], None
    for t in stamps:
        if taken is not None and t <= taken:
            return 1
        if held and t == held[-1] or held and taken is None and t < held[-1] and held[0] - t <= 3 * HOUR:
            return 1
        if held and t < held[-1]:
            held = []
        elif held and taken is None and t - held[-1] > 3 * HOUR:
            taken, held = held[-1], []
        elif held:
            held.append(t)
            if len(held) >= 4 and held[-1] - held[0] >= HOUR:
                taken, held = t, []
            continue
        if taken is None or t - taken > 3 * HOUR:
            held.append(t)
        else:
            taken = t
    return 0


def stamps(folder):
    case, rows = (site(seed=231, days=17, step=30), DEEP, "UTC", 0.6, 0), []
    for first in ([0], [0, 600], [0, 900, 1800], [0, 900, 1800, 2700, 3600, 4500]):
        for next_ in (-3 * HOUR - 1, -3 * HOUR, -3 * HOUR + 1, -HOUR, -1, 0, 1, 599, 600, 601, 1799, 1800, 1801, 4499, 4500, 4501, 4500 + 3 * HOUR, 4501 + 3 * HOUR):
            of = [TWENTY + t for t in (*first, next_)]
            rows.append(place(case) + [text(of), refused(of)])
    for leap in (3 * HOUR + 1, 9 * HOUR):
        # Held after others that were taken: what goes back behind the last one taken is refused, what comes between is not.
        base = [0, 900, 1800, 2700, 3600]
        for back in (1, 899, 3600 + leap - 1, leap, leap - 1):
            of = [TWENTY + t for t in (*base, 3600 + leap, 3600 + leap - back)]
            rows.append(place(case) + [text(of), refused(of)])
    assert {r[-1] for r in rows} == {0, 1}
    write(folder, PROGRAM, "watch-stamps-refused", "Stamps that go back while readings are held", COLUMNS + [("stamps", "s after the begin"), ("refused", "1 if refused")],
          INPUTS + [("stamps", "text stamps")], [("refused", "refusal.watch.stamps.held")], rows, tolerance="0", reason="a verdict")


def moved(folder):
    rows = []
    cases = [(SPRING + late, by, 15, "Europe/Berlin") for late, by in ((12.0, 60), (12.25, 60), (13, 60), (192.25, 60), (192.5, 60), (100, 52), (100, 53), (100, 90), (100, 91), (100, -5), (100, 120))]
    cases += [(SPRING + 100, 60, 20, "Europe/Berlin"), (SPRING + 100, 60, 30, "Europe/Berlin"), (SPRING + 100, 60, 15, "UTC"), (SPRING - 20, 60, 15, "Europe/Berlin")]
    for at, by, step, zone in cases:
        days = int((at + by / 60) // 24) + 1
        # People rise by the civil clock, so that the clock of the monitor is right until then.
        case = (site(seed=232, days=days, step=step), DEEP + ([11, SPRING, 10 ** 5, -1, 0] if zone != "UTC" else []) + [14, at, 10 ** 5, by, 0, 4, at + 2, 10 ** 5, 0, 0], zone, 0.6, 0)
        record = Record(case[0], case[1])
        base = learn(record, Pipe(0.6), zone)[0]
        kept = []
        Watch(base, record, None, (record.minutes[-1] // 60 + 1, lambda w: kept.append(w.clock.leap)))
        gap = by + step
        rows.append(place(case) + [f"{by} min at {at} h", 0 if kept[0] is None else (kept[0][0] + 2 * kept[0][1] + 3 * gap / 60) * NANOS,
                                     (record.minutes[-1] - record.minutes[0]) / 60])
    assert 3 < sum(r[-2] > 0 for r in rows) < len(rows) - 3
    write(folder, PROGRAM, "watch-moved-stamps", "Stamps that leap by about an hour some time after the civil clocks",
          COLUMNS + [("about", "minutes, and when"), ("moved", "ns, the change, the last stamp and the gap, each times its place; 0 for none"), ("span", "h, from the first reading to the last")], INPUTS,
          [("moved", "watch.kept", f"input.part = word {WATCH}", "input.key = word clockMoved", "input.which = -1"), ("span", "site.record.span")], rows, tolerance="1e-12 relative",
          reason="whole minutes")


def rain(folder):
    """One fall, or two some hours apart, a little over or under where a rule turns; or nothing known of the rain while the water rises."""
    rows = []
    falls = [[(400, a)] for a in (0.04, 0.06, 0.5, 0.79, 0.81, 0.83, 0.86, 1.4, 5, 23.5, 24.1, 26.4, 27.3, 29.4, 30.6, 34)]
    falls += [[(400, 0.5), (400 + gap, 0.4)] for gap in (1, 5, 6, 7, 8)] + [[(400, 3), (406, 2), (412, 1)], [(400, 3), (407, 0.06)], [(400, 0.7), (401, 0.04), (402, 0.09)]]
    changes = [[c for at, a in each for c in (16, at, at + 1, a, 0)] for each in falls]
    changes += [[15, 380, 10 ** 5, 0, 0, 0, 400, 404, lift, lift] for lift in (1.05, 1.2, 1.24, 1.32, 1.5, 2)]
    changes += [[15, 380, 10 ** 5, 0, 0, 0, 400, 412, 1, 1.9], [15, 380, 10 ** 5, 0, 0, 0, 395, 412, 1.2, 1.2, 0, 403, 412, 1.2, 1.2], [15, 380, 10 ** 5, 0, 0, 0, 396, 412, 1.2, 1.2, 0, 399, 412, 1.2, 1.2]]
    for change in changes:
        case = (site(seed=233, days=18, step=60), DEEP + change + [4, 416, 10 ** 5, 0, 0], "UTC", 0.6, 0)
        record = Record(case[0], case[1])
        base = learn(record, Pipe(0.6), "UTC")[0]
        kept = []
        Watch(base, record, None, (416, lambda w: kept.append(w.weather)))
        w = kept[0]
        rows.append(place(case) + ["rain" if change[0] == 16 else "a rise", float(w.event), *(int(FIRST_HOUR + h) for h in (w.wet, w.long, w.short))])
    write(folder, PROGRAM, "watch-rain-limits", "Until when it is wet by three rules",
          COLUMNS + [("about", "what was done"), ("event", "mm, fallen so far"), ("wet", "h since 1970, by the rule"), ("long", "h since 1970, by the longer one"), ("short", "h since 1970, by the shorter one")],
          INPUTS, [("event", "watch.kept", f"input.part = word {WATCH}", "input.key = word event", "input.which = 0")]
          + [(n, "watch.kept", f"input.part = word {WATCH}", "input.key = word wet", f"input.which = {i}") for i, n in enumerate(("wet", "long", "short"))], rows,
          tolerance="1e-9", reason="whole hours, and a sum of some falls")


def odd(random, step):
    """What is read in an hour: depths and velocities of each reading, None where it stays as it is."""
    n, of = 60 // step, lambda *those: those[int(random.integers(0, len(those)))]
    depths, velocities = [None] * n, [None] * n
    kind = of("usual", "strokes", "strokes", "zeros", "back", "low", "low", "lost", "slow", "shallow", "mixed", "mixed", "high")
    some = lambda: [k for k in range(n) if random.random() < of(0.2, 0.5, 0.8)]
    if kind in ("strokes", "mixed"):
        depths = [float(np.round(of(0.09, 0.11, 0.13, 0.16) * random.uniform(0.97, 1.03), 4)) for _ in range(n)]
    if kind in ("strokes", "zeros", "mixed"):
        for k in some():
            velocities[k] = 0.0
    if kind in ("back", "mixed"):
        for k in some():
            velocities[k] = float(np.round(-random.uniform(0.2, 0.8), 4))
    if kind in ("low", "mixed"):
        for k in some():
            velocities[k] = float(np.round(0.7 * random.uniform(0.45, 0.95), 4))
    if kind in ("lost", "mixed"):
        for k in some():
            velocities[k] = np.nan
        for k in some() if kind == "lost" else []:
            depths[k] = np.nan
    if kind == "slow":
        for k in some():
            velocities[k] = of(0.004, 0.0049, 0.0051, 0.006, 0.02)
    if kind == "shallow":
        depths = [of(0.0008, 0.0011, 0.015, 0.019, 0.021, 0.026, 0.031, 0.05) for _ in range(n)]
        for k in some():
            velocities[k] = of(0.0, 0.3)
    if kind == "high":
        depths = [of(0.55, 0.6, 0.61, 0.74, 0.76) for _ in range(n)]
        for k in some():
            velocities[k] = of(0.0, 0.3, 9.9, 10.1)
    return depths, velocities


def hours(folder):
    """A day of hours of every kind, as the watch keeps them: how many readings were looked at, zeros, weak echoes, signs that flip, and what is usual of them."""
    rows = []
    for case_of in range(10):
        random, step = np.random.default_rng(240 + case_of), (10, 15, 5, 10)[case_of % 4]
        change = []
        for hour in range(390, 414):
            for k, (depth, velocity) in enumerate(zip(*odd(random, step))):
                at = hour + k * step / 60
                for kind, lost, value in ((20, 5, depth), (21, 6, velocity)):
                    if value is not None:
                        change += [lost, at, at + step / 60, 0, 0] if value != value else [kind, at, at + step / 60, value, 0]
        change = [float(np.round(v, 6)) for v in change]
        case = (site(seed=241 + case_of, days=18, step=step), DEEP + change + [4, 415, 10 ** 5, 0, 0], "UTC", 0.6, 0)
        record = Record(case[0], case[1])
        kept = Watch(learn(record, Pipe(0.6), "UTC")[0], record).kept
        rows.append(place(case) + [f"every {step} min"] + [kept[n] for n, *_ in ASKED])
    write(folder, PROGRAM, "watch-odd-hours", "What the watch keeps of hours of readings of every kind", COLUMNS + [("about", "step")] + [(n, "sum of all, each times its place") for n, *_ in ASKED],
          INPUTS, [(n, "watch.kept", f"input.part = word {part}", f"input.key = word {key}", f"input.which = {which}") for n, part, key, which in ASKED], rows,
          tolerance="1e-8 relative or 1e-7", reason="16 digits are given; sums of some hundred logarithms")


ASKED = [of for of in KEPT if of[0] in ("faults", "hours", "blocks", "beyond")]


def main(folder):
    for make in (stamps, moved, rain, hours):
        make(folder)


if __name__ == "__main__":
    main(sys.argv[1])
