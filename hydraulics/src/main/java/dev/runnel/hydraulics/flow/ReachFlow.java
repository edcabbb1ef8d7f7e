package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;

/** A discharge in a reach: energy, momentum and friction at any level, above the soffit too, and the two branches. */
final class ReachFlow {
    private final Reach reach;
    private final SectionFlow flow;
    private final double soffit;
    private final double critical;

    ReachFlow(Reach reach, double discharge) {
        this.reach = reach;
        this.flow = SectionFlow.of(reach.section(), discharge).withGravity(reach.gravity());
        this.soffit = reach.section().height();
        double[] depths = flow.criticalDepths();
        // Full before critical: then every free surface is supercritical, and slow flow fills the section. In a section
        // with several critical depths slow flow lies above the highest.
        this.critical = depths.length == 0 ? soffit : depths[depths.length - 1];
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

    /** The slow level with E − weight·Sf − extra velocity heads = value; NaN if even the critical depth has more. */
    double slowLevel(double value, double slopeWeight, double headWeight) {
        double low = critical;
        if (slow(low, value, slopeWeight, headWeight) >= 0) {
            return Double.NaN;
        }
        double high = Math.max(2 * low, 1);
        while (slow(high, value, slopeWeight, headWeight) < 0) {
            high *= 2;
        }
        return Roots.between(y -> slow(y, value, slopeWeight, headWeight), low, high);
    }

    private double slow(double level, double value, double slopeWeight, double headWeight) {
        double friction = slopeWeight == 0 ? 0 : slopeWeight * frictionSlope(level);
        return energy(level) - friction + headWeight * velocityHead(level) - value;
    }

    /** The fast depth with E + weight·Sf = value; NaN if the critical depth has more. */
    double fastDepth(double value, double slopeWeight) {
        if (fast(critical, value, slopeWeight) > 0) {
            return Double.NaN;
        }
        double low = critical;
        do {
            low /= 2;
        } while (fast(low, value, slopeWeight) < 0);
        return Roots.between(y -> fast(y, value, slopeWeight), low, critical);
    }

    private double fast(double level, double value, double slopeWeight) {
        return energy(level) + (slopeWeight == 0 ? 0 : slopeWeight * frictionSlope(level)) - value;
    }
}
