package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Manning's law, V = (1/n) R^(2/3) S^(1/2), with one n for all depths. Immutable and thread-safe.
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, chapter 5 (metric form). It describes fully rough turbulent
 * flow; it knows no viscosity and does not depend on gravity.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Manning implements FittableResistance {
    private final double n;

    private Manning(double n) {
        this.n = n;
    }

    /**
     * Returns the law for a roughness.
     *
     * @param n Manning's n, s/m^(1/3); greater than 0, finite; 0.009 to 0.020 in most sewers
     * @return the law
     * @throws IllegalArgumentException if {@code n} is not
     */
    public static Manning of(double n) {
        return new Manning(Require.positive("n", n, "s/m^(1/3)"));
    }

    /**
     * Returns the law for Strickler's coefficient, V = k R^(2/3) S^(1/2): n = 1/k.
     *
     * @param k Strickler's coefficient, m^(1/3)/s; greater than 0, finite; 50 to 110 in most sewers
     * @return the law
     * @throws IllegalArgumentException if {@code k} is not
     */
    public static Manning ofStrickler(double k) {
        return of(1 / Require.positive("k", k, "m^(1/3)/s"));
    }

    /**
     * Returns the roughness.
     *
     * @return n, s/m^(1/3)
     */
    public double n() {
        return n;
    }

    @Override
    public double velocity(double hydraulicRadius, double gradient, double gravity) {
        Require.nonNegative("hydraulicRadius", hydraulicRadius, "m");
        Require.nonNegative("gradient", gradient, "m/m");
        double root = Math.cbrt(hydraulicRadius);
        return root * root * Math.sqrt(gradient) / n;
    }

    @Override
    public double gradient(double velocity, double hydraulicRadius, double gravity) {
        Require.nonNegative("velocity", velocity, "m/s");
        Require.positive("hydraulicRadius", hydraulicRadius, "m");
        double root = Math.cbrt(hydraulicRadius);
        double slopeRoot = velocity * n / (root * root);
        return slopeRoot * slopeRoot;
    }

    @Override
    public Manning fittedTo(double velocity, double hydraulicRadius, double gradient, double gravity) {
        Require.positive("velocity", velocity, "m/s");
        Require.positive("hydraulicRadius", hydraulicRadius, "m");
        Require.positive("gradient", gradient, "m/m");
        double root = Math.cbrt(hydraulicRadius);
        return of(root * root * Math.sqrt(gradient) / velocity);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Manning && Double.compare(n, ((Manning) other).n) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(n);
    }

    @Override
    public String toString() {
        return "Manning[n = " + Text.number(n) + "]";
    }
}
