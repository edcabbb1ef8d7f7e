package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.internal.StateText;
import java.util.Arrays;
import java.util.function.Consumer;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Which rises of a depth are like those after rain, beside each limit. */
class GaugeRisesTest {
    private static final SiteBaseline BASELINE =
            GaugeClockTest.rule(GaugeClockTest.readings(0, 0)).baseline();
    private static final int FIRST = 400_000;

    /** Hour in which the depth has risen, of those that follow. */
    private static final int UP = 40;

    private static final double RISE = Math.log(1.25);
    private static final double ABOVE = Math.log(1.1);

    /** What is kept after hours of an excess, as high above all that is usual; each may be changed. */
    private static StateText after(int hours, IntToDoubleFunction excess, Consumer<SiteHour> change) {
        return after(hours, excess, excess, change);
    }

    private static StateText after(
            int hours, IntToDoubleFunction excess, IntToDoubleFunction above, Consumer<SiteHour> change) {
        GaugeSilence silence = new GaugeSilence(BASELINE, new Findings());
        for (int i = 0; i < hours; i++) {
            SiteHour hour = new SiteHour(FIRST + i);
            hour.rain = 0;
            hour.lnVelocity = 0;
            change.accept(hour);
            silence.hour(hour, excess.applyAsDouble(i), above.applyAsDouble(i), false);
        }
        return silence.write();
    }

    private static StateText after(double... rise) {
        return after(UP + rise.length, wave(rise), hour -> {});
    }

    /** Excesses from the hour {@link #UP} on, and 0 before and after. */
    private static IntToDoubleFunction wave(double... rise) {
        return i -> i >= UP && i < UP + rise.length ? rise[i - UP] : 0;
    }

    private static boolean isRise(StateText kept) {
        return kept.counts("begins").length == 1;
    }

    private static Consumer<SiteHour> rainAt(int at, double rain) {
        return hour -> hour.rain = hour.hour == FIRST + at ? rain : 0;
    }

    @Test
    void riseIsKeptWithItsBeginningItsWaterAndItsClimb() {
        StateText kept = after(0.3, 0.6, 0.5, 0.2);
        assertThat(kept.counts("begins")).containsExactly(FIRST + UP);
        // Until it has fallen below half of its highest.
        assertThat(kept.numbers("sizes")).hasSize(1);
        assertThat(kept.numbers("sizes")[0]).isCloseTo(0.3 + 0.6 + 0.5 + 0.2, within(1e-12));
        assertThat(kept.counts("climbs")).containsExactly(1);
        assertThat(isRise(after(0.3, 0.6, 0.5))).isFalse();
    }

    /** Below the usual day a rise brings no water; above it counts from where it began. */
    @Test
    void waterOfARiseIsWhatStandsAboveItsBeginningAndAboveTheUsual() {
        IntToDoubleFunction from = i -> 0.1 + wave(0.3, 0.6, 0.1).applyAsDouble(i);
        assertThat(after(UP + 3, from, hour -> {}).numbers("sizes")[0]).isCloseTo(0.3 + 0.6 + 0.1, within(1e-12));
        IntToDoubleFunction below = i -> -0.1 + wave(0.3, 0.6, 0.1).applyAsDouble(i);
        assertThat(after(UP + 3, below, hour -> {}).numbers("sizes")[0]).isCloseTo(0.2 + 0.5, within(1e-12));
    }

    @Test
    void riseIsAQuarterMoreWithinSixHours() {
        assertThat(isRise(after(RISE + 0.001, 0))).isTrue();
        assertThat(isRise(after(RISE - 0.001, 0))).isFalse();
        // The lowest hour stands six hours before the first that is high enough, and seven.
        double step = (RISE + 0.001) / 6;
        double[] slope = {step, 2 * step, 3 * step, 4 * step, 5 * step, 6 * step, 0};
        assertThat(isRise(after(slope))).isTrue();
        double[] flatter = Arrays.stream(slope).map(each -> each * 0.99).toArray();
        assertThat(isRise(after(flatter))).isFalse();
        double slow = (RISE + 0.001) / 7;
        assertThat(isRise(after(slow, 2 * slow, 3 * slow, 4 * slow, 5 * slow, 6 * slow, 7 * slow, 0)))
                .isFalse();
        assertThat(isRise(after(0.99 * RISE / 2, 0.99 * RISE / 2, 0.99 * RISE / 2, 0.99 * RISE, 1.01 * RISE, 0)))
                .isTrue();
    }

    @Test
    void riseLeadsATenthAboveWhatIsUsualAtAnyOfTheHoursAbout() {
        IntToDoubleFunction rise = wave(0.6, 0);
        assertThat(isRise(after(UP + 2, rise, i -> ABOVE + 0.001, hour -> {}))).isTrue();
        assertThat(isRise(after(UP + 2, rise, i -> ABOVE - 0.001, hour -> {}))).isFalse();
        assertThat(isRise(after(UP + 2, rise, i -> Double.NaN, hour -> {}))).isFalse();
    }

