package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.internal.Text;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The states of dry weather as they are told. */
final class StatesText {
    /** Chosen here, of the logarithms: states nearer to each other are not told apart by the law. */
    private static final double LEAST_OF_LAW = 0.1;

    private StatesText() {}

    /** The states side by side, and what to ask where nobody knows which is true. */
    static void say(Page page, SiteReview review) {
        DryWeather dry = review.dryWeather();
        if (dry.states().areSeveral()) {
            page.say("states of the record, each by its own dry days:");
            page.table("lllrrr", rows(review));
        }
        question(review).forEach(page::say);
    }

    private static List<List<String>> rows(SiteReview review) {
        DryWeather dry = review.dryWeather();
        Dates dates = review.data().dates();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("state", "from", "to", "dry days", dry.isFlow() ? "mean l/s" : "mean mm", "velocity / law"));
        for (DryStates.State state : dry.states().states()) {
            rows.add(List.of(
                    state.words(),
                    dates.day(state.from()),
                    dates.day(state.to()),
                    "" + state.days().size(),
                    state.mean().isPresent()
                            ? FlowText.value(dry.isFlow(), state.mean().getAsDouble())
                            : "-",
                    state.overLaw().isPresent() ? Show.percent(state.overLaw().getAsDouble()) : "-"));
        }
        return rows;
    }

    /** One sentence for each state whose figure may be the true one. */
    private static List<String> question(SiteReview review) {
        DryWeather dry = review.dryWeather();
        return dry.states().inQuestion().stream()
                .map(state -> "which is true: " + dryWeather(review) + ", or the "
                        + dry.show(state.mean().getAsDouble())
                        + " of finding " + state.finding().orElseThrow().number()
                        + nearer(dry.states(), state)
                        + "? The watch calls usual what it learned first, and a fault that was there from the first day on looks like"
                        + " that; the readings cannot tell. To ask: "
                        + ask(review, state.finding().orElseThrow()))
                .toList();
    }

    /** Weak evidence: gradients and roughnesses are known to some tenths only. */
    private static String nearer(DryStates states, DryStates.State other) {
        double usual = Math.log(states.usualOverLaw());
        double ratio = Math.log(other.overLaw().orElse(Double.NaN));
        return Math.abs(usual - ratio) < LEAST_OF_LAW || !(Math.abs(usual - ratio) < Double.POSITIVE_INFINITY)
                ? ""
                : " (the law of the pipe is nearer to "
                        + (Math.abs(usual) < Math.abs(ratio) ? "the first" : "the second") + ": weak evidence)";
    }

    private static String ask(SiteReview review, Finding finding) {
        Dates dates = review.data().dates();
        return "what was done at the site or downstream between "
                + dates.time(finding.sinceRange().start()) + " and "
                + dates.time(finding.sinceRange().end())
                + "; the offset that was written down when the sensor was mounted; depth and velocity by hand"
                + (finding.isOpen() ? ", which settle it, for this state lasts to the end of the record" : "")
                + "; a survey of the pipe by camera";
    }

    private static String dryWeather(SiteReview review) {
        DryWeather dry = review.dryWeather();
        return dry.figure()
                .map(profile -> dry.show(profile.mean()) + " of usual days")
                .orElse("none of usual days");
    }

    /** The figures that may be true instead, to stand behind that of usual days; empty without such. */
    static String orElse(SiteReview review) {
        DryWeather dry = review.dryWeather();
        return dry.states().inQuestion().stream()
                .map(state -> ", or " + dry.show(state.mean().getAsDouble()) + " (finding "
                        + state.finding().orElseThrow().number() + ", as read)")
                .collect(Collectors.joining());
    }

    /** The same as a note. */
    static String note(SiteReview review) {
        Dates dates = review.data().dates();
        DryStates states = review.dryWeather().states();
        if (states.inQuestion().isEmpty()) {
            return "";
        }
        return "; which is true the readings cannot tell: "
                + states.states().stream()
                        .filter(state -> state.mean().isPresent())
                        .map(state -> state.words() + " " + dates.day(state.from()) + " to " + dates.day(state.to())
                                + ", " + Show.count(state.days().size(), "dry day"))
                        .collect(Collectors.joining("; "));
    }

    /** The states for a cell: from/to, dry days, mean. */
    static String cell(DryStates states) {
        if (!states.areSeveral()) {
            return "";
        }
        return states.states().stream()
                .map(state -> state.words().replace(",", "") + " " + span(state.from(), state.to()) + " "
                        + state.days().size() + " d "
                        + (state.mean().isPresent() ? Text.fixed(state.mean().getAsDouble(), 5) : "-"))
                .collect(Collectors.joining("; "));
    }

    private static String span(LocalDate from, LocalDate to) {
        return from + "/" + to;
    }
}
