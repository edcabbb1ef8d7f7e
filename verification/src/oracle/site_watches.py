"""What the watch finds at constructed sites to which something known was done, told by a program of its own.

    python3 site_watches.py FOLDER

writes the tables watch-events, watch-findings, watch-kept, watch-remarks and watch-stamps into the folder of the tables of hydraulics. Records by site_recipes.py, baselines by
site_hours.py, the watch by site_watching.py and site_changes.py; none knows anything of the library. Python 3.11, numpy 2, scipy 1.17.
"""

import sys

from own_tables import text, write
from site_baselines import no_rain, site, storm
from site_changes import DOWN, NOTED, UP
from site_hours import FIRST_HOUR, NONE, Pipe, learn
from site_recipes import Record
from site_watching import Watch

PROGRAM = "site_watches.py"
H = 24


def step(hour, depth=1.0, velocity=1.0, until=10 ** 5):
    return [0, hour, until, depth, depth, 1, hour, until, velocity, velocity]


def ramp(begin, end, depth=1.0, velocity=1.0, until=10 ** 5):
    return [0, begin, end, 1, depth, 1, begin, end, 1, velocity, 0, end, until, depth, depth, 1, end, until, velocity, velocity]


def often(first, last, every, rise=0.6, rain=6.0):
    """Storms one after the other, at other hours of the day each."""
    return [c for k, h in enumerate(range(first, last, every)) for c in storm(h, rain + k % 3, 2, rise + 0.1 * (k % 2), 0.8 + 0.1 * (k % 4))]


EVER = 10 ** 5
LEVEL_ONLY = [6, 0, EVER, 0, 0]
FOUR_STORMS = often(52, 330, 77)


def weekly(first, count, days, most):
    """An obstruction that grows and is washed away again and again."""
    return [c for k in range(count) for c in ramp(first + days * H * k, first + days * H * (k + 1) - 14, 1 + most, 1 / (1 + 1.3 * most),
                                                  first + days * H * (k + 1) - 14)]


