package dev.runnel.hydraulics.rating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Gaugings of a stream: D. Kovacek, Engineering Hydrology Notebooks (UBC CIVL 418), project data. Expected fits and bands by
 * numpy's least squares and scipy's t distribution (offset by scipy.optimize.least_squares).
 */
class RatingCurveTest {
    private static final double[] STAGE = {1.13, 0.149, 1.02, 0.966, 1.07, 0.443, 0.648, 0.624, 0.516};
    private static final double[] DISCHARGE = {4.34, 0.217, 3.47, 4.28, 4.51, 0.997, 2.48, 1.33, 1.54};
    private static final RatingFit FIT = RatingFit.of(STAGE, DISCHARGE);

    @Test
    void fitsWithAKnownOffset() {
        RatingCurve curve = FIT.withOffset(0);
        RatingSegment segment = curve.segments().get(0);
        assertThat(segment.constant()).isCloseTo(3.7997669064252277, within(1e-12));
        assertThat(segment.exponent()).isCloseTo(1.520141822101704, within(1e-12));
        assertThat(curve.standardError()).isCloseTo(0.18443954923048864, within(1e-12));
        assertThat(curve.degreesOfFreedom()).isEqualTo(7);
        assertThat(curve.residuals()[4]).isCloseTo(Math.log(4.51 / curve.discharge(1.07)), within(1e-13));
    }

    @Test
    void bandsAreThoseOfStudentsT() {
        RatingCurve curve = FIT.withOffset(0);
        RatingBand confidence = curve.confidence(0.8, 0.95);
        assertThat(confidence.discharge()).isCloseTo(2.706699185421242, within(1e-11));
        assertThat(confidence.lower()).isCloseTo(2.3160317987506236, within(1e-9));
        assertThat(confidence.upper()).isCloseTo(3.1632642022929573, within(1e-9));
        RatingBand prediction = curve.prediction(0.8, 0.95);
        assertThat(prediction.lower()).isCloseTo(1.703323686159297, within(1e-9));
        assertThat(prediction.upper()).isCloseTo(4.3011322744412634, within(1e-9));
        assertThat(prediction).hasToString("RatingBand[stage 0.8 m: 1.703 < 2.707 < 4.301 m3/s]");
    }

    @Test
    void fitsTheOffset() {
        RatingCurve curve = FIT.fittingOffset();
        RatingSegment segment = curve.segments().get(0);
        assertThat(segment.offset()).isCloseTo(-0.02580672, within(2e-7));
        assertThat(segment.exponent()).isCloseTo(1.62546524, within(1e-6));
        assertThat(segment.constant()).isCloseTo(3.680759962131076, within(1e-6));
        assertThat(curve.standardError()).isCloseTo(0.1979277992740721, within(1e-10));
        assertThat(curve.degreesOfFreedom()).isEqualTo(6);
        assertThat(curve.confidence(0.8, 0.90).lower()).isCloseTo(2.3439032945314695, within(1e-6));
        assertThat(curve.prediction(0.8, 0.90).upper()).isCloseTo(4.060795035934205, within(1e-6));
    }

    @Test
    void segmentsJoinWithoutAStep() {
        RatingCurve curve = FIT.segmented(new double[] {0, 0.2}, new double[] {0.6});
        assertThat(curve.segments()).hasSize(2);
        assertThat(curve.segments().get(0).exponent()).isCloseTo(1.47577575, within(1e-8));
        assertThat(curve.segments().get(1).exponent()).isCloseTo(1.19363905, within(1e-8));
        assertThat(curve.standardError()).isCloseTo(0.1957533045138361, within(1e-12));
        assertThat(curve.discharge(0.9)).isCloseTo(3.295370858247211, within(1e-11));
        assertThat(curve.confidence(0.9, 0.95).upper()).isCloseTo(3.97825115516252, within(1e-9));
        assertThat(curve.discharge(0.6 + 1e-12)).isCloseTo(curve.discharge(0.6), within(1e-10));
        RatingSegment upper = curve.segments().get(1);
        assertThat(upper.constant() * Math.pow(0.9 - 0.2, upper.exponent()))
                .isCloseTo(curve.discharge(0.9), within(1e-12));
        assertThat(curve.toString()).contains(" from 0.6 m; standard error 19.6 %, 9 gaugings]");
    }

    @Test
    void recoversAnExactCurve() {
        double[] stage = {0.31, 0.42, 0.55, 0.71, 0.93, 1.4, 2.2};
        double[] discharge = new double[stage.length];
        for (int i = 0; i < stage.length; i++) {
            discharge[i] = 1.83 * Math.pow(stage[i] - 0.2345, 1.62);
        }
        RatingSegment segment =
                RatingFit.of(stage, discharge).fittingOffset().segments().get(0);
        assertThat(segment.offset()).isCloseTo(0.2345, within(1e-7));
        assertThat(segment.exponent()).isCloseTo(1.62, within(1e-6));
        assertThat(segment.constant()).isCloseTo(1.83, within(1e-6));
    }

