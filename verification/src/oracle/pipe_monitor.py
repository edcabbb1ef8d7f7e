"""Independent flow from depth and velocity readings, and its uncertainty: Python 3 with mpmath, no code in common with the library.

    python3 pipe_monitor.py NAME > NAME.csv

writes one of the tables named in TABLES below. Areas are the quadratures of sections.py; sensitivities are numerical derivatives
of the discharge, where another height means a section scaled alike in all its measures with the bed left where it is.
30 digits inside, 15 in the file.
"""

import sys

from mpmath import diff, mp, mpf, nstr, sqrt

import sections

mp.dps = 30


def show(*values):
    return ",".join(nstr(mpf(v), 15) for v in values)


def walls(shape, width):
    row = {key: "0" for key in sections.COLUMNS.split(",")}
    row.update(shape=shape, width=width)
    return sections.of(row)


SITES = (
    # shape, width, sensor above the invert, bed, velocity factor, n, gradient
    ("circular", "0.45", "0", "0", "1", "0.013", "0.0047"),
    ("circular", "0.9", "0.033", "0.071", "0.87", "0.0123", "0.0021"),
    ("circular", "1.35", "0.21", "0.083", "0.93", "0.0147", "0.00083"),
    ("egg", "0.61", "0.05", "0.031", "1.07", "0.0117", "0.0063"),
    ("horseshoe", "1.9", "0.14", "0", "0.9", "0.0161", "0.0013"),
)
READINGS = (("0.043", "0.31"), ("0.137", "0.83"), ("0.29", "-0.27"), ("0.38", "1.21"), ("2.7", "0.67"))
SENSORS = (("0.0031", "0.023", "0.0047", "0.037"), ("0.011", "0.051", "0.013", "0.021"))


def monitors():
    print("shape,width,offset,bed,factor,n,gradient,depth,velocity,u_depth,u_velocity,u_height,u_factor,coverage,"
          "level,area,mean_velocity,discharge,radius,uniform,from_depth,from_velocity,from_height,from_factor,standard,relative,expanded,fullness,use,ratio")
    for i, site in enumerate(SITES):
        shape, width, offset, bed, factor, n, slope = site
        b, k, s = mpf(bed), mpf(factor), mpf(slope)
        clean = walls(shape, width)
        high = clean.height

        def area(level, height=high):
            """Of the section scaled to a height, above the bed, up to a level or the soffit."""
            scale = height / high
            part = lambda z: scale**2 * clean.area(z / scale) if z > 0 else mpf(0)
            return part(min(level, height)) - part(b)

        law = lambda r, rough: r ** (mpf(2) / 3) * sqrt(s) / mpf(rough)
        brim = law(clean.area(high) / clean.perimeter(high), n) * clean.area(high)
        for j, (depth, velocity) in enumerate(READINGS):
            ud, uv, uh, uf = SENSORS[(i + j) % 2]
            v, level = mpf(velocity), mpf(depth) + mpf(offset)
            a = area(level)
            q = k * v * a
            top = min(level, high)
            r = a / clean.perimeter(top, b)
            by = (
                abs(diff(lambda z: k * v * area(z), level)) * mpf(ud),
                abs(diff(lambda x: k * x * a, v)) * mpf(uv),
                abs(diff(lambda h: k * v * area(level, h), high)) * mpf(uh),
                abs(diff(lambda x: x * v * a, k)) * mpf(uf),
            )
            u = sqrt(sum(x**2 for x in by))
            print(",".join(site) + f",{depth},{velocity},{ud},{uv},{uh},{uf},1.96,"
                  + show(level, a, k * v, q, r, law(r, n), *by, u, u / abs(q), mpf("1.96") * u, level / high, q / brim, k * v / law(r, n)))


def fullness():
    """Time above a share of the height: each reading holds until the next, gaps longer than allowed count for nothing."""
    print("width,offset,share,gap,times,depths,above,covered")
    for width, offset, share, gap, times, depths in (
        ("0.45", "0.02", "0.71", "400", "0 120 300 610 1300 1420 1800 1950 2300", "0.21 0.305 0.33 0.29 0.4 0.37 0.2 0.51 0.12"),
        ("0.9", "0", "0.37", "700", "0 300 600 900 1700 2000 2350 2600", "0.11 0.35 0.48 0.31 0.5 0.7 0.2 0.9"),
    ):
        t = [mpf(x) for x in times.split()]
        held = [(b - a, mpf(d) + mpf(offset) > mpf(share) * mpf(width)) for a, b, d in zip(t, t[1:], depths.split()) if b - a <= mpf(gap)]
        known = sum(x for x, _ in held)
        print(f"{width},{offset},{share},{gap},{times},{depths}," + show(sum(x for x, up in held if up) / known, known / (t[-1] - t[0])))


TABLES = {"monitor-readings": monitors, "monitor-fullness-time": fullness}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
