package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A small orifice, free or drowned. Immutable and thread-safe.
 *
 * <p>Q = Cd · A · √(2g Δ), where A is the area of the opening (m²) and Δ the head on its centre (m): free, the level upstream
 * above the centre; drowned, the level upstream above that downstream. Both levels count from the lowest point of the opening, the
 * datum of {@link LargeOrifice} too, so that one is exchanged for the other without a second thought. A table that counts from the
 * centre is turned by {@link #aboveLowestPoint(double)}. The coefficient is that of the edge: 0.61 for a sharp one far from
 * walls (contraction 0.63, velocity 0.97; common practice), near 0.8 for a short pipe.
 *
 * <p>Limit: the head on the centre at least the height of the opening, where the formula is 1.1 % (rectangle) above the exact
 * integral ({@link LargeOrifice} has it, and the weir flow of an opening not yet covered). Below it, outside the limit, the
 * flagged figure falls with the power 1.5 of the level. The modular limit is the level of the centre.
 *
 * <p>Source: Torricelli's law with a coefficient; e.g. K. Subramanya, 1000 Solved Problems in Fluid Mechanics, ch. 13.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Orifice extends OfParts implements TailwaterDischarge {
    /** Coefficient of a sharp edge far from walls: common practice. */
    public static final double SHARP_EDGE = 0.61;

    /** Level at the limit over the height of the opening: one height above the centre. */
    private static final double COVERED = 1.5;

    private final double area;
    private final double height;
    private final double coefficient;
    private final List<ApplicationLimit> limits;

    private Orifice(double area, double height, double coefficient) {
        super(area, height, coefficient);
        this.area = area;
        this.height = height;
        this.coefficient = coefficient;
        limits = List.of(ApplicationLimit.atLeast(
                "level over height of the opening", "", COVERED, "large orifices excluded", h -> h / height));
    }

    /**
     * Returns a round opening with a sharp edge.
     *
     * @param diameter diameter, m; in [1e-6, 1e6]
     * @return the orifice
     * @throws IllegalArgumentException if {@code diameter} is outside its range
     */
    public static Orifice circular(double diameter) {
        Sizes.length("diameter", diameter);
        return new Orifice(Math.PI / 4 * diameter * diameter, diameter, SHARP_EDGE);
    }

    /**
     * Returns a rectangular opening with a sharp edge.
     *
     * @param width width, m; in [1e-6, 1e6]
     * @param height height, m; in [1e-6, 1e6]
     * @return the orifice
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static Orifice ofWidthAndHeight(double width, double height) {
        return new Orifice(Sizes.length("width", width) * Sizes.length("height", height), height, SHARP_EDGE);
    }

    /**
     * Returns a copy with another coefficient.
     *
     * @param newCoefficient Cd; greater than 0, at most 1
     * @return the copy
     * @throws IllegalArgumentException if {@code newCoefficient} is not
     */
    public Orifice withCoefficient(double newCoefficient) {
        return new Orifice(area, height, DischargeCoefficient.checked("newCoefficient", newCoefficient));
    }

    /**
     * Returns the level above the lowest point of the opening for a level above its centre.
     *
     * @param headOnCentre level above the centre, m; finite
     * @return level above the lowest point, m
     * @throws IllegalArgumentException if {@code headOnCentre} is not finite
     */
    public double aboveLowestPoint(double headOnCentre) {
        return Require.finite("headOnCentre", headOnCentre, "m") + height / 2;
    }

    @Override
    public double formula(double head) {
        double covered = COVERED * height;
        double share = head / covered;
        return head >= covered ? torricelli(head - height / 2) : torricelli(height) * share * Math.sqrt(share);
    }

    @Override
    public double formula(double head, double tailwater) {
        return tailwater <= height / 2 ? formula(head) : Math.min(formula(head), torricelli(head - tailwater));
    }

    private double torricelli(double difference) {
        return coefficient * area * GravityFactors.ROOT_2G * Math.sqrt(difference);
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return OptionalDouble.of(height / 2 / head);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("h2/h1", "", 1, "difference of levels", h -> tailwater / h);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    /**
     * Returns the coefficient of discharge.
     *
     * @return Cd
     */
    public double coefficient() {
        return coefficient;
    }

    /**
     * Returns the area of the opening.
     *
     * @return area A, m²
     */
    public double area() {
        return area;
    }

    @Override
    public String toString() {
        return "Orifice[A = " + Text.significant(area, 6) + " m2, Cd = " + Text.significant(coefficient, 6) + "]";
    }
}
