"""When storms tell that a gauge catches another share of the rain: from states on the limits, as the page on clocks and gauges has them.

    python3 site_catch_limits.py FOLDER

writes the table watch-catch-limits into the folder of the tables of hydraulics. Answers of storms were put into the state of a watch, which
then goes on over five storms of the record; what it tells is computed by site_watching.py, which knows nothing of the library. States are
drawn at random and kept where a limit 5 % larger, or one more, would tell something else. Python 3.11, numpy 2.
"""

import sys

import numpy as np

from site_baselines import site, storm
from site_hours import FIRST_HOUR
from site_limits import NANOS, Scene, Told, further, listed, table
from site_watching import GaugeCatch

PROGRAM = "site_catch_limits.py"
AT = 364
LESS, MORE = "GAUGE_CATCHES_LESS", "GAUGE_WRITES_MORE"


def scene(name):
    storms = [storm(60, 8, 2, 0.6, 1.0)] + [storm(AT + 6 + 48 * k, 8, 2, 0.6, 1.0) for k in range(5)]
    return Scene((site(seed=211, days=26, step=30), sum(storms, []), "UTC", 0.6, 0), AT, "watch:hourly-watch/catch:gauge-catch", name)


def seen(of):
    """The answers of the storms of the record and when each is over."""
    found = []

    def peep(w):
        w.catch.storm = lambda answer, end: found.append((answer, end))

    of.told(peep)
    return found


def put(catch, state):
    catch.usual, catch.pending = list(state["usual"]), list(zip(state["pending"], state["times"]))
    catch.last_usual = state["last"]


def quick(state, storms, limits):
    catch = object.__new__(GaugeCatch)
    catch.LIMITS, catch.book, catch.track, catch.change = limits, Told(), None, 0.0
    told = []
    catch.book.tell = lambda kind, end, track: told.append((kind, end, getattr(track, "earliest", 0)))
    original = catch.book.open

    def open_track(*of):
        told.append(of)
        track = original(*of)
        type(track).end = lambda self, when: (told.append(when), setattr(self, "open", False))
        return track

    catch.book.open = open_track
    put(catch, state)
    for answer, end in storms:
        catch.storm(answer, end)
    return told


def state(random, storms, sign):
    n, k = int(random.choice([1, 2, 3, 4, 8, 12, 19, 20, 20])), int(random.integers(0, 8))
    n = 20 if k and random.random() < 0.3 else n
    k = k if n >= 3 else 0
    away = sign * random.uniform(0.25, 1.2)
    middle = storms[0][0] - random.choice([away, 0.3 * away, 0.6 * away])
    usual = np.round(middle + random.choice([0.05, 0.2, 0.4]) * random.standard_normal(n), 3)
    pending = np.round(middle + away + random.choice([0.05, 0.2]) * random.standard_normal(k), 3)
    if k and random.random() < 0.5:
        for at in random.integers(0, k, int(random.integers(1, 3))):
            pending[at] = np.round(middle - sign * random.uniform(0.01, 0.2), 3)
    times = sorted(int(storms[0][1] - t) for t in random.integers(30, 900, k))
    return dict(usual=usual, pending=pending, times=times, last=int((times[0] if times else storms[0][1]) - random.integers(24, 200)))


def main(folder):
    rows = []
    for name, sign in ((LESS, 1), (MORE, -1)):
        of = scene(name)
        storms = seen(of)
        assert len(storms) == 5, storms
        random = np.random.default_rng(7 + sign)
        for which in GaugeCatch.LIMITS:
            for _ in range(40000):
                s = state(random, storms, sign)
                if quick(s, storms, GaugeCatch.LIMITS) != quick(s, storms, further(GaugeCatch.LIMITS, which)):
                    break
            else:
                print("no state for", name, which, file=sys.stderr)
                continue
            text = " ".join([f"usual={listed(s['usual'])}", f"pending={listed(s['pending'])}", f"times={listed([t * NANOS for t in s['times']])}",
                             f"lastUsual={s['last'] * NANOS}"])
            rows.append((of, text, which, of.told(lambda w, s=s: put(w.catch, s))))
    table(folder, "watch-catch-limits", "When storms tell that a gauge catches another share of the rain", rows, PROGRAM)


if __name__ == "__main__":
    main(sys.argv[1])
