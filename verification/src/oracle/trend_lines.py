"""Independent computation of lines through values over time: NumPy and SciPy, no code in common with the library.

    python3 trend_lines.py > ../main/resources/dev/runnel/verification/tables/timeseries/trend-lines.csv

Theil-Sen and Siegel slopes by SciPy, the limits of Theil-Sen by Gilbert's ranks interpolated in NumPy (SciPy rounds the ranks),
least squares by SciPy, the standard error of tau from the variance of S counted over all pairs. Made with NumPy 2 and SciPy 1.17.
"""

import math

import numpy as np
from scipy import stats

SAMPLES = {
    "tied": ([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], [1, 2, 2, 3, 3, 3, 2, 4, 5, 5, 4, 6, 1]),
    "uneven": (
        [0.5, 1.7, 2.0, 4.4, 5.1, 8.3, 9.9, 12.0, 17.5, 18.25, 21.0],
        [3.21, 2.94, 3.37, 3.02, 2.11, 2.75, 2.38, 1.99, 2.26, 1.71, 1.44],
    ),
    "wild": ([1, 2, 3, 4, 5, 6, 7, 8, 9, 10], [4.1, 4.6, 4.9, 5.7, 44.0, 6.4, 7.2, 7.5, 60.0, 8.8]),
}


def variance_of_s(y):
    n = len(y)
    counts = [y.count(value) for value in set(y)]
    return (n * (n - 1) * (2 * n + 5) - sum(t * (t - 1) * (2 * t + 5) for t in counts)) / 18


def ranked(ordered, rank):
    return float(np.interp(rank - 1, np.arange(len(ordered)), ordered))


print("times,values,sen,sen_intercept,sen_lower,sen_upper,siegel,siegel_intercept,line,line_intercept,line_error,line_lower,"
      "line_upper,line_p,tau_error")
for t, y in SAMPLES.values():
    n = len(y)
    slopes = sorted((y[j] - y[i]) / (t[j] - t[i]) for i in range(n) for j in range(i + 1, n))
    spread = stats.norm.ppf(0.95) * math.sqrt(variance_of_s(y))
    sen = stats.theilslopes(y, t, 0.9)
    siegel = stats.siegelslopes(y, t).slope
    line = stats.linregress(t, y)
    reach = stats.t.ppf(0.95, n - 2) * line.stderr
    pairs = n * (n - 1) / 2
    tied = sum(1 for i in range(n) for j in range(i + 1, n) if y[i] == y[j])
    row = [
        sen.slope, sen.intercept, ranked(slopes, (pairs - spread) / 2), ranked(slopes, (pairs + spread) / 2 + 1),
        siegel, float(np.median(np.array(y) - siegel * np.array(t))),
        line.slope, line.intercept, line.stderr, line.slope - reach, line.slope + reach, line.pvalue,
        math.sqrt(variance_of_s(y)) / math.sqrt(pairs * (pairs - tied)),
    ]
    print(",".join([" ".join(map(str, t)), " ".join(map(str, y))] + [repr(float(v)) for v in row]))
