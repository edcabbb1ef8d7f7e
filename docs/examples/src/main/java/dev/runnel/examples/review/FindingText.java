package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.FindingStretch;
import dev.runnel.hydraulics.watch.LevelForecast;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A finding of the watch as a point of the page: what moved, since when, what it looks like, what else it could be. */
final class FindingText {
    /** An instant to the hour or closer, in UTC. */
    private static final Pattern INSTANT =
            Pattern.compile("\\b(\\d{4}-\\d\\d-\\d\\dT\\d\\d)(:\\d\\d(?::\\d\\d)?)?Z?\\b");

    /** A range of more tells no hour; chosen here. */
    private static final Duration VAGUE = Duration.ofDays(2);

    private FindingText() {}

    static String of(Finding finding, SiteReview review) {
        Dates dates = review.data().dates();
        StringBuilder text =
                new StringBuilder("Finding ").append(finding.number()).append(": ");
        text.append(local(finding.detail(), dates))
                .append(". It came ")
                .append(finding.shape())
                .append(", since ");
        text.append(dates.time(finding.since()));
        if (!finding.sinceRange().isEmpty()) {
            text.append(" (between ")
                    .append(dates.time(finding.sinceRange().start()))
                    .append(" and ")
                    .append(dates.time(finding.sinceRange().end()))
                    .append(')');
        }
        text.append(", found ").append(dates.time(finding.found()));
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
        if (finding.returns() > 0) {
            text.append(stretches(finding, review.data().record().end(), dates));
        }
        text.append("Looks like ");
        text.append(finding.names().stream().map(FindingName::words).collect(Collectors.joining(", or ")));
        text.append("; ")
                .append(finding.otherwise())
                .append(". To check: ")
                .append(finding.names().stream().map(FieldChecks::of).distinct().collect(Collectors.joining("; ")))
                .append('.');
        if (finding.isOpen()) {
            boolean isDoubtful = review.doubts().isDepthDoubtful(finding);
            finding.alarm().ifPresent(level -> text.append(forecast("the alarm level", level, isDoubtful, dates)));
            finding.soffit().ifPresent(level -> text.append(forecast("the soffit", level, isDoubtful, dates)));
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

    /** How long it stood in all, and when last: what lies between is as usual. */
    static String stretches(Finding finding, Instant end, Dates dates) {
        FindingStretch last = finding.stretches().get(finding.returns());
        Duration stood = finding.stood(end);
        double share = (double) stood.toMinutes()
                / Math.max(1, finding.interval(end).duration().toMinutes());
        return "It stood for " + Show.spell(stood) + " in "
                + finding.stretches().size() + " stretches, "
                + Show.percent(share) + " of the time since it began, the last from " + dates.time(last.from())
                + last.to().map(to -> " to " + dates.time(to)).orElse(" on") + "; between them it was as usual. ";
    }

    /** Instants in a text of the watch, which knows no clock but UTC, as the page writes them. */
    static String local(String detail, Dates dates) {
        return INSTANT.matcher(detail)
                .replaceAll(found -> Matcher.quoteReplacement(dates.time(Instant.parse(found.group(1)
                        + (found.group(2) == null ? ":00:00" : (found.group(2) + ":00").substring(0, 6)) + "Z"))));
    }

    /** A value and its unit stay in one line. */
    private static String bound(String text) {
        return text.replaceAll("(?<=[0-9]) (?=%|h\\b|mm\\b|m/s)", "" + Page.BOUND);
    }

    /** When a level is reached; where that is known to some days at best, no hour is told. */
    static String forecast(String what, LevelForecast level, boolean isDoubtful, Dates dates) {
        boolean isVague = Duration.between(level.earliest(), level.latest()).compareTo(VAGUE) > 0;
        Function<Instant, String> shown = isVague ? dates::dayAhead : dates::time;
        return " If it goes on, a dry day reaches " + what + " about " + shown.apply(level.time()) + " ("
                + shown.apply(level.earliest()) + " to " + shown.apply(level.latest()) + ")"
                + (isDoubtful ? ", by depths that are in doubt" : "") + ".";
    }
}
