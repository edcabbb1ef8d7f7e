package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TabulatedSectionTest {
    @Test
    void isExactBetweenTheRows() {
        var section = TabulatedSection.closed(new double[] {0, 0.5, 0.5, 1.5, 2}, new double[] {1, 1, 2, 3, 0});
        assertThat(section.area(0.5)).isEqualTo(0.5);
        assertThat(section.area(1)).isCloseTo(0.5 + 0.5 * (2 + 2.5) / 2, within(1e-15));
        assertThat(section.fullArea()).isCloseTo(0.5 + 2.5 + 0.75, within(1e-15));
        assertThat(section.topWidth(1)).isCloseTo(2.5, within(1e-15));
        assertThat(section.wettedPerimeter(0.5)).isEqualTo(2);
        assertThat(section.wettedPerimeter(1)).isCloseTo(3 + 2 * Math.hypot(0.5, 0.25), within(1e-15));
        assertThat(section.width()).isEqualTo(3);
    }

    @Test
    void openTableGoesOnUpwards() {
        var section = TabulatedSection.open(new double[] {0, 1}, new double[] {2, 4});
        assertThat(section.topWidth(2)).isEqualTo(6);
        assertThat(section.height()).isInfinite();
    }

    @Test
    void refusesTablesThatAreNoSection() {
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0}, new double[] {1}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("number of levels must be at least 2, was 1");
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0, 1}, new double[] {1}))
                .hasMessage("widths must have length 2, was 1");
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0.1, 1}, new double[] {1, 1}))
                .hasMessage("levels[0] must be 0, the invert, was 0.1");
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0, 1, 0.9}, new double[] {1, 1, 1}))
                .hasMessage("levels[2] must be at least levels[1] = 1 m, was 0.9");
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0, 1, 1}, new double[] {1, 1, 1}))
                .hasMessage("levels[2] and widths[2] repeat the row before, 1 m and 1 m");
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0, 1}, new double[] {1, -1}))
                .hasMessage("widths[1] must be 0 or greater and finite (m), was -1");
        assertThatThrownBy(() -> TabulatedSection.closed(new double[] {0, Double.NaN}, new double[] {1, 1}))
                .hasMessage("levels[1] must be 0 or greater and finite (m), was NaN");
        assertThatThrownBy(() -> TabulatedSection.open(new double[] {0, 1}, new double[] {2, 1}))
                .hasMessageContaining("an open wall must not lean inwards");
    }
}
