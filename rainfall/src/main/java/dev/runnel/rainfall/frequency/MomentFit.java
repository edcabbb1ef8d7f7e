package dev.runnel.rainfall.frequency;

import org.apache.commons.numbers.gamma.Gamma;

/** Parameters from mean, standard deviation and skew. */
final class MomentFit {
    private static final double LOWEST_GEV_SHAPE = -0.33;
    private static final double HIGHEST_GEV_SHAPE = 3;
    private static final double GUMBEL_SKEW = 1.139547099404648657;
    private static final double GUMBEL_BELOW = 1e-3;

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
        // Near k = 0 the differences of Gamma functions cancel; there the Gumbel skew says enough.
        if (Math.abs(m.skew() - GUMBEL_SKEW) < GUMBEL_BELOW) {
            Gumbel gumbel = gumbel(m);
            return Gev.of(gumbel.location, gumbel.scale, 0);
        }
        double k = RootFinder.find(
                "shape for skew = " + m.skew(), s -> gevSkew(s) - m.skew(), LOWEST_GEV_SHAPE, HIGHEST_GEV_SHAPE);
        double g1 = Gamma.value(1 + k);
        double scale = m.standardDeviation() * Math.abs(k) / Math.sqrt(Gamma.value(1 + 2 * k) - g1 * g1);
        return Gev.of(m.mean() - scale * Gev.meanRatio(k), scale, k);
    }

    private static double gevSkew(double k) {
        if (Math.abs(k) < 1e-5) {
            return GUMBEL_SKEW;
        }
        double g1 = Gamma.value(1 + k);
        double g2 = Gamma.value(1 + 2 * k);
        double g3 = Gamma.value(1 + 3 * k);
        double variance = g2 - g1 * g1;
        return Math.signum(k) * (-g3 + 3 * g1 * g2 - 2 * g1 * g1 * g1) / (variance * Math.sqrt(variance));
    }
}
