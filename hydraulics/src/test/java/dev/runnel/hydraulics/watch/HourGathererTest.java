package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The level of an hour whose sensor stands above the invert, and the means of an hour. */
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

    /** A limb of the day within the hour: the median is on one side of it, the mean says when it came; a spike hardly moves it. */
    @ParameterizedTest
    @CsvSource({"3, 0.1, 0.3", "5, 0.1, 0.5", "7, 0.16, 0.7", "9, 0.16, 0.9"})
    void meanOfAnHourFollowsALimbThatLiesWithinIt(int high, double median, double share) {
        List<SiteHour> hours = new ArrayList<>();
        HourGatherer gatherer =
                new HourGatherer(MonitorHistory.of(InventedSite.MONITOR), Long.MAX_VALUE, Long.MAX_VALUE, hours::add);
        for (int i = 0; i < 10; i++) {
            double level = i < 10 - high ? 0.1 : 0.16;
            gatherer.add(i * SiteHour.NANOS / 10, level, 2 * level, 0);
        }
        for (int i = 0; i < 10; i++) {
            gatherer.add(SiteHour.NANOS + i * SiteHour.NANOS / 10, i == 4 ? 1 : 0.1, i == 6 ? 0.02 : 0.2, 0);
        }
        gatherer.end();
        SiteHour limb = hours.get(0);
        double step = Math.log(1.6);
        if (high != 5) {
            assertThat(limb.lnDepth).isCloseTo(Math.log(median), within(1e-12));
        }
        assertThat(limb.meanLnDepth).isCloseTo(Math.log(0.1) + share * step, within(1e-12));
        assertThat(limb.meanLnVelocity).isCloseTo(Math.log(0.2) + share * step, within(1e-12));
        SiteHour spiked = hours.get(1);
        assertThat(spiked.meanLnDepth).isCloseTo(Math.log(0.1) + Math.log(2) / 10, within(1e-12));
        assertThat(spiked.meanLnVelocity).isCloseTo(Math.log(0.2) - Math.log(2) / 10, within(1e-12));
    }
}
