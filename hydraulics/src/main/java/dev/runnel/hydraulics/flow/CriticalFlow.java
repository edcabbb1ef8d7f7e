package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * Critical flow in a section: it needs no gradient and no roughness. Immutable and thread-safe; what the inverses need is
 * found once, on first need.
 *
 * <pre>
 * q = A √(g A/T)        Froude's number is 1
 * E = y + A/(2T)        the specific energy of critical flow, least for its discharge
 * </pre>
 *
 * <p>A is the wetted area, T the width of the surface, y the depth, g the acceleration of free fall. Source: Ven Te Chow,
 * Open-Channel Hydraulics, 1959, chapter 4. The velocity is taken as even over the section and the pressure as that of
 * still water, so that it holds for a bed without a strong bend.
 *
 * <p>It is not a control: whether the water passes critical depth in a place is a question of what lies up- and
 * downstream.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CriticalFlow {
    /** By how much of itself a width falls at a ledge; chosen here: far above rounding, far below what is built. */
    private static final double LEDGE = 1e-9;

    /** By how much of itself a value may pass that of a full section and still be that; chosen here: some ulp. */
    private static final double ROUNDING = 1e-14;

    private final CrossSection section;
    private final double gravity;
    /** The discharge that counts as 1 in a circle, m³/s, whose inverse needs no search; 0 for any other section. */
    private final double circleUnit;

    private volatile @Nullable InvertibleCurve discharges;
    private volatile @Nullable InvertibleCurve energies;

    private CriticalFlow(CrossSection section, double gravity) {
        this.section = Objects.requireNonNull(section, "section");
        this.gravity = Require.positive("gravity", gravity, "m/s2");
        this.circleUnit =
                section instanceof CircularSection circle ? CircleCritical.unit(circle.diameter(), gravity) : 0;
    }

    /**
     * Returns critical flow in a section under standard gravity.
     *
     * @param section the section
     * @return critical flow
     */
    public static CriticalFlow of(CrossSection section) {
        return new CriticalFlow(section, Gravity.STANDARD);
    }

    static CriticalFlow of(CrossSection section, double gravity) {
        return new CriticalFlow(section, gravity);
    }

    /**
     * Returns a copy with another acceleration of free fall.
     *
     * @param newGravity g, m/s²; greater than 0, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code newGravity} is not
     */
    public CriticalFlow withGravity(double newGravity) {
        return new CriticalFlow(section, newGravity);
    }

    /**
     * Returns the section.
     *
     * @return the section
     */
    public CrossSection section() {
        return section;
    }

    /**
     * Returns the acceleration of free fall.
     *
     * @return g, m/s²
     */
    public double gravity() {
        return gravity;
    }

    /**
     * Returns the discharge that is critical at a depth, q = A √(g A/T).
     *
     * @param depth depth, m; in [0, height of the section]
     * @return discharge, m³/s; 0 at depth 0, +∞ where the section is full and has no surface
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double discharge(double depth) {
        double area = section.area(depth);
        return area == 0 ? 0 : area * Math.sqrt(gravity * area / section.topWidth(depth));
    }

    /**
     * Returns the velocity of critical flow at a depth, √(g A/T).
     *
     * @param depth depth, m; in [0, height of the section]
     * @return velocity, m/s; 0 at depth 0, +∞ where the section is full and has no surface
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double velocity(double depth) {
        return Math.sqrt(gravity * section.hydraulicDepth(depth));
    }

    /**
     * Returns the specific energy of critical flow at a depth, E = y + A/(2T).
     *
     * @param depth depth, m; in [0, height of the section]
     * @return energy above the lowest point of the section, m; +∞ where the section is full and has no surface
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double energy(double depth) {
        return depth + section.hydraulicDepth(depth) / 2;
    }

    /**
     * Returns the critical depth of a discharge, the lowest where there are several. A round closed section has one for
     * every discharge, ever closer to the soffit.
     *
     * @param discharge discharge, m³/s; 0 or greater
     * @return depth, m; {@code discharge(depth)} is the discharge within 1e-12 relative, except at a ledge
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN
     * @throws NoSolutionException if the section is full before the discharge is critical
     */
    public double depth(double discharge) {
        if (circleUnit > 0) {
            Require.nonNegative("discharge", discharge, "m3/s");
            return CircleCritical.depth(discharge, section.height(), circleUnit);
        }
        double[] depths = depths(discharge);
        if (depths.length == 0) {
            throw new NoSolutionException("a discharge of " + Text.number(discharge)
                    + " m3/s is not critical at any depth below the soffit of " + section);
        }
        return depths[0];
    }

    /**
     * Writes the critical depth for each discharge, bit for bit as {@link #depth(double)}.
     *
     * @param discharges discharges, m³/s; NaN for missing; not modified
     * @param depths results, m; same length, overwritten; NaN where the discharge is
     * @throws IllegalArgumentException if the lengths differ or a discharge is out of range; names the index
     * @throws NoSolutionException if one of them is not critical at any depth
     */
    public void depth(double[] discharges, double[] depths) {
        Objects.requireNonNull(discharges, "discharges");
        Objects.requireNonNull(depths, "depths");
        if (circleUnit > 0) {
            Require.sameLength("depths", discharges.length, depths.length);
            CircleCritical.depths(discharges, depths, section.height(), circleUnit, this::depth);
            return;
        }
        Bulk.apply("discharges", discharges, "depths", depths, this::depth);
    }

    /**
     * Returns all critical depths of a discharge: one in simple sections, up to three in benched ones, none if the section
     * is full before. Where the section narrows at a ledge, the flow may be fast below and slow above it; then the ledge is
     * the critical depth.
     *
     * @param discharge discharge, m³/s; 0 or greater
     * @return depths, m, ascending; a new array
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN
     */
    public double[] depths(double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        if (circleUnit > 0) {
            return new double[] {depth(discharge)};
        }
        double[] found = discharges().depthsFor(within(discharge, atSoffit(this::discharge)));
        double[] ledges = Arrays.stream(section.breakDepths())
                .filter(depth ->
                        isLedge(depth) && discharge(depth) < discharge && discharge < discharge(Math.nextUp(depth)))
                .toArray();
        return ledges.length == 0
                ? found
                : DoubleStream.concat(Arrays.stream(found), Arrays.stream(ledges))
                        .sorted()
                        .toArray();
    }

    /**
     * Returns the depth at which a specific energy carries most: that of critical flow with this energy.
     *
     * @param energy specific energy, m; 0 or greater
     * @return depth, m; where a benched section has several critical depths for the energy, the one that carries most
     * @throws IllegalArgumentException if {@code energy} is negative, infinite or NaN
     * @throws NoSolutionException if the energy fills the section
     */
    public double depthForEnergy(double energy) {
        Require.nonNegative("energy", energy, "m");
        double best = Double.NaN;
        double most = -1;
        // Where the section narrows at a ledge, the most can pass at the ledge, with no depth critical to the letter.
        double[] candidates = DoubleStream.concat(
                        Arrays.stream(energies().depthsFor(within(energy, atSoffit(this::energy)))),
                        Arrays.stream(section.breakDepths()).filter(depth -> depth < energy && isLedge(depth)))
                .toArray();
        for (double depth : candidates) {
            // But for √(2 g), which is the same for all.
            double carried = section.area(depth) * Math.sqrt(Math.max(energy - depth, 0));
            if (carried > most) {
                most = carried;
                best = depth;
            }
        }
        if (Double.isNaN(best)) {
            throw new NoSolutionException(
                    "a specific energy of " + Text.number(energy) + " m fills the section: " + section);
        }
        return best;
    }

    private double atSoffit(DoubleUnaryOperator quantity) {
        return Double.isInfinite(section.height())
                ? Double.POSITIVE_INFINITY
                : quantity.applyAsDouble(section.height());
    }

    /** The value, or that at the soffit if it is beyond by rounding only. */
    private static double within(double value, double atSoffit) {
        return value <= atSoffit * (1 + ROUNDING) ? Math.min(value, atSoffit) : value;
    }

    private boolean isLedge(double depth) {
        return depth < section.height() && section.topWidth(Math.nextUp(depth)) < section.topWidth(depth) * (1 - LEDGE);
    }

    /**
     * Returns the most that a specific energy carries through the section, q = A √(2 g (E − y)) at the depth y =
     * {@link #depthForEnergy}: the discharge of a control, or from a reservoir into a channel that runs away fast.
     *
     * @param energy specific energy E, m; 0 or greater
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code energy} is negative, infinite or NaN
     * @throws NoSolutionException if the energy fills the section
     */
    public double dischargeForEnergy(double energy) {
        double depth = depthForEnergy(energy);
        return section.area(depth) * Math.sqrt(2 * gravity * Math.max(energy - depth, 0));
    }

    private InvertibleCurve discharges() {
        InvertibleCurve curve = discharges;
        if (curve == null) {
            curve = InvertibleCurve.of(section, section.breakDepths(), this::discharge)
                    .forManyValues();
            discharges = curve;
        }
        return curve;
    }

    private InvertibleCurve energies() {
        InvertibleCurve curve = energies;
        if (curve == null) {
            curve = InvertibleCurve.of(section, section.breakDepths(), this::energy);
            energies = curve;
        }
        return curve;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CriticalFlow that
                && section.equals(that.section)
                && Double.compare(gravity, that.gravity) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(section, gravity);
    }

    @Override
    public String toString() {
        return "CriticalFlow[" + section
                + (gravity == Gravity.STANDARD ? "]" : ", g = " + Text.significant(gravity, 6) + " m/s2]");
    }
}
