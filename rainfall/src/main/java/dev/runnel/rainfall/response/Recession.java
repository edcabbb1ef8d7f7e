package dev.runnel.rainfall.response;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * The exponential fall of flow above its base after rain, Q = Q₀ e<sup>−t/K</sup>, by least squares of ln Q over the steps
 * given.
 *
 * @param constant K, the time in which the flow falls to 37 %
 * @param rSquared share of the variance of ln Q explained
 * @param steps steps used
 * @param leftOut steps missing, or not above 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Recession(Duration constant, double rSquared, int steps, int leftOut) {
    /**
     * Checks that nothing is missing.
     *
     * @param constant K, the time in which the flow falls to 37 %
     * @param rSquared share of the variance of ln Q explained
     * @param steps steps used
     * @param leftOut steps missing, or not above 0
     */
    public Recession {
        Objects.requireNonNull(constant, "constant");
    }

    /** Longest constant, about a century: flow that falls more slowly does not fall; chosen here. */
    private static final double LONGEST_HOURS = 1e6;

    /**
     * Fits the fall.
     *
     * @param flowAboveBase flow above the dry weather course from the end of the peak on, any unit; values missing or not
     *     above 0 are left out and counted
     * @return the recession
     * @throws IllegalArgumentException if fewer than three steps can be used, or the flow does not fall
     */
    public static Recession of(RegularSeries flowAboveBase) {
        Fall fall = new Fall(flowAboveBase);
        if (fall.isShort()) {
            throw new IllegalArgumentException("flowAboveBase must have at least 3 steps above 0, had " + fall.used);
        }
        if (!fall.isFalling()) {
            throw new IllegalArgumentException(
                    "flowAboveBase must fall, had a slope of ln Q of " + Text.significant(fall.slope(), 3) + " a step");
        }
        return fall.recession();
    }

    /** As {@link #of}, for one who asks many storms of which few fall clearly: nothing then is no mistake. */
    static Optional<Recession> in(RegularSeries flowAboveBase) {
        Fall fall = new Fall(flowAboveBase);
        return fall.isShort() || !fall.isFalling() ? Optional.empty() : Optional.of(fall.recession());
    }

    /** Sums about the means of the steps above 0. */
    private static final class Fall {
        private final double stepHours;
        private final int size;
        private int used;
        private double tt;
        private double tl;
        private double ll;

        Fall(RegularSeries flow) {
            stepHours = Rain.hours(flow.step());
            double[] values = flow.toValues();
            size = values.length;
            double meanT = 0;
            double meanLog = 0;
            for (int i = 0; i < size; i++) {
                if (values[i] > 0) {
                    used++;
                    meanT += i;
                    meanLog += Math.log(values[i]);
                }
            }
            meanT /= used;
            meanLog /= used;
            for (int i = 0; i < size; i++) {
                if (values[i] > 0) {
                    double log = Math.log(values[i]) - meanLog;
                    tt += (i - meanT) * (i - meanT);
                    tl += (i - meanT) * log;
                    ll += log * log;
                }
            }
        }

        boolean isShort() {
            return used < 3;
        }

        boolean isFalling() {
            return slope() < 0 && hours() < LONGEST_HOURS;
        }

        double slope() {
            return tl / tt;
        }

        private double hours() {
            return -stepHours / slope();
        }

        Recession recession() {
            return new Recession(
                    Duration.ofNanos(Math.round(hours() * 3.6e12)), tl * tl / (tt * ll), used, size - used);
        }
    }

    /**
     * Returns the share of the flow that is left after a time.
     *
     * @param time the time; 0 or longer
     * @return e<sup>−t/K</sup>
     * @throws IllegalArgumentException if the time is negative
     */
    public double shareAfter(Duration time) {
        EpochNanos.nonNegative("time", time);
        return Math.exp(-Rain.hours(time) / Rain.hours(constant));
    }

    @Override
    public String toString() {
        return "Recession[K " + Text.duration(constant) + ", R2 " + Text.significant(rSquared, 4) + ", " + steps
                + " steps, " + leftOut + " left out]";
    }
}
