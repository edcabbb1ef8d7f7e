package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A rectangular weir with a square upstream edge and a crest of any length, long or short, as wide as its channel. Immutable and
 * thread-safe.
 *
 * <p>Q = (⅔)^1.5 √g C b h^1.5, with b the width (m), h the gauged head (m), L the crest length along the flow (m) and p the crest
 * height above the floor (m). C is read from the table of ISO 3846 by h/L (0.1 to 1.8) and h/p (0.1 to 1.6), straight lines between
 * its places, the end values beyond; the approach velocity is in it. On a long crest C is near 0.85; from h/L = 0.4 on the water
 * no longer runs parallel to the crest and C rises.
 *
 * <p>Source: ISO 3846, rectangular broad-crested weirs, after the experiments of S. Singer (1964). Table and limits are from memory and were
 * not compared with the print; for h/p ≤ 0.2 they agree to 3 %, up to h/p = 0.6 to 7 %, with the line 0.191 h/L + 0.782 that the same source, also from memory,
 * gives for 0.4 ≤ h/L ≤ 1.6. Limits: h ≥ 0.06 m, b ≥ 0.30 m, p ≥ 0.15 m, h/L in [0.1, 1.6], h/p ≤ 1.6.
 *
 * <p>What it is not: {@link BroadCrestedWeir#squareEdged} is the law of the long crest alone, by total head; the two differ by up to
 * 3 % where both hold. A drowned short crest has no law here, nor a rounded edge.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FiniteCrestWeir extends OfParts implements HeadDischarge {
    private static final String ISO_3846 = "ISO 3846, from memory";
    private static final NumberTable COEFFICIENTS = NumberTable.read(FiniteCrestWeir.class, "finite-crest.csv");

    /** Columns of the table in a unit of h/L, and the last of them. */
    private static final double COLUMNS = 10;

    private static final int LAST = 18;

    private final double crestLength;
    private final ApproachChannel channel;
    private final List<ApplicationLimit> limits;

    private FiniteCrestWeir(double crestLength, ApproachChannel channel) {
        super(crestLength, channel);
        this.crestLength = crestLength;
        this.channel = channel;
        double crestHeight = channel.raisedCrest();
        limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.06, ISO_3846, h -> h),
                ApplicationLimit.of("h/L", "", 0.1, 1.6, ISO_3846, h -> h / crestLength),
                ApplicationLimit.atMost("h/p", "", 1.6, ISO_3846, h -> h / crestHeight),
                ApplicationLimit.atLeast("width b", "m", 0.30, ISO_3846, h -> channel.width()),
                ApplicationLimit.atLeast("crest height p", "m", 0.15, ISO_3846, h -> crestHeight));
    }

    /**
     * Returns a weir.
     *
     * @param crestLength length along the flow L, m; in [1e-6, 1e6]
     * @param channel the channel, as wide as the weir; with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static FiniteCrestWeir ofCrestLength(double crestLength, ApproachChannel channel) {
        Objects.requireNonNull(channel, "channel");
        return new FiniteCrestWeir(Sizes.length("crestLength", crestLength), channel);
    }

    @Override
    public double formula(double head) {
        return coefficient(head) * GravityFactors.CRITICAL * channel.width() * head * Math.sqrt(head);
    }

    /**
     * Returns the coefficient of discharge C on the gauged head, the effect of the approach velocity included.
     *
     * @param head head h, m; greater than 0
     * @return C, a pure number; at the ends of the table beyond its ends
     */
    public double coefficient(double head) {
        double place = Math.max(1, Math.min(LAST, COLUMNS * head / crestLength));
        int column = Math.min(LAST - 1, (int) place);
        double ratio = head / channel.crestHeight();
        return Interpolation.between(
                place, column, COEFFICIENTS.held(ratio, column), column + 1, COEFFICIENTS.held(ratio, column + 1));
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public String toString() {
        return "FiniteCrestWeir[L = " + Text.significant(crestLength, 6) + " m, " + channel.dimensions() + "]";
    }
}
