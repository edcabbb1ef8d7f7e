package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.LevelForecast;
import dev.runnel.hydraulics.watch.Moved;
import dev.runnel.hydraulics.watch.Quantity;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.internal.StateText;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** What the watch finds at a constructed site. */
final class WatchCalculations {
    private static final String INPUTS = SiteCalculations.INPUTS + WatchedSites.INPUTS;
    private static final String AFTER = "at put part name until? ";
    private static final String CUT = "every begin cease ";
    private static final double NONE = SiteCalculations.NONE;

    /** Until then a finding that is open stands: 3000 h after the first reading. */
    private static final Instant AS_OF = SiteRecipe.START.plusSeconds(3000L * 3600);

    private WatchCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "watch.findings",
                        "1",
                        "",
                        in -> WatchedSites.report(in).findings().size()),
                of("watch.open", "1", "", in -> WatchedSites.report(in).open().size()),
                of(
                        "watch.remarks",
                        "1",
                        "",
                        in -> WatchedSites.report(in).remarks().size()),
                of(
                        "watch.events",
                        "1",
                        "",
                        in -> WatchedSites.report(in).events().size()),
                of(
                        "watch.events.kinds.book",
                        "1",
                        "",
                        in -> Books.sum(
                                WatchedSites.report(in).events(),
                                each -> each.kind().ordinal())),
                of(
                        "watch.events.hours.book",
                        "h",
                        "",
                        in -> Books.sum(WatchedSites.report(in).events(), each -> SiteCalculations.hours(each.time()))),
                finding("names", "1", "names ", (each, in) -> names(each).equals(in.text("names")) ? 1 : 0),
                finding("shape", "1", each -> each.shape().ordinal()),
                finding(
                        "up",
                        "1",
                        each -> each.direction() == Direction.UP ? 1 : each.direction() == Direction.DOWN ? -1 : 0),
                finding("since", "h", each -> hours(each.since())),
                finding("earliest", "h", each -> hours(each.sinceRange().start())),
                finding("latest", "h", each -> hours(each.sinceRange().end())),
                finding("found", "h", each -> hours(each.found())),
                finding(
                        "closed",
                        "h",
                        each -> each.closed().map(SiteCalculations::hours).orElse(NONE)),
                finding("returns", "1", Finding::returns),
                finding(
                        "back",
                        "h",
                        each -> hours(each.stretches().get(each.returns()).from())),
                finding(
                        "stretches.book",
                        "h",
                        each -> Books.sum(
                                each.stretches(),
                                stretch -> hours(stretch.from())
                                        + 3
                                                * stretch.to()
                                                        .map(SiteCalculations::hours)
                                                        .orElse(0.0))),
                finding("stood", "h", each -> each.stood(AS_OF).toNanos() / 3.6e12),
                finding("falls", "1", Finding::falls),
                finding(
                        "recurrence",
                        "min",
                        each -> each.recurrence()
                                .map(every -> (double) every.toMinutes())
                                .orElse(NONE)),
                finding(
                        "moved",
                        "1",
                        "quantity ",
                        (each, in) -> moved(each, in).map(Moved::change).orElse(NONE)),
                finding(
                        "moved.scatter",
                        "1",
                        "quantity ",
                        (each, in) -> moved(each, in).map(Moved::scatter).orElse(NONE)),
                finding(
                        "moved.hours",
                        "h",
                        "quantity ",
                        (each, in) ->
                                moved(each, in).map(of -> (double) of.hours()).orElse(NONE)),
                forecast("time", LevelForecast::time),
                forecast("earliest", LevelForecast::earliest),
                forecast("latest", LevelForecast::latest),
                of("watch.remark", "h", "which name ", WatchCalculations::remark),
                of(
                        "watch.stamps.last",
                        "h",
                        "stamps ",
                        in -> WatchedStamps.of(in).last()),
                of(
                        "watch.stamps.held",
                        "1",
                        "stamps ",
                        in -> WatchedStamps.of(in).held()),
                of(
                        "watch.stamps.remarks",
                        "1",
                        "stamps ",
                        in -> WatchedStamps.of(in).remarks()),
                of(
                        "watch.stamps.left-out",
                        "1",
                        "stamps ",
                        in -> WatchedStamps.of(in).leftOut()),
                of(
                        "watch.stamps.left-out.end",
                        "1",
                        "stamps ",
                        in -> WatchedStamps.of(in).leftOutAtEnd()),
                of(
                        "watch.cut.events",
                        "1",
                        CUT,
                        in -> StoppedWatches.cut(in).told().size()),
                of(
                        "watch.cut.kinds.book",
                        "1",
                        CUT,
                        in -> Books.sum(
                                StoppedWatches.cut(in).told(),
                                each -> each.kind().ordinal())),
                of(
                        "watch.cut.hours.book",
                        "h",
                        CUT,
                        in -> Books.sum(StoppedWatches.cut(in).told(), each -> hours(each.time()))),
                of(
                        "watch.cut.since.book",
                        "h",
                        CUT,
                        in -> Books.sum(
                                StoppedWatches.cut(in).told(),
                                each -> hours(each.finding().since()))),
                of(
                        "watch.cut.kept",
                        "as kept",
                        CUT + "part key which ",
                        in -> kept(StoppedWatches.cut(in).state(), in)),
                of("watch.after.events", "1", AFTER, in -> after(in).size()),
                of(
                        "watch.after.kinds.book",
                        "1",
                        AFTER,
                        in -> Books.sum(after(in), each -> each.kind().ordinal())),
                of(
                        "watch.after.since.book",
                        "h",
                        AFTER,
                        in -> Books.sum(after(in), each -> hours(each.finding().since()))),
                of(
                        "watch.after.earliest.book",
                        "h",
                        AFTER,
                        in -> Books.sum(
                                after(in),
                                each -> hours(each.finding().sinceRange().start()))),
                of(
                        "watch.after.closed.book",
                        "h",
                        AFTER,
                        in -> Books.sum(
                                after(in),
                                each -> each.finding()
                                        .closed()
                                        .map(SiteCalculations::hours)
                                        .orElse(0.0))),
                afterwards("latest", "h", each -> hours(each.sinceRange().end())),
                afterwards("numbers", "1", Finding::number),
                afterwards("names", "1", each -> Books.sum(each.names(), FindingName::ordinal)),
                afterwards("shape", "1", each -> each.shape().ordinal()),
                afterwards("falls", "1", Finding::falls),
                afterwards(
                        "recurrence",
                        "min",
                        each -> each.recurrence()
                                .map(every -> (double) every.toMinutes())
                                .orElse(0.0)),
                afterwards("moved", "1", each -> Books.sum(each.moved(), Moved::change)),
                afterwards("forecasts", "h", each -> forecasts(each.alarm()) + forecasts(each.soffit())),
                of("watch.kept", "as kept", "part key which ", in -> kept(WatchedSites.state(in), in)),
                of(
                        "watch.after.kept",
                        "as kept",
                        "at put part name until key which ",
                        in -> kept(StoppedWatches.goneOn(in).kept(), in)));
    }

    private static Calculation of(String name, String unit, String more, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, more + INPUTS, body);
    }

    private interface OfFinding {
        double answer(Finding finding, Inputs in);
    }

    private static Calculation finding(String name, String unit, ToDoubleFunction<Finding> question) {
        return finding(name, unit, "", (each, in) -> question.applyAsDouble(each));
    }

    private static Calculation finding(String name, String unit, String more, OfFinding question) {
        return of(
                "watch.finding." + name,
                unit,
                "which " + more,
                in -> question.answer(WatchedSites.report(in).findings().get(in.integer("which")), in));
    }

    private static Calculation forecast(String name, Function<LevelForecast, Instant> time) {
        return finding(
                "forecast." + name,
                "h",
                "goal ",
                (each, in) -> (in.text("goal").equals("alarm") ? each.alarm() : each.soffit())
                        .map(found -> hours(time.apply(found)))
                        .orElse(NONE));
    }

    private static Calculation afterwards(String name, String unit, ToDoubleFunction<Finding> figure) {
        return of(
                "watch.after." + name + ".book",
                unit,
                AFTER,
                in -> Books.sum(after(in), each -> figure.applyAsDouble(each.finding())));
    }

    private static double forecasts(Optional<LevelForecast> forecast) {
        return forecast.map(each -> hours(each.time()) + hours(each.earliest()) + hours(each.latest()))
                .orElse(0.0);
    }

    private static double hours(Instant time) {
        return SiteCalculations.hours(time);
    }

    private static String names(Finding finding) {
        return finding.names().stream().map(FindingName::name).collect(Collectors.joining("/"));
    }

    private static Optional<Moved> moved(Finding finding, Inputs in) {
        Quantity quantity = Quantity.values()[in.integer("quantity")];
        return finding.moved().stream()
                .filter(each -> each.quantity() == quantity)
                .findFirst();
    }

    /** When a remark of a name was told. */
    private static double remark(Inputs in) {
        WatchNotice notice = WatchedSites.report(in).events().stream()
                .filter(each -> each.kind() == WatchNotice.Kind.NOTED)
                .toList()
                .get(in.integer("which"));
        return names(notice.finding()).equals(in.text("name")) ? hours(notice.time()) : NONE;
    }

    /** A number of a state, or a flag as 1 or 0; -1 as place asks for the sum of all that are known, each times its place. */
    private static double kept(StateParts state, Inputs in) {
        StateText text = state.part(in.text("part"));
        String key = in.text("key");
        String value = text.text(key);
        if (value.equals("true") || value.equals("false")) {
            return text.flag(key) ? 1 : 0;
        }
        double[] numbers = value.isEmpty() || value.contains(",") ? text.numbers(key) : new double[] {text.number(key)};
        if (in.integer("which") >= 0) {
            return numbers[in.integer("which")];
        }
        double sum = 0;
        for (int i = 0; i < numbers.length; i++) {
            sum += Double.isNaN(numbers[i]) ? 0 : (i + 1) * numbers[i];
        }
        return sum;
    }

    /** What is told of findings of a name, or of all if it is a dash, when the watch goes on. */
    private static List<WatchNotice> after(Inputs in) {
        List<WatchNotice> told = StoppedWatches.goneOn(in).told();
        String name = in.text("name");
        return name.equals("-")
                ? told
                : told.stream()
                        .filter(each -> each.finding().name().name().equals(name))
                        .toList();
    }
}
