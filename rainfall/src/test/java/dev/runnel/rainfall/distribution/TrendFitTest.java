package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Agreement with SciPy is in the tables of the proof. */
class TrendFitTest {
    private static final int YEARS = 400;
    private static final double[] TIMES = new double[YEARS];
    private static final double[] STILL = Gev.of(30, 8, -0.1).sample(YEARS, 5);
    private static final double[] RISING = STILL.clone();
    private static final double[] WIDENING = STILL.clone();

    static {
        for (int i = 0; i < YEARS; i++) {
            TIMES[i] = 1600 + i;
            RISING[i] = STILL[i] + 0.03 * i;
            WIDENING[i] = 30 + (STILL[i] - 30) * Math.exp(0.002 * i);
        }
    }

    private static TrendFit fit(TrendIn trend, double[] sample) {
        return TrendFit.of(DistributionFamily.GEV, trend, TIMES, sample);
    }

    /** A straight line added to the sample is added to the location, and to nothing else. */
    @Test
    void aLineAddedIsFoundInTheLocation() {
        TrendFit still = fit(TrendIn.LOCATION, STILL);
        TrendFit rising = fit(TrendIn.LOCATION, RISING);
        assertThat(rising.locationSlope() - still.locationSlope()).isCloseTo(0.03, within(1e-8));
        assertThat(rising.logLikelihood()).isCloseTo(still.logLikelihood(), within(1e-8));
        assertThat(rising.locationSlope()).isCloseTo(0.03, within(3 * rising.locationSlopeStandardError()));
        assertThat(rising.at(1999).returnLevel(50) - rising.at(1600).returnLevel(50))
                .isCloseTo(399 * rising.locationSlope(), within(1e-9));
        assertThat(rising.against(fit(TrendIn.NOTHING, RISING)).pValue()).isLessThan(1e-6);
        assertThat(still.against(fit(TrendIn.NOTHING, STILL)).pValue()).isGreaterThan(0.01);
    }

    @Test
    void aWideningIsFoundInTheScale() {
        TrendFit wide = fit(TrendIn.SCALE, WIDENING);
        assertThat(wide.logScaleSlope()).isCloseTo(0.002, within(3 * wide.logScaleSlopeStandardError()));
        assertThat(wide.logScaleSlopeStandardError()).isBetween(1e-5, 1e-3);
        TrendFit both = fit(TrendIn.LOCATION_AND_SCALE, WIDENING);
        assertThat(both.against(wide).degreesOfFreedom()).isEqualTo(1);
        assertThat(both.logLikelihood()).isGreaterThanOrEqualTo(wide.logLikelihood() - 1e-9);
        assertThat(both.at(1700)).isInstanceOf(Gev.class);
    }

    /** Of a normal distribution the greatest likelihood is the line of least squares, with the error that squares leave. */
    @Test
    void lineOfANormalSampleIsThatOfLeastSquares() {
        double[] times = {1951, 1953, 1958, 1960, 1961, 1967, 1970, 1971, 1975, 1988, 1990, 2001};
        double[] sample = {31.2, 28.4, 35.0, 30.1, 29.9, 36.4, 33.3, 41.8, 34.0, 37.7, 43.1, 39.5};
        double meanTime = Arrays.stream(times).average().orElseThrow();
        double mean = Arrays.stream(sample).average().orElseThrow();
        double squares = 0;
        double products = 0;
        for (int i = 0; i < times.length; i++) {
            squares += (times[i] - meanTime) * (times[i] - meanTime);
            products += (times[i] - meanTime) * (sample[i] - mean);
        }
        double slope = products / squares;
        double rest = 0;
        for (int i = 0; i < times.length; i++) {
            double away = sample[i] - mean - slope * (times[i] - meanTime);
            rest += away * away;
        }
        double sigma = Math.sqrt(rest / times.length);
        TrendFit fit = TrendFit.of(DistributionFamily.NORMAL, TrendIn.LOCATION, times, sample);
        assertThat(fit.locationSlope()).isCloseTo(slope, within(1e-7));
        assertThat(fit.locationSlopeStandardError()).isCloseTo(sigma / Math.sqrt(squares), within(1e-5));
        assertThat(fit.at(2010).quantile(0.5)).isCloseTo(mean + slope * (2010 - meanTime), within(1e-5));
        assertThat(fit.logLikelihood())
                .isCloseTo(-0.5 * times.length * (1 + Math.log(2 * Math.PI * sigma * sigma)), within(1e-9));
        assertThat(fit.logScaleSlope()).isZero();
        TrendFit still = TrendFit.of(DistributionFamily.NORMAL, TrendIn.NOTHING, times, sample);
        double total = rest + slope * slope * squares;
        TrendFit.LikelihoodRatio ratio = fit.against(still);
        assertThat(ratio.statistic()).isCloseTo(times.length * Math.log(total / rest), within(1e-8));
        assertThat(ratio.degreesOfFreedom()).isEqualTo(1);
    }

