"""Names of a finding where the errors of the plane of depth and velocity decide, as the page on the watch has them.

    python3 site_name_limits.py FOLDER

writes the table watch-name-limits into the folder of the tables of hydraulics. States are drawn as in site_life_limits.py and kept where
a share of the covariance or an error 5 % larger would name otherwise. Knows nothing of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

import numpy as np

import site_changes
from site_baselines import site, storm
from site_life_limits import Draw, Scene, row_of, save, tied
from site_watches import step


def scenes():
    of = lambda seed, days=20: site(seed=seed, days=days, step=60)
    first = storm(60, 8, 2, 0.6, 1.0)
    yield Scene(of(351), first + step(400, 1.35, 1.2), 469, 0)
    yield Scene(of(352), first + step(404, 0.75, 0.84), 469, 0)
    yield Scene(of(353), first + step(408, 1.3, 0.72), 469, 0)


def named(scene, state):
    events, so_far = scene.answer(site_changes, state)
    return [(e[0], tuple(e[2].names)) for e in events], so_far["named"], so_far["votes"]


def main(folder):
    rows, left = [], {(k, i): 3 for k in range(2) for i in range(3)}
    for number, scene in enumerate(scenes()):
        random, taken = np.random.default_rng(101 + number), 0
        draw = Draw(random, scene)
        for trial in range(120):
            state = draw.state(("weeks", "names")[trial % 2])
            usual, seen = named(scene, state), []
            for k, i in left:
                errors = [list(of) for of in scene.ERRORS]
                errors[k][i] *= 1.05
                scene.errors = errors
                if named(scene, state) != usual:
                    seen.append((k, i))
            scene.errors = scene.ERRORS
            if not seen or tied(scene, state):
                continue
            for at in seen:
                left[at] -= 1
            left = {at: n for at, n in left.items() if n > 0}
            if not taken:
                scene.checked(state)
            taken += 1
            rows.append(row_of(scene, state, "errors " + " ".join(f"{k}.{i}" for k, i in seen)))
            if not left:
                break
        print(number, scene.before.track.names, taken, left, file=sys.stderr, flush=True)
    save(folder, "watch-name-limits", rows, "site_name_limits.py", "Names of a finding where errors decide")


if __name__ == "__main__":
    main(sys.argv[1])
