package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.Finding;
import dev.runnel.hydraulics.evidence.FindingName;
import dev.runnel.hydraulics.evidence.LevelForecast;
import java.util.stream.Collectors;

/** A finding of the watch as a point of the page: what moved, since when, what it looks like, what else it could be. */
final class FindingText {
    private FindingText() {}

    static String of(Finding finding, SiteReview review) {
        Dates dates = review.data().dates();
        StringBuilder text =
                new StringBuilder("Finding ").append(finding.number()).append(": ");
        text.append(finding.detail())
                .append(". It came ")
                .append(finding.shape())
                .append(", since ");
        text.append(dates.time(finding.since()))
                .append(" (between ")
                .append(dates.time(finding.sinceRange().start()));
        text.append(" and ").append(dates.time(finding.sinceRange().end())).append("), found ");
        text.append(dates.time(finding.found()));
        text.append(finding.closed()
                .map(end -> ", as usual again " + dates.time(end))
                .orElse(", open at the end"));
        text.append(". ");
        if (!finding.moved().isEmpty()) {
            text.append("Against the baseline: ");
            text.append(finding.moved().stream()
                            .map(moved -> bound(moved.toString()))
                            .collect(Collectors.joining("; ")))
                    .append(". ");
        }
        finding.recurrence()
                .ifPresentOrElse(
                        every -> text.append("It comes back about every ")
                                .append(Show.duration(every))
                                .append(". "),
                        () -> text.append(
                                finding.returns() == 0
                                        ? ""
                                        : "It went and came back " + Attention.times(finding.returns()) + ". "));
        text.append("Looks like ");
        text.append(finding.names().stream().map(FindingName::words).collect(Collectors.joining(", or ")));
        text.append("; could also be ");
        text.append(
                finding.names().stream().map(FindingName::otherwise).distinct().collect(Collectors.joining("; ")));
        text.append(". To check: ")
                .append(finding.names().stream().map(FieldChecks::of).distinct().collect(Collectors.joining("; ")))
                .append('.');
        if (finding.isOpen()) {
            finding.alarm().ifPresent(level -> text.append(forecast("the alarm level", level, dates)));
            finding.soffit().ifPresent(level -> text.append(forecast("the soffit", level, dates)));
        }
        if (finding.name() == FindingName.SILENT_GAUGE) {
            text.append(" The rain from ")
                    .append(dates.time(finding.sinceRange().start()))
                    .append(" on is taken as not known until the next drop, and its days as neither wet nor dry.");
        }
        if (review.doubts().isFlowDoubtful(finding)) {
            text.append(
                    review.data().velocity().isPresent()
                            ? " The flow of this time is doubtful and left out of the dry weather flow."
                            : " The level of this time is doubtful and left out of the dry weather level.");
        }
        return text.toString();
    }

    /** A value and its unit stay in one line. */
    private static String bound(String text) {
        return text.replaceAll("(?<=[0-9]) (?=%|h\\b|mm\\b|m/s)", "" + Page.BOUND);
    }

    private static String forecast(String what, LevelForecast level, Dates dates) {
        return " If it goes on, a dry day reaches " + what + " about " + dates.time(level.time()) + " ("
                + dates.time(level.earliest()) + " to " + dates.time(level.latest()) + ").";
    }
}
