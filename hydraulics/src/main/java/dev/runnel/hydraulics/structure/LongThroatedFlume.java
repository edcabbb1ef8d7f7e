package dev.runnel.hydraulics.structure;

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
 * <p>What it is not: a short venturi throat (curved streamlines carry more), or a drowned flume; free flow needs a tailwater
 * head below 0.74 to 0.8 of H, more if the outlet is well shaped (from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class LongThroatedFlume implements HeadDischarge {
    private static final String ISO_4359 = "ISO 4359, from memory";
    private static final double GOOD_FINISH = 0.003;

    private final Throat throat;
    private final double throatLength;
    private final double layerRatio;
    private final Approach approach;
    private final List<ApplicationLimit> limits;
    private final double highestHead;

    private LongThroatedFlume(Throat throat, double throatLength, double layerRatio, Approach approach) {
        this.throat = throat;
        this.throatLength = throatLength;
        this.layerRatio = layerRatio;
        this.approach = approach;
        if (!(throat.widthShare(layerRatio * throatLength) > 0)) {
            throw new IllegalArgumentException("throatLength must be short enough that the boundary layer leaves some"
                    + " width, was " + Text.number(throatLength));
        }
        List<ApplicationLimit> all = new ArrayList<>(List.of(
                ApplicationLimit.of("head h", "m", 0.05, 2, ISO_4359, h -> h),
                ApplicationLimit.of("h/L", "", 0.05, 0.5, ISO_4359, h -> h / throatLength),
                ApplicationLimit.atLeast("throat width", "m", 0.10, ISO_4359, h -> throat.width())));
        if (isRectangular(throat)) {
            all.add(ApplicationLimit.atMost("h/b", "", 3, ISO_4359, h -> h / throat.width()));
        }
        if (!approach.isStill()) {
            all.add(ApplicationLimit.atMost("Froude number of the approach", "", 0.5, ISO_4359, this::approachFroude));
        }
        limits = List.copyOf(all);
        highestHead = highest();
    }

    /**
     * Returns a flume with a rectangular throat fed from still water.
     *
     * @param throatWidth width b, m; greater than 0, finite
     * @param throatLength length L, m; greater than 0, finite
     * @return the flume
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static LongThroatedFlume rectangular(double throatWidth, double throatLength) {
        return of(new Throat.Trapezoid(Require.positive("throatWidth", throatWidth, "m"), 0), throatLength);
    }

    /**
     * Returns a flume with a trapezoidal throat fed from still water.
     *
     * @param bottomWidth bottom width b, m; greater than 0, finite
     * @param sideSlope m, horizontal to 1 vertical; 0 or greater, finite
     * @param throatLength length L, m; greater than 0, finite
     * @return the flume
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static LongThroatedFlume trapezoidal(double bottomWidth, double sideSlope, double throatLength) {
        return of(
                new Throat.Trapezoid(
                        Require.positive("bottomWidth", bottomWidth, "m"),
                        Require.nonNegative("sideSlope", sideSlope, "")),
                throatLength);
    }

    /**
     * Returns a flume with a U-shaped throat, a half circle below vertical walls, fed from still water.
     *
     * @param diameter diameter of the half circle D, m; greater than 0, finite
     * @param throatLength length L, m; greater than 0, finite
     * @return the flume
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static LongThroatedFlume uThroated(double diameter, double throatLength) {
        return of(new Throat.UShape(Require.positive("diameter", diameter, "m")), throatLength);
    }

    private static LongThroatedFlume of(Throat throat, double throatLength) {
        Require.positive("throatLength", throatLength, "m");
        return new LongThroatedFlume(throat, throatLength, GOOD_FINISH, Approach.STILL);
    }

    /**
     * Returns a copy in an open rectangular approach channel.
     *
     * @param width channel width, m; greater than 0, finite
     * @param hump height of the throat floor above the channel floor p, m; 0 or greater, finite
     * @return the copy
     * @throws IllegalArgumentException if a parameter is outside its range or the approach is smaller than the throat
     */
    public LongThroatedFlume inChannel(double width, double hump) {
        Require.positive("width", width, "m");
        Require.nonNegative("hump", hump, "m");
        return new LongThroatedFlume(
                throat,
                throatLength,
                layerRatio,
                new Approach(
                        h -> width * (h + hump),
                        h -> width,
                        1e4,
                        "channel " + Text.number(width) + " m wide, hump " + Text.number(hump) + " m",
                        List.of(width, hump)));
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
        Require.nonNegative("hump", hump, "m");
        if (!(hump < section.height())) {
            throw new IllegalArgumentException("hump must be below the height of the section "
                    + Text.number(section.height()) + " m, was " + Text.number(hump));
        }
        return new LongThroatedFlume(
                throat,
                throatLength,
                layerRatio,
                new Approach(
                        h -> section.area(h + hump),
                        h -> section.topWidth(h + hump),
                        // a full closed section has no surface and no subcritical approach
                        Math.min(1e4, 0.999 * section.height() - hump),
                        section + ", hump " + Text.number(hump) + " m",
                        List.of(section, hump)));
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
        return new LongThroatedFlume(throat, throatLength, newRatio, approach);
    }

    /**
     * {@inheritDoc}
     *
     * @throws IllegalArgumentException if the approach cannot be subcritical at that head, being smaller than the throat
     */
    @Override
    public double formula(double head) {
        double coefficient = coefficient(head);
        if (approach.isStill()) {
            return coefficient * throat.criticalDischarge(head);
        }
        double total = totalHead(head);
        if (Double.isNaN(total)) {
            throw tooSmall("head " + Text.number(head) + " m: ");
        }
        return coefficient * throat.criticalDischarge(total);
    }

    /** Solves total head less gauged head less velocity head = 0; NaN if the approach cannot be subcritical. */
    private double totalHead(double head) {
        double coefficient = coefficient(head);
        double area = approach.area().applyAsDouble(head);
        double scale = coefficient * coefficient / (2 * GravityFactors.G * area * area);
        DoubleUnaryOperator excess = total -> {
            double discharge = throat.criticalDischarge(total);
            return total - head - scale * discharge * discharge;
        };
        return Subcritical.root(
                excess, head, head + area / (2 * approach.topWidth().applyAsDouble(head)));
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
     * @return Cd; 0 where the layer fills the head
     */
    public double coefficient(double head) {
        double displacement = layerRatio * throatLength;
        double share = Math.max(0, 1 - displacement / head);
        return throat.widthShare(displacement) * share * Math.sqrt(share);
    }

    /**
     * Returns the coefficient of approach velocity Cv = Qc(H)/Qc(h).
     *
     * @param head head h, m; greater than 0, finite
     * @return Cv, 1 from still water
     */
    public double velocityCoefficient(double head) {
        Require.positive("head", head, "m");
        return formula(head) / (coefficient(head) * throat.criticalDischarge(head));
    }

    private double approachFroude(double head) {
        double area = approach.area().applyAsDouble(head);
        double width = approach.topWidth().applyAsDouble(head);
        return formula(head) / (area * Math.sqrt(GravityFactors.G * area / width));
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
        return isRectangular(throat)
                ? OptionalDouble.of(0.01 + 0.20 * (velocityCoefficient(head) - coefficient(head)))
                : OptionalDouble.empty();
    }

    private static boolean isRectangular(Throat throat) {
        return throat instanceof Throat.Trapezoid trapezoid && trapezoid.slope() == 0;
    }

    private List<Object> parts() {
        return List.of(throat, throatLength, layerRatio, approach.key());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LongThroatedFlume && parts().equals(((LongThroatedFlume) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "LongThroatedFlume[" + throat + ", L = " + Text.number(throatLength) + " m, from " + approach.text()
                + "]";
    }

    /** Area and surface width of the approach by the head above the throat floor. */
    private record Approach(
            DoubleUnaryOperator area, DoubleUnaryOperator topWidth, double highest, String text, List<Object> key) {
        static final Approach STILL = new Approach(
                h -> Double.POSITIVE_INFINITY, h -> Double.POSITIVE_INFINITY, 1e4, "still water", List.of());

        boolean isStill() {
            return Double.isInfinite(area.applyAsDouble(0));
        }
    }
}
