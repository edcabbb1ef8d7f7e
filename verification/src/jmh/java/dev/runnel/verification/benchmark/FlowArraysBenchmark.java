package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Depth and velocity readings to flow: ten million of them, as in a survey of many sites, so that the memory counts for the
 * loop of products as it does for the flow. A year of one site, in {@link FlowSeriesBenchmark}, stays in the caches.
 *
 * <pre>mvn -q package -Dbench=FlowArrays</pre>
 */
@State(Scope.Thread)
public class FlowArraysBenchmark extends TimedBenchmark {
    private static final int READINGS = 10_000_000;

    private final PipeMonitor monitor =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(DIAMETER), Gradient.of(GRADIENT), Manning.of(0.013)));
    private final double[] depths = new double[READINGS];
    private final double[] velocities = new double[READINGS];
    private final double[] out = new double[READINGS];

    /** Readings as in a poor record, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < READINGS; i++) {
            depths[i] = FlowSeriesBenchmark.depth(random);
            velocities[i] = FlowSeriesBenchmark.velocity(random);
        }
        monitor.flow(depths, velocities, out);
        for (int i = 0; i < READINGS; i++) {
            FlowSeriesBenchmark.requireTextbook(depths[i], velocities[i], out[i]);
        }
    }

    /** Arrays in, array out. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    @Against(row = "depth and velocity to flow, arrays of 10⁷", rival = "textbook", named = "textbook loop", goal = 20)
    @Against(
            row = "depth and velocity to flow, arrays of 10⁷",
            rival = "multiply",
            named = "floor: a loop of products",
            goal = 0.4)
    public double[] arrays() {
        monitor.flow(depths, velocities, out);
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(READINGS)
    public double[] textbook() {
        for (int i = 0; i < READINGS; i++) {
            out[i] = FlowSeriesBenchmark.textbookFlow(depths[i], velocities[i]);
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
