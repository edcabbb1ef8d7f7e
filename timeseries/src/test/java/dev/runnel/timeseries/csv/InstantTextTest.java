package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.EpochNanos;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class InstantTextTest {
    /** Every year that fits, before 1970 and with fractions of a second too, in random order and in steps. */
    @Test
    void writesWhatAnInstantSays() {
        var random = new SplittableRandom(5);
        InstantText instants = new InstantText();
        long time = 0;
        for (int i = 0; i < 50_000; i++) {
            long second = random.nextLong(-9_223_000_000L, 9_223_000_000L);
            time = i % 2 == 0
                    ? time + 120_000_000_000L
                    : second * 1_000_000_000L + (i % 5 == 0 ? random.nextInt(999) : 0);
            byte[] text = new byte[50];
            int end = instants.write(text, 3, time);
            assertThat(new String(text, 3, end - 3, StandardCharsets.US_ASCII))
                    .isEqualTo(EpochNanos.toInstant(time).toString());
            time = Math.min(time, 9_000_000_000_000_000_000L);
        }
    }
}
