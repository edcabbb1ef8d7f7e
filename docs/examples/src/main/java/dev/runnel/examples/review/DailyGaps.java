package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Gaps that come at the same hours day after day: a logger that sleeps at night, or a battery that a cold night or a dark one empties.
 *
 * @param gaps the longest row of them, in order
 */
record DailyGaps(List<Interval> gaps) {
    /** Chosen here, as the limits below: fewer come so by chance. */
    private static final int FEWEST = 5;

    private static final Duration DAY = Duration.ofDays(1);

    /** A gap begins this near to the hour of the one before; a day or two may be without one. */
    private static final Duration NEAR = Duration.ofMinutes(45);

    private static final int MOST_DAYS = 3;

    static Optional<DailyGaps> of(List<Interval> all, Duration least) {
        List<Interval> longest = List.of();
        List<Interval> row = new ArrayList<>();
        for (Interval gap : all) {
            if (gap.duration().compareTo(least) <= 0 || gap.duration().compareTo(DAY) >= 0) {
                continue;
            }
            if (!row.isEmpty() && !follows(row.get(row.size() - 1), gap)) {
                row.clear();
            }
            row.add(gap);
            longest = row.size() > longest.size() ? List.copyOf(row) : longest;
        }
        return longest.size() >= FEWEST ? Optional.of(new DailyGaps(longest)) : Optional.empty();
    }

    private static boolean follows(Interval before, Interval gap) {
        Duration apart = Duration.between(before.start(), gap.start());
        long days = Math.round(apart.toMinutes() / (double) DAY.toMinutes());
        return days >= 1
                && days <= MOST_DAYS
                && apart.minus(DAY.multipliedBy(days)).abs().compareTo(NEAR) <= 0;
    }

    /** The first of them; the others are much alike. */
    Interval first() {
        return gaps.get(0);
    }

    Interval last() {
        return gaps.get(gaps.size() - 1);
    }
}
