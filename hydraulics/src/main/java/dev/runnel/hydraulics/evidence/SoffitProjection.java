package dev.runnel.hydraulics.evidence;

import java.time.LocalDate;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * When the dry-day median level would reach the soffit if its drift went on as it is: from the line of Theil and Sen through
 * the days since the onset, earliest and latest from the 95 % interval of its slope. Immutable and thread-safe.
 *
 * <p>What this is not: a forecast. Obstructions grow, wash out or break loose; rain fills a pipe long before the dry-day
 * level does. The interval holds the uncertainty of the slope only.
 *
 * @param date day on which the line reaches the soffit
 * @param earliest day for the steepest slope of the interval; not after {@code date}
 * @param latest day for the flattest slope of the interval; not before {@code date}
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SoffitProjection(LocalDate date, LocalDate earliest, LocalDate latest) {
    /**
     * Checks the order.
     *
     * @param date day on which the line reaches the soffit
     * @param earliest day for the steepest slope
     * @param latest day for the flattest slope
     * @throws IllegalArgumentException if not earliest ≤ date ≤ latest
     */
    public SoffitProjection {
        Objects.requireNonNull(earliest, "earliest");
        Objects.requireNonNull(latest, "latest");
        Objects.requireNonNull(date, "date");
        if (date.isBefore(earliest) || date.isAfter(latest)) {
            throw new IllegalArgumentException("date must be from " + earliest + " to " + latest + ", was " + date);
        }
    }

    @Override
    public String toString() {
        return "SoffitProjection[" + date + ", from " + earliest + " to " + latest + " if the drift goes on]";
    }
}
