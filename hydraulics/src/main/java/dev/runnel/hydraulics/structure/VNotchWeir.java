package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A V-notch thin-plate weir of any angle, by Kindsvater and Shen. Immutable and thread-safe.
 *
 * <p>Q = Ce · 8/15 · √(2g) · tan(θ/2) · (h + kh)^2.5, where θ is the notch angle, h the gauged head above the vertex (m),
 * p the height of the vertex above the floor (m) and B the channel width (m). Ce and kh follow from θ; at 90° Ce follows
 * also from h/p and p/B, so that a notch whose contraction is only partial is covered there.
 *
 * <p>Source: J. Shen (1981), USGS Water-Supply Paper 1617-B, Fig. 4, 12 and 13 (read to 0.0003 in Ce, 0.03 mm in kh), the
 * method of ISO 1438. Limits from memory of ISO 1438: θ 20° to 100°, h ≥ 0.06 m, p ≥ 0.09 m; at 90°: p/B 0.1 to 1 and h/p
 * to the end of the curve; at other angles (full contraction): h/p ≤ 0.35, p/B 0.1 to 1.5. Always: the notch must not be
 * wider than its channel at the head. Uncertainty of Ce (95 %): 1 %.
 *
 * <p>What it is not: a notch with a ragged or blunt edge; in sewage a hair on a V-notch is an error at once.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class VNotchWeir extends ThinPlate {
    private static final NumberTable COEFFICIENT = NumberTable.read(VNotchWeir.class, "shen-coefficient.csv");
    private static final NumberTable HEAD_CORRECTION_FEET = NumberTable.read(VNotchWeir.class, "shen-head.csv");

    /** Metres in a foot, exactly. */
    private static final double FOOT = 0.3048;

    /** An angle this near to 90 degrees is a right one; chosen here, below what a plate is cut to. */
    private static final double RIGHT = 0.05;

    private static final String ISO_1438 = "ISO 1438, from memory";

    private final double angleDegrees;
    private final ApproachChannel channel;
    private final double vertexHeight;
    private final double channelWidth;
    private final double plainCoefficient;
    private final double headCorrection;
    private final double factor;
    private final boolean rightAngle;
    private final List<ApplicationLimit> limits;

    private VNotchWeir(double angleDegrees, ApproachChannel channel) {
        super(Villemonte.NOTCH, angleDegrees, channel);
        this.angleDegrees = angleDegrees;
        this.channel = channel;
        vertexHeight = channel.raisedCrest();
        channelWidth = channel.width();
        rightAngle = Math.abs(angleDegrees - 90) < RIGHT;
        plainCoefficient = COEFFICIENT.held(angleDegrees, 1);
        headCorrection = headCorrection(angleDegrees);
        double slope = Math.tan(Math.toRadians(angleDegrees) / 2);
        factor = 8.0 / 15 * GravityFactors.ROOT_2G * slope;
        double shape = vertexHeight / channelWidth;
        limits = List.of(
                ApplicationLimit.of("notch angle", "degrees", 20, 100, "Shen 1981, ISO 1438", h -> angleDegrees),
                ApplicationLimit.atLeast("head h", "m", 0.06, ISO_1438, h -> h),
                ApplicationLimit.atLeast("vertex height p", "m", 0.09, ISO_1438, h -> vertexHeight),
                ApplicationLimit.of("p/B", "", 0.1, rightAngle ? 1 : 1.5, ISO_1438, h -> shape),
                rightAngle
                        ? ApplicationLimit.atMost(
                                "h/p",
                                "",
                                PartialContraction.highestHead(shape),
                                "Shen 1981, Fig. 13",
                                h -> h / vertexHeight)
                        : ApplicationLimit.atMost("h/p", "", 0.35, ISO_1438, h -> h / vertexHeight),
                ApplicationLimit.atMost(
                        "width of the notch at the head over B", "", 1, "geometry", h -> 2 * h * slope / channelWidth));
    }

    /**
     * Returns a notch.
     *
     * @param angleDegrees notch angle θ, degrees; greater than 0, less than 180; 90 to within 0.05 for the partly contracted
     *     form
     * @param channel the channel, its crest height that of the vertex; with a vertex above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static VNotchWeir ofAngle(double angleDegrees, ApproachChannel channel) {
        Objects.requireNonNull(channel, "channel");
        if (!(angleDegrees > 0 && angleDegrees < 180)) {
            throw new IllegalArgumentException(
                    "angleDegrees must be greater than 0 and less than 180, was " + Text.number(angleDegrees));
        }
        return new VNotchWeir(angleDegrees, channel);
    }

    /** kh is nearly k/sin(θ/2) (Shen), so the product with the sine is what is interpolated. */
    private static double headCorrection(double angleDegrees) {
        List<double[]> rows = HEAD_CORRECTION_FEET.rows();
        double[] angles = rows.stream().mapToDouble(row -> row[0]).toArray();
        double[] products =
                rows.stream().mapToDouble(row -> row[1] * halfSine(row[0])).toArray();
        double held = Math.max(angles[0], Math.min(angles[angles.length - 1], angleDegrees));
        return FOOT * Interpolation.held(angles, products, held) / halfSine(held);
    }

    private static double halfSine(double degrees) {
        return Math.sin(Math.toRadians(degrees) / 2);
    }

    @Override
    public double formula(double head) {
        double effectiveHead = Heads.corrected(head, headCorrection);
        return coefficient(head) * factor * effectiveHead * effectiveHead * Math.sqrt(effectiveHead);
    }

    /**
     * Returns the effective coefficient Ce.
     *
     * @param head head h, m; used at 90° only
     * @return Ce, a pure number
     */
    public double coefficient(double head) {
        return rightAngle
                ? PartialContraction.coefficient(head / vertexHeight, vertexHeight / channelWidth)
                : plainCoefficient;
    }

    /**
     * Returns the head correction kh for viscosity and surface tension.
     *
     * @return kh, m
     */
    public double headCorrection() {
        return headCorrection;
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.of(0.01);
    }

    @Override
    public String toString() {
        return "VNotchWeir[" + Text.significant(angleDegrees, 6) + " degrees, " + channel.dimensions() + "]";
    }
}
