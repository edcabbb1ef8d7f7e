package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.GeneralizedPareto;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The independent peaks of a record above a threshold and the time in which they came. Immutable and thread-safe.
 *
 * <p>With &lambda; peaks a year and the distribution G of a peak, the value exceeded on average once in T years has
 * 1 - G(x) = 1/(&lambda; T). This return period counts every exceedance (partial-duration basis); among annual maxima it
 * is longer, see {@link dev.runnel.rainfall.ddf.ReturnPeriodBasis}. Ask the {@link PeaksFit}: the
 * distribution of a peak knows no rate, so that its own return period counts peaks and not years. Source: Coles (2001), An introduction to statistical
 * modeling of extreme values, Springer, chapter 4.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PeaksOverThreshold {
    private final double threshold;
    private final double[] peaks;
    private final double years;
    private final int apartByGaps;

    private PeaksOverThreshold(double threshold, double[] peaks, double years, int apartByGaps) {
        this.threshold = threshold;
        this.peaks = peaks;
        this.years = years;
        this.apartByGaps = apartByGaps;
    }

    /**
     * Returns peaks that are already known to be independent.
     *
     * @param threshold threshold; finite
     * @param years length of the record in which they came; greater than 0
     * @param peaks values above the threshold; others are refused; copied
     * @return the peaks
     * @throws IllegalArgumentException if a peak is not above the threshold or {@code years} is not greater than 0
     */
    public static PeaksOverThreshold ofThresholdAndYears(double threshold, double years, double... peaks) {
        Objects.requireNonNull(peaks, "peaks");
        return new PeaksOverThreshold(
                Require.finite("threshold", threshold, ""),
                checked(threshold, peaks),
                Require.positive("years", years, "years"),
                0);
    }

    private static double[] checked(double threshold, double[] peaks) {
        for (double peak : peaks) {
            if (!(peak > threshold && peak < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("peaks must be finite and above threshold " + Text.number(threshold)
                        + ", was " + Text.number(peak));
            }
        }
        return peaks.clone();
    }

    /**
     * Finds the peaks of a record: in each run of exceedances, runs being joined where less than the separation lies
     * between the end of one and the start of the next, the greatest value counts.
     *
     * <p>Missing steps are no part of the length of the record. A gap shorter than the separation is no quiet time either: what
     * it hides may have joined the runs on its two sides. A gap as long as the separation, or longer, is counted as time between
     * them, since so much later another storm is likely; {@link #apartByGaps} says how many peaks are separate for that reason
     * alone.
     *
     * @param values one value a step, NaN for missing
     * @param threshold threshold; finite
     * @param separation least time between two independent runs; 0 or longer
     * @return the peaks
     * @throws IllegalArgumentException if nothing was measured, or an argument is out of range
     */
    public static PeaksOverThreshold from(RegularSeries values, double threshold, Duration separation) {
        Require.finite("threshold", threshold, "");
        PeakRuns runs = PeakRuns.of(values, threshold, separation);
        double years = (values.size() - values.missing()) * (values.step().toNanos() / 1e9) / (365.25 * 86_400);
        return new PeaksOverThreshold(
                threshold,
                checked(threshold, runs.peaks()),
                Require.positive("years measured", years, "years"),
                runs.apartByGaps());
    }

    /**
     * Returns the threshold.
     *
     * @return threshold, in the unit of the record
     */
    public double threshold() {
        return threshold;
    }

    /**
     * Returns the peaks in the order of the record.
     *
     * @return values above the threshold; a copy
     */
    public double[] peaks() {
        return peaks.clone();
    }

    /**
     * Returns how many of the peaks count apart from the one before only because of missing time between them. They may belong
     * to one storm.
     *
     * @return number of peaks; 0 if they were given and not found in a record
     */
    public int apartByGaps() {
        return apartByGaps;
    }

    /**
     * Returns the mean number of peaks a year.
     *
     * @return rate &lambda;, 1/year
     */
    public double ratePerYear() {
        return peaks.length / years;
    }

    /**
     * Returns the mean excess of the peaks that exceed a level: nearly a straight line above a level from which the
     * generalised Pareto distribution holds.
     *
     * @param level level, at least the threshold
     * @return mean of peak - level over the peaks above the level; NaN if there is none
     * @throws IllegalArgumentException if {@code level} is below the threshold or NaN
     */
    public double meanExcess(double level) {
        if (!(level >= threshold)) {
            throw new IllegalArgumentException(
                    "level must be at least the threshold " + Text.number(threshold) + ", was " + Text.number(level));
        }
        return Arrays.stream(peaks)
                .filter(peak -> peak > level)
                .map(peak -> peak - level)
                .average()
                .orElse(Double.NaN);
    }

    /**
     * Returns the length of the record in which the peaks came.
     *
     * @return years
     */
    public double years() {
        return years;
    }

    /**
     * Fits a generalised Pareto distribution above the threshold, which is not estimated. Source: Hosking and Wallis
     * (1987), Parameter and quantile estimation for the generalized Pareto distribution, Technometrics 29(3), 339-349.
     *
     * @param method how to estimate scale and shape; by moments from mean and standard deviation
     * @return the fit, which knows the rate and answers in years
     * @throws IllegalArgumentException if there are fewer than 4 peaks or they are all equal
     * @throws dev.runnel.rainfall.distribution.NoFitException if no member has their moments, or their likelihood has no
     *     maximum inside
     */
    public PeaksFit fit(FitMethod method) {
        return fit(GeneralizedPareto.above(threshold), method);
    }

    /**
     * Fits another family to the peaks.
     *
     * @param family family of the distribution of a peak, such as one of your own; it should begin at the threshold
     * @param method how to estimate its parameters
     * @return the fit, which knows the rate and answers in years
     * @throws IllegalArgumentException if there are too few peaks, they are all equal, or the family has no such fit
     * @throws dev.runnel.rainfall.distribution.NoFitException if no member of the family fits
     */
    public PeaksFit fit(DistributionFamily family, FitMethod method) {
        return PeaksFit.of(this, family, method);
    }

    @Override
    public String toString() {
        return "PeaksOverThreshold[" + peaks.length + " peaks above " + Text.significant(threshold, 6) + " in "
                + Text.significant(years, 4) + " years"
                + (apartByGaps == 0 ? "]" : ", " + apartByGaps + " apart by a gap only]");
    }
}
