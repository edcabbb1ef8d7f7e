"""What a level alone says beside its usual dry day, as the page on the watch has it: nights, falls after rain, rises without.

Used by site_watching.py and site_level_limits.py. Hours are numbered from 1970. Knows nothing of the library. Python 3.11, numpy 2.
"""

import math

LIMITS = dict(night=5, known=3, rise=math.log(1.25), within=6, half=0.5, longest=72, before=12, drop=0.05, later=1)


def lowest_hour(curve):
    """Of a usual working day, by quarters."""
    return min(range(96), key=lambda q: (curve.value(q / 4, False), q)) / 4


class Levels:
    def __init__(self, lowest, limits=LIMITS):
        self.limits, self.begins_at = limits, lowest - limits["night"] / 2
        self.nights, self.falls, self.rises, self.recent = [], [], [], []
        self.rain_known, self.rained, self.unknown = False, -10 ** 12, -10 ** 12
        self.night, self.of_night, self.rise = None, [], None

    def hour(self, number, rain, y, of_day, usual, dry):
        of = self.limits
        if rain != rain:
            self.unknown = number
        else:
            self.rain_known = True
            if rain > of["drop"]:
                self.rained = number
        into = (of_day - self.begins_at) % 24
        night = number - math.floor(into) if into < of["night"] else None
        if night != self.night:
            if self.night is not None and len(self.of_night) >= of["known"]:
                self.nights.append((self.night, min(a for a, _ in self.of_night) - min(b for _, b in self.of_night)))
            self.night, self.of_night = night, []
        if y != y:
            return
        if night is not None and dry:
            self.of_night.append((y, usual))
        excess = y - usual
        last = [r for r in self.recent if r[0] >= number - of["within"]]
        r = self.rise
        if r is None:
            if last and excess - min(e for _, e, _ in last) > of["rise"] and y - min(l for _, _, l in last) > of["rise"]:
                self.rise = dict(begin=number, peak=number, base=min(e for _, e, _ in last), top=excess)
        elif excess > r["top"]:
            r.update(top=excess, peak=number)
        elif number - r["begin"] > of["longest"]:
            self.rise = None
        elif excess < r["base"] + of["half"] * (r["top"] - r["base"]):
            self.fallen(number, excess, r["base"] + of["half"] * (r["top"] - r["base"]))
            self.rise = None
        self.recent = (self.recent + [(number, excess, y)])[-6:]

    def fallen(self, number, excess, half):
        r, of = self.rise, self.limits
        if not self.rain_known or self.unknown >= r["begin"] - of["before"]:
            return
        if self.rained < r["begin"] - of["before"]:
            self.rises.append((r["begin"], r["top"] - r["base"]))
        elif self.rained <= r["peak"] + of["later"]:
            then, before, _ = self.recent[-1]
            late = (half - excess) / (before - excess) if before > excess else 0.0
            self.falls.append((r["peak"], number - (number - then) * min(1.0, max(0.0, late)) - r["peak"]))

    def kept(self):
        book = lambda values: float(sum((i + 1) * v for i, v in enumerate(values)))
        found = {"rain_of_level": self.rained}
        for name, rows in (("nights", self.nights), ("falls", self.falls), ("rises", self.rises)):
            rows = rows[-64:]
            found.update({name: book(v for _, v in rows), name + "_at": book(n for n, _ in rows)})
        return found
