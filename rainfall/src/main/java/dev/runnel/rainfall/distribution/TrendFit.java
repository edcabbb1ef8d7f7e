package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apiguardian.api.API;

/**
 * A distribution whose location or scale changes with time, fitted by maximum likelihood: &xi;(t) = &xi;<sub>0</sub> + b t,
 * &alpha;(t) = &alpha;<sub>0</sub> exp(c t), the shape constant. Twice the difference of the log-likelihoods of two such fits
 * tells whether the richer one is needed (&chi;&sup2; with as many degrees of freedom as it has more slopes), and the effective
 * return level of a year is that of the distribution of the year.
 *
 * <p>A slope says what the record does; that it will go on is an assumption of yours. Source: Coles (2001), An introduction to
 * statistical modeling of extreme values, Springer, chapter 6; effective return levels: Katz, Parlange and Naveau (2002),
 * Statistics of extremes in hydrology, Advances in Water Resources 25, 1287-1304. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TrendFit {
    /** Chosen here: a scale that grows by e^100 within the record is none. */
    private static final double LARGEST_SLOPE = 50;

    /** Chosen here: so many parameters of fewer values would be their noise. */
    private static final int FEWEST = 10;

    private final DistributionFamily family;
    private final TrendIn trend;
    private final double[] times;
    private final double[] sample;
    private final double centre;
    private final double halfRange;
    private final double[] values;
    private final double[][] covariance;
    private final double logLikelihood;

    private TrendFit(
            DistributionFamily family,
            TrendIn trend,
            double[] times,
            double[] sample,
            double centre,
            double halfRange,
            LikelihoodSearch.Maximum maximum) {
        this.family = family;
        this.trend = trend;
        this.times = times;
        this.sample = sample;
        this.centre = centre;
        this.halfRange = halfRange;
        this.values = ((Member) maximum.distribution()).values;
        this.covariance = maximum.covariance().getData();
        this.logLikelihood = maximum.logLikelihood();
    }

    /**
     * Fits a family with a trend.
     *
     * @param family a family of location and scale, such as {@link DistributionFamily#GEV} or {@link DistributionFamily#GUMBEL}
     * @param trend what changes
     * @param times time of each value, in any unit, such as the year; finite, not all equal; not modified
     * @param sample the values, as many as times; at least 10, not all equal; not modified
     * @return the fit
     * @throws IllegalArgumentException if an argument is out of range, or the family is not one of location and scale with a fit
     *     by likelihood
     * @throws NoFitException if no maximum of the likelihood is found
     */
    public static TrendFit of(DistributionFamily family, TrendIn trend, double[] times, double... sample) {
        requireLocationAndScale(family);
        Require.sameLength("sample", times.length, sample.length);
        Samples.check(sample, FEWEST);
        double first = Double.POSITIVE_INFINITY;
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < times.length; i++) {
            first = Math.min(first, Require.finite("times[" + i + "]", times[i], ""));
            last = Math.max(last, times[i]);
        }
        if (!(last > first)) {
            throw new IllegalArgumentException("times must not be all equal, were " + Text.number(first));
        }
        // Times from -1 to 1 about the middle keep the slopes of the size of the parameters.
        double centre = 0.5 * (first + last);
        double halfRange = 0.5 * (last - first);
        double[] scaled =
                Arrays.stream(times).map(t -> (t - centre) / halfRange).toArray();
        List<Parameter> parameters = new ArrayList<>(family.parameters());
        if (trend.isInLocation()) {
            parameters.add(Parameter.location("slope of location"));
        }
        if (trend.isInScale()) {
            parameters.add(Parameter.shape("slope of ln scale").within(-LARGEST_SLOPE, LARGEST_SLOPE));
        }
        DistributionFamily withTrend = DistributionFamily.of(
                family + " with a trend in " + trend,
                p -> new Member(family, trend, scaled, p),
                parameters.toArray(Parameter[]::new));
        Optional<LikelihoodSearch.Maximum> greatest = Optional.empty();
        for (double[] start : starts(family, trend, scaled, sample)) {
            double[] units = new double[start.length];
            for (int i = 0; i < units.length; i++) {
                units[i] = parameters.get(i).hasUnit() ? start[1] : 1;
            }
            greatest = new LikelihoodSearch(sample, withTrend, units).from(start, greatest);
        }
        return greatest.map(maximum ->
                        new TrendFit(family, trend, times.clone(), sample.clone(), centre, halfRange, maximum))
                .orElseThrow(() ->
                        new NoFitException("sample must have a likelihood with a maximum inside for " + withTrend));
    }

    private static void requireLocationAndScale(DistributionFamily family) {
        boolean fits = family.parameterCount() >= 2
                && family.parameters().get(0).hasUnit()
                && !family.parameters().get(0).isScale()
                && family.parameters().get(1).isScale()
                && !family.isOfLogarithms();
        if (!fits) {
            throw new IllegalArgumentException("family must be one of location and scale, was " + family);
        }
    }

    /** Begins without a trend, and from what is left when the straight line of least squares is taken away. */
    private static List<double[]> starts(DistributionFamily family, TrendIn trend, double[] scaled, double[] sample) {
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < sample.length; i++) {
            line.addData(scaled[i], sample[i]);
        }
        double[] level = new double[sample.length];
        for (int i = 0; i < sample.length; i++) {
            level[i] = sample[i] - line.getSlope() * scaled[i];
        }
        List<double[]> starts = new ArrayList<>();
        if (trend.isInLocation()) {
            addStart(family, trend, level, line.getSlope(), starts);
        }
        addStart(family, trend, sample, 0, starts);
        if (starts.isEmpty()) {
            throw new NoFitException("sample must have a fit of " + family + " to begin with");
        }
        return starts;
    }

    private static void addStart(
            DistributionFamily family, TrendIn trend, double[] sample, double slope, List<double[]> starts) {
        try {
            double[] stationary =
                    family.valuesOf(LikelihoodFit.of(family, sample).distribution());
            double[] start = Arrays.copyOf(stationary, stationary.length + trend.slopes());
            if (trend.isInLocation()) {
                start[stationary.length] = slope;
            }
            starts.add(start);
        } catch (NoFitException noStart) {
            // The other start may do.
        }
    }

    /** All years at once: its likelihood is that of each value in the distribution of its own time. */
    private record Member(DistributionFamily family, TrendIn trend, double[] scaled, double[] values)
            implements Distribution {
        Distribution at(double time) {
            double[] own = Arrays.copyOf(values, family.parameterCount());
            int next = own.length;
            if (trend.isInLocation()) {
                own[0] += values[next++] * time;
            }
            if (trend.isInScale()) {
                own[1] *= Math.exp(values[next] * time);
            }
            return family.with(own);
        }

        @Override
        public double logLikelihood(double[] sample) {
            double sum = 0;
            for (int i = 0; i < sample.length; i++) {
                sum += at(scaled[i]).logDensity(sample[i]);
            }
            return sum;
        }

        @Override
        public double cdf(double x) {
            return at(0).cdf(x);
        }

        @Override
        public double quantile(double probability) {
            return at(0).quantile(probability);
        }

        @Override
        public double logDensity(double x) {
            return at(0).logDensity(x);
        }

        @Override
        public Map<String, Double> parameters() {
            return at(0).parameters();
        }
    }

    /**
     * Returns the distribution of a time.
     *
     * @param time time, in the unit of the times; finite
     * @return the distribution
     * @throws IllegalArgumentException if {@code time} is not finite
     */
    public Distribution at(double time) {
        double scaled = (Require.finite("time", time, "") - centre) / halfRange;
        return new Member(family, trend, new double[0], values).at(scaled);
    }

    /**
     * Returns the slope of the location.
     *
     * @return b, unit of the sample over that of the times; 0 if there is none
     */
    public double locationSlope() {
        return trend.isInLocation() ? values[family.parameterCount()] / halfRange : 0;
    }

    /**
     * Returns the standard error of the slope of the location.
     *
     * @return standard error of b; 0 if there is none
     */
    public double locationSlopeStandardError() {
        int at = family.parameterCount();
        return trend.isInLocation() ? Math.sqrt(covariance[at][at]) / halfRange : 0;
    }

    /**
     * Returns the slope of the logarithm of the scale.
     *
     * @return c, 1 over the unit of the times; 0 if there is none
     */
    public double logScaleSlope() {
        return trend.isInScale() ? values[values.length - 1] / halfRange : 0;
    }

    /**
     * Returns the standard error of the slope of the logarithm of the scale.
     *
     * @return standard error of c; 0 if there is none
     */
    public double logScaleSlopeStandardError() {
        int at = values.length - 1;
        return trend.isInScale() ? Math.sqrt(covariance[at][at]) / halfRange : 0;
    }

    /**
     * Returns the greatest log-likelihood.
     *
     * @return sum over the sample
     */
    public double logLikelihood() {
        return logLikelihood;
    }

    /**
     * Tests whether this fit is needed against a simpler one of the same sample.
     *
     * @param simpler a fit of the same family, times and sample with fewer slopes, all of which this one has too
     * @return the test
     * @throws IllegalArgumentException if the other is not such a fit
     */
    public LikelihoodRatio against(TrendFit simpler) {
        boolean isNested = family == simpler.family
                && trend.slopes() > simpler.trend.slopes()
                && (trend.isInLocation() || !simpler.trend.isInLocation())
                && (trend.isInScale() || !simpler.trend.isInScale())
                && Arrays.equals(times, simpler.times)
                && Arrays.equals(sample, simpler.sample);
        if (!isNested) {
            throw new IllegalArgumentException(
                    "simpler must be a fit of the same sample that is a part of " + trend + ", was " + simpler);
        }
        int more = trend.slopes() - simpler.trend.slopes();
        // A difference below 0 is the accuracy of the two searches.
        double statistic = Math.max(0, 2 * (logLikelihood - simpler.logLikelihood));
        double p = 1 - new ChiSquaredDistribution(null, more).cumulativeProbability(statistic);
        return new LikelihoodRatio(statistic, more, p);
    }

    /**
     * A likelihood ratio test. A plain result.
     *
     * @param statistic D, twice the difference of the log-likelihoods
     * @param degreesOfFreedom number of parameters that the richer fit has more
     * @param pValue probability of a greater D if the simpler one holds
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record LikelihoodRatio(double statistic, int degreesOfFreedom, double pValue) {
        @Override
        public String toString() {
            return "LikelihoodRatio[D = " + Text.significant(statistic, 4) + ", " + degreesOfFreedom
                    + " degrees of freedom, p " + Text.significant(pValue, 3) + "]";
        }
    }

    @Override
    public String toString() {
        return "TrendFit[" + family + ", trend in " + trend + ", at " + Text.significant(centre, 6) + " " + at(centre)
                + (trend.isInLocation() ? ", location slope " + Text.significant(locationSlope(), 4) : "")
                + (trend.isInScale() ? ", ln scale slope " + Text.significant(logScaleSlope(), 4) : "") + ", ln L "
                + Text.significant(logLikelihood, 6) + "]";
    }
}
