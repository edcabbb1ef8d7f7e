package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.Egg;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * An egg-shaped sewer, as any outline of arcs and lines: depth of a discharge by Manning's law.
 *
 * <pre>mvn -q package -Dbench=EggDepth</pre>
 */
@State(Scope.Thread)
public class EggDepthBenchmark extends TimedBenchmark {
    private static final int FEWER = COUNT / 16;

    private final Conduit conduit = Conduit.of(Egg.normal(0.6), Gradient.of(GRADIENT), Manning.of(0.013));
    private final double crest = conduit.maximum().depth();
    private final double[] discharges = new double[COUNT];
    private final double[] out = new double[COUNT];

    /** Discharges up to a hair below the crest, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        double most = conduit.maximum().discharge();
        for (int i = 0; i < COUNT; i++) {
            discharges[i] = most * (0.01 + 0.989 * random.nextDouble());
            requireClose(
                    "discharge of depth", conduit.discharge(conduit.normalDepth(discharges[i])), discharges[i], 1e-12);
        }
    }

    /** The depth of a discharge. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "Manning, egg: depth of a discharge, one pipe",
            rival = "brent",
            named = "Brent of Commons Math on the library's own discharge",
            goal = 50)
    public double[] depth() {
        conduit.normalDepth(discharges, out);
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double[] brent() {
        for (int i = 0; i < FEWER; i++) {
            double wanted = discharges[i];
            out[i] = brent(y -> conduit.discharge(y) - wanted, 1e-9, crest);
        }
        return out;
    }
}
