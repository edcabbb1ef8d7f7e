"""Long spills and long balances, close to what nanoseconds in 64 bits hold and to the days that are balanced: plain Python.

    python3 series_margins.py FOLDER

writes spills-of-centuries and balances-of-a-century into the folder of the timeseries tables.
"""

import sys

from own_tables import write

FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "series_margins.py"
YEAR = 525_960


def spills():
    """Discharges, from 2001 on; those apart by no more than the gap are one. All their time together is held up to 292 years."""
    rows = []
    for gap in (0, 5):
        for listed in (((0, 10), (100, 240 * YEAR)), ((0, 10), (14, 240 * YEAR)), ((0, 10), (16, 240 * YEAR)), ((0, 120 * YEAR), (120 * YEAR + 60, 255 * YEAR)), ((0, 10), (12, 20), (100, 110), (115, 230 * YEAR))):
            count, last = 0, None
            for start, end in listed:
                count += not (gap and last is not None and start - last <= gap)
                last = end
            rows.append((";".join(f"{a}-{b}" for a, b in listed), gap, count))
    write(FOLDER, PROGRAM, "spills-of-centuries", "discharges that last for centuries, some after a gap that is closed", [("x", "min, start and end of each"), ("gap", "min, longest gap that is closed"), ("count", "discharges, counted")],
          [("discharges", "text x"), ("merge_minutes", "gap")], [("count", "spill.discharges")], rows, tolerance="0", reason="a count")


def balances():
    """Two readings, days apart: a balance for each day from the first to the last, at most 36,525 of them."""
    rows = []
    for days in (36523, 36524, 36525):
        refused = int(days >= 36525)
        # Day i, counted from 1, begins after 24 (i - 1) hours.
        rows.append((days * 1440, refused, "" if refused else float(sum(24 * i * (i - 1) for i in range(1, days + 2)))))
    write(FOLDER, PROGRAM, "balances-of-a-century", "balances of days between two readings that are a century apart", [("step", "min, between the readings"), ("refused", "1, 1 if there are too many days"), ("start", "h, starts of the days times their places")],
          [("upstream", "word 1 1"), ("downstream", "word 1 1"), ("step_minutes", "step"), ("zone", "word UTC")], [("refused", "refusal.balance.daily.start"), ("start", "balance.daily.start")], rows, tolerance="1e-12 relative", reason="a sum of whole numbers")


if __name__ == "__main__":
    spills()
    balances()
