package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Series;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.apiguardian.api.API;

/**
 * A monitor against measurements by hand of the same quantity (level, mean velocity or flow) at the same times: bias, ratio
 * and how far single readings stray. Immutable and thread-safe.
 *
 * <pre>
 * bias d̄  = mean of (monitor − hand)              95 % interval  d̄ ± t s / √n
 * ratio r = exp(mean of ln(monitor / hand))       95 % interval  r exp(± t s' / √n)
 * limits of agreement                             d̄ ± 1.96 s
 * </pre>
 *
 * <p>s and s' are the standard deviations (divisor n − 1) of the differences and of the logarithms of the ratios, t the
 * 97.5 % point of Student's distribution with n − 1 degrees of freedom, n the number of pairs. Source of the limits: J. M.
 * Bland and D. G. Altman (1986), Statistical methods for assessing agreement between two methods of clinical measurement,
 * Lancet 327, 307-310; the rest is textbook statistics. Pairs are taken as independent and the differences as about normal.
 *
 * <p>A velocity factor that brings a ratio of mean velocities to 1 is the present factor divided by the ratio.
 *
 * <p>What this is not: a check of the hand measurements, whose errors are in the figures too. A few gaugings in dry
 * weather say nothing about a full pipe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GaugingCheck {
    private static final double UPPER_POINT = 0.975;

    /** Normal point for 95 %, as Bland and Altman have it. */
    private static final double NORMAL_POINT = 1.96;

    private final double[] hand;
    private final double[] monitor;
    private final int leftOut;

    private GaugingCheck(double[] hand, double[] monitor, int leftOut) {
        this.hand = hand;
        this.monitor = monitor;
        this.leftOut = leftOut;
        if (hand.length < 2) {
            throw new IllegalArgumentException(
                    "hand must have at least 2 values with a monitor value, had " + hand.length);
        }
    }

    /**
     * Returns the check of pairs of values.
     *
     * @param hand values measured by hand; NaN for none; not modified
     * @param monitor values of the monitor at the same times, same unit; NaN for none; same length; not modified
     * @return the check of the pairs that are complete
     * @throws IllegalArgumentException if the lengths differ, a value is infinite, or fewer than two pairs are complete
     */
    public static GaugingCheck of(double[] hand, double[] monitor) {
        Require.sameLength("monitor", hand.length, monitor.length);
        double[] hands = new double[hand.length];
        double[] monitors = new double[hand.length];
        int pairs = 0;
        for (int i = 0; i < hand.length; i++) {
            if (!Double.isNaN(hand[i]) && !Double.isNaN(monitor[i])) {
                hands[pairs] = Require.finite("hand", hand[i], "");
                monitors[pairs] = Require.finite("monitor", monitor[i], "");
                pairs++;
            }
        }
        return new GaugingCheck(Arrays.copyOf(hands, pairs), Arrays.copyOf(monitors, pairs), hand.length - pairs);
    }

    /**
     * Returns the check of a monitor's record at the times of the measurements by hand.
     *
     * @param hand measurements by hand
     * @param monitor record of the same quantity, same unit
     * @param rule how the record's value at the time of a measurement is found
     * @return the check of the measurements for which both values are usable
     * @throws IllegalArgumentException if there are fewer than two of them
     */
    public static GaugingCheck of(Series hand, Series monitor, Alignment rule) {
        Objects.requireNonNull(monitor, "monitor");
        return of(hand.toUsableValues(), rule.align(hand, monitor).toUsableValues());
    }

    /**
     * Returns the number of pairs.
     *
     * @return count, 2 or more
     */
    public int size() {
        return hand.length;
    }

    /**
     * Returns the number of measurements by hand without a partner.
     *
     * @return count
     */
    public int leftOut() {
        return leftOut;
    }

    /**
     * Returns the mean of monitor minus hand.
     *
     * @return bias with its 95 % confidence interval, unit of the quantity; above 0 if the monitor reads high
     */
    public Estimate bias() {
        Sample differences = new Sample(differences());
        double half = differences.halfWidth();
        return new Estimate(differences.mean, differences.mean - half, differences.mean + half);
    }

    /**
     * Returns between which differences monitor minus hand about 95 % of single readings lie.
     *
     * @return the bias with the limits of agreement, unit of the quantity
     */
    public Estimate limitsOfAgreement() {
        Sample differences = new Sample(differences());
        double half = NORMAL_POINT * differences.deviation;
        return new Estimate(differences.mean, differences.mean - half, differences.mean + half);
    }

    /**
     * Returns the geometric mean of monitor over hand.
     *
     * @return ratio with its 95 % confidence interval; empty if a value is 0 or negative
     */
    public Optional<Estimate> ratio() {
        double[] logarithms = new double[hand.length];
        for (int i = 0; i < logarithms.length; i++) {
            if (!(hand[i] > 0 && monitor[i] > 0)) {
                return Optional.empty();
            }
            logarithms[i] = Math.log(monitor[i] / hand[i]);
        }
        Sample ratios = new Sample(logarithms);
        double half = ratios.halfWidth();
        return Optional.of(
                new Estimate(Math.exp(ratios.mean), Math.exp(ratios.mean - half), Math.exp(ratios.mean + half)));
    }

    private double[] differences() {
        double[] differences = new double[hand.length];
        for (int i = 0; i < differences.length; i++) {
            differences[i] = monitor[i] - hand[i];
        }
        return differences;
    }

    private static final class Sample {
        private final int size;
        private final double mean;
        private final double deviation;

        Sample(double[] values) {
            size = values.length;
            mean = Moments.mean(values);
            deviation = Moments.deviation(values);
        }

        double halfWidth() {
            return new TDistribution(null, size - 1).inverseCumulativeProbability(UPPER_POINT)
                    * deviation
                    / Math.sqrt(size);
        }
    }

    @Override
    public String toString() {
        return "GaugingCheck[" + size() + " pairs, " + leftOut + " left out, bias " + text(bias())
                + ratio().map(ratio -> ", ratio " + text(ratio)).orElse("") + "]";
    }

    private static String text(Estimate estimate) {
        return Text.significant(estimate.value(), 3) + " (95 % " + Text.significant(estimate.lower(), 3) + " to "
                + Text.significant(estimate.upper(), 3) + ")";
    }
}
