"""Whether the columns of depth and velocity are exchanged from the first day on: records drawn about each limit.

    python3 site_exchanged_first.py FOLDER

writes the table site-exchanged-first into the folder of the tables of hydraulics: of a week each, how many hours fit uniform flow when
exchanged and as they are written, and whether the baseline says so. Records are drawn with a seed; those are kept of which a limit 5 %
larger would count or say something else. By site_exchanges.py and site_hours.py, which know nothing of the library. Python 3.11,
numpy 2, scipy 1.17.
"""

import sys

import numpy as np

import site_exchanges
from own_tables import text, write
from site_baselines import site
from site_hours import Pipe, learn
from site_recipes import Record
from site_watches import EVER

PROGRAM = "site_exchanged_first.py"
SWAP = [22, 0, EVER, 1.0, 0]
LIMITS = ("apart", "most", "flattest", "steepest")
# Of each limit so many records; of 168 hours no count lies between 5 % and 5.25 %.
WANTED = {"apart": 6, "most": 3, "flattest": 3, "steepest": 3}
TRIES = 120


def drawn(random):
    """Speed, exponent and scatter of a sewer; some hours of it written right."""
    number = lambda low, high: float(np.round(random.uniform(low, high), 3))
    exponent = number(0.3, 0.45) if random.random() < 0.3 else number(1.0, 1.2) if random.random() < 0.4 else number(0.5, 0.8)
    recipe = site(seed=int(random.integers(1000, 9999)), days=7, step=15, speed=number(0.5, 2.4), exponent=exponent, depth=number(0.08, 0.25), noise=number(0.01, 0.06))
    right = int(random.integers(0, 14)) if random.random() < 0.5 else 0
    return recipe, [SWAP[0], right, *SWAP[2:]]


def learned(recipe, changes):
    """Notes and counts, and how the counts come about."""
    asked, real = [], site_exchanges.by_drawings
    site_exchanges.by_drawings = lambda *of: (asked.append(of), real(*of))[1]
    base, _ = learn(Record(recipe, changes), Pipe(0.6), "UTC", (0, 168))
    site_exchanges.by_drawings = real
    return None if base is None or not asked else (base.notes, base.exchanged, lambda: real(*asked[-1]))


def main(folder):
    random, rows, left, usual = np.random.default_rng(71), [], dict(WANTED), dict(site_exchanges.BY_DRAWINGS)
    for _ in range(TRIES):
        if not any(left.values()):
            break
        recipe, changes = drawn(random)
        found = learned(recipe, changes)
        if found is None:
            continue
        notes, counts, again = found
        shown = []
        for limit in (k for k in LIMITS if left[k]):
            site_exchanges.BY_DRAWINGS.update(usual, **{limit: 1.05 * usual[limit]})
            if again() != counts:
                shown.append(limit)
        site_exchanges.BY_DRAWINGS.update(usual)
        if shown:
            for limit in shown:
                left[limit] -= 1
            rows.append([text(recipe), text(changes), "UTC", 0.6, 0, 168, " ".join(shown), int(notes), *(counts or ("",) * 3)])
    print(len(rows), "not", {k: v for k, v in left.items() if v}, file=sys.stderr)
    asked = [("notes", "site.notes", ())] + [(n, "site.kept", ("input.key = word exchangedColumns", f"input.which = {k}")) for k, n in enumerate(("hours", "exchanged", "written"))]
    write(folder, PROGRAM, "site-exchanged-first", "Columns exchanged from the first day on",
          [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h"), ("to_hour", "h"), ("about", "the limits")]
          + [(n, "count") for n, *_ in asked],
          [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour")],
          [(n, calculation, *more) for n, calculation, more in asked], rows, tolerance="0", reason="counts")


if __name__ == "__main__":
    main(sys.argv[1])
