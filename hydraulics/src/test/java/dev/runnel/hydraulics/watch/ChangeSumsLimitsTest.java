package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.StateText;
import java.util.List;
import org.junit.jupiter.api.Test;

/** In which hour a sum tells, by hand: distances in scales, hour by hour, of the velocity at its depth and of two quantities at once. */
class ChangeSumsLimitsTest {
    /** Of which the usual distance is not 0. */
    private static final SiteBaseline SITE = SiteBaseline.parse(
            InventedSite.MONITOR,
            KnownHours.baseline(hour -> {}).toText().replaceFirst(" centre=\\S*", " centre=0.2,-0.3,0.4,0.5,"));

    private static final int R = ChangeSeries.R;
    private static final int D = ChangeSeries.D;
    private static final int U = ChangeSeries.U;
    private static final long BEGIN = 300;
    private static final int NEVER = -1;

    /** The hours of one site, from a hundredth hour of 1970. */
    private static final class Hours {
        private final ChangeSeries series;
        private final Findings findings = new Findings();
        private final boolean tidal;
        private final boolean pumped;
        private ChangeSums sums;
        private long hour = BEGIN;

        Hours(SiteBaseline baseline, boolean tidal, boolean pumped) {
            this.series = new ChangeSeries(baseline);
            this.tidal = tidal;
            this.pumped = pumped;
            sums = fresh();
        }

        private ChangeSums fresh() {
            return new ChangeSums(series, new TideWatch(tidal, findings), pumped);
        }

        /** Distances of R, D and U; the flow is as usual. */
        int add(double r, double d, double u) {
            double[] distances = {r, d, u, 0};
            double[] row = new double[Quantity.COUNT + 1];
            for (int c = 0; c < Quantity.COUNT; c++) {
                row[c] = series.centre(c) + distances[c] * series.scale(c);
            }
            series.hours.add(hour, row);
            if (hour % 7 == 0) {
                StateText text = StateText.of("sums", 1);
                sums.write(text);
                sums = fresh();
                sums.read(StateText.parse("sums", 1, text.toString()));
            }
            return sums.add(hour++);
        }

        /** Which of so many hours at one distance of R tells first, from 1. */
        int firstTold(int count, double r) {
            for (int i = 1; i <= count; i++) {
                int found = add(r, 0, 0);
                if (found >= 0) {
                    assertThat(found).isEqualTo(ChangeSums.at(R, r > 0 ? 1 : -1));
                    return i;
                }
            }
            return NEVER;
        }
    }

    private static Hours free() {
        return new Hours(SITE, false, false);
    }

    private static Hours pumped() {
        return new Hours(SITE, false, true);
    }

    private static Hours tidal() {
        return new Hours(SITE, true, false);
    }

    @Test
    void places() {
        for (int quantity = 0; quantity < Quantity.COUNT; quantity++) {
            for (int direction : new int[] {1, -1}) {
                int at = ChangeSums.at(quantity, direction);
                assertThat(at).isBetween(0, ChangeSums.DIRECTIONS - 1);
                assertThat(ChangeSums.quantity(at)).isEqualTo(quantity);
                assertThat(ChangeSums.direction(at)).isEqualTo(direction);
            }
        }
    }

    /**
     * Six hours of more than 3.5 scales are told at once: 6 · 3.25/6 is above 3. With pumps or a tide the sum must be full, 13 · 3.25/6; a
     * sum that was emptied tells of 25 such hours before it is.
     */
    @Test
    void whatIsLargeAtOnce() {
        for (int sign : new int[] {1, -1}) {
            assertThat(free().firstTold(40, sign * 4)).isEqualTo(6);
            for (Hours each : List.of(pumped(), tidal())) {
                assertThat(each.firstTold(40, sign * 4)).isEqualTo(13);
                each.sums.clear();
                assertThat(each.firstTold(40, sign * 4)).isEqualTo(12);
                each.sums.clear();
                assertThat(each.firstTold(40, sign * 4)).isEqualTo(6);
            }
        }
    }

    /** 2.6 scales fill a sum in 23 hours; it lasts when six hours of the day before say the same. */
    @Test
    void whatIsModerateMustStay() {
        for (Hours each : List.of(free(), pumped(), tidal())) {
            assertThat(each.firstTold(40, -2.6)).isEqualTo(30);
        }
        // 1.5 scales must stay for six days: five whole ones, and six hours of one.
        assertThat(free().firstTold(200, 1.5)).isEqualTo(5 * 24 + 6);
        // A sum waits at its limit: of what stays below a scale there is nothing after ten days, and the week after it
        // still tells of that.
        assertThat(free().firstTold(240, 0.9)).isEqualTo(NEVER);
    }

