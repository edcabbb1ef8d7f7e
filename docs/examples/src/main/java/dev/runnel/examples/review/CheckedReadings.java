package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.GapCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.QualityReport;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.util.List;

/**
 * Readings with the verdicts of the tests. No value is changed: what is unusual stays in use and gets the
 * quality poor; what failed gets the quality suspect and is left out.
 *
 * @param lines where they were read, and what became of the lines
 * @param quality the readings with their quality, and what each test found
 * @param interval logging interval
 * @param longestGap longest time between two readings that is not a gap
 * @param gaps times without readings
 */
record CheckedReadings(
        ReadingFile.Readings lines,
        QualityReport quality,
        Duration interval,
        Duration longestGap,
        List<Interval> gaps) {
    private static final double GAP_INTERVALS = 2.5;

    /** Beside a spike its neighbours stand out by half as much: what fails must stand out twice as far. */
    private static final double FAIL_OVER_UNUSUAL_SPIKE = 2;

    private static final int FAIL_OVER_UNUSUAL_FLAT = 6;

    /** In a quarter of an hour a storm may come and go: only closer readings can tell a spike. */
    private static final Duration SPIKE_NEIGHBOURS = Duration.ofMinutes(5);

    static CheckedReadings depth(Site site, ReadingFile.Readings lines) {
        double spike = site.checks().depthSpike();
        QualityChecks check = QualityChecks.of(
                RangeCheck.of(0, site.checks().highestDepth()),
                SpikeCheck.of(spike, FAIL_OVER_UNUSUAL_SPIKE * spike).withMaximumGap(SPIKE_NEIGHBOURS));
        return of(site, lines, usualInterval(site, lines), check);
    }

    static CheckedReadings velocity(Site site, ReadingFile.Readings lines) {
        double fastest = site.checks().fastestVelocity();
        Duration interval = usualInterval(site, lines);
        int flat = (int)
                Math.max(2, Math.min(site.checks().flatLine().dividedBy(interval), 100_000 / FAIL_OVER_UNUSUAL_FLAT));
        QualityChecks check = QualityChecks.of(
                RangeCheck.of(-fastest, fastest).withUsual(0, fastest),
                FlatLineCheck.of(flat, FAIL_OVER_UNUSUAL_FLAT * flat, 0));
        return of(site, lines, interval, check);
    }

    private static CheckedReadings of(Site site, ReadingFile.Readings lines, Duration interval, QualityChecks check) {
        Duration longestGap =
                site.checks().longestGap().orElse(Duration.ofNanos(Math.round(interval.toNanos() * GAP_INTERVALS)));
        CheckedReadings readings = new CheckedReadings(
                lines,
                check.apply(lines.series()),
                interval,
                longestGap,
                GapCheck.longerThan(longestGap).over(lines.series()));
        if (readings.usable() == 0) {
            throw new IllegalArgumentException(lines.column().file() + ": must hold usable readings, of "
                    + lines.series().size() + " in column \"" + lines.header() + "\" "
                    + lines.series().count(Quality.MISSING) + " have no value and "
                    + readings.quality.flags("range").count(Verdict.FAIL) + " are out of range as "
                    + lines.unit().symbol() + "; are column and unit right?");
        }
        return readings;
    }

    private static Duration usualInterval(Site site, ReadingFile.Readings lines) {
        Series series = lines.series();
        if (!lines.hasLines()) {
            throw new IllegalArgumentException(lines.column().file() + ": no readings, a header and no line below it");
        }
        if (series.size() < 2) {
            String first = lines.report().issues().stream()
                    .findFirst()
                    .map(issue -> "; " + issue)
                    .orElse("");
            throw new IllegalArgumentException(lines.column().file() + ": must hold at least two readings, had "
                    + series.size() + " in " + lines.report().lines() + " lines" + first
                    + (lines.report().count(CsvIssue.Kind.UNREADABLE_TIME) > 0
                            ? "; \"time pattern = ...\" in " + SiteFile.NAME + " says how times are written"
                            : ""));
        }
        return site.checks().interval().orElseGet(series::usualStep);
    }

    Series series() {
        return quality.series();
    }

    /** Returns how many readings have a value that no test failed. */
    int usable() {
        Series series = series();
        return series.size() - series.count(Quality.MISSING) - series.count(Quality.SUSPECT);
    }
}
