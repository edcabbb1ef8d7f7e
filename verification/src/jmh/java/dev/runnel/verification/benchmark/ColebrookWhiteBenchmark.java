package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The law of Colebrook and White in a circle: depth of a discharge, in one pipe and in a new pipe each time.
 *
 * <pre>mvn -q package -Dbench=ColebrookWhite</pre>
 */
@State(Scope.Thread)
public class ColebrookWhiteBenchmark extends TimedBenchmark {
    private static final double ROUGHNESS = 0.0015;
    private static final int FEWER = COUNT / 16;

    private final ColebrookWhite law = ColebrookWhite.ofRoughness(ROUGHNESS);
    private final double viscosity = law.viscosity();
    private final Conduit conduit = Conduit.of(CircularSection.ofDiameter(DIAMETER), Gradient.of(GRADIENT), law);
    private final double[] diameters = new double[COUNT];
    private final double[] gradients = new double[COUNT];
    private final double[] roughnesses = new double[COUNT];
    private final double[] ofPipes = new double[COUNT];
    private final double[] discharges = new double[COUNT];
    private final double[] out = new double[COUNT];

    /** Pipes of 0.15 to 2 m, falls of 1 in 3,000 to 1 in 30, ks 0.06 to 6 mm, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        double full = conduit.fullBore().discharge();
        for (int i = 0; i < COUNT; i++) {
            discharges[i] = full * (0.01 + 1.04 * random.nextDouble());
            diameters[i] = 0.15 + 1.85 * random.nextDouble();
            gradients[i] = Math.pow(10, -3.5 + 2 * random.nextDouble());
            roughnesses[i] = Math.pow(10, -4.2 + 2 * random.nextDouble());
            Conduit pipe = pipe(i);
            ofPipes[i] = pipe.fullBore().discharge() * (0.01 + 1.03 * random.nextDouble());
            requireClose(
                    "discharge of depth", conduit.discharge(conduit.normalDepth(discharges[i])), discharges[i], 1e-12);
            requireClose("discharge of depth", pipe.discharge(pipe.normalDepth(ofPipes[i])), ofPipes[i], 1e-12);
        }
    }

    private Conduit pipe(int i) {
        return Conduit.of(
                CircularSection.ofDiameter(diameters[i]),
                Gradient.of(gradients[i]),
                ColebrookWhite.ofRoughness(roughnesses[i]));
    }

    /** The depth of a discharge, always in the same pipe. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "Colebrook-White, circle: depth of a discharge, one pipe",
            rival = "brent",
            named = "Brent of Commons Math on the textbook form",
            goal = 500)
    public double[] onePipe() {
        conduit.normalDepth(discharges, out);
        return out;
    }

    /** The depth of a discharge, each in another pipe. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "Colebrook-White, circle: depth of a discharge, a new pipe each call",
            rival = "brentNewPipe",
            named = "Brent of Commons Math on the textbook form",
            goal = 20)
    public double[] newPipe() {
        for (int i = 0; i < COUNT; i++) {
            out[i] = pipe(i).normalDepth(ofPipes[i]);
        }
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double[] brent() {
        for (int i = 0; i < FEWER; i++) {
            double wanted = discharges[i];
            out[i] = brent(
                    y -> Textbook.colebrookWhite(y, DIAMETER, GRADIENT, ROUGHNESS, viscosity) - wanted,
                    1e-5 * DIAMETER,
                    0.94 * DIAMETER);
        }
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(FEWER)
    public double[] brentNewPipe() {
        for (int i = 0; i < FEWER; i++) {
            double wanted = ofPipes[i];
            double diameter = diameters[i];
            double gradient = gradients[i];
            double roughness = roughnesses[i];
            out[i] = brent(
                    y -> Textbook.colebrookWhite(y, diameter, gradient, roughness, viscosity) - wanted,
                    1e-2 * diameter,
                    0.94 * diameter);
        }
        return out;
    }
}