    @Test
    void refusesTooFewValuesTimesThatAreNotFiniteAndFitsOfOtherSamples() {
        double[] nine = Arrays.copyOf(TIMES, 9);
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> TrendFit.of(DistributionFamily.GUMBEL, TrendIn.LOCATION, nine, Arrays.copyOf(STILL, 9)))
                .withMessageContaining("10")
                .withMessageContaining("9");
        double[] unknown = TIMES.clone();
        unknown[7] = Double.NaN;
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TrendFit.of(DistributionFamily.GUMBEL, TrendIn.LOCATION, unknown, STILL))
                .withMessageContaining("times[7]");
        TrendFit rising = fit(TrendIn.LOCATION, RISING);
        assertThatIllegalArgumentException().isThrownBy(() -> rising.against(rising));
        assertThatIllegalArgumentException().isThrownBy(() -> rising.against(fit(TrendIn.NOTHING, STILL)));
        double[] later = Arrays.stream(TIMES).map(time -> time + 1).toArray();
        TrendFit shifted = TrendFit.of(DistributionFamily.GEV, TrendIn.NOTHING, later, RISING);
        assertThatIllegalArgumentException().isThrownBy(() -> rising.against(shifted));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> rising.at(Double.NaN))
                .withMessageContaining("time");
    }

    @Test
    void withoutATrendItIsTheOrdinaryFit() {
        LikelihoodFit ordinary = LikelihoodFit.of(DistributionFamily.GEV, STILL);
        TrendFit none = fit(TrendIn.NOTHING, STILL);
        assertThat(none.logLikelihood()).isCloseTo(ordinary.logLikelihood(), within(1e-9));
        assertThat(none.at(1650).returnLevel(100))
                .isCloseTo(ordinary.distribution().returnLevel(100), within(1e-5));
        assertThat(none.locationSlope()).isZero();
        assertThat(none.logScaleSlopeStandardError()).isZero();
    }

    @Test
    void theUnitOfTimeDoesNotMatter() {
        double[] centuries = Arrays.stream(TIMES).map(t -> t / 100).toArray();
        TrendFit rising = TrendFit.of(DistributionFamily.GUMBEL, TrendIn.LOCATION, centuries, RISING);
        TrendFit years = TrendFit.of(DistributionFamily.GUMBEL, TrendIn.LOCATION, TIMES, RISING);
        assertThat(rising.locationSlope()).isCloseTo(100 * years.locationSlope(), within(1e-6));
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TrendFit.of(DistributionFamily.LOG_NORMAL, TrendIn.LOCATION, TIMES, STILL))
                .withMessage("family must be one of location and scale, was LOG_NORMAL");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TrendFit.of(DistributionFamily.GEV, TrendIn.LOCATION, new double[YEARS], STILL))
                .withMessage("times must not be all equal, were 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> fit(TrendIn.LOCATION, STILL).against(fit(TrendIn.SCALE, STILL)))
                .withMessageStartingWith("simpler must be a fit of the same sample that is a part of LOCATION, was ");
    }
}
