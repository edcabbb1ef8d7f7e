"""Steps within a season, from states just within a limit or just beyond, as the page on the watch has them.

    python3 site_season_limits.py FOLDER

writes the table watch-season-limits into the folder of the tables of hydraulics. The season is a constructed one, in which other blocks
were put; whether they hold a step is computed here. Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

from own_tables import write
from site_baselines import site, storm
from site_changes import D, R, U, Rays
from site_hours import NAN
from site_level_limits import COLUMNS, INPUTS
from site_limits import Scene, further, listed
from site_seasons import LIMITS, season_step
from site_watches import place, ramp

PROGRAM = "site_season_limits.py"
CHANGE = "watch:hourly-watch/change:change-watch"
def drawn(random, block, base, rays):
    count = int(random.choice([194, random.integers(70, 194)]))
    numbers = [block - count + k for k in range(count)]
    ago = int(random.choice([random.integers(20, 30), random.integers(36, 46), random.integers(46, 108), random.integers(108, 117)]))
    s = base.scale
    sizes = random.choice([0.78, 1.0, 1.3, 2.0]) * random.uniform(0.93, 1.1)
    away = [(0.0, s[R]), (0.0, -s[R]), (s[D], -0.5 * s[R]), (-s[D], 0.4 * s[R]), (s[D], 0.0), (s[D], rays.b * s[D] + 0.8 * s[R]), (0.76 * s[D], -s[R])][int(random.integers(0, 7))]
    if random.random() < 0.25:
        tried = [(t, rays.distances((t * away[0], t * away[1]))) for t in np.linspace(0.7, 4, 120)]
        sizes = min(tried, key=lambda t: abs(min(t[1][2], t[1][3]) - min(t[1]) - 4.1))[0]
    level, noise, share = random.uniform(0.3, 0.45), random.choice([0.005, 0.02, 0.05]), random.choice([0.52, 0.6, 1.0]) * random.uniform(0.85, 1.1)
    gone, strays = random.choice([0.0, 0.0, 0.3, 0.6]), {int(d): random.choice([-1, 1]) * random.uniform(0.4, 0.7) for d in random.integers(0, 25, int(random.integers(0, 6)))}
    times = set(random.choice(8, int(random.choice([8, 8, 5, 4])), replace=False).tolist())
    values = []
    for n in numbers:
        on = n > block - ago
        stray = strays.get((block - n) // 8, 0.0) if random.random() < 0.9 else 0.0
        d = level + sizes * away[0] * on + noise * random.standard_normal()
        u = rays.b * level + sizes * away[1] * on * (1 if random.random() < 0.97 else 0) + noise * random.standard_normal() + stray * abs(sizes * away[1])
        r = share * (u - rays.b * d) + 0.3 * noise * random.standard_normal()
        if random.random() < gone or n % 8 not in times:
            d = u = NAN
        values.append((n, [r, d, u, NAN]))
    return [(n, [float(np.round(v, 3)) for v in row]) for n, row in values]


def main(folder):
    random, found, missing = np.random.default_rng(13), [], []
    keys = [("channel", "channel", 0), ("begin", "blocksOfTrack", 0), ("way", "sign", 0)]
    for seed in (261,):
        case = (site(seed=seed, days=30, step=60), storm(60, 16, 2, 0.6, 1.0) + ramp(380, 420, 1.5, 1.5 ** 0.6), "UTC", 0.6, 0)
        at = 28 * 24 - 1
        scene, rows = Scene(case, at, CHANGE, "-"), []

        def peep(w):
            before = w.changes
            rows.append((before.channel, before.start, before.sign, before.is_water()))
            block = before.block
            before.block = lambda n: (block(n), rows.append(before.blocks[-1]))

        watch = scene.told(peep)
        (channel, start, sign, water), last = rows[0], rows[1]
        assert water and (last[0] + 1) % 8 == 0
        base = scene.base
        rays = Rays(base, 0.1, 0.02, 0.03)
        answer = lambda blocks, of: season_step(blocks + [last], last[0], base, rays, of)
        left = list(LIMITS) * 2
        for _ in range(900):
            blocks = drawn(random, last[0], base, rays)
            told = answer(blocks, LIMITS)
            seen = [w for w in set(left) if answer(blocks, further(LIMITS, w)) != told]
            if seen:
                for w in seen:
                    left.remove(w)
                put = f"blockNumbers={listed([n for n, _ in blocks])} blockValues={listed([v for _, row in blocks for v in row])}".replace("nan;", "NaN;")
                found.append(place(case) + [at, CHANGE, put, "-", at + 3, " ".join(sorted(seen))] + ([R, told[0], told[1]] if told else [channel, start, sign]))
            if not left:
                break
        missing += left
        print(seed, len(found), "no state for", missing, file=sys.stderr)
    write(folder, PROGRAM, "watch-season-limits", "Steps within a season, from blocks on their limits",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "the limits"),
                     ("channel", "0 velocity at its depth, 1 depth"), ("begin", "block since 1970"), ("way", "1 or -1")],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after.kept", f"input.part = word {CHANGE}", f"input.key = word {key}", f"input.which = {which}") for n, key, which in keys], found,
          tolerance="1e-9", reason="whole numbers")


if __name__ == "__main__":
    main(sys.argv[1])
