package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.event.EventRecord;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DailyTotals;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A record of 1990 to 2019 in steps of 5 min, built so that every count in it is known. */
class ThirtyYearsTest {
    private static final Instant START = Instant.parse("1990-01-01T00:00:00Z");
    private static final int DAYS = (int) ChronoUnit.DAYS.between(START, Instant.parse("2020-01-01T00:00:00Z"));
    private static final int STEPS_A_DAY = 288;
    private static final int NOON = STEPS_A_DAY / 2;
    private static final List<Duration> DURATIONS =
            List.of(Duration.ofMinutes(5), Duration.ofHours(1), Duration.ofHours(6), Duration.ofDays(2));

    /** An hour of rain from noon of every third day, deeper in each year than in the one before; a day without storm is missing. */
    private static RegularSeries record() {
        double[] depths = new double[DAYS * STEPS_A_DAY];
        for (int day = 0; day < DAYS; day += 3) {
            int from = day * STEPS_A_DAY + NOON;
            Arrays.fill(depths, from, from + 12, depth(START.plus(day, ChronoUnit.DAYS)));
        }
        Arrays.fill(depths, 4 * STEPS_A_DAY, 5 * STEPS_A_DAY, Double.NaN);
        return RegularSeries.of(START, Duration.ofMinutes(5), depths);
    }

    /** In quarters of a millimetre, which sum without rounding. */
    private static double depth(Instant day) {
        return 0.25 * (day.atZone(ZoneOffset.UTC).getYear() - 1989);
    }

    @Test
    void everyEventMaximumAndDayIsFound() {
        RegularSeries rain = record();
        assertThat(rain.size()).isEqualTo(3_155_616);

        EventRecord events = EventSeparation.of(Duration.ofHours(6))
                .withPeakDurations(DURATIONS)
                .separate(rain);
        assertThat(events.events())
                .hasSize(3653)
                .allSatisfy(event -> assertThat(event.depthMm())
                        .isEqualTo(12 * depth(event.start().truncatedTo(ChronoUnit.DAYS))));

        AnnualMaxima maxima = AnnualMaxima.from(rain, DURATIONS, YearRule.calendar());
        assertThat(maxima.excludedYears()).isEmpty();
        for (int year = 0; year < 30; year++) {
            double deepest = 0.25 * (year + 1);
            assertThat(maxima.depthsMm(Duration.ofMinutes(5))[year]).isEqualTo(deepest);
            assertThat(maxima.depthsMm(Duration.ofHours(1))[year]).isEqualTo(12 * deepest);
            assertThat(maxima.depthsMm(Duration.ofDays(2))[year]).isEqualTo(12 * deepest);
        }

        List<DailyTotal> days = DailyTotals.in(ZoneOffset.UTC).totals(rain);
        assertThat(days).hasSize(DAYS);
        for (int day = 0; day < DAYS; day++) {
            // A total is over time: a depth in steps counts its 300 s.
            double expected = day % 3 == 0 ? 300 * 12 * depth(START.plus(day, ChronoUnit.DAYS)) : 0;
            assertThat(days.get(day).measured()).isCloseTo(expected, within(1e-9));
            assertThat(days.get(day).isComplete()).isEqualTo(day != 4);
        }
    }
}
