package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Readings with the flags that the tests gave them. No value is changed.
 *
 * @param lines where they were read, and what became of the lines
 * @param series the readings, suspect where a test flagged them
 * @param flags how many readings each test flagged
 * @param interval logging interval
 * @param longestGap longest time between two readings that is not a gap
 * @param gaps times without readings
 */
record CheckedReadings(
        ReadingFile.Readings lines,
        Series series,
        List<Flag> flags,
        Duration interval,
        Duration longestGap,
        List<Interval> gaps) {
    private static final double GAP_INTERVALS = 2.5;

    /**
     * What a test flagged.
     *
     * @param reason why, in words
     * @param count how many readings
     * @param first the first of them, position in the series
     */
    record Flag(String reason, int count, int first) {}

    static CheckedReadings depth(Site site, ReadingFile.Readings lines) {
        return of(site, lines, QualityChecks.depth(site.checks(), lines.series()));
    }

    static CheckedReadings velocity(Site site, ReadingFile.Readings lines) {
        return of(site, lines, QualityChecks.velocity(site.checks(), lines.series()));
    }

    private static CheckedReadings of(Site site, ReadingFile.Readings lines, QualityChecks checks) {
        Series series = lines.series();
        if (series.size() < 2) {
            throw new IllegalArgumentException(lines.column().file() + ": must hold at least two readings, had "
                    + series.size() + " of " + lines.report().lines() + " lines; " + lines.report());
        }
        Duration interval = site.checks().interval().orElseGet(() -> usualInterval(series));
        Duration longestGap =
                site.checks().longestGap().orElse(Duration.ofNanos(Math.round(interval.toNanos() * GAP_INTERVALS)));
        return new CheckedReadings(
                lines, checks.series(), checks.flags(), interval, longestGap, gaps(series, longestGap));
    }

    /** The median of the times between readings: no gap and no stray line moves it. */
    private static Duration usualInterval(Series series) {
        double[] steps = new double[series.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = series.epochNanos(i + 1) - series.epochNanos(i);
        }
        return Duration.ofNanos(Math.round(Statistics.of(steps).median()));
    }

    private static List<Interval> gaps(Series series, Duration longest) {
        List<Interval> gaps = new ArrayList<>();
        for (int i = 1; i < series.size(); i++) {
            if (series.epochNanos(i) - series.epochNanos(i - 1) > longest.toNanos()) {
                gaps.add(Interval.of(series.time(i - 1), series.time(i)));
            }
        }
        return gaps;
    }
}
