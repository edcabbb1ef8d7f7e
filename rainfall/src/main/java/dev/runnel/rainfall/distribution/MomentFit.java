package dev.runnel.rainfall.distribution;

/** Parameters from mean, standard deviation and skew. */
final class MomentFit {
    private static final double LOWEST_GEV_SHAPE = -0.33;
    private static final double HIGHEST_GEV_SHAPE = 3;
    private static final double HIGHEST_NORMAL_SHAPE = 3;
    private static final double HIGHEST_PARETO_SHAPE = 1000;

    private MomentFit() {}

    static Distribution of(DistributionFamily family, double[] sample) {
        return switch (family) {
            case LOG_NORMAL -> {
                SampleMoments m = SampleMoments.of(Logarithms.natural(sample));
                yield LogNormal.of(m.mean(), m.standardDeviation());
            }
            case LOG_PEARSON_III -> {
                SampleMoments m = SampleMoments.of(Logarithms.decimal(sample));
                yield LogPearsonIII.of(m.mean(), m.standardDeviation(), m.skew());
            }
            default -> of(family, SampleMoments.of(sample));
        };
    }

    private static Distribution of(DistributionFamily family, SampleMoments m) {
        return switch (family) {
            case EXPONENTIAL -> Exponential.of(m.mean() - m.standardDeviation(), m.standardDeviation());
            case GUMBEL -> gumbel(m);
            case NORMAL -> Normal.of(m.mean(), m.standardDeviation());
            case PEARSON_III -> PearsonIII.of(m.mean(), m.standardDeviation(), m.skew());
            case GEV -> gev(m);
            case GENERALIZED_LOGISTIC -> generalizedLogistic(m);
            case GENERALIZED_NORMAL -> generalizedNormal(m);
            case GENERALIZED_PARETO -> generalizedPareto(m);
            default ->
                throw new IllegalArgumentException(
                        "family must be one with at most three parameters for a fit by moments, since the fourth moment"
                                + " of so few values says too little, was " + family);
        };
    }

    private static Gumbel gumbel(SampleMoments m) {
        double scale = m.standardDeviation() * Math.sqrt(6) / Math.PI;
        return Gumbel.of(m.mean() - scale * GumbelVariateDistribution.EULER, scale);
    }

    private static Distribution gev(SampleMoments m) {
        double k = RootFinder.find(
                "shape for skew = " + m.skew(),
                s -> PowerMoments.GEV.skew(s) - m.skew(),
                LOWEST_GEV_SHAPE,
                HIGHEST_GEV_SHAPE);
        double scale = m.standardDeviation() / PowerMoments.GEV.deviation(k);
        return Gev.of(m.mean() - scale * Gev.meanRatio(k), scale, k);
    }

    private static Distribution generalizedLogistic(SampleMoments m) {
        double k = RootFinder.find(
                "shape for skew = " + m.skew(),
                s -> PowerMoments.LOGISTIC.skew(s) - m.skew(),
                LOWEST_GEV_SHAPE,
                -LOWEST_GEV_SHAPE);
        double scale = m.standardDeviation() / PowerMoments.LOGISTIC.deviation(k);
        return GeneralizedLogistic.of(m.mean() - scale * GeneralizedLogistic.meanRatio(k), scale, k);
    }

    /** The variance is (w&sup2; - w)/k&sup2; and the skew (w + 2) &radic;(w - 1) with w = exp(k&sup2;). */
    private static Distribution generalizedNormal(SampleMoments m) {
        double size = RootFinder.find(
                "shape for skew = " + m.skew(),
                s -> (Math.exp(s * s) + 2) * Math.sqrt(Math.expm1(s * s)) - Math.abs(m.skew()),
                0,
                HIGHEST_NORMAL_SHAPE);
        double k = -Math.signum(m.skew()) * size;
        double scale = k == 0
                ? m.standardDeviation()
                : m.standardDeviation() * size / Math.sqrt(Math.exp(k * k) * Math.expm1(k * k));
        return GeneralizedNormal.of(m.mean() - scale * GeneralizedNormal.meanRatio(k), scale, k);
    }

    /**
     * The variance is 1/((1 + k)&sup2; (1 + 2k)) and the skew 2 (1 - k) &radic;(1 + 2k)/(1 + 3k). Source: Hosking and
     * Wallis (1987), Parameter and quantile estimation for the generalized Pareto distribution, Technometrics 29(3).
     */
    private static Distribution generalizedPareto(SampleMoments m) {
        double k = RootFinder.find(
                "shape for skew = " + m.skew(),
                s -> 2 * (1 - s) * Math.sqrt(1 + 2 * s) / (1 + 3 * s) - m.skew(),
                LOWEST_GEV_SHAPE,
                HIGHEST_PARETO_SHAPE);
        double scale = m.standardDeviation() * (1 + k) * Math.sqrt(1 + 2 * k);
        return GeneralizedPareto.of(m.mean() - scale / (1 + k), scale, k);
    }
}
