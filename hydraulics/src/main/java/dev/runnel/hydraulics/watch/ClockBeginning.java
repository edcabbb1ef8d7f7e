package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.EpochNanos;

/**
 * When a clock went wrong, as the days before and after tell: the shift of each day is held against what it would be if the
 * clock had gone wrong at each hour. Between days that tell nothing any time is as good as another, and the bounds say so.
 *
 * @param since the middle of the hours that fit best
 * @param earliest the first hour that fits nearly as well; if the first day known is one of those that moved, the end of the baseline
 * @param latest the last hour that does
 */
record ClockBeginning(long since, long earliest, long latest) {
    /** Squares by which an hour may fit worse than the best: 95 % of chi-squared of one degree of freedom. */
    private static final double NEARLY = 3.84;

    /** Squares that one day counts for at most, which may be anybody's holiday; chosen here, as is the next. */
    private static final double MOST = 9;

    /** Error of a day that went by both clocks, as a share of the shift: its hours do not weigh alike. */
    private static final double MIXED = 0.4;

    private static final double EQUAL = 1e-9;

    /** The beginning of a shift, h, that days since the end of a baseline tell of. */
    static ClockBeginning of(ClockWatch watch, LocalHours local, SiteBaseline baseline, double shift) {
        int last = watch.size() - 1;
        long first = local.firstHour(watch.day(last));
        int count = (int) (local.firstHour(watch.day(0)) - first) + 1;
        double[] squares = new double[count];
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < count; k++) {
            for (int i = 0; i <= last; i++) {
                squares[k] += squares(watch, local, i, first + k, shift);
            }
            least = Math.min(least, squares[k]);
        }
        int from = firstBelow(squares, least + NEARLY);
        long begin = (first + from) * SiteHour.NANOS;
        return new ClockBeginning(
                (first + (firstBelow(squares, least + EQUAL) + lastBelow(squares, least + EQUAL)) / 2) * SiteHour.NANOS,
                from > 0
                        ? begin
                        : Math.min(begin, EpochNanos.of(baseline.interval().end())),
                (first + lastBelow(squares, least + NEARLY)) * SiteHour.NANOS);
    }

    /** By how much a day stands away from a clock that went wrong at an hour, in squares of its scatter. */
    private static double squares(ClockWatch watch, LocalHours local, int fromLast, long hour, double shift) {
        long begin = local.firstHour(watch.day(fromLast));
        long end = local.firstHour(watch.day(fromLast) + 1);
        double share = Math.min(1, Math.max(0, (double) (end - hour) / (end - begin)));
        double scatter = watch.scatter(fromLast);
        double error = share > 0 && share < 1 ? MIXED * shift : 0;
        double away = watch.shift(fromLast) - share * shift;
        return Math.min(MOST, away * away / (scatter * scatter + error * error));
    }

    private static int firstBelow(double[] squares, double limit) {
        int i = 0;
        while (squares[i] > limit) {
            i++;
        }
        return i;
    }

    private static int lastBelow(double[] squares, double limit) {
        int i = squares.length - 1;
        while (squares[i] > limit) {
            i--;
        }
        return i;
    }
}
