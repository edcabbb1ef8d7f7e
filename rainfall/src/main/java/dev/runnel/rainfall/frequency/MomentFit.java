package dev.runnel.rainfall.frequency;

/** Parameters from mean, standard deviation and skew. */
final class MomentFit {
    private static final double LOWEST_GEV_SHAPE = -0.33;
    private static final double HIGHEST_GEV_SHAPE = 3;

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
            default ->
                throw new IllegalArgumentException(
                        "family must be EXPONENTIAL, GUMBEL, NORMAL, LOG_NORMAL, PEARSON_III, LOG_PEARSON_III or GEV for a"
                                + " fit by moments, was " + family);
        };
    }

    private static Gumbel gumbel(SampleMoments m) {
        double scale = m.standardDeviation() * Math.sqrt(6) / Math.PI;
        return Gumbel.of(m.mean() - scale * GumbelVariateDistribution.EULER, scale);
    }

    private static Distribution gev(SampleMoments m) {
        double k = RootFinder.find(
                "shape for skew = " + m.skew(),
                s -> GevMoments.skew(s) - m.skew(),
                LOWEST_GEV_SHAPE,
                HIGHEST_GEV_SHAPE);
        double scale = m.standardDeviation() / GevMoments.deviation(k);
        return Gev.of(m.mean() - scale * Gev.meanRatio(k), scale, k);
    }
}
