package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Readings that are held back because their stamps leap: all of them come out again, in order. */
class HeldReadingsTest {
    private static final long HOUR = SiteHour.NANOS;

    private static HeldReadings held(int count, long apart) {
        HeldReadings held = new HeldReadings();
        for (int i = 0; i < count; i++) {
            held.add(5 + i * apart, i, 100 + i, 200 + i);
        }
        return held;
    }

    private static List<List<Double>> given(HeldReadings held) {
        List<List<Double>> given = new ArrayList<>();
        held.give((time, depth, velocity, rain) -> given.add(List.of((double) time, depth, velocity, rain)));
        return given;
    }

    @Test
    void allThatWasHeldIsGivenOnce() {
        HeldReadings held = held(50, 7);
        assertThat(held.count()).isEqualTo(50);
        assertThat(held.first()).isEqualTo(5);
        assertThat(held.last()).isEqualTo(5 + 49 * 7);
        List<List<Double>> given = given(held);
        assertThat(given).hasSize(50);
        assertThat(given.get(0)).containsExactly(5.0, 0.0, 100.0, 200.0);
        assertThat(given.get(49)).containsExactly(348.0, 49.0, 149.0, 249.0);
        assertThat(held.isEmpty()).isTrue();
        assertThat(given(held)).isEmpty();
    }

    @Test
    void fourReadingsOfAnHourConfirmALeapOrAnyThatAreVeryMany() {
        assertThat(held(4, HOUR / 3).isConfirmed()).isTrue();
        assertThat(held(4, HOUR / 3 - 1).isConfirmed()).isFalse();
        assertThat(held(3, HOUR).isConfirmed()).isFalse();
        assertThat(held(3600, 1).isConfirmed()).isTrue();
        assertThat(held(3599, 1).isConfirmed()).isFalse();
    }

    @Test
    void stampsLeapBeyondThreeHours() {
        assertThat(HeldReadings.leaps(10, 10 + 3 * HOUR)).isFalse();
        assertThat(HeldReadings.leaps(10, 11 + 3 * HOUR)).isTrue();
        assertThat(held(2, 7).leapsBack(5 - 3 * HOUR)).isFalse();
        assertThat(held(2, 7).leapsBack(4 - 3 * HOUR)).isTrue();
    }

    @Test
    void stateHoldsTheSame() {
        StateText text = StateText.of("some", 1);
        held(20, 7).write(text);
        assertThat(held(1, 7).isEmpty()).isFalse();
        StateText cut = StateText.of("some", 1);
        held(2, 7).write(cut);
        cut.with("heldValues", new double[] {1, 2, 3, 4, 5});
        assertThatThrownBy(() -> new HeldReadings().read(cut))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("state heldValues must hold 6 values, was 5 values");
        HeldReadings again = new HeldReadings();
        again.read(text);
        assertThat(given(again)).isEqualTo(given(held(20, 7)));
        HeldReadings dropped = held(20, 7);
        dropped.drop();
        assertThat(dropped.isEmpty()).isTrue();
    }
}
