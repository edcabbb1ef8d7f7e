package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Drowned laws. Figures with many digits: the published equations solved with 30 digits by fixed-point iteration in mpmath. */
class DrownedTest {
    private static final ApproachChannel CHANNEL = ApproachChannel.ofWidth(2).withCrestHeight(0.4);

    @Test
    void parshallByItsPublishedCorrections() {
        ParshallFlume two = ParshallFlume.ofFeet(2);
        assertThat(two.discharge(0.4, 0.34)).isCloseTo(0.297708804455645, within(1e-14));
        assertThat(two.evaluate(0.4, 0.34).isDrowned()).isTrue();
        assertThat(two.evaluate(0.4, 0.27).isDrowned()).isFalse();
        assertThat(two.discharge(0.4, 0.27)).isEqualTo(two.discharge(0.4));
        assertThat(ParshallFlume.ofThroat(3.66).discharge(0.9, 0.81)).isCloseTo(6.69262848372558, within(1e-13));
        assertThatThrownBy(() -> two.discharge(0.4, 0.39))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("h2/h1 must be at most 0.95, was 0.975");
        assertThatThrownBy(() -> ParshallFlume.ofInches(6).discharge(0.2, 0.15))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("h2/h1 of a throat below 0.3 m must be at most 0.6");
    }

    @Test
    void parshallSizesAreMatchedToTheMillimetre() {
        ParshallFlume nine = ParshallFlume.ofThroat(0.229);
        for (double throat : new double[] {0.228, 0.2286, 0.229}) {
            assertThat(ParshallFlume.ofThroat(throat)).isEqualTo(nine);
        }
        assertThat(ParshallFlume.ofInches(9)).isEqualTo(nine);
        assertThat(ParshallFlume.ofInches(6)).isEqualTo(ParshallFlume.ofThroat(0.1524));
        assertThat(ParshallFlume.ofInches(3)).isEqualTo(ParshallFlume.ofThroat(0.0762));
        assertThat(ParshallFlume.ofInches(1)).isEqualTo(ParshallFlume.ofThroat(0.025));
        assertThat(ParshallFlume.ofFeet(1).discharge(0.3))
                .isEqualTo(ParshallFlume.ofThroat(0.3048).discharge(0.3));
        assertThatThrownBy(() -> ParshallFlume.ofThroat(0.2267)).hasMessageStartingWith("throat must be one of 0.025");
    }

    @Test
    void crumpStaysModularToThreeQuarters() {
        CrumpWeir weir = CrumpWeir.of(CHANNEL);
        assertThat(weir.discharge(0.3, 0.1)).isCloseTo(0.691361567743474, within(1e-14));
        assertThat(weir.evaluate(0.3, 0.15).toString()).endsWith("within limits]");
        assertThat(weir.discharge(0.3, 0.27)).isCloseTo(0.649350229304597, within(1e-14));
        assertThat(weir.evaluate(0.3, 0.27).toString()).endsWith("drowned]");
        assertThat(weir.discharge(0.3, 0.29)).isCloseTo(0.487842439570341, within(1e-14));
        assertThat(weir.dischargeByCrestTapping(0.3, 0.2)).isCloseTo(0.565332716736386, within(1e-14));
        assertThat(weir.dischargeByCrestTapping(0.3, 0.05)).isEqualTo(weir.discharge(0.3));
        assertThat(weir.modularLimit(0.3).orElseThrow()).isBetween(0.75, 0.8);
    }

    @Test
    void broadCrestWithoutRecoveryIsTheTextbooksLaw() {
        BroadCrestedWeir weir =
                BroadCrestedWeir.squareEdged(1.5, ApproachChannel.ofWidth(1.1).withCrestHeight(0.6));
        assertThat(weir.discharge(0.31, 0.27)).isCloseTo(0.230493391909053, within(1e-14));
        double limit = weir.modularLimit(0.31).orElseThrow() * 0.31;
        assertThat(weir.discharge(0.31, limit * (1 - 1e-9))).isCloseTo(weir.discharge(0.31), within(1e-12));
        assertThat(weir.discharge(0.31, limit * (1 + 1e-6))).isCloseTo(weir.discharge(0.31), withPercentage(1e-4));
        assertThat(weir.withModularLimit(0.85).discharge(0.31, 0.24)).isEqualTo(weir.discharge(0.31));
    }

