package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How long a distance of so many scales must last before it is told. */
class LastingTest {
    private static double[] days(double... levels) {
        double[] known = new double[24 * levels.length];
        for (int i = 0; i < known.length; i++) {
            known[i] = levels[i / 24];
        }
        return known;
    }

    private static Lasting lasting(double... known) {
        return new Lasting(known, 0.1, 0.75);
    }

    @Test
    void largeDayIsToldAndAModerateOneOnlyIfDaysBeforeItSaidTheSame() {
        assertThat(lasting(days(0, 0.301)).lasts()).isTrue();
        assertThat(lasting(days(0, 0.299)).lasts()).isFalse();
        assertThat(lasting(days(0, 0.26, 0.26)).lasts()).isTrue();
        assertThat(lasting(days(0, 0.24, 0.24)).lasts()).isFalse();
        assertThat(lasting(days(0, 0.23, 0.23, 0.23)).lasts()).isTrue();
        assertThat(lasting(days(0, 0.2, 0.2, 0.2, 0.2)).lasts()).isTrue();
        assertThat(lasting(days(0.14, 0.14, 0.14, 0.14, 0.14, 0.14)).lasts()).isTrue();
        assertThat(lasting(days(0.11, 0.11, 0.11, 0.11, 0.11, 0.11)).lasts()).isFalse();
        assertThat(lasting(days(0.11, 0.11, 0.11, 0.11, 0.11, 0.11, 0.11)).lasts())
                .isTrue();
    }

    @Test
    void dayNearUsualBreaksTheRow() {
        assertThat(lasting(days(0.2, 0.2, 0.2, 0.2)).lasts()).isTrue();
        assertThat(lasting(days(0.2, 0.2, 0.07, 0.2, 0.2)).lasts()).isFalse();
    }

    @Test
    void growthIsQuickAndALeapIsNot() {
        double[] ramp = new double[18];
        double[] leap = new double[18];
        for (int i = 0; i < 18; i++) {
            ramp[i] = 0.08 + 0.02 * i;
            leap[i] = i < 8 ? 0.0 : 0.32;
        }
        assertThat(lasting(ramp).isQuick()).isTrue();
        assertThat(lasting(leap).isQuick()).isFalse();
        // Two scales in nine hours are growth enough once the sum is full.
        assertThat(lasting(ramp).lasts()).isTrue();
    }

    @Test
    void sixLargeHoursAreQuickAndFiveAreNot() {
        double[] known = new double[24];
        Arrays.fill(known, 20, 24, 0.36);
        assertThat(lasting(known).isQuick()).isTrue();
        known = new double[24];
        Arrays.fill(known, 21, 24, 0.36);
        assertThat(lasting(known).isQuick()).isFalse();
    }

    @Test
    void nothingKnownIsNotAway() {
        assertThat(lasting().isAway()).isFalse();
        assertThat(lasting().isQuick()).isFalse();
        assertThat(lasting().lasts()).isFalse();
    }

    /** A day before of which six hours are known says something, one of five nothing. */
    @Test
    void sixHoursOfADaySayWhereItStood() {
        double[] known = new double[30];
        Arrays.fill(known, 0.26);
        assertThat(lasting(known).staysForDays()).isTrue();
        assertThat(lasting(Arrays.copyOf(known, 29)).staysForDays()).isFalse();
        // The last day is asked for any hour at all, of no more than 24: the slack is 0.075.
        assertThat(lasting(0.076).isAway()).isTrue();
        assertThat(lasting(0.074).isAway()).isFalse();
        assertThat(lasting(days(9, 0.074)).isAway()).isFalse();
    }

    /** Medians of six hours, three times: each condition of growing on, by itself. */
    @ParameterizedTest
    @CsvSource({
        "0.08, 0.20, 0.31, true",
        "0.07, 0.20, 0.31, false",
        "0.08, 0.14, 0.31, false",
        "0.08, 0.25, 0.31, false",
        "0.08, 0.18, 0.29, false",
        "0, 0, 0.351, true",
        "0, 0, 0.349, false"
    })
    void growsAndGrowsOrIsLarge(double first, double second, double third, boolean quick) {
        double[] known = new double[18];
        Arrays.fill(known, 0, 6, first);
        Arrays.fill(known, 6, 12, second);
        Arrays.fill(known, 12, 18, third);
        assertThat(lasting(known).isQuick()).isEqualTo(quick);
    }

    /** Medians of nine hours, twice, where the sum is over its limit. */
    @ParameterizedTest
    @CsvSource({"0.08, 0.21, true", "0.07, 0.21, false", "0.08, 0.19, false", "0.12, 0.21, false"})
    void growsFromSomeHoursToTheNext(double before, double now, boolean lasts) {
        double[] known = new double[18];
        Arrays.fill(known, 0, 9, before);
        Arrays.fill(known, 9, 18, now);
        assertThat(lasting(known).lasts()).isEqualTo(lasts);
    }

    /** More than half of the last 25 hours, and all of them known. */
    @Test
    void largeOverTwoTides() {
        double[] known = new double[40];
        Arrays.fill(known, 27, 40, 0.36);
        assertThat(lasting(known).isQuickOverTides()).isTrue();
        known[27] = 0;
        assertThat(lasting(known).isQuickOverTides()).isFalse();
        double[] few = new double[24];
        Arrays.fill(few, 0.36);
        assertThat(lasting(few).isQuickOverTides()).isFalse();
    }

    /** Each limit itself is not beyond it: slack 0.75, scale 1. */
    @Test
    void limitsAreNotBeyondThemselves() {
        assertThat(whole(hours(1, 0.75)).isAway()).isFalse();
        assertThat(whole(hours(6, 3.5)).isQuick()).isFalse();
        assertThat(whole(hours(25, 3.5)).isQuickOverTides()).isFalse();
        assertThat(whole(hours(24, 3)).staysForDays()).isFalse();
        assertThat(whole(hours(48, 2.5)).staysForDays()).isFalse();
        assertThat(whole(hours(48, 0.75)).staysForDays()).isFalse();
        // Seven days just over the slack are none, and neither is an eighth.
        assertThat(whole(hours(7 * 24, 1)).staysForDays()).isFalse();
        assertThat(whole(hours(8 * 24, 1)).staysForDays()).isFalse();
        assertThat(whole(hours(7 * 24, Math.nextUp(1.0))).staysForDays()).isTrue();
        assertThat(whole(steps(9, 0.75, 2.5)).lasts()).isFalse();
        assertThat(whole(steps(9, 1.5, 2.5)).lasts()).isFalse();
        assertThat(whole(steps(9, 0.875, 2)).lasts()).isFalse();
        assertThat(whole(steps(9, 0.875, 2.5)).lasts()).isTrue();
        assertThat(whole(steps(6, 0.75, 2, 3.25)).isQuick()).isFalse();
        assertThat(whole(steps(6, 1, 1.7, 3.25)).isQuick()).isEqualTo(1.7 - 1 > 0.7);
        assertThat(whole(steps(6, 0.875, 2, 3)).isQuick()).isFalse();
        assertThat(whole(steps(6, 0.875, 2, 3.25)).isQuick()).isTrue();
    }

    private static Lasting whole(double... known) {
        return new Lasting(known, 1, 0.75);
    }

    private static double[] hours(int count, double value) {
        double[] known = new double[count];
        Arrays.fill(known, value);
        return known;
    }

    private static double[] steps(int each, double... values) {
        double[] known = new double[each * values.length];
        for (int i = 0; i < known.length; i++) {
            known[i] = values[i / each];
        }
        return known;
    }
}
