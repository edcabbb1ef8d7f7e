package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The level of an hour whose sensor stands above the invert. */
class HourGathererTest {
    /** A sensor that reads a little below nothing reads nothing, and the water stands as high as it does. */
    @ParameterizedTest
    @CsvSource({"0.05, 0.15", "0.2, 0.3", "0, 0.1", "-0.05, 0.1"})
    void levelIsTheReadingAboveTheSensor(double depth, double level) {
        List<SiteHour> hours = new ArrayList<>();
        HourGatherer gatherer = new HourGatherer(
                MonitorHistory.of(InventedSite.MONITOR.withSensorOffset(0.1)),
                Long.MAX_VALUE,
                Long.MAX_VALUE,
                hours::add);
        for (int i = 0; i < 4; i++) {
            gatherer.add(i * SiteHour.NANOS / 4, depth, 0.5, 0);
        }
        gatherer.end();
        assertThat(hours).hasSize(1);
        assertThat(Math.exp(hours.get(0).lnDepth)).isCloseTo(level, within(1e-12));
    }
}
