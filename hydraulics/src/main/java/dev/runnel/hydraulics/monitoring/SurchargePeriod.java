package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A time during which every usable reading stood above a level. Immutable and thread-safe.
 *
 * <p>The interval runs from the first reading seen above to the first seen no longer above. Where the record does not show
 * the start or the end, the interval stops at the outermost reading above, and its length is the least the period can have
 * had.
 *
 * @param interval when; empty if a single reading between two gaps was all that was seen
 * @param peakAbove highest reading above the level, m; greater than 0
 * @param peakTime when the highest reading was taken, the first of equals
 * @param readings number of readings above the level
 * @param startSeen whether a reading not above it came before, within the longest allowed gap
 * @param endSeen whether a reading not above it came after, within the longest allowed gap
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SurchargePeriod(
        Interval interval, double peakAbove, Instant peakTime, int readings, boolean startSeen, boolean endSeen) {
    /**
     * Checks the parts.
     *
     * @param interval when
     * @param peakAbove highest reading above the level, m; greater than 0
     * @param peakTime when the highest reading was taken
     * @param readings number of readings above the level; at least 1
     * @param startSeen whether the record shows the start
     * @param endSeen whether the record shows the end
     * @throws IllegalArgumentException if the peak or the number of readings is out of range
     */
    public SurchargePeriod {
        Objects.requireNonNull(interval, "interval");
        Objects.requireNonNull(peakTime, "peakTime");
        Require.positive("peakAbove", peakAbove, "m");
        Require.atLeast("readings", readings, 1);
    }

    /**
     * Returns the length of the interval.
     *
     * @return duration; the least it can have been unless {@link #isComplete()}
     */
    public Duration duration() {
        return interval.duration();
    }

    /**
     * Tells whether the record shows both ends.
     *
     * @return true if it does
     */
    public boolean isComplete() {
        return startSeen && endSeen;
    }

    @Override
    public String toString() {
        return "SurchargePeriod[" + interval + ", peak " + Text.fixed(peakAbove, 3) + " m above at " + peakTime + ", "
                + readings + " readings" + (startSeen ? "" : ", start not seen") + (endSeen ? "" : ", end not seen")
                + "]";
    }
}
