package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.hydraulics.section.USection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The control section of a long-throated flume: a rectangle, a trapezoid or a U. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Throat extends OfParts {
    /** Steepest side of a throat, nearly a wall; chosen here. */
    private static final double STEEPEST = 100;

    private final CrossSection section;
    private final CriticalFlow critical;
    private final double width;
    private final double sideSlope;
    private final String text;

    private Throat(CrossSection section, double width, double sideSlope, String text) {
        super(text);
        this.section = section;
        critical = CriticalFlow.of(section);
        this.width = width;
        this.sideSlope = sideSlope;
        this.text = text;
    }

    /**
     * Returns a rectangular throat.
     *
     * @param width width b, m; in [1e-6, 1e6]
     * @return the throat
     * @throws IllegalArgumentException if {@code width} is outside its range
     */
    public static Throat rectangular(double width) {
        Sizes.length("width", width);
        return new Throat(RectangularSection.open(width), width, 0, "rectangular, b = " + Text.number(width) + " m");
    }

    /**
     * Returns a U-shaped throat, a half circle below vertical walls.
     *
     * @param diameter diameter of the half circle D, m; in [1e-6, 1e6]
     * @return the throat
     * @throws IllegalArgumentException if {@code diameter} is outside its range
     */
    public static Throat uShaped(double diameter) {
        Sizes.length("diameter", diameter);
        return new Throat(USection.open(diameter), diameter, 0, "U-throated, D = " + Text.number(diameter) + " m");
    }

    /**
     * Returns a trapezoidal throat with the bottom of this rectangular one.
     *
     * @param newSideSlope slope of both sides m, horizontal to 1 vertical; in [0, 100]
     * @return the throat
     * @throws IllegalArgumentException if {@code newSideSlope} is outside its range, or this throat is U-shaped
     */
    public Throat withSideSlope(double newSideSlope) {
        Require.inRange("newSideSlope", newSideSlope, 0, STEEPEST, "");
        if (text.startsWith("U")) {
            throw new IllegalArgumentException("newSideSlope is for a throat with a level bottom, was " + text);
        }
        return newSideSlope == 0
                ? rectangular(width)
                : new Throat(
                        TrapezoidalSection.ofBedWidthAndSideSlope(width, newSideSlope),
                        width,
                        newSideSlope,
                        "trapezoidal, b = " + Text.number(width) + " m, sides 1:" + Text.number(newSideSlope));
    }

    /**
     * Returns the width.
     *
     * @return bottom width or diameter, m
     */
    public double width() {
        return width;
    }

    boolean isRectangular() {
        return text.startsWith("rectangular");
    }

    double area(double depth) {
        return section.area(depth);
    }

    /** Returns the depth at which the flow of an energy is critical, m. */
    double criticalDepth(double energy) {
        return critical.depthForEnergy(energy);
    }

    double criticalDischarge(double energy) {
        return critical.dischargeForEnergy(energy);
    }

    /** Returns the share that the boundary layer leaves of the width, δ taken off the bed and both sides. */
    double widthShare(double displacement) {
        return 1 - 2 * displacement / width * (Math.sqrt(1 + sideSlope * sideSlope) - sideSlope);
    }

    /**
     * Returns the discharge under a tailwater. The depth y in the throat stands between the critical one, where the tailwater
     * is the share m of the total head, and the tailwater itself, where it reaches the total head; in between its share of the
     * total head runs along a straight line (chosen here). Energy gives the rest, Q = Cd A(y) √(2g (H − y)). With m the
     * critical share itself no head is recovered behind the throat and y is the tailwater.
     */
    double drownedDischarge(double total, double tailwater, double coefficient, double limit) {
        double least = criticalDepth(total) / total;
        double modular = Double.isNaN(limit) ? least : limit;
        double rising = least + (tailwater / total - modular) * (1 - least) / (1 - modular);
        double share = Math.max(least, Math.min(1, rising));
        return coefficient * area(share * total) * Math.sqrt(2 * GravityFactors.G * total * (1 - share));
    }

    /** Returns the share of the total head up to which a tailwater does not count. */
    double modularShare(double total, double limit) {
        return Double.isNaN(limit) ? criticalDepth(total) / total : limit;
    }

    @Override
    public String toString() {
        return text;
    }
}
