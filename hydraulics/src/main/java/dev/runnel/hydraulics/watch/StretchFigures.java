package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.baseline.DayCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/** Figures of a stretch that a baseline keeps beside its curves. */
final class StretchFigures {
    /** Usual ln of highest over lowest depth of an hour above which water is pumped; chosen here. */
    private static final double PUMPED_SPREAD = 0.25;

    /** The same above which pumps make hours and their velocities another matter; chosen here. */
    private static final double STROKE_SPREAD = 0.4;

    /** The same of the upper quartile, above which the water may be gone for hours: readings far apart see a stroke now and
     * then; chosen here. */
    private static final double SWINGING_SPREAD = 0.5;

    private static final double UPPER = 0.75;

    private static final long HOURS_OF_DAY = 24;

    /** Known hours that make a day of which the largest value says something, and days from which on they do; chosen here. */
    private static final int LEAST_HOURS_OF_DAY = 12;

    private static final int LEAST_DAYS = 3;

    /** Standard deviations above the mean, (√6/π)(ln 3650 − 0.5772): Gumbel's value of 3650 days by the method of moments. */
    private static final double GUMBEL_TEN_YEARS = 5.945;

    private StretchFigures() {}

    /** Variances of the residuals of depth and velocity, and their covariance between. */
    static double[] covariance(double[] d, double[] u) {
        double dd = 0;
        double du = 0;
        double uu = 0;
        int count = 0;
        for (int i = 0; i < d.length; i++) {
            if (!Double.isNaN(d[i]) && !Double.isNaN(u[i])) {
                dd += d[i] * d[i];
                du += d[i] * u[i];
                uu += u[i] * u[i];
                count++;
            }
        }
        return count == 0 ? new double[] {0, 0, 0} : new double[] {dd / count, du / count, uu / count};
    }

    /** Median over the dry days of the highest hourly level, m. */
    static double peak(StretchHours stretch) {
        int size = stretch.size;
        List<Double> peaks = new ArrayList<>();
        long day = Long.MIN_VALUE;
        double highest = Double.NaN;
        int count = 0;
        for (int i = 0; i <= size; i++) {
            long next = i < size ? stretch.day(i) : Long.MAX_VALUE;
            if (next != day) {
                if (count >= ClockWatch.LEAST_HOURS) {
                    peaks.add(highest);
                }
                day = next;
                count = 0;
                highest = Double.NEGATIVE_INFINITY;
            }
            if (i < size && stretch.dry[i] && !Double.isNaN(stretch.lnDepth[i])) {
                highest = Math.max(highest, stretch.lnDepth[i]);
                count++;
            }
        }
        if (peaks.isEmpty()) {
            double[] sorted = StretchHours.pick(stretch.lnDepth, stretch.dry);
            Arrays.sort(sorted);
            return Math.exp(Medians.quantile(sorted, 0.95));
        }
        return Math.exp(
                Medians.of(peaks.stream().mapToDouble(Double::doubleValue).toArray()));
    }

    /** The most hours of upstream velocity in a day. */
    static int upstreamHours(StretchHours stretch) {
        int most = 0;
        long day = Long.MIN_VALUE;
        int count = 0;
        for (int i = 0; i < stretch.size; i++) {
            long next = Math.floorDiv(stretch.hours[i], 24L);
            count = next == day ? count : 0;
            day = next;
            count += Double.isNaN(stretch.hour(i).upstream) ? 0 : 1;
            most = Math.max(most, count);
        }
        return most;
    }

    /** Where the phases of single dry days lie, and their scatter, by the logarithms of one quantity. */
    static ClockUsual clock(StretchHours stretch, double[] values, ClockDay course, boolean byFlow) {
        ClockWatch clock = new ClockWatch(course, Optional.empty());
        ClockUsual.Learner learner = new ClockUsual.Learner();
        for (int i = 0; i < stretch.size; i++) {
            if (stretch.isNearlyDry(i)) {
                clock.add(stretch.hourOfDay(i), values[i], Double.NaN);
            }
            long day = stretch.day(i);
            boolean ends = i + 1 == stretch.size || stretch.day(i + 1) != day;
            if (ends && clock.endDay(day, stretch.isRest(i))) {
                learner.add(stretch.isRest(i), clock.shift(0), clock.shiftOfMorning(0), clock.shiftOfEvening(0));
            }
        }
        return learner.usual(byFlow);
    }

