package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.CompositeManning;
import dev.runnel.hydraulics.flow.Compounding;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.RoughnessByDepth;
import dev.runnel.hydraulics.flow.VariableManning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.timeseries.Series;
import org.junit.jupiter.api.Test;

/** A pipe that runs exactly as its law has it: measured over lawful velocity is 1, whatever makes n depend on the depth. */
class VelocityRatioTest {
    private static final ClosedSection PIPE = CircularSection.ofDiameter(0.6);
    private static final double[] DEPTHS = {0.05, 0.10, 0.25};

    @Test
    void compositeLawOverSedimentGivesRatioOne() {
        var law = CompositeManning.ofBedAndWalls(Compounding.HORTON_EINSTEIN, 0.025, 0.013);
        var conduit = Conduit.of(PIPE.withSediment(0.08), Gradient.ofRatio(1, 400), law);
        for (double depth : DEPTHS) {
            assertThat(ratio(PipeMonitor.of(conduit), depth, conduit.velocity(depth)))
                    .isCloseTo(1, within(1e-14));
        }
    }

    @Test
    void compositeLawOverTheBedOfTheMonitorGivesRatioOne() {
        var law = CompositeManning.ofBedAndWalls(Compounding.HORTON_EINSTEIN, 0.025, 0.013);
        var clean = Conduit.of(PIPE, Gradient.ofRatio(1, 400), law);
        var silted = clean.withSection(PIPE.withSediment(0.08));
        var monitor = PipeMonitor.of(clean).withSediment(0.08);
        for (double depth : DEPTHS) {
            assertThat(ratio(monitor, 0.08 + depth, silted.velocity(depth))).isCloseTo(1, within(1e-13));
        }
    }

    @Test
    void variableRoughnessGivesRatioOne() {
        var conduit =
                Conduit.of(PIPE, Gradient.ofRatio(1, 400), VariableManning.of(0.013, RoughnessByDepth.asce1970()));
        for (double depth : DEPTHS) {
            assertThat(ratio(PipeMonitor.of(conduit), depth, conduit.velocity(depth)))
                    .isCloseTo(1, within(1e-14));
        }
    }

    static double ratio(PipeMonitor monitor, double depthReading, double velocityReading) {
        long[] noon = {43_200_000_000_000L};
        Series depth = Series.of(noon, new double[] {depthReading});
        Series velocity = Series.of(noon, new double[] {velocityReading});
        return monitor.flow(depth, velocity).velocityRatio().value(0);
    }
}
