"""Records that lie on a limit or between two ways to the same answer: plain Python, no code in common with the library.

    python3 series_ties.py FOLDER

writes wild-values-of-heavy-tails, changes-through-one, quantiles-of-hundreds, readings-equal-within-one, slips-that-also-fit,
shifts-of-parts-of-a-second, rates-of-parts-of-a-second, common-totals-below-one, volumes-below-one, peaks-of-one, little-infiltration,
confidences-just-met and hours-of-no-day into the folder of the timeseries tables.
"""

import itertools
import math
import random
import statistics
import sys
from fractions import Fraction as F

from change_books import cusum, ewma
from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "series_ties.py"
NAN = float("nan")


def wild():
    """Half of a window close together and the rest far off on both sides: the scatter is small, and the rest no measure of it."""
    rng = random.Random(3101)
    rows = []
    for half, limit in ((2, 3.0), (4, 2.5), (6, 3.5), (3, 3.0)):
        values = [round(10 + rng.gauss(0, 0.1) + rng.choice((0, 0, 0, -1, 1, 2)) * rng.uniform(1, 3), 3) for _ in range(120)]
        found = []
        for at in range(half, len(values) - half):
            window = values[at - half:at + half + 1]
            middle = statistics.median(window)
            scatter = statistics.median([abs(v - middle) for v in window]) / 0.6744897501960817
            assert abs(abs(values[at] - middle) - limit * scatter) > 1e-9
            if abs(values[at] - middle) > limit * scatter:
                found.append((at, values[at], middle, scatter))
        assert len(found) > 5, half
        rows.append((text(range(len(values))), text(values), half, limit, len(found), *(sum(k * f[i] for k, f in enumerate(found, 1)) for i in range(4))))
    names = ("count", "places", "value", "median", "scatter")
    record = ("input.way = word cut", "input.minutes = text minutes")
    write(FOLDER, PROGRAM, "wild-values-of-heavy-tails", "wild values where the window itself is scattered far to both sides, each measure times the place of its value, summed",
          [("minutes", "min, times"), ("x", "1, values"), ("half", "1, readings on either side"), ("limit", "1, limit in scatters")] + [(n, "1, sum of " + n) for n in names],
          [("values", "text x"), ("half", "half"), ("limit", "limit"), ("least", "0")],
          [(n, "change.hampel-book." + n, *(() if n == "places" else record)) for n in names], rows, tolerance="1e-10 relative or 1e-9", reason="sums of values with three decimals")


def changes():
    """Sums and averages that are exactly 1 on their way to the limit: they left 0 before."""
    rows = []
    for kind, test, settings, values in (
            ("cusum", cusum, (10.0, 0.5, 3.0), (10, 10.25, 11.5, 10.5, 11.25, 11.5, 12, 9, 10, 8.5, 9.5, 9, 8.25, 8, 10, 10.75, 11.25, 11, 12, 11.5)),
            ("ewma", ewma, (10.0, 1.0, 0.5, 2.5), (10, 12, 11, 12.5, 12.5, 12.5, 10, 10, 8, 9, 7.5, 7.5, 7.5, 10, 12, 11, 11, 14))):
        record = [(5 * i, float(v)) for i, v in enumerate(values)]
        found = list(test(record, *settings))
        assert len(found) >= 2, kind
        for way in ("arriving", "cut"):
            rows.append((way, text([t for t, _ in record]), text(values), kind, text(settings), len(found), *(sum(k * f[i] for k, f in enumerate(found, 1)) for i in range(4))))
    names = ("count", "time", "since", "side", "statistic")
    write(FOLDER, PROGRAM, "changes-through-one", "signals of tests for a change whose statistic is 1 before it passes the limit, each measure times the place of its signal, summed",
          [("way", "text, how the record is given"), ("minutes", "min, times"), ("x", "1, values"), ("kind", "text, the test"), ("settings", "text, its settings")] + [(n, "1, sum of " + n) for n in names],
          [("way", "text way"), ("minutes", "text minutes"), ("values", "text x"), ("kind", "text kind"), ("settings", "text settings")], [(n, "change.book." + n) for n in names], rows, tolerance="1e-10 relative or 1e-9", reason="sums of a few values")


