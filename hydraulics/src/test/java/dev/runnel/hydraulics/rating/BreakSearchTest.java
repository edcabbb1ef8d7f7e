package dev.runnel.hydraulics.rating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Sums of squares whose least place is known. */
class BreakSearchTest {
    private static final double[] NINE = {9, 1, 5, 2, 8, 3, 7, 4, 6};

    private static double one(double target) {
        return new BreakSearch(NINE, b -> (b[0] - target) * (b[0] - target)).best(1)[0];
    }

    /** Three of nine gaugings stay on either side: breaks from 3, which counts below, to what leaves 7 above. */
    @Test
    void eachSegmentHoldsThree() {
        assertThat(one(5.3)).isCloseTo(5.3, within(1e-9));
        assertThat(one(2)).isEqualTo(3);
        assertThat(one(9.5)).isLessThan(7).isCloseTo(7, within(1e-6));
    }

    /** A shallow hollow at 4 and a deep one at 6.42, 0.14 wide: only a grid over all places comes upon the deep one. */
    @Test
    void theDeepestHollowIsFound() {
        double[] found = new BreakSearch(
                        NINE, b -> Math.min((b[0] - 4) * (b[0] - 4) + 0.5, 100 * (b[0] - 6.42) * (b[0] - 6.42)))
                .best(1);
        assertThat(found).containsExactly(new double[] {6.42}, within(1e-9));
    }

    @Test
    void twoBreaks() {
        double[] stages = new double[12];
        Arrays.setAll(stages, i -> 12 - i);
        double[] found = new BreakSearch(
                        stages,
                        b -> Math.min(Math.hypot(b[0] - 4, b[1] - 7.5) + 0.5, 5 * Math.hypot(b[0] - 5.63, b[1] - 9.17)))
                .best(2);
        assertThat(found).containsExactly(new double[] {5.63, 9.17}, within(0.01));
        assertThat(new BreakSearch(stages, b -> Math.abs(b[0] - 9) + Math.abs(b[1] - 2)).best(2))
                .satisfies(b -> assertThat(b[1]).isGreaterThan(b[0]));
    }

    @Test
    void gaugingsOfOneStageCountOnce() {
        assertThatThrownBy(() -> new BreakSearch(new double[] {1, 1, 1, 2, 3, 3, 3}, b -> 0).best(1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stage must have at least 3 gaugings in each segment, with discharges that rise, to find"
                        + " where segments join");
    }
}
