package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class BeforeAfterTest {
    /** All 6 of 20 orders are counted by hand: U = 8 of 9, P(U >= 8) = 2/20. */
    @Test
    void threeAgainstThree() {
        BeforeAfter change = BeforeAfter.of(new double[] {1, 3, 5}, new double[] {4, 6, 7}, 0.9);
        assertThat(change.statistic()).isEqualTo(8);
        assertThat(change.isExact()).isTrue();
        assertThat(change.pValue()).isCloseTo(4 / 20.0, within(1e-15));
        // Differences: -1 1 1 2 3 3 4 5 6; P(U <= 0) = 1/20.
        assertThat(change.shift()).isEqualTo(3);
        assertThat(change.lower()).isEqualTo(-1);
        assertThat(change.upper()).isEqualTo(6);
        assertThat(change.medianBefore()).isEqualTo(3);
        assertThat(change.medianAfter()).isEqualTo(6);
        assertThat(change)
                .hasToString("BeforeAfter[median 3 of 3, then 6 of 3, shift 3, 90 % limits -1 to 6, p 0.2 exact]");
    }

    @Test
    void equalValuesHaveNoShift() {
        BeforeAfter change = BeforeAfter.of(new double[] {2, 2, 2}, new double[] {2, 2}, 0.95);
        assertThat(change.statistic()).isEqualTo(3);
        assertThat(change.z()).isZero();
        assertThat(change.pValue()).isEqualTo(1);
        assertThat(change.shift()).isZero();
        assertThat(change.lower()).isZero();
        assertThat(change.upper()).isZero();
        assertThat(change.isExact()).isFalse();
    }

    @Test
    void zeroAndMinusZeroAreTies() {
        assertThat(BeforeAfter.of(new double[] {-0.0, 1}, new double[] {0.0, 2}, 0.5)
                        .statistic())
                .isEqualTo(2.5);
    }

    @Test
    void manyValuesTakeTheNormalDistribution() {
        double[] before = new double[3000];
        double[] after = new double[2000];
        Arrays.setAll(before, i -> i * 0.7548776662466927 % 1);
        Arrays.setAll(after, i -> 0.25 + i * 0.5698402909980532 % 1);
        BeforeAfter change = BeforeAfter.of(before, after, 0.95);
        assertThat(change.isExact()).isFalse();
        assertThat(change.shift()).isCloseTo(0.25, within(0.01));
        assertThat(change.lower()).isBetween(0.2, change.shift());
        assertThat(change.upper()).isBetween(change.shift(), 0.3);
        assertThat(change.pValue()).isLessThan(1e-100);
    }

    @Test
    void aSeriesIsCutAtTheTime() {
        Instant start = Instant.parse("2026-01-01T00:00:00Z");
        var builder = Series.builder();
        for (int i = 0; i < 8; i++) {
            builder.add(start.plusSeconds(60L * i), i < 4 ? i : 10 + i);
        }
        BeforeAfter change = BeforeAfter.of(builder.build(), start.plusSeconds(240));
        assertThat(change.countBefore()).isEqualTo(4);
        assertThat(change.countAfter()).isEqualTo(4);
        assertThat(change.shift()).isEqualTo(14);
        assertThat(change.confidence()).isEqualTo(0.95);
    }

    @Test
    void badInputIsNamed() {
        double[] three = {1, 2, 3};
        assertThatThrownBy(() -> BeforeAfter.of(new double[1], three, 0.9))
                .hasMessage("number of values before must be in [2, 1.0E7], was 1");
        assertThatThrownBy(() -> BeforeAfter.of(three, new double[] {1, Double.NaN}, 0.9))
                .hasMessage("after[1] must be in [-1.0E300, 1.0E300], was NaN");
        assertThatThrownBy(() -> BeforeAfter.of(three, three, 1)).hasMessageContaining("confidence must be in [");
    }
}
