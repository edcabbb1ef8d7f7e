"""Distributions where their formulae change into series, and at their bounds: mpmath with 60 digits, no code in common with the library.

    python3 distribution_limits.py FOLDER

writes into the folder of the rainfall tables

    law-moments-over-shapes     mean, variance and L-moments of standard laws over shapes from 1e-9 to 0.9, on either side of each series
    law-log-densities           logarithms of densities, as differences of the distribution functions of distributions.py
    law-bounds                  lower and upper bounds, and what lies at and beyond them
    fits-by-skew                fits by moments of samples of any skew, 0 among them
    plain-fits-and-positions    normal and exponential laws, and plotting positions by medians
    skew-errors-17b             mean square error of a skew (Bulletin 17B), on either side of its two corners
    zeros-among-maxima          statistics and probabilities of the test for low outliers, of samples with zeros
    wakeby-limits               Wakeby's law without one of its two terms, with straight ones, and at its bounds

Moments are Gamma functions or integrals with 60 digits; what the library takes by a series near shape 0 is here a small difference of
large numbers. Made with mpmath 1.3 and SciPy.
"""

import sys

from mpmath import betainc, exp, expm1, findroot, gamma, inf, log, mp, mpf, nstr, pi, quad, sin, sqrt, zeta

import distributions
from own_tables import text, write

PROGRAM = "distribution_limits.py"
HOSKING = "J. R. M. Hosking and J. R. Wallis (1997), Regional Frequency Analysis, appendix: "
mp.dps = 60


def show(value, count=18):
    return nstr(mpf(value), count)


def power_moments(family, k):
    """g_r, the mean of y^(k r), of the law x = (1 - y^k)/k."""
    if family == "gev":
        return [gamma(1 + r * k) for r in (1, 2, 3)]
    if family == "generalized-logistic":
        return [r * k * pi / sin(r * k * pi) for r in (1, 2, 3)]
    if family == "generalized-pareto":
        return [1 / (1 + r * k) for r in (1, 2, 3)]
    return [exp(r * r * k * k / 2) for r in (1, 2, 3)]  # generalized normal


def central(family, k):
    """Mean, variance and skew of the standard law."""
    g1, g2, g3 = power_moments(family, k)
    variance = (g2 - g1**2) / k**2
    return (1 - g1) / k, variance, (-g3 + 3 * g1 * g2 - 2 * g1**3) / k**3 / variance ** mpf("1.5")


def pearson_scale(skew):
    a = 4 / skew**2
    from mpmath import loggamma

    return exp(loggamma(a + mpf("0.5")) - loggamma(a)) / sqrt(pi * a)


def below_a_third(a):
    """Regularised incomplete beta function at 1/3 with parameters a and 2a, by the continued fraction of Lentz."""
    from mpmath import loggamma

    b, x = 2 * a, mpf(1) / 3
    front = exp(loggamma(a + b) - loggamma(a) - loggamma(b) + a * log(x) + b * log(1 - x)) / a
    c, d = mpf(1), 1 / (1 - (a + b) * x / (a + 1))
    h, m = d, 0
    while True:
        m += 1
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        d, c = 1 / (1 + even * d), 1 + even / c
        h *= d * c
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        d, c = 1 / (1 + odd * d), 1 + odd / c
        h *= d * c
        if abs(d * c - 1) < mpf(10) ** -50:
            return front * h


