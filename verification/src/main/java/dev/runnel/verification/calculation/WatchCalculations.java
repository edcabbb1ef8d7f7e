package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.LevelForecast;
import dev.runnel.hydraulics.watch.Moved;
import dev.runnel.hydraulics.watch.Quantity;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchReport;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.hydraulics.watch.WatchState;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Machine;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/** What the watch finds at a constructed site, watched once a record however many figures a table asks of it. */
final class WatchCalculations {
    private static final String INPUTS = SiteCalculations.INPUTS + " alarm?";
    private static final String AFTER = "at put part name until? ";
    private static final String CUT = "every begin cease ";
    private static final double NONE = SiteCalculations.NONE;

    /** Until then a finding that is open stands: 3000 h after the first reading. */
    private static final Instant AS_OF = SiteRecipe.START.plusSeconds(3000L * 3600);

    private static final Map<String, WatchReport> WATCHED = KeptAnswers.map();
    private static final Map<String, StateParts> KEPT = KeptAnswers.map();
    private static final Map<String, Stopped> STOPPED = KeptAnswers.map();
    private static final Map<String, Cut> STOPPED_OFTEN = KeptAnswers.map();
    private static final LastAnswer<GoneOn> GONE_ON = new LastAnswer<>();

    private WatchCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("watch.findings", "1", "", in -> watched(in).findings().size()),
                of("watch.open", "1", "", in -> watched(in).open().size()),
                of("watch.remarks", "1", "", in -> watched(in).remarks().size()),
                of("watch.events", "1", "", in -> watched(in).events().size()),
                of(
                        "watch.events.kinds.book",
                        "1",
                        "",
                        in -> Books.sum(
                                watched(in).events(), each -> each.kind().ordinal())),
                of(
                        "watch.events.hours.book",
                        "h",
                        "",
                        in -> Books.sum(watched(in).events(), each -> SiteCalculations.hours(each.time()))),
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
                of("watch.stamps.last", "h", "stamps ", in -> stamps(in).last()),
                of("watch.stamps.held", "1", "stamps ", in -> stamps(in).held()),
                of("watch.stamps.remarks", "1", "stamps ", in -> stamps(in).remarks()),
                of("watch.stamps.left-out", "1", "stamps ", in -> stamps(in).leftOut()),
                of("watch.stamps.left-out.end", "1", "stamps ", in -> stamps(in).leftOutAtEnd()),
                of("watch.cut.events", "1", CUT, in -> cut(in).told().size()),
                of(
                        "watch.cut.kinds.book",
                        "1",
                        CUT,
                        in -> Books.sum(cut(in).told(), each -> each.kind().ordinal())),
                of("watch.cut.hours.book", "h", CUT, in -> Books.sum(cut(in).told(), each -> hours(each.time()))),
                of(
                        "watch.cut.since.book",
                        "h",
                        CUT,
                        in -> Books.sum(
                                cut(in).told(), each -> hours(each.finding().since()))),
                of("watch.cut.kept", "as kept", CUT + "part key which ", in -> kept(cut(in).state(), in)),
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
                of(
                        "watch.kept",
                        "as kept",
                        "part key which ",
                        in -> kept(KEPT.computeIfAbsent(key(in), key -> state(in)), in)),
                of(
                        "watch.after.kept",
                        "as kept",
                        "at put part name until key which ",
                        in -> kept(goneOn(in).kept(), in)));
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
                in -> question.answer(watched(in).findings().get(in.integer("which")), in));
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
        WatchNotice notice = watched(in).events().stream()
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
        List<WatchNotice> told = goneOn(in).told();
        String name = in.text("name");
        return name.equals("-")
                ? told
                : told.stream()
                        .filter(each -> each.finding().name().name().equals(name))
                        .toList();
    }

    /** Where a watch stands at an hour, and the readings that are still to come. */
    private record Stopped(String state, List<SiteReading> later) {
        static Stopped of(Inputs in) {
            double at = in.number("at");
            Machine<SiteReading, WatchNotice, WatchState> machine = rule(in).start();
            List<SiteReading> later = new ArrayList<>();
            for (SiteReading reading : SiteCalculations.record(in)) {
                if (hours(reading.time()) < at) {
                    machine.next(reading);
                } else {
                    later.add(reading);
                }
            }
            return new Stopped(machine.state().toText(), List.copyOf(later));
        }
    }

    /**
     * A watch that goes on from a state in which some numbers were put in the place of others: what it knows at an hour, and
     * what it tells until the end, each only where it is asked for.
     */
    private static final class GoneOn {
        private final Machine<SiteReading, WatchNotice, WatchState> machine;
        private final Iterator<SiteReading> later;
        private final double until;
        private final List<WatchNotice> told = new ArrayList<>();
        private Optional<SiteReading> following;
        private Optional<StateParts> kept = Optional.empty();
        private boolean ended;

        GoneOn(Inputs in) {
            WatchRule rule = rule(in);
            Stopped stopped = STOPPED.computeIfAbsent(key(in) + "|" + in.text("at"), key -> Stopped.of(in));
            String state = StateParts.put(stopped.state(), in.text("part"), in.text("put"));
            machine = rule.startFromText(state);
            later = stopped.later().iterator();
            until = in.has("until") ? in.number("until") : Double.NEGATIVE_INFINITY;
            following = first(later);
        }

        private static Optional<SiteReading> first(Iterator<SiteReading> readings) {
            return readings.hasNext() ? Optional.of(readings.next()) : Optional.empty();
        }

        private void goOn(double to) {
            while (following.isPresent() && hours(following.orElseThrow().time()) < to) {
                told.addAll(machine.next(following.orElseThrow()));
                following = first(later);
            }
        }

        private void keep() {
            if (kept.isEmpty()) {
                goOn(until);
                kept = Optional.of(StateParts.of(machine.state().toText()));
            }
        }

        synchronized StateParts kept() {
            keep();
            return kept.orElseThrow();
        }

        synchronized List<WatchNotice> told() {
            if (!ended) {
                if (until > Double.NEGATIVE_INFINITY) {
                    keep();
                }
                goOn(Double.POSITIVE_INFINITY);
                told.addAll(machine.finish());
                ended = true;
            }
            return told;
        }
    }

    /** Once a row: each puts other numbers. */
    private static GoneOn goneOn(Inputs in) {
        List<String> asked = Arrays.asList(
                key(in), in.text("at"), in.text("part"), in.text("put"), in.has("until") ? in.text("until") : "");
        return GONE_ON.of(asked, () -> new GoneOn(in));
    }

    /** What a watch tells that is stopped again and again and goes on from the text of its state, and what it knows at the end. */
    private record Cut(List<WatchNotice> told, StateParts state) {}

    /** From an hour on until another the watch is stopped after every so many readings. */
    private static Cut cut(Inputs in) {
        String place = String.join("|", key(in), in.text("every"), in.text("begin"), in.text("cease"));
        return STOPPED_OFTEN.computeIfAbsent(place, key -> {
            WatchRule rule = rule(in);
            Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
            List<WatchNotice> told = new ArrayList<>();
            int count = 0;
            for (SiteReading reading : SiteCalculations.record(in)) {
                told.addAll(machine.next(reading));
                count++;
                double hour = hours(reading.time());
                if (count % in.integer("every") == 0 && hour >= in.number("begin") && hour < in.number("cease")) {
                    machine = rule.startFromText(machine.state().toText());
                }
            }
            StateParts state = StateParts.of(machine.state().toText());
            told.addAll(machine.finish());
            return new Cut(List.copyOf(told), state);
        });
    }

    /** What became of readings by their stamps: the last one taken, how many are held, and how many were left out. */
    private record Stamps(double last, int held, int remarks, int leftOut, int leftOutAtEnd) {}

    private static Stamps stamps(Inputs in) {
        Machine<SiteReading, WatchNotice, WatchState> machine = rule(in).start();
        int remarks = 0;
        int leftOut = 0;
        for (double second : in.sample("stamps")) {
            Instant time = SiteRecipe.START.plusSeconds((long) second);
            List<WatchNotice> told = machine.next(new SiteReading(time, 0.12, 0.7, 0));
            remarks += (int) told.stream().filter(WatchCalculations::isOfStamps).count();
            leftOut += leftOut(told);
        }
        StateText state = StateParts.of(machine.state().toText()).whole();
        long last = state.count("lastTaken");
        return new Stamps(
                last == Long.MIN_VALUE ? NONE : hours(Instant.ofEpochSecond(0, last)),
                state.counts("heldTimes").length,
                remarks,
                leftOut,
                leftOut + leftOut(machine.finish()));
    }

    private static boolean isOfStamps(WatchNotice notice) {
        return notice.finding().name() == FindingName.FALSE_STAMPS;
    }

    /** The detail of the remark begins with the count. */
    private static int leftOut(List<WatchNotice> told) {
        return told.stream()
                .filter(WatchCalculations::isOfStamps)
                .mapToInt(each -> Integer.parseInt(each.finding().detail().split(" ")[0]))
                .sum();
    }

    private static StateParts state(Inputs in) {
        Machine<SiteReading, WatchNotice, WatchState> machine = rule(in).start();
        for (SiteReading reading : SiteCalculations.record(in)) {
            machine.next(reading);
        }
        return StateParts.of(machine.state().toText());
    }

    private static WatchReport watched(Inputs in) {
        return WATCHED.computeIfAbsent(key(in), key -> rule(in).watch(SiteCalculations.record(in)));
    }

    private static String key(Inputs in) {
        return SiteCalculations.key(in) + "|" + (in.has("alarm") ? in.text("alarm") : "");
    }

    private static WatchRule rule(Inputs in) {
        WatchRule rule = WatchRule.of(SiteCalculations.baseline(in));
        return in.has("alarm") && in.number("alarm") > 0 ? rule.withAlarmLevel(in.number("alarm")) : rule;
    }
}
