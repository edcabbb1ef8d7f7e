package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The seeds against the depth that a conduit finds, where the flow is turbulent: what they say of how far they miss. */
class ColebrookSeedsTest {
    private static final double VISCOSITY = 1.14e-6;

    private final SplittableRandom random = new SplittableRandom(23);

    private double logUniform(double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }

    /** Sewers of 150 mm to 2 m, falls of 1 in 3,000 to 1 in 30, walls of 0.06 to 6 mm. */
    @Test
    void missTheDepthInSewersByLittle() {
        double worstBelow = 0;
        double worstAbove = 0;
        for (int i = 0; i < 20_000; i++) {
            double diameter = 0.15 + 1.85 * random.nextDouble();
            double gradient = logUniform(1.0 / 3000, 1.0 / 30);
            double roughness = logUniform(6e-5, 6e-3);
            Conduit pipe = Conduit.of(
                    CircularSection.ofDiameter(diameter),
                    Gradient.of(gradient),
                    ColebrookWhite.ofRoughness(roughness).withViscosity(VISCOSITY));
            double near = i % 2 == 0 ? logUniform(1e-3, 1) : 0.1 + 0.93 * random.nextDouble();
            int row = ColebrookSeeds.row(ColebrookCells.cellOf(near));
            double part = ColebrookSeeds.middle(row);
            assertThat(near)
                    .isBetween(part - ColebrookSeeds.half(row) - 1e-15, part + ColebrookSeeds.half(row) + 1e-15);
            double depth = pipe.normalDepth(part * pipe.fullBore().discharge()) / diameter;
            double radius = pipe.section().hydraulicRadius(depth * diameter);
            if (4 * radius * pipe.velocity(depth * diameter) / VISCOSITY < DarcyFriction.TURBULENT_LIMIT) {
                continue;
            }
            double smooth = 8 * 2.51 / 4 * VISCOSITY / (diameter * Math.sqrt(8 * 9.80665 * gradient * diameter));
            double inner = 4 * roughness / (14.8 * diameter) + smooth;
            double seed = CircleNodes.depth(ColebrookSeeds.number(row, 1 / Math.log(inner), smooth / inner));
            double miss = Math.abs(seed / depth - 1);
            if (depth < 0.5) {
                worstBelow = Math.max(worstBelow, miss);
            } else if (depth < 0.9) {
                worstAbove = Math.max(worstAbove, miss);
            }
        }
        assertThat(worstBelow).isBetween(1e-3, 5e-3);
        assertThat(worstAbove).isBetween(1e-5, 1e-4);
    }
}
