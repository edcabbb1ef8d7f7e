package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.timeseries.EpochNanos;

/** What the readings of one hour come to. Filled by {@link HourGatherer}, then left alone. */
final class SiteHour {
    static final long NANOS = 3_600_000_000_000L;

    /** Hours since 1970. */
    final long hour;

    /** Readings that came. */
    int readings;

    /** Natural logarithm of the median level above the invert, m; NaN if fewer than half of the readings have one. */
    double lnDepth = Double.NaN;

    /** Natural logarithm of the median forward velocity, m/s; NaN if fewer than half of the readings have one. */
    double lnVelocity = Double.NaN;

    /**
     * Mean natural logarithm of the levels, each held within half and double of the median: unlike the median, it follows a
     * limb of the day that lies within the hour; NaN where the median is.
     */
    double meanLnDepth = Double.NaN;

    /** The same of the forward velocities. */
    double meanLnVelocity = Double.NaN;

    /** The same of the positive depths as the sensor gave them, whatever they are. */
    double lnReadDepth = Double.NaN;

    /** The same of velocities. */
    double lnReadVelocity = Double.NaN;

    /** Median velocity upstream, m/s, where most velocities of the hour are negative; else NaN. */
    double upstream = Double.NaN;

    /** Rain of the hour, mm; NaN if nothing is known of it. */
    double rain = Double.NaN;

    /** Logarithm of the highest over the lowest level of the hour. */
    double depthSpread;

    /** Robust scatter of ln v within the hour; NaN if too few. */
    double velocityScatter = Double.NaN;

    /**
     * How rough the levels are from reading to reading, whatever their course: mean second difference over the mean; NaN if too few, and
     * where nothing is learned.
     */
    double depthRoughness = Double.NaN;

    /** The same of velocities. */
    double velocityRoughness = Double.NaN;

    /** Velocities looked at under water. */
    int looked;

    /** Of those: zeros. */
    int zeros;

    /** Of those: far below the upper quartile of the hour, by the wide and the narrow limit. */
    int lowWide;

    int lowNarrow;

    /** Of those: negative, in an hour that is mostly forward. */
    int flips;

    /** Velocities that were held against those before. */
    int held;

    /** Velocities that stood far above those before and have come back by this hour, and far below. */
    int strayHigh;

    int strayLow;

    /** Levels that had a neighbour to be held against. */
    int compared;

    /** Of those: levels that stood alone, far from both neighbours. */
    int lone;

    /** Depths outside of what a sensor can say. */
    int outOfRange;

    /** Velocities that say water moves while the depth says there is none. */
    int withoutWater;

    /** Longest run of equal depths that reaches into the hour, ns, and where it began; 0 if there is none. */
    long depthRun;

    long depthRunFrom;

    /** The same of velocities. */
    long velocityRun;

    long velocityRunFrom;

    /** While it is learned what is usual: sums of steps of the velocity and of the readings before them, and the smallest step. */
    double velocitySteps;

    double velocitiesBefore;
    double velocityStep = Double.POSITIVE_INFINITY;

    /**
     * Largest step of the level from one reading to the next that stays for three readings, m, NaN if none is known; the median
     * level of the three before it, m; and the stamps of the two readings.
     */
    double step = Double.NaN;

    double stepFromLevel;
    long stepFrom;
    long stepTo;

    /** Largest ratio of two levels that follow each other, the higher over the lower; 1 if none is known. */
    double leap = 1;

    /** Readings whose step from the last one is not known. */
    int alone;

    /** Longest time of an hour or more between two stamps that ends in this hour, ns; 0 if there is none. */
    long gap;

    /** The stamp before it, and the time between the two stamps before that, ns. */
    long gapFrom;

    long gapStep;

    SiteHour(long hour) {
        this.hour = hour;
    }

    boolean hasDepth() {
        return !Double.isNaN(lnDepth);
    }

    boolean hasBoth() {
        return !Double.isNaN(lnDepth) && !Double.isNaN(lnVelocity);
    }

    /** Takes out what the hour says of the depth, which others shall not judge. */
    void withholdDepth() {
        lnDepth = Double.NaN;
        meanLnDepth = Double.NaN;
        lnReadDepth = Double.NaN;
        compared = 0;
        lone = 0;
        depthRun = 0;
        outOfRange = 0;
        withoutWater = 0;
    }

    /** The same of the velocity. */
    void withholdVelocity() {
        lnVelocity = Double.NaN;
        meanLnVelocity = Double.NaN;
        lnReadVelocity = Double.NaN;
        upstream = Double.NaN;
        looked = 0;
        zeros = 0;
        lowWide = 0;
        lowNarrow = 0;
        flips = 0;
        held = 0;
        strayHigh = 0;
        strayLow = 0;
        velocityRun = 0;
    }

    /** Logarithm of velocity times flow area, m3/s, with the bed of the date; NaN if there is none above it. */
    double lnFlow(MonitorHistory monitors) {
        return lnFlow(monitors, lnDepth, lnVelocity);
    }

    /** The same by the means. */
    double meanLnFlow(MonitorHistory monitors) {
        return lnFlow(monitors, meanLnDepth, meanLnVelocity);
    }

    private double lnFlow(MonitorHistory monitors, double lnLevel, double lnSpeed) {
        PipeMonitor monitor =
                monitors.isConstant() ? monitors.first() : monitors.at(EpochNanos.toInstant(hour * NANOS));
        double area = hasBoth() ? monitor.flowArea(Math.exp(lnLevel)) : 0;
        return area > 0 ? lnSpeed + Math.log(area) : Double.NaN;
    }
}
