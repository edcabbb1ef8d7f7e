package dev.runnel.rainfall.distribution;

import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A distribution fitted to a sample, with the way it was found. Immutable and thread-safe.
 *
 * @param family the family
 * @param method how the parameters were estimated
 * @param sampleSize number of values
 * @param distribution the fitted distribution
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Fit(DistributionFamily family, FitMethod method, int sampleSize, Distribution distribution) {
    private static final int SMALLEST_SAMPLE = 4;

    /**
     * Checks that nothing is missing.
     *
     * @param family the family
     * @param method how the parameters were estimated
     * @param sampleSize number of values
     * @param distribution the fitted distribution
     */
    public Fit {
        Objects.requireNonNull(family, "family");
        Objects.requireNonNull(method, "method");
        Objects.requireNonNull(distribution, "distribution");
    }

    /**
     * Fits a family to a sample.
     *
     * @param family the family
     * @param method how to estimate the parameters; not every family has every method
     * @param sample values, for example annual maxima; more of them than the family has parameters, at least 4, not all
     *     equal; not modified
     * @return the fit
     * @throws IllegalArgumentException if the sample is too small, not finite or all equal, the family has no fit by
     *     that method, or no member of it fits
     */
    public static Fit of(DistributionFamily family, FitMethod method, double... sample) {
        if (sample.length <= family.parameterCount()) {
            throw new IllegalArgumentException("sample must have more values than " + family + " has parameters, "
                    + family.parameterCount() + ", had " + sample.length);
        }
        Samples.check(sample, SMALLEST_SAMPLE);
        Distribution distribution = switch (method) {
            case L_MOMENTS -> family.fromLMoments(LMoments.ofSample(transformed(family, sample)));
            case MOMENTS -> MomentFit.of(family, sample);
            case MAXIMUM_LIKELIHOOD -> LikelihoodFit.of(family, sample).distribution();
        };
        return new Fit(family, method, sample.length, distribution);
    }

    private static double[] transformed(DistributionFamily family, double[] sample) {
        return switch (family) {
            case LOG_NORMAL -> Logarithms.natural(sample);
            case LOG_PEARSON_III -> Logarithms.decimal(sample);
            default -> sample;
        };
    }

    /**
     * Returns the value exceeded on average once in the given number of years, if the sample were annual maxima.
     *
     * @param years return period among annual maxima, years; greater than 1
     * @return the quantile
     * @throws IllegalArgumentException if {@code years} is not greater than 1
     */
    public double quantile(double years) {
        return distribution.quantileOfReturnPeriod(years);
    }

    @Override
    public String toString() {
        return distribution + " fitted to " + sampleSize + " values by " + method.toText();
    }
}
