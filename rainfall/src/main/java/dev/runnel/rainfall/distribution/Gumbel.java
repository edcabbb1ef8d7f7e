package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * The Gumbel distribution (extreme value type I), F(x) = exp(-exp(-(x - &xi;)/&alpha;)). Source: Hosking and Wallis
 * (1997), Regional Frequency Analysis, appendix A.4.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Gumbel extends GumbelVariateDistribution {
    private static final double TAU_3 = 2 * Math.log(3) / Math.log(2) - 3;
    private static final double TAU_4 = 16 - 10 * Math.log(3) / Math.log(2);

    /** 12 &radic;6 &zeta;(3)/&pi;&sup3;. */
    private static final double SKEW = 12 * Math.sqrt(6) * 1.2020569031595942 / (Math.PI * Math.PI * Math.PI);

    private static final double KURTOSIS = 5.4;

    private Gumbel(double location, double scale) {
        super(location, scale, 0);
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param location &xi;, the mode; finite
     * @param scale &alpha;; greater than 0
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static Gumbel of(double location, double scale) {
        return new Gumbel(location, scale);
    }

    @Override
    public LMoments lMoments() {
        return LMoments.of(location + scale * EULER, scale * Math.log(2), TAU_3, TAU_4);
    }

    @Override
    public Map<String, Double> parameters() {
        return named("xi", location, "alpha", scale);
    }

    /** Returns the family with its fits. Source of the moments: the variance is &pi;&sup2;&alpha;&sup2;/6. */
    static DistributionFamily family() {
        return DistributionFamily.of("GUMBEL", p -> of(p[0], p[1]), Parameter.location("xi"), Parameter.scale("alpha"))
                .withLMoments(m -> withMean(m.lambda1(), m.lambda2() / Math.log(2)))
                .withMoments(m -> withMean(m.mean(), m.standardDeviation() * Math.sqrt(6) / Math.PI))
                .withLikelihood();
    }

    private static Gumbel withMean(double mean, double scale) {
        return of(mean - scale * EULER, scale);
    }

    /**
     * Returns the standard error of a return level fitted by moments, s/&radic;n &radic;(1 + &gamma; K + (&kappa; - 1) K&sup2;/4)
     * with the frequency factor K = (x - mean)/s, the skew &gamma; = 1.1395 and the kurtosis &kappa; = 5.4 of the distribution.
     * Source: Kite (1975), Confidence limits for design events, Water Resources Research 11(1), 48-53 (from memory; he prints
     * 1.1396 and 1.1).
     *
     * @param standardDeviation s of the sample; greater than 0
     * @param sampleSize n; at least 4
     * @param years return period among annual maxima, years; greater than 1, finite
     * @return standard error, in the unit of s
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double momentsStandardError(double standardDeviation, int sampleSize, double years) {
        Require.positive("standardDeviation", standardDeviation, "");
        Require.atLeast("sampleSize", sampleSize, 4);
        Gumbel standard = withMean(0, Math.sqrt(6) / Math.PI);
        double k = standard.returnLevel(years);
        return standardDeviation / Math.sqrt(sampleSize) * Math.sqrt(1 + SKEW * k + (KURTOSIS - 1) / 4 * k * k);
    }

    @Override
    public double mean() {
        return location + scale * EULER;
    }

    @Override
    public double variance() {
        return Math.PI * Math.PI / 6 * scale * scale;
    }
}
