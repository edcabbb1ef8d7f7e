"""Independent geometry of cross-sections: Python 3 with mpmath, no code in common with the library.

    python3 sections.py NAME > NAME.csv

writes one of the tables named in TABLES below. A wall is a list of points joined by straight lines or by arcs of a stated radius; area
and centroid are quadratures of the width over the level, the perimeter is a quadrature of the length of the wall. 30 digits
inside, 15 in the file.
"""

import sys

from mpmath import asin, findroot, mp, mpf, nstr, quad, sqrt

mp.dps = 30
COLUMNS = "shape,width,height,fall,channel_depth,chamber_width,bench_slope,wall_height,side_slope,levels,widths,left,right"


class Line:
    def __init__(self, x0, y0, x1, y1):
        self.x0, self.low, self.x1, self.top = map(mpf, (x0, y0, x1, y1))

    def x(self, y):
        return self.x0 + (self.x1 - self.x0) * (y - self.low) / (self.top - self.low)

    def length(self, y):
        if self.top == self.low:
            return abs(self.x1 - self.x0)
        return (y - self.low) * sqrt(1 + ((self.x1 - self.x0) / (self.top - self.low)) ** 2)


class Arc:
    """Part of a circle around (a, b) of radius r, on its right side (hand 1) or its left (hand -1), between two levels."""

    def __init__(self, a, b, r, low, top, hand=1):
        self.a, self.b, self.r, self.low, self.top, self.hand = mpf(a), mpf(b), mpf(r), mpf(low), mpf(top), hand

    def x(self, y):
        return self.a + self.hand * sqrt(max(mpf(0), self.r**2 - (y - self.b) ** 2))

    def length(self, y):
        # dl = r dt with the angle t of the point above the horizontal through the centre
        angle = lambda z: asin(max(mpf(-1), min(mpf(1), (z - self.b) / self.r)))
        return quad(lambda t: self.r, [angle(self.low), angle(y)])


class Walls:
    """A right wall and a left one (mirrored if not given), both from level 0; open ones go on for ever."""

    def __init__(self, right, left=None, open=False):
        self.right, self.left, self.open = right, left or right, open
        self.height = right[-1].top

    def levels(self):
        return sorted({p.low for p in self.right + self.left} | {p.top for p in self.right + self.left})

    @staticmethod
    def piece(wall, y):
        return next((p for p in wall if p.low < p.top and p.low <= y <= p.top), wall[-1])

    def width(self, y):
        return self.piece(self.right, y).x(y) + self.piece(self.left, y).x(y)

    def cuts(self, low, y):
        return [low] + [z for z in self.levels() if low < z < y] + [y]

    def area(self, y, bed=mpf(0)):
        return quad(self.width, self.cuts(bed, y))

    def centroid(self, y, bed=mpf(0)):
        return quad(lambda z: (y - z) * self.width(z), self.cuts(bed, y)) / self.area(y, bed)

    def wet(self, y):
        """Length of both walls below a level, without the floor."""
        total = mpf(0)
        for wall in (self.right, self.left):
            for p in wall:
                if p.low < y or (p is wall[0] and p.low == p.top):
                    total += p.length(y if p is wall[-1] and self.open else min(y, p.top))
        return total

    def perimeter(self, y, bed=mpf(0)):
        floor = self.width(bed)
        lid = self.width(y) if not self.open and y == self.height else 0
        return self.wet(y) - (self.wet(bed) if bed > 0 else 0) + floor + lid


def points(*xy):
    return [Line(*a, *b) for a, b in zip(xy, xy[1:])]


def ovoid(r_crown, springing, r_side, r_invert, height):
    """Crown and invert on the middle line; the side circle touches both: its centre lies at the level of the crown's centre."""
    a = r_crown - r_side
    # the invert touches the side from inside: distance of centres = r_side - r_invert, on one straight line with the touching point
    gap = sqrt((r_side - r_invert) ** 2 - a**2)
    centre = springing - gap
    assert abs(centre - r_invert) < mpf(10) ** -25, (centre, r_invert)
    touch = springing - gap * r_side / (r_side - r_invert)
    return [Arc(0, r_invert, r_invert, 0, touch), Arc(a, springing, r_side, touch, springing), Arc(0, springing, r_crown, springing, height)]


def side_radius(r_crown, springing, r_invert):
    """The radius at which the side circle touches crown and invert, found by search."""
    f = lambda s: (s - r_invert) ** 2 - (s - r_crown) ** 2 - (springing - r_invert) ** 2
    return findroot(f, 3 * r_crown)


def upside_down(wall, height):
    turned = []
    for p in reversed(wall):
        turned.append(Arc(p.a, height - p.b, p.r, height - p.top, height - p.low, p.hand))
    return turned


