package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Statistics;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * Limits of confidence by drawing many samples anew. Immutable and thread-safe; replicates run in parallel, each with a
 * random sequence of its own made from the seed and its number, so that the result does not depend on the machine.
 *
 * <p>Source: Efron and Tibshirani (1993), An introduction to the bootstrap, Chapman and Hall, chapters 6 and 13
 * (percentile interval).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Bootstrap {
    /** Chosen here: of fewer replicates the 5 % of either tail would be the one outermost. */
    private static final int FEWEST = 20;

    /** Four L-moments need as many values. */
    private static final int FEWEST_VALUES = 4;

    /** Confidence unless another is asked for, and its range: chosen here. */
    private static final double USUAL_CONFIDENCE = 0.9;

    private static final double LEAST_CONFIDENCE = 0.5;
    private static final double LARGEST_CONFIDENCE = 0.999;

    private static final Comparator<GoodnessOfFit> WORSE_LAST = Comparator.comparingDouble(
                    GoodnessOfFit::andersonDarling)
            .thenComparingDouble(GoodnessOfFit::kolmogorovSmirnov);

    /**
     * An interval with what it was made from.
     *
     * @param estimate value from the sample itself
     * @param lower lower limit
     * @param upper upper limit
     * @param standardError standard deviation over the replicates
     * @param confidence share of replicates between the limits
     * @param replicates number of replicates that gave a value
     * @param failed number of replicates that could not be fitted, and so are not in the limits
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Interval(
            double estimate,
            double lower,
            double upper,
            double standardError,
            double confidence,
            int replicates,
            int failed) {
        /**
         * Returns the limits alone.
         *
         * @return estimate, limits and confidence
         */
        public ConfidenceInterval limits() {
            return new ConfidenceInterval(estimate, lower, upper, confidence);
        }

        @Override
        public String toString() {
            return Text.significant(estimate, 4) + " (" + Text.significant(100 * confidence, 6) + " %: "
                    + Text.significant(lower, 4) + " to " + Text.significant(upper, 4) + ", " + replicates
                    + " replicates, " + failed + " failed)";
        }
    }

    /**
     * How rare a fit as poor as that of the sample is among samples of the fitted distribution.
     *
     * @param value (m + 1)/(replicates + 1) with m replicates that fit no better; in (0, 1]
     * @param replicates number of replicates that could be fitted
     * @param failed number of replicates that could not, and so are not in the value: many of them call it into question
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Significance(double value, int replicates, int failed) {
        @Override
        public String toString() {
            return Text.significant(value, 3) + " (" + replicates + " replicates, " + failed + " failed)";
        }
    }

    /**
     * Critical values of the measures of fit.
     *
     * @param values one set for each probability, in the order asked; an Anderson-Darling value is infinite where more
     *     than that share of the replicates have a value outside the bounds fitted to them
     * @param replicates number of replicates that could be fitted
     * @param failed number of replicates that could not, and so are not in the values
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record CriticalValues(List<GoodnessOfFit> values, int replicates, int failed) {
        /**
         * Copies the list.
         *
         * @param values one set for each probability
         * @param replicates number of replicates that could be fitted
         * @param failed number of replicates that could not
         */
        public CriticalValues {
            Objects.requireNonNull(values, "values");
            values = List.copyOf(values);
        }
    }

    private final int replicates;
    private final long seed;
    private final double confidence;
    private final boolean parametric;

    private Bootstrap(int replicates, long seed, double confidence, boolean parametric) {
        this.replicates = replicates;
        this.seed = seed;
        this.confidence = confidence;
        this.parametric = parametric;
    }

    /**
     * Returns a bootstrap that draws from the fitted distribution (parametric), with limits at 90 % confidence.
     *
     * @param replicates number of samples to draw; in [20, 1,000,000]
     * @param seed start of the random sequence: the same seed gives the same limits
     * @return the bootstrap
     * @throws IllegalArgumentException if {@code replicates} is out of range
     */
    public static Bootstrap of(int replicates, long seed) {
        return new Bootstrap(
                Limits.within("replicates", replicates, FEWEST, Limits.MOST_REPLICATES), seed, USUAL_CONFIDENCE, true);
    }

    /**
     * Returns the same bootstrap at another confidence.
     *
     * @param confidence share between the limits; in [0.5, 0.999]
     * @return the new bootstrap
     * @throws IllegalArgumentException if it is outside or NaN
     */
    public Bootstrap withConfidence(double confidence) {
        return new Bootstrap(
                replicates,
                seed,
                Require.inRange("confidence", confidence, LEAST_CONFIDENCE, LARGEST_CONFIDENCE, ""),
                parametric);
    }

    /**
     * Returns a bootstrap that draws from the sample itself, with replacement, instead of from the fitted distribution.
     *
     * @return the new bootstrap
     */
    public Bootstrap withResampling() {
        return new Bootstrap(replicates, seed, confidence, false);
    }

    /**
     * Returns the limits of a return level.
     *
     * @param fit the fit of the sample
     * @param sample the sample it was made from; not modified
     * @param years return period among annual maxima, years; greater than 1
     * @return the interval
     * @throws IllegalArgumentException if an argument is out of range or fewer than 20 replicates could be fitted
     */
    public Interval returnLevel(Fit fit, double[] sample, double years) {
        return interval(fit, sample, fit.returnLevel(years), replicate -> replicate.returnLevel(years));
    }

    /**
     * Returns the limits of a return period: how rare a value may be, given that the fit is of a sample.
     *
     * @param fit the fit of the sample
     * @param sample the sample it was made from; not modified
     * @param value the value, in the unit of the sample; finite
     * @return the interval of the return period among annual maxima, years; its upper limit is infinite where replicates are
     *     bounded below the value, its standard error NaN, for a return period need not have one
     * @throws IllegalArgumentException if the value is not finite or fewer than 20 replicates could be fitted
     */
    public Interval returnPeriod(Fit fit, double[] sample, double value) {
        Require.finite("value", value, "");
        Interval exceedance = interval(
                fit,
                sample,
                fit.distribution().exceedance(value),
                replicate -> replicate.distribution().exceedance(value));
        return new Interval(
                1 / exceedance.estimate(),
                1 / exceedance.upper(),
                1 / exceedance.lower(),
                Double.NaN,
                confidence,
                exceedance.replicates(),
                exceedance.failed());
    }

    /**
     * Returns the share of replicates drawn from the fitted distribution, and fitted again, whose Anderson-Darling
     * statistic is at least that of the sample: a small one speaks against the family.
     *
     * <p>The statistic is infinite if a value lies outside the fitted bound, which for a family with a lower bound is no
     * rarity: 38 % of exponential samples of 30 by L-moments. An infinite one is greater than any other; between two of
     * them the Kolmogorov-Smirnov distance decides.
     *
     * @param fit the fit of the sample
     * @param sample the sample it was made from; not modified
     * @return the significance, with the number of replicates
     * @throws IllegalArgumentException if the sample has not the size of the fit, or fewer than 20 replicates could be
     *     fitted
     */
    public Significance significance(Fit fit, double[] sample) {
        if (sample.length != fit.sampleSize()) {
            throw new IllegalArgumentException(
                    "sample must have the " + fit.sampleSize() + " values of the fit, had " + sample.length);
        }
        GoodnessOfFit observed = GoodnessOfFit.of(fit.distribution(), PlottingPosition.CUNNANE, sample);
        List<List<GoodnessOfFit>> drawn = fittedAgain(fit, List.of(PlottingPosition.CUNNANE));
        long noBetter = drawn.stream()
                .filter(each -> WORSE_LAST.compare(each.get(0), observed) >= 0)
                .count();
        return new Significance((noBetter + 1.0) / (drawn.size() + 1.0), drawn.size(), replicates - drawn.size());
    }

    /**
     * Returns the critical values of the measures of fit: what a sample of this size, drawn from the fitted distribution
     * and fitted again by the same method, is worse than with the given probability. They hold for this family, method
     * and size; for a family of location and scale they do not depend on the parameters.
     *
     * <p>An infinite Anderson-Darling statistic counts as greater than any other. Where more than the given share are
     * infinite, so is the critical value, and the statistic cannot reject at that probability: take the correlation,
     * the distance or {@link #significance}.
     *
     * @param fit the fit; its sample size counts
     * @param position plotting position for the correlation
     * @param significances probabilities; in (0, 1)
     * @return one set for each: the correlation that is fallen below, the others exceeded
     * @throws IllegalArgumentException if a probability is not inside (0, 1) or fewer than 20 replicates could be fitted
     */
    public CriticalValues criticalValues(Fit fit, PlottingPosition position, double... significances) {
        return criticalValues(fit, List.of(position), significances).get(0);
    }

    /**
     * Returns the critical values of the measures of fit, as {@link #criticalValues(Fit, PlottingPosition, double...)}, with
     * the correlation at each of several plotting positions. All are of the same replicates: what differs between them is what
     * the positions make of it, and no chance.
     *
     * @param fit the fit; its sample size counts
     * @param positions plotting positions for the correlation; at least one
     * @param significances probabilities; in (0, 1)
     * @return critical values for each position, in their order
     * @throws IllegalArgumentException if there is no position, a probability is not inside (0, 1) or fewer than 20 replicates
     *     could be fitted
     */
    public List<CriticalValues> criticalValues(Fit fit, List<PlottingPosition> positions, double... significances) {
        Require.atLeast("number of positions", positions.size(), 1);
        for (double significance : significances) {
            Probability.inside("significance", significance);
        }
        List<List<GoodnessOfFit>> drawn = fittedAgain(fit, positions);
        return IntStream.range(0, positions.size())
                .mapToObj(i ->
                        criticalValues(drawn.stream().map(each -> each.get(i)).toList(), significances))
                .toList();
    }

    private CriticalValues criticalValues(List<GoodnessOfFit> drawn, double... significances) {
        double[] correlation = sorted(drawn, GoodnessOfFit::plotCorrelation);
        double[] squared = sorted(drawn, GoodnessOfFit::andersonDarling);
        double[] distance = sorted(drawn, GoodnessOfFit::kolmogorovSmirnov);
        List<GoodnessOfFit> values = Arrays.stream(significances)
                .mapToObj(significance -> new GoodnessOfFit(
                        quantile(correlation, significance),
                        quantile(squared, 1 - significance),
                        quantile(distance, 1 - significance)))
                .toList();
        return new CriticalValues(values, drawn.size(), replicates - drawn.size());
    }

    /**
     * Returns the measures, at each plotting position, of samples drawn from the fit and fitted again, without those that could
     * not be fitted.
     */
    private List<List<GoodnessOfFit>> fittedAgain(Fit fit, List<PlottingPosition> positions) {
        SplittableRandom[] sequences = sequences();
        double[] none = new double[fit.sampleSize()];
        List<PlottedPositions> plotted = positions.stream()
                .map(each -> PlottedPositions.of(fit.distribution(), each, fit.sampleSize()))
                .toList();
        List<List<GoodnessOfFit>> drawn = IntStream.range(0, replicates)
                .parallel()
                .mapToObj(i -> {
                    double[] x = draw(fit, none, sequences[i], true);
                    if (Samples.areAllEqual(x)) {
                        return Optional.<List<GoodnessOfFit>>empty();
                    }
                    try {
                        Distribution again =
                                Fit.of(fit.family(), fit.method(), x).distribution();
                        return Optional.of(GoodnessOfFit.of(again, plotted, x));
                    } catch (NoFitException notFitted) {
                        return Optional.<List<GoodnessOfFit>>empty();
                    }
                })
                .flatMap(Optional::stream)
                .toList();
        Require.atLeast("number of replicates that could be fitted", drawn.size(), FEWEST);
        return drawn;
    }

    private static double[] sorted(List<GoodnessOfFit> drawn, ToDoubleFunction<GoodnessOfFit> measure) {
        return drawn.stream().mapToDouble(measure).sorted().toArray();
    }

    /** As {@link Statistics#quantile}, but between or next to infinite values, which are kept, infinite too. */
    private static double quantile(double[] sorted, double probability) {
        double position = probability * (sorted.length - 1);
        double below = sorted[(int) Math.floor(position)];
        double above = sorted[(int) Math.ceil(position)];
        return below == above ? below : below + (position - Math.floor(position)) * (above - below);
    }

    private Interval interval(Fit fit, double[] sample, double estimate, ToDoubleFunction<Fit> quantity) {
        DistributionFamily family = fit.family();
        if (!parametric && fit.method() == FitMethod.L_MOMENTS && family.isFittedByFourLMoments()) {
            Samples.check(sample, FEWEST_VALUES);
            Resampling resampling = new Resampling(family.transformed(sample));
            return interval(
                    estimate,
                    random -> quantity.applyAsDouble(
                            fit.with(family.fromLMoments(resampling.lMoments(resampling.draw(random))))));
        }
        return interval(estimate, random -> {
            double[] x = draw(fit, sample, random, parametric);
            return Samples.areAllEqual(x) ? Double.NaN : quantity.applyAsDouble(Fit.of(fit.family(), fit.method(), x));
        });
    }

    /**
     * Returns the limits of any estimate whose replicates you can draw.
     *
     * @param estimate value from the sample itself
     * @param replicate draws one replicate of the value from the random sequence it is given, and from nothing else that
     *     changes, since replicates are drawn in parallel; NaN or a {@link NoFitException} counts as failed
     * @return the interval
     * @throws IllegalArgumentException if fewer than 20 replicates gave a value
     */
    public Interval interval(double estimate, ToDoubleFunction<SplittableRandom> replicate) {
        SplittableRandom[] sequences = sequences();
        double[] values = IntStream.range(0, replicates)
                .parallel()
                .mapToDouble(i -> {
                    try {
                        return replicate.applyAsDouble(sequences[i]);
                    } catch (NoFitException notFitted) {
                        return Double.NaN;
                    }
                })
                .toArray();
        return limits(estimate, values);
    }

    /**
     * Returns the limits of an estimate from replicates that are there already, see {@link #replicates}.
     *
     * @param estimate value from the sample itself
     * @param values a value of each replicate; those that are not finite count as failed, as do those that lack to the number of
     *     replicates; not modified
     * @return the interval
     * @throws IllegalArgumentException if fewer than 20 values are finite, or there are more values than replicates
     */
    public Interval limits(double estimate, double... values) {
        Limits.within("number of values", values.length, 0, replicates);
        double[] sorted =
                Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
        if (sorted.length < FEWEST) {
            throw new IllegalArgumentException(
                    "sample must allow at least " + FEWEST + " replicates to be fitted, " + sorted.length + " were");
        }
        Statistics statistics = Statistics.of(sorted);
        return new Interval(
                estimate,
                statistics.quantile((1 - confidence) / 2),
                statistics.quantile((1 + confidence) / 2),
                statistics.standardDeviation(),
                confidence,
                sorted.length,
                replicates - sorted.length);
    }

    /**
     * Draws replicates of anything, to be asked several questions.
     *
     * @param replicate draws one replicate from the random sequence it is given, and from nothing else that changes, since
     *     replicates are drawn in parallel; one that throws a {@link NoFitException} is left out
     * @param <T> what is drawn
     * @return the replicates that could be drawn, in the order of their sequences
     */
    public <T> List<T> replicates(Function<SplittableRandom, T> replicate) {
        SplittableRandom[] sequences = sequences();
        return IntStream.range(0, replicates)
                .parallel()
                .mapToObj(i -> {
                    try {
                        return Optional.of(replicate.apply(sequences[i]));
                    } catch (NoFitException notFitted) {
                        return Optional.<T>empty();
                    }
                })
                .flatMap(Optional::stream)
                .toList();
    }

    /** One independent sequence a replicate, split off in order before anything runs in parallel. */
    private SplittableRandom[] sequences() {
        SplittableRandom root = new SplittableRandom(seed);
        SplittableRandom[] sequences = new SplittableRandom[replicates];
        for (int i = 0; i < replicates; i++) {
            sequences[i] = root.split();
        }
        return sequences;
    }

    private static double[] draw(Fit fit, double[] sample, SplittableRandom random, boolean fromDistribution) {
        double[] drawn = new double[sample.length];
        for (int i = 0; i < drawn.length; i++) {
            drawn[i] = fromDistribution
                    ? fit.distribution().quantile(random.nextDouble(Double.MIN_NORMAL, 1))
                    : sample[random.nextInt(sample.length)];
        }
        return drawn;
    }

    @Override
    public String toString() {
        return "Bootstrap[" + replicates + " replicates, seed " + seed + ", confidence "
                + Text.significant(confidence, 6) + (parametric ? ", parametric]" : ", resampling]");
    }
}
