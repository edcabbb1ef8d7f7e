package dev.runnel.timeseries;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.internal.TimeIntegral;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Brings a record to equal steps, with the gap rule said aloud. Immutable and thread-safe.
 *
 * <p>Only {@linkplain Quality#isUsable() usable} readings take part; the others are as good as absent. What lies
 * between two readings is taken as {@link BetweenReadings} says, up to the <em>maximum gap</em>: by default a reading holds
 * until the next one, at most for 1.5 times the usual spacing of the record (the median time between readings), so that
 * one lost reading is noticed. The fraction of a step that is known in this way is its <em>coverage</em>. A step
 * covered less than the minimum, or without any reading where readings themselves are wanted (sum, maximum, minimum, last),
 * becomes NaN: nothing is invented. By default the minimum is 0.75, for a sum 1 (common practice);
 * {@link #applyWithCoverage(Series)} returns the coverage too. A record that is written only when something changes needs
 * its own {@link #withMaximumGap}.
 *
 * <p>Steps are half-open and counted from 1970-01-01T00:00:00Z, or from {@link #withOrigin}: quarter hours start at the
 * full hour, days at midnight UTC. A value belongs to the step it is stamped in. Source of the terms: OGC WaterML 2.0
 * (10-126r4), table 9.
 *
 * <p>What this is not: local days (see {@code balance.DailyTotals}), or a way to fill gaps.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Resample {
    /** Stands for the gap that follows from the record's usual spacing. */
    private static final long FROM_SPACING = 0;

    private static final int MOST_STEPS = Integer.MAX_VALUE - 16;

    private final Stepwise.Statistic statistic;
    private final long step;
    private final long origin;
    private final BetweenReadings between;
    private final long maximumGap;
    private final double minimumCoverage;

    private Resample(
            Stepwise.Statistic statistic,
            long step,
            long origin,
            BetweenReadings between,
            long maximumGap,
            double minimumCoverage) {
        this.statistic = statistic;
        this.step = step;
        this.origin = origin;
        this.between = between;
        this.maximumGap = maximumGap;
        this.minimumCoverage = minimumCoverage;
    }

    private static Resample of(Stepwise.Statistic statistic, Duration step, double minimumCoverage) {
        long nanos = EpochNanos.positive("step", step);
        return new Resample(statistic, nanos, 0, BetweenReadings.HOLD, FROM_SPACING, minimumCoverage);
    }

    /**
     * Returns the time-weighted mean over each step: the integral over the covered part, divided by the covered time.
     *
     * @param step length of a step; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static Resample mean(Duration step) {
        return of(Stepwise.Statistic.MEAN, step, 0.75);
    }

    /**
     * Returns the sum of the values stamped in each step, for amounts such as rain depth a reading.
     *
     * @param step length of a step; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static Resample sum(Duration step) {
        return of(Stepwise.Statistic.SUM, step, 1);
    }

    /**
     * Returns the largest value stamped in each step.
     *
     * @param step length of a step; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static Resample maximum(Duration step) {
        return of(Stepwise.Statistic.MAXIMUM, step, 0.75);
    }

    /**
     * Returns the smallest value stamped in each step.
     *
     * @param step length of a step; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static Resample minimum(Duration step) {
        return of(Stepwise.Statistic.MINIMUM, step, 0.75);
    }

    /**
     * Returns the last value stamped in each step.
     *
     * @param step length of a step; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the step is not greater than 0
     */
    public static Resample last(Duration step) {
        return of(Stepwise.Statistic.LAST, step, 0.75);
    }

    /**
     * Returns the same rule with another longest time that a reading holds or a line spans.
     *
     * @param maximumGap greater than 0
     * @return the new rule
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public Resample withMaximumGap(Duration maximumGap) {
        long nanos = EpochNanos.positive("maximumGap", maximumGap);
        return new Resample(statistic, step, origin, between, nanos, minimumCoverage);
    }

    /**
     * Returns the same rule with another least coverage.
     *
     * @param minimumCoverage fraction of a step, in [0, 1]; with 0 any reading will do
     * @return the new rule
     * @throws IllegalArgumentException if it is outside [0, 1] or NaN
     */
    public Resample withMinimumCoverage(double minimumCoverage) {
        Require.inRange("minimumCoverage", minimumCoverage, 0, 1, "");
        return new Resample(statistic, step, origin, between, maximumGap, minimumCoverage);
    }

    /**
     * Returns the same rule with another reading of what lies between two readings.
     *
     * @param between hold or straight line
     * @return the new rule
     */
    public Resample withBetweenReadings(BetweenReadings between) {
        Objects.requireNonNull(between, "between");
        return new Resample(statistic, step, origin, between, maximumGap, minimumCoverage);
    }

    /**
     * Returns the same rule with steps counted from another instant.
     *
     * @param origin an instant at which a step starts
     * @return the new rule
     * @throws IllegalArgumentException if it lies outside 1677-09-21 to 2262-04-11
     */
    public Resample withOrigin(Instant origin) {
        Objects.requireNonNull(origin, "origin");
        long phase = Math.floorMod(EpochNanos.of(origin), step);
        return new Resample(statistic, step, phase, between, maximumGap, minimumCoverage);
    }

    /**
     * Resamples a series, from the step of its first reading to the step of its last.
     *
     * @param series the readings
     * @return one value a step; empty if the series is
     * @throws IllegalArgumentException if the record makes more than 2³¹ steps
     */
    public RegularSeries apply(Series series) {
        return applyWithCoverage(series).values();
    }

    /**
     * Resamples a series over a given time.
     *
     * @param series the readings; those outside the interval matter only where they hold or lead into it
     * @param interval time to cover; steps are counted from its start, and a last part shorter than a step is left out
     * @return one value a step
     * @throws IllegalArgumentException if the interval makes more than 2³¹ steps
     */
    public RegularSeries apply(Series series, Interval interval) {
        Objects.requireNonNull(series, "series");
        return applyWithCoverage(series, interval).values();
    }

    /**
     * Resamples a regular series to a coarser step. Each value speaks for the whole of its step, so neither the maximum
     * gap nor {@link BetweenReadings} matter here.
     *
     * @param series the finer series
     * @return one value a step; empty if the series is
     * @throws IllegalArgumentException if the step is not a whole multiple of the finer one, or the steps of both do
     *     not start together
     */
    public RegularSeries apply(RegularSeries series) {
        return applyWithCoverage(series).values();
    }

    /**
     * Resamples a series and keeps the coverage of each step.
     *
     * @param series the readings
     * @return values and coverage; empty if the series is
     * @throws IllegalArgumentException if the record makes more than 2³¹ steps
     */
    public Resampled applyWithCoverage(Series series) {
        if (series.isEmpty()) {
            return nothing(EpochNanos.toInstant(0));
        }
        long start = stepStart(series.epochNanos(0));
        return resample(series, start, stepCount(start, series.epochNanos(series.size() - 1), 1));
    }

    /**
     * Resamples a series over a given time and keeps the coverage of each step.
     *
     * @param series the readings
     * @param interval time to cover; steps are counted from its start, and a last part shorter than a step is left out
     * @return values and coverage
     * @throws IllegalArgumentException if the interval makes more than 2³¹ steps
     */
    public Resampled applyWithCoverage(Series series, Interval interval) {
        Objects.requireNonNull(series, "series");
        long start = EpochNanos.of(interval.start());
        int count = stepCount(start, EpochNanos.of(interval.end()), 0);
        return count == 0 ? nothing(interval.start()) : resample(series, start, count);
    }

    /**
     * Resamples a regular series to a coarser step and keeps the coverage of each step.
     *
     * @param series the finer series
     * @return values and coverage; empty if the series is
     * @throws IllegalArgumentException if the step is not a whole multiple of the finer one, or the steps of both do
     *     not start together
     */
    public Resampled applyWithCoverage(RegularSeries series) {
        long fine = series.step().toNanos();
        if (step % fine != 0) {
            throw new IllegalArgumentException("step must be a whole multiple of the series' step "
                    + Text.exactDuration(series.step()) + ", was " + Text.exactDuration(duration(step)));
        }
        if (series.isEmpty()) {
            return nothing(series.start());
        }
        long first = EpochNanos.of(series.start());
        if (Math.floorMod(first - origin, fine) != 0) {
            throw new IllegalArgumentException(
                    "origin must be a whole number of steps of " + Text.exactDuration(series.step())
                            + " from the series' start " + series.start() + ", was " + EpochNanos.toInstant(origin));
        }
        long start = stepStart(first);
        int count = stepCount(start, first + fine * (series.size() - 1), 1);
        Stepwise steps = new Stepwise(statistic, count);
        int[] known = new int[count];
        // Whole by the check above: a coarse step holds a whole number of fine ones.
        long fineSteps = step / fine;
        long inStep = (first - start) / fine;
        int at = 0;
        for (int i = 0; i < series.size(); i++) {
            if (inStep == fineSteps) {
                inStep = 0;
                at++;
            }
            inStep++;
            double value = series.value(i);
            if (!Double.isNaN(value)) {
                steps.add(at, value);
                known[at]++;
            }
        }
        double[] values = steps.values();
        double[] coverage = new double[count];
        for (int i = 0; i < count; i++) {
            coverage[i] = (double) known[i] / fineSteps;
            if (statistic == Stepwise.Statistic.MEAN) {
                values[i] /= known[i];
            }
        }
        return finish(start, values, coverage);
    }

    private Resampled resample(Series series, long start, int count) {
        long[] edges = edges(start, count);
        long gap = maximumGap == FROM_SPACING ? TimeIntegral.usualGap(series) : maximumGap;
        TimeIntegral time = TimeIntegral.of(series, between, gap, edges);
        double[] coverage = new double[count];
        for (int i = 0; i < count; i++) {
            coverage[i] = time.coverage(i);
        }
        double[] values = new double[count];
        if (statistic == Stepwise.Statistic.MEAN) {
            for (int i = 0; i < count; i++) {
                values[i] = time.mean(i);
            }
        } else {
            Stepwise steps = new Stepwise(statistic, count);
            for (int i = 0; i < series.size(); i++) {
                long at = series.epochNanos(i);
                if (series.quality(i).isUsable() && at >= start && at < edges[count]) {
                    steps.add((int) ((at - start) / step), series.value(i));
                }
            }
            values = steps.values();
        }
        return finish(start, values, coverage);
    }

    private void leaveOutThin(double[] values, double[] coverage) {
        for (int i = 0; i < values.length; i++) {
            if (coverage[i] < minimumCoverage) {
                values[i] = Double.NaN;
            }
        }
    }

    private Resampled finish(long start, double[] values, double[] coverage) {
        leaveOutThin(values, coverage);
        Instant from = EpochNanos.toInstant(start);
        Duration length = duration(step);
        return new Resampled(
                RegularSeries.checked(from, length, values), RegularSeries.checked(from, length, coverage));
    }

    private Resampled nothing(Instant start) {
        RegularSeries none = RegularSeries.of(start, duration(step));
        return new Resampled(none, none);
    }

    private long[] edges(long start, int count) {
        try {
            Math.addExact(start, Math.multiplyExact(step, (long) count));
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    "series must span less than 292 years and end a step before 2262-04-11, was " + count + " steps of "
                            + Text.exactDuration(duration(step)) + " from " + EpochNanos.toInstant(start),
                    e);
        }
        long[] edges = new long[count + 1];
        for (int i = 0; i <= count; i++) {
            edges[i] = start + step * i;
        }
        return edges;
    }

    private long stepStart(long time) {
        return time - Math.floorMod(time - origin, step);
    }

    private int stepCount(long start, long end, int extra) {
        // Unsigned: start to end may be longer than a long of ns can hold with its sign.
        long count = Long.divideUnsigned(end - start, step);
        if (Long.compareUnsigned(count, MOST_STEPS) > 0) {
            throw new IllegalArgumentException(
                    "step must be long enough for fewer than 2^31 steps from " + EpochNanos.toInstant(start) + " to "
                            + EpochNanos.toInstant(end) + ", was " + Text.exactDuration(duration(step)));
        }
        return (int) count + extra;
    }

    private static Duration duration(long nanos) {
        return Duration.ofNanos(nanos);
    }

    @Override
    public String toString() {
        return "Resample[" + statistic.name().toLowerCase(Locale.ROOT) + " over " + Text.duration(duration(step)) + ", "
                + between.name().toLowerCase(Locale.ROOT) + " up to "
                + (maximumGap == FROM_SPACING ? "1.5 usual spacings" : Text.duration(duration(maximumGap)))
                + ", coverage at least "
                + Text.significant(minimumCoverage, 6) + "]";
    }
}
