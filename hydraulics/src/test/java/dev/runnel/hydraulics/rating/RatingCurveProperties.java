package dev.runnel.hydraulics.rating;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class RatingCurveProperties {
    /** Scatter of 3 % around a known curve. */
    private static RatingFit scattered(double offset, double exponent, long seed) {
        Random random = new Random(seed);
        double[] stage = new double[25];
        double[] discharge = new double[25];
        for (int i = 0; i < stage.length; i++) {
            stage[i] = offset + 0.1 + i * 0.08;
            discharge[i] = 2 * Math.pow(stage[i] - offset, exponent) * Math.exp(0.03 * random.nextGaussian());
        }
        return RatingFit.of(stage, discharge);
    }

    @Property(tries = 100)
    void bandsNestAndContainTheCurve(
            @ForAll("share") double place, @ForAll("share") double bend, @ForAll("seed") long seed) {
        RatingCurve curve = scattered(0.3, 1.2 + bend, seed).withOffset(0.3);
        double stage = curve.lowestStage() + place * (curve.highestStage() - curve.lowestStage());
        RatingBand confidence = curve.confidence(stage, 0.9);
        RatingBand prediction = curve.prediction(stage, 0.9);
        assertThat(confidence.lower()).isGreaterThan(prediction.lower()).isLessThan(confidence.discharge());
        assertThat(confidence.upper()).isLessThan(prediction.upper()).isGreaterThan(confidence.discharge());
        assertThat(curve.confidence(stage, 0.99).upper()).isGreaterThan(confidence.upper());
        assertThat(curve.stage(confidence.discharge())).isCloseTo(stage, within(1e-12));
    }

    /** The datum of the gauge is nobody's business: a shift of stage and offset shifts the curve. */
    @Property(tries = 50)
    void theDatumDoesNotMatter(@ForAll("share") double shift, @ForAll("seed") long seed) {
        RatingCurve here = scattered(0.3, 1.7, seed).fittingOffset();
        RatingCurve there = scattered(0.3 + 10 * shift, 1.7, seed).fittingOffset();
        RatingSegment a = here.segments().get(0);
        RatingSegment b = there.segments().get(0);
        assertThat(b.exponent()).isCloseTo(a.exponent(), within(1e-5));
        assertThat(b.offset() - 10 * shift).isCloseTo(a.offset(), within(1e-5));
        assertThat(there.standardError()).isCloseTo(here.standardError(), within(1e-9));
    }

    /** Two segments of one law with one offset are one segment. */
    @Property(tries = 50)
    void anIdleBreakChangesNothing(@ForAll("share") double place) {
        double[] stage = {0.5, 0.6, 0.8, 1.1, 1.5, 2.0};
        double[] discharge = new double[stage.length];
        for (int i = 0; i < stage.length; i++) {
            discharge[i] = 1.4 * Math.pow(stage[i] - 0.3, 1.9);
        }
        RatingFit fit = RatingFit.of(stage, discharge);
        double at = 0.61 + 0.88 * place;
        RatingCurve two = fit.segmented(new double[] {0.3, 0.3}, new double[] {at});
        assertThat(two.segments().get(1).exponent()).isCloseTo(1.9, within(1e-9));
        assertThat(two.discharge(0.77)).isCloseTo(fit.withOffset(0.3).discharge(0.77), within(1e-12));
    }

    @Provide
    static Arbitrary<Double> share() {
        return Arbitraries.doubles().between(0, 1).ofScale(6);
    }

    @Provide
    static Arbitrary<Long> seed() {
        return Arbitraries.longs();
    }
}
