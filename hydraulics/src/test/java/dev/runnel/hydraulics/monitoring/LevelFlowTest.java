package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.hydraulics.rating.RatingFit;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.CrumpWeir;
import dev.runnel.hydraulics.structure.RectangularWeir;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import org.junit.jupiter.api.Test;

class LevelFlowTest {
    private static final ApproachChannel CHANNEL = ApproachChannel.ofWidth(2).withCrestHeight(0.5);
    private static final RectangularWeir WEIR = RectangularWeir.fullWidth(CHANNEL);

    private static Series series(double... values) {
        long[] times = new long[values.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = i * 60_000_000_000L;
        }
        return Series.of(times, values);
    }

    @Test
    void noReadingStopsARecord() {
        LevelFlow flow = LevelFlow.of(WEIR, 10);
        LevelFlow.Rated rated = flow.flow(series(10.2, 9.9, 10.02, Double.NaN, 12.0, 9000, 10));
        assertThat(rated.outside()).isEqualTo(2);
        assertThat(rated.missing()).isEqualTo(2);
        assertThat(rated.flow().value(0)).isEqualTo(WEIR.discharge(10.2 - 10));
        assertThat(rated.flow().value(1)).isZero();
        assertThat(rated.flow().quality(1)).isEqualTo(rated.flow().quality(0));
        assertThat(rated.flow().value(2)).isEqualTo(WEIR.formula(10.02 - 10));
        assertThat(rated.flow().quality(2)).isEqualTo(Quality.POOR);
        assertThat(rated.flow().quality(3)).isEqualTo(Quality.MISSING);
        assertThat(rated.flow().quality(4)).isEqualTo(Quality.POOR);
        assertThat(rated.flow().quality(5)).isEqualTo(Quality.MISSING);
        assertThat(rated.flow().value(6)).isZero();
        assertThat(rated).hasToString("Rated[7 flows, 2 outside the limits, 2 missing]");
        assertThat(flow.toString()).startsWith("LevelFlow[RectangularWeir[").endsWith(", crest at 10 m]");
    }

    @Test
    void aRatedGauge() {
        double[] stage = {0.2, 0.4, 0.6, 0.8, 1.0};
        double[] discharge = {0.11, 0.33, 0.6, 0.93, 1.31};
        LevelFlow flow = LevelFlow.of(RatingFit.of(stage, discharge).withOffset(0));
        LevelFlow.Rated rated = flow.flow(series(0.5, 1.4, -0.1));
        assertThat(rated.outside()).isEqualTo(2);
        assertThat(rated.flow().quality(1)).isEqualTo(Quality.POOR);
        assertThat(rated.flow().quality(2)).isEqualTo(Quality.POOR);
        assertThat(rated.flow().value(2)).isZero();
    }

    @Test
    void twoLevels() {
        CrumpWeir weir = CrumpWeir.of(CHANNEL);
        LevelFlow.Rated rated =
                LevelFlow.drowned(weir, 1, series(1.3, 1.3, 1.3, 1.3), series(0.5, 1.27, Double.NaN, 1.4));
        assertThat(rated.flow().value(0)).isEqualTo(weir.discharge(1.3 - 1));
        assertThat(rated.flow().value(1)).isEqualTo(weir.discharge(1.3 - 1, 1.27 - 1));
        assertThat(rated.flow().quality(2)).isEqualTo(Quality.MISSING);
        assertThat(rated.missing()).isEqualTo(1);
        assertThat(rated.flow().value(3)).isZero();
        assertThat(rated.flow().quality(3)).isEqualTo(Quality.POOR);
        assertThatThrownBy(() -> LevelFlow.drowned(weir, 1, series(1, 2), series(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("tailwater must have the times of level");
    }
}
