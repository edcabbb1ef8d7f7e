package dev.runnel.hydraulics.rating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Exact curves, whose fits are known, and refusals at their limits. */
class RatingEdgesTest {
    private static final double[] STAGE = {0.2, 0.3, 0.45, 0.6, 0.8, 1.1};

    private static double[] power(double[] stage, double constant, double offset, double exponent) {
        return Arrays.stream(stage)
                .map(h -> constant * Math.pow(h - offset, exponent))
                .toArray();
    }

    /** A notch below 0.5 m, a crest up to 1 m and a flood plain above, all with zero flow at 0.05 m. */
    private static double[] threeSegments(double[] stage) {
        return Arrays.stream(stage)
                .map(h -> {
                    double q = 1.4 * Math.pow(Math.min(h, 0.5) - 0.05, 2.5);
                    if (h > 0.5) {
                        q *= Math.pow((Math.min(h, 1) - 0.05) / 0.45, 1.2);
                    }
                    return h > 1 ? q * Math.pow((h - 0.05) / 0.95, 3) : q;
                })
                .toArray();
    }

    private static double[] even(int count, double from, double step) {
        double[] stage = new double[count];
        Arrays.setAll(stage, i -> from + i * step);
        return stage;
    }

    /** Stages in centimetres or in hundreds of metres give the same curve: the search follows the range of stage. */
    @Test
    void theUnitOfStageDoesNotMatter() {
        double[] metres = {0.31, 0.42, 0.55, 0.71, 0.93, 1.4, 2.2};
        for (double distance : new double[] {0.001, 0.05, 5, 40}) {
            for (double unit : new double[] {0.01, 1, 100}) {
                double[] stage = Arrays.stream(metres).map(h -> h * unit).toArray();
                double offset = (0.31 - distance) * unit;
                RatingSegment fitted = RatingFit.of(stage, power(stage, 1.5, offset, 1.7))
                        .fittingOffset()
                        .segments()
                        .get(0);
                assertThat(fitted.exponent()).isCloseTo(1.7, within(1e-4));
                assertThat(fitted.offset()).isCloseTo(offset, within(1e-4 * distance * unit));
            }
        }
    }

    @Test
    void twoAndThreeSegmentsAreFoundWithTheirOffset() {
        double[] many = even(30, 0.1, 0.05);
        RatingCurve three = RatingFit.of(many, threeSegments(many)).searchingSegments(0.05);
        assertThat(three.segments()).hasSize(3);
        assertThat(three.segments()).extracting(RatingSegment::offset).containsOnly(0.05);
        assertThat(three.segments().get(1).fromStage()).isCloseTo(0.5, within(1e-3));
        assertThat(three.segments().get(2).fromStage()).isCloseTo(1, within(1e-3));
        assertThat(three.degreesOfFreedom()).isEqualTo(30 - 6);
        // six gaugings are enough for two segments, five are not
        double[] six = {0.15, 0.3, 0.45, 0.6, 0.75, 0.9};
        assertThat(RatingFit.of(six, threeSegments(six)).searchingSegments(0.05).segments())
                .hasSize(2);
        double[] five = {0.15, 0.3, 0.45, 0.6, 0.75};
        assertThat(RatingFit.of(five, threeSegments(five))
                        .searchingSegments(0.05)
                        .segments())
                .hasSize(1);
        // nine are enough for three
        double[] nine = {0.15, 0.3, 0.45, 0.55, 0.75, 0.95, 1.1, 1.3, 1.6};
        assertThat(RatingFit.of(nine, threeSegments(nine))
                        .searchingSegments(0.05)
                        .segments())
                .hasSize(3);
    }