def quantiles():
    rng = random.Random(3102)
    rows = []
    for n in (100, 101, 357, 999, 1000, 1203):
        values = [rng.randint(-4000, 4000) / 8 for _ in range(n)]
        ordered = sorted(map(F, values))
        for p in ("0.103", "0.5", "0.8712"):
            place = F(p) * (n - 1)
            low = math.floor(place)
            rows.append((text(values), p, float(ordered[low] + (place - low) * (ordered[min(low + 1, n - 1)] - ordered[low]))))
    write(FOLDER, PROGRAM, "quantiles-of-hundreds", "quantiles between two of some hundreds of values, in exact fractions", [("x", "1, sample"), ("p", "1, probability"), ("quantile", "1, quantile")],
          [("sample", "text x"), ("probability", "p")], [("quantile", "statistics.quantile")], rows)


def equal():
    """Readings within 1 of the newest, and of those before without a break; an equal one before tells only of itself."""
    rng = random.Random(3103)
    rows = []
    for tolerance in (1, 0.25):
        x = [20.0]
        for _ in range(150):
            x.append(x[-1] + tolerance * rng.choice((0, 0, 0, 0.25, -0.25, 0.25, -0.25, 0.5, -0.5, -1, 1.25)))
        flags = []
        for i in range(len(x)):
            run = 1
            while run < 7 and i - run >= 0 and abs(x[i] - x[i - run]) <= tolerance:
                run += 1
            flags.append(4 if run >= 7 else 3 if run >= 4 else 1)
        assert min(map(flags.count, (1, 3, 4))) > 2, tolerance
        for way in ("whole", "arriving", "cut"):
            rows.append((way, text([60 * i for i in range(len(x))]), text(x), tolerance, sum(k * f for k, f in enumerate(flags, 1))))
    write(FOLDER, PROGRAM, "readings-equal-within-one", "readings that stand still within a tolerance, of 1 among them", [("way", "text, how the record is given"), ("t", "s, times"), ("x", "1, readings"), ("tolerance", "1, tolerance"), ("sum", "1, flags times places")],
          [("way", "text way"), ("times", "text t"), ("values", "text x"), ("suspect", "word 999999"), ("unusual", "4"), ("fail", "7"), ("tolerance", "tolerance")], [("sum", "quality.book.flat-line")], rows, tolerance="0", reason="a sum of whole numbers")


def slips():
    """Ranges so wide that a slip of the unit would fit as well: no factor is named where nine of ten lie inside as they are."""
    rng = random.Random(3104)
    rows = []
    for low, high, inside, outside in ((0.001, 5, [4.9] * 3 + [4.97] * 20, [9999] * 2), (0.1, 400, [round(rng.uniform(1, 5), 2) for _ in range(23)], [90000] * 2), (0.01, 50, [round(rng.uniform(2, 40), 2) for _ in range(46)], [7e6] * 5)):
        values = inside + outside
        assert len(inside) >= 0.9 * len(values) and all(low <= v <= high for v in inside)
        rows.append((text(values), low, high, 0))
    write(FOLDER, PROGRAM, "slips-that-also-fit", "readings of which nine of ten lie in their range as they are", [("x", "1, readings"), ("low", "1, lowest"), ("high", "1, highest"), ("factor", "1, 0 for none")],
          [("values", "text x"), ("lowest", "low"), ("highest", "high")], [("factor", "quality.unit-factor")], rows, tolerance="0", reason="none")


def shifts():
    rows = []
    for seconds in ("30.25", "-12.5", "0.75", "-0.001"):
        for i, moved in ((1, 0), (3, 1), (5, 1), (6, 0)):
            rows.append((text(range(8)), i, f"shift 2.5 5.5 {seconds} 0", float(F(i) + moved * F(seconds) / 60)))
    write(FOLDER, PROGRAM, "shifts-of-parts-of-a-second", "times of readings after a shift of the clock by parts of a second", [("x", "1, readings a minute apart"), ("i", "1, reading"), ("given", "text, correction"), ("minute", "min, corrected time")],
          [("values", "text x"), ("reading", "i"), ("corrections", "text given")], [("minute", "correction.minute")], rows)


