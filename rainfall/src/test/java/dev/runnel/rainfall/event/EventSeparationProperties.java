package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

class EventSeparationProperties {
    private static final Duration STEP = Duration.ofMinutes(5);
    private static final long MINUTE = 60_000_000_000L;

    @Provide
    Arbitrary<double[]> rain() {
        return Arbitraries.frequencyOf(
                        net.jqwik.api.Tuple.of(12, Arbitraries.just(0.0)),
                        net.jqwik.api.Tuple.of(
                                6, Arbitraries.integers().between(1, 30).map(tips -> tips * 0.2)),
                        net.jqwik.api.Tuple.of(1, Arbitraries.just(Double.NaN)))
                .array(double[].class)
                .ofMaxSize(120);
    }

    /** First and last wet step of every event, found the slow way: for each wet step, look back for the one before. */
    private static List<int[]> expected(double[] rain, int drySteps) {
        List<int[]> events = new ArrayList<>();
        int last = -1;
        for (int i = 0; i < rain.length; i++) {
            if (rain[i] > 0) {
                if (last < 0 || i - last - 1 >= drySteps) {
                    events.add(new int[] {i, i});
                }
                events.get(events.size() - 1)[1] = i;
                last = i;
            }
        }
        return events;
    }

    @Property
    void agreesWithASlowSeparation(
            @ForAll("rain") double[] rain,
            @ForAll @IntRange(min = 1, max = 20) int drySteps,
            @ForAll @DoubleRange(min = 0, max = 3) double minimumDepth) {
        EventRecord record = EventSeparation.of(STEP.multipliedBy(drySteps))
                .withMinimumDepth(minimumDepth)
                .separate(RegularSeries.of(Instant.EPOCH, STEP, rain));
        List<int[]> expected = expected(rain, drySteps);
        expected.removeIf(event -> depth(rain, event) < minimumDepth - 1e-9);
        assertThat(record.events()).hasSize(expected.size());
        for (int i = 0; i < expected.size(); i++) {
            RainfallEvent event = record.events().get(i);
            int[] steps = expected.get(i);
            assertThat(event.start()).isEqualTo(Instant.EPOCH.plus(STEP.multipliedBy(steps[0])));
            assertThat(event.end()).isEqualTo(Instant.EPOCH.plus(STEP.multipliedBy(steps[1] + 1L)));
            assertThat(event.depthMm()).isCloseTo(depth(rain, steps), within(1e-12));
            assertThat(event.antecedentDryTime()).isEqualTo(STEP.multipliedBy(dryBefore(rain, steps[0])));
        }
        assertThat(record.missingSteps())
                .isEqualTo((int) Arrays.stream(rain).filter(Double::isNaN).count());
    }

    private static double depth(double[] rain, int[] event) {
        return Arrays.stream(rain, event[0], event[1] + 1)
                .filter(value -> !Double.isNaN(value))
                .sum();
    }

    private static int dryBefore(double[] rain, int first) {
        int count = 0;
        while (count < first && !(rain[first - count - 1] > 0)) {
            count++;
        }
        return count;
    }

    @Property
    void allDepthIsAccountedFor(
            @ForAll("rain") double[] rain,
            @ForAll @IntRange(min = 1, max = 20) int drySteps,
            @ForAll @DoubleRange(min = 0, max = 3) double minimumDepth,
            @ForAll @DoubleRange(min = 0, max = 1) double wetAbove) {
        RegularSeries series = RegularSeries.of(Instant.EPOCH, STEP, rain);
        EventRecord record = EventSeparation.of(STEP.multipliedBy(drySteps))
                .withMinimumDepth(minimumDepth)
                .withWetAbove(wetAbove)
                .separate(series);
        double sum = record.droppedMm() + record.strayMm();
        for (RainfallEvent event : record.events()) {
            sum += event.depthMm();
        }
        assertThat(sum).isCloseTo(series.sum(), within(1e-11));
    }

    @Property
    void aRecordMayArriveInAnyPieces(
            @ForAll("rain") double[] rain, @ForAll @IntRange(min = 1, max = 20) int drySteps, @ForAll long seed) {
        EventSeparation rule = EventSeparation.of(STEP.multipliedBy(drySteps)).withMinimumDepth(0.6);
        RegularSeries series = RegularSeries.of(Instant.EPOCH, STEP, rain);
        EventDetector detector = rule.ofSteps(series.step()).startAt(series.start());
        List<RainfallEvent> events = new ArrayList<>();
        Random random = new Random(seed);
        int from = 0;
        while (from < rain.length) {
            int to = from + 1 + random.nextInt(rain.length - from);
            RegularSeries piece =
                    series.slice(Interval.of(series.time(from), to == rain.length ? series.end() : series.time(to)));
            for (double value : piece.toValues()) {
                detector.nextStep(value).ifPresent(events::add);
            }
            from = to;
        }
        events.addAll(detector.finish());
        assertThat(events).isEqualTo(rule.events(series));
    }

    @Property
    void tipsMayArriveWithAnyTicksBetween(
            @ForAll @IntRange(min = 0, max = 40) int count,
            @ForAll @IntRange(min = 1, max = 120) int gapMinutes,
            @ForAll long seed) {
        Random random = new Random(seed);
        long[] times = random.longs(count, 0, 2000 * MINUTE).sorted().toArray();
        TippingBucket gauge = TippingBucket.ofTip(0.2);
        EventSeparation rule =
                EventSeparation.of(Duration.ofMinutes(gapMinutes)).withMinimumDepth(0.4);
        Interval record = Interval.of(Instant.EPOCH, Duration.ofMinutes(3000));
        TipEventDetector detector = rule.ofTips(gauge).start();
        List<RainfallEvent> events = new ArrayList<>();
        detector.advanceTo(record.start());
        long now = 0;
        for (long time : times) {
            if (random.nextBoolean() && time > now) {
                now = random.nextLong(now, time + 1);
                detector.advanceTo(EpochNanos.toInstant(now)).ifPresent(events::add);
            }
            detector.nextTip(time).ifPresent(events::add);
            now = time;
        }
        detector.advanceTo(record.end()).ifPresent(events::add);
        events.addAll(detector.finish());
        assertThat(events).isEqualTo(rule.events(Tips.ofEpochNanos(times), record, gauge));
        double depth = detector.droppedMm()
                + events.stream().mapToDouble(RainfallEvent::depthMm).sum();
        assertThat(depth).isCloseTo(0.2 * count, within(1e-11));
    }
}
