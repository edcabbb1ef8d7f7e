package dev.runnel.verification.benchmark;

import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Tips of a gauge to depths of two minutes, spread over the time since the tip before.
 *
 * <pre>mvn -q package -Dbench=Tips</pre>
 */
@State(Scope.Thread)
public class TipsBenchmark extends TimedBenchmark {
    private static final int TIPS = 100_000;
    private static final double TIP_MM = 0.2;
    private static final long STEP = 120_000_000_000L;
    private static final long CAP = 30 * STEP;

    private final TippingBucket bucket = TippingBucket.ofTip(TIP_MM);
    private final long[] times = new long[TIPS];
    private Tips tips = Tips.none();

    /** Tips seconds to hours apart, and the check: both forms hold the same rain. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        long time = 1_000_000 * STEP;
        for (int i = 0; i < TIPS; i++) {
            time += (long) (1e9 * Math.pow(10, 1 + 2.5 * random.nextDouble()));
            times[i] = time;
        }
        tips = Tips.ofEpochNanos(times);
        double sum = depth().statistics().sum();
        requireClose("rain", sum, TIPS * TIP_MM, 1e-9);
        requireClose(
                "rain of the rival",
                treeMap().values().stream().mapToDouble(Double::doubleValue).sum(),
                TIPS * TIP_MM,
                1e-9);
    }

    /** To steps. */
    @Benchmark
    @OperationsPerInvocation(TIPS)
    @Against(row = "tips to depths of 2 minutes, a tip", rival = "treeMap", named = "merging into a TreeMap", goal = 20)
    public RegularSeries depth() {
        return bucket.depth(tips, Duration.ofMinutes(2), TipSpreading.INTERVAL);
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(TIPS)
    public Map<Long, Double> treeMap() {
        TreeMap<Long, Double> depths = new TreeMap<>();
        depths.merge(Math.floorDiv(times[0], STEP), TIP_MM, Double::sum);
        for (int i = 1; i < TIPS; i++) {
            long from = Math.max(times[i - 1], times[i] - CAP);
            long length = times[i] - from;
            for (long step = Math.floorDiv(from, STEP); step * STEP < times[i]; step++) {
                long overlap = Math.min(times[i], (step + 1) * STEP) - Math.max(from, step * STEP);
                depths.merge(step, TIP_MM * overlap / length, Double::sum);
            }
        }
        return depths;
    }
}
