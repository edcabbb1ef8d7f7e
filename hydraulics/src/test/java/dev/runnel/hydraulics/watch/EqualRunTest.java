package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import org.junit.jupiter.api.Test;

class EqualRunTest {
    private static final long HOUR = SiteHour.NANOS;

    /** Whether the reading of each hour is one too many, of equal readings from 0 on. */
    private static boolean[] hourly(EqualRun run, int count, boolean patient) {
        boolean[] frozen = new boolean[count];
        for (int i = 0; i < count; i++) {
            frozen[i] = run.add(i * HOUR, 0.2, patient);
        }
        return frozen;
    }

    /** Longer than the limit, not as long: with three hours the fifth reading, not the fourth. */
    @Test
    void longerThanTheLimit() {
        assertThat(hourly(new EqualRun(3 * HOUR), 6, false)).containsExactly(false, false, false, false, true, true);
    }

    @Test
    void threeMayBeChance() {
        assertThat(hourly(new EqualRun(HOUR / 2), 5, false)).containsExactly(false, false, false, true, true);
    }

    /** Where equal readings say little, they must last longer than a day. */
    @Test
    void patience() {
        boolean[] frozen = hourly(new EqualRun(3 * HOUR), 26, true);
        assertThat(frozen[24]).isFalse();
        assertThat(frozen[25]).isTrue();
        assertThat(hourly(new EqualRun(30 * HOUR), 32, true)[30]).isFalse();
        assertThat(hourly(new EqualRun(30 * HOUR), 32, true)[31]).isTrue();
    }

    @Test
    void aLongGapAndAnotherValueBeginAnew() {
        EqualRun run = new EqualRun(3 * HOUR);
        hourly(run, 6, false);
        assertThat(run.from()).isZero();
        assertThat(run.length(5 * HOUR)).isEqualTo(5 * HOUR);
        assertThat(run.add(7 * HOUR, 0.2, false)).as("a gap of just two hours").isTrue();
        assertThat(run.add(9 * HOUR + 1, 0.2, false)).as("a longer one").isFalse();
        assertThat(run.from()).isEqualTo(9 * HOUR + 1);
        assertThat(run.length(10 * HOUR)).isZero();
        EqualRun other = new EqualRun(3 * HOUR);
        hourly(other, 6, false);
        assertThat(other.add(6 * HOUR, 0.21, false)).isFalse();
        assertThat(other.from()).isEqualTo(6 * HOUR);
    }

    @Test
    void aReadingThatSaysNothingEndsIt() {
        EqualRun run = new EqualRun(3 * HOUR);
        hourly(run, 6, false);
        run.reset();
        assertThat(run.length(5 * HOUR)).isZero();
        assertThat(run.add(6 * HOUR, 0.2, false)).isFalse();
        assertThat(run.from()).isEqualTo(6 * HOUR);
    }

    @Test
    void goesOnFromText() {
        EqualRun run = new EqualRun(3 * HOUR);
        hourly(run, 4, false);
        StateText text = StateText.of("run", 1);
        run.write(text, "depth");
        EqualRun other = new EqualRun(3 * HOUR);
        other.read(text, "depth");
        assertThat(other.from()).isZero();
        assertThat(other.length(3 * HOUR)).isEqualTo(3 * HOUR);
        assertThat(other.add(4 * HOUR, 0.2, false)).isTrue();
    }
}
