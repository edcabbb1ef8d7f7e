"""Samples drawn again from samples of few different values: Python, standard library only, no code in common with the library.

    python3 drawn_few.py FOLDER

writes the tables drawn-few and drawn-fourth into the folder, csv and descriptor. What can be drawn is so little that all of it is listed with its chance,
and an end of an interval is one of these values, whatever the draws: an end is given where it stays the same when five
standard errors of a share of the library's draws are added or taken off. L-moments are means over all pairs and triples.
"""

import sys
from itertools import combinations
from math import comb, exp, expm1, inf, log, pi, prod, sin

from own_tables import text, write

PROGRAM = "drawn_few.py"
DRAWS = 4000
EULER = 0.57721566490153286


def l_moments(x):
    x = sorted(x)
    pairs, triples = list(combinations(x, 2)), list(combinations(x, 3))
    return sum(x) / len(x), sum(b - a for a, b in pairs) / 2 / len(pairs), sum(c - 2 * b + a for a, b, c in triples) / 3 / len(triples)


def level_and_period(family, x, years, value):
    l1, l2, l3 = l_moments(x)
    f = 1 - 1 / years
    if family == "gumbel":
        scale = l2 / log(2)
        place = l1 - EULER * scale
        rest = -expm1(-exp(-(value - place) / scale))
        return place - scale * log(-log(f)), 1 / rest if rest > 0 else inf
    k = -l3 / l2
    if abs(k) > 1 - 1e-9:
        return ()
    if abs(k) < 1e-12:
        return l1 + l2 * log(f / (1 - f)), 1 + exp((value - l1) / l2)
    scale = l2 * sin(k * pi) / (k * pi)
    place = l1 - scale * (1 / k - pi / sin(k * pi))
    inner = 1 - k * (value - place) / scale
    return place + scale / k * (1 - ((1 - f) / f) ** k), 1 + inner ** (-1 / k) if inner > 0 else (1.0 if k < 0 else inf)


def compositions(n, kinds):
    if kinds == 1:
        yield (n,)
        return
    for first in range(n + 1):
        for rest in compositions(n - first, kinds - 1):
            yield (first, *rest)


def all_draws(sample):
    """Every sample that can be drawn, with its chance; those of one value alone have no law."""
    kinds = sorted(set(sample))
    n = len(sample)
    for counts in compositions(n, len(kinds)):
        if max(counts) < n:
            ways = prod(comb(sum(counts[i:]), counts[i]) for i in range(len(counts)))
            yield [v for v, c in zip(kinds, counts) for _ in range(c)], ways * prod((sample.count(v) / n) ** c for v, c in zip(kinds, counts))


def end(values, share, draws, errors):
    """The value at a share of so many draws, and whether so many standard errors leave it, and the draws whose law is at the end of its range."""
    whole = sum(p for _, p in values)
    error = errors * (share * (1 - share) / draws) ** 0.5 + 1 - whole
    found = []
    for at in (share - error, share, share + error):
        sum_ = 0
        for v, p in sorted(values):
            sum_ += p / whole
            if sum_ >= at:
                found.append(v)
                break
    return found[1], len(found) == 3 and max(found) - min(found) <= 1e-9 * abs(found[1])


def fourth(x):
    """The fourth L-moment over the second, by means over all fours and pairs."""
    x = sorted(x)
    fours = list(combinations(x, 4))
    return sum(d - 3 * c + 3 * b - a for a, b, c, d in fours) / 4 / len(fours) / l_moments(x)[1]


CASES = (
    ("gumbel", [21.5] * 5 + [34.0] * 7, 25, 60.0),
    ("gumbel", [3.1] * 7 + [4.0, 9.2], 10, 12.0),
    ("generalized-logistic", [11.0] * 6 + [30.5] * 5, 20, 50.0),
    ("generalized-logistic", [88.0] * 5 + [101.5] * 8, 5, 104.0),
    ("generalized-logistic", [14.2] * 5 + [19.0] + [27.7] * 5, 10, 33.0),
)


def main(folder):
    rows = []
    for family, sample, years, value in CASES:
        drawn = [(level_and_period(family, x, years, value), p) for x, p in all_draws(sample)]
        for confidence in (c / 100 for c in range(50, 99, 2)):
            ends = [end([(a[which], p) for a, p in drawn if a], share, DRAWS, 5) for which in (0, 1) for share in ((1 - confidence) / 2, (1 + confidence) / 2)]
            known = [v if stays and v < 1e9 else "" for v, stays in ends]
            if any(v != "" for v in known) and not any(r[1] == text(sample) and list(r[5:]) == known for r in rows):
                rows.append((family, text(sample), confidence, years, value, *known))
    write(folder, PROGRAM, "drawn-few", "samples drawn again from samples of two or three different values, every one that can be drawn with its chance",
          [("family", "text, family"), ("x", "mm, sample"), ("confidence", "1, confidence"), ("years", "years, return period"), ("value", "mm, value"), ("low", "mm, lower end"), ("high", "mm, upper end"), ("plow", "years, lower end of the period"), ("phigh", "years, upper end")],
          [("family", "text family"), ("sample", "text x"), ("replicates", str(DRAWS)), ("confidence", "confidence")],
          [("low", "drawn.level-lower", "input.years = years"), ("high", "drawn.level-upper", "input.years = years"), ("plow", "drawn.period-lower", "input.value = value"), ("phigh", "drawn.period-upper", "input.value = value")],
          rows, tolerance="1e-10 relative", reason="differences of powers")


def fourths(folder):
    rows = []
    for sample in ([11.0] * 6 + [30.5] * 5, [14.2] * 5 + [19.0] + [27.7] * 5, [3.1] * 7 + [4.0, 9.2]):
        drawn = [(fourth(x), p) for x, p in all_draws(sample)]
        for confidence in (c / 100 for c in range(50, 99, 2)):
            ends = [end(drawn, share, DRAWS, 5) for share in ((1 - confidence) / 2, (1 + confidence) / 2)]
            known = [v if stays else "" for v, stays in ends]
            if any(v != "" for v in known) and not any(r[0] == text(sample) and list(r[2:]) == known for r in rows):
                rows.append((text(sample), confidence, *known))
    write(folder, PROGRAM, "drawn-fourth", "fourth L-moment ratios of samples drawn again, every one that can be drawn with its chance",
          [("x", "mm, sample"), ("confidence", "1, confidence"), ("low", "1, lower end"), ("high", "1, upper end")],
          [("sample", "text x"), ("replicates", str(DRAWS)), ("confidence", "confidence")], [("low", "drawn.fourth-lower"), ("high", "drawn.fourth-upper")], rows, tolerance="1e-10", reason="sums of differences")


if __name__ == "__main__":
    main(sys.argv[1])
    fourths(sys.argv[1])
