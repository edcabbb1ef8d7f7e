package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Blocks whose medians are known, and the scale that follows from them by hand. */
class BlockScaleTest {
    private static final double GAP = Double.NaN;
    private static final double TIGHT = 1e-12;

    private static long[] hours(int count) {
        long[] hours = new long[count];
        Arrays.setAll(hours, i -> 480_000 + i);
        return hours;
    }

    /** Residuals that are the same for some hours and then of the other sign. */
    private static double[] turning(int count, int length, double size) {
        double[] residuals = new double[count];
        Arrays.setAll(residuals, i -> i / length % 2 == 0 ? size : -size);
        return residuals;
    }

    @Test
    void mediansIgnoreWhatIsMissing() {
        assertThat(Medians.of(3, GAP, 1, 2)).isEqualTo(2);
        assertThat(Medians.of(4, 1, 2, 3)).isEqualTo(2.5);
        assertThat(Medians.of()).isNaN();
        assertThat(Medians.of(GAP)).isNaN();
        assertThat(Medians.known(GAP, 2, GAP, 1)).containsExactly(2, 1);
        assertThat(Medians.quantile(new double[] {1, 2, 4}, 0.75)).isEqualTo(3);
        assertThat(Medians.quantile(new double[0], 0.75)).isNaN();
        // Distances from 3: 2, 1, 0, 1, 4.
        assertThat(Medians.scatter(1, 2, 3, GAP, 4, 7)).isCloseTo(1 / 0.6744897501960817, within(TIGHT));
        assertThat(Medians.scatter()).isNaN();
        assertThat(Medians.variance(1, GAP, 4)).isCloseTo(4.5, within(TIGHT));
        assertThat(Medians.variance(1, GAP)).isNaN();
    }

    /** Hours 4 to 13 in blocks of six: two hours, six, and two; three are needed. */
    @Test
    void blocksOfEnoughHours() {
        long[] hours = {4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 30, 31, 32};
        double[] residuals = {9, 9, 1, 2, GAP, 4, GAP, GAP, 9, 9, 5, 6, 7};
        BlockScale.Blocks blocks = BlockScale.Blocks.of(hours, residuals, 6, 3);
        assertThat(blocks.numbers).containsExactly(1, 5);
        assertThat(blocks.medians).containsExactly(2, 6);
        assertThat(BlockScale.Blocks.of(new long[] {-3, -2, -1, 0, 1}, new double[] {1, 2, 3, 8, 8}, 6, 2).numbers)
                .as("hours before 1970 too")
                .containsExactly(-1, 0);
    }

    /** About 0: products of neighbours over squares; a gap parts what does not follow. */
    @Test
    void correlationOfNeighbours() {
        double[] values = {1, 2, -1, -1, 3, 1};
        long[] hours = {0, 6, 12, 18, 24, 30};
        assertThat(BlockScale.Blocks.of(hours, values, 6, 1).correlation(0))
                .isCloseTo((2 - 2 + 1 - 3 + 3) / 5.0 / (17 / 6.0), within(TIGHT));
        // About 1: 0, 1, -2, -2, 2, 0.
        assertThat(BlockScale.Blocks.of(hours, values, 6, 1).correlation(1))
                .isCloseTo((0 - 2 + 4 - 4 + 0) / 5.0 / (13 / 6.0), within(TIGHT));
        long[] parted = {0, 6, 12, 18, 36, 42};
        assertThat(BlockScale.Blocks.of(parted, values, 6, 1).correlation(0))
                .isCloseTo((2 - 2 + 1 + 3) / 4.0 / (17 / 6.0), within(TIGHT));
        long[] few = {0, 6, 12, 24, 36, 42};
        assertThat(BlockScale.Blocks.of(few, values, 6, 1).correlation(0)).isZero();
        assertThat(BlockScale.Blocks.of(hours, new double[6], 6, 1).correlation(0))
                .isZero();
    }

