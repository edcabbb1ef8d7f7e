package dev.runnel.hydraulics.evidence;

import java.time.LocalDate;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * When a drift seems to have begun: the last day of the level stretch in the least-squares fit of "level until then,
 * straight from then on". Immutable and thread-safe.
 *
 * <p>The range holds the days at which such a fit is not significantly worse at 5 %: those with a sum of squares up to
 * (1 + F/(n − 3)) times the least, F the 95 % point of the F distribution with 1 and n − 3 degrees of freedom, n the number
 * of days. It is approximate (the fit bends at the day) and takes the days as independent.
 *
 * <p>What this is not: the time of a cause. If {@code date} is the first day of the window, the drift began then or before.
 *
 * @param date the best day
 * @param earliest first day of the range; not after {@code date}
 * @param latest last day of the range; not before {@code date}
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Onset(LocalDate date, LocalDate earliest, LocalDate latest) {
    /**
     * Checks the order.
     *
     * @param date the best day
     * @param earliest first day of the range
     * @param latest last day of the range
     * @throws IllegalArgumentException if not earliest ≤ date ≤ latest
     */
    public Onset {
        Objects.requireNonNull(earliest, "earliest");
        Objects.requireNonNull(latest, "latest");
        Objects.requireNonNull(date, "date");
        if (date.isBefore(earliest) || date.isAfter(latest)) {
            throw new IllegalArgumentException("date must be from " + earliest + " to " + latest + ", was " + date);
        }
    }

    @Override
    public String toString() {
        return "Onset[" + date + ", from " + earliest + " to " + latest + "]";
    }
}
