package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Gauss;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * An opening of any size against its head, from a first trickle over its sill to full submergence upstream: an orifice
 * plate, a penstock (an opening closed from above by a gate), a throttle in an overflow chamber. Immutable and
 * thread-safe.
 *
 * <p>Every strip flows by its own head: Q = Cd ∫ √(2g (h − z)) b(z) dz from the sill z = 0 to the lower of the opening a and
 * the head h, both above the lowest point of the opening (m). For a rectangle this is Cd ⅔ √(2g) b (h^1.5 − (h − a)^1.5);
 * while h is below the top it is a weir. For a circle, or the part of it that a gate leaves open, the integral is
 * taken numerically to about 1e-12 after a substitution that removes its singular ends.
 *
 * <p>Into standing water strips above the tailwater flow by their own head, strips below by the difference of the levels; both
 * levels count from the lowest point of the opening.
 *
 * <p>One coefficient serves the whole range, 0.61 unless told otherwise; near h = a, where the opening changes from weir
 * to orifice, the surface is unsteady and the true figure may be several percent off (common practice).
 *
 * <p>Source: the large orifice of the textbooks, e.g. R. S. Dighe, Hydraulics Made Easy, ex. 4.20 and 4.21; Encyclopaedia
 * Britannica 11th ed. (1911), vol. 14, Hydraulics.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class LargeOrifice extends OfParts implements TailwaterDischarge {
    /** Width of a rectangle; for a circle NaN. */
    private final double width;

    private final double diameter;
    private final double opening;
    private final double coefficient;

    private LargeOrifice(double width, double diameter, double opening, double coefficient) {
        super(width, diameter, opening, coefficient);
        this.width = width;
        this.diameter = diameter;
        this.opening = opening;
        this.coefficient = coefficient;
    }

    /**
     * Returns a rectangular opening with a sharp edge.
     *
     * @param width width b, m; in [1e-6, 1e6]
     * @param opening height of the opening a, m; in [1e-6, 1e6]
     * @return the orifice
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static LargeOrifice ofWidthAndOpening(double width, double opening) {
        return new LargeOrifice(
                Sizes.length("width", width), Double.NaN, Sizes.length("opening", opening), Orifice.SHARP_EDGE);
    }

    /**
     * Returns a round opening with a sharp edge.
     *
     * @param diameter diameter, m; in [1e-6, 1e6]
     * @return the orifice
     * @throws IllegalArgumentException if {@code diameter} is not
     */
    public static LargeOrifice circular(double diameter) {
        Sizes.length("diameter", diameter);
        return new LargeOrifice(Double.NaN, diameter, diameter, Orifice.SHARP_EDGE);
    }

    /**
     * Returns a copy that a gate with a straight lower edge closes from above, a penstock: the lower part stays open.
     *
     * @param newOpening height of the open part above the lowest point a, m; greater than 0, at most that of this opening
     * @return the copy
     * @throws IllegalArgumentException if {@code newOpening} is outside its range
     */
    public LargeOrifice closedTo(double newOpening) {
        if (!(newOpening > 0 && newOpening <= opening)) {
            throw new IllegalArgumentException("newOpening must be greater than 0 and at most the opening "
                    + Text.number(opening) + " m, was " + Text.number(newOpening));
        }
        return new LargeOrifice(width, diameter, newOpening, coefficient);
    }

    /**
     * Returns a copy with another coefficient.
     *
     * @param newCoefficient Cd; greater than 0, at most 1
     * @return the copy
     * @throws IllegalArgumentException if {@code newCoefficient} is not
     */
    public LargeOrifice withCoefficient(double newCoefficient) {
        return new LargeOrifice(
                width, diameter, opening, DischargeCoefficient.checked("newCoefficient", newCoefficient));
    }

    @Override
    public double formula(double head) {
        return coefficient * GravityFactors.ROOT_2G * integral(head, 0, opening);
    }

    /** Strips above the tailwater flow by their own head, strips below by the difference of the levels. */
    @Override
    public double formula(double head, double tailwater) {
        double wetTop = Math.min(tailwater, opening);
        double below = area(wetTop) * Math.sqrt(head - tailwater);
        double above = wetTop < opening ? integral(head, wetTop, opening) : 0;
        return coefficient * GravityFactors.ROOT_2G * (below + above);
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return OptionalDouble.of(0);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("h2/h1", "", 1, "difference of levels", h -> tailwater / h);
    }

    /** Returns ∫ √(h − z) b(z) dz from a level to the lower of another and the head. */
    private double integral(double head, double from, double to) {
        double top = Math.min(to, head);
        if (Double.isNaN(diameter)) {
            // x^1.5 - y^1.5 without loss where the head is many times the opening
            double x = head - from;
            double y = head - top;
            double root = Math.sqrt(x) + Math.sqrt(y);
            return 2.0 / 3 * width * (top - from) * (x + Math.sqrt(x * y) + y) / root;
        }
        if (from > 0 && from < top / 2) {
            // the invert, where the width has its root, would be close below the range
            return integral(head, 0, to) - integral(head, 0, from);
        }
        double span = top - from;
        // z = from + span sin²φ: the square roots of width and head both become smooth at both ends
        return Gauss.integrate(
                phi -> {
                    double sine = Math.sin(phi);
                    double cosine = Math.cos(phi);
                    double z = from + span * sine * sine;
                    double strip = 2 * Math.sqrt(z * Math.max(0, diameter - z)) * Math.sqrt(Math.max(0, head - z));
                    return strip * 2 * span * sine * cosine;
                },
                0,
                Math.PI / 2);
    }

    private double area(double depth) {
        if (Double.isNaN(diameter)) {
            return width * depth;
        }
        double angle = 2 * Math.acos(1 - 2 * depth / diameter);
        return diameter * diameter / 8 * (angle - Math.sin(angle));
    }

    /**
     * Returns no limit: the strips hold from a trickle upward.
     *
     * @return an empty list
     */
    @Override
    public List<ApplicationLimit> limits() {
        return List.of();
    }

    @Override
    public String toString() {
        return "LargeOrifice["
                + (Double.isNaN(diameter)
                        ? "b = " + Text.significant(width, 6) + " m, a = " + Text.significant(opening, 6)
                        : "D = " + Text.significant(diameter, 6) + " m, open to " + Text.significant(opening, 6))
                + " m, Cd = " + Text.significant(coefficient, 6) + "]";
    }
}
