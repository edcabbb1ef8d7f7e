"""Where one and two points measure the mean of a power profile: Python with mpmath, no code in common with the library.

    python3 point_rules.py gauging-points-derived > gauging-points-derived.csv

In u = (height)^(1/m) the mean m/(m + 1) stands at the height (m/(m + 1))^m; beside a point at a fifth of the depth a second one gives
the mean where its velocity is twice the mean less that of the first. The rules of ISO 748 name tenths of the depth.
"""

import sys

from mpmath import mp, mpf, nstr

mp.dps = 30


def derived():
    print("rule,place,m,z")
    for m in range(5, 11):
        mean = mpf(m) / (m + 1)
        print(f"ONE,0,{m},{nstr(1 - mean**m, 12)}")
        lower = 2 * mean - (1 - mpf("0.2")) ** (mpf(1) / m)
        print(f"TWO,1,{m},{nstr(1 - lower**m, 12)}")


TABLES = {"gauging-points-derived": derived}

if __name__ == "__main__":
    TABLES[sys.argv[1]]()
