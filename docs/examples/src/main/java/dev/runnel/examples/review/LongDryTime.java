package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * A time without rain that is far longer than any other of the record: a drought, or a gauge that was dead and came back. Where the
 * sewer hardly answers to rain nothing else can tell of it.
 *
 * @param time the time, between two wet steps
 * @param next the longest of the others
 */
record LongDryTime(Interval time, Duration next) {
    /** Chosen here, as the limits below: a shorter one is weather. */
    private static final Duration LEAST = Duration.ofDays(14);

    /** A shorter one stands beside the rain, a longer one is to be looked at. */
    private static final Duration VERY_LONG = Duration.ofDays(21);

    private static final int TIMES_LONGER = 2;

    /** Other times of half a day and longer without rain that say what is usual. */
    private static final int FEWEST = 5;

    private static final Duration APART = Duration.ofHours(12);

    boolean isVeryLong() {
        return time.duration().compareTo(VERY_LONG) > 0;
    }

    /** Looks between the wet steps of a record; what is not known ends a dry time. */
    static Optional<LongDryTime> of(RegularSeries rain) {
        Interval longest = Interval.of(Instant.EPOCH, Duration.ZERO);
        Duration next = Duration.ZERO;
        int times = 0;
        int wet = -1;
        for (int i = 0; i < rain.size(); i++) {
            double depth = rain.value(i);
            if (Double.isNaN(depth)) {
                wet = -1;
            } else if (depth > 0) {
                Interval dry =
                        Interval.of(wet < 0 ? rain.time(i) : rain.interval(wet).end(), rain.time(i));
                times += dry.duration().compareTo(APART) >= 0 ? 1 : 0;
                if (dry.duration().compareTo(longest.duration()) > 0) {
                    next = longest.duration();
                    longest = dry;
                } else if (dry.duration().compareTo(next) > 0) {
                    next = dry.duration();
                }
                wet = i;
            }
        }
        return times > FEWEST
                        && longest.duration().compareTo(LEAST) > 0
                        && longest.duration().compareTo(next.multipliedBy(TIMES_LONGER)) > 0
                ? Optional.of(new LongDryTime(longest, next))
                : Optional.empty();
    }
}
