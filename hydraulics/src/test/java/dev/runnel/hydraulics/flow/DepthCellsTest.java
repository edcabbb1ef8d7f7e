package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DepthCellsTest {
    private static final Gradient GRADIENT = Gradient.of(0.0025);
    private static final List<Conduit> CONDUITS = List.of(
            of(Egg.normal(0.6), Manning.of(0.013)),
            of(Egg.normal(0.6), ColebrookWhite.ofRoughnessMm(1.5)),
            of(CircularSection.ofDiameter(0.9).withSediment(0.2), Manning.of(0.014)),
            of(CircularSection.ofDiameter(0.9), VariableManning.of(0.013, RoughnessByDepth.asce1970())),
            of(TrapezoidalSection.ofBedWidthAndSideSlope(1, 1.5), Manning.of(0.03)));

    private static Conduit of(CrossSection section, Resistance law) {
        return Conduit.of(section, GRADIENT, law);
    }

    /** Depths of films and up to a hair below the crest, of each close to its neighbours, in random order. */
    @Test
    void depthsCloseWhateverWasAskedBefore() {
        var random = new SplittableRandom(7);
        for (Conduit conduit : CONDUITS) {
            boolean open = Double.isInfinite(conduit.section().height());
            double most = open ? 100 : conduit.maximum().discharge();
            for (int i = 0; i < 4000; i++) {
                double part = i % 3 == 0
                        ? random.nextDouble()
                        : i % 3 == 1
                                ? Math.pow(10, -13 * random.nextDouble())
                                : 1 - Math.pow(10, -13 * random.nextDouble());
                double discharge = part * most;
                double depth = conduit.normalDepth(discharge);
                Closing.assertCloses(conduit::discharge, depth, discharge);
            }
        }
    }

    @Test
    void threadsFindTheSame() {
        for (Conduit conduit : CONDUITS) {
            double[] discharges =
                    IntStream.rangeClosed(1, 400).mapToDouble(i -> i * 1e-4).toArray();
            double[] one = new double[discharges.length];
            conduit.normalDepth(discharges, one);
            Conduit fresh = conduit.withGradient(GRADIENT);
            double[] many = IntStream.range(0, discharges.length)
                    .parallel()
                    .mapToDouble(i -> fresh.normalDepth(discharges[discharges.length - 1 - i]))
                    .toArray();
            for (int i = 0; i < one.length; i++) {
                assertThat(many[one.length - 1 - i]).isEqualTo(one[i]);
            }
        }
    }
}
