package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Where invented days lie, whose course is known. */
class ClockWatchTest {
    private static final double[] NONE = {0, 0};

    /** What people let down at an hour of a working day, as a share of its mean: a steep morning and a broad evening. */
    private static double people(double hour) {
        return 0.3 + 1.2 * peak(hour - 7.5, 1) + peak(hour - 20, 2);
    }

    private static double peak(double away, double width) {
        double round = away - 24 * Math.rint(away / 24);
        return Math.exp(-round * round / (2 * width * width));
    }

    /** At home people get up two hours later and go to bed as ever. */
    private static double atHome(double hour) {
        return people(hour > 4 && hour < 14 ? hour - 2 * Math.sin(Math.PI * (hour - 4) / 10) : hour);
    }

    private static DayCurve curve(int harmonics) {
        return curve(harmonics, ClockWatchTest::atHome);
    }

    private static DayCurve curve(int harmonics, Course ofRest) {
        double[] hours = new double[24 * 14];
        boolean[] rest = new boolean[hours.length];
        double[] values = new double[hours.length];
        for (int i = 0; i < hours.length; i++) {
            hours[i] = i % 24 + 0.5;
            rest[i] = i / 24 % 7 > 4;
            values[i] = Math.log(rest[i] ? ofRest.at(hours[i]) : people(hours[i]));
        }
        return DayCurve.fit(hours, rest, values, harmonics);
    }

    private static ClockUsual sure() {
        return ClockUsual.of(NONE, new double[] {0.1, 0.3}, new double[4]);
    }

    private interface Course {
        double at(double hour);
    }

    private static double[][] day(Course course, double noise) {
        Random random = new Random(7);
        double[][] day = new double[2][24];
        for (int h = 0; h < 24; h++) {
            day[0][h] = h + 0.5;
            day[1][h] = Math.log(course.at(h + 0.5)) + noise * random.nextGaussian();
        }
        return day;
    }

    @Test
    void dayThatCameLateIsPlacedWithinMinutes() {
        ClockDay course = new ClockDay(curve(8), true, sure());
        for (double late : new double[] {-1.5, -0.5, 0.25, 0.75, 3}) {
            double[][] day = day(hour -> people(hour - late), 0);
            ClockDay.Phase phase = course.phase(day[0], day[1], 24, false);
            assertThat(phase.shift()).as("%s h", late).isCloseTo(late, within(0.06));
            assertThat(phase.moved()).isLessThan(phase.unmoved());
        }
    }

    /** What a wet season adds flattens the logarithm of the day; it is no other hour. */
    @Test
    void waterOfASeasonDoesNotMoveTheDay() {
        double[][] day = day(hour -> people(hour - 0.5) + 0.8, 0);
        ClockDay.Phase free = new ClockDay(curve(8), true, sure()).phase(day[0], day[1], 24, false);
        ClockDay.Phase bound = new ClockDay(curve(8), false, sure()).phase(day[0], day[1], 24, false);
        assertThat(free.shift()).isCloseTo(0.5, within(0.06));
        assertThat(free.moved()).isLessThan(0.5 * bound.moved());
    }

    /** The morning of people at home comes late, their evening does not; a clock moves both. */
    @Test
    void eveningTellsAClockFromPeopleAtHome() {
        ClockDay course = new ClockDay(curve(8), true, sure());
        double[][] home = day(ClockWatchTest::atHome, 0);
        ClockDay.Phase stayed = course.phase(home[0], home[1], 24, false);
        double[][] moved = day(hour -> people(hour - 1), 0);
        ClockDay.Phase clock = course.phase(moved[0], moved[1], 24, false);
        assertThat(stayed.shift()).isGreaterThan(0.4);
        assertThat(stayed.evening()).isLessThan(0.05 * (stayed.unmoved() - stayed.moved()));
        assertThat(clock.evening()).isGreaterThan(0.3 * (clock.unmoved() - clock.moved()));
    }

    /** Morning and evening placed by themselves: people at home are late in the morning alone, a clock is late all day. */
    @Test
    void halvesOfADayArePlacedByThemselves() {
        ClockDay course = new ClockDay(curve(8), true, sure());
        double[][] home = day(ClockWatchTest::atHome, 0);
        assertThat(course.shiftOfHalf(false, home[0], home[1], 24, false)).isGreaterThan(0.9);
        assertThat(course.shiftOfHalf(true, home[0], home[1], 24, false)).isCloseTo(0, within(0.1));
        double[][] moved = day(hour -> people(hour - 1), 0);
        assertThat(course.shiftOfHalf(false, moved[0], moved[1], 24, false)).isCloseTo(1, within(0.1));
        assertThat(course.shiftOfHalf(true, moved[0], moved[1], 24, false)).isCloseTo(1, within(0.1));
        assertThat(course.shiftOfHalf(false, moved[0], moved[1], 11, false))
                .as("eight hours of a morning")
                .isNaN();
    }

