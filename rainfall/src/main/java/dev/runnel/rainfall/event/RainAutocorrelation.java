package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * The autocorrelation of a rain record and the lag at which it is no longer different from chance: another way to a
 * minimum inter-event time (from memory; typical results are 6 to 12 h from hourly rain).
 *
 * <blockquote>r<sub>k</sub> = Σ (P<sub>i</sub> − m)(P<sub>i+k</sub> − m) / N<sub>k</sub> ÷ Σ (P<sub>i</sub> − m)² / N</blockquote>
 *
 * <p>over the N<sub>k</sub> pairs without a missing step. A coefficient within ±1.96/√N<sub>k</sub> is what a record
 * without memory gives 19 times out of 20 (Bartlett 1946, Journal of the Royal Statistical Society Supplement 8).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RainAutocorrelation {
    /** Lags times steps: some 20 s of work, and 30 years of hours over a year of lags (chosen here). */
    private static final long MOST_PRODUCTS = 10_000_000_000L;

    private static final double NORMAL_975 = 1.959963984540054;

    private final double[] coefficients;
    private final long[] pairs;
    private final Duration step;

    private RainAutocorrelation(double[] coefficients, long[] pairs, Duration step) {
        this.coefficients = coefficients;
        this.pairs = pairs;
        this.step = step;
    }

    /**
     * Returns the autocorrelation of a record.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param lags number of lags, in steps; 1 or more, less than the number of steps
     * @return the autocorrelation
     * @throws IllegalArgumentException if an argument is out of range, a depth is negative, or all rain is equal
     */
    public static RainAutocorrelation of(RegularSeries rain, int lags) {
        Rain.requireNonNegative("rain", rain, "mm");
        Require.atLeast("lags", lags, 1);
        if (lags >= rain.size()) {
            throw new IllegalArgumentException(
                    "lags must be less than the steps of rain, " + rain.size() + ", was " + lags);
        }
        if ((long) lags * rain.size() > MOST_PRODUCTS) {
            throw new IllegalArgumentException("lags times steps of rain must be at most " + MOST_PRODUCTS + ", was "
                    + lags + " times " + rain.size());
        }
        double mean = rain.statistics().mean();
        double[] values = rain.toValues();
        int[] missing = IntStream.range(0, values.length)
                .filter(i -> Double.isNaN(values[i]))
                .toArray();
        double[] deviations = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            // A missing step adds nothing to a sum of products; its pairs are counted apart.
            deviations[i] = Double.isNaN(values[i]) ? 0 : values[i] - mean;
        }
        double[] sums = new double[lags + 1];
        long[] pairs = new long[lags + 1];
        for (int lag = 0; lag <= lags; lag++) {
            sums[lag] = products(deviations, lag);
            pairs[lag] = values.length - lag - pairsWithMissing(values, missing, lag);
        }
        double variance = sums[0] / pairs[0];
        if (!(variance > 0)) {
            throw new IllegalArgumentException("rain must vary, was the same in all steps or missing");
        }
        double[] coefficients = new double[lags + 1];
        for (int lag = 0; lag <= lags; lag++) {
            coefficients[lag] = pairs[lag] == 0 ? 0 : sums[lag] / pairs[lag] / variance;
        }
        return new RainAutocorrelation(coefficients, pairs, rain.step());
    }

    /** Four sums side by side, since each addition waits for the one before. */
    private static double products(double[] deviations, int lag) {
        int size = deviations.length - lag;
        double first = 0;
        double second = 0;
        double third = 0;
        double fourth = 0;
        int i = 0;
        for (; i + 3 < size; i += 4) {
            first += deviations[i] * deviations[i + lag];
            second += deviations[i + 1] * deviations[i + 1 + lag];
            third += deviations[i + 2] * deviations[i + 2 + lag];
            fourth += deviations[i + 3] * deviations[i + 3 + lag];
        }
        for (; i < size; i++) {
            first += deviations[i] * deviations[i + lag];
        }
        return (first + second) + (third + fourth);
    }

    private static long pairsWithMissing(double[] values, int[] missing, int lag) {
        long count = 0;
        for (int i : missing) {
            count += i + lag < values.length ? 1 : 0;
            count += lag > 0 && i >= lag && !Double.isNaN(values[i - lag]) ? 1 : 0;
        }
        return count;
    }

    /**
     * Returns the coefficient at a lag.
     *
     * @param lag lag in steps; 0 to the number of lags
     * @return r, 1 at lag 0
     * @throws IndexOutOfBoundsException if the lag is out of range
     */
    public double coefficient(int lag) {
        return coefficients[lag];
    }

    /**
     * Returns the limit within which a coefficient is not different from chance.
     *
     * @param lag lag in steps; 0 to the number of lags
     * @return 1.96/√N; infinite if no pair is complete
     * @throws IndexOutOfBoundsException if the lag is out of range
     */
    public double limit(int lag) {
        return NORMAL_975 / Math.sqrt((double) pairs[lag]);
    }

    /**
     * Returns the shortest lag whose coefficient is not above chance.
     *
     * @return the lag as a time; empty if none of the lags is
     */
    public Optional<Duration> independentAfter() {
        for (int lag = 1; lag < coefficients.length; lag++) {
            if (coefficients[lag] <= limit(lag)) {
                return Optional.of(step.multipliedBy(lag));
            }
        }
        return Optional.empty();
    }

    @Override
    public String toString() {
        return "RainAutocorrelation[" + (coefficients.length - 1) + " lags of " + Text.duration(step)
                + ", independent after "
                + independentAfter().map(Text::duration).orElse("none of them") + "]";
    }
}
