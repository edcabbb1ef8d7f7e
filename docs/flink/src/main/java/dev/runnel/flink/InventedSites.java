package dev.runnel.flink;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.watch.BaselineRule;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.timeseries.EpochNanos;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Invented sites whose readings are a function of the site and the number of the reading, so that any worker can make any
 * of them: a day that comes again, scatter, storms, and from a stated day on a slow loss of velocity at each fifth site.
 */
record InventedSites(int step, int faultDay) implements Serializable {
    static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.ofRatio(1, 200), Manning.of(0.013)));

    private static final long START = EpochNanos.of(Instant.parse("2026-03-02T00:00:00Z"));
    private static final int DAY = 86400;

    /** Step in seconds. */
    static InventedSites every(int seconds, int faultDay) {
        return new InventedSites(seconds, faultDay);
    }

    static String name(int site) {
        return "S" + site;
    }

    SiteEvent event(int site, long number) {
        long second = number * step;
        double storm = 0;
        double rain = 0;
        // A storm lasts two hours and drains for half a day; some days have one.
        for (long day = Math.max(0, second / DAY - 1); day <= second / DAY; day++) {
            if (uniform(site, day, 1) < 0.25) {
                double since = (second - (day + uniform(site, day, 2)) * DAY) / 3600;
                double strength = 0.05 + 0.25 * uniform(site, day, 3);
                if (since > 0 && since < 12) {
                    storm += strength * since * Math.exp(1 - since);
                }
                if (since > 0 && since <= 2) {
                    rain += strength * 40 * step / 3600.0 * uniform(site, number, 4);
                }
            }
        }
        double hour = second % DAY / 3600.0;
        double usual = 0.12 + 0.04 * Math.sin((hour - 9) * Math.PI / 12) + 0.01 * Math.sin((hour - 2) * Math.PI / 6);
        double depth = Math.min(0.58, usual * (1 + 0.03 * scatter(site, number, 5)) + storm);
        double days = (double) second / DAY - faultDay;
        double loss = site % 5 == 0 && days > 0 ? Math.min(0.4, 0.05 * days) : 0;
        double velocity = 0.7 * Math.pow(depth / 0.12, 0.55) * (1 - loss) * Math.exp(0.04 * scatter(site, number, 6));
        return new SiteEvent(name(site), START + second * 1_000_000_000L, depth, velocity, Math.max(0, rain));
    }

    /** A baseline that serves all of the sites, since they are of one kind, as its text. */
    String baseline(int site, int days) {
        List<SiteReading> readings = new ArrayList<>();
        for (long number = 0; number < (long) days * DAY / step; number++) {
            readings.add(reading(event(site, number)));
        }
        return BaselineRule.of(MONITOR)
                .withDays(days)
                .learn(SiteRecord.ofReadings(readings))
                .baseline()
                .map(SiteBaseline::toText)
                .orElseThrow();
    }

    static SiteReading reading(SiteEvent event) {
        return new SiteReading(EpochNanos.toInstant(event.epochNanos()), event.depth(), event.velocity(), event.rain());
    }

    Duration stepDuration() {
        return Duration.ofSeconds(step);
    }

    /** About normal, mean 0 and variance 1: the sum of four uniform numbers. */
    private static double scatter(int site, long number, int stream) {
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            sum += uniform(site, number, stream * 8 + i) - 0.5;
        }
        return sum * Math.sqrt(3);
    }

    /** A uniform number in [0, 1) that depends on what it is for alone. */
    private static double uniform(int site, long number, int stream) {
        long z = site * 0x9E3779B97F4A7C15L + number * 0xC2B2AE3D27D4EB4FL + stream * 0x165667B19E3779F9L;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return ((z ^ (z >>> 31)) >>> 11) * 0x1.0p-53;
    }
}
