package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class HeadDischargeTest {
    private static final RectangularWeir WEIR =
            RectangularWeir.contracted(0.4, ApproachChannel.ofWidth(1.0).withCrestHeight(0.5));

    /** A structure of a user's own: all it takes. */
    private static HeadDischarge powerLaw(double constant, double exponent) {
        return new HeadDischarge() {
            @Override
            public double formula(double head) {
                return constant * Math.pow(head, exponent);
            }

            @Override
            public List<ApplicationLimit> limits() {
                return List.of();
            }
        };
    }

    @Test
    void aDryCrestGivesNothingAndBreaksNoLimit() {
        assertThat(WEIR.discharge(0)).isZero();
        assertThat(WEIR.head(0)).isZero();
        assertThat(WEIR.evaluate(0).isWithinLimits()).isTrue();
        assertThat(WEIR.evaluateDischarge(0))
                .isEqualTo(new RatedDischarge(0, 0, OptionalDouble.empty(), List.of(), false));
    }

    @Test
    void refusesWhatIsNoHead() {
        for (double bad : new double[] {-0.1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> WEIR.discharge(bad))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("head must be 0 or greater and finite (m), was ");
            assertThatThrownBy(() -> WEIR.evaluate(bad)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> WEIR.head(bad))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("discharge must be 0 or greater and finite (m3/s), was ");
            assertThatThrownBy(() -> WEIR.evaluateDischarge(bad)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void theMessageNamesLimitValueAndSource() {
        assertThatThrownBy(() -> WEIR.discharge(1.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("head 1.5 m is outside the limits of application: h/p must be at most 2.5, was 3"
                        + " (ISO 1438, from memory)");
    }

    @Test
    void theBulkFormsNameTheIndex() {
        assertThatThrownBy(() -> WEIR.discharge(new double[] {0.1, 0.02}, new double[2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("head[1]: head 0.02 m is outside the limits of application: head h must be"
                        + " at least 0.03 m");
        assertThatThrownBy(() -> WEIR.head(new double[] {-1}, new double[1]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("discharge[0]: discharge must be 0 or greater");
        assertThatThrownBy(() -> WEIR.discharge(new double[2], new double[1]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must have length 2, was 1");
        assertThatThrownBy(() -> WEIR.evaluate(new double[2], new double[2], new boolean[3]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("outside must have length 2, was 3");
    }

    @Test
    void aHeadAtTheLimitSurvivesTheRoundTrip() {
        double highest = 2.5 * 0.5;
        StructureContract.holds(WEIR, highest);
        StructureContract.holds(WEIR, 0.03);
        assertThatThrownBy(() -> WEIR.discharge(highest * (1 + 1e-9))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesADischargeThatNoHeadGives() {
        HeadDischarge trickle = powerLaw(1e-9, 1.5);
        assertThatThrownBy(() -> trickle.head(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge must be reached at a head of at most 10000 m, was 1 m3/s");
    }

    @Test
    void exponentIsThatOfThePowerLaw() {
        assertThat(powerLaw(1.37, 2.5).exponent(0.0312)).isCloseTo(2.5, within(1e-8));
        assertThat(powerLaw(3, 1.5).exponent(7)).isCloseTo(1.5, within(1e-8));
    }

    /**
     * A published uncertainty budget of a 22.5 degree V-notch read every quarter of an hour, in the manner of ISO 5168:
     * U(h) in percent, U(Cd) 0.5 %, U(q) = √((2.5 U(h))² + U(Cd)²); printed to two decimals from unrounded heads.
     */
    @Test
    void uncertaintyFollowsThePublishedBudget() {
        double[][] rows = {{0.0690, 6.92, 17.31}, {0.0639, 7.55, 18.89}, {0.0818, 5.70, 14.26}, {0.0722, 6.58, 16.46}};
        HeadDischarge notch = powerLaw(0.272, 2.5);
        for (double[] row : rows) {
            double head = row[0];
            double percent = 100 * notch.relativeUncertainty(head, head * row[1] / 100, 0.005);
            // U(h) is printed to 0.005, which 2.5 widens to 0.0125
            assertThat(percent).isCloseTo(row[2], within(0.0125 + 0.005));
        }
    }

    @Test
    void uncertaintyOfTheSourceIsCombinedWithThatOfTheHead() {
        double exponent = WEIR.exponent(0.2);
        assertThat(WEIR.relativeUncertainty(0.2, 0.002)).isEqualTo(Math.hypot(0.015, exponent * 0.01));
        assertThatThrownBy(() -> WEIR.relativeUncertainty(0.02, 0.002))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("head h must be at least 0.03 m");
        assertThatThrownBy(() -> powerLaw(1, 2).relativeUncertainty(0.2, 0.002))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("gives no uncertainty of the coefficient");
        assertThatThrownBy(() -> WEIR.relativeUncertainty(0.2, -1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("headUncertainty must be 0 or greater and finite (m), was -1");
    }

    @Test
    void readsWellAtThePrompt() {
        assertThat(WEIR.evaluate(0.2).toString())
                .isEqualTo("RatedDischarge[head 0.2 m, discharge 0.0635695 m3/s, coefficient ±1.5 %, within limits]");
        assertThat(WEIR.limits().get(1)).hasToString("h/p at most 2.5 (ISO 1438, from memory)");
        assertThat(ApplicationLimit.of("x", "m", 1, 2, "s", h -> h)).hasToString("x in [1, 2] m (s)");
        assertThatThrownBy(() -> ApplicationLimit.of("x", "m", 3, 2, "s", h -> h))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("from must not be above to 2, was 3");
    }
}
