package dev.runnel.verification.benchmark;

import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.SlidingMaximum;
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
 * The greatest depths of a year of minutes in sixty durations of 1 to 2,880 minutes.
 *
 * <pre>mvn -q package -Dbench=SlidingMaximum</pre>
 */
@State(Scope.Thread)
public class SlidingMaximumBenchmark extends TimedBenchmark {
    private static final int MINUTES = InventedRain.MINUTES;
    private static final int DURATIONS = 60;
    private static final int STEPS = MINUTES * DURATIONS;

    private final double[] depths = InventedRain.minutes(SEED);
    private final RegularSeries rain = InventedRain.series(depths);
    private final int[] minutes = new int[DURATIONS];
    private SlidingMaximum maximum = SlidingMaximum.of(Duration.ofMinutes(1));

    /** Durations in geometric steps, and the check. */
    @Setup
    public void fill() {
        List<Duration> durations = new ArrayList<>();
        for (int i = 0; i < DURATIONS; i++) {
            minutes[i] = i == 0 ? 1 : Math.max(minutes[i - 1] + 1, (int) Math.pow(2880, i / (DURATIONS - 1.0)));
            durations.add(Duration.ofMinutes(minutes[i]));
        }
        maximum = SlidingMaximum.of(durations);
        List<PeakDepth> peaks = peaks();
        double[] expected = prefixLoop();
        for (int i = 0; i < DURATIONS; i++) {
            requireClose("peak", peaks.get(i).depthMm(), expected[i], 1e-9);
        }
    }

    /** All durations. */
    @Benchmark
    @OperationsPerInvocation(STEPS)
    @Against(
            row = "60 sliding maxima of a year of minutes, a minute and duration",
            rival = "prefixLoop",
            named = "loop over sums from the start",
            goal = 8)
    public List<PeakDepth> peaks() {
        return maximum.peaks(rain);
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(STEPS)
    public double[] prefixLoop() {
        double[] sums = new double[MINUTES + 1];
        for (int i = 0; i < MINUTES; i++) {
            sums[i + 1] = sums[i] + depths[i];
        }
        double[] most = new double[DURATIONS];
        for (int d = 0; d < DURATIONS; d++) {
            double best = 0;
            for (int i = minutes[d]; i <= MINUTES; i++) {
                best = Math.max(best, sums[i] - sums[i - minutes[d]]);
            }
            most[d] = best;
        }
        return most;
    }
}
