package dev.runnel.timeseries;

import dev.runnel.internal.Text;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Instants as nanoseconds since 1970-01-01T00:00:00Z in a {@code long}, the form in which arrays hold time. The range
 * is 1677-09-21 to 2262-04-11; within it the conversion is exact both ways.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class EpochNanos {
    private static final long PER_SECOND = 1_000_000_000L;

    private EpochNanos() {}

    /**
     * Converts an instant.
     *
     * @param time the instant
     * @return nanoseconds since 1970-01-01T00:00:00Z
     * @throws IllegalArgumentException if it lies outside 1677-09-21 to 2262-04-11
     */
    public static long of(Instant time) {
        try {
            // Before 1970 the second and its fraction have opposite signs; start one second up to stay in range.
            if (time.getEpochSecond() < 0) {
                return Math.addExact(
                        Math.multiplyExact(time.getEpochSecond() + 1, PER_SECOND), time.getNano() - PER_SECOND);
            }
            return Math.addExact(Math.multiplyExact(time.getEpochSecond(), PER_SECOND), time.getNano());
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException("time must be from 1677-09-21 to 2262-04-11, was " + time, e);
        }
    }

    /**
     * Converts a duration.
     *
     * @param name parameter name, for the message
     * @param duration the duration; greater than 0
     * @return its nanoseconds
     * @throws IllegalArgumentException if it is 0, negative or longer than 292 years
     */
    public static long positive(String name, Duration duration) {
        long nanos = nonNegative(name, duration);
        if (nanos == 0) {
            throw new IllegalArgumentException(name + " must be longer than 0, was " + Text.exactDuration(duration));
        }
        return nanos;
    }

    /**
     * Converts a duration.
     *
     * @param name parameter name, for the message
     * @param duration the duration; 0 or longer
     * @return its nanoseconds
     * @throws IllegalArgumentException if it is negative or longer than 292 years
     */
    public static long nonNegative(String name, Duration duration) {
        Objects.requireNonNull(duration, name);
        if (duration.isNegative()) {
            throw new IllegalArgumentException(name + " must not be negative, was " + Text.exactDuration(duration));
        }
        try {
            return duration.toNanos();
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    name + " must be shorter than 292 years, was " + Text.exactDuration(duration), e);
        }
    }

    /**
     * Converts back.
     *
     * @param epochNanos nanoseconds since 1970-01-01T00:00:00Z
     * @return the instant
     */
    public static Instant toInstant(long epochNanos) {
        return Instant.ofEpochSecond(Math.floorDiv(epochNanos, PER_SECOND), Math.floorMod(epochNanos, PER_SECOND));
    }
}
