package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FreeJetTest {
    /** g = 10, 0.4 s: y = 0.8 m, x = 1.2 m at 3 m/s. */
    @Test
    void byHand() {
        var jet = FreeJet.of(3).withGravity(10);
        assertThat(jet.reach(0.8)).isCloseTo(1.2, within(1e-15));
        assertThat(jet.drop(1.2)).isCloseTo(0.8, within(1e-15));
        assertThat(FreeJet.throughDistanceAndDrop(1.2, 0.8, 10).velocity()).isCloseTo(3, within(1e-14));
        assertThat(jet.discharge(0.02)).isCloseTo(0.06, within(1e-16));
        assertThat(jet.reach(0)).isZero();
        assertThat(jet.drop(0)).isZero();
        assertThat(FreeJet.of(3))
                .isEqualTo(FreeJet.of(3))
                .hasSameHashCodeAs(FreeJet.of(3))
                .isNotEqualTo(jet);
    }

    @Test
    void badInput() {
        assertThatThrownBy(() -> FreeJet.of(0)).hasMessageContaining("velocity must be");
        assertThatThrownBy(() -> FreeJet.of(1001))
                .hasMessage("velocity must be greater than 0 and at most 1000 m/s, was 1001");
        assertThatThrownBy(() -> FreeJet.throughDistanceAndDrop(1, 0)).hasMessageContaining("drop must be");
        assertThatThrownBy(() -> FreeJet.throughDistanceAndDrop(Double.NaN, 1))
                .hasMessageContaining("distance must be");
        assertThatThrownBy(() -> FreeJet.throughDistanceAndDrop(1e6, 1e-300)).hasMessageContaining("velocity must be");
        assertThatThrownBy(() -> FreeJet.of(1).reach(-1)).hasMessageContaining("drop must be");
    }
}
