package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The limits by which a shift of the day is said to be an hour, over, or one that is known. */
class ClockFindingTest {
    @Test
    void shiftFromHalfAnHourToOneAndAHalfIsNearAnHour() {
        for (int sign : new int[] {1, -1}) {
            assertThat(ClockFinding.isNearAnHour(sign * 0.5)).isFalse();
            assertThat(ClockFinding.isNearAnHour(sign * 0.51)).isTrue();
            assertThat(ClockFinding.isNearAnHour(sign * 1.49)).isTrue();
            assertThat(ClockFinding.isNearAnHour(sign * 1.5)).isFalse();
        }
    }

    @Test
    void dayIsBackWithinHalfOfWhatItStoodAwayAndWithinAFifthOfAnHourAnyway() {
        for (int sign : new int[] {1, -1}) {
            assertThat(ClockFinding.isBack(sign * 0.49, -1)).isTrue();
            assertThat(ClockFinding.isBack(sign * 0.5, -1)).isFalse();
            assertThat(ClockFinding.isBack(sign * 0.195, 0.3)).isTrue();
            assertThat(ClockFinding.isBack(sign * 0.2, 0.3)).isFalse();
        }
        assertThat(ClockFinding.isBack(Double.NaN, 1)).isFalse();
    }

    @Test
    void whatBeganFromADayBeforeAChangeOnIsOfIt() {
        long change = 20_000 * Track.DAY;
        assertThat(ClockFinding.isOfChange(change - Track.DAY, change)).isTrue();
        assertThat(ClockFinding.isOfChange(change - Track.DAY - 1, change)).isFalse();
        assertThat(ClockFinding.isOfChange(change + 9 * Track.DAY, change)).isTrue();
    }
}
