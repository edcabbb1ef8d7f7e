package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** A service that is stopped at any moment and started again from what it stored finds the same events. */
class DetectorStateProperties {
    private static final Duration STEP = Duration.ofMinutes(5);

    @Provide
    Arbitrary<double[]> rain() {
        return Arbitraries.frequencyOf(
                        Tuple.of(12, Arbitraries.just(0.0)),
                        Tuple.of(6, Arbitraries.doubles().between(0, 9).ofScale(6)),
                        Tuple.of(2, Arbitraries.just(Double.NaN)))
                .array(double[].class)
                .ofMaxSize(120);
    }

    @Property
    void aRecordOfStepsMayStopAnywhere(
            @ForAll("rain") double[] rain,
            @ForAll @IntRange(min = 1, max = 12) int drySteps,
            @ForAll @DoubleRange(min = 0, max = 12) double minimumDepth,
            @ForAll @DoubleRange(min = 0, max = 1) double wetAbove,
            @ForAll @IntRange(min = 1, max = 7) int every)
            throws IOException, ClassNotFoundException {
        EventSeparation rule = EventSeparation.of(STEP.multipliedBy(drySteps))
                .withMinimumDepth(minimumDepth)
                .withWetAbove(wetAbove);
        EventDetector detector = rule.detector(Instant.EPOCH, STEP);
        List<RainfallEvent> events = new ArrayList<>();
        for (int i = 0; i < rain.length; i++) {
            if (i % every == 0) {
                EventDetector.State state = detector.state();
                detector = rule.detector(throughBytes(state));
                assertThat(detector.state()).isEqualTo(state);
            }
            detector.next(rain[i]).ifPresent(events::add);
        }
        detector = rule.detector(throughBytes(detector.state()));
        detector.finish().ifPresent(events::add);
        EventRecord record = new EventRecord(
                events, detector.droppedEvents(), detector.droppedMm(), detector.strayMm(), detector.missingSteps());
        assertThat(record).isEqualTo(rule.separate(RegularSeries.of(Instant.EPOCH, STEP, rain)));
    }

    @Property
    void aRecordOfTipsMayStopAnywhere(
            @ForAll @IntRange(min = 0, max = 60) int count,
            @ForAll @IntRange(min = 1, max = 120) int gapMinutes,
            @ForAll @DoubleRange(min = 0, max = 2) double minimumDepth,
            @ForAll @IntRange(min = 1, max = 7) int every,
            @ForAll long seed)
            throws IOException, ClassNotFoundException {
        long[] minutes = new Random(seed).longs(count, 0, 2000).sorted().toArray();
        long[] times = new long[count];
        for (int i = 0; i < count; i++) {
            times[i] = minutes[i] * 60_000_000_000L;
        }
        TippingBucket gauge = TippingBucket.ofTip(0.254).withCalibration(LostTime.ofSeconds(0.45));
        EventSeparation rule =
                EventSeparation.of(Duration.ofMinutes(gapMinutes)).withMinimumDepth(minimumDepth);
        Interval record = Interval.of(Instant.EPOCH, Duration.ofMinutes(2010));
        TipEventDetector detector = rule.tipDetector(gauge);
        List<RainfallEvent> events = new ArrayList<>();
        detector.advanceTo(record.start());
        for (int i = 0; i < count; i++) {
            if (i % every == 0) {
                detector.advanceTo(EpochNanos.toInstant(times[i])).ifPresent(events::add);
                TipEventDetector.State state = detector.state();
                detector = rule.tipDetector(gauge, throughBytes(state));
                assertThat(detector.state()).isEqualTo(state);
            }
            detector.next(times[i]).ifPresent(events::add);
        }
        detector = rule.tipDetector(gauge, throughBytes(detector.state()));
        detector.advanceTo(record.end()).ifPresent(events::add);
        detector.finish().ifPresent(events::add);
        assertThat(new EventRecord(events, detector.droppedEvents(), detector.droppedMm(), 0, 0))
                .isEqualTo(rule.separate(Tips.ofEpochNanos(times), record, gauge));
    }

    @SuppressWarnings("unchecked") // What goes in comes out.
    private static <S extends Serializable> S throughBytes(S state) throws IOException, ClassNotFoundException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
            out.writeObject(state);
        }
        try (ObjectInputStream in = new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
            return (S) in.readObject();
        }
    }
}
