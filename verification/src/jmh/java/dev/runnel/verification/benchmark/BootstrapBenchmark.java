package dev.runnel.verification.benchmark;

import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The interval of a 100-year level by the generalized extreme value distribution: 1,000 samples of 100 drawn again.
 *
 * <pre>mvn -q package -Dbench=Bootstrap</pre>
 */
@State(Scope.Thread)
public class BootstrapBenchmark extends TimedBenchmark {
    private static final int REPLICATES = 1_000;
    private static final int SIZE = 100;

    private final double[] sample = new double[SIZE];
    private final Bootstrap bootstrap = Bootstrap.of(REPLICATES, SEED).withResampling();
    private Fit fit = invented();

    private Fit invented() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < SIZE; i++) {
            sample[i] = 30 + 8 * (Math.pow(-Math.log(random.nextDouble()), -0.1) - 1) / 0.1;
        }
        return Fit.of(DistributionFamily.GEV, FitMethod.L_MOMENTS, sample);
    }

    /** The check: the estimate lies in its interval. */
    @Setup
    public void check() {
        Bootstrap.Interval interval = interval();
        double level = fit.returnLevel(100);
        if (!(interval.lower() < level && level < interval.upper())) {
            throw new IllegalStateException("the estimate must lie in its interval, was " + level);
        }
    }

    /** The interval. */
    @Benchmark
    @OperationsPerInvocation(REPLICATES)
    @Against(
            row = "interval by resampling, a replicate of 100",
            rival = "numbers",
            named = "floor: its random numbers",
            goal = 0.25)
    public Bootstrap.Interval interval() {
        return bootstrap.returnLevel(fit, sample, 100);
    }

    /** Floor. */
    @Benchmark
    @OperationsPerInvocation(REPLICATES)
    public long numbers() {
        SplittableRandom random = new SplittableRandom(SEED);
        long sum = 0;
        for (int i = 0; i < REPLICATES * SIZE; i++) {
            sum += random.nextInt(SIZE);
        }
        return sum;
    }
}
