package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.runnel.hydraulics.section.CircularSection;
import org.junit.jupiter.api.Test;

class FlumeTest {
    private static final double FOOT = 0.3048;

    /** CJ/T 3008.3-1993 (the SI set of ISO 9826): throat m, K L/s, n; the formulas differ from the rounded K by 0.09 %. */
    @Test
    void parshallConstantsOfTheStandard() {
        double[][] rows = {
            {0.30, 679, 1.521}, {0.60, 1403, 1.548}, {0.75, 1772, 1.557}, {1.0, 2397, 1.569}, {1.2, 2904, 1.577},
            {1.8, 4440, 1.593}, {2.1, 5222, 1.599}, {3.05, 7463, 1.6}, {3.66, 8859, 1.6}, {6.10, 14450, 1.6},
            {7.62, 17940, 1.6}, {12.19, 28430, 1.6}, {15.24, 35410, 1.6}
        };
        for (double[] row : rows) {
            ParshallFlume flume = ParshallFlume.ofThroat(row[0]);
            assertThat(flume.constant()).isCloseTo(row[1] / 1000, withPercentage(0.1));
            assertThat(flume.exponent()).isCloseTo(row[2], within(0.001));
        }
    }

    /**
     * 4 W h^(1.522 W^0.026) in feet (US Bureau of Reclamation, Water Measurement Manual), converted in a published table: K in
     * m³/s by throat in feet.
     */
    @Test
    void parshallConstantsInFeet() {
        double[][] rows = {{1.5, 1.056}, {2, 1.428}, {3, 2.184}, {5, 3.732}, {7, 5.312}, {10, 7.463}};
        for (double[] row : rows) {
            assertThat(ParshallFlume.ofThroat(row[0] * FOOT).constant()).isCloseTo(row[1], withPercentage(0.15));
        }
    }

    /** G. P. Merkley (2005), Flumes for open-channel flow measurement, lecture 2: throat 2 ft, Q = 1.429 h^1.55. */
    @Test
    void parshallExample() {
        ParshallFlume flume = ParshallFlume.ofThroat(2 * FOOT);
        assertThat(flume.discharge(0.31)).isCloseTo(1.429 * Math.pow(0.31, 1.55), withPercentage(0.2));
    }

    /** CJ/T 3008.3-1993: least discharge by throat, L/s, at the least head, two or three digits. */
    @Test
    void parshallSmallestDischarges() {
        double[][] rows = {{0.025, 0.015, 0.09}, {0.076, 0.03, 0.77}, {0.152, 0.03, 1.5}};
        for (double[] row : rows) {
            assertThat(1000 * ParshallFlume.ofThroat(row[0]).discharge(row[1])).isCloseTo(row[2], within(0.006));
        }
    }

    /** Printed capacities of an instrument manual: throat mm, greatest head mm, m³/h, four digits. */
    @Test
    void khafagi() {
        double[][] rows = {
            {160, 350, 231.5}, {160, 460, 359.9}, {200, 380, 323.0}, {200, 580, 637.7}, {320, 600, 1024},
            {320, 850, 1790}, {400, 800, 1982}, {400, 1200, 3812}, {640, 1250, 6181}, {640, 1800, 11110}
        };
        for (double[] row : rows) {
            KhafagiFlume flume = KhafagiFlume.ofThroat(row[0] / 1000);
            assertThat(3600 * flume.discharge(row[1] / 1000)).isCloseTo(row[2], withPercentage(0.2));
            StructureContract.holds(flume, row[1] / 1000);
        }
        StructureContract.refuses(KhafagiFlume.ofThroat(0.048), 0.1, "throat b must be in [0.12, 0.64] m");
        StructureContract.refuses(KhafagiFlume.ofThroat(0.2), 0.7, "h/b must be at most 3");
    }

