package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A discharge through a section, whatever the gradient and the wall: critical depth, specific energy, momentum function,
 * and the pairs of depths that share one or the other. Immutable and thread-safe.
 *
 * <pre>
 * E(y) = y + q²/(2 g A²)      least at the critical depth
 * M(y) = q²/(g A) + A z̄       the momentum function, force over ρ g, least at the critical depth too
 * </pre>
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, chapter 3. Velocity even over the section, bed level over the
 * short length looked at, no friction in it.
 *
 * <p>Depths lie below the soffit. Only a jump that fills a closed section is followed above it, as a pressure level.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class SectionFlow {
    private final CrossSection section;
    private final double discharge;
    private final double gravity;
    private final double[] criticalDepths;
    private final EnergyBranches branches;

    private SectionFlow(CrossSection section, double discharge, double gravity) {
        this.section = Objects.requireNonNull(section, "section");
        this.discharge = Require.positive("discharge", discharge, "m3/s");
        this.gravity = Require.positive("gravity", gravity, "m/s2");
        this.criticalDepths = CriticalFlow.of(section, gravity).depths(discharge);
        this.branches = EnergyBranches.of(section, criticalDepths);
    }

    /**
     * Returns the flow under standard gravity. Finds the critical depths at once.
     *
     * @param section the section
     * @param discharge discharge q, m³/s; greater than 0
     * @return the flow
     * @throws IllegalArgumentException if {@code discharge} is not greater than 0 and finite
     */
    public static SectionFlow of(CrossSection section, double discharge) {
        return new SectionFlow(section, discharge, Gravity.STANDARD);
    }

    /**
     * Returns a copy with another acceleration of free fall.
     *
     * @param newGravity g, m/s²; greater than 0, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code newGravity} is not
     */
    public SectionFlow withGravity(double newGravity) {
        return new SectionFlow(section, discharge, newGravity);
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
     * Returns the discharge.
     *
     * @return discharge q, m³/s
     */
    public double discharge() {
        return discharge;
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
     * Returns the critical depth, the lowest where there are several.
     *
     * @return critical depth, m
     * @throws NoSolutionException if the section is full before the discharge is critical
     */
    public double criticalDepth() {
        if (criticalDepths.length == 0) {
            throw new NoSolutionException("a discharge of " + Text.number(discharge)
                    + " m3/s is not critical at any depth below the soffit of " + section);
        }
        return criticalDepths[0];
    }

    /**
     * Returns all critical depths: one in simple sections, up to three in benched ones, none if the section is full
     * before.
     *
     * @return depths, m, ascending; a new array
     */
    public double[] criticalDepths() {
        return criticalDepths.clone();
    }

    /**
     * Returns the mean velocity, q/A.
     *
     * @param depth depth, m; in (0, height]
     * @return velocity, m/s
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double velocity(double depth) {
        return discharge / wetArea(depth);
    }

    /**
     * Returns Froude's number, (q/A)/√(g A/T).
     *
     * @param depth depth, m; in (0, height]
     * @return Froude's number; 0 at the soffit
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double froudeNumber(double depth) {
        double area = wetArea(depth);
        return depth >= section.height() ? 0 : discharge / area * Math.sqrt(section.topWidth(depth) / (gravity * area));
    }

    /**
     * Returns the specific energy E.
     *
     * @param depth depth, m; in (0, height]
     * @return energy above the invert, m
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double specificEnergy(double depth) {
        wetArea(depth);
        return energyAt(depth);
    }

    /**
     * Returns the momentum function M.
     *
     * @param depth depth, m; in (0, height]
     * @return momentum and pressure over ρ g, m³
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double momentum(double depth) {
        wetArea(depth);
        return momentumAt(depth);
    }

    private double wetArea(double depth) {
        Require.positive("depth", depth, "m");
        return section.area(depth);
    }

    /** E at a level that may be above the soffit. */
    double energyAt(double level) {
        double velocity = discharge / section.area(Math.min(level, section.height()));
        return level + velocity * velocity / (2 * gravity);
    }

    /** M at a level that may be above the soffit, where the pressure of the whole area rises with it. */
    double momentumAt(double level) {
        double depth = Math.min(level, section.height());
        double area = section.area(depth);
        return discharge * discharge / (gravity * area) + area * (section.centroidDepth(depth) + (level - depth));
    }

    /**
     * Returns the least specific energy with which the discharge can pass.
     *
     * @return energy, m
     * @throws NoSolutionException if the section is full before the discharge is critical
     */
    public double minimumEnergy() {
        criticalDepth();
        return Arrays.stream(criticalDepths).map(this::energyAt).min().orElseThrow();
    }

    /**
     * Returns the depths at which the specific energy has a value: in simple sections one fast and shallow and one slow
     * and deep, or none below the minimum.
     *
     * @param energy specific energy, m; greater than 0
     * @return depths, m, ascending; a new array; without those the soffit cuts off
     * @throws IllegalArgumentException if {@code energy} is not greater than 0 and finite
     */
    public double[] depthsForEnergy(double energy) {
        return branches.depthsFor(this::energyAt, Require.positive("energy", energy, "m"));
    }

    /**
     * Returns the depths at which the momentum function has a value.
     *
     * @param momentum momentum function, m³; greater than 0
     * @return depths, m, ascending; a new array; without those the soffit cuts off
     * @throws IllegalArgumentException if {@code momentum} is not greater than 0 and finite
     */
    public double[] depthsForMomentum(double momentum) {
        return branches.depthsFor(this::momentumAt, Require.positive("momentum", momentum, "m3"));
    }

    /**
     * Returns the depth on the other side of critical with the same specific energy.
     *
     * @param depth depth, m; in (0, height]
     * @return alternate depth, m; the depth itself if it is critical
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     * @throws NoSolutionException if the alternate depth would lie above the soffit
     */
    public double alternateDepth(double depth) {
        double other = branches.across(this::energyAt, depth, specificEnergy(depth));
        if (Double.isNaN(other)) {
            throw new NoSolutionException(
                    "a depth of " + Text.number(depth) + " m has no alternate depth below the soffit" + " for " + this);
        }
        return other;
    }

    /**
     * Returns the depth on the other side of critical with the same momentum function; where that fills a closed section,
     * the pressure level above the invert.
     *
     * @param depth depth, m; in (0, height]
     * @return conjugate depth, m; the depth itself if it is critical
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double conjugateDepth(double depth) {
        double momentum = momentum(depth);
        double other = branches.across(this::momentumAt, depth, momentum);
        if (!Double.isNaN(other)) {
            return other;
        }
        double soffit = section.height();
        return soffit + (momentum - momentumAt(soffit)) / section.area(soffit);
    }

    /**
     * Returns the jump that starts from a depth.
     *
     * @param depth supercritical depth, m
     * @return the jump
     * @throws IllegalArgumentException if {@code depth} is outside (0, height], NaN, or not supercritical
     */
    public HydraulicJump jump(double depth) {
        double froude = froudeNumber(depth);
        if (!(froude >= 1)) {
            throw new IllegalArgumentException("depth must be supercritical for a jump, Froude's number at "
                    + Text.number(depth) + " m was " + Text.significant(froude, 4));
        }
        return new HydraulicJump(this, depth, conjugateDepth(depth));
    }

    @Override
    public String toString() {
        return "SectionFlow[" + Text.significant(discharge, 6) + " m3/s in " + section + "]";
    }
}
