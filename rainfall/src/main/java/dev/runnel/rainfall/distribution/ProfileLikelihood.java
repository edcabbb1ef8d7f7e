package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleValueChecker;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.NelderMeadSimplex;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.SimplexOptimizer;

/**
 * The greatest likelihood with the level of a given probability held: the first parameter is solved for it, the others are
 * searched. Limits are where it lies below the greatest one by half the &chi;&sup2; quantile of one degree of freedom.
 * Source: Coles (2001), An introduction to statistical modeling of extreme values, Springer, section 2.6.6.
 *
 * <p>Not thread-safe: each search begins where the last one ended.
 */
final class ProfileLikelihood {
    /** Stands for a point outside the range in the simplex, which needs a number. */
    private static final double OUTSIDE = 1e300;

    /** Relative accuracies, near the rounding, and bounds of the steps to them; chosen here. */
    private static final double ACCURACY = 1e-12;

    private static final int MOST_EVALUATIONS = 5000;
    private static final int MOST_SOLVER_STEPS = 60;
    private static final double SOLVED = 1e-12;

    /** Factor by which the search for a limit goes out farther each time; chosen here. */
    private static final double WIDER = 1.5;

    /** Stands for a log-likelihood outside the range where a root is sought, which needs a number. */
    private static final double GREATLY_BELOW = -1e6;

    /** Side of the first simplex, of the standard error of each parameter; chosen here. */
    private static final double FIRST_SIDE = 0.3;

    /** Doublings of the first step after which a limit counts as infinite. */
    private static final int MOST_DOUBLINGS = 24;

    private static final double LIMIT_ACCURACY = 1e-10;

    /** Factor, and how often it is tried, by which scales grow to take in every value; chosen here. */
    private static final double WIDENING = 1.25;

    private static final int MOST_WIDENINGS = 40;

    private final LikelihoodFit fit;
    private final double[] errors;
    private final double[] best;
    private double[] from;

    ProfileLikelihood(LikelihoodFit fit) {
        this.fit = fit;
        this.errors = fit.standardErrors().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        this.best = fit.family().valuesOf(fit.distribution());
        this.from = best;
    }

    /** Limits of the level of a probability of exceedance. */
    ConfidenceInterval ofLevel(double exceedance, double confidence) {
        double estimate = fit.distribution().quantileOfExceedance(exceedance);
        double step = fit.standardError(member -> member.quantileOfExceedance(exceedance));
        double drop = drop(confidence);
        return new ConfidenceInterval(
                estimate,
                limit(level -> above(exceedance, level, drop), estimate, drop, -step),
                limit(level -> above(exceedance, level, drop), estimate, drop, step),
                confidence);
    }

    /** Limits of the return period, one over the probability of exceedance, of a level. */
    ConfidenceInterval ofReturnPeriod(double level, double confidence) {
        double estimate = fit.distribution().exceedance(level);
        double drop = drop(confidence);
        if (!(estimate > 0 && estimate < 1)) {
            throw new IllegalArgumentException(
                    "level must be inside the bounds of the fitted distribution, was " + Text.number(level));
        }
        // Over the logarithm of the odds, which have no bounds.
        double odds = Math.log(estimate) - Math.log1p(-estimate);
        DoubleUnaryOperator above = at -> above(1 / (1 + Math.exp(-at)), level, drop);
        double rarest = limit(above, odds, drop, -0.5);
        double commonest = limit(above, odds, drop, 0.5);
        return new ConfidenceInterval(1 / estimate, 1 + Math.exp(-commonest), 1 + Math.exp(-rarest), confidence);
    }

    private static double drop(double confidence) {
        Probability.inside("confidence", confidence);
        return 0.5 * new ChiSquaredDistribution(1).inverseCumulativeProbability(confidence);
    }

    /** Goes outward from the estimate until the profile is low enough, then solves for where it becomes so. */
    private double limit(DoubleUnaryOperator above, double estimate, double atEstimate, double firstStep) {
        from = best;
        double inside = estimate;
        double valueInside = atEstimate;
        double step = firstStep;
        for (int i = 0; i < MOST_DOUBLINGS; i++) {
            double outside = inside + step;
            double reached = above.applyAsDouble(outside);
            if (reached < 0) {
                double in = inside;
                double valueIn = valueInside;
                // The ends are known. At the estimate a maximum on the edge of its range would be lost to rounding.
                return new BrentSolver(LIMIT_ACCURACY, LIMIT_ACCURACY * Math.abs(firstStep))
                        .solve(
                                MOST_EVALUATIONS,
                                at -> at == in ? valueIn : at == outside ? reached : above.applyAsDouble(at),
                                Math.min(in, outside),
                                Math.max(in, outside));
            }
            inside = outside;
            valueInside = reached;
            step *= WIDER;
        }
        return firstStep < 0 ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    }

    /** Returns how far the profile at a level lies above the line of the limits; greatly below outside the range. */
    private double above(double exceedance, double level, double drop) {
        return drop + Math.max(GREATLY_BELOW, profile(exceedance, level) - fit.logLikelihood());
    }

