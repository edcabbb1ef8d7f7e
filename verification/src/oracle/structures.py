"""Independent computation of weirs, flumes, gates, outfalls and screens: Python with mpmath, no code in common with the library.

    python3 structures.py NAME > NAME.csv

writes one of the tables named in TABLES below. Published laws are solved by fixed-point iteration or bisection with 30 digits;
critical flow of a throat is the greatest flow of its energy, found by golden section and not by its equation; the flow along a
side weir is integrated by Runge and Kutta; screens are solved from both sides.
"""

import sys

from mpmath import asin, diff, exp, log, mp, mpf, nstr, pi, quad, radians, sin, sqrt

mp.dps = 30
G = mpf("9.80665")
FOOT = mpf("0.3048")


def show(*cells):
    print(",".join(c if isinstance(c, str) else nstr(c, 15) for c in cells))


def rows(text):
    for line in text.strip().splitlines():
        cells = line.split()
        yield cells, [mpf(c) if c.replace(".", "").replace("-", "").isdigit() else c for c in cells]


def total_head(h, area, flow):
    """H and Q of H = h + Q^2/2gA^2 with Q a function of H, the lower of the solutions, by iteration from below."""
    H = h
    for _ in range(4000):
        new = h + (flow(H) / area) ** 2 / (2 * G)
        if abs(new - H) < mpf(10) ** -26 * H:
            break
        H = new
    return H, flow(H)


# ---- throats ----------------------------------------------------------------------------------------------------------


def throat(shape, b, m):
    """Area at a depth."""
    if shape == "u":
        r = b / 2

        def area(y):
            if y <= r:
                return r * r * (pi / 2) - (r - y) * sqrt(2 * r * y - y * y) - r * r * asin((r - y) / r)
            return pi * r * r / 2 + b * (y - r)

        return area
    return lambda y: (b + m * y) * y


def critical(area, H):
    """Greatest Q = A sqrt(2g(H - y)) over all depths, and its depth: golden section, then the parabola of three points."""
    q = lambda y: area(y) * sqrt(2 * G * (H - y))
    lo, hi = H * mpf("0.3"), H
    ratio = (sqrt(mpf(5)) - 1) / 2
    a, c = hi - ratio * (hi - lo), lo + ratio * (hi - lo)
    fa, fc = q(a), q(c)
    while hi - lo > H * mpf(10) ** -14:
        if fa < fc:
            lo, a, fa = a, c, fc
            c = lo + ratio * (hi - lo)
            fc = q(c)
        else:
            hi, c, fc = c, a, fa
            a = hi - ratio * (hi - lo)
            fa = q(a)
    y = (lo + hi) / 2
    return y, q(y)


def long_throated():
    print("shape,b,m,length,head,B,p,tailwater,modular,q")
    for cells, v in rows(
        """
        rectangular 0.30 0 0.90 0.33 0.75 0.12 0 0
        rectangular 0.45 0 1.20 0.11 1.00 0.00 0 0
        rectangular 1.10 0 2.50 0.87 2.40 0.30 0 0
        trapezoidal 0.25 1 0.80 0.22 1.00 0.10 0 0
        trapezoidal 0.60 0.5 1.50 0.41 2.20 0.25 0 0
        trapezoidal 0.12 2 0.70 0.17 1.60 0.08 0 0
        u 0.30 0 0.60 0.12 0.60 0.05 0 0
        u 0.30 0 0.60 0.29 0.60 0.05 0 0
        u 0.80 0 1.60 0.55 1.50 0.20 0 0
        rectangular 0.30 0 0.90 0.33 0.75 0.12 0.30 0
        rectangular 0.30 0 0.90 0.33 0.75 0.12 0.31 0.85
        trapezoidal 0.25 1 0.80 0.22 1.00 0.10 0.20 0
        trapezoidal 0.60 0.5 1.50 0.41 2.20 0.25 0.37 0.80
        u 0.30 0 0.60 0.25 0.60 0.05 0.23 0
        u 0.80 0 1.60 0.55 1.50 0.20 0.53 0.90
        """
    ):
        shape, b, m, L, h, B, p, t, modular = v
        area = throat(shape, b, m)
        d = mpf("0.003") * L
        cd = (1 - 2 * d / b * (sqrt(1 + m * m) - m)) * (1 - d / h) ** mpf("1.5")

        def flow(H):
            y, q = critical(area, H)
            if t > 0:
                share = y / H
                limit = modular if modular > 0 else share
                if t / H > limit:
                    depth = H * (share + (t / H - limit) * (1 - share) / (1 - limit))
                    return cd * area(depth) * sqrt(2 * G * (H - depth))
            return cd * q

        show(*cells, total_head(h, B * (h + p), flow)[1])


