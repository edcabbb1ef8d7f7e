package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SlottedSectionTest {
    private static final CircularSection PIPE = CircularSection.ofDiameter(1);

    /** Box 2 by 1 m with a slot of 1 cm, 3 m of pressure above the invert: 2 m² and 2 cm · 1 m. */
    @Test
    void boxByHand() {
        var slotted = SlottedSection.ofWidth(RectangularSection.box(2, 1), 0.01);
        assertThat(slotted.area(0.5)).isCloseTo(1, within(1e-15));
        assertThat(slotted.area(3)).isCloseTo(2.02, within(1e-12));
        assertThat(slotted.topWidth(3)).isEqualTo(0.01);
        assertThat(slotted.depthForArea(2.02)).isCloseTo(3, within(1e-10));
        // 2 m² at 2.5 m and 0.02 m² at 1 m below the level
        assertThat(slotted.centroidDepth(3) * slotted.area(3)).isCloseTo(5.02, within(1e-11));
        assertThat(slotted.height()).isInfinite();
    }

    /** The wave in the slot, √(g A/T), is as fast as was asked for. */
    @Test
    void slotCarriesTheWave() {
        var slotted = SlottedSection.ofWaveSpeed(PIPE, 100);
        assertThat(slotted.slotWidth()).isCloseTo(9.80665 * Math.PI / 4 / 1e4, within(1e-15));
        assertThat(Math.sqrt(9.80665 * PIPE.fullArea() / slotted.topWidth(1))).isCloseTo(100, within(1e-10));
        assertThat(slotted.wettedPerimeter(5)).isCloseTo(Math.PI, within(1e-12));
    }

    /** No step of area or width where the crown meets the slot: chord 2 √(y (1 − y)). */
    @Test
    void crownMeetsTheSlotWithoutAStep() {
        var slotted = SlottedSection.ofWidth(PIPE, 0.02);
        double mouth = 0.5 + Math.sqrt(0.25 - 0.01 * 0.01);
        assertThat(slotted.topWidth(mouth - 1e-9)).isCloseTo(0.02, within(1e-6));
        assertThat(slotted.topWidth(mouth + 1e-9)).isEqualTo(0.02);
        assertThat(slotted.area(2)).isCloseTo(PIPE.area(mouth) + 0.02 * (2 - mouth), within(1e-13));
        for (double depth : new double[] {0.1, 0.5, 0.99, mouth, 1, 1.5}) {
            assertThat(slotted.depthForArea(slotted.area(depth))).isCloseTo(depth, within(1e-9));
        }
        assertThat(slotted.area(0.4)).isEqualTo(PIPE.area(0.4));
    }

    @Test
    void badInput() {
        assertThatThrownBy(() -> SlottedSection.ofWidth(PIPE, 0.5)).hasMessageContaining("slotWidth must be in [0, ");
        assertThatThrownBy(() -> SlottedSection.ofWidth(PIPE, 0)).hasMessageContaining("slotWidth must be");
        assertThatThrownBy(() -> SlottedSection.ofWaveSpeed(PIPE, 2000))
                .hasMessage("waveSpeed must be greater than 9.903 and at most 1500 m/s, was 2000");
        assertThatThrownBy(() -> SlottedSection.ofWaveSpeed(PIPE, 100).area(-1)).hasMessageContaining("depth must be");
    }
}
