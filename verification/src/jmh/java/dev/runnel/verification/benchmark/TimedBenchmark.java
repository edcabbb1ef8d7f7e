package dev.runnel.verification.benchmark;

import java.util.concurrent.TimeUnit;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How all benchmarks are measured: the time of one element; a heap whose pages have been touched, since on a virtual
 * machine the first touch of a page costs more than most kernels. Elements are many and random, so that the processor
 * cannot learn them by heart. A benchmark asserts its accuracy before it is timed.
 */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-XX:+UseSerialGC", "-Xms1500m", "-Xmx1500m", "-Xmn1000m", "-XX:+AlwaysPreTouch"})
@Warmup(iterations = 4, time = 250, timeUnit = TimeUnit.MILLISECONDS)
@Measurement(iterations = 5, time = 200, timeUnit = TimeUnit.MILLISECONDS)
public abstract class TimedBenchmark {
    /** Elements of the kernels that take one number: they fit the second cache. */
    static final int COUNT = 32_768;

    static final long SEED = 20260101;
    static final double DIAMETER = 0.450;
    static final double GRADIENT = 1.0 / 150;

    private static final int MOST_CALLS = 200;

    /** Created by the subclasses. */
    protected TimedBenchmark() {}

    /** The general-purpose rival of every inverse. */
    static double brent(DoubleUnaryOperator function, double from, double to) {
        return new BrentSolver(1e-12).solve(MOST_CALLS, function::applyAsDouble, from, to);
    }

    /** Refuses to measure what is wrong. */
    static void requireClose(String what, double value, double expected, double relative) {
        if (!(Math.abs(value - expected) <= relative * Math.abs(expected))) {
            throw new IllegalStateException(what + " must be " + expected + " within " + relative + ", was " + value);
        }
    }
}
