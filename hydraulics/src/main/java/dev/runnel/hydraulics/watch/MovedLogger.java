package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.Optional;

/**
 * A gap in the stamps as it is left where somebody moves a logger by an hour some days after the civil clocks went forward.
 * By itself it may be any gap.
 *
 * @param change when the civil clocks changed, ns since 1970
 * @param gapFrom the last stamp before the gap, ns since 1970
 * @param gap length of the gap, ns
 */
record MovedLogger(long change, long gapFrom, long gap) {
    private static final long MINUTE = 60_000_000_000L;
    private static final long HOUR = SiteHour.NANOS;
    private static final long LARGEST_STEP = 20 * MINUTE;

    /** Readings that may be lost while somebody works at the logger. */
    private static final long LONGEST_WORK = 45 * MINUTE;

    /** A logger that follows the civil clock by itself does so at once. */
    private static final long LEAST_LATE = 12 * HOUR;

    private static final long LONGEST_LATE = 8 * 24 * HOUR;

    /** What the gap that ends in an hour may be. */
    static Optional<MovedLogger> of(SiteHour hour, ZoneRules civil) {
        boolean byAnHour = hour.gapStep > 0
                && hour.gapStep <= LARGEST_STEP
                && hour.gap >= HOUR + hour.gapStep / 2
                && hour.gap <= HOUR + LONGEST_WORK;
        if (!byAnHour || civil.isFixedOffset()) {
            return Optional.empty();
        }
        Instant from = EpochNanos.toInstant(hour.gapFrom);
        ZoneOffsetTransition last = civil.previousTransition(from);
        if (last == null || !last.isGap() || !last.getDuration().equals(Duration.ofHours(1))) {
            return Optional.empty();
        }
        long change = EpochNanos.of(last.getInstant());
        long late = hour.gapFrom - change;
        return late >= LEAST_LATE && late <= LONGEST_LATE
                ? Optional.of(new MovedLogger(change, hour.gapFrom, hour.gap))
                : Optional.empty();
    }

    long[] counts() {
        return new long[] {change, gapFrom, gap};
    }

    static Optional<MovedLogger> ofCounts(long[] counts) {
        return counts.length == 0 ? Optional.empty() : Optional.of(new MovedLogger(counts[0], counts[1], counts[2]));
    }
}
