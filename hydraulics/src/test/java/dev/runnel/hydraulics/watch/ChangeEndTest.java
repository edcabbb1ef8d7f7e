package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When a change is over, since when, and what is the same again, beside each limit. */
class ChangeEndTest {
    private static final SiteBaseline BASELINE = KnownHours.baseline(hour -> {});
    private static final int R = ChangeSeries.R;
    private static final int D = ChangeSeries.D;
    private static final int Q = Quantity.FLOW.ordinal();
    private static final long NOW = 300;

    /** Where velocity at its depth, depth, velocity and flow stand, in scales; NaN where nothing is known. */
    private static double[] at(double r, double d, double u, double q) {
        return new double[] {r, d, u, q};
    }

    private static ChangeSeries series(SiteBaseline baseline, LongFunction<double[]> scales) {
        ChangeSeries series = new ChangeSeries(baseline);
        for (long block = 0; block <= NOW; block++) {
            double[] row = scales.apply(block).clone();
            for (int c = 0; c < row.length; c++) {
                row[c] *= BASELINE.scale[c];
            }
            series.blocks.add(block, row);
        }
        return series;
    }

    private static ChangeSeries series(LongFunction<double[]> scales) {
        return series(BASELINE, scales);
    }

    /** A change of one quantity that was told long ago. */
    private static FollowedChange change(int channel, int sign) {
        FollowedChange change = new FollowedChange();
        change.begin(channel, sign, 20, 30);
        return change;
    }

    private static Track track(FindingName name) {
        return new Track(1, name, 0, 0);
    }

    private static boolean isOver(FollowedChange change, LongFunction<double[]> scales) {
        return isOver(change, series(scales), NOW);
    }

    private static boolean isOver(FollowedChange change, ChangeSeries series, long lastDry) {
        return ChangeEnd.isOver(series, change, NOW, lastDry, track(FindingName.DEPTH_DRIFT));
    }

    private static boolean isOver(FollowedChange change, double r, double d, double u, double q) {
        return isOver(change, block -> at(r, d, u, q));
    }

    @Test
    void overIsWhatStandsWellWithinTheSlackWithTheOthersAboutIt() {
        for (int side : new int[] {1, -1}) {
            assertThat(isOver(change(D, 1), 0, side * 0.29, 0, 0)).isTrue();
            assertThat(isOver(change(D, 1), 0, side * 0.31, 0, 0)).isFalse();
            assertThat(isOver(change(D, 1), side * 0.89, 0, side * 0.89, side * -0.89))
                    .isTrue();
            assertThat(isOver(change(D, 1), side * 0.91, 0, 0, 0)).isFalse();
            assertThat(isOver(change(D, 1), 0, 0, 0, side * 0.91)).isFalse();
            assertThat(isOver(change(R, -1), side * 0.29, 0.89, 0, 0)).isTrue();
            assertThat(isOver(change(R, -1), side * 0.31, 0.89, 0, 0)).isFalse();
        }
    }

    /** The middle of the last sixteen blocks decides. */
    @Test
    void twoDaysMustBeAsUsual() {
        assertThat(isOver(change(D, 1), block -> at(0, block > NOW - 9 ? 0 : 2, 0, 0)))
                .isTrue();
        assertThat(isOver(change(D, 1), block -> at(0, block > NOW - 8 ? 0 : 2, 0, 0)))
                .isFalse();
        assertThat(isOver(change(D, 1), block -> at(0, block > NOW - 16 ? 0 : 9, 0, 0)))
                .isTrue();
    }

    @Test
    void nothingIsOverOnTheDayOnWhichItWasTold() {
        FollowedChange change = change(D, 1);
        change.spellTold = NOW - 8;
        assertThat(isOver(change, 0, 0, 0, 0)).isTrue();
        change.spellTold = NOW - 7;
        assertThat(isOver(change, 0, 0, 0, 0)).isFalse();
    }

    @Test
    void whatStoodFarAwayIsOverThoughTheSiteWanderedALittle() {
        FollowedChange far = change(D, 1);
        far.largest = 4;
        assertThat(isOver(far, 0, 0.59, 0, 0)).isTrue();
        assertThat(isOver(far, 0, 0.61, 0, 0)).isFalse();
        far.largest = 40;
        assertThat(isOver(far, 0, 0.74, 0, 0)).isTrue();
        assertThat(isOver(far, 0, 0.76, 0, 0)).isFalse();
        far.origin[D] = 1e-9;
        assertThat(isOver(far, 0, 0.29, 0, 0)).isTrue();
        assertThat(isOver(far, 0, 0.31, 0, 0)).isFalse();
    }