def moments(folder):
    rows = []
    shapes = ["1e-9", "-3e-7", "2e-5", "-0.0013", "0.00493", "-0.00497", "0.00506", "-0.0052", "0.021", "-0.037", "0.0791", "-0.0793", "0.0807", "-0.0811", "0.139", "-0.17", "0.26", "-0.3", "0.49", "0.9"]
    for family in ("gev", "generalized-logistic", "generalized-pareto", "generalized-normal"):
        for shape in shapes:
            k = mpf(shape)
            mean, variance, _ = central(family, k)
            if family == "gev":
                l2 = (1 - mpf(2) ** -k) / k * gamma(1 + k)
                t3 = 2 * (1 - mpf(3) ** -k) / (1 - mpf(2) ** -k) - 3
                t4 = (5 * (1 - mpf(4) ** -k) - 10 * (1 - mpf(3) ** -k) + 6 * (1 - mpf(2) ** -k)) / (1 - mpf(2) ** -k)
            elif family == "generalized-logistic":
                l2, t3, t4 = k * pi / sin(k * pi), -k, (1 + 5 * k * k) / 6
                variance = variance if k < mpf("0.5") else ""
            elif family == "generalized-pareto":
                l2, t3, t4 = 1 / ((1 + k) * (2 + k)), (1 - k) / (3 + k), (1 - k) * (2 - k) / (3 + k) / (4 + k)
            else:
                l2, t3, t4 = exp(k * k / 2) * mp.erf(k / 2) / k, "", ""
            rows.append([family, f"0 1 {shape}", *(c if c == "" else show(c) for c in (mean, variance, l2, t3, t4))])
    # Shape 0 by the laws that stand there: Gumbel, logistic, exponential, normal.
    euler, two, three = mp.euler, log(2), log(3)
    for family, values in (("gev", (euler, pi**2 / 6, two, 2 * three / two - 3, 16 - 10 * three / two)), ("generalized-logistic", (0, pi**2 / 3, 1, 0, mpf(1) / 6)),
                           ("generalized-pareto", (1, 1, mpf(1) / 2, mpf(1) / 3, mpf(1) / 6)), ("generalized-normal", (0, 1, 1 / sqrt(pi), 0, 30 / pi * mp.atan(sqrt(2)) - 9))):
        rows.append([family, "0 1 0", *(show(v) for v in values)])
    for skew in ("0.00011", "-0.0009", "0.0071", "0.0197", "-0.0199", "0.0203", "-0.0211", "0.043", "0.0497", "-0.0503", "0.11"):
        s = abs(mpf(skew))
        t3 = 6 * below_a_third(4 / s**2) - 3 if s > mpf("0.0005") else ""
        rows.append(["pearson-iii", f"0 1 {skew}", "", "1.0", show(pearson_scale(s)), t3 if t3 == "" else show(t3 if mpf(skew) > 0 else -t3), ""])
    write(folder, PROGRAM, "law-moments-over-shapes", HOSKING + "standard laws over their shapes: moments by Gamma functions and sines, with 60 digits",
          [("family", "text, the family"), ("p", "text, its parameters"), ("mean", "1, mean"), ("variance", "1, variance"), ("l2", "1, second L-moment"), ("t3", "1, L-skewness"), ("t4", "1, L-kurtosis")],
          [("family", "text family"), ("parameters", "text p")],
          [("mean", "frequency.mean", "tolerance = 2e-14 relative or 1e-13", "reason = near shape 0 the mean is a difference; the goal of this library is 1e-13 of the scale"), ("variance", "frequency.variance"), ("l2", "frequency.l-moment", "input.moment = word lambda2"), ("t3", "frequency.l-moment", "input.moment = word tau3", "tolerance = 1e-13", "reason = the goal of this library is 1e-13 for ratios, which are sums that cancel"),
           ("t4", "frequency.l-moment", "input.moment = word tau4", "tolerance = 2e-14")],
          rows, tolerance="2e-14 relative", reason="18 digits are given; some units of the last digit of a double")


PARAMETERS = {"gumbel": ("30 8",), "gev": ("30 8 -0.2", "30 8 0.3", "30 8 0.000001"), "generalized-logistic": ("30 8 -0.25", "30 8 0.4", "30 8 -0.0000003"), "generalized-pareto": ("10 12 -0.3", "10 12 0.6"),
              "generalized-normal": ("30 8 -0.4", "30 8 0.7"), "exponential": ("10 12",), "normal": ("30 8",), "kappa": ("30 8 0.2 -0.6", "30 8 -0.2 0.7", "30 8 0.1 1"), "pearson-iii": ("30 8 1.3", "30 8 -0.6", "30 8 0.03", "30 8 0.41"),
              "log-pearson-iii": ("1.4 0.25 0.7", "1.4 0.25 -0.4"), "log-normal": ("3.3 0.4",)}