# name: site, what was done, zone, diameter, alarm level
CASES = {
    "sound": (site(seed=101, days=24), FOUR_STORMS + storm(500, 14, 3, 0.9, 1.2), "UTC", 0.6, 0),
    "held up at once": (site(seed=102, days=26), step(426, 1.30, 0.70), "UTC", 0.6, 0.3),
    "held up over six days": (site(seed=103, days=30), ramp(400, 544, 1.6, 0.55), "UTC", 0.6, 0.3),
    "held up over twelve days": (site(seed=131, days=34, parted=0.04), ramp(380, 668, 1.5, 0.6), "UTC", 0.6, 0.22),
    "held up in rain": (site(seed=132, days=30), FOUR_STORMS + often(410, 700, 22, 0.3) + ramp(420, 520, 1.3, 0.6), "UTC", 0.6, 0),
    "held up in rain, deeper than learned": (site(seed=194, days=32), FOUR_STORMS + often(410, 690, 29, 0.2) + step(430, 1.9, 0.45, 630), "UTC", 0.6, 0),
    "a bed grows": (site(seed=190, days=46), ramp(400, 880, 1.6, 0.72), "UTC", 0.6, 0),
    "hardly a bed": (site(seed=190, days=46), ramp(400, 880, 1.6, 0.574), "UTC", 0.6, 0),
    "just a bed": (site(seed=190, days=46), ramp(400, 880, 1.6, 0.587), "UTC", 0.6, 0),
    "a bed after a blockage": (site(seed=192, days=72), ramp(400, 430, 1.8, 0.45, 540) + ramp(640, 1200, 1.6, 0.72), "UTC", 0.6, 0),
    "held up after a velocity lost": (site(seed=193, days=46), step(400, 1, 0.7, 700) + step(800, 1.5, 0.6, 880), "UTC", 0.6, 0),
    "velocity lost": (site(seed=104, days=26), step(433, 1, 0.72), "UTC", 0.6, 0),
    "velocity lost slowly": (site(seed=133, days=50), ramp(400, 1000, 1, 0.6), "UTC", 0.6, 0),
    "velocity gained": (site(seed=105, days=26), step(440, 1, 1.34), "UTC", 0.6, 0),
    "velocity gained a little": (site(seed=134, days=34, parted=0.03), step(440, 1, 1.19), "UTC", 0.6, 0),
    "depth moved": (site(seed=106, days=26), [19, 430, EVER, 0.05, 0], "UTC", 0.6, 0),
    "depth moved down": (site(seed=135, days=36), [19, 437, EVER, -0.03, 0], "Europe/Berlin", 0.6, 0),
    "depth drifts": (site(seed=107, days=45), ramp(400, 1080, 1.5, 1.0), "UTC", 0.6, 0.25),
    "depth drifts down": (site(seed=136, days=45), ramp(400, 1000, 0.6, 1.0), "UTC", 0.6, 0),
    "depth drifts to nothing": (site(seed=194, days=58), ramp(400, 1000, 0.04, 1.0), "UTC", 0.6, 0),
    "more water": (site(seed=108, days=30), step(420, 1.35, 1.2), "UTC", 0.6, 0),
    "less water": (site(seed=109, days=30), step(420, 0.72, 0.82), "UTC", 0.6, 0),
    "a season": (site(seed=137, days=60, daily=0.05), ramp(400, 700, 1.45, 1.3) + ramp(1100, 1300, 0.75, 0.85), "UTC", 0.6, 0),
    "released": (site(seed=110, days=30), step(0, 1.4, 0.68, 440), "UTC", 0.6, 0),
    "level up": (site(seed=111, days=30), LEVEL_ONLY + ramp(400, 500, 1.6), "UTC", 0.6, 0.35),
    "level down": (site(seed=141, days=34), LEVEL_ONLY + FOUR_STORMS + step(410, 0.74) + storm(500, 5, 2, 0.5, 1), "Asia/Kolkata", 0.6, 0),
    "came and went": (site(seed=112, days=32), step(420, 1.35, 0.65, 500), "UTC", 0.6, 0),
    "came twice": (site(seed=142, days=38), step(420, 1.4, 0.62, 500) + step(590, 1.35, 0.66, 700), "UTC", 0.6, 0),
    "came again late": (site(seed=143, days=50), step(420, 1.4, 0.62, 480) + step(720, 1.35, 0.66, 800), "UTC", 0.6, 0),
    "small three times": (site(seed=144, days=80, noise=0.03, parted=0.01, hourly=0.01), step(400, 1, 0.84, 490) + step(800, 1, 0.84, 890) + step(1200, 1, 0.84, 1290)
                          + step(1600, 1, 0.84, 1700), "UTC", 0.6, 0),
    "blinds every four days": (site(seed=145, days=48), weekly(400, 7, 4, 0.9), "UTC", 0.6, 0.4),
    "blinds every week": (site(seed=146, days=60), weekly(380, 5, 7, 0.7), "UTC", 0.6, 0),
    "level recurs": (site(seed=147, days=50), LEVEL_ONLY + weekly(400, 5, 5, 0.9), "UTC", 0.6, 0),
    "zeros": (site(seed=148, days=24), [9, 400, 470, 0, 4], "UTC", 0.6, 0),
    "few zeros": (site(seed=149, days=26), [9, 400, 470, 0, 9, 9, 500, 560, 0, 7], "UTC", 0.6, 0),
    "weak echo": (site(seed=150, days=26), [10, 400, 460, 0.5, 3, 10, 520, 570, 0.7, 3], "UTC", 0.6, 0),
    "weak echo of a rough sensor": (site(seed=151, days=26, noise=0.09), [10, 0, EVER, 0.65, 9, 10, 400, 460, 0.5, 4], "UTC", 0.6, 0),
    "signs flip": (site(seed=152, days=26), [9, 400, 440, -0.5, 5, 9, 520, 540, -0.4, 8], "UTC", 0.6, 0),
    "sign reversed": (site(seed=153, days=26), [1, 420, 450, -1, -1, 1, 520, 530, -1.05, -1.05], "UTC", 0.6, 0),
    "flows upstream": (site(seed=154, days=26), [1, 420, 424, -0.4, -0.4, 1, 500, 508, -1.38, -1.38], "UTC", 0.6, 0),
    "no water but velocity": (site(seed=155, days=26), [2, 420, 426, 0, 0, 2, 500, 503, 0, 0], "UTC", 0.6, 0),
    "depths out of range": (site(seed=156, days=26), [0, 420, 425, 20000, 20000, 19, 480, 484, -0.5, 0], "UTC", 0.6, 0),
    "next to nothing": (site(seed=157, days=26), [0, 420, 426, 0.03, 0.03, 0, 470, 480, 0.09, 0.09], "UTC", 0.6, 0),
    "depth frozen": (site(seed=158, days=28), [7, 420, 429.5, 0, 0, 7, 470, 478, 0, 0, 7, 530, 540, 0, 0], "UTC", 0.6, 0),
    "velocity frozen": (site(seed=159, days=28), [8, 420, 424, 0, 0, 8, 470, 473, 0, 0, 8, 600, 640, 0, 0], "UTC", 0.6, 0),
    "logger frozen": (site(seed=160, days=28), [7, 420, 435, 0, 0, 8, 422, 435, 0, 0, 7, 500, 510, 0, 0, 8, 504.5, 512, 0, 0], "UTC", 0.6, 0),
    "high and still": (site(seed=161, days=30), [2, 420, 440, 0.26, 0, 2, 500, 530, 0.26, 0, 3, 560, 580, 0.33, 0], "UTC", 0.6, 0),
    "an hour late": (site(seed=162, days=32), [11, 480, EVER, 1, 0], "UTC", 0.6, 0),
    "half an hour late": (site(seed=163, days=34), [11, 456, EVER, 0.5, 0], "UTC", 0.6, 0),
    "mornings late": (site(seed=191, days=40), [v for d in range(17, 36) for v in (11, 24 * d + 3, 24 * d + 14, 0.9, 0)], "UTC", 0.6, 0),
    "mornings later than evenings": (site(seed=191, days=40), [v for d in range(17, 36) for v in (11, 24 * d + 3, 24 * d + 14, 0.6, 0, 11, 24 * d + 14, 24 * d + 27, 0.4, 0)], "UTC", 0.6, 0),
    "an hour early and back": (site(seed=164, days=34), [11, 432, 600, -1, 0], "UTC", 0.6, 0),
    "two hours late twice": (site(seed=165, days=50), [11, 408, 504, 2, 0, 11, 552, 650, 2, 0], "UTC", 0.6, 0),
    "short clocks": (site(seed=166, days=70), [11, 408, 504, 1.25, 0, 11, 720, 816, 1.25, 0, 11, 1100, 1250, 1.25, 0], "UTC", 0.6, 0),
    "left behind at the civil change": (site(seed=167, days=36), [], "Europe/Berlin", 0.6, 0),
    "logger moved late": (site(seed=168, days=40), [11, 649, EVER, -2, 0, 14, 696, EVER, 60, 0], "Europe/Berlin", 0.6, 0),
    "clock and storms": (site(seed=169, days=36), FOUR_STORMS + often(400, 820, 55) + [11, 460, EVER, 0.75, 0], "UTC", 0.6, 0),
    "gauge late": (site(seed=170, days=50), often(52, 1150, 61) + [12, 480, EVER, 1.9, 0], "UTC", 0.6, 0),
    "gauge a little late": (site(seed=171, days=50), often(52, 1150, 61) + [12, 480, 900, 1.0, 0], "UTC", 0.6, 0),
    "gauge early": (site(seed=172, days=50), often(52, 1150, 61) + [12, 480, 1000, -1.0, 0], "UTC", 0.6, 0),
    "gauge very early": (site(seed=173, days=50), often(52, 1150, 61) + [12, 480, EVER, -1.75, 0], "UTC", 0.6, 0),
    "gauge silent": (site(seed=174, days=60), often(52, 1350, 41) + [c for h in (500,) for c in [12, h, 1100, 500, 0]], "UTC", 0.6, 0),
    "gauge silent, level only": (site(seed=175, days=60), LEVEL_ONLY + often(52, 1350, 53) + [12, 600, EVER, 2000, 0], "UTC", 0.6, 0),
    "gauge silent twice": (site(seed=176, days=60), often(52, 1400, 29, 0.5) + [12, 500, 620, 1000, 0, 12, 900, 1050, 1000, 0], "UTC", 0.6, 0),
    "tide not seen before": (site(seed=177, days=50), [13, 500, EVER, 0.16, 12.4206012], "UTC", 0.6, 0),
    "tidal site held up": (site(seed=178, days=40, tide=0.12), FOUR_STORMS + step(500, 1.5, 0.5), "UTC", 0.6, 0),
    "tidal level up": (site(seed=178, days=36, tide=0.12), LEVEL_ONLY + FOUR_STORMS + step(500, 1.6), "UTC", 0.6, 0),
    "small tide late": (site(seed=179, days=50), [13, 340, EVER, 0.09, 12.4206012, 11, 700, EVER, 1, 0], "UTC", 0.6, 0),
    "pumped": (site(seed=180, days=30), FOUR_STORMS + [18, 0, EVER, 0.12, 4] + step(480, 1.3, 0.7), "UTC", 0.6, 0),
    "no rain known": (site(seed=181, days=36), no_rain(36) + storm(200, 0, 2, 0.7, 1) + storm(450, 0, 2, 0.7, 1) + step(520, 1.3, 0.75), "UTC", 0.6, 0.25),
    "rain lost": (site(seed=182, days=36), FOUR_STORMS + often(380, 800, 67) + [15, 500, 640, 0, 0], "UTC", 0.6, 0),
    "holes": (site(seed=183, days=36), [5, 400, 412, 0, 0, 6, 430, 470, 0, 0, 4, 500, 515, 0, 0] + step(530, 1.3, 0.7) + [6, 560, 700, 0, 0], "UTC", 0.6, 0),
    "readings every hour": (site(seed=184, days=40, step=60), step(450, 1.35, 0.72) + [4, 500, 540, 0, 0], "UTC", 0.6, 0.3),
    "storms beyond what was seen": (site(seed=185, days=40), often(350, 900, 71, 1.3, 14) + step(600, 1, 0.85), "UTC", 0.6, 0),
    "stamps at the end": (site(seed=186, days=20), [4, 470, 479.25, 0, 0], "UTC", 0.6, 0),
    "a scatter by depth": (site(seed=187, days=40, day=0.45, exponent=0.8, noise=0.08), step(500, 1.2, 0.8), "UTC", 0.6, 0.5),
    "full": (site(seed=188, days=36, depth=0.3, day=0.3), FOUR_STORMS + step(500, 1.6, 0.5), "UTC", 0.45, 0),
    "an interval that was chosen": (site(seed=189, days=50), step(0, 1.25, 0.8, 380) + FOUR_STORMS + step(900, 1.3, 0.7), "UTC", 0.6, 0, (432, 840)),
    "level knocked in a season": (site(seed=190, days=56), LEVEL_ONLY + ramp(380, 620, 1.35) + step(900, 1.28), "UTC", 0.6, 0),
    "level knocked in a season and back": (site(seed=191, days=60), LEVEL_ONLY + FOUR_STORMS + ramp(380, 620, 1.35) + step(910, 1.25, 1, 1090), "UTC", 0.6, 0),
    "level knocked after rain in a season": (site(seed=192, days=56), LEVEL_ONLY + ramp(380, 620, 1.35) + storm(893, 5, 2, 0.2, 1) + step(900, 1.28), "UTC", 0.6, 0),
}


