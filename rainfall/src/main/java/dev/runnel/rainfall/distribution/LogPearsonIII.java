package dev.runnel.rainfall.distribution;

import org.apiguardian.api.API;

/**
 * The log-Pearson type III distribution: log10 of the value is {@link PearsonIII}. Source: England and others (2019),
 * Guidelines for determining flood flow frequency, Bulletin 17C, U.S. Geological Survey Techniques and Methods 4-B5.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class LogPearsonIII extends LogDistribution {
    private static final double SERIES_BELOW = 0.1;

    /** The last term is below 1e-16 there. */
    private static final int TERMS = 17;

    private final PearsonIII ofLogarithm;

    private LogPearsonIII(PearsonIII ofLogarithm) {
        super(ofLogarithm, 10);
        this.ofLogarithm = ofLogarithm;
    }

    /**
     * Returns the distribution with the given moments of log10 of the value.
     *
     * @param mean mean of log10; finite
     * @param standardDeviation standard deviation of log10; greater than 0
     * @param skew skew of log10; in [-50, 50]
     * @return the distribution
     * @throws IllegalArgumentException if a parameter is out of range
     */
    public static LogPearsonIII of(double mean, double standardDeviation, double skew) {
        return new LogPearsonIII(PearsonIII.of(mean, standardDeviation, skew));
    }

    /**
     * {@inheritDoc}
     *
     * @throws UnsupportedOperationException always: they have no closed form, and none are used in a fit of this
     *     family, which is made on the logarithms
     */
    @Override
    public LMoments lMoments() {
        throw new UnsupportedOperationException("L-moments of the value are not defined here; use those of its log10");
    }

    /** Returns the family with its fits, made on the decimal logarithms. */
    static DistributionFamily family() {
        return DistributionFamily.of(
                        "LOG_PEARSON_III",
                        p -> of(p[0], p[1], p[2]),
                        Parameter.location("mu"),
                        Parameter.scale("sigma"),
                        Parameter.shape("gamma").within(-2, 2))
                .ofLogarithms(Logarithms::decimal)
                .withLMoments(m -> new LogPearsonIII(PearsonIII.fromLMoments(m)))
                .withMoments(m -> of(m.mean(), m.standardDeviation(), m.skew()))
                .withLikelihood();
    }

    /**
     * {@inheritDoc}
     *
     * <p>With the logarithm to base e of mean &mu;, standard deviation &sigma; and skew &gamma;: exp(&mu; - 2&sigma;/&gamma;)
     * (1 - &sigma;&gamma;/2)<sup>-4/&gamma;&sup2;</sup>; infinite for &sigma;&gamma; of 2 or more.
     */
    @Override
    public double mean() {
        return Math.exp(logMoment(1));
    }

    @Override
    public double variance() {
        double first = logMoment(1);
        double second = logMoment(2);
        return second == Double.POSITIVE_INFINITY ? second : Math.exp(2 * first) * Math.expm1(second - 2 * first);
    }

    /** Returns the logarithm of the mean of x<sup>r</sup>. */
    private double logMoment(int r) {
        double sigma = r * Math.log(10) * Math.sqrt(ofLogarithm.variance());
        double u = 0.5 * sigma * ofLogarithm.skew();
        return u >= 1
                ? Double.POSITIVE_INFINITY
                : r * Math.log(10) * ofLogarithm.mean() + sigma * sigma * beyondLinear(u);
    }

    /** Returns -(ln(1 - u) + u)/u&sup2;, 1/2 at 0, by its series where that cancels. */
    private static double beyondLinear(double u) {
        if (Math.abs(u) > SERIES_BELOW) {
            return -(Math.log1p(-u) + u) / (u * u);
        }
        double sum = 0;
        for (int n = TERMS; n >= 2; n--) {
            sum = sum * u + 1.0 / n;
        }
        return sum;
    }
}
