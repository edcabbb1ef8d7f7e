package dev.runnel.rainfall.event;

import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * When a day of rain begins and by which date it goes. Immutable and thread-safe.
 *
 * <p>Rain gauges that are read by hand are read in the morning, in Britain at 09:00 UTC, and what is found is credited to the day before
 * (common practice); sewers are billed from midnight to midnight. A storm at night falls into two days of one rule and one of the other, so
 * daily totals of two rules cannot be compared.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainDay {
    private final ZoneId zone;
    private final LocalTime start;
    private final boolean isNamedByEnd;

    private RainDay(ZoneId zone, LocalTime start, boolean isNamedByEnd) {
        this.zone = Objects.requireNonNull(zone, "zone");
        this.start = Objects.requireNonNull(start, "start");
        this.isNamedByEnd = isNamedByEnd;
    }

    /**
     * Returns the day from midnight to midnight.
     *
     * @param zone time zone of the midnights
     * @return the day
     */
    public static RainDay midnight(ZoneId zone) {
        return startingAt(LocalTime.MIDNIGHT, zone);
    }

    /**
     * Returns the day from 09:00 UTC to 09:00 UTC, named by the day in which it begins.
     *
     * @return the day
     */
    public static RainDay nineToNine() {
        return startingAt(LocalTime.of(9, 0), ZoneOffset.UTC);
    }

    /**
     * Returns the day from any time to the same time of the next day, named by the day in which it begins.
     *
     * @param start local time at which it begins; where clocks skip it, the moment at which they go on
     * @param zone time zone
     * @return the day
     */
    public static RainDay startingAt(LocalTime start, ZoneId zone) {
        return new RainDay(zone, start, false);
    }

    /**
     * Returns the same day named by the date on which it ends, the day of reading.
     *
     * @return the day
     */
    public RainDay withNameOfEnd() {
        return new RainDay(zone, start, !start.equals(LocalTime.MIDNIGHT));
    }

    /**
     * Returns the time of one day.
     *
     * @param date its name
     * @return from its begin to that of the next; 23 or 25 h where clocks change
     */
    public Interval interval(LocalDate date) {
        LocalDate first = isNamedByEnd ? date.minusDays(1) : date;
        return Interval.of(begin(first), begin(first.plusDays(1)));
    }

    private Instant begin(LocalDate date) {
        return date.atTime(start).atZone(zone).toInstant();
    }

    /**
     * Returns the day that holds an instant.
     *
     * @param time the instant
     * @return the name of the day
     */
    public LocalDate dateOf(Instant time) {
        Objects.requireNonNull(time, "time");
        LocalDate date = LocalDate.ofInstant(time, zone).minusDays(1);
        while (!interval(date).contains(time)) {
            date = date.plusDays(1);
        }
        return date;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RainDay that
                && zone.equals(that.zone)
                && start.equals(that.start)
                && isNamedByEnd == that.isNamedByEnd;
    }

    @Override
    public int hashCode() {
        return Objects.hash(zone, start, isNamedByEnd);
    }

    @Override
    public String toString() {
        return "RainDay[from " + start + " in " + zone + (isNamedByEnd ? ", named by its end]" : "]");
    }
}