CHANGE, WATCH, GAUGE, SILENCE, FAULTS = ("watch:hourly-watch" + part for part in (
    "/change:change-watch", "", "/gauge:gauge-clock", "/silence:gauge-silence", "/faults:reading-faults"))
# What is compared, where it is kept, and which number of it; -1 for the sum of all, each times its place.
KEPT = [("sums", CHANGE, "sums", -1), ("largest", CHANGE, "largest", 0), ("stands_d", CHANGE, "stands", 0), ("stands_u", CHANGE, "stands", 1),
        ("stands_r", CHANGE, "stands", 3), ("votes", CHANGE, "votes", -1), ("origin", CHANGE, "origin", -1), ("hours", CHANGE, "hourValues", -1),
        ("blocks", CHANGE, "blockValues", -1), ("days", WATCH, "clockPhasesValues", -1), ("days_by_depth", WATCH, "clockDepthsValues", -1),
        ("evenings", WATCH, "clockEveningsValues", -1), ("mornings", WATCH, "clockMorningsValues", -1), ("late", WATCH, "clockShift", 0),
        ("closed_soon", WATCH, "clockClosedSoon", 0), ("usual_lags", GAUGE, "usual", -1), ("lags", GAUGE, "lags", -1), ("gauge_late", GAUGE, "shift", 0),
        ("rises_with", SILENCE, "risesWith", -1), ("rises_without", SILENCE, "risesWithout", -1), ("without", SILENCE, "countWithout", 0), ("silent", SILENCE, "sizes", -1),
        ("dry_hours", SILENCE, "dryHours", 0), ("wet_hours", SILENCE, "wetHours", 0), ("spells", SILENCE, "spells", 0),
        ("quiet", SILENCE, "silentHours", 0), ("faults", FAULTS, "hoursValues", -1), ("beyond", FAULTS, "beyond", -1), ("event", WATCH, "event", 0),
        ("tide", WATCH, "tideNormal", -1), ("tide_right", WATCH, "tideRight", -1), ("tide_squares", WATCH, "tideSquares", 0)]
