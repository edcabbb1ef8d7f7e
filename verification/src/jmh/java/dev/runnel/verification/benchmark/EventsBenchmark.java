package dev.runnel.verification.benchmark;

import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Events of a year of minutes, six dry hours apart, without and with their peaks.
 *
 * <pre>mvn -q package -Dbench=Events</pre>
 */
@State(Scope.Thread)
public class EventsBenchmark extends TimedBenchmark {
    private static final int MINUTES = InventedRain.MINUTES;
    private static final int DRY = 360;

    private final double[] depths = InventedRain.minutes(SEED);
    private final RegularSeries rain = InventedRain.series(depths);
    private final EventSeparation plain =
            EventSeparation.of(Duration.ofMinutes(DRY)).withoutPeaks();
    private final EventSeparation withPeaks = EventSeparation.of(Duration.ofMinutes(DRY))
            .withPeakDurations(Duration.ofMinutes(5), Duration.ofMinutes(15), Duration.ofMinutes(60));

    /** The check: as many events as the rival finds, with as much rain. */
    @Setup
    public void check() {
        List<RainfallEvent> events = events();
        List<List<Double>> rivals = boxed();
        requireClose("number of events", events.size(), rivals.size(), 0);
        double rainOfEvents =
                events.stream().mapToDouble(RainfallEvent::depthMm).sum();
        requireClose("rain of events", rainOfEvents, sum(), 1e-9);
    }

    /** Without peaks. */
    @Benchmark
    @OperationsPerInvocation(MINUTES)
    @Against(row = "events of a year of minutes, a minute", rival = "sum", named = "floor: a plain sum", goal = 0.4)
    @Against(row = "events of a year of minutes, a minute", rival = "boxed", named = "lists of boxed depths")
    public List<RainfallEvent> events() {
        return plain.events(rain);
    }

    /** With three peaks each. */
    @Benchmark
    @OperationsPerInvocation(MINUTES)
    @Against(
            row = "events with three peaks each, a minute",
            rival = "boxedWithPeaks",
            named = "lists of boxed depths",
            goal = 12)
    public List<RainfallEvent> peaks() {
        return withPeaks.events(rain);
    }

    /** Floor. */
    @Benchmark
    @OperationsPerInvocation(MINUTES)
    public double sum() {
        double sum = 0;
        for (double depth : depths) {
            sum += depth;
        }
        return sum;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(MINUTES)
    public List<List<Double>> boxed() {
        List<List<Double>> events = new ArrayList<>();
        List<Double> event = new ArrayList<>();
        int dry = 0;
        for (double depth : depths) {
            dry = depth > 0 ? 0 : dry + 1;
            if (depth > 0 || !event.isEmpty()) {
                event.add(depth);
            }
            if (dry >= DRY && !event.isEmpty()) {
                events.add(event);
                event = new ArrayList<>();
            }
        }
        if (!event.isEmpty()) {
            events.add(event);
        }
        return events;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(MINUTES)
    public double boxedWithPeaks() {
        double all = 0;
        for (List<Double> event : boxed()) {
            for (int window : new int[] {5, 15, 60}) {
                double most = 0;
                for (int i = 0; i < event.size(); i++) {
                    double sum = event.subList(i, Math.min(i + window, event.size())).stream()
                            .mapToDouble(Double::doubleValue)
                            .sum();
                    most = Math.max(most, sum);
                }
                all += most;
            }
        }
        return all;
    }
}