# ---- weirs ------------------------------------------------------------------------------------------------------------


def crump():
    print("b,p,head,tailwater,tapping,q")
    for cells, v in rows(
        """
        2 0.4 0.30 0 0
        10 0.6 1.10 0 0
        0.9 0.25 0.08 0 0
        2 0.4 0.30 0.20 0
        2 0.4 0.30 0.25 0
        2 0.4 0.30 0.28 0
        2 0.4 0.30 0.295 0
        5 0.8 0.60 0.57 0
        5 0.8 0.60 0.52 0
        2 0.4 0.30 0 0.12
        2 0.4 0.30 0 0.20
        2 0.4 0.30 0 0.26
        """
    ):
        b, p, h, t, tap = v

        def f(H):
            if tap > 0:
                r = tap / H
                return mpf(1) if r <= mpf("0.25") else mpf("1.04") * (mpf("0.945") - r ** mpf("1.5")) ** mpf("0.256")
            r = t / H
            if r <= mpf("0.75"):
                return mpf(1)
            if r <= mpf("0.93"):
                return mpf("1.035") * (mpf("0.817") - r**4) ** mpf("0.0647")
            return mpf("8.686") - mpf("8.403") * r

        flow = lambda H: f(H) * mpf("0.633") * sqrt(G) * b * (H - mpf("0.0003")) ** mpf("1.5")
        show(*cells, total_head(h, b * (h + p), flow)[1])


def broad_crest():
    print("form,L,B,p,head,tailwater,q")
    for cells, v in rows(
        """
        square 1.5 1.1 0.6 0.31 0
        square 0.9 0.8 0.3 0.11 0
        square 1.5 1.1 0.6 0.31 0.27
        square 1.5 1.1 0.6 0.31 0.23
        round 1.2 0.8 0.4 0.25 0
        round 0.6 1.5 0.5 0.30 0
        round 1.2 0.8 0.4 0.25 0.21
        """
    ):
        form, L, B, p, h, t = v
        d = mpf("0.003") * L
        cd = mpf("0.848") if form == "square" else (1 - 2 * d / B) * (1 - d / h) ** mpf("1.5")

        def flow(H):
            if t > 2 * H / 3:
                return cd * B * t * sqrt(2 * G * (H - t))
            return cd * B * sqrt(G) * (2 * H / 3) ** mpf("1.5")

        show(*cells, total_head(h, B * (h + p), flow)[1])


def drowned_plates():
    print("kind,size,head,tailwater,ratio")
    for cells, v in rows(
        """
        crest 1.0 0.30 0.12
        crest 1.0 0.30 0.29
        crest 1.0 0.21 0.003
        notch 60 0.25 0.10
        notch 60 0.25 0.24
        trapezoid 0.25 0.30 0.17
        trapezoid 1.5 0.30 0.26
        """
    ):
        kind, size, h, t = v
        if kind == "trapezoid":
            # a crest of 0.4 m between sloping sides: the discharges at both heads, by quadrature of strips
            q = lambda x: quad(lambda z: (mpf("0.4") + 2 * size * z) * sqrt(x - z), [0, x])
            ratio = q(t) / q(h)
        else:
            ratio = (t / h) ** (mpf("2.5") if kind == "notch" else mpf("1.5"))
        show(*cells, (1 - ratio) ** mpf("0.385"))


