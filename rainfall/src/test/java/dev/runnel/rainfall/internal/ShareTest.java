package dev.runnel.rainfall.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Steps of 10 min with 1, 2, 4, none and 8, so that each sum tells which steps are in it. */
class ShareTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final RegularSeries RAIN =
            RegularSeries.of(START, Duration.ofMinutes(10), new double[] {1, 2, 4, Double.NaN, 8});

    private static Share share(int fromMinute, int toMinute) {
        return Share.of(RAIN, Interval.of(START.plusSeconds(60L * fromMinute), START.plusSeconds(60L * toMinute)));
    }

    @Test
    void wholeSteps() {
        assertThat(share(0, 10)).isEqualTo(new Share(1, 0, Duration.ZERO));
        assertThat(share(10, 30)).isEqualTo(new Share(6, 0, Duration.ZERO));
        assertThat(share(0, 50)).isEqualTo(new Share(15, 1, Duration.ofMinutes(10)));
        assertThat(share(30, 40)).isEqualTo(new Share(0, 1, Duration.ofMinutes(10)));
        assertThat(share(40, 50)).isEqualTo(new Share(8, 0, Duration.ZERO));
    }

    /** From 5 to 25 min: half of 1, all of 2, half of 4. */
    @Test
    void partsOfSteps() {
        assertThat(share(5, 25)).isEqualTo(new Share(4.5, 0, Duration.ZERO));
        assertThat(share(12, 17)).isEqualTo(new Share(1, 0, Duration.ZERO));
        // Of the missing step 4 and 6 min are asked for.
        assertThat(share(20, 34)).isEqualTo(new Share(4, 1, Duration.ofMinutes(4)));
        assertThat(share(34, 45)).isEqualTo(new Share(4, 1, Duration.ofMinutes(6)));
        assertThat(share(1, 2).sum()).isCloseTo(0.1, within(1e-15));
    }

    @Test
    void beyondTheRecord() {
        assertThat(share(-7, 10)).isEqualTo(new Share(1, 0, Duration.ofMinutes(7)));
        assertThat(share(45, 62)).isEqualTo(new Share(4, 0, Duration.ofMinutes(12)));
        assertThat(share(-20, -5)).isEqualTo(new Share(0, 0, Duration.ofMinutes(15)));
        assertThat(share(55, 60)).isEqualTo(new Share(0, 0, Duration.ofMinutes(5)));
        assertThat(share(20, 20)).isEqualTo(new Share(0, 0, Duration.ZERO));
    }
}