KEPT_OF = ("sound", "held up over twelve days", "depth drifts", "a season", "came again late",
           "small three times", "blinds every four days", "weak echo", "signs flip", "sign reversed", "short clocks", "left behind at the civil change",
           "clock and storms", "gauge a little late", "gauge silent", "gauge silent, level only", "gauge silent twice", "small tide late",
           "tide not seen before", "pumped", "no rain known", "storms beyond what was seen", "a scatter by depth", "holes")


# Readings after which a watch is stopped again, from which hour to which: amid what each case holds.
CUT = {"sound": (61, 20, 500), "held up over six days": (53, 390, 600), "depth moved": (5, 428, 446), "a season": (233, 380, EVER), "level up": (61, 380, 600),
       "came twice": (67, 400, 800), "blinds every four days": (131, 390, 900), "signs flip": (11, 396, 430), "sign reversed": (9, 416, 450), "logger frozen": (9, 416, 450),
       "two hours late twice": (149, 390, 800), "logger moved late": (31, 690, 800), "gauge a little late": (143, 470, 1000), "gauge silent twice": (73, 490, 900),
       "small tide late": (257, 340, EVER), "holes": (29, 390, 600), "level knocked in a season": (67, 890, 1100), "stamps at the end": (1, 479, EVER)}
HOUR, MINUTE, DAY = 3600, 60, 86400
TWENTY = 20 * DAY
usual = lambda first, count, apart=15 * MINUTE: [first + apart * k for k in range(count)]
STAMPS = [
    usual(TWENTY, 3), usual(TWENTY, 4), usual(TWENTY, 4, 20 * MINUTE), usual(TWENTY, 4, 1200 - 1), usual(TWENTY, 30, 2 * MINUTE), usual(TWENTY, 31, 2 * MINUTE),
    usual(TWENTY, 12) + usual(TWENTY + 11 * 900 + 3 * HOUR, 2), usual(TWENTY, 12) + usual(TWENTY + 11 * 900 + 3 * HOUR + 1, 2),
    usual(TWENTY, 12) + usual(TWENTY + 9 * HOUR, 4), usual(TWENTY, 12) + usual(TWENTY + 9 * HOUR, 5), usual(TWENTY, 12) + usual(TWENTY + 9 * HOUR, 4, 1199),
    usual(TWENTY, 12) + [TWENTY + 300 * DAY] + usual(TWENTY + 12 * 900, 4), usual(TWENTY, 12) + usual(TWENTY + 90 * DAY, 3) + usual(TWENTY + 12 * 900, 4),
    usual(TWENTY, 12) + [TWENTY + 300 * DAY] + usual(TWENTY + 8 * HOUR, 4) + [TWENTY + 400 * DAY],
    [TWENTY + 700 * DAY] + usual(TWENTY, 9), [TWENTY + 4 * HOUR] + usual(TWENTY, 2), [TWENTY, TWENTY + 3 * HOUR], [TWENTY, TWENTY + 3 * HOUR + 1],
    usual(TWENTY, 2) + usual(TWENTY + 40 * DAY, 2), usual(TWENTY, 2) + usual(TWENTY + 40 * DAY, 5), usual(TWENTY, 3599, 1), usual(TWENTY, 3600, 1),
    usual(TWENTY, 20) + usual(TWENTY + 20 * HOUR, 3) + usual(TWENTY + 30 * HOUR, 2), [TWENTY + 3 * HOUR + 1] + usual(TWENTY, 5),
]


