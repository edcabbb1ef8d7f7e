package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.watch.BaselineRule;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.hydraulics.watch.Quantity;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.baseline.DayCurve;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/** What is normal at a constructed site, learned once a record however many figures a table asks of it. */
final class SiteCalculations {
    static final String INPUTS = "site changes zone diameter from? to?";

    /** What a table is told of a figure that there is none of. */
    static final double NONE = -9999;

    /** Any version of the text of a baseline. */
    private static final int NEWEST = 1000;

    private static final int SUM = -2;

    private static final Map<String, BaselineSearch> LEARNED = KeptAnswers.map();
    private static final Map<String, StateText> KEPT = KeptAnswers.map();

    private SiteCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("site.learned", "1", in -> learned(in).baseline().isPresent() ? 1 : 0),
                of("site.refused", "1", in -> learned(in).refused().size()),
                of(
                        "site.refused.reasons",
                        "1",
                        in -> learned(in).refused().stream()
                                .mapToInt(each -> each.reasons().size())
                                .sum()),
                of("site.from", "h", in -> hours(baseline(in).interval().start())),
                of("site.to", "h", in -> hours(baseline(in).interval().end())),
                of("site.record.span", "h", in -> record(in).interval().hours()),
                of("site.hours", "1", in -> baseline(in).hours()),
                of("site.dry-hours", "1", in -> baseline(in).dryHours()),
                of("site.rain", "1", in -> baseline(in).hasRain() ? 1 : 0),
                of("site.notes", "1", in -> baseline(in).notes().size()),
                of("site.not-tested", "1", in -> baseline(in).notTested().size()),
                of("site.tidal", "1", in -> baseline(in).isTidal() ? 1 : 0),
                of("site.pumped", "1", in -> baseline(in).isPumped() ? 1 : 0),
                of("site.peak", "m", in -> baseline(in).usualPeak()),
                of("site.rain-lag", "h", in -> baseline(in).rainLagHours().orElse(NONE)),
                of(
                        "site.law.exponent",
                        "1",
                        in -> baseline(in)
                                .usualVelocity()
                                .map(law -> law.exponent())
                                .orElse(NONE)),
                of(
                        "site.law.scatter",
                        "1",
                        in -> baseline(in)
                                .usualVelocity()
                                .map(law -> law.scatter())
                                .orElse(NONE)),
                Calculation.of(
                        "hydraulics",
                        "site.scatter",
                        "1",
                        "quantity " + INPUTS,
                        in -> known(baseline(in).scatter(quantity(in)))),
                day(
                        "site.day.value",
                        "hour rest ",
                        (curve, in) -> curve.value(in.number("hour"), in.number("rest") > 0)),
                day("site.day.scatter", "", (curve, in) -> curve.scatter()),
                day("site.day.explained", "", (curve, in) -> curve.explained()),
                Calculation.of("hydraulics", "site.kept", "as kept", "key which " + INPUTS, SiteCalculations::kept));
    }

    private static Calculation of(String name, String unit, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, INPUTS, body);
    }

    private interface OfDay {
        double answer(DayCurve curve, Inputs in);
    }

    private static Calculation day(String name, String more, OfDay question) {
        return Calculation.of(
                "hydraulics",
                name,
                "1",
                "quantity " + more + INPUTS,
                in -> baseline(in)
                        .day(quantity(in))
                        .map(curve -> question.answer(curve, in))
                        .orElse(NONE));
    }

    private static Quantity quantity(Inputs in) {
        return Quantity.values()[in.integer("quantity")];
    }

    /** A number of the text that a baseline is kept as; -1 as place asks for how many there are, -2 for the sum of all, each times its place. */
    private static double kept(Inputs in) {
        StateText text = KEPT.computeIfAbsent(
                key(in),
                key -> StateText.parse("site-baseline", NEWEST, baseline(in).toText()));
        String key = in.text("key");
        String value = text.text(key);
        if (value.equals("true") || value.equals("false")) {
            return text.flag(key) ? 1 : 0;
        }
        boolean many = value.isEmpty() || value.contains(",");
        double[] numbers = many ? text.numbers(key) : new double[] {text.number(key)};
        if (in.integer("which") == SUM) {
            double sum = 0;
            for (int i = 0; i < numbers.length; i++) {
                sum += (i + 1) * numbers[i];
            }
            return sum;
        }
        return in.integer("which") < 0 ? numbers.length : numbers[in.integer("which")];
    }

    static double known(double value) {
        return Double.isNaN(value) ? NONE : value;
    }

    static double hours(Instant time) {
        return Duration.between(SiteRecipe.START, time).toNanos() / 3.6e12;
    }

    static SiteRecord record(Inputs in) {
        return SiteRecipe.record(
                in.sample("site"), in.text("changes").equals("-") ? new double[0] : in.sample("changes"));
    }

    static BaselineSearch learned(Inputs in) {
        return LEARNED.computeIfAbsent(key(in), key -> rule(in).learn(record(in)));
    }

    static SiteBaseline baseline(Inputs in) {
        return learned(in).baseline().orElseThrow();
    }

    static String key(Inputs in) {
        return String.join(
                "|",
                Stream.of("site", "changes", "zone", "diameter", "from", "to")
                        .map(name -> in.has(name) ? in.text(name) : "")
                        .toList());
    }

    private static BaselineRule rule(Inputs in) {
        PipeMonitor monitor = PipeMonitor.of(
                Conduit.of(CircularSection.ofDiameter(in.number("diameter")), Gradient.of(0.005), Manning.of(0.013)));
        BaselineRule rule = BaselineRule.of(monitor).withZone(ZoneId.of(in.text("zone")));
        return in.has("from") && in.number("from") != NONE
                ? rule.withInterval(Interval.of(at(in.number("from")), at(in.number("to"))))
                : rule;
    }

    private static Instant at(double hours) {
        return SiteRecipe.START.plus(Duration.ofMinutes(Math.round(60 * hours)));
    }
}
