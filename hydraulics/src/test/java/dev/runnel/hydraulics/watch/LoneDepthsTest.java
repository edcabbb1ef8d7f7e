package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import org.junit.jupiter.api.Test;

class LoneDepthsTest {
    private static final long MINUTE = SiteHour.NANOS / 60;

    private static SiteHour hour(long step, double... levels) {
        LoneDepths lone = new LoneDepths();
        SiteHour hour = new SiteHour(0);
        for (int i = 0; i < levels.length; i++) {
            lone.add(hour, i * step * MINUTE, levels[i]);
        }
        return hour;
    }

    @Test
    void aLevelFarFromBothNeighboursStandsAlone() {
        assertThat(hour(10, 0.1, 0.1, 0.25, 0.1, 0.1).lone).isEqualTo(1);
        assertThat(hour(10, 0.1, 0.1, 0.05, 0.1, 0.1).lone).isEqualTo(1);
        assertThat(hour(10, 0.1, 0.1, 0, 0.1, 0.1).lone).isEqualTo(1);
        assertThat(hour(10, 0.1, 0.1, 0.25, 0.1, 0.1).compared).isEqualTo(4);
    }

    @Test
    void whatRisesOrStaysDoesNot() {
        assertThat(hour(10, 0.1, 0.15, 0.25, 0.4).lone).isZero();
        assertThat(hour(10, 0.1, 0.25, 0.25, 0.1).lone).isZero();
        assertThat(hour(10, 0.1, 0.1, 0.1).lone).isZero();
    }

    /** A quarter and 20 mm, both. */
    @Test
    void limitsOfALeap() {
        assertThat(hour(10, 0.2, 0.249, 0.2).lone).isZero();
        assertThat(hour(10, 0.2, 0.251, 0.2).lone).isEqualTo(1);
        assertThat(hour(10, 0.04, 0.0595, 0.04).lone).isZero();
        assertThat(hour(10, 0.04, 0.0605, 0.04).lone).isEqualTo(1);
    }

    @Test
    void levelsFarApartInTimeAreNoNeighbours() {
        assertThat(hour(20, 0.1, 0.25, 0.1).lone).isEqualTo(1);
        SiteHour far = hour(21, 0.1, 0.25, 0.1);
        assertThat(far.lone).isZero();
        assertThat(far.compared).isZero();
    }

    @Test
    void goesOnAfterARestart() {
        LoneDepths first = new LoneDepths();
        SiteHour hour = new SiteHour(0);
        first.add(hour, 0, 0.1);
        first.add(hour, 5 * MINUTE, 0.25);
        StateText text = StateText.of("lone-test", 1);
        first.write(text, hour);
        LoneDepths second = new LoneDepths();
        SiteHour again = new SiteHour(0);
        second.read(StateText.parse("lone-test", 1, text.toString()), again);
        second.add(again, 10 * MINUTE, 0.1);
        assertThat(again.lone).isEqualTo(1);
        assertThat(again.compared).isEqualTo(2);
    }
}
