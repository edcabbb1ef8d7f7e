package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Working days in a row that are all the same, on both sides of each limit on which so many of them agree. */
class ClockEvidenceTest {
    private static final double[] NONE = {0, 0};

    private static ClockDay course() {
        double[] hours = new double[24 * 14];
        boolean[] rest = new boolean[hours.length];
        double[] values = new double[hours.length];
        for (int i = 0; i < hours.length; i++) {
            hours[i] = i % 24 + 0.5;
            rest[i] = i / 24 % 7 > 4;
            values[i] = Math.sin(2 * Math.PI * hours[i] / 24);
        }
        return new ClockDay(
                DayCurve.fit(hours, rest, values, 1),
                true,
                ClockUsual.of(NONE, new double[] {0.1, 0.3}, new double[4]));
    }

    /** Days that come early by a shift, scatter by so much, and fit by so much better if moved; the whole day moves alike. */
    private static int days(boolean flow, int count, double shift, double scatter, double gain) {
        ClockWatch watch = new ClockWatch(course(), flow ? Optional.of(course()) : Optional.empty());
        Ring phases = new Ring(count, 7);
        Ring shifts = new Ring(count, 1);
        for (int d = 0; d < count; d++) {
            // Shift, squares unmoved and moved, those of the other kind of day, rest, scatter, gain of the evening.
            phases.add(100 + d, -shift, 1 + gain, 1, 10, 0, scatter, 10);
            shifts.add(100 + d, -shift);
        }
        StateText text = StateText.of("some", 1)
                .with("clockHours", new double[0])
                .with("clockValues", new double[0])
                .with("clockFlowHours", new double[0])
                .with("clockFlowValues", new double[0]);
        phases.write(text, "clockPhases");
        shifts.write(text, "clockDepths");
        shifts.write(text, "clockEvenings");
        shifts.write(text, "clockMornings");
        watch.read(text);
        return new ClockEvidence(watch).days(99 + count, true);
    }

    /**
     * Three days of the depth alone must lie near a half hour too, so that 0.8 h is the least that is told beside the limit of
     * 0.7 h.
     */
    @ParameterizedTest
    @CsvSource({
        "false, 3, 0.7, 4.2, 0.4, 0.81",
        "false, 4, 0.5, 4, 0.4, 0.51",
        "false, 5, 0.36, 3.8, 0.4, 0.365",
        "false, 6, 0.33, 3.6, 0.4, 0.335",
        "false, 7, 0.3, 3.6, 0.4, 0.305",
        "true, 3, 0.3, 5, 0.4, 0.305",
        "true, 4, 0.3, 4.5, 0.4, 0.305",
        "true, 5, 0.3, 4, 0.4, 0.305",
        "true, 6, 0.3, 3.6, 0.4, 0.305",
        "true, 7, 0.28, 3.6, 0.4, 0.285"
    })
    void daysAgreeBeyondEachLimitAndNotBelowIt(
            boolean flow, int count, double shift, double scatters, double gain, double moved) {
        // Each day's distance in scatters times its number is just over the limit times the root of the number.
        double scatter = moved * Math.sqrt(count) / scatters;
        assertThat(days(flow, count, moved, 0.99 * scatter, gain + 0.005)).isEqualTo(count);
        assertThat(days(flow, count, moved, 1.01 * scatter, gain + 0.005)).isZero();
        assertThat(days(flow, count, moved, 0.99 * scatter, gain - 0.005)).isZero();
        assertThat(days(flow, count, shift - 0.005, 0.9 * scatter, gain + 0.005))
                .isZero();
    }
}
