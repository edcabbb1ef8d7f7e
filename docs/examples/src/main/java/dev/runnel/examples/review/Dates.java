package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * Dates as the page shows them, in the local time of a site. The year stands in the line of the record; where the record
 * is so long that a date without it could be of two years, it stands with every date.
 */
final class Dates {
    /** A little less than a year: the same day and month cannot come twice in it. */
    private static final Duration WITHOUT_YEAR = Duration.ofDays(300);

    private final ZoneId zone;
    private final DateTimeFormatter time;
    private final DateTimeFormatter day;
    private final DateTimeFormatter ahead;

    private Dates(ZoneId zone, String date) {
        this.zone = zone;
        this.day = DateTimeFormatter.ofPattern(date, Locale.ENGLISH);
        this.ahead =
                DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.ENGLISH).withZone(zone);
        this.time = DateTimeFormatter.ofPattern(date + " HH:mm", Locale.ENGLISH).withZone(zone);
    }

    static Dates in(ZoneId zone, Interval record) {
        return new Dates(zone, record.duration().compareTo(WITHOUT_YEAR) > 0 ? "EEE d MMM yyyy" : "EEE d MMM");
    }

    ZoneId zone() {
        return zone;
    }

    /** For example {@code Sat 17 Oct 19:32}, or {@code Sat 17 Oct 2026 19:32} in a long record. */
    String time(Instant instant) {
        return time.format(instant).replace(' ', Page.BOUND);
    }

    /** A day beyond the record, with its year: for example {@code Sun 17 Oct 2027}. */
    String dayAhead(Instant instant) {
        return ahead.format(instant).replace(' ', Page.BOUND);
    }

    /** For example {@code Sat 17 Oct}, or {@code Sat 17 Oct 2026} in a long record. */
    String day(LocalDate date) {
        return day.format(date).replace(' ', Page.BOUND);
    }
}
