package dev.runnel.rainfall.distribution;

import java.util.Optional;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.exception.MathUnsupportedOperationException;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.EigenDecomposition;
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

/**
 * Searches a maximum of a likelihood: a simplex, then Newton steps that may not go down. What it finds is believed only
 * if the slope vanishes there and the second derivatives, taken with two step widths inside the range, agree and are
 * those of a maximum.
 */
final class LikelihoodSearch {
    /** Bounds of the search; chosen here, far beyond what a sample with a maximum needs. */
    private static final int MOST_EVALUATIONS = 20_000;

    private static final int MOST_STEPS = 100;

    /** Relative and absolute change of the log-likelihood at which the simplex has done its part; near the rounding. */
    private static final double SIMPLEX_ACCURACY = 1e-13;

    /** Side of the first simplex, of the unit of each parameter. */
    private static final double FIRST_SIDE = 0.1;

    /** Differences that would have to be narrower than this share of their usual width stand at an edge of the range. */
    private static final double LEAST_SHARE = 1e-5;

    /** A step that must be halved more often, to a thousand-millionth, leads nowhere. */
    private static final int MOST_HALVINGS = 30;

    /** Stands for a point outside the range in the simplex, which needs a number. */
    private static final double OUTSIDE = 1e300;

    /** First step of the differences, of the unit of each parameter. */
    private static final double FIRST_STEP = 1e-3;

    /** Then: of the standard error a parameter would have if the others were known. */
    private static final double STEP = 0.02;

    /** A step to the maximum shorter than this, of such standard errors, is the last: it leaves about its square. */
    private static final double SHORT = 1e-7;

    /** And one longer than this, at the end, is no maximum. */
    private static final double TOO_LONG = 1e-5;

    /** Curvatures by wide and narrow differences that differ by more, or are smaller, are no curvatures; chosen here. */
    private static final double CURVATURES_AGREE = 1e-3;

    private static final double LEAST_CURVATURE = 1e-6;

    /** A maximum with the covariance of its parameters. */
    record Maximum(Distribution distribution, double logLikelihood, RealMatrix covariance) {}

    private final double[] sample;
    private final DistributionFamily family;
    private final double[] units;

    /**
     * Prepares a search.
     *
     * @param units size of each parameter: the scale, or 1 for a shape
     */
    LikelihoodSearch(double[] sample, DistributionFamily family, double[] units) {
        this.sample = sample;
        this.family = family;
        this.units = units;
    }

    /** Returns the maximum above a start, or nothing if what is found there is none. */
    Optional<Maximum> from(double[] start) {
        try {
            return climb(simplex(start));
        } catch (MathIllegalArgumentException
                | MathIllegalStateException
                | MathUnsupportedOperationException notSolved) {
            return Optional.empty();
        }
    }

    private double[] simplex(double[] start) {
        return new SimplexOptimizer(new SimpleValueChecker(SIMPLEX_ACCURACY, SIMPLEX_ACCURACY))
                .optimize(
                        new MaxEval(MOST_EVALUATIONS),
                        GoalType.MINIMIZE,
                        new InitialGuess(start),
                        new NelderMeadSimplex(times(FIRST_SIDE, units)),
                        new ObjectiveFunction(p -> Math.min(negative(p), OUTSIDE)))
                .getPoint();
    }

    private Optional<Maximum> climb(double[] from) {
        double[] at = from;
        double[] base = times(FIRST_STEP, units);
        double share = 1;
        for (int i = 0; i < MOST_STEPS && share > LEAST_SHARE; i++) {
            Differences wide = new Differences(this::negative, at, times(share, base));
            Differences narrow = new Differences(this::negative, at, times(share / 2, base));
            RealMatrix curvature = narrow.second();
            if (!(wide.areFinite() && agree(curvature, wide.second()))) {
                // A point lies outside the range, or too near to its edge for the differences.
                share /= 2;
                continue;
            }
            if (!isMaximum(curvature)) {
                return Optional.empty();
            }
            double[] move = solve(curvature, narrow.first());
            double length = length(move, curvature);
            // So near, the likelihood no longer tells two points apart, but its slope does: take the whole step.
            double[] next = length < TOO_LONG ? minus(at, 1, move) : notDown(at, move);
            if (length < SHORT || next == at) {
                return length < TOO_LONG ? Optional.of(maximum(next, curvature)) : Optional.empty();
            }
            at = next;
            base = stepsFor(curvature);
        }
        return Optional.empty();
    }