def rates():
    """A change of at most 0.1 in a second, between readings that are parts of a second apart."""
    rng = random.Random(3105)
    t, x = [F(0)], [F(5)]
    for _ in range(90):
        apart = F(rng.choice((250, 500, 900, 1500, 2125, 3750)), 1000)
        t.append(t[-1] + apart)
        x.append(x[-1] + rng.choice((-1, 1)) * rng.choice((F(98, 1000), F(102, 1000), F(93, 1000), F(107, 1000))) * apart)
    flags = [2] + [3 if abs(x[i] - x[i - 1]) > (t[i] - t[i - 1]) / 10 else 1 for i in range(1, len(t))]
    rows = [(way, text(map(float, t)), text(map(float, x)), sum(k * f for k, f in enumerate(flags, 1))) for way in ("whole", "arriving", "cut")]
    write(FOLDER, PROGRAM, "rates-of-parts-of-a-second", "rates of change of readings that are parts of a second apart, close to the limit", [("way", "text, how the record is given"), ("t", "s, times"), ("x", "1, readings"), ("sum", "1, flags times places")],
          [("way", "text way"), ("times", "text t"), ("values", "text x"), ("suspect", "word 999999"), ("change", "1"), ("over_seconds", "10"), ("gap_seconds", "100")], [("sum", "quality.book.rate-of-change")], rows, tolerance="0", reason="a sum of whole numbers")


def little():
    """Totals, volumes, peaks and flows so small that 1 of their unit is much."""
    rows = []
    for a, b, c in (("0.125 0 0.25 0.0625", "0.25 0.125 0 0.0625", "0.0625 0.125 0.125 0.25"), ("0.5 0.125", "0.25 0.25", "0.125 0.25")):
        sums = [sum(map(F, s.split())) for s in (a, b, c)]
        rows.append((a, b, c, float(sums[0] / ((sums[1] + sums[2]) / 2)), float(sums[2] / ((sums[0] + sums[1]) / 2))))
    write(FOLDER, PROGRAM, "common-totals-below-one", "records whose totals are less than 1, each over the median of the others", [("a", "1, first"), ("b", "1, second"), ("c", "1, third"), ("first", "1, first over the others"), ("last", "1, third over the others")],
          [("a", "text a"), ("b", "text b"), ("c", "text c"), ("a_from", "0"), ("b_from", "0"), ("c_from", "0")], [("first", "balance.common.ratio", "input.record = word a"), ("last", "balance.common.ratio", "input.record = word c")], rows)
    rows = []
    for observed, modelled in (("0.5;1;0.25;0", "0.25;1.5;0.5;0.125"), ("0.75;0.5;1", "0.5;0.875;0.25"), ("2;1;0.5", "1;1.5;1")):
        o, m = (max(map(F, s.split(";"))) for s in (observed, modelled))
        rows.append((observed, modelled, float((m - o) / o)))
    write(FOLDER, PROGRAM, "peaks-of-one", "differences of peaks from one that is 1", [("observed", "1, observed"), ("modelled", "1, modelled"), ("peak", "1, difference of the peaks")],
          [("observed", "text observed"), ("modelled", "text modelled")], [("peak", "model.peak-difference")], rows)
    rows = []
    flows = [F(v, 16) for v in (5, 7, 4, 9, 12, 6, 3, 8)]
    for foul in (F(1, 8), F(5, 16), F(1)):
        for day in (1, 3, 5, 7):
            least = min(flows[max(0, day - 3):day + 1])
            rows.append((text(map(float, flows)), day, float(foul), float(max(F(0), least - foul))))
    write(FOLDER, PROGRAM, "little-infiltration", "infiltration below 1, and none where the foul flow is more than the least", [("x", "m3/d, flows"), ("day", "1, day from 0"), ("foul", "m3/d, foul flow"), ("infiltration", "m3/d, infiltration")],
          [("flows", "text x"), ("day", "day"), ("days", "4"), ("foul", "foul")], [("infiltration", "infiltration.by-moving-minimum")], rows)


