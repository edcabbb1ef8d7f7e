package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.FlowUncertainty;
import dev.runnel.hydraulics.monitoring.FullnessTime;
import dev.runnel.hydraulics.monitoring.SensorUncertainty;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Flow from readings of depth and velocity, its uncertainty, and the time above a fullness. */
final class MonitorCalculations {
    private static final String SITE = "offset bed factor n gradient " + Sections.INPUTS;
    private static final String READING = "depth velocity " + SITE;
    private static final String SENSORS = "u_depth u_velocity u_height u_factor " + READING;
    private static final String TIMES = "times depths share gap " + SITE;

    private MonitorCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of("monitor.level", "m", READING, in -> single(in).level().value(0)),
                of(
                        "monitor.mean-velocity",
                        "m/s",
                        READING,
                        in -> single(in).velocity().value(0)),
                of("monitor.discharge", "m3/s", READING, in -> single(in).flow().value(0)),
                of(
                        "monitor.one-discharge",
                        "m3/s",
                        READING,
                        in -> MonitoredSite.of(in)
                                .flow(in.number("depth"), in.number("velocity"))
                                .discharge()),
                of("monitor.fullness", "1", READING, in -> single(in).fullness().value(0)),
                of(
                        "monitor.capacity-use",
                        "1",
                        READING,
                        in -> single(in).capacityUse().value(0)),
                of(
                        "monitor.velocity-ratio",
                        "1",
                        READING,
                        in -> single(in).velocityRatio().value(0)),
                of(
                        "monitor.area",
                        "m2",
                        "level " + SITE,
                        in -> MonitoredSite.of(in).flowArea(in.number("level"))),
                of(
                        "monitor.hydraulic-radius",
                        "m",
                        "level " + SITE,
                        in -> MonitoredSite.of(in).hydraulicRadius(in.number("level"))),
                of(
                        "monitor.uniform-velocity",
                        "m/s",
                        "level " + SITE,
                        in -> MonitoredSite.of(in).uniformVelocity(in.number("level"))),
                of(
                        "monitor.uncertainty",
                        "m3/s",
                        SENSORS,
                        in -> single(in).uncertainty(sensors(in)).value(0)),
                budget("monitor.uncertainty-of-depth", "m3/s", FlowUncertainty::depth),
                budget("monitor.uncertainty-of-velocity", "m3/s", FlowUncertainty::velocity),
                budget("monitor.uncertainty-of-height", "m3/s", FlowUncertainty::height),
                budget("monitor.uncertainty-of-factor", "m3/s", FlowUncertainty::velocityFactor),
                budget("monitor.standard-uncertainty", "m3/s", FlowUncertainty::standard),
                budget("monitor.relative-uncertainty", "1", FlowUncertainty::relative),
                of(
                        "monitor.expanded-uncertainty",
                        "m3/s",
                        "coverage " + SENSORS,
                        in -> uncertainty(in).expanded(in.number("coverage"))),
                of("monitor.time-above-fullness", "1", TIMES, in -> time(in).share()),
                of("monitor.time-covered", "1", TIMES, in -> time(in).coverage()));
    }

    private static Calculation of(String name, String unit, String inputs, Function<Inputs, Double> question) {
        return Calculation.of("hydraulics", name, unit, inputs, question::apply);
    }

    private static Calculation budget(String name, String unit, ToDoubleFunction<FlowUncertainty> question) {
        return of(name, unit, SENSORS, in -> question.applyAsDouble(uncertainty(in)));
    }

    /** A record of a single reading. */
    private static FlowRecord single(Inputs in) {
        long[] time = {0};
        return MonitoredSite.of(in)
                .flow(
                        Series.of(time, new double[] {in.number("depth")}),
                        Series.of(time, new double[] {in.number("velocity")}));
    }

    private static SensorUncertainty sensors(Inputs in) {
        return SensorUncertainty.of(in.number("u_depth"), in.number("u_velocity"))
                .withHeight(in.number("u_height"))
                .withVelocityFactor(in.number("u_factor"));
    }

    private static FlowUncertainty uncertainty(Inputs in) {
        return MonitoredSite.of(in)
                .uncertainty(in.number("depth"), in.number("velocity"), sensors(in))
                .orElseThrow();
    }

    private static FullnessTime time(Inputs in) {
        double[] depths = in.sample("depths");
        double[] velocities = new double[depths.length];
        Arrays.fill(velocities, 0.5);
        long[] times = Arrays.stream(in.sample("times"))
                .mapToLong(seconds -> Duration.ofSeconds((long) seconds).toNanos())
                .toArray();
        FlowRecord record = MonitoredSite.of(in).flow(Series.of(times, depths), Series.of(times, velocities));
        return FullnessTime.of(record, in.number("share"), Duration.ofSeconds(in.integer("gap")));
    }
}