def densities(folder):
    """The density is the slope of the distribution function: a difference over 1e-22 with 60 digits leaves 1e-30 of it."""
    rows = []
    for family, sets in PARAMETERS.items():
        for p in sets:
            d = distributions.FAMILIES[family](*map(mpf, p.split()))
            for x in ("12.5", "21", "28.3", "33", "47", "90"):
                step = mpf(10) ** -22
                side = 0 if d.tails(mpf(x))[0] < mpf("0.5") else 1
                slope = abs(d.tails(mpf(x) + step)[side] - d.tails(mpf(x) - step)[side]) / (2 * step)
                if slope > mpf(10) ** -30:
                    rows.append([family, p, x, show(log(slope), 17)])
    write(folder, PROGRAM, "law-log-densities", HOSKING + "logarithms of densities, from the slope of distribution functions with 60 digits",
          [("family", "text, the family"), ("p", "text, its parameters"), ("x", "of the variate, the value"), ("density", "1, ln f")],
          [("family", "text family"), ("parameters", "text p"), ("x", "x")], [("density", "frequency.log-density")], rows, tolerance="1e-12 relative or 1e-12",
          reason="17 digits are given; the goal of this library is 1e-12")


def bounds(folder):
    """Where a law ends: 0 or 1 there and beyond; a blank where it does not end."""
    rows = []

    def row(family, p, low, high):
        at = lambda b: "" if b is None else show(b, 17)
        outside_low = "" if low is None else show(low - abs(low) / 7 - mpf("0.1"), 10)
        outside_high = "" if high is None else show(high + abs(high) / 7 + mpf("0.1"), 10)
        rows.append([family, p, at(low), at(high), outside_low, "" if low is None else "0", "" if low is None else "1", outside_high, "" if high is None else "1", "" if high is None else "0"])

    for k in ("0.25", "-0.4"):
        end = mpf(30) + 8 / mpf(k)
        for family in ("gev", "generalized-logistic"):
            row(family, f"30 8 {k}", None if mpf(k) > 0 else end, end if mpf(k) > 0 else None)
        row("generalized-normal", f"30 8 {k}", None if mpf(k) > 0 else end, end if mpf(k) > 0 else None)
        row("generalized-pareto", f"30 8 {k}", mpf(30), end if mpf(k) > 0 else None)
    row("exponential", "30 8", mpf(30), None)
    for k, h in (("0.2", "0.5"), ("-0.2", "0.8"), ("0.3", "-0.4"), ("-0.25", "-0.9")):
        kk, hh = mpf(k), mpf(h)
        low = 30 + 8 * (1 - hh**-kk) / kk if hh > 0 else (30 + 8 / kk if kk < 0 else None)
        row("kappa", f"30 8 {k} {h}", low, 30 + 8 / kk if kk > 0 else None)
    for g in ("0.8", "-1.6"):
        end = 30 - 16 / mpf(g)
        row("pearson-iii", f"30 8 {g}", end if mpf(g) > 0 else None, None if mpf(g) > 0 else end)
        log_end = mpf("1.4") - mpf("0.5") / mpf(g)
        row("log-pearson-iii", f"1.4 0.25 {g}", mpf(10) ** log_end if mpf(g) > 0 else mpf(0), None if mpf(g) > 0 else mpf(10) ** log_end)
    row("log-normal", "3.3 0.4", mpf(0), None)
    for r in rows:
        if r[2] == "0.0":  # of logarithms: nothing is below 0
            r[4] = "-1"
    write(folder, PROGRAM, "law-bounds", HOSKING + "bounds of laws from their quantile functions, and probabilities beyond them",
          [("family", "text, the family"), ("p", "text, its parameters"), ("low", "of the variate, lower bound"), ("high", "of the variate, upper bound"), ("below", "of the variate, a value below"), ("f", "1, non-exceedance of it"),
           ("e", "1, exceedance of it"), ("above", "of the variate, a value above"), ("g", "1, non-exceedance of it"), ("h", "1, exceedance of it")],
          [("family", "text family"), ("parameters", "text p")],
          [("low", "frequency.lower-bound"), ("high", "frequency.upper-bound"), ("f", "frequency.non-exceedance", "input.x = below"), ("e", "frequency.exceedance", "input.x = below"),
           ("g", "frequency.non-exceedance", "input.x = above"), ("h", "frequency.exceedance", "input.x = above")],
          rows, tolerance="1e-13 relative", reason="17 digits are given")


