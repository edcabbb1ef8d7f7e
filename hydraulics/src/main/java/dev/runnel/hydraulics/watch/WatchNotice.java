package dev.runnel.hydraulics.watch;

import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Something the watch has just learned about a finding. Immutable and thread-safe.
 *
 * @param kind what happened to the finding
 * @param time when it became known: the end of the hour or block that showed it
 * @param finding the finding as it stands
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record WatchNotice(Kind kind, Instant time, Finding finding) {
    /** What happened to a finding. */
    public enum Kind {
        /** It is new. */
        FOUND,
        /** It is open and has another name, shape or return than before. */
        CHANGED,
        /** It had closed and is back. */
        RETURNED,
        /** Things are as usual again. */
        CLOSED,
        /** It was open when the record ended. */
        STANDING,
        /** No finding against the readings, but worth knowing beside them; its number is 0, and it is told once. */
        NOTED
    }

    /**
     * Checks that all is there.
     *
     * @param kind what happened to the finding
     * @param time when it became known
     * @param finding the finding as it stands
     */
    public WatchNotice {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(finding, "finding");
    }

    @Override
    public String toString() {
        return kind + " " + time + ": " + finding;
    }
}
