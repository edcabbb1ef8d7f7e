package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class SiteRecordTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");

    private static SiteRecord record(Duration rainStep, int steps, String... times) {
        SeriesBuilder depth = Series.builder();
        for (String time : times) {
            depth.add(Instant.parse(time), 0.1);
        }
        double[] rain = new double[steps];
        Arrays.fill(rain, 0.25);
        return SiteRecord.ofDepth(depth.build()).withRain(RegularSeries.of(START, rainStep, rain));
    }

    private static List<String> times(SiteRecord record) {
        List<String> times = new ArrayList<>();
        record.forEach(reading -> times.add(reading.time().toString()));
        return times;
    }

    @Test
    void putsHoursWithRainIntoGapsOfMoreThanAnHour() {
        SiteRecord record = record(
                Duration.ofHours(1),
                24,
                "2026-03-01T00:10:00Z",
                "2026-03-01T01:10:00Z",
                "2026-03-01T06:40:00Z",
                "2026-03-01T09:00:00Z",
                "2026-03-01T11:00:00Z");
        assertThat(times(record))
                .containsExactly(
                        "2026-03-01T00:10:00Z",
                        "2026-03-01T01:10:00Z",
                        "2026-03-01T02:00:00Z",
                        "2026-03-01T03:00:00Z",
                        "2026-03-01T04:00:00Z",
                        "2026-03-01T05:00:00Z",
                        "2026-03-01T06:40:00Z",
                        "2026-03-01T07:00:00Z",
                        "2026-03-01T09:00:00Z",
                        "2026-03-01T11:00:00Z");
        double sum = 0;
        for (SiteReading reading : record) {
            sum += Double.isNaN(reading.rain()) ? 0 : reading.rain();
            assertThat(Double.isNaN(reading.depth()))
                    .isEqualTo(reading.time().getEpochSecond() % 3600 == 0
                            && !reading.time().toString().contains("T09")
                            && !reading.time().toString().contains("T11"));
        }
        // Eleven hours of a quarter of a millimetre have ended by the last reading.
        assertThat(sum).isEqualTo(11 * 0.25);
    }

    @Test
    void lastsFromItsFirstReadingToJustAfterItsLast() {
        SiteRecord three =
                record(Duration.ofHours(1), 1, "2026-03-01T00:10:00Z", "2026-03-01T00:20:00Z", "2026-03-01T00:35:00Z");
        assertThat(three.interval())
                .isEqualTo(Interval.of(
                        Instant.parse("2026-03-01T00:10:00Z"), Instant.parse("2026-03-01T00:35:00.000000001Z")));
        assertThat(record(Duration.ofHours(1), 1, "2026-03-01T00:10:00Z").interval())
                .isEqualTo(Interval.of(
                        Instant.parse("2026-03-01T00:10:00Z"), Instant.parse("2026-03-01T00:10:00.000000001Z")));
    }

    @Test
    void manyHoursArePutInAndNoneIntoAGapOfFourHundredDays() {
        SiteRecord sixty = record(Duration.ofHours(1), 24 * 60, "2026-03-01T00:30:00Z", "2026-04-30T00:30:00Z");
        assertThat(sixty.size()).isEqualTo(2 + 60 * 24 - 1);
        SiteRecord long399 = record(Duration.ofDays(1), 10, "2026-03-01T00:30:00Z", "2027-04-05T00:29:00Z");
        assertThat(long399.size()).isGreaterThan(9000);
        SiteRecord long400 = record(Duration.ofDays(1), 10, "2026-03-01T00:30:00Z", "2027-04-05T00:30:00Z");
        assertThat(long400.size()).isEqualTo(2);
        assertThat(record(Duration.ofHours(1), 5).size()).isZero();
    }
}
