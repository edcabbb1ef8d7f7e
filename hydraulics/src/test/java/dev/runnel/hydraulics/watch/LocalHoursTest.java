package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LocalHoursTest {
    private static LocalHours in(ZoneId zone) {
        return new LocalHours(zone, Set.of(DayOfWeek.SUNDAY), Set.of(LocalDate.of(2026, 1, 1)));
    }

    /** Days and middles of hours, east and west of Greenwich, and by quarters of an hour. */
    @Test
    void civilDaysAndHours() {
        LocalHours utc = in(ZoneOffset.UTC);
        assertThat(utc.day(0)).isZero();
        assertThat(utc.day(23)).isZero();
        assertThat(utc.day(24)).isEqualTo(1);
        assertThat(utc.day(-1)).isEqualTo(-1);
        assertThat(utc.hourOfDay(0)).isEqualTo(0.5);
        assertThat(utc.hourOfDay(23)).isEqualTo(23.5);
        assertThat(utc.hourOfDay(-1)).isEqualTo(23.5);
        LocalHours east = in(ZoneOffset.ofHoursMinutes(5, 45));
        assertThat(east.day(18)).isZero();
        assertThat(east.day(19)).isEqualTo(1);
        assertThat(east.hourOfDay(0)).isEqualTo(6.25);
        // Begins at 23:45, its middle is a quarter past midnight.
        assertThat(east.hourOfDay(18)).isEqualTo(0.25);
        assertThat(in(ZoneOffset.ofHoursMinutes(5, 30)).hourOfDay(18)).isZero();
        assertThat(in(ZoneOffset.ofHours(-3)).day(2)).isEqualTo(-1);
        assertThat(in(ZoneOffset.ofHours(-3)).hourOfDay(2)).isEqualTo(23.5);
    }

    @Test
    void firstHours() {
        assertThat(in(ZoneOffset.UTC).firstHour(3)).isEqualTo(72);
        assertThat(in(ZoneOffset.ofHours(2)).firstHour(3)).isEqualTo(70);
        assertThat(in(ZoneOffset.ofHours(-3)).firstHour(3)).isEqualTo(75);
        assertThat(in(ZoneOffset.ofHoursMinutes(5, 45)).firstHour(0)).isEqualTo(-6);
    }

    /** The clock goes forward on 29 March 2026 at 01:00 UTC: the day has 23 hours. */
    @Test
    void aShortDay() {
        LocalHours local = in(ZoneId.of("Europe/London"));
        long day = LocalDate.of(2026, 3, 29).toEpochDay();
        assertThat(local.firstHour(day)).isEqualTo(24 * day);
        assertThat(local.firstHour(day + 1)).isEqualTo(24 * day + 23);
        assertThat(local.hourOfDay(24 * day)).isEqualTo(0.5);
        assertThat(local.hourOfDay(24 * day + 1)).isEqualTo(2.5);
        assertThat(local.day(24 * day + 23)).isEqualTo(day + 1);
    }

    @Test
    void restDaysAndHolidays() {
        LocalHours utc = in(ZoneOffset.UTC);
        long sunday = LocalDate.of(2026, 1, 4).toEpochDay();
        assertThat(utc.isRest(24 * sunday)).isTrue();
        assertThat(utc.isRest(24 * sunday + 23)).isTrue();
        assertThat(utc.isRest(24 * sunday - 1)).isFalse();
        assertThat(utc.isRest(24 * sunday + 24)).isFalse();
        assertThat(utc.isRest(24 * (sunday - 3))).as("New Year's Day").isTrue();
        assertThat(utc.isRest(24 * (sunday - 2))).isFalse();
    }
}
