package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class MomentsTest {
    /** Mean and variance integrated with mpmath 1.3 to 30 digits over the density. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "GUMBEL | 30 8 | 34.6177253192122629 | 105.275780278286492",
                "GEV | 30 8 -0.12 | 35.6871858311813006 | 153.077248667970591",
                "GEV | 30 8 0.17 | 33.4494300885780807 | 74.0613733214302705",
                "GEV | 30 8 1e-4 | 34.6169341470064736 | 105.248248082063209",
                "GENERALIZED_LOGISTIC | 30 8 -0.12 | 31.6057184416587042 | 234.135731590045379",
                "GENERALIZED_LOGISTIC | 30 8 0.23 | 26.7782380702768678 | 317.928371446454687",
                "GENERALIZED_LOGISTIC | 30 8 -1e-4 | 30.0013159472686311 | 210.551575795684857",
                "EXPONENTIAL | 10 5 | 15.0 | 25.0",
                "GENERALIZED_PARETO | 10 5 -0.12 | 15.6818181818181818 | 42.477707698999565",
                "GENERALIZED_PARETO | 10 5 0.4 | 13.5714285714285714 | 7.08616780045351474",
                "GENERALIZED_NORMAL | 30 8 -0.3 | 31.2274095975657851 | 73.2750786962487516",
                "GENERALIZED_NORMAL | 30 8 0.5 | 27.8696247509307789 | 93.3621386271709857",
                "LOG_NORMAL | 3.2 0.4 | 26.5757726998739593 | 122.545816886103753",
                "NORMAL | 30 8 | 30.0 | 64.0",
                "PEARSON_III | 30 8 0.9 | 30.0 | 64.0",
                "LOG_PEARSON_III | 1.5 0.2 0.4 | 35.4070954627797997 | 370.008744700676869",
                "LOG_PEARSON_III | 1.5 0.2 -0.7 | 34.8043422511217979 | 208.506849075897986",
                "LOG_PEARSON_III | 1.5 0.2 0.01 | 35.1659631068662896 | 293.647024263531035",
                "KAPPA | 30 8 -0.12 0.3 | 36.7968602109889741 | 136.432677534288846",
                "KAPPA | 30 8 0.2 -0.4 | 31.2833362593896587 | 113.320182430138256",
                "KAPPA | 30 8 0.1 0 | 33.8919384106501453 | 83.8429124701971785"
            })
    void meanAndVariance(DistributionFamily family, String parameters, double mean, double variance) {
        double[] p = Arrays.stream(parameters.trim().split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        Distribution member = family.with(p);
        assertThat(member.mean() / mean).isCloseTo(1, within(1e-12));
        assertThat(member.variance() / variance).isCloseTo(1, within(1e-9));
    }

    @Test
    void aHeavyTailHasNoMeanOrVariance() {
        assertThat(Gev.of(30, 8, -1).mean()).isInfinite();
        assertThat(Gev.of(30, 8, -0.5).variance()).isInfinite();
        assertThat(Gev.of(30, 8, -0.5).mean()).isFinite();
        assertThat(GeneralizedPareto.of(30, 8, -0.6).variance()).isInfinite();
        assertThat(GeneralizedLogistic.of(30, 8, 1).mean()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(GeneralizedLogistic.of(30, 8, -0.5).variance()).isInfinite();
        assertThat(LogPearsonIII.of(1, 0.5, 2).mean()).isInfinite();
        assertThat(LogPearsonIII.of(1, 0.3, 2).mean()).isFinite();
        assertThat(LogPearsonIII.of(1, 0.3, 2).variance()).isInfinite();
        assertThat(Kappa.of(30, 8, -0.7, 0.2).variance()).isInfinite();
    }

    /** Where the tail is just too heavy, and just not. */
    @Test
    void theLimitsOfMoments() {
        double above = Math.nextUp(-1.0);
        for (double shape : new double[] {-1, -1.5}) {
            assertThat(GeneralizedPareto.of(30, 8, shape).mean()).isEqualTo(Double.POSITIVE_INFINITY);
            assertThat(Kappa.of(30, 8, shape, 0.5).mean()).isEqualTo(Double.POSITIVE_INFINITY);
            assertThatIllegalStateException()
                    .isThrownBy(() -> GeneralizedPareto.of(30, 8, shape).lMoments())
                    .withMessageStartingWith("L-moments exist for shape above -1, was -1");
        }
        assertThat(GeneralizedPareto.of(30, 8, above).mean()).isFinite();
        assertThat(GeneralizedPareto.of(30, 8, -0.5).variance()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(GeneralizedPareto.of(30, 8, -0.49).variance()).isFinite();
        for (double shape : new double[] {-1, 1, 1.2}) {
            assertThatIllegalStateException()
                    .isThrownBy(() -> GeneralizedLogistic.of(30, 8, shape).lMoments())
                    .withMessageStartingWith("L-moments exist for shape inside (-1, 1), was ");
        }
        assertThat(Kappa.of(30, 8, -0.5, 0.2).variance()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(Kappa.of(30, 8, 0.25, -2).variance()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(Kappa.of(30, 8, 0.24, -2).variance()).isFinite();
        assertThat(Kappa.of(30, 8, -0.49, 0.2).variance()).isFinite();
        assertThat(Kappa.of(30, 8, 0.5, 0).variance()).isFinite();
        assertThat(Kappa.of(30, 8, 0.5, -2).mean()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(Kappa.of(30, 8, 0.49, -2).mean()).isFinite();
        assertThat(Kappa.of(30, 8, 0.5, 2).mean()).isFinite();
    }

    /** Gamma(1.8) = 0.93138377098, Gamma(1.5) = 0.88622692545, Gamma(0.3) = 2.99156898769, Gamma(2) = 1. */
    @Test
    void meansOfExtremeValues() {
        assertThat(Gev.of(30, 8, 0.8).mean()).isCloseTo(30 + 8 * (1 - 0.931383770980243) / 0.8, within(1e-10));
        assertThat(Gev.of(30, 8, 0.5).mean()).isCloseTo(30 + 16 * (1 - 0.886226925452758), within(1e-10));
        assertThat(Gev.of(30, 8, -0.7).mean()).isCloseTo(30 + 8 * (2.99156898768759 - 1) / 0.7, within(1e-10));
        assertThat(Gev.of(30, 8, 1).mean()).isCloseTo(30, within(1e-12));
        LMoments gumbel = Gumbel.of(30, 8).lMoments();
        assertThat(gumbel.lambda1()).isCloseTo(30 + 8 * 0.577215664901533, within(1e-12));
        assertThat(gumbel.lambda2()).isCloseTo(8 * Math.log(2), within(1e-12));
        assertThat(gumbel.tau3()).isCloseTo(Math.log(9.0 / 8) / Math.log(2), within(1e-12));
    }

    /** With h = 1 a kappa distribution is the generalised Pareto, with h = 0 the GEV. */
    @Test
    void kappaIsWhatItHolds() {
        for (double shape : new double[] {-0.2, 0, 0.4}) {
            Kappa kappa = Kappa.of(10, 5, shape, 1);
            GeneralizedPareto pareto = GeneralizedPareto.of(10, 5, shape);
            Kappa none = Kappa.of(10, 5, shape, 0);
            Gev gev = Gev.of(10, 5, shape);
            for (double x : new double[] {10.01, 12, 17, 21}) {
                assertThat(kappa.logDensity(x)).isCloseTo(pareto.logDensity(x), within(1e-12));
                assertThat(kappa.cdf(x)).isCloseTo(pareto.cdf(x), within(1e-14));
                assertThat(none.logDensity(x)).isCloseTo(gev.logDensity(x), within(1e-12));
                assertThat(none.exceedance(x)).isCloseTo(gev.exceedance(x), within(1e-14));
            }
            assertThat(kappa.lowerBound()).isEqualTo(10);
            assertThat(kappa.upperBound()).isEqualTo(pareto.upperBound());
        }
    }

    /** Millimetres above a datum a trillion away: the mean is rounded, what is left of it is taken back. */
    @Test
    void aShiftChangesNothing() {
        double shift = 0x1p50;
        double[] sample = {3, 8, 1, 14, 9, 27, 6};
        LMoments here = LMoments.ofSample(sample);
        LMoments there =
                LMoments.ofSample(Arrays.stream(sample).map(x -> x + shift).toArray());
        assertThat(there.lambda1() - shift).isCloseTo(68 / 7.0, within(0.26));
        assertThat(there.lambda2()).isCloseTo(here.lambda2(), within(1e-12));
        assertThat(there.tau3()).isCloseTo(here.tau3(), within(1e-12));
        assertThat(there.tau4()).isCloseTo(here.tau4(), within(1e-12));
        // Whole numbers that a Wakeby distribution fits.
        Wakeby five = Wakeby.of(30, 60, 4, 8, 0.2);
        double[] drawn = IntStream.range(0, 40)
                .mapToDouble(i -> Math.rint(1024 * five.quantile((i + 0.5) / 40)))
                .toArray();
        double[] one = wakeby(drawn);
        double[] other = wakeby(Arrays.stream(drawn).map(x -> x + 0x1p45).toArray());
        assertThat(other[0] - 0x1p45).isCloseTo(one[0], within(0.02));
        for (int i = 1; i < 5; i++) {
            assertThat(other[i] / one[i]).isCloseTo(1, within(1e-9));
        }
    }

    private static double[] wakeby(double[] sample) {
        return Fit.of(DistributionFamily.WAKEBY, FitMethod.L_MOMENTS, sample)
                .distribution()
                .parameters()
                .values()
                .stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    /** The shape has the L-skewness asked for, to rounding, within the approximation and beyond it. */
    @Test
    void theShapeOfAGevHasItsLSkewness() {
        for (int i = -950; i <= 950; i++) {
            double tau3 = i / 1000.0;
            LMoments m = LMoments.of(100, 10, tau3, 0.95);
            double shape = DistributionFamily.GEV.fromLMoments(m).parameters().getOrDefault("k", Double.NaN);
            assertThat(Gev.lSkewness(shape)).as("%s", tau3).isCloseTo(tau3, within(2e-15));
        }
        for (double shape : new double[] {-0.01, -2e-3, -1e-3, -5e-4, -1e-7, 0, 1e-9, 1e-3, 3e-3}) {
            LMoments m = LMoments.of(100, 10, Gev.lSkewness(shape), 0.2);
            assertThat(DistributionFamily.GEV.fromLMoments(m).parameters().get("k"))
                    .isCloseTo(shape, within(2e-12));
        }
    }

    /** A kappa distribution with h = -1 is the generalised logistic, which has L-moments for |k| below 1 only. */
    @Test
    void kappaHasLMomentsWhereItsLowerTailAllows() {
        assertThatIllegalStateException()
                .isThrownBy(() -> Kappa.of(0, 1, 2, -1).lMoments())
                .withMessage("L-moments exist for k above -1 and, if h is negative, k h above -1; k was 2, h -1");
        assertThat(Kappa.of(0, 1, 2, -1).mean()).isEqualTo(Double.NEGATIVE_INFINITY);
        // k h = 1.8: the lower tail is light.
        LMoments m = Kappa.of(0, 1, -0.9, -2).lMoments();
        assertThat(m.tau3()).isBetween(0.9, 1.0);
        LMoments logistic = GeneralizedLogistic.of(5, 2, 0.7).lMoments();
        assertThat(Kappa.of(5, 2, 0.7, -1).lMoments().lambda2()).isCloseTo(logistic.lambda2(), within(1e-12));
    }

    @ParameterizedTest
    @MethodSource("dev.runnel.rainfall.distribution.DistributionFamily#all")
    void manyAnswerAsOneDoes(DistributionFamily family) {
        double[] p = {1.5, 0.3, 0.1, 0.2, 0.15};
        Distribution member = family.with(Arrays.copyOf(p, family.parameterCount()));
        double[] x = member.sample(50, 3);
        double[] out = new double[50];
        member.cdf(x, out);
        double[] back = new double[50];
        member.quantile(out, back);
        double[] tail = new double[50];
        member.exceedance(x, tail);
        double[] years = new double[50];
        for (int i = 0; i < 50; i++) {
            assertThat(out[i]).isEqualTo(member.cdf(x[i]));
            assertThat(back[i]).isEqualTo(member.quantile(out[i])).isCloseTo(x[i], within(1e-10 * Math.abs(x[i])));
            assertThat(tail[i]).isEqualTo(member.exceedance(x[i])).isCloseTo(1 - out[i], within(1e-14));
            years[i] = 1.01 + i;
        }
        member.returnLevel(years, out);
        assertThat(out[20]).isEqualTo(member.returnLevel(years[20]));
        assertThat(member.returnPeriod(out[20])).isCloseTo(years[20], within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> member.cdf(x, new double[49]))
                .withMessageStartingWith("probabilities must ");
    }

    /** Means of 40,000 values lie within 5 standard errors of the mean, and a seed gives the same values again. */
    @ParameterizedTest
    @MethodSource("dev.runnel.rainfall.distribution.DistributionFamily#all")
    void samplesHaveTheMeanAndAreRepeatable(DistributionFamily family) {
        double[] p = {1.5, 0.3, 0.1, 0.2, 0.15};
        Distribution member = family.with(Arrays.copyOf(p, family.parameterCount()));
        double[] drawn = member.sample(40_000, 11);
        double mean = Arrays.stream(drawn).average().orElseThrow();
        assertThat(mean).isCloseTo(member.mean(), within(5 * Math.sqrt(member.variance() / 40_000)));
        var source = member.sampler(11);
        assertThat(source.getAsDouble()).isEqualTo(drawn[0]);
        assertThat(source.getAsDouble()).isEqualTo(drawn[1]);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> member.sample(Integer.MAX_VALUE, 1))
                .withMessage("size must be in [1, 100000000], was 2147483647");
    }
}
