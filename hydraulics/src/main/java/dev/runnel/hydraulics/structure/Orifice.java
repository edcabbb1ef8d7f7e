package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import org.apiguardian.api.API;

/**
 * A small orifice, free or submerged. Immutable and thread-safe.
 *
 * <p>Q = Cd · A · √(2gh), where A is the area of the opening (m²) and h the head (m): free, from its centre to the level
 * upstream; submerged, the difference of the two levels. The coefficient is that of the edge: 0.61 for a sharp one far
 * from walls (contraction 0.63, velocity 0.97; common practice), near 0.8 for a short pipe.
 *
 * <p>Limit: free, h at least the height of the opening, where the formula is 1.1 % (rectangle) above the exact integral
 * ({@link LargeOrifice} has it, and the weir flow of an opening not yet covered). Submerged: none; both levels must cover
 * the opening.
 *
 * <p>Source: Torricelli's law with a coefficient; e.g. K. Subramanya, 1000 Solved Problems in Fluid Mechanics, ch. 13.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Orifice implements HeadDischarge {
    /** Coefficient of a sharp edge far from walls: common practice. */
    public static final double SHARP_EDGE = 0.61;

    private final double area;
    private final double height;
    private final double coefficient;
    private final boolean submerged;
    private final List<ApplicationLimit> limits;

    private Orifice(double area, double height, double coefficient, boolean submerged) {
        this.area = area;
        this.height = height;
        this.coefficient = coefficient;
        this.submerged = submerged;
        limits = submerged
                ? List.of()
                : List.of(ApplicationLimit.atLeast(
                        "head over height of the opening", "", 1, "large orifices excluded", h -> h / height));
    }

    /**
     * Returns a round opening with a sharp edge, free.
     *
     * @param diameter diameter, m; greater than 0, finite
     * @return the orifice
     * @throws IllegalArgumentException if {@code diameter} is not
     */
    public static Orifice circular(double diameter) {
        Require.positive("diameter", diameter, "m");
        return new Orifice(Math.PI / 4 * diameter * diameter, diameter, SHARP_EDGE, false);
    }

    /**
     * Returns a rectangular opening with a sharp edge, free.
     *
     * @param width width, m; greater than 0, finite
     * @param height height, m; greater than 0, finite
     * @return the orifice
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static Orifice rectangular(double width, double height) {
        return new Orifice(
                Require.positive("width", width, "m") * Require.positive("height", height, "m"),
                height,
                SHARP_EDGE,
                false);
    }

    /**
     * Returns a copy with another coefficient.
     *
     * @param newCoefficient Cd; greater than 0, at most 1
     * @return the copy
     * @throws IllegalArgumentException if {@code newCoefficient} is not
     */
    public Orifice withCoefficient(double newCoefficient) {
        return new Orifice(area, height, Coefficients.checked("newCoefficient", newCoefficient), submerged);
    }

    /**
     * Returns the opening under water on both sides; the head is then the difference of the levels.
     *
     * @return the copy
     */
    public Orifice submerged() {
        return new Orifice(area, height, coefficient, true);
    }

    @Override
    public double formula(double head) {
        return coefficient * area * GravityFactors.ROOT_2G * Math.sqrt(head);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    /**
     * Returns the area of the opening.
     *
     * @return area A, m²
     */
    public double area() {
        return area;
    }

    private List<Object> parts() {
        return List.of(area, height, coefficient, submerged);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Orifice && parts().equals(((Orifice) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "Orifice[A = " + Text.significant(area, 6) + " m2, Cd = " + Text.number(coefficient)
                + (submerged ? ", submerged]" : ", free]");
    }
}
