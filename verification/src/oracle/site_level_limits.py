"""Level-only sites: what nights, storms and rises come to, and states just within a limit or just beyond.

    python3 site_level_limits.py FOLDER

writes the tables level-baselines, watch-level-kept and watch-level-limits into the folder of the tables of hydraulics. Levels by
site_levels.py, all else by site_watching.py; none knows anything of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

from own_tables import text, write
from site_baselines import no_rain, site, storm
from site_hours import FIRST_HOUR, NONE, Pipe, learn
from site_levels import LIMITS, Levels, lowest_hour
from site_limits import Scene, further, listed, shown
from site_recipes import Record
from site_watches import EVER, FOUR_STORMS, LEVEL_ONLY, often, place, ramp, step, watch

PROGRAM = "site_level_limits.py"
LEVEL = "watch:hourly-watch/level:level-channels"
CASES = {
    "storms": (site(seed=241, days=40), LEVEL_ONLY + often(30, 900, 43, 0.5) + ramp(600, 700, 1.4), "UTC", 0.6, 0),
    "rises without rain": (site(seed=242, days=40, daily=0.06), LEVEL_ONLY + FOUR_STORMS + [c for h in range(350, 900, 37) for c in storm(h, 0.01, 2, 0.5 + h / 2000, 1.0)],
                           "Asia/Kolkata", 0.6, 0),
    "long falls": (site(seed=243, days=40), LEVEL_ONLY + [c for k, h in enumerate(range(20, 900, 91)) for c in storm(h, 9, 3, 1.1, 1.5, 3 + 2 * k)], "UTC", 0.6, 0),
    "few hours": (site(seed=244, days=30), LEVEL_ONLY + FOUR_STORMS + [5, 410, 418, 0, 0, 5, 460, 462, 0, 0, 4, 500, 530, 0, 0, 15, 560, 600, 0, 0] + often(360, 700, 29), "UTC", 0.6, 0),
    "no rain known": (site(seed=245, days=30), LEVEL_ONLY + no_rain(30) + storm(100, 0, 2, 0.6, 1) + storm(400, 0, 2, 0.8, 1), "UTC", 0.6, 0),
}
KEPT = [(n + suffix, n + key, -1) for n in ("nights", "falls", "rises") for suffix, key in (("", "Values"), ("_at", "Numbers"))]
COLUMNS = [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h, -9999 for a search"), ("to_hour", "h"),
           ("alarm", "m, 0 for none")]
INPUTS = [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour"),
          ("alarm", "alarm")]
NAMED = [(n, "sum of all, each times its place") for n, *_ in KEPT]


def drawn(random, rows):
    """A state before the first of some hours."""
    now, excess, y = rows[0][0], rows[0][2] - rows[0][4], rows[0][2]
    size = float(np.round(random.uniform(0.2, 1.2), 3))
    following = random.random() < 0.6
    top = float(np.round(excess + random.choice([0.02, 0.3, 0.5]) * size * random.uniform(0.6, 1.6), 3))
    begin = now - int(random.choice([random.integers(1, 30), random.integers(66, 76)]))
    count = int(random.integers(1, 7))
    low = random.choice([0.0, 0.15, 0.23]) * random.uniform(0.85, 1.15)
    recent = [(now - k - int(k > 3), float(np.round(excess - low * random.random(), 3)), float(np.round(y - low * random.random(), 3))) for k in range(count, 0, -1)]
    far = lambda: int(random.integers(1, 60))
    return dict(begin=begin if following else None, peak=min(now - 1, begin + int(random.integers(0, 6))), base=float(np.round(top - size, 3)), top=top, recent=recent,
                rained=begin - 12 + int(random.integers(-2, 3)) if random.random() < 0.5 else now - far(),
                unknown=begin - 12 + int(random.integers(-2, 3)) if random.random() < 0.2 else now - 300, of_night=int(random.integers(0, 5)),
                lowest=float(np.round(y + random.uniform(-0.2, 0.2), 3)), usual=float(np.round(rows[0][4] + random.uniform(-0.2, 0.2), 3)))


def put(levels, s, night):
    levels.nights, levels.falls, levels.rises = [], [], []
    levels.rain_known, levels.rained, levels.unknown, levels.night = True, s["rained"], s["unknown"], night
    levels.of_night = [(s["lowest"], s["usual"])] * s["of_night"]
    levels.rise = None if s["begin"] is None else dict(begin=s["begin"], peak=s["peak"], base=s["base"], top=s["top"])
    levels.recent = list(s["recent"])


def state(s, night):
    of = dict(rainKnown="true", lastRain=s["rained"], lastUnknown=s["unknown"], night=-2 ** 63 if night is None else night, nightHours=s["of_night"],
              lowest=s["lowest"], lowestUsual=s["usual"], begin=-2 ** 63 if s["begin"] is None else s["begin"], peak=s["peak"], base=s["base"], highest=s["top"],
              recentNumbers=listed([r[0] for r in s["recent"]]), recentValues=listed([v for r in s["recent"] for v in r[1:]]),
              **{n + of: ";" for n in ("nights", "falls", "rises") for of in ("Numbers", "Values")})
    return " ".join(f"{k}={v if isinstance(v, str) else shown(v)}" for k, v in of.items())


def limits(folder):
    random, found, missing = np.random.default_rng(11), [], []
    for seed, rain, at in ((251, 10.0, 373), (252, 0.208, 366), (253, 0.192, 366), (255, 0.0, 392), (256, 0.0, 391), (254, 12.0, 394)):
        more = storm(368, rain, 1, 0.7, 0.5) if rain else []
        case = (site(seed=seed, days=20, step=30), LEVEL_ONLY + storm(60, 8, 2, 0.6, 1.0) + more, "UTC", 0.6, 0)
        scene, until, rows = Scene(case, at, LEVEL, "-"), at + 34, []

        def peep(w):
            w.levels.hour = lambda *of: rows.append(of)
            rows.append((w.levels.night, w.levels.begins_at + 2.5))

        scene.told(peep)
        night, lowest = rows.pop(0)
        rows = rows[:34]

        def after(s, of):
            levels = Levels(lowest, of)
            put(levels, s, night)
            for row in rows:
                levels.hour(*row)
            return levels.kept()

        left = list(LIMITS) * 2
        for _ in range(350):
            s = drawn(random, rows)
            answer = after(s, LIMITS)
            seen = [w for w in set(left) if after(s, further(LIMITS, w)) != answer]
            if seen:
                for w in seen:
                    left.remove(w)
                found.append(place(case) + [at, LEVEL, state(s, night), "-", until, " ".join(sorted(seen))] + [answer[n] for n, *_ in KEPT])
            if not left:
                break
        missing += left
    print("no state for", missing, file=sys.stderr)
    write(folder, PROGRAM, "watch-level-limits", "What a level alone says, from states on their limits",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "the limits")] + NAMED,
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after.kept", f"input.part = word {LEVEL}", f"input.key = word {key}", f"input.which = {which}") for n, key, which in KEPT], found,
          tolerance="1e-9 relative or 1e-9", reason="16 digits are given; sums of some logarithms")


def main(folder):
    rows, usual = [], []
    for title, case in CASES.items():
        told = watch(case)
        kept = told.kept
        print(title, [(n, len(rows)) for n, rows in (("nights", told.levels.nights), ("falls", told.levels.falls), ("rises", told.levels.rises))], file=sys.stderr)
        rows.append(place(case) + [title] + [kept[n] for n, *_ in KEPT])
        base = told.base.level_usual
        usual.append(place(case)[:6] + [title] + [base[n] for n in ("nights", "falls", "rises", "days")])
    inputs = INPUTS[:6]
    write(folder, PROGRAM, "watch-level-kept", "What a level alone has said before the last hour", COLUMNS + [("case", "what was done")] + NAMED, INPUTS,
          [(n, "watch.kept", f"input.part = word {LEVEL}", f"input.key = word {key}", f"input.which = {which}") for n, key, which in KEPT], rows,
          tolerance="1e-9 relative or 1e-9", reason="16 digits are given; sums of some logarithms")
    write(folder, PROGRAM, "level-baselines", "What is usual of a level alone", COLUMNS[:6] + [("case", "what was done"), ("nights", "sum of all, each times its place"),
          ("falls", "sum of all, each times its place"), ("rises", "count"), ("days", "d")], inputs,
          [(n, "site.kept", f"input.key = word level{n.capitalize()}", f"input.which = {which}") for n, which in (("nights", -2), ("falls", -2), ("rises", 0), ("days", 0))], usual,
          tolerance="1e-9 relative or 1e-9", reason="16 digits are given; sums of some logarithms")
    limits(folder)


if __name__ == "__main__":
    main(sys.argv[1])