    /** Half of it must have run off within two days; what is left is held up. */
    @Test
    void riseRunsOffAsAStormDoes() {
        assertThat(isRise(after(0.6, 0.31))).isFalse();
        assertThat(isRise(after(0.6, 0.29))).isTrue();
        double[] long48 = new double[49];
        Arrays.fill(long48, 0.6);
        long48[48] = 0;
        assertThat(isRise(after(long48))).isTrue();
        double[] long49 = new double[50];
        Arrays.fill(long49, 0.6);
        long49[49] = 0;
        assertThat(isRise(after(long49))).isFalse();
        // From a base above the usual half of the rise is meant, not of the level.
        IntToDoubleFunction from = i -> 0.4 + wave(0.6, 0.29).applyAsDouble(i);
        assertThat(isRise(after(UP + 2, from, hour -> {}))).isTrue();
        IntToDoubleFunction higher = i -> 0.4 + wave(0.6, 0.31).applyAsDouble(i);
        assertThat(isRise(after(UP + 2, higher, hour -> {}))).isFalse();
    }

    /** The velocity at the highest against that before it, where the level stood lowest. */
    @Test
    void waterThatIsHeldUpOrASensorThatJumpsIsNoStorm() {
        for (double speed : new double[] {0.2, 0, -0.149}) {
            assertThat(isRise(withSpeed(0.7, 0.7 + speed))).isTrue();
        }
        assertThat(isRise(withSpeed(0.7, 0.7 - 0.151))).isFalse();
        assertThat(isRise(withSpeed(Double.NaN, 0.7))).isTrue();
    }

    private static StateText withSpeed(double before, double at) {
        return after(UP + 2, wave(0.6, 0), hour -> hour.lnVelocity = hour.hour == FIRST + UP ? at : before);
    }

    /** Rain comes up to twelve hours before a rise; of hours without known rain nothing can be said. */
    @Test
    void riseAfterRainIsOneOfRainAndOneAfterUnknownRainIsNone() {
        StateText with = after(UP + 2, wave(0.6, 0), rainAt(UP - 12, 1));
        assertThat(isRise(with)).isFalse();
        assertThat(with.numbers("risesWith")).containsExactly(0.6);
        StateText later = after(UP + 2, wave(0.6, 0), rainAt(UP - 13, 1));
        assertThat(isRise(later)).isTrue();
        assertThat(later.numbers("risesWith")).isEmpty();
        assertThat(isRise(after(UP + 2, wave(0.6, 0), rainAt(UP - 12, Double.NaN))))
                .isFalse();
        assertThat(isRise(after(UP + 2, wave(0.6, 0), rainAt(UP - 13, Double.NaN))))
                .isTrue();
    }

    /** What is at its highest six hours after its beginning is no storm, with rain either. */
    @Test
    void riseOfAStormIsAtItsHighestWithinSixHours() {
        for (int climb : new int[] {5, 6}) {
            double[] rise = new double[climb + 2];
            for (int i = 0; i <= climb; i++) {
                rise[i] = 0.5 + 0.02 * i;
            }
            StateText with = after(UP + rise.length, wave(rise), rainAt(UP - 1, 1));
            assertThat(with.numbers("risesWith")).hasSize(climb < 6 ? 1 : 0);
            assertThat(after(rise).counts("climbs")).containsExactly(climb);
        }
    }

    /** A drop of less than the smallest tip is none, and what comes without one becomes a rise without rain when one falls. */
    @Test
    void nextDropCountsTheRisesSinceTheLast() {
        StateText kept = after(
                UP + 30,
                wave(0.6, 0),
                hour -> hour.rain = hour.hour == FIRST + 10 || hour.hour == FIRST + UP + 25 ? 1 : 0);
        assertThat(kept.counts("begins")).isEmpty();
        assertThat(kept.numbers("risesWithout")).containsExactly(0.6);
        assertThat(kept.numbers("risesWith")).isEmpty();
        assertThat(kept.count("spells")).isEqualTo(2);
        assertThat(kept.count("longestSilence")).isEqualTo(UP + 25 - 10);
        assertThat(kept.count("silentHours")).isEqualTo(4);
        // Hours within twelve of a drop are wet ones: ten before the first and its own, twelve after it.
        assertThat(kept.count("wetHours")).isEqualTo(11 + 12);
        assertThat(kept.count("dryHours")).isEqualTo(UP + 25 - 10 - 12);
    }

    @Test
    void dropsTwelveHoursApartAreOneSpell() {
        assertThat(after(UP, i -> 0, hour -> hour.rain = hour.hour == FIRST + 5 || hour.hour == FIRST + 17 ? 1 : 0)
                        .count("spells"))
                .isEqualTo(1);
        assertThat(after(UP, i -> 0, hour -> hour.rain = hour.hour == FIRST + 5 || hour.hour == FIRST + 18 ? 1 : 0)
                        .count("spells"))
                .isEqualTo(2);
    }
}
