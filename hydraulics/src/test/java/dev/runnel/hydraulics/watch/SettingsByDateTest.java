package dev.runnel.hydraulics.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.watch.InventedSite.Fault;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A watch that is told of the sensor's place and the bed of each date. */
class SettingsByDateTest {
    private static final double MOVED = 0.05;
    private static final double BED = 0.05;

    /** The scatter of an invented reading is a share of it, 0.4 %, so that a lower one scatters less: medians of it. */
    private static final double SMALL = 0.002;

    private static final Instant DAY_25 = InventedSite.START.plus(Duration.ofDays(25));
    private static final Interval SINCE = Interval.of(DAY_25, DAY_25.plus(Duration.ofDays(400)));

    /** The sensor hangs higher from day 25 on, and reads so much less. */
    private static final Fault SENSOR_MOVED =
            (day, depth, velocity, random) -> new double[] {day < 25 ? depth : depth - MOVED, velocity};

    private static SiteBaseline baseline(SiteRecord record) {
        return BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow();
    }

    @Test
    void aSensorThatWasMovedOnTheRecordIsNoFinding() {
        SiteRecord record = InventedSite.of(60, 2).record(SENSOR_MOVED);
        WatchRule rule = WatchRule.of(baseline(record));
        MonitorHistory monitors =
                MonitorHistory.of(InventedSite.MONITOR).with(SINCE, monitor -> monitor.withSensorOffset(MOVED));

        assertFalse(rule.watch(record).findings().isEmpty());
        assertEquals(List.of(), rule.withMonitors(monitors).watch(record).findings());
        assertEquals(
                rule.toString().replace("]]", "], settings by date]"),
                rule.withMonitors(monitors).toString());
    }

    /** What is usual is learned with the settings of its time too: here the sensor was moved within the first fortnight. */
    @Test
    void aBaselineIsLearnedAcrossAMovedSensor() {
        Instant day = InventedSite.START.plus(Duration.ofDays(9));
        SiteRecord record = InventedSite.of(40, 2)
                .record((at, depth, velocity, random) -> new double[] {at < 9 ? depth : depth - MOVED, velocity});
        MonitorHistory monitors = MonitorHistory.of(InventedSite.MONITOR)
                .with(Interval.of(day, SINCE.end()), monitor -> monitor.withSensorOffset(MOVED));
        BaselineRule plain = BaselineRule.of(InventedSite.MONITOR);

        SiteBaseline found =
                plain.withMonitors(monitors).learn(record).baseline().orElseThrow();

        SiteBaseline sound = plain.learn(InventedSite.of(40, 2).record(Fault.NONE))
                .baseline()
                .orElseThrow();
        for (Quantity quantity : List.of(Quantity.DEPTH, Quantity.FLOW)) {
            assertEquals(
                    sound.day(quantity).orElseThrow().value(12, false),
                    found.day(quantity).orElseThrow().value(12, false),
                    SMALL);
        }
        assertEquals(sound.interval(), found.interval());
        // Untold it is a sensor that moved, and the days before are learned from.
        SiteBaseline untold = plain.learn(record).baseline().orElseThrow();
        assertEquals(Interval.of(InventedSite.START, day), untold.interval());
    }

    /** A bed under the sensor lifts the water at the same flow and velocity: more flow only for one who knows no bed. */
    @Test
    void aBedOnTheRecordIsNoOtherFlow() {
        PipeMonitor clean = InventedSite.MONITOR;
        PipeMonitor silted = clean.withSediment(BED);
        Fault deposit = (day, depth, velocity, random) ->
                new double[] {day < 25 ? depth : levelOf(silted, clean.flowArea(depth)), velocity};
        SiteRecord record = InventedSite.of(60, 2).record(deposit);
        WatchRule rule = WatchRule.of(baseline(record));
        MonitorHistory monitors = MonitorHistory.of(clean).with(SINCE, monitor -> monitor.withSediment(BED));
        double usual =
                Math.exp(rule.baseline().day(Quantity.DEPTH).orElseThrow().value(12, false));
        double lifted = levelOf(silted, clean.flowArea(usual));

        double untold = flow(rule.watch(record));
        double told = flow(rule.withMonitors(monitors).watch(record));

        assertTrue(untold > 1.15, () -> "flow over the usual one, the bed unknown: " + untold);
        assertTrue(told < 1, () -> "flow over the usual one, the bed known: " + told);
        assertEquals(Math.log(clean.flowArea(lifted) / clean.flowArea(usual)), Math.log(untold / told), 0.04);
    }

    /** The flow of the one finding over the usual one, as its words say. */
    private static double flow(WatchReport report) {
        assertEquals(1, report.findings().size(), report::describe);
        Matcher words = Pattern.compile("; flow ([+-][0-9]+) %")
                .matcher(report.findings().get(0).describe());
        assertTrue(words.find(), report::describe);
        return 1 + Integer.parseInt(words.group(1)) / 100.0;
    }

    private static double levelOf(PipeMonitor monitor, double area) {
        double low = monitor.bedAboveInvert();
        double high = monitor.soffit();
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (monitor.flowArea(middle) < area) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Test
    void settingsOfAnotherPipeAreRefused() {
        MonitorHistory other = MonitorHistory.of(PipeMonitor.of(Conduit.of(
                CircularSection.ofDiameter(1.25), InventedSite.MONITOR.conduit().gradient(), Manning.of(0.013))));
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> BaselineRule.of(InventedSite.MONITOR).withMonitors(other));
        String message = String.valueOf(refused.getMessage());
        assertTrue(message.startsWith("monitors must be of the clean section CircularSection["), message);
    }
}
