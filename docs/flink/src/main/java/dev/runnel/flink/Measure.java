package dev.runnel.flink;

import com.sun.management.OperatingSystemMXBean;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.atomic.LongAdder;
import java.util.stream.Stream;
import org.apache.flink.api.common.eventtime.WatermarkStrategy;
import org.apache.flink.api.common.typeinfo.Types;
import org.apache.flink.configuration.CheckpointingOptions;
import org.apache.flink.configuration.Configuration;
import org.apache.flink.connector.datagen.source.DataGeneratorSource;
import org.apache.flink.core.execution.JobClient;
import org.apache.flink.core.execution.SavepointFormatType;
import org.apache.flink.streaming.api.datastream.DataStream;
import org.apache.flink.streaming.api.environment.StreamExecutionEnvironment;
import org.apache.flink.streaming.api.functions.sink.v2.DiscardingSink;
import org.apache.flink.util.FileUtils;
import org.jspecify.annotations.Nullable;

/**
 * Measures how many readings a second one job takes, and how large its states are: {@code mvn -q package -P flink-measure}.
 * Synthetic readings of many sites pass through Flink's own cluster in this process.
 */
final class Measure {
    private static final LongAdder TAKEN = new LongAdder();
    private static final double MEGA = 1e6;
    private static final double NANOS = 1e9;
    private static final long STRETCH = 1L << 40;
    private static final Duration BOUND = Duration.ofMinutes(30);

    private final PrintStream out;
    private final int sites;
    private final InventedSites invented;
    private final long readings;

    private Measure(PrintStream out, int sites, int days) {
        this.out = out;
        this.sites = sites;
        this.invented = InventedSites.every(900, 5);
        this.readings = (long) sites * days * 96;
    }

    /**
     * Measures.
     *
     * @param arguments sites, days of readings every 15 minutes
     * @throws Exception if a job fails
     */
    public static void main(String[] arguments) throws Exception {
        int sites = Integer.parseInt(arguments[0]);
        Measure measure = new Measure(System.out, sites, Integer.parseInt(arguments[1]));
        String baseline = measure.invented.baseline(1, 28);
        for (int workers : new int[] {1, 2}) {
            measure.run("nothing", workers, Duration.ZERO, null);
            measure.run("alarm", workers, Duration.ZERO, alarm());
            measure.run("alarm, bound 30 min", workers, BOUND, alarm());
            measure.run(
                    "watch",
                    workers,
                    Duration.ZERO,
                    SiteRule.of(
                            site -> WatchRule.of(SiteBaseline.parse(InventedSites.MONITOR, baseline)),
                            Measure::reading,
                            (site, told) -> site + " " + told.kind()));
        }
    }

    private static SiteRule<Reading, ?, ?, String> alarm() {
        return SiteRule.of(
                site -> ThresholdAlarm.high(0.3).withDeadband(0.02).withOnDelay(Duration.ofMinutes(30)),
                event -> {
                    TAKEN.increment();
                    return Reading.of(EpochNanos.toInstant(event.epochNanos()), event.depth());
                },
                (site, told) -> site + " " + told);
    }

    private static SiteReading reading(SiteEvent event) {
        TAKEN.increment();
        return InventedSites.reading(event);
    }

    /** Runs one job until all readings are taken, then takes a savepoint, and says how much that took. */
    private void run(String name, int workers, Duration bound, @Nullable SiteRule<?, ?, ?, String> rule)
            throws Exception {
        Path folder = Files.createTempDirectory("measure");
        Configuration configuration = new Configuration();
        configuration.set(
                CheckpointingOptions.CHECKPOINTS_DIRECTORY,
                folder.resolve("checkpoints").toUri().toString());
        StreamExecutionEnvironment job = StreamExecutionEnvironment.createLocalEnvironment(workers, configuration);
        InventedSites all = invented;
        long each = sites / workers;
        long end = readings / workers;
        DataGeneratorSource<SiteEvent> source = new DataGeneratorSource<>(
                index -> {
                    long number = index % STRETCH;
                    if (number >= end) {
                        Thread.sleep(10);
                    }
                    return all.event((int) (number % each * workers + index / STRETCH), number / each);
                },
                STRETCH * workers,
                SiteFiles.EVENTS);
        DataStream<SiteEvent> events = job.fromSource(source, WatermarkStrategy.noWatermarks(), "readings");
        if (rule == null) {
            events.keyBy(SiteEvent::site).map(Measure::counted).sinkTo(new DiscardingSink<>());
        } else {
            RuleFunction.of(rule, SiteFiles.EVENTS, bound)
                    .over(events, "rule", Types.STRING)
                    .sinkTo(new DiscardingSink<>());
        }
        TAKEN.reset();
        JobClient running = job.executeAsync();
        long first = waitFor(readings / 10);
        long cpu = cpu();
        long taken = TAKEN.sum();
        // The last ones of each site may wait for the bound.
        double seconds = (waitFor(readings * 9 / 10) - first) / NANOS;
        double cores = (cpu() - cpu) / NANOS;
        long counted = TAKEN.sum() - taken;
        waitFor(readings - bound.dividedBy(invented.stepDuration()) * sites);
        long before = System.nanoTime();
        Path savepoint = folder.resolve("savepoint");
        running.triggerSavepoint(savepoint.toUri().toString(), SavepointFormatType.NATIVE)
                .get();
        double pause = (System.nanoTime() - before) / NANOS;
        long bytes = size(savepoint);
        running.cancel().get();
        out.printf(
                Locale.ROOT,
                "%-20s %d workers: %,.0f readings/s, %,.0f a second of one core; savepoint of %.1f MB in %.1f s, %.0f bytes a site%n",
                name,
                workers,
                counted / seconds,
                counted / cores,
                bytes / MEGA,
                pause,
                (double) bytes / sites);
        FileUtils.deleteDirectoryQuietly(folder.toFile());
    }

    /** Time of all cores that this process has used, which other processes do not change. */
    private static long cpu() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }

    private static SiteEvent counted(SiteEvent event) {
        TAKEN.increment();
        return event;
    }

    private static long waitFor(long count) throws InterruptedException {
        while (TAKEN.sum() < count) {
            Thread.sleep(1);
        }
        return System.nanoTime();
    }

    private static long size(Path folder) throws IOException {
        long bytes = 0;
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                bytes += Files.size(file);
            }
        }
        return bytes;
    }
}
