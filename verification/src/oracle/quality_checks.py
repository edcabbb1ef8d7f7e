"""Independent flags of the quality checks on an invented record: plain Python, no code in common with the library.

    python3 quality_checks.py FOLDER

writes data/quality-record.csv and quality-checks.csv into the folder of the tables. Each check is written from its sentence,
over the whole record at once, reading by reading anew; nothing is carried from one reading to the next.
"""

import math
import random
import statistics
import sys

N = 240
random.seed(20260301)


def record():
    """Depth, velocity and a second depth, a minute apart, with faults at known places."""
    depth, velocity, second = [], [], []
    for i in range(N):
        y = 0.20 + 0.08 * math.sin(i / 20) + random.gauss(0, 0.002)
        v = 0.60 + 0.20 * math.sin(i / 20) + random.gauss(0, 0.01)
        depth.append(round(y, 4))
        velocity.append(round(v, 3))
        second.append(round(y + random.gauss(0, 0.002), 4))
    depth[30] = 0.6
    depth[31] = 0.35
    for i in range(50, 56):
        depth[i] = 0.0
    for i in range(70, 85):
        depth[i] = depth[70]
    for i in range(100, 130):
        velocity[i] = 0.0
    for i in range(140, 175):
        velocity[i] = velocity[140]
    for i in range(180, 215):
        depth[i] = depth[i - 60]
    second[222] += 0.06
    second[223] += 0.035
    depth[228] += 0.15
    velocity[232] = 1.9
    return depth, velocity, second


def sd(values):
    return statistics.stdev(values)


def spike(x, i, low, high):
    if i == 0 or i == N - 1:
        return 2
    d = abs(x[i] - (x[i - 1] + x[i + 1]) / 2)
    return 4 if d > high else 3 if d > low else 1


def spared(x, i, low, high):
    flag = spike(x, i, low, high)
    if flag < 3:
        return flag

    def off(k):
        return abs(x[k] - (x[k - 1] + x[k + 1]) / 2) if 0 < k < N - 1 else -1

    return 2 if off(i - 1) > off(i) or off(i + 1) > off(i) else flag


def flat(x, i, suspect, fail, eps):
    run = 1
    while run < fail and i - run >= 0 and abs(x[i] - x[i - run]) <= eps:
        run += 1
    return 4 if run >= fail else 3 if run >= suspect else 1


def rate(x, i, per_minute):
    if i == 0:
        return 2
    return 3 if abs(x[i] - x[i - 1]) > per_minute else 1


def before(x, i, window):
    return x[max(0, i - window):i]


def rate_in_deviations(x, i, n, window):
    past = before(x, i, window)
    if len(past) < 10:
        return 2
    return 3 if abs(x[i] - x[i - 1]) > n * sd(past) else 1


def attenuated(x, i, window, suspect, fail):
    if i < window:
        return 2
    part = x[i - window:i + 1]
    span = max(part) - min(part)
    return 4 if span < fail else 3 if span < suspect else 1


def lost_echo(x, i, value, jump, gap):
    if x[i] != value:
        return 1
    first = i
    while first > 0 and x[first - 1] == value:
        first -= 1
    if first == 0:
        return 1
    # It fails from the first reading of the run that still is near enough to the last other value.
    other = x[first - 1]
    return 4 if abs(value - other) > jump and 1 <= gap else 1


def repeated(x, i, lag, least):
    start = i
    while start - lag >= 0 and x[start] == x[start - lag]:
        start -= 1
    start += 1
    if start > i or i - start < least:
        return 1
    changes = sum(1 for k in range(start + 1, i + 1) if x[k] != x[k - 1])
    return 4 if changes >= 10 else 1


def neighbour(x, y, i, low, high):
    d = abs(x[i] - y[i])
    return 4 if d > high else 3 if d > low else 1


def multivariate(x, y, i, n, m, window):
    a, b = before(x, i, window), before(y, i, window)
    if len(a) < 10:
        return 2
    return 3 if abs(x[i] - x[i - 1]) > n * sd(a) and abs(y[i] - y[i - 1]) < m * sd(b) else 1


def zero(v, y, i, above, after):
    def counts(k):
        return v[k] == 0 and y[k] > above

    if not counts(i):
        return 1
    first = i
    while first > 0 and counts(first - 1):
        first -= 1
    return 4 if i - first >= after else 3


def dead(v, y, i, window, stands, moves):
    if i < window:
        return 2
    a, b = v[i - window:i + 1], y[i - window:i + 1]
    return 4 if max(a) - min(a) <= stands and max(b) - min(b) > moves else 1


def relation(v, y, i, at, low, high):
    if y[i] < at[0] or y[i] > at[-1]:
        return 2
    k = max(j for j in range(len(at) - 1) if at[j] <= y[i])
    share = (y[i] - at[k]) / (at[k + 1] - at[k])
    least = low[k] + share * (low[k + 1] - low[k])
    most = high[k] + share * (high[k + 1] - high[k])
    return 1 if least <= v[i] <= most else 3


def main(folder):
    depth, velocity, second = record()
    with open(folder + "/data/quality-record.csv", "w", newline="\n") as out:
        out.write("depth,velocity,second\n")
        for row in zip(depth, velocity, second):
            out.write(",".join(repr(round(value, 6)) for value in row) + "\n")
    depth = [round(value, 6) for value in depth]
    second = [round(value, 6) for value in second]
    band = ([0.05, 0.15, 0.35], [0.2, 0.4, 0.8], [0.6, 0.75, 1.3])
    names = "spike spared flat rate deviations attenuated echo stuck repeated neighbour multivariate zero dead relation"
    with open(folder + "/quality-checks.csv", "w", newline="\n") as out:
        out.write("i," + names.replace(" ", ",") + "\n")
        for i in range(N):
            flags = [
                spike(depth, i, 0.05, 0.12),
                spared(depth, i, 0.05, 0.12),
                flat(depth, i, 5, 9, 0.0002),
                rate(depth, i, 0.03),
                rate_in_deviations(depth, i, 2.5, 40),
                attenuated(velocity, i, 12, 0.05, 0.01),
                lost_echo(depth, i, 0.0, 0.1, 10),
                lost_echo(depth, i, 0.762, 0.1, 10),
                repeated(depth, i, 60, 15),
                neighbour(second, depth, i, 0.02, 0.05),
                multivariate(depth, velocity, i, 2, 0.5, 30),
                zero(velocity, depth, i, 0.15, 8),
                dead(velocity, depth, i, 15, 0.001, 0.02),
                relation(velocity, depth, i, *band),
            ]
            out.write(",".join(str(value) for value in [i] + flags) + "\n")


main(sys.argv[1])
