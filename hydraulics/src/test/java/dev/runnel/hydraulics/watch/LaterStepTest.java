package dev.runnel.hydraulics.watch;

import static dev.runnel.hydraulics.watch.KnownHours.day;
import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Interval;
import org.junit.jupiter.api.Test;

/** What the week after a stretch shows of it. */
class LaterStepTest {
    private static final BaselineRule RULE = BaselineRule.of(InventedSite.MONITOR);

    /** A depth that is read lower by so much from a day on. */
    private static BaselineSearch learn(int days, double since, double lower) {
        return RULE.learn(new InventedSite(days, 15, 5, 0.03, false).record((day, depth, velocity, random) ->
                new double[] {day < since ? depth : depth - lower, velocity}));
    }

    private static Interval days(double from, double to) {
        return Interval.of(day(from), day(to));
    }

    @Test
    void aSoundRecordKeepsItsFortnight() {
        BaselineSearch search = learn(40, 99, 0);
        assertThat(search.refused()).isEmpty();
        assertThat(search.baseline().orElseThrow().interval()).isEqualTo(days(0, 14));
    }

    /** Two days of fourteen do not show it; with the week after them they do. */
    @Test
    void aSensorMovedOnTheLastDays() {
        BaselineSearch search = learn(40, 12, 0.03);
        assertThat(search.refused()).singleElement().satisfies(refused -> {
            assertThat(refused.interval()).isEqualTo(days(0, 14));
            assertThat(refused.reasons()).singleElement().asString().contains("changed by");
        });
        assertThat(search.baseline().orElseThrow().interval()).isEqualTo(days(0, 12));
        // Upward as well.
        assertThat(learn(40, 12, -0.03).baseline().orElseThrow().interval()).isEqualTo(days(0, 12));
    }

    /** What comes after the stretch is for the watch to tell. */
    @Test
    void aSensorMovedAfterTheStretch() {
        assertThat(learn(40, 14, 0.03).baseline().orElseThrow().interval()).isEqualTo(days(0, 14));
        assertThat(learn(40, 16, 0.03).baseline().orElseThrow().interval()).isEqualTo(days(0, 14));
    }

    /** Of a record that ends with the stretch nothing more is known than the stretch shows. */
    @Test
    void aRecordThatEnds() {
        assertThat(learn(14, 13, 0.03).baseline().orElseThrow().interval()).isEqualTo(days(0, 14));
        assertThat(learn(21, 13, 0.03).baseline().orElseThrow().interval()).isEqualTo(days(0, 13));
    }
}
