package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.DepthCondition;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.LevelFlow;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.monitoring.SensorUncertainty;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.hydraulics.monitoring.SurchargeWatch;
import dev.runnel.hydraulics.monitoring.VelocityCondition;
import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.CrumpWeir;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Whole records of a monitor, faults among the readings: flows, qualities, counts, surcharge; and flow from levels at a weir. */
final class RecordCalculations {
    private static final String SITE = "offset bed factor n gradient " + Sections.INPUTS;
    private static final String RECORD = "times depths velocity_times velocities " + SITE;
    private static final String HISTORY = "which settings depths velocities " + SITE;
    private static final String SURCHARGE = "times levels limit gap which";
    private static final String WEIR = "width crest_height crest levels tailwaters? which";

    private RecordCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "monitor.record.flow",
                        "m3/s",
                        "which " + RECORD,
                        in -> record(in).flow().value(in.integer("which"))),
                of(
                        "monitor.record.level",
                        "m",
                        "which " + RECORD,
                        in -> record(in).level().value(in.integer("which"))),
                of(
                        "monitor.record.flow-quality",
                        "1",
                        "which " + RECORD,
                        in -> record(in).flow().quality(in.integer("which")).toCode()),
                of(
                        "monitor.record.level-quality",
                        "1",
                        "which " + RECORD,
                        in -> record(in).level().quality(in.integer("which")).toCode()),
                of(
                        "monitor.record.depth-count",
                        "1",
                        "condition " + RECORD,
                        in -> record(in).counts().of(DepthCondition.valueOf(in.text("condition")))),
                of(
                        "monitor.record.velocity-count",
                        "1",
                        "condition " + RECORD,
                        in -> record(in).counts().of(VelocityCondition.valueOf(in.text("condition")))),
                of(
                        "monitor.record.depth-count-of-two",
                        "1",
                        "condition " + RECORD,
                        in -> record(in)
                                .counts()
                                .plus(record(in).counts())
                                .of(DepthCondition.valueOf(in.text("condition")))),
                of("monitor.record.size", "1", RECORD, in -> record(in).size()),
                of("monitor.record.depths-alone", "1", RECORD, in -> record(in).depthsAlone()),
                of(
                        "monitor.record.velocities-alone",
                        "1",
                        RECORD,
                        in -> record(in).velocitiesAlone()),
                ofHistory("monitor.history.flow", "m3/s", FlowRecord::flow),
                ofHistory("monitor.history.level", "m", FlowRecord::level),
                ofHistory("monitor.history.capacity-use", "1", FlowRecord::capacityUse),
                ofHistory("monitor.history.velocity-ratio", "1", FlowRecord::velocityRatio),
                ofHistory(
                        "monitor.history.uncertainty",
                        "m3/s",
                        record -> record.uncertainty(SensorUncertainty.of(0.004, 0.03))),
                ofHistory(
                        "monitor.history.relative-uncertainty",
                        "1",
                        record -> record.relativeUncertainty(SensorUncertainty.of(0.004, 0.03))),
                of("monitor.bulk-flow", "m3/s", "which depths velocities " + SITE, RecordCalculations::bulk),
                of(
                        "monitor.bulk-flow-in-place",
                        "m3/s",
                        "which depths velocities " + SITE,
                        RecordCalculations::inPlace),
                of(
                        "monitor.reading-velocity",
                        "m/s",
                        "depth velocity " + SITE,
                        in -> MonitoredSite.of(in)
                                .flow(in.number("depth"), in.number("velocity"))
                                .velocity()),
                of(
                        "monitor.reading-flow",
                        "m3/s",
                        "depth velocity " + SITE,
                        in -> MonitoredSite.of(in)
                                .flow(
                                        Reading.of(Instant.EPOCH, in.number("depth")),
                                        Reading.of(Instant.EPOCH, in.number("velocity")))
                                .value()),
                of(
                        "monitor.uniform-flow",
                        "m3/s",
                        "depth " + SITE,
                        in -> MonitoredSite.of(in)
                                .uniformFlow(Series.of(new long[] {0}, new double[] {in.number("depth")}))
                                .flow()
                                .value(0)),
                of("surcharge.count", "1", SURCHARGE, in -> periods(in, true).size()),
                ofPeriod("surcharge.start", "s", each -> seconds(each.interval().start())),
                ofPeriod("surcharge.end", "s", each -> seconds(each.interval().end())),
                ofPeriod("surcharge.peak", "m", SurchargePeriod::peakAbove),
                ofPeriod("surcharge.peak-time", "s", each -> seconds(each.peakTime())),
                ofPeriod("surcharge.readings", "1", SurchargePeriod::readings),
                ofPeriod("surcharge.duration", "s", each -> each.duration().toSeconds()),
                ofPeriod("surcharge.complete", "1", each -> each.isComplete() ? 1 : 0),
                of("surcharge.ended", "1", SURCHARGE, in -> periods(in, false).size()),
                of("level-flow.flow", "m3/s", WEIR, in -> rated(in).flow().value(in.integer("which"))),
                of(
                        "level-flow.quality",
                        "1",
                        WEIR,
                        in -> rated(in).flow().quality(in.integer("which")).toCode()),
                of("level-flow.outside", "1", WEIR, in -> rated(in).outside()),
                of("level-flow.missing", "1", WEIR, in -> rated(in).missing()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Calculation ofHistory(String name, String unit, Function<FlowRecord, Series> question) {
        return of(name, unit, HISTORY, in -> question.apply(history(in)).value(in.integer("which")));
    }

    private static Calculation ofPeriod(String name, String unit, ToDoubleFunction<SurchargePeriod> question) {
        return of(
                name,
                unit,
                SURCHARGE,
                in -> question.applyAsDouble(periods(in, true).get(in.integer("which"))));
    }

    private static double seconds(Instant time) {
        return time.getEpochSecond();
    }

    private static FlowRecord record(Inputs in) {
        return MonitoredSite.of(in).flow(series(in, "times", "depths"), series(in, "velocity_times", "velocities"));
    }

    /** Settings such as "bed 2 5 0.11": from minute 2 to 5; readings a minute apart. */
    private static FlowRecord history(Inputs in) {
        MonitorHistory history = MonitorHistory.of(MonitoredSite.of(in));
        for (String setting : in.text("settings").split(";")) {
            String[] words = setting.split(" ");
            Interval interval = Interval.of(
                    Instant.EPOCH.plusSeconds(60 * Long.parseLong(words[1])),
                    Instant.EPOCH.plusSeconds(60 * Long.parseLong(words[2])));
            double value = Double.parseDouble(words[3]);
            history = history.with(interval, monitor -> set(monitor, words[0], value));
        }
        double[] depths = in.sample("depths");
        long[] times = new long[depths.length];
        Arrays.setAll(times, i -> Duration.ofMinutes(i).toNanos());
        return history.flow(Series.of(times, depths), Series.of(times, in.sample("velocities")));
    }

    private static PipeMonitor set(PipeMonitor monitor, String what, double value) {
        return switch (what) {
            case "bed" -> monitor.withoutSediment().withSediment(value);
            case "offset" -> monitor.withSensorOffset(value);
            case "n" ->
                PipeMonitor.of(monitor.conduit().withResistance(Manning.of(value)))
                        .withSensorOffset(monitor.sensorOffset())
                        .withVelocityFactor(monitor.velocityFactor());
            default -> throw new IllegalArgumentException("setting must be bed, offset or n, was " + what);
        };
    }

    private static Series series(Inputs in, String times, String values) {
        return Series.of(nanos(in.sample(times)), in.sample(values));
    }

    private static long[] nanos(double[] seconds) {
        return Arrays.stream(seconds)
                .mapToLong(each -> Duration.ofSeconds((long) each).toNanos())
                .toArray();
    }

    private static double bulk(Inputs in) {
        double[] depths = in.sample("depths");
        double[] flows = new double[depths.length];
        MonitoredSite.of(in).flow(depths, in.sample("velocities"), flows);
        return flows[in.integer("which")];
    }

    /** The flows written over the velocities. */
    private static double inPlace(Inputs in) {
        double[] velocities = in.sample("velocities");
        MonitoredSite.of(in).flow(in.sample("depths"), velocities, velocities);
        return velocities[in.integer("which")];
    }

    /** All periods, or those that ended before the record did; the machine is stopped and started again half-way. */
    private static List<SurchargePeriod> periods(Inputs in, boolean toTheEnd) {
        SurchargeRule rule =
                SurchargeRule.above(in.number("limit")).withMaximumGap(Duration.ofSeconds(in.integer("gap")));
        double[] times = in.sample("times");
        double[] levels = in.sample("levels");
        List<SurchargePeriod> found = new ArrayList<>();
        SurchargeWatch watch = rule.start();
        for (int i = 0; i < times.length; i++) {
            if (i == times.length / 2) {
                watch = rule.start(rule.parseState(watch.state().toText()));
            }
            found.addAll(watch.next(Reading.of(Instant.ofEpochSecond((long) times[i]), levels[i])));
        }
        if (toTheEnd) {
            watch.ongoing().ifPresent(found::add);
        }
        return found;
    }

    private static LevelFlow.Rated rated(Inputs in) {
        CrumpWeir weir =
                CrumpWeir.of(ApproachChannel.ofWidth(in.number("width")).withCrestHeight(in.number("crest_height")));
        double[] levels = in.sample("levels");
        long[] times = new long[levels.length];
        Arrays.setAll(times, i -> Duration.ofMinutes(i).toNanos());
        Series level = Series.of(times, levels);
        return in.has("tailwaters") && !"-".equals(in.text("tailwaters"))
                ? LevelFlow.drowned(weir, in.number("crest"), level, Series.of(times, in.sample("tailwaters")))
                : LevelFlow.of(weir, in.number("crest")).flow(level);
    }
}
