package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Arrays;

/** The hours of one stretch to learn from, as columns, and curves through them. */
final class StretchHours {
    /** Harmonics of the usual day of a quantity. */
    private static final int USUAL_HARMONICS = 4;

    final Interval stretch;
    final int size;
    final long[] hours;
    final double[] lnDepth;
    final double[] lnVelocity;

    /** By the means of the hours, which place a day. */
    final double[] meanLnDepth;

    final boolean[] dry;
    final boolean[] longDry;

    /** Hours with a depth, those of them that are dry, and hours with depth and velocity. */
    final int seen;

    final int seenDry;
    final int both;

    /** Whether rain is known in any of them. */
    final boolean rain;

    private final LearningHours all;
    private final LocalHours local;
    private final int from;

    StretchHours(LearningHours all, Interval stretch, LocalHours local) {
        this.all = all;
        this.stretch = stretch;
        this.local = local;
        from = all.from(Math.floorDiv(stretch.start().getEpochSecond() + 3599, 3600L));
        size = Math.max(0, all.from(Math.floorDiv(stretch.end().getEpochSecond(), 3600L)) - from);
        hours = new long[size];
        lnDepth = new double[size];
        lnVelocity = new double[size];
        meanLnDepth = new double[size];
        dry = new boolean[size];
        longDry = new boolean[size];
        int depths = 0;
        int dryDepths = 0;
        int pairs = 0;
        boolean known = false;
        for (int i = 0; i < size; i++) {
            SiteHour each = hour(i);
            hours[i] = each.hour;
            lnDepth[i] = each.lnDepth;
            lnVelocity[i] = each.lnVelocity;
            meanLnDepth[i] = each.meanLnDepth;
            dry[i] = all.isDry(from + i);
            longDry[i] = all.isLongDry(from + i);
            depths += each.hasDepth() ? 1 : 0;
            dryDepths += each.hasDepth() && dry[i] ? 1 : 0;
            pairs += each.hasBoth() ? 1 : 0;
            known |= !Double.isNaN(each.rain);
        }
        seen = depths;
        seenDry = dryDepths;
        both = pairs;
        rain = known;
    }

    SiteHour hour(int i) {
        return all.hour(from + i);
    }

    boolean isNearlyDry(int i) {
        return all.isNearlyDry(from + i);
    }

    double hourOfDay(int i) {
        return local.hourOfDay(hours[i]);
    }

    boolean isRest(int i) {
        return local.isRest(hours[i]);
    }

    long day(int i) {
        return local.day(hours[i]);
    }

    /** A column of nothing. */
    double[] nan() {
        double[] values = new double[size];
        Arrays.fill(values, Double.NaN);
        return values;
    }

    static int count(double[] values, boolean[] where) {
        int count = 0;
        for (int i = 0; i < values.length; i++) {
            count += where[i] && !Double.isNaN(values[i]) ? 1 : 0;
        }
        return count;
    }

    static int count(double[] values) {
        return Medians.known(values).length;
    }

    static double[] pick(double[] values, boolean[] where) {
        double[] picked = new double[values.length];
        int used = 0;
        for (int i = 0; i < values.length; i++) {
            if (where[i] && !Double.isNaN(values[i])) {
                picked[used++] = values[i];
            }
        }
        return Arrays.copyOf(picked, used);
    }

    /** Where depth and velocity are both known. */
    boolean[] moving() {
        boolean[] where = new boolean[size];
        for (int i = 0; i < size; i++) {
            where[i] = hour(i).hasBoth();
        }
        return where;
    }

    DayCurve curve(double[] values, boolean[] where) {
        return curve(values, where, USUAL_HARMONICS);
    }

    DayCurve curve(double[] values, boolean[] where, int harmonics) {
        int count = count(values, where);
        double[] hourOfDay = new double[count];
        boolean[] rest = new boolean[count];
        int used = 0;
        for (int i = 0; i < size; i++) {
            if (where[i] && !Double.isNaN(values[i])) {
                hourOfDay[used] = hourOfDay(i);
                rest[used++] = isRest(i);
            }
        }
        return DayCurve.fit(hourOfDay, rest, pick(values, where), harmonics);
    }

    double[] residuals(DayCurve curve, double[] values, boolean[] where) {
        double[] residuals = nan();
        for (int i = 0; i < size; i++) {
            if (where[i]) {
                residuals[i] = values[i] - curve.value(hourOfDay(i), isRest(i));
            }
        }
        return residuals;
    }
}
