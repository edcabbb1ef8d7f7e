package dev.runnel.verification.benchmark;

import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A year of minutes, 4 % of them wet: events with and without peaks beside a sum of the record, the floor, and lists of boxed
 * numbers; 60 sliding maxima beside a loop over prefix sums; and tips laid out in steps of two minutes beside a merge in a map.
 *
 * <pre>mvn -q package -Dbench=Rain</pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(
        value = 2,
        jvmArgsAppend = {"-Xms3g", "-Xmx3g", "-XX:+AlwaysPreTouch"})
@Warmup(iterations = 4, time = 1)
@Measurement(iterations = 5, time = 1)
public class RainBenchmark {
    private static final long SEED = 20260101;
    private static final int MINUTES = 525_600;
    private static final int TIPS = 1_000_000;
    private static final long TWO_MINUTES = 120_000_000_000L;
    private static final long HOUR = 3_600_000_000_000L;
    private static final int DRY_MINUTES = 360;

    private final double[] depths = new double[MINUTES];
    private final List<Duration> durations = IntStream.rangeClosed(1, 60)
            .mapToObj(i -> Duration.ofMinutes(48L * i))
            .toList();
    private final TippingBucket bucket = TippingBucket.ofTip(0.2);
    private final long[] instants = new long[TIPS];
    private final EventSeparation bare =
            EventSeparation.of(Duration.ofMinutes(DRY_MINUTES)).withoutPeaks();
    private final EventSeparation peaks = EventSeparation.of(Duration.ofMinutes(DRY_MINUTES));

    private RegularSeries rain = RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(1), 0);
    private Tips tips = Tips.none();

    /** Makes the record and the tips, and checks that the rivals find the same. */
    @Setup
    public void fill() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < MINUTES; ) {
            i += random.nextInt(2400);
            int wet = 20 + random.nextInt(80);
            for (int end = Math.min(MINUTES, i + wet); i < end; i++) {
                depths[i] = random.nextInt(3) == 0 ? 0 : 0.3 * random.nextDouble();
            }
        }
        rain = RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(1), depths);
        long time = 0;
        for (int i = 0; i < TIPS; i++) {
            time += random.nextInt(50) == 0 ? random.nextLong(2 * HOUR) : random.nextLong(TWO_MINUTES);
            instants[i] = time;
        }
        tips = Tips.ofEpochNanos(instants);
        requireSame();
    }

    private void requireSame() {
        double[] expected = prefixLoop();
        List<PeakDepth> found = slidingMaxima();
        for (int i = 0; i < expected.length; i++) {
            require(Math.abs(found.get(i).depthMm() - expected[i]) < 1e-9);
        }
        require(events().size() == boxedLists().size());
        require(eventsWithPeaks().size() == boxedLists().size());
        double total = 0.2 * TIPS;
        require(Math.abs(tipsInSteps().sum() - total) < 1e-15 * total * 4);
        double merged =
                mapMerge().values().stream().mapToDouble(Double::doubleValue).sum();
        require(Math.abs(merged - total) < 1e-9 * total);
    }

    private static void require(boolean isSame) {
        if (!isSame) {
            throw new IllegalStateException("the rivals must agree, do not");
        }
    }

    /** The floor: the sum of the record. */
    @Benchmark
    public double sumLoop() {
        double sum = 0;
        for (double depth : depths) {
            sum += depth;
        }
        return sum;
    }

    /** Events without peaks. */
    @Benchmark
    public List<RainfallEvent> events() {
        return bare.events(rain);
    }

    /** Events with the ten usual peaks. */
    @Benchmark
    public List<RainfallEvent> eventsWithPeaks() {
        return peaks.events(rain);
    }

    /** The rival: events and their ten peaks by lists of boxed numbers. */
    @Benchmark
    public List<double[]> boxedLists() {
        List<double[]> events = new ArrayList<>();
        List<Double> current = new ArrayList<>();
        int dry = 0;
        for (double depth : depths) {
            if (depth > 0) {
                for (int i = 0; i < dry && !current.isEmpty(); i++) {
                    current.add(0.0);
                }
                dry = 0;
                current.add(depth);
            } else if (!current.isEmpty() && ++dry >= DRY_MINUTES) {
                events.add(measured(current));
                current = new ArrayList<>();
                dry = 0;
            }
        }
        if (!current.isEmpty()) {
            events.add(measured(current));
        }
        return events;
    }

    private static double[] measured(List<Double> event) {
        int[] windows = {1, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440};
        double[] found = new double[windows.length + 1];
        found[windows.length] = event.stream().mapToDouble(Double::doubleValue).sum();
        for (int w = 0; w < windows.length; w++) {
            double sum = 0;
            for (int i = 0; i < event.size(); i++) {
                sum += event.get(i);
                if (i >= windows[w]) {
                    sum -= event.get(i - windows[w]);
                }
                found[w] = Math.max(found[w], sum);
            }
        }
        return found;
    }

    /** 60 sliding maxima. */
    @Benchmark
    public List<PeakDepth> slidingMaxima() {
        return SlidingMaximum.of(durations).peaks(rain);
    }

    /** The rival: one pass over prefix sums for each duration. */
    @Benchmark
    public double[] prefixLoop() {
        double[] prefix = new double[MINUTES + 1];
        for (int i = 0; i < MINUTES; i++) {
            prefix[i + 1] = prefix[i] + depths[i];
        }
        double[] found = new double[durations.size()];
        for (int d = 0; d < found.length; d++) {
            int window = (int) durations.get(d).toMinutes();
            double best = 0;
            for (int i = window; i <= MINUTES; i++) {
                double sum = prefix[i] - prefix[i - window];
                best = sum > best ? sum : best;
            }
            found[d] = best;
        }
        return found;
    }

    /** A million tips in steps of two minutes, spread over the time since the tip before, at most an hour. */
    @Benchmark
    public RegularSeries tipsInSteps() {
        return bucket.depth(tips, Duration.ofMinutes(2), TipSpreading.INTERVAL);
    }

    /** The rival: the same shares merged in a sorted map. */
    @Benchmark
    public Map<Long, Double> mapMerge() {
        TreeMap<Long, Double> steps = new TreeMap<>();
        long before = Long.MIN_VALUE / 2;
        for (int i = 0; i < TIPS; i++) {
            long to = instants[i];
            long next = i + 1 < TIPS ? instants[i + 1] : to + HOUR;
            long from = to - before <= HOUR ? before : to - Math.min(HOUR, next - to);
            if (from == to) {
                steps.merge(Math.floorDiv(to, TWO_MINUTES), 0.2, Double::sum);
            }
            for (long at = from; at < to; ) {
                long step = Math.floorDiv(at, TWO_MINUTES);
                long end = Math.min(to, (step + 1) * TWO_MINUTES);
                steps.merge(step, 0.2 * (end - at) / (to - from), Double::sum);
                at = end;
            }
            before = to;
        }
        return steps;
    }
}
