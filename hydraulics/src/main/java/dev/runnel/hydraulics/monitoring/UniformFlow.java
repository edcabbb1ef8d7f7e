package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.OpenSection;

/** The law of resistance in the flow area of a monitor, sediment bed included. */
final class UniformFlow {
    private final FlowArea area;
    private final Conduit conduit;
    private final double gradient;

    /** The conduit as the water sees it: depths count from the bed, and the bed has a roughness of its own. */
    private final Conduit aboveBed;

    private final double bed;

    UniformFlow(PipeMonitor monitor) {
        this.area = monitor.flowArea();
        this.conduit = monitor.conduit();
        this.gradient = conduit.gradient().value();
        this.bed = monitor.sedimentDepth();
        this.aboveBed = bed == 0 ? conduit : conduit.withSection(withBed(conduit.section(), bed));
    }

    /** Velocity of the conduit's law at a level, m/s; of the full section above the soffit. */
    double velocity(double level) {
        return aboveBed.velocity(Math.min(level - bed, aboveBed.section().height()));
    }

    private static CrossSection withBed(CrossSection section, double bed) {
        if (section instanceof ClosedSection closed) {
            return closed.withSediment(bed);
        }
        if (section instanceof OpenSection open) {
            return open.withSediment(bed);
        }
        throw new IllegalStateException("section must be one that can be cut by a bed, was " + section);
    }
}