    @Test
    void parshallLimits() {
        ParshallFlume flume = ParshallFlume.ofThroat(0.6);
        StructureContract.holds(flume, 0.05);
        StructureContract.holds(flume, 0.75);
        StructureContract.refuses(flume, 0.76, "head h must be in [0.05, 0.75] m");
        assertThat(flume.discharge(0.3, 0.2)).isEqualTo(flume.discharge(0.3));
        for (double bad : new double[] {0, 0.1, 2.7, 16, Double.NaN}) {
            assertThatThrownBy(() -> ParshallFlume.ofThroat(bad))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("throat must be one of 0.025, 0.051, 0.076, 0.152, 0.229, 0.25, or in [0.3,"
                            + " 2.44], or in [3.04, 15.25] m, was ");
        }
        assertThat(ParshallFlume.ofThroat(0.152)).hasToString("ParshallFlume[W = 0.152 m, Q = 0.3812 h^1.58]");
        for (double throat :
                new double[] {0.025, 0.051, 0.076, 0.152, 0.229, 0.25, 0.45, 0.9, 1.5, 2.4, 3.05, 4.57, 15.24}) {
            ParshallFlume each = ParshallFlume.ofThroat(throat);
            StructureContract.holds(each, each.limits().get(0).from());
            StructureContract.holds(each, each.limits().get(0).to());
        }
    }

    /** Same equations solved with 30 digits by bisection and fixed-point iteration in mpmath. */
    @Test
    void longThroatsAgainstAnIndependentSolution() {
        assertThat(LongThroatedFlume.of(Throat.rectangular(0.25).withSideSlope(1), 0.8)
                        .inChannel(ApproachChannel.ofWidth(1).withCrestHeight(0.1))
                        .discharge(0.22))
                .isCloseTo(0.0709767573311348100, within(1e-15));
        LongThroatedFlume u = LongThroatedFlume.of(Throat.uShaped(0.3), 0.6)
                .inChannel(ApproachChannel.ofWidth(0.6).withCrestHeight(0.05));
        assertThat(u.discharge(0.12)).isCloseTo(0.0134121502900025156, within(1e-15));
        assertThat(u.discharge(0.29)).isCloseTo(0.0676737398166510285, within(1e-15));
        assertThat(LongThroatedFlume.of(Throat.rectangular(0.3), 0.9)
                        .inChannel(ApproachChannel.ofWidth(0.75).withCrestHeight(0.12))
                        .discharge(0.33))
                .isCloseTo(0.0957929313725675795, within(1e-15));
    }

    /** The printed form of ISO 4359 for a rectangle, (⅔)^1.5 √g Cd Cv b h^1.5, from its parts. */
    @Test
    void rectangularFlumeFromItsCoefficients() {
        LongThroatedFlume flume = LongThroatedFlume.of(Throat.rectangular(0.3), 0.9)
                .inChannel(ApproachChannel.ofWidth(0.75).withCrestHeight(0.12));
        double h = 0.33;
        double cd = (1 - 0.006 * 0.9 / 0.3) * Math.pow(1 - 0.003 * 0.9 / h, 1.5);
        double cv = ApproachVelocity.coefficient(cd * 0.3 * h / (0.75 * (h + 0.12)));
        assertThat(flume.coefficient(h)).isCloseTo(cd, within(1e-15));
        assertThat(flume.velocityCoefficient(h)).isCloseTo(cv, within(1e-13));
        assertThat(flume.discharge(h))
                .isCloseTo(
                        Math.pow(2.0 / 3, 1.5) * Math.sqrt(9.80665) * cd * cv * 0.3 * Math.pow(h, 1.5), within(1e-14));
        assertThat(flume.coefficientUncertainty(h).orElseThrow()).isCloseTo(0.01 + 0.2 * (cv - cd), within(1e-13));
    }

