package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * A section laid to a gradient with a law of resistance: the place for every question about uniform flow. Immutable and
 * thread-safe; what takes longer than a question is done once, on first need.
 *
 * <p><b>Accuracy of the inverses.</b> {@code discharge(normalDepth(q))} is q within 1e-12 relative. Two limits lie in
 * the numbers themselves. At the flat maximum many depths carry the same flow to the last bit, so there only the
 * discharge, not the depth, closes (the depth is known to about 1e-8 relative). Within 1e-8 of the soffit the opposite
 * holds: the discharge changes by more than 1e-12 from one double depth to the next, and the returned depth is the
 * nearest one or its neighbour.
 *
 * <p>It is not a reach: no length, no losses, no backwater.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Conduit {
    /** Chosen here: thousands of times the largest river. */
    private static final double LARGEST_DISCHARGE = 1e9;

    /** Depths found before it pays to keep anything of a pipe; chosen here. */
    private static final int FEW = 8;

    private final CrossSection section;
    private final Gradient gradient;
    private final Resistance resistance;
    private final double gravity;

    /** Made on first need, like the curves: most conduits are never asked for it. Two threads make the same. */
    private volatile @Nullable CriticalFlow critical;

    private volatile @Nullable ConduitCurves curves;

    /** The form that needs no search, where there is one. */
    private volatile @Nullable UniformCurve curve;

    /** Whether there is none; what two threads do not see of each other they find out again. */
    private boolean isSearched;

    /** Depths asked for before there was a form. */
    private byte asked;

    private Conduit(CrossSection section, Gradient gradient, Resistance resistance, double gravity) {
        this.section = Objects.requireNonNull(section, "section");
        this.gradient = Objects.requireNonNull(gradient, "gradient");
        this.resistance = Objects.requireNonNull(resistance, "resistance");
        this.gravity = Require.positive("gravity", gravity, "m/s2");
        Require.positive("gradient", gradient.value(), "m/m");
    }

    private @Nullable UniformCurve curve() {
        UniformCurve known = curve;
        if (known == null && !isSearched) {
            known = newCurve();
            curve = known;
            isSearched = known == null;
        }
        return known;
    }

    private @Nullable UniformCurve newCurve() {
        if (!(section instanceof CircularSection circle)) {
            return null;
        }
        if (resistance instanceof Manning manning) {
            return CircleManning.of(circle, manning, gradient.value());
        }
        return resistance instanceof ColebrookWhite law
                ? CircleColebrook.of(circle, law, gradient.value(), gravity)
                : null;
    }

    private double lowestDepth(double discharge) {
        if (curve == null
                && asked < FEW
                && section instanceof CircularSection circle
                && resistance instanceof ColebrookWhite law) {
            return lowestDepth(circle, law, discharge);
        }
        UniformCurve known = curve();
        return known != null
                ? known.lowestDepth(discharge)
                : curves().discharge().lowestDepthFor(discharge);
    }

    /** The depth of a discharge in a pipe that nothing is kept of yet. */
    private double lowestDepth(CircularSection circle, ColebrookWhite law, double discharge) {
        asked++;
        double depth = ColebrookPipe.of(circle, law, gradient.value(), gravity).depthOnce(discharge);
        if (depth > 0) {
            return depth;
        }
        CircleColebrook made = CircleColebrook.of(circle, law, gradient.value(), gravity);
        curve = made;
        return made.lowestDepth(discharge);
    }

    /**
     * Returns a conduit under standard gravity.
     *
     * @param section the section
     * @param gradient the fall; greater than 0, as there is no uniform flow otherwise
     * @param resistance the law of resistance
     * @return the conduit
     * @throws IllegalArgumentException if the gradient is 0 or negative
     */
    public static Conduit of(CrossSection section, Gradient gradient, Resistance resistance) {
        return new Conduit(section, gradient, resistance, Gravity.STANDARD);
    }

    /**
     * Returns a copy with another section.
     *
     * @param newSection the section
     * @return the copy
     */
    public Conduit withSection(CrossSection newSection) {
        Objects.requireNonNull(newSection, "newSection");
        return new Conduit(newSection, gradient, resistance, gravity);
    }

    /**
     * Returns a copy with another gradient.
     *
     * @param newGradient the fall; greater than 0
     * @return the copy
     * @throws IllegalArgumentException if the gradient is 0 or negative
     */
    public Conduit withGradient(Gradient newGradient) {
        Objects.requireNonNull(newGradient, "newGradient");
        return new Conduit(section, newGradient, resistance, gravity);
    }

    /**
     * Returns a copy with another law of resistance.
     *
     * @param newResistance the law
     * @return the copy
     */
    public Conduit withResistance(Resistance newResistance) {
        Objects.requireNonNull(newResistance, "newResistance");
        return new Conduit(section, gradient, newResistance, gravity);
    }

    /**
     * Returns a copy with another acceleration of free fall, for the resistance as for critical flow: 9.81 to follow most
     * printed tables.
     *
     * @param newGravity g, m/s²; greater than 0, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code newGravity} is not
     */
    public Conduit withGravity(double newGravity) {
        return new Conduit(section, gradient, resistance, newGravity);
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
     * Returns the gradient.
     *
     * @return the gradient
     */
    public Gradient gradient() {
        return gradient;
    }

    /**
     * Returns the law of resistance.
     *
     * @return the law
     */
    public Resistance resistance() {
        return resistance;
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
     * Returns the mean velocity of uniform flow at a depth.
     *
     * @param depth depth above the invert, m; in [0, height of the section]
     * @return velocity, m/s; 0 at depth 0
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double velocity(double depth) {
        return resistance.at(section, depth).velocity(section.hydraulicRadius(depth), gradient.value(), gravity);
    }

    /**
     * Returns the discharge of uniform flow at a depth.
     *
     * @param depth depth above the invert, m; in [0, height of the section]
     * @return discharge, m³/s; 0 at depth 0
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double discharge(double depth) {
        UniformCurve known = curve();
        if (known != null && depth >= 0 && depth <= section.height()) {
            return known.discharge(depth);
        }
        return dischargeByLaw(depth);
    }

    /** The discharge as area times velocity. */
    double dischargeByLaw(double depth) {
        return section.area(depth) * velocity(depth);
    }

    private CriticalFlow critical() {
        CriticalFlow known = critical;
        if (known == null) {
            known = CriticalFlow.of(section, gravity);
            critical = known;
        }
        return known;
    }

    /** The general search for depths, for those who cannot do without. */
    ConduitCurves curves() {
        ConduitCurves known = curves;
        if (known == null) {
            known = new ConduitCurves(this);
            curves = known;
        }
        return known;
    }

    /**
     * Returns the state of uniform flow at a depth.
     *
     * @param depth depth above the invert, m; in [0, height of the section]
     * @return the state
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public FlowState at(double depth) {
        return FlowState.of(this, depth);
    }

    /**
     * Returns the state with the section just full, on the energy gradient of the conduit.
     *
     * @return the state at the soffit
     * @throws IllegalStateException if the section is open
     */
    public FlowState fullBore() {
        return at(closed().height());
    }

    /**
     * Returns the state that carries most. In a round closed section it lies below full; where the soffit is level, just
     * under it.
     *
     * @return the state of largest discharge
     * @throws IllegalStateException if the section is open, and carries the more the deeper
     */
    public FlowState maximum() {
        closed();
        UniformCurve known = curve();
        return at(
                known != null
                        ? known.depthOfMostDischarge()
                        : curves().discharge().depthOfMaximum());
    }

    /**
     * Returns the state that runs fastest. It lies lower than that of the largest discharge.
     *
     * @return the state of largest velocity
     * @throws IllegalStateException if the section is open
     */
    public FlowState maximumVelocity() {
        closed();
        UniformCurve known = curve();
        return at(
                known != null
                        ? known.depthOfMostVelocity()
                        : curves().velocity().depthOfMaximum());
    }

    /**
     * Returns the normal depth of a discharge, the lowest where there are several.
     *
     * @param discharge discharge, m³/s; 0 or greater
     * @return depth above the invert, m
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN
     * @throws NoSolutionException if the conduit does not carry so much at any depth
     */
    public double normalDepth(double discharge) {
        checkedDischarge(discharge);
        double depth = lowestDepth(discharge);
        if (Double.isNaN(depth)) {
            throw new NoSolutionException("no depth carries a discharge of " + Text.number(discharge)
                    + " m3/s: the maximum is " + Text.number(maximum().discharge()) + " m3/s in " + this);
        }
        return depth;
    }

    /**
     * Returns all normal depths of a discharge: none above the maximum, two between full bore and maximum in a round
     * closed section, else one. A section with benches can have more.
     *
     * @param discharge discharge, m³/s; 0 or greater
     * @return depths above the invert, m, ascending; a new array
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN
     */
    public double[] normalDepths(double discharge) {
        checkedDischarge(discharge);
        UniformCurve known = curve();
        return known != null ? known.depths(discharge) : curves().discharge().depthsFor(discharge);
    }

    /**
     * Returns the gradient at which the section, just full, carries a discharge. The gradient of this conduit plays no
     * part.
     *
     * @param discharge wanted full-bore capacity, m³/s; greater than 0
     * @return the gradient
     * @throws IllegalArgumentException if {@code discharge} is not greater than 0 and finite
     * @throws IllegalStateException if the section is open
     */
    public Gradient gradientFor(double discharge) {
        return gradientForDischargeAtDepth(discharge, closed().height());
    }

    /**
     * Returns the gradient at which a discharge runs at a depth.
     *
     * @param discharge wanted discharge, m³/s; greater than 0
     * @param depth depth above the invert, m; in (0, height of the section]
     * @return the gradient
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    public Gradient gradientForDischargeAtDepth(double discharge, double depth) {
        Require.positive("discharge", discharge, "m3/s");
        Require.positive("depth", depth, "m");
        double velocity = discharge / section.area(depth);
        double slope = resistance.at(section, depth).gradient(velocity, section.hydraulicRadius(depth), gravity);
        return Gradient.ofAny(slope);
    }

    /**
     * Returns a copy whose roughness is that at which uniform flow has a gauged depth and velocity. Backwater, deposits
     * and a wrong gradient all end up in this roughness; it describes the gauging, not the wall.
     *
     * @param depth gauged depth above the invert, m; in (0, height of the section]
     * @param velocity gauged mean velocity, m/s; greater than 0
     * @return the copy
     * @throws IllegalArgumentException if an argument is out of range or NaN
     * @throws IllegalStateException if the law of this conduit has more than one roughness
     * @throws NoSolutionException if no roughness gives that velocity
     */
    public Conduit fittedTo(double depth, double velocity) {
        Require.positive("depth", depth, "m");
        if (resistance instanceof FittableResistance law) {
            return withResistance(law.fittedTo(velocity, section.hydraulicRadius(depth), gradient.value(), gravity));
        }
        throw new IllegalStateException("the law has no single roughness to fit: " + resistance);
    }

    /**
     * Returns the gradient at which a discharge runs uniformly at its critical depth; flatter, it is subcritical.
     *
     * @param discharge discharge, m³/s; greater than 0
     * @return the gradient
     * @throws IllegalArgumentException if {@code discharge} is not greater than 0 and finite
     * @throws NoSolutionException if the section is full before the discharge is critical
     */
    public Gradient criticalGradient(double discharge) {
        Require.positive("discharge", discharge, "m3/s");
        return gradientForDischargeAtDepth(discharge, criticalDepth(discharge));
    }

    /**
     * Returns the discharge that is critical at a depth, as {@link CriticalFlow} has it: neither the gradient nor the law
     * of resistance plays a part.
     *
     * @param depth depth above the invert, m; in [0, height of the section]
     * @return discharge, m³/s; 0 at depth 0, +∞ where the section is full and has no surface
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double criticalDischarge(double depth) {
        return critical().discharge(depth);
    }

    /**
     * Returns the critical depth of a discharge, as {@link CriticalFlow} has it: neither the gradient nor the law of
     * resistance plays a part.
     *
     * @param discharge discharge, m³/s; 0 or greater
     * @return depth above the invert, m; the lowest if there are several
     * @throws IllegalArgumentException if {@code discharge} is negative, infinite or NaN
     * @throws NoSolutionException if the section is full before the discharge is critical
     */
    public double criticalDepth(double discharge) {
        return critical().depth(discharge);
    }

    /**
     * Writes the velocity for each depth, bit for bit as {@link #velocity(double)}.
     *
     * @param depths depths, m; NaN for missing; not modified
     * @param velocities results, m/s; same length, overwritten; NaN where the depth is
     * @throws IllegalArgumentException if the lengths differ or a depth is out of range; names the index
     */
    public void velocity(double[] depths, double[] velocities) {
        Objects.requireNonNull(depths, "depths");
        Objects.requireNonNull(velocities, "velocities");
        Bulk.apply("depths", depths, "velocities", velocities, this::velocity);
    }

    /**
     * Writes the discharge for each depth, bit for bit as {@link #discharge(double)}.
     *
     * @param depths depths, m; NaN for missing; not modified
     * @param discharges results, m³/s; same length, overwritten; NaN where the depth is
     * @throws IllegalArgumentException if the lengths differ or a depth is out of range; names the index
     */
    public void discharge(double[] depths, double[] discharges) {
        Objects.requireNonNull(depths, "depths");
        Objects.requireNonNull(discharges, "discharges");
        if (curve() instanceof CircleManning manning) {
            Require.sameLength("discharges", depths.length, discharges.length);
            manning.discharges(depths, discharges, this::discharge);
            return;
        }
        Bulk.apply("depths", depths, "discharges", discharges, this::discharge);
    }

    /**
     * Writes the lowest normal depth for each discharge, bit for bit as {@link #normalDepth(double)}.
     *
     * @param discharges discharges, m³/s; NaN for missing; not modified
     * @param depths results, m; same length, overwritten; NaN where the discharge is
     * @throws IllegalArgumentException if the lengths differ or a discharge is out of range; names the index
     * @throws NoSolutionException if the conduit does not carry one of them at any depth
     */
    public void normalDepth(double[] discharges, double[] depths) {
        Objects.requireNonNull(discharges, "discharges");
        Objects.requireNonNull(depths, "depths");
        if (curve() instanceof CircleManning manning) {
            Require.sameLength("depths", discharges.length, depths.length);
            manning.lowestDepths(discharges, depths, this::normalDepth);
            return;
        }
        if (curve() instanceof CircleColebrook colebrook) {
            Require.sameLength("depths", discharges.length, depths.length);
            colebrook.lowestDepths(discharges, depths, this::normalDepth);
            return;
        }
        Bulk.apply("discharges", discharges, "depths", depths, this::normalDepth);
    }

    /**
     * Writes the critical depth for each discharge, bit for bit as {@link #criticalDepth(double)}.
     *
     * @param discharges discharges, m³/s; NaN for missing; not modified
     * @param depths results, m; same length, overwritten; NaN where the discharge is
     * @throws IllegalArgumentException if the lengths differ or a discharge is out of range; names the index
     * @throws NoSolutionException if one of them is not critical at any depth
     */
    public void criticalDepth(double[] discharges, double[] depths) {
        Objects.requireNonNull(discharges, "discharges");
        Objects.requireNonNull(depths, "depths");
        critical().depth(discharges, depths);
    }

    /** An open section carries any discharge at some depth; beyond this bound the depth would be no number. */
    private void checkedDischarge(double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        if (Double.isInfinite(section.height())) {
            Require.inRange("discharge", discharge, 0, LARGEST_DISCHARGE, "m3/s");
        }
    }

    /**
     * Writes the discharge for each depth and marks what has none, instead of refusing the whole: NaN where the depth is
     * missing, negative, or above the soffit.
     *
     * @param depths depths, m; NaN for missing; not modified
     * @param discharges results, m³/s; same length, overwritten
     * @return how many depths were there but outside the section
     * @throws IllegalArgumentException if the lengths differ
     */
    public int dischargeWhereDefined(double[] depths, double[] discharges) {
        Objects.requireNonNull(depths, "depths");
        Objects.requireNonNull(discharges, "discharges");
        return Bulk.applyWhere(depths, "discharges", discharges, this::isInside, this::discharge);
    }

    /**
     * Writes the velocity for each depth and marks what has none, as {@link #dischargeWhereDefined}.
     *
     * @param depths depths, m; NaN for missing; not modified
     * @param velocities results, m/s; same length, overwritten
     * @return how many depths were there but outside the section
     * @throws IllegalArgumentException if the lengths differ
     */
    public int velocityWhereDefined(double[] depths, double[] velocities) {
        Objects.requireNonNull(depths, "depths");
        Objects.requireNonNull(velocities, "velocities");
        return Bulk.applyWhere(depths, "velocities", velocities, this::isInside, this::velocity);
    }

    /**
     * Writes the lowest normal depth for each discharge and marks what has none, instead of refusing the whole: NaN where
     * the discharge is missing, negative, or more than the conduit carries.
     *
     * @param discharges discharges, m³/s; NaN for missing; not modified
     * @param depths results, m; same length, overwritten
     * @return how many discharges were there but have no normal depth
     * @throws IllegalArgumentException if the lengths differ
     */
    public int normalDepthWhereDefined(double[] discharges, double[] depths) {
        Objects.requireNonNull(discharges, "discharges");
        Objects.requireNonNull(depths, "depths");
        double most = Double.isInfinite(section.height())
                ? LARGEST_DISCHARGE
                : maximum().discharge();
        return Bulk.applyWhere(
                discharges, "depths", depths, discharge -> discharge >= 0 && discharge <= most, this::normalDepth);
    }

    private boolean isInside(double depth) {
        return depth >= 0 && depth <= section.height() && depth < Double.POSITIVE_INFINITY;
    }

    private ClosedSection closed() {
        if (section instanceof ClosedSection) {
            return (ClosedSection) section;
        }
        throw new IllegalStateException("an open section has no soffit and no full bore: " + section);
    }

    @Override
    public boolean equals(Object object) {
        if (!(object instanceof Conduit)) {
            return false;
        }
        Conduit other = (Conduit) object;
        return section.equals(other.section)
                && gradient.equals(other.gradient)
                && resistance.equals(other.resistance)
                && Double.compare(gravity, other.gravity) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(section, gradient, resistance, gravity);
    }

    @Override
    public String toString() {
        return "Conduit[" + section + ", " + gradient + ", " + resistance
                + (gravity == Gravity.STANDARD ? "]" : ", g = " + Text.significant(gravity, 6) + " m/s2]");
    }
}
