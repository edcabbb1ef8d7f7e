package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The critical depth of a circle.
 *
 * <pre>mvn -q package -Dbench=CriticalDepth</pre>
 */
@State(Scope.Thread)
public class CriticalDepthBenchmark extends TimedBenchmark {
    private static final int FEWER = COUNT / 16;

    private final CriticalFlow flow = CriticalFlow.of(CircularSection.ofDiameter(DIAMETER));
    private final double[] discharges = new double[COUNT];
    private final double[] out = new double[COUNT];

    /** Discharges that are critical from a film up to 0.95 of the bore, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < COUNT; i++) {
            discharges[i] = flow.discharge(DIAMETER * (0.02 + 0.93 * random.nextDouble()));
            requireClose("discharge of depth", flow.discharge(flow.depth(discharges[i])), discharges[i], 1e-13);
        }
    }

    /** The critical depth. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "circle: critical depth",
            rival = "brent",
            named = "Brent of Commons Math on the textbook form",
            goal = 100)
    public double[] depth() {
        flow.depth(discharges, out);
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double[] brent() {
        for (int i = 0; i < FEWER; i++) {
            double wanted = discharges[i];
            out[i] = brent(y -> Textbook.critical(y, DIAMETER) - wanted, 1e-9, 0.9999 * DIAMETER);
        }
        return out;
    }
}
