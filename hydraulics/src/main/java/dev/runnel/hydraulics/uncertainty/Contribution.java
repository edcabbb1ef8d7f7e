package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What one input adds to the uncertainty of a result.
 *
 * @param input the input
 * @param sensitivity c = ∂f/∂x, unit of the result by that of the input
 * @param share share of u²(y), correlations with the other inputs included, so that all shares add up to 1; negative where a
 *     correlation takes away
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Contribution(UncertainInput input, double sensitivity, double share) {
    /**
     * Checks that nothing is missing.
     *
     * @param input the input
     * @param sensitivity c = ∂f/∂x, unit of the result by that of the input
     * @param share share of u²(y), correlations with the other inputs included, so that all shares add up to 1; negative where a correlation takes away
     */
    public Contribution {
        Objects.requireNonNull(input, "input");
    }

    /**
     * Returns the contribution in the unit of the result.
     *
     * @return |c| u(x)
     */
    public double amount() {
        return Math.abs(sensitivity) * input.standardUncertainty();
    }

    @Override
    public String toString() {
        return "Contribution[" + input.name() + ": " + Text.significant(amount(), 3) + ", "
                + Text.significant(100 * share, 3) + " %]";
    }
}
