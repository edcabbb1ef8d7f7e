package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A simulation whose trials were added in blocks until its figures were known to a numerical tolerance (JCGM 101, 7.9).
 *
 * @param simulation all trials of all blocks
 * @param probability coverage probability of the interval that had to become stable
 * @param blocks count of blocks h, at least 2
 * @param tolerance δ, half a unit of the last digit of u(y) that counts
 * @param meanError twice the standard deviation of the average of the means of the blocks
 * @param uncertaintyError the same of their standard deviations
 * @param lowError the same of the lower ends of their intervals
 * @param highError the same of the upper ends
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StabilisedSimulation(
        Simulation simulation,
        double probability,
        int blocks,
        double tolerance,
        double meanError,
        double uncertaintyError,
        double lowError,
        double highError) {
    /**
     * Checks that nothing is missing.
     *
     * @param simulation all trials of all blocks
     * @param probability coverage probability of the interval that had to become stable
     * @param blocks count of blocks h, at least 2
     * @param tolerance δ, half a unit of the last digit of u(y) that counts
     * @param meanError twice the standard deviation of the average of the means of the blocks
     * @param uncertaintyError the same of their standard deviations
     * @param lowError the same of the lower ends of their intervals
     * @param highError the same of the upper ends
     */
    public StabilisedSimulation {
        Objects.requireNonNull(simulation, "simulation");
    }

    /**
     * Tells whether the figures became stable before the greatest count of trials was reached.
     *
     * @return true if none of the four errors is above the tolerance
     */
    public boolean isStable() {
        return meanError <= tolerance
                && uncertaintyError <= tolerance
                && lowError <= tolerance
                && highError <= tolerance;
    }

    @Override
    public String toString() {
        double[] ends = simulation.interval(probability);
        return "StabilisedSimulation[" + (isStable() ? "stable" : "NOT stable") + " after " + blocks + " blocks, "
                + simulation.trials() + " trials: " + Text.significant(simulation.mean(), 5) + ", u "
                + Text.significant(simulation.standardUncertainty(), 3) + ", " + Text.significant(100 * probability, 4)
                + " % " + Text.significant(ends[0], 4) + " to " + Text.significant(ends[1], 4) + ", tolerance "
                + Text.significant(tolerance, 2) + "]";
    }
}