    private double profile(double exceedance, double level) {
        if (best.length == 1) {
            return held(exceedance, level, new double[0]);
        }
        double[] rest = start(exceedance, level);
        double[] sides = new double[rest.length];
        for (int i = 0; i < sides.length; i++) {
            sides[i] = FIRST_SIDE * errors[i + 1];
        }
        try {
            double[] found = rest;
            double reached = Double.NEGATIVE_INFINITY;
            // A second simplex about the end of the first mends one that had collapsed.
            for (int i = 0; i < 2; i++) {
                found = new SimplexOptimizer(new SimpleValueChecker(ACCURACY, ACCURACY))
                        .optimize(
                                new MaxEval(MOST_EVALUATIONS),
                                GoalType.MAXIMIZE,
                                new InitialGuess(found),
                                new NelderMeadSimplex(sides),
                                new ObjectiveFunction(p -> Math.max(held(exceedance, level, p), -OUTSIDE)))
                        .getPoint();
                reached = held(exceedance, level, found);
            }
            if (Double.isFinite(reached)) {
                double[] next = best.clone();
                System.arraycopy(found, 0, next, 1, found.length);
                from = next;
            }
            return reached;
        } catch (MathIllegalStateException tooMany) {
            return Double.NEGATIVE_INFINITY;
        }
    }

    /** The likelier of where the last search ended and where the curvature points, or one that is possible at all. */
    private double[] start(double exceedance, double level) {
        double[] last = Arrays.copyOfRange(from, 1, from.length);
        double[] pointed = pointed(exceedance, level);
        double ofLast = held(exceedance, level, last);
        double ofPointed = held(exceedance, level, pointed);
        if (ofLast > Double.NEGATIVE_INFINITY || ofPointed > Double.NEGATIVE_INFINITY) {
            return ofLast > ofPointed ? last : pointed;
        }
        // At the level held, a wider distribution takes in every value in the end. From nowhere else would a simplex
        // move.
        double[] wide = last.clone();
        for (int i = 0; i < MOST_WIDENINGS; i++) {
            for (int j = 0; j < wide.length; j++) {
                wide[j] *= fit.family().parameters().get(j + 1).isScale() ? WIDENING : 1;
            }
            if (held(exceedance, level, wide) > Double.NEGATIVE_INFINITY) {
                return wide;
            }
        }
        return last;
    }

    /** Where the likelihood would be greatest with the level held, if it were as curved everywhere as at its maximum. */
    private double[] pointed(double exceedance, double level) {
        double estimate = fit.distribution().quantileOfExceedance(exceedance);
        double[] slope = fit.slope(member -> member.quantileOfExceedance(exceedance));
        List<List<Double>> covariance = fit.covariance();
        double[] move = new double[best.length];
        double variance = 0;
        for (int i = 0; i < move.length; i++) {
            for (int j = 0; j < move.length; j++) {
                move[i] += covariance.get(i).get(j) * slope[j];
            }
            variance += slope[i] * move[i];
        }
        double[] rest = new double[best.length - 1];
        for (int i = 0; i < rest.length; i++) {
            double at = best[i + 1];
            double moved = (level - estimate) / variance * move[i + 1];
            // A scale stays above 0.
            rest[i] = fit.family().parameters().get(i + 1).isScale() ? at * Math.exp(moved / at) : at + moved;
        }
        return rest;
    }

    /** Returns the log-likelihood with the first parameter such that the level has the probability of exceedance. */
    private double held(double exceedance, double level, double[] rest) {
        double[] p = new double[rest.length + 1];
        System.arraycopy(rest, 0, p, 1, rest.length);
        double a = best[0];
        double atA = distance(p, a, exceedance, level);
        double b = a + Math.max(1e-3 * Math.abs(a), 0.1 * errors[0]);
        double tolerance = SOLVED * Math.max(Math.abs(level), errors[0]);
        // Secant steps: the level is a straight line in a location, and in a scale.
        for (int i = 0; i < MOST_SOLVER_STEPS && Math.abs(atA) > tolerance; i++) {
            double atB = distance(p, b, exceedance, level);
            double next = b - atB * (b - a) / (atB - atA);
            if (!Double.isFinite(next)) {
                return Double.NEGATIVE_INFINITY;
            }
            a = b;
            atA = atB;
            b = next;
        }
        p[0] = a;
        if (!(Math.abs(atA) <= tolerance && fit.family().admits(p))) {
            return Double.NEGATIVE_INFINITY;
        }
        double reached = fit.family().with(p).logLikelihood(fit.sample());
        return Double.isNaN(reached) ? Double.NEGATIVE_INFINITY : reached;
    }

    private double distance(double[] p, double first, double exceedance, double level) {
        p[0] = first;
        return fit.family().admits(p) ? fit.family().with(p).quantileOfExceedance(exceedance) - level : Double.NaN;
    }
}
