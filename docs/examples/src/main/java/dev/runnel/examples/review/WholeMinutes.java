package dev.runnel.examples.review;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Times of findings as they are written to files: what was estimated is not known to the nanosecond. */
public final class WholeMinutes {
    private WholeMinutes() {}

    /**
     * Returns a time to the minute.
     *
     * @param time the time
     * @return the begin of its minute
     */
    public static Instant of(Instant time) {
        return time.truncatedTo(ChronoUnit.MINUTES);
    }
}
