package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Records longer than all that is worked on at once are converted as one reading after the other. */
class LongRecordsTest {
    private static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013)));

    /** Two long stretches and some, so that the last of them is shorter, and its last block too. */
    private static final int READINGS = 2 * 16 * PairConversion.BLOCK + 3 * PairConversion.BLOCK + 17;

    private final double[] depths = new double[READINGS];
    private final double[] velocities = new double[READINGS];
    private final double[] discharges = new double[READINGS];

    LongRecordsTest() {
        Random random = new Random(16);
        for (int i = 0; i < READINGS; i++) {
            int fault = random.nextInt(40);
            depths[i] = fault == 0 ? Double.NaN : fault == 1 ? 0.6 : fault == 2 ? -0.01 : 0.45 * random.nextDouble();
            velocities[i] = fault == 3 ? Double.NaN : fault == 4 ? -0.4 : fault == 5 ? 0 : 2 * random.nextDouble();
        }
    }

    @Test
    void arraysGiveWhatSingleReadingsDo() {
        MONITOR.flow(depths, velocities, discharges);
        assertDischarges();
    }

    @Test
    void recordsSayOfEachPairWhatASingleOneSays() {
        FlowRecord record = record();
        for (int i = 0; i < READINGS; i++) {
            MonitoredFlow one = MONITOR.flow(depths[i], velocities[i]);
            assertThat(record.flow().value(i)).isEqualTo(Double.valueOf(one.discharge()));
            assertThat(record.level().value(i)).isEqualTo(Double.valueOf(one.level()));
            assertThat(record.depthCondition(i)).isEqualTo(one.depthCondition());
            assertThat(record.velocityCondition(i)).isEqualTo(one.velocityCondition());
        }
    }

    /** A depth of 0 is the one whose product with a velocity is a number, and it is far behind, in the last block. */
    @Test
    void theOnlyDepthOfZeroIsFound() {
        Arrays.fill(depths, 0.2);
        Arrays.fill(velocities, 0.5);
        depths[READINGS - 2] = 0;
        FlowRecord record = record();
        assertThat(record.depthCondition(READINGS - 2)).isEqualTo(DepthCondition.DRY);
        assertThat(record.flow().value(READINGS - 2)).isZero();
        assertThat(record.flow().quality(READINGS - 2)).isEqualTo(Quality.POOR);
        assertThat(record.flow().quality(READINGS - 3)).isEqualTo(Quality.UNCHECKED);
    }

    private FlowRecord record() {
        long[] times = new long[READINGS];
        Arrays.setAll(times, i -> i * 120_000_000_000L);
        return MONITOR.flow(Series.of(times, depths), Series.of(times, velocities));
    }

    private void assertDischarges() {
        double[] one = new double[READINGS];
        Arrays.setAll(one, i -> MONITOR.flow(depths[i], velocities[i]).discharge());
        assertThat(discharges).isEqualTo(one);
    }
}