def volumes():
    """Hourly flows of less than a cubic metre a day; each stands for its hour."""
    rng = random.Random(3106)
    days = 4
    first, second = ([F(rng.randint(2, 9), 2**20) for _ in range(24 * days)] for _ in range(2))

    def volume(rates, day):
        return 3600 * sum(rates[24 * day:24 * day + 24])

    pairs = [(volume(first, d), volume(second, d)) for d in range(days)]
    assert all(v < 1 for p in pairs for v in p)
    rows = [(text(map(float, first)), text(map(float, second)), days, float(statistics.median(b / a for a, b in pairs)), float(sum(b for _, b in pairs)))]
    write(FOLDER, PROGRAM, "volumes-below-one", "daily volumes of less than a cubic metre at two sites", [("first", "m3/s, hourly flow upstream"), ("second", "m3/s, hourly flow downstream"), ("days", "1, days"), ("usual", "1, usual ratio"), ("volume", "m3, second")],
          [("first", "text first"), ("second", "text second")], [("days", "balance.ratios.days"), ("usual", "balance.ratios.usual"), ("volume", "balance.ratios.second")], rows)


def confidences():
    """Small groups without ties: the limits are differences of a rank, and the confidence is a little more or less than that of a rank."""
    rng = random.Random(3107)
    rows = []
    for m, n in ((4, 5), (5, 6), (3, 7)):
        pool = rng.sample(range(1, 400), m + n)
        x, y = pool[:m], pool[m:]
        differences = sorted(b - a for a in x for b in y)
        counts = [0] * (m * n + 1)
        for chosen in itertools.combinations(range(m + n), m):
            counts[sum(chosen) - m * (m - 1) // 2] += 1
        whole = math.comb(m + n, m)
        for rank in (1, 2, 4):
            for share in (F(97, 100), F(103, 100)):
                tail = F(sum(counts[:rank + 1]), whole) * share
                k = max(1, next(k for k in range(m * n) if F(sum(counts[:k + 1]), whole) >= tail))
                rows.append((text(x), text(y), float(1 - 2 * tail), float(differences[k - 1]), float(differences[m * n - k])))
    write(FOLDER, PROGRAM, "confidences-just-met", "J. L. Hodges and E. L. Lehmann (1963): limits of the shift of two groups, for confidences close to those of a rank",
          [("before", "1, values before"), ("after", "1, values after"), ("confidence", "1, of the limits"), ("lower", "1, lower limit"), ("upper", "1, upper limit")],
          [("before", "text before"), ("after", "text after"), ("confidence", "confidence")], [("lower", "trend.before-after.lower"), ("upper", "trend.before-after.upper")], rows)


def hours():
    """A day ends before hour 24."""
    given = (text([i % 24 for i in range(30)]), text([0] * 30), text([1 + i % 3 for i in range(30)]))
    rows = [(*given, hour, int(not 0 <= hour < 24)) for hour in (0, 23.99, 24, 24.5, 25.1, -0.01)]
    write(FOLDER, PROGRAM, "hours-of-no-day", "hours of the day that a daily course answers for, and others", [("hours", "h, hours"), ("rest", "1, days of rest"), ("x", "1, values"), ("hour", "h, hour asked for"), ("refused", "1, 1 if refused")],
          [("hours", "text hours"), ("rest", "text rest"), ("values", "text x"), ("hour", "hour"), ("off", "0")], [("refused", "refusal.baseline.day-curve.value")], rows, tolerance="0", reason="a verdict")


if __name__ == "__main__":
    wild()
    changes()
    quantiles()
    equal()
    slips()
    shifts()
    rates()
    little()
    volumes()
    confidences()
    hours()
