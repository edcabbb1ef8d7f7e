package dev.runnel.rainfall.frequency;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleValueChecker;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;
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
    private static final double LARGEST = 1e300;
    private static final int MOST_EVALUATIONS = 20_000;
    private static final int MOST_NEWTON_STEPS = 20;
    private static final double STEP = 1e-3;
    private static final double SLOPE_STEP = 1e-5;

    private interface Family {
        Distribution of(double[] parameters);
    }

    /**
     * Fits a family to a sample: a simplex search from the fit by L-moments, then Newton steps to the maximum.
     *
     * <p>The exponential distribution has closed forms, the smallest value and the mean above it; its standard errors
     * are those of the exact sampling distribution, since the bound has no regular likelihood. Source: Johnson, Kotz and
     * Balakrishnan (1994), Continuous univariate distributions, volume 1, Wiley, chapter 19.
     *
     * @param family any but {@link DistributionFamily#KAPPA} and {@link DistributionFamily#GENERALIZED_PARETO}
     * @param sample at least 4 values that are not all equal; not modified
     * @return the fit; parameters to about 1e-8 of the scale
     * @throws IllegalArgumentException if the family has no such fit, the sample is too small, or its likelihood has no
     *     maximum inside the range of the parameters
     */
    public static LikelihoodFit of(DistributionFamily family, double... sample) {
        return switch (family) {
            case GUMBEL -> search(family, sample, p -> Gumbel.of(p[0], p[1]));
            case GEV -> search(family, sample, p -> Gev.of(p[0], p[1], p[2]));
            case GENERALIZED_LOGISTIC -> search(family, sample, p -> GeneralizedLogistic.of(p[0], p[1], p[2]));
            case GENERALIZED_NORMAL -> search(family, sample, p -> GeneralizedNormal.of(p[0], p[1], p[2]));
            case NORMAL -> search(family, sample, p -> Normal.of(p[0], p[1]));
            case PEARSON_III -> search(family, sample, p -> PearsonIII.of(p[0], p[1], p[2]));
            case LOG_NORMAL ->
                ofLogarithms(
                        search(DistributionFamily.NORMAL, Logarithms.natural(sample), p -> Normal.of(p[0], p[1])),
                        sample);
            case LOG_PEARSON_III ->
                ofLogarithms(
                        search(
                                DistributionFamily.PEARSON_III,
                                Logarithms.decimal(sample),
                                p -> PearsonIII.of(p[0], p[1], p[2])),
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
                java.util.Collections.unmodifiableMap(errors),
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
        double[] start = {(1 + shape) * excess, shape};
        return search(peaks, p -> GeneralizedPareto.of(threshold, p[0], p[1]), start, 0, new String[] {"alpha", "k"});
    }

    private static LikelihoodFit search(DistributionFamily family, double[] sample, Family make) {
        Map<String, Double> start =
                family.fromLMoments(LMoments.ofSample(sample)).parameters();
        double[] values =
                start.values().stream().mapToDouble(Double::doubleValue).toArray();
        return search(sample, make, values, 1, start.keySet().toArray(String[]::new));
    }

    private static LikelihoodFit search(double[] sample, Family make, double[] start, int scaleAt, String[] names) {
        double unit = start[scaleAt];
        double[] best = simplex(sample, make, start, scaleAt, unit);
        double[] units = units(best.length, names, unit);
        RealMatrix information = MatrixUtils.createRealIdentityMatrix(best.length);
        try {
            for (int i = 0; i < MOST_NEWTON_STEPS; i++) {
                information = secondDerivatives(sample, make, best, units);
                double[] step = new LUDecomposition(information)
                        .getSolver()
                        .solve(new ArrayRealVector(firstDerivatives(sample, make, best, units)))
                        .toArray();
                double largest = 0;
                for (int j = 0; j < step.length; j++) {
                    best[j] -= step[j] * units[j];
                    largest = Math.max(largest, Math.abs(step[j]));
                }
                if (largest < 1e-10) {
                    break;
                }
            }
            RealMatrix covariance = new LUDecomposition(information).getSolver().getInverse();
            Map<String, Double> errors = new LinkedHashMap<>();
            for (int j = 0; j < best.length; j++) {
                double variance = covariance.getEntry(j, j);
                if (!(variance > 0)) {
                    throw noMaximum(null);
                }
                errors.put(names[j], Math.sqrt(variance) * units[j]);
            }
            Distribution fitted = make.of(best);
            double reached = fitted.logLikelihood(sample);
            if (!Double.isFinite(reached)) {
                throw noMaximum(null);
            }
            List<List<Double>> rows = new ArrayList<>();
            for (int i = 0; i < best.length; i++) {
                List<Double> row = new ArrayList<>();
                for (int j = 0; j < best.length; j++) {
                    row.add(covariance.getEntry(i, j) * units[i] * units[j]);
                }
                rows.add(List.copyOf(row));
            }
            return new LikelihoodFit(fitted, reached, java.util.Collections.unmodifiableMap(errors), List.copyOf(rows));
        } catch (MathIllegalArgumentException | MathIllegalStateException e) {
            throw noMaximum(e);
        }
    }

    private static double[] simplex(double[] sample, Family make, double[] start, int scaleAt, double unit) {
        double[] steps = new double[start.length];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = i <= scaleAt ? 0.1 * unit : 0.1;
        }
        // A heavy-tailed start may leave a value outside the bounds: begin nearer to shape 0 until it is inside.
        double[] from = start.clone();
        while (negative(sample, make, from) >= LARGEST
                && from.length > scaleAt + 1
                && Math.abs(from[scaleAt + 1]) > 1e-3) {
            from[scaleAt + 1] /= 2;
        }
        try {
            return new SimplexOptimizer(new SimpleValueChecker(1e-13, 1e-13))
                    .optimize(
                            new MaxEval(MOST_EVALUATIONS),
                            GoalType.MINIMIZE,
                            new InitialGuess(from),
                            new NelderMeadSimplex(steps),
                            new ObjectiveFunction(p -> negative(sample, make, p)))
                    .getPoint();
        } catch (MathIllegalStateException e) {
            throw noMaximum(e);
        }
    }

    private static double negative(double[] sample, Family make, double[] parameters) {
        try {
            double reached = -make.of(parameters).logLikelihood(sample);
            return reached < LARGEST ? reached : LARGEST;
        } catch (IllegalArgumentException outOfRange) {
            return LARGEST;
        }
    }

    /** Fourth-order central differences: their error at this step is below the rounding of the likelihood. */
    private static double[] firstDerivatives(double[] sample, Family make, double[] at, double[] units) {
        double[] slope = new double[at.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (8 * (moved(sample, make, at, units, i, 1, i, 0) - moved(sample, make, at, units, i, -1, i, 0))
                            - (moved(sample, make, at, units, i, 2, i, 0)
                                    - moved(sample, make, at, units, i, -2, i, 0)))
                    / (12 * STEP);
        }
        return slope;
    }

    private static RealMatrix secondDerivatives(double[] sample, Family make, double[] at, double[] units) {
        int n = at.length;
        RealMatrix second = MatrixUtils.createRealMatrix(n, n);
        double centre = negative(sample, make, at);
        for (int i = 0; i < n; i++) {
            double one = moved(sample, make, at, units, i, 1, i, 0) + moved(sample, make, at, units, i, -1, i, 0);
            double two = moved(sample, make, at, units, i, 2, i, 0) + moved(sample, make, at, units, i, -2, i, 0);
            second.setEntry(i, i, (16 * one - two - 30 * centre) / (12 * STEP * STEP));
            for (int j = 0; j < i; j++) {
                double mixed = (16 * cross(sample, make, at, units, i, j, 1) - cross(sample, make, at, units, i, j, 2))
                        / (48 * STEP * STEP);
                second.setEntry(i, j, mixed);
                second.setEntry(j, i, second.getEntry(i, j));
            }
        }
        return second;
    }

    private static double cross(double[] sample, Family make, double[] at, double[] units, int i, int j, int steps) {
        return moved(sample, make, at, units, i, steps, j, steps)
                - moved(sample, make, at, units, i, steps, j, -steps)
                - moved(sample, make, at, units, i, -steps, j, steps)
                + moved(sample, make, at, units, i, -steps, j, -steps);
    }

    private static double moved(
            double[] sample, Family make, double[] at, double[] units, int i, int stepsI, int j, int stepsJ) {
        double[] point = at.clone();
        point[i] += stepsI * STEP * units[i];
        point[j] += stepsJ * STEP * units[j];
        return negative(sample, make, point);
    }

    private static double[] units(int length, String[] names, double unit) {
        double[] units = new double[length];
        for (int i = 0; i < length; i++) {
            units[i] = names[i].equals("k") || names[i].equals("gamma") ? 1 : unit;
        }
        return units;
    }

    private static IllegalArgumentException noMaximum(@org.jspecify.annotations.Nullable Throwable cause) {
        return new IllegalArgumentException("sample must have a likelihood with a maximum inside the range", cause);
    }
}
