package dev.runnel.rainfall.event;

import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.contract.SampleRecord;
import dev.runnel.timeseries.contract.SampleRecords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** The rules of this module, each with a record that makes its machine work. */
public final class RainfallRecords implements SampleRecords {
    private static final Instant START = Instant.parse("2026-03-28T22:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(5);

    @Override
    public List<SampleRecord<?, ?, ?>> all() {
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(30))
                .withPeakDurations(STEP, Duration.ofMinutes(7), Duration.ofMinutes(20), Duration.ofHours(2));
        TippingBucket gauge = TippingBucket.ofTip(0.254).withCalibration(LostTime.ofSeconds(0.45));
        return List.of(
                new SampleRecord<>(rule.withMinimumDepth(0.5).ofSteps(STEP), steps()),
                new SampleRecord<>(rule.ofTips(gauge), tips()));
    }

    private static List<Reading> steps() {
        Random random = new Random(5);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            boolean wet = i % 40 < 22 && random.nextInt(3) > 0;
            double rain = random.nextInt(25) == 0 ? Double.NaN : wet ? 3 * random.nextDouble() : 0;
            readings.add(Reading.of(START.plus(STEP.multipliedBy(i)), rain));
        }
        return readings;
    }

    private static List<TipCount> tips() {
        Random random = new Random(6);
        List<TipCount> tips = new ArrayList<>();
        Instant time = START;
        for (int i = 0; i < 300; i++) {
            time = time.plusMillis(random.nextInt(20) == 0 ? 7_200_000 : 500 + random.nextInt(400_000));
            tips.add(random.nextInt(9) == 0 ? TipCount.none(time) : new TipCount(time, 1 + random.nextInt(2)));
        }
        return tips;
    }
}
