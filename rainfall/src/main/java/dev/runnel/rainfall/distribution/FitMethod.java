package dev.runnel.rainfall.distribution;

import org.apiguardian.api.API;

/**
 * How parameters are estimated from a sample.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum FitMethod {
    /** Unbiased L-moments of the sample equal those of the distribution; every family. */
    L_MOMENTS("L-moments"),
    /** Mean, standard deviation and skew equal; every family but kappa. Of the logarithms for the families of those. */
    MOMENTS("moments"),
    /**
     * The likelihood is greatest; every family but kappa and the generalised Pareto with an unknown bound. The latter is
     * fitted above a known threshold by {@link GeneralizedPareto#above}.
     */
    MAXIMUM_LIKELIHOOD("maximum likelihood");

    private final String text;

    FitMethod(String text) {
        this.text = text;
    }

    /**
     * Returns the name of the method in a sentence.
     *
     * @return for example {@code L-moments}
     */
    public String toText() {
        return text;
    }
}
