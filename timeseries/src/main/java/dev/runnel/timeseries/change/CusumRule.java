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
 * The two cumulative sums of Page, which tell of a small lasting change of a mean. Immutable and thread-safe.
 *
 * <pre>
 * C⁺ₜ = max(0, C⁺ₜ₋₁ + xₜ − μ − K),   C⁻ₜ = max(0, C⁻ₜ₋₁ + μ − xₜ − K),   a signal when one is above H
 * </pre>
 *
 * <p>μ is the target, K the reference value (half of the change worth finding) and H the decision interval, all in the unit of
 * the values. After a signal both sums begin at 0 again. Readings without value are left out. Usual with a standard
 * deviation σ: K = σ/2 and H = 4σ to 5σ, with average run lengths as {@link AverageRunLength#ofCusum} gives them.
 *
 * <p>What this is not: right for readings that follow each other, or for a mean and scatter guessed from a few values; both
 * make false signals many times more frequent than the average run length says.
 *
 * <p>Source: E. S. Page (1954), Continuous inspection schemes, Biometrika 41, 100-115 (from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CusumRule implements Rule<Reading, ChangeSignal, TextState> {
    private static final String NAME = "cusum";

    private final double target;
    private final double reference;
    private final double decision;

    private CusumRule(double target, double reference, double decision) {
        this.target = target;
        this.reference = reference;
        this.decision = decision;
    }

    /**
     * Returns a rule for values whose mean without change is 0; {@link #withTarget} for others.
     *
     * @param reference reference value K, in the unit of the values; 0 or greater
     * @param decision decision interval H, in the same unit; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static CusumRule ofReferenceAndDecision(double reference, double decision) {
        return new CusumRule(
                0, Require.nonNegative("reference", reference, ""), Require.positive("decision", decision, ""));
    }

    /**
     * Returns the rule for values of another mean.
     *
     * @param newTarget mean without change μ, in the unit of the values; finite
     * @return the rule
     * @throws IllegalArgumentException if {@code newTarget} is not finite
     */
    public CusumRule withTarget(double newTarget) {
        return new CusumRule(Require.finite("newTarget", newTarget, ""), reference, decision);
    }

    double reference() {
        return reference;
    }

    double decision() {
        return decision;
    }

    @Override
    public Machine<Reading, ChangeSignal, TextState> start() {
        return new Sums(this);
    }

    @Override
    public Machine<Reading, ChangeSignal, TextState> start(TextState state) {
        return new Sums(this, StateText.parse(NAME, 1, state.toText()));
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    /**
     * Returns the upper sum after each value, without beginning anew.
     *
     * @param values finite values; not modified
     * @return C⁺, in the unit of the values; a new array
     * @throws IllegalArgumentException if a value is not finite
     */
    public double[] upper(double... values) {
        return sums(values, 1);
    }

    /**
     * Returns the lower sum after each value, without beginning anew.
     *
     * @param values finite values; not modified
     * @return C⁻, in the unit of the values; a new array
     * @throws IllegalArgumentException if a value is not finite
     */
    public double[] lower(double... values) {
        return sums(values, -1);
    }

    private double[] sums(double[] values, int sign) {
        double[] sums = new double[values.length];
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            Require.finite("values[" + i + "]", values[i], "");
            sum = step(sum, values[i], sign);
            sums[i] = sum;
        }
        return sums;
    }

    private double step(double sum, double value, int sign) {
        return Math.max(0, sum + sign * (value - target) - reference);
    }

    /** The sums at work: upper, lower. */
    private static final class Sums extends Standardized {
        private final CusumRule rule;

        Sums(CusumRule rule) {
            super(NAME, 2);
            this.rule = rule;
        }

        Sums(CusumRule rule, StateText text) {
            super(NAME, 2, text);
            this.rule = rule;
        }

        @Override
        List<ChangeSignal> add(long time, double value) {
            set(0, time, rule.step(statistics[0], value, 1));
            set(1, time, rule.step(statistics[1], value, -1));
            int over = statistics[0] > rule.decision ? 0 : statistics[1] > rule.decision ? 1 : -1;
            if (over < 0) {
                return List.of();
            }
            ChangeSignal signal = signal(over, time, over == 0 ? ChangeSignal.Side.UP : ChangeSignal.Side.DOWN);
            set(0, time, 0);
            set(1, time, 0);
            return List.of(signal);
        }
    }

    @Override
    public String toString() {
        return "CusumRule[target " + Text.significant(target, 6) + ", K = " + Text.significant(reference, 6) + ", H = "
                + Text.significant(decision, 6) + "]";
    }
}
