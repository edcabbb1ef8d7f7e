package dev.runnel.hydraulics.rating;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apiguardian.api.API;

/**
 * Gaugings, and the rating curves that can be fitted to them. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RatingFit {
    /** Search range of lowest stage minus offset, in units of the range of stage. */
    private static final double NEAREST = 1e-4;

    private static final double FARTHEST = 30;

    /** Offsets tried, evenly in the logarithm; chosen here. */
    private static final int GRID = 400;

    private final double[] stage;
    private final double[] logDischarge;
    private final double[] weights;
    private final double lowest;
    private final double highest;

    private RatingFit(double[] stage, double[] logDischarge, double[] weights) {
        this.stage = stage;
        this.logDischarge = logDischarge;
        this.weights = weights;
        lowest = Arrays.stream(stage).min().orElseThrow();
        highest = Arrays.stream(stage).max().orElseThrow();
    }

    /**
     * Returns gaugings to fit to.
     *
     * @param stage stages, m; finite, at least two different; copied
     * @param discharge gauged discharges, m³/s; greater than 0, finite; same length, at least 3; copied
     * @return the gaugings
     * @throws IllegalArgumentException if an array or one of its values is outside its range; the message names the index
     */
    public static RatingFit of(double[] stage, double[] discharge) {
        Require.sameLength("discharge", stage.length, discharge.length);
        Require.atLeast("count of gaugings", stage.length, 3);
        double[] logs = new double[stage.length];
        for (int i = 0; i < stage.length; i++) {
            Require.finite("stage[" + i + "]", stage[i], "m");
            logs[i] = Math.log(Require.positive("discharge[" + i + "]", discharge[i], "m3/s"));
        }
        double[] even = new double[stage.length];
        Arrays.fill(even, 1);
        RatingFit fit = new RatingFit(stage.clone(), logs, even);
        if (fit.lowest == fit.highest) {
            throw new IllegalArgumentException(
                    "stage must have at least two different values, was " + Text.number(fit.lowest) + " m throughout");
        }
        return fit;
    }

    /**
     * Returns a copy in which each gauging weighs by its own uncertainty, 1/u². The weights are scaled to a mean of 1, so that the
     * standard error stays that of an average gauging.
     *
     * @param relative relative standard uncertainty of each gauged discharge, 0.04 for 4 %; as many as gaugings, in (0, 5]; copied
     * @return the copy
     * @throws IllegalArgumentException if the array or one of its values is outside its range; the message names the index
     */
    public RatingFit withUncertainty(double[] relative) {
        Require.sameLength("relative", stage.length, relative.length);
        double[] newWeights = new double[relative.length];
        double sum = 0;
        for (int i = 0; i < relative.length; i++) {
            if (!(relative[i] >= 1e-6 && relative[i] <= 5)) {
                throw new IllegalArgumentException(
                        "relative[" + i + "] must be in [1.0E-6, 5], was " + Text.number(relative[i]));
            }
            newWeights[i] = 1 / (relative[i] * relative[i]);
            sum += newWeights[i];
        }
        for (int i = 0; i < newWeights.length; i++) {
            newWeights[i] *= newWeights.length / sum;
        }
        return new RatingFit(stage, logDischarge, newWeights);
    }

    /**
     * Fits one segment with a known stage of no flow (surveyed crest or invert).
     *
     * @param offset stage of no flow a, m; below the lowest gauged stage, finite
     * @return the curve; two parameters
     * @throws IllegalArgumentException if {@code offset} is outside its range or the exponent comes out 0 or less
     */
    public RatingCurve withOffset(double offset) {
        return segmented(new double[] {offset}, new double[0]);
    }

    /**
     * Fits one segment and the stage of no flow with it, by the least sum of squares of ln Q over all offsets.
     *
     * @return the curve; three parameters
     * @throws IllegalArgumentException if there are fewer than 4 gaugings, the exponent comes out 0 or less, or the
     *     gaugings do not determine the offset (the sum of squares falls on to the end of the search)
     */
    public RatingCurve fittingOffset() {
        Require.atLeast("count of gaugings", stage.length, 4);
        double range = highest - lowest;
        double from = Math.log(NEAREST * range);
        double width = (Math.log(FARTHEST * range) - from) / GRID;
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= GRID; i++) {
            double sum = squares(lowest - Math.exp(from + i * width));
            if (sum < least) {
                least = sum;
                best = i;
            }
        }
        if (best == 0 || best == GRID) {
            throw new IllegalArgumentException("stage and discharge must determine the offset, but the best fit lies "
                    + (best == 0 ? "at the lowest gauging" : "far below it") + "; use withOffset");
        }
        return curve(
                new double[] {refined(from + (best - 1) * width, from + (best + 1) * width)}, new double[0], 1, true);
    }

    private double refined(double from, double to) {
        try {
            double logDistance = new BrentOptimizer(1e-12, 1e-14)
                    .optimize(
                            new MaxEval(10_000),
                            GoalType.MINIMIZE,
                            new SearchInterval(from, to),
                            new UnivariateObjectiveFunction(x -> squares(lowest - Math.exp(x))))
                    .getPoint();
            return lowest - Math.exp(logDistance);
        } catch (MathIllegalStateException e) {
            throw new IllegalStateException(
                    "no least sum of squares between " + Text.number(from) + " and " + Text.number(to), e);
        }
    }

    private double squares(double offset) {
        return squares(new RatingModel(stage, logDischarge, weights, new double[] {offset}, new double[0], false));
    }

    private double squares(RatingModel model) {
        double sum = 0;
        for (int i = 0; i < stage.length; i++) {
            double residual = logDischarge[i] - model.logDischarge(stage[i]);
            sum += weights[i] * residual * residual;
        }
        return sum;
    }

    /**
     * Fits segments that join without a step, and finds where they join: the stages with the least sum of squares, each segment
     * holding at least three gaugings. The stages are fitted parameters; the bands leave their error out.
     *
     * @param offsets stage of no flow of each segment, m, lowest segment first; below the lowest gauging, 2 or 3
     * @return the curve with the best breaks
     * @throws IllegalArgumentException if {@code offsets} is outside its range or there are too few gaugings
     */
    public RatingCurve searchingBreaks(double... offsets) {
        Require.inRange("count of offsets", offsets.length, 2, 3, "");
        for (int i = 0; i < offsets.length; i++) {
            if (!(offsets[i] < lowest && offsets[i] > Double.NEGATIVE_INFINITY)) {
                throw new IllegalArgumentException("offsets[" + i + "] must be finite and below the lowest gauging "
                        + Text.number(lowest) + " m, was " + Text.number(offsets[i]));
            }
        }
        Require.atLeast("count of gaugings", stage.length, 3 * offsets.length);
        double[] breaks = new BreakSearch(stage, found -> squares(offsets, found)).best(offsets.length - 1);
        return curve(offsets.clone(), breaks, breaks.length);
    }

    private double squares(double[] offsets, double[] breaks) {
        try {
            RatingModel model = new RatingModel(stage, logDischarge, weights, offsets, breaks, false);
            return Arrays.stream(model.exponents()).min().orElseThrow() > 0 ? squares(model) : Double.POSITIVE_INFINITY;
        } catch (UndeterminedRatingException e) {
            return Double.POSITIVE_INFINITY;
        }
    }

    /**
     * Fits one, two or three segments with one stage of no flow, their breaks searched, and returns the one that pays for its
     * parameters: the least information criterion of Schwarz (1978), n ln(sum of squares/n) + p ln n.
     *
     * @param offset stage of no flow a, m; below the lowest gauging, finite
     * @return the best curve; one segment where there are fewer than six gaugings
     * @throws IllegalArgumentException if {@code offset} is outside its range or the exponent comes out 0 or less
     */
    public RatingCurve searchingSegments(double offset) {
        RatingCurve best = withOffset(offset);
        for (int segments = 2; segments <= 3 && stage.length >= 3 * segments; segments++) {
            double[] offsets = new double[segments];
            Arrays.fill(offsets, offset);
            RatingCurve other = searchingBreaks(offsets);
            if (other.informationCriterion() < best.informationCriterion()) {
                best = other;
            }
        }
        return best;
    }

    /**
     * Fits segments that join without a step at given stages, each with a known offset: a crest that another control takes
     * over from, a pipe that fills.
     *
     * @param offsets stage of no flow of each segment, m, lowest segment first; each below the lowest stage of its segment
     * @param breaks stages where a segment ends, m, ascending; one fewer than {@code offsets}, inside the gauged range
     * @return the curve; one parameter more than there are segments
     * @throws IllegalArgumentException if the arrays are outside their range, a segment holds fewer than two gaugings, or an
     *     exponent comes out 0 or less
     */
    public RatingCurve segmented(double[] offsets, double[] breaks) {
        Require.atLeast("count of offsets", offsets.length, 1);
        Require.sameLength("breaks", offsets.length - 1, breaks.length);
        double bottom = lowest;
        for (int i = 0; i < offsets.length; i++) {
            if (!(offsets[i] < bottom && offsets[i] > Double.NEGATIVE_INFINITY)) {
                throw new IllegalArgumentException("offsets[" + i + "] must be finite and below " + Text.number(bottom)
                        + " m, was " + Text.number(offsets[i]));
            }
            double top = highest;
            if (i < breaks.length) {
                if (!(breaks[i] > bottom && breaks[i] < highest)) {
                    throw new IllegalArgumentException("breaks[" + i + "] must be between " + Text.number(bottom)
                            + " and " + Text.number(highest) + " m, was " + Text.number(breaks[i]));
                }
                top = breaks[i];
            }
            requireTwo(i, i == 0 ? Double.NEGATIVE_INFINITY : bottom, top);
            bottom = top;
        }
        return curve(offsets.clone(), breaks.clone(), 0);
    }

    private void requireTwo(int segment, double above, double to) {
        long inside = Arrays.stream(stage).filter(h -> h > above && h <= to).count();
        if (inside < 2) {
            throw new IllegalArgumentException("segment " + segment + " must hold at least 2 gaugings, was " + inside);
        }
    }

    private RatingCurve curve(double[] offsets, double[] breaks, int searched) {
        return curve(offsets, breaks, searched, false);
    }

    private RatingCurve curve(double[] offsets, double[] breaks, int searched, boolean offsetFitted) {
        int parameters = 1 + offsets.length + searched;
        RatingModel model = new RatingModel(stage, logDischarge, weights, offsets, breaks, offsetFitted);
        for (double exponent : model.exponents()) {
            if (!(exponent > 0)) {
                throw new IllegalArgumentException(
                        "discharge must rise with stage in every segment, but an exponent of "
                                + Text.significant(exponent, 4) + " fits best");
            }
        }
        double[] residuals = new double[stage.length];
        double sum = 0;
        for (int i = 0; i < stage.length; i++) {
            residuals[i] = logDischarge[i] - model.logDischarge(stage[i]);
            sum += weights[i] * residuals[i] * residuals[i];
        }
        int degrees = stage.length - parameters;
        return new RatingCurve(model, lowest, highest, Math.sqrt(sum / degrees), degrees, residuals);
    }

    @Override
    public String toString() {
        return "RatingFit[" + stage.length + " gaugings, stage " + Text.significant(lowest, 6) + " to "
                + Text.significant(highest, 6) + " m]";
    }
}
