package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.DarcyFriction;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The friction factor of Darcy and Weisbach by Colebrook and White.
 *
 * <pre>mvn -q package -Dbench=FrictionFactor</pre>
 */
@State(Scope.Thread)
public class FrictionFactorBenchmark extends TimedBenchmark {
    private static final int FEWER = COUNT / 16;

    private final double[] reynolds = new double[COUNT];
    private final double[] relative = new double[COUNT];
    private final double[] out = new double[COUNT];

    /** Re from 4e3 to 4e7 and k/D from 1e-6 to 0.03, and the check by the equation itself. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < COUNT; i++) {
            reynolds[i] = 4e3 * Math.pow(10, 4 * random.nextDouble());
            relative[i] = 1e-6 * Math.pow(3e4, random.nextDouble());
            double x = 1 / Math.sqrt(DarcyFriction.factor(reynolds[i], relative[i]));
            requireClose("1/sqrt(f)", x, -2 * Math.log10(relative[i] / 3.7 + 2.51 * x / reynolds[i]), 2e-15);
        }
    }

    /** The factor. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(row = "Colebrook-White: friction factor", rival = "brent", named = "Brent of Commons Math", goal = 30)
    public double[] factor() {
        for (int i = 0; i < COUNT; i++) {
            out[i] = DarcyFriction.factor(reynolds[i], relative[i]);
        }
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double[] brent() {
        for (int i = 0; i < FEWER; i++) {
            double a = relative[i] / 3.7;
            double b = 2.51 / reynolds[i];
            double x = brent(root -> root + 2 * Math.log10(a + b * root), 1, 40);
            out[i] = 1 / (x * x);
        }
        return out;
    }
}
