package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.ddf.DepthDurationFrequency;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.distribution.Distribution;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.NoFitException;
import dev.runnel.rainfall.distribution.SampleMoments;
import dev.runnel.rainfall.internal.Rain;
import java.time.Duration;
import java.util.Collections;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.apiguardian.api.API;

/**
 * A depth-duration-frequency relation fitted to annual maxima in one smooth family whose curves cannot cross:
 *
 * <blockquote>i(D, T) = y(T) / (D + &theta;)<sup>&eta;</sup></blockquote>
 *
 * <p>with intensity i in mm/h, duration D in h, and one distribution of y for all durations. &theta; and &eta; make the
 * logarithm of the mean intensity follow the duration best; then the rescaled maxima of all durations are pooled and
 * fitted. Depth never falls with duration, since 0 &lt; &eta; &le; 1 and y &gt; 0. Source of the form: Koutsoyiannis, Kozonis and
 * Manetas (1998), A mathematical framework for studying rainfall intensity-duration-frequency relationships, Journal of
 * Hydrology 206, 118-135; its estimation of &theta; and &eta; is another, by ranks.
 *
 * <p>Return periods are among annual maxima and end, unless told otherwise, at twice the number of years (common
 * practice): beyond that the record says nothing. They begin at 1.01 years or, where the fitted distribution reaches below 0
 * (a Gumbel or a normal one of widely spread maxima does), at the first hundredth of a year at which y is above 0. Depths
 * near such a beginning are those of a law that has left the record, not of rain. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ScaledDdf implements DepthDurationFrequency {
    /** Relative, and in h where θ is about 0: as near as the flat least of a sum of squares can be found; chosen here. */
    private static final double THETA_ACCURACY = 1e-10;

    private static final double THETA_ACCURACY_HOURS = 1e-12;

    /** The search needs about 40; chosen here. */
    private static final int MOST_EVALUATIONS = 1000;

    private static final double LONGEST_THETA_HOURS = 12;
    private static final double SHORTEST_THETA_HOURS = 1e-3;
    private static final double THETA_RATIO = 1.25;
    private static final double SMALLEST_YEARS = 1.01;
    private static final double ETA_ROUNDING = 1e-9;

    private final Distribution rescaled;
    private final double theta;
    private final double eta;
    private final Duration shortest;
    private final Duration longest;
    private final double smallestYears;
    private final double greatestYears;
    private final double worstMeanPercent;
    private final List<String> warnings;

    private ScaledDdf(
            Distribution rescaled,
            double theta,
            double eta,
            Duration shortest,
            Duration longest,
            double greatestYears,
            double worstMeanPercent,
            List<String> warnings) {
        this.rescaled = rescaled;
        this.theta = theta;
        this.eta = eta;
        this.shortest = shortest;
        this.longest = longest;
        this.smallestYears = firstAboveZero(rescaled);
        this.greatestYears = greatestYears;
        this.worstMeanPercent = worstMeanPercent;
        this.warnings = warnings;
        if (!(smallestYears < greatestYears)) {
            throw new NoFitException("greatest return period must be above " + Text.number(smallestYears)
                    + " years, where the depths of " + rescaled + " begin to be above 0, was "
                    + Text.number(greatestYears));
        }
    }

    /** Returns the least return period to answer for: at the one of y = 0 itself there is no depth. */
    private static double firstAboveZero(Distribution rescaled) {
        double hundredths = Math.floor(100 * rescaled.returnPeriod(0) + 1e-6) + 1;
        return Math.max(SMALLEST_YEARS, hundredths / 100);
    }

    /**
     * Fits the relation to annual maxima.
     *
     * @param maxima annual maxima of at least 3 durations
     * @param family family of the rescaled maxima
     * @param method how to estimate its parameters
     * @return the relation, between the shortest and the longest duration
     * @throws IllegalArgumentException if there are fewer than 3 durations, or the family has no such fit of so many values
     * @throws NoFitException if the mean intensity does not fall with duration as the form asks, no member of the family fits,
     *     or what is fitted has no depth above 0 within twice the number of years
     */
    public static ScaledDdf of(AnnualMaxima maxima, DistributionFamily family, FitMethod method) {
        return of(maxima, family, method, maxima.warnings());
    }

    private static ScaledDdf of(
            AnnualMaxima maxima, DistributionFamily family, FitMethod method, List<String> warnings) {
        int count = Require.atLeast("number of durations", maxima.durations().size(), 3);
        double[] hours = new double[count];
        double[] meanIntensity = new double[count];
        for (int j = 0; j < count; j++) {
            Duration duration = maxima.durations().get(j);
            hours[j] = Rain.hours(duration);
            meanIntensity[j] = SampleMoments.of(maxima.depthsMm(duration)).mean() / hours[j];
        }
        double theta = bestTheta(hours, meanIntensity);
        SimpleRegression line = regression(hours, meanIntensity, theta);
        double eta = -line.getSlope();
        if (!(eta > 0 && eta <= 1 + ETA_ROUNDING)) {
            throw new NoFitException(
                    "maxima must have a mean intensity that falls with duration by a power in (0, 1], was "
                            + Text.number(eta));
        }
        eta = Math.min(eta, 1);
        double worst = 0;
        for (int j = 0; j < count; j++) {
            double ofForm = Math.exp(line.predict(Math.log(hours[j] + theta)));
            worst = Math.max(worst, Math.abs(ofForm / meanIntensity[j] - 1));
        }
        double[] pooled = new double[count * maxima.years().size()];
        int at = 0;
        for (int j = 0; j < count; j++) {
            for (double depth : maxima.depthsMm(maxima.durations().get(j))) {
                pooled[at++] = depth / hours[j] * Math.pow(hours[j] + theta, eta);
            }
        }
        return new ScaledDdf(
                Fit.of(family, method, pooled).distribution(),
                theta,
                eta,
                Collections.min(maxima.durations()),
                Collections.max(maxima.durations()),
                2.0 * maxima.years().size(),
                100 * worst,
                warnings);
    }

    /** For a replicate, of which not every one has the form: that is no mistake there. */
    static ScaledDdf ofReplicate(AnnualMaxima maxima, DistributionFamily family, FitMethod method) {
        boolean allEqual = maxima.durations().stream()
                .map(maxima::depthsMm)
                .anyMatch(depths -> DoubleStream.of(depths).distinct().count() < 2);
        if (allEqual) {
            throw new NoFitException("maxima must not be all equal for a duration");
        }
        return of(maxima, family, method, List.of());
    }

    /** Returns the best of a coarse grid, refined between its neighbours: the squares may have more than one minimum. */
    private static double bestTheta(double[] hours, double[] meanIntensity) {
        DoubleUnaryOperator squares = t -> regression(hours, meanIntensity, t).getSumSquaredErrors();
        double best = 0;
        for (double theta : thetas()) {
            best = squares.applyAsDouble(theta) < squares.applyAsDouble(best) ? theta : best;
        }
        double refined = new BrentOptimizer(THETA_ACCURACY, THETA_ACCURACY_HOURS)
                .optimize(
                        new MaxEval(MOST_EVALUATIONS),
                        GoalType.MINIMIZE,
                        new SearchInterval(
                                best / THETA_RATIO,
                                Math.min(Math.max(best * THETA_RATIO, SHORTEST_THETA_HOURS), LONGEST_THETA_HOURS)),
                        new UnivariateObjectiveFunction(squares::applyAsDouble))
                .getPoint();
        return squares.applyAsDouble(refined) < squares.applyAsDouble(best) ? refined : best;
    }

    private static double[] thetas() {
        return DoubleStream.iterate(LONGEST_THETA_HOURS, theta -> theta > SHORTEST_THETA_HOURS, t -> t / THETA_RATIO)
                .toArray();
    }

    private static SimpleRegression regression(double[] hours, double[] meanIntensity, double theta) {
        SimpleRegression line = new SimpleRegression();
        for (int j = 0; j < hours.length; j++) {
            line.addData(Math.log(hours[j] + theta), Math.log(meanIntensity[j]));
        }
        return line;
    }

    /**
     * Returns the relation with another greatest return period.
     *
     * @param years greatest return period it answers for, years; greater than {@link #smallestYears}
     * @return the new relation
     * @throws IllegalArgumentException if {@code years} is not greater than {@link #smallestYears}
     */
    public ScaledDdf withGreatestYears(double years) {
        if (!(years > smallestYears && years < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("years must be greater than " + Text.number(smallestYears)
                    + " and finite, was " + Text.number(years));
        }
        return new ScaledDdf(rescaled, theta, eta, shortest, longest, years, worstMeanPercent, warnings);
    }

    /**
     * Returns &theta;.
     *
     * @return h
     */
    public double thetaHours() {
        return theta;
    }

    /**
     * Returns &eta;.
     *
     * @return exponent, in (0, 1]
     */
    public double eta() {
        return eta;
    }

    /**
     * Returns how well the form suits the record: the greatest difference, over the durations, of the mean intensity of the
     * form from that of the maxima. Where it is many per cent the record follows no such power, and separate fits
     * ({@link AnnualMaxima#table}) should be looked at beside it.
     *
     * @return %, of the mean of the maxima
     */
    public double worstMeanPercent() {
        return worstMeanPercent;
    }

    /**
     * Returns what speaks against a fit to the maxima it was made of, see {@link AnnualMaxima#warnings()}.
     *
     * @return sentences for a report; empty if nothing was found
     */
    public List<String> warnings() {
        return warnings;
    }

    /**
     * Returns the distribution of the rescaled annual maxima y.
     *
     * @return the distribution
     */
    public Distribution rescaledDistribution() {
        return rescaled;
    }

    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        double hours = requireCovered(duration);
        Require.inRange("returnPeriodYears", returnPeriodYears, smallestYears, greatestYears, "years");
        return rescaled.returnLevel(returnPeriodYears) * depthMmOfOne(hours);
    }

    /** Returns the depth where y is 1. */
    private double depthMmOfOne(double hours) {
        return hours / Math.pow(hours + theta, eta);
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        double ofOne = depthMmOfOne(requireCovered(duration));
        return ReturnPeriod.of(
                this,
                depthMm,
                years -> rescaled.returnLevel(years) * ofOne,
                depth -> rescaled.returnPeriod(depth / ofOne));
    }

    /** Returns the depth of a return period, without the limits of the range. */
    double levelMm(Duration duration, double years) {
        return rescaled.returnLevel(years) * depthMmOfOne(requireCovered(duration));
    }

    /** Returns the probability of exceedance among annual maxima, without the limits of the range. */
    double exceedance(Duration duration, double depthMm) {
        return rescaled.exceedance(depthMm / depthMmOfOne(requireCovered(duration)));
    }

    private double requireCovered(Duration duration) {
        if (!covers(duration)) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(shortest) + ", "
                    + Text.exactDuration(longest) + "], was " + Text.exactDuration(duration));
        }
        return Rain.hours(duration);
    }

    @Override
    public ReturnPeriodBasis basis() {
        return ReturnPeriodBasis.ANNUAL_MAXIMUM;
    }

    @Override
    public Duration shortestDuration() {
        return shortest;
    }

    @Override
    public Duration longestDuration() {
        return longest;
    }

    @Override
    public double smallestYears() {
        return smallestYears;
    }

    @Override
    public double greatestYears() {
        return greatestYears;
    }

    @Override
    public String toString() {
        return "ScaledDdf[i = y/(D + " + Text.significant(theta, 4) + " h)^" + Text.significant(eta, 4) + ", y "
                + rescaled + ", means within " + Text.significant(worstMeanPercent, 2) + " %, "
                + Text.significant(smallestYears, 6) + " to " + Text.significant(greatestYears, 4) + " years"
                + (warnings.isEmpty() ? "]" : ", warnings " + warnings.size() + "]");
    }
}
