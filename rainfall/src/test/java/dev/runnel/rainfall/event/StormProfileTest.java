package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class StormProfileTest {
    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(Instant.parse("2026-03-01T12:00:00Z"), Duration.ofMinutes(10), depths);
    }

    @Test
    void sharesFollowTheRain() {
        StormProfile profile = StormProfile.of(rain(1, 2, 6, 1, 0, 0));
        assertThat(profile.depthShare(0)).isZero();
        assertThat(profile.depthShare(1)).isEqualTo(1);
        assertThat(profile.depthShare(0.5)).isCloseTo(0.9, within(1e-15));
        // A quarter of six steps is one step and a half.
        assertThat(profile.quarterShares()).containsExactly(new double[] {0.2, 0.7, 0.1, 0}, within(1e-15));
        assertThat(profile.quartile()).isEqualTo(2);
        assertThat(profile.timeToPeak()).isEqualTo(Duration.ofMinutes(25));
        assertThat(profile.timeToCentroid())
                .isEqualTo(Duration.ofMillis(Math.round((5 * 1 + 15 * 2 + 25 * 6 + 35) / 10.0 * 60_000)));
        assertThat(profile).hasToString("StormProfile[quartile 2 of 20.0, 70.0, 10.0, 0.0 %, peak after 25 min]");
    }

    @Test
    void steadyRainBelongsToTheFirstQuartile() {
        StormProfile profile = StormProfile.of(rain(0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1));
        assertThat(profile.quartile()).isEqualTo(1);
        assertThat(profile.timeToPeak()).isEqualTo(Duration.ofMinutes(5));
        assertThat(profile.timeToCentroid()).isEqualTo(Duration.ofMinutes(35));
    }

    @Test
    void anEventOfOneStep() {
        StormProfile profile = StormProfile.of(rain(0.2));
        assertThat(profile.quarterShares()).containsExactly(new double[] {0.25, 0.25, 0.25, 0.25}, within(1e-15));
        assertThat(profile.quartile()).isEqualTo(1);
    }

    @Test
    void takesTheEventOutOfItsRecord() {
        RegularSeries record = rain(0, 0, 1, Double.NaN, 3, 0, 0, 0, 0, 0, 0);
        RainfallEvent event =
                EventSeparation.of(Duration.ofMinutes(30)).events(record).get(0);
        assertThat(StormProfile.of(event, record).timeToPeak()).isEqualTo(Duration.ofMinutes(25));
    }

    @Test
    void anEventOfTipsTakesTheStepsItTouches() {
        RegularSeries record = rain(0, 0, 1, 2, 3, 0, 0, 0, 0, 0, 0);
        Instant start = record.time(2).plusSeconds(77);
        RainfallEvent event = RainfallEvent.of(Interval.of(start, record.time(4).plusSeconds(5)), 6, List.of());
        assertThat(StormProfile.of(event, record).depthShare(1.0 / 3)).isCloseTo(1.0 / 6, within(1e-15));
        RainfallEvent oneTip = RainfallEvent.of(Interval.of(start, start), 1, List.of());
        assertThat(StormProfile.of(oneTip, record).timeToPeak()).isEqualTo(Duration.ofMinutes(5));
    }

    @Test
    void refusesARecordThatDoesNotReachOverTheEvent() {
        RegularSeries record = rain(1, 2, 3);
        RainfallEvent longer =
                RainfallEvent.of(Interval.of(record.start(), record.end().plusSeconds(1)), 6, List.of());
        assertThatThrownBy(() -> StormProfile.of(longer, record))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rain must reach over the event, 2026-03-01T12:00:00Z/2026-03-01T12:30:01Z, was"
                        + " 2026-03-01T12:00:00Z/2026-03-01T12:30:00Z");
    }

    @Test
    void refusesADryRecord() {
        assertThatThrownBy(() -> StormProfile.of(rain(0, Double.NaN)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rain must hold some rain, had none in 2026-03-01T12:00:00Z/2026-03-01T12:20:00Z");
        assertThatThrownBy(() -> StormProfile.of(rain(1)).depthShare(1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("fraction must be in [0, 1], was 1.1");
    }
}