def of(row):
    """The walls of a row: a dictionary by COLUMNS."""
    shape = row["shape"]
    n = lambda key: mpf(row[key])
    w = n("width")
    r = w / 2
    far = mpf(1000)
    if shape == "circular-mm":
        d = w / 1000
        return Walls([Arc(0, d / 2, d / 2, 0, d)])
    if shape == "circular":
        return Walls([Arc(0, r, r, 0, w)])
    if shape == "rectangular":
        return Walls(points((r, 0), (r, far)), open=True)
    if shape == "box":
        return Walls(points((r, 0), (r, n("height"))))
    if shape == "trapezoidal":
        return Walls(points((r, 0), (r + far * n("side_slope"), far)), open=True)
    if shape == "egg":
        return Walls(ovoid(r, 2 * r, side_radius(r, 2 * r, r / 2), r / 2, 3 * r))
    if shape == "inverted-egg":
        return Walls(upside_down(ovoid(r, 2 * r, side_radius(r, 2 * r, r / 2), r / 2, 3 * r), 3 * r))
    if shape == "horseshoe":
        # side: around the opposite springing point, radius w; invert: around the crown, radius w
        meet = findroot(lambda y: -r + sqrt(w**2 - (y - r) ** 2) - sqrt(w**2 - (y - w) ** 2), w / 10)
        return Walls([Arc(0, w, w, 0, meet), Arc(-r, r, w, meet, r), Arc(0, r, r, r, w)])
    if shape == "u":
        return Walls([Arc(0, r, r, 0, r), Line(r, r, r, far)], open=True)
    if shape == "covered-u":
        return Walls([Arc(0, r, r, 0, r), Line(r, r, r, n("height"))])
    if shape == "v":
        return Walls(points((0, 0), (r, n("fall")), (r, far)), open=True)
    if shape == "covered-v":
        return Walls(points((0, 0), (r, n("fall")), (r, n("height"))))
    if shape == "arch":
        t = n("wall_height")
        straight = [Line(r, 0, r, t)] if t > 0 else []
        return Walls(straight + [Arc(0, t, r, t, t + r)])
    if shape == "benched":
        d, half = n("channel_depth"), n("chamber_width") / 2
        foot = d + (half - r) * n("bench_slope")
        return Walls([Arc(0, r, r, 0, r)] + points((r, r), (r, d), (half, foot), (half, far)), open=True)
    if shape in ("tabulated", "open-tabulated"):
        z = [mpf(t) for t in row["levels"].split()]
        b = [mpf(t) / 2 for t in row["widths"].split()]
        wall = points(*zip(b, z))
        if shape == "tabulated":
            return Walls(wall)
        last = wall[-1]
        wall[-1] = Line(last.x0, last.low, last.x0 + (last.x1 - last.x0) * far, last.low + (last.top - last.low) * far)
        return Walls(wall, open=True)
    if shape == "lopsided":
        sides = []
        for key, sign in (("right", 1), ("left", -1)):
            t = [mpf(v) for v in row[key].split()]
            sides.append(points(*[(sign * x, y) for x, y in zip(t[::2], t[1::2])]))
        return Walls(*sides)
    raise ValueError(shape)


def rows():
    """Every shape with measures and depths at odd places."""
    for shape, measures, depths in (
        ("circular", {"width": "0.53"}, "0.003 0.07 0.19 0.31 0.44 0.517"),
        ("circular-mm", {"width": "225"}, "0.041 0.187"),
        ("rectangular", {"width": "0.83"}, "0.017 0.39 2.3"),
        ("box", {"width": "1.3", "height": "0.9"}, "0.05 0.41 0.87"),
        ("trapezoidal", {"width": "0.7", "side_slope": "1.3"}, "0.04 0.53 1.9"),
        ("egg", {"width": "0.61"}, "0.02 0.05 0.13 0.37 0.58 0.66 0.83 0.9"),
        ("inverted-egg", {"width": "0.74"}, "0.03 0.16 0.35 0.52 0.81 1.06 1.093"),
        ("horseshoe", {"width": "1.9"}, "0.06 0.2 0.31 0.83 1.22 1.77"),
        ("u", {"width": "0.47"}, "0.03 0.17 0.22 0.29 1.4"),
        ("covered-u", {"width": "0.6", "height": "0.97"}, "0.08 0.27 0.41 0.9"),
        ("v", {"width": "1.1", "fall": "0.13"}, "0.05 0.11 0.21 1.7"),
        ("covered-v", {"width": "1.4", "fall": "0.22", "height": "1.3"}, "0.07 0.21 0.35 1.21"),
        ("arch", {"width": "1.2", "wall_height": "0.37"}, "0.05 0.33 0.52 0.81 0.95"),
        ("arch", {"width": "0.9", "wall_height": "0"}, "0.06 0.27 0.42"),
        ("benched", {"width": "0.3", "channel_depth": "0.15", "chamber_width": "1.2", "bench_slope": "0.083"}, "0.04 0.13 0.17 0.183 0.25 1.3"),
        ("benched", {"width": "0.45", "channel_depth": "0.37", "chamber_width": "1.8", "bench_slope": "0"}, "0.09 0.28 0.36 0.39 0.7"),
        ("tabulated", {"levels": "0 0.13 0.4 0.4 0.9 1.3", "widths": "0.2 0.5 0.7 1.1 1.3 0.4"}, "0.05 0.21 0.37 0.47 0.81 1.02 1.23"),
        ("tabulated", {"levels": "0 0.3 0.8 1.1", "widths": "0 0.9 1.2 0"}, "0.07 0.22 0.51 0.93 1.06"),
        ("open-tabulated", {"levels": "0 0.11 0.5 0.9", "widths": "0 0.6 0.8 1.7"}, "0.06 0.29 0.72 1.9"),
        ("lopsided", {"left": "-0.2 0 -0.5 0.4 -0.6 1.1", "right": "0.1 0 0.7 0.27 0.9 0.8 0.4 1.1"}, "0.11 0.33 0.58 0.93 1.05"),
    ):
        row = {key: "0" for key in COLUMNS.split(",")}
        row.update(measures, shape=shape)
        yield row, of(row), depths.split()


