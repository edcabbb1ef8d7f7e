package dev.runnel.hydraulics.evidence;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.monitoring.PipeMonitor;

/** The roughness that would explain a velocity at a level of a monitor, sediment bed included. */
final class MeasuredRoughness {
    private final PipeMonitor monitor;
    private final Conduit conduit;
    private final double gradient;

    MeasuredRoughness(PipeMonitor monitor) {
        this.monitor = monitor;
        this.conduit = monitor.conduit();
        this.gradient = conduit.gradient().value();
    }

    /** Manning's n from V = R^(2/3) S^(1/2) / n, s/m^(1/3). */
    double manning(double level, double velocity) {
        double root = Math.cbrt(monitor.hydraulicRadius(level));
        return root * root * Math.sqrt(gradient) / velocity;
    }

    /**
     * Equivalent sand roughness ks, m, from the law of Colebrook and White, which is explicit in it: with
     * x = V / √(8 g R S) and K = 4R √(8 g R S) / ν, ks = 3.7 · 4R (10^(−x/2) − 2.51 / K). Negative where the water is faster
     * than between smooth walls.
     */
    double sandRoughness(double level, double velocity, ColebrookWhite law) {
        double radius = monitor.hydraulicRadius(level);
        double scale = Math.sqrt(8 * conduit.gravity() * radius * gradient);
        double karman = 4 * radius * scale / law.viscosity();
        return 3.7 * 4 * radius * (Math.pow(10, -velocity / scale / 2) - 2.51 / karman);
    }

    /** Largest ks that means anything at a level, m: the law holds ks/4R at 1 from there on. */
    double largestSandRoughness(double level) {
        return 4 * monitor.hydraulicRadius(level);
    }
}
