package dev.runnel.examples.review;

import dev.runnel.examples.pages.SurveyPage;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.balance.DailyTotal;
import java.nio.file.Path;
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
 * @param files the files that were read
 * @param dates how its dates are shown
 * @param volumes flow of each day without those that are doubtful, m3; empty for a site without velocity
 * @param doubtful how many days of flow were left out of these
 * @param storms depth and time of each storm; empty if there is no gauge
 * @param record the time that was recorded
 */
record SiteResult(
        String id,
        String name,
        Optional<String> upstream,
        String text,
        SurveyPage.Line line,
        String json,
        Set<Path> files,
        Dates dates,
        List<DailyTotal> volumes,
        int doubtful,
        Optional<List<Storm>> storms,
        Interval record) {
    /**
     * A storm.
     *
     * @param time from its first rain to its last
     * @param depthMm its depth, mm
     */
    record Storm(Interval time, double depthMm) {}

    static SiteResult of(SiteReview review) {
        List<DailyTotal> sound = review.data().velocity().isEmpty()
                ? List.of()
                : review.flow().volumes().stream()
                        .filter(day -> review.doubts().doubtOf(day.date()).isEmpty())
                        .toList();
        return new SiteResult(
                review.site().id(),
                review.site().name(),
                review.site().upstream(),
                ReviewText.ofSite(review),
                SurveyLines.of(review),
                FindingsJson.of(review),
                Set.copyOf(review.data().files()),
                review.data().dates(),
                sound,
                review.data().velocity().isEmpty() ? 0 : review.flow().volumes().size() - sound.size(),
                review.rain()
                        .map(rain -> rain.storms().stream()
                                .map(storm -> storm(storm.event()))
                                .toList()),
                review.data().record());
    }

    private static Storm storm(RainfallEvent event) {
        return new Storm(event.interval(), event.depthMm());
    }

    /** Tells whether the site names another one upstream; such sites come last. */
    boolean isDownstream() {
        return upstream.isPresent();
    }
}
