package dev.runnel.timeseries.change;

import dev.runnel.internal.Text;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * That a detector crossed its limit. Immutable and thread-safe.
 *
 * @param time time of the reading that crossed it
 * @param since time of the reading with which the statistic last left 0, or crossed its centre: the change is not earlier than
 *     that by the scheme's own account
 * @param side whether the values went up or down
 * @param statistic the statistic beyond the limit, in the unit of the rule
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ChangeSignal(Instant time, Instant since, Side side, double statistic) {
    /** Which way the values went. */
    public enum Side {
        /** Up. */
        UP,
        /** Down. */
        DOWN
    }

    /**
     * Checks that all is there.
     *
     * @param time time of the reading that crossed the limit
     * @param since time from which the statistic rose
     * @param side whether the values went up or down
     * @param statistic the statistic beyond the limit
     */
    public ChangeSignal {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(since, "since");
        Objects.requireNonNull(side, "side");
    }

    @Override
    public String toString() {
        return "ChangeSignal[" + side + " at " + time + ", since " + since + ", " + Text.significant(statistic, 4)
                + "]";
    }
}
