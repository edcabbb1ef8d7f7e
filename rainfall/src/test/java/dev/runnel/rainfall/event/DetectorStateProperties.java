package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.contract.MachineContract;
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
    private static final Duration[] DURATIONS = {
        STEP, Duration.ofMinutes(7), Duration.ofMinutes(20), Duration.ofMinutes(33), Duration.ofHours(2)
    };

    @Provide
    Arbitrary<double[]> rain() {
        return Arbitraries.frequencyOf(
                        Tuple.of(12, Arbitraries.just(0.0)),
                        Tuple.of(6, Arbitraries.doubles().between(0, 9).ofScale(6)),
                        Tuple.of(2, Arbitraries.just(Double.NaN)))
                .array(double[].class)
                .ofMaxSize(120);
    }

    @Property(tries = 200)
    void aRecordOfStepsMayStopAnywhere(
            @ForAll("rain") double[] rain,
            @ForAll @IntRange(min = 1, max = 12) int drySteps,
            @ForAll @DoubleRange(min = 0, max = 12) double minimumDepth,
            @ForAll @DoubleRange(min = 0, max = 1) double wetAbove) {
        EventSeparation rule = EventSeparation.of(STEP.multipliedBy(drySteps))
                .withMinimumDepth(minimumDepth)
                .withWetAbove(wetAbove)
                .withPeakDurations(DURATIONS);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < rain.length; i++) {
            readings.add(Reading.of(Instant.EPOCH.plus(STEP.multipliedBy(i)), rain[i]));
        }
        List<RainfallEvent> events = MachineContract.holds(rule.ofSteps(STEP), readings);
        assertThat(events).isEqualTo(rule.events(RegularSeries.of(Instant.EPOCH, STEP, rain)));
    }

    @Property(tries = 200)
    void peaksAreThoseOfTheRecordOfTheEvent(
            @ForAll("rain") double[] rain,
            @ForAll @IntRange(min = 1, max = 12) int drySteps,
            @ForAll @DoubleRange(min = 0, max = 1) double wetAbove) {
        RegularSeries series = RegularSeries.of(Instant.EPOCH, STEP, rain);
        EventSeparation rule = EventSeparation.of(STEP.multipliedBy(drySteps))
                .withWetAbove(wetAbove)
                .withPeakDurations(DURATIONS);
        for (RainfallEvent event : rule.events(series)) {
            List<PeakDepth> expected = SlidingMaximum.of(DURATIONS).peaks(series.slice(event.interval()));
            for (int i = 0; i < DURATIONS.length; i++) {
                assertThat(event.peaks().get(i).depthMm())
                        .isCloseTo(expected.get(i).depthMm(), within(1e-12));
            }
        }
    }

    @Property(tries = 200)
    void aRecordOfTipsMayStopAnywhere(
            @ForAll @IntRange(min = 0, max = 60) int count,
            @ForAll @IntRange(min = 1, max = 120) int gapMinutes,
            @ForAll @DoubleRange(min = 0, max = 2) double minimumDepth,
            @ForAll long seed) {
        Random random = new Random(seed);
        long[] minutes = random.longs(count, 1, 2000).sorted().toArray();
        List<TipCount> inputs = new ArrayList<>();
        List<Instant> tips = new ArrayList<>();
        inputs.add(TipCount.none(Instant.EPOCH));
        for (int i = 0; i < count; i++) {
            Instant time = Instant.EPOCH.plusSeconds(60 * minutes[i]);
            tips.add(time);
            TipCount last = inputs.get(inputs.size() - 1);
            if (last.time().equals(time)) {
                inputs.set(inputs.size() - 1, new TipCount(time, last.tips() + 1));
            } else {
                if (random.nextInt(4) == 0 && time.minusSeconds(7).isAfter(last.time())) {
                    inputs.add(TipCount.none(time.minusSeconds(7)));
                }
                inputs.add(TipCount.tip(time));
            }
        }
        Interval record = Interval.of(Instant.EPOCH, Duration.ofMinutes(2010));
        inputs.add(TipCount.none(record.end()));
        TippingBucket gauge = TippingBucket.ofTip(0.254).withCalibration(LostTime.ofSeconds(0.45));
        EventSeparation rule =
                EventSeparation.of(Duration.ofMinutes(gapMinutes)).withMinimumDepth(minimumDepth);
        List<RainfallEvent> events = MachineContract.holds(rule.ofTips(gauge), inputs);
        assertThat(events).isEqualTo(rule.events(Tips.of(tips), record, gauge));
        TipEventDetector machine = rule.ofTips(gauge).start();
        machine.advanceTo(record.start());
        List<RainfallEvent> oneByOne = new ArrayList<>();
        for (Instant tip : tips) {
            machine.nextTip(EpochNanos.of(tip)).ifPresent(oneByOne::add);
        }
        machine.advanceTo(record.end()).ifPresent(oneByOne::add);
        oneByOne.addAll(machine.finish());
        assertThat(oneByOne).isEqualTo(events);
    }
}