    /** The upper segment has its own exponent and offset: (b u/(h − a))² beside that of the curve. */
    @Test
    void uncertaintyInTheUpperSegment() {
        RatingCurve curve = RatingFit.of(STAGE, new double[] {0.1, 0.21, 0.4, 0.8, 1.4, 2.9})
                .segmented(new double[] {0.05, 0.11}, new double[] {0.5});
        RatingSegment upper = curve.segments().get(1);
        double ofCurve = curve.relativeUncertainty(0.9, 0);
        assertThat(curve.relativeUncertainty(0.9, 0.02))
                .isCloseTo(Math.hypot(ofCurve, upper.exponent() * 0.02 / (0.9 - 0.11)), within(1e-12));
        assertThat(ofCurve).isPositive();
        RatingSegment lower = curve.segments().get(0);
        assertThat(curve.relativeUncertainty(0.4, 0.02))
                .isCloseTo(
                        Math.hypot(curve.relativeUncertainty(0.4, 0), lower.exponent() * 0.02 / (0.4 - 0.05)),
                        within(1e-12));
        assertThat(curve.isGauged(0.2)).isTrue();
        assertThat(curve.isGauged(0.2 - 1e-9)).isFalse();
        assertThat(curve.lowestStage()).isEqualTo(0.2);
        assertThat(curve.highestStage()).isEqualTo(1.1);
        assertThatThrownBy(() -> curve.relativeUncertainty(0.9, -1))
                .hasMessageStartingWith("stageUncertainty must be ");
        assertThatThrownBy(() -> curve.relativeUncertainty(1.2, 0))
                .hasMessageStartingWith("stage must be in [0.2, 1.1]");
        assertThatThrownBy(() -> curve.confidence(0.9, 0)).hasMessageStartingWith("confidence must be greater than 0");
        assertThatThrownBy(() -> curve.evaluate(new double[2], new double[1], new boolean[2]))
                .hasMessage("discharge must have length 2, was 1");
        assertThatThrownBy(() -> curve.evaluate(new double[2], new double[2], new boolean[3]))
                .hasMessage("outside must have length 2, was 3");
    }

    /** Schwarz: n ln(Σr²/n) + p ln n. */
    @Test
    void theCriterionOfSchwarz() {
        RatingCurve curve = RatingFit.of(STAGE, new double[] {0.1, 0.21, 0.4, 0.8, 1.4, 2.9})
                .withOffset(0.05);
        double squares = Arrays.stream(curve.residuals()).map(r -> r * r).sum();
        assertThat(curve.informationCriterion()).isCloseTo(6 * Math.log(squares / 6) + 2 * Math.log(6), within(1e-9));
        assertThat(curve.standardError()).isCloseTo(Math.sqrt(squares / 4), within(1e-14));
    }

    @Test
    void refusesAtTheLimits() {
        RatingFit fit = RatingFit.of(STAGE, power(STAGE, 1, 0.05, 2));
        double none = Double.NEGATIVE_INFINITY;
        assertThatThrownBy(() -> RatingFit.of(STAGE, new double[5])).hasMessage("discharge must have length 6, was 5");
        assertThatThrownBy(() -> fit.withOffset(none))
                .hasMessageStartingWith("offsets[0] must be finite and below 0.2");
        assertThatThrownBy(() -> fit.segmented(new double[] {0, 0}, new double[] {0.2}))
                .hasMessage("breaks[0] must be between 0.2 and 1.1 m, was 0.2");
        assertThatThrownBy(() -> fit.segmented(new double[] {0, 0}, new double[] {1.1}))
                .hasMessage("breaks[0] must be between 0.2 and 1.1 m, was 1.1");
        assertThatThrownBy(() -> fit.segmented(new double[] {0, 0.5}, new double[] {0.5}))
                .hasMessage("offsets[1] must be finite and below 0.5 m, was 0.5");
        // the gauging at the break belongs to the segment below it
        assertThatThrownBy(() -> fit.segmented(new double[] {0, 0}, new double[] {0.8}))
                .hasMessage("segment 1 must hold at least 2 gaugings, was 1");
        assertThatThrownBy(() -> fit.searchingBreaks(0, 0.2))
                .hasMessage("offsets[1] must be finite and below the lowest gauging 0.2 m, was 0.2");
        assertThatThrownBy(() -> fit.searchingBreaks(none, 0))
                .hasMessageStartingWith("offsets[0] must be finite and below the lowest gauging 0.2 m");
        double[] five = {0.2, 0.3, 0.45, 0.6, 0.8};
        assertThatThrownBy(() -> RatingFit.of(five, power(five, 1, 0, 2)).searchingBreaks(0, 0))
                .hasMessage("count of gaugings must be at least 6, was 5");
        // so far below that all stages are one
        assertThatThrownBy(() -> fit.searchingBreaks(-1e300, -1e300))
                .hasMessageStartingWith("stage must have at least 3 gaugings in each segment");
        double[] flat = new double[6];
        Arrays.fill(flat, 1);
        assertThatThrownBy(() -> RatingFit.of(STAGE, flat).withOffset(0))
                .hasMessage("discharge must rise with stage in every segment, but an exponent of 0 fits best");
        double[] u = {5, 1e-6, 1, 1, 1, 1};
        assertThat(fit.withUncertainty(u).withOffset(0.05).segments().get(0).exponent())
                .isCloseTo(2, within(1e-6));
        for (double wrong : new double[] {5.01, 9e-7}) {
            double[] bad = {1, 1, wrong, 1, 1, 1};
            assertThatThrownBy(() -> fit.withUncertainty(bad)).hasMessageStartingWith("relative[2] must be in [");
        }
        assertThatThrownBy(() -> fit.withUncertainty(new double[5])).hasMessage("relative must have length 6, was 5");
        assertThat(fit).hasToString("RatingFit[6 gaugings, stage 0.2 to 1.1 m]");
        assertThat(fit.withOffset(-0.5).segments().get(0).toString()).contains(" (h + 0.5)^");
        assertThat(fit.withOffset(0.1).segments().get(0).toString()).contains(" (h - 0.1)^");
    }

