package dev.runnel.rainfall.frequency;

import org.apiguardian.api.API;

/**
 * How parameters are estimated from a sample.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum FitMethod {
    /** Unbiased L-moments of the sample equal those of the distribution; every family. */
    L_MOMENTS,
    /** Mean, standard deviation and skew equal; every family but the generalised Pareto, normal, logistic and kappa. */
    MOMENTS,
    /** The likelihood is greatest; the families whose likelihood has a maximum inside: Gumbel, GEV, generalised
     * logistic and normal, normal and lognormal. */
    MAXIMUM_LIKELIHOOD
}
