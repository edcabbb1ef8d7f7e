package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The parts were found apart by differentiating the flow numerically to 25 digits. */
class FlowUncertaintyTest {
    private static final double DIAMETER = 0.45;
    private static final PipeMonitor MONITOR = monitor(DIAMETER, 0.9);
    private static final SensorUncertainty INPUTS =
            SensorUncertainty.of(0.003, 0.03).withHeight(0.002).withVelocityFactor(0.03);

    @Test
    void partsAreSlopesTimesUncertainties() {
        FlowUncertainty flow = MONITOR.uncertainty(0.2, 0.8, INPUTS).orElseThrow();
        assertThat(flow.discharge()).isCloseTo(0.0422172039661, within(1e-13));
        assertThat(flow.depth()).isCloseTo(0.00096598136628, within(1e-15));
        assertThat(flow.velocity()).isCloseTo(0.00158314514873, within(1e-14));
        assertThat(flow.height()).isCloseTo(0.000134302168131, within(1e-15));
        assertThat(flow.velocityFactor()).isCloseTo(0.0014072401322, within(1e-14));
        assertThat(flow.standard())
                .isCloseTo(Math.sqrt(9.33120e-7 + 2.506349e-6 + 1.80371e-8 + 1.980325e-6), within(1e-9));
        assertThat(flow.expanded(2)).isEqualTo(2 * flow.standard());
        assertThat(flow.relative()).isEqualTo(flow.standard() / flow.discharge());
    }

    @Test
    void aboveTheSoffitTheLevelPlaysNoPart() {
        FlowUncertainty flow = MONITOR.uncertainty(2, 0.8, INPUTS).orElseThrow();
        assertThat(flow.depth()).isZero();
        assertThat(flow.height()).isCloseTo(0.00100130845542, within(1e-14));
    }

    @Test
    void reverseFlowHasTheUncertaintyOfForwardFlow() {
        FlowUncertainty reverse = MONITOR.uncertainty(0.2, -0.8, INPUTS).orElseThrow();
        assertThat(reverse.discharge()).isNegative();
        assertThat(reverse.standard())
                .isEqualTo(MONITOR.uncertainty(0.2, 0.8, INPUTS).orElseThrow().standard());
    }

    @Test
    void factorUncertaintyInPerCentIsRefused() {
        assertThatThrownBy(() -> INPUTS.withVelocityFactor(5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocityFactor must have an uncertainty in [0, 1], was 5: divide per cent by 100");
    }

    /**
     * 200,000 draws tell a standard deviation to 0.16 % (one in √(2n)); four times that is 0.63 %. The second-order terms
     * that the law of propagation leaves out are below (0.003/0.2)² and (0.03/0.8)², 0.2 % together. Hence 1 %.
     */
    @Test
    void lawOfPropagationAgreesWithRandomDraws() {
        Random random = new Random(20260301);
        int draws = 200_000;
        double sum = 0;
        double squares = 0;
        double centre = MONITOR.flow(0.2, 0.8).discharge();
        for (int i = 0; i < draws; i++) {
            PipeMonitor drawn = monitor(DIAMETER + 0.002 * random.nextGaussian(), 0.9 + 0.03 * random.nextGaussian());
            double depth = 0.2 + 0.003 * random.nextGaussian();
            double velocity = 0.8 + 0.03 * random.nextGaussian();
            double deviation = drawn.flow(depth, velocity).discharge() - centre;
            sum += deviation;
            squares += deviation * deviation;
        }
        double drawn = Math.sqrt((squares - sum * sum / draws) / (draws - 1));
        double stated = MONITOR.uncertainty(0.2, 0.8, INPUTS).orElseThrow().standard();
        assertThat(stated / drawn).isCloseTo(1, within(0.01));
    }

    @Test
    void flowThatIsNotMeasuredHasNoUncertainty() {
        assertThat(MONITOR.uncertainty(Double.NaN, 0.8, INPUTS)).isEmpty();
        assertThat(MONITOR.uncertainty(0.2, Double.NaN, INPUTS)).isEmpty();
        assertThat(MONITOR.uncertainty(0.02, 0.8, INPUTS)).as("below the bed").isEmpty();
        assertThat(MONITOR.uncertainty(0, 0.8, INPUTS)).as("dry").isEmpty();
    }

    @Test
    void recordGivesTheSameFigures() {
        FlowRecord record = MONITOR.flow(series(0.2, 2, 0.2, 0), series(0.8, -0.8, Double.NaN, 0));
        Series standard = record.uncertainty(INPUTS);
        assertThat(standard.value(0))
                .isCloseTo(MONITOR.uncertainty(0.2, 0.8, INPUTS).orElseThrow().standard(), within(1e-16));
        assertThat(standard.value(1))
                .isCloseTo(MONITOR.uncertainty(2, -0.8, INPUTS).orElseThrow().standard(), within(1e-16));
        assertThat(standard.value(2)).isNaN();
        assertThat(standard.value(3)).isNaN();
    }

    /** 0.00233/0.04222 of the figures that FlowUncertainty prints; upstream flow has the same share, still water none. */
    @Test
    void recordGivesTheShareOfTheFlow() {
        FlowRecord record = MONITOR.flow(series(0.2, 0.2, 0.2, 0.2), series(0.8, -0.8, Double.NaN, 0));
        Series share = record.relativeUncertainty(INPUTS);
        assertThat(share.value(0)).isCloseTo(0.00233 / 0.04222, within(2e-4));
        assertThat(share.value(1)).isEqualTo(share.value(0));
        assertThat(share.value(2)).isNaN();
        assertThat(record.uncertainty(INPUTS).value(3)).isPositive();
        assertThat(share.value(3)).isNaN();
        assertThat(share.quality(3).isUsable()).isFalse();
    }

    @Test
    void badInputIsRefused() {
        assertThatThrownBy(() -> SensorUncertainty.of(-0.003, 0.03))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth must be 0 or greater and finite (m), was -0.003");
        assertThatThrownBy(() -> INPUTS.withVelocityFactor(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("velocityFactor must be 0 or greater and finite, was NaN");
        FlowUncertainty flow = MONITOR.uncertainty(0.2, 0.8, INPUTS).orElseThrow();
        assertThatThrownBy(() -> flow.expanded(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("coverageFactor must be greater than 0 and finite, was 0");
    }

    @Test
    void textNamesTheParts() {
        assertThat(MONITOR.uncertainty(0.2, 0.8, INPUTS).orElseThrow())
                .hasToString("FlowUncertainty[0.04222 m3/s, standard uncertainty 0.00233 m3/s (5.5 %): depth 0.000966,"
                        + " velocity 0.00158, height 0.000134, velocity factor 0.00141]");
    }

    private static PipeMonitor monitor(double diameter, double factor) {
        return PipeMonitor.of(
                        Conduit.of(CircularSection.ofDiameter(diameter), Gradient.ofRatio(1, 150), Manning.of(0.013)))
                .withSediment(0.05)
                .withVelocityFactor(factor);
    }

    private static Series series(double... values) {
        var builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(Instant.parse("2026-03-01T00:00:00Z").plusSeconds(120L * i), values[i]);
        }
        return builder.build();
    }
}
