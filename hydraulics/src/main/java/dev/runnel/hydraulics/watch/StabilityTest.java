package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.change.MannKendall;
import dev.runnel.timeseries.change.TheilSen;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;

/** Whether the daily medians of a stretch step or drift by more than they scatter. */
final class StabilityTest {
    /** Fewer daily medians are not tested; chosen here. */
    private static final int LEAST_DAYS = 5;

    /** Fewest days on each side of a step; chosen here. */
    private static final int LEAST_SIDE = 2;

    /** Difference over its standard error from which a step counts, the largest of many places; chosen here. */
    private static final double STEP_STATISTIC = 5;

    /** Largest p-value of a trend that counts; chosen here, for stretches are tried one after another. */
    private static final double SIGNIFICANCE = 0.002;

    /** Below this scatter of a day the step statistic would find what does not matter. */
    private static final double LEAST_SCATTER = 0.015;

    private final String name;
    private final BlockScale.Blocks days;
    private final double limit;

    StabilityTest(String name, long[] hours, double[] residuals, int leastHours, double limit) {
        this.name = name;
        this.days = BlockScale.Blocks.of(hours, residuals, 24, leastHours);
        this.limit = limit;
    }

    static Optional<Failure> of(String name, long[] hours, double[] residuals, int leastHours, double limit) {
        return new StabilityTest(name, hours, residuals, leastHours, limit).failure();
    }

    /** What spoke against the stretch; the hour of a step, if it was one, and by how much it stepped. */
    record Failure(String words, Optional<Long> step, double change) {}

    Optional<Failure> failure() {
        int n = days.medians.length;
        if (n < LEAST_DAYS) {
            return Optional.empty();
        }
        return step(n).or(() -> trend(n));
    }

    /** By how much the daily medians differ before and from an hour; 0 where less than so many standard errors. */
    double changeAt(long hour, double leastStatistic) {
        int k = 0;
        while (k < days.medians.length && days.numbers[k] * 24 < hour) {
            k++;
        }
        return k < LEAST_SIDE || days.medians.length - k < LEAST_SIDE || statistic(k) < leastStatistic ? 0 : change(k);
    }

    private double change(int k) {
        return Medians.of(Arrays.copyOfRange(days.medians, k, days.medians.length))
                - Medians.of(Arrays.copyOfRange(days.medians, 0, k));
    }

    /** Difference of the medians before and from a day over its standard error. */
    private double statistic(int k) {
        int n = days.medians.length;
        double[] before = Arrays.copyOfRange(days.medians, 0, k);
        double[] after = Arrays.copyOfRange(days.medians, k, n);
        double pooled =
                Math.sqrt(((k - 1) * Medians.variance(before) + (n - k - 1) * Medians.variance(after)) / (n - 2));
        double error = Math.max(LEAST_SCATTER, pooled) * Math.sqrt(1.0 / k + 1.0 / (n - k));
        return Math.abs(change(k)) / error;
    }

    private Optional<Failure> step(int n) {
        double largest = 0;
        int at = -1;
        for (int k = LEAST_SIDE; k <= n - LEAST_SIDE; k++) {
            double statistic = statistic(k);
            if (statistic > largest) {
                largest = statistic;
                at = k;
            }
        }
        double change = at < 0 ? 0 : change(at);
        if (largest < STEP_STATISTIC || Math.abs(change) < limit) {
            return Optional.empty();
        }
        long hour = days.numbers[at] * 24;
        return Optional.of(new Failure(
                name + " changed by " + percent(change) + " at about "
                        + Instant.ofEpochSecond(hour * 3600).toString().substring(0, 10),
                Optional.of(hour),
                change));
    }

    private Optional<Failure> trend(int n) {
        double[] times = Arrays.stream(days.numbers).asDoubleStream().toArray();
        double slope = TheilSen.of(times, days.medians, 0.95).slope();
        double change = slope * (times[n - 1] - times[0]);
        if (Math.abs(change) < limit || MannKendall.of(days.medians).pValue() > SIGNIFICANCE) {
            return Optional.empty();
        }
        return Optional.of(
                new Failure(name + " drifted by " + percent(change) + " over the stretch", Optional.empty(), change));
    }

    private static String percent(double change) {
        double percent = 100 * Math.expm1(change);
        return (percent < 0 ? "" : "+") + Text.fixed(percent, 0) + " %";
    }
}
