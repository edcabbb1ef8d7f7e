package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DryDaysTest {
    private static final LocalDate FIRST = LocalDate.parse("2026-03-01");

    private static RegularSeries daily(double... depths) {
        return RegularSeries.of(Instant.parse("2026-03-01T00:00:00Z"), Duration.ofDays(1), depths);
    }

    private static Set<LocalDate> days(int... numbers) {
        return IntStream.of(numbers).mapToObj(FIRST::plusDays).collect(Collectors.toCollection(TreeSet::new));
    }

    private static DryDays dryDays(DryDayRule rule, double... depths) {
        return DryDays.of(rule, daily(depths), ZoneOffset.UTC);
    }

    @Test
    void theDayAlone() {
        DryDays days = dryDays(DryDayRule.of(0.25), 0, 0.25, 0.26, Double.NaN, 0);
        assertThat(days.dates()).isEqualTo(days(0, 1, 4));
        assertThat(days.notDry()).isEqualTo(days(2));
        assertThat(days.unknown()).isEqualTo(days(3));
        assertThat(days).hasToString("DryDays[3 dry, 1 not dry, 1 unknown; DryDayRule[at most 0.25 mm a day]]");
    }

    @Test
    void theDaysAfterRainAreNotDry() {
        DryDays days = dryDays(DryDayRule.twoMillimetresAndTwoDays(), 0, 0, 1, 3, 0, 0, 0, 2, 0);
        // What fell before the record is not known.
        assertThat(days.unknown()).isEqualTo(days(0, 1));
        assertThat(days.notDry()).isEqualTo(days(3, 4, 5));
        assertThat(days.dates()).isEqualTo(days(2, 6, 7, 8));
    }

    /** 35 days, rain of 0.2, 0.25 and 0.3 mm on days 2, 15 and 17: dry weeks start on days 7, 8 and 25 to 28. */
    @Test
    void sevenDaysWithoutRainAfterSevenWithLittle() {
        double[] depths = new double[35];
        depths[2] = 0.2;
        depths[15] = 0.25;
        depths[17] = 0.3;
        DryDays days = dryDays(DryDayRule.sevenDaysAfterSeven(), depths);
        assertThat(days.dates())
                .isEqualTo(IntStream.concat(IntStream.range(7, 15), IntStream.range(25, 35))
                        .mapToObj(FIRST::plusDays)
                        .collect(Collectors.toCollection(TreeSet::new)));
        // Days 0, 1 and 3 to 6 might end a dry week whose days before the record are unknown.
        assertThat(days.notDry())
                .contains(FIRST.plusDays(2), FIRST.plusDays(15), FIRST.plusDays(17), FIRST.plusDays(24));
        assertThat(days.unknown()).contains(FIRST.plusDays(0), FIRST.plusDays(3), FIRST.plusDays(6));
        assertThat(days.dates().size() + days.notDry().size() + days.unknown().size())
                .isEqualTo(35);
    }

    @Test
    void enoughRainMakesADayWetEvenIfTheRestIsMissing() {
        Instant midnight = Instant.parse("2026-03-01T00:00:00Z");
        double[] hours = new double[48];
        hours[5] = 9;
        hours[6] = Double.NaN;
        hours[30] = Double.NaN;
        RegularSeries rain = RegularSeries.of(midnight, Duration.ofHours(1), hours);
        DryDays days = DryDays.of(DryDayRule.of(1), rain, ZoneOffset.UTC);
        assertThat(days.notDry()).isEqualTo(days(0));
        assertThat(days.unknown()).isEqualTo(days(1));
        DryDays lenient = DryDays.of(DryDayRule.of(1).withMissingAllowed(Duration.ofHours(1)), rain, ZoneOffset.UTC);
        assertThat(lenient.dates()).isEqualTo(days(1));
        assertThat(DryDays.of(DryDayRule.of(1).withMissingAllowed(Duration.ofMinutes(59)), rain, ZoneOffset.UTC)
                        .dates())
                .isEmpty();
    }

    @Test
    void aDayThatTheRecordCutsIsUnknown() {
        RegularSeries rain =
                RegularSeries.of(Instant.parse("2026-03-01T00:05:00Z"), Duration.ofMinutes(5), new double[600]);
        DryDays days = DryDays.of(DryDayRule.of(0), rain, ZoneOffset.UTC);
        assertThat(days.unknown()).isEqualTo(days(0, 2));
        assertThat(days.dates()).isEqualTo(days(1));
    }

    @Test
    void daysAreThoseOfTheZoneAlsoWhenClocksChange() {
        ZoneId zone = ZoneId.of("Europe/London");
        // 29 March 2026 has 23 hours there, from 00:00Z to 23:00Z; the hour from 23:00Z belongs to the 30th.
        double[] hours = new double[49];
        hours[23] = 5;
        RegularSeries rain = RegularSeries.of(Instant.parse("2026-03-29T00:00:00Z"), Duration.ofHours(1), hours);
        DryDays days = DryDays.of(DryDayRule.of(0), rain, zone);
        assertThat(days.dates()).containsExactly(LocalDate.parse("2026-03-29"));
        assertThat(days.notDry()).containsExactly(LocalDate.parse("2026-03-30"));
        assertThat(days.unknown()).containsExactly(LocalDate.parse("2026-03-31"));
    }

    @Test
    void aSumOfTipsAtTheLimitIsStillDry() {
        double[] hours = new double[24];
        for (int i = 0; i < 10; i++) {
            hours[i] = 0.1;
        }
        hours[11] = 0.1 + 0.2;
        RegularSeries rain = RegularSeries.of(Instant.parse("2026-03-01T00:00:00Z"), Duration.ofHours(1), hours);
        assertThat(DryDays.of(DryDayRule.of(1.3), rain, ZoneOffset.UTC).dates()).isEqualTo(days(0));
    }

    @Test
    void anEmptyRecordHasNoDays() {
        DryDays days = dryDays(DryDayRule.sevenDaysAfterSeven());
        assertThat(days.dates()).isEmpty();
        assertThat(days.unknown()).isEmpty();
    }

    @Test
    void refusesStepsThatHideADay() {
        RegularSeries coarse = RegularSeries.of(Instant.parse("2026-03-01T00:00:00Z"), Duration.ofHours(72), 30, 0);
        assertThatThrownBy(() -> DryDays.of(DryDayRule.of(0.3), coarse, ZoneOffset.UTC))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("step of rain must be at most a day, was 3 d");
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> DryDayRule.of(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("maximumMm must be 0 or greater and finite (mm), was -1");
        assertThatThrownBy(() -> DryDayRule.of(1).withRun(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("days must be in [1, 3660], was 0");
        assertThatThrownBy(() -> DryDayRule.of(1).withDaysBefore(2, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("maximumEachMm must be 0 or greater and finite (mm), was NaN");
        assertThatThrownBy(() -> dryDays(DryDayRule.of(1), 0, -3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain must be 0 or greater (mm)");
    }
}
