package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;

class BarScreenTest {
    private static final BarScreen SCREEN =
            BarScreen.ofBarsAndGaps(BarShape.ROUNDED_UPSTREAM, 0.020, 0.100).withInclination(75);

    /**
     * Intake design sheet B-2.1 (after M. M. Dandekar, Water Power Engineering, p. 273): bars 20 mm at gaps of 100 mm,
     * 75 degrees, β 1.83, 0.6 m/s: 0.0037935 m with g 9.81 (ours 0.034 % more).
     */
    @Test
    void cleanScreen() {
        assertThat(SCREEN.headLoss(0.6) * 9.80665 / 9.81).isCloseTo(0.0037935, within(5e-8));
    }

    @Test
    void blindingNarrowsTheGapsAtTheSamePitch() {
        BarScreen narrow =
                BarScreen.ofBarsAndGaps(BarShape.ROUNDED_UPSTREAM, 0.060, 0.060).withInclination(75);
        assertThat(SCREEN.withBlindedFraction(0.4).headLoss(0.7)).isCloseTo(narrow.headLoss(0.7), within(1e-15));
        BarScreen equal = BarScreen.ofBarsAndGaps(BarShape.RECTANGULAR, 0.01, 0.01);
        assertThat(equal.withBlindedFraction(0.5).headLoss(1) / equal.headLoss(1))
                .isCloseTo(4.3267, within(1e-4));
    }

    @Test
    void theFractionComesBackFromTheLoss() {
        for (double fraction : new double[] {0, 0.01, 0.33, 0.8, 0.99}) {
            BarScreen blinded = SCREEN.withBlindedFraction(fraction);
            Blinding blinding = SCREEN.blinding(blinded.headLoss(0.45), 0.45);
            assertThat(blinded.blinding(blinded.headLoss(0.45), 0.45)).isEqualTo(blinding);
            assertThat(blinded.withInclination(60).withInclination(75)).isEqualTo(blinded);
            assertThat(blinding.fraction()).isCloseTo(fraction, within(1e-14));
            assertThat(blinding.cleanHeadLoss()).isEqualTo(SCREEN.headLoss(0.45));
        }
    }

    @Test
    void aLossBelowTheCleanOneSaysSo() {
        Blinding blinding = SCREEN.blinding(0.001, 0.6);
        assertThat(blinding.fraction()).isZero();
        assertThat(blinding.isBelowClean()).isTrue();
        assertThat(blinding.toString()).contains("BELOW CLEAN");
        assertThat(SCREEN.blinding(0, 0.6).isBelowClean()).isTrue();
        assertThat(SCREEN.blinding(0.15, 0.6))
                .satisfies(b -> assertThat(b.isBelowClean()).isFalse())
                .satisfies(b -> assertThat(b.fraction()).isCloseTo(0.7110443969157445, withPercentage(1e-9)));
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> SCREEN.withBlindedFraction(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newBlindedFraction must be in [0, 1), was 1");
        assertThatThrownBy(() -> SCREEN.headLoss(-1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("approachVelocity must be 0 or greater and finite (m/s), was -1");
        assertThatThrownBy(() -> SCREEN.blinding(0.1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("approachVelocity must be greater than 0 and finite (m/s), was 0");
        assertThatThrownBy(() -> SCREEN.withInclination(91))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newAngleDegrees must be greater than 0 and at most 90, was 91");
        assertThat(SCREEN).hasToString("BarScreen[ROUNDED_UPSTREAM, bars 0.02 m, gaps 0.1 m, 75 degrees]");
    }
}
