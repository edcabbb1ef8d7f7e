package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * The Pearson type III distribution by mean &mu;, standard deviation &sigma; and skew &gamma;: a gamma distribution of
 * shape 4/&gamma;&sup2; moved and scaled, mirrored where &gamma; is negative, the normal where it is 0. Source: Hosking
 * and Wallis (1997), Regional Frequency Analysis, appendix A.9.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PearsonIII implements Distribution {
    private static final double LARGEST_SKEW = 50;

    private final double mean;
    private final double standardDeviation;
    private final double skew;

    private PearsonIII(double mean, double standardDeviation, double skew) {
        this.mean = Require.finite("mean", mean, "");
        this.standardDeviation = Require.positive("standardDeviation", standardDeviation, "");
        this.skew = Require.inRange("skew", skew, -LARGEST_SKEW, LARGEST_SKEW, "");
    }

    /**
     * Returns the distribution with the given parameters.
     *
     * @param mean &mu;; finite
     * @param standardDeviation &sigma;; greater than 0
     * @param skew &gamma;; in [-50, 50]
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static PearsonIII of(double mean, double standardDeviation, double skew) {
        return new PearsonIII(mean, standardDeviation, skew);
    }

    /** Returns &lambda;<sub>2</sub>/&sigma;. */
    static double lScaleRatio(double skew) {
        return StandardPearson.lScale(Math.abs(skew));
    }

    /** Returns the L-skewness, which grows strictly with the skew. */
    static double lSkewness(double skew) {
        return Math.signum(skew) * StandardPearson.lSkewness(Math.abs(skew));
    }

    @Override
    public double cdf(double x) {
        double k = standardised(x);
        return skew >= 0 ? StandardPearson.cdf(k, skew) : StandardPearson.exceedance(-k, -skew);
    }

    @Override
    public double exceedance(double x) {
        double k = standardised(x);
        return skew >= 0 ? StandardPearson.exceedance(k, skew) : StandardPearson.cdf(-k, -skew);
    }

    @Override
    public double logDensity(double x) {
        double k = standardised(x);
        return StandardPearson.logDensity(skew >= 0 ? k : -k, Math.abs(skew)) - Math.log(standardDeviation);
    }

    @Override
    public double quantile(double probability) {
        Probability.inside("probability", probability);
        return mean
                + standardDeviation
                        * (skew >= 0
                                ? StandardPearson.quantile(probability, skew)
                                : -StandardPearson.quantileOfExceedance(probability, -skew));
    }

    @Override
    public double quantileOfExceedance(double exceedance) {
        Probability.inside("exceedance", exceedance);
        return mean
                + standardDeviation
                        * (skew >= 0
                                ? StandardPearson.quantileOfExceedance(exceedance, skew)
                                : -StandardPearson.quantile(exceedance, -skew));
    }

    @Override
    public double lowerBound() {
        return skew > 0 ? mean - 2 * standardDeviation / skew : Double.NEGATIVE_INFINITY;
    }

    @Override
    public double upperBound() {
        return skew < 0 ? mean - 2 * standardDeviation / skew : Double.POSITIVE_INFINITY;
    }

    @Override
    public LMoments lMoments() {
        double ratio = lScaleRatio(skew);
        double magnitude = Math.abs(skew);
        double lambda4 = NormalScaleIntegral.lambda4(
                z -> z < 0
                        ? StandardPearson.quantile(StandardNormal.cdf(z), magnitude)
                        : StandardPearson.quantileOfExceedance(StandardNormal.exceedance(z), magnitude),
                0);
        return LMoments.of(mean, standardDeviation * ratio, lSkewness(skew), lambda4 / ratio);
    }

    private double standardised(double x) {
        return (Require.finite("x", x, "") - mean) / standardDeviation;
    }

    @Override
    public Map<String, Double> parameters() {
        return ShapedDistribution.named("mu", mean, "sigma", standardDeviation, "gamma", skew);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PearsonIII that && parameters().equals(that.parameters());
    }

    @Override
    public int hashCode() {
        return parameters().hashCode();
    }

    @Override
    public String toString() {
        return ShapedDistribution.describe(this);
    }

    /** Returns the family with its fits. The likelihood grows without limit for a skew of 2 or more. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "PEARSON_III",
                        p -> of(p[0], p[1], p[2]),
                        Parameter.location("mu"),
                        Parameter.scale("sigma"),
                        Parameter.shape("gamma").within(-2, 2))
                .withLMoments(PearsonIII::fromLMoments)
                .withMoments(m -> of(m.mean(), m.standardDeviation(), m.skew()))
                .withLikelihood();
    }

    static PearsonIII fromLMoments(LMoments m) {
        double tau3 = m.tau3OfShape();
        double skew = tau3 == 0
                ? 0
                : RootFinder.find(
                        "skew for tau3 = " + Text.number(tau3), g -> lSkewness(g) - tau3, -LARGEST_SKEW, LARGEST_SKEW);
        return of(m.lambda1(), m.lambda2() / lScaleRatio(skew), skew);
    }

    @Override
    public double mean() {
        return mean;
    }

    @Override
    public double variance() {
        return standardDeviation * standardDeviation;
    }

    double skew() {
        return skew;
    }
}
