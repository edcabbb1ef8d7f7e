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
 * The test of Page and Hinkley: a cumulative sum about the mean of all values so far, for a target that is not known.
 * Immutable and thread-safe.
 *
 * <pre>
 * mₜ = Σ (xᵢ − x̄ᵢ − δ),   Mₜ = min(0, m₁ … mₜ),   a signal upward when mₜ − Mₜ &gt; λ; downward alike with −x
 * </pre>
 *
 * <p>x̄ᵢ is the mean of the first i values, δ the slack and λ the threshold, in the unit of the values. After a signal the mean
 * and the sums begin anew. Readings without value are left out.
 *
 * <p>What this is not: a test for slow changes. The mean goes on learning, so a ramp becomes part of what is normal.
 *
 * <p>Source: D. V. Hinkley (1971), Inference about the change-point from cumulative sum tests, Biometrika 58, 509-523 (from
 * memory); the form with the running mean is common practice.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PageHinkleyRule implements Rule<Reading, ChangeSignal, TextState> {
    private static final String NAME = "page-hinkley";

    private final double slack;
    private final double threshold;

    private PageHinkleyRule(double slack, double threshold) {
        this.slack = slack;
        this.threshold = threshold;
    }

    /**
     * Returns a rule.
     *
     * @param slack slack δ, in the unit of the values; 0 or greater
     * @param threshold threshold λ, in the same unit; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static PageHinkleyRule ofSlackAndThreshold(double slack, double threshold) {
        return new PageHinkleyRule(
                Require.nonNegative("slack", slack, ""), Require.positive("threshold", threshold, ""));
    }

    /**
     * Returns mₜ − Mₜ for a change upward after each value, without beginning anew.
     *
     * @param values finite values; not modified
     * @return the statistic, in the unit of the values; a new array
     * @throws IllegalArgumentException if a value is not finite
     */
    public double[] upward(double... values) {
        double[] found = new double[values.length];
        double mean = 0;
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            Require.finite("values[" + i + "]", values[i], "");
            mean += (values[i] - mean) / (i + 1);
            // The sum less its least value so far is the sum that may not fall below 0.
            sum = Math.max(0, sum + values[i] - mean - slack);
            found[i] = sum;
        }
        return found;
    }

    @Override
    public Machine<Reading, ChangeSignal, TextState> start() {
        return new Test(this);
    }

    @Override
    public Machine<Reading, ChangeSignal, TextState> start(TextState state) {
        return new Test(this, StateText.parse(NAME, 1, state.toText()));
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    /** The test at work: sum upward, sum downward, mean, count. */
    private static final class Test extends Standardized {
        private final PageHinkleyRule rule;

        Test(PageHinkleyRule rule) {
            super(NAME, 4);
            this.rule = rule;
        }

        Test(PageHinkleyRule rule, StateText text) {
            super(NAME, 4, text);
            this.rule = rule;
        }

        @Override
        List<ChangeSignal> add(long time, double value) {
            statistics[3]++;
            statistics[2] += (value - statistics[2]) / statistics[3];
            double away = value - statistics[2];
            set(0, time, Math.max(0, statistics[0] + away - rule.slack));
            set(1, time, Math.max(0, statistics[1] - away - rule.slack));
            int over = statistics[0] > rule.threshold ? 0 : statistics[1] > rule.threshold ? 1 : -1;
            if (over < 0) {
                return List.of();
            }
            ChangeSignal signal = signal(over, time, over == 0 ? ChangeSignal.Side.UP : ChangeSignal.Side.DOWN);
            for (int i = 0; i < statistics.length; i++) {
                statistics[i] = 0;
            }
            return List.of(signal);
        }
    }

    @Override
    public String toString() {
        return "PageHinkleyRule[slack " + Text.significant(slack, 6) + ", threshold " + Text.significant(threshold, 6)
                + "]";
    }
}
