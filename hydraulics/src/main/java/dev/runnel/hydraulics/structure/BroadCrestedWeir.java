package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A horizontal broad-crested weir, long enough for critical flow upon it. Immutable and thread-safe.
 *
 * <p>Q = Cd · (⅔)^1.5 · √g · b · H^1.5 with H = h + v²/2g, v = Q/(B (h + p)): b crest width (m), B approach width (m), L
 * crest length along the flow (m), p crest height above the floor (m), h gauged head (m). The total head is solved for
 * exactly ({@link ApproachVelocity}).
 *
 * <ul>
 *   <li>Square upstream edge: Cd = 0.848 (0.462/0.5443). Limits 0.08 ≤ h/L ≤ 0.33, h/(h + p) ≤ 0.35, h ≥ 0.06 m, b ≥
 *       0.30 m, p ≥ 0.15 m; uncertainty 2 %. ISO 3846; Bos 1989; F. M. White, Fluid Mechanics, ch. 10 (0.462, 0.08 &lt;
 *       H/L &lt; 0.33).
 *   <li>Rounded upstream edge: the displacement thickness δ (m) of the boundary layer is taken from the head and each side, Cd = (1 − 2δ/b)(1 −
 *       δ/h)^1.5. δ/L = 0.003 for a good finish (ISO 4374, as in ISO 4359), or 0.001 + 0.2 √(ks/L) for a roughness ks
 *       (White, ch. 10). Limits 0.05 ≤ h/L ≤ 0.57, h/p ≤ 1.5, h ≥ 0.06 m, b ≥ 0.30 m, p ≥ 0.15 m.
 *   <li>Any coefficient: for a crest whose Cd is known, or Cd = 1 for the ideal of critical depth; no limit but the
 *       caller's own.
 * </ul>
 *
 * <p>Limits and the uncertainty are from memory of Bos 1989, ISO 3846 and ISO 4374. The standard's rising coefficient
 * for short or high heads over a square edge (h/L above 0.33, h/(h + p) above 0.35) is not carried: those heads are
 * refused.
 *
 * <p>What it is not: a drowned crest. The modular limit of a vertical back face is near h₂/h₁ = 0.66 (common practice).
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class BroadCrestedWeir implements HeadDischarge {
    private static final String SQUARE = "Bos 1989, ISO 3846, from memory";
    private static final String ROUND = "ISO 4374, from memory";

    private final double width;
    private final double approachWidth;
    private final double crestHeight;
    private final double displacement;
    private final double constant;
    private final OptionalDouble uncertainty;
    private final List<ApplicationLimit> limits;
    private final String text;

    private BroadCrestedWeir(
            double width,
            double approachWidth,
            double crestHeight,
            double displacement,
            double constant,
            OptionalDouble uncertainty,
            List<ApplicationLimit> limits,
            String text) {
        this.width = width;
        this.approachWidth = approachWidth;
        this.crestHeight = crestHeight;
        this.displacement = displacement;
        this.constant = constant;
        this.uncertainty = uncertainty;
        this.limits = limits;
        this.text = text;
    }

    /**
     * Returns a weir with a square upstream edge, as wide as its channel.
     *
     * @param width width of crest and channel b = B, m; greater than 0, finite
     * @param crestLength length along the flow L, m; greater than 0, finite
     * @param crestHeight height above the channel floor p, m; greater than 0, finite
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir squareEdged(double width, double crestLength, double crestHeight) {
        checkGeometry(width, crestLength, crestHeight);
        List<ApplicationLimit> limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.06, SQUARE, h -> h),
                ApplicationLimit.of("h/L", "", 0.08, 0.33, SQUARE, h -> h / crestLength),
                ApplicationLimit.atMost("h/(h + p)", "", 0.35, SQUARE, h -> h / (h + crestHeight)),
                ApplicationLimit.atLeast("width b", "m", 0.30, SQUARE, h -> width),
                ApplicationLimit.atLeast("crest height p", "m", 0.15, SQUARE, h -> crestHeight));
        return new BroadCrestedWeir(
                width,
                width,
                crestHeight,
                0,
                0.848,
                OptionalDouble.of(0.02),
                limits,
                "square-edged, b = " + Text.number(width) + " m, L = " + Text.number(crestLength) + " m");
    }

    /**
     * Returns a weir with a rounded upstream edge and a good finish, δ/L = 0.003, as wide as its channel.
     *
     * @param width width of crest and channel b = B, m; greater than 0, finite
     * @param crestLength length along the flow L, m; greater than 0, finite, 0.006 L below {@code width}
     * @param crestHeight height above the channel floor p, m; greater than 0, finite
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir roundNosed(double width, double crestLength, double crestHeight) {
        return roundNosed(width, crestLength, crestHeight, 0.003, "");
    }

    /**
     * Returns a weir with a rounded upstream edge and a given roughness, δ/L = 0.001 + 0.2 √(ks/L), as wide as its
     * channel.
     *
     * @param width width of crest and channel b = B, m; greater than 0, finite
     * @param crestLength length along the flow L, m; greater than 0, finite
     * @param crestHeight height above the channel floor p, m; greater than 0, finite
     * @param roughness equivalent sand roughness ks, m; 0 or greater, at most {@code crestLength}/100
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir roundNosed(double width, double crestLength, double crestHeight, double roughness) {
        checkGeometry(width, crestLength, crestHeight);
        Require.inRange("roughness", roughness, 0, crestLength / 100, "m");
        double ratio = 0.001 + 0.2 * Math.sqrt(roughness / crestLength);
        return roundNosed(width, crestLength, crestHeight, ratio, ", ks = " + Text.number(roughness) + " m");
    }

    private static BroadCrestedWeir roundNosed(
            double width, double crestLength, double crestHeight, double layerRatio, String tail) {
        checkGeometry(width, crestLength, crestHeight);
        double displacement = layerRatio * crestLength;
        if (!(2 * displacement < width)) {
            throw new IllegalArgumentException("width must be greater than " + Text.number(2 * displacement)
                    + " m, twice the displacement thickness, was " + Text.number(width));
        }
        List<ApplicationLimit> limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.06, ROUND, h -> h),
                ApplicationLimit.of("h/L", "", 0.05, 0.57, ROUND, h -> h / crestLength),
                ApplicationLimit.atMost("h/p", "", 1.5, ROUND, h -> h / crestHeight),
                ApplicationLimit.atLeast("width b", "m", 0.30, ROUND, h -> width),
                ApplicationLimit.atLeast("crest height p", "m", 0.15, ROUND, h -> crestHeight));
        return new BroadCrestedWeir(
                width,
                width,
                crestHeight,
                displacement,
                1 - 2 * displacement / width,
                OptionalDouble.empty(),
                limits,
                "round-nosed, b = " + Text.number(width) + " m, L = " + Text.number(crestLength) + " m" + tail);
    }

    /**
     * Returns a crest with a known coefficient, or the ideal of critical depth with 1; it has no limit of application
     * but those the caller knows.
     *
     * @param width crest width b, m; greater than 0, finite
     * @param approachWidth width of the approach channel B, m; at least {@code width}, finite
     * @param crestHeight height above the channel floor p, m; 0 or greater, finite
     * @param coefficient Cd; greater than 0, at most 1
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir ofCoefficient(
            double width, double approachWidth, double crestHeight, double coefficient) {
        Require.positive("width", width, "m");
        Require.nonNegative("crestHeight", crestHeight, "m");
        if (!(approachWidth >= width && approachWidth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("approachWidth must be at least the width " + Text.number(width)
                    + " m and finite, was " + Text.number(approachWidth));
        }
        Coefficients.checked("coefficient", coefficient);
        return new BroadCrestedWeir(
                width,
                approachWidth,
                crestHeight,
                0,
                coefficient,
                OptionalDouble.empty(),
                List.of(),
                "Cd = " + Text.number(coefficient) + ", b = " + Text.number(width) + " m, B = "
                        + Text.number(approachWidth) + " m");
    }

    private static void checkGeometry(double width, double crestLength, double crestHeight) {
        Require.positive("width", width, "m");
        Require.positive("crestLength", crestLength, "m");
        Require.positive("crestHeight", crestHeight, "m");
    }

    @Override
    public double formula(double head) {
        double coefficient = coefficient(head);
        double ratio = coefficient * width * head / (approachWidth * (head + crestHeight));
        double total = head * ApproachVelocity.energyRatio(ratio);
        return coefficient * GravityFactors.CRITICAL * width * total * Math.sqrt(total);
    }

    /**
     * Returns the coefficient of discharge Cd, without the effect of the approach velocity.
     *
     * @param head head h, m
     * @return Cd, a pure number; 0 where the boundary layer fills the head
     */
    public double coefficient(double head) {
        double share = Math.max(0, 1 - displacement / head);
        return constant * share * Math.sqrt(share);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return uncertainty;
    }

    private List<Object> parts() {
        return List.of(width, approachWidth, crestHeight, text);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BroadCrestedWeir && parts().equals(((BroadCrestedWeir) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "BroadCrestedWeir[" + text + ", p = " + Text.number(crestHeight) + " m]";
    }
}
