package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;

/** The monitored pipe of a row: section, gradient and n, with the offset, the bed and the velocity factor of its monitor. */
final class MonitoredSite {
    private MonitoredSite() {}

    static PipeMonitor of(Inputs in) {
        return PipeMonitor.of(
                        Conduit.of(Sections.of(in), Gradient.of(in.number("gradient")), Manning.of(in.number("n"))))
                .withSensorOffset(in.number("offset"))
                .withSediment(in.number("bed"))
                .withVelocityFactor(in.number("factor"));
    }
}
