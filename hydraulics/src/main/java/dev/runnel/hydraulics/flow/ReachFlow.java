package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/** A discharge in a reach: energy, momentum and friction at any level, above the soffit too, and the two branches. */
final class ReachFlow {
    private final Reach reach;
    private final SectionFlow flow;
    private final double soffit;
    private final double critical;
    private final double lowestCritical;
    private double @Nullable [] normalDepths;

    ReachFlow(Reach reach, double discharge) {
        this.reach = reach;
        this.flow = SectionFlow.of(reach.section(), discharge).withGravity(reach.gravity());
        this.soffit = reach.section().height();
        double[] depths = flow.criticalDepths();
        // Full before critical: then every free surface is supercritical, and slow flow fills the section. In a section
        // with several critical depths slow flow lies above the highest.
        this.critical = depths.length == 0 ? soffit : depths[depths.length - 1];
        this.lowestCritical = depths.length == 0 ? soffit : depths[0];
    }

    Reach reach() {
        return reach;
    }

    SectionFlow flow() {
        return flow;
    }

    double bedSlope() {
        return reach.gradient().value();
    }

    double critical() {
        return critical;
    }

    double velocityHead(double level) {
        return flow.energyAt(level) - level;
    }

    double energy(double level) {
        return flow.energyAt(level);
    }

    double momentum(double level) {
        return flow.momentumAt(level);
    }

    double frictionSlope(double level) {
        CrossSection section = reach.section();
        double depth = Math.min(level, soffit);
        double velocity = flow.discharge() / section.area(depth);
        return reach.resistance().at(section, depth).gradient(velocity, section.hydraulicRadius(depth), flow.gravity());
    }

    /** S₀ − Sf at a level, above the soffit too. */
    double slopeExcess(double level) {
        return bedSlope() - frictionSlope(level);
    }

    /** dx/dy of the profile, (1 − Fr²)/(S₀ − Sf), above the soffit too. */
    double distancePerDepth(double level) {
        double froude = flow.froudeNumber(Math.min(level, soffit));
        return (1 - froude * froude) / slopeExcess(level);
    }

    /** All depths where friction uses up the fall of the bed; none on a level or adverse bed. */
    double[] normalDepths() {
        double[] depths = normalDepths;
        if (depths == null) {
            depths = bedSlope() > 0
                    ? Conduit.of(reach.section(), reach.gradient(), reach.resistance())
                            .withGravity(reach.gravity())
                            .normalDepths(flow.discharge())
                    : new double[0];
            normalDepths = depths;
        }
        return depths;
    }

    /** Benches, ledges and a level soffit at which friction jumps from one side of the bed's fall to the other. */
    double[] ledges() {
        return Arrays.stream(reach.section().breakDepths())
                .filter(level -> level > 0)
                .filter(level ->
                        Math.signum(slopeExcess(Math.nextDown(level))) != Math.signum(slopeExcess(Math.nextUp(level))))
                .toArray();
    }

    /** The depth of the fast flow with the energy of a depth: itself below the lowest critical depth. */
    double fastestFor(double depth) {
        if (depth <= lowestCritical) {
            return depth;
        }
        double[] depths = flow.depthsForEnergy(flow.energyAt(depth));
        return Math.min(lowestCritical, Arrays.stream(depths).min().orElse(lowestCritical));
    }

    double lowestCritical() {
        return lowestCritical;
    }

    /** The slow level with E − K V²/(2g) = value; the critical depth if even that has more: an outfall. */
    double slowLevel(double value, double lossCoefficient) {
        DoubleUnaryOperator excess = level -> energy(level) - lossCoefficient * velocityHead(level) - value;
        return Roots.between(excess, critical, Roots.doubled(excess, critical));
    }

    /** The fast depth with E = value; NaN if the critical depth has more. */
    double fastDepth(double value) {
        if (energy(lowestCritical) > value) {
            return Double.NaN;
        }
        return Roots.overDecades(y -> energy(y) - value, lowestCritical);
    }
}
