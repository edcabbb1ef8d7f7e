"""Whether falls recur, on both sides of the limits of the rule.

    python3 site_recurrence_limits.py FOLDER

writes the table watch-recurrence-limits into the folder of the tables of hydraulics: falls put into an open finding. The rule is that
of site_changes.py; falls are drawn at random and kept where one of its numbers or operators, changed by itself, would answer otherwise.
Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

from one_change import module
from own_tables import write
from site_baselines import site, storm
from site_hours import FIRST_HOUR, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import NANOS, listed
from site_recipes import Record
from site_watches import CHANGE, place, step
from site_watching import Watch

PROGRAM = "site_recurrence_limits.py"
AT = 469


def minutes(made, falls):
    finding = made.Finding(0, "", 0, 0)
    finding.falls = list(falls)
    try:
        every = finding.recurrence()
    except (ArithmeticError, ValueError, IndexError):
        return "broken"
    return 0 if every is None else int(every * 1440 + 0.5)


def main(folder):
    random, rows = np.random.default_rng(19), []
    case = (site(seed=283, days=20, step=60), step(408, 1.3, 0.7), "UTC", 0.6, 0)
    record = Record(case[0], case[1])
    base = learn(record, Pipe(case[3]), case[2])[0]
    plain, count = module(("recurrence",), -1)
    others = {i: module(("recurrence",), i)[0] for i in range(count)}
    left = {i: 2 for i in others}
    for _ in range(20000):
        n = int(random.choice([2, 3, 4, 5, 6, 11]))
        typical = random.choice([47, 48, 49, 50, 100, 160])
        apart = [int(max(3, typical * (1 + random.choice([0.0, 0.1, 0.39, 0.42, -0.39, -0.42, 1.5])))) for _ in range(n - 1)]
        falls = (FIRST_HOUR + 460 - np.cumsum([0] + apart))[::-1].tolist()
        usual = minutes(plain, falls)
        seen = [i for i in left if minutes(others[i], falls) != usual]
        if not seen:
            continue
        for i in seen:
            left[i] -= 1
        left = {i: k for i, k in left.items() if k > 0}

        watch = Watch(base, record, None, (AT, lambda w: setattr(w.changes.track, "falls", list(falls))))
        events = watch.book.events
        at_end = float(sum((i + 1) * int((e[2].every or 0) * 1440 + 0.5) for i, e in enumerate(events)))
        rows.append(place(case) + [AT, f"{CHANGE}/track:finding", f"falls={listed([f * NANOS for f in falls])}", "-", len(events), float(sum((i + 1) * len(e[2].falls) for i, e in enumerate(events))), at_end])
        if not left:
            break
    print(len(rows), "left", left, file=sys.stderr)
    asked = [("events", "count"), ("falls", "count of each times its place"), ("recurrence", "min of each times its place")]
    write(folder, PROGRAM, "watch-recurrence-limits", "Falls that recur, and falls that do not",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding")] + asked,
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked], rows, tolerance="1e-9", reason="whole numbers")


if __name__ == "__main__":
    main(sys.argv[1])
