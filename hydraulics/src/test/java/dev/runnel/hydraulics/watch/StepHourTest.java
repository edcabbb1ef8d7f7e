package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The hour of a step among hours that scatter little beside it. */
class StepHourTest {
    private static final long HOUR = SiteHour.NANOS;
    private static final int D = ChangeSeries.D;

    private static ChangeSeries series(int from, int to, int step) {
        ChangeSeries series = new ChangeSeries(BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(30, 5).record(InventedSite.Fault.NONE))
                .baseline()
                .orElseThrow());
        for (int hour = from; hour < to; hour++) {
            double[] row = new double[Quantity.COUNT + 1];
            row[D] = 0.4 + (hour < step ? 0 : 1) + (hour % 2 == 0 ? 0.01 : -0.01);
            series.hours.add(hour, row);
        }
        return series;
    }

    private static Track found(int hour) {
        return new Track(1, FindingName.HELD_UP, 0, hour * HOUR);
    }

    /** Tenth block: hours 30 to 32. Another hour leaves a whole square of the step, against 1e-4 of an hour of scatter. */
    @Test
    void hourOfTheStepIsFoundAndThoseAboutItAreItsBounds() {
        for (int step : new int[] {27, 31, 36}) {
            Track open = found(60);
            StepHour.find(series(0, 60, step), D, 10, open);
            assertThat(open.since).isEqualTo(step * HOUR);
            assertThat(open.earliest).isEqualTo((step - 1) * HOUR);
            assertThat(open.latest).isEqualTo((step + 1) * HOUR);
        }
    }

    @Test
    void stepIsNoLaterThanItWasTold() {
        Track open = found(31);
        StepHour.find(series(0, 60, 35), D, 10, open);
        assertThat(open.since).isEqualTo(30 * HOUR);
    }

    /** Seven hours are too few, and so are hours that begin within the block before. */
    @Test
    void tooFewHoursSayNothing() {
        for (Object[] each : new Object[][] {{27, 35, true}, {27, 34, false}, {28, 60, false}}) {
            Track open = found(60);
            StepHour.find(series((int) each[0], (int) each[1], 31), D, 10, open);
            assertThat(open.since > 0).as("hours %s to %s", each[0], each[1]).isEqualTo(each[2]);
        }
    }
}
