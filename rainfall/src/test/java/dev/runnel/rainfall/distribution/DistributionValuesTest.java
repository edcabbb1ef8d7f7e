package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Each family in both tails and between, against the formulas themselves at many digits. */
class DistributionValuesTest {
    private static final String BESIDE = "/dev/runnel/rainfall/distribution/";

    private static Distribution member(String family, String parameters) {
        return DistributionFamily.named(family)
                .with(Arrays.stream(parameters.split(" "))
                        .mapToDouble(Double::parseDouble)
                        .toArray());
    }

    @ParameterizedTest
    @CsvFileSource(resources = BESIDE + "values.csv", numLinesToSkip = 3)
    void probabilitiesDensitiesAndQuantiles(
            String family, String parameters, double x, double probability, double exceedance, double logDensity) {
        Distribution member = member(family, parameters);
        assertThat(member.cdf(x)).isCloseTo(probability, within(2e-13 * probability));
        assertThat(member.exceedance(x)).isCloseTo(exceedance, within(2e-12 * exceedance));
        assertThat(member.logDensity(x)).isCloseTo(logDensity, within(1e-12));
        assertThat(member.density(x)).isCloseTo(Math.exp(logDensity), within(1e-12 * Math.exp(logDensity)));
        // Of a probability near 1 only its double is known, so the quantile is only as good.
        double known = 1e-12 + 2e-16 / Math.exp(logDensity);
        assertThat(member.quantile(probability)).isCloseTo(x, within(known * x));
        assertThat(member.quantileOfExceedance(exceedance)).isCloseTo(x, within(1e-12 * x));
        assertThat(member.returnPeriod(x)).isCloseTo(1 / exceedance, within(2e-12 / exceedance));
        assertThat(member.returnLevel(1 / exceedance)).isCloseTo(x, within(1e-12 * x));
    }

    @ParameterizedTest
    @CsvFileSource(resources = BESIDE + "l-moments.csv", numLinesToSkip = 3)
    void lMoments(String family, String parameters, double lambda1, double lambda2, double tau3, double tau4) {
        Distribution member = member(family, parameters);
        LMoments m = member.lMoments();
        assertThat(m.lambda1()).isCloseTo(lambda1, within(1e-10 * lambda1));
        assertThat(m.lambda2()).isCloseTo(lambda2, within(1e-10 * lambda2));
        assertThat(m.tau3()).isCloseTo(tau3, within(1e-10));
        assertThat(m.tau4()).isCloseTo(tau4, within(1e-10));
        assertThat(member.mean()).isCloseTo(lambda1, within(1e-10 * lambda1));
    }

    /** The parameters again from the L-moments; a log-normal is fitted by those of its logarithms. */
    @ParameterizedTest
    @CsvFileSource(resources = BESIDE + "l-moments.csv", numLinesToSkip = 3)
    void fitsByLMoments(String family, String parameters, double lambda1, double lambda2, double tau3, double tau4) {
        boolean ofLogarithms = family.equals("LOG_NORMAL");
        Distribution fitted = DistributionFamily.named(family)
                .fromLMoments(
                        ofLogarithms
                                ? LMoments.of(3.2, 0.4 / Math.sqrt(Math.PI), 0, 0.12)
                                : LMoments.of(lambda1, lambda2, tau3, tau4));
        assertParameters(fitted, parameters, 1e-8);
    }