    private Maximum maximum(double[] at, RealMatrix curvature) {
        Distribution fitted = family.with(at);
        return new Maximum(
                fitted,
                fitted.logLikelihood(sample),
                new LUDecomposition(curvature).getSolver().getInverse());
    }

    /** Goes the step, or the part of it that leads to a likelihood not lower; stays if there is none. */
    private double[] notDown(double[] at, double[] move) {
        double here = negative(at);
        double part = 1;
        for (int i = 0; i < MOST_HALVINGS; i++) {
            double[] next = minus(at, part, move);
            if (negative(next) <= here) {
                return next;
            }
            part /= 2;
        }
        return at;
    }

    private static double[] minus(double[] at, double part, double[] move) {
        double[] next = at.clone();
        for (int j = 0; j < next.length; j++) {
            next[j] -= part * move[j];
        }
        return next;
    }

    private static double[] solve(RealMatrix curvature, double[] slope) {
        return new LUDecomposition(curvature)
                .getSolver()
                .solve(new ArrayRealVector(slope))
                .toArray();
    }

    /** Returns the largest part of a move, in standard errors with the other parameters known. */
    private static double length(double[] move, RealMatrix curvature) {
        double largest = 0;
        for (int i = 0; i < move.length; i++) {
            largest = Math.max(largest, Math.abs(move[i]) * Math.sqrt(curvature.getEntry(i, i)));
        }
        return largest;
    }

    private static boolean agree(RealMatrix a, RealMatrix b) {
        for (int i = 0; i < a.getRowDimension(); i++) {
            for (int j = 0; j <= i; j++) {
                double scale = Math.sqrt(Math.abs(a.getEntry(i, i) * a.getEntry(j, j)));
                if (!(Math.abs(a.getEntry(i, j) - b.getEntry(i, j)) < CURVATURES_AGREE * scale)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Looks whether -ln L curves upward in every direction, beyond the rounding of the differences. */
    private static boolean isMaximum(RealMatrix curvature) {
        int n = curvature.getRowDimension();
        RealMatrix scaled = MatrixUtils.createRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double scale = curvature.getEntry(i, i) * curvature.getEntry(j, j);
                if (!(curvature.getEntry(i, i) > 0 && scale > 0 && scale < Double.POSITIVE_INFINITY)) {
                    return false;
                }
                scaled.setEntry(i, j, curvature.getEntry(i, j) / Math.sqrt(scale));
            }
        }
        for (double eigenvalue : new EigenDecomposition(scaled).getRealEigenvalues()) {
            if (!(eigenvalue > LEAST_CURVATURE)) {
                return false;
            }
        }
        return true;
    }

    private static double[] stepsFor(RealMatrix curvature) {
        double[] steps = new double[curvature.getRowDimension()];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = STEP / Math.sqrt(curvature.getEntry(i, i));
        }
        return steps;
    }

    private static double[] times(double factor, double[] values) {
        double[] product = values.clone();
        for (int i = 0; i < product.length; i++) {
            product[i] *= factor;
        }
        return product;
    }

    /** Returns the negative log-likelihood; infinite outside the range. */
    private double negative(double[] parameters) {
        if (!family.admits(parameters)) {
            return Double.POSITIVE_INFINITY;
        }
        double reached = -family.with(parameters).logLikelihood(sample);
        return Double.isFinite(reached) ? reached : Double.POSITIVE_INFINITY;
    }

    /** Tells whether the likelihood of the sample is above 0 at these parameters. */
    boolean isInside(double[] parameters) {
        return Double.isFinite(negative(parameters));
    }
}
