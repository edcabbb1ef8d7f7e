package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class FullnessTimeTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final Duration GAP = Duration.ofMinutes(5);
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.5), Gradient.ofRatio(1, 150), Manning.of(0.013)));

    @Test
    void eachLevelStandsUntilTheNext() {
        FlowRecord record = record(MONITOR, 0.2, 0.3, 0.45, 0.6, 0.2);
        FullnessTime half = FullnessTime.of(record, 0.5, GAP);
        assertThat(half.above()).isEqualTo(Duration.ofMinutes(6));
        assertThat(half.covered()).isEqualTo(Duration.ofMinutes(8));
        assertThat(half.share()).isEqualTo(0.75);
        assertThat(half.coverage()).isEqualTo(1);
        assertThat(FullnessTime.of(record, 0.8, GAP).above()).isEqualTo(Duration.ofMinutes(4));
        assertThat(FullnessTime.of(record, 1, GAP).above()).isEqualTo(Duration.ofMinutes(2));
        assertThat(half).hasToString("FullnessTime[above 0.5 of the height for 6 min, 75.00 % of the 100.0 % covered]");
    }

    @Test
    void longGapIsNotCovered() {
        FlowRecord record = record(MONITOR, 0.6, 0.6, Double.NaN, Double.NaN, 0.2, 0.2);
        FullnessTime full = FullnessTime.of(record, 1, GAP);
        assertThat(full.above()).isEqualTo(Duration.ofMinutes(2));
        assertThat(full.covered()).isEqualTo(Duration.ofMinutes(4));
        assertThat(full.total()).isEqualTo(Duration.ofMinutes(10));
        assertThat(full.coverage()).isCloseTo(0.4, within(1e-15));
        assertThat(FullnessTime.of(record, 1, Duration.ofMinutes(6)).covered()).isEqualTo(Duration.ofMinutes(10));
    }

    @Test
    void depthBelowTheSensorIsBelowEveryFullnessOverTheSensorOnly() {
        FlowRecord record = record(MONITOR.withSensorOffset(0.1), 0, 0, 0.3, 0.3);
        assertThat(FullnessTime.of(record, 0.5, GAP).covered()).isEqualTo(Duration.ofMinutes(6));
        assertThat(FullnessTime.of(record, 0.5, GAP).above()).isEqualTo(Duration.ofMinutes(2));
        assertThat(FullnessTime.of(record, 0.1, GAP).covered()).isEqualTo(Duration.ofMinutes(2));
    }

    @Test
    void nothingCoveredPrintsNoShare() {
        assertThat(FullnessTime.of(record(MONITOR), 0.8, GAP))
                .hasToString("FullnessTime[above 0.8 of the height for an unknown time: the record has no length]");
        assertThat(FullnessTime.of(record(MONITOR, 0.2), 0.8, GAP))
                .hasToString("FullnessTime[above 0.8 of the height for an unknown time: the record has no length]");
        assertThat(FullnessTime.of(record(MONITOR, Double.NaN, Double.NaN, 0.2), 0.8, GAP))
                .hasToString("FullnessTime[above 0.8 of the height for an unknown time: none of 4 min covered]");
    }

    @Test
    void negativeDepthIsSuspectAndNotCovered() {
        FlowRecord record = record(MONITOR, 0.1, -0.01, -0.01, -0.01, 0.1);
        assertThat(FullnessTime.of(record, 0.5, GAP).covered()).isZero();
    }

    @Test
    void emptyPipeIsNotAboveItsSediment() {
        FlowRecord record = record(MONITOR.withSensorOffset(0.1).withSediment(0.1), 0, 0);
        assertThat(FullnessTime.of(record, 0.1, GAP).above()).isZero();
        assertThat(FullnessTime.of(record, 0.1, GAP).covered()).isEqualTo(Duration.ofMinutes(2));
    }

    @Test
    void recordWithoutLengthHasNoShare() {
        FullnessTime none = FullnessTime.of(record(MONITOR), 0.5, GAP);
        assertThat(none.total()).isZero();
        assertThat(none.share()).isNaN();
        assertThat(none.coverage()).isNaN();
    }

    @Test
    void settingsOutOfRangeAreRefused() {
        FlowRecord record = record(MONITOR, 0.2);
        assertThatThrownBy(() -> FullnessTime.of(record, -0.1, GAP))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("fullness must be in [0, 100], was -0.1");
        assertThatThrownBy(() -> FullnessTime.of(record, 0.5, Duration.ofMinutes(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("maximumGap must not be negative, was -1 min");
        assertThatThrownBy(() -> new FullnessTime(0.5, GAP, Duration.ZERO, GAP))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("times must be in the order 0 <= above <= covered <= total, were 5 min, 0 s, 5 min");
    }

    private static FlowRecord record(PipeMonitor monitor, double... depths) {
        var depth = Series.builder();
        var velocity = Series.builder();
        for (int i = 0; i < depths.length; i++) {
            depth.add(START.plusSeconds(120L * i), depths[i]);
            velocity.add(START.plusSeconds(120L * i), 0.5);
        }
        return monitor.flow(depth.build(), velocity.build());
    }

    @Test
    void partlyCoveredPrintsBothShares() {
        FlowRecord record = record(MONITOR, 0.2, 0.45, 0.2, -0.1, 0.2);
        FullnessTime half = FullnessTime.of(record, 0.5, Duration.ofMinutes(2));
        assertThat(half.coverage()).isEqualTo(0.5);
        assertThat(half).hasToString("FullnessTime[above 0.5 of the height for 2 min, 50.00 % of the 50.0 % covered]");
    }
}