    /** A slope of nearly nothing is a rectangle; the U below its springing is a circle. */
    @Test
    void shapesMeet() {
        LongThroatedFlume rectangular =
                LongThroatedFlume.of(Throat.rectangular(0.3), 0.9).withDisplacementRatio(0);
        LongThroatedFlume steep = LongThroatedFlume.of(Throat.rectangular(0.3).withSideSlope(1e-12), 0.9)
                .withDisplacementRatio(0);
        assertThat(steep.discharge(0.2)).isCloseTo(rectangular.discharge(0.2), within(1e-12));
        // critical flow of a triangle: yc = 4/5 H, Q = m yc² √(g yc/2)
        double yc = 0.16;
        assertThat(Throat.rectangular(1e-6).withSideSlope(1.5).criticalDischarge(0.2))
                .isCloseTo(1.5 * yc * yc * Math.sqrt(9.80665 * yc / 2), within(1e-6));
        assertThat(Throat.rectangular(1e-6).withSideSlope(1.5).criticalDepth(0.2))
                .isCloseTo(yc, within(1e-6));
    }

    @Test
    void approachOfAnySection() {
        LongThroatedFlume flume =
                LongThroatedFlume.of(Throat.uShaped(0.3), 0.6).in(CircularSection.ofDiameter(0.6), 0.1);
        StructureContract.holds(flume, 0.2);
        assertThat(flume.discharge(0.2))
                .isGreaterThan(LongThroatedFlume.of(Throat.uShaped(0.3), 0.6).discharge(0.2));
        assertThat(flume.highestHead()).isCloseTo(0.4994, within(1e-12));
        assertThatThrownBy(() -> flume.evaluate(0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("head must be in [0, 0.499");
        assertThatThrownBy(
                        () -> LongThroatedFlume.of(Throat.uShaped(0.3), 0.6).in(CircularSection.ofDiameter(0.6), 0.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("hump must be below the height of the section 0.6 m, was 0.6");
        assertThatThrownBy(() -> LongThroatedFlume.of(Throat.rectangular(0.5), 0.6)
                        .withDisplacementRatio(0)
                        .inChannel(ApproachChannel.ofWidth(0.4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the approach must be larger than the throat, rectangular, b = 0.5 m in channel"
                        + " 0.4 m wide, hump 0 m");
    }

    @Test
    void sidesThatOutgrowTheChannelEndTheRange() {
        LongThroatedFlume flume = LongThroatedFlume.of(Throat.rectangular(0.2).withSideSlope(1), 0.6)
                .inChannel(ApproachChannel.ofWidth(1.2).withCrestHeight(0.1));
        StructureContract.holds(flume, 0.3);
        assertThat(flume.highestHead()).isBetween(0.4, 3.0);
        assertThat(flume.formula(flume.highestHead())).isPositive().isFinite();
        assertThatThrownBy(() -> flume.evaluate(flume.highestHead() * 1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("head must be in [0, ");
        assertThatThrownBy(() -> flume.formula(50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("head 50 m: the approach must be larger than the throat");
    }

    @Test
    void longThroatLimits() {
        LongThroatedFlume flume =
                LongThroatedFlume.of(Throat.rectangular(0.3), 1).inChannel(ApproachChannel.ofWidth(0.5));
        StructureContract.holds(flume, 0.2);
        StructureContract.refuses(flume, 0.51, "h/L must be in [0.05, 0.5]");
        StructureContract.refuses(flume, 0.04, "head h must be in [0.05, 2] m");
        StructureContract.refuses(
                LongThroatedFlume.of(Throat.rectangular(0.09), 1), 0.1, "throat width must be at least 0.1 m");
        StructureContract.refuses(LongThroatedFlume.of(Throat.rectangular(0.1), 2), 0.4, "h/b must be at most 3");
        StructureContract.refuses(
                LongThroatedFlume.of(Throat.rectangular(0.45), 1).inChannel(ApproachChannel.ofWidth(0.5)),
                0.2,
                "Froude number of the approach must be");
        assertThat(LongThroatedFlume.of(Throat.uShaped(0.3), 1).coefficientUncertainty(0.2))
                .isEmpty();
        assertThat(flume)
                .hasToString("LongThroatedFlume[rectangular, b = 0.3 m, L = 1 m, from channel 0.5 m wide, hump 0 m]");
        assertThatThrownBy(() -> LongThroatedFlume.of(Throat.rectangular(0.01), 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("throatLength must be short enough");
        assertThatThrownBy(() -> flume.withDisplacementRatio(0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newRatio must be in [0, 0.05], was 0.1");
    }
}