    @Test
    void answersInsideTheGaugedRangeOnly() {
        RatingCurve curve = FIT.withOffset(0.05);
        assertThatThrownBy(() -> curve.discharge(1.14))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stage must be in [0.149, 1.13] m, was 1.14");
        assertThat(curve.isGauged(1.14)).isFalse();
        assertThat(curve.isGauged(1.13)).isTrue();
        assertThat(curve.isGauged(Double.NaN)).isFalse();
        assertThat(curve.extrapolated(1.4)).isGreaterThan(curve.discharge(1.13));
        assertThat(curve.extrapolated(0.05)).isZero();
        assertThat(curve.extrapolated(-1)).isZero();
        for (double stage : new double[] {0.149, 0.3, 0.777, 1.13}) {
            assertThat(curve.stage(curve.discharge(stage))).isCloseTo(stage, within(1e-12));
        }
        assertThatThrownBy(() -> curve.stage(9))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("discharge must be in [");
        double[] out = new double[3];
        curve.discharge(new double[] {0.2, Double.NaN, 0.9}, out);
        assertThat(out).containsExactly(curve.discharge(0.2), Double.NaN, curve.discharge(0.9));
        assertThatThrownBy(() -> curve.discharge(new double[] {0.2, 2}, new double[2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stage[1]: stage must be in [0.149, 1.13] m, was 2");
        assertThatThrownBy(() -> curve.confidence(0.5, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("confidence must be greater than 0 and less than 1, was 1");
    }

    @Test
    void refusesBadGaugings() {
        assertThatThrownBy(() -> RatingFit.of(new double[] {1, 2}, new double[] {1, 2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("count of gaugings must be at least 3, was 2");
        assertThatThrownBy(() -> RatingFit.of(new double[] {1, 2, 3}, new double[] {1, 0, 2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("discharge[1] must be greater than 0 and finite (m3/s), was 0");
        assertThatThrownBy(() -> RatingFit.of(new double[] {1, 1, 1}, new double[] {1, 2, 3}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stage must have at least two different values, was 1 m throughout");
        assertThatThrownBy(() -> FIT.withOffset(0.149))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("offsets[0] must be finite and below 0.149 m, was 0.149");
        assertThatThrownBy(() -> RatingFit.of(new double[] {1, 2, 3}, new double[] {3, 2, 1})
                        .withOffset(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("discharge must rise with stage in every segment");
        assertThatThrownBy(() -> FIT.segmented(new double[] {0, 0}, new double[] {1.2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("breaks[0] must be between 0.149 and 1.13 m, was 1.2");
        assertThatThrownBy(() -> FIT.segmented(new double[] {0, 0}, new double[] {0.2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("segment 0 must hold at least 2 gaugings, was 1");
        assertThatThrownBy(() -> FIT.segmented(new double[] {0}, new double[] {0.2}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("breaks must have length 0, was 1");
        double[] exponential = new double[6];
        double[] stage = {0.1, 0.2, 0.3, 0.4, 0.5, 0.6};
        for (int i = 0; i < 6; i++) {
            exponential[i] = Math.exp(6 * stage[i]);
        }
        assertThatThrownBy(() -> RatingFit.of(stage, exponential).fittingOffset())
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stage and discharge must determine the offset, but the best fit lies far below it; use"
                        + " withOffset");
    }

    @Test
    void exportsALookUpTable() {
        RatingTable table = FIT.withOffset(0).table(0.2, 0.45, 0.1);
        assertThat(table.stages()).containsExactly(0.2, 0.2 + 0.1, 0.2 + 2 * 0.1, 0.45);
        assertThat(table.toCsv(2, 4))
                .isEqualTo("stage_m,discharge_m3_per_s\n0.20,0.329\n0.30,0.6094\n0.40,0.9437\n0.45,1.129\n");
        assertThat(table.discharge(0.2)).isEqualTo(FIT.withOffset(0).discharge(0.2));
        assertThat(table.discharge(0.25)).isCloseTo((table.discharges()[0] + table.discharges()[1]) / 2, within(1e-15));
        assertThat(table).hasToString("RatingTable[4 rows, stage 0.2 to 0.45 m]");
        assertThat(RatingTable.of(h -> h, 0, 0.3, 0.1).stages()).hasSize(4);
        assertThatThrownBy(() -> table.discharge(0.46))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("stage must be in [0.2, 0.45] m, was 0.46");
        assertThatThrownBy(() -> RatingTable.of(h -> h, 0, 1, 1e-7))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("step must be greater than 1.0E-6 m for at most 1000000 rows, was 1.0E-7");
        assertThatThrownBy(() -> RatingTable.of(h -> h, 1, 1, 0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("to must be above from 1 m and finite, was 1");
    }

    /** A notch below 0.4 m and a wide crest above, without error: the break is found, and one segment is not enough. */
    @Test
    void findsWhereSegmentsJoin() {
        double[] stage = new double[24];
        double[] discharge = new double[24];
        for (int i = 0; i < 24; i++) {
            stage[i] = 0.08 + 0.04 * i;
            discharge[i] = stage[i] <= 0.42
                    ? 1.4 * Math.pow(stage[i], 2.5)
                    : 1.4 * Math.pow(0.42, 2.5) * Math.pow(stage[i] / 0.42, 1.5);
        }
        RatingFit fit = RatingFit.of(stage, discharge);
        RatingCurve two = fit.searchingBreaks(0, 0);
        assertThat(two.segments().get(1).fromStage()).isCloseTo(0.42, within(1e-6));
        assertThat(two.segments().get(0).exponent()).isCloseTo(2.5, within(1e-5));
        assertThat(two.segments().get(1).exponent()).isCloseTo(1.5, within(1e-5));
        assertThat(two.degreesOfFreedom()).isEqualTo(20);
        double[] noisy = new double[24];
        for (int i = 0; i < 24; i++) {
            noisy[i] = discharge[i] * (1 + 0.03 * Math.sin(7.0 * i));
        }
        assertThat(RatingFit.of(stage, noisy).searchingSegments(0).segments()).hasSize(2);
        double[] plain = new double[24];
        for (int i = 0; i < 24; i++) {
            plain[i] = 2 * Math.pow(stage[i], 1.6) * (1 + 0.03 * Math.sin(7.0 * i));
        }
        assertThat(RatingFit.of(stage, plain).searchingSegments(0).segments()).hasSize(1);
        assertThatThrownBy(() -> FIT.searchingBreaks(0, 0, 0, 0))
                .hasMessage("count of offsets must be in [2, 3], was 4");
        assertThatThrownBy(() -> FIT.searchingBreaks(0, 0.2))
                .hasMessageStartingWith("offsets[1] must be finite and below the lowest gauging 0.149 m");
    }

    /** numpy.polyfit of ln Q on ln h with weights 1/u, u 0.05 for the first five gaugings and 0.15 for the others. */
    @Test
    void weighsGaugingsByTheirUncertainty() {
        double[] u = {0.05, 0.05, 0.05, 0.05, 0.05, 0.15, 0.15, 0.15, 0.15};
        RatingCurve curve = FIT.withUncertainty(u).withOffset(0);
        assertThat(Math.log(curve.segments().get(0).constant())).isCloseTo(1.347297738130454, within(1e-10));
        assertThat(curve.segments().get(0).exponent()).isCloseTo(1.510361738801915, within(1e-10));
        double[] even = {0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1};
        assertThat(FIT.withUncertainty(even).withOffset(0).standardError())
                .isCloseTo(FIT.withOffset(0).standardError(), within(1e-12));
        assertThatThrownBy(() -> FIT.withUncertainty(new double[9])).hasMessageStartingWith("relative[0] must be in ");
    }

    @Test
    void marksAndCountsWhatIsNotGauged() {
        RatingCurve curve = FIT.withOffset(0);
        double[] stage = {0.5, 1.2, Double.NaN, -0.1, Double.POSITIVE_INFINITY};
        double[] discharge = new double[5];
        boolean[] outside = new boolean[5];
        assertThat(curve.evaluate(stage, discharge, outside)).isEqualTo(4);
        assertThat(outside).containsExactly(false, true, true, true, true);
        assertThat(discharge).containsExactly(curve.discharge(0.5), curve.extrapolated(1.2), Double.NaN, 0, Double.NaN);
    }

    @Test
    void uncertaintyOfARatedDischarge() {
        RatingCurve curve = FIT.withOffset(0);
        double ofCurve = curve.relativeUncertainty(0.8, 0);
        RatingBand band = curve.confidence(0.8, 0.95);
        // Student's t with 7 degrees of freedom, 2.364624
        assertThat(ofCurve).isCloseTo(Math.log(band.upper() / band.discharge()) / 2.364624, within(1e-7));
        assertThat(curve.relativeUncertainty(0.8, 0.01))
                .isCloseTo(Math.hypot(ofCurve, 1.520141822101704 * 0.01 / 0.8), within(1e-12));
    }
}
