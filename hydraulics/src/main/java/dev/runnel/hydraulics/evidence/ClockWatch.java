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

    private static final int STEPS_PER_HOUR = 4;
    private static final int STEPS = 24 * STEPS_PER_HOUR;

    /** A day may be flatter or livelier than usual within these bounds; chosen here. */
    private static final double LEAST_AMPLITUDE = 0.6;

    private static final double LARGEST_AMPLITUDE = 1.6;

    private final double[][] curve;
    private final Ring days = new Ring(DAYS, 3);
    private final double[] hours = new double[25];
    private final double[] values = new double[25];
    private int count;

    ClockWatch(DayCurve depth) {
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
        boolean usable = count >= LEAST_HOURS;
        if (usable) {
            double[] phase = phase(rest ? curve[1] : curve[0]);
            days.add(day, phase[0], phase[1], phase[2]);
        }
        count = 0;
        return usable;
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

    /** Shift of a day in hours, positive if the day is late by the clock of the record. */
    double shift(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 0);
    }

    /** Mean shift of the first usable days of an interval, at most so many; NaN if there are fewer than the least. */
    double mean(long fromDay, long toDay, int least, int most) {
        double sum = 0;
        int found = 0;
        for (int i = days.from(fromDay); i < days.size() && days.number(i) <= toDay && found < most; i++) {
            sum += days.value(i, 0);
            found++;
        }
        return found < least ? Double.NaN : sum / found;
    }

    double squaresUnmoved(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 1);
    }

    double squaresMoved(int fromLast) {
        return days.value(days.size() - 1 - fromLast, 2);
    }

    void clear() {
        days.clear();
    }

    /** Shift in hours, sum of squares unmoved and moved. */
    private double[] phase(double[] usual) {
        double[] squares = new double[2 * MOST_SHIFT + 1];
        int best = 0;
        for (int i = 0; i < squares.length; i++) {
            squares[i] = squares(usual, i - MOST_SHIFT);
            best = squares[i] < squares[best] ? i : best;
        }
        double at = best - MOST_SHIFT;
        if (best > 0 && best < squares.length - 1) {
            double bend = squares[best - 1] - 2 * squares[best] + squares[best + 1];
            at += bend > 0 ? (squares[best - 1] - squares[best + 1]) / (2 * bend) : 0;
        }
        return new double[] {at / STEPS_PER_HOUR, squares[MOST_SHIFT], squares[best]};
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
