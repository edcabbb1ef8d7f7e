package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class StrayStampsTest {
    private static final Duration DISTANCE = Duration.ofDays(90);

    @Test
    void oneStampOf2099AndOneOf1970AreSetAside() {
        SeriesBuilder builder = Series.builder().add(Instant.parse("1970-01-01T00:00:00Z"), 7);
        for (int i = 0; i < 1000; i++) {
            // Half a year without readings in the midst is no stray: both halves are long.
            builder.add(Instant.parse("2026-01-01T00:00:00Z").plusSeconds(120L * i + (i < 500 ? 0 : 15_000_000)), 1);
        }
        builder.add(Instant.parse("2099-01-01T00:00:00Z"), 9);
        StrayStamps found = StrayStamps.in(builder.build(), DISTANCE);
        assertThat(found.series().size()).isEqualTo(1000);
        assertThat(found.setAside()).extracting(Reading::value).containsExactly(7.0, 9.0);
        assertThat(found.toString()).endsWith("2 set aside: \"1970-01-01T00:00:00Z 7 unchecked\" and others]");
    }

    @Test
    void aShortRecordIsNotTakenApart() {
        Series few = Series.builder()
                .add(Instant.parse("2026-01-01T00:00:00Z"), 1)
                .add(Instant.parse("2026-07-01T00:00:00Z"), 2)
                .build();
        assertThat(StrayStamps.in(few, DISTANCE).series()).isSameAs(few);
        assertThat(StrayStamps.in(Series.empty(), DISTANCE).setAside()).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StrayStamps.in(few, Duration.ZERO))
                .withMessage("distance must be longer than 0, was 0 s");
    }
}