def fits(folder):
    """The shape is the root of the skew; skew of a sample with n²/((n − 1)(n − 2)), as in the library's pages."""
    samples = ("14 17 20 23 26", "12 15.5 20 24.5 28", "10 13 14 16 31", "4 17 19 21 22 23", "18 19 20 20.2 20.4 21.99", "1 2 2.5 3 3.1 3.2 9", "40 41 44 44.5 47.2", "2.31 2.32 2.37 2.4 2.41 2.5 2.65",
               "10 12 13 14 15 17 19 26", "10 12 13 14 15 17 19 25", "10 12 13 14 15 17 19 24", "14 17 20 23 26.4", "14 17 20.3 23.1 26", "11 14 17 20 23 26 30")
    rows = []
    for sample in samples:
        x = [mpf(v) for v in sample.split()]
        n = len(x)
        mean = sum(x) / n
        s = sqrt(sum((v - mean) ** 2 for v in x) / (n - 1))
        g = n * sum((v - mean) ** 3 for v in x) / ((n - 1) * (n - 2) * s**3)
        for family, low, high in (("gev", "-0.3", "2.9"), ("generalized-logistic", "-0.31", "0.31"), ("generalized-pareto", "-0.31", "60"), ("generalized-normal", "-2.7", "2.7")):
            a, b = mpf(low) + mpf("1e-7"), mpf(high) + mpf("1.7e-7")
            of = lambda k: central(family, k)[2] - g
            if of(a) * of(b) > 0:
                continue
            if abs(g) < mpf(10) ** -40 and family in ("generalized-logistic", "generalized-normal"):
                k = mpf(0)
                scale = s * (sqrt(3) / pi if family == "generalized-logistic" else 1)
                at = mean
            else:
                for _ in range(180):
                    m = (a + b) / 2
                    a, b = (a, m) if of(a) * of(m) <= 0 else (m, b)
                k = (a + b) / 2
                m0, v0, _ = central(family, k)
                scale = s / sqrt(v0)
                at = mean - scale * m0
            names = ("xi", "alpha", "k")
            rows.extend([family, sample, name, show(value, 16) if abs(value) > mpf(10) ** -40 else "0"] for name, value in zip(names, (at, scale, k)))
    write(folder, PROGRAM, "fits-by-skew", HOSKING + "fits by moments of small samples, the shape by bisection with 60 digits",
          [("family", "text, the family"), ("sample", "text, the sample"), ("name", "text, the parameter"), ("value", "of the variate, its value")],
          [("family", "text family"), ("method", "word moments"), ("sample", "text sample"), ("parameter", "text name")], [("value", "frequency.fit.parameter")], rows, tolerance="1e-11 relative or 1e-13",
          reason="a root of the skew is good to 1e-13 or so, which a flat skew magnifies")


