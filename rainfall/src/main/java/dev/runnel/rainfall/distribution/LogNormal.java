package dev.runnel.rainfall.distribution;

import org.apache.commons.numbers.gamma.Erf;
import org.apiguardian.api.API;

/**
 * The two-parameter lognormal distribution: the natural logarithm of the value is {@link Normal}. The three-parameter
 * one is {@link GeneralizedNormal}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class LogNormal extends LogDistribution {
    private final double mean;
    private final double standardDeviation;

    private LogNormal(double mean, double standardDeviation) {
        super(Normal.of(mean, standardDeviation), Math.E);
        this.mean = mean;
        this.standardDeviation = standardDeviation;
    }

    /**
     * Returns the distribution with the given moments of the natural logarithm.
     *
     * @param mean mean of ln x; finite
     * @param standardDeviation standard deviation of ln x; greater than 0
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static LogNormal of(double mean, double standardDeviation) {
        return new LogNormal(mean, standardDeviation);
    }

    /**
     * {@inheritDoc}
     *
     * <p>&lambda;<sub>1</sub> = exp(&mu; + &sigma;&sup2;/2), &lambda;<sub>2</sub> = &lambda;<sub>1</sub> erf(&sigma;/2);
     * the ratios are those of {@link GeneralizedNormal} with k = -&sigma;.
     */
    @Override
    public LMoments lMoments() {
        double lambda1 = Math.exp(mean + 0.5 * standardDeviation * standardDeviation);
        LMoments ratios = GeneralizedNormal.of(0, 1, -standardDeviation).lMoments();
        return LMoments.of(lambda1, lambda1 * Erf.value(0.5 * standardDeviation), ratios.tau3(), ratios.tau4());
    }

    /** Returns the family with its fits, made on the natural logarithms. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "LOG_NORMAL", p -> of(p[0], p[1]), Parameter.location("mu"), Parameter.scale("sigma"))
                .ofLogarithms(Logarithms::natural)
                .withLMoments(m -> of(m.lambda1(), m.lambda2() * Math.sqrt(Math.PI)))
                .withMoments(m -> of(m.mean(), m.standardDeviation()))
                .withLikelihood();
    }

    @Override
    public double mean() {
        return Math.exp(mean + 0.5 * standardDeviation * standardDeviation);
    }

    @Override
    public double variance() {
        double square = standardDeviation * standardDeviation;
        return Math.exp(2 * mean + square) * Math.expm1(square);
    }
}
