"""Part-full geometry of sections of arcs by numerical integration at 40 digits; writes profile-sections.csv.

Run: python3 profile_sections.py > ../resources/dev/runnel/hydraulics/section/profile-sections.csv   (needs mpmath)
Walls are written out as x(y) from radii and centres; nothing is shared with the library under test.
"""
from mpmath import mp, mpf, sqrt, quad, nstr

mp.dps = 40
R = mpf(1)


def arc(cx, cy, r, lo, hi, side=1):
    def length(y):
        angle = lambda t: mp.asin(max(min((t - cy) / r, mpf(1)), mpf(-1)))
        return r * (angle(y) - angle(lo))
    return (lo, hi, lambda y: cx + side * sqrt(max(r * r - (y - cy) ** 2, mpf(0))), length)


def three(r, s, k):
    """crown 1, sides s centred on springing level k, invert r"""
    cx = 1 - s
    ratio = r / (s - r)
    t = r + (r - k) * ratio
    return [arc(mpf(0), r, r, mpf(0), t), arc(cx, k, s, t, k), arc(mpf(0), k, R, k, k + 1)]


half = mpf(1) / 2
corner = (3 - sqrt(mpf(7))) / 4 * 2
shapes = {
    "egg-normal": three(half, mpf(3), mpf(2)),
    "egg-widened": three(half, mpf(3) / 2, (1 + sqrt(mpf(3))) / 2),
    "egg-depressed": three(half + sqrt(half), half, sqrt(half)),
    "egg-sharp": three(mpf(1) / 4, mpf(8) / 3, mpf(2)),
    "mouth": three(mpf(2), mpf(3) / 8, half),
    "horseshoe": [arc(mpf(0), mpf(2), mpf(2), mpf(0), corner), arc(mpf(-1), mpf(1), mpf(2), corner, mpf(1)),
                  arc(mpf(0), mpf(1), R, mpf(1), mpf(2))],
}


def integrate(f, lo, hi):
    # y = lo + (hi - lo) sin^2: takes the root singularities at both ends of an arc away
    def g(a):
        return f(lo + (hi - lo) * mp.sin(a) ** 2) * 2 * mp.sin(a) * mp.cos(a) * (hi - lo)
    return quad(g, [0, mp.pi / 4, mp.pi / 2])


print("# Half width 1, computed with mpmath by profile_sections.py: integrals over the walls.")
print("shape,depth,area,perimeter,width,centroid")
for name, pieces in shapes.items():
    height = pieces[-1][1]
    for ratio in ("1e-6", "0.003", "0.04", "0.12", "0.2", "0.31", "0.47", "0.5", "0.63", "0.78", "0.9", "0.97", "0.999", "1"):
        y = mpf(float(mpf(ratio) * height)) if ratio != "1" else height
        area = perimeter = moment = width = mpf(0)
        for lo, hi, x, length in pieces:
            top = min(y, hi)
            if top > lo:
                area += 2 * integrate(x, lo, top)
                perimeter += 2 * length(top)
                moment += 2 * integrate(lambda t: x(t) * (y - t), lo, top)
                width = 2 * x(top) if y <= hi else width
        print(",".join([name, repr(float(y))] + [nstr(v, 20) for v in (area, perimeter, width, moment / area)]))