def plain(folder):
    """A normal law by L-moments, standard errors of an exponential one, and plotting positions after Filliben (1975) by medians."""
    samples = ("14 17 20 23 26 41", "2.31 2.32 2.37 2.4 2.41 2.5 2.65", "10 13 14 16 31 33 35 90 4 7")
    rows = []
    for sample in samples:
        x = sorted(mpf(v) for v in sample.split())
        n = len(x)
        l2 = sum(abs(a - b) for a in x for b in x) / (2 * mpf(n) * (n - 1))  # half the mean difference of two
        mean = sum(x) / n
        rows.append(["normal", sample, "mu", show(mean), "", "", "", "", ""])
        rows.append(["normal", sample, "sigma", show(l2 * sqrt(pi)), "", "", "", "", ""])
        rows.append(["exponential", sample, "xi", show(mean - 2 * l2), show((mean - x[0]) / n), "", "", "", ""])
        rows.append(["exponential", sample, "alpha", show(2 * l2), show((mean - x[0]) / sqrt(mpf(n))), "", "", "", ""])
    for n in (2, 7, 41):
        for i in sorted({1, 2, n // 2 + 1, n - 1, n}):
            f = 1 - mpf("0.5") ** (mpf(1) / n) if i == 1 else mpf("0.5") ** (mpf(1) / n) if i == n else (i - mpf("0.3175")) / (n + mpf("0.365"))
            rows.append(["", "", "", "", "", "filliben", i, n, show(f)])
    write(folder, PROGRAM, "plain-fits-and-positions", HOSKING + "normal and exponential laws by L-moments; J. J. Filliben (1975): plotting positions by medians",
          [("family", "text, the family"), ("sample", "text, the sample"), ("name", "text, the parameter"), ("value", "of the variate, its value"), ("error", "of the variate, standard error by likelihood"),
           ("formula", "text, the formula"), ("rank", "1, i"), ("size", "1, n"), ("f", "1, non-exceedance")], [],
          [("value", "frequency.fit.parameter", "input.family = text family", "input.method = word l-moments", "input.sample = text sample", "input.parameter = text name"),
           ("error", "frequency.fit.standard-error", "input.family = text family", "input.sample = text sample", "input.parameter = text name"),
           ("f", "frequency.plotting-position", "input.formula = text formula", "input.rank = rank", "input.size = size")],
          rows, tolerance="1e-12 relative", reason="18 digits are given")


def skews(folder):
    rows = []
    for g in ("0", "0.31", "-0.31", "0.89", "-0.9", "0.91", "-1.2", "1.49", "1.5", "-1.51", "2.2", "-3"):
        for n in (10, 34, 150):
            size = abs(mpf(g))
            a = mpf("-0.33") + mpf("0.08") * size if size <= mpf("0.9") else mpf("-0.52") + mpf("0.3") * size
            b = mpf("0.94") - mpf("0.26") * size if size <= mpf("1.5") else mpf("0.55")
            mse = mpf(10) ** (a - b * log(mpf(n) / 10, 10))
            region, error = mpf("-0.17"), mpf("0.302")
            rows.append([g, n, show(mse), "-0.17", "0.302", show((error * mpf(g) + mse * region) / (error + mse)), show(error * mse / (error + mse))])
    write(folder, PROGRAM, "skew-errors-17b", "Interagency Advisory Committee on Water Data (1982), Bulletin 17B, equations 5 and 6: mean square error of the skew of a station, and the skew weighted with that of a region",
          [("g", "1, skew of the station"), ("n", "years, length of its record"), ("mse", "1, its mean square error"), ("region", "1, skew of the region"), ("error", "1, its mean square error"), ("weighted", "1, weighted skew"),
           ("both", "1, its mean square error")],
          [("skew", "g"), ("years", "n")], [("mse", "low-outliers.skew.error-17b"), ("weighted", "low-outliers.skew.weighted-17b", "input.region = region", "input.region_error = error"),
                                            ("both", "low-outliers.skew.weighted-error-17b", "input.region = region", "input.region_error = error")], rows, tolerance="1e-13 relative", reason="18 digits are given")


def zeros(folder):
    """A zero has the logarithm of minus infinity: the statistic is the limit in which every zero is the same number, ever smaller."""
    rows = []
    for sample in ("0 0 0 13 15 17 22 24 31 35 41 62", "0 0 0 0 0 4 21 23 24 25.5 27 29 33 38 44", "9 0 14 18 21 0 25 28 33 47 58", "3 0 51 64 72 88 90 97 111 130 154"):
        x = sorted(mpf(v) for v in sample.split())
        n = len(x)
        with mp.workdps(400):
            logs = [log(v) if v else -mpf(10) ** 150 for v in x]
            for rank in range(1, n // 2 + 1):
                above = logs[rank:]
                m = sum(above) / len(above)
                s = sqrt(sum((v - m) ** 2 for v in above) / (len(above) - 1))
                omega = (logs[rank - 1] - m) / s
                last = x[rank - 1] == 0 and x[rank] > 0
                rows.append([sample, rank, "" if last else show(omega, 16)])
    write(folder, PROGRAM, "zeros-among-maxima", "T. A. Cohn and others (2013), a generalized Grubbs-Beck statistic: test for low outliers, zeros taken as 10 to the minus 10^150",
          [("sample", "text, the sample"), ("rank", "1, r"), ("omega", "1, statistic of the r-th smallest")], [("sample", "text sample"), ("rank", "rank")], [("omega", "low-outliers.statistic")], rows,
          tolerance="1e-12 relative", reason="16 digits are given")


def wakeby(folder):
    rows = []
    for p in (("5", "3", "0", "0", "0"), ("5", "0", "0", "2", "0.4"), ("5", "4", "-0.3", "1", "0.4"), ("5", "4", "-0.45", "0", "0"), ("5", "8", "1.2", "3", "-0.2"), ("5", "-1", "2", "3", "0.1"), ("-2", "6", "0.7", "0", "0"),
              ("-2", "0", "0", "4", "-0.49"), ("0", "2", "0", "1", "0.2"), ("0", "2", "0.6", "1.5", "0")):
        xi, alpha, beta, g, delta = map(mpf, p)

        def value(s):
            first = s if beta == 0 else (1 - exp(-beta * s)) / beta
            second = s if delta == 0 else (exp(delta * s) - 1) / delta
            return xi + alpha * first + g * second

        whole = lambda f: quad(lambda s: f(s) * exp(-s), [0, 1, 4, 12, 40, 120, 400])
        with mp.workdps(30):
            mean = whole(value)
            finite = (g == 0 or delta < mpf("0.5")) and (alpha == 0 or beta > mpf("-0.5"))
            variance = whole(lambda s: (value(s) - mean) ** 2) if finite else None
        ends = (alpha == 0 or beta > 0) and (g == 0 or delta < 0)
        bound = xi + (alpha / beta if alpha else 0) - (g / delta if g else 0) if ends else None
        for s in ("1e-7", "0.04", "0.7", "1", "3.3", "19"):
            x = float(value(mpf(s)))
            t = findroot(lambda u: value(u) - mpf(x), mpf(s)) if s != "1e-7" else mpf(s)
            slope = alpha * exp(-beta * t) + g * exp(delta * t)
            near = ends and s == "19"  # so near the bound that a double of x holds few digits of s
            rows.append([*p, repr(x) if s != "1e-7" else "", "" if near or s == "1e-7" else show(-expm1(-t), 16), "" if near or s == "1e-7" else show(exp(-t), 16), "" if near or s == "1e-7" else show(-t - log(slope), 16),
                         repr(float(exp(-mpf(s)))), "" if s == "1e-7" else show(value(-log(mpf(float(exp(-mpf(s)))))), 17),
                         show(mean, 15) if s == "1" else "", show(variance, 15) if s == "1" and variance is not None else "", show(bound, 16) if s == "1" and bound is not None else ""])
        rows.append([*p, show(xi, 10), "0", "1", show(-log(alpha + g), 16), "", "", "", "", ""])
        rows.append([*p, show(xi - 1, 10), "0", "1", "", "", "", "", "", ""])
        if bound is not None:
            rows.append([*p, show(bound + mpf("0.5"), 12), "1", "0", "", "", "", "", "", ""])
    names = ("xi", "alpha", "beta", "gamma", "delta")
    write(folder, PROGRAM, "wakeby-limits", HOSKING + "Wakeby's law without one of its terms, with straight ones and at its bounds: quantile function, its inverse and integrals over it",
          [(c, "of the variate, " + c) for c in names] + [("x", "of the variate, value"), ("f", "1, non-exceedance"), ("e", "1, exceedance"), ("density", "1, ln f"), ("p", "1, exceedance asked"), ("quantile", "of the variate, its value"),
                                                          ("mean", "of the variate, mean"), ("variance", "of the variate, variance"), ("bound", "of the variate, upper bound")],
          [(c, c) for c in names],
          [("f", "wakeby.cdf", "input.x = x"), ("e", "wakeby.exceedance", "input.x = x"), ("density", "wakeby.log-density", "input.x = x"), ("quantile", "wakeby.quantile-of-exceedance", "input.p = p"), ("mean", "wakeby.mean"),
           ("variance", "wakeby.variance"), ("bound", "wakeby.upper-bound")], rows, tolerance="1e-11 relative or 1e-13", reason="a value near a bound holds few digits of its probability")


if __name__ == "__main__":
    for make in (moments, densities, bounds, fits, plain, skews, zeros, wakeby):
        if not sys.argv[2:] or make.__name__ in sys.argv[2:]:
            make(sys.argv[1])