def by_stamps(stamps):
    """The last stamp taken, what is held, remarks, readings left out so far and at the end."""
    last, held, remarks, out = None, [], 0, 0
    for t in stamps:
        if held and t > held[-1] and not (last is None and t - held[-1] > 3 * HOUR):
            held.append(t)
            if len(held) >= 3600 or len(held) >= 4 and held[-1] - held[0] >= HOUR:
                last, held = t, []
            continue
        if held and t > held[-1]:
            last, held = held[-1], []
        elif held:
            assert last is not None or held[0] - t > 3 * HOUR
            remarks, out, held = remarks + 1, out + len(held), []
        if last is None or t - last > 3 * HOUR:
            held.append(t)
        else:
            last = t
    return [NONE if last is None else last / 3600, len(held), remarks, out, out + (len(held) if last is not None else 0)]


def names(found):
    return "/".join(found.names)


def watch(case):
    recipe, changes, zone, diameter, alarm = case[:5]
    record = Record(recipe, changes)
    base, _ = learn(record, Pipe(diameter), zone, case[5] if len(case) > 5 else None)
    return Watch(base, record, alarm or None)


def place(case):
    recipe, changes, zone, diameter, alarm = case[:5]
    interval = case[5] if len(case) > 5 else (NONE, NONE)
    return [text(recipe), text(changes) or "-", zone, diameter, *interval, alarm]


