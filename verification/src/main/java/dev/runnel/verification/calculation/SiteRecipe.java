package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.SiteRecord;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A constructed record of a site, from a line of numbers that tables hold, and what is done to it, in rows of five (what, from
 * hour, to hour, a, b). The program that makes the tables follows the same recipe by itself.
 */
final class SiteRecipe {
    /** A Monday. */
    static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    private static final int NUMBERS = 5;
    private static final double LATE_AT_REST = 1.5;
    private static final double TIDE = 12.4206012;
    private static final double DIGITS = 1e4;

    private final int step;
    private final int count;
    private final long[] minutes;
    private final double[] depths;
    private final double[] velocities;
    private final double[] rains;
    private final boolean[] lost;
    private final boolean[] depthIsExact;
    private final boolean[] velocityIsExact;

    private SiteRecipe(double[] site, double[] changes) {
        int days = (int) site[1];
        step = (int) site[2];
        count = days * 1440 / step;
        minutes = new long[count];
        depths = new double[count];
        velocities = new double[count];
        rains = new double[count];
        lost = new boolean[count];
        depthIsExact = new boolean[count];
        velocityIsExact = new boolean[count];
        free(site, days);
        for (int i = 0; i < changes.length; i += NUMBERS) {
            change((int) changes[i], index(changes[i + 1]), index(changes[i + 2]), changes[i + 3], changes[i + 4]);
        }
    }

    /** Returns the record of a site to which something was done. */
    static SiteRecord record(double[] site, double[] changes) {
        SiteRecipe made = new SiteRecipe(site, changes);
        List<SiteReading> readings = new ArrayList<>();
        for (int i = 0; i < made.count; i++) {
            if (!made.lost[i]) {
                readings.add(new SiteReading(
                        START.plus(Duration.ofMinutes(made.minutes[i])),
                        made.depthIsExact[i] ? made.depths[i] : Math.rint(made.depths[i] * DIGITS) / DIGITS,
                        made.velocityIsExact[i] ? made.velocities[i] : Math.rint(made.velocities[i] * DIGITS) / DIGITS,
                        made.rains[i]));
            }
        }
        return SiteRecord.ofReadings(readings);
    }

    private void free(double[] site, int days) {
        Draws draws = new Draws((long) site[0]);
        double[] byDay = draws.normals(days + 1);
        double[] byHour = draws.normals(24 * days);
        double[] apart = draws.normals(days + 1);
        double[] ofDepth = draws.normals(count);
        double[] ofVelocity = draws.normals(count);
        int perDay = 1440 / step;
        for (int i = 0; i < count; i++) {
            minutes[i] = (long) step * i;
            double hour = minutes[i] / 60.0;
            int day = i / perDay;
            double share = (double) (i % perDay) / perDay;
            double clock = hour % 24 - (day % 7 >= 5 ? LATE_AT_REST : 0);
            double wave = Math.sin(2 * Math.PI * (clock - 9) / 24) + 0.4 * Math.sin(4 * Math.PI * clock / 24);
            double moon = site[11] * Math.cos(2 * Math.PI * hour / TIDE);
            double usual =
                    site[4] * wave + site[8] * between(byDay, day, share) + site[7] * byHour[(int) (minutes[i] / 60)];
            depths[i] = site[3] * Math.exp(usual + moon + 0.25 * site[9] * ofDepth[i]);
            velocities[i] = site[6]
                    * Math.exp(site[5] * usual
                            - 1.2 * moon
                            + site[10] * between(apart, day, share)
                            + site[9] * ofVelocity[i]);
        }
    }

    private static double between(double[] values, int day, double share) {
        return values[day] + (values[day + 1] - values[day]) * share;
    }

    private int index(double hour) {
        return (int) Math.min(count, Math.floor(hour * 60 / step + 0.5));
    }

    private int source(int i, double hours) {
        return Math.max(0, Math.min(count - 1, i - index(hours)));
    }

    private void change(int what, int from, int to, double a, double b) {
        double[] oldDepths = depths.clone();
        double[] oldVelocities = velocities.clone();
        double[] oldRains = rains.clone();
        for (int i = from; i < to; i++) {
            double hours = (i - from) * step / 60.0;
            switch (what) {
                case 0 -> depths[i] *= a + (b - a) * (i - from) / (to - from);
                case 1 -> velocities[i] *= a + (b - a) * (i - from) / (to - from);
                case 2 -> depths[i] = a;
                case 3 -> velocities[i] = a;
                case 4 -> lost[i] = true;
                case 5 -> depths[i] = Double.NaN;
                case 6 -> velocities[i] = Double.NaN;
                case 7 -> depths[i] = oldDepths[from];
                case 8 -> velocities[i] = oldVelocities[from];
                case 9 -> velocities[i] = i % (int) b == 0 ? a : velocities[i];
                case 10 -> velocities[i] *= i % (int) b == 0 ? a : 1;
                case 11 -> {
                    depths[i] = oldDepths[source(i, a)];
                    velocities[i] = oldVelocities[source(i, a)];
                }
                case 12 -> rains[i] = oldRains[source(i, a)];
                case 13 -> depths[i] *= Math.exp(a * Math.sin(2 * Math.PI * (minutes[i] / 60.0) / b));
                case 14 -> minutes[i] += (long) a;
                case 15 -> rains[i] = Double.NaN;
                case 16 -> rains[i] += a;
                case 17 -> {
                    double runoff = Math.exp(a * (hours / b) * Math.exp(1 - hours / b));
                    depths[i] *= runoff;
                    velocities[i] *= Math.pow(runoff, 0.6);
                }
                case 18 -> depths[i] *= 1 + a * (i % (int) b);
                case 19 -> depths[i] += a;
                case 20 -> {
                    depths[i] = a;
                    depthIsExact[i] = true;
                }
                case 21 -> {
                    velocities[i] = a;
                    velocityIsExact[i] = true;
                }
                case 23 -> velocities[i] = a * Math.rint(velocities[i] / a);
                case 22 -> {
                    depths[i] = oldVelocities[i] / a;
                    velocities[i] = oldDepths[i] * a;
                    depthIsExact[i] = true;
                    velocityIsExact[i] = true;
                }
                default -> throw new IllegalArgumentException("changes must be of the kinds 0 to 22, was " + what);
            }
        }
    }

    /** Random numbers that any language draws alike: whole numbers of 64 bits, four of them to a bell. */
    private static final class Draws {
        private static final double ROOT_OF_THREE = 1.7320508075688772;
        private long state;

        Draws(long seed) {
            state = seed;
        }

        double[] normals(int count) {
            double[] values = new double[count];
            for (int i = 0; i < count; i++) {
                double sum = 0;
                for (int k = 0; k < 4; k++) {
                    state = state * 6364136223846793005L + 1442695040888963407L;
                    sum += (state >>> 11) * 0x1p-53;
                }
                values[i] = (sum - 2) * ROOT_OF_THREE;
            }
            return values;
        }
    }
}
