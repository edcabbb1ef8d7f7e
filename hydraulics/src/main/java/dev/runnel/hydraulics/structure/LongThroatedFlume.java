package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * A flume whose throat is long enough for critical flow with straight streamlines: rectangular, trapezoidal or U-throated.
 * Immutable and thread-safe.
 *
 * <p>Q = Cd · Qc(H), where Qc is the critical flow of energy H through the throat, y + A/(2T) = H and Qc = √(g A³/T), and H = h
 * + Q²/(2g Aa²) with h the gauged head above the throat floor (m) and Aa the area of the approach at the gauge (m²). For a
 * rectangle this is (⅔)^1.5 √g Cd Cv b h^1.5; the shape coefficients Cs and Cu of the standard for trapezoid and U are
 * inside Qc, which is solved, not tabulated. The boundary layer gives Cd = (1 − 2 (δ/b)(√(1 + m²) − m))(1 − δ/h)^1.5, with δ =
 * 0.003 L, L the throat length (m), b bottom width or diameter, m side slope (0 for rectangle and U).
 *
 * <p>Source: ISO 4359 (1983, 2013), Flow measurement structures - Rectangular, trapezoidal and U-shaped flumes; constants
 * and limits from memory. The 0.003 holds for a good finish, L/ks from 4,000 to 100,000 and a Reynolds number of the throat
 * above 2·10⁵.
 *
 * <p>Limits: h ≥ 0.05 m and ≥ 0.05 L, h/L ≤ 0.5, h ≤ 2 m, b ≥ 0.10 m, h/b ≤ 3 (rectangular), Froude number of the approach ≤
 * 0.5. Uncertainty of the coefficient (95 %), rectangular: 1 + 20 (Cv − Cd) percent.
 *
 * <p>Drowned: the depth y in the throat stands between the critical one, where the tailwater reaches the modular limit m as a share
 * of the total head H, and the tailwater, where it reaches H; Q = Cd A(y) √(2g (H − y)). Behind an abrupt exit no head is recovered:
 * y is the tailwater itself and m the critical share (⅔ for a rectangle), which is on the safe side. ISO 4359 asks for 0.74 to 0.8
 * behind a short expansion (from memory): {@link #withModularLimit}. The line between is chosen here; a drowned discharge is
 * good to 10 % at best.
 *
 * <p>What it is not: a short venturi throat, whose curved streamlines carry more.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class LongThroatedFlume extends OfParts implements TailwaterDischarge {
    private static final String ISO_4359 = "ISO 4359, from memory";

    /** Boundary layer growth of a good finish: ISO 4359, from memory. */
    private static final double GOOD_FINISH = 0.003;

    /** No modular limit given: that of an exit which recovers nothing. */
    private static final double NO_RECOVERY = Double.NaN;

    private final Throat throat;
    private final double throatLength;
    private final double layerRatio;
    private final double modularShare;
    private final Approach approach;
    private final List<ApplicationLimit> limits;
    private final double highestHead;

    private LongThroatedFlume(
            Throat throat, double throatLength, double layerRatio, double modularShare, Approach approach) {
        super(throat, throatLength, layerRatio, modularShare, approach.key());
        this.throat = throat;
        this.throatLength = throatLength;
        this.layerRatio = layerRatio;
        this.modularShare = modularShare;
        this.approach = approach;
        if (!(throat.widthShare(layerRatio * throatLength) > 0)) {
            throw new IllegalArgumentException("throatLength must be short enough that the boundary layer leaves some"
                    + " width, was " + Text.number(throatLength));
        }
        List<ApplicationLimit> all = new ArrayList<>(List.of(
                ApplicationLimit.of("head h", "m", 0.05, 2, ISO_4359, h -> h),
                ApplicationLimit.of("h/L", "", 0.05, 0.5, ISO_4359, h -> h / throatLength),
                ApplicationLimit.atLeast("throat width", "m", 0.10, ISO_4359, h -> throat.width())));
        if (throat.isRectangular()) {
            all.add(ApplicationLimit.atMost("h/b", "", 3, ISO_4359, h -> h / throat.width()));
        }
        if (!approach.isStill()) {
            all.add(ApplicationLimit.atMost("Froude number of the approach", "", 0.5, ISO_4359, this::approachFroude));
        }
        limits = List.copyOf(all);
        highestHead = highest();
    }

    /**
     * Returns a flume fed from still water.
     *
     * @param throat section of the throat
     * @param throatLength length of the throat along the flow L, m; in [1e-6, 1e6]
     * @return the flume
     * @throws IllegalArgumentException if {@code throatLength} is outside its range or so long that the boundary layer fills the
     *     throat
     */
    public static LongThroatedFlume of(Throat throat, double throatLength) {
        return new LongThroatedFlume(
                Objects.requireNonNull(throat, "throat"),
                Sizes.length("throatLength", throatLength),
                GOOD_FINISH,
                NO_RECOVERY,
                Approach.STILL);
    }

    /**
     * Returns a copy in an open rectangular approach channel.
     *
     * @param channel the channel; its crest height is that of the throat floor (the hump), 0 for none
     * @return the copy
     * @throws IllegalArgumentException if the approach is smaller than the throat
     */
    public LongThroatedFlume inChannel(ApproachChannel channel) {
        Objects.requireNonNull(channel, "channel");
        return with(new Approach(
                channel::area,
                h -> channel.width(),
                Heads.HIGHEST,
                "channel " + Text.number(channel.width()) + " m wide, hump " + Text.number(channel.crestHeight())
                        + " m",
                channel));
    }

    /**
     * Returns a copy with an approach of any section.
     *
     * @param section section of the approach
     * @param hump height of the throat floor above its invert p, m; 0 or greater, below its height
     * @return the copy
     * @throws IllegalArgumentException if {@code hump} is outside its range or the approach is smaller than the throat
     */
    public LongThroatedFlume in(CrossSection section, double hump) {
        Objects.requireNonNull(section, "section");
        Sizes.lengthOrNone("hump", hump);
        if (!(hump < section.height())) {
            throw new IllegalArgumentException("hump must be below the height of the section "
                    + Text.number(section.height()) + " m, was " + Text.number(hump));
        }
        return with(new Approach(
                h -> section.area(h + hump),
                h -> section.topWidth(h + hump),
                // a full closed section has no surface and no subcritical approach
                Math.min(Heads.HIGHEST, 0.999 * section.height() - hump),
                section + ", hump " + Text.number(hump) + " m",
                List.of(section, hump)));
    }

    private LongThroatedFlume with(Approach newApproach) {
        return new LongThroatedFlume(throat, throatLength, layerRatio, modularShare, newApproach);
    }

    /**
     * Returns a copy with another thickness of the boundary layer.
     *
     * @param newRatio displacement thickness over throat length δ/L; 0 (ideal flow) to 0.05
     * @return the copy
     * @throws IllegalArgumentException if {@code newRatio} is outside its range
     */
    public LongThroatedFlume withDisplacementRatio(double newRatio) {
        Require.inRange("newRatio", newRatio, 0, 0.05, "");
        return new LongThroatedFlume(throat, throatLength, newRatio, modularShare, approach);
    }

    /**
     * Returns a copy whose exit recovers head.
     *
     * @param newModularLimit tailwater over total head upstream, both above the throat floor, up to which the flume is modular; in
     *     [0.6, 0.98]: an abrupt exit recovers nothing (the default), one that widens 1:6 far more (0.80 to 0.95; from memory of
     *     Bos 1989)
     * @return the copy
     * @throws IllegalArgumentException if {@code newModularLimit} is outside its range
     */
    public LongThroatedFlume withModularLimit(double newModularLimit) {
        Require.inRange("newModularLimit", newModularLimit, 0.6, 0.98, "");
        return new LongThroatedFlume(throat, throatLength, layerRatio, newModularLimit, approach);
    }

    /**
     * {@inheritDoc}
     *
     * @throws IllegalArgumentException if the approach cannot be subcritical at that head, being smaller than the throat
     */
    @Override
    public double formula(double head) {
        return coefficient(head) * throat.criticalDischarge(checkedTotalHead(head));
    }

    @Override
    public double formula(double head, double tailwater) {
        double free = checkedTotalHead(head);
        if (tailwater <= throat.modularShare(free, modularShare) * free) {
            return formula(head);
        }
        double coefficient = coefficient(head);
        double total = approach.isStill()
                ? head
                : Subcritical.root(
                        excess(head, h -> throat.drownedDischarge(h, tailwater, coefficient, modularShare)),
                        head,
                        free);
        return throat.drownedDischarge(total, tailwater, coefficient, modularShare);
    }

    private double checkedTotalHead(double head) {
        double total = totalHead(head);
        if (Double.isNaN(total)) {
            throw tooSmall("head " + Text.number(head) + " m: ");
        }
        return total;
    }

    /** Solves total head less gauged head less velocity head = 0; NaN if the approach cannot be subcritical. */
    private double totalHead(double head) {
        if (approach.isStill()) {
            return head;
        }
        double coefficient = coefficient(head);
        return Subcritical.root(
                excess(head, total -> coefficient * throat.criticalDischarge(total)),
                head,
                head
                        + approach.area().applyAsDouble(head)
                                / (2 * approach.topWidth().applyAsDouble(head)));
    }

    private DoubleUnaryOperator excess(double head, DoubleUnaryOperator discharge) {
        double area = approach.area().applyAsDouble(head);
        double scale = 1 / (2 * GravityFactors.G * area * area);
        return total -> {
            double q = discharge.applyAsDouble(total);
            return total - head - scale * q * q;
        };
    }

    private double highest() {
        if (approach.isStill()) {
            return approach.highest();
        }
        double highest =
                Subcritical.highest(1e-3 * throat.width(), approach.highest(), head -> !Double.isNaN(totalHead(head)));
        if (Double.isNaN(highest)) {
            throw tooSmall("");
        }
        return highest;
    }

    private IllegalArgumentException tooSmall(String at) {
        return new IllegalArgumentException(
                at + "the approach must be larger than the throat, " + throat + " in " + approach.text());
    }

    /**
     * Returns the coefficient of discharge Cd of the boundary layer.
     *
     * @param head head h, m
     * @return Cd; far below all limits, where the layer fills the head, a small figure above 0
     */
    public double coefficient(double head) {
        double displacement = layerRatio * throatLength;
        double share = Heads.share(head, displacement);
        return throat.widthShare(displacement) * share * Math.sqrt(share);
    }

    /**
     * Returns the coefficient of approach velocity Cv = Qc(H)/Qc(h).
     *
     * @param head head h, m; greater than 0, at most {@link #highestHead()}
     * @return Cv, 1 from still water
     * @throws IllegalArgumentException if {@code head} is outside its range
     */
    public double velocityCoefficient(double head) {
        LimitCheck.possible(this, Require.positive("head", head, "m"));
        return formula(head) / (coefficient(head) * throat.criticalDischarge(head));
    }

    private double approachFroude(double head) {
        double area = approach.area().applyAsDouble(head);
        double width = approach.topWidth().applyAsDouble(head);
        return formula(head) / (area * Math.sqrt(GravityFactors.G * area / width));
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        double total = checkedTotalHead(head);
        return OptionalDouble.of(throat.modularShare(total, modularShare) * total / head);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("h2/h1", "", 1, "energy in the throat", h -> tailwater / h);
    }

    @Override
    public double highestHead() {
        return highestHead;
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return throat.isRectangular()
                ? OptionalDouble.of(0.01 + 0.20 * (velocityCoefficient(head) - coefficient(head)))
                : OptionalDouble.empty();
    }

    @Override
    public String toString() {
        return "LongThroatedFlume[" + throat + ", L = " + Text.significant(throatLength, 6) + " m, from "
                + approach.text() + "]";
    }

    /** Area and surface width of the approach by the head above the throat floor. */
    private record Approach(
            DoubleUnaryOperator area, DoubleUnaryOperator topWidth, double highest, String text, Object key) {
        static final Approach STILL = new Approach(
                h -> Double.POSITIVE_INFINITY, h -> Double.POSITIVE_INFINITY, Heads.HIGHEST, "still water", "still");

        boolean isStill() {
            return Double.isInfinite(area.applyAsDouble(0));
        }
    }
}
