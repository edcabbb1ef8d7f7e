"""Laws far out in their tails, where the library takes them by series or by the logarithm: mpmath with 60 digits, no code in common.

    python3 law_verges.py FOLDER

writes pearson-far-tails, kappa-far-below, kappa-far-above and plotting-positions-together into the folder of the rainfall tables. Pearson's law is the
incomplete Gamma function, Hosking's four-parameter kappa law its own formula.
"""

import sys

from mpmath import exp, gammainc, log, mp, mpf, nstr, sqrt

from own_tables import write

mp.dps = 60
FOLDER = sys.argv[1] if len(sys.argv) > 1 else "."
PROGRAM = "law_verges.py"
HOSKING = "J. R. M. Hosking and J. R. Wallis (1997), Regional Frequency Analysis, appendix: "
show = lambda value: nstr(mpf(value), 17, min_fixed=-5, max_fixed=9)


def pearson():
    rows = []
    for skew in SKEWS:
        for mu in ("-0.69", "-0.62", "-0.45", "-0.31", "-0.29", "-0.1", "0.2", "0.29", "0.31", "0.6", "0.9", "1.2", "1.35"):
            delta = mpf(skew) / 2
            a = 1 / delta**2
            k = float(mpf(mu) / delta)
            g = a + mpf(k) * sqrt(a)
            below = gammainc(a, 0, g, regularized=True)
            above = gammainc(a, g, mp.inf, regularized=True)
            if min(below, above) < mpf("1e-295"):
                continue
            for sign in (1, -1):
                f, e = (below, above) if sign > 0 else (above, below)
                near = abs(mpf(mu) - log(1 + mpf(mu))) <= mpf("0.125")
                rows.append((f"0 1 {sign * float(skew)!r}", repr(sign * k), show(f), show(e), show(f * mpf("2e-12" if near else "1e-10")), show(e * mpf("2e-12" if near else "1e-10"))))
    write(FOLDER, PROGRAM, "pearson-far-tails", HOSKING + "Pearson's law of type III of small skew, up to where either tail is below 1e-295", [("p", "text, mean, standard deviation, skew"), ("x", "of the variate, value"), ("f", "1, non-exceedance"), ("e", "1, exceedance"), ("tf", "1, 2e-12 of it, or 1e-10 far out"), ("te", "1, 2e-12 of it, or 1e-10 far out")],
          [("family", "word pearson-iii"), ("parameters", "text p"), ("x", "x")], [("f", "frequency.non-exceedance", "tolerance = column tf"), ("e", "frequency.exceedance", "tolerance = column te")], rows, reason="what the library says of its expansion: 1e-14 of the normal variate as far as half of its reach, 2e-12 beyond; a probability far out has hundreds of times the relative error of its variate")


def kappa():
    rows = []
    for k, h in (("0.02", "-0.5"), ("-0.03", "-1"), ("0.01", "-2"), ("0.015", "-1.5")):
        for s in ("-92", "-99", "-101", "-104", "-112", "-140", "-800"):
            y = exp(-mpf(s) * mpf(k))
            x = float(30 + 8 * (1 - y) / mpf(k))
            s_of = -log(1 - mpf(k) * (mpf(x) - 30) / 8) / mpf(k)
            logf = log(1 - mpf(h) * exp(-s_of)) / mpf(h)
            if logf < -690:
                continue
            # f = (1 - k(x - xi)/a)^(1/k - 1) F^(1 - h) / a
            density = (1 / mpf(k) - 1) * log(1 - mpf(k) * (mpf(x) - 30) / 8) + (1 - mpf(h)) * logf - log(mpf(8))
            p = float(exp(logf))
            again = 30 + 8 * (1 - ((1 - mpf(p) ** mpf(h)) / mpf(h)) ** mpf(k)) / mpf(k)
            rows.append((f"30 8 {k} {h}", repr(x), show(exp(logf)), show(density), repr(p), show(again)))
    write(FOLDER, PROGRAM, "kappa-far-below", HOSKING + "the kappa law with h below 0, far below its middle", [("p", "text, location, scale, k, h"), ("x", "of the variate, value"), ("f", "1, non-exceedance"), ("d", "1, logarithm of the density"), ("asked", "1, non-exceedance"), ("q", "of the variate, quantile")],
          [("family", "word kappa"), ("parameters", "text p")], [("f", "frequency.non-exceedance", "input.x = x"), ("d", "frequency.log-density", "input.x = x"), ("q", "frequency.quantile", "input.probability = asked")], rows, tolerance="1e-10 relative", reason="a probability of 1e-200 has 500 times the relative error of its variate")
    # An exceedance of 1e-57 is what 1 less a probability leaves: 60 digits would tell three of it.
    mp.dps = 160
    rows = []
    for k, h in (("0.02", "-0.5"), ("-0.03", "-1"), ("0.01", "0.4"), ("0.015", "0"), ("-0.01", "0")):
        for s in ("40", "99", "101", "104", "130"):
            x = float(30 + 8 * (1 - exp(-mpf(s) * mpf(k))) / mpf(k))
            s_of = -log(1 - mpf(k) * (mpf(x) - 30) / 8) / mpf(k)
            logf = log(1 - mpf(h) * exp(-s_of)) / mpf(h) if mpf(h) else -exp(-s_of)
            rows.append((f"30 8 {k} {h}", repr(x), show(1 - exp(logf)), ""))
        if not mpf(h):
            for s in ("-60", "-104", "-150"):
                # exp(-exp(60)) is 0 in any number of the machine.
                rows.append((f"30 8 {k} {h}", repr(float(30 + 8 * (1 - exp(-mpf(s) * mpf(k))) / mpf(k))), "1", "0"))
    write(FOLDER, PROGRAM, "kappa-far-above", HOSKING + "the kappa law far above its middle; and far below it where h is 0", [("p", "text, location, scale, k, h"), ("x", "of the variate, value"), ("e", "1, exceedance"), ("f", "1, non-exceedance")],
          [("family", "word kappa"), ("parameters", "text p"), ("x", "x")], [("e", "frequency.exceedance"), ("f", "frequency.non-exceedance")], rows, tolerance="1e-10 relative", reason="a probability of 1e-50 has 100 times the relative error of its variate")
    mp.dps = 60


def positions():
    rows = []
    for formula, a, b in (("gringorten", "0.44", "0.12"), ("weibull", "0", "1"), ("hazen", "0.5", "0"), ("cunnane", "0.4", "0.2")):
        for n in (1, 2, 7, 30):
            rows.append((formula, n, show(sum(i * (i - mpf(a)) / (n + mpf(b)) for i in range(1, n + 1)))))
    write(FOLDER, PROGRAM, "plotting-positions-together", "plotting positions (i - a)/(n + 1 - 2a) of a whole sample, each times its place, summed", [("formula", "text, formula"), ("n", "1, size"), ("sum", "1, sum")], [("formula", "text formula"), ("size", "n")],
          [("sum", "frequency.plotting-positions")], rows, tolerance="1e-13 relative")


SKEWS = ("0.0499", "0.046", "0.03", "0.0501")

if __name__ == "__main__":
    for make in (pearson, kappa, positions):
        make()
