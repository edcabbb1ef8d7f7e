package dev.runnel.verification.simulation;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * What a watch is measured by on one site: dry hours, the depth alarm that the fault itself causes, and how far the ratio
 * of velocity to the law had moved at a moment. All of it from the water, not from readings.
 */
final class Truths {
    private static final int BASELINE_DAYS = 14;
    private static final double HIGHEST = 0.95;

    private final Site site;
    private final boolean[] dry;

    Truths(Site site) {
        this.site = site;
        this.dry = dry(site.grid(), site.water().rain());
    }

    /**
     * Dry hours. After an hour of rain of an event (gaps of 6 h at most) that has brought E mm so far, the time is wet for
     * 18 + 2E hours, 72 at most; for 3 h while E is below 0.8 mm.
     */
    private static boolean[] dry(Grid grid, double[] rain) {
        int each = 60 / grid.minutes();
        boolean[] dry = new boolean[grid.hours()];
        double event = 0;
        int last = -1000;
        double until = -1;
        for (int h = 0; h < dry.length; h++) {
            double depth = 0;
            for (int k = 0; k < each; k++) {
                depth += rain[h * each + k];
            }
            if (depth > 0.05) {
                event = h - last > 6 ? depth : event + depth;
                last = h;
                until = Math.max(until, h + (event >= 0.8 ? Math.min(72, 18 + 2 * event) : 3));
            }
            dry[h] = h > until;
        }
        return dry;
    }

    /** Days from the start at which the fault's own depth first reaches the alarm level; empty if it does not. */
    OptionalDouble alarm() {
        Fault fault = site.fault();
        if (!fault.kind().isPhysical()) {
            return OptionalDouble.empty();
        }
        Water sound = Simulator.water(site.order().withFault(Fault.NONE));
        double[] without = site.grid().hourly(sound.depth());
        double level = level(without);
        double[] with = site.grid().hourly(site.water().depth());
        double lastDay = fault.begin() + fault.ramp() + 1;
        for (int h = (int) Math.ceil(fault.begin() * 24); h < with.length && h / 24.0 <= lastDay; h++) {
            if (dry[h] && with[h] >= level && without[h] < level) {
                return OptionalDouble.of((h + 1) / 24.0);
            }
        }
        return OptionalDouble.empty();
    }

    /** Twice the median of the daily maxima of hourly depth in the dry hours of the baseline; at most 95 % of the height. */
    private double level(double[] hourly) {
        double[] maxima = new double[BASELINE_DAYS];
        int n = 0;
        for (int day = 0; day < BASELINE_DAYS; day++) {
            double highest = 0;
            int hours = 0;
            for (int h = 24 * day; h < Math.min(hourly.length, 24 * day + 24); h++) {
                if (dry[h]) {
                    highest = Math.max(highest, hourly[h]);
                    hours++;
                }
            }
            if (hours >= 12) {
                maxima[n++] = highest;
            }
        }
        if (n == 0) {
            return HIGHEST * site.pipe().height();
        }
        Arrays.sort(maxima, 0, n);
        double median = n % 2 == 1 ? maxima[n / 2] : (maxima[n / 2 - 1] + maxima[n / 2]) / 2;
        return Math.min(2 * median, HIGHEST * site.pipe().height());
    }

    /** By how much ln(v / law) had moved, in size, in the median of the 24 h before a day. */
    double shift(double day) {
        double[] last = Arrays.copyOfRange(
                site.water().shift(),
                site.grid().at(Math.max(0, day - 1)),
                Math.max(1, site.grid().at(day)));
        double[] sizes = Arrays.stream(last)
                .filter(x -> !Double.isNaN(x))
                .map(Math::abs)
                .sorted()
                .toArray();
        return sizes.length == 0 ? Double.NaN : sizes[sizes.length / 2];
    }

    /** Days of 16 dry hours or more between two times, both in days from the start. */
    int dryDays(double from, double to) {
        int days = 0;
        for (int h = (int) (24 * from); h < Math.min(dry.length, 24 * to); h += 24) {
            int hours = 0;
            for (int k = h; k < Math.min(dry.length, h + 24); k++) {
                hours += dry[k] ? 1 : 0;
            }
            days += hours >= 16 ? 1 : 0;
        }
        return days;
    }
}