    /** Lags of the depth behind the rain of the storms in the stretch, h. */
    static double[] stormLags(StretchHours stretch, DayCurve depth) {
        StormHours storms = new StormHours(StormLag.LEAST_RISE);
        List<Double> lags = new ArrayList<>();
        for (int i = 0; i < stretch.size; i++) {
            SiteHour each = stretch.hour(i);
            double usual = depth.value(stretch.hourOfDay(i), stretch.isRest(i));
            storms.add(each.hour, each.rain, each.lnDepth - usual).ifPresent(fit -> lags.add(fit.lag()));
        }
        return lags.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** What the channels of a level alone show in the stretch. */
    static LevelChannels.Usual levels(StretchHours stretch, DayCurve depth) {
        LevelChannels channels = new LevelChannels(LevelChannels.lowestHour(depth));
        for (int i = 0; i < stretch.size; i++) {
            double hourOfDay = stretch.hourOfDay(i);
            channels.hour(stretch.hour(i), hourOfDay, depth.value(hourOfDay, stretch.isRest(i)), stretch.dry[i]);
        }
        return channels.usual(stretch.stretch.hours() / 24);
    }

    /** The longest runs of equal depths of each day, ns. */
    static double[] longestDepthRuns(StretchHours stretch) {
        return daily(stretch, i -> (double) stretch.hour(i).depthRun);
    }

    /** The same of velocities. */
    static double[] longestVelocityRuns(StretchHours stretch) {
        return daily(stretch, i -> (double) stretch.hour(i).velocityRun);
    }

    /** How the velocity steps from one reading to the next. */
    static ChanceRun chanceRun(StretchHours stretch) {
        double steps = 0;
        double before = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < stretch.size; i++) {
            SiteHour hour = stretch.hour(i);
            steps += hour.velocitySteps;
            before += hour.velocitiesBefore;
            least = Math.min(least, hour.velocityStep);
        }
        return ChanceRun.of(least, steps, before);
    }

    /** The largest steps of the level from one reading to the next in the dry hours of each day, m. */
    static double[] largestSteps(StretchHours stretch) {
        return daily(stretch, i -> stretch.dry[i] ? Math.abs(stretch.hour(i).step) : Double.NaN);
    }

    /** The largest value of each day of 24 h with hours enough that know one. */
    private static double[] daily(StretchHours stretch, IntToDoubleFunction value) {
        double[] found = new double[stretch.size];
        int days = 0;
        int count = 0;
        double largest = 0;
        for (int i = 0; i < stretch.size; i++) {
            double x = value.applyAsDouble(i);
            if (!Double.isNaN(x)) {
                largest = count == 0 ? x : Math.max(largest, x);
                count++;
            }
            boolean ends = i + 1 == stretch.size
                    || Math.floorDiv(stretch.hours[i + 1], HOURS_OF_DAY)
                            != Math.floorDiv(stretch.hours[i], HOURS_OF_DAY);
            if (ends) {
                if (count >= LEAST_HOURS_OF_DAY) {
                    found[days++] = largest;
                }
                count = 0;
            }
        }
        return Arrays.copyOf(found, days);
    }

    /**
     * What the largest of a day reaches once in ten years if the daily largest follow the law of Gumbel, by its moments; 0 of
     * too few days.
     */
    static double onceInTenYears(double[] daily) {
        if (daily.length < LEAST_DAYS) {
            return 0;
        }
        double mean = Arrays.stream(daily).sum() / daily.length;
        return mean + GUMBEL_TEN_YEARS * Math.sqrt(Medians.variance(daily));
    }

    static boolean pumped(StretchHours stretch) {
        return Medians.quantile(drySpreads(stretch), 0.5) > PUMPED_SPREAD;
    }

    /** Whether pumps beat so strongly that hours differ by their strokes, which a noisy sensor of shallow water does not. */
    static boolean strokes(StretchHours stretch) {
        return Medians.quantile(drySpreads(stretch), 0.5) > STROKE_SPREAD;
    }

    /** Whether the level swings far in many hours, so that next to nothing may come and go. */
    static boolean swings(StretchHours stretch) {
        return Medians.quantile(drySpreads(stretch), UPPER) > SWINGING_SPREAD;
    }

    /** How far the level swings within dry hours, in ln y, sorted. */
    private static double[] drySpreads(StretchHours stretch) {
        double[] spreads = stretch.nan();
        for (int i = 0; i < stretch.size; i++) {
            boolean shown = stretch.dry[i] && stretch.hour(i).hasDepth();
            spreads[i] = shown ? stretch.hour(i).depthSpread : Double.NaN;
        }
        double[] sorted = Medians.known(spreads);
        Arrays.sort(sorted);
        return sorted;
    }
}
