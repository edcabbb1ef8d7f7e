package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a {@link SpillCount} came to. Immutable and thread-safe.
 *
 * @param count counted spills: blocks with discharge
 * @param discharges discharges after merging, if any was asked for
 * @param duration time of discharge before any counting in blocks
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SpillTally(long count, long discharges, Duration duration) {
    /**
     * Checks that nothing is missing.
     *
     * @param count counted spills: blocks with discharge
     * @param discharges discharges after merging, if any was asked for
     * @param duration time of discharge before any counting in blocks
     */
    public SpillTally {
        Objects.requireNonNull(duration, "duration");
    }

    @Override
    public String toString() {
        return "SpillTally[" + count + " spills, " + discharges + " discharges, " + Text.duration(duration) + "]";
    }
}
