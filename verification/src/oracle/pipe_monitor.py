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


# A reading that comes without a quality counts as not checked.
UNCHECKED, POOR, SUSPECT, MISSING = 1, 3, 4, 5


def records(bulk=False):
    """Readings with faults among them, by the rules for each: the flow, the level, their qualities, and counts of each kind.

    Missing depth, or one beyond 50 m on either side: nothing known. Negative depth: the water stands at the sensor, suspect, and no flow, if the sensor lies at
    or under the bed; else nothing is known. Depth 0: dry if the sensor lies at or under the bed, else nothing known. At or under the
    bed: no flow, poor. From the soffit on the whole section flows.
    """
    if bulk:
        print("width,offset,bed,factor,n,gradient,depths,velocities,which,flow,missing")
    else:
        print("width,offset,bed,factor,n,gradient,times,depths,velocity_times,velocities,which,flow,level,flow_quality,level_quality,"
          "condition,count,velocity_condition,velocity_count,size,depths_alone,velocities_alone")
    nan = float("nan")
    for width, offset, bed, factor, t, d, vt, v in (
        ("0.6", "0.04", "0.1", "0.9", "0 120 240 360 480 600 720 840 960", "0.03 0.2 NaN -0.02 0 0.7 0.41 150 0.33",
         "0 120 240 360 480 600 720 840 960", "0.4 0.55 0.6 0.3 0.2 1.1 -0.25 0.7 0"),
        ("0.9", "0.15", "0.05", "1.05", "0 120 360 480 600 720", "0 0.31 -0.1 0.8 0.6 0.2", "0 120 240 480 600 960", "0.3 0.62 0.7 NaN 0.44 0.5"),
        ("0.45", "0", "0", "1", "0 120 240 360", "0 0.2 0 -0.01", "0 120 240 360", "0 0.7 0.3 NaN"),
        # Close to the soffit, by a rounding too, and close to what no depth can be.
        ("0.9", "0.15", "0.05", "1.05", "0 120 240 360 480 600 720 840 960 1080 1200", "0.8 0.7501 0.75 0.7499 49.9 50 50.2 52.4 -49.9 -51 0.3",
         "0 120 240 360 480 600 720 840 960 1080 1200", "0.3 0.62 0.7 0.64 0.44 0.5 0.55 0.31 0.4 0.6 0.8"),
        ("0.45", "0", "0", "1", "0 120 240 360 480 600", "0.46 0.45 49.9 50 50.2 52.4", "0 120 240 360 480 600", "0.2 0.7 0.3 0.4 0.5 0.6"),
    ):
        high, off, b, k = mpf(width), mpf(offset), mpf(bed), mpf(factor)
        clean = walls("circular", width)
        depth_at = dict(zip(map(int, t.split()), map(float, d.split())))
        velocity_at = dict(zip(map(int, vt.split()), map(float, v.split())))
        clock = sorted(set(depth_at) | set(velocity_at))
        sees_all = off <= b
        results = []
        for when in clock:
            y, u = depth_at.get(when, nan), velocity_at.get(when, nan)
            level, flow, quality, level_quality = None, None, MISSING, MISSING
            if y != y:
                kind = "NO_DEPTH"
            elif abs(y) > 50:
                kind = "IMPOSSIBLE"
            elif y < 0:
                kind = "NEGATIVE"
                if sees_all:
                    level, flow, quality, level_quality = off, mpf(0), SUSPECT, SUSPECT
            elif y == 0:
                kind = "DRY" if sees_all else "BELOW_SENSOR"
                if sees_all:
                    level, flow, level_quality = off, mpf(0), UNCHECKED
                    quality = UNCHECKED if u != u or u == 0 else POOR
            else:
                level, level_quality = mpf(str(y)) + off, UNCHECKED
                if level <= b:
                    kind, flow, quality = "BELOW_BED", mpf(0), POOR
                else:
                    kind = "SURCHARGED" if level > high else "PART_FULL"
                    if u == u:
                        top = min(level, high)
                        area = clean.area(top) - (clean.area(b) if b else 0)
                        flow, quality = k * mpf(str(u)) * area, UNCHECKED
            way = "NO_VELOCITY" if u != u else "FORWARD" if u > 0 else "STANDING" if u == 0 else "REVERSE"
            results.append((kind, way, flow, level, quality, level_quality))
        kinds, ways = [r[0] for r in results], [r[1] for r in results]
        for i, (kind, way, flow, level, quality, level_quality) in enumerate(results):
            if bulk:
                if t == vt:
                    print(f"{width},{offset},{bed},{factor},0.013,0.002,{d},{v},{i},{'' if flow is None else show(flow)},{int(flow is None)}")
                continue
            cell = lambda x: "" if x is None else show(x)
            print(f"{width},{offset},{bed},{factor},0.013,0.002,{t},{d},{vt},{v},{i},{cell(flow)},{cell(level)},{quality},{level_quality},"
                  f"{kind},{kinds.count(kind)},{way},{ways.count(way)},{len(clock)},{len(set(depth_at) - set(velocity_at))},{len(set(velocity_at) - set(depth_at))}")