    /** A school holiday: for weeks the working mornings come late and the evenings less. */
    @Test
    void morningsThatComeLateForWeeksAreNoClock() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 14; d++) {
            boolean rest = d % 7 > 4;
            add(
                    watch,
                    day(hour -> rest ? atHome(hour) : people(hour > 3 && hour < 14 ? hour - 0.7 : hour - 0.2), 0.01),
                    true);
            watch.endDay(100 + d, rest);
            assertThat(evidence.days(100 + d, true)).isZero();
        }
    }

    /** People who go to bed late for weeks and get up as ever are no clock either. */
    @Test
    void eveningsThatComeLateForWeeksAreNoClock() {
        for (double morning : new double[] {0.1, 0.6}) {
            ClockWatch watch = watch();
            ClockEvidence evidence = new ClockEvidence(watch);
            int told = 0;
            for (int d = 0; d < 12; d++) {
                add(watch, day(hour -> people(hour > 3 && hour < 14 ? hour - morning : hour - 0.9), 0.01), true);
                watch.endDay(100 + d, false);
                assertThat(watch.shiftOfMorning(0)).isCloseTo(morning, within(0.2));
                told += evidence.days(100 + d, true) > 0 ? 1 : 0;
            }
            assertThat(told > 0).as("mornings by %s h", morning).isEqualTo(morning > 0.5);
        }
    }

    @Test
    void noHourIsToldAtTheEndOfWhatIsTried() {
        double[][] day = day(hour -> people(hour - 7), 0);
        assertThat(new ClockDay(curve(8), true, sure())
                        .phase(day[0], day[1], 24, false)
                        .shift())
                .isNaN();
    }

    private static ClockWatch watch() {
        ClockDay flow = new ClockDay(curve(8), true, sure());
        ClockDay depth = new ClockDay(curve(4), false, ClockUsual.of(NONE, new double[] {0.4, 0.6}, new double[4]));
        return new ClockWatch(depth, Optional.of(flow));
    }

    private static void add(ClockWatch watch, double[][] day, boolean withFlow) {
        for (int h = 0; h < 24; h++) {
            watch.add(day[0][h], day[1][h], withFlow ? day[1][h] : Double.NaN);
        }
    }

    @Test
    void dayWithoutFlowIsPlacedByItsDepth() {
        ClockWatch watch = watch();
        add(watch, day(hour -> people(hour - 1), 0.02), true);
        assertThat(watch.endDay(100, false)).isTrue();
        assertThat(watch.scatter(0)).isEqualTo(0.1);
        add(watch, day(hour -> people(hour - 1), 0.02), false);
        assertThat(watch.endDay(101, false)).isTrue();
        assertThat(watch.scatter(0)).isEqualTo(0.4);
        // Four harmonics do not follow so steep a morning.
        assertThat(watch.shift(0)).isCloseTo(1, within(0.25));
        assertThat(watch.endDay(102, false)).as("a day without hours").isFalse();
        assertThat(watch.size()).isEqualTo(2);
    }

    /** But not before it is known of three working days how well they fit. */
    @Test
    void twoDaysThatLieFarAwayAreEnough() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 2; d++) {
            add(watch, day(ClockWatchTest::people, 0.03), true);
            watch.endDay(97 + d, false);
        }
        add(watch, day(hour -> people(hour - 1), 0.02), true);
        watch.endDay(100, false);
        add(watch, day(hour -> people(hour - 1), 0.03), true);
        watch.endDay(101, false);
        assertThat(evidence.days(101, true)).isZero();

        watch = watch();
        evidence = new ClockEvidence(watch);
        for (int d = 0; d < 3; d++) {
            add(watch, day(ClockWatchTest::people, 0.03), true);
            watch.endDay(97 + d, false);
        }
        add(watch, day(hour -> people(hour - 1), 0.02), true);
        watch.endDay(100, false);
        assertThat(evidence.days(100, true)).isZero();
        add(watch, day(hour -> people(hour - 1), 0.03), true);
        watch.endDay(101, false);
        assertThat(evidence.days(101, true)).isEqualTo(2);
        assertThat(evidence.days(101, false)).as("within a wet season as well").isEqualTo(2);
        assertThat(evidence.median(2)).isCloseTo(1, within(0.1));
    }

    /** People who come three quarters of an hour late for two days are no clock; for three they may be. */
    @Test
    void twoDaysBetweenWholeAndHalfHoursAreNotEnough() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 2; d++) {
            add(watch, day(hour -> people(hour - 0.75), 0.01), true);
            watch.endDay(100 + d, false);
        }
        assertThat(evidence.median(2)).isCloseTo(0.75, within(0.05));
        assertThat(evidence.days(101, true)).isZero();
        add(watch, day(hour -> people(hour - 0.75), 0.01), true);
        watch.endDay(102, false);
        assertThat(evidence.days(102, true)).isEqualTo(3);
    }

    /** Where the flow comes late and the depth does not, the velocity may have been another. */
    @Test
    void twoDaysOnWhichTheDepthCameAsEverAreNotEnough() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        double[][] late = day(hour -> people(hour - 1), 0.01);
        double[][] usual = day(ClockWatchTest::people, 0.01);
        for (int d = 0; d < 3; d++) {
            for (int h = 0; h < 24; h++) {
                watch.add(h + 0.5, usual[1][h], late[1][h]);
            }
            watch.endDay(100 + d, false);
            assertThat(watch.shiftByDepth(0)).isCloseTo(0, within(0.2));
            assertThat(evidence.days(100 + d, true)).isEqualTo(d < 2 ? 0 : 3);
        }
    }

    @Test
    void threeDaysOfTheDepthAloneMustComeLateByHalfHours() {
        ClockUsual sure = ClockUsual.of(NONE, new double[] {0.12, 0.3}, new double[4]);
        ClockWatch watch = new ClockWatch(new ClockDay(curve(8), true, sure), Optional.empty());
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 4; d++) {
            add(watch, day(hour -> people(hour - 0.75), 0.01), false);
            watch.endDay(100 + d, false);
            assertThat(evidence.days(100 + d, true)).isEqualTo(d < 3 ? 0 : 4);
        }
    }

    /** A knock in the evening makes the best shift of its day a large one; the day before lay a little late by chance. */
    @Test
    void dayInWhichTheLevelLeaptIsNoOtherHour() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 5; d++) {
            add(watch, day(ClockWatchTest::people, 0.03), true);
            watch.endDay(100 + d, false);
        }
        add(watch, day(hour -> people(hour - 0.95), 0.03), true);
        watch.endDay(105, false);
        add(watch, day(hour -> people(hour - 0.95) * (hour > 17 ? 2.5 : 1), 0.03), true);
        watch.endDay(106, false);
        assertThat(watch.squaresMoved(0)).isGreaterThan(3 * watch.squaresMoved(1));
        assertThat(Math.abs(watch.shift(0))).isGreaterThan(0.5);
        assertThat(evidence.days(106, true)).isZero();
        add(watch, day(hour -> people(hour - 0.95), 0.03), true);
        watch.endDay(107, false);
        add(watch, day(hour -> people(hour - 0.95), 0.03), true);
        watch.endDay(108, false);
        assertThat(evidence.days(108, true)).isEqualTo(2);
    }

    @Test
    void depthAloneTakesADayMore() {
        ClockUsual sure = ClockUsual.of(NONE, new double[] {0.12, 0.3}, new double[4]);
        ClockWatch watch = new ClockWatch(new ClockDay(curve(8), true, sure), Optional.empty());
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 3; d++) {
            assertThat(evidence.days(100 + d, true)).isZero();
            add(watch, day(hour -> people(hour - 1), 0.02), false);
            watch.endDay(100 + d, false);
        }
        assertThat(evidence.days(102, true)).isEqualTo(3);
    }

    @Test
    void twoDaysThatDifferAreNotEnough() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        add(watch, day(hour -> people(hour - 0.3), 0.01), true);
        watch.endDay(100, false);
        add(watch, day(hour -> people(hour - 2), 0.01), true);
        watch.endDay(101, false);
        assertThat(evidence.days(101, true)).isZero();
    }

    @Test
    void halfAnHourInAWetSeasonIsNotTold() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 3; d++) {
            add(watch, day(hour -> people(hour - 0.5), 0.01), true);
            watch.endDay(100 + d, false);
        }
        assertThat(evidence.days(102, true)).isGreaterThanOrEqualTo(2);
        assertThat(evidence.days(102, false)).isZero();
    }

    @Test
    void daysOnWhichPeopleStayedAtHomeAreNoClock() {
        ClockWatch watch = watch();
        ClockEvidence evidence = new ClockEvidence(watch);
        for (int d = 0; d < 4; d++) {
            add(watch, day(ClockWatchTest::atHome, 0.01), true);
            watch.endDay(100 + d, false);
            assertThat(evidence.days(100 + d, true)).isZero();
        }
    }

    /** A course whose mornings and evenings come late by themselves. */
    private static Course late(double morning, double evening) {
        return hour -> people(hour - (hour < 3 || hour >= 14 ? evening : morning));
    }

    /** Where evenings by themselves always look half an hour late, half an hour is no move of theirs. */
    @Test
    void halvesAreHeldAgainstWhereTheyUsuallyLie() {
        for (double usualEvening : new double[] {0, 0.5}) {
            ClockUsual usual = ClockUsual.of(NONE, new double[] {0.1, 0.3}, new double[] {0, 0, usualEvening, 0});
            ClockWatch watch = new ClockWatch(
                    new ClockDay(curve(8), true, usual), Optional.of(new ClockDay(curve(8), true, usual)));
            for (int d = 0; d < 4; d++) {
                add(watch, day(late(0.85, 0.8), 0.01), true);
                watch.endDay(100 + d, false);
            }
            assertThat(watch.shiftOfEvening(0)).isCloseTo(0.8 - usualEvening, within(0.2));
            assertThat(watch.shiftOfMorning(0)).isCloseTo(0.85, within(0.2));
            assertThat(new ClockEvidence(watch).days(103, true) > 0).isEqualTo(usualEvening == 0);
        }
    }

    @Test
    void usualHalvesAreMediansAndThoseOfDaysOfRestLieNearer() {
        ClockUsual.Learner learner = new ClockUsual.Learner();
        learner.add(false, 0.1, 0.2, Double.NaN);
        learner.add(false, 0.1, 0.4, 0.3);
        learner.add(false, 0.1, 0.3, 0.5);
        learner.add(true, 0.2, 0.6, Double.NaN);
        ClockUsual usual = learner.usual(true);
        assertThat(usual.half(false, false)).isEqualTo(0.3);
        // Two evenings make no usual one: they lie where the days do.
        assertThat(usual.half(true, false)).isEqualTo(0.1);
        assertThat(usual.centre(true)).isCloseTo(0.1, within(1e-12));
        assertThat(usual.half(false, true)).isCloseTo((0.6 + 0.1) / 2, within(1e-12));
        assertThat(usual.half(true, true)).isCloseTo(0.1, within(1e-12));
    }

    /** On a day of rest of a school holiday people sleep in, too, and go to bed as ever. */
    @Test
    void aDayOfRestWhoseEveningDidNotMoveConfirmsNothing() {
        ClockDay course = new ClockDay(curve(8, ClockWatchTest::people), true, sure());
        for (double evening : new double[] {0.1, 0.65}) {
            ClockWatch watch = new ClockWatch(course, Optional.of(course));
            for (int d = 0; d < 4; d++) {
                add(watch, day(late(0.7, 0.45), 0.01), true);
                watch.endDay(100 + d, false);
            }
            add(watch, day(late(0.7, evening), 0.01), true);
            watch.endDay(104, true);
            assertThat(watch.shift(0)).isBetween(0.3, 0.75);
            assertThat(watch.shiftOfEvening(0)).isCloseTo(evening, within(0.15));
            assertThat(new ClockEvidence(watch).days(104, true)).isEqualTo(evening > 0.5 ? 3 : 0);
        }
    }

    @Test
    void stateGoesOnAndCutOnesAreRefused() {
        ClockWatch watch = watch();
        add(watch, day(hour -> people(hour - 1), 0.02), true);
        watch.endDay(100, false);
        watch.add(3.5, 0.1, 0.2);
        StateText text = StateText.of("some", 1);
        watch.write(text);
        ClockWatch again = watch();
        again.read(text);
        StateText copy = StateText.of("some", 1);
        again.write(copy);
        assertThat(copy).hasToString(text.toString());

        StateText fewer = StateText.parse("some", 1, text.toString())
                .with("clockEveningsNumbers", new long[0])
                .with("clockEveningsValues", new double[0]);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> watch().read(fewer))
                .withMessage("state clockDepths, clockEvenings and clockMornings must hold 1 days as clockPhases does,"
                        + " was 0 days");
        StateText cut = text.with("clockValues", new double[0]);
        assertThatIllegalArgumentException().isThrownBy(() -> watch().read(cut)).withMessageContaining("clockValues");
    }
}