    /** Without hours: what sites usually show, twice a day's for a block, or the floor of a change over 0.75. */
    @ParameterizedTest
    @CsvSource({"DEPTH, 0.19333333333333333", "VELOCITY, 0.204", "FLOW, 0.32"})
    void aSiteOfWhichNothingIsKnown(Quantity quantity, double scale) {
        BlockScale learnt = BlockScale.learn(quantity, new long[0], new double[0]);
        assertThat(learnt.centre).isZero();
        assertThat(learnt.scale).isCloseTo(scale, within(TIGHT));
    }

    /** Of the velocity at a depth the hours themselves tell what is usual: without one there is no scale, and it is not watched. */
    @Test
    void aVelocityWithoutAnHourHasNoScale() {
        assertThat(BlockScale.learn(Quantity.VELOCITY_AT_DEPTH, hours(3), new double[] {GAP, GAP, GAP}).scale)
                .isNaN();
        assertThat(BlockScale.learn(Quantity.VELOCITY_AT_DEPTH, hours(3), new double[3]).scale)
                .isCloseTo(0.112, within(TIGHT));
    }

    /** Blocks of +0.5 and -0.5 in turn: no correlation, no scatter of days. */
    @Test
    void blocksThatTurnEachTime() {
        BlockScale learnt = BlockScale.learn(Quantity.DEPTH, hours(240), turning(240, 6, 0.5));
        double robust = 0.5 / 0.6744897501960817;
        double variance = (robust * robust + 0.25 * 40 / 39) / 2;
        double shrunk = (12 * 4 * 0.05 * 0.05 + 9 * variance) / (12 + 9);
        assertThat(learnt.centre).isZero();
        assertThat(learnt.scale).isCloseTo(1.7 * Math.sqrt(shrunk), within(TIGHT));
    }

    /** Days of +0.5 and -0.5 in turn: of 39 pairs of blocks 30 are alike. */
    @Test
    void daysThatTurn() {
        BlockScale learnt = BlockScale.learn(Quantity.FLOW, hours(240), turning(240, 24, 0.5));
        double robust = 0.5 / 0.6744897501960817;
        double variance = (robust * robust + 0.25 * 40 / 39) / 2;
        double phi = (30 - 9) / 39.0;
        double longRun = variance * (1 + phi) / (1 - phi);
        assertThat(longRun).isGreaterThan(4 * 0.25 * 10 / 9);
        double shrunk = (12 * 4 * 0.08 * 0.08 + 9 * longRun) / (12 + 9);
        assertThat(learnt.scale).isCloseTo(1.7 * Math.sqrt(shrunk), within(TIGHT));
    }

    /** The velocity at a depth scatters from hour to hour: by 0.9 of that from day to day, if it is more than usual. */
    @Test
    void hoursThatScatter() {
        double[] residuals = turning(240, 1, 0.3);
        BlockScale learnt = BlockScale.learn(Quantity.VELOCITY_AT_DEPTH, hours(240), residuals);
        double usual = 0.9 * 0.3 / 0.6744897501960817;
        // Each block of six hours, and each day, has as many of one sign as of the other: the median is 0.
        double shrunk = (12 * 4 * usual * usual) / (12 + 9);
        assertThat(learnt.scale).isCloseTo(1.4 * Math.sqrt(shrunk), within(TIGHT));
        assertThat(BlockScale.learn(Quantity.VELOCITY, hours(240), residuals).scale)
                .as("of no other quantity")
                .isCloseTo(0.145 / 0.75, within(TIGHT));
    }

    /** Two days and a half: too few to tell what a day scatters, and blocks enough to tell their own. */
    @Test
    void fewDays() {
        BlockScale learnt = BlockScale.learn(Quantity.DEPTH, hours(48), turning(48, 24, 2));
        double robust = 2 / 0.6744897501960817;
        double variance = (robust * robust + 4 * 8 / 7.0) / 2;
        double phi = (6 - 1) / 7.0;
        double longRun = variance * (1 + phi) / (1 - phi);
        double shrunk = (12 * 4 * 0.05 * 0.05 + longRun) / (12 + 1);
        assertThat(learnt.scale).isCloseTo(1.7 * Math.sqrt(shrunk), within(TIGHT));
        BlockScale.Blocks none = BlockScale.Blocks.of(hours(7), new double[7], 24, 8);
        assertThat(none.medians).isEmpty();
    }
}
