package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The generalised Pareto distribution, x = &xi; + &alpha;/k (1 - (1 - F)<sup>k</sup>), the law of exceedances over a
 * high threshold &xi;. Source: Hosking and Wallis (1997), Regional Frequency Analysis, appendix A.5.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GeneralizedPareto extends ExponentialVariateDistribution {
    /** Chosen here: a skew of -29.8, which no sample of fewer than 880 values has. */
    private static final double LARGEST_SHAPE_OF_SKEW = 1000;

    private GeneralizedPareto(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the lower bound; finite
     * @param scale &alpha;; greater than 0
     * @param shape k; finite
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static GeneralizedPareto of(double location, double scale, double shape) {
        return new GeneralizedPareto(location, scale, shape);
    }

    /** Returns the family with its fits, the lower bound estimated. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "GENERALIZED_PARETO",
                        p -> of(p[0], p[1], p[2]),
                        Parameter.location("xi"),
                        Parameter.scale("alpha"),
                        Parameter.shape("k"))
                .withLMoments(GeneralizedPareto::fromLMoments)
                .withMoments(GeneralizedPareto::fromMoments)
                .withoutLikelihood(
                        ", whose likelihood has no maximum while the bound is unknown; fit peaks above a threshold");
    }

    private static GeneralizedPareto fromLMoments(LMoments m) {
        double tau3 = m.tau3OfShape();
        double shape = (1 - 3 * tau3) / (1 + tau3);
        double scale = (1 + shape) * (2 + shape) * m.lambda2();
        return of(m.lambda1() - (2 + shape) * m.lambda2(), scale, shape);
    }

    /**
     * The variance is 1/((1 + k)&sup2; (1 + 2k)) and the skew 2 (1 - k) &radic;(1 + 2k)/(1 + 3k). Source: Hosking and
     * Wallis (1987), Parameter and quantile estimation for the generalized Pareto distribution, Technometrics 29(3).
     */
    private static GeneralizedPareto fromMoments(SampleMoments m) {
        double k = RootFinder.find(
                "shape for skew = " + Text.number(m.skew()),
                s -> 2 * (1 - s) * Math.sqrt(1 + 2 * s) / (1 + 3 * s) - m.skew(),
                PowerMoments.SMALLEST_SHAPE,
                LARGEST_SHAPE_OF_SKEW);
        double scale = m.standardDeviation() * (1 + k) * Math.sqrt(1 + 2 * k);
        return of(m.mean() - scale / (1 + k), scale, k);
    }

    /**
     * Returns the family above a known threshold: scale and shape are estimated, by likelihood too. Its members are
     * distributions of a peak, which know no years; for return levels see
     * {@link dev.runnel.rainfall.frequency.PeaksOverThreshold}. Source: Hosking and Wallis (1987), Parameter and quantile
     * estimation for the generalized Pareto distribution, Technometrics 29(3), 339-349.
     *
     * @param threshold &xi;, not estimated; finite
     * @return the family
     * @throws IllegalArgumentException if the threshold is not finite
     */
    public static DistributionFamily above(double threshold) {
        Require.finite("threshold", threshold, "");
        return DistributionFamily.of(
                        "GENERALIZED_PARETO above " + Text.number(threshold),
                        p -> of(threshold, p[0], p[1]),
                        Parameter.scale("alpha"),
                        Parameter.shape("k").within(Double.NEGATIVE_INFINITY, 1))
                .withLMoments(m -> aboveByLMoments(threshold, m))
                .withMoments(m -> {
                    double excess = excess(threshold, m.mean());
                    double squares = excess * excess / (m.standardDeviation() * m.standardDeviation());
                    return of(threshold, 0.5 * excess * (squares + 1), 0.5 * (squares - 1));
                })
                .withLikelihood((family, peaks) -> aboveByLikelihood(threshold, family, peaks))
                .ofPeaks();
    }

    private static LikelihoodFit aboveByLikelihood(double threshold, DistributionFamily family, double[] peaks) {
        for (double peak : peaks) {
            if (!(peak > threshold)) {
                throw new IllegalArgumentException(
                        "peaks must be above threshold " + Text.number(threshold) + ", was " + Text.number(peak));
            }
        }
        double[] start = family.valuesOf(family.fromLMoments(LMoments.ofSample(peaks)));
        return LikelihoodFit.search(family, peaks, List.of(start));
    }

    private static GeneralizedPareto aboveByLMoments(double threshold, LMoments m) {
        double excess = excess(threshold, m.lambda1());
        double shape = excess / m.lambda2() - 2;
        if (!(shape > -1)) {
            throw new NoFitException("lambda2 must be below the mean excess " + Text.number(excess) + " over "
                    + Text.number(threshold) + ", was " + Text.number(m.lambda2()));
        }
        return of(threshold, (1 + shape) * excess, shape);
    }

    private static double excess(double threshold, double mean) {
        if (!(mean > threshold)) {
            throw new NoFitException(
                    "mean must be above threshold " + Text.number(threshold) + ", was " + Text.number(mean));
        }
        return mean - threshold;
    }
}
