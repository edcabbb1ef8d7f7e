package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * A time in which a finding stood. What comes and goes is one finding with several of these: the readings within them are
 * what it tells of, those between are as usual. Immutable and thread-safe.
 *
 * @param from when it began, as good as the readings tell
 * @param to when things were as usual again; empty while they are not
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record FindingStretch(Instant from, Optional<Instant> to) {
    /**
     * Checks that it does not end before it begins.
     *
     * @param from when it began
     * @param to when things were as usual again, if they are
     * @throws IllegalArgumentException if {@code to} is before {@code from}
     */
    public FindingStretch {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        if (to.map(end -> end.isBefore(from)).orElse(false)) {
            throw new IllegalArgumentException("to must not be before " + from + ", was " + to.orElseThrow());
        }
    }

    /**
     * Returns whether it has not ended.
     *
     * @return whether the finding still stands
     */
    public boolean isOpen() {
        return to.isEmpty();
    }

    /**
     * Returns the time it lasts or lasted.
     *
     * @param end the end of what is known, for a stretch that is open
     * @return from its beginning to its end or that end
     */
    public Interval interval(Instant end) {
        Objects.requireNonNull(end, "end");
        Instant last = to.orElse(end);
        return Interval.of(from, last.isBefore(from) ? from : last);
    }

    @Override
    public String toString() {
        return "FindingStretch[" + from + to.map(end -> " to " + end).orElse(", open") + "]";
    }
}
