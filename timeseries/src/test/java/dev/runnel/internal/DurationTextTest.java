package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DurationTextTest {
    @ParameterizedTest
    @CsvSource({
        "PT14M25.617S, 14 min 26 s",
        "PT0S, 0 s",
        "PT0.25S, 0.25 s",
        "PT0.000000001S, 1e-09 s",
        "PT59.99S, 1 min",
        "PT59.9S, 59.9 s",
        "PT1M0.4S, 1 min",
        "PT59M59.6S, 1 h",
        "PT24H, 1 d",
        "PT26H5S, 1 d 2 h 5 s",
        "PT-14M-25.617S, -14 min 26 s",
        "PT-9223372036854775808S, -106751991167300 d 15 h 30 min 7 s",
        "PT9223372036854775807.999999999S, 106751991167300 d 15 h 30 min 7 s"
    })
    void writesDurationsAsPeopleDo(String iso, String expected) {
        assertThat(Text.duration(Duration.parse(iso))).isEqualTo(expected);
    }

    @Test
    void exactDurationLosesNothing() {
        assertThat(Text.exactDuration(Duration.ofMinutes(4))).isEqualTo("4 min");
        assertThat(Text.exactDuration(Duration.ofSeconds(59))).isEqualTo("59 s");
        assertThat(Text.exactDuration(Duration.ofMinutes(4).plusMillis(1))).isEqualTo("PT4M0.001S");
    }
}
