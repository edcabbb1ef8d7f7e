package dev.runnel.rainfall.distribution;

import org.apiguardian.api.API;

/**
 * The families of distributions that a record can be fitted with.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum DistributionFamily {
    /** {@link Exponential}, two parameters. */
    EXPONENTIAL(2),
    /** {@link Gumbel}, two parameters. */
    GUMBEL(2),
    /** {@link Normal}, two parameters. */
    NORMAL(2),
    /** {@link LogNormal} with two parameters. */
    LOG_NORMAL(2),
    /** {@link Gev}, three parameters. */
    GEV(3),
    /** {@link GeneralizedLogistic}, three parameters. */
    GENERALIZED_LOGISTIC(3),
    /** {@link GeneralizedNormal}, three parameters. */
    GENERALIZED_NORMAL(3),
    /** {@link GeneralizedPareto}, three parameters. */
    GENERALIZED_PARETO(3),
    /** {@link PearsonIII}, three parameters. */
    PEARSON_III(3),
    /** {@link LogPearsonIII}, three parameters. */
    LOG_PEARSON_III(3),
    /** {@link Kappa}, four parameters. */
    KAPPA(4);

    private final int parameterCount;

    DistributionFamily(int parameterCount) {
        this.parameterCount = parameterCount;
    }

    /**
     * Returns how many parameters a fit estimates.
     *
     * @return 2 to 4
     */
    public int parameterCount() {
        return parameterCount;
    }

    /**
     * Returns the distribution of this family that has the given L-moments.
     *
     * @param moments L-moments; a family with two parameters uses the first two, with three the L-skewness as well. For
     *     the families of the logarithm they are those of log10 ({@link #LOG_PEARSON_III}) or ln ({@link #LOG_NORMAL})
     * @return the distribution
     * @throws IllegalArgumentException if no member of the family has them
     */
    public Distribution fromLMoments(LMoments moments) {
        return LMomentFit.of(this, moments);
    }
}
