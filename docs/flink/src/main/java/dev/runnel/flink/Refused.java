package dev.runnel.flink;

import java.util.Map;
import java.util.Objects;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apiguardian.api.API;

/**
 * An event that no machine has seen, and why: the side output of {@link RuleFunction}.
 *
 * @param site the site
 * @param event the event
 * @param reason why it was refused
 * @param message what was wrong, in words
 * @param number how many events of the site have been refused since its record began, this one included; 1 or more. It is part
 *     of the state, so it goes on over restarts
 * @param <E> the events of the stream
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Refused<E>(String site, E event, Reason reason, String message, long number) {
    /** Why an event is refused. */
    public enum Reason {
        /** It came later than the bound allows: events after it have been taken. */
        LATE,
        /** An event of the same site and time is already there. */
        SAME_TIME,
        /** The event is no input of the rule. */
        INVALID
    }

    /**
     * Checks that nothing is missing.
     *
     * @param site the site
     * @param event the event
     * @param reason why it was refused
     * @param message what was wrong
     * @param number how many of the site so far
     */
    public Refused {
        Objects.requireNonNull(site, "site");
        Objects.requireNonNull(event, "event");
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(message, "message");
    }

    /** The type for Flink, which cannot see what E is. */
    @SuppressWarnings("unchecked")
    static <E> TypeInformation<Refused<E>> type(TypeInformation<E> events) {
        Map<String, TypeInformation<?>> fields = Map.of(
                "site",
                Types.STRING,
                "event",
                events,
                "reason",
                Types.ENUM(Reason.class),
                "message",
                Types.STRING,
                "number",
                Types.LONG);
        return Types.POJO((Class<Refused<E>>) (Class<?>) Refused.class, fields);
    }
}
