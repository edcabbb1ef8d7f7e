package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is said of a stretch that gave no baseline, and of one that no free sewer shows. */
class BaselineWordsTest {
    private static final int DAYS = 30;

    /**
     * Manning's velocity in the sewer of the invented site at its usual depth of 0.12 m: θ = 2 acos(1 − 2·0.2) = 1.8546,
     * A = D²/8 (θ − sin θ) = 0.04026 m², P = Dθ/2 = 0.5564 m, v = (A/P)^(2/3) √0.005/0.013 = 0.9446 m/s.
     */
    private static final double UNIFORM = 0.9446;

    private static String learned(InventedSite.Fault of) {
        return BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(DAYS, 5).record(of))
                .baseline()
                .orElseThrow()
                .describe();
    }

    private static BaselineSearch search(InventedSite.Fault of) {
        return BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(DAYS, 5).record(of));
    }

    @Test
    void freeSewerHasNothingToBeTold() {
        assertThat(learned(InventedSite.Fault.NONE))
                .doesNotContain("the pipe was full")
                .doesNotContain("velocity does not rise")
                .doesNotContain("times that of uniform flow");
    }

    @Test
    void depthsThatNoSewerHasAreAskedForTheirUnit() {
        BaselineSearch search = search((day, depth, velocity, random) -> new double[] {1000 * depth, velocity});
        assertThat(search.baseline()).isEmpty();
        // A fortnight of quarters of an hour, every one of them.
        assertThat(search.describe())
                .contains("1344 of 1344 depths are none that a sensor can read in a sewer: metres are wanted")
                .contains("usable depths in 0 of 336 hours");
    }

    /** A quarter of the hours: of rain beside them one knows that the others were looked at, without it nothing. */
    @Test
    void fewReadingsAreCounted() {
        InventedSite.Fault quarter = (day, depth, velocity, random) ->
                day % 1 < 0.25 ? new double[] {depth, velocity} : new double[] {Double.NaN, Double.NaN};
        for (boolean rain : new boolean[] {false, true}) {
            BaselineSearch search = BaselineRule.of(InventedSite.MONITOR)
                    .learn(InventedSite.of(DAYS, 5).record(quarter, true, rain));
            assertThat(search.baseline()).isEmpty();
            assertThat(search.describe())
                    .contains((rain ? "usable depths in 84" : "readings in 84")
                            + " of 336 hours, half of them are needed");
        }
    }

    @Test
    void fullPipeSaysThatItsDepthSaysNothing() {
        assertThat(learned((day, depth, velocity, random) -> new double[] {0.61 + depth, velocity}))
                .contains("note: the pipe was full in 336 of 336 hours: depth says nothing of the flow there");
    }

    @Test
    void velocityThatDoesNotRiseWithDepthIsToldWithItsExponent() {
        assertThat(learned((day, depth, velocity, random) ->
                        new double[] {depth, velocity * Math.pow(depth / 0.12, -0.55)}))
                .containsPattern("note: velocity does not rise with depth here \\(exponent -?0\\.0[0-9]\\)");
    }

    @Test
    void velocityFarFromUniformFlowIsToldWithItsRatio() {
        assertRatio(4, "a depth or velocity sensor that read wrongly from the first day");
        assertRatio(0.25, "an obstruction or a sensor that read wrongly from the first day");
    }

    private static void assertRatio(double factor, String cause) {
        String text = learned((day, depth, velocity, random) -> new double[] {depth, factor * velocity});
        Matcher ratio = Pattern.compile("the usual velocity is ([0-9.]+) times that of uniform flow")
                .matcher(text);
        assertThat(ratio.find()).isTrue();
        double expected = factor * 0.7 / UNIFORM;
        assertThat(Double.parseDouble(ratio.group(1))).isCloseTo(expected, within(0.1 * expected));
        assertThat(text).contains(cause);
    }
}
