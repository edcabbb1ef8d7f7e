package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.internal.StateText;
import org.junit.jupiter.api.Test;

/** What days that came late by known hours make usual. */
class ClockUsualTest {
    private static final double MAD = 0.6744897501960817;

    /** A curve that days of rest made says nothing of working days, but for one or two that it holds. */
    @Test
    void workingDaysAreNotJudgedByDaysOfRest() {
        ClockUsual.Learner learner = new ClockUsual.Learner();
        learner.add(true, 0.1, 0, 0);
        assertThat(learner.usual(true).centre(false)).isZero();
        assertThat(learner.usual(true).scatter(false)).isEqualTo(24);
        assertThat(learner.usual(false).scatter(false)).isEqualTo(24);
        learner.add(false, -1, -1, -1);
        // As many of either kind: the curve is that of both.
        assertThat(learner.usual(true).centre(false)).isZero();
        assertThat(learner.usual(true).scatter(false)).isEqualTo(0.15);
        learner.add(true, 0, 0, 0);
        assertThat(learner.usual(true).centre(false)).isEqualTo(-1);
        assertThat(learner.usual(true).half(true, false)).isEqualTo(-1);
        assertThat(learner.usual(true).scatter(false)).isEqualTo(0.4);
        assertThat(learner.usual(false).scatter(false)).isEqualTo(0.5);
        learner.add(false, -0.8, 0, 0);
        learner.add(false, -0.6, 0, 0);
        for (int i = 0; i < 4; i++) {
            learner.add(true, 0, 0, 0);
        }
        // Three working days speak for themselves.
        assertThat(learner.usual(true).centre(false)).isEqualTo(-0.8);
        assertThat(learner.usual(true).scatter(false)).isBetween(0.16, 0.2);
    }

    @Test
    void nothingKnown() {
        ClockUsual none = ClockUsual.unknown();
        assertThat(none.centre(false)).isZero();
        assertThat(none.centre(true)).isZero();
        assertThat(none.scatter(false)).isEqualTo(0.25);
        assertThat(none.scatter(true)).isEqualTo(0.5);
        ClockUsual learned = new ClockUsual.Learner().usual(false);
        assertThat(learned.centre(true)).isZero();
        assertThat(learned.scatter(false)).isEqualTo(0.25);
        ClockUsual flow = new ClockUsual.Learner().usual(true);
        assertThat(flow.scatter(false)).isEqualTo(0.15);
        assertThat(flow.scatter(true)).isEqualTo(0.4);
        assertThat(flow.half(true, true)).isZero();
    }

    /** Three working days have a median; days of rest are pulled towards 0 as if one more of 0 were among them. */
    @Test
    void centres() {
        ClockUsual.Learner learner = new ClockUsual.Learner();
        learner.add(false, 0.2, 0.1, 0.3);
        learner.add(false, 0.4, 0.5, Double.NaN);
        learner.add(true, 0.6, 0.9, 1.2);
        ClockUsual two = learner.usual(false);
        assertThat(two.centre(false)).isZero();
        assertThat(two.centre(true)).isCloseTo(0.3, within(1e-15));
        assertThat(two.half(false, false)).isZero();
        // Half of its own morning and half of what is usual of the whole day.
        assertThat(two.half(false, true)).isCloseTo(0.5 * 0.9 + 0.5 * 0.3, within(1e-15));
        assertThat(two.half(true, true)).isCloseTo(0.5 * 1.2 + 0.5 * 0.3, within(1e-15));
        learner.add(false, 0.3, 0.3, 0.4);
        learner.add(true, 0.9, 0.9, Double.NaN);
        ClockUsual three = learner.usual(false);
        assertThat(three.centre(false)).isEqualTo(0.3);
        assertThat(three.centre(true)).isCloseTo(2 / 3.0 * 0.75, within(1e-15));
        assertThat(three.half(false, false)).isEqualTo(0.3);
        // Two evenings are too few: that of the whole day.
        assertThat(three.half(true, false)).isEqualTo(0.3);
        assertThat(three.half(true, true)).isCloseTo(0.5 * 1.2 + 0.5 * 0.5, within(1e-15));
    }

    /** The mean of the robust square and the mean square, four days of the prior with it, and a least. */
    @Test
    void scatters() {
        ClockUsual.Learner learner = new ClockUsual.Learner();
        for (double shift : new double[] {0, 1, 5}) {
            learner.add(false, shift, 0, 0);
        }
        double found = (1 / (MAD * MAD) + 17 / 3.0) / 2;
        assertThat(learner.usual(false).scatter(false))
                .isCloseTo(Math.sqrt((4 * 0.0625 + 3 * found) / 7), within(1e-12));
        assertThat(learner.usual(true).scatter(false))
                .isCloseTo(Math.sqrt((4 * 0.0225 + 3 * found) / 7), within(1e-12));
        for (int i = 0; i < 200; i++) {
            learner.add(true, 0.5, 0, 0);
        }
        // Their usual phase is 0.5 · 200/201, so that each lies 0.0025 away.
        assertThat(learner.usual(false).scatter(true)).isEqualTo(0.3);
        assertThat(learner.usual(true).scatter(true)).isEqualTo(0.25);
        ClockUsual.Learner one = new ClockUsual.Learner();
        one.add(false, 3, 0, 0);
        assertThat(one.usual(false).scatter(false)).isEqualTo(0.25);
        one.add(false, 3, 0, 0);
        // Two working days have no centre of their own: both lie 3 h from 0.
        assertThat(one.usual(false).scatter(false)).isCloseTo(Math.sqrt((0.25 + 2 * 4.5) / 6), within(1e-12));
    }

    @Test
    void asText() {
        ClockUsual usual =
                ClockUsual.of(new double[] {0.1, 0.2}, new double[] {0.3, 0.4}, new double[] {0.5, 0.6, 0.7, 0.8});
        StateText text = StateText.of("clock", 1);
        usual.write(text, "key");
        ClockUsual read = ClockUsual.read(StateText.parse("clock", 1, text.toString()), "key");
        assertThat(read.centre(true)).isEqualTo(0.2);
        assertThat(read.scatter(false)).isEqualTo(0.3);
        assertThat(read.half(false, false)).isEqualTo(0.5);
        assertThat(read.half(false, true)).isEqualTo(0.6);
        assertThat(read.half(true, false)).isEqualTo(0.7);
        assertThat(read.half(true, true)).isEqualTo(0.8);
    }
}
