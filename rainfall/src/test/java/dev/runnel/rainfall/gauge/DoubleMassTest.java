package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class DoubleMassTest {
    /** Searcy and Hardison (1960), US Geological Survey Water-Supply Paper 1541-B, table 1: inches, 1926 to 1942. */
    private static final double[] MEAN_A = {
        39.75, 29.57, 42.01, 41.39, 31.55, 55.54, 48.11, 39.85, 45.40, 44.89, 32.64, 45.87, 46.05, 49.76, 47.26, 37.07,
        45.89
    };

    private static final double[] STATION_X = {
        32.85, 28.08, 33.51, 29.58, 23.76, 58.39, 46.24, 30.34, 46.78, 38.06, 42.82, 37.93, 50.67, 46.85, 50.52, 34.38,
        47.60
    };

    private static final DoubleMass STATION = DoubleMass.of(STATION_X, MEAN_A);

    @Test
    void runningSumsAgreeWithTheTable() {
        assertThat(STATION.cumulativeReference()[16]).isCloseTo(722.60, within(0.005));
        assertThat(STATION.cumulativeGauge()[16]).isCloseTo(678.36, within(0.005));
        assertThat(STATION.ratio()).isCloseTo(0.9387766399114309, within(1e-12));
    }

    /** Recomputed elsewhere: the least squares of two slopes are at 1930. */
    @Test
    void findsTheBreakOf1930() {
        DoubleMass.Break found = STATION.bestBreak(3);
        assertThat(found.periodsBefore()).isEqualTo(5);
        assertThat(found.slopeBefore()).isCloseTo(0.8019753622401911, within(1e-12));
        assertThat(found.slopeAfter()).isCloseTo(0.9856036260286442, within(1e-12));
        assertThat(found.factor()).isCloseTo(1.2289699564778607, within(1e-12));
        assertThat(found.squaresLeft()).isCloseTo(397.34167589298625, within(1e-9));
        assertThat(STATION.breakAfter(8).squaresLeft()).isCloseTo(480.3391517034712, within(1e-9));
        assertThat(found).hasToString("Break[after 5 periods, slope 0.802 then 0.9856]");
    }

    @Test
    void shufflingTellsABreakFromChance() {
        // 20,000 shuffles in NumPy give 0.090 for this station; 2,000 here have a standard error of 0.006.
        assertThat(STATION.chanceOfBreak(3, 2000, 1))
                .isCloseTo(0.090, within(0.02))
                .isEqualTo(STATION.chanceOfBreak(3, 2000, 1));
        double[] broken = MEAN_A.clone();
        for (int i = 0; i < 7; i++) {
            broken[i] *= 0.7;
        }
        assertThat(DoubleMass.of(broken, MEAN_A).bestBreak(3).periodsBefore()).isEqualTo(7);
        assertThat(DoubleMass.of(broken, MEAN_A).chanceOfBreak(3, 999, 1)).isLessThan(0.01);
        double[] even = {8, 11, 9, 10, 12, 9, 11, 10, 8, 12, 11, 9};
        double[] ten = new double[12];
        Arrays.fill(ten, 10);
        assertThat(DoubleMass.of(even, ten).chanceOfBreak(3, 999, 1)).isGreaterThan(0.2);
    }

    /** SciPy spearmanr of the same lists. */
    @Test
    void rankCorrelation() {
        assertThat(STATION.rankCorrelation()).isCloseTo(0.8333333333333335, within(1e-12));
        assertThat(DoubleMass.of(new double[] {1, 1, 1}, new double[] {1, 2, 3}).rankCorrelation())
                .isZero();
    }

    @Test
    void leavesOutWhatOneOfThemLacks() {
        double gap = Double.NaN;
        DoubleMass mass = DoubleMass.of(new double[] {1, gap, 3, 4}, new double[] {2, 5, gap, 8});
        assertThat(mass.periods()).isEqualTo(2);
        assertThat(mass.ratio()).isEqualTo(0.5);
        assertThat(mass).hasToString("DoubleMass[2 periods, ratio 0.5, 2 left out]");
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> DoubleMass.of(new double[] {1}, new double[] {1, 2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("referenceMm must have length 1, was 2");
        assertThatThrownBy(() -> DoubleMass.of(new double[] {1, -2}, new double[] {1, 2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gaugeMm at index 1 must be 0 or greater and finite (mm), was -2");
        assertThatThrownBy(() -> DoubleMass.of(new double[] {1}, new double[] {0}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of referenceMm must be greater than 0 and finite (mm), was 0");
        assertThatThrownBy(() -> STATION.bestBreak(9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("leastPeriods must be at most half of the 17 periods, 8, was 9");
        assertThatThrownBy(() -> STATION.chanceOfBreak(3, 9, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> STATION.breakAfter(17)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void tooManyShufflesOfTooManyPeriodsAreRefused() {
        double[] daily = new double[10_892];
        java.util.Arrays.setAll(daily, i -> 1 + i % 7);
        DoubleMass mass = DoubleMass.of(daily, daily);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> mass.chanceOfBreak(10, 999, 1))
                .withMessage("shuffles must be at most 16 for 10892 periods, was 999; longer periods, such as months,"
                        + " tell as much");
    }
}