def cipolletti():
    print("b,B,p,head,q")
    for cells, v in rows(
        """
        0.5 2.0 0.6 0.09
        0.9144 3.6576 0.9144 0.21336
        2.0 6.0 1.5 0.55
        """
    ):
        b, B, p, h = v
        show(*cells, mpf("3.367") * (b / FOOT) * (h / FOOT) ** mpf("1.5") * FOOT**3)


def parshall_drowned():
    print("throat,head,tailwater,q")
    for cells, v in rows(
        """
        0.3048 0.25 0.20
        0.3048 0.60 0.45
        0.6096 0.40 0.34
        0.9144 0.50 0.47
        1.8288 0.30 0.25
        2.4384 0.70 0.62
        3.05 0.60 0.51
        3.66 0.90 0.81
        7.62 1.10 1.02
        15.24 1.50 1.30
        """
    ):
        W, h, t = v
        S, w, x = t / h, W / FOOT, h / FOOT
        if W < 3:
            n = mpf("1.569") * W ** mpf("0.026")
            free = mpf("0.372") * W * (h / mpf("0.305")) ** n
            base = x / ((mpf("1.8") / S) ** mpf("1.8") - mpf("2.45"))
            loss = w ** mpf("0.815") * (base ** (mpf("4.57") - mpf("3.14") * S) + mpf("0.093") * S)
        else:
            free = (mpf("2.293") * W + mpf("0.474")) * h ** mpf("1.6")
            loss = w / 10 * (mpf("3.364") + mpf("20.19") * S**2 * log(S)) ** 2 * x**2
        show(*cells, free - loss * FOOT**3)


# ---- side weir: two equations of motion, eighth part of a millimetre at a time ------------------------------------------


def section(kind, size):
    if kind == "box":
        return (lambda y: size * y), (lambda y: size)
    r = size / 2
    return throat("u", size, 0), (lambda y: 2 * sqrt(y * (size - y)))


def against_the_stream(kind, size, s, L, cd, y, q):
    """Depth and discharge at the upstream end of a crest, of those at its downstream end."""
    if kind == "circle":
        r = size / 2
        area = lambda z: r * r * (pi / 2) - (r - z) * sqrt(2 * r * z - z * z) - r * r * asin((r - z) / r)
        width = lambda z: 2 * sqrt(z * (size - z))
    else:
        area, width = section(kind, size)
    step = L / 3000

    def slope(yy, qq):
        # going upstream: discharge grows, depth from d(E) = 0
        spill = cd * 2 / 3 * sqrt(2 * G) * (yy - s) ** mpf("1.5")
        a = area(yy)
        dy = -(qq * spill / (G * a * a)) / (1 - qq * qq * width(yy) / (G * a**3))
        return dy, spill

    for _ in range(3000):
        k1 = slope(y, q)
        k2 = slope(y + step / 2 * k1[0], q + step / 2 * k1[1])
        k3 = slope(y + step / 2 * k2[0], q + step / 2 * k2[1])
        k4 = slope(y + step * k3[0], q + step * k3[1])
        y += step / 6 * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0])
        q += step / 6 * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1])
    return y, q


def side_weir():
    mp.dps = 20
    print("section,size,sill,length,cd,depth,onward,arriving,depth_upstream")
    for cells, v in rows(
        """
        box 2.5 0.84 3 0.7 1.0608 5.46
        box 1.5 0.60 1.2 0.55 0.90 0.30
        circle 1.2 0.6 2.4 0.6 0.85 0.5
        circle 1.2 0.6 2.4 0.6 0.85 0
        circle 0.9 0.5 1.5 0.5 0.72 0.2
        """
    ):
        y, q = against_the_stream(*v)
        print(",".join(cells) + "," + nstr(q, 12) + "," + nstr(y, 12))


