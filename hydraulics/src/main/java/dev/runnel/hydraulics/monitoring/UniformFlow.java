package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.flow.Conduit;

/** The law of resistance in the flow area of a monitor, sediment bed included. */
final class UniformFlow {
    private final FlowArea area;
    private final Conduit conduit;
    private final double gradient;

    UniformFlow(PipeMonitor monitor) {
        this.area = monitor.flowArea();
        this.conduit = monitor.conduit();
        this.gradient = conduit.gradient().value();
    }

    /** Velocity of the conduit's law at a level, m/s; of the full section above the soffit. */
    double velocity(double level) {
        return conduit.resistance().velocity(area.hydraulicRadius(level), gradient, conduit.gravity());
    }
}
