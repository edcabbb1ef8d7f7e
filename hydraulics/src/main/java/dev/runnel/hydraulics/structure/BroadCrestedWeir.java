package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
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
 * for short or high heads over a square edge (h/L above 0.33, h/(h + p) above 0.35) is that of {@link FiniteCrestWeir}:
 * those heads are refused here.
 *
 * <p>Drowned: the depth on the crest stands between the critical one, where the tailwater reaches the modular limit m as a share
 * of the total head H, and the tailwater, where it reaches H; Q = Cd b y √(2g (H − y)). Behind a vertical back face no head is
 * recovered: m is the critical share ⅔ itself (0.66 in common practice) and y the tailwater, which is the law of the textbooks. A
 * sloping back face recovers head: {@link #withModularLimit}. The line between is chosen here; a drowned discharge is good to
 * 10 % at best.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class BroadCrestedWeir extends OfParts implements TailwaterDischarge {
    private static final String SQUARE = "Bos 1989, ISO 3846, from memory";
    private static final String ROUND = "ISO 4374, from memory";

    /** Modular limit of a crest whose velocity head is lost: critical depth over energy, geometry. */
    private static final double NO_RECOVERY = 2.0 / 3;

    private final Form form;

    private final ApproachChannel channel;
    private final Throat throat;
    private final double modularShare;
    private final List<ApplicationLimit> limits;

    /** What distinguishes one crest from another: its shape, the constant and the displacement that make Cd. */
    private record Form(String text, double width, double constant, double displacement, OptionalDouble uncertainty) {}

    private BroadCrestedWeir(Form form, ApproachChannel channel, double modularShare, List<ApplicationLimit> limits) {
        super(form, channel, modularShare);
        this.form = form;
        this.channel = channel;
        this.modularShare = modularShare;
        this.limits = limits;
        throat = Throat.rectangular(form.width());
    }

    /**
     * Returns a weir with a square upstream edge, as wide as its channel.
     *
     * @param crestLength length along the flow L, m; in [1e-6, 1e6]
     * @param channel the channel, with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir squareEdged(double crestLength, ApproachChannel channel) {
        Sizes.length("crestLength", crestLength);
        double crestHeight = channel.raisedCrest();
        List<ApplicationLimit> limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.06, SQUARE, h -> h),
                ApplicationLimit.of("h/L", "", 0.08, 0.33, SQUARE, h -> h / crestLength),
                ApplicationLimit.atMost("h/(h + p)", "", 0.35, SQUARE, h -> h / (h + crestHeight)),
                ApplicationLimit.atLeast("width b", "m", 0.30, SQUARE, h -> channel.width()),
                ApplicationLimit.atLeast("crest height p", "m", 0.15, SQUARE, h -> crestHeight));
        Form form = new Form(
                "square-edged, L = " + Text.number(crestLength) + " m",
                channel.width(),
                0.848,
                0,
                OptionalDouble.of(0.02));
        return new BroadCrestedWeir(form, channel, NO_RECOVERY, limits);
    }

    /**
     * Returns a weir with a rounded upstream edge and a good finish, δ/L = 0.003, as wide as its channel.
     *
     * @param crestLength length along the flow L, m; in [1e-6, 1e6], 0.006 L below the width
     * @param channel the channel, with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir roundNosed(double crestLength, ApproachChannel channel) {
        return roundNosed(crestLength, channel, 0.003, "");
    }

    /**
     * Returns a weir with a rounded upstream edge and a given roughness, δ/L = 0.001 + 0.2 √(ks/L), as wide as its
     * channel.
     *
     * @param crestLength length along the flow L, m; in [1e-6, 1e6]
     * @param roughness equivalent sand roughness ks, m; in [0, {@code crestLength}/100]
     * @param channel the channel, with a crest above its floor
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BroadCrestedWeir roundNosed(double crestLength, double roughness, ApproachChannel channel) {
        Sizes.length("crestLength", crestLength);
        Require.inRange("roughness", roughness, 0, crestLength / 100, "m");
        double ratio = 0.001 + 0.2 * Math.sqrt(roughness / crestLength);
        return roundNosed(crestLength, channel, ratio, ", ks = " + Text.number(roughness) + " m");
    }

    private static BroadCrestedWeir roundNosed(
            double crestLength, ApproachChannel channel, double layerRatio, String tail) {
        Sizes.length("crestLength", crestLength);
        double crestHeight = channel.raisedCrest();
        double displacement = layerRatio * crestLength;
        if (!(2 * displacement < channel.width())) {
            throw new IllegalArgumentException("width of the channel must be greater than "
                    + Text.number(2 * displacement) + " m, twice the displacement thickness, was "
                    + Text.number(channel.width()));
        }
        List<ApplicationLimit> limits = List.of(
                ApplicationLimit.atLeast("head h", "m", 0.06, ROUND, h -> h),
                ApplicationLimit.of("h/L", "", 0.05, 0.57, ROUND, h -> h / crestLength),
                ApplicationLimit.atMost("h/p", "", 1.5, ROUND, h -> h / crestHeight),
                ApplicationLimit.atLeast("width b", "m", 0.30, ROUND, h -> channel.width()),
                ApplicationLimit.atLeast("crest height p", "m", 0.15, ROUND, h -> crestHeight));
        Form form = new Form(
                "round-nosed, L = " + Text.number(crestLength) + " m" + tail,
                channel.width(),
                1 - 2 * displacement / channel.width(),
                displacement,
                OptionalDouble.empty());
        return new BroadCrestedWeir(form, channel, NO_RECOVERY, limits);
    }

    /**
     * Returns a crest with a known coefficient, or the ideal of critical depth with 1, as wide as its channel; it has no
     * limit of application but those the caller knows.
     *
     * @param coefficient Cd; greater than 0, at most 1
     * @param channel the channel; its crest may be level with the floor
     * @return the weir
     * @throws IllegalArgumentException if {@code coefficient} is outside its range
     */
    public static BroadCrestedWeir ofCoefficient(double coefficient, ApproachChannel channel) {
        DischargeCoefficient.checked("coefficient", coefficient);
        Form form =
                new Form("Cd = " + Text.number(coefficient), channel.width(), coefficient, 0, OptionalDouble.empty());
        return new BroadCrestedWeir(form, channel, NO_RECOVERY, List.of());
    }

    /**
     * Returns a copy of a crest with a known coefficient that is narrower than its channel.
     *
     * @param newWidth width of the crest b, m; in [1e-6, 1e6], at most that of the channel
     * @return the copy
     * @throws IllegalArgumentException if {@code newWidth} is outside its range or the crest is one of a standard, which fills its
     *     channel
     */
    public BroadCrestedWeir withCrestWidth(double newWidth) {
        Require.inRange("newWidth", newWidth, Sizes.LEAST, channel.width(), "m");
        if (!limits.isEmpty()) {
            throw new IllegalArgumentException("newWidth is for a crest with a known coefficient, was " + form.text());
        }
        Form narrower = new Form(
                form.text() + ", b = " + Text.number(newWidth) + " m",
                newWidth,
                form.constant(),
                form.displacement(),
                form.uncertainty());
        return new BroadCrestedWeir(narrower, channel, modularShare, limits);
    }

    /**
     * Returns a copy whose back face recovers head.
     *
     * @param newModularLimit tailwater over total head upstream, both above the crest, up to which the crest is modular; in [⅔,
     *     0.98]
     * @return the copy
     * @throws IllegalArgumentException if {@code newModularLimit} is outside its range
     */
    public BroadCrestedWeir withModularLimit(double newModularLimit) {
        Require.inRange("newModularLimit", newModularLimit, NO_RECOVERY, 0.98, "");
        return new BroadCrestedWeir(form, channel, newModularLimit, limits);
    }

    @Override
    public double formula(double head) {
        double total = totalHead(head);
        return coefficient(head) * GravityFactors.CRITICAL * form.width() * total * Math.sqrt(total);
    }

    private double totalHead(double head) {
        double ratio = coefficient(head) * form.width() * head / channel.area(head);
        return head * ApproachVelocity.energyRatio(ratio);
    }

    @Override
    public double formula(double head, double tailwater) {
        double free = totalHead(head);
        if (tailwater <= modularShare * free) {
            return formula(head);
        }
        double scale = channel.velocityHeadScale(head);
        double coefficient = coefficient(head);
        double total = Subcritical.root(
                h -> {
                    double q = throat.drownedDischarge(h, tailwater, coefficient, modularShare);
                    return h - head - scale * q * q;
                },
                head,
                free);
        return throat.drownedDischarge(total, tailwater, coefficient, modularShare);
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return OptionalDouble.of(modularShare * totalHead(head) / head);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("h2/h1", "", 1, "energy on the crest", h -> tailwater / h);
    }

    /**
     * Returns the coefficient of discharge Cd, without the effect of the approach velocity.
     *
     * @param head head h, m
     * @return Cd, a pure number
     */
    public double coefficient(double head) {
        double share = Heads.share(head, form.displacement());
        return form.constant() * share * Math.sqrt(share);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return form.uncertainty();
    }

    @Override
    public String toString() {
        return "BroadCrestedWeir[" + form.text() + ", " + channel.dimensions() + "]";
    }
}
