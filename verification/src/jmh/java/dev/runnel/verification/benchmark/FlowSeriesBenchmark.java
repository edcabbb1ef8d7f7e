package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.Series;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Depth and velocity readings to flow: a year at two minutes with missing readings and surcharge. The arrays fit the caches of
 * many processors, the floor of a loop of products above all; {@link FlowArraysBenchmark} has more than that.
 *
 * <pre>mvn -q package -Dbench=FlowSeries</pre>
 */
@State(Scope.Thread)
public class FlowSeriesBenchmark extends TimedBenchmark {
    private static final int READINGS = 262_800;
    private static final long STEP = 120_000_000_000L;

    private final PipeMonitor monitor =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(DIAMETER), Gradient.of(GRADIENT), Manning.of(0.013)));
    private final double[] depths = new double[READINGS];
    private final double[] velocities = new double[READINGS];
    private final double[] out = new double[READINGS];
    private Series depth = Series.empty();
    private Series velocity = Series.empty();

    /** Readings as in a poor record, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        long[] times = new long[READINGS];
        for (int i = 0; i < READINGS; i++) {
            times[i] = i * STEP;
            depths[i] = depth(random);
            velocities[i] = velocity(random);
        }
        depth = Series.of(times, depths);
        velocity = Series.of(times, velocities);
        monitor.flow(depths, velocities, out);
        for (int i = 0; i < READINGS; i++) {
            requireTextbook(depths[i], velocities[i], out[i]);
        }
    }

    /** One in a hundred is missing, one in fifty surcharged. */
    static double depth(SplittableRandom random) {
        int kind = random.nextInt(100);
        return kind == 0 ? Double.NaN : DIAMETER * (kind < 3 ? 1.3 : 0.02 + 0.96 * random.nextDouble());
    }

    /** One in a hundred is missing. */
    static double velocity(SplittableRandom random) {
        return random.nextInt(100) == 0 ? Double.NaN : 0.1 + random.nextDouble();
    }

    static void requireTextbook(double depth, double velocity, double flow) {
        double expected = textbookFlow(depth, velocity);
        if (Double.isNaN(expected) != Double.isNaN(flow)) {
            throw new IllegalStateException("missing must be missing, at " + depth + " and " + velocity);
        }
        if (!Double.isNaN(expected)) {
            requireClose("flow", flow, expected, 1e-13);
        }
    }

    static double textbookFlow(double depth, double velocity) {
        if (Double.isNaN(depth) || Double.isNaN(velocity)) {
            return Double.NaN;
        }
        return velocity * Textbook.area(Math.min(depth, DIAMETER), DIAMETER);
    }

    /** Arrays in, array out. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    @Against(row = "depth and velocity to flow, arrays of a year", rival = "textbook", named = "textbook loop")
    @Against(
            row = "depth and velocity to flow, arrays of a year",
            rival = "multiply",
            named = "floor: a loop of products, in the caches")
    public double[] arrays() {
        monitor.flow(depths, velocities, out);
        return out;
    }

    /** Two series in, a record with levels, qualities and conditions out. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    @Against(
            row = "depth and velocity to flow, series with quality",
            rival = "arrays",
            named = "the same from arrays",
            goal = 0.6)
    @Against(row = "depth and velocity to flow, series with quality", rival = "textbook", named = "textbook loop")
    public FlowRecord series() {
        return monitor.flow(depth, velocity);
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    public double[] textbook() {
        for (int i = 0; i < READINGS; i++) {
            out[i] = textbookFlow(depths[i], velocities[i]);
        }
        return out;
    }

    /** Floor. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    public double[] multiply() {
        for (int i = 0; i < READINGS; i++) {
            out[i] = depths[i] * velocities[i];
        }
        return out;
    }
}
