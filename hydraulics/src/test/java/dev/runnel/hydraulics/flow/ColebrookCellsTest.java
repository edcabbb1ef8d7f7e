package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ColebrookCellsTest {
    private final SplittableRandom random = new SplittableRandom(11);

    private double logUniform(double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }

    /** Sewers and what lies well beyond, film and laminar flow included. */
    private Conduit randomPipe() {
        double diameter = logUniform(0.05, 5);
        double roughness = random.nextInt(10) == 0 ? 0 : logUniform(1e-6, 1e-2) * Math.min(1, diameter);
        return Conduit.of(
                CircularSection.ofDiameter(diameter),
                Gradient.of(logUniform(1e-5, 0.1)),
                ColebrookWhite.ofRoughness(roughness));
    }

    @Test
    void dischargeComesBackFarWithinThePromise() {
        for (int i = 0; i < 20_000; i++) {
            Conduit pipe = randomPipe();
            double part = i % 2 == 0 ? logUniform(1e-7, 1) : 1.06 * random.nextDouble();
            double discharge = part * pipe.fullBore().discharge();
            if (discharge > pipe.maximum().discharge()) {
                continue;
            }
            double depth = pipe.normalDepth(discharge);
            assertThat(pipe.discharge(depth) / discharge - 1)
                    .as("%s at %s", pipe, discharge)
                    .isBetween(-5e-14, 5e-14);
            assertThat(depth).isLessThanOrEqualTo(pipe.maximum().depth());
        }
    }

    /** Laminar flow has an explicit law, V = g S R²/(2ν): films of which the discharge is known without this library's law. */
    @Test
    void laminarFilmsStandWhereTheirLawSays() {
        int films = 0;
        for (int i = 0; i < 20_000; i++) {
            Conduit pipe = randomPipe();
            double depth = logUniform(1e-7, 0.3) * pipe.section().height();
            double radius = pipe.section().hydraulicRadius(depth);
            double viscosity = ((ColebrookWhite) pipe.resistance()).viscosity();
            double velocity = pipe.gravity() * pipe.gradient().value() * radius * radius / (2 * viscosity);
            if (4 * radius * velocity / viscosity < 500) {
                films++;
                double found = pipe.normalDepth(pipe.section().area(depth) * velocity);
                assertThat(found / depth - 1).as("%s at %s", pipe, depth).isBetween(-1e-14, 1e-14);
            }
        }
        assertThat(films).isGreaterThan(5000);
    }

    /**
     * One digit below the largest discharge there is a depth, be the largest of the general search one digit less or not;
     * within what {@link Conduit} promises, as some of these pipes are hardly turbulent and are searched.
     */
    @Test
    void lastDigitBelowTheCrestHasADepth() {
        for (int i = 0; i < 20_000; i++) {
            double roughness = i % 2 == 0 ? 0 : logUniform(1e-6, 1e-3);
            Conduit pipe = Conduit.of(
                    CircularSection.ofDiameter(logUniform(0.05, 5)),
                    Gradient.of(logUniform(1e-6, 0.1)),
                    ColebrookWhite.ofRoughness(roughness));
            double most = pipe.maximum().discharge();
            for (double discharge : new double[] {most, Math.nextDown(most), most * (1 - 2e-16)}) {
                double depth = pipe.normalDepth(discharge);
                assertThat(pipe.discharge(depth) / discharge - 1).as("%s", pipe).isBetween(-1e-12, 1e-12);
                assertThat(depth).isLessThanOrEqualTo(pipe.maximum().depth());
            }
        }
    }

    /** A pipe that is asked once, one that was asked often, and the form for many give the same bits. */
    @Test
    void whatIsKeptIsWhatWouldBeComputed() {
        for (int i = 0; i < 30; i++) {
            Conduit often = randomPipe();
            double full = often.fullBore().discharge();
            double[] discharges = new double[600];
            for (int k = 0; k < discharges.length; k++) {
                discharges[k] = full * (k % 2 == 0 ? logUniform(1e-6, 1) : random.nextDouble());
            }
            // No cell answers at the crest.
            discharges[0] = often.maximum().discharge();
            double[] depths = new double[discharges.length];
            often.normalDepth(discharges, depths);
            double[] again = new double[discharges.length];
            often.normalDepth(discharges, again);
            assertThat(again).isEqualTo(depths);
            for (int k = 0; k < discharges.length; k++) {
                Conduit once = often.withGradient(often.gradient());
                assertThat(once.normalDepth(discharges[k])).isEqualTo(depths[k]);
                assertThat(often.normalDepth(discharges[k])).isEqualTo(depths[k]);
            }
        }
    }

    /** The rise over the seams of cells: by no more than the rounding does a depth fall while the discharge grows. */
    @Test
    void depthRisesFromCellToCell() {
        Conduit pipe =
                Conduit.of(CircularSection.ofDiameter(0.45), Gradient.of(1.0 / 150), ColebrookWhite.ofRoughnessMm(1.5));
        double full = pipe.fullBore().discharge();
        double before = 0;
        for (double part = 1e-6; part < 1.05; part *= 1.0001) {
            double depth = pipe.normalDepth(part * full);
            assertThat(depth).isGreaterThan(before);
            before = depth;
        }
    }

    /** Else a sewer would be searched, which is right and slow. */
    @Test
    void cellsTellTheDepthInSewers() {
        double diameter = 0.45;
        double scale = Math.sqrt(8 * 9.80665 / 150 * diameter);
        double karman = 4 * diameter * scale / 1.139e-6;
        double alpha = 0.0015 / (14.8 * diameter);
        double inner = 4 * alpha + 8 * 2.51 / karman;
        var cells = new ColebrookCells(ColebrookPipe.ofNumbers(diameter, alpha, 2.51 / karman, 1));
        double full = Math.PI / 8 * -Math.log(inner);
        for (double part = 0.001; part < 1.055; part += 0.0003) {
            assertThat(cells.depth(part * full)).as("Q/Qfull %s", part).isBetween(0.02, 0.93);
        }
        assertThat(cells.depth(1.1 * full)).isNaN();
        assertThat(cells.depth(1e-9 * full)).isNaN();
        assertThat(cells.depth(-full)).isNaN();
        assertThat(cells.depth(Double.NaN)).isNaN();
    }
}
