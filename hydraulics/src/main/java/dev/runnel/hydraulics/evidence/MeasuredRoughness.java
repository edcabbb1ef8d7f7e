package dev.runnel.hydraulics.evidence;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;

/** The roughness that would explain a velocity at a level of a monitor, sediment bed included; the laws themselves find it. */
final class MeasuredRoughness {
    /** Any n: that of the law to be fitted plays no part. */
    private static final double ANY_N = 0.013;

    private final PipeMonitor monitor;
    private final Conduit conduit;
    private final double gradient;

    MeasuredRoughness(PipeMonitor monitor) {
        this.monitor = monitor;
        this.conduit = monitor.conduit();
        this.gradient = conduit.gradient().value();
    }

    /** Manning's n, s/m^(1/3). */
    double manning(double level, double velocity) {
        return Manning.of(ANY_N)
                .fittedTo(velocity, monitor.hydraulicRadius(level), gradient, conduit.gravity())
                .n();
    }

    /**
     * Equivalent sand roughness ks, m, with the viscosity of a law. Negative where the water is faster than between smooth
     * walls, infinite where it is slower than between the roughest that the law takes.
     */
    double sandRoughness(double level, double velocity, ColebrookWhite law) {
        double radius = monitor.hydraulicRadius(level);
        double gravity = conduit.gravity();
        if (velocity > law.fastest(radius, gradient, gravity)) {
            return -1;
        }
        if (velocity < law.slowest(radius, gradient, gravity)) {
            return Double.POSITIVE_INFINITY;
        }
        return law.fittedTo(velocity, radius, gradient, gravity).roughness();
    }

    /** Largest ks that means anything at a level, m: the law holds ks/4R at 1 from there on. */
    double largestSandRoughness(double level) {
        return 4 * monitor.hydraulicRadius(level);
    }
}
