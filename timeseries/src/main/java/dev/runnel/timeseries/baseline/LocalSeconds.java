package dev.runnel.timeseries.baseline;

import dev.runnel.timeseries.EpochNanos;
import java.time.Instant;
import java.time.ZoneId;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;

/** Local time of instants in a zone; between two clock changes the rules are asked once. Not thread-safe. */
final class LocalSeconds {
    private static final long PER_SECOND = 1_000_000_000L;

    private final ZoneRules rules;
    /** The seconds since 1970 from one change to the next, in which the offset is known. */
    private long from = Long.MAX_VALUE;

    private long to = Long.MIN_VALUE;
    private int offset;

    LocalSeconds(ZoneId zone) {
        rules = zone.getRules();
    }

    /** Seconds from 1970-01-01T00:00 local time to an instant, as if every day had 86 400. */
    long of(long epochNanos) {
        long second = Math.floorDiv(epochNanos, PER_SECOND);
        if (second < from || second >= to) {
            ask(EpochNanos.toInstant(epochNanos));
        }
        return second + offset;
    }

    private void ask(Instant time) {
        offset = rules.getOffset(time).getTotalSeconds();
        // The change itself belongs to what follows it.
        ZoneOffsetTransition last = rules.previousTransition(time.plusNanos(1));
        ZoneOffsetTransition next = rules.nextTransition(time);
        from = last == null ? Long.MIN_VALUE : last.toEpochSecond();
        to = next == null ? Long.MAX_VALUE : next.toEpochSecond();
    }
}
