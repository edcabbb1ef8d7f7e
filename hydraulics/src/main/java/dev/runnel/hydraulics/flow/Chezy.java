package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Chezy's law, V = C √(R S), with one C for all depths. Immutable and thread-safe.
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, section 5-4. With C = √(8g/f) it is the law of Darcy and Weisbach with one f;
 * in a pipe C hardly stays the same as it fills, which Manning's law sees better. It knows no viscosity.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Chezy implements RoughFlow {
    /** Chosen here: a meadow, at a radius of a decimetre. */
    private static final double LEAST = 0.5;

    /** Chosen here: twice the smoothest wall's. */
    private static final double LARGEST = 300;

    private static final double FOOT = 0.3048;

    private final double c;

    private Chezy(double c) {
        this.c = c;
    }

    /**
     * Returns the law for a coefficient.
     *
     * @param c Chezy's C, m^(1/2)/s; in [0.5, 300]; 30 to 90 in most sewers
     * @return the law
     * @throws IllegalArgumentException if {@code c} is not
     */
    public static Chezy of(double c) {
        return new Chezy(Require.inRange("c", c, LEAST, LARGEST, "m^(1/2)/s"));
    }

    /**
     * Returns the law for a coefficient in feet: C (m) = 0.5521 C (ft).
     *
     * @param c Chezy's C, ft^(1/2)/s; 0.5 to 300 when turned into m^(1/2)/s
     * @return the law
     * @throws IllegalArgumentException if {@code c} is not
     */
    public static Chezy ofFeet(double c) {
        double root = Math.sqrt(FOOT);
        return new Chezy(Require.inRange("c", c, LEAST / root, LARGEST / root, "ft^(1/2)/s") * root);
    }

    /**
     * Returns the coefficient.
     *
     * @return C, m^(1/2)/s
     */
    public double c() {
        return c;
    }

    @Override
    public double velocity(double hydraulicRadius, double gradient, double gravity) {
        double slopeRoot = RoughFlow.rootOfGradient(hydraulicRadius, gradient);
        return c * Math.sqrt(hydraulicRadius) * slopeRoot;
    }

    @Override
    public double gradient(double velocity, double hydraulicRadius, double gravity) {
        RoughFlow.requireMoving(velocity, hydraulicRadius);
        double root = velocity / c;
        return root * root / hydraulicRadius;
    }

    @Override
    public Chezy fittedTo(double velocity, double hydraulicRadius, double gradient, double gravity) {
        double slopeRoot = RoughFlow.rootOfGauged(velocity, hydraulicRadius, gradient);
        return new Chezy(velocity / (Math.sqrt(hydraulicRadius) * slopeRoot));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Chezy && Double.compare(c, ((Chezy) other).c) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(c);
    }

    @Override
    public String toString() {
        return "Chezy[C = " + Text.significant(c, 6) + "]";
    }
}
