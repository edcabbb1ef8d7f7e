package dev.runnel.verification.benchmark;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.change.HampelRule;
import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * How the cost grows with the size of the task: the time of one element at sizes that each are several times the one before.
 * Where a bar stays as long as the one above, the cost grows in proportion; nothing here is compared with a rival.
 */
final class CostGrowth {
    private static final int RUNS = 9;
    private static final int BAR = 40;
    private static final long WARM_UP = 1_500_000_000L;
    private static final long SHORTEST = 5_000_000L;
    private static final long STEP = 120_000_000_000L;
    private static final int DAYS_OF_SITE = 30;

    private CostGrowth() {}

    /** Something to be done that gives an object, so that it is not left out. */
    private interface Task {
        Object run();
    }

    /** The plots, as a part of the page. */
    static String plots() {
        return "\n## How the cost grows with the size\n\nTime of one element, the middle one of " + RUNS
                + " runs. Bars of one length mean that the cost grows in proportion.\n\n```text\n"
                + plot("readings to flow, series with quality", CostGrowth::flow, 10_000, 100_000, 1_000_000)
                + plot("tips to depths of 2 minutes", CostGrowth::tips, 1_000, 10_000, 100_000)
                + plot("durations of sliding maxima of a year of minutes", CostGrowth::maxima, 10, 30, 60)
                + plot("sites of a month: flow and Hampel's rule", CostGrowth::sites, 1, 10, 100)
                + "```\n";
    }

    private static String plot(String what, IntFunction<Task> tasks, int... sizes) {
        double[] each = Arrays.stream(sizes)
                .mapToDouble(size -> time(tasks.apply(size)) / size)
                .toArray();
        double most = Arrays.stream(each).max().orElseThrow();
        StringBuilder text = new StringBuilder(what).append('\n');
        for (int i = 0; i < sizes.length; i++) {
            text.append(String.format(Locale.ROOT, "%10d  %12.1f ns  %s%n", sizes[i], each[i], "=".repeat((int)
                            Math.max(1, Math.round(BAR * each[i] / most)))));
        }
        return text.append('\n').toString().replace("\r", "");
    }

    /** Of one run in ns, after a warm-up by the clock; short tasks are run several times in a row. */
    private static double time(Task task) {
        int repeats = 1;
        int sink = 0;
        long begun = System.nanoTime();
        while (System.nanoTime() - begun < WARM_UP) {
            long start = System.nanoTime();
            for (int i = 0; i < repeats; i++) {
                sink ^= System.identityHashCode(task.run());
            }
            if (System.nanoTime() - start < SHORTEST) {
                repeats *= 2;
            }
        }
        double[] times = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long start = System.nanoTime();
            for (int i = 0; i < repeats; i++) {
                sink ^= System.identityHashCode(task.run());
            }
            times[run] = (System.nanoTime() - start) / (double) repeats;
        }
        Arrays.sort(times);
        return sink == 0 ? Double.NaN : times[RUNS / 2];
    }

    private static Task flow(int size) {
        PipeMonitor monitor = PipeMonitor.of(
                Conduit.of(CircularSection.ofDiameter(TimedBenchmark.DIAMETER), Gradient.of(0.005), Manning.of(0.013)));
        Series depth = series(size, 0.3);
        Series velocity = series(size, 1);
        return () -> monitor.flow(depth, velocity);
    }

    private static Series series(int size, double most) {
        SplittableRandom random = new SplittableRandom(TimedBenchmark.SEED);
        long[] times = new long[size];
        double[] values = new double[size];
        for (int i = 0; i < size; i++) {
            times[i] = i * STEP;
            values[i] = random.nextInt(100) == 0 ? Double.NaN : most * random.nextDouble();
        }
        return Series.of(times, values);
    }

    private static Task tips(int size) {
        SplittableRandom random = new SplittableRandom(TimedBenchmark.SEED);
        long[] times = new long[size];
        long time = 0;
        for (int i = 0; i < size; i++) {
            time += (long) (1e9 * Math.pow(10, 1 + 2.5 * random.nextDouble()));
            times[i] = time;
        }
        Tips tips = Tips.ofEpochNanos(times);
        return () -> TippingBucket.ofTip(0.2).depth(tips, Duration.ofMinutes(2), TipSpreading.INTERVAL);
    }

    private static Task maxima(int size) {
        RegularSeries rain = InventedRain.series(InventedRain.minutes(TimedBenchmark.SEED));
        SlidingMaximum maximum = SlidingMaximum.of(IntStream.range(0, size)
                .mapToObj(i -> Duration.ofMinutes(i + 1 + (long) Math.pow(2800, i / (double) size)))
                .toList());
        return () -> maximum.peaks(rain);
    }

    private static Task sites(int size) {
        PipeMonitor monitor = PipeMonitor.of(
                Conduit.of(CircularSection.ofDiameter(TimedBenchmark.DIAMETER), Gradient.of(0.005), Manning.of(0.013)));
        Series depth = series(DAYS_OF_SITE * 720, 0.3);
        Series velocity = series(DAYS_OF_SITE * 720, 1);
        HampelRule rule = HampelRule.of(15, 3);
        return () -> {
            int wild = 0;
            for (int i = 0; i < size; i++) {
                FlowRecord record = monitor.flow(depth, velocity);
                wild += rule.wildAmong(record.flow().toValues()).length;
            }
            return Integer.toString(wild);
        };
    }
}
