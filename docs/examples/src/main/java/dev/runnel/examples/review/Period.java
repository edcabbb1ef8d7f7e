package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/**
 * The days that a review is of, as for a weekly or monthly report; all of the record if neither end is given. What is usual
 * is learned from the whole record, and the watch runs over all of it: only what is told is cut to these days.
 *
 * @param from first day, on the clock of each site
 * @param to last day
 */
record Period(Optional<LocalDate> from, Optional<LocalDate> to) {
    static final Period WHOLE = new Period(Optional.empty(), Optional.empty());

    /** Reads both ends; a blank one is not given. */
    static Period of(String from, String to) {
        Period period = new Period(day("from", from), day("to", to));
        if (period.from.isPresent()
                && period.to.isPresent()
                && period.from.get().isAfter(period.to.get())) {
            throw new IllegalArgumentException("to must not lie before from, was " + to + " and " + from);
        }
        return period;
    }

    private static Optional<LocalDate> day(String name, String text) {
        if (text.isBlank()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text.strip()));
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException(name + " must be a date such as 2026-10-05, was \"" + text + "\"", e);
        }
    }

    boolean isWhole() {
        return from.isEmpty() && to.isEmpty();
    }

    /** Returns the part of a record that lies in it; empty if there is none. */
    Optional<Interval> of(Interval record, ZoneId zone) {
        Instant start = from.map(day -> day.atStartOfDay(zone).toInstant())
                .filter(time -> time.isAfter(record.start()))
                .orElse(record.start());
        Instant end = to.map(day -> day.plusDays(1).atStartOfDay(zone).toInstant())
                .filter(time -> time.isBefore(record.end()))
                .orElse(record.end());
        return start.isBefore(end) ? Optional.of(Interval.of(start, end)) : Optional.empty();
    }

    /** Tells the days, as they are given to the command. */
    String text() {
        return (from.isPresent() ? "from " + from.get() : "")
                + (from.isPresent() && to.isPresent() ? " " : "")
                + (to.isPresent() ? "to " + to.get() : "");
    }
}
