package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A triangular-profile weir, 1:2 upstream and 1:5 downstream, as wide as its channel (Crump). Immutable and thread-safe.
 *
 * <p>Q = 0.633 √g b (H − 0.0003)^1.5, H = h + v²/2g, v = Q/(b (h + p)): b width (m), p crest height above the floor (m), h gauged
 * head (m). Source: ISO 4360, constants and limits from memory: h ≥ 0.03 m (smooth crest), h/p ≤ 3, b/h ≥ 2, b ≥ 0.30 m, p ≥
 * 0.06 m; uncertainty of the coefficient about 2 %. The total head of the worked example of Novak et al. (Hydraulic
 * Structures, pp. 357-358) is met to 0.5 % in Cv.
 *
 * <p>What it is not: drowned; free flow needs a total tailwater head below 0.75 H (from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class CrumpWeir implements HeadDischarge {
    private static final String ISO_4360 = "ISO 4360, from memory";
    private static final double COEFFICIENT = 0.633;
    private static final double HEAD_LOST = 0.0003;

    private final double width;
    private final double crestHeight;
    private final List<ApplicationLimit> limits;

    private CrumpWeir(double width, double crestHeight) {
        this.width = width;
        this.crestHeight = crestHeight;
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
     * @param width width of crest and channel b, m; greater than 0, finite
     * @param crestHeight height of the crest above the floor p, m; greater than 0, finite
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static CrumpWeir of(double width, double crestHeight) {
        return new CrumpWeir(Require.positive("width", width, "m"), Require.positive("crestHeight", crestHeight, "m"));
    }

    @Override
    public double formula(double head) {
        double area = width * (head + crestHeight);
        double scale = 1 / (2 * GravityFactors.G * area * area);
        // 0.633 exceeds the ideal 0.544, yet over a crest of any height the approach stays subcritical to h/p = 3 and
        // beyond
        double critical = head + (head + crestHeight) / 2;
        double total = Subcritical.root(
                h -> {
                    double q = ofTotalHead(h);
                    return h - head - scale * q * q;
                },
                head,
                critical);
        return ofTotalHead(total);
    }

    private double ofTotalHead(double total) {
        double effective = Math.max(0, total - HEAD_LOST);
        return COEFFICIENT * GravityFactors.ROOT_G * width * effective * Math.sqrt(effective);
    }

    @Override
    public double highestHead() {
        return 6 * crestHeight;
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.of(0.02);
    }

    private List<Object> parts() {
        return List.of(width, crestHeight);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CrumpWeir && parts().equals(((CrumpWeir) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "CrumpWeir[b = " + Text.number(width) + " m, p = " + Text.number(crestHeight) + " m]";
    }
}
