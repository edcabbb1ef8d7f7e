package dev.runnel.timeseries.baseline;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalSecondsTest {
    /** Forwards, backwards and at random, on every side of each change of the clock. */
    @ParameterizedTest
    @ValueSource(strings = {"Europe/London", "Australia/Lord_Howe", "Pacific/Chatham", "UTC", "+05:45"})
    void saysWhatTheCalendarSays(String zoneName) {
        ZoneId zone = ZoneId.of(zoneName);
        List<Instant> times = new ArrayList<>();
        for (Instant time = Instant.parse("2023-12-31T12:00:00Z");
                time.isBefore(Instant.parse("2025-01-02T00:00:00Z"));
                time = time.plus(Duration.ofMinutes(90))) {
            times.add(time);
        }
        // London's clock changes at 01:00 of these days.
        for (String change : new String[] {"2024-03-31T01:00:00Z", "2024-10-27T01:00:00Z"}) {
            times.add(Instant.parse(change).minusNanos(1));
            times.add(Instant.parse(change));
            times.add(Instant.parse(change).plusNanos(1));
        }
        Collections.sort(times);
        areRight(zone, times);
        Collections.reverse(times);
        areRight(zone, times);
        Collections.shuffle(times, new Random(5));
        areRight(zone, times);
    }

    private static void areRight(ZoneId zone, List<Instant> times) {
        LocalSeconds clock = new LocalSeconds(zone);
        for (Instant time : times) {
            assertThat(clock.of(EpochNanos.of(time)))
                    .as("%s in %s", time, zone)
                    .isEqualTo(time.atZone(zone).toLocalDateTime().toEpochSecond(ZoneOffset.UTC));
        }
    }
}
