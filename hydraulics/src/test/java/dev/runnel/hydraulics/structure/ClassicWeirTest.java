package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;

class ClassicWeirTest {
    private static final double FOOT = 0.3048;
    private static final double CUBIC_FOOT = FOOT * FOOT * FOOT;

    /** B. K. Sarkar, Fluid Mechanics, ex. 5.3, 5.4, 5.9, 5.10; g 9.81, so 0.017 % above ours. */
    @Test
    void notchesOfATextbook() {
        assertThat(CoefficientWeir.vNotch(90).withCoefficient(0.62).discharge(0.36))
                .isCloseTo(0.11389, withPercentage(0.025));
        assertThat(CoefficientWeir.rectangular(0.3)
                        .withSideSlope(1)
                        .withCoefficient(0.62)
                        .discharge(0.2))
                .isCloseTo(0.075327, withPercentage(0.02));
        assertThat(CoefficientWeir.rectangular(4)
                        .withCoefficient(0.62)
                        .withEndContractions(2)
                        .discharge(0.2))
                .isCloseTo(0.6485, withPercentage(0.03));
        assertThat(CoefficientWeir.vNotch(45).withCoefficient(0.6).discharge(0.5))
                .isCloseTo(0.10379, withPercentage(0.02));
    }

    /** R. K. Brasch, ex. 5.5: 0.355 m³/s over 0.46 m, Cd 0.62: head 0.5622 m. J. Lal, ex. 4.5: Francis, 33.15 ft³/s. */
    @Test
    void headsAndFrancis() {
        assertThat(CoefficientWeir.rectangular(0.46).withCoefficient(0.62).head(0.355))
                .isCloseTo(0.5622, withPercentage(0.02));
        assertThat(CoefficientWeir.rectangular(7.573 * FOOT).discharge(1.2 * FOOT) / CUBIC_FOOT)
                .isCloseTo(33.15, within(0.005));
    }

    /**
     * A university tutorial: b 0.25 m, h 0.19 m, Cd 0.62, channel 0.40 m wide, crest 0.10 m high: 0.0379 and, with the
     * velocity of approach, 0.0395 m³/s. The last digits by fixed-point iteration in Python.
     */
    @Test
    void velocityOfApproach() {
        CoefficientWeir weir = CoefficientWeir.rectangular(0.25).withCoefficient(0.62);
        assertThat(weir.discharge(0.19)).isCloseTo(0.0379, within(0.00005));
        assertThat(weir.withApproach(ApproachChannel.ofWidth(0.4).withCrestHeight(0.1))
                        .discharge(0.19))
                .isCloseTo(0.0395, within(0.00005));
        assertThat(weir.withApproach(ApproachChannel.ofWidth(0.4).withCrestHeight(0.1))
                        .discharge(0.19))
                .isCloseTo(0.039473195856809876, within(1e-14));
        assertThat(CoefficientWeir.rectangular(0.5)
                        .withSideSlope(0.4)
                        .withCoefficient(0.6)
                        .withEndContractions(1)
                        .withApproach(ApproachChannel.ofWidth(1.1).withCrestHeight(0.2))
                        .discharge(0.3))
                .isCloseTo(0.16891045974928012, within(1e-14));
    }

    @Test
    void contractionsEndWhereTheDischargeWouldFall() {
        CoefficientWeir weir = CoefficientWeir.rectangular(0.5).withEndContractions(2);
        assertThat(weir.highestHead()).isEqualTo(1.25);
        StructureContract.holds(weir, 1.24);
        assertThatThrownBy(() -> weir.evaluate(1.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("head must be in [0, 1.25] m, was 1.6");
        assertThatThrownBy(() -> CoefficientWeir.vNotch(90).withCoefficient(0.6).withEndContractions(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("count must be 0 for a notch without a crest, was 1");
        assertThatThrownBy(() -> weir.withApproach(ApproachChannel.ofWidth(0.4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("width of the channel must be at least the crest length 0.5 m, was 0.4");
        assertThatThrownBy(() -> CoefficientWeir.rectangular(1).withCoefficient(2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newCoefficient must be greater than 0 and at most 1, was 2");
        assertThat(weir).hasToString("CoefficientWeir[b = 0.5 m, z = 0, Cd = 0.6227, 2 contractions]");
    }

    @Test
    void aNotchWiderThanItsChannelHasAnEnd() {
        CoefficientWeir notch = CoefficientWeir.vNotch(120)
                .withCoefficient(0.6)
                .withApproach(ApproachChannel.ofWidth(0.5).withCrestHeight(0.1));
        StructureContract.holds(notch, 0.14);
        // where the notch fills its channel, B = 2 h tan 60
        assertThat(notch.highestHead()).isCloseTo(0.25 / Math.sqrt(3), within(1e-12));
        assertThat(notch.formula(notch.highestHead())).isPositive().isFinite();
    }

    /** J. Lal, ex. 4.5: Rehbock in feet, L 7.573, h 1.2, p 2.85: 34.12 ft³/s, with constants 0.2 % above those of ISO 1438. */
    @Test
    void rehbock() {
        RehbockWeir weir = RehbockWeir.of(ApproachChannel.ofWidth(7.573 * FOOT).withCrestHeight(2.85 * FOOT));
        assertThat(weir.discharge(1.2 * FOOT) / CUBIC_FOOT).isCloseTo(34.12, withPercentage(0.2));
        StructureContract.holds(weir, 0.3);
        StructureContract.refuses(weir, 0.76, "head h must be in [0.03, 0.75] m");
        StructureContract.refuses(
                RehbockWeir.of(ApproachChannel.ofWidth(1).withCrestHeight(0.2)), 0.3, "h/p must be at most 1");
    }

    /** Two published laws for the same plate, from different experiments: within the 1.5 % that ISO 1438 gives each. */
    @Test
    void rehbockAndKindsvaterAgree() {
        for (double head : new double[] {0.07, 0.19, 0.38}) {
            assertThat(RehbockWeir.of(ApproachChannel.ofWidth(1.3).withCrestHeight(0.45))
                            .discharge(head))
                    .isCloseTo(
                            RectangularWeir.fullWidth(
                                            ApproachChannel.ofWidth(1.3).withCrestHeight(0.45))
                                    .discharge(head),
                            withPercentage(1.5));
        }
    }

    /** P. Novak et al., Hydraulic Structures, pp. 357-358: h 1.1 m, p 0.6 m, Cv 1.175 (the width ratio there is not known). */
    @Test
    void crump() {
        CrumpWeir weir = CrumpWeir.of(ApproachChannel.ofWidth(10).withCrestHeight(0.6));
        double still = 0.633 * Math.sqrt(9.80665) * 10 * Math.pow(1.1, 1.5);
        assertThat(weir.discharge(1.1) / still).isCloseTo(1.175, withPercentage(0.5));
        assertThat(weir.discharge(1.1)).isCloseTo(26.97852764028408, within(1e-11));
        StructureContract.holds(weir, 0.5);
        StructureContract.refuses(weir, 1.9, "h/p must be at most 3");
        StructureContract.refuses(
                CrumpWeir.of(ApproachChannel.ofWidth(0.5).withCrestHeight(0.6)), 0.3, "b/h must be at least 2");
        assertThat(weir.evaluate(weir.highestHead()).discharge()).isPositive().isFinite();
    }
}
