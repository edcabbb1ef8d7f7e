package dev.runnel.examples.review;

import dev.runnel.examples.pages.SurveyPage;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Resample;
import dev.runnel.timeseries.balance.DailyTotal;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is kept of a site once its pages and files are written: enough for the page of the survey and for what the sites say
 * of each other, without the readings.
 *
 * @param id name of its folder
 * @param name its name
 * @param upstream id of the site upstream, if it names one
 * @param text its part of the page of text
 * @param line its line in the survey
 * @param json its findings
 * @param summary its row in the summary of the survey
 * @param files the files that were read
 * @param dates how its dates are shown
 * @param volumes flow of each day without those that are doubtful, m3; empty for a site without velocity
 * @param doubtful how many days of flow were left out of these
 * @param gauge what its gauge saw; empty if there is none
 */
record SiteResult(
        String id,
        String name,
        Optional<String> upstream,
        String text,
        SurveyPage.Line line,
        String json,
        List<Object> summary,
        Set<Path> files,
        Dates dates,
        List<DailyTotal> volumes,
        int doubtful,
        Optional<Gauge> gauge) {
    /** Chosen here: steps long enough that a year of them is small, and short enough to hold a storm. */
    private static final Duration KEPT = Duration.ofMinutes(15);

    /**
     * What a gauge saw.
     *
     * @param storms its storms, widened to whole steps
     * @param rain depth in each step, mm; missing where the gauge may have been dead
     */
    record Gauge(List<Interval> storms, RegularSeries rain) {
        static Gauge of(RainFindings found) {
            RegularSeries rain = found.rain().withMissing(found.silent().toArray(Interval[]::new));
            RegularSeries kept = rain.step().compareTo(KEPT) < 0 ? widened(rain) : rain;
            return new Gauge(
                    found.storms().stream()
                            .map(storm -> widened(storm.event().interval(), kept))
                            .toList(),
                    kept);
        }

        /** Sums of the fewest steps that are together as long as what is kept: no quarter hour is made of steps of 2 or 10 min. */
        private static RegularSeries widened(RegularSeries rain) {
            long steps = -Math.floorDiv(-KEPT.toNanos(), rain.step().toNanos());
            Instant day = rain.start().truncatedTo(ChronoUnit.DAYS);
            long from =
                    Duration.between(day, rain.start()).toNanos() % rain.step().toNanos();
            return Resample.sum(rain.step().multipliedBy(steps))
                    .withOrigin(day.plusNanos(from))
                    .apply(rain);
        }

        /** Widens a time to whole steps of a series. */
        private static Interval widened(Interval time, RegularSeries series) {
            Instant start = series.start();
            long step = series.step().toMillis();
            long from = Math.floorDiv(Duration.between(start, time.start()).toMillis(), step);
            long to = -Math.floorDiv(-Duration.between(start, time.end()).toMillis(), step);
            return Interval.of(start.plusMillis(from * step), start.plusMillis(to * step));
        }
    }

    static SiteResult of(SiteReview review, Attention attention) {
        List<DailyTotal> sound = review.data().velocity().isEmpty()
                ? List.of()
                : review.flow().volumes().stream()
                        .filter(day -> review.doubts()
                                        .shareOfFlow(review.flow().record().flow(), day.date())
                                < Doubts.SHARE_OF_DAY)
                        .toList();
        SurveyPage.Line line = SurveyLines.of(review, attention);
        return new SiteResult(
                review.site().id(),
                review.site().name(),
                review.site().upstream(),
                ReviewText.ofSite(review, attention),
                line,
                FindingsJson.of(review),
                SurveySummary.of(review, line.state(), line.points()),
                Set.copyOf(review.data().files()),
                review.data().dates(),
                sound,
                review.data().velocity().isEmpty() ? 0 : review.flow().volumes().size() - sound.size(),
                review.rain().or(review::muteGauge).map(Gauge::of));
    }

    /** Tells whether the site names another one upstream; such sites come last. */
    boolean isDownstream() {
        return upstream.isPresent();
    }
}
