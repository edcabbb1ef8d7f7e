package dev.runnel.examples.review;

import dev.runnel.examples.pages.LineFigure;
import dev.runnel.examples.pages.SitePage;
import dev.runnel.examples.pages.SurveyPage;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.DoubleMass;
import dev.runnel.rainfall.gauge.Neighbours;
import dev.runnel.timeseries.balance.DailyTotal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A line for each site of a survey, and the page of them all. */
final class SurveyLines {
    private static final int MOST_LINES = 4;

    private SurveyLines() {}

    static SurveyPage.Line of(SiteReview review, Attention attention) {
        List<String> points = attention.points();
        return new SurveyPage.Line(
                review.site().id(),
                review.site().name(),
                state(review),
                points.size(),
                SiteFigures.received(review),
                SiteFigures.dryWeatherMarked(review),
                SiteFigures.highest(review),
                SiteFigures.spillsMarked(review),
                review.site().upstream().map(List::of).orElse(List.of()));
    }

    /** The findings in a few words, open ones first; else what is missing. */
    private static String state(SiteReview review) {
        return found(review) + (UntoldShift.of(review).isPresent() ? "; no finding, but the depth perhaps moved" : "");
    }

    private static String found(SiteReview review) {
        List<Finding> findings = review.watched().findings();
        if (review.watched().baseline().isEmpty()) {
            return "not watched: no stretch tells what is usual";
        }
        if (findings.isEmpty()) {
            return review.data().velocity().isPresent() ? "as usual" : "as usual, level only";
        }
        return findings.stream()
                .sorted((a, b) -> Boolean.compare(b.isOpen(), a.isOpen()))
                .map(finding -> (finding.isOpen() ? "open: " : "ended: ")
                        + finding.names().stream().map(name -> name.words()).collect(Collectors.joining(", or ")))
                .collect(Collectors.joining("; "));
    }

    static String page(
            Path folder, List<SiteResult> results, BetweenSitesText.Between between, List<String> complaints) {
        return SurveyPage.of(
                "Site review",
                Show.count(results.size(), "site") + " in " + folder.getFileName(),
                results.stream().map(SiteResult::line).toList(),
                complaints,
                between.said().stream()
                        .map(said -> said.label() + ": " + said.text())
                        .toList(),
                panels(results, between));
    }

    private static List<SitePage.Panel> panels(List<SiteResult> results, BetweenSitesText.Between between) {
        List<SitePage.Panel> panels = new ArrayList<>(volumes(results));
        panels.addAll(doubleMass(results, between.groups()));
        return panels;
    }

    /** Each gauge against the median of the others of its rain, storm by storm. */
    private static List<SitePage.Panel> doubleMass(List<SiteResult> results, List<BetweenSitesText.Group> groups) {
        List<LineFigure.Line> lines = new ArrayList<>();
        int compared = 0;
        for (BetweenSitesText.Group group : groups) {
            // A gauge whose record the others do not share, or shared only in dry hours, has no line.
            List<SiteResult> telling = group.gauged().stream()
                    .filter(site -> group.neighbours().finding(site.id()).isPresent())
                    .toList();
            compared += telling.size();
            // Of two gauges one line says all.
            telling.stream()
                    .limit(group.gauged().size() == 2 ? 1 : MOST_LINES)
                    .map(site -> line(site, group.neighbours()))
                    .forEach(lines::add);
        }
        if (lines.isEmpty()) {
            return List.of();
        }
        long gauged = results.stream().filter(site -> site.gauge().isPresent()).count();
        long grouped = groups.stream().mapToLong(group -> group.gauged().size()).sum();
        return List.of(new SitePage.Panel(
                "Gauges against each other",
                LineFigure.of(
                        "Double mass of the gauges",
                        "median of the other gauges, mm",
                        "gauge, mm",
                        lines.subList(0, Math.min(MOST_LINES, lines.size()))),
                "Sums over the storms; a straight line is a gauge that keeps its ratio to the others, a bend one that changed."
                        + (compared > MOST_LINES ? " The first " + MOST_LINES + " of " + compared + "." : "")
                        + (compared < grouped
                                ? " Without a line: " + Show.count(grouped - compared, "gauge")
                                        + " with fewer than two storms at the same time as others."
                                : "")
                        + (grouped < gauged
                                ? " Without a line: " + Show.count(gauged - grouped, "gauge")
                                        + " with rain that is not that of others."
                                : ""),
                "gauge-checks",
                false));
    }

    private static LineFigure.Line line(SiteResult site, Neighbours neighbours) {
        DoubleMass mass = neighbours.against(site.id());
        return new LineFigure.Line(
                site.name() + ", " + Text.significant(mass.ratio(), 3) + " of the others",
                fromZero(mass.cumulativeReference()),
                fromZero(mass.cumulativeGauge()),
                false);
    }

    private static double[] fromZero(double[] sums) {
        double[] longer = new double[sums.length + 1];
        System.arraycopy(sums, 0, longer, 1, sums.length);
        return longer;
    }

    /** Volumes that have passed, site by site. */
    private static List<SitePage.Panel> volumes(List<SiteResult> results) {
        List<SiteResult> all =
                results.stream().filter(site -> !site.volumes().isEmpty()).toList();
        if (all.size() < 2) {
            return List.of();
        }
        List<SiteResult> measured = all.subList(0, Math.min(MOST_LINES, all.size()));
        LocalDate first = measured.stream()
                .map(site -> site.volumes().get(0).date())
                .min(LocalDate::compareTo)
                .orElseThrow();
        return List.of(new SitePage.Panel(
                "Volumes that have passed",
                LineFigure.of(
                        "Volumes that have passed",
                        "days since " + first,
                        "m3",
                        measured.stream().map(site -> line(site, first)).toList()),
                "As measured; days without readings and doubtful days add nothing."
                        + (all.size() > MOST_LINES ? " The first " + MOST_LINES + " of " + all.size() + " sites." : ""),
                "daily-volumes",
                false));
    }

    private static LineFigure.Line line(SiteResult site, LocalDate first) {
        double[] xs = new double[site.volumes().size()];
        double[] ys = new double[xs.length];
        double sum = 0;
        for (int i = 0; i < xs.length; i++) {
            DailyTotal day = site.volumes().get(i);
            sum += day.measured();
            xs[i] = ChronoUnit.DAYS.between(first, day.date()) + 1;
            ys[i] = sum;
        }
        return new LineFigure.Line(site.name(), xs, ys, false);
    }
}
