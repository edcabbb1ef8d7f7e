package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * Manning's law in a circle: discharge of a depth and depth of a discharge.
 *
 * <pre>mvn -q package -Dbench=Manning</pre>
 */
@State(Scope.Thread)
public class ManningBenchmark extends TimedBenchmark {
    private static final double N = 0.013;
    private static final double CREST = 0.93818 * DIAMETER;
    private static final int FEWER = COUNT / 16;

    private final Conduit conduit =
            Conduit.of(CircularSection.ofDiameter(DIAMETER), Gradient.of(GRADIENT), Manning.of(N));
    private final double[] depths = new double[COUNT];
    private final double[] discharges = new double[COUNT];
    private final double[] out = new double[COUNT];

    /** Depths over the height, discharges up to a hair below the crest, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        double full = conduit.fullBore().discharge();
        for (int i = 0; i < COUNT; i++) {
            depths[i] = DIAMETER * (0.02 + 0.96 * random.nextDouble());
            discharges[i] = full * (0.01 + 1.06 * random.nextDouble());
            requireClose(
                    "discharge",
                    conduit.discharge(depths[i]),
                    Textbook.manning(depths[i], DIAMETER, GRADIENT, N),
                    1e-12);
            requireClose(
                    "discharge of depth", conduit.discharge(conduit.normalDepth(discharges[i])), discharges[i], 1e-13);
        }
    }

    /** The discharge of a depth. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "Manning, circle: discharge of a depth",
            rival = "textbook",
            named = "textbook, acos, sin and two powers",
            goal = 50)
    public double[] discharge() {
        conduit.discharge(depths, out);
        return out;
    }

    /** The depth of a discharge. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "Manning, circle: depth of a discharge",
            rival = "brent",
            named = "Brent of Commons Math on the textbook form",
            goal = 400)
    public double[] depth() {
        conduit.normalDepth(discharges, out);
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] textbook() {
        for (int i = 0; i < COUNT; i++) {
            out[i] = Textbook.manning(depths[i], DIAMETER, GRADIENT, N);
        }
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double[] brent() {
        for (int i = 0; i < FEWER; i++) {
            double wanted = discharges[i];
            out[i] = brent(y -> Textbook.manning(y, DIAMETER, GRADIENT, N) - wanted, 1e-9, CREST);
        }
        return out;
    }
}