def stretches(f):
    """Begin of the last time in which it stood; begins and ends of all, in a sum; how long in all."""
    every = [(a - FIRST_HOUR, b - FIRST_HOUR) for a, b in f.stretches(FIRST_HOUR + 3000)]
    told = sum((i + 1) * (a + 3 * (0 if f.open and i == len(every) - 1 else b)) for i, (a, b) in enumerate(every))
    return [float(every[-1][0]), float(told), float(sum(b - a for a, b in every))]


def hour(value):
    return NONE if value is None else value - FIRST_HOUR


def tables(folder, program, cases, kept_of, prefix, more=()):
    """Events, findings and states of some cases; what more of the state is asked."""
    columns = [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h, -9999 for a search"), ("to_hour", "h"),
               ("alarm", "m, 0 for none")]
    inputs = [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour"),
              ("alarm", "alarm")]
    kept = KEPT + list(more)
    events, findings, states, told_of = [], [], [], []
    for title, case in cases.items():
        told = watch(case)
        told_of.append((case, told, title))
        print(title, [(names(f), f.shape, f.since - FIRST_HOUR, f.found - FIRST_HOUR, hour(f.closed) if f.closed else None) for f in told.findings()],
              [(names(e[2]), e[1] - FIRST_HOUR) for e in told.book.events if e[0] == NOTED], file=sys.stderr)
        book = told.book.events
        if title in kept_of:
            states.append(place(case) + [title] + [told.kept.get(n, '') for n, *_ in kept])
        events.append(place(case) + [title, len(told.findings()), sum(f.open for f in told.findings()), sum(e[0] == NOTED for e in book), len(book),
                                     sum((i + 1) * e[0] for i, e in enumerate(book)), float(sum((i + 1) * (e[1] - FIRST_HOUR) for i, e in enumerate(book)))])
        for which, f in enumerate(told.findings()):
            moved = {c: (change, scatter, n) for c, change, scatter, n in f.moved}
            none = (NONE,) * 3
            findings.append(place(case) + [title, which, names(f), 1, f.shape, {UP: 1, DOWN: -1}.get(f.direction, 0), hour(f.since), hour(f.earliest), hour(f.latest),
                                           hour(f.found), NONE if f.open else hour(f.closed), int(f.returns),
                                           *stretches(f), len(f.falls),
                                           NONE if f.every is None else int(f.every * 1440 + 0.5)]
                            + [float(moved.get(c, none)[0]) for c in range(4)] + [float(moved.get(0, none)[1]), moved.get(0, none)[2], moved.get(1, none)[2]]
                            + [hour(t) for goal in (f.alarm, f.soffit) for t in (goal or (None,) * 3)])
    remarks = [place(case) + [which, names(e[2]), float(e[1] - FIRST_HOUR)] for case, told, _ in told_of for which, e in enumerate(e for e in told.book.events if e[0] == NOTED)]
    if remarks:
        write(folder, program, f"{prefix}-remarks", "Remarks beside the findings", columns + [("which", "remark from 0"), ("name", "of the remark"), ("told", "h")],
              inputs + [("which", "which"), ("name", "text name")], [("told", "watch.remark")], remarks, tolerance="1e-9", reason="whole hours")
    counted = [("findings", "count"), ("open", "count"), ("remarks", "count"), ("events", "count"), ("kinds", "kind of each event times its place"),
               ("hours", "h of each event times its place")]
    calculations = {"kinds": "watch.events.kinds.book", "hours": "watch.events.hours.book"}
    write(folder, program, f"{prefix}-events", "What the watch tells of constructed sites", columns + [("case", "what was done")] + counted, inputs,
          [(n, calculations.get(n, "watch." + n)) for n, _ in counted], events, tolerance="1e-9", reason="counts and whole hours")
    figures = [("named", "1 if the names are those"), ("shape", "0 step, 1 ramp, 2 either"), ("up", "1 or -1"), ("since", "h"), ("earliest", "h"), ("latest", "h"),
               ("found", "h"), ("closed", "h, -9999 for open"), ("returns", "count"), ("back", "h, begin of the last stretch"),
               ("stretches", "h, begin and three times end of each, 0 for open, times its place"), ("stood", "h, until 3000 h"), ("falls", "count"), ("recurrence", "min, -9999 for none")]
    moved = [(f"moved_{c}", f"change of {w}, -9999 for none") for c, w in enumerate(("velocity at its depth", "depth", "velocity", "flow"))]
    others = [("scatter", "usual scatter of the velocity at its depth"), ("hours_r", "count"), ("hours_d", "count")]
    goals = [(f"{goal}_{t}", "h, -9999 for none") for goal in ("alarm", "soffit") for t in ("time", "earliest", "latest")]
    checks = [(n, "watch.finding." + {"named": "names", "stretches": "stretches.book"}.get(n, n), *(["input.names = text names"] if n == "named" else [])) for n, _ in figures]
    checks += [(n, "watch.finding.moved", f"input.quantity = {c}") for c, (n, _) in enumerate(moved)]
    checks += [("scatter", "watch.finding.moved.scatter", "input.quantity = 0"), ("hours_r", "watch.finding.moved.hours", "input.quantity = 0"),
               ("hours_d", "watch.finding.moved.hours", "input.quantity = 1")]
    checks += [(n, "watch.finding.forecast." + n.split("_")[1], "input.goal = word " + n.split("_")[0]) for n, _ in goals]
    write(folder, program, f"{prefix}-findings", "Findings of the watch at constructed sites",
          columns + [("case", "what was done"), ("which", "finding from 0"), ("names", "of the finding")] + figures + moved + others + goals,
          inputs + [("which", "which")], checks, findings, tolerance="1e-8 relative or 1e-8", reason="whole hours; changes by medians of some logarithms; forecasts to a second")
    write(folder, program, f"{prefix}-kept", "What the watch knows before the last hour of constructed sites", columns + [("case", "what was done")]
          + [(n, "as kept" if which >= 0 else "sum of all, each times its place") for n, _, _, which in kept], inputs,
          [(n, "watch.kept", f"input.part = word {part}", f"input.key = word {key}", f"input.which = {which}") for n, part, key, which in kept], states,
          tolerance="1e-8 relative or 1e-7", reason="16 digits are given; sums of some hundred logarithms")
    return {title: told for _, told, title in told_of}


