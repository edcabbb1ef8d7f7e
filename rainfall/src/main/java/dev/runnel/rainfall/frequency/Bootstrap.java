package dev.runnel.rainfall.frequency;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import dev.runnel.timeseries.Statistics;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
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
    private static final int FEWEST = 20;

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
     */
    public record ConfidenceInterval(
            double estimate,
            double lower,
            double upper,
            double standardError,
            double confidence,
            int replicates,
            int failed) {
        @Override
        public String toString() {
            return Text.significant(estimate, 4) + " (" + Text.number(100 * confidence) + " %: "
                    + Text.significant(lower, 4) + " to " + Text.significant(upper, 4) + ", " + replicates
                    + " replicates, " + failed + " failed)";
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
     * @param replicates number of samples to draw; at least 20
     * @param seed start of the random sequence: the same seed gives the same limits
     * @return the bootstrap
     * @throws IllegalArgumentException if there are fewer than 20 replicates
     */
    public static Bootstrap of(int replicates, long seed) {
        return new Bootstrap(Require.atLeast("replicates", replicates, FEWEST), seed, 0.9, true);
    }

    /**
     * Returns the same bootstrap at another confidence.
     *
     * @param confidence share between the limits; in [0.5, 0.999]
     * @return the new bootstrap
     * @throws IllegalArgumentException if it is outside or NaN
     */
    public Bootstrap withConfidence(double confidence) {
        return new Bootstrap(replicates, seed, Require.inRange("confidence", confidence, 0.5, 0.999, ""), parametric);
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
     * Returns the limits of a quantile.
     *
     * @param fit the fit of the sample
     * @param sample the sample it was made from; not modified
     * @param years return period among annual maxima, years; greater than 1
     * @return the interval
     * @throws IllegalArgumentException if an argument is out of range or fewer than 20 replicates could be fitted
     */
    public ConfidenceInterval quantile(Fit fit, double[] sample, double years) {
        return interval(fit, sample, fit.quantile(years), replicate -> replicate.quantile(years));
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
    public ConfidenceInterval returnPeriod(Fit fit, double[] sample, double value) {
        Require.finite("value", value, "");
        ConfidenceInterval exceedance = interval(
                fit,
                sample,
                fit.distribution().exceedance(value),
                replicate -> replicate.distribution().exceedance(value));
        return new ConfidenceInterval(
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
     * @param fit the fit of the sample
     * @param sample the sample it was made from; not modified
     * @return significance, in [0, 1]
     */
    public double significance(Fit fit, double[] sample) {
        double observed = statistic(fit, sample);
        SplittableRandom[] sequences = sequences();
        double[] drawn = IntStream.range(0, replicates)
                .parallel()
                .mapToDouble(i -> {
                    double[] x = draw(fit, sample, sequences[i], true);
                    try {
                        return statistic(Fit.of(fit.family(), fit.method(), x), x);
                    } catch (IllegalArgumentException notFitted) {
                        return Double.NaN;
                    }
                })
                .filter(a -> !Double.isNaN(a))
                .toArray();
        long greater = Arrays.stream(drawn).filter(a -> a >= observed).count();
        return (greater + 1.0) / (drawn.length + 1.0);
    }

    /**
     * Returns the critical values of the measures of fit: what a sample of this size, drawn from the fitted distribution
     * and fitted again by the same method, is worse than with the given probability. They hold for this family, method
     * and size; for a family of location and scale they do not depend on the parameters.
     *
     * @param fit the fit; its sample size counts
     * @param position plotting position for the correlation
     * @param significances probabilities; in (0, 1)
     * @return one set for each: the correlation that is fallen below, the others exceeded
     * @throws IllegalArgumentException if a probability is not inside (0, 1) or fewer than 20 replicates could be fitted
     */
    public List<GoodnessOfFit> criticalValues(Fit fit, PlottingPosition position, double... significances) {
        for (double significance : significances) {
            Probability.inside("significance", significance);
        }
        SplittableRandom[] sequences = sequences();
        double[] none = new double[fit.sampleSize()];
        List<GoodnessOfFit> drawn = IntStream.range(0, replicates)
                .parallel()
                .mapToObj(i -> {
                    double[] x = draw(fit, none, sequences[i], true);
                    try {
                        Distribution again =
                                Fit.of(fit.family(), fit.method(), x).distribution();
                        return Optional.of(GoodnessOfFit.of(again, position, x));
                    } catch (IllegalArgumentException notFitted) {
                        return Optional.<GoodnessOfFit>empty();
                    }
                })
                .flatMap(Optional::stream)
                .toList();
        Require.atLeast("number of replicates that could be fitted", drawn.size(), FEWEST);
        Statistics correlation = measure(drawn, GoodnessOfFit::plotCorrelation);
        Statistics squared = measure(drawn, GoodnessOfFit::andersonDarling);
        Statistics distance = measure(drawn, GoodnessOfFit::kolmogorovSmirnov);
        return Arrays.stream(significances)
                .mapToObj(significance -> new GoodnessOfFit(
                        correlation.quantile(significance),
                        squared.quantile(1 - significance),
                        distance.quantile(1 - significance)))
                .toList();
    }

    private static Statistics measure(List<GoodnessOfFit> drawn, ToDoubleFunction<GoodnessOfFit> of) {
        return Statistics.of(
                drawn.stream().mapToDouble(of).filter(Double::isFinite).toArray());
    }

    private static double statistic(Fit fit, double[] sample) {
        return GoodnessOfFit.of(fit.distribution(), PlottingPosition.CUNNANE, sample)
                .andersonDarling();
    }

    private ConfidenceInterval interval(Fit fit, double[] sample, double estimate, ToDoubleFunction<Fit> quantity) {
        SplittableRandom[] sequences = sequences();
        double[] values = IntStream.range(0, replicates)
                .parallel()
                .mapToDouble(i -> {
                    try {
                        double[] x = draw(fit, sample, sequences[i], parametric);
                        return quantity.applyAsDouble(Fit.of(fit.family(), fit.method(), x));
                    } catch (IllegalArgumentException notFitted) {
                        return Double.NaN;
                    }
                })
                .toArray();
        double[] sorted =
                Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
        if (sorted.length < FEWEST) {
            throw new IllegalArgumentException(
                    "sample must allow at least " + FEWEST + " replicates to be fitted, " + sorted.length + " were");
        }
        Statistics statistics = Statistics.of(sorted);
        return new ConfidenceInterval(
                estimate,
                statistics.quantile((1 - confidence) / 2),
                statistics.quantile((1 + confidence) / 2),
                statistics.standardDeviation(),
                confidence,
                sorted.length,
                replicates - sorted.length);
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
        return "Bootstrap[" + replicates + " replicates, seed " + seed + ", confidence " + Text.number(confidence)
                + (parametric ? ", parametric]" : ", resampling]");
    }
}
