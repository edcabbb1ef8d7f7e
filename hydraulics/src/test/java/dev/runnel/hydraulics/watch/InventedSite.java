package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * An invented site for the shape of each finding: a circular sewer whose flow follows the day, the week and storms, and
 * whose velocity follows a law of its own with scatter. Small and seeded; no measure of how good the watch is.
 */
final class InventedSite {
    static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    static final PipeMonitor MONITOR =
            PipeMonitor.of(Conduit.of(CircularSection.ofDiameter(0.6), Gradient.ofRatio(1, 200), Manning.of(0.013)));
    private static final double EXPONENT = 0.55;

    private final int days;
    private final int minutes;
    private final long seed;
    private final double scatter;
    private final boolean storms;

    /** Changes of a sound pair of readings; the day counts from 0. */
    interface Fault {
        double[] apply(double day, double depth, double velocity, Random random);

        Fault NONE = (day, depth, velocity, random) -> new double[] {depth, velocity};
    }

    InventedSite(int days, int minutes, long seed, double scatter, boolean storms) {
        this.days = days;
        this.minutes = minutes;
        this.seed = seed;
        this.scatter = scatter;
        this.storms = storms;
    }

    static InventedSite of(int days, long seed) {
        return new InventedSite(days, 15, seed, 0.04, true);
    }

    /** A rise of the depth by a share at unchanged flow. */
    static Fault heldUp(DoubleUnaryOperator share) {
        return (day, depth, velocity, random) -> {
            double higher = Math.min(0.59, depth * (1 + share.applyAsDouble(day)));
            double area = MONITOR.flowArea(depth) / MONITOR.flowArea(higher);
            return new double[] {higher, velocity * area};
        };
    }

    /** From 0 at a day up to a share some days later, which then stays. */
    static DoubleUnaryOperator ramp(double from, double length, double share) {
        return day -> share * Math.min(1, Math.max(0, (day - from) / length));
    }

    static double hourly(int hour, boolean rest) {
        double morning = Math.exp(-Math.pow((hour - (rest ? 10 : 8)) / 2.5, 2));
        double evening = Math.exp(-Math.pow((hour - 19) / 3.0, 2));
        return 0.55 + 0.75 * morning + 0.6 * evening;
    }

    SiteRecord record(Fault fault) {
        return record(fault, true, storms);
    }

    SiteRecord record(Fault fault, boolean withVelocity, boolean withRain) {
        Random random = new Random(seed);
        int perDay = 1440 / minutes;
        int n = days * perDay;
        double[] rain = new double[n];
        double storm = 0;
        double[] wet = new double[n];
        for (int i = 0; i < n; i++) {
            if (storms && random.nextDouble() < 1.0 / (5.0 * perDay)) {
                int length = 4 + random.nextInt(3 * perDay / 8);
                double rate = (1 + 6 * random.nextDouble()) / length;
                for (int k = i; k < Math.min(n, i + length); k++) {
                    rain[k] += rate * 2 * random.nextDouble();
                }
            }
            storm += (rain[i] * 4 - storm) * minutes / 120.0;
            wet[i] = storm;
        }
        SeriesBuilder depths = Series.builder();
        SeriesBuilder velocities = Series.builder();
        double day = 0;
        double hour = 0;
        double flowDay = 0;
        double flowHour = 0;
        for (int i = 0; i < n; i++) {
            if (i % perDay == 0) {
                day = 0.3 * day + scatter * Math.sqrt(1 - 0.09) * random.nextGaussian();
                flowDay = 0.5 * flowDay + 0.03 * random.nextGaussian();
            }
            if (i % (perDay / 24) == 0) {
                hour = 0.5 * hour + scatter * Math.sqrt(0.75) * random.nextGaussian();
                flowHour = 0.6 * flowHour + 0.05 * random.nextGaussian();
            }
            Instant time = START.plus(Duration.ofMinutes((long) i * minutes));
            double t = (double) i / perDay;
            double within = (t - Math.floor(t)) * 24;
            boolean rest = Math.floorMod((int) t, 7) >= 5;
            double share = within - Math.floor(within);
            double shape = (1 - share) * hourly((int) within, rest) + share * hourly(((int) within + 1) % 24, rest);
            double flow = 0.010 * shape * Math.exp(flowDay + flowHour) + 0.01 * wet[i];
            double depth = 0.12 * Math.pow(flow / 0.010, 0.48);
            double velocity = 0.7 * Math.pow(depth / 0.12, EXPONENT) * Math.exp(day + hour);
            double[] read = fault.apply(t, Math.min(0.58, depth), velocity, random);
            if (Double.isNaN(read[0]) && Double.isNaN(read[1])) {
                continue;
            }
            depths.add(time, Math.round(read[0] * (1 + 0.004 * random.nextGaussian()) * 1000) / 1000.0);
            if (!Double.isNaN(read[1])) {
                double speed = read[1] == 0 ? 0 : read[1] * (1 + 0.02 * random.nextGaussian());
                velocities.add(time, Math.round(speed * 1000) / 1000.0);
            }
        }
        SiteRecord record =
                withVelocity ? SiteRecord.of(depths.build(), velocities.build()) : SiteRecord.ofDepth(depths.build());
        return withRain ? record.withRain(RegularSeries.of(START, Duration.ofMinutes(minutes), rain)) : record;
    }
}
