package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * When the highest level of a dry day would reach a level, if the rise since a finding began went on in a straight line.
 * Immutable and thread-safe.
 *
 * <p>What this is not: a forecast of rain, which fills a pipe long before that.
 *
 * @param level the level above the invert, m
 * @param time when the line reaches it
 * @param earliest the same with the upper 95 % limit of the slope
 * @param latest the same with the lower one
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record LevelForecast(double level, Instant time, Instant earliest, Instant latest) {
    /**
     * Checks that the times are there.
     *
     * @param level the level above the invert, m
     * @param time when the line reaches it
     * @param earliest the earliest time
     * @param latest the latest time
     */
    public LevelForecast {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(earliest, "earliest");
        Objects.requireNonNull(latest, "latest");
    }

    @Override
    public String toString() {
        return Text.fixed(level, 3) + " m about " + hour(time) + " (" + hour(earliest) + " to " + hour(latest) + ")";
    }

    private static Instant hour(Instant time) {
        return time.truncatedTo(ChronoUnit.HOURS);
    }
}
