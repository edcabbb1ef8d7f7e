package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.Finding;
import java.util.OptionalDouble;
import java.util.StringJoiner;

/** The findings of a site for other programs. */
final class FindingsJson {
    private FindingsJson() {}

    /** The findings of one site as one object. */
    static String of(SiteReview review) {
        StringJoiner findings = new StringJoiner(",", "[", "]");
        review.watched().findings().forEach(finding -> findings.add(finding(finding, review.doubts())));
        return "{\"site\":" + text(review.site().id()) + ",\"watched\":"
                + review.watched().baseline().isPresent() + ",\"findings\":" + findings + ",\"dryWeather\":"
                + dryWeather(review)
                + UntoldShift.of(review).map(FindingsJson::shift).orElse("") + "}";
    }

    private static String shift(UntoldShift found) {
        return ",\"depthShift\":{\"from\":" + text(found.time().start().toString()) + ",\"to\":"
                + text(found.time().end().toString()) + ",\"metres\":"
                + found.shift().metres()
                + ",\"isLearned\":" + found.shift().isLearned() + number("flowShare", found.share()) + "}";
    }

    /** The figure of usual days, the states that the record holds, and what the figure takes for granted. */
    private static String dryWeather(SiteReview review) {
        DryWeather dry = review.dryWeather();
        StringJoiner states = new StringJoiner(",", "[", "]");
        dry.states().states().forEach(state -> states.add(state(state, dry.states())));
        return "{\"unit\":" + text(dry.isFlow() ? "m3/s" : "m")
                + dry.figure().map(profile -> ",\"mean\":" + profile.mean()).orElse("")
                + ",\"states\":" + states
                + AsSetUp.of(review)
                        .map(found -> ",\"asSetUp\":{\"velocityOverLaw\":" + found.overLaw() + ",\"explainedFrom\":"
                                + found.least() + ",\"explainedTo\":" + found.most() + ",\"readingsByHand\":"
                                + found.byHand() + ",\"beyondTolerance\":" + found.beyond() + "}")
                        .orElse("")
                + "}";
    }

    private static String state(DryStates.State state, DryStates of) {
        return "{"
                + state.finding()
                        .map(finding -> "\"finding\":" + finding.number() + ",")
                        .orElse("")
                + "\"from\":" + text(state.from().toString()) + ",\"to\":"
                + text(state.to().toString()) + ",\"dryDays\":" + state.days().size()
                + number("mean", state.mean()) + number("velocityOverLaw", state.overLaw())
                + ",\"asRead\":" + state.isDoubted() + ",\"inQuestion\":"
                + of.inQuestion().contains(state) + "}";
    }

    private static String number(String name, OptionalDouble value) {
        return value.isPresent() ? ",\"" + name + "\":" + value.getAsDouble() : "";
    }

    /** A site where nothing is watched. */
    static String none(String id) {
        return "{\"site\":" + text(id) + ",\"watched\":false,\"findings\":[]}";
    }

    private static String finding(Finding finding, Doubts doubts) {
        StringJoiner names = new StringJoiner(",", "[", "]");
        finding.names().forEach(name -> names.add(text(name.name())));
        return "{\"number\":" + finding.number() + ",\"names\":" + names + ",\"direction\":"
                + text(finding.direction().name())
                + ",\"shape\":" + text(finding.shape().name()) + ",\"since\":"
                + text(WholeMinutes.of(finding.since()).toString())
                + ",\"sinceEarliest\":"
                + text(WholeMinutes.of(finding.sinceRange().start()).toString()) + ",\"sinceLatest\":"
                + text(WholeMinutes.of(finding.sinceRange().end()).toString()) + ",\"found\":"
                + text(finding.found().toString())
                + finding.closed()
                        .map(time -> ",\"closed\":" + text(WholeMinutes.of(time).toString()))
                        .orElse("")
                + ",\"returns\":" + finding.returns() + ",\"stretches\":" + stretches(finding) + ",\"flowDoubtful\":"
                + doubts.isFlowDoubtful(finding)
                + ",\"detail\":" + text(finding.detail()) + "}";
    }

    private static String stretches(Finding finding) {
        StringJoiner stretches = new StringJoiner(",", "[", "]");
        finding.stretches()
                .forEach(stretch -> stretches.add("{\"from\":"
                        + text(WholeMinutes.of(stretch.from()).toString())
                        + stretch.to()
                                .map(end ->
                                        ",\"to\":" + text(WholeMinutes.of(end).toString()))
                                .orElse("")
                        + "}"));
        return stretches.toString();
    }

    private static String text(String value) {
        StringBuilder out = new StringBuilder("\"");
        for (int i = 0; i < value.length(); i++) {
            char c = value.charAt(i);
            if (c == '"' || c == '\\') {
                out.append('\\').append(c);
            } else if (c < ' ') {
                out.append(String.format(java.util.Locale.ROOT, "\\u%04x", (int) c));
            } else {
                out.append(c);
            }
        }
        return out.append('"').toString();
    }
}
