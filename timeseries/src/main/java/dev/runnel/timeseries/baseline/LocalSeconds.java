package dev.runnel.timeseries.baseline;

import dev.runnel.timeseries.EpochNanos;
import java.time.Instant;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;

/**
 * Local time of instants in a zone; between two clock changes the rules are asked once. Thread-safe: what was asked last is one
 * object that never changes.
 */
final class LocalSeconds {
    private static final long PER_SECOND = 1_000_000_000L;

    private final ZoneRules rules;
    private Span span = new Span(Long.MAX_VALUE, Long.MIN_VALUE, 0);

    /** The seconds since 1970 from one change to the next, in which the offset is known. */
    private record Span(long from, long to, int offset) {}

    LocalSeconds(ZoneId zone) {
        rules = zone.getRules();
    }

    /** Seconds from 1970-01-01T00:00 local time to an instant, as if every day had 86 400. */
    long of(long epochNanos) {
        long second = Math.floorDiv(epochNanos, PER_SECOND);
        Span known = span;
        if (second < known.from || second >= known.to) {
            known = ask(EpochNanos.toInstant(epochNanos));
            span = known;
        }
        return second + known.offset;
    }

    private Span ask(Instant time) {
        // The change itself belongs to what follows it.
        ZoneOffsetTransition last = rules.previousTransition(time.plusNanos(1));
        ZoneOffsetTransition next = rules.nextTransition(time);
        return new Span(
                last == null ? Long.MIN_VALUE : last.toEpochSecond(),
                next == null ? Long.MAX_VALUE : next.toEpochSecond(),
                rules.getOffset(time).getTotalSeconds());
    }
}