    /** Mean, standard deviation and skew integrated as the L-moments are. */
    @ParameterizedTest
    @CsvSource({
        "GUMBEL, 30 8, 34.6177253192, 10.2603986413, 1.1395470994",
        "GEV, 30 8 -0.12, 35.6871858312, 12.3724390751, 2.12920638022",
        "GEV, 30 8 0.17, 33.4494300886, 8.60589177956, 0.361012405542",
        "GEV, 30 8 0.03, 34.3866798523, 9.88158971361, 0.970701364906",
        "GENERALIZED_LOGISTIC, 30 8 -0.12, 31.6057184417, 15.3014944234, 1.16391574407",
        "GENERALIZED_LOGISTIC, 30 8 0.23, 26.7782380703, 17.8305460221, -3.3783708435",
        "GENERALIZED_LOGISTIC, 30 8 0.02, 29.7366892786, 14.5314250727, -0.174608707951",
        "EXPONENTIAL, 10 5, 15, 5, 2",
        "GENERALIZED_PARETO, 10 5 -0.12, 15.6818181818, 6.5174924395, 3.05122926048",
        "GENERALIZED_PARETO, 10 5 0.2, 14.1666666667, 3.52147606137, 1.18321595662",
        "GENERALIZED_NORMAL, 30 8 -0.3, 31.2274095976, 8.56008637201, 0.949534907257",
        "GENERALIZED_NORMAL, 30 8 0.2, 29.1919463989, 8.24391106042, -0.614294761987",
        "NORMAL, 30 8, 30, 8, 0",
        "PEARSON_III, 30 8 0.9, 30, 8, 0.9",
        "PEARSON_III, 30 8 -1.5, 30, 8, -1.5"
    })
    void momentsAndFitsByThem(String family, String parameters, double mean, double deviation, double skew) {
        Distribution member = member(family, parameters);
        assertThat(member.mean()).isCloseTo(mean, within(1e-9));
        assertThat(Math.sqrt(member.variance())).isCloseTo(deviation, within(1e-9));
        assertParameters(
                DistributionFamily.named(family).fromMoments(new SampleMoments(50, mean, deviation, skew)),
                parameters,
                1e-7);
    }

