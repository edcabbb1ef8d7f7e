"""Independent computation of what structures answer at their corners: another gravity, shares of the tailwater, and limits that are
missed by rounding or by a little more. Python with mpmath; the discharges come from structure_limits.py, no code in common with the
library.

    python3 structure_corners.py NAME > NAME.csv

writes one of the tables named in TABLES below.
"""

import sys
from pathlib import Path

from mpmath import mpf, nstr, sqrt

from structure_limits import FOOT, G, conjugate, drowned, free


def cells(*all):
    print(",".join(c if isinstance(c, str) else str(c) if isinstance(c, int) else nstr(c, 17) for c in all))


PLACES = (
    "cipolletti 0.9 0 2.7 0.5 0.23 0", "plate 0.5 0 1.4 0.3 0.21 0.08", "rehbock 0 0 1.1 0.4 0.3 0", "notch 90 0 1.2 0.4 0.25 0", "square 0 0.8 1 0.4 0.2 0",
    "crump 0 0 2 0.4 0.3 0.27", "khafagi 0.3 0 0 0 0.4 0", "orifice 0.2 0 0 0 0.7 0.4", "gate 0.25 0 2 0 1.1 0.6",
)


def gravity():
    """Discharges at one head grow with the root of gravity."""
    print("kind,size,length,B,p,head,tailwater,gravity,q")
    for k, line in enumerate(PLACES):
        kind, *n = line.split()
        size, L, B, p, h, t = (mpf(x) for x in n)
        g = (mpf("9.78"), mpf("9.832"), mpf("9.71"))[k % 3]
        q = drowned(kind, size, L, B, p, h, t) if t > 0 else free(kind, size, L, B, p, h)
        cells(kind, *(nstr(x, 12) for x in (size, L, B, p, h, t, g)), nstr(q * sqrt(g / G), 15))


def shares():
    """Highest share of the head that the tailwater may have without effect."""
    print("kind,size,length,B,p,head,share")
    rows = [("khafagi", "0.3", "0.4", mpf("0.8")), ("parshall", "0.0254", "0.1", mpf("0.5")), ("parshall", "0.0762", "0.1", mpf("0.5")), ("parshall", "0.1524", "0.2", mpf("0.6")),
            ("parshall", "0.9", "0.3", mpf("0.7")), ("parshall", "3.66", "0.5", mpf("0.8"))]
    for kind, size, h, share in rows:
        cells(kind, size, "0", "0", "0", h, nstr(share, 15))
    for size, B, p, h in (("0.9", "1.5", "0.4", "0.3"), ("1", "0.8", "0.2", "0.5")):
        cells("broad-known", size, "0", B, p, h, nstr(known(mpf(size), mpf(B), mpf(p), mpf(h)) * mpf(2) / 3 / mpf(h), 15))
    for size, B, h in (("0.25", "2", "0.3"), ("0.25", "2", "0.49"), ("0.25", "2", "0.51"), ("0.1", "1", "0.9")):
        a, depth = mpf(size), max(mpf(h), 2 * mpf(size))
        q = free("gate", a, 0, mpf(B), 0, depth) / mpf(B)
        cells("gate", size, "0", B, "0", h, nstr(min(mpf(1), conjugate(mpf("0.61") * a, q) / depth), 15))


def known(cd, B, p, h):
    """Total head over a broad crest as wide as its channel."""
    H = h
    for _ in range(400):
        q = cd * B * sqrt(G) * (2 * H / 3) ** mpf("1.5")
        H = h + (q / (B * (h + p))) ** 2 / (2 * G)
    return H


def brinks():
    """Free brink of a level rectangular channel: critical depth is the brink depth over 0.715."""
    print("size,head,q")
    for b, y in (("0.5", "0.12"), ("2", "0.31"), ("1.2", "9000"), ("1.2", "9990")):
        cells(b, y, nstr(mpf(b) * sqrt(G) * (mpf(y) / mpf("0.715")) ** mpf("1.5"), 15))


