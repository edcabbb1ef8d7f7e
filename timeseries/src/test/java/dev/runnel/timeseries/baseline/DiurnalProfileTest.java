package dev.runnel.timeseries.baseline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class DiurnalProfileTest {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");
    private static final LocalDate MONDAY = LocalDate.of(2026, 6, 1);
    private static final ProfileRule HOURLY = ProfileRule.standard().withSlot(Duration.ofHours(1));

    /** Value = local hour, plus 100 at weekends: known without any calculation. */
    private static double hourAndWeekend(java.time.ZonedDateTime time) {
        return time.getHour() + (time.getDayOfWeek().getValue() > 5 ? 100 : 0);
    }

    @Test
    void givesEachSlotOfTheLocalDayItsValue() {
        Series series = record(MONDAY, 28, DiurnalProfileTest::hourAndWeekend);
        DiurnalProfile profile = DiurnalProfile.from(series, dates(MONDAY, 28), LONDON);
        Instant noonMonday = MONDAY.atTime(12, 14).atZone(LONDON).toInstant();
        assertThat(profile.expected(noonMonday)).isEqualTo(12);
        assertThat(profile.mean(noonMonday)).isEqualTo(12);
        assertThat(profile.expected(noonMonday.plus(Duration.ofDays(5)))).isEqualTo(112);
        assertThat(profile.days(DayClass.WEEKDAY)).isEqualTo(20);
        assertThat(profile.days(DayClass.WEEKEND)).isEqualTo(8);
        assertThat(profile.days(DayClass.SUNDAY)).isZero();
        assertThat(profile.mean(DayClass.WEEKDAY)).isCloseTo(11.5, within(1e-12));
        assertThat(profile.mean(DayClass.WEEKEND)).isCloseTo(111.5, within(1e-12));
        assertThat(profile.mean()).isCloseTo((5 * 11.5 + 2 * 111.5) / 7, within(1e-12));
        assertThat(profile.emptySlots()).isZero();
        assertThat(profile.nightMinimum(DayClass.WEEKDAY))
                .contains(new ProfileSlot(DayClass.WEEKDAY, LocalTime.MIDNIGHT, 20, 0, 0));
        assertThat(profile)
                .hasToString("DiurnalProfile[slots of 15 min, weekday: 20 days, mean 11.5, weekend: 8 days, mean "
                        + "111.5, 0 empty slots]");
    }

    @Test
    void quantilesAreThoseOfTheDays() {
        // Day k of five has the value k all day.
        Series series = record(MONDAY, 5, time -> time.getDayOfWeek().getValue());
        DiurnalProfile profile = DiurnalProfile.from(series, dates(MONDAY, 5), LONDON, HOURLY);
        Instant noon = MONDAY.atTime(12, 0).atZone(LONDON).toInstant();
        assertThat(profile.expected(noon)).isEqualTo(3);
        assertThat(profile.quantile(noon, 0)).isEqualTo(1);
        assertThat(profile.quantile(noon, 0.25)).isEqualTo(2);
        assertThat(profile.band(noon, 0.1, 0.9)).isEqualTo(new ProfileBand(1.4, 3, 4.6));
        assertThat(profile.band(noon, 0.1, 0.9).contains(4.6)).isTrue();
        assertThat(profile.band(noon, 0.1, 0.9).contains(4.61)).isFalse();
        assertThat(profile.band(noon, 0.1, 0.9).contains(Double.NaN)).isFalse();
    }

    @Test
    void oneOddDayMovesTheMeanAndNotWhatIsExpected() {
        Series series = record(MONDAY, 5, time -> time.getDayOfWeek() == DayOfWeek.FRIDAY ? 1000 : 10);
        DiurnalProfile profile = DiurnalProfile.from(series, dates(MONDAY, 5), LONDON, HOURLY);
        Instant noon = MONDAY.atTime(12, 0).atZone(LONDON).toInstant();
        assertThat(profile.expected(noon)).isEqualTo(10);
        assertThat(profile.mean(noon)).isEqualTo(208);
    }

    @Test
    void aSlotWithTooFewDaysIsEmptyAndCounted() {
        // Friday has readings in the morning only; four days elsewhere.
        Series series =
                record(MONDAY, 5, time -> time.getDayOfWeek() == DayOfWeek.FRIDAY && time.getHour() >= 12 ? -1 : 1);
        SeriesBuilder builder = Series.builder();
        series.stream().filter(reading -> reading.value() > 0).forEach(builder::add);
        DiurnalProfile profile =
                DiurnalProfile.from(builder.build(), dates(MONDAY, 6), LONDON, HOURLY.withMinimumDays(5));
        Instant friday = MONDAY.plusDays(4).atStartOfDay(LONDON).toInstant();
        assertThat(profile.expected(friday)).isEqualTo(1);
        assertThat(profile.expected(friday.plus(Duration.ofHours(12)))).isNaN();
        assertThat(profile.mean(friday.plus(Duration.ofHours(12)))).isNaN();
        assertThat(profile.emptySlots()).isEqualTo(12 + 24);
        assertThat(profile.daysWithoutReadings()).isEqualTo(1);
        assertThat(profile.slots(DayClass.WEEKDAY).get(12).days()).isEqualTo(4);
        assertThat(profile.mean(DayClass.WEEKDAY)).isNaN();
        assertThat(profile.mean()).isNaN();
        assertThat(profile.nightMinimum(DayClass.WEEKEND)).isEmpty();
    }

    @Test
    void daysOnWhichClocksChangeFallIntoTheirSlots() {
        LocalDate spring = LocalDate.of(2026, 3, 29);
        LocalDate autumn = LocalDate.of(2026, 10, 25);
        for (LocalDate change : Set.of(spring, autumn)) {
            Series series = record(change.minusDays(1), 3, time -> time.getHour());
            DiurnalProfile profile = DiurnalProfile.from(
                    series,
                    dates(change.minusDays(1), 3),
                    LONDON,
                    HOURLY.withSplit(WeekSplit.NONE).withMinimumDays(2));
            for (ProfileSlot slot : profile.slots(DayClass.ANY_DAY)) {
                assertThat(slot.mean()).isEqualTo(slot.start().getHour());
                boolean skipped = change.equals(spring) && slot.start().getHour() == 1;
                assertThat(slot.days()).isEqualTo(skipped ? 2 : 3);
            }
        }
    }

    @Test
    void keepsSaturdaysSundaysAndHolidaysApartIfAsked() {
        Series series = record(MONDAY, 28, time -> time.getDayOfWeek().getValue());
        ProfileRule rule = HOURLY.withSplit(WeekSplit.SATURDAY_AND_SUNDAY).withHolidays(Set.of(MONDAY));
        DiurnalProfile profile = DiurnalProfile.from(series, dates(MONDAY, 28), LONDON, rule);
        assertThat(profile.days(DayClass.WEEKDAY)).isEqualTo(19);
        assertThat(profile.days(DayClass.SATURDAY)).isEqualTo(4);
        assertThat(profile.days(DayClass.SUNDAY)).isEqualTo(5);
        assertThat(profile.expected(MONDAY.plusDays(5).atStartOfDay(LONDON).toInstant()))
                .isEqualTo(6);
        assertThat(rule)
                .hasToString("ProfileRule[slots of 1 h, [WEEKDAY, SATURDAY, SUNDAY], at least 3 days, 1 holidays]");
    }

    @Test
    void leavesOutOtherDaysAndReadingsThatAreNotUsable() {
        SeriesBuilder builder = Series.builder();
        record(MONDAY, 4, time -> time.getDayOfWeek().getValue()).stream()
                .map(reading -> reading.value() == 4 ? new Reading(reading.time(), 999, Quality.SUSPECT) : reading)
                .forEach(builder::add);
        Series series = builder.build();
        DiurnalProfile profile =
                DiurnalProfile.from(series, dates(MONDAY.plusDays(1), 3), LONDON, HOURLY.withMinimumDays(2));
        assertThat(profile.slots(DayClass.WEEKDAY).get(7).mean()).isEqualTo(2.5);
        assertThat(profile.days(DayClass.WEEKDAY)).isEqualTo(2);
        Series residuals = profile.residuals(series);
        assertThat(residuals.value(0)).isEqualTo(-1.5);
        assertThat(residuals.quality(residuals.size() - 1)).isEqualTo(Quality.SUSPECT);
    }

    @Test
    void refusesTooFewDaysAndWrongSettings() {
        Series series = record(MONDAY, 2, time -> 1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DiurnalProfile.from(series, dates(MONDAY, 9), LONDON))
                .withMessage("dates must have at least 3 days with usable readings in a class of days, "
                        + "was 9 dates with {WEEKDAY=2, WEEKEND=0}");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HOURLY.withSlot(Duration.ofMinutes(7)))
                .withMessage("slot must be whole seconds that divide 24 hours, was 7 min");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HOURLY.withSlot(Duration.ZERO))
                .withMessage("slot must be whole seconds that divide 24 hours, was 0 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> HOURLY.withMinimumDays(0))
                .withMessage("minimumDays must be at least 1, was 0");
        DiurnalProfile profile = DiurnalProfile.from(series, dates(MONDAY, 2), LONDON, HOURLY.withMinimumDays(1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> profile.mean(DayClass.SUNDAY))
                .withMessage("dayClass must be one of [WEEKDAY, WEEKEND], was SUNDAY");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> profile.band(Instant.EPOCH, 0.6, 0.9))
                .withMessage("lower must be in [0, 0.5], was 0.6");
    }

    @Test
    void theFinestProfileIsTheOneThatTheDaysBear() {
        ProfileRule three = HOURLY.withMinimumDays(3);
        Series fortnight = record(MONDAY, 14, DiurnalProfileTest::hourAndWeekend);
        assertThat(DiurnalProfile.finest(fortnight, dates(MONDAY, 14), LONDON, three))
                .hasValueSatisfying(profile -> {
                    assertThat(profile.days(DayClass.WEEKDAY)).isEqualTo(10);
                    assertThat(profile.days(DayClass.WEEKEND)).isEqualTo(4);
                });
        // One day of a weekend is no weekend: all six together.
        assertThat(DiurnalProfile.finest(fortnight, dates(MONDAY, 6), LONDON, three))
                .hasValueSatisfying(
                        profile -> assertThat(profile.mean()).isCloseTo((5 * 11.5 + 111.5) / 6, within(1e-12)));
        assertThat(DiurnalProfile.finest(fortnight, dates(MONDAY, 2), LONDON, three))
                .isEmpty();
    }

    private static Set<LocalDate> dates(LocalDate first, int count) {
        return new TreeSet<>(first.datesUntil(first.plusDays(count)).toList());
    }

    private static Series record(LocalDate first, int days, ToDoubleFunction<java.time.ZonedDateTime> value) {
        SeriesBuilder builder = Series.builder();
        Instant end = first.plusDays(days).atStartOfDay(LONDON).toInstant();
        for (Instant time = first.atStartOfDay(LONDON).toInstant();
                time.isBefore(end);
                time = time.plus(Duration.ofMinutes(5))) {
            builder.add(time, value.applyAsDouble(time.atZone(LONDON)));
        }
        return builder.build();
    }
}
