package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Comparator;
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
 * The greatest likelihood with the level of a given probability held: one parameter is solved for it, the others are
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

    /** Factor of a scale and standard errors of a location by which starts are moved to the likeliest, and how often; chosen here. */
    private static final double WIDENING = 1.6;

    private static final double MOVE = 0.5;
    private static final int MOST_MOVES = 12;

    /** Other shapes where a search begins, in standard errors from the estimate, and how many are tried; chosen here. */
    private static final double[] OTHER_SHAPES = {-4, -2, -1, 1, 2, 4};

    private static final int MOST_STARTS = 4;

    /** Simplexes are repeated until one gains less, at most so often. */
    private static final double NO_GAIN = 1e-10;

    private static final int MOST_AGAIN = 20;

    private record Place(double[] at, double reached) {}

    private final LikelihoodFit fit;
    private final double[] errors;
    private final double[] best;

    /** Which parameter is solved for. */
    private int solved;

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
        solved = farthest(exceedance);
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
        solved = farthest(estimate);
        // Over the logarithm of the odds, which have no bounds.
        double odds = Math.log(estimate) - Math.log1p(-estimate);
        DoubleUnaryOperator above = at -> above(1 / (1 + Math.exp(-at)), level, drop);
        double rarest = limit(above, odds, drop, -0.5);
        double commonest = limit(above, odds, drop, 0.5);
        return new ConfidenceInterval(1 / estimate, 1 + Math.exp(-commonest), 1 + Math.exp(-rarest), confidence);
    }

    /**
     * Chooses the parameter to solve for: of those with a unit, in which a level is a straight line, the one whose standard error
     * moves the level farthest. For a rare level that is the scale: with the location solved, scales that differ by a
     * thousandth would be worlds apart.
     */
    private int farthest(double exceedance) {
        double[] slope = fit.slope(member -> member.quantileOfExceedance(exceedance));
        int farthest = 0;
        for (int i = 1; i < best.length; i++) {
            boolean isFarther = Math.abs(slope[i] * errors[i]) > Math.abs(slope[farthest] * errors[farthest]);
            farthest = fit.family().parameters().get(i).hasUnit() && isFarther ? i : farthest;
        }
        return farthest;
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
        double[] greatest = best;
        double reached = Double.NEGATIVE_INFINITY;
        for (double[] start : starts(exceedance, level)) {
            double[] end = simplex(exceedance, level, start);
            double ofEnd = held(exceedance, level, end);
            if (ofEnd > reached) {
                greatest = end;
                reached = ofEnd;
            }
        }
        // Another simplex about the end of the last mends one that had collapsed.
        double gain = reached;
        for (int i = 0; i < MOST_AGAIN && Double.isFinite(reached) && Math.abs(gain) > NO_GAIN; i++) {
            double[] end = simplex(exceedance, level, greatest);
            double ofEnd = held(exceedance, level, end);
            gain = Math.max(0, ofEnd - reached);
            greatest = gain > 0 ? end : greatest;
            reached += gain;
        }
        from = greatest;
        return reached;
    }

    /** Searches over all parameters but the solved one. */
    private double[] simplex(double exceedance, double level, double[] start) {
        if (best.length == 1) {
            return start;
        }
        double[] sides = new double[best.length];
        for (int i = 0; i < sides.length; i++) {
            sides[i] = FIRST_SIDE * errors[i];
        }
        try {
            return whole(new SimplexOptimizer(new SimpleValueChecker(ACCURACY, ACCURACY))
                    .optimize(
                            new MaxEval(MOST_EVALUATIONS),
                            GoalType.MAXIMIZE,
                            new InitialGuess(rest(start)),
                            new NelderMeadSimplex(rest(sides)),
                            new ObjectiveFunction(p -> Math.max(held(exceedance, level, whole(p)), -OUTSIDE)))
                    .getPoint());
        } catch (MathIllegalStateException tooMany) {
            return start;
        }
    }

    /** Leaves out the solved parameter. */
    private double[] rest(double[] parameters) {
        double[] rest = new double[parameters.length - 1];
        for (int i = 0; i < rest.length; i++) {
            rest[i] = parameters[i < solved ? i : i + 1];
        }
        return rest;
    }

    /**
     * Puts in the solved parameter, at the estimate, and leaves shapes inside their range: a simplex slides along its end, where it
     * would stick at a wall.
     */
    private double[] whole(double[] rest) {
        double[] parameters = best.clone();
        for (int i = 0; i < rest.length; i++) {
            int at = i < solved ? i : i + 1;
            Parameter parameter = fit.family().parameters().get(at);
            parameters[at] = parameter.hasUnit() ? rest[i] : parameter.nearest(rest[i]);
        }
        return parameters;
    }

    /**
     * The likeliest of where the last search ended, where the curvature points, and other shapes. With the level held a short
     * sample often has two maxima, and the one that is greater far out is not the one that is so near the estimate.
     */
    private List<double[]> starts(double exceedance, double level) {
        List<double[]> starts = new ArrayList<>(List.of(from, pointed(exceedance, level)));
        for (int i = 0; i < best.length; i++) {
            Parameter parameter = fit.family().parameters().get(i);
            for (double away : parameter.hasUnit() ? new double[0] : OTHER_SHAPES) {
                double[] other = from.clone();
                other[i] = parameter.toward(best[i], best[i] + away * errors[i]);
                starts.add(other);
            }
        }
        return starts.stream()
                .map(start -> moved(exceedance, level, start))
                .map(at -> new Place(at, held(exceedance, level, at)))
                .filter(place -> place.reached() > Double.NEGATIVE_INFINITY)
                .sorted(Comparator.comparingDouble(Place::reached).reversed())
                .limit(MOST_STARTS)
                .map(Place::at)
                .toList();
    }

    /** Moves locations and widens or narrows scales to the likeliest of a row: a start may be impossible as it is. */
    private double[] moved(double exceedance, double level, double[] start) {
        double[] likeliest = start;
        double reached = held(exceedance, level, start);
        for (int by = -MOST_MOVES; by <= MOST_MOVES; by++) {
            double[] moved = start.clone();
            for (int i = 0; i < moved.length; i++) {
                Parameter parameter = fit.family().parameters().get(i);
                if (parameter.isScale()) {
                    moved[i] *= Math.pow(WIDENING, by);
                } else if (parameter.hasUnit()) {
                    moved[i] += MOVE * by * errors[i];
                }
            }
            double ofMoved = held(exceedance, level, moved);
            if (ofMoved > reached) {
                likeliest = moved;
                reached = ofMoved;
            }
        }
        return likeliest;
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
        double[] pointed = best.clone();
        for (int i = 0; i < pointed.length; i++) {
            double moved = (level - estimate) / variance * move[i];
            // A scale stays above 0.
            pointed[i] =
                    fit.family().parameters().get(i).isScale() ? best[i] * Math.exp(moved / best[i]) : best[i] + moved;
        }
        return pointed;
    }

    /** Returns the log-likelihood with the solved parameter such that the level has the probability of exceedance. */
    private double held(double exceedance, double level, double[] parameters) {
        double[] p = parameters.clone();
        double a = best[solved];
        double atA = distance(p, a, exceedance, level);
        double b = a + Math.max(1e-3 * Math.abs(a), 0.1 * errors[solved]);
        double tolerance = SOLVED * Math.max(Math.abs(level), errors[solved]);
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
        p[solved] = a;
        if (!(Math.abs(atA) <= tolerance && fit.family().admits(p))) {
            return Double.NEGATIVE_INFINITY;
        }
        double reached = fit.family().with(p).logLikelihood(fit.sample());
        return Double.isNaN(reached) ? Double.NEGATIVE_INFINITY : reached;
    }

    private double distance(double[] p, double value, double exceedance, double level) {
        p[solved] = value;
        return fit.family().admits(p) ? fit.family().with(p).quantileOfExceedance(exceedance) - level : Double.NaN;
    }
}
