"""Darcy friction factors of the Colebrook-White equation at 40 digits; writes friction.csv.

Run: python3 friction.py > ../resources/dev/runnel/hydraulics/flow/friction.csv   (needs mpmath)
"""
import random
from mpmath import mp, mpf, log10, findroot, nstr

mp.dps = 40
random.seed(20260102)
print("# Roots of 1/sqrt(f) + 2 lg(k/3.7 + 2.51/(Re sqrt f)) = 0, computed with mpmath by friction.py.")
print("reynolds,roughness,factor")
rows = [(float(re), float(k)) for re in (4e3, 1e4, 1e5, 1e6, 1e8, 3e8) for k in (0, 1e-6, 1e-4, 1e-3, 0.01, 0.05, 0.3, 1)]
rows += [(10 ** random.uniform(3.61, 9), 10 ** random.uniform(-7, -1)) for _ in range(150)]
for re, k in rows:
    g = lambda x: x + 2 * log10(mpf(k) / mpf("3.7") + mpf("2.51") * x / mpf(re))
    x = findroot(g, (mpf("0.1"), mpf(20)), solver="anderson", tol=1e-60, maxsteps=200)
    assert abs(g(x)) < mpf(10) ** -30
    print(f"{re!r},{k!r},{nstr(1 / x ** 2, 25)}")
