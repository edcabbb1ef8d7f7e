package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
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
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CipollettiWeir extends ThinPlate {
    /** 3.367 ft^0.5/s in m^0.5/s. */
    private static final double COEFFICIENT = 3.367 * Math.sqrt(0.3048);

    private static final String BOS = "Bos 1989, from memory";

    private final double crestLength;
    private final ApproachChannel channel;
    private final List<ApplicationLimit> limits;

    private CipollettiWeir(double crestLength, ApproachChannel channel) {
        super(Villemonte.CREST, crestLength, channel);
        this.crestLength = crestLength;
        this.channel = channel;
        double channelWidth = channel.width();
        double crestHeight = channel.raisedCrest();
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
     * @param crestLength length of the crest b, m; in [1e-6, 1e6]
     * @param channel the channel; wider than the crest is long, with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static CipollettiWeir ofCrestLength(double crestLength, ApproachChannel channel) {
        Sizes.length("crestLength", crestLength);
        channel.widerThan(crestLength);
        return new CipollettiWeir(crestLength, channel);
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

    @Override
    public String toString() {
        return "CipollettiWeir[b = " + Text.significant(crestLength, 6) + " m, " + channel.dimensions() + "]";
    }
}