    /** Within a season depth, velocity and flow say nothing of it, and where it stood before is its usual. */
    @Test
    void withinASeasonTheQuantityItselfDecides() {
        FollowedChange change = change(R, -1);
        change.origin[D] = 2 * BASELINE.scale[D];
        change.origin[R] = 0.5 * BASELINE.scale[R];
        assertThat(isOver(change, 0.79, 5, -5, 5)).isTrue();
        assertThat(isOver(change, 0.21, 5, -5, 5)).isTrue();
        assertThat(isOver(change, 0.81, 0, 0, 0)).isFalse();
        assertThat(isOver(change, 0.19, 0, 0, 0)).isFalse();
    }

    @Test
    void threeKnownBlocksOfItAreAsked() {
        assertThat(isOver(change(R, -1), block -> at(block > NOW - 3 ? 0 : Double.NaN, 0, 0, 0)))
                .isTrue();
        assertThat(isOver(change(R, -1), block -> at(block > NOW - 2 ? 0 : Double.NaN, 0, 0, 0)))
                .isFalse();
        assertThat(isOver(change(R, -1), block -> at(0, 0, Double.NaN, Double.NaN)))
                .isTrue();
    }

    /** Three dry blocks are, too, unless it has been wet for more than ten days since the last one and since it was told. */
    @Test
    void rainIsWaitedForTenDaysAtMost() {
        ChangeSeries wet = series(block -> at(0, block > NOW - 2 ? 0 : Double.NaN, Double.NaN, Double.NaN));
        ChangeSeries dry = series(block -> at(0, block > NOW - 3 ? 0 : Double.NaN, Double.NaN, Double.NaN));
        assertThat(isOver(change(R, -1), dry, NOW)).isTrue();
        assertThat(isOver(change(R, -1), wet, NOW - 80)).isFalse();
        assertThat(isOver(change(R, -1), wet, NOW - 81)).isTrue();
        FollowedChange late = change(R, -1);
        late.openedAt = NOW - 80;
        assertThat(isOver(late, wet, NOW - 200)).isFalse();
        late.openedAt = NOW - 81;
        assertThat(isOver(late, wet, NOW - 200)).isTrue();
        SiteBaseline without = KnownHours.baseline(hour -> {});
        without.scale[D] = 0;
        assertThat(isOver(change(R, -1), series(without, block -> at(0, Double.NaN, Double.NaN, Double.NaN)), NOW))
                .as("no depth was learned")
                .isTrue();
    }

    /** Blocks until what came and went so often is over, of a site that is as usual from block 100 on. */
    private static long quietUntilOver(FindingName name, int returns, boolean season, long disturbed) {
        Track track = track(name);
        for (int i = 0; i < returns; i++) {
            track.close(0);
            track.comeBack(0);
        }
        FollowedChange change = change(R, -1);
        change.origin[D] = season ? 1e-9 : 0;
        ChangeSeries series = new ChangeSeries(BASELINE);
        for (long block = 0; block <= NOW; block++) {
            double r = block < 100 ? -3 : 0;
            series.blocks.add(block, r * BASELINE.scale[R], 0, 0, 0);
            // More than half of two days away: what was quiet begins anew.
            if (block == disturbed) {
                for (int c = 0; c < 9; c++) {
                    series.blocks.dropLast();
                }
                for (long c = block - 8; c <= block; c++) {
                    series.blocks.add(c, -3 * BASELINE.scale[R], 0, 0, 0);
                }
            }
            if (ChangeEnd.isOver(series, change, block, block, track)) {
                return block;
            }
        }
        return -1;
    }

    @Test
    void whatCameAndWentMustBeQuietForTwiceAsLongEachTime() {
        long once = quietUntilOver(FindingName.SEDIMENT, 0, false, -1);
        // The middle of sixteen blocks is as usual when nine of them are.
        assertThat(once).isEqualTo(108);
        assertThat(quietUntilOver(FindingName.SEDIMENT, 1, false, -1)).isEqualTo(once + 16);
        assertThat(quietUntilOver(FindingName.SEDIMENT, 2, false, -1)).isEqualTo(once + 48);
        assertThat(quietUntilOver(FindingName.SEDIMENT, 3, false, -1)).isEqualTo(once + 112);
        assertThat(quietUntilOver(FindingName.SEDIMENT, 7, false, -1)).isEqualTo(once + 112);
        assertThat(quietUntilOver(FindingName.HELD_UP, 7, false, -1)).isEqualTo(once + 16);
        assertThat(quietUntilOver(FindingName.SEDIMENT, 7, true, -1)).isEqualTo(once);
        assertThat(quietUntilOver(FindingName.SEDIMENT, 1, false, 120)).isEqualTo(120 + 9 + 16);
    }

    private static long lastAway(int sign, LongFunction<double[]> scales) {
        return ChangeEnd.lastAway(series(scales), change(D, sign), NOW) / ChangeSeries.time(1);
    }

