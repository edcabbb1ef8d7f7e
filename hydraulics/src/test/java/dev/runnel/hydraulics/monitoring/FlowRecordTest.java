package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class FlowRecordTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013)));

    @Test
    void everyReadingOfTwoClocksIsKeptAndCounted() {
        Series depth = series(new int[] {0, 2, 4, 6}, 0.2, 0.6, 0, -0.01);
        Series velocity = series(new int[] {0, 2, 3, 4, 6}, 0.8, -0.5, 0.7, 0.3, 0);
        FlowRecord record = MONITOR.flow(depth, velocity);
        assertThat(record.size()).isEqualTo(5);
        assertThat(record.velocitiesAlone()).isEqualTo(1);
        assertThat(record.depthsAlone()).isZero();
        assertThat(record.flow().time(2)).isEqualTo(START.plusSeconds(180));
        assertThat(record.flow().quality(2)).isEqualTo(Quality.MISSING);
        assertThat(record.depthCondition(2)).isEqualTo(DepthCondition.NO_DEPTH);
        assertThat(record.velocityCondition(1)).isEqualTo(VelocityCondition.REVERSE);
        assertThat(record.flow().quality(3)).isEqualTo(Quality.POOR);
        assertThat(record.flow().quality(4)).isEqualTo(Quality.SUSPECT);
        assertThat(record.level().quality(4)).isEqualTo(Quality.SUSPECT);
        assertThat(record.counts().total()).isEqualTo(5);
        assertThat(record.counts().of(DepthCondition.PART_FULL)).isEqualTo(1);
        assertThat(record.counts().of(DepthCondition.SURCHARGED)).isEqualTo(1);
        assertThat(record.counts().of(DepthCondition.SURCHARGED, VelocityCondition.REVERSE))
                .isEqualTo(1);
        assertThat(record.counts().of(VelocityCondition.FORWARD)).isEqualTo(3);
        assertThat(record.counts())
                .hasToString("FlowCounts[5 pairs: 1 NO_DEPTH, 1 NEGATIVE, 1 DRY, 1 PART_FULL, 1 SURCHARGED;"
                        + " 3 FORWARD, 1 STANDING, 1 REVERSE]");
    }

    @Test
    void recordsWithoutACommonInstantGiveNoFlow() {
        FlowRecord record = MONITOR.flow(series(new int[] {0, 2}, 0.2, 0.2), series(new int[] {1, 3}, 0.8, 0.8));
        assertThat(record.size()).isEqualTo(4);
        assertThat(record.depthsAlone()).isEqualTo(2);
        assertThat(record.velocitiesAlone()).isEqualTo(2);
        assertThat(record.flow().count(Quality.MISSING)).isEqualTo(4);
    }

    @Test
    void unequalClocksMeetAtTheTimesOfTheDepth() {
        Series depth = series(new int[] {0, 2, 4}, 0.225, 0.225, 0.225);
        Series velocity = series(new int[] {1, 3}, 0.8, 1.0);
        FlowRecord record = MONITOR.flow(depth, velocity, Alignment.linear(Duration.ofMinutes(2)));
        assertThat(record.size()).isEqualTo(3);
        assertThat(record.flow().quality(0)).isEqualTo(Quality.MISSING);
        assertThat(record.flow().value(1)).isCloseTo(0.9 * Math.PI * 0.45 * 0.45 / 8, within(1e-14));
        assertThat(record.flow().quality(1)).isEqualTo(Quality.ESTIMATE);
        assertThat(record.velocityCondition(2)).isEqualTo(VelocityCondition.NO_VELOCITY);
        assertThat(record.depthsAlone()).isEqualTo(3);
        assertThat(record.velocitiesAlone()).isEqualTo(2);
    }

    @Test
    void emptyRecordIsEmpty() {
        FlowRecord record = MONITOR.flow(Series.empty(), Series.empty());
        assertThat(record.size()).isZero();
        assertThat(record.counts().total()).isZero();
        assertThat(record).hasToString("FlowRecord[Series[no readings], FlowCounts[0 pairs]]");
    }

    @Test
    void fullnessAndCapacityUseAreSharesOfTheFullPipe() {
        Series depth = series(new int[] {0, 2, 4}, 0.225, 0.9, Double.NaN);
        double fullBoreVelocity = MONITOR.conduit().fullBore().velocity();
        Series velocity = series(new int[] {0, 2, 4}, fullBoreVelocity, fullBoreVelocity, 0.5);
        FlowRecord record = MONITOR.flow(depth, velocity);
        assertThat(record.fullness().value(0)).isEqualTo(0.5);
        assertThat(record.fullness().value(1)).isEqualTo(2);
        assertThat(record.fullness().value(2)).isNaN();
        assertThat(record.capacityUse().value(0)).isCloseTo(0.5, within(1e-12));
        assertThat(record.capacityUse().value(1)).isCloseTo(1, within(1e-12));
        assertThat(record.capacityUse().quality(2)).isEqualTo(Quality.MISSING);
    }

    @Test
    void meanVelocityCarriesTheFactor() {
        FlowRecord record = MONITOR.withVelocityFactor(0.9)
                .flow(series(new int[] {0, 2}, 0.2, 0.2), series(new int[] {0, 2}, 0.8, Double.NaN));
        assertThat(record.velocity().value(0)).isCloseTo(0.72, within(1e-15));
        assertThat(record.velocity().quality(1)).isEqualTo(Quality.MISSING);
        assertThat(record.monitor(1).velocityFactor()).isEqualTo(0.9);
    }

    private static Series series(int[] minutes, double... values) {
        var builder = Series.builder();
        for (int i = 0; i < minutes.length; i++) {
            builder.add(START.plusSeconds(60L * minutes[i]), values[i]);
        }
        return builder.build();
    }
}
