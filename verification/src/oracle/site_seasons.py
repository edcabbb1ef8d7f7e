"""Steps within a season, as the page on the watch has them.

Used by site_changes.py and site_season_limits.py. Blocks of three hours are numbered from 1970. Knows nothing of the library. Python 3.11, numpy 2.
"""

import numpy as np

from site_hours import NAN, known, middle

R, D, U = range(3)
LIMITS = dict(longest=14, shortest=3, of_velocity=5, velocity_step=1.0, before=10, least_before=5, blocks=3, times=5, half=0.5, odd=5, slack=0.75, clearly=4.0)


def season_step(blocks, block, base, rays, limits=LIMITS):
    """Block in which velocity and depth stepped apart, and which way; none if they did not."""
    of = limits
    rows = [r for r in blocks if r[0] >= block - 8 * (of["longest"] + of["before"])]
    apart = np.array([r[1][U] - rays.b * r[1][D] for r in rows])
    best, most = None, 0.0
    for i in range(1, len(rows)):
        a, b = known(apart[:i]), known(apart[i:])
        if len(a) and len(b):
            left = (a.mean() - b.mean()) ** 2 * len(a) * len(b) / (len(a) + len(b))
            if left > most:
                best, most = i, left
    if best is None or not 8 * of["shortest"] <= block + 1 - rows[best][0] <= 8 * of["longest"]:
        return None

    def over_the_day(c):
        of_time = []
        for time in range(8):
            later, sooner = (middle([r[1][c] for r in part if r[0] % 8 == time]) for part in (rows[best:], rows[:best]))
            of_time.append(later - sooner)
        return middle(of_time) if len(known(of_time)) >= of["times"] else NAN

    d, u, r = (over_the_day(c) for c in (D, U, R))
    moved = u - rays.b * d
    deep = abs(d) > of["slack"] * base.scale[D]
    limit = (of["slack"] if deep else of["velocity_step"]) * base.scale[R]
    way = 1 if moved > 0 else -1
    if not (abs(moved) > limit and way * r > of["half"] * limit):
        return None
    far = rays.distances((d, u))
    if not min(far[2], far[3]) - min(far) > of["clearly"]:
        return None

    def days(first, last):
        found = {}
        for (n, _), x in zip(rows[first:last], apart[first:last]):
            found.setdefault(n // 8, []).append(x)
        return [middle(v) for _, v in sorted(found.items()) if len(known(v)) >= of["blocks"]]

    before, after = days(0, best), days(best, len(rows))
    if len(before) < of["least_before"] or len(after) < (of["shortest"] if deep else of["of_velocity"]):
        return None
    usual, share = middle(before), of["half"] * abs(moved)
    if of["odd"] * sum(abs(x - usual) >= share for x in before) > len(before) or not all(way * (x - usual) > share for x in after):
        return None
    return rows[best][0], way