def side_split():
    """The inflow that leaves a given discharge and depth downstream; asked for the depth where the onward flow is proportional to it."""
    mp.dps = 20
    print("section,size,sill,length,cd,inflow,onward,depth")
    for cells, v in rows(
        """
        box 2.5 0.84 3 0.7 5.46 1.0608
        box 1.5 0.60 1.2 0.55 0.30 0.90
        circle 1.2 0.6 2.4 0.6 0.5 0.85
        circle 0.9 0.5 1.5 0.5 0.2 0.72
        """
    ):
        *pipe, onward, depth = v
        _, inflow = against_the_stream(*pipe, depth, onward)
        print(",".join([*cells[:5], nstr(inflow, 12), *cells[5:]]))


# ---- gates, outfalls, flaps, screens ------------------------------------------------------------------------------------


def sluice_gate():
    print("b,a,cc,depth,tailwater,q")
    for cells, v in rows(
        """
        1.2 0.30 0.61 1.70 0
        6 0.25 0.61 3 0.5
        6 0.25 0.61 3 1.5
        1 0.20 0.61 1.40 0.95
        1 0.20 0.63 1.40 1.30
        2 0.10 0.61 0.90 0.70
        """
    ):
        b, a, cc, y1, y2 = v
        c = cc * a
        free = c * y1 * sqrt(2 * G / (y1 + c))
        conjugate = c / 2 * (sqrt(1 + 8 * free**2 / (G * c**3)) - 1)
        if y2 <= conjugate:
            show(*cells, b * free)
            continue

        def balance(q):
            y3 = y1 + q * q / (2 * G) * (1 / y1**2 - 1 / c**2)
            return y3 * y3 / 2 + q * q / (G * c) - y2 * y2 / 2 - q * q / (G * y2)

        # the state of the greater depth over the jet: y3 falls to 0 before the other root
        lo, hi = mpf(0), mpf(0)
        step = free / 4000
        while balance(hi) < 0 if balance(mpf(0)) < 0 else balance(hi) > 0:
            lo, hi = hi, hi + step
        for _ in range(120):
            middle = (lo + hi) / 2
            if (balance(middle) > 0) == (balance(mpf(0)) > 0):
                lo = middle
            else:
                hi = middle
        show(*cells, b * lo)


def outfalls():
    print("form,size,depth,q")
    for cells, v in rows(
        """
        rectangular 0.8 0.143
        rectangular 2.5 0.36
        circular 0.103632 0.027432
        circular 0.6 0.17
        circular 0.6 0.28
        critical 0.6 0.20
        critical 1.2 0.55
        """
    ):
        form, size, y = v
        if form == "rectangular":
            q = size * sqrt(G) * (y / mpf("0.715")) ** mpf("1.5")
        elif form == "circular":
            d, air = size / FOOT, (size - y) / FOOT
            q = mpf("8.69") * (1 - air / d) ** mpf("1.88") * d ** mpf("2.48") * FOOT**3
        else:
            r, yc = size / 2, y / mpf("0.75")
            a = quad(lambda z: 2 * sqrt(z * (size - z)), [0, yc])
            q = a * sqrt(G * a / (2 * sqrt(yc * (size - yc))))
        show(*cells, q)


def flap():
    print("diameter,velocity,loss")
    for cells, v in rows("0.6096 1.2192\n0.3 0.4\n0.3 1.9\n1.5 1.0"):
        d, u = v
        x = u / FOOT
        show(*cells, 4 * x * x / (G / FOOT) * exp(-mpf("1.15") * x / sqrt(d / FOOT)) * FOOT)


