package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.baseline.DayCurve;

/**
 * The phase of single dry days: by how many hours the usual course of the depth must be moved to fit the day best, its level,
 * a straight line and the amplitude free.
 */
final class ClockWatch {
    /** Fewest hours of a day whose course can be placed; chosen here. */
    static final int LEAST_HOURS = 16;

    /** Days that are kept; chosen here, enough for the longest agreement asked for. */
    private static final int DAYS = 16;

    /** Farthest shift that is tried, in steps; chosen here. */
    private static final int MOST_SHIFT = 20;

    /** Error of the shift of a day in which the clock was moved by an hour, h; chosen here. */
    private static final double MIXED_DAY = 0.5;

    private static final int STEPS_PER_HOUR = 4;
    private static final int STEPS = 24 * STEPS_PER_HOUR;

    /** A day may be flatter or livelier than usual within these bounds; chosen here. */
    private static final double LEAST_AMPLITUDE = 0.6;

    private static final double LARGEST_AMPLITUDE = 1.6;

    private final double[][] curve;
    private final ClockUsual usual;
    private final Ring days = new Ring(DAYS, 5);
    private final double[] hours = new double[25];
    private final double[] values = new double[25];
    private int count;

    ClockWatch(DayCurve depth, ClockUsual usual) {
        this.usual = usual;
        curve = new double[2][STEPS];
        for (int i = 0; i < STEPS; i++) {
            curve[0][i] = depth.value((double) i / STEPS_PER_HOUR, false);
            curve[1][i] = depth.value((double) i / STEPS_PER_HOUR, true);
        }
    }

    /** Adds a dry hour of the day. */
    void add(double hourOfDay, double lnDepth) {
        if (count < hours.length) {
            hours[count] = hourOfDay;
            values[count++] = lnDepth;
        }
    }

    /** Ends the day; returns whether it was good enough to tell its phase. */
    boolean endDay(long day, boolean rest) {
        boolean usable = false;
        if (count >= LEAST_HOURS) {
            double[] phase = phase(curve[rest ? 1 : 0], usual.centre(rest));
            // At the end of what is tried the shift is none.
            usable = !Double.isNaN(phase[0]);
            if (usable) {
                double other = squares(curve[rest ? 0 : 1], steps(usual.centre(!rest)));
                days.add(day, phase[0] - usual.centre(rest), phase[1], phase[2], other, rest ? 1 : 0);
            }
        }
        count = 0;
        return usable;
    }

    private static int steps(double shift) {
        return (int) Math.round(shift * STEPS_PER_HOUR);
    }

    void dropDay() {
        count = 0;
    }

    int size() {
        return days.size();
    }

    long day(int fromLast) {
        return days.number(days.size() - 1 - fromLast);
    }

    /** Shift of a day against its usual one in hours, positive if the day is late by the clock of the record. */
    double shift(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 0);
    }

    /**
     * Mean shift of the first usable days of an interval, at most so many, weighted by what days of their kind scatter, and
     * the variance of that mean; NaN if there are fewer than the least. The shift of a mixed day, half by one clock and half by
     * another, says little.
     */
    double[] mean(long fromDay, long toDay, int least, int most, long mixedDay) {
        double sum = 0;
        double weights = 0;
        int found = 0;
        for (int i = days.from(fromDay); i < days.size() && days.number(i) <= toDay && found < most; i++) {
            double scatter = usual.scatter(days.value(i, 4) > 0);
            double variance = scatter * scatter + (days.number(i) == mixedDay ? MIXED_DAY * MIXED_DAY : 0);
            sum += days.value(i, 0) / variance;
            weights += 1 / variance;
            found++;
        }
        return found < least ? new double[] {Double.NaN, Double.NaN} : new double[] {sum / weights, 1 / weights};
    }

    double squaresUnmoved(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 1);
    }

    double squaresMoved(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 2);
    }

    /** Squares that the usual day of the other kind leaves, not moved. */
    double squaresOfOther(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 3);
    }

    boolean isRest(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 4) > 0;
    }

    /** Shift in hours, NaN at the end of what is tried; sum of squares at the usual shift and at this one. */
    private double[] phase(double[] curveOfKind, double centre) {
        double[] squares = new double[2 * MOST_SHIFT + 1];
        int best = 0;
        for (int i = 0; i < squares.length; i++) {
            squares[i] = squares(curveOfKind, i - MOST_SHIFT);
            best = squares[i] < squares[best] ? i : best;
        }
        if (best == 0 || best == squares.length - 1) {
            return new double[] {Double.NaN, 0, 0};
        }
        double bend = squares[best - 1] - 2 * squares[best] + squares[best + 1];
        double at = best - MOST_SHIFT + (bend > 0 ? (squares[best - 1] - squares[best + 1]) / (2 * bend) : 0);
        int unmoved = Math.min(squares.length - 1, Math.max(0, MOST_SHIFT + steps(centre)));
        return new double[] {at / STEPS_PER_HOUR, squares[unmoved], squares[best]};
    }

    /** Least squares of the day against the curve that comes k quarters of an hour late. */
    private double squares(double[] usual, int k) {
        double n = count;
        double st = 0;
        double stt = 0;
        double stx = 0;
        double sty = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (int i = 0; i < count; i++) {
            double position = hours[i] * STEPS_PER_HOUR - k;
            int below = (int) Math.floor(position);
            double share = position - below;
            double x =
                    (1 - share) * usual[Math.floorMod(below, STEPS)] + share * usual[Math.floorMod(below + 1, STEPS)];
            double y = values[i];
            double t = i;
            st += t;
            stt += t * t;
            stx += t * x;
            sty += t * y;
            sx += x;
            sy += y;
            sxx += x * x;
            sxy += x * y;
            syy += y * y;
        }
        // Level and a straight line are free, so that the end of a wet spell does not pass for another hour.
        double tt = stt - st * st / n;
        double tx = stx - st * sx / n;
        double ty = sty - st * sy / n;
        double xx = sxx - sx * sx / n - tx * tx / tt;
        double xy = sxy - sx * sy / n - tx * ty / tt;
        double yy = syy - sy * sy / n - ty * ty / tt;
        double amplitude = xx > 0 ? Math.min(LARGEST_AMPLITUDE, Math.max(LEAST_AMPLITUDE, xy / xx)) : 1;
        return yy - 2 * amplitude * xy + amplitude * amplitude * xx;
    }

    void write(StateText text) {
        days.write(text, "clockDays");
        text.with("clockHours", java.util.Arrays.copyOf(hours, count))
                .with("clockValues", java.util.Arrays.copyOf(values, count));
    }

    void read(StateText text) {
        days.read(text, "clockDays");
        double[] found = text.numbers("clockHours");
        count = found.length;
        System.arraycopy(found, 0, hours, 0, count);
        System.arraycopy(text.numbers("clockValues"), 0, values, 0, count);
    }
}
