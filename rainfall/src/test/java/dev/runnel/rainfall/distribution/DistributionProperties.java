package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class DistributionProperties {
    @Property
    void exceedanceOfItsQuantileIsTheProbability(
            @ForAll("distributions") Distribution distribution, @ForAll("tailProbabilities") double p) {
        double x = distribution.quantileOfExceedance(p);
        assertThat(distribution.exceedance(x) / p).isCloseTo(1, within(conditioned(distribution, x, p)));
    }

    @Property
    void cdfOfItsQuantileIsTheProbability(
            @ForAll("distributions") Distribution distribution, @ForAll("tailProbabilities") double p) {
        double x = distribution.quantile(p);
        assertThat(distribution.cdf(x) / p).isCloseTo(1, within(conditioned(distribution, x, p)));
    }

    @Property
    void quantilesGrowWithTheReturnPeriod(
            @ForAll("distributions") Distribution distribution, @ForAll("tailProbabilities") double p) {
        assertThat(distribution.quantileOfExceedance(p * 0.9))
                .isGreaterThanOrEqualTo(distribution.quantileOfExceedance(p));
        assertThat(distribution.quantileOfExceedance(p))
                .isBetween(distribution.lowerBound(), distribution.upperBound());
    }

    @Property(tries = 200)
    void aFitHasTheLMomentsItWasMadeFrom(
            @ForAll("families") DistributionFamily family, @ForAll("lSkewness") double tau3) {
        LMoments wanted = LMoments.of(30, 6, tau3, 0.9 * (5 * tau3 * tau3 + 1) / 6);
        LMoments got = family.fromLMoments(wanted).lMoments();
        assertThat(got.lambda1()).isCloseTo(30, within(1e-9));
        assertThat(got.lambda2()).isCloseTo(6, within(1e-9));
        if (family.parameterCount() > 2) {
            assertThat(got.tau3()).isCloseTo(tau3, within(1e-10));
        }
        if (family.parameterCount() > 3) {
            assertThat(got.tau4()).isCloseTo(wanted.tau4(), within(1e-10));
        }
    }

    /** What rounding x to a double does to the probability: the relative slope of the tail times the spacing of x. */
    private static double conditioned(Distribution distribution, double x, double p) {
        double slope = distribution.density(x) / p;
        return 1e-12 + 8 * slope * Math.ulp(x) + 8 * slope * Math.ulp(30);
    }

    @Provide
    Arbitrary<Distribution> distributions() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 11),
                        Arbitraries.doubles().between(-0.45, 0.9).ofScale(6),
                        Arbitraries.doubles().between(0.5, 15).ofScale(4))
                .as((kind, shape, scale) -> switch (kind) {
                    case 0 -> Gumbel.of(30, scale);
                    case 1 -> Gev.of(30, scale, shape);
                    case 2 -> GeneralizedLogistic.of(30, scale, shape);
                    case 3 -> GeneralizedPareto.of(30, scale, shape);
                    case 4 -> GeneralizedNormal.of(30, scale, shape);
                    case 5 -> Exponential.of(30, scale);
                    case 6 -> Kappa.of(30, scale, shape, 0.3 - shape);
                    case 7 -> PearsonIII.of(30, scale, 3 * shape);
                    case 8 -> PearsonIII.of(30, scale, 0.1 * shape * shape * shape);
                    case 9 -> Gev.of(30, scale, 1e-4 * shape * shape * shape);
                    case 10 -> Kappa.of(30, scale, 1e-4 * shape * shape * shape, 1e-5 * (shape - 0.3));
                    default -> LogNormal.of(3, scale / 15);
                });
    }

    @Provide
    Arbitrary<Double> tailProbabilities() {
        return Arbitraries.doubles().between(-6, -0.02).ofScale(6).map(exponent -> Math.pow(10, exponent));
    }

    @Provide
    Arbitrary<DistributionFamily> families() {
        return Arbitraries.of(List.of(
                DistributionFamily.EXPONENTIAL,
                DistributionFamily.GUMBEL,
                DistributionFamily.NORMAL,
                DistributionFamily.GEV,
                DistributionFamily.GENERALIZED_LOGISTIC,
                DistributionFamily.GENERALIZED_NORMAL,
                DistributionFamily.GENERALIZED_PARETO,
                DistributionFamily.PEARSON_III,
                DistributionFamily.KAPPA));
    }

    @Provide
    Arbitrary<Double> lSkewness() {
        return Arbitraries.doubles().between(-0.3, 0.6).ofScale(6);
    }
}
