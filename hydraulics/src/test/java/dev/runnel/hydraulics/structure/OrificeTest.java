package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;

class OrificeTest {
    private static final double FOOT = 0.3048;
    private static final double CUBIC_FOOT = FOOT * FOOT * FOOT;

    /** The books below take g = 9.81 or 32.2 ft/s²: 0.017 and 0.04 % above ours in √g. */
    @Test
    void smallOrifice() {
        // K. Subramanya, ex. 13.1: H 2 m, d 4 cm, Cc 0.63, Cv 0.949: 4.707 L/s
        assertThat(Orifice.circular(0.04).withCoefficient(0.63 * 0.949).discharge(2 + 0.02))
                .isCloseTo(0.004707, withPercentage(0.06));
        // J. Lal, ex. 3.4: mouthpiece d 2 in, H 12 ft, Cd 0.833: 0.505 ft³/s
        assertThat(Orifice.circular(FOOT / 6).withCoefficient(0.833).discharge(12 * FOOT + FOOT / 12) / CUBIC_FOOT)
                .isCloseTo(0.505, withPercentage(0.1));
    }

    /** B. C. Punmia, ex. 17.2: submerged outlet, Q 0.04 m³/s, C 0.7, levels 0.10 m apart: d 22.80 cm. */
    @Test
    void submergedOrifice() {
        assertThat(Orifice.circular(0.2280).withCoefficient(0.7).discharge(1.10, 1.0))
                .isCloseTo(0.04, withPercentage(0.15));
        assertThat(Orifice.circular(0.2280).head(0.04, 1.0)).isGreaterThan(1.0);
    }

    @Test
    void freeSmallOrificeMustBeCovered() {
        Orifice orifice = Orifice.ofWidthAndHeight(0.3, 0.2);
        StructureContract.holds(orifice, 0.3);
        StructureContract.refuses(orifice, 0.29, "level over height of the opening must be at least 1.5, was 1.45");
        assertThat(orifice.head(orifice.discharge(0.41, 0.4), 0.4)).isCloseTo(0.41, within(1e-12));
        assertThat(orifice).hasToString("Orifice[A = 0.06 m2, Cd = 0.61]");
        assertThat(orifice.discharge(0.3)
                        / LargeOrifice.ofWidthAndOpening(0.3, 0.2).discharge(0.3))
                .isBetween(1.010, 1.012);
        assertThatThrownBy(() -> orifice.withCoefficient(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newCoefficient must be greater than 0 and at most 1, was 0");
        assertThatThrownBy(() -> Orifice.circular(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("diameter must be in [1.0E-6, 1000000] m, was -1");
    }

    @Test
    void largeRectangularOrifice() {
        // B. K. Sarkar, ex. 4.4: Cd 0.6, heads 3 and 4 m, b 2 m: 9935.6 L/s
        assertThat(LargeOrifice.ofWidthAndOpening(2, 1).withCoefficient(0.6).discharge(4))
                .isCloseTo(9.9356, withPercentage(0.02));
        // R. S. Dighe, ex. 4.20: L 3 ft, heads 0.75 and 1.5 ft, Cd 0.62: 709.1 ft³/min
        assertThat(60
                        * LargeOrifice.ofWidthAndOpening(3 * FOOT, 0.75 * FOOT)
                                .withCoefficient(0.62)
                                .discharge(1.5 * FOOT)
                        / CUBIC_FOOT)
                .isCloseTo(709.1, withPercentage(0.05));
    }

    /**
     * Encyclopaedia Britannica 11th ed. (1911), vol. 14, Hydraulics: ratio of the exact integral to the formula with the
     * head at the centre, by the ratio of the heads of the two edges; three digits, the last two off by one.
     */
    @Test
    void ratioToTheCentreHead() {
        double[][] rows = {{0, 0.943}, {0.2, 0.979}, {0.5, 0.995}, {0.7, 0.998}, {0.8, 0.999}};
        for (double[] row : rows) {
            double bottom = 1.7;
            double opening = bottom * (1 - row[0]);
            double exact = LargeOrifice.ofWidthAndOpening(0.4, opening).discharge(bottom);
            double centre = 0.61 * 0.4 * opening * Math.sqrt(2 * 9.80665 * (bottom - opening / 2));
            assertThat(exact / centre).isCloseTo(row[1], within(1e-3));
        }
    }

    /** B. K. Sarkar, ex. 4.6: b 2 m, heads 4 and 7 m, tailwater 4.8 m below the level upstream, Cd 0.62: 35 687.468 L/s. */
    @Test
    void partlySubmerged() {
        LargeOrifice orifice = LargeOrifice.ofWidthAndOpening(2, 3).withCoefficient(0.62);
        assertThat(orifice.discharge(7, 2.2)).isCloseTo(35.687468, withPercentage(0.02));
        assertThat(orifice.discharge(7, 3.5)).isCloseTo(0.62 * 6 * Math.sqrt(2 * 9.80665 * 3.5), within(1e-12));
        assertThat(orifice.discharge(7, -1)).isEqualTo(orifice.discharge(7));
        assertThat(orifice.discharge(7, 7)).isZero();
        assertThat(orifice.discharge(0, 0)).isZero();
        assertThatThrownBy(() -> orifice.discharge(1, 1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("tailwater must be at most the head 1 m (flow back is not covered), was 1.1");
    }

    /** Integrals with 30 digits by mpmath's quadrature, Cd 0.61, g 9.80665. */
    @Test
    void roundOpeningAgainstAnIndependentIntegral() {
        LargeOrifice full = LargeOrifice.circular(0.45);
        LargeOrifice gate = LargeOrifice.circular(0.6).closedTo(0.22);
        assertThat(full.discharge(0.2)).isCloseTo(0.0500801007871105014, withPercentage(1e-10));
        assertThat(full.discharge(0.46)).isCloseTo(0.200970149271566486, withPercentage(1e-9));
        assertThat(full.discharge(1.3)).isCloseTo(0.444861915525484909, withPercentage(1e-10));
        assertThat(gate.discharge(0.9)).isCloseTo(0.222770528426892244, withPercentage(1e-10));
        assertThat(gate.discharge(0.1)).isCloseTo(0.0157312804727756340, withPercentage(1e-10));
        LargeOrifice drowned = LargeOrifice.circular(0.6).closedTo(0.4);
        assertThat(drowned.discharge(0.9, 0.25)).isCloseTo(0.424595857402919202, withPercentage(1e-10));
        assertThat(drowned.discharge(0.9, 0.7)).isCloseTo(0.241921097069481999, withPercentage(1e-10));
    }

    @Test
    void holdsFromATrickleToAFlood() {
        for (double head : new double[] {1e-6, 0.01, 0.3, 0.45, 0.4500001, 5, 300}) {
            StructureContract.holds(LargeOrifice.circular(0.45), head);
            StructureContract.holds(LargeOrifice.ofWidthAndOpening(0.45, 0.45), head);
            StructureContract.holds(LargeOrifice.circular(0.45).closedTo(0.1), head);
        }
        assertThat(LargeOrifice.circular(0.45).closedTo(0.1))
                .hasToString("LargeOrifice[D = 0.45 m, open to 0.1 m, Cd = 0.61]");
        assertThatThrownBy(() -> LargeOrifice.circular(0.45).closedTo(0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newOpening must be greater than 0 and at most the opening 0.45 m, was 0.5");
    }
}