    /** A day and a half of 1.5 scales, then nine hours of 2.7: grown by more than a scale, to more than two. */
    @Test
    void whatGrowsIsToldWhereThereIsNoTide() {
        Hours free = free();
        assertThat(free.firstTold(44, 1.5)).isEqualTo(NEVER);
        assertThat(free.firstTold(24, 2.7)).isBetween(5, 9);
        for (Hours each : List.of(pumped(), tidal())) {
            assertThat(each.firstTold(44, 1.5)).isEqualTo(NEVER);
            assertThat(each.firstTold(24, 2.7)).isEqualTo(NEVER);
        }
    }

    /** Of two full sums the larger tells, and the earlier beginning is that of both. */
    @Test
    void theLargestOfFullSums() {
        Hours hours = free();
        int found = NEVER;
        for (int i = 0; i < 120 && found < 0; i++) {
            found = hours.add(0, i < 12 ? 0 : 3, i < 30 ? 0 : -6);
        }
        // The depth: 7 · 6/2.25 is 18.7 hours after 12.
        assertThat(found).isEqualTo(ChangeSums.at(D, 1));
        assertThat(hours.hour - BEGIN).isEqualTo(12 + 19);
        assertThat(hours.sums.earliestOfFull(found)).isEqualTo((BEGIN + 12) / 3);
        for (int i = 0; i < 30; i++) {
            found = hours.add(0, 3, -6);
        }
        int velocity = ChangeSums.at(U, -1);
        assertThat(found).isEqualTo(velocity);
        assertThat(hours.sums.start(velocity)).isEqualTo((BEGIN + 30) / 3);
        assertThat(hours.sums.earliestOfFull(velocity)).isEqualTo((BEGIN + 12) / 3);
        assertThat(hours.sums.earliestOfAll(9999)).isEqualTo((BEGIN + 12) / 3);
        hours.sums.clear();
        assertThat(hours.sums.earliestOfAll(9999)).isEqualTo(9999);
        assertThat(hours.sums.earliestOfFull(velocity)).isEqualTo((BEGIN + 30) / 3);
    }

    /** Hours that are not known add nothing and take nothing, and what the baseline does not watch has no sum. */
    @Test
    void whatIsNotKnown() {
        Hours hours = free();
        for (int i = 0; i < 12; i++) {
            hours.add(Double.NaN, 2, 0);
            hours.add(Double.NaN, Double.NaN, 0);
        }
        assertThat(hours.firstTold(5, 4)).isEqualTo(NEVER);
        assertThat(hours.firstTold(1, 4)).isEqualTo(1);
        Hours level = new Hours(KnownHours.baseline(SiteHour::withholdVelocity), false, false);
        for (int i = 0; i < 20; i++) {
            assertThat(level.add(1, 2, 1)).isEqualTo(NEVER);
        }
        assertThat(level.sums.earliestOfAll(9999)).isEqualTo(BEGIN / 3);
        assertThat(level.sums.start(ChangeSums.at(R, 1))).isEqualTo(Long.MIN_VALUE);
    }

    /** The velocity at its depth alone. */
    @Test
    void atDepthAlone() {
        Hours hours = free();
        int found = NEVER;
        for (int i = 0; i < 5; i++) {
            double[] row = new double[Quantity.COUNT + 1];
            for (int c = 0; c < Quantity.COUNT; c++) {
                row[c] = hours.series.centre(c) + 5 * hours.series.scale(c);
            }
            hours.series.hours.add(hours.hour, row);
            assertThat(found).isNegative();
            found = hours.sums.addAtDepth(hours.hour++);
        }
        // 5 · 4.25/6 is above 3, and six hours are wanted.
        assertThat(found).isNegative();
        hours.add(5, 0, 0);
        assertThat(hours.sums.start(ChangeSums.at(D, 1))).isEqualTo(Long.MIN_VALUE);
        assertThat(hours.sums.start(ChangeSums.at(R, 1))).isEqualTo(BEGIN / 3);
    }

    /** Nine tenths of a scale fill a sum of the depth in 280 hours, before a season is over; but a day must stand away by a whole one. */
    @Test
    void aSumThatIsFullWaitsForADay() {
        Hours hours = free();
        for (int i = 0; i < 300; i++) {
            assertThat(hours.add(0, 0.9, 0)).isEqualTo(NEVER);
        }
        int told = 1;
        while (hours.add(0, 1.1, 0) < 0 && told < 24) {
            told++;
        }
        assertThat(told).isBetween(12, 13);
    }
}
