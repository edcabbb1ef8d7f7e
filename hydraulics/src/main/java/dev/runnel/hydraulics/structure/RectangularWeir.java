package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A thin-plate weir with a horizontal crest, full width or contracted, by Kindsvater and Carter. Immutable and
 * thread-safe.
 *
 * <p>Q = Ce · ⅔ · √(2g) · (b + kb) · (h + kh)^1.5 with Ce = α + β h/p, where b is the crest length (m), B the channel
 * width (m), p the crest height above the floor (m), h the gauged head above the crest (m); α, β and kb depend on b/B,
 * kh = 1 mm. The velocity of approach is inside Ce: h is the gauged head, not the total head.
 *
 * <p>Source: C. E. Kindsvater, R. W. Carter (1957), Proc. ASCE 83 (HY6), the method of ISO 1438; kb and kh and the
 * limits below from memory of ISO 1438.
 *
 * <p>Limits: h ≥ 0.03 m, h/p ≤ 2.5, b ≥ 0.15 m, p ≥ 0.10 m, side contraction (B − b)/2 zero or ≥ 0.10 m. Uncertainty of
 * Ce (95 %): 1.5 % to h/p = 1, 2 % to 1.5, 3 % to 2.5.
 *
 * <p>What it is not: a weir without an aired nappe (a full-width weir needs an air pipe behind it), a thick or rounded
 * crest. Drowned from below it follows {@link Villemonte}.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class RectangularWeir extends ThinPlate {
    private static final NumberTable COEFFICIENT = NumberTable.read(RectangularWeir.class, "kindsvater-carter.csv");
    private static final NumberTable WIDTH_CORRECTION =
            NumberTable.read(RectangularWeir.class, "kindsvater-carter-width.csv");

    /** kh, m: Kindsvater and Carter 1957. */
    private static final double HEAD_CORRECTION = 0.001;

    /**
     * Greatest h/p, ten times the limit of application; chosen here, well below h/p 150 where the straight line of Ce would make
     * the discharge of a narrow notch fall.
     */
    private static final double HIGHEST_RATIO = 25;

    /** Largest magnitude of kb, m, that of a full width (b/B = 1): Kindsvater and Carter 1957, with the table of kb. */
    private static final double FULL_WIDTH_CORRECTION = 0.0009;

    private static final String ISO_1438 = "ISO 1438, from memory";

    private final double crestLength;
    private final ApproachChannel channel;
    private final double crestHeight;
    private final double alpha;
    private final double beta;
    private final double factor;
    private final List<ApplicationLimit> limits;

    private RectangularWeir(double crestLength, ApproachChannel channel) {
        super(Villemonte.CREST, crestLength, channel);
        this.crestLength = crestLength;
        this.channel = channel;
        crestHeight = channel.raisedCrest();
        double channelWidth = channel.width();
        double ratio = crestLength / channelWidth;
        alpha = COEFFICIENT.held(ratio, 1);
        beta = COEFFICIENT.held(ratio, 2);
        // As for a head: below 1 cm, where no standard says anything, the correction fades and the crest stays a crest.
        double effectiveLength = Heads.corrected(crestLength, WIDTH_CORRECTION.held(ratio, 1) / 1000);
        factor = 2.0 / 3 * GravityFactors.ROOT_2G * effectiveLength;
        double side = (channelWidth - crestLength) / 2;
        limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.03, ISO_1438, h -> h),
                ApplicationLimit.atMost("h/p", "", 2.5, ISO_1438, h -> h / crestHeight),
                ApplicationLimit.atLeast("crest length b", "m", 0.15, ISO_1438, h -> crestLength),
                ApplicationLimit.atLeast("crest height p", "m", 0.10, ISO_1438, h -> crestHeight),
                ApplicationLimit.atLeast(
                        "side contraction (B - b)/2, if not 0,",
                        "m",
                        0.10,
                        ISO_1438,
                        h -> side == 0 ? Double.POSITIVE_INFINITY : side));
    }

    /**
     * Returns a weir across the whole channel (suppressed contraction).
     *
     * @param channel the channel; wider than 0.0009 m (the width correction), with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if the channel is not
     */
    public static RectangularWeir fullWidth(ApproachChannel channel) {
        if (!(channel.width() > FULL_WIDTH_CORRECTION)) {
            throw new IllegalArgumentException("width of the channel must be greater than "
                    + Text.number(FULL_WIDTH_CORRECTION) + " m, was " + Text.number(channel.width()));
        }
        return new RectangularWeir(channel.width(), channel);
    }

    /**
     * Returns a notch narrower than its channel.
     *
     * @param crestLength notch width b, m; in [1e-6, 1e6]
     * @param channel the channel; wider than the notch, with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static RectangularWeir contracted(double crestLength, ApproachChannel channel) {
        Sizes.length("crestLength", crestLength);
        channel.widerThan(crestLength);
        return new RectangularWeir(crestLength, channel);
    }

    @Override
    public double formula(double head) {
        double effectiveHead = Heads.corrected(head, HEAD_CORRECTION);
        return coefficient(head) * factor * effectiveHead * Math.sqrt(effectiveHead);
    }

    /**
     * Returns the effective coefficient Ce = α + β h/p.
     *
     * @param head head h, m
     * @return Ce, a pure number
     */
    public double coefficient(double head) {
        return alpha + beta * head / crestHeight;
    }

    @Override
    public double highestHead() {
        return Math.min(Heads.HIGHEST, HIGHEST_RATIO * crestHeight);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        double ratio = head / crestHeight;
        return OptionalDouble.of(ratio <= 1 ? 0.015 : ratio <= 1.5 ? 0.02 : 0.03);
    }

    @Override
    public String toString() {
        return "RectangularWeir[b = " + Text.significant(crestLength, 6) + " m, " + channel.dimensions() + "]";
    }
}