    @Test
    void itsEndIsThatOfTheLastBlockThatStoodAway() {
        for (int sign : new int[] {1, -1}) {
            assertThat(lastAway(sign, block -> at(0, block <= 250 ? sign * 0.76 : sign * 0.74, 0, 0)))
                    .isEqualTo(251);
            assertThat(lastAway(sign, block -> at(0, block <= 250 ? sign * 0.74 : 0, 0, 0)))
                    .isEqualTo(NOW + 1);
            assertThat(lastAway(sign, block -> at(0, block <= 250 ? -sign * 2 : 0, 0, 0)))
                    .isEqualTo(NOW + 1);
        }
        assertThat(lastAway(1, block -> at(0, 2, 0, 0))).isEqualTo(NOW + 1);
    }

    @Test
    void whatIsNotKnownAfterItBelongsToIt() {
        double n = Double.NaN;
        assertThat(lastAway(1, block -> block <= 250 ? at(0, 2, 0, 0) : block <= 260 ? at(n, n, n, n) : at(0, 0, 0, 0)))
                .isEqualTo(261);
        // A block of which something is known is known.
        for (int c : new int[] {R, ChangeSeries.U, Q}) {
            double[] only = at(n, n, n, n);
            only[c] = 0;
            assertThat(lastAway(1, block -> block <= 250 ? at(0, 2, 0, 0) : block <= 260 ? only : at(0, 0, 0, 0)))
                    .isEqualTo(251);
        }
    }

    @Test
    void onlyBlocksSinceItBeganCount() {
        assertThat(lastAway(1, block -> at(0, block <= 20 ? 2 : 0, 0, 0))).isEqualTo(21);
        assertThat(lastAway(1, block -> at(0, block <= 19 ? 2 : 0, 0, 0))).isEqualTo(NOW + 1);
        FollowedChange within = change(D, 1);
        within.origin[D] = BASELINE.scale[D];
        assertThat(ChangeEnd.lastAway(series(block -> at(0, block <= 250 ? 1.76 : 1.74, 0, 0)), within, NOW))
                .isEqualTo(ChangeSeries.time(251));
    }

    /** One and a half times its length, at least five and at most twenty-one days; water held up always twenty-one. */
    @ParameterizedTest
    @CsvSource({
        "8, SEDIMENT, 40",
        "26, SEDIMENT, 40",
        "40, SEDIMENT, 60",
        "112, SEDIMENT, 168",
        "400, SEDIMENT, 168",
        "8, HELD_UP, 168"
    })
    void itIsTheSameAgainWithinATimeThatGrowsWithIt(long length, FindingName name, long window) {
        FollowedChange change = change(R, -1);
        change.closedAt = change.start + length;
        assertThat(ChangeEnd.isReturn(change, name, R, -1, change.closedAt + window))
                .isTrue();
        assertThat(ChangeEnd.isReturn(change, name, R, -1, change.closedAt + window + 1))
                .isFalse();
        assertThat(ChangeEnd.isReturn(change, name, R, 1, change.closedAt + 1)).isFalse();
    }

    @Test
    void waterHeldUpWithinASeasonReturnsWithinTheTimeOfOthers() {
        FollowedChange change = change(R, -1);
        change.closedAt = change.start + 8;
        change.origin[D] = 1;
        assertThat(ChangeEnd.isReturn(change, FindingName.HELD_UP, R, -1, change.closedAt + 40))
                .isTrue();
        assertThat(ChangeEnd.isReturn(change, FindingName.HELD_UP, R, -1, change.closedAt + 41))
                .isFalse();
        assertThat(ChangeEnd.isReturn(change, FindingName.HELD_UP, D, 1, change.closedAt + 1))
                .isFalse();
    }

    /** Which way each quantity moves in more water and in water held up, and the other way round in less and in released. */
    @ParameterizedTest
    @CsvSource({
        "MORE_WATER, 0, 1, 1, 1",
        "LESS_WATER, 0, -1, -1, -1",
        "HELD_UP, -1, 1, -1, 0",
        "RELEASED, 1, -1, 1, 0",
        "SEDIMENT, 0, 0, 0, 0"
    })
    void anotherSideOfTheSameWaterIsTheSame(FindingName name, int r, int d, int u, int q) {
        int[] ways = {r, d, u, q};
        for (int quantity = 0; quantity < Quantity.COUNT; quantity++) {
            for (int direction : new int[] {1, -1}) {
                FollowedChange change = change((quantity + 1) % Quantity.COUNT, direction);
                change.closedAt = change.start + 100;
                assertThat(ChangeEnd.isReturn(change, name, quantity, direction, change.closedAt + 1))
                        .as("%s, quantity %s, %s", name, quantity, direction)
                        .isEqualTo(ways[quantity] == direction);
            }
        }
    }
}
