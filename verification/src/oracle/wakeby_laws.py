"""Wakeby's law by five L-moments, solved with many digits: mpmath, no code in common with the library.

    python3 wakeby_laws.py FOLDER

writes into the folder of the rainfall tables

    wakeby-fits-far-from-zero   samples about 1e12: what rounding leaves in their mean must not reach the moments about it

The two functions serve sample_laws.py too.
"""

import itertools
import math
import random
import sys

from mpmath import findroot, mp, mpf, nstr

from own_tables import write


def l_moments(sample, most):
    """Means over all subsets: what the definition says."""
    found = []
    for r in range(1, most + 1):
        total, count = mpf(0), 0
        for part in itertools.combinations(sorted(sample), r):
            total += sum((-1) ** k * mp.binomial(r - 1, k) * mpf(str(part[r - 1 - k])) for k in range(r))
            count += 1
        found.append(total / count / r)
    return found


def wakeby(l):
    """Shapes for which the third to fifth L-moments follow from the first two terms; equations of the L-moments themselves."""
    def moment(r, k):  # of (1 - u^k)/k with u = 1 - F
        return (1 - 1 / (1 + k)) / k if r == 1 else mp.rf(1 - k, r - 2) / mp.rf(1 + k, r)

    def misses(b, d):
        rows = [[moment(r, b), moment(r, -d)] for r in (2, 3, 4, 5)]
        det = rows[0][0] * rows[1][1] - rows[0][1] * rows[1][0]
        alpha = (l[1] * rows[1][1] - rows[0][1] * l[2]) / det
        delta = (rows[0][0] * l[2] - l[1] * rows[1][0]) / det
        return alpha, delta, [alpha * rows[i][0] + delta * rows[i][1] - l[i + 1] for i in (2, 3)]

    for start in ((2, 0.1), (5, 0.2), (1, -0.2), (8, 0.05), (3, 0.4), (0.6, 0.1), (12, -0.1), (0.9, -0.5)):
        try:
            b, d = findroot(lambda b, d: misses(b, d)[2], start)
        except (ValueError, ZeroDivisionError, TypeError):
            continue
        a, g, _ = misses(b, d)
        if b + d > 0 and g >= 0 and a + g >= 0 and d < 1 and b > -1:
            return l[0] - a * moment(1, b) - g * moment(1, -d), a, b, g, d
    return None


def main(folder):
    rows = []
    rng = random.Random(55)
    while len(rows) < 16:
        u = [rng.random() for _ in range(13)]
        x = [1e12 + math.floor(v * 64) / 64 for v in (10 + 8 * (1 - w**4) / 4 + 3 * (w**-0.15 - 1) / 0.15 for w in u)]
        found = wakeby(l_moments([mpf(v) for v in x], 5))
        if found:
            rows += [(" ".join(repr(v) for v in x), name, nstr(v, 17)) for name, v in list(zip(("xi", "alpha", "beta", "gamma", "delta"), found))[1:]]
    write(folder, "wakeby_laws.py", "wakeby-fits-far-from-zero", "five L-moments over all subsets of values about 1e12, and the law that has them, solved with 30 digits",
          [("x", "mm, sample"), ("name", "text, parameter"), ("v", "1, value")], [("sample", "text x"), ("parameter", "text name")], [("v", "wakeby.fitted")], rows,
          tolerance="1e-7 relative or 1e-8", reason="17 digits are given; the equations lose up to eight of them")


if __name__ == "__main__":
    mp.dps = 30
    main(sys.argv[1])
