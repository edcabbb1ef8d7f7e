package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;

/** The monitored pipe of a row: section, gradient and n, with the offset, the bed and the velocity factor of its monitor. */
final class MonitoredSite {
    private MonitoredSite() {}

    static PipeMonitor of(Inputs in) {
        PipeMonitor monitor = PipeMonitor.of(
                Conduit.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n"))));
        // What is usual is left as it comes.
        double offset = in.number("offset");
        monitor = offset == 0 ? monitor : monitor.withSensorOffset(offset);
        monitor = in.number("bed") == 0 ? monitor : monitor.withSediment(in.number("bed"));
        return in.number("factor") == 1 ? monitor : monitor.withVelocityFactor(in.number("factor"));
    }
}
