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

    /** Change of the log-likelihood at which the simplex has done its part: some 1e-4 standard errors from a maximum. */
    private static final double SIMPLEX_ACCURACY = 1e-8;

    /** And relative to the log-likelihood, near the rounding. */
    private static final double SIMPLEX_RELATIVE = 1e-13;

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

    /** Curvatures that differ by less need no narrower steps; and if they differ by so many times more, the rounding has them. */
    private static final double AGREED = 1e-7;

    private static final double MUCH_MORE = 10;

    private static final double LEAST_CURVATURE = 1e-6;

    /** A maximum with the covariance of its parameters. */
    record Maximum(double[] at, Distribution distribution, double logLikelihood, RealMatrix covariance) {}

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

    /** Returns the greater of a known maximum and the one above a start, if what is found there is one. */
    Optional<Maximum> from(double[] start, Optional<Maximum> known) {
        try {
            double[] end = simplex(start);
            boolean isNoGreater =
                    known.isPresent() && -negative(end) <= known.get().logLikelihood();
            return isNoGreater ? known : greater(known, climb(end));
        } catch (MathIllegalArgumentException
                | MathIllegalStateException
                | MathUnsupportedOperationException notSolved) {
            return known;
        }
    }

    /** Returns the greater maximum; the one known, if both are the same. */
    private static Optional<Maximum> greater(Optional<Maximum> known, Optional<Maximum> found) {
        if (known.isEmpty() || found.isEmpty()) {
            return known.or(() -> found);
        }
        return found.get().logLikelihood() > known.get().logLikelihood() ? found : known;
    }

    private double[] simplex(double[] start) {
        return new SimplexOptimizer(new SimpleValueChecker(SIMPLEX_RELATIVE, SIMPLEX_ACCURACY))
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
        // The last differences are taken with care and by steps that the curvature chose, not the start.
        boolean isNear = false;
        for (int i = 0; i < MOST_STEPS; i++) {
            Optional<Differences> near = differences(at, base, isNear ? AGREED : CURVATURES_AGREE);
            if (near.isEmpty() || !isMaximum(near.get().second())) {
                return Optional.empty();
            }
            RealMatrix curvature = near.get().second();
            double[] move = solve(curvature, near.get().first());
            double length = length(move, curvature);
            // So near, the likelihood no longer tells two points apart, but its slope does: take the whole step.
            double[] next = length < TOO_LONG ? minus(at, 1, move) : notDown(at, move);
            boolean isLast = length < SHORT || next == at;
            if (isLast && isNear) {
                return length < TOO_LONG ? Optional.of(maximum(next, curvature)) : Optional.empty();
            }
            at = next;
            base = stepsFor(curvature);
            isNear = isLast || length < TOO_LONG;
        }
        return Optional.empty();
    }

    /**
     * Takes differences by ever narrower steps: wide ones miss what changes within them or reach outside the range, narrow
     * ones drown in the rounding. Those are returned that differ least from the ones twice as wide.
     */
    private Optional<Differences> differences(double[] at, double[] base, double enough) {
        Optional<Differences> best = Optional.empty();
        double least = CURVATURES_AGREE;
        Differences wide = new Differences(this::negative, at, base);
        for (double share = 0.5; share > LEAST_SHARE && (best.isEmpty() || least > enough); share /= 2) {
            Differences narrow = new Differences(this::negative, at, times(share, base));
            double apart = wide.areFinite() && narrow.areFinite()
                    ? apart(narrow.second(), wide.second())
                    : Double.POSITIVE_INFINITY;
            if (apart < least) {
                least = apart;
                best = Optional.of(narrow);
            } else if (best.isPresent() && apart > MUCH_MORE * least) {
                break;
            }
            wide = narrow;
        }
        return best;
    }

    private Maximum maximum(double[] at, RealMatrix curvature) {
        Distribution fitted = family.with(at);
        return new Maximum(
                at,
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

    /** Returns by how much two curvatures differ at most, as a share of their size; not a number if one is none. */
    private static double apart(RealMatrix a, RealMatrix b) {
        double largest = 0;
        for (int i = 0; i < a.getRowDimension(); i++) {
            for (int j = 0; j <= i; j++) {
                double scale = Math.sqrt(Math.abs(a.getEntry(i, i) * a.getEntry(j, j)));
                largest = Math.max(largest, Math.abs(a.getEntry(i, j) - b.getEntry(i, j)) / scale);
            }
        }
        return largest;
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