def screens():
    print("thickness,gap,angle,velocity,blinded,loss")
    for cells, v in rows(
        """
        0.006 0.010 90 0.70 0
        0.006 0.010 90 0.70 0.30
        0.006 0.010 60 0.45 0.55
        0.010 0.025 75 0.90 0.80
        """
    ):
        s, gap, angle, u, f = v
        # bars and gaps of one pitch counted anew: the rags stand beside the bar
        pitch = s + gap
        open_gap = gap * (1 - f)
        ratio = (pitch - open_gap) / open_gap
        show(*cells, mpf("2.42") * ratio ** (mpf(4) / 3) * u * u / (2 * G) * sin(radians(angle)))


def screened_weir():
    print("b,p,thickness,gap,blinded,head,q,head_behind")
    for cells, v in rows(
        """
        2 0.8 0.006 0.010 0 0.35
        2 0.8 0.006 0.010 0.5 0.35
        2 0.8 0.006 0.010 0.8 0.60
        0.8 0.5 0.010 0.025 0.7 0.22
        """
    ):
        b, p, s, gap, f, h = v
        zeta = mpf("2.42") * ((s + f * gap) / (gap * (1 - f))) ** (mpf(4) / 3)
        weir = lambda x: (
            (mpf("0.602") + mpf("0.075") * x / p)
            * mpf(2)
            / 3
            * sqrt(2 * G)
            * (b - mpf("0.0009"))
            * (x + mpf("0.001")) ** mpf("1.5")
        )
        lo, hi = mpf(0), h
        for _ in range(110):
            x = (lo + hi) / 2
            if x + zeta * (weir(x) / (b * (h + p))) ** 2 / (2 * G) < h:
                lo = x
            else:
                hi = x
        show(*cells, weir(lo), lo)


def khafagi():
    print("throat,head,q")
    for cells, v in rows("0.12 0.20\n0.16 0.35\n0.32 0.6\n0.64 1.25"):
        b, h = v
        show(*cells, mpf("1.744") * b * h ** mpf("1.5") + mpf("0.091") * h ** mpf("2.5"))


def side_coefficient():
    print("froude,cd")
    for cells, v in rows("0.1\n0.3\n0.6\n0.8"):
        # the textbooks' other form, 0.864 sqrt((1 - F^2)/(2 + F^2)), with 0.864 for 0.611 sqrt 2
        show(*cells, mpf("0.611") * sqrt(2) * sqrt((1 - v[0] ** 2) / (2 + v[0] ** 2)))


def long_throated_uncertainty():
    print("b,length,head,B,p,u")
    for cells, v in rows("0.30 0.90 0.33 0.75 0.12\n0.45 1.20 0.11 1.00 0.00\n1.10 2.50 0.87 2.40 0.30"):
        b, L, h, B, p = v
        cd = (1 - mpf("0.006") * L / b) * (1 - mpf("0.003") * L / h) ** mpf("1.5")
        H, _ = total_head(h, B * (h + p), lambda H: cd * b * sqrt(G) * (2 * H / 3) ** mpf("1.5"))
        show(*cells, mpf("0.01") + mpf("0.2") * ((H / h) ** mpf("1.5") - cd))


def weir_exponents():
    print("b,p,head,head_uncertainty,exponent,u")
    for cells, v in rows("1.0 0.5 0.20 0.002\n2.0 0.3 0.40 0.003\n0.8 0.2 0.45 0.001"):
        b, p, h, uh = v
        q = lambda x: (mpf("0.602") + mpf("0.075") * x / p) * (b - mpf("0.0009")) * (x + mpf("0.001")) ** mpf("1.5")
        n = diff(lambda t: log(q(exp(t))), log(h))
        uc = mpf("0.015") if h <= p else mpf("0.02") if h <= mpf("1.5") * p else mpf("0.03")
        show(*cells, n, sqrt(uc**2 + (n * uh / h) ** 2))


