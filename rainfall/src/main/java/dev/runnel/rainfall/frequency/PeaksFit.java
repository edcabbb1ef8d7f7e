package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.LikelihoodFit;
import dev.runnel.rainfall.distribution.Normal;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.apiguardian.api.API;

/**
 * A distribution fitted to peaks over a threshold, with the rate at which they come: it answers in years. Immutable and
 * thread-safe.
 *
 * <p>With &lambda; = n/t peaks a year and the distribution G of a peak, the level of T years has 1 - G(x) = 1/(&lambda; T).
 * Every exceedance counts (partial-duration basis); among annual maxima the return period is longer, see
 * {@link dev.runnel.rainfall.ddf.ReturnPeriodBasis}. Source: Coles (2001), An introduction to statistical modeling of extreme
 * values, Springer, chapter 4.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PeaksFit {
    private static final double SLOPE_STEP = 1e-5;

    private final PeaksOverThreshold peaks;
    private final Fit fit;

    private PeaksFit(PeaksOverThreshold peaks, Fit fit) {
        this.peaks = peaks;
        this.fit = fit;
    }

    static PeaksFit of(PeaksOverThreshold peaks, DistributionFamily family, FitMethod method) {
        return new PeaksFit(peaks, Fit.of(family, method, peaks.peaks()));
    }

    /**
     * Returns the peaks.
     *
     * @return what was fitted
     */
    public PeaksOverThreshold peaks() {
        return peaks;
    }

    /**
     * Returns the distribution of a peak. It knows no rate: its own return period counts peaks.
     *
     * @return the distribution
     */
    public Distribution distribution() {
        return fit.distribution();
    }

    /**
     * Returns how the parameters were estimated.
     *
     * @return the method
     */
    public FitMethod method() {
        return fit.method();
    }

    /**
     * Returns the value that a peak does not exceed with the given probability.
     *
     * @param probability F of a peak, in (0, 1)
     * @return the value
     * @throws IllegalArgumentException if {@code probability} is not inside (0, 1)
     */
    public double quantile(double probability) {
        return fit.quantile(probability);
    }

    /**
     * Returns the value exceeded on average once in the given number of years.
     *
     * @param years T counting every exceedance, years; &lambda; T must be greater than 1
     * @return the level, in the unit of the record
     * @throws IllegalArgumentException if &lambda; T is not greater than 1 and finite
     */
    public double returnLevel(double years) {
        return distribution().quantileOfExceedance(exceedance(years));
    }

    /**
     * Returns how often a value is exceeded, T = 1/(&lambda; (1 - G(x))).
     *
     * @param level the value x, in the unit of the record; at least the threshold, finite
     * @return T counting every exceedance, years; at the threshold the mean time between peaks, infinite at or above the upper
     *     bound of the distribution
     * @throws IllegalArgumentException if {@code level} is below the threshold or not finite
     */
    public double returnPeriod(double level) {
        return 1 / (peaks.ratePerYear() * distribution().exceedance(requireAbove(level)));
    }

    /**
     * Returns the standard error of a return level by the delta method, with the error of the rate: the variance is that of
     * scale and shape, by the slopes of the level in them, and &lambda;/t for the rate of peaks that come independently (Poisson).
     * Source: Coles (2001), section 4.3.3, where the rate is a share of days and has the variance of a share.
     *
     * @param years T counting every exceedance, years; &lambda; T must be greater than 1
     * @return standard error, in the unit of the record
     * @throws IllegalArgumentException if &lambda; T is not greater than 1 and finite
     * @throws IllegalStateException if the fit is not by maximum likelihood
     */
    public double returnLevelStandardError(double years) {
        double p = exceedance(years);
        double ofParameters = likelihood().standardError(peak -> peak.quantileOfExceedance(p));
        // dx/d(ln lambda), lambda standing in p = 1/(lambda T) alone
        double slope = (distribution().quantileOfExceedance(p * (1 - SLOPE_STEP))
                        - distribution().quantileOfExceedance(p * (1 + SLOPE_STEP)))
                / (2 * SLOPE_STEP);
        double ofRate = slope / Math.sqrt(peaks.peaks().length);
        return Math.hypot(ofParameters, ofRate);
    }

    /**
     * Returns limits of a return level by the delta method: symmetric, which is rough for a rare level.
     *
     * @param years T counting every exceedance, years; &lambda; T must be greater than 1
     * @param confidence probability with which such limits hold the truth; in (0, 1)
     * @return the limits
     * @throws IllegalArgumentException if an argument is out of range
     * @throws IllegalStateException if the fit is not by maximum likelihood
     */
    public ConfidenceInterval returnLevelByDelta(double years, double confidence) {
        double level = returnLevel(years);
        double reach = Normal.of(0, 1).quantile(0.5 + 0.5 * confidence) * returnLevelStandardError(years);
        return new ConfidenceInterval(level, level - reach, level + reach, confidence);
    }

    /**
     * Returns limits of a return level by the profile of the likelihood, which are as askew as the level is. The rate is taken
     * as known, as in Coles (2001), section 4.4.1: it adds little to a rare level.
     *
     * @param years T counting every exceedance, years; &lambda; T must be greater than 1
     * @param confidence probability with which such limits hold the truth; in (0, 1)
     * @return the limits
     * @throws IllegalArgumentException if an argument is out of range
     * @throws IllegalStateException if the fit is not by maximum likelihood
     */
    public ConfidenceInterval returnLevelByProfile(double years, double confidence) {
        return likelihood().levelByProfile(exceedance(years), confidence);
    }

    /**
     * Returns limits of the return period of a value by the profile of the likelihood, the rate taken as known.
     *
     * @param level the value, in the unit of the record; above the threshold, finite
     * @param confidence probability with which such limits hold the truth; in (0, 1)
     * @return the limits, years; the upper one may be infinite
     * @throws IllegalArgumentException if an argument is out of range
     * @throws IllegalStateException if the fit is not by maximum likelihood
     */
    public ConfidenceInterval returnPeriodByProfile(double level, double confidence) {
        ConfidenceInterval ofPeaks = likelihood().returnPeriodByProfileOf(requireAbove(level), confidence);
        double rate = peaks.ratePerYear();
        return new ConfidenceInterval(
                ofPeaks.estimate() / rate, ofPeaks.lower() / rate, ofPeaks.upper() / rate, confidence);
    }

    /**
     * Returns limits of a return level by replicates: their number of peaks is drawn too (Poisson), the peaks are drawn from
     * the fitted distribution, and both rate and distribution are estimated anew.
     *
     * @param years T counting every exceedance, years; &lambda; T must be greater than 1
     * @param bootstrap number of replicates, seed and confidence
     * @return the interval; replicates whose peaks come less than once in {@code years} count as failed
     * @throws IllegalArgumentException if an argument is out of range or fewer than 20 replicates could be fitted
     */
    public Bootstrap.Interval returnLevel(double years, Bootstrap bootstrap) {
        return bootstrap.interval(returnLevel(years), random -> {
            double[] drawn = draw(random);
            double expected = drawn.length / peaks.years() * years;
            return drawn.length > fit.family().parameterCount() + 1 && expected > 1
                    ? Fit.of(fit.family(), fit.method(), drawn).distribution().quantileOfExceedance(1 / expected)
                    : Double.NaN;
        });
    }

    /** Draws peaks for as long as the record: their times apart are exponential. */
    private double[] draw(SplittableRandom random) {
        double expected = peaks.peaks().length;
        DoubleStream.Builder drawn = DoubleStream.builder();
        for (double at = -Math.log1p(-random.nextDouble()); at < expected; at -= Math.log1p(-random.nextDouble())) {
            drawn.add(distribution().quantile(random.nextDouble(Double.MIN_NORMAL, 1)));
        }
        return drawn.build().toArray();
    }

    private LikelihoodFit likelihood() {
        if (fit.method() != FitMethod.MAXIMUM_LIKELIHOOD) {
            throw new IllegalStateException(
                    "method must be MAXIMUM_LIKELIHOOD for an error from the likelihood, was " + fit.method());
        }
        return LikelihoodFit.of(fit.family(), peaks.peaks());
    }

    private double exceedance(double years) {
        double expected = peaks.ratePerYear() * years;
        if (!(expected > 1 && expected < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("years must be above " + Text.significant(1 / peaks.ratePerYear(), 4)
                    + " years, the mean time between peaks, and finite, was " + Text.number(years));
        }
        return 1 / expected;
    }

    private double requireAbove(double level) {
        if (!(level >= peaks.threshold() && level < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("level must be at least the threshold " + Text.number(peaks.threshold())
                    + " and finite, was " + Text.number(level));
        }
        return level;
    }

    @Override
    public String toString() {
        return "PeaksFit[" + fit + ", " + Text.significant(peaks.ratePerYear(), 4) + " a year]";
    }
}
