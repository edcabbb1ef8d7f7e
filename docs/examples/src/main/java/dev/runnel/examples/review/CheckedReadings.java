package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.quality.GapCheck;
import dev.runnel.timeseries.quality.QualityReport;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

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
    static CheckedReadings depth(Site site, ReadingFile.Readings lines, Optional<CheckedReadings> velocity) {
        return of(
                site,
                lines,
                usualInterval(site, lines),
                depth -> velocity.map(beside -> ReadingChecks.depth(site, depth, beside.series()))
                        .orElseGet(() -> ReadingChecks.depth(site).apply(depth)));
    }

    static CheckedReadings velocity(Site site, ReadingFile.Readings lines, Series depth) {
        Duration interval = usualInterval(site, lines);
        return of(site, lines, interval, velocity -> ReadingChecks.velocity(site, interval, velocity, depth));
    }

    private static CheckedReadings of(
            Site site, ReadingFile.Readings lines, Duration interval, Function<Series, QualityReport> tests) {
        Duration longestGap = ReadingChecks.longestGap(site, interval);
        CheckedReadings readings = new CheckedReadings(
                lines,
                ReadingChecks.atTheEnd(site, tests.apply(lines.series())),
                interval,
                longestGap,
                GapCheck.longerThan(longestGap).over(lines.series()));
        if (readings.usable() == 0) {
            throw new IllegalArgumentException(lines.column().file() + ": must hold usable readings, of "
                    + lines.series().size() + " in column \"" + lines.header() + "\" "
                    + lines.series().count(Quality.MISSING) + " have no value and "
                    + readings.quality.flags("range").count(Verdict.FAIL) + " are out of range as "
                    + lines.unit().symbol() + "; are column and unit right?"
                    + Hints.onNumbers(lines.report()));
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
                    + Hints.onTimes(lines.report()));
        }
        return site.checks().interval().orElseGet(series::usualStep);
    }

    /** Returns the readings of a time with the verdicts they have. */
    CheckedReadings within(Interval time) {
        return new CheckedReadings(
                lines.within(time),
                quality.slice(time),
                interval,
                longestGap,
                gaps.stream()
                        .filter(gap ->
                                gap.start().isBefore(time.end()) && gap.end().isAfter(time.start()))
                        .toList());
    }

    /** Returns the times that stand at the end of a range, each up to the next reading. */
    List<Interval> atTheEnd() {
        return Interval.joined(quality.flags().stream()
                .filter(flags -> flags.check().equals(EndOfRange.NAME))
                .flatMap(flags -> flags.raised().stream())
                .map(flag -> Interval.of(flag.time(), flag.time().plus(interval)))
                .toList());
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
