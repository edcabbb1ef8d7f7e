"""Independent computation of uncertainties that are known exactly: Python with mpmath and NumPy, no code in common with the library.

    python3 model_uncertainty.py NAME > NAME.csv

writes one of the tables named in TABLES below. Models are sums of products of powers: their derivatives are taken by the rules for
powers, in 40 digits. Simulations are replaced by sequences of numbers that anyone can write down (s' = 1664525 s + 1013904223 modulo
2^32, s'/2^32 or its square, times a width), so that means, errors and the count of blocks are exact.
"""

import sys
from itertools import product

import numpy as np
from mpmath import mp, mpf, nstr, quad, sqrt, gamma, pi, findroot

mp.dps = 40


def show(*cells):
    print(",".join(c if isinstance(c, str) else str(c) if isinstance(c, int) else nstr(mpf(c), 15) for c in cells))


# ---- models -------------------------------------------------------------------------------------------------------------


class Model:
    def __init__(self, terms, n):
        self.terms = [([mpf(x) for x in terms[t:t + 1]][0], [int(e) for e in terms[t + 1:t + 1 + n]]) for t in range(0, len(terms), n + 1)]

    def derived(self, i):
        other = Model([], len(self.terms[0][1]) if self.terms else 1)
        other.terms = []
        for c, powers in self.terms:
            if powers[i]:
                other.terms.append((c * powers[i], [p - (k == i) for k, p in enumerate(powers)]))
        return other

    def at(self, x):
        total = mpf(0)
        for c, powers in self.terms:
            for v, p in zip(x, powers):
                c = c * v**p
            total += c
        return total


CASES = (
    # terms (factor and a power for each input), estimates, standard deviations, degrees of freedom or nothing, correlation
    ("1 1 1", "2 3", "0.4 0.5", "", 0),
    ("1 2", "1.3", "0.6", "", 0),
    ("1 3", "0.7", "0.5", "", 0),
    ("2 2 1 0.5 0 3 -1 1 0", "1.1 0.8", "0.3 0.6", "", 0),
    ("1 1 2 3 1 1 0.25 3 0", "0.9 -1.4", "0.7 0.35", "4 9", 0),
    ("1 1 1 1 2 2 0 1 0.5 0 1 2", "0.5 1.2 0.8", "0.3 0.4 0.5", "", 0),
    ("1 2 0 -3 1 1 1 0 2", "2.2 1.7", "0.45 0.8", "3 2", 0),
    ("1 1 0 1 0 1", "4 5", "2 1.2", "1 1", -0.9),
    ("1 1 0 1 0 1", "4 5", "2 1.2", "1 1", -0.6),
    ("1 1 0 1 0 1", "4 5", "2 1.2", "7 3", 0.5),
    ("1 1 0 1 0 1", "4 5", "2 0", "7 3", 0),
    ("1 1 0 1 0 1", "4 -4", "0 0", "", 0),
    ("1 1", "5", "0.2", "10000", 0),
    ("1 1", "5", "0.2", "12.7", 0),
)


def student(p, nu):
    """Quantile of Student's law by quadrature of its density; a whole number of degrees of freedom, infinite for the normal one."""
    nu = mpf(nu)
    c = gamma((nu + 1) / 2) / (sqrt(nu * pi) * gamma(nu / 2))
    f = lambda t: c * (1 + t * t / nu) ** (-(nu + 1) / 2)
    return findroot(lambda t: quad(f, [0, t]) + mpf(1) / 2 - p, mpf(2) + 10 / nu)


def models():
    print("terms,estimates,deviations,freedoms,correlation,value,standard,second,relative,degrees,probability,k,last,sensitivity,share")
    for terms, estimates, deviations, freedoms, r in CASES:
        x, u = ([mpf(v) for v in t.split()] for t in (estimates, deviations))
        n, r = len(x), mpf(str(r))
        f = Model(terms.split(), n)
        c = [f.derived(i).at(x) for i in range(n)]
        rho = lambda i, k: mpf(1) if i == k else r if {i, k} == {0, 1} else mpf(0)
        parts = [sum(c[i] * u[i] * c[k] * u[k] * rho(i, k) for k in range(n)) for i in range(n)]
        variance = sum(parts)
        second = sum((c[i] * u[i]) ** 2 for i in range(n))
        for i, k in product(range(n), range(n)):
            fi = f.derived(i)
            second += (fi.derived(k).at(x) ** 2 / 2 + c[i] * fi.derived(k).derived(k).at(x)) * u[i] ** 2 * u[k] ** 2
        value = f.at(x)
        p = mpf("0.95")
        freedoms = freedoms or " ".join(["Infinity"] * n)
        if "I" not in freedoms and variance:
            fourth = sum((c[i] * u[i]) ** 4 / mpf(v) for i, v in enumerate(freedoms.split()))
            degrees = variance**2 / fourth
            k = nstr(student((1 + p) / 2, max(1, int(degrees))), 15)
            degrees = nstr(degrees, 15)
        else:
            degrees = k = ""
        relative = "0" if value == 0 and variance == 0 else nstr(sqrt(variance) / abs(value), 15)
        show(terms, estimates, deviations, freedoms, nstr(r, 3), value, sqrt(variance), "" if r else nstr(sqrt(second), 15), relative, degrees, nstr(p, 5), k, n - 1,
             c[n - 1] if u[n - 1] else mpf(0), parts[n - 1] / variance if variance else mpf(0))


