"""Series where a sign or a limit of 1 tells: Python with fractions.

    python3 series_plain.py FOLDER

writes models-that-begin-later, balances-of-one, echoes-not-lost and spills-short-once into the folder of the tables of series.
"""

import sys
from fractions import Fraction as F

from own_tables import text, write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "series_plain.py"


def models():
    """A modelled record that begins some steps before or after the observed one: only what both have counts."""
    rows = []
    observed = [F(v) for v in (3, 5, 9, 14, 11, 8, 6, 5)]
    modelled = [F(v) for v in (4, 5, 8, 15, 12, 7, 6, 4, 3)]
    for later in (-3, -1, 0, 2, 4):
        pairs = [(observed[i], modelled[i - later]) for i in range(len(observed)) if 0 <= i - later < len(modelled)]
        mean = sum(o for o, _ in pairs) / len(pairs)
        rows.append((text(observed), text(modelled), later, float(1 - sum((o - s) ** 2 for o, s in pairs) / sum((o - mean) ** 2 for o, _ in pairs))))
    write(FOLDER, PROGRAM, "models-that-begin-later", "efficiency over the steps that an observed and a modelled record share", [("o", "1, observed"), ("s", "1, modelled"), ("later", "h, begin of the modelled record after that of the observed"), ("e", "1, efficiency of Nash and Sutcliffe")],
          [("observed", "text o"), ("modelled", "text s"), ("modelled_later_hours", "later")], [("e", "model.nash-sutcliffe")], rows)


def balances():
    """A cubic metre in, exactly: the ratio is what comes out."""
    rows = [(text([F(1, 4096)] * 4), text([v] * 4), float(v * 4096)) for v in (F(1, 4096), F(3, 4096), F(1, 8192))]
    write(FOLDER, PROGRAM, "balances-of-one", "volume out over volume in, where one cubic metre goes in", [("first", "m3/s, inflow"), ("downstream", "m3/s, outflow"), ("ratio", "1, ratio")],
          [("first", "text first"), ("second", "word 0 0 0 0"), ("downstream", "text downstream"), ("step_minutes", "30"), ("from", "0"), ("to", str(float(F(4096, 60)))), ("first_travel", "0"), ("second_travel", "0"), ("first_uncertainty", "0.02"), ("second_uncertainty", "0.02"), ("downstream_uncertainty", "0.02")],
          [("ratio", "balance.ratio")], rows)


def echoes():
    """A value that stands for a lost echo counts as one only after a jump to it."""
    rows = []
    for values, value, jump in ((("2.4", "2.5", "2.5"), 2.5, 0.5), (("1.9", "2.5", "2.5"), 2.5, 0.5), (("3.1", "2.5", "2.5", "2.4", "2.5"), 2.5, 0.5), (("2.9", "2.5"), 2.5, 0.5)):
        lost, other = False, None
        for i, v in enumerate(map(float, values)):
            if v != value:
                lost, other = False, v
            else:
                lost = lost or abs(v - other) > jump
            rows.append((" ".join(values), value, jump, i, 4 if lost else 1))
    write(FOLDER, PROGRAM, "echoes-not-lost", "readings at the value of a lost echo, after a jump to it and without one", [("x", "m, readings a minute apart"), ("value", "m, value of a lost echo"), ("jump", "m, jump"), ("i", "1, reading"), ("flag", "flag, lost echo")],
          [("values", "text x"), ("value", "value"), ("jump", "jump"), ("gap_minutes", "5"), ("reading", "i")], [("flag", "quality.lost-echo")], rows, tolerance="0", reason="a flag")


def spills():
    """Days with a discharge, where one shorter than a day counts once, on the day it begins."""
    rows = []
    for spans in (((1430, 1450),), ((1430, 2869),), ((1430, 2870),), ((1430, 2890),), ((1430, 1450), (1500, 1510)), ((10, 20), (1439, 1441), (4320, 7000))):
        days = set()
        for begin, end in spans:
            days |= {begin // 1440} if end - begin < 1440 else set(range(begin // 1440, (end - 1) // 1440 + 1))
        rows.append(("; ".join(f"{a}-{b}" for a, b in spans).replace(" ", ""), len(days)))
    write(FOLDER, PROGRAM, "spills-short-once", "days with a discharge of which those shorter than a day count once", [("discharges", "min, begin and end"), ("days", "1, count")],
          [("discharges", "text discharges"), ("short_ones_once", "1")], [("days", "spill.days")], rows)


if __name__ == "__main__":
    for part in (models, balances, echoes, spills):
        part()
