package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** When a sum begins and what is a season; distances in scales, hour by hour. */
class ChangeSumsTest {
    private static final long BEGIN = 300;
    private static final long NONE = 9999;

    private final ChangeSeries series = new ChangeSeries(BaselineRule.of(InventedSite.MONITOR)
            .learn(InventedSite.of(30, 5).record(InventedSite.Fault.NONE))
            .baseline()
            .orElseThrow());
    private final ChangeSums sums = new ChangeSums(series, new TideWatch(false, new Findings()), false);
    private long hour = BEGIN;

    private int add(int quantity, double scales) {
        double[] row = new double[Quantity.COUNT + 1];
        for (int c = 0; c < Quantity.COUNT; c++) {
            row[c] = series.centre(c) + (c == quantity ? scales * series.scale(c) : 0);
        }
        series.hours.add(hour, row);
        return sums.add(hour++);
    }

    /** A hundredth of a scale over the slack fills no sum: after a fortnight it is emptied, and begins anew an hour later. */
    @Test
    void whatTakesLongerThanAFortnightIsASeason() {
        for (int i = 0; i <= 14 * 24; i++) {
            assertThat(add(ChangeSeries.D, 0.76)).isEqualTo(-1);
        }
        assertThat(sums.start(ChangeSums.at(ChangeSeries.D, 1))).isEqualTo(BEGIN / 3);
        assertThat(sums.earliestOfAll(NONE)).isEqualTo(BEGIN / 3);
        add(ChangeSeries.D, 0.76);
        assertThat(sums.earliestOfAll(NONE)).isEqualTo(NONE);
        add(ChangeSeries.D, 0.76);
        assertThat(sums.earliestOfAll(NONE)).isEqualTo((BEGIN + 14 * 24 + 2) / 3);
    }

    /** Not of the velocity at its depth, which no water moves. */
    @Test
    void velocityAtItsDepthHasNoSeason() {
        for (int i = 0; i < 20 * 24; i++) {
            assertThat(add(ChangeSeries.R, -0.76)).isEqualTo(-1);
        }
        assertThat(sums.earliestOfAll(NONE)).isEqualTo(BEGIN / 3);
    }

    @Test
    void whatStaysWithinTheSlackBeginsNoSum() {
        for (int i = 0; i < 10; i++) {
            add(ChangeSeries.D, 0.74);
        }
        assertThat(sums.earliestOfAll(NONE)).isEqualTo(NONE);
    }

    /** Two scales add 1.25/6 an hour: 7 after 33.6 hours. */
    @Test
    void sumIsFullWhenItsHoursAreWorthSeven() {
        assertThat(hoursToFull(2)).isEqualTo(34);
    }

    /** A hundred scales are cut to six and add 5.25/6 an hour: 7 with the eighth hour, more with the ninth. */
    @Test
    void wildHoursAreCutToSixScales() {
        assertThat(hoursToFull(-100)).isEqualTo(9);
    }

    /** After a day of the other direction a full sum waits for half a day of its own. */
    @Test
    void lastDayMustStandAwayToo() {
        hoursToFull(2);
        sums.clear();
        assertThat(hoursToFull(-100)).isEqualTo(12);
    }

    private int hoursToFull(double scales) {
        int hours = 1;
        int at = ChangeSums.at(ChangeSeries.D, scales > 0 ? 1 : -1);
        while (add(ChangeSeries.D, scales) != at && hours < 100) {
            hours++;
        }
        return hours;
    }
}
