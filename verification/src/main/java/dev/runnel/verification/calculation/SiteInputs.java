package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.evidence.BaselineRule;
import dev.runnel.hydraulics.evidence.BaselineSearch;
import dev.runnel.hydraulics.evidence.SiteReading;
import dev.runnel.hydraulics.evidence.SiteRecord;
import dev.runnel.hydraulics.evidence.WatchReport;
import dev.runnel.hydraulics.evidence.WatchRule;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Interval;
import java.nio.DoubleBuffer;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A site's record as tables hold it: readings a quarter of an hour apart, and what is done to them, in rows of five numbers
 * (what, from hour, to hour, a, b). A record is learned from and watched once, however many figures a table asks of it.
 */
final class SiteInputs {
    static final String INPUTS =
            "depths velocities rains changes zone diameter n gradient? from_day? to_day? days? alarm?";
    static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final int STEP_MINUTES = 15;
    private static final int NUMBERS = 5;
    private static final Map<List<Object>, BaselineSearch> LEARNED = new ConcurrentHashMap<>();
    private static final Map<List<Object>, WatchReport> WATCHED = new ConcurrentHashMap<>();

    private SiteInputs() {}

    static BaselineSearch learned(Inputs in) {
        return LEARNED.computeIfAbsent(key(in), key -> rule(in).learn(record(in)));
    }

    static WatchReport watched(Inputs in) {
        return WATCHED.computeIfAbsent(key(in), key -> {
            WatchRule rule = WatchRule.of(learned(in).baseline().orElseThrow());
            return (in.has("alarm") ? rule.withAlarmLevel(in.number("alarm")) : rule).watch(record(in));
        });
    }

    static double hours(Instant time) {
        return Duration.between(START, time).toMillis() / 3.6e6;
    }

    static Instant at(double hour) {
        return START.plusMillis(Math.round(hour * 3.6e6));
    }

    private static List<Object> key(Inputs in) {
        List<Object> key = new ArrayList<>();
        for (String name : List.of("depths", "velocities", "rains")) {
            key.add(DoubleBuffer.wrap(in.sample(name)));
        }
        for (String name :
                List.of("changes", "zone", "diameter", "n", "gradient", "from_day", "to_day", "days", "alarm")) {
            key.add(in.has(name) ? in.text(name) : "");
        }
        return key;
    }

    private static BaselineRule rule(Inputs in) {
        PipeMonitor monitor = PipeMonitor.of(Conduit.of(
                CircularSection.ofDiameter(in.number("diameter")),
                Gradient.of(in.number("gradient", 0.005)),
                Manning.of(in.number("n"))));
        BaselineRule rule = BaselineRule.of(monitor).withZone(ZoneId.of(in.text("zone")));
        if (in.has("days")) {
            rule = rule.withDays(in.integer("days"));
        }
        return in.has("from_day")
                ? rule.withInterval(Interval.of(at(24 * in.number("from_day")), at(24 * in.number("to_day"))))
                : rule;
    }

    static SiteRecord record(Inputs in) {
        double[] depths = in.sample("depths");
        double[] velocities = in.sample("velocities");
        double[] rains = in.sample("rains");
        long[] minutes = new long[depths.length];
        Arrays.setAll(minutes, i -> (long) STEP_MINUTES * i);
        boolean[] lost = new boolean[depths.length];
        double[] changes = "-".equals(in.text("changes")) ? new double[0] : in.sample("changes");
        for (int i = 0; i < changes.length; i += NUMBERS) {
            int from = index(changes[i + 1], depths.length);
            int to = index(changes[i + 2], depths.length);
            change(
                    (int) changes[i],
                    from,
                    to,
                    changes[i + 3],
                    changes[i + 4],
                    depths,
                    velocities,
                    rains,
                    minutes,
                    lost);
        }
        List<SiteReading> readings = new ArrayList<>();
        for (int i = 0; i < depths.length; i++) {
            if (!lost[i]) {
                Instant time = START.plus(Duration.ofMinutes(minutes[i]));
                readings.add(new SiteReading(time, depths[i], velocities[i], rains[i]));
            }
        }
        return SiteRecord.ofReadings(readings);
    }

    private static int index(double hour, int size) {
        return Math.min(size, (int) Math.round(hour * 60 / STEP_MINUTES));
    }

    private static void change(
            int what,
            int from,
            int to,
            double a,
            double b,
            double[] depths,
            double[] velocities,
            double[] rains,
            long[] minutes,
            boolean[] lost) {
        double[] old = what == 12 ? rains.clone() : depths.clone();
        double[] oldVelocities = velocities.clone();
        for (int i = from; i < to; i++) {
            double between = a + (b - a) * (i - from) / (to - from);
            switch (what) {
                case 0 -> depths[i] *= between;
                case 1 -> velocities[i] *= between;
                case 2 -> depths[i] = a;
                case 3 -> velocities[i] = a;
                case 4 -> lost[i] = true;
                case 5 -> depths[i] = Double.NaN;
                case 6 -> velocities[i] = Double.NaN;
                case 7 -> depths[i] = old[from];
                case 8 -> velocities[i] = oldVelocities[from];
                case 9 -> velocities[i] = i % (int) b == 0 ? a : velocities[i];
                case 10 -> velocities[i] *= i % (int) b == 0 ? a : 1;
                case 11 -> {
                    int source = Math.max(0, Math.min(old.length - 1, i - (int) Math.round(a * 60 / STEP_MINUTES)));
                    depths[i] = old[source];
                    velocities[i] = oldVelocities[source];
                }
                case 12 -> {
                    int source = Math.max(0, Math.min(old.length - 1, i - (int) Math.round(a * 60 / STEP_MINUTES)));
                    rains[i] = old[source];
                }
                case 13 -> depths[i] *= Math.exp(a * Math.sin(2 * Math.PI * (minutes[i] / 60.0) / b));
                case 14 -> minutes[i] += (long) a;
                case 15 -> rains[i] = Double.NaN;
                default -> throw new IllegalArgumentException("changes must be of the kinds 0 to 15, was " + what);
            }
        }
    }
}
