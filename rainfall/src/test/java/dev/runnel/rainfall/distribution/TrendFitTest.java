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
