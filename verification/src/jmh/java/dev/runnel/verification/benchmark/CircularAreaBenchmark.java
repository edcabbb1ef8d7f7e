package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * The properties of a circle at many depths.
 *
 * <pre>mvn -q package -Dbench=CircularArea</pre>
 */
@State(Scope.Thread)
public class CircularAreaBenchmark extends TimedBenchmark {
    private final CircularSection section = CircularSection.ofDiameter(DIAMETER);
    private final double[] depths = new double[COUNT];
    private final double[] out = new double[COUNT];
    private final double[] more = new double[COUNT];
    private final double[] third = new double[COUNT];
    private final double[] fourth = new double[COUNT];

    /** Depths over the whole height, and the check. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < COUNT; i++) {
            depths[i] = DIAMETER * (0.02 + 0.96 * random.nextDouble());
        }
        section.area(depths, out);
        for (int i = 0; i < COUNT; i++) {
            requireClose("area", out[i], Textbook.area(depths[i], DIAMETER), 1e-13);
            requireClose("area of one", section.area(depths[i]), out[i], 0);
        }
    }

    /** The area. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(row = "circle: area", rival = "textbookArea", named = "textbook, acos and sin", goal = 150)
    @Against(row = "circle: area", rival = "roots", named = "floor: a loop of square roots", goal = 0.3)
    public double[] area() {
        section.area(depths, out);
        return out;
    }

    /** The area of one depth at a time. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(row = "circle: area, one depth at a time", rival = "textbookArea", named = "textbook, acos and sin")
    public double[] areaOfOne() {
        for (int i = 0; i < COUNT; i++) {
            out[i] = section.area(depths[i]);
        }
        return out;
    }

    /** Area, perimeter, hydraulic radius and width. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    @Against(
            row = "circle: area, perimeter, hydraulic radius, width",
            rival = "textbookAll",
            named = "textbook, acos and sin once",
            goal = 60)
    public double[] all() {
        section.properties(depths, out, more, third, fourth);
        return fourth;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] textbookArea() {
        for (int i = 0; i < COUNT; i++) {
            out[i] = Textbook.area(depths[i], DIAMETER);
        }
        return out;
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] textbookAll() {
        for (int i = 0; i < COUNT; i++) {
            double angle = 2 * Math.acos(1 - 2 * depths[i] / DIAMETER);
            out[i] = DIAMETER * DIAMETER * (angle - Math.sin(angle)) / 8;
            more[i] = DIAMETER * angle / 2;
            third[i] = out[i] / more[i];
            fourth[i] = DIAMETER * Math.sin(angle / 2);
        }
        return fourth;
    }

    /** Floor: what the processor needs for one root and the memory. */
    @Benchmark
    @OperationsPerInvocation(COUNT)
    public double[] roots() {
        for (int i = 0; i < COUNT; i++) {
            out[i] = Math.sqrt(3 * depths[i] + 1);
        }
        return out;
    }
}
