"""When a clock is right again, and when it is wrong once more: shifts of days just within a limit or just beyond, times of findings likewise.

    python3 site_clock_return_limits.py FOLDER

writes the table watch-clock-return-limits into the folder of the tables of hydraulics. A watch with a finding of its clock, open or over,
goes on from its state, in which days, the shift or the times of the finding were put; what it then tells and keeps is computed by
site_watching.py, which knows nothing of the library. Python 3.11, numpy 2.
"""

import sys

from own_tables import write
from site_baselines import site, storm
from site_hours import FIRST_HOUR, Pipe, learn
from site_level_limits import COLUMNS, INPUTS
from site_limits import NANOS, listed
from site_recipes import Record
from site_watches import place
from site_watching import Watch

PROGRAM = "site_clock_return_limits.py"
WATCH = "watch:hourly-watch"
TRACK = WATCH + "/clockTrack:finding"
VALUES = ("x", "unmoved", "moved", "other", "rest", "scatter", "evening")
DEEP = storm(60, 8, 2, 0.6, 1.0)
LATE = [11, 336, 480, 1.0, 0]
AGAIN = [11, 552, 10 ** 5, 1.0, 0]


class Scene:
    """A clock an hour late for six days, and late again from the 24th day on if asked for; watched up to an hour."""

    def __init__(self, at, changes, zone="UTC", seed=221, days=26):
        self.case, self.at = (site(seed=seed, days=days, step=60), DEEP + changes, zone, 0.6, 0), at
        self.record = Record(self.case[0], self.case[1])
        self.base = learn(self.record, Pipe(0.6), zone)[0]
        self.told(self.look)

    def look(self, w):
        c = w.clock
        self.days, self.late, self.soon, self.track = [dict(d) for d in c.days], c.late, c.closed_soon, c.track.copy()

    def told(self, edit):
        watch = Watch(self.base, self.record, None, (self.at, edit))
        found = [e for e in watch.book.events if e[2].names[0] == "CLOCK_OF_MONITOR"]
        book = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(found)))
        return [len(found), int(book(lambda e: e[0])), book(lambda e: e[2].since - FIRST_HOUR), book(lambda e: e[2].earliest - FIRST_HOUR), book(lambda e: e[2].latest - FIRST_HOUR),
                book(lambda e: 0.0 if e[2].open else e[2].closed - FIRST_HOUR), watch.kept["closed_soon"], watch.kept["late"]]

    def row(self, part, put, about, edit):
        return place(self.case) + [self.at, part, put, "CLOCK_OF_MONITOR", self.record.minutes[-1] // 60, about] + self.told(edit)

    def of_days(self, about, days, late=None, soon=None):
        late, soon = self.late if late is None else late, self.soon if soon is None else soon

        def edit(w):
            w.clock.days, w.clock.late, w.clock.closed_soon = [dict(d) for d in days], late, soon

        put = f"clockPhasesNumbers={listed([d['day'] for d in days])} clockPhasesValues={listed([float(d[c]) for d in days for c in VALUES])} clockShift={late!r} clockClosedSoon={soon}"
        for name, of in (("Depths", "depth"), ("Evenings", "evenings"), ("Mornings", "mornings")):
            put += f" clock{name}Numbers={listed([d['day'] for d in days])} clock{name}Values={listed([float(d[of]) for d in days])}".replace("nan;", "NaN;")
        return self.row(WATCH, put, about, edit)

    def of_times(self, about, since, closed=None):
        t = self.track
        earliest, latest = since - 24, since + 24
        end = t.closed if closed is None else closed

        def edit(w):
            w.clock.track.since, w.clock.track.earliest, w.clock.track.latest = since, earliest, latest
            if closed is not None:
                w.clock.track.closed = closed

        whole = [round(h * NANOS) for h in (since, earliest, latest, t.found, 0 if end is None else end, 0 if t.again is None else t.again)]
        # What is kept is asked of the part that something is put into.
        return self.row(TRACK, f"times={listed(whole)}", about, edit)[:-2] + ["", ""]


def closing():
    """The first day that is right again is over in a few hours; what the day before it was is put."""
    scene = Scene(500, LATE)
    assert scene.track.open and scene.days[-1]["x"] > 0.5, scene.days[-1]
    for late in (0.3, 0.41, 0.6, 1.0, -0.6, -1.0, 2.0):
        limit = max(0.2, abs(late) / 2)
        for x in sorted({s * round(v, 4) for v in (0.97 * limit, 1.03 * limit, 0.97 * 0.2, 1.03 * 0.2) for s in (1, -1)}):
            days = scene.days[:-1] + [{**scene.days[-1], "x": x}]
            yield scene.of_days("the day before, right again or not", days, late)
    one = scene.days[-1]
    yield scene.of_days("no day before", [], 1.0)
    yield scene.of_days("a day long before", [{**one, "day": one["day"] - 4, "x": 0.1}], 1.0)


def soon():
    """A finding of less than three weeks counts as one that was over soon, unless clocks changed at 1 UTC of the 28th day and it began within eight days of that."""
    for late, back, zone in [(336, 336 + 504 - 24, "UTC"), (336, 336 + 504, "UTC"), *((24 * day - 1, 24 * day + 119, "Europe/Berlin") for day in (26, 27, 28, 34, 35, 36))]:
        scene = Scene(back + 21, [11, late, back, 1.0, 0], zone, 222, back // 24 + 3)
        assert scene.track.open, scene.track.__dict__
        yield scene.of_days(f"soon, from the day {late // 24} on", scene.days)


def again():
    """Late once more; the finding before ended some days ago."""
    scene = Scene(597, LATE + AGAIN)
    assert not scene.track.open and scene.days[-1]["x"] > 0.5, (scene.track.__dict__, scene.days[-2:])
    for gap in (0, 24, 100, 119, 121, 144):
        yield scene.of_times("five days", scene.track.since, FIRST_HOUR + 552 - gap)
    for soon in (0, 1, 2, 3):
        yield scene.of_days("short ones before", scene.days, soon=soon)
    for x in (-0.5, 0.1, 0.19, 0.21, 0.3, 0.6):
        for gap in (1, 2):
            days = scene.days[:-2] + [{**scene.days[-2], "x": x, "day": scene.days[-1]["day"] - gap}, scene.days[-1]]
            yield scene.of_days("the day before the first", [d for d in days[:-2] if d["day"] < days[-2]["day"]] + days[-2:])


def main(folder):
    rows = [*closing(), *soon(), *again()]
    asked = [("events", "count"), ("kinds", "kind of each times its place"), ("since", "h of each times its place"), ("earliest", "h of each times its place"), ("latest", "h of each times its place"),
             ("closed", "h of each times its place")]
    kept = [("soon", "findings that were over soon", "clockClosedSoon"), ("late", "h, shift of the last", "clockShift")]
    write(folder, PROGRAM, "watch-clock-return-limits", "When a clock is right again, and when it is wrong once more",
          COLUMNS + [("at", "h"), ("part", "of the state"), ("put", "key=values"), ("name", "of the finding"), ("until", "h"), ("about", "the limit")] + asked + [(n, u) for n, u, _ in kept],
          INPUTS + [("at", "at"), ("part", "text part"), ("put", "text put"), ("name", "text name"), ("until", "until")],
          [(n, "watch.after." + (n if n == "events" else n + ".book")) for n, _ in asked]
          + [(n, "watch.after.kept", f"input.part = word {WATCH}", f"input.key = word {key}", "input.which = 0") for n, _, key in kept], rows,
          tolerance="1e-8 relative or 1e-6", reason="whole hours, and shares of a day")


if __name__ == "__main__":
    main(sys.argv[1])