def approach_velocities():
    print("x,cv")
    for cells, v in rows("0.05\n0.31\n0.62\n0.94"):
        x = v[0]
        z = mpf(1)
        for _ in range(20000):
            new = 1 + mpf(4) / 27 * x * x * z**3
            if abs(new - z) < mpf(10) ** -27:
                break
            z = new
        show(*cells, z ** mpf("1.5"))


def modular_limits():
    print("kind,size,length,B,p,head,limit")
    for cells, v in rows(
        """
        crump 2 0 2 0.4 0.30
        crump 5 0 5 0.8 0.65
        square 1.1 1.5 1.1 0.6 0.31
        round 0.8 1.2 0.8 0.4 0.25
        rectangular 0.30 0.90 0.75 0.12 0.33
        u 0.30 0.60 0.60 0.05 0.20
        gate 0.25 0 6 0 3
        gate 0.10 0 2 0 0.9
        orifice 0.2 0 0 0 0.7
        """
    ):
        kind, size, L, B, p, h = v
        if kind == "orifice":
            show(*cells, size / 2 / h)
            continue
        if kind == "gate":
            c = mpf("0.61") * size
            q = c * h * sqrt(2 * G / (h + c))
            # momentum of jet and tailwater, by bisection
            lo, hi = c, h
            for _ in range(110):
                y = (lo + hi) / 2
                if y * y / 2 + q * q / (G * y) < c * c / 2 + q * q / (G * c) or y < (q * q / G) ** (mpf(1) / 3):
                    lo = y
                else:
                    hi = y
            show(*cells, lo / h)
            continue
        if kind == "crump":
            flow = lambda H: mpf("0.633") * sqrt(G) * B * (H - mpf("0.0003")) ** mpf("1.5")
            H = total_head(h, B * (h + p), flow)[0]
            show(*cells, mpf("0.75") * H / h)
            continue
        d = mpf("0.003") * L
        cd = mpf("0.848") if kind == "square" else (1 - 2 * d / size) * (1 - d / h) ** mpf("1.5")
        area = throat("u" if kind == "u" else "rectangular", size, 0)
        H = total_head(h, B * (h + p), lambda H: cd * critical(area, H)[1])[0]
        # the depth of the greatest flow is flat to half the digits
        show(*cells, critical(area, H)[0] / h)


def flap_velocities():
    print("diameter,loss,slow,fast,worst,k")
    for cells, v in rows("0.6 0.02\n0.3 0.012\n1.2 0.05\n3 0.15\n3 0.02"):
        d, loss = v
        h = lambda u: 4 * u * u / G * exp(-mpf("1.15") * (u / FOOT) / sqrt(d / FOOT))
        # greatest loss by golden section, then both sides
        lo, hi = mpf(0), mpf(10)
        r = (sqrt(mpf(5)) - 1) / 2
        while hi - lo > mpf(10) ** -14:
            a, c = hi - r * (hi - lo), lo + r * (hi - lo)
            lo, hi = (a, hi) if h(a) < h(c) else (lo, c)
        top = (lo + hi) / 2

        def bisect(x, y):
            up = h(x) < loss
            for _ in range(110):
                m = (x + y) / 2
                x, y = (m, y) if (h(m) < loss) == up else (x, m)
            return x

        slow, fast = bisect(mpf(0), top), bisect(top, mpf(60))
        show(*cells, slow, fast, top, loss * 2 * G / slow**2)


def crump_flow(b, p, h, t):
    """Q of a Crump weir at a head over a tailwater, and whether that drowns it and is within the law."""

    def f(H):
        r = t / H
        if r <= mpf("0.75"):
            return mpf(1)
        if r <= mpf("0.93"):
            return mpf("1.035") * (mpf("0.817") - r**4) ** mpf("0.0647")
        return mpf("8.686") - mpf("8.403") * r

    H, q = total_head(h, b * (h + p), lambda H: f(H) * mpf("0.633") * sqrt(G) * b * (H - mpf("0.0003")) ** mpf("1.5"))
    return q, t > mpf("0.75") * H


