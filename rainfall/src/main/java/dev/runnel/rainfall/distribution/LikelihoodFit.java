package dev.runnel.rainfall.distribution;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * A fit by maximum likelihood with what the likelihood says of its precision.
 *
 * @param distribution the fitted distribution
 * @param logLikelihood its log-likelihood on the sample
 * @param standardErrors standard error of each parameter by name, from the observed information (the inverse of the
 *     second derivatives of the log-likelihood at its maximum); unmodifiable
 * @param covariance covariance of the parameters, rows and columns in the order of the standard errors; unmodifiable
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record LikelihoodFit(
        Distribution distribution,
        double logLikelihood,
        Map<String, Double> standardErrors,
        List<List<Double>> covariance) {
    private static final double LARGEST_SKEWNESS = 0.9;
    private static final double[] OTHER_SKEWNESSES = {0.17, -0.1, 0.4};
    private static final double[] OTHER_SHAPES = {0, -0.3, 0.4};
    private static final double SLOPE_STEP = 1e-5;

    /**
     * Fits a family to a sample: a simplex search from the fit by L-moments, then Newton steps to the maximum. What is
     * found is returned only if the slope vanishes there and the second derivatives are those of a maximum; otherwise
     * the search begins anew from other shapes, and at last the sample is refused.
     *
     * <p>The likelihood of a family with a shape grows without limit where a bound nears the outermost value, and there the
     * density at the bound is infinite: GEV k &ge; 1, generalised logistic |k| &ge; 1, Pearson III |&gamma;| &ge; 2,
     * generalised Pareto k &ge; 1. So the greatest likelihood is that of a local maximum with a shape inside those limits.
     * A small sample often has none: of samples of a GEV with k = -0.1, Pearson III refused about
     * 70, 33 and 16 % of those of 10, 20 and 30 values, the generalised logistic 18, 1 and 0 %, the GEV itself 6, 0 and 0 %.
     * Standard errors of the second derivatives are asymptotic; near those limits (GEV k &gt; 1/2) the theory behind them
     * does not hold. Source: Smith (1985), Maximum likelihood estimation in a class of nonregular cases, Biometrika
     * 72(1), 67-90.
     *
     * <p>The exponential distribution has closed forms, the smallest value and the mean above it; its standard errors
     * are those of the exact sampling distribution, since the bound has no regular likelihood. Source: Johnson, Kotz and
     * Balakrishnan (1994), Continuous univariate distributions, volume 1, Wiley, chapter 19.
     *
     * @param family any but {@link DistributionFamily#KAPPA} and {@link DistributionFamily#GENERALIZED_PARETO}
     * @param sample at least 4 values that are not all equal; not modified
     * @return the fit; parameters to about 1e-8 of the scale
     * @throws IllegalArgumentException if the family has no such fit, the sample is too small, or no maximum of its
     *     likelihood is found inside those limits
     */
    public static LikelihoodFit of(DistributionFamily family, double... sample) {
        return switch (family) {
            case GUMBEL -> search(family, sample, p -> Gumbel.of(p[0], p[1]));
            case GEV -> search(family, sample, p -> Gev.of(p[0], p[1], bounded(p[2], Double.NEGATIVE_INFINITY, 1)));
            case GENERALIZED_LOGISTIC ->
                search(family, sample, p -> GeneralizedLogistic.of(p[0], p[1], bounded(p[2], -1, 1)));
            case GENERALIZED_NORMAL -> search(family, sample, p -> GeneralizedNormal.of(p[0], p[1], p[2]));
            case NORMAL -> search(family, sample, p -> Normal.of(p[0], p[1]));
            case PEARSON_III -> search(family, sample, p -> PearsonIII.of(p[0], p[1], bounded(p[2], -2, 2)));
            case LOG_NORMAL ->
                ofLogarithms(
                        search(DistributionFamily.NORMAL, Logarithms.natural(sample), p -> Normal.of(p[0], p[1])),
                        sample);
            case LOG_PEARSON_III ->
                ofLogarithms(
                        search(
                                DistributionFamily.PEARSON_III,
                                Logarithms.decimal(sample),
                                p -> PearsonIII.of(p[0], p[1], bounded(p[2], -2, 2))),
                        sample);
            case EXPONENTIAL -> exponential(sample);
            case GENERALIZED_PARETO ->
                throw new IllegalArgumentException(
                        "family must not be GENERALIZED_PARETO for a fit by maximum likelihood,"
                                + " whose likelihood has no maximum while the bound is unknown; fit peaks above a threshold");
            case KAPPA ->
                throw new IllegalArgumentException(
                        "family must not be KAPPA for a fit by maximum likelihood, whose four"
                                + " parameters have no dependable maximum in so small a sample; use L_MOMENTS");
        };
    }

    private static LikelihoodFit ofLogarithms(LikelihoodFit ofLogs, double[] sample) {
        double[] p = values(ofLogs.distribution);
        Distribution fitted = p.length == 2 ? LogNormal.of(p[0], p[1]) : LogPearsonIII.of(p[0], p[1], p[2]);
        return new LikelihoodFit(fitted, fitted.logLikelihood(sample), ofLogs.standardErrors, ofLogs.covariance);
    }

    private static LikelihoodFit exponential(double[] sample) {
        double mean = LMoments.ofSample(sample).lambda1();
        double lowest = Arrays.stream(sample).min().orElseThrow();
        Exponential fitted = Exponential.of(lowest, mean - lowest);
        double bound = (mean - lowest) / sample.length;
        double scale = (mean - lowest) / Math.sqrt(sample.length);
        Map<String, Double> errors = new LinkedHashMap<>();
        errors.put("xi", bound);
        errors.put("alpha", scale);
        return new LikelihoodFit(
                fitted,
                fitted.logLikelihood(sample),
                Collections.unmodifiableMap(errors),
                List.of(List.of(bound * bound, 0.0), List.of(0.0, scale * scale)));
    }

    private static double[] values(Distribution distribution) {
        return distribution.parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
    }

    /**
     * Returns the standard error of a quantile, from the covariance of the parameters and the slopes of the quantile in
     * them (delta method). Limits that it gives are symmetric, which those of a rare event are not: compare
     * {@link Bootstrap}. Source: Coles (2001), An introduction to statistical modeling of extreme values, Springer,
     * section 2.6.4.
     *
     * @param years return period among annual maxima, years; greater than 1
     * @return standard error of the quantile
     * @throws IllegalArgumentException if {@code years} is not greater than 1
     */
    public double quantileStandardError(double years) {
        double[] at = values(distribution);
        // The last parameters are those estimated: of a generalised Pareto above a threshold all but the first.
        int first = at.length - covariance.size();
        double[] slope = new double[covariance.size()];
        for (int i = 0; i < slope.length; i++) {
            double step = SLOPE_STEP
                    * Math.max(
                            Math.abs(at[first + i]), Math.sqrt(covariance.get(i).get(i)));
            double[] up = at.clone();
            double[] down = at.clone();
            up[first + i] += step;
            down[first + i] -= step;
            slope[i] = (Rebuilt.of(distribution, up).quantileOfReturnPeriod(years)
                            - Rebuilt.of(distribution, down).quantileOfReturnPeriod(years))
                    / (up[first + i] - down[first + i]);
        }
        double variance = 0;
        for (int i = 0; i < slope.length; i++) {
            for (int j = 0; j < slope.length; j++) {
                variance += slope[i] * covariance.get(i).get(j) * slope[j];
            }
        }
        return Math.sqrt(variance);
    }

    /**
     * Fits a generalised Pareto distribution to peaks above a known threshold.
     *
     * @param threshold lower bound, not estimated; finite
     * @param peaks at least 4 values above the threshold, not all equal; not modified
     * @return the fit; the standard errors are those of scale and shape
     * @throws IllegalArgumentException if a peak is not above the threshold, or the likelihood has no maximum inside
     */
    public static LikelihoodFit ofPeaks(double threshold, double... peaks) {
        for (double peak : peaks) {
            if (!(peak > threshold)) {
                throw new IllegalArgumentException("peaks must be above threshold " + threshold + ", was " + peak);
            }
        }
        LMoments m = LMoments.ofSample(peaks);
        double excess = m.lambda1() - threshold;
        double shape = excess / m.lambda2() - 2;
        List<double[]> starts = new ArrayList<>();
        starts.add(new double[] {(1 + shape) * excess, shape});
        for (double other : OTHER_SHAPES) {
            starts.add(new double[] {(1 + other) * excess, other});
        }
        return search(
                peaks,
                p -> GeneralizedPareto.of(threshold, p[0], bounded(p[1], Double.NEGATIVE_INFINITY, 1)),
                starts,
                0,
                new String[] {"alpha", "k"});
    }

    private static LikelihoodFit search(DistributionFamily family, double[] sample, LikelihoodSearch.Family make) {
        LMoments m = LMoments.ofSample(sample);
        List<Map<String, Double>> starts = new ArrayList<>();
        starts.add(start(family, m, m.tau3()));
        if (family.parameterCount() > 2) {
            for (double tau3 : OTHER_SKEWNESSES) {
                starts.add(start(family, m, tau3));
            }
        }
        String[] names = starts.get(0).keySet().toArray(String[]::new);
        return search(sample, make, starts.stream().map(LikelihoodFit::values).toList(), 1, names);
    }

    /** Returns the member with location and scale of the sample; of an L-skewness that a member surely has. */
    private static Map<String, Double> start(DistributionFamily family, LMoments m, double tau3) {
        double near = Math.max(-LARGEST_SKEWNESS, Math.min(LARGEST_SKEWNESS, tau3));
        return family.fromLMoments(LMoments.of(m.lambda1(), m.lambda2(), near, 0))
                .parameters();
    }

    private static double[] values(Map<String, Double> parameters) {
        return parameters.values().stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static LikelihoodFit search(
            double[] sample, LikelihoodSearch.Family make, List<double[]> starts, int scaleAt, String[] names) {
        for (double[] start : starts) {
            double[] units = new double[start.length];
            for (int i = 0; i < units.length; i++) {
                units[i] = i <= scaleAt ? start[scaleAt] : 1;
            }
            LikelihoodSearch search = new LikelihoodSearch(sample, make, units);
            // A value may lie outside the bounds of the start: begin nearer to shape 0, where there are none.
            double[] from = start.clone();
            while (!search.isInside(from) && from.length > scaleAt + 1 && Math.abs(from[scaleAt + 1]) > 1e-3) {
                from[scaleAt + 1] /= 2;
            }
            Optional<LikelihoodSearch.Maximum> maximum = search.from(from);
            if (maximum.isPresent()) {
                return of(maximum.get(), names);
            }
        }
        throw new IllegalArgumentException(
                "sample must have a likelihood with a maximum inside the range of the shape, where the density is finite; none"
                        + " was found from " + starts.size() + " starts, use L_MOMENTS");
    }

    private static LikelihoodFit of(LikelihoodSearch.Maximum maximum, String[] names) {
        Map<String, Double> errors = new LinkedHashMap<>();
        List<List<Double>> rows = new ArrayList<>();
        for (int i = 0; i < names.length; i++) {
            errors.put(names[i], Math.sqrt(maximum.covariance().getEntry(i, i)));
            rows.add(Arrays.stream(maximum.covariance().getRow(i)).boxed().toList());
        }
        return new LikelihoodFit(
                maximum.distribution(),
                maximum.logLikelihood(),
                Collections.unmodifiableMap(errors),
                List.copyOf(rows));
    }

    /**
     * Refuses a shape from which on the density grows without limit towards a bound, where the likelihood has no maximum:
     * it grows without limit as the bound nears the outermost value.
     */
    private static double bounded(double shape, double lowest, double highest) {
        if (!(shape > lowest && shape < highest)) {
            throw new IllegalArgumentException("shape must be inside (" + lowest + ", " + highest + "), was " + shape);
        }
        return shape;
    }
}
