package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * A pipe or channel that ends in the air: the depth at its brink gives the discharge. Immutable and thread-safe. The
 * head is the brink depth y_b, measured at the very edge.
 *
 * <ul>
 *   <li>Rectangular, level or mild: y_b/y_c = 0.715, so Q = b √g (y_b/0.715)^1.5. H. Rouse (1936), Civil Engineering 6(4)
 *       (from memory). Limit: none given but a fall that is aired; 2 to 3 % (from memory).
 *   <li>Circular, level: Q = 8.69 (1 − a/d)^1.88 d^2.48 in feet, a the air above the water and d the bore (California
 *       pipe method, B. R. Vanleer 1922). Limit: y_b/d ≤ 0.5 (from memory of the Water Measurement Manual).
 *   <li>Any section with a known ratio y_b/y_c: the critical depth y_c = y_b/ratio, Q = √(g A³/T) there; 0.75 for a
 *       circle up to y_c/D = 0.82 (S. Dey 1998, J. Hydraulic Eng. 124(12); from memory).
 * </ul>
 *
 * <p>What it is not: an outfall of a steep pipe, whose flow is rapid before the brink, or of one that is drowned.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class FreeOutfall extends OfParts implements HeadDischarge {
    /** Metres in a foot, exactly. */
    private static final double FOOT = 0.3048;

    /** Brink over critical depth of a rectangle: Rouse 1936, from memory. */
    private static final double ROUSE = 0.715;

    /** Relative uncertainty with the ratio of Rouse, 2 to 3 %, from memory. */
    private static final double ROUSE_UNCERTAINTY = 0.03;

    /** Factor and exponents of the California pipe method in feet: Vanleer 1922. */
    private static final double VANLEER = 8.69;

    private static final double VANLEER_FILLING = 1.88;
    private static final double VANLEER_BORE = 2.48;

    /** Highest y_b/d of the California pipe method: Water Measurement Manual, from memory. */
    private static final double HIGHEST_BRINK = 0.5;

    /** Critical depth over height to which the brink ratio of a circle was found constant: Dey 1998, from memory. */
    private static final double DEY = 0.82;

    /** Critical depth over height that is still answered; chosen here, short of the crown where critical flow has no end. */
    private static final double HIGHEST_FILLING = 0.95;

    private final DoubleUnaryOperator formula;
    private final double highest;
    private final OptionalDouble uncertainty;
    private final List<ApplicationLimit> limits;
    private final String text;

    private FreeOutfall(
            DoubleUnaryOperator formula,
            double highest,
            OptionalDouble uncertainty,
            List<ApplicationLimit> limits,
            String text,
            Object... parts) {
        super(parts);
        this.formula = formula;
        this.highest = highest;
        this.uncertainty = uncertainty;
        this.limits = limits;
        this.text = text;
    }

    /**
     * Returns the outfall of a rectangular channel.
     *
     * @param width width b, m; in [1e-6, 1e6]
     * @return the outfall
     * @throws IllegalArgumentException if {@code width} is not
     */
    public static FreeOutfall rectangular(double width) {
        Sizes.length("width", width);
        double factor = width * GravityFactors.ROOT_G / (ROUSE * Math.sqrt(ROUSE));
        return new FreeOutfall(
                depth -> factor * depth * Math.sqrt(depth),
                Heads.HIGHEST,
                OptionalDouble.of(ROUSE_UNCERTAINTY),
                List.of(),
                "rectangular, b = " + Text.number(width) + " m",
                "rectangular",
                width);
    }

    /**
     * Returns the outfall of a level circular pipe by the California pipe method.
     *
     * @param diameter bore d, m; in [1e-6, 1e6]
     * @return the outfall
     * @throws IllegalArgumentException if {@code diameter} is not
     */
    public static FreeOutfall circular(double diameter) {
        Sizes.length("diameter", diameter);
        double factor = VANLEER * Math.pow(diameter / FOOT, VANLEER_BORE) * FOOT * FOOT * FOOT;
        return new FreeOutfall(
                depth -> factor * Math.pow(depth / diameter, VANLEER_FILLING),
                diameter,
                OptionalDouble.empty(),
                List.of(ApplicationLimit.atMost(
                        "yb/d", "", HIGHEST_BRINK, "Water Measurement Manual, from memory", depth -> depth / diameter)),
                "circular, d = " + Text.number(diameter) + " m",
                "circular",
                diameter);
    }

    /**
     * Returns the outfall of any section whose ratio of brink to critical depth is known.
     *
     * @param section the section
     * @param brinkRatio y_b/y_c; greater than 0, at most 1: 0.715 for a rectangle, 0.75 for a circle
     * @return the outfall; for a closed section the limit is y_c ≤ 0.82 of the height, and heads beyond y_c = 0.95 of the
     *     height are impossible
     * @throws IllegalArgumentException if {@code brinkRatio} is outside its range
     */
    public static FreeOutfall of(CrossSection section, double brinkRatio) {
        Objects.requireNonNull(section, "section");
        if (!(brinkRatio > 0 && brinkRatio <= 1)) {
            throw new IllegalArgumentException(
                    "brinkRatio must be greater than 0 and at most 1, was " + Text.number(brinkRatio));
        }
        CriticalFlow critical = CriticalFlow.of(section);
        double height = section.height();
        boolean closed = height < Double.POSITIVE_INFINITY;
        return new FreeOutfall(
                depth -> critical.discharge(depth / brinkRatio),
                closed ? HIGHEST_FILLING * brinkRatio * height : Heads.HIGHEST,
                OptionalDouble.empty(),
                closed
                        ? List.of(ApplicationLimit.atMost(
                                "critical depth over height",
                                "",
                                DEY,
                                "Dey 1998, from memory",
                                depth -> depth / brinkRatio / height))
                        : List.of(),
                section + ", brink " + Text.number(brinkRatio) + " of the critical depth",
                section,
                brinkRatio);
    }

    @Override
    public double formula(double head) {
        return formula.applyAsDouble(head);
    }

    @Override
    public double highestHead() {
        return highest;
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return uncertainty;
    }

    @Override
    public String toString() {
        return "FreeOutfall[" + text + "]";
    }
}