def level_flows():
    """Levels at a Crump weir, its crest at a level: below the crest 0, missing stays missing, a head below 0.03 m is poor (3), what is given without a quality not checked (1)."""
    print("width,crest_height,crest,levels,tailwaters,which,flow,quality,outside,missing")
    b, p, crest = mpf(2), mpf("0.4"), mpf("12.5")
    levels = ("12.8", "12.51", "12.3", "NaN", "12.75", "13.1")
    for tailwaters in (None, ("12.72", "12.4", "12.2", "12.6", "NaN", "13.0")):
        results = []
        for i, level in enumerate(levels):
            tail = tailwaters[i] if tailwaters else "0"
            if "NaN" in (level, tail):
                results.append((None, 5))
            elif mpf(level) <= crest:
                results.append((mpf(0), 1))
            else:
                h = mpf(level) - crest
                t = max(mpf(tail) - crest, mpf(0)) if tailwaters else mpf(0)
                results.append((crump_flow(b, p, h, t)[0], 3 if h < mpf("0.03") else 1))
        for i, (q, quality) in enumerate(results):
            print(f"2,0.4,12.5,{' '.join(levels)},{' '.join(tailwaters) if tailwaters else '-'},{i},{'' if q is None else nstr(q, 15)},{quality},"
                  f"{sum(1 for r in results if r[1] == 3)},{sum(1 for r in results if r[1] == 5)}")


def crump_heads():
    """The head of a discharge of a Crump weir, free and drowned; whether it is drowned; and where the drowned law ends."""
    print("width,crest_height,head,tailwater,discharge,head_again,drowned,within")
    for b, p, h, t in (("2", "0.4", "0.3", "0"), ("2", "0.4", "0.3", "0.21"), ("2", "0.4", "0.3", "0.24"), ("2", "0.4", "0.3", "0.285"), ("2", "0.4", "0.3", "0.298"), ("3.5", "0.7", "0.62", "0.55")):
        q, drowned = crump_flow(mpf(b), mpf(p), mpf(h), mpf(t))
        within = mpf(t) / mpf(h) <= mpf("0.985")  # beyond, one discharge has two heads
        show(b, p, h, t, q, h if within else "", str(int(drowned)), str(int(within)))


def gate_tailwaters():
    """The depth behind a sluice gate up to which its jet stays free: conjugate to the jet, y/2 (root(1 + 8 q^2/g y^3) - 1)."""
    print("width,opening,contraction,depth,discharge,tailwater,ratio")
    for b, a, c, y in (("1.2", "0.15", "0.61", "1.4"), ("0.6", "0.3", "0.61", "0.9"), ("2.5", "0.25", "0.65", "3")):
        jet, depth = mpf(c) * mpf(a), mpf(y)
        q = jet * depth * sqrt(2 * G / (depth + jet))
        other = jet / 2 * (sqrt(1 + 8 * q**2 / (G * jet**3)) - 1)
        show(b, a, c, y, q * mpf(b), other, other / depth)


def parshall_units():
    """Parshall's flumes of 1 to 8 ft by the law in feet, Q = 4 W h^(1.522 W^0.026); that of 2 ft asked for in inches."""
    print("unit,throat,head,discharge")
    for w in (1, 2, 4, 8):
        for h in ("0.25", "0.51"):
            unit, count = ("inches", 12 * w) if w == 2 else ("feet", w)
            show(unit, str(count), h, 4 * w * (mpf(h) / FOOT) ** (mpf("1.522") * mpf(w) ** mpf("0.026")) * FOOT**3)


