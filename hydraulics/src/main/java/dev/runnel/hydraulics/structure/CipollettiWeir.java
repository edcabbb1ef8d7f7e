package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A Cipolletti weir: a trapezoidal thin-plate notch with sides 1 horizontal to 4 vertical, whose widening makes up for
 * the side contraction. Immutable and thread-safe.
 *
 * <p>Q = C · b · h^1.5 with C = 3.367 ft^0.5/s = 1.8589 m^0.5/s, where b is the length of the crest (m) and h the gauged
 * head above it (m).
 *
 * <p>Source: US Bureau of Reclamation, Water Measurement Manual, 3rd ed. (2001), ch. 7 (the constant from memory; it is
 * that of Cipolletti 1886, Cd = 0.63). Limits after M. G. Bos (1989), Discharge Measurement Structures, ILRI 20, from
 * memory: h 0.06 to 0.60 m, h/b ≤ 0.5, p ≥ 2h, distance from the end of the crest to the channel side ≥ 2h. Uncertainty
 * of the coefficient (95 %): 5 %.
 *
 * <p>What it is not: accurate where the water arrives with speed; there is no velocity of approach in it.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class CipollettiWeir implements HeadDischarge {
    private static final double COEFFICIENT = 3.367 * Math.sqrt(0.3048);
    private static final String BOS = "Bos 1989, from memory";

    private final double crestLength;
    private final double channelWidth;
    private final double crestHeight;
    private final List<ApplicationLimit> limits;

    private CipollettiWeir(double crestLength, double channelWidth, double crestHeight) {
        this.crestLength = crestLength;
        this.channelWidth = channelWidth;
        this.crestHeight = crestHeight;
        limits = List.of(
                ApplicationLimit.of("head h", "m", 0.06, 0.60, BOS, h -> h),
                ApplicationLimit.atMost("h/b", "", 0.5, BOS, h -> h / crestLength),
                ApplicationLimit.atLeast("p/h", "", 2, BOS, h -> crestHeight / h),
                ApplicationLimit.atLeast(
                        "side distance (B - b)/2 over h", "", 2, BOS, h -> (channelWidth - crestLength) / 2 / h));
    }

    /**
     * Returns a weir.
     *
     * @param crestLength length of the crest b, m; greater than 0, finite
     * @param channelWidth width of the approach channel B, m; greater than {@code crestLength}, finite
     * @param crestHeight height of the crest above the channel floor p, m; greater than 0, finite
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static CipollettiWeir of(double crestLength, double channelWidth, double crestHeight) {
        Require.positive("crestLength", crestLength, "m");
        if (!(channelWidth > crestLength && channelWidth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("channelWidth must be greater than crestLength "
                    + Text.number(crestLength) + " m and finite, was " + Text.number(channelWidth));
        }
        return new CipollettiWeir(crestLength, channelWidth, Require.positive("crestHeight", crestHeight, "m"));
    }

    @Override
    public double formula(double head) {
        return COEFFICIENT * crestLength * head * Math.sqrt(head);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.of(0.05);
    }

    private List<Object> parts() {
        return List.of(crestLength, channelWidth, crestHeight);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CipollettiWeir && parts().equals(((CipollettiWeir) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "CipollettiWeir[b = " + Text.number(crestLength) + " m, B = " + Text.number(channelWidth) + " m, p = "
                + Text.number(crestHeight) + " m]";
    }
}
