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
    private LogPearsonIII(PearsonIII ofLogarithm) {
        super(ofLogarithm, 10);
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
}
