package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class RainDaysProperties {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");

    /** Steps of any length that lie across midnights: what falls in the days is what fell. */
    @Property(tries = 100)
    void daysAddUpToTheRecord(
            @ForAll @IntRange(min = 1, max = 60) int steps,
            @ForAll @IntRange(min = 1, max = 3000) int stepMinutes,
            @ForAll @IntRange(min = 0, max = 1439) int offset) {
        double[] depths = new double[steps];
        for (int i = 0; i < steps; i++) {
            depths[i] = (i * 7919 % 23) / 3.0;
        }
        RegularSeries rain = RegularSeries.of(
                Instant.parse("2026-03-20T00:00:00Z").plusSeconds(60L * offset),
                Duration.ofMinutes(stepMinutes),
                depths);
        assertThat(DailyRain.of(rain, RainDay.midnight(LONDON)).depthMm()).isCloseTo(rain.sum(), within(1e-9));
        assertThat(DailyRain.of(rain, RainDay.nineToNine()).depthMm()).isCloseTo(rain.sum(), within(1e-9));
    }
}
