package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.RectangularSection;
import org.junit.jupiter.api.Test;

class CulvertInletTest {
    private static final double FOOT = 0.3048;
    private static final CulvertInlet BOX =
            CulvertInlet.of(RectangularSection.box(6 * FOOT, 5 * FOOT), CulvertEdge.BOX_WINGWALLS_0);

    /** q = 2 ft^(1/2)/s: Q = 60 √5 · 2/2 ft³/s; y_c = ∛(Q²/b²g) by hand, E = 1.5 y_c. */
    @Test
    void freeBoxByHand() {
        double discharge = 30 * Math.sqrt(5) * 2 * FOOT * FOOT * FOOT;
        double unit = discharge / (6 * FOOT);
        double energy = 1.5 * Math.cbrt(unit * unit / 9.80665);
        double ratio = energy / (5 * FOOT) + 0.061 * Math.pow(2, 0.75);
        assertThat(BOX.headwater(discharge)).isCloseTo(ratio * 5 * FOOT, within(1e-12));
        assertThat(BOX.isDrowned(discharge)).isFalse();
        assertThat(BOX.discharge(ratio * 5 * FOOT)).isCloseTo(discharge, within(1e-11));
        assertThat(BOX.withGradient(0.02).headwater(discharge)).isCloseTo((ratio - 0.01) * 5 * FOOT, within(1e-12));
    }

    /** Headwater rises without a step over the straight line, for every edge, and its inverse closes. */
    @Test
    void headwaterRisesThroughBothFormulas() {
        for (CulvertEdge edge : CulvertEdge.values()) {
            var inlet = CulvertInlet.of(CircularSection.ofDiameter(1), edge).withGradient(0.01);
            double unit = Math.PI / 4 * Math.sqrt(FOOT);
            double before = 0;
            for (double q = 0.5; q < 12; q += 0.01) {
                double head = inlet.headwater(q * unit);
                assertThat(head).as("%s at %s", edge, q).isGreaterThan(before);
                assertThat(head - before).isLessThan(q < 0.6 ? 1 : 0.05);
                before = head;
            }
            assertThat(inlet.discharge(inlet.headwater(3.7 * unit))).isCloseTo(3.7 * unit, within(1e-11));
            assertThat(inlet.headwater(0)).isZero();
            assertThat(inlet.discharge(0)).isZero();
        }
    }

    @Test
    void badInput() {
        assertThatThrownBy(() -> BOX.headwater(-1)).hasMessageContaining("discharge must be");
        assertThatThrownBy(() -> BOX.headwater(1000))
                .isInstanceOf(NoSolutionException.class)
                .hasMessageStartingWith("the formulas of the inlet end at 22.79 m3/s");
        assertThatThrownBy(() -> BOX.discharge(100)).isInstanceOf(NoSolutionException.class);
        assertThatThrownBy(() -> BOX.discharge(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> BOX.withGradient(1)).hasMessageContaining("newGradient must be in [0, 0.2] m/m");
    }
}
