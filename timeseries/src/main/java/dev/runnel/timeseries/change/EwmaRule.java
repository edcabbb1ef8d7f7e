package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The exponentially weighted moving average with control limits, which tells of a change of a mean. Immutable and
 * thread-safe.
 *
 * <pre>
 * zₜ = λ xₜ + (1 − λ) zₜ₋₁,   z₀ = μ,   a signal when |zₜ − μ| &gt; L σ √(λ / (2 − λ))
 * </pre>
 *
 * <p>μ is the target and σ the standard deviation of the values, λ the weight of the newest value and L the width of the
 * limits, which are those of a long record. After a signal the average begins at the target again. Readings without value
 * are left out. {@link AverageRunLength#ofEwma} says how often it signals.
 *
 * <p>What this is not: right for readings that follow each other.
 *
 * <p>Sources: S. W. Roberts (1959), Control chart tests based on geometric moving averages, Technometrics 1, 239-250; J. M.
 * Lucas and M. S. Saccucci (1990), Exponentially weighted moving average control schemes, Technometrics 32, 1-12 (both from
 * memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class EwmaRule implements Rule<Reading, ChangeSignal, TextState> {
    private static final String NAME = "ewma";
    private static final double LEAST_WEIGHT = 1e-6;

    private final double target;
    private final double deviation;
    private final double weight;
    private final double width;

    private EwmaRule(double target, double deviation, double weight, double width) {
        this.target = target;
        this.deviation = deviation;
        this.weight = weight;
        this.width = width;
    }

    /**
     * Returns a rule for values of mean 0 and standard deviation 1; {@link #withTarget} and {@link #withDeviation} for others.
     *
     * @param weight weight of the newest value λ, in [0.000001, 1]
     * @param width width of the limits L, in standard deviations of the average; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static EwmaRule ofWeightAndWidth(double weight, double width) {
        return new EwmaRule(
                0, 1, Require.inRange("weight", weight, LEAST_WEIGHT, 1, ""), Require.positive("width", width, ""));
    }

    /**
     * Returns the rule for values of another mean.
     *
     * @param newTarget mean without change μ, in the unit of the values; finite
     * @return the rule
     * @throws IllegalArgumentException if {@code newTarget} is not finite
     */
    public EwmaRule withTarget(double newTarget) {
        return new EwmaRule(Require.finite("newTarget", newTarget, ""), deviation, weight, width);
    }

    /**
     * Returns the rule for values of another scatter.
     *
     * @param newDeviation standard deviation of a value σ, in the unit of the values; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if {@code newDeviation} is not greater than 0 and finite
     */
    public EwmaRule withDeviation(double newDeviation) {
        return new EwmaRule(target, Require.positive("newDeviation", newDeviation, ""), weight, width);
    }

    double weight() {
        return weight;
    }

    double width() {
        return width;
    }

    /**
     * Returns the upper control limit, μ + L σ √(λ/(2 − λ)).
     *
     * @return the limit, in the unit of the values
     */
    public double upperLimit() {
        return target + halfWidth();
    }

    /**
     * Returns the lower control limit, μ − L σ √(λ/(2 − λ)).
     *
     * @return the limit, in the unit of the values
     */
    public double lowerLimit() {
        return target - halfWidth();
    }

    private double halfWidth() {
        return width * deviation * Math.sqrt(weight / (2 - weight));
    }

    /**
     * Returns the average after each value, without beginning anew.
     *
     * @param values finite values; not modified
     * @return zₜ, in the unit of the values; a new array
     * @throws IllegalArgumentException if a value is not finite
     */
    public double[] averages(double... values) {
        double[] averages = new double[values.length];
        double away = 0;
        for (int i = 0; i < values.length; i++) {
            Require.finite("values[" + i + "]", values[i], "");
            away = step(away, values[i]);
            averages[i] = target + away;
        }
        return averages;
    }

    /** The average less the target, which is 0 in the beginning. */
    private double step(double away, double value) {
        return weight * (value - target) + (1 - weight) * away;
    }

    @Override
    public Machine<Reading, ChangeSignal, TextState> start() {
        return new Average(this);
    }

    @Override
    public Machine<Reading, ChangeSignal, TextState> start(TextState state) {
        return new Average(this, StateText.parse(NAME, 1, state.toText()));
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    /** The average at work. */
    private static final class Average extends Standardized {
        private final EwmaRule rule;

        Average(EwmaRule rule) {
            super(NAME, 1);
            this.rule = rule;
        }

        Average(EwmaRule rule, StateText text) {
            super(NAME, 1, text);
            this.rule = rule;
        }

        @Override
        List<ChangeSignal> add(long time, double value) {
            double before = statistics[0];
            double next = rule.step(before, value);
            starts[0] = before == 0 || Math.signum(before) != Math.signum(next) ? time : starts[0];
            statistics[0] = next;
            if (Math.abs(next) <= rule.halfWidth()) {
                return List.of();
            }
            ChangeSignal signal = signal(0, time, next > 0 ? ChangeSignal.Side.UP : ChangeSignal.Side.DOWN);
            statistics[0] = 0;
            return List.of(signal);
        }
    }

    @Override
    public String toString() {
        return "EwmaRule[target " + Text.significant(target, 6) + ", deviation " + Text.significant(deviation, 6)
                + ", weight " + Text.significant(weight, 6) + ", width " + Text.significant(width, 6) + "]";
    }
}
