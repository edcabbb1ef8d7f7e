package dev.runnel.hydraulics.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Invented velocities; the expected figures come from a statistics library in another language. */
class GaugingCheckTest {
    private static final double[] HAND = {0.62, 0.71, 0.55, 0.83, 0.94, 0.68};
    private static final double[] MONITOR = {0.66, 0.74, 0.61, 0.86, 1.02, 0.69};
    private static final Instant TIME = Instant.parse("2026-03-01T10:00:00Z");

    @Test
    void biasAndRatioComeWithTheirIntervals() {
        GaugingCheck check = GaugingCheck.of(HAND, MONITOR);
        assertThat(check.bias().value()).isCloseTo(0.041666666666666664, within(1e-15));
        assertThat(check.bias().lower()).isCloseTo(0.01560626854854364, within(1e-10));
        assertThat(check.bias().upper()).isCloseTo(0.06772706478478968, within(1e-10));
        assertThat(check.limitsOfAgreement().lower()).isCloseTo(-0.007005570457454445, within(1e-14));
        assertThat(check.limitsOfAgreement().upper()).isCloseTo(0.09033890379078777, within(1e-14));
        Estimate ratio = check.ratio().orElseThrow();
        assertThat(ratio.value()).isCloseTo(1.058167136707193, within(1e-14));
        assertThat(ratio.lower()).isCloseTo(1.022597288890134, within(1e-9));
        assertThat(ratio.upper()).isCloseTo(1.0949742399790376, within(1e-9));
        assertThat(check.bias().holds(0)).isFalse();
        assertThat(ratio.holds(1.05)).isTrue();
        assertThat(check)
                .hasToString("GaugingCheck[6 pairs, 0 left out, bias 0.0417 (95 % 0.0156 to 0.0677), ratio 1.06 (95 %"
                        + " 1.02 to 1.09)]");
    }

    @Test
    void incompletePairsAreLeftOutAndCounted() {
        GaugingCheck check =
                GaugingCheck.of(new double[] {0.62, Double.NaN, 0.71, 0.5}, new double[] {0.66, 0.7, 0.74, Double.NaN});
        assertThat(check.size()).isEqualTo(2);
        assertThat(check.leftOut()).isEqualTo(2);
        assertThat(check.bias().value()).isCloseTo(0.035, within(1e-15));
    }

    @Test
    void recordIsReadAtTheTimesOfTheGaugings() {
        Series hand = Series.builder()
                .add(TIME, 0.62)
                .add(TIME.plusSeconds(90), 0.71)
                .add(TIME.plusSeconds(4000), 0.9)
                .add(new Reading(TIME.plusSeconds(4001), 5, Quality.SUSPECT))
                .build();
        Series monitor = Series.of(List.of(
                Reading.of(TIME, 0.66),
                Reading.of(TIME.plusSeconds(60), 0.70),
                Reading.of(TIME.plusSeconds(120), 0.78)));
        GaugingCheck check = GaugingCheck.of(hand, monitor, Alignment.linear(Duration.ofMinutes(2)));
        assertThat(check.size()).isEqualTo(2);
        assertThat(check.leftOut()).isEqualTo(2);
        assertThat(check.bias().value()).isCloseTo((0.04 + 0.03) / 2, within(1e-15));
    }

    @Test
    void ratioNeedsPositiveValues() {
        GaugingCheck check = GaugingCheck.of(new double[] {0, 0.5}, new double[] {0.1, 0.6});
        assertThat(check.ratio()).isEmpty();
        assertThat(check.toString()).doesNotContain("ratio");
    }

    @Test
    void badInputIsRefused() {
        assertThatThrownBy(() -> GaugingCheck.of(new double[] {1, Double.NaN}, new double[] {1, 1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("hand must have at least 2 values with a monitor value, had 1");
        assertThatThrownBy(() -> GaugingCheck.of(new double[] {1, 2}, new double[] {1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("monitor must have length 2, was 1");
        assertThatThrownBy(() -> GaugingCheck.of(new double[] {1, 2}, new double[] {1, Double.POSITIVE_INFINITY}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("monitor must be finite, was Infinity");
        assertThatThrownBy(() -> new Estimate(1, 2, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("value must be in [2, 3], was 1");
    }
}
