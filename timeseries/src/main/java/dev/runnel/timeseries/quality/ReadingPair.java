package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Reading;
import java.time.Instant;
import org.apiguardian.api.API;

/**
 * A reading to be judged and one of another quantity or site at the same time. Immutable and thread-safe.
 *
 * @param reading the reading to be judged
 * @param companion the other one; missing where there is none
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ReadingPair(Reading reading, Reading companion) {
    /**
     * Checks that both have the same time.
     *
     * @param reading the reading to be judged
     * @param companion the other one
     * @throws IllegalArgumentException if the times differ
     */
    public ReadingPair {
        if (!reading.time().equals(companion.time())) {
            throw new IllegalArgumentException(
                    "companion must be of the time of the reading, " + reading.time() + ", was of " + companion.time());
        }
    }

    /**
     * Returns the pair.
     *
     * @param reading the reading to be judged
     * @param companion the other one, of the same time
     * @return the pair
     * @throws IllegalArgumentException if the times differ
     */
    public static ReadingPair of(Reading reading, Reading companion) {
        return new ReadingPair(reading, companion);
    }

    /**
     * Returns the time of both.
     *
     * @return the instant
     */
    public Instant time() {
        return reading.time();
    }
}
