package dev.runnel.verification.benchmark;

import dev.runnel.timeseries.change.HampelRule;
import dev.runnel.timeseries.change.RollingMedian;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The median of each window of 101 readings, and the wild values by Hampel's rule.
 *
 * <pre>mvn -q package -Dbench=Median</pre>
 */
@State(Scope.Thread)
public class MedianBenchmark extends TimedBenchmark {
    private static final int READINGS = 20_000;
    private static final int HALF = 50;
    private static final int WIDTH = 2 * HALF + 1;
    private static final double LIMIT = 3;
    private static final double NORMAL = 1.482602218505602;

    private final RollingMedian median = RollingMedian.ofHalfWidth(HALF);
    private final HampelRule rule = HampelRule.of(HALF, LIMIT);
    private final double[] values = new double[READINGS];
    private final double[] out = new double[READINGS];

    /** Depths that follow each other, with a spike in two hundred, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        double wave = 0;
        for (int i = 0; i < READINGS; i++) {
            wave = 0.95 * wave + 0.01 * (random.nextDouble() - 0.5);
            double spike = random.nextInt(200) == 0 ? random.nextDouble() : 0;
            values[i] = Math.round((0.3 + wave + spike) * 1e4) / 1e4;
        }
        double[] ours = medians().clone();
        double[] sorted = copyAndSort();
        for (int i = HALF; i < READINGS - HALF; i++) {
            requireClose("median", ours[i], sorted[i], 0);
        }
        if (wild().length != twoSorts() || wild().length == 0) {
            throw new IllegalStateException("wild values must be " + twoSorts() + ", were " + wild().length);
        }
    }

    /** Medians. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    @Against(row = "rolling median of 101 readings", rival = "copyAndSort", named = "copy and sort", goal = 40)
    public double[] medians() {
        median.medians(values, out);
        return out;
    }

    /** Wild values. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    @Against(row = "Hampel's rule over 101 readings", rival = "twoSorts", named = "copy and two sorts", goal = 50)
    public int[] wild() {
        return rule.wildAmong(values);
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    public double[] copyAndSort() {
        double[] window = new double[WIDTH];
        for (int i = HALF; i < READINGS - HALF; i++) {
            System.arraycopy(values, i - HALF, window, 0, WIDTH);
            Arrays.sort(window);
            out[i] = window[HALF];
        }
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    public int twoSorts() {
        double[] window = new double[WIDTH];
        int wild = 0;
        for (int i = HALF; i < READINGS - HALF; i++) {
            System.arraycopy(values, i - HALF, window, 0, WIDTH);
            Arrays.sort(window);
            double middle = window[HALF];
            for (int j = 0; j < WIDTH; j++) {
                window[j] = Math.abs(window[j] - middle);
            }
            Arrays.sort(window);
            wild += Math.abs(values[i] - middle) > LIMIT * NORMAL * window[HALF] ? 1 : 0;
        }
        return wild;
    }
}