def uniform():
    """Flow of a depth by Manning's law, above a bed too."""
    print("width,offset,bed,factor,n,gradient,depth,flow,velocity,product")
    for width, offset, bed, factor, n, s, depth in (("0.6", "0.04", "0.1", "0.9", "0.013", "0.002", "0.21"), ("0.45", "0", "0", "1.1", "0.015", "0.006", "0.3"), ("1.2", "0.1", "0", "0.85", "0.012", "0.0009", "0.7")):
        clean, b = walls("circular", width), mpf(bed)
        level = mpf(depth) + mpf(offset)
        area = clean.area(level) - (clean.area(b) if b else 0)
        r = area / clean.perimeter(level, b)
        u = r ** (mpf(2) / 3) * sqrt(mpf(s)) / mpf(n)
        print(f"{width},{offset},{bed},{factor},{n},{s},{depth}," + show(u * area) + ",0.37," + show(mpf(factor) * mpf("0.37") * area))


def surcharges():
    """Periods above a level: from its first reading above to the first one not above, or to its last known one before a gap."""
    print("times,levels,limit,gap,which,count,ended,start,end,peak,peak_time,readings,complete")
    for times, levels, limit, gap in (
        ("0 120 240 360 480 600 720 840 960 1080 2400 2520 2640 2760 2880", "0.4 0.5 0.7 0.9 0.8 0.6 0.5 0.65 0.75 0.7 0.72 0.5 0.3 0.8 0.81", "0.6", "900"),
        ("0 120 240 360 480 2000 2120 2240 2360", "0.65 0.7 0.61 0.4 0.9 0.8 0.2 0.60000000001 0.3", "0.6", "300"),
    ):
        t, y, top, longest = list(map(int, times.split())), list(map(float, levels.split())), float(limit), int(gap)
        periods, open_one = [], None
        for i, (when, level) in enumerate(zip(t, y)):
            follows = i > 0 and when - t[i - 1] <= longest
            above = level > top * (1 + 1e-9)
            if open_one and not (follows and above):
                open_one["end"], open_one["seen"] = (when, True) if follows else (t[i - 1], False)
                periods.append(open_one)
                open_one = None
            if above:
                if not open_one:
                    open_one = dict(start=when, from_below=follows, all=[])
                open_one["all"].append((level, when))
        ended = len(periods)
        if open_one:
            open_one["end"], open_one["seen"] = t[-1], False
            periods.append(open_one)
        for k, p in enumerate(periods):
            peak = max(level for level, _ in p["all"])
            first = min(when for level, when in p["all"] if level == peak)
            print(f"{times},{levels},{limit},{gap},{k},{len(periods)},{ended},{p['start']},{p['end']}," + show(mpf(str(peak)) - mpf(limit))
                  + f",{first},{len(p['all'])},{1 if p['from_below'] and p['seen'] else 0}")


def histories():
    """Settings by date: of two that overlap in one quantity the later one of the list counts. Readings a minute apart."""
    print("width,offset,bed,factor,n,gradient,settings,depths,velocities,which,flow,level,use,ratio,standard")
    for width, offset, bed, factor, n, s, settings, depths, velocities in (
        ("0.6", "0.02", "0.05", "0.9", "0.013", "0.002",
         (("bed", 2, 5, "0.11"), ("offset", 4, 7, "0.07"), ("n", 3, 9, "0.0171"), ("bed", 4, 8, "0")),
         "0.21 0.24 0.27 0.31 0.33 0.62 0.4 0.37 0.29 0.22", "0.4 0.45 0.5 0.55 0.6 0.9 0.7 -0.3 0.5 0.45"),
        ("1.1", "0", "0", "1.05", "0.0149", "0.0008",
         (("offset", 1, 6, "0.13"), ("offset", 2, 3, "0.04"), ("bed", 0, 3, "0.2")),
         "0.31 0.24 0.27 0.41 1.03 0.62 0.4", "0.3 0.35 0.41 0.45 0.61 0.39 0.7"),
    ):
        clean = walls("circular", width)
        high = clean.height
        area_of = lambda z: clean.area(z) if z > 0 else mpf(0)
        ud, uv = mpf("0.004"), mpf("0.03")
        words = ";".join(" ".join(map(str, each)) for each in settings)
        for i, (d, v) in enumerate(zip(depths.split(), velocities.split())):
            now = {"bed": bed, "offset": offset, "n": n}
            for what, begin, end, value in settings:
                if begin <= i < end:
                    now[what] = value
            b, k, rough = mpf(now["bed"]), mpf(factor), mpf(now["n"])
            level = mpf(d) + mpf(now["offset"])
            top = min(level, high)
            area = area_of(top) - area_of(b)
            radius = area / clean.perimeter(top, b) if b else area / clean.perimeter(top)
            law = lambda r: r ** (mpf(2) / 3) * sqrt(mpf(s)) / rough
            flow = k * mpf(v) * area
            brim = law(area_of(high) / clean.perimeter(high)) * area_of(high)
            width_there = diff(area_of, level) if level < high else mpf(0)
            u = sqrt((k * mpf(v) * width_there * ud) ** 2 + (k * area * uv) ** 2)
            print(f"{width},{offset},{bed},{factor},{n},{s},{words},{depths},{velocities},{i},"
                  + show(flow, level, flow / brim, k * mpf(v) / law(radius), u))


TABLES = {
    "monitor-histories": histories,
    "monitor-readings": monitors,
    "monitor-fullness-time": fullness,
    "monitor-records": records,
    "monitor-bulk": lambda: records(bulk=True),
    "monitor-uniform": uniform,
    "surcharge-periods": surcharges,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
