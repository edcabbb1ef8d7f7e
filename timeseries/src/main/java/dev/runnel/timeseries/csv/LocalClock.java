package dev.runnel.timeseries.csv;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.List;

/** Turns the local times of a zone into UTC and tells those that a clock change repeats or skips. */
final class LocalClock {
    /** How many instants a local time stands for. */
    enum Occurrence {
        ONCE,
        TWICE,
        NEVER
    }

    private final ZoneRules rules;
    private long sureFrom = Long.MAX_VALUE;
    private long sureTo = Long.MIN_VALUE;
    private int offset;
    private int laterOffset;

    LocalClock(ZoneId zone) {
        rules = zone.getRules();
    }

    Occurrence resolve(long localSecond) {
        if (localSecond >= sureFrom && localSecond < sureTo) {
            return Occurrence.ONCE;
        }
        LocalDateTime local = LocalDateTime.ofEpochSecond(localSecond, 0, ZoneOffset.UTC);
        List<ZoneOffset> valid = rules.getValidOffsets(local);
        if (valid.isEmpty()) {
            return Occurrence.NEVER;
        }
        sureTo = Long.MIN_VALUE;
        offset = valid.get(0).getTotalSeconds();
        if (valid.size() == 2) {
            laterOffset = valid.get(1).getTotalSeconds();
            return Occurrence.TWICE;
        }
        remember(localSecond);
        return Occurrence.ONCE;
    }

    /** Between two clock changes the offset is the same: no need to ask again for each line. */
    private void remember(long localSecond) {
        Instant now = Instant.ofEpochSecond(localSecond - offset);
        ZoneOffsetTransition last = rules.previousTransition(now.plusNanos(1));
        ZoneOffsetTransition next = rules.nextTransition(now);
        sureFrom = last == null ? Long.MIN_VALUE : later(last);
        sureTo = next == null ? Long.MAX_VALUE : earlier(next);
    }

    private static long later(ZoneOffsetTransition change) {
        return change.toEpochSecond()
                + Math.max(
                        change.getOffsetBefore().getTotalSeconds(),
                        change.getOffsetAfter().getTotalSeconds());
    }

    private static long earlier(ZoneOffsetTransition change) {
        return change.toEpochSecond()
                + Math.min(
                        change.getOffsetBefore().getTotalSeconds(),
                        change.getOffsetAfter().getTotalSeconds());
    }

    /** The first local second of which it is known that it has the offset and no other; after the end if none is. */
    long sureFrom() {
        return sureFrom;
    }

    /** The end of those. */
    long sureTo() {
        return sureTo;
    }

    /** The offset of the local time resolved last; of the earlier pass if there are two. */
    int offset() {
        return offset;
    }

    /** The offset of the later pass. */
    int laterOffset() {
        return laterOffset;
    }
}
