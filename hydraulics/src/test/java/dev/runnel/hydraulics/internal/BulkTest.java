package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class BulkTest {
    private static final double GAP = Double.NaN;

    /** The root, refused below 0. */
    private static double root(double x) {
        if (x < 0) {
            throw new IllegalArgumentException("depth must be 0 or greater, was " + x);
        }
        return Math.sqrt(x);
    }

    @Test
    void eachElementAndMissingOnesStayMissing() {
        double[] out = {7, 7, 7};
        Bulk.apply("depth", new double[] {4, GAP, 9}, "root", out, BulkTest::root);
        assertThat(out).containsExactly(2, GAP, 3);
    }

    @Test
    void aRefusalTellsThePlaceAndLeavesWhatIsDone() {
        double[] out = {7, 7, 7};
        assertThatThrownBy(() -> Bulk.apply("depth", new double[] {4, -1, 9}, "root", out, BulkTest::root))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth[1]: depth must be 0 or greater, was -1.0")
                .hasCauseInstanceOf(IllegalArgumentException.class);
        assertThat(out).containsExactly(2, 7, 7);
        assertThatThrownBy(() -> Bulk.apply("depth", new double[2], "root", out, BulkTest::root))
                .hasMessage("root must have length 2, was 3");
    }

    /** Only where the fast loop left NaN for what is there, and only from the one index to the other. */
    @Test
    void mendsWhatAFasterLoopLeft() {
        double[] in = {4, 4, 4, GAP, 9, 9};
        double[] out = {GAP, GAP, 100, GAP, GAP, GAP};
        Bulk.mend("depth", in, out, 1, 5, BulkTest::root);
        assertThat(out).containsExactly(GAP, 2, 100, GAP, 3, GAP);
    }

    @Test
    void mendsAllOfOneArray() {
        double[] both = {4, 9, GAP, 16};
        Bulk.mend("depth", both, both, 1, 4, BulkTest::root);
        assertThat(both).containsExactly(4, 3, GAP, 4);
        double[] bad = {1, -4};
        assertThatThrownBy(() -> Bulk.mend("depth", bad, new double[] {GAP, GAP}, 0, 2, BulkTest::root))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth[1]: ");
    }

    @Test
    void oneElement() {
        double[] in = {4, GAP, -1};
        assertThat(Bulk.at("depth", in, 0, BulkTest::root)).isEqualTo(2);
        assertThat(Bulk.at("depth", in, 1, BulkTest::root)).isNaN();
        assertThatThrownBy(() -> Bulk.at("depth", in, 2, BulkTest::root))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth[2]: depth must be 0 or greater, was -1.0");
    }

    /** Two have no answer, one is missing, three have one: only the two are counted. */
    @Test
    void countsWhatHasNoAnswer() {
        double[] out = new double[6];
        int marked = Bulk.applyWhere(new double[] {4, -1, GAP, 9, -2, 16}, "root", out, x -> x >= 0, BulkTest::root);
        assertThat(marked).isEqualTo(2);
        assertThat(out).containsExactly(2, GAP, GAP, 3, GAP, 4);
        assertThatThrownBy(() -> Bulk.applyWhere(new double[1], "root", out, x -> true, BulkTest::root))
                .hasMessage("root must have length 1, was 6");
    }
}