def cuts(folder, told_of):
    """A watch that is stopped often and goes on from the text of its state tells and knows what one tells and knows that is not."""
    columns = [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h, -9999 for a search"), ("to_hour", "h"),
               ("alarm", "m, 0 for none"), ("case", "what was done"), ("every", "readings"), ("begin", "h"), ("cease", "h")]
    inputs = [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour"),
              ("alarm", "alarm"), ("every", "every"), ("begin", "begin"), ("cease", "cease")]
    rows = []
    for title, told in told_of.items():
        book = told.book.events
        total = lambda of: float(sum((i + 1) * of(e) for i, e in enumerate(book)))
        rows.append(place(CASES[title]) + [title, *CUT[title], len(book), int(total(lambda e: e[0])), total(lambda e: e[1] - FIRST_HOUR), total(lambda e: e[2].since - FIRST_HOUR)]
                    + [told.kept.get(n, '') for n, *_ in KEPT])
    asked = [("events", "count", "events"), ("kinds", "kind of each event times its place", "kinds.book"), ("hours_told", "h of each event times its place", "hours.book"),
             ("since", "h of each event times its place", "since.book")]
    write(folder, PROGRAM, "watch-cut", "What the watch tells and knows that is stopped often", columns + [(n, unit) for n, unit, _ in asked]
          + [(n, "as kept" if which >= 0 else "sum of all, each times its place") for n, _, _, which in KEPT], inputs,
          [(n, "watch.cut." + calculation) for n, _, calculation in asked]
          + [(n, "watch.cut.kept", f"input.part = word {part}", f"input.key = word {key}", f"input.which = {which}") for n, part, key, which in KEPT], rows,
          tolerance="1e-8 relative or 1e-7", reason="16 digits are given; sums of some hundred logarithms")