def rounding():
    """A limit counts as kept when it is missed by 1e-12 of itself at most."""
    print("kind,size,length,B,p,head,outside")
    near = [mpf(e) for e in ("5e-13", "8e-13", "2e-12", "1e-11", "1e-9", "1e-3", "-1e-9")]
    for e in near:
        missed = 1 if e > mpf("1e-12") else 0
        # least head 0.06, greatest 0.60 (Cipolletti); greatest 0.75 (Rehbock)
        cells("cipolletti", "0.9", "0", "2.7", "0.5", nstr(mpf("0.06") * (1 - e), 17), missed)
        cells("cipolletti", "3", "0", "9", "2", nstr(mpf("0.60") * (1 + e), 17), missed)
        cells("rehbock", "0", "0", "1.1", "4", nstr(mpf("0.75") * (1 + e), 17), missed)
        # crest height at least twice the head; h/p at most 3
        cells("cipolletti", "0.9", "0", "2.7", "0.5", nstr(mpf("0.25") * (1 + e), 17), missed)
        cells("crump", "0", "0", "4", "0.1", nstr(mpf("0.3") * (1 + e), 17), missed)


def blinded():
    """A loss below that of the clean screen, at it, above it."""
    print("thickness,gap,angle,velocity,loss,below")
    for s, b, v in (("0.006", "0.010", "0.7"), ("0.01", "0.02", "1.1"), ("0.008", "0.04", "0.5")):
        clean = mpf("2.42") * (mpf(s) / mpf(b)) ** (mpf(4) / 3) * mpf(v) ** 2 / (2 * G)
        for share in ("0.98", "1.02", "0.5", "3"):
            cells(s, b, "90", v, nstr(clean * mpf(share), 15), 1 if mpf(share) < 1 else 0)


def level_culverts():
    """Inlets of level barrels: those of table culvert-headwater without the 0.5 S D of their fall."""
    rows = (Path(__file__).resolve().parents[1] / "main/resources/dev/runnel/verification/tables/hydraulics/culvert-headwater.csv").read_text().splitlines()[1:]
    print("edge,shape,width,height,discharge,headwater")
    done = {}
    for row in rows:
        edge, shape, width, height, s, q, hw = row.split(",")[:7]
        # the fall of a mitred edge counts the other way, the second form of the law knows none; where all was taken off nothing is known
        if "mitred" in edge or edge.startswith(("box-chamfered", "box-bevel")) or mpf(hw) == 0 or done.get(edge, 0) == 2:
            continue
        done[edge] = done.get(edge, 0) + 1
        cells(edge, shape, width, height, q, nstr(mpf(hw) + mpf(s) * mpf(height) / 2, 14))


def dry_culverts():
    """No water stands before an inlet that takes none, whatever its barrel falls."""
    edges = {}
    for row in (Path(__file__).resolve().parents[1] / "main/resources/dev/runnel/verification/tables/hydraulics/culvert-headwater.csv").read_text().splitlines()[1:]:
        edge, shape, width, height = row.split(",")[:4]
        edges.setdefault(edge, (shape, width, height))
    print("edge,shape,width,height,gradient,headwater")
    for edge, size in edges.items():
        cells(edge, *size, "0.02", 0)


def thin_crests():
    """Heads about twice the boundary layer, where its share changes from 1 - d/h to h/4d."""
    print("kind,size,length,B,p,head,q")
    for L, B, p in (("0.8", "1", "0.4"), ("2", "3", "0.5")):
        for share in ("1.5", "1.97", "2.03", "2.08", "2.5"):
            h = mpf(share) * mpf("0.003") * mpf(L)
            cells("round", "0", L, B, p, nstr(h, 12), nstr(free("round", mpf(0), mpf(L), mpf(B), mpf(p), mpf(nstr(h, 12))), 15))


TABLES = {
    "culvert-dry": dry_culverts,
    "crests-of-thin-water": thin_crests,
    "culvert-level": level_culverts,
    "structures-at-gravity": gravity,
    "structures-modular-shares": shares,
    "brinks-rectangular": brinks,
    "structures-rounded-limits": rounding,
    "screens-below-clean": blinded,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
