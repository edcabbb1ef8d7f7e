package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The law of propagation held against a simulation (JCGM 101, clause 8).
 *
 * @param propagation the law of propagation
 * @param simulation the simulation
 * @param tolerance δ, half a unit of the last digit of u(y) that counts
 * @param low difference of the lower ends of the 95 % intervals
 * @param high difference of the upper ends
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Validation(Propagation propagation, Simulation simulation, double tolerance, double low, double high) {
    /**
     * Checks that nothing is missing.
     *
     * @param propagation the law of propagation
     * @param simulation the simulation
     * @param tolerance δ, half a unit of the last digit of u(y) that counts
     * @param low difference of the lower ends of the 95 % intervals
     * @param high difference of the upper ends
     */
    public Validation {
        Objects.requireNonNull(propagation, "propagation");
        Objects.requireNonNull(simulation, "simulation");
    }

    static Validation of(Propagation propagation, Simulation simulation, int digits) {
        double expanded = propagation.expanded(0.95);
        double[] ends = simulation.interval(0.95);
        return new Validation(
                propagation,
                simulation,
                tolerance(propagation.standardUncertainty(), digits),
                Math.abs(propagation.value() - expanded - ends[0]),
                Math.abs(propagation.value() + expanded - ends[1]));
    }

    /** u = c 10^l with a whole number c of so many digits: δ = ½ 10^l. */
    static double tolerance(double u, int digits) {
        // None of no uncertainty: the power of ten of −∞ is 0.
        return 0.5 * Math.pow(10, Math.floor(Math.log10(u)) - (digits - 1));
    }

    /**
     * Tells whether the law of propagation may be used.
     *
     * @return true if both ends agree within the tolerance
     */
    public boolean isValid() {
        return low <= tolerance && high <= tolerance;
    }

    @Override
    public String toString() {
        return "Validation[" + (isValid() ? "valid" : "NOT valid") + ": ends differ by " + Text.significant(low, 3)
                + " and " + Text.significant(high, 3) + ", allowed " + Text.significant(tolerance, 3) + "]";
    }
}
