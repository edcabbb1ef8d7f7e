package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import org.junit.jupiter.api.Test;

class RollingMedianTest {
    private static final double NONE = Double.NaN;

    private static double[] medians(int half, double... values) {
        double[] medians = new double[values.length];
        RollingMedian.ofHalfWidth(half).medians(values, medians);
        return medians;
    }

    @Test
    void takesOutASpikeAndLeavesAStep() {
        assertThat(medians(1, 0.2, 0.2, 0.9, 0.2, 0.2, 0.5, 0.5, 0.5))
                .containsExactly(NONE, 0.2, 0.2, 0.2, 0.2, 0.5, 0.5, NONE);
    }

    @Test
    void leavesOutWhatIsMissing() {
        assertThat(medians(1, NONE, 3, NONE, 1, NONE, NONE, 2, 7, NONE))
                .containsExactly(NONE, NONE, NONE, 2, NONE, NONE, 2, NONE, NONE);
        assertThat(medians(2, 1, 2, NONE, 3, 4)).containsOnly(NONE);
        assertThat(medians(1)).isEmpty();
    }

    @Test
    void seriesKeepsItsTimesAndSaysWhatIsMissing() {
        byte good = Quality.GOOD.toCode();
        byte poor = Quality.POOR.toCode();
        byte suspect = Quality.SUSPECT.toCode();
        var series = Series.of(
                new long[] {0, 1, 2, 3, 4}, new double[] {1, 2, 900, 3, 4}, new byte[] {good, poor, suspect, good, good
                });
        Series medians = RollingMedian.ofHalfWidth(1).of(series);
        assertThat(medians.toValues()).containsExactly(NONE, 2, NONE, 3, NONE);
        assertThat(medians.hasTimesOf(series)).isTrue();
        assertThat(medians.quality(1)).isEqualTo(Quality.POOR);
        assertThat(medians.quality(2)).isEqualTo(Quality.MISSING);
    }

    @Test
    void refusesWhatIsNoWindowAndNoValue() {
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> RollingMedian.ofHalfWidth(0))
                .withMessageContaining("halfWidth must be in [1, 10000]");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> medians(1, 1, 2, Double.NEGATIVE_INFINITY))
                .withMessageContaining("values[2] must be finite");
        double[] same = {1, 2, 3};
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> RollingMedian.ofHalfWidth(1).medians(same, same))
                .withMessageContaining("another array");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> RollingMedian.ofHalfWidth(1).medians(same, new double[2]))
                .withMessageContaining("medians");
        assertThat(RollingMedian.ofHalfWidth(3))
                .hasToString("RollingMedian[half width 3]")
                .isEqualTo(RollingMedian.ofHalfWidth(3));
    }
}
