"""All signals of tests for a change and all wild values of long invented records: plain Python, no code in common with the library.

    python3 change_books.py FOLDER

writes the tables change-books and hampel-books into the folder. Each number is a sum over the signals of a record: the measure times the
place of the signal, counted from 1. Tests begin anew after a signal; missing readings are passed over.
"""

import random
import statistics
import sys

from own_tables import text, write

NAN = float("nan")


def record(rng, n):
    minutes, values, level, t = [], [], 0.0, 0.0
    for _ in range(n):
        t += rng.choice([2, 5, 5, 5, 7.5, 60])
        level = level if rng.random() < 0.95 else rng.choice([-2.0, -0.7, 0.0, 0.9, 2.5])
        minutes.append(t)
        values.append(NAN if rng.random() < 0.07 else round(10 + level + rng.gauss(0, 0.8) + (9 if rng.random() < 0.03 else 0), 2))
    return minutes, values


def sums_of(record_, up, reference, decision):
    """Two sums that may not fall below 0, when each last left 0, and the first of both beyond the decision."""
    found, sums, since = [], [0.0, 0.0], [None, None]
    for t, v in record_:
        for side, sign in enumerate((1, -1)):
            before = sums[side]
            sums[side] = max(0.0, before + sign * up(v) - reference)
            if before == 0 or sums[side] == 0:
                since[side] = t
        for side in (0, 1):
            if sums[side] > decision:
                found.append((t, since[side], side + 1, sums[side]))
                sums, since = [0.0, 0.0], [t, t]
                yield found[-1]
                break


def cusum(record_, target, reference, decision):
    yield from sums_of(record_, lambda v: v - target, reference, decision)


def page_hinkley(record_, slack, threshold):
    """The same of what a value is away from the mean of all since the last signal, itself among them."""
    seen, sums, since = [], [0.0, 0.0], [None, None]
    for t, v in record_:
        seen.append(v)
        away = v - sum(seen) / len(seen)
        for side, sign in enumerate((1, -1)):
            before = sums[side]
            sums[side] = max(0.0, before + sign * away - slack)
            if before == 0 or sums[side] == 0:
                since[side] = t
        for side in (0, 1):
            if sums[side] > threshold:
                yield t, since[side], side + 1, sums[side]
                seen, sums, since = [], [0.0, 0.0], [t, t]
                break


def ewma(record_, target, deviation, weight, width):
    limit = width * deviation * (weight / (2 - weight)) ** 0.5
    away, since = 0.0, None
    for t, v in record_:
        following = weight * (v - target) + (1 - weight) * away
        if away == 0 or (away > 0) != (following > 0):
            since = t
        away = following
        if abs(away) > limit:
            yield t, since, 1 if away > 0 else 2, away
            away = 0.0


def changes(folder):
    rng = random.Random(83)
    rows = []
    for kind, test, settings in (("cusum", cusum, (10.0, 0.4, 4.0)), ("cusum", cusum, (10.5, 0.25, 2.1)), ("ewma", ewma, (10.0, 0.8, 0.2, 2.7)), ("ewma", ewma, (9.6, 1.1, 0.45, 2.2)),
                                 ("page-hinkley", page_hinkley, (0.3, 5.0)), ("page-hinkley", page_hinkley, (0.0, 9.0)), ("page-hinkley", page_hinkley, (0.6, 1.7))):
        minutes, values = record(rng, 260)
        found = list(test([(t, v) for t, v in zip(minutes, values) if v == v], *settings))
        assert len(found) > 4, kind
        row = [len(found)] + [sum(place * s[i] for place, s in enumerate(found, 1)) for i in range(4)]
        for way in ("arriving", "cut"):
            rows.append([way, text(minutes), text(values), kind, text(settings), *row])
    names = ("count", "time", "since", "side", "statistic")
    write(folder, "change_books.py", "change-books", "all signals of tests for a change in records with missing readings, each measure times the place of its signal, summed",
          [("way", "text, how the record is given"), ("minutes", "min, times"), ("x", "of the record, values"), ("kind", "text, the test"), ("settings", "text, target, slack and limit of it")] + [(n, "1, sum of " + n) for n in names],
          [("way", "text way"), ("minutes", "text minutes"), ("values", "text x"), ("kind", "text kind"), ("settings", "text settings")], [(n, "change.book." + n) for n in names], rows,
          tolerance="1e-10 relative or 1e-9", reason="sums of values with two decimals")


def hampel(folder):
    rng = random.Random(84)
    rows = []
    for half, limit, least in ((3, 3.0, 0.0), (1, 2.0, 0.2), (7, 2.6, 1.1), (12, 2.5, 0.0)):
        minutes, values = record(rng, 240)
        if half == 3:
            values[40:52] = [10.0] * 5 + [10.4] + [10.0] * 6
        places = [i for i, v in enumerate(values) if v == v]
        found = []
        for at in range(half, len(places) - half):
            window = [values[i] for i in places[at - half:at + half + 1]]
            middle = statistics.median(window)
            scatter = max(least, statistics.median([abs(v - middle) for v in window]) / 0.6744897501960817)
            v = values[places[at]]
            if abs(v - middle) > limit * scatter:
                found.append((minutes[places[at]], v, middle, scatter, places[at]))
        assert len(found) > 2, half
        row = [len(found)] + [sum(place * w[i] for place, w in enumerate(found, 1)) for i in range(5)]
        for way in ("arriving", "cut"):
            rows.append([way, text(minutes), text(values), half, limit, least, *row])
    names = ("count", "time", "value", "median", "scatter", "places")
    write(folder, "change_books.py", "hampel-books", "all wild values of records with missing readings, each measure times the place of its value, summed",
          [("way", "text, how the record is given"), ("minutes", "min, times"), ("x", "of the record, values"), ("half", "1, readings on either side"), ("limit", "1, limit in scatters"), ("least", "of the record, least scatter")]
          + [(n, "1, sum of " + n) for n in names],
          [("values", "text x"), ("half", "half"), ("limit", "limit"), ("least", "least")],
          [(n, "change.hampel-book." + n) if n == "places" else (n, "change.hampel-book." + n, "input.way = text way", "input.minutes = text minutes") for n in names], rows,
          tolerance="1e-10 relative or 1e-9", reason="sums of values with two decimals")


if __name__ == "__main__":
    for make in (changes, hampel):
        make(sys.argv[1])