    private static void assertParameters(Distribution fitted, String parameters, double relative) {
        double[] expected = Arrays.stream(parameters.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        double[] found = fitted.parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        assertThat(found).hasSameSizeAs(expected);
        for (int i = 0; i < expected.length; i++) {
            assertThat(found[i]).isCloseTo(expected[i], within(relative * Math.max(1, Math.abs(expected[i]))));
        }
    }

    /** xi + alpha (1/k − π/sin(kπ)) at 40 digits, with mpmath 1.3, where a series is taken for it. */
    @Test
    void meanOfANearlySymmetricLogistic() {
        assertThat(GeneralizedLogistic.of(30, 8, 0.0049).mean()).isCloseTo(29.9355168018555597, within(1e-13));
        assertThat(GeneralizedLogistic.of(30, 8, -0.0049).mean()).isCloseTo(30.0644831981444403, within(1e-13));
        assertThat(GeneralizedLogistic.of(30, 8, -1).mean()).isEqualTo(Double.POSITIVE_INFINITY);
    }

    /** Above 10: mean excess 25/6 and L-scale 125/66 of alpha 5, k 0.2; variance alpha²/((1 + k)² (1 + 2k)). */
    @Test
    void paretoAboveAKnownThreshold() {
        DistributionFamily above = GeneralizedPareto.above(10);
        double deviation = Math.sqrt(25 / (1.44 * 1.4));
        for (Distribution fitted : new Distribution[] {
            above.fromLMoments(LMoments.of(10 + 25 / 6.0, 125 / 66.0, 0.25, 0.1)),
            above.fromMoments(new SampleMoments(50, 10 + 25 / 6.0, deviation, 1.2))
        }) {
            assertParameters(fitted, "10 5 0.2", 1e-12);
        }
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> above.fromLMoments(LMoments.of(10, 1, 0.25, 0.1)))
                .withMessage("mean must be above threshold 10, was 10");
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> above.fromLMoments(LMoments.of(12, 2, 0.25, 0.1)))
                .withMessage("lambda2 must be below the mean excess 2 over 10, was 2");
        assertThat(above.fromLMoments(LMoments.of(12, 1.999, 0.25, 0.1)).parameters())
                .containsKeys("xi", "alpha", "k");
    }

    @Test
    void lMomentsAreReadAndPrinted() {
        LMoments m = LMoments.of(4, 1, 0.25, -0.125);
        assertThat(m.tau()).isEqualTo(0.25);
        assertThat(m).hasToString("LMoments[l1 = 4, l2 = 1, t3 = 0.25, t4 = -0.125]");
        assertThat(LMoments.of(4, 1, 1, 1).tau3()).isEqualTo(1);
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> DistributionFamily.GEV.fromLMoments(LMoments.of(4, 1, 1, 1)))
                .withMessage("tau3 must be inside (-1, 1) for a family with a shape, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.of(4, 0, 0, 0))
                .withMessageStartingWith("lambda2 must be greater than 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.of(4, 1, 1.1, 0))
                .withMessage("tau3 must be in [-1, 1], was 1.1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LMoments.of(4, 1, 0, -1.6))
                .withMessage("tau4 must be in [-1.5, 1], was -1.6");
    }

    /**
     * λ₂/σ = Γ(a + 1/2)/(Γ(a) √(π a)) and τ₃ = 6 I(1/3; a, 2a) − 3 with a = 4/skew², with mpmath 1.3 at 60 digits: on both sides
     * of 0.02, below which a series is taken.
     */
    @ParameterizedTest
    @CsvSource({
        "0.001, 0.564189565916832077, 0.000162867506041184318",
        "0.0199, 0.564182601568555666, 0.00324107966889926048",
        "0.0201, 0.564182460522923081, 0.00327365366730506776",
        "0.5, 0.559799736365675926, 0.0816844866502150903",
        "4, 0.381379881750906594, 0.613459330095864979"
    })
    void lMomentsOfPearson(double skew, double lScale, double lSkewness) {
        assertThat(PearsonIII.lScaleRatio(skew)).isCloseTo(lScale, within(3e-15));
        assertThat(PearsonIII.lSkewness(skew)).isCloseTo(lSkewness, within(2e-13));
        assertThat(PearsonIII.lScaleRatio(-skew)).isEqualTo(PearsonIII.lScaleRatio(skew));
        assertThat(PearsonIII.lSkewness(-skew)).isEqualTo(-PearsonIII.lSkewness(skew));
    }

    @Test
    void logPearsonHasLMomentsOfItsLogarithmOnly() {
        assertThatExceptionOfType(UnsupportedOperationException.class)
                .isThrownBy(() -> LogPearsonIII.of(1.5, 0.2, 0.4).lMoments())
                .withMessage("L-moments of the value are not defined here; use those of its log10");
    }

    /** Values of the sample, not of a formula: the density of each value, added up. */
    @Test
    void logLikelihoodIsTheSum() {
        Distribution gumbel = Gumbel.of(30, 8);
        // From the table of values, x = 20.5, 33 and 60.
        assertThat(gumbel.logLikelihood(new double[] {20.5, 33, 60}))
                .isCloseTo(-4.1708153096185096 - 3.1417308204708081 - 5.852959287535845, within(1e-13));
        assertThat(gumbel.logLikelihood(new double[0])).isZero();
        assertThat(GeneralizedPareto.of(10, 5, 0).logLikelihood(new double[] {12, 9}))
                .isEqualTo(Double.NEGATIVE_INFINITY);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> gumbel.logLikelihood(new double[] {1, Double.NaN}))
                .withMessage("sample must be finite, was NaN");
    }

    /** By hand: xi + alpha/k for an end above or below; of a kappa distribution with h above 0 xi + alpha (1 - h^-k)/k. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "GUMBEL | 30 8 | -Infinity | Infinity",
                "GEV | 30 8 0.2 | -Infinity | 70",
                "GEV | 30 8 -0.2 | -10 | Infinity",
                "GEV | 30 8 0 | -Infinity | Infinity",
                "GENERALIZED_LOGISTIC | 30 8 0.2 | -Infinity | 70",
                "GENERALIZED_LOGISTIC | 30 8 -0.2 | -10 | Infinity",
                "GENERALIZED_NORMAL | 30 8 -0.5 | 14 | Infinity",
                "GENERALIZED_NORMAL | 30 8 0.5 | -Infinity | 46",
                "EXPONENTIAL | 10 5 | 10 | Infinity",
                "GENERALIZED_PARETO | 10 5 -0.1 | 10 | Infinity",
                "GENERALIZED_PARETO | 10 5 0.25 | 10 | 30",
                "NORMAL | 30 8 | -Infinity | Infinity",
                "LOG_NORMAL | 3.2 0.4 | 0 | Infinity",
                "PEARSON_III | 30 8 2 | 22 | Infinity",
                "PEARSON_III | 30 8 -4 | -Infinity | 34",
                "PEARSON_III | 30 8 0 | -Infinity | Infinity",
                "LOG_PEARSON_III | 2 0.5 1 | 10 | Infinity",
                "LOG_PEARSON_III | 2 0.5 -1 | 0 | 1000",
                "KAPPA | 30 8 0.5 0.25 | 14 | 46",
                "KAPPA | 30 8 0.2 -0.5 | -Infinity | 70",
                "KAPPA | 30 8 -0.2 -0.5 | -10 | Infinity",
                "KAPPA | 30 8 0 0.5 | 24.454822555520437 | Infinity",
                "WAKEBY | 2 5 0.5 3 -0.25 | 2 | 24",
                "WAKEBY | 2 5 0.5 0 0.3 | 2 | 12",
                "WAKEBY | 2 5 0 0 0 | 2 | Infinity",
                "WAKEBY | 2 5 0.5 3 0 | 2 | Infinity"
            })
    void bounds(String family, String parameters, double lower, double upper) {
        Distribution member = member(family.trim(), parameters.trim());
        if (Double.isInfinite(lower)) {
            assertThat(member.lowerBound()).isEqualTo(lower);
        } else {
            assertThat(member.lowerBound()).isCloseTo(lower, within(1e-12 * Math.max(1, Math.abs(lower))));
            assertThat(member.cdf(lower - 0.5)).isZero();
            assertThat(member.exceedance(lower - 0.5)).isEqualTo(1);
            assertThat(member.logDensity(lower - 0.5)).isEqualTo(Double.NEGATIVE_INFINITY);
            assertThat(member.quantile(1e-300)).isGreaterThanOrEqualTo(member.lowerBound());
        }
        if (Double.isInfinite(upper)) {
            assertThat(member.upperBound()).isEqualTo(upper);
        } else {
            assertThat(member.upperBound()).isCloseTo(upper, within(1e-12 * upper));
            assertThat(member.cdf(upper + 0.5)).isEqualTo(1);
            assertThat(member.exceedance(upper + 0.5)).isZero();
            assertThat(member.returnPeriod(upper + 0.5)).isInfinite();
            assertThat(member.logDensity(upper + 0.5)).isEqualTo(Double.NEGATIVE_INFINITY);
            assertThat(member.quantileOfExceedance(1e-300)).isLessThanOrEqualTo(member.upperBound());
        }
        assertThat(member.lowerBound()).isLessThan(member.upperBound());
    }

    /** Equal by all parameters and by the family; text and parameters in the order of the factory. */
    @ParameterizedTest
    @MethodSource("dev.runnel.rainfall.distribution.DistributionFamily#all")
    void membersAreValues(DistributionFamily family) {
        double[] p = Arrays.copyOf(new double[] {1.5, 0.3, 0.1, 0.2, 0.15}, family.parameterCount());
        Distribution member = family.with(p);
        assertThat(member)
                .isEqualTo(family.with(p))
                .hasSameHashCodeAs(family.with(p))
                .isNotEqualTo("member");
        assertThat(member.parameters().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .toArray())
                .containsExactly(p);
        assertThat(member.toString())
                .contains(member.getClass().getSimpleName() + "[")
                .contains(" = 1.5");
        for (int i = 0; i < p.length; i++) {
            double[] other = p.clone();
            other[i] *= 1.5;
            assertThat(member).isNotEqualTo(family.with(other));
            assertThat(member.hashCode()).isNotEqualTo(family.with(other).hashCode());
        }
        for (DistributionFamily another : DistributionFamily.all()) {
            if (another != family && another.parameterCount() == p.length) {
                assertThat(member).isNotEqualTo(another.with(p));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("dev.runnel.rainfall.distribution.DistributionFamily#all")
    void whatIsNoProbabilityOrNoNumberIsRefused(DistributionFamily family) {
        Distribution member =
                family.with(Arrays.copyOf(new double[] {1.5, 0.3, 0.1, 0.2, 0.15}, family.parameterCount()));
        for (double p : new double[] {0, 1, -0.1, 1.1, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> member.quantile(p))
                    .withMessageStartingWith("probability must be inside (0, 1), was ");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> member.quantileOfExceedance(p))
                    .withMessageStartingWith("exceedance must be inside (0, 1), was ");
        }
        for (double x : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> member.cdf(x))
                    .withMessageStartingWith("x must be finite, was ");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> member.exceedance(x))
                    .withMessageStartingWith("x must be finite, was ");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> member.logDensity(x))
                    .withMessageStartingWith("x must be finite, was ");
        }
        for (double years : new double[] {1, 0, Double.POSITIVE_INFINITY, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> member.returnLevel(years))
                    .withMessageStartingWith("years must be greater than 1 and finite among annual maxima, was ");
        }
        double[] two = {0.2, 0.3};
        for (int wrong : new int[] {1, 3}) {
            double[] out = new double[wrong];
            assertThatIllegalArgumentException().isThrownBy(() -> member.cdf(two, out));
            assertThatIllegalArgumentException().isThrownBy(() -> member.exceedance(two, out));
            assertThatIllegalArgumentException().isThrownBy(() -> member.quantile(two, out));
            assertThatIllegalArgumentException().isThrownBy(() -> member.returnLevel(new double[] {2, 3}, out));
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> member.sample(0, 1))
                .withMessage("size must be in [1, 100000000], was 0");
    }

    /** Cunnane (1978): (i - a)/(n + 1 - 2a), by hand for the second and the last of four. */
    @ParameterizedTest
    @CsvSource({
        "WEIBULL, 0.4, 0.8",
        "ADAMOWSKI, 0.388888888888888889, 0.833333333333333333",
        "CHEGODAYEV, 0.386363636363636364, 0.840909090909090909",
        "TUKEY, 0.384615384615384615, 0.846153846153846154",
        "BLOM, 0.382352941176470588, 0.852941176470588235",
        "CUNNANE, 0.380952380952380952, 0.857142857142857143",
        "GRINGORTEN, 0.378640776699029126, 0.864077669902912621",
        "HAZEN, 0.375, 0.875",
        "FILLIBEN, 0.385452, 0.840896415253714543"
    })
    void plottingPositions(PlottingPosition position, double second, double last) {
        assertThat(position.nonExceedance(2, 4)).isCloseTo(second, within(5e-7));
        assertThat(position.nonExceedance(4, 4)).isCloseTo(last, within(1e-15));
        assertThat(position.nonExceedances(4))
                .hasSize(4)
                .containsExactly(
                        position.nonExceedance(1, 4),
                        position.nonExceedance(2, 4),
                        position.nonExceedance(3, 4),
                        position.nonExceedance(4, 4));
        assertThat(position.nonExceedance(1, 4)).isCloseTo(1 - last, within(1e-15));
        assertThat(position.nonExceedance(1, 1)).isCloseTo(0.5, within(1e-15));
        for (int rank : new int[] {0, 5}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> position.nonExceedance(rank, 4))
                    .withMessage("rank must be in [1, 4], was " + rank);
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> position.nonExceedance(1, 0))
                .withMessage("size must be at least 1, was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> position.nonExceedances(0))
                .withMessage("size must be in [1, 100000000], was 0");
    }

    /** What a search may try: inside the range the value, beyond it most of the way there, or the end itself but for a hair. */
    @Test
    void rangesOfParameters() {
        Parameter shape = Parameter.shape("k").within(-1, 3);
        assertThat(shape.admits(-1)).isFalse();
        assertThat(shape.admits(Math.nextUp(-1.0))).isTrue();
        assertThat(shape.admits(3)).isFalse();
        assertThat(shape.admits(Math.nextDown(3.0))).isTrue();
        assertThat(shape.toward(1, 2)).isEqualTo(2);
        assertThat(shape.toward(1, 9)).isCloseTo(2.9, within(1e-15));
        assertThat(shape.toward(1, -9)).isCloseTo(-0.9, within(1e-15));
        assertThat(shape.nearest(2)).isEqualTo(2);
        assertThat(shape.nearest(3)).isCloseTo(3 - 3e-10, within(1e-15));
        assertThat(shape.nearest(9)).isCloseTo(3 - 3e-10, within(1e-15));
        assertThat(shape.nearest(-1)).isCloseTo(-1 + 1e-10, within(1e-15));
        assertThat(shape.nearest(-9)).isCloseTo(-1 + 1e-10, within(1e-15));
        assertThat(Parameter.scale("alpha").nearest(0)).isEqualTo(1e-10);
        assertThat(shape.hasUnit()).isFalse();
        assertThat(shape).hasToString("k");
        assertThat(shape.isScale()).isFalse();
        assertThat(Parameter.scale("alpha").isScale()).isTrue();
        assertThat(Parameter.scale("alpha").hasUnit()).isTrue();
        assertThat(Parameter.location("xi").hasUnit()).isTrue();
        assertThat(Parameter.location("xi").isScale()).isFalse();
        assertThat(Parameter.shape("k").within(0, 1).isScale())
                .as("without a unit it is no scale")
                .isFalse();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> shape.within(1, 1))
                .withMessage("lowest must be below highest, were 1 and 1");
    }

    /** 1, 2, 4, 9: deviations -3, -2, 0, 5, their squares 38 and cubes 90; skew 4 · 90/(3 · 2 s³) with s² = 38/3. */
    @Test
    void momentsOfASmallSampleByHand() {
        SampleMoments m = SampleMoments.of(9, 1, 4, 2);
        assertThat(m.size()).isEqualTo(4);
        assertThat(m.mean()).isCloseTo(4, within(1e-15));
        assertThat(m.standardDeviation()).isCloseTo(Math.sqrt(38 / 3.0), within(1e-15));
        assertThat(m.skew()).isCloseTo(60 / Math.pow(38 / 3.0, 1.5), within(1e-14));
        assertThat(m).hasToString("SampleMoments[n = 4, mean = 4, sd = 3.55903, skew = 1.3309]");
    }

    /** K = 3.13668 in a hundred years: 10/√25 · √(1 + 1.13955 K + 1.1 K²), worked apart. */
    @Test
    void standardErrorOfAGumbelFitByMoments() {
        double k = Math.sqrt(6) / Math.PI * (-Math.log(-Math.log1p(-0.01)) - 0.57721566490153286);
        double expected = 2 * Math.sqrt(1 + 1.1395470994 * k + 1.1 * k * k);
        assertThat(expected).isBetween(7.84, 7.86);
        assertThat(Gumbel.momentsStandardError(10, 25, 100)).isCloseTo(expected, within(1e-9));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.momentsStandardError(0, 25, 100))
                .withMessageStartingWith("standardDeviation must be greater than 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Gumbel.momentsStandardError(10, 3, 100))
                .withMessage("sampleSize must be at least 4, was 3");
    }
}
