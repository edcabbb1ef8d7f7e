package dev.runnel.hydraulics.watch;

import java.util.Arrays;

/**
 * Whether a quantity stands away from usual by enough for as long as it does. Sound sites have days on which velocity and
 * depth part by several times their usual scatter and come together again, far more often than a normal law has it: what is
 * moderate must last for days, what is large or grows is told at once.
 */
final class Lasting {
    /** Known hours that make a day here. */
    private static final int DAY = 24;

    /** Hours of two tides. */
    private static final int TIDES = 25;

    /** Fewest known hours of a day that say something. */
    private static final int LEAST = 6;

    /** Distance in scales that each of the last 1, 2, 3 ... days must have; chosen here, as are all limits of this class. */
    private static final double[] RUNGS = {3, 2.5, 2.2, 1.9, 1.6, 1.3, 1.0};

    /** Distance of the last hours that is large at once. */
    private static final double LARGE = 3.5;

    /** What grows: by one scale, and to two, from some hours to the next. */
    private static final double GROWTH = 1;

    private static final double GROWN = 2;
    private static final int GROWTH_HOURS = 9;

    /** The same twice running, which what leaps to another level does not do. */
    private static final double STEADY_GROWTH = 0.7;

    private static final double STEADILY_GROWN = 3;
    private static final int STEADY_HOURS = 6;

    private final double[] known;
    private final double scale;
    private final double slack;

    /**
     * Looks at the known values of a quantity up to now.
     *
     * @param known distances from usual, positive in the direction looked at
     */
    Lasting(double[] known, double scale, double slack) {
        this.known = known;
        this.scale = scale;
        this.slack = slack;
    }

    /** Whether the last day stands away by more than the slack. */
    boolean isAway() {
        return median(0, DAY, 1) > slack * scale;
    }

    /** Whether it is told before its sum is over the limit: it is large, or grows and grows. */
    boolean isQuick() {
        double first = median(2 * STEADY_HOURS, STEADY_HOURS, STEADY_HOURS);
        double second = median(STEADY_HOURS, STEADY_HOURS, STEADY_HOURS);
        double third = median(0, STEADY_HOURS, STEADY_HOURS);
        double step = STEADY_GROWTH * scale;
        boolean growsOn = first > slack * scale
                && second - first > step
                && third - second > step
                && third > STEADILY_GROWN * scale;
        return growsOn || third > LARGE * scale;
    }

    /** The same where the water comes and goes with a tide: large over two whole tides, about a day. */
    boolean isQuickOverTides() {
        return median(0, TIDES, TIDES) > LARGE * scale;
    }

    /** Whether a sum over its limit is told: it has grown, or stays for days. */
    boolean lasts() {
        double before = median(GROWTH_HOURS, GROWTH_HOURS, GROWTH_HOURS);
        double now = median(0, GROWTH_HOURS, GROWTH_HOURS);
        boolean grown = before > slack * scale && now - before > GROWTH * scale && now > GROWN * scale;
        return grown || staysForDays();
    }

    /** Whether each of the last days stands away far enough, so many of them. */
    boolean staysForDays() {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < RUNGS.length; k++) {
            double day = median(k * DAY, DAY, LEAST);
            if (!(day > slack * scale)) {
                return false;
            }
            least = Math.min(least, day);
            if (least > RUNGS[k] * scale) {
                return true;
            }
        }
        return false;
    }

    /** Median of so many known values before the last ones; NaN of too few. */
    private double median(int back, int count, int least) {
        int to = known.length - back;
        int from = Math.max(0, to - count);
        return to < least ? Double.NaN : Medians.of(Arrays.copyOfRange(known, from, to));
    }
}
