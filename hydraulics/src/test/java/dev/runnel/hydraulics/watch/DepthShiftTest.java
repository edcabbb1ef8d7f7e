package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.day;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import org.junit.jupiter.api.Test;

/** What the week after a stretch shows of a depth that moved within it. */
class DepthShiftTest {
    private static final BaselineRule RULE = BaselineRule.of(InventedSite.MONITOR);

    /** A depth that is read higher by so much, m, from a day on, and a velocity that is read as so many times itself. */
    private static BaselineSearch learn(int days, double since, double higher, double factor) {
        return RULE.learn(InventedSite.of(days, 5)
                .record((day, depth, velocity, random) -> day < since
                        ? new double[] {depth, velocity}
                        : new double[] {depth + higher, factor * velocity}));
    }

    private static Interval taken(BaselineSearch search) {
        return search.baseline().orElseThrow().interval();
    }

    private static Interval days(double from, double to) {
        return Interval.of(day(from), day(to));
    }

    @Test
    void aSoundRecordKeepsItsFortnight() {
        BaselineSearch search = learn(40, 99, 0, 1);
        assertThat(search.refused()).isEmpty();
        assertThat(search.shift()).isEmpty();
        assertThat(taken(search)).isEqualTo(days(0, 14));
    }

    /** Two days of fourteen do not show it; with the week after them they do, and by how much. */
    @Test
    void aSensorMovedOnTheLastDays() {
        BaselineSearch search = learn(40, 12, -0.03, 1);
        assertThat(search.refused()).singleElement().satisfies(refused -> {
            assertThat(refused.interval()).isEqualTo(days(0, 14));
            assertThat(refused.reasons())
                    .singleElement()
                    .asString()
                    .matches(
                            "velocity and depth part at about 2026-03-14, as if the depth were read (25|30|35) mm lower since");
        });
        assertThat(taken(search)).isEqualTo(days(0, 12));
        BaselineSearch.Shift shift = search.shift().orElseThrow();
        assertThat(shift.from()).isEqualTo(day(12));
        assertThat(shift.metres()).isBetween(-0.035, -0.025);
        assertThat(shift.isLearned()).isFalse();
        assertThat(search.describe()).endsWith("\nshift: " + shift);
    }

    @Test
    void aSensorMovedUp() {
        BaselineSearch search = learn(40, 12, 0.03, 1);
        assertThat(search.refused().get(0).reasons())
                .singleElement()
                .asString()
                .matches(".* (25|30|35) mm higher since");
        assertThat(taken(search)).isEqualTo(days(0, 12));
    }

    /** Hardware moves farther. */
    @Test
    void aShiftOfAFewMillimetres() {
        assertThat(taken(learn(40, 12, -0.004, 1))).isEqualTo(days(0, 14));
    }

    /** What comes after the stretch is for the watch to tell. */
    @Test
    void aSensorMovedAfterTheStretch() {
        assertThat(taken(learn(40, 14, -0.03, 1))).isEqualTo(days(0, 14));
        assertThat(taken(learn(40, 16, -0.03, 1))).isEqualTo(days(0, 14));
        assertThat(learn(40, 14, -0.03, 1).shift().orElseThrow()).satisfies(shift -> {
            assertThat(shift.from()).isEqualTo(day(14));
            assertThat(shift.isLearned()).isFalse();
        });
        // Of the days after it the stretch has none, though one of them is wild.
        assertThat(taken(learn(15, 14, -0.05, 1))).isEqualTo(days(0, 14));
    }

    /** Three days that show it are the fewest, and may place it a day early. */
    @Test
    void aRecordThatEnds() {
        assertThat(taken(learn(14, 12, -0.03, 1))).isEqualTo(days(0, 14));
        assertThat(taken(learn(15, 12, -0.03, 1)).end()).isBetween(day(11), day(12));
    }

    /** Too few days before it to learn from. */
    @Test
    void aSensorMovedInTheFirstWeek() {
        BaselineSearch search = learn(40, 6, -0.02, 1);
        assertThat(taken(search)).isEqualTo(days(0, 14));
        assertThat(search.refused()).isEmpty();
        BaselineSearch.Shift shift = search.shift().orElseThrow();
        assertThat(shift.from()).isBetween(day(5), day(7));
        assertThat(shift.metres()).isBetween(-0.025, -0.015);
        assertThat(shift.isLearned()).isTrue();
        assertThat(search.describe()).endsWith("; days since then are learned from, for those before are too few");
    }

    @Test
    void noShiftOfNothing() {
        for (double metres : new double[] {0, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> new BaselineSearch.Shift(day(0), metres, true))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("metres must be finite and other than 0, was " + metres);
        }
    }

    /** Faster water that stands lower: what went was held up before, which is none to learn from. */
    @Test
    void anObstructionThatWent() {
        assertThat(taken(learn(40, 12, -0.02, 1.12))).isEqualTo(days(0, 14));
    }
}
