package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Optional;
import org.junit.jupiter.api.Test;
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
        watch.read(ClockStates.of(phases, shifts, shifts, shifts));
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

    /**
     * A day: by how much all of it, its depth, its evening and its morning came late, h; the squares that it leaves unmoved, moved and
     * as the other kind of day, whether it is one of rest, and what its evening gains.
     */
    private record Day(
            double shift,
            double depth,
            double evening,
            double morning,
            double unmoved,
            double moved,
            double other,
            boolean rest,
            double gain) {
        static final Day USUAL = new Day(0, 0, 0, 0, 1, 1, 10, false, 0);

        /** All of it late, and nothing else to be said. */
        static Day late(double shift) {
            return new Day(shift, shift, shift, shift, 3, 1, 10, false, 10);
        }

        Day withDepth(double by) {
            return new Day(shift, by, evening, morning, unmoved, moved, other, rest, gain);
        }

        Day withEvening(double by) {
            return new Day(shift, depth, by, morning, unmoved, moved, other, rest, gain);
        }

        Day withMorning(double by) {
            return new Day(shift, depth, evening, by, unmoved, moved, other, rest, gain);
        }

        Day withSquares(double without, double with) {
            return new Day(shift, depth, evening, morning, without, with, other, rest, gain);
        }

        Day withOther(double squares) {
            return new Day(shift, depth, evening, morning, unmoved, moved, squares, rest, gain);
        }

        Day withGain(double ofEvening) {
            return new Day(shift, depth, evening, morning, unmoved, moved, other, rest, ofEvening);
        }

        Day atRest() {
            return new Day(shift, depth, evening, morning, unmoved, moved, other, true, gain);
        }
    }

    /** After so many usual working days; each further day comes so many days after the one before, and each may come early too. */
    private static int agreed(int usual, int apart, boolean small, Day... days) {
        int late = agreed(usual, apart, small, 1, days);
        assertThat(agreed(usual, apart, small, -1, days)).isEqualTo(late);
        return late;
    }

    private static int agreed(int usual, int apart, boolean small, int sign, Day... days) {
        ClockWatch watch = new ClockWatch(course(), Optional.of(course()));
        int count = usual + days.length;
        Ring phases = new Ring(count, 7);
        Ring depths = new Ring(count, 1);
        Ring evenings = new Ring(count, 1);
        Ring mornings = new Ring(count, 1);
        long day = 100;
        for (int i = 0; i < count; i++) {
            Day each = i < usual ? Day.USUAL : days[i - usual];
            phases.add(day, sign * each.shift, each.unmoved, each.moved, each.other, each.rest ? 1 : 0, 0.1, each.gain);
            depths.add(day, sign * each.depth);
            evenings.add(day, sign * each.evening);
            mornings.add(day, sign * each.morning);
            day += i < usual ? 1 : apart;
        }
        watch.read(ClockStates.of(phases, depths, evenings, mornings));
        return new ClockEvidence(watch).days(day - apart, small);
    }

    private static int two(Day first, Day second) {
        return agreed(4, 1, true, first, second);
    }

    @Test
    void twoDaysAgreeAfterThreeWorkingDays() {
        Day late = Day.late(1);
        assertThat(agreed(3, 1, true, late, late)).isEqualTo(2);
        assertThat(agreed(2, 1, true, late, late)).isZero();
        assertThat(agreed(2, 1, true, Day.USUAL.atRest(), late, late)).isZero();
        assertThat(agreed(2, 1, true, Day.USUAL, late, late)).isEqualTo(2);
        assertThat(agreed(3, 5, true, late, late)).isEqualTo(2);
        assertThat(agreed(3, 6, true, late, late)).as("within six days").isZero();
    }

    /** A clock is set wrong by half hours, and alike. */
    @Test
    void twoDaysLieNearAHalfHourAndNearEachOther() {
        assertThat(two(Day.late(1.14), Day.late(1.14))).isEqualTo(2);
        assertThat(two(Day.late(1.16), Day.late(1.16))).isZero();
        assertThat(two(Day.late(1.36), Day.late(1.36))).isEqualTo(2);
        assertThat(two(Day.late(0.9), Day.late(1.19))).isEqualTo(2);
        assertThat(two(Day.late(0.85), Day.late(1.16))).isZero();
    }

    @Test
    void depthMovedWithTheFlowOnBothDays() {
        Day late = Day.late(1);
        assertThat(two(late.withDepth(0.41), late)).isEqualTo(2);
        assertThat(two(late, late.withDepth(0.41))).isEqualTo(2);
        assertThat(two(late.withDepth(0.39), late)).isZero();
        assertThat(two(late, late.withDepth(0.39))).isZero();
        assertThat(two(late, late.withDepth(-1))).isZero();
    }

    /** A day in which something leapt fits the usual one badly at any hour: three times what usual days leave. */
    @Test
    void dayThatFitsBadlyMovedNoClock() {
        Day late = Day.late(1);
        assertThat(two(late.withSquares(10, 2.99), late.withSquares(10, 1))).isEqualTo(2);
        assertThat(two(late.withSquares(10, 3.01), late.withSquares(10, 1))).isZero();
    }

    /** Working days at home leave hardly more as days of rest; the limit is 1.2 times what they leave moved. */
    @Test
    void peopleWhoStayAtHomeMovedNoClockUnlessForSixDays() {
        Day late = Day.late(1);
        assertThat(two(late.withOther(1.21), late.withOther(1.21))).isEqualTo(2);
        assertThat(two(late.withOther(1.19), late.withOther(1.19))).isZero();
        Day home = late.withOther(0.5);
        assertThat(agreed(4, 1, true, home, home, home, home, home)).isZero();
        assertThat(agreed(4, 1, true, home, home, home, home, home, home)).isEqualTo(6);
    }

    /** Of what moving gains, 3 - 1 of each day, a tenth comes from afternoon, evening and night. */
    @Test
    void eveningsGainTheirShare() {
        Day late = Day.late(1);
        assertThat(two(late.withGain(0.21), late.withGain(0.21))).isEqualTo(2);
        assertThat(two(late.withGain(0.19), late.withGain(0.19))).isZero();
    }

    @Test
    void eveningsAndMorningsMovedWithTheDay() {
        Day late = Day.late(1);
        assertThat(two(late.withEvening(0.61), late.withEvening(0.61))).isEqualTo(2);
        assertThat(two(late.withEvening(0.59), late.withEvening(0.59))).isZero();
        assertThat(two(late.withMorning(0.51), late.withMorning(0.51))).isEqualTo(2);
        assertThat(two(late.withMorning(0.49), late.withMorning(0.49))).isZero();
        assertThat(two(late.withEvening(Double.NaN), late.withEvening(Double.NaN)))
                .as("nobody knows")
                .isEqualTo(2);
    }

    /** Up to 0.8 h the evenings are held against the mornings, if those moved more; beyond it against the whole day. */
    @Test
    void whoSleepsInGoesToBedAsEver() {
        Day small = Day.late(0.7).withMorning(1);
        assertThat(three(small.withEvening(0.71))).isEqualTo(3);
        assertThat(three(small.withEvening(0.69))).isZero();
        Day wide = Day.late(0.82).withMorning(1.5);
        assertThat(three(wide.withEvening(0.50))).isEqualTo(3);
        assertThat(three(wide.withEvening(0.48))).isZero();
    }

    private static int three(Day day) {
        return agreed(4, 1, true, day, day, day);
    }

    /** A small shift may be a habit, but not of a day of rest that moved with its evening. */
    @Test
    void dayOfRestTellsASmallShift() {
        Day late = Day.late(0.7).withEvening(0.45);
        assertThat(three(late)).isZero();
        Day rest = Day.late(0.7).atRest();
        assertThat(agreed(4, 1, true, late, rest.withEvening(0.36), late)).isEqualTo(3);
        assertThat(agreed(4, 1, true, late, rest.withEvening(0.34), late)).isZero();
        assertThat(agreed(4, 1, true, late, rest.withEvening(Double.NaN), late)).isEqualTo(3);
    }

    @Test
    void smallShiftsAreToldOnlyWhereTheyCount() {
        // Their depths keep two of them from agreeing.
        Day more = Day.late(0.61).withDepth(0);
        Day less = Day.late(0.59).withDepth(0);
        assertThat(agreed(4, 1, false, more, more, more)).isEqualTo(3);
        assertThat(agreed(4, 1, false, less, less, less)).isZero();
        assertThat(agreed(4, 1, true, less, less, less)).isEqualTo(3);
    }

    /** As long as people may have stayed at home no working day moves beyond twice the median and half an hour. */
    @Test
    void dayThatMovedMuchFartherIsAnother() {
        Day late = Day.late(1);
        assertThat(agreed(4, 1, true, late, late, late, late, Day.late(2.49))).isEqualTo(3);
        assertThat(agreed(4, 1, true, late, late, late, late, Day.late(2.51))).isZero();
        assertThat(agreed(4, 1, true, late, late, late, late, late, Day.late(2.51)))
                .isEqualTo(6);
    }
}
