package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apiguardian.api.API;

/**
 * A result with its uncertainty by the law of propagation.
 *
 * @param value y = f(estimates)
 * @param standardUncertainty u(y) to first order
 * @param effectiveDegreesOfFreedom ν by Welch and Satterthwaite (JCGM 100, G.4.1), infinite where all inputs are taken as known
 * @param contributions what each input adds, in their order, unmodifiable
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Propagation(
        double value, double standardUncertainty, double effectiveDegreesOfFreedom, List<Contribution> contributions) {
    /** Sensitivities are good to seven digits: what is that near a whole number of degrees of freedom is that number. */
    private static final double ROUNDING = 1e-6;

    /** Above so many degrees of freedom Student's law is the normal one to 6 digits; chosen here. */
    private static final double NORMAL_ENOUGH = 1e6;

    /**
     * Keeps an unmodifiable copy of the list.
     *
     * @param value y
     * @param standardUncertainty u(y)
     * @param effectiveDegreesOfFreedom ν
     * @param contributions what each input adds
     */
    public Propagation {
        Objects.requireNonNull(contributions, "contributions");
        contributions = List.copyOf(contributions);
    }

    /**
     * Returns the coverage factor, Student's t for the whole part of the effective degrees of freedom (JCGM 100, G.4.1).
     *
     * @param probability coverage probability, such as 0.95; greater than 0, less than 1
     * @return k
     * @throws IllegalArgumentException if {@code probability} is outside its range
     */
    public double coverageFactor(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException(
                    "probability must be greater than 0 and less than 1, was " + Text.number(probability));
        }
        double level = (1 + probability) / 2;
        double freedom = Math.max(1, Math.floor(effectiveDegreesOfFreedom * (1 + ROUNDING)));
        return freedom > NORMAL_ENOUGH
                ? new NormalDistribution(null, 0, 1).inverseCumulativeProbability(level)
                : new TDistribution(null, freedom).inverseCumulativeProbability(level);
    }

    /**
     * Returns the expanded uncertainty.
     *
     * @param probability coverage probability, such as 0.95; greater than 0, less than 1
     * @return U = k u(y), in the unit of the result
     * @throws IllegalArgumentException if {@code probability} is outside its range
     */
    public double expanded(double probability) {
        return coverageFactor(probability) * standardUncertainty;
    }

    /**
     * Returns the relative standard uncertainty.
     *
     * @return u(y)/|y|; infinite for a result of 0
     */
    public double relative() {
        return value == 0 && standardUncertainty == 0 ? 0 : standardUncertainty / Math.abs(value);
    }

    /**
     * Returns the contributions as a table, the greatest share first.
     *
     * @return a line with names, then one line an input: name, estimate, standard uncertainty, sensitivity, contribution, share
     *     in percent; separated by commas, lines ended by a line feed
     */
    public String table() {
        StringBuilder text =
                new StringBuilder("input,estimate,standard_uncertainty,sensitivity,contribution,share_percent\n");
        contributions.stream()
                .sorted((a, b) -> Double.compare(Math.abs(b.share()), Math.abs(a.share())))
                .forEach(each -> text.append(each.input().name())
                        .append(',')
                        .append(Text.significant(each.input().estimate(), 6))
                        .append(',')
                        .append(Text.significant(each.input().standardUncertainty(), 3))
                        .append(',')
                        .append(Text.significant(each.sensitivity(), 4))
                        .append(',')
                        .append(Text.significant(each.amount(), 3))
                        .append(',')
                        .append(Text.significant(100 * each.share(), 3))
                        .append('\n'));
        return text.toString();
    }

    @Override
    public String toString() {
        return "Propagation[" + Text.significant(value, 5) + " ± " + Text.significant(standardUncertainty, 2)
                + " (standard), " + Text.significant(value, 5) + " ± " + Text.significant(expanded(0.95), 2)
                + " (95 %)]";
    }
}