def cells(row):
    return ",".join(row[key] for key in COLUMNS.split(","))


def write(*values):
    return ",".join(nstr(v, 15) for v in values)


def shapes():
    print(COLUMNS + ",depth,area,perimeter,top_width,centroid,radius,mean_depth")
    for row, walls, depths in rows():
        for depth in depths:
            y = mpf(depth)
            a, p, t = walls.area(y), walls.perimeter(y), walls.width(y)
            print(f"{cells(row)},{depth},{write(a, p, t, walls.centroid(y), a / p, a / t)}")


def full():
    print(COLUMNS + ",height_found,area,perimeter,centroid,widest")
    for row, walls, _ in rows():
        if not walls.open:
            h = walls.height
            # a drawn section is asked for its widest place, a circle has a bore
            widest = max(walls.width(z) for lo, hi in zip(walls.levels(), walls.levels()[1:]) for z in [lo + (hi - lo) * k / 400 for k in range(1, 400)] + [lo, hi])
            for p in walls.right:
                if isinstance(p, Arc) and p.low <= p.b <= p.top:
                    widest = max(widest, walls.width(p.b))
            print(f"{cells(row)},{write(h, walls.area(h), walls.perimeter(h), walls.centroid(h))},{'' if row['shape'].startswith('circular') else write(widest)}")


def beds():
    print(COLUMNS + ",bed,depth,area,perimeter,top_width,centroid,radius,level")
    for row, walls, depths in rows():
        for bed, depth in zip(depths[::2], depths[1::2]):
            b = mpf(bed) * mpf("0.87")
            y = mpf(depth) - b
            a, p = walls.area(b + y, b), walls.perimeter(b + y, b)
            print(f"{cells(row)},{nstr(b, 15)},{nstr(y, 15)},{write(a, p, walls.width(b + y), walls.centroid(b + y, b), a / p, b + y)}")


def constants():
    """Full shapes by construction, of a half width of 1: six decimals."""
    print("shape,h,a,p,r")
    one = mpf(1)
    for shape, walls in (
        ("circular", Walls([Arc(0, one, one, 0, 2)])),
        ("egg", Walls(ovoid(one, 2 * one, side_radius(one, 2 * one, one / 2), one / 2, 3 * one))),
        ("horseshoe", of({**{key: "0" for key in COLUMNS.split(",")}, "shape": "horseshoe", "width": "2"})),
    ):
        h = walls.height
        values = (h, walls.area(h), walls.perimeter(h), walls.area(h) / walls.perimeter(h))
        print(shape + "," + ",".join(f"{float(v):.6f}" for v in values))


def rounded_full():
    """Full sections of a crown of radius 1, sides and an invert that touch it and each other, from the three radii alone."""
    from mpmath import atan2, pi

    print("shape,h,a,p,r")
    for shape, side, invert in (("widened-egg", mpf("1.5"), mpf("0.5")), ("depressed-egg", mpf("0.5"), mpf("0.5") + 1 / sqrt(mpf(2))), ("mouth", mpf(3) / 8, mpf(2)), ("sharp-egg", mpf(8) / 3, mpf("0.25"))):
        # Circles that touch from inside have centres as far apart as their radii differ; the sides begin level with the crown's centre.
        centre = (-1 if side > 1 else 1) * sqrt((side - invert) ** 2 - (side - 1) ** 2)
        turn = atan2(abs(centre), abs(side - 1))
        touch, bottom = -side * mp.sin(turn), centre - invert
        half = quad(lambda y: sqrt(1 - y * y), [0, 1]) + quad(lambda y: 1 - side + sqrt(side**2 - y * y), [touch, 0]) + quad(lambda y: sqrt(max(invert**2 - (y - centre) ** 2, 0)), [bottom, touch])
        perimeter = pi + 2 * side * turn + 2 * invert * (pi / 2 - turn)
        print(f"{shape},{nstr(1 - bottom, 15)},{nstr(2 * half, 15)},{nstr(perimeter, 15)},{nstr(2 * half / perimeter, 15)}")


TABLES = {
    "shapes-full": rounded_full,"section-shapes": shapes, "section-shapes-full": full, "section-beds": beds, "shapes-constructed": constants}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
