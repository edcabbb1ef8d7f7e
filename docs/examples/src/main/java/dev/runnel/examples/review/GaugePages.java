package dev.runnel.examples.review;

import dev.runnel.examples.pages.CalendarFigure;
import dev.runnel.examples.pages.RecordRows;
import dev.runnel.examples.pages.SitePage;
import dev.runnel.examples.pages.StormFigure;
import dev.runnel.examples.pages.SurveyPage;
import dev.runnel.rainfall.event.DailyRain;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/** The review of a gauge without a monitor in words, as a page and as files. */
final class GaugePages {
    private final GaugeReview review;

    private GaugePages(GaugeReview review) {
        this.review = review;
    }

    /** Writes page and tables, and returns what is kept. */
    static SiteResult write(Path made, GaugeReview review) {
        try {
            GaugePages pages = new GaugePages(review);
            String text = pages.text();
            RainFiles files = new RainFiles(
                    Files.createDirectories(made.resolve(review.site().id())));
            files.write(review.rain());
            files.daily(review.rain());
            files.rejected(review.reports());
            Files.writeString(
                    made.resolve(review.site().id() + ".html"), pages.page(text).toHtml(), StandardCharsets.UTF_8);
            return pages.result(text);
        } catch (IOException e) {
            throw new UncheckedIOException(
                    "cannot write the results of " + review.site().id(), e);
        }
    }

    private String text() {
        Page page = new Page();
        page.gap()
                .heading(
                        review.site().name().toUpperCase(Locale.ROOT),
                        review.site().note());
        page.section("record").say(span() + "; a gauge without a monitor: no level, no flow");
        page.section("look at");
        int number = 0;
        for (String point : review.points()) {
            number++;
            page.hanging(number + " ", point);
        }
        if (number == 0) {
            page.say("nothing that these tests can find");
        }
        page.section("data").say("read as: " + review.source().readAs());
        review.reports()
                .forEach(report -> page.say(report.source() + ": " + report.lines() + " lines, " + report.accepted()
                        + " read, " + report.rejected() + " rejected, " + report.altered() + " altered"));
        RainText.put(page, review);
        return page.toString();
    }

    private String span() {
        return Show.timeWithYear(review.record().start(), review.site().zone()) + " to "
                + Show.timeWithYear(review.record().end(), review.site().zone()) + ", times in "
                + review.site().zone();
    }

    private SitePage page(String text) {
        SitePage page = SitePage.of(review.site().name(), span()).amongOthers().withText(text);
        for (String point : review.points()) {
            page = page.withPoint(new SitePage.Point(point, 0));
        }
        RainFindings rain = review.rain();
        page = page.withFigure(new SitePage.Figure(
                        "Rain", Show.rain(rain.depthMm()) + " mm", rain.account(), "tipping-bucket"))
                .withFigure(new SitePage.Figure("Storms", "" + rain.storms().size(), "", "event-separation"))
                .withFigure(new SitePage.Figure(
                        "Dry days",
                        "" + rain.days().dates().size(),
                        rain.days().unknown().size() + " not known",
                        "dry-days"))
                .withNotTested("level, velocity and flow: there is no monitor");
        RecordRows rows = RecordRows.in(review.site().zone()).withAmounts("Rain, mm", rain.rain(), 0.01);
        for (Interval silent : rain.silent()) {
            rows = rows.withMark(RecordRows.Mark.of(RecordRows.Kind.GAP, silent, "the gauge was silent"));
        }
        page = page.withRecord(rows);
        if (!rain.storms().isEmpty()) {
            List<RainfallEvent> storms =
                    rain.storms().stream().map(RainFindings.Storm::event).toList();
            page = page.withPanel(new SitePage.Panel(
                    "Storms against depth and duration",
                    StormFigure.of(storms, List.of(), review.ddf(), review.band()),
                    review.ddf().isPresent()
                            ? "Each line is a storm. Thin lines: return periods of the table."
                            : "Each line is a storm; there is no table, so no return periods.",
                    "storm-measures",
                    false));
        }
        return page.withPanel(new SitePage.Panel(
                "Days that are known",
                CalendarFigure.of(known(), "Days with known rain"),
                "Filled: known; cross: not known.",
                "dry-days",
                false));
    }

    private SortedMap<LocalDate, Double> known() {
        SortedMap<LocalDate, Double> shares = new TreeMap<>();
        Set<LocalDate> unknown = review.rain().days().unknown();
        for (DailyRain.Day day : review.rain().daily().days()) {
            boolean silent = review.rain().silent().stream()
                    .anyMatch(each -> each.contains(day.date()
                            .atStartOfDay(review.site().zone())
                            .plusHours(12)
                            .toInstant()));
            shares.put(day.date(), silent || unknown.contains(day.date()) && Double.isNaN(day.depthMm()) ? 0.0 : 1.0);
        }
        return shares;
    }

    private SiteResult result(String text) {
        RainFindings rain = review.rain();
        String state = "gauge only";
        return new SiteResult(
                review.site().id(),
                review.site().name(),
                Optional.empty(),
                text,
                new SurveyPage.Line(
                        review.site().id(),
                        review.site().name(),
                        state + ", " + Show.rain(rain.depthMm()) + " mm, "
                                + Show.count(rain.storms().size(), "storm"),
                        review.points().size(),
                        "",
                        "",
                        "",
                        "",
                        List.of()),
                FindingsJson.none(review.site().id()),
                SurveySummary.ofGauge(review, state),
                Set.copyOf(review.files()),
                review.dates(),
                List.of(),
                0,
                Optional.of(SiteResult.Gauge.of(rain)));
    }
}
