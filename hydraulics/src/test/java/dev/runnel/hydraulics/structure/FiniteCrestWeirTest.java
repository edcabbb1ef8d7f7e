package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import org.junit.jupiter.api.Test;

class FiniteCrestWeirTest {
    private static FiniteCrestWeir weir(double length, double crestHeight) {
        return FiniteCrestWeir.ofCrestLength(
                length, ApproachChannel.ofWidth(1.2).withCrestHeight(crestHeight));
    }

    @Test
    void keepsTheContract() {
        StructureContract.holds(weir(0.2, 0.4), 0.25);
        StructureContract.holds(weir(1.5, 0.3), 0.31);
        StructureContract.refuses(weir(0.2, 0.4), 0.33, "h/L must be in [0.1, 1.6]");
        StructureContract.refuses(weir(0.5, 0.16), 0.3, "h/p must be at most 1.6");
        StructureContract.refuses(weir(0.5, 0.14), 0.1, "crest height p must be at least 0.15 m");
        StructureContract.refuses(weir(0.1, 0.2), 0.05, "head h must be at least 0.06 m");
    }

    /** At a place of the table, between two of a row, between two of a column, in the middle of four; worked by hand. */
    @Test
    void readsTheTable() {
        assertThat(weir(0.2, 0.4).coefficient(0.2)).isCloseTo(1.005, within(1e-12));
        assertThat(weir(0.2, 0.42).coefficient(0.21)).isCloseTo((1.005 + 1.032) / 2, within(1e-12));
        assertThat(weir(0.22, 0.4).coefficient(0.22)).isCloseTo((1.005 + 1.016) / 2, within(1e-12));
        assertThat(weir(0.22 / 1.05, 0.4).coefficient(0.22))
                .isCloseTo((1.005 + 1.032 + 1.016 + 1.043) / 4, within(1e-12));
        assertThat(weir(10, 10).coefficient(0.1)).isEqualTo(0.850);
        assertThat(weir(0.1, 0.1).coefficient(1)).isEqualTo(1.289);
    }

    /** The other statement of the same source: a line in h/L for low heads over the floor. */
    @Test
    void agreesWithTheLineOfTheSource() {
        for (double ratio = 0.4; ratio <= 1.6; ratio += 0.1) {
            for (double overFloor : new double[] {0.15, 0.3, 0.45, 0.6}) {
                assertThat(weir(0.3 / ratio, 0.3 / overFloor).coefficient(0.3))
                        .as("h/L %s, h/p %s", ratio, overFloor)
                        .isCloseTo(0.191 * ratio + 0.782, withPercentage(7));
            }
        }
        assertThat(weir(0.3 / 1.1, 0.3 / 0.3).coefficient(0.3)).isCloseTo(0.191 * 1.1 + 0.782, withPercentage(4));
    }

    /** On a long crest the law of the long crest by total head gives the same within the 2 % of its coefficient and the table's rounding. */
    @Test
    void agreesWithTheLongCrest() {
        for (double head : new double[] {0.15, 0.22, 0.3}) {
            double other = BroadCrestedWeir.squareEdged(
                            1.2, ApproachChannel.ofWidth(1.2).withCrestHeight(1))
                    .discharge(head);
            assertThat(weir(1.2, 1).discharge(head)).isCloseTo(other, withPercentage(2));
        }
    }

    @Test
    void readsWellAndRefusesWhatIsNoCrest() {
        assertThat(weir(0.2, 0.4)).hasToString("FiniteCrestWeir[L = 0.2 m, B = 1.2 m, p = 0.4 m]");
        assertThat(weir(0.2, 0.4).coefficientUncertainty(0.2)).isEmpty();
        assertThatThrownBy(() -> weir(Double.NaN, 0.4))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("crestLength must be in [1.0E-6, 1000000] m, was NaN");
        assertThatThrownBy(() -> weir(1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("crest height of the channel must be in [1.0E-6, 1000000] m, was 0");
    }
}