def culverts_drowned():
    """An inlet counts as drowned from Q/(A root(D)) = 4 in feet on."""
    print("edge,diameter,discharge,drowned")
    for edge, d, q in (("concrete-square-headwall", "0.9", "3.9"), ("concrete-square-headwall", "0.9", "4.1"), ("ring-bevel-45", "1.5", "3.97"), ("ring-bevel-45", "1.5", "4.03")):
        size = mpf(d) / FOOT
        show(edge, d, mpf(q) * pi * size**2 / 4 * sqrt(size) * FOOT**3, "1" if mpf(q) >= 4 else "0")


def tanks():
    """Falling head of an upright round tank through a small orifice: the closed integral of dh/root(h)."""
    print("diameter,bore,coefficient,from,to,time")
    for d, b, c, top, low in (("1.2", "0.05", "0.61", "2.1", "0.4"), ("3", "0.1", "0.6", "1.7", "0.9")):
        area, hole = pi * mpf(d) ** 2 / 4, pi * mpf(b) ** 2 / 4
        show(d, b, c, top, low, 2 * area / (mpf(c) * hole * sqrt(2 * G)) * (sqrt(mpf(top)) - sqrt(mpf(low))))


def finite_crests():
    """Discharge of a square-edged crest of any length: the shipped coefficients read by SciPy's bilinear interpolation, held at the ends."""
    from pathlib import Path

    import numpy as np
    from scipy.interpolate import RegularGridInterpolator

    top = Path(__file__).resolve().parents[3]
    file = top / "hydraulics/src/main/resources/dev/runnel/hydraulics/structure/finite-crest.csv"
    lines = [line.split(",") for line in file.read_text().splitlines() if not line.startswith("#")]
    over_length = np.array([float(cell) for cell in lines[0][1:]])
    over_floor = np.array([float(line[0]) for line in lines[1:]])
    read = RegularGridInterpolator((over_floor, over_length), np.array([[float(c) for c in line[1:]] for line in lines[1:]]))
    print("crest_length,width,crest_height,head,coefficient,discharge")
    for length, width, floor, head in ((0.2, 1.2, 0.4, 0.25), (0.31, 0.5, 0.33, 0.4), (1.5, 2.5, 0.3, 0.31), (0.9, 0.8, 0.25, 0.07), (0.17, 0.9, 0.2, 0.31), (0.25, 1.7, 1.9, 0.16), (0.4, 1, 0.5, 0.47)):
        place = (min(max(head / floor, over_floor[0]), over_floor[-1]), min(max(head / length, over_length[0]), over_length[-1]))
        c = float(read([place])[0])
        show(*(str(x) for x in (length, width, floor, head)), mpf(c), (mpf(2) / 3) ** mpf("1.5") * sqrt(G) * mpf(c) * mpf(width) * mpf(head) ** mpf("1.5"))


TABLES = {
    "weir-finite-crest-read": finite_crests,
    "level-flow-crump": level_flows,
    "weir-crump-heads": crump_heads,
    "gate-modular-tailwater": gate_tailwaters,
    "flume-parshall-units": parshall_units,
    "tank-round": tanks,
    "culvert-drowned": culverts_drowned,
    "weir-exponents": weir_exponents,
    "approach-velocity": approach_velocities,
    "structure-modular-limits": modular_limits,
    "flap-velocities": flap_velocities,
    "flume-long-throated-uncertainty": long_throated_uncertainty,
    "weir-side-coefficient": side_coefficient,
    "flume-long-throated-solved": long_throated,
    "flume-parshall-drowned": parshall_drowned,
    "flume-khafagi-formula": khafagi,
    "weir-crump-solved": crump,
    "weir-broad-crest-solved": broad_crest,
    "weir-drowned-plates": drowned_plates,
    "weir-cipolletti-feet": cipolletti,
    "weir-side-integrated": side_weir,
    "weir-side-split": side_split,
    "gate-sluice-balance": sluice_gate,
    "outfall-brink": outfalls,
    "flap-nagler": flap,
    "screen-blinded": screens,
    "weir-screened-solved": screened_weir,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
