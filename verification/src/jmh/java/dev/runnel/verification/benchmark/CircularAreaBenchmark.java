package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What accuracy in thin films and the checks of the argument cost: the area of a circular section, one depth at a time
 * and in bulk, beside the textbook line written out by hand. Each score is the time of one depth.
 *
 * <pre>mvn -q package -Dbench=CircularArea</pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class CircularAreaBenchmark {
    private static final int COUNT = 1000;
    private static final long SEED = 20260101;
    private static final double DIAMETER = 0.450;

    private final CircularSection section = CircularSection.ofDiameter(DIAMETER);
    private final double[] depths = new double[COUNT];
    private final double[] areas = new double[COUNT];

    /** Depths over the whole height, the same in each run. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < COUNT; i++) {
            depths[i] = DIAMETER * random.nextDouble();
        }
    }

    /** The scalar method in a loop. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] scalar() {
        for (int i = 0; i < COUNT; i++) {
            areas[i] = section.area(depths[i]);
        }
        return areas;
    }

    /** The bulk method. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] bulk() {
        section.area(depths, areas);
        return areas;
    }

    /** The rival: A = D²(θ − sin θ)/8 with θ = 2 acos(1 − 2y/D), without checks, and inexact in thin films. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] textbook() {
        for (int i = 0; i < COUNT; i++) {
            double angle = 2 * Math.acos(1 - 2 * depths[i] / DIAMETER);
            areas[i] = DIAMETER * DIAMETER * (angle - Math.sin(angle)) / 8;
        }
        return areas;
    }
}
