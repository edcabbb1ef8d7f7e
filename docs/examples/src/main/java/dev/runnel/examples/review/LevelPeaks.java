package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.balance.Discharges;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The highest level of the readings that nothing speaks against, and a higher one of readings that a finding puts in doubt: which of
 * the two was the water nobody knows from here, so both are said.
 *
 * @param sound m above the invert; empty if no reading is free of doubt
 * @param inARow the highest that two sound readings in a row reached, m; NaN if there are none
 * @param doubted m above the invert, higher than the other; empty if there is none
 * @param median of the levels that nothing speaks against, m; of all if there are none of these
 * @param isPart whether that leaves readings out
 */
record LevelPeaks(OptionalDouble sound, double inARow, OptionalDouble doubted, double median, boolean isPart) {
    static LevelPeaks of(FlowFindings flow, Doubts doubts, Duration longestGap) {
        double highest = flow.levels().maximum();
        Series levels = flow.record().level();
        Series left = doubts.surelySound(levels);
        if (left.equals(levels)) {
            return new LevelPeaks(
                    known(highest),
                    InARow.highest(levels, longestGap),
                    OptionalDouble.empty(),
                    flow.levels().median(),
                    false);
        }
        Statistics known = left.statistics();
        boolean isPart = known.count() > 0 && known.count() < flow.levels().count();
        return new LevelPeaks(
                known(known.maximum()),
                InARow.highest(left, longestGap),
                known.maximum() >= highest ? OptionalDouble.empty() : known(highest),
                isPart ? known.median() : flow.levels().median(),
                isPart);
    }

    private static OptionalDouble known(double level) {
        return Double.isNaN(level) ? OptionalDouble.empty() : OptionalDouble.of(level);
    }

    /** What to say behind a depth of an instant: nothing, or which finding puts it in doubt. */
    static String mark(SiteReview review, Instant time) {
        return review.doubts()
                .doubtOf(false, time)
                .map(finding -> ", a depth that finding " + finding.number() + " puts in doubt")
                .orElse("");
    }

    /** Share of the time of periods above a level that rests on doubtful depths. */
    static double doubtfulShare(SiteReview review, List<SurchargePeriod> periods) {
        List<Interval> times = periods.stream().map(SurchargePeriod::interval).toList();
        return review.doubts()
                .shareOfDepth(Discharges.widened(times, review.data().depth().interval()));
    }

    /** Whether most of a period above a level rests on doubtful depths. */
    static boolean isDoubtful(SiteReview review, SurchargePeriod period) {
        return doubtfulShare(review, List.of(period)) > Doubts.MOST;
    }
}
