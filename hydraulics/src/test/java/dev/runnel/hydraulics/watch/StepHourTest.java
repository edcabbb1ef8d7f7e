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

    /**
     * The more the hours scatter the wider the bounds: as far as the squares left by two means stay within 1 + 4/(n/4) of the least, n hours
     * of a day before the block and a day and a block from it on.
     */
    @Test
    void scatterWidensTheBounds() {
        int width = 0;
        for (double scatter : new double[] {0.05, 0.2, 0.35, 0.5, 0.7, 1}) {
            ChangeSeries series = series(0, 0, 31);
            double[] known = new double[51];
            for (int hour = 0; hour < 70; hour++) {
                double[] row = new double[Quantity.COUNT + 1];
                row[D] = 0.4 + (hour < 31 ? 0 : 1) + scatter * Math.sin(2.4 * hour + 0.3);
                series.hours.add(hour, row);
                if (hour >= 6 && hour < 57) {
                    known[hour - 6] = row[D];
                }
            }
            Track open = found(60);
            StepHour.find(series, D, 10, open);
            double[] left = new double[51];
            int best = 1;
            for (int k = 1; k < 51; k++) {
                left[k] = left(known, k);
                best = left[k] < left[best] ? k : best;
            }
            double limit = left[best] * (1 + 4 / 12.75);
            int earliest = best;
            while (earliest > 1 && left[earliest - 1] < limit) {
                earliest--;
            }
            int latest = best;
            while (latest < 50 && left[latest + 1] < limit) {
                latest++;
            }
            assertThat(open.since).as("scatter %s", scatter).isEqualTo((6 + best) * HOUR);
            assertThat(open.earliest).isEqualTo((6 + earliest - 1) * HOUR);
            assertThat(open.latest).isEqualTo((6 + latest + 1) * HOUR);
            width = Math.max(width, latest - earliest);
        }
        assertThat(width).isGreaterThan(3);
    }

    /** Σx² less (Σ of the first)²/k and (Σ of the others)²/(n − k). */
    private static double left(double[] values, int k) {
        double squares = 0;
        double first = 0;
        double others = 0;
        for (int i = 0; i < values.length; i++) {
            squares += values[i] * values[i];
            first += i < k ? values[i] : 0;
            others += i < k ? 0 : values[i];
        }
        return squares - first * first / k - others * others / (values.length - k);
    }
}