def main(folder):
    cuts(folder, {title: told for title, told in tables(folder, PROGRAM, CASES, KEPT_OF, "watch").items() if title in CUT})
    columns = [("site", "the recipe"), ("changes", "rows of five"), ("zone", "zone"), ("diameter", "m"), ("from_hour", "h, -9999 for a search"), ("to_hour", "h"),
               ("alarm", "m, 0 for none")]
    inputs = [("site", "text site"), ("changes", "text changes"), ("zone", "text zone"), ("diameter", "diameter"), ("from", "from_hour"), ("to", "to_hour"),
              ("alarm", "alarm")]
    figures = [("last", "h, -9999 for none"), ("held", "count"), ("remarks", "count"), ("left_out", "count"), ("left_out_end", "count")]
    write(folder, PROGRAM, "watch-stamps", "Readings whose stamps leap ahead", columns + [("stamps", "s after the begin")] + figures, inputs + [("stamps", "text stamps")],
          [(n, "watch.stamps." + {"left_out": "left-out", "left_out_end": "left-out.end"}.get(n, n)) for n, _ in figures],
          [place(CASES["sound"]) + [text(stamps)] + by_stamps(stamps) for stamps in STAMPS], tolerance="1e-9", reason="counts and whole seconds")


if __name__ == "__main__":
    main(sys.argv[1])
