package dev.runnel.hydraulics.structure;

import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A full-width thin-plate weir by Rehbock. Immutable and thread-safe.
 *
 * <p>Q = ⅔ √(2g) (0.602 + 0.083 h/p) b (h + 0.0012)^1.5, with b the width (m), p the crest height (m), h the gauged head (m). Source:
 * T. Rehbock (1929), Trans. ASCE 93; constants and limits as in ISO 1438, from memory: h 0.03 to 0.75 m, b ≥ 0.30 m, p ≥ 0.10
 * m, h/p ≤ 1.
 *
 * <p>What it is not: a contracted notch; the nappe must be aired.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class RehbockWeir extends ThinPlate {
    /** Added to the head, m: Rehbock 1929. */
    private static final double HEAD_CORRECTION = 0.0012;

    private static final String ISO_1438 = "ISO 1438, from memory";

    private final ApproachChannel channel;
    private final double width;
    private final double crestHeight;
    private final List<ApplicationLimit> limits;

    private RehbockWeir(ApproachChannel channel) {
        super(Villemonte.CREST, channel);
        this.channel = channel;
        width = channel.width();
        crestHeight = channel.raisedCrest();
        limits = List.of(
                ApplicationLimit.of("head h", "m", 0.03, 0.75, ISO_1438, h -> h),
                ApplicationLimit.atMost("h/p", "", 1, ISO_1438, h -> h / crestHeight),
                ApplicationLimit.atLeast("width b", "m", 0.30, ISO_1438, h -> width),
                ApplicationLimit.atLeast("crest height p", "m", 0.10, ISO_1438, h -> crestHeight));
    }

    /**
     * Returns a weir.
     *
     * @param channel the channel, as wide as the crest is long; with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if the crest is level with the floor
     */
    public static RehbockWeir of(ApproachChannel channel) {
        Objects.requireNonNull(channel, "channel");
        return new RehbockWeir(channel);
    }

    @Override
    public double formula(double head) {
        double effectiveHead = Heads.corrected(head, HEAD_CORRECTION);
        double coefficient = 0.602 + 0.083 * head / crestHeight;
        return 2.0 / 3 * GravityFactors.ROOT_2G * coefficient * width * effectiveHead * Math.sqrt(effectiveHead);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public String toString() {
        return "RehbockWeir[" + channel.dimensions() + "]";
    }
}