    /** Two curves with 10 and 20 %: the one fitted lies at a fifth of the way in the logarithm. */
    @Test
    void weightsAreOneOverTheSquare() {
        double[] stage = {1, 2, 4, 1, 2, 4};
        double[] discharge = {1, 2, 4, 2, 4, 8};
        double a = RatingFit.of(stage, discharge)
                .withUncertainty(new double[] {0.1, 0.1, 0.1, 0.2, 0.2, 0.2})
                .withOffset(0)
                .discharge(2);
        // ln 2 and ln 4 weigh 4 to 1
        assertThat(Math.log(a)).isCloseTo(1.2 * Math.log(2), within(1e-12));
    }

    @Test
    void tablesAreValues() {
        RatingTable table = RatingTable.of(h -> 2 * h, 1, 2, 0.5);
        assertThat(table)
                .isEqualTo(RatingTable.of(h -> 2 * h, 1, 2, 0.5))
                .hasSameHashCodeAs(RatingTable.of(h -> 2 * h, 1, 2, 0.5))
                .isNotEqualTo(RatingTable.of(h -> 3 * h, 1, 2, 0.5))
                .isNotEqualTo(RatingTable.of(h -> 2 * h, 1, 2, 0.25))
                .isNotEqualTo("table");
        assertThat(table.hashCode())
                .isEqualTo(31 * Arrays.hashCode(table.stages()) + Arrays.hashCode(table.discharges()));
        assertThatThrownBy(() -> RatingTable.of(h -> h, 1, Double.POSITIVE_INFINITY, 0.1))
                .hasMessageStartingWith("to must be above from 1 m and finite, was ");
        assertThatThrownBy(() -> RatingTable.of(h -> h, 1, 2, 1e-6))
                .hasMessage("step must be greater than 1.0E-6 m for at most 1000000 rows, was 1.0E-6");
        assertThatThrownBy(() -> RatingTable.of(h -> h, Double.NaN, 2, 0.1)).hasMessageStartingWith("from must be ");
        assertThatThrownBy(() -> RatingTable.of(h -> h, 1, 2, 0)).hasMessageStartingWith("step must be ");
        assertThatThrownBy(() -> table.toCsv(10, 3)).hasMessage("stageDecimals must be in [0, 9], was 10");
        assertThatThrownBy(() -> table.toCsv(3, 0)).hasMessage("dischargeDigits must be in [1, 17], was 0");
    }
}
