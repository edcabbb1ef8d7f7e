package dev.runnel.rainfall.distribution;

import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A distribution fitted to a sample, with the way it was found. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Fit {
    private static final int SMALLEST_SAMPLE = 4;

    private final DistributionFamily family;
    private final FitMethod method;
    private final int sampleSize;
    private final Distribution distribution;

    private Fit(DistributionFamily family, FitMethod method, int sampleSize, Distribution distribution) {
        this.family = family;
        this.method = method;
        this.sampleSize = sampleSize;
        this.distribution = distribution;
    }

    /**
     * Fits a family to a sample.
     *
     * @param family the family
     * @param method how to estimate the parameters; not every family has every method
     * @param sample values, for example annual maxima; more of them than the family has parameters, at least 4, not all
     *     equal; not modified
     * @return the fit
     * @throws IllegalArgumentException if the sample is too small, not finite or all equal, or the family has no fit by
     *     that method
     * @throws NoFitException if no member of the family fits
     */
    public static Fit of(DistributionFamily family, FitMethod method, double... sample) {
        Objects.requireNonNull(family, "family must not be null");
        Objects.requireNonNull(method, "method must not be null");
        Objects.requireNonNull(sample, "sample must not be null");
        requireSize(family, sample.length);
        Samples.check(sample, SMALLEST_SAMPLE);
        Distribution distribution = switch (method) {
            case L_MOMENTS -> family.byLMoments(sample);
            case MOMENTS -> family.fromMoments(SampleMoments.of(family.transformed(sample)));
            case MAXIMUM_LIKELIHOOD -> family.likelihood(sample).distribution();
        };
        return new Fit(family, method, sample.length, distribution);
    }

    /**
     * Returns a fit that was made elsewhere, for example a published one.
     *
     * @param family the family
     * @param method how the parameters were estimated
     * @param sampleSize number of values it was made of; more than the family has parameters, at least 4
     * @param parameters the parameters, in the order of the family
     * @return the fit
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Fit from(DistributionFamily family, FitMethod method, int sampleSize, double... parameters) {
        Objects.requireNonNull(parameters, "parameters");
        Objects.requireNonNull(family, "family must not be null");
        Objects.requireNonNull(method, "method must not be null");
        requireSize(family, sampleSize);
        return new Fit(family, method, sampleSize, family.with(parameters));
    }

    private static void requireSize(DistributionFamily family, int size) {
        if (size <= family.parameterCount()) {
            throw new IllegalArgumentException("sample must have more values than " + family + " has parameters, "
                    + family.parameterCount() + ", had " + size);
        }
        if (size < SMALLEST_SAMPLE) {
            throw new IllegalArgumentException("sample must have at least " + SMALLEST_SAMPLE + " values, had " + size);
        }
    }

    /** Returns another fit of the same kind, whose distribution is known already. */
    Fit with(Distribution again) {
        return new Fit(family, method, sampleSize, again);
    }

    /**
     * Returns the family.
     *
     * @return the family
     */
    public DistributionFamily family() {
        return family;
    }

    /**
     * Returns how the parameters were estimated.
     *
     * @return the method
     */
    public FitMethod method() {
        return method;
    }

    /**
     * Returns the size of the sample.
     *
     * @return number of values
     */
    public int sampleSize() {
        return sampleSize;
    }

    /**
     * Returns the fitted distribution.
     *
     * @return the distribution
     */
    public Distribution distribution() {
        return distribution;
    }

    /**
     * Returns the value that is not exceeded with the given probability.
     *
     * @param probability F of non-exceedance, in (0, 1)
     * @return x with F(x) = F
     * @throws IllegalArgumentException if {@code probability} is not inside (0, 1)
     */
    public double quantile(double probability) {
        return distribution.quantile(probability);
    }

    /**
     * Returns the value exceeded on average once in the given number of years, if the sample were annual maxima.
     *
     * @param years return period among annual maxima, years; greater than 1
     * @return the level, in the unit of the sample
     * @throws IllegalArgumentException if {@code years} is not greater than 1, or the family is one of peaks, which know no
     *     years
     */
    public double returnLevel(double years) {
        requireMaxima(family);
        return distribution.returnLevel(years);
    }

    /**
     * Returns the return period of a value, if the sample were annual maxima.
     *
     * @param level the value, in the unit of the sample; finite
     * @return years, at least 1; infinite at or above the upper bound
     * @throws IllegalArgumentException if {@code level} is not finite, or the family is one of peaks, which know no years
     */
    public double returnPeriod(double level) {
        requireMaxima(family);
        return distribution.returnPeriod(level);
    }

    static void requireMaxima(DistributionFamily family) {
        if (family.isOfPeaks()) {
            throw new IllegalArgumentException("family must be one of annual maxima for a return period in years, was "
                    + family + "; ask the peaks over threshold, which know their rate");
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Fit that
                && family == that.family
                && method == that.method
                && sampleSize == that.sampleSize
                && distribution.equals(that.distribution);
    }

    @Override
    public int hashCode() {
        return Objects.hash(family, method, sampleSize, distribution);
    }

    @Override
    public String toString() {
        return distribution + " fitted to " + sampleSize + " values by " + method.toText();
    }
}