    @Test
    void longThroats() {
        LongThroatedFlume flume =
                LongThroatedFlume.of(Throat.rectangular(0.3), 0.9).withModularLimit(0.8);
        assertThat(flume.discharge(0.33, 0.3)).isCloseTo(0.0806861902242791, within(1e-14));
        assertThat(flume.discharge(0.33, 0.26)).isEqualTo(flume.discharge(0.33));
        assertThat(LongThroatedFlume.of(Throat.rectangular(0.3), 0.9)
                        .modularLimit(0.2)
                        .orElseThrow())
                .isCloseTo(2.0 / 3, within(1e-12));
        // a triangle is critical at 4/5 of its energy, a U between
        assertThat(LongThroatedFlume.of(Throat.rectangular(1e-6).withSideSlope(1), 1e-5)
                        .modularLimit(0.2)
                        .orElseThrow())
                .isCloseTo(0.8, within(1e-4));
        assertThat(LongThroatedFlume.of(Throat.uShaped(0.3), 0.9)
                        .modularLimit(0.1)
                        .orElseThrow())
                .isBetween(2.0 / 3, 0.8);
    }

    /** The classical case: an orifice, a weir and a gate know what stands behind them. */
    @Test
    void everyStructureNamesItsModularLimit() {
        List<HeadDischarge> all = List.of(
                RectangularWeir.fullWidth(CHANNEL),
                CrumpWeir.of(CHANNEL),
                BroadCrestedWeir.squareEdged(1, CHANNEL),
                ParshallFlume.ofFeet(3),
                KhafagiFlume.ofThroat(0.2),
                LongThroatedFlume.of(Throat.uShaped(0.3), 0.9).inChannel(CHANNEL),
                Orifice.circular(0.1),
                SluiceGate.ofWidthAndOpening(2, 0.1));
        assertThat(all)
                .allSatisfy(
                        each -> assertThat(each.modularLimit(0.3).orElseThrow()).isBetween(0.0, 1.0));
        assertThat(FreeOutfall.circular(1).modularLimit(0.3)).isEmpty();
    }

    @Test
    void aRecordOfTwoLevelsIsMarkedAndCounted() {
        ParshallFlume flume = ParshallFlume.ofFeet(2);
        double[] head = {0.4, 0.4, 0.4, Double.NaN, -0.01, 0.4, 0.9, 0};
        double[] tail = {-1, 0.27, 0.34, 0.1, 0.1, 0.45, 0.1, -1};
        double[] discharge = new double[8];
        boolean[] drowned = new boolean[8];
        boolean[] outside = new boolean[8];
        assertThat(flume.evaluate(head, tail, discharge, drowned, outside)).isEqualTo(4);
        assertThat(outside).containsExactly(false, false, false, true, true, true, true, false);
        assertThat(drowned).containsExactly(false, false, true, false, false, true, false, false);
        assertThat(discharge[2]).isEqualTo(flume.discharge(0.4, 0.34));
        assertThat(discharge[3]).isNaN();
        assertThat(discharge[4]).isZero();
        assertThat(discharge[5]).isZero();
        assertThat(discharge[6]).isEqualTo(flume.formula(0.9));
    }

    /** The narrow notch whose straight line of Ce turned the discharge down: now it rises to its highest head. */
    @Test
    void theNarrowNotchRisesToItsHighestHead() {
        RectangularWeir notch =
                RectangularWeir.contracted(0.1, ApproachChannel.ofWidth(1).withCrestHeight(0.1));
        assertThat(notch.highestHead()).isEqualTo(2.5);
        assertThat(notch.formula(2.5)).isGreaterThan(notch.formula(2.4));
        assertThat(notch.formula(1e-100)).isPositive().isLessThan(1e-140);
        assertThatThrownBy(() -> notch.evaluate(16.8)).hasMessage("head must be in [0, 2.5] m, was 16.8");
    }

    @Test
    void uncertaintyOfALongThroatIsANumberOutsideItsLimits() {
        LongThroatedFlume flume = LongThroatedFlume.of(Throat.rectangular(0.3), 0.9)
                .inChannel(ApproachChannel.ofWidth(0.75).withCrestHeight(0.12));
        for (double head : new double[] {1e-9, 1e-4, 0.0027, 0.01, 3}) {
            assertThat(flume.coefficientUncertainty(head).orElseThrow()).isFinite();
        }
    }

    @Test
    void gravityActsByItsRoot() {
        RectangularWeir weir = RectangularWeir.fullWidth(CHANNEL);
        assertThat(weir.atGravity(9.81).discharge(0.3)).isEqualTo(weir.discharge(0.3) * Math.sqrt(9.81 / 9.80665));
        assertThat(weir.atGravity(9.81).discharge(0.3, 0.2))
                .isCloseTo(weir.discharge(0.3, 0.2) * Math.sqrt(9.81 / 9.80665), within(1e-15));
        assertThatThrownBy(() -> weir.atGravity(32.2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gravity must be in [9.7, 9.9] m/s2, was 32.2");
    }
}
