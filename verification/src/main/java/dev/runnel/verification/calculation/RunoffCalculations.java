package dev.runnel.verification.calculation;

import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.design.DoubleTriangle;
import dev.runnel.rainfall.design.DrainedArea;
import dev.runnel.rainfall.design.DryWeatherDesign;
import dev.runnel.rainfall.design.FlowPath;
import dev.runnel.rainfall.design.HuffQuartile;
import dev.runnel.rainfall.design.NrcsType;
import dev.runnel.rainfall.design.RationalMethod;
import dev.runnel.rainfall.design.RunoffCoefficient;
import dev.runnel.rainfall.design.StormShape;
import dev.runnel.rainfall.design.SymmetricProfile;
import dev.runnel.rainfall.response.Recession;
import dev.runnel.rainfall.response.ReturnToDryWeather;
import dev.runnel.rainfall.response.RunoffVolume;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Time distributions of design storms, and the flows that simple methods make of rain and of dry weather. */
final class RunoffCalculations {
    private static final String AREA = "hectares coefficients entry_minutes flow_minutes routing?";
    private static final String PATH = "length gradient?";
    private static final String HEADS = "heads litres infiltration trade";

    private RunoffCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "design.nrcs.share",
                        "1",
                        "type hours",
                        in -> NrcsType.valueOf(in.text("type")).depthShare(in.number("hours") / 24)),
                of(
                        "design.nrcs.peak",
                        "mm/h",
                        "type depth step_minutes",
                        in -> NrcsType.valueOf(in.text("type"))
                                .storm(in.number("depth"), minutes(in, "step_minutes"))
                                .peakMmPerHour()),
                of(
                        "design.huff.share",
                        "1",
                        "quartile fraction",
                        in -> quartile(in).depthShare(in.number("fraction"))),
                of(
                        "design.shape.depth",
                        "mm",
                        "times shares depth minutes step_minutes factor block",
                        in -> DesignStorm.of(
                                        "table",
                                        StormShape.through(in.sample("times"), in.sample("shares")),
                                        minutes(in, "minutes"),
                                        in.number("depth"),
                                        minutes(in, "step_minutes"))
                                .multipliedBy(in.number("factor"))
                                .depths()[in.integer("block") - 1]),
                of(
                        "design.symmetric-profile.share",
                        "1",
                        "profile_a profile_b fraction",
                        in -> SymmetricProfile.of(in.number("profile_a"), in.number("profile_b"))
                                .depthShare(in.number("fraction"))),
                of(
                        "design.double-triangle.share",
                        "1",
                        "depth minutes intense_depth intense_minutes position fraction",
                        in -> DoubleTriangle.of(
                                        in.number("depth"),
                                        minutes(in, "minutes"),
                                        in.number("intense_depth"),
                                        minutes(in, "intense_minutes"),
                                        in.number("position"))
                                .depthShare(in.number("fraction"))),
                of("rational.coefficient", "1", "hectares coefficients", in -> area(in).coefficient()),
                of(
                        "rational.peak",
                        "m3/s",
                        AREA + " intensity",
                        in -> method(in).peakM3PerS(in.number("intensity"))),
                of(
                        "rational.british-peak",
                        "m3/s",
                        "hectares coefficients entry_minutes flow_minutes intensity",
                        in -> RationalMethod.of(area(in), minutes(in, "entry_minutes"))
                                .withTimeOfFlow(minutes(in, "flow_minutes"))
                                .modified()
                                .peakM3PerS(in.number("intensity"))),
                of(
                        "rational.peak-of-table",
                        "m3/s",
                        AREA + " table years",
                        in -> method(in).peakM3PerS(table(in), in.number("years"))),
                of(
                        "rational.flow",
                        "m3/s",
                        AREA + " table years minutes step_minutes step",
                        in -> method(in)
                                .hydrograph(
                                        table(in),
                                        in.number("years"),
                                        minutes(in, "minutes"),
                                        minutes(in, "step_minutes"))
                                .value(in.integer("step"))),
                of(
                        "rational.storage",
                        "m3",
                        AREA + " table years minutes release",
                        in -> method(in)
                                .storageM3(
                                        table(in), in.number("years"), minutes(in, "minutes"), in.number("release"))),
                of("flow-path.kirpich", "min", PATH, in -> toMinutes(path(in).kirpich())),
                of(
                        "flow-path.kerby",
                        "min",
                        PATH + " retardance",
                        in -> toMinutes(path(in).kerby(in.number("retardance")))),
                of(
                        "flow-path.airport",
                        "min",
                        PATH + " coefficient",
                        in -> toMinutes(path(in).airport(RunoffCoefficient.of("table", in.number("coefficient"))))),
                of(
                        "flow-path.at-velocity",
                        "min",
                        PATH + " velocity",
                        in -> toMinutes(path(in).atVelocity(in.number("velocity")))),
                of("dry-weather.flow", "m3/d", HEADS, in -> heads(in).dryWeatherM3PerDay()),
                of("dry-weather.formula-a", "m3/d", HEADS, in -> heads(in).formulaAM3PerDay()),
                of(
                        "dry-weather.multiple",
                        "m3/d",
                        HEADS + " times",
                        in -> heads(in).multipleM3PerDay(in.number("times"))),
                of("dry-weather.full-flow", "m3/d", HEADS, in -> heads(in).fullFlowM3PerDay()),
                of("dry-weather.harmon", "1", HEADS, in -> heads(in).harmonFactor()),
                of("dry-weather.babbitt", "1", HEADS, in -> heads(in).babbittFactor()),
                of(
                        "response.recession-share",
                        "1",
                        "flow minutes",
                        in -> Recession.of(
                                        RegularSeries.of(RainInputs.START, Duration.ofMinutes(10), in.sample("flow")))
                                .shareAfter(minutes(in, "minutes"))),
                of("response.runoff-percent", "%", "rain area flow dry", in -> {
                    RegularSeries rain = RegularSeries.of(RainInputs.START, Duration.ofMinutes(10), in.sample("rain"));
                    return RunoffVolume.of(
                                    rain.interval(),
                                    rain,
                                    in.number("area"),
                                    RegularSeries.of(RainInputs.START, Duration.ofMinutes(10), in.sample("flow")),
                                    RegularSeries.of(RainInputs.START, Duration.ofMinutes(10), in.sample("dry")))
                            .percent()
                            .orElseThrow();
                }),
                of(
                        "response.return-to-dry-weather",
                        "min",
                        "flow dry rain_end allowance held_minutes",
                        in -> toMinutes(returned(in).time().orElseThrow())));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    private static Duration minutes(Inputs in, String name) {
        return Duration.ofNanos(Math.round(in.number(name) * 60e9));
    }

    private static double toMinutes(Duration duration) {
        return duration.toNanos() / 60e9;
    }

    private static HuffQuartile quartile(Inputs in) {
        return List.of(HuffQuartile.values()).get(in.integer("quartile") - 1);
    }

    private static DdfTable table(Inputs in) {
        return DdfTable.parse(in.text("table"), ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
    }

    private static DrainedArea area(Inputs in) {
        DrainedArea area = DrainedArea.none();
        double[] hectares = in.sample("hectares");
        double[] coefficients = in.sample("coefficients");
        for (int i = 0; i < hectares.length; i++) {
            area = area.with(RunoffCoefficient.of("surface " + i, coefficients[i]), hectares[i]);
        }
        return area;
    }

    private static RationalMethod method(Inputs in) {
        RationalMethod plain =
                RationalMethod.of(area(in), minutes(in, "entry_minutes")).withTimeOfFlow(minutes(in, "flow_minutes"));
        return in.has("routing") ? plain.withRouting(in.number("routing")) : plain;
    }

    private static FlowPath path(Inputs in) {
        FlowPath path = FlowPath.ofLength(in.number("length"));
        return in.has("gradient") ? path.withGradient(in.number("gradient")) : path;
    }

    private static DryWeatherDesign heads(Inputs in) {
        return DryWeatherDesign.ofPopulation(in.number("heads"))
                .withLitresPerHead(in.number("litres"))
                .withInfiltration(in.number("infiltration"))
                .withTradeEffluent(in.number("trade"));
    }

    private static ReturnToDryWeather returned(Inputs in) {
        Duration step = Duration.ofMinutes(10);
        RegularSeries flow = RegularSeries.of(RainInputs.START, step, in.sample("flow"));
        return ReturnToDryWeather.of(
                RainInputs.START.plus(minutes(in, "rain_end")),
                flow,
                RegularSeries.of(RainInputs.START, step, in.sample("dry")),
                in.number("allowance"),
                minutes(in, "held_minutes"));
    }
}
