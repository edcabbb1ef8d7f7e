package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How long hours stay wet, to the hour. */
class DryHoursTest {
    private static final long FIRST = 490_008;

    /** First hours at which each rule says dry again after an hour, in the order nearly dry, dry, long dry. */
    private static int[] dryAgain(int after, int count, IntToDoubleFunction rain, IntToDoubleFunction lnLevel) {
        DryHours dry = new DryHours();
        int[] again = {-1, -1, -1};
        for (int i = 0; i < count; i++) {
            if (i % 37 == 0) {
                // A machine that stops and goes on from its text changes nothing.
                StateText text = StateText.of("dry", 1);
                dry.write(text);
                dry = new DryHours();
                dry.read(StateText.parse("dry", 1, text.toString()));
            }
            SiteHour hour = new SiteHour(FIRST + i);
            hour.rain = rain.applyAsDouble(i);
            hour.lnDepth = lnLevel.applyAsDouble(i);
            dry.add(hour);
            boolean[] is = {dry.isNearlyDry(), dry.isDry(), dry.isLongDry()};
            for (int k = 0; k < 3; k++) {
                again[k] = i >= after && is[k] && again[k] < 0 ? i : again[k];
            }
        }
        return again;
    }

    private static int[] afterRain(double first, int gap, double second) {
        return dryAgain(10 + gap, 400, i -> i == 10 ? first : i == 10 + gap ? second : 0, i -> -2);
    }

    /** Hours after the last rain at which it is dry again, by the rain of the event. */
    @ParameterizedTest
    @CsvSource({
        "0.05, 0, 0, 0",
        "0.06, 3, 4, 4",
        "0.79, 3, 4, 4",
        "0.8, 7, 20, 29",
        "1.25, 8, 21, 31",
        "10, 17, 39, 75",
        "24, 31, 67, 145",
        "27, 34, 73, 145",
        "30, 37, 73, 145",
        "50, 37, 73, 145"
    })
    void byTheRainOfAnEvent(double rain, int nearly, int dry, int longDry) {
        int[] again = dryAgain(10, 400, i -> i == 10 ? rain : 0, i -> -2);
        assertThat(again).containsExactly(10 + nearly, 10 + dry, 10 + longDry);
    }

    /** Six hours without rain end an event. */
    @Test
    void rainOfOneEventAddsUp() {
        assertThat(afterRain(0.5, 6, 0.5)).containsExactly(16 + 8, 16 + 21, 16 + 30);
        assertThat(afterRain(0.5, 7, 0.5)).containsExactly(17 + 3, 17 + 4, 17 + 4);
        // A smaller event later does not end what the larger one made wet.
        assertThat(afterRain(10, 8, 0.1)).containsExactly(10 + 17, 10 + 39, 10 + 75);
    }

    @Test
    void withoutRainTheLevelTells() {
        double rise = Math.log(1.25);
        // Three days of one level, then a rise that stays for two hours.
        for (double more : new double[] {0.99 * rise, 1.01 * rise}) {
            int[] again = dryAgain(80, 400, i -> Double.NaN, i -> i == 80 || i == 81 ? more - 2 : -2);
            assertThat(again).containsExactly(more < rise ? new int[] {80, 80, 80} : new int[] {100, 100, 118});
        }
        // Above the same hours of the days before, not above the hour before: a usual morning is no rain.
        assertThat(dryAgain(80, 200, i -> Double.NaN, i -> i % 24 == 8 ? -1 : -2))
                .containsExactly(80, 80, 80);
        // Of two days at least, and above an hour before that is known as well.
        assertThat(dryAgain(24, 40, i -> Double.NaN, i -> i == 24 ? 0 : -2)).containsExactly(24, 24, 24);
        assertThat(dryAgain(48, 90, i -> Double.NaN, i -> i == 48 ? 0 : -2)).containsExactly(48, 48, 48);
        assertThat(dryAgain(49, 90, i -> Double.NaN, i -> i == 49 ? 0 : -2)).containsExactly(68, 68, 86);
        // The middle of the days before counts, in whatever order they came.
        double[] days = {0, 0.4, 0.1, 0.1, 0.1};
        assertThat(dryAgain(80, 120, i -> Double.NaN, i -> days[i / 24] - 2 + (i == 80 ? 1.01 * rise : 0)))
                .containsExactly(99, 99, 117);
        // A slow rise is none: an eighth of ln 1.25 an hour comes to half of it within four.
        assertThat(dryAgain(80, 400, i -> Double.NaN, i -> -2 + Math.max(0, Math.min(2, (i - 80) * rise / 8))))
                .containsExactly(80, 80, 80);
        // In five steps of 0.3 of it, 1.2 of it within four hours.
        assertThat(dryAgain(84, 400, i -> Double.NaN, i -> -2 + Math.max(0, Math.min(4, i - 80)) * 0.3 * rise)[1])
                .isGreaterThan(84);
        // What is known of rain is believed, whatever the level does.
        assertThat(dryAgain(80, 400, i -> 0, i -> i == 80 ? 0 : -2)).containsExactly(80, 80, 80);
        assertThat(dryAgain(80, 400, i -> Double.NaN, i -> i >= 80 ? Double.NaN : -2))
                .containsExactly(80, 80, 80);
    }
}
