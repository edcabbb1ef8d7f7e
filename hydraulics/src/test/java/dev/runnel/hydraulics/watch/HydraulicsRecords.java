package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.SurchargeRule;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.contract.SampleRecord;
import dev.runnel.timeseries.contract.SampleRecords;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** The rules of this module, each with a record that makes its machine work. */
public final class HydraulicsRecords implements SampleRecords {
    @Override
    public List<SampleRecord<?, ?, ?>> all() {
        SiteBaseline baseline = BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(16, 31).record(InventedSite.Fault.NONE))
                .baseline()
                .orElseThrow();
        // Held up more and more from day 18 on, watched from the end of the baseline.
        SiteRecord record = InventedSite.of(26, 31).record(InventedSite.heldUp(InventedSite.ramp(18, 4, 0.9)));
        List<SiteReading> watched = new ArrayList<>();
        for (SiteReading reading : record) {
            if (!reading.time().isBefore(InventedSite.START.plus(Duration.ofDays(16)))) {
                watched.add(reading);
            }
        }
        List<Reading> levels = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            levels.add(Reading.of(
                    InventedSite.START.plusSeconds(120L * i), i % 37 == 36 ? Double.NaN : 1 + Math.sin(i / 15.0)));
        }
        return List.of(
                new SampleRecord<>(SurchargeRule.above(1).withMaximumGap(Duration.ofMinutes(10)), levels),
                new SampleRecord<>(WatchRule.of(baseline).withAlarmLevel(0.4), watched));
    }
}
