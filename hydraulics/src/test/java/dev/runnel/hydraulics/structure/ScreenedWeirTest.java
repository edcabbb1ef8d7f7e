package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ScreenedWeirTest {
    private static final RectangularWeir WEIR =
            RectangularWeir.fullWidth(ApproachChannel.ofWidth(2).withCrestHeight(0.8));
    private static final BarScreen SCREEN = BarScreen.ofBarsAndGaps(BarShape.RECTANGULAR, 0.006, 0.010);
    private static final ScreenedWeir CLEAN =
            ScreenedWeir.of(WEIR, SCREEN, ApproachChannel.ofWidth(2).withCrestHeight(0.8));

    @Test
    void theLevelIsWeirHeadPlusLoss() {
        for (double fraction : new double[] {0, 0.4, 0.9}) {
            ScreenedWeir structure = CLEAN.withBlindedFraction(fraction);
            double head = 0.35;
            double discharge = structure.discharge(head);
            double loss = SCREEN.withBlindedFraction(fraction).headLoss(discharge / (2 * (head + 0.8)));
            assertThat(WEIR.head(discharge) + loss).isCloseTo(head, within(1e-12));
            StructureContract.holds(structure, head);
        }
    }

    @Test
    void blindingCostsDischarge() {
        assertThat(CLEAN.discharge(0.35)).isLessThan(WEIR.discharge(0.35));
        assertThat(CLEAN.withBlindedFraction(0.7).discharge(0.35)).isLessThan(CLEAN.discharge(0.35));
        assertThat(CLEAN.withBlindedFraction(0.7).head(0.3)).isGreaterThan(CLEAN.head(0.3));
    }

    @Test
    void blindingComesBackFromTheTwoLevels() {
        ScreenedWeir blinded = CLEAN.withBlindedFraction(0.63);
        Blinding found = CLEAN.blinding(0.4, blinded.weirHead(0.4));
        assertThat(found.fraction()).isCloseTo(0.63, within(1e-10));
        assertThatThrownBy(() -> CLEAN.blinding(0.2, 0.3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("headInFront must be at least headBehind 0.3 m and finite, was 0.2");
    }

    @Test
    void limitsAreThoseOfTheWeir() {
        StructureContract.refuses(CLEAN, 0.03, "head h must be at least 0.03 m");
        assertThat(CLEAN.discharge(0)).isZero();
        assertThat(CLEAN.coefficientUncertainty(0.3)).hasValue(0.015);
        assertThatThrownBy(() -> CLEAN.withBlindedFraction(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newBlindedFraction must be in [0, 1), was 1");
        assertThatThrownBy(() -> ScreenedWeir.of(WEIR, SCREEN, ApproachChannel.ofWidth(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("crest height of the channel must be in [1.0E-6, 1000000] m, was 0");
    }
}
