package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * A triangular-profile weir, 1:2 upstream and 1:5 downstream, as wide as its channel (Crump). Immutable and thread-safe.
 *
 * <p>Q = 0.633 f √g b (H − 0.0003)^1.5, H = h + v²/2g, v = Q/(b (h + p)): b width (m), p crest height above the floor (m), h gauged
 * head (m). Free: f = 1. Drowned, with r the total head downstream over the total head upstream, both above the crest:
 *
 * <ul>
 *   <li>f = 1.035 (0.817 − r⁴)^0.0647 for 0.75 &lt; r ≤ 0.93
 *   <li>f = 8.686 − 8.403 r for 0.93 &lt; r ≤ 0.985; nothing is known beyond
 *   <li>with a tapping at the crest, whose head is h_p: f = 1.04 (0.945 − (h_p/H)^1.5)^0.256 for 0.25 &lt; h_p/H ≤ 0.93
 * </ul>
 *
 * <p>Source: ISO 4360, constants, limits and the three drowned laws from memory: h ≥ 0.03 m (smooth crest), h/p ≤ 3, b/h ≥ 2, b ≥
 * 0.30 m, p ≥ 0.06 m; uncertainty of the coefficient about 2 %, drowned about 5 % more. The total head of the worked example
 * of Novak et al. (Hydraulic Structures, pp. 357-358) is met to 0.5 % in Cv. The head downstream is taken as a total head: its
 * velocity head belongs to it.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CrumpWeir extends OfParts implements TailwaterDischarge {
    private static final String ISO_4360 = "ISO 4360, from memory";

    /** Constants of ISO 4360, from memory: that of the discharge. */
    private static final double COEFFICIENT = 0.633;

    /** Head that does not count, m. */
    private static final double HEAD_LOST = 0.0003;

    /** Ratio of total heads up to which the weir is free. */
    private static final double MODULAR = 0.75;

    /** Ratio at which the second drowned law takes over. */
    private static final double KNEE = 0.93;

    private static final double CURVE_ENDS = 0.817;

    /** Beyond the place where curve and line meet, 0.93012. */
    private static final double JOINED = 0.931;

    /** Ratio beyond which nothing is known. */
    private static final double MOST = 0.985;

    /** Ratio of the tapping head up to which the weir is free. */
    private static final double TAPPING_MODULAR = 0.25;

    /** Greatest h/p, twice the limit of application; chosen here, where the approach is still subcritical. */
    private static final double HIGHEST_RATIO = 6;

    private final ApproachChannel channel;
    private final List<ApplicationLimit> limits;

    private CrumpWeir(ApproachChannel channel) {
        super(channel);
        this.channel = channel;
        double width = channel.width();
        double crestHeight = channel.raisedCrest();
        limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.03, ISO_4360, h -> h),
                ApplicationLimit.atMost("h/p", "", 3, ISO_4360, h -> h / crestHeight),
                ApplicationLimit.atLeast("b/h", "", 2, ISO_4360, h -> width / h),
                ApplicationLimit.atLeast("width b", "m", 0.30, ISO_4360, h -> width),
                ApplicationLimit.atLeast("crest height p", "m", 0.06, ISO_4360, h -> crestHeight));
    }

    /**
     * Returns a weir.
     *
     * @param channel the channel, as wide as the crest; with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if the crest is level with the floor
     */
    public static CrumpWeir of(ApproachChannel channel) {
        Objects.requireNonNull(channel, "channel");
        return new CrumpWeir(channel);
    }

    @Override
    public double formula(double head) {
        return solved(head, total -> 1);
    }

    @Override
    public double formula(double head, double tailwater) {
        return solved(head, total -> reduction(tailwater / total));
    }

    /**
     * Returns the drowned discharge from a tapping at the crest, which senses the drowning better than a level downstream.
     *
     * @param head head upstream h, m; within the limits of application
     * @param tappingHead head at the crest tapping above the crest h_p, m; in [0, 0.93 H]
     * @return discharge, m³/s; the free one to h_p/H = 0.25
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public double dischargeByCrestTapping(double head, double tappingHead) {
        LimitCheck.possible(this, head);
        LimitCheck.check(this, head);
        Require.inRange("tappingHead", tappingHead, 0, KNEE * head, "m");
        return solved(head, total -> {
            double ratio = tappingHead / total;
            return ratio <= TAPPING_MODULAR ? 1 : 1.04 * Math.pow(0.945 - ratio * Math.sqrt(ratio), 0.256);
        });
    }

    /** Solves total head less gauged head less velocity head = 0, with a reduction that depends on the total head. */
    private double solved(double head, DoubleUnaryOperator reduction) {
        double scale = channel.velocityHeadScale(head);
        // 0.633 exceeds the ideal 0.544, yet over a crest of any height the approach stays subcritical to h/p = 3 and
        // beyond
        double critical = head + (head + channel.crestHeight()) / 2;
        double total = Subcritical.root(
                h -> {
                    double q = reduction.applyAsDouble(h) * ofTotalHead(h);
                    return h - head - scale * q * q;
                },
                head,
                critical);
        return reduction.applyAsDouble(total) * ofTotalHead(total);
    }

    private double ofTotalHead(double total) {
        double effective = Heads.corrected(total, -HEAD_LOST);
        return COEFFICIENT * GravityFactors.ROOT_G * channel.width() * effective * Math.sqrt(effective);
    }

    /** Returns f; beyond 0.985, where nothing is known, a line to no flow at level heads. */
    private static double reduction(double ratio) {
        if (ratio <= MODULAR) {
            return 1;
        }
        double fourth = ratio * ratio * ratio * ratio;
        // No number beyond 0.951, where the line has long taken its place.
        double curve = 1.035 * Math.pow(CURVE_ENDS - fourth, 0.0647);
        if (ratio <= KNEE) {
            return curve;
        }
        double line = 8.686 - 8.403 * Math.min(ratio, MOST);
        if (ratio < JOINED) {
            // The line begins 0.0007 above the end of the curve: that goes on to it, so that a discharge has one head.
            return Math.min(curve, line);
        }
        return ratio <= MOST ? line : Math.max(0, line * (1 - ratio) / (1 - MOST));
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        double scale = channel.velocityHeadScale(head);
        double q = formula(head);
        return OptionalDouble.of(MODULAR * (head + scale * q * q) / head);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("H2/h1", "", MOST, ISO_4360, h -> tailwater / h);
    }

    @Override
    public double highestHead() {
        return Math.min(Heads.HIGHEST, HIGHEST_RATIO * channel.crestHeight());
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.of(0.02);
    }

    @Override
    public String toString() {
        return "CrumpWeir[" + channel.dimensions() + "]";
    }
}
