package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoughnessTest {
    private static final Conduit PIPE =
            Conduit.of(CircularSection.ofDiameter(0.6), Gradient.ofRatio(1, 300), Manning.of(0.013));

    @Test
    void stricklerIsTheInverseOfManning() {
        assertThat(Manning.ofStrickler(80)).isEqualTo(Manning.of(0.0125));
        assertThatThrownBy(() -> Manning.ofStrickler(0)).hasMessageContaining("k must be greater than 0");
    }

    /** Two parts 2 m with 0.01 and 1 m with 0.02, by hand. */
    @Test
    void compoundingByHand() {
        double[] n = {0.01, 0.02};
        double[] p = {2, 1};
        assertThat(Compounding.PAVLOVSKIJ.n(n, p)).isCloseTo(Math.sqrt(6e-4 / 3), within(1e-17));
        double horton = Math.pow((2 * Math.pow(0.01, 1.5) + Math.pow(0.02, 1.5)) / 3, 2.0 / 3);
        assertThat(Compounding.HORTON_EINSTEIN.n(n, p)).isCloseTo(horton, within(1e-17));
        assertThat(Compounding.LOTTER.n(n, p)).isCloseTo(3 / (200 + 50.0), within(1e-17));
        // Lotter with radii 1 and 8, whole 8: 3·32/(2·1/0.01 + 1·32/0.02).
        assertThat(Compounding.LOTTER.n(n, p, new double[] {1, 8}, 8)).isCloseTo(96 / 1800.0, within(1e-16));
    }

    @Test
    void compoundingOfEqualPartsChangesNothing() {
        for (Compounding method : Compounding.values()) {
            assertThat(method.n(new double[] {0.013, 0.013}, new double[] {0.3, 1.1}))
                    .isCloseTo(0.013, within(1e-17));
        }
    }

    @Test
    void compoundingRefusesImpossibleParts() {
        assertThatThrownBy(() -> Compounding.LOTTER.n(new double[] {0.01, 0}, new double[] {1, 1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("n[1] must be greater than 0 and finite (s/m^(1/3)), was 0");
        assertThatThrownBy(() -> Compounding.LOTTER.n(new double[] {0.01}, new double[] {-1}))
                .hasMessageContaining("perimeter[0] must be 0 or greater");
        assertThatThrownBy(() -> Compounding.LOTTER.n(new double[] {0.01}, new double[] {0}))
                .hasMessageContaining("sum of perimeter must be greater than 0");
        assertThatThrownBy(() -> Compounding.PAVLOVSKIJ.n(new double[2], new double[3]))
                .hasMessage("perimeter must have length 2, was 3");
    }

    /** Box 1 m wide, 0.5 m deep: bed 1 m, walls 1 m. */
    @Test
    void compositeLawTakesBedAndWallsBySharesOfThePerimeter() {
        var law = CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012);
        var section = RectangularSection.open(1);
        double expected = Math.sqrt((0.03 * 0.03 + 0.012 * 0.012) / 2);
        assertThat(law.n(section, 0.5)).isCloseTo(expected, within(1e-16));
        var conduit = Conduit.of(section, Gradient.of(0.002), law);
        assertThat(conduit.velocity(0.5)).isCloseTo(Manning.of(expected).velocity(0.25, 0.002), within(1e-14));
        assertThat(conduit.gradientForDischargeAtDepth(conduit.discharge(0.5), 0.5)
                        .value())
                .isCloseTo(0.002, within(1e-16));
        assertThat(law.n(section, 0)).isEqualTo(0.03);
        // Walls above 0.3 m rougher: 1 m bed, 0.6 m and 0.4 m.
        double three = Math.sqrt((0.03 * 0.03 + 0.6 * 0.012 * 0.012 + 0.4 * 0.02 * 0.02) / 2);
        assertThat(law.above(0.3, 0.02).n(section, 0.5)).isCloseTo(three, within(1e-16));
        assertThat(law.above(0.3, 0.02).n(section, 0.2)).isCloseTo(law.n(section, 0.2), within(1e-17));
        assertThat(law.above(0.3, 0.02))
                .hasToString("CompositeManning[PAVLOVSKIJ, bed 0.03, wall 0.012, above 0.3 m 0.02]");
        assertThatThrownBy(() -> law.above(0.3, 0.02).above(0.3, 0.01))
                .hasMessage("levelAboveInvert must be greater than 0.3 m, was 0.3");
    }

    /** The lining changes 0.3 m above the invert, whether the channel is clean or silted. */
    @Test
    void levelsOfTheWallsDoNotMoveWithTheBed() {
        var law = CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.03, 0.012)
                .above(0.3, 0.02);
        var silted = RectangularSection.open(1).withSediment(0.1);
        // Bed 1 m; walls 0.2 m each up to 0.3 m above the invert, 0.2 m each above.
        double expected = Math.sqrt((0.03 * 0.03 + 0.4 * 0.012 * 0.012 + 0.4 * 0.02 * 0.02) / 1.8);
        assertThat(law.n(silted, 0.4)).isCloseTo(expected, within(1e-16));
        // The bed lies above the change: only the upper walls are wet.
        double high = Math.sqrt((0.03 * 0.03 + 0.4 * 0.02 * 0.02) / 1.4);
        assertThat(law.n(RectangularSection.open(1).withSediment(0.35), 0.2)).isCloseTo(high, within(1e-16));
    }

    @Test
    void roundInvertHasNoBed() {
        var law = CompositeManning.ofBedAndWalls(Compounding.HORTON_EINSTEIN, 0.03, 0.012);
        assertThat(law.n(CircularSection.ofDiameter(0.6), 0.2)).isCloseTo(0.012, within(1e-17));
        assertThat(law.n(CircularSection.ofDiameter(0.6), 0)).isEqualTo(0.012);
        assertThat(law.n(CircularSection.ofDiameter(0.6).withSediment(0.1), 0.2))
                .isBetween(0.0125, 0.03);
        assertThat(law.at(CircularSection.ofDiameter(0.6), 0.2)).isEqualTo(Manning.of(0.012));
    }

    @Test
    void roughnessFollowsThePublishedCurve() {
        var curve = RoughnessByDepth.asce1970();
        assertThat(curve.ratio(0.25)).isEqualTo(1.278);
        assertThat(curve.ratio(0.05)).isEqualTo(curve.ratio(0.12)).isEqualTo(1.224);
        assertThat(curve.ratio(1)).isEqualTo(1);
        assertThat(curve.ratio(0.975)).isCloseTo(1.019, within(1e-12));
        var variable = PIPE.withResistance(VariableManning.of(0.013, curve));
        assertThat(variable.fullBore().discharge()).isEqualTo(PIPE.fullBore().discharge());
        assertThat(variable.velocity(0.15)).isCloseTo(PIPE.velocity(0.15) / 1.278, within(1e-14));
        assertThat(variable.gradientForDischargeAtDepth(0.05, 0.3).value())
                .isGreaterThan(PIPE.gradientForDischargeAtDepth(0.05, 0.3).value());
        assertThat(variable.resistance())
                .hasToString("VariableManning[n full = 0.013, RoughnessByDepth[ASCE and WPCF 1970, 24 points]]");
    }

    @Test
    void roughnessCurvesRefuseWhatIsNoCurve() {
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[0], new double[0]))
                .hasMessage("number of points must be at least 1, was 0");
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[] {0.5, 0.5}, new double[] {1, 1}))
                .hasMessage("fullness[1] must be greater than fullness[0] = 0.5, was 0.5");
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[] {1.5}, new double[] {1}))
                .hasMessage("fullness[0] must be in [0, 1], was 1.5");
        assertThatThrownBy(() -> RoughnessByDepth.of(new double[] {0.5}, new double[] {0}))
                .hasMessageContaining("ratio[0] must be greater than 0");
        assertThatThrownBy(() -> RoughnessByDepth.asce1970().ratio(1.1))
                .hasMessage("fullness must be in [0, 1], was 1.1");
        var law = VariableManning.of(0.013, RoughnessByDepth.asce1970());
        assertThatThrownBy(() -> Conduit.of(TrapezoidalSection.ofBedWidthAndSideSlope(1, 1), Gradient.of(0.01), law)
                        .velocity(0.2))
                .hasMessageStartingWith("a roughness by fullness needs a section with a soffit");
    }

    @Test
    void roughnessFromAGauging() {
        assertThat(PIPE.fittedTo(0.2, PIPE.velocity(0.2)).resistance())
                .isInstanceOfSatisfying(
                        Manning.class, law -> assertThat(law.n()).isCloseTo(0.013, within(1e-16)));
        var rough = PIPE.withResistance(ColebrookWhite.ofRoughnessMm(1.5).atTemperature(10));
        assertThat(rough.fittedTo(0.2, rough.velocity(0.2)).resistance())
                .isInstanceOfSatisfying(
                        ColebrookWhite.class, law -> assertThat(law.roughness()).isCloseTo(0.0015, within(1e-15)));
        var smooth = PIPE.withResistance(ColebrookWhite.ofRoughness(0));
        assertThat(smooth.fittedTo(0.2, smooth.velocity(0.2)).velocity(0.2))
                .isCloseTo(smooth.velocity(0.2), within(1e-12));
        assertThatThrownBy(() -> rough.fittedTo(0.2, 5))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("no roughness gives a velocity of 5 m/s at a hydraulic radius of");
        assertThatThrownBy(() -> rough.fittedTo(0.2, 0.01)).isInstanceOf(NoSolutionException.class);
        assertThatThrownBy(() -> rough.fittedTo(0, 1)).hasMessageContaining("depth must be greater than 0");
        assertThatThrownBy(() -> rough.fittedTo(0.2, -1)).hasMessageContaining("velocity must be greater than 0");
        var law = VariableManning.of(0.013, RoughnessByDepth.asce1970());
        assertThatThrownBy(() -> PIPE.withResistance(law).fittedTo(0.2, 1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageStartingWith("the law has no single roughness to fit");
    }

    /** In laminar flow every wall has the gauged velocity: the law stays as it is. */
    @Test
    void laminarGaugingFitsEveryRoughness() {
        var law = ColebrookWhite.ofRoughnessMm(1.5).withViscosity(1e-6);
        double radius = 5e-4;
        double gradient = 0.0005;
        double velocity = law.velocity(radius, gradient, 9.81);
        assertThat(velocity).isCloseTo(9.81 * gradient * radius * radius / 2e-6, within(1e-17));
        assertThat(law.fittedTo(velocity, radius, gradient, 9.81)).isSameAs(law);
        assertThat(ColebrookWhite.ofRoughness(0)
                        .withViscosity(1e-6)
                        .fittedTo(velocity, radius, gradient, 9.81)
                        .roughness())
                .isZero();
        // Faster than laminar: no wall.
        assertThatThrownBy(() -> law.fittedTo(1.01 * velocity, radius, gradient, 9.81))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("no roughness gives a velocity of");
    }

    /** At each gradient from laminar flow on every wall to turbulent flow on every wall: no two walls have one velocity. */
    @Test
    void noTwoRoughnessesFitOneVelocityBeyondLaminarFlow() {
        double radius = 0.01;
        int transitional = 0;
        for (double karman = 150; karman < 3000; karman *= 1.01) {
            double gradient = gradientOf(karman, radius);
            double before = Double.POSITIVE_INFINITY;
            for (double relative = 0; relative <= 1; relative = Math.max(1e-5, relative * 1.1)) {
                double velocity = wall(relative, radius).velocity(radius, gradient, 9.81);
                double reynolds = 4 * radius * velocity / 1e-6;
                double laminar = karman * karman / 64;
                if (reynolds < laminar * (1 - 1e-9)) {
                    assertThat(velocity).isLessThan(before);
                    transitional += reynolds < DarcyFriction.TURBULENT_LIMIT ? 1 : 0;
                }
                before = velocity;
            }
        }
        assertThat(transitional).isGreaterThan(5000);
    }

    /**
     * How far a velocity that is a little less moves the roughness, by the line of the transition and the equation of
     * turbulent flow solved for k in a program of its own.
     */
    @ParameterizedTest
    @CsvSource({
        "2100, 0.001, 1.35819467165274",
        "3000, 0.001, 1.042240956293504",
        "3000, 0.01,  1.446961728097751",
        "1e4,  0.001, 1.0116522749170744",
        "1e4,  0.01,  1.1196940900023968",
        "1e5,  0.01,  1.0742895967594364"
    })
    void velocitiesOfTheTransitionSayLittleOfTheRoughness(double reynolds, double lessBy, double times) {
        double radius = 0.01;
        double relative = 0.005;
        double velocity = reynolds * 1e-6 / (4 * radius);
        double karman = reynolds * Math.sqrt(DarcyFriction.factor(reynolds, relative));
        var fitted = wall(0, radius).fittedTo((1 - lessBy) * velocity, radius, gradientOf(karman, radius), 9.81);
        assertThat(fitted.roughness() / (relative * 4 * radius)).isCloseTo(times, within(1e-10));
    }

    private static double gradientOf(double karman, double radius) {
        double scale = karman * 1e-6 / (4 * radius);
        return scale * scale / (8 * 9.81 * radius);
    }

    private static ColebrookWhite wall(double relative, double radius) {
        return ColebrookWhite.ofRoughness(relative * 4 * radius).withViscosity(1e-6);
    }

    @Test
    void criticalGradientPartsSteepFromMild() {
        Gradient critical = PIPE.criticalGradient(0.1);
        var conduit = PIPE.withGradient(critical);
        assertThat(conduit.normalDepth(0.1)).isCloseTo(PIPE.criticalDepth(0.1), within(1e-12));
        assertThat(conduit.at(conduit.normalDepth(0.1)).froudeNumber()).isCloseTo(1, within(1e-12));
    }
}