# ---- sequences ----------------------------------------------------------------------------------------------------------


class Sequence:
    def __init__(self, first, width, power):
        self.state, self.width, self.power = first, width, power

    def next(self, n):
        out = np.empty(n)
        for i in range(n):
            self.state = (1664525 * self.state + 1013904223) % 2**32
            part = self.state / 2**32
            out[i] = self.width * (part * part if self.power == 2 else part)
        return out


def quantile(ordered, p):
    """The highest trial that has no more than this share of them below it."""
    return ordered[min(len(ordered) - 1, int(mp.floor(mpf(str(p)) * len(ordered))))]


def interval(ordered, p):
    p = mpf(str(p))
    return quantile(ordered, (1 - p) / 2), quantile(ordered, (1 + p) / 2)


def sequences():
    print("first,width,power,trials,probability,mean,standard,quantile,lower,upper,shortest_lower,shortest_upper")
    for first, width, power, trials, p in (
        (1, 3.4, 1, 1000, "0.9533"), (7, 0.2, 2, 1000, "0.9003"), (99, 50, 2, 1507, "0.6667"), (5, 2, 2, 2003, "0.9997"), (12, 1, 1, 1001, "0.5003"),
    ):
        y = np.sort(Sequence(first, width, power).next(trials))
        exact = [mpf(float(v)) for v in y]
        mean = sum(exact) / trials
        standard = sqrt(sum((v - mean) ** 2 for v in exact) / (trials - 1))
        covered = min(trials - 1, int(mp.floor(mpf(p) * trials + mpf(1) / 2)))
        widths = y[covered:] - y[: trials - covered]
        at = int(np.argmin(widths))
        low, high = interval(y, p)
        show(str(first), str(width), str(power), str(trials), p, mean, standard, float(quantile(y, p)), float(low), float(high), float(y[at]), float(y[at + covered]))


def blocks():
    """JCGM 101, 7.9: blocks until twice the standard deviation of each averaged figure is within the numerical tolerance."""
    print("first,width,power,digits,probability,blocks,stable,tolerance,mean_error,standard_error,low_error,high_error")
    for first, width, power, digits, p in (
        (1, 3.4, 1, 2, "0.9533"), (8, 0.4, 1, 3, "0.9533"), (3, 1.7, 2, 2, "0.9003"), (21, 30, 2, 2, "0.9533"), (4, 1, 1, 1, "0.9987"),
        (77, 0.36, 1, 3, "0.6667"),
    ):
        size = max(int(mp.ceil(100 / (1 - mpf(p)))), 10_000)
        sequence, figures, everything = Sequence(first, width, power), [], []
        while True:
            y = np.sort(sequence.next(size))
            low, high = interval(y, p)
            figures.append([y.mean(), y.std(ddof=1), low, high])
            everything.append(y)
            h = len(figures)
            if h < 2:
                continue
            u = np.concatenate(everything).std(ddof=1)
            delta = mpf(10) ** (int(mp.floor(mp.log10(mpf(float(u))))) - digits + 1) / 2
            errors = [2 * float(np.std(np.array(figures)[:, k], ddof=1)) / np.sqrt(h) for k in range(4)]
            if max(errors) <= delta:
                break
        show(str(first), str(width), str(power), str(digits), p, h, "1", delta, *errors)


def random_alone():
    """A volume whose readings err alone: the errors add as squares and nothing is common."""
    print("flows,step,random,standard")
    for flows, step, random in (("0.2 0.3 0.25", "120", "0.05"), ("0.01 0.5 0.7 0.02", "300", "0.2"), ("1.2", "60", "0.03")):
        show(flows, step, random, mpf(random) * mpf(step) * sqrt(sum(mpf(q) ** 2 for q in flows.split())))


def certain():
    """Inputs without uncertainty: both ways agree, and the tolerance of the comparison is none."""
    print("estimates,deviations,shapes,digits,trials,low,high,tolerance,holds")
    for estimates, shapes in (("3", "normal"), ("2 -5", "normal normal"), ("0", "normal")):
        show(estimates, " ".join(["0"] * len(estimates.split())), shapes, "1", "1000", mpf(0), mpf(0), mpf(0), "1")


TABLES = {
    "uncertainty-none": certain,
    "uncertainty-models": models,
    "uncertainty-sequences": sequences,
    "uncertainty-blocks": blocks,
    "volume-random-alone": random_alone,
}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
