package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Storms whose lag and rise are known. */
class StormLagTest {
    private static final int SIZE = 30;
    private static final double KEEP = Math.exp(-1 / 1.5);

    private static double[] rain() {
        double[] rain = new double[SIZE];
        rain[8] = 2;
        rain[9] = 4;
        rain[10] = 1;
        return rain;
    }

    private static double[] held(double[] rain) {
        double[] held = new double[rain.length];
        for (int i = 0; i < rain.length; i++) {
            held[i] = rain[i] + (i > 0 ? KEEP * held[i - 1] : 0);
        }
        return held;
    }

    /** A level that stands 4 % higher for each millimetre that is held back, some hours later. */
    private static double[] answer(int late) {
        double[] held = held(rain());
        double[] answer = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            answer[i] = 0.3 + (i - late >= 0 && i - late < SIZE ? 0.04 * held[i - late] : 0);
        }
        return answer;
    }

    @Test
    void lagCorrelationAndSlope() {
        for (int late = -4; late <= 5; late++) {
            StormLag.Fit fit = StormLag.of(rain(), answer(late), StormLag.LEAST_RISE);
            assertThat(fit.lag()).as("%s h", late).isCloseTo(late, within(0.12));
            assertThat(fit.correlation()).isCloseTo(1, within(0.01));
            assertThat(fit.slope()).isCloseTo(0.04, within(0.001));
        }
        // At the ends of what is tried it tells nothing.
        for (int late : new int[] {-6, -5, 6, 7}) {
            assertThat(StormLag.of(rain(), answer(late), 0.15).lag())
                    .as("%s h", late)
                    .isNaN();
        }
        // Half of it at once and half an hour later lies between them.
        double[] between = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            between[i] = (answer(1)[i] + answer(2)[i]) / 2;
        }
        assertThat(StormLag.of(rain(), between, 0.15).lag()).isCloseTo(1.5, within(0.15));
    }

    @Test
    void whatDoesNotTell() {
        double[] held = held(rain());
        double highest = 0.04 * Arrays.stream(held).max().orElseThrow();
        assertThat(StormLag.of(rain(), answer(1), 0.999 * highest).lag()).isFinite();
        StormLag.Fit low = StormLag.of(rain(), answer(1), 1.001 * highest);
        assertThat(low.lag()).isNaN();
        assertThat(low.correlation()).isZero();
        assertThat(low.slope()).isNaN();
        // 24 of 30 hours must be known.
        for (int missing : new int[] {6, 7}) {
            double[] gaps = answer(1);
            Arrays.fill(gaps, SIZE - missing, SIZE, Double.NaN);
            assertThat(Double.isNaN(StormLag.of(rain(), gaps, 0.15).lag())).isEqualTo(missing == 7);
        }
        // A level that goes its own way.
        double[] own = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            own[i] = 0.2 * Math.sin(i) + (i == 12 ? 0.2 : 0);
        }
        assertThat(StormLag.of(rain(), own, 0.15).lag()).isNaN();
        assertThat(StormLag.of(new double[SIZE], answer(1), 0.15).lag()).isNaN();
    }

    /** The fits that hours one after the other give; the hours at which they come. */
    private static List<Integer> storms(int count, IntToDoubleFunction rain, int skipped, List<StormLag.Fit> fits) {
        StormHours hours = new StormHours(0.15);
        double[] fallen = new double[count];
        for (int i = 0; i < count; i++) {
            fallen[i] = rain.applyAsDouble(i);
        }
        double[] held =
                held(Arrays.stream(fallen).map(x -> Double.isNaN(x) ? 0 : x).toArray());
        List<Integer> at = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (i == skipped) {
                continue;
            }
            if (i % 11 == 0) {
                StateText text = StateText.of("storms", 1);
                hours.write(text);
                hours = new StormHours(0.15);
                hours.read(StateText.parse("storms", 1, text.toString()));
            }
            int hour = i;
            hours.add(1000 + i, fallen[i], i > 0 ? 0.1 * held[i - 1] : 0).ifPresent(fit -> {
                at.add(hour);
                fits.add(fit);
            });
        }
        return at;
    }

    private static List<Integer> storms(int count, IntToDoubleFunction rain, int skipped) {
        return storms(count, rain, skipped, new ArrayList<>());
    }

    /** It ends with the fifth hour without rain, and the storm after it has dry hours before it of its own. */
    @Test
    void stormsOfARecord() {
        List<StormLag.Fit> fits = new ArrayList<>();
        IntToDoubleFunction two = i -> i >= 20 && i < 23 ? 2 : i >= 40 && i < 44 ? 3 : 0;
        assertThat(storms(80, two, -1, fits)).containsExactly(27, 48);
        assertThat(fits).allSatisfy(fit -> assertThat(fit.lag()).isCloseTo(1, within(0.15)));
        // Of 2 mm or more; what is no rain does not prolong it.
        assertThat(storms(60, i -> i == 20 || i == 21 ? 0.99 : 0, -1)).isEmpty();
        assertThat(storms(60, i -> i == 20 || i == 21 ? 1 : 0, -1)).hasSize(1);
        assertThat(storms(60, i -> i == 20 || i == 21 ? 3 : i > 21 ? 0.05 : 0, -1))
                .containsExactly(26);
        assertThat(storms(60, i -> i == 20 || i == 21 ? 3 : i == 24 ? 0.06 : 0, -1))
                .containsExactly(29);
        // Not where an hour or its rain is missing.
        assertThat(storms(60, two, 21)).containsExactly(48);
        assertThat(storms(60, i -> i == 21 ? Double.NaN : two.applyAsDouble(i), -1))
                .containsExactly(48);
        assertThat(storms(60, two, 10)).containsExactly(27, 48);
        // Rain without end is none.
        assertThat(storms(400, i -> i >= 20 && i < 360 ? 1 : 0, -1)).isEmpty();
        for (int length : new int[] {50, 51}) {
            // Five dry hours before and after, sixty in all.
            assertThat(storms(150, i -> i >= 20 && i < 20 + length ? i < 23 ? 3 : 0.06 : 0, -1))
                    .hasSize(length == 50 ? 1 : 0);
        }
    }
}
