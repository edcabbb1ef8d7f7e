"""Independent figures of corrections, overflow counts, balances and night flows: plain Python, no code in common with the library.

    python3 survey_books.py FOLDER

writes the tables named below into the folder of the tables of the module timeseries. Exact fractions where sums decide.
"""

import sys
from fractions import Fraction as F


def write(path, header, rows):
    with open(path, "w", newline="\n") as out:
        out.write(header + "\n")
        for row in rows:
            out.write(",".join(str(cell) for cell in row) + "\n")


def corrections(folder):
    """correction-values.csv: one list of corrections on thirteen readings, a minute apart."""
    values = [F(n, 100) for n in (20, 21, 23, 22, 25, 24, 27, 31, 30, 28, 26, 25, 24)]
    steps = [
        ("drift", F(2), F(9), F(1, 50), F(-3, 50)),
        ("offset", F(0), F(5), F(1, 100), None),
        ("factor", F(4), F(11), F(21, 20), None),
        ("shift", F(10), F(20), F(-45), None),
        ("drift", F(19, 2), F(13), F(0), F(1, 10)),
    ]
    times = [F(i) for i in range(len(values))]
    now = list(values)
    for kind, start, end, a, b in steps:
        for i, t in enumerate(list(times)):
            if not start <= t < end:
                continue
            if kind == "offset":
                now[i] += a
            elif kind == "factor":
                now[i] *= a
            elif kind == "drift":
                now[i] += (a * (end - t) + b * (t - start)) / (end - start)
            else:
                times[i] = t + a / 60
    text = "; ".join(
        " ".join([kind] + [str(float(v)) for v in (start, end, a, b if b is not None else 0)]) for kind, start, end, a, b in steps
    )
    sample = " ".join(str(float(v)) for v in values)
    rows = [(sample, i, text, float(now[i]), float(times[i])) for i in range(len(values))]
    write(folder + "/correction-values.csv", "values,i,corrections,value,minute", rows)


def main(folder):
    corrections(folder)


main(sys.argv[1])
