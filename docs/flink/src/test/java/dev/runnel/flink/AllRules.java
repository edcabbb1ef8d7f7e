package dev.runnel.flink;

import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import dev.runnel.timeseries.alarm.AlarmEvent;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.change.CusumRule;
import dev.runnel.timeseries.change.HampelRule;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.RangeCheck;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.flink.api.common.typeinfo.TypeInformation;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.datastream.SingleOutputStreamOperator;

/** Machines of every kind on the same events: in one job, and in the plain loop that the job must equal. */
final class AllRules {
    static final InventedSites SITES = InventedSites.every(900, 30);

    private static final SpillCount SPILLS = SpillCount.twelveTwentyFour();
    private static final ThresholdAlarm OVER_THE_CREST = ThresholdAlarm.high(0.3);

    private final Map<String, SiteRule<?, ?, ?, String>> rules = new LinkedHashMap<>();

    AllRules() {
        String baseline = SITES.baseline(1, 28);
        add(
                "alarm",
                site -> ThresholdAlarm.high(0.25)
                        .withDeadband(0.02)
                        .withOnDelay(Duration.ofMinutes(30))
                        .withMaximumGap(Duration.ofHours(2)),
                AllRules::depth);
        add("surcharge", site -> SurchargeRule.above(0.4), AllRules::depth);
        add(
                "rain-events",
                site -> EventSeparation.of(Duration.ofHours(6)).ofSteps(SITES.stepDuration()),
                event -> Reading.of(time(event), event.rain()));
        add("cusum", site -> CusumRule.ofReferenceAndDecision(0.05, 0.8).withTarget(0.7), AllRules::velocity);
        add("wild", site -> HampelRule.of(4, 3), AllRules::velocity);
        add(
                "checks",
                site -> QualityChecks.of(RangeCheck.of(0, 0.5), FlatLineCheck.of(2, 4, 0.0005)),
                AllRules::depth,
                checked -> !checked.flags().isEmpty());
        rules.put(
                "watch",
                SiteRule.of(
                        site -> WatchRule.of(SiteBaseline.parse(InventedSites.MONITOR, baseline))
                                .withAlarmLevel(0.5),
                        InventedSites::reading,
                        (site, told) -> line("watch", site, told)));
    }

    /** How often water stood over the crest of an overflow. */
    record Discharge(String site, long from, long to) {}

    /** The second function of a chain: its events are what the first one told. */
    record SpillRules() implements SiteRules<Discharge, Interval, Interval, TextState, String> {
        @Override
        public SpillCount rule(String site) {
            return SPILLS;
        }

        @Override
        public String site(Discharge event) {
            return event.site();
        }

        @Override
        public long epochNanos(Discharge event) {
            return event.from();
        }

        @Override
        public Interval input(Discharge event) {
            return Interval.of(EpochNanos.toInstant(event.from()), EpochNanos.toInstant(event.to()));
        }

        @Override
        public String result(String site, Interval told) {
            return line("spill", site, told);
        }
    }

    private <O, S extends MachineState> void add(
            String name, SiteRule.RuleOf<Reading, O, S> rule, SiteRule.InputOf<Reading> input) {
        rules.put(name, SiteRule.of(rule, input, (site, told) -> line(name, site, told)));
    }

    /** As above, but what does not matter is told as an empty line. */
    private <O, S extends MachineState> void add(
            String name, SiteRule.RuleOf<Reading, O, S> rule, SiteRule.InputOf<Reading> input, Matters<O> matters) {
        rules.put(name, SiteRule.of(rule, input, (site, told) -> matters.test(told) ? line(name, site, told) : ""));
    }

    private interface Matters<O> extends java.io.Serializable {
        boolean test(O told);
    }

    private static String line(String rule, String site, Object told) {
        return rule + "|" + site + "|" + Exact.text(told);
    }

    private static Instant time(SiteEvent event) {
        return EpochNanos.toInstant(event.epochNanos());
    }

    private static Reading depth(SiteEvent event) {
        return Reading.of(time(event), event.depth());
    }

    private static Reading velocity(SiteEvent event) {
        return Reading.of(time(event), event.velocity());
    }

    private static SiteRule<Reading, AlarmEvent, TextState, Discharge> discharges() {
        return SiteRule.of(site -> OVER_THE_CREST, AllRules::depth, AllRules::discharge);
    }

    /** A discharge without end says nothing yet. */
    private static Discharge discharge(String site, AlarmEvent told) {
        return told.interval()
                .map(each -> new Discharge(site, EpochNanos.of(each.start()), EpochNanos.of(each.end())))
                .orElse(new Discharge(site, 0, 0));
    }

    /** All rules as one job; what is told goes to a folder, what is refused to another. */
    void build(DataStream<SiteEvent> events, Duration bound, java.nio.file.Path told, java.nio.file.Path refused) {
        List<DataStream<String>> results = new ArrayList<>();
        List<DataStream<String>> refusals = new ArrayList<>();
        rules.forEach((name, rule) -> one(name, rule, events, bound, results, refusals));
        TypeInformation<Discharge> discharges = TypeInformation.of(Discharge.class);
        DataStream<Discharge> overflow = RuleFunction.of(discharges(), SiteFiles.EVENTS, bound)
                .over(events, "discharge", discharges)
                .filter(each -> each.to() > each.from());
        results.add(RuleFunction.of(new SpillRules(), discharges, Duration.ZERO).over(overflow, "spill", Types.STRING));
        SiteFiles.write(union(results).filter(line -> !line.isEmpty()), told, "told");
        SiteFiles.write(union(refusals), refused, "refused");
    }

    private static DataStream<String> union(List<DataStream<String>> streams) {
        DataStream<String> all = streams.get(0);
        for (DataStream<String> each : streams.subList(1, streams.size())) {
            all = all.union(each);
        }
        return all;
    }

    private static <I, O, S extends MachineState> void one(
            String name,
            SiteRule<I, O, S, String> rule,
            DataStream<SiteEvent> events,
            Duration bound,
            List<DataStream<String>> results,
            List<DataStream<String>> refusals) {
        RuleFunction<SiteEvent, I, O, S, String> function = RuleFunction.of(rule, SiteFiles.EVENTS, bound);
        SingleOutputStreamOperator<String> told = function.over(events, name, Types.STRING);
        results.add(told);
        refusals.add(
                told.getSideOutput(function.refusedTag()).map(each -> name + "|" + SiteFiles.line(each), Types.STRING));
    }

    /** What the machines tell in a plain loop over sorted events of one site. */
    List<String> alone(String site, List<SiteEvent> events) {
        List<String> told = new ArrayList<>();
        rules.values().forEach(rule -> told.addAll(alone(rule, site, events)));
        List<Interval> discharges = new ArrayList<>();
        OVER_THE_CREST
                .over(events.stream().map(AllRules::depth).toList())
                .forEach(each -> each.interval().ifPresent(discharges::add));
        SPILLS.over(discharges).forEach(each -> told.add(line("spill", site, each)));
        told.removeIf(String::isEmpty);
        return told;
    }

    private static <I, O, S extends MachineState> List<String> alone(
            SiteRule<I, O, S, String> rule, String site, List<SiteEvent> events) {
        return rule.rule(site).over(events.stream().map(rule::input).toList()).stream()
                .map(told -> rule.result(site, told))
                .toList();
    }

    int size() {
        return rules.size();
    }
}
