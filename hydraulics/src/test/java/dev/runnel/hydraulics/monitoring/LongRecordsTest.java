package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
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
    void blocksMayBeDoneInEitherWay() {
        PairConversion.Blocks blocks = MONITOR.conversion().new Blocks(depths, velocities, discharges);
        for (int block = 0; blocks.hasNext(); block++) {
            if (block % 3 == 0) {
                blocks.nextAndOthers();
            } else {
                blocks.next();
            }
        }
        assertDischarges();
    }

    private void assertDischarges() {
        double[] one = new double[READINGS];
        Arrays.setAll(one, i -> MONITOR.flow(depths[i], velocities[i]).discharge());
        assertThat(discharges).isEqualTo(one);
    }
}
