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
public final class Manning implements RoughFlow {
    /** Chosen here: far below the smoothest wall's. */
    private static final double LEAST_N = 0.001;

    /** Chosen here: five times the 0.2 of dense brush (Chow 1959, table 5-6). */
    private static final double LARGEST_N = 1;

    private final double n;

    private Manning(double n) {
        this.n = n;
    }

    /**
     * Returns the law for a roughness.
     *
     * @param n Manning's n, s/m^(1/3); in [0.001, 1]; 0.009 to 0.020 in most sewers
     * @return the law
     * @throws IllegalArgumentException if {@code n} is not
     */
    public static Manning of(double n) {
        return new Manning(checkedN("n", n));
    }

    /**
     * Returns the law for Strickler's coefficient, V = k R^(2/3) S^(1/2): n = 1/k.
     *
     * @param k Strickler's coefficient, m^(1/3)/s; in [1, 1000]; 50 to 110 in most sewers
     * @return the law
     * @throws IllegalArgumentException if {@code k} is not
     */
    public static Manning ofStrickler(double k) {
        Require.positive("k", k, "m^(1/3)/s");
        if (!(k >= 1 / LARGEST_N && k <= 1 / LEAST_N)) {
            throw new IllegalArgumentException("k must be in [" + Text.number(1 / LARGEST_N) + ", "
                    + Text.number(1 / LEAST_N) + "] m^(1/3)/s, was " + Text.number(k)
                    + ": for Manning's n use Manning.of");
        }
        return new Manning(1 / k);
    }

    /** The law for an n that was computed and need not be that of a wall. */
    static Manning ofAny(double n) {
        return new Manning(n);
    }

    /** The one rule for an n of this law and those built upon it: anything that a wall, a river or a meadow has. */
    static double checkedN(String name, double n) {
        Require.positive(name, n, "s/m^(1/3)");
        if (!(n >= LEAST_N && n <= LARGEST_N)) {
            throw new IllegalArgumentException(name + " must be in [" + Text.number(LEAST_N) + ", "
                    + Text.number(LARGEST_N) + "] s/m^(1/3), was " + Text.number(n)
                    + (n > LARGEST_N ? ": for Strickler's k in m^(1/3)/s use Manning.ofStrickler" : ""));
        }
        return n;
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
        double slopeRoot = RoughFlow.rootOfGradient(hydraulicRadius, gradient);
        double root = Math.cbrt(hydraulicRadius);
        return root * root * slopeRoot / n;
    }

    @Override
    public double gradient(double velocity, double hydraulicRadius, double gravity) {
        RoughFlow.requireMoving(velocity, hydraulicRadius);
        double root = Math.cbrt(hydraulicRadius);
        double slopeRoot = velocity * n / (root * root);
        return slopeRoot * slopeRoot;
    }

    @Override
    public Manning fittedTo(double velocity, double hydraulicRadius, double gradient, double gravity) {
        double slopeRoot = RoughFlow.rootOfGauged(velocity, hydraulicRadius, gradient);
        double root = Math.cbrt(hydraulicRadius);
        return new Manning(root * root * slopeRoot / velocity);
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
        return "Manning[n = " + Text.significant(n, 6) + "]";
    }
}
