package dev.runnel.hydraulics.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TrendTest {
    private static final double[] DAYS = {0, 1, 2, 4, 5, 6, 7, 8};

    @Test
    void exactLineIsFoundAgain() {
        double[] values = new double[DAYS.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = 0.25 + 0.125 * DAYS[i];
        }
        Trend trend = Trend.of(DAYS, values);
        assertThat(trend.slope()).isEqualTo(0.125);
        assertThat(trend.lowerSlope()).isEqualTo(0.125);
        assertThat(trend.upperSlope()).isEqualTo(0.125);
        assertThat(trend.first()).isCloseTo(0.25, within(1e-15));
        assertThat(trend.last()).isCloseTo(1.25, within(1e-15));
        assertThat(trend.relativeChange()).isCloseTo(4, within(1e-14));
        // Of the 8! orders of eight values two are in strict order.
        assertThat(trend.pValue()).isCloseTo(2.0 / 40320, within(1e-15));
        assertThat(trend.direction(0.05, 0.1)).isEqualTo(Direction.UP);
        assertThat(trend.direction(0.05, 5)).isEqualTo(Direction.NONE);
        assertThat(trend.direction(1e-6, 0.1)).isEqualTo(Direction.NONE);
        assertThat(trend).hasToString("Trend[0.125 a day (95 % 0.125 to 0.125), 400.0 % in all, p = 4.96e-05]");
    }

    @Test
    void constantHasNoTrend() {
        Trend trend = Trend.of(DAYS, new double[] {3, 3, 3, 3, 3, 3, 3, 3});
        assertThat(trend.slope()).isZero();
        assertThat(trend.pValue()).isEqualTo(1);
        assertThat(trend.relativeChange()).isZero();
        assertThat(trend.direction(1, 0)).isEqualTo(Direction.NONE);
    }

    @Test
    void changeIsRelativeToTheSizeOfTheFirstValue() {
        assertThat(new Trend(-1, -2, -0.5, 0.01, -4, -6).relativeChange()).isEqualTo(-0.5);
        assertThat(new Trend(1, 0.5, 2, 0.01, 0, 3).relativeChange()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(new Trend(0, -1, 1, 1, 0, 0).relativeChange()).isZero();
    }

    @Test
    void badInputIsRefused() {
        assertThatThrownBy(() -> new Trend(3, 1, 2, 0.5, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("slope must be in [1, 2], was 3");
        assertThatThrownBy(() -> new Trend(1, 1, 2, 1.5, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("pValue must be in [0, 1], was 1.5");
    }

    @Test
    void driftsOnTheirLimits() {
        Trend trend = new Trend(0.5, 0.25, 1, 0.05, 4, 5);
        assertThat(trend.direction(0.05, 0.25)).isEqualTo(Direction.UP);
        assertThat(trend.direction(0.049, 0.25)).isEqualTo(Direction.NONE);
        assertThat(trend.direction(0.05, 0.251)).isEqualTo(Direction.NONE);
        assertThat(new Trend(-0.5, -1, -0.25, 0.05, 4, 3).direction(0.05, 0.25)).isEqualTo(Direction.DOWN);
    }

    /** Days that begin at 10: the line is read at the first of them, not at the origin. */
    @Test
    void theLineBeginsWithItsDays() {
        double[] days = {10, 11, 12, 14};
        Trend trend = Trend.of(days, new double[] {1, 1.5, 2, 3});
        assertThat(trend.first()).isCloseTo(1, within(1e-14));
        assertThat(trend.last()).isCloseTo(3, within(1e-14));
    }
}
