package dev.runnel.timeseries.baseline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DayCurveTest {
    private static final int DAYS = 28;

    private static double truth(double hour, boolean rest) {
        double angle = 2 * Math.PI * hour / 24;
        return 2 + 0.5 * Math.sin(angle) - 0.2 * Math.cos(3 * angle) + (rest ? 0.3 + 0.1 * Math.sin(2 * angle) : 0);
    }

    private static DayCurve fitted(double[] values) {
        double[] hours = new double[24 * DAYS];
        boolean[] rest = new boolean[24 * DAYS];
        for (int i = 0; i < hours.length; i++) {
            hours[i] = i % 24 + 0.5;
            rest[i] = i / 24 % 7 >= 5;
        }
        return DayCurve.fit(hours, rest, values);
    }

    private static double[] values() {
        double[] values = new double[24 * DAYS];
        for (int i = 0; i < values.length; i++) {
            values[i] = truth(i % 24 + 0.5, i / 24 % 7 >= 5);
        }
        return values;
    }

    @Test
    void findsACurveOfItsOwnKind() {
        DayCurve curve = fitted(values());
        for (double hour : new double[] {0, 3.3, 12, 23.9}) {
            // The ridge of 0.3 draws a figure by 0.3/(n/2) of itself: 0.001 on workdays, 0.01 on the 192 h of rest.
            assertThat(curve.value(hour, false)).isCloseTo(truth(hour, false), within(0.004));
            assertThat(curve.value(hour, true)).isCloseTo(truth(hour, true), within(0.006));
        }
        assertThat(curve.explained()).isGreaterThan(0.999);
        assertThat(curve.count()).isEqualTo(24 * DAYS);
        assertThat(DayCurve.parse(curve.toText())).isEqualTo(curve);
    }

    /** A seventh harmonic is nothing to four and a course of its own to eight. */
    @Test
    void moreHarmonicsFollowASteeperDay() {
        double[] hours = new double[24 * DAYS];
        double[] values = values();
        for (int i = 0; i < hours.length; i++) {
            hours[i] = i % 24 + 0.5;
            values[i] += 0.4 * Math.cos(2 * Math.PI * 7 * hours[i] / 24);
        }
        boolean[] rest = new boolean[hours.length];
        for (int i = 0; i < hours.length; i++) {
            rest[i] = i / 24 % 7 >= 5;
        }
        DayCurve four = DayCurve.fit(hours, rest, values, 4);
        DayCurve eight = DayCurve.fit(hours, rest, values, 8);
        double steep = 0.4 * Math.cos(2 * Math.PI * 7 * 1.6 / 24);
        assertThat(eight.value(1.6, false)).isCloseTo(truth(1.6, false) + steep, within(0.01));
        assertThat(four.value(1.6, false)).isCloseTo(truth(1.6, false), within(0.1));
        assertThat(Math.abs(steep)).isGreaterThan(0.3);
        assertThat(four).isEqualTo(DayCurve.fit(hours, rest, values)).isNotEqualTo(eight);
        assertThat(DayCurve.parse(eight.toText())).isEqualTo(eight);
        for (int harmonics : new int[] {0, 12}) {
            assertThatExceptionOfType(IllegalArgumentException.class)
                    .isThrownBy(() -> DayCurve.fit(hours, rest, values, harmonics))
                    .withMessage("harmonics must be in [1, 11], was " + harmonics);
        }
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> DayCurve.fit(new double[21], new boolean[21], new double[21], 8))
                .withMessage("number of values must be at least 22, was 21");
    }

    /** Days of rest have two harmonics more, however few the day has. */
    @Test
    void oneHarmonicOfTheDayLeavesTwoToDaysOfRest() {
        double[] hours = new double[24 * DAYS];
        boolean[] rest = new boolean[hours.length];
        double[] values = new double[hours.length];
        for (int i = 0; i < hours.length; i++) {
            hours[i] = i % 24 + 0.5;
            rest[i] = i / 24 % 7 >= 5;
            values[i] = onlyOne(hours[i], rest[i]);
        }
        DayCurve curve = DayCurve.fit(hours, rest, values, 1);
        // Quarters of an hour come from a table, others are computed.
        for (double hour : new double[] {0, 3.25, 4.7, 7.5, 23.9}) {
            assertThat(curve.value(hour, false)).isCloseTo(onlyOne(hour, false), within(0.004));
            assertThat(curve.value(hour, true)).isCloseTo(onlyOne(hour, true), within(0.006));
            assertThat(curve.value(Math.nextUp(hour), true)).isCloseTo(curve.value(hour, true), within(1e-14));
        }
    }

    private static double onlyOne(double hour, boolean rest) {
        double angle = 2 * Math.PI * hour / 24;
        return 2 + 0.5 * Math.sin(angle) + (rest ? 0.3 + 0.2 * Math.cos(2 * angle) - 0.1 * Math.sin(2 * angle) : 0);
    }

    @Test
    void wildHoursBendItLittle() {
        double[] wild = values();
        for (int i = 7; i < wild.length; i += 53) {
            wild[i] += 25;
        }
        assertThat(fitted(wild).value(7.5, false)).isCloseTo(truth(7.5, false), within(0.05));
    }

    @Test
    void largeValuesKeepToNumbersAndLargerOnesAreRefused() {
        double[] large = values();
        for (int i = 0; i < large.length; i++) {
            large[i] = (i % 2 == 0 ? 1 : -1) * 1e100;
        }
        DayCurve curve = fitted(large);
        assertThat(curve.value(7.5, true)).isFinite();
        assertThat(curve.scatter()).isFinite();
        assertThat(curve.explained()).isBetween(0.0, 1.0);
        large[5] = 1e200;
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> fitted(large))
                .withMessageStartingWith("values[5] must be in [-1");
    }

    @Test
    void refusesWhatIsNoDay() {
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> fitted(values()).value(24, false))
                .withMessage("hour must be in [0, 24) h, was 24");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> DayCurve.fit(new double[3], new boolean[3], new double[3]))
                .withMessageContaining("number of values");
        double[] missing = values();
        missing[5] = Double.NaN;
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> fitted(missing))
                .withMessageContaining("values[5]");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> DayCurve.parse("day-curve/1 figures=1.0, count=20 scatter=0.1 explained=0.5"))
                .withMessageContaining("figures");
    }
}
