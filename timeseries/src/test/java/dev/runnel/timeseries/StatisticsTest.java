package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class StatisticsTest {
    @Test
    void leavesMissingValuesOutAndCountsThem() {
        Statistics statistics = Statistics.of(new double[] {4, Double.NaN, 1, 3, 2});
        assertThat(statistics.count()).isEqualTo(4);
        assertThat(statistics.missing()).isEqualTo(1);
        assertThat(statistics.mean()).isEqualTo(2.5);
        assertThat(statistics.median()).isEqualTo(2.5);
        assertThat(statistics.minimum()).isEqualTo(1);
        assertThat(statistics.maximum()).isEqualTo(4);
        // Variance of 1, 2, 3, 4 with divisor 3 is 5/3.
        assertThat(statistics.standardDeviation()).isCloseTo(Math.sqrt(5.0 / 3), within(1e-15));
        assertThat(statistics)
                .hasToString("Statistics[4 values, 1 missing, mean 2.5, min 1, median 2.5, max 4, sd 1.29099]");
    }

    @Test
    void nothingHasNoMean() {
        Statistics none = Statistics.of(new double[] {Double.NaN});
        assertThat(none.sum()).isZero();
        assertThat(none.mean()).isNaN();
        assertThat(none.minimum()).isNaN();
        assertThat(none.maximum()).isNaN();
        assertThat(none.median()).isNaN();
        assertThat(none.standardDeviation()).isNaN();
        assertThat(Statistics.of(new double[] {7}).standardDeviation()).isNaN();
        assertThat(Statistics.of(new double[] {7}).quantile(0.9)).isEqualTo(7);
    }

    @Test
    void quantilesInterpolateBetweenOrderStatistics() {
        Statistics statistics = Statistics.of(new double[] {10, 20, 30, 40, 50});
        assertThat(statistics.quantile(0)).isEqualTo(10);
        assertThat(statistics.quantile(1)).isEqualTo(50);
        assertThat(statistics.quantile(0.25)).isEqualTo(20);
        assertThat(statistics.quantile(0.1)).isCloseTo(14, within(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> statistics.quantile(1.01))
                .withMessage("probability must be in [0, 1], was 1.01");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> statistics.quantile(Double.NaN))
                .withMessage("probability must be in [0, 1], was NaN");
    }

    @Test
    void theSumKeepsWhatSmallValuesAdd() {
        assertThat(Statistics.of(new double[] {1e16, 1, 1, -1e16}).sum()).isEqualTo(2);
        double[] tips = new double[1_000_000];
        java.util.Arrays.fill(tips, 0.2);
        assertThat(Statistics.of(tips).sum()).isEqualTo(200_000);
    }
}
