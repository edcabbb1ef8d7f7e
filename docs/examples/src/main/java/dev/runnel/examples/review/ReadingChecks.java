package dev.runnel.examples.review;

import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import java.time.Duration;

/** The tests on the readings of a site, by what its site file says. The range comes first: what fails it is no neighbour. */
public final class ReadingChecks {
    private static final double GAP_INTERVALS = 2.5;

    /** Chosen here: what fails must stand out twice as far as what is unusual. */
    private static final double FAIL_OVER_UNUSUAL_SPIKE = 2;

    private static final int FAIL_OVER_UNUSUAL_FLAT = 6;

    /** In a quarter of an hour a storm may come and go: only closer readings can tell a spike. */
    private static final Duration SPIKE_NEIGHBOURS = Duration.ofMinutes(5);

    private ReadingChecks() {}

    /**
     * Returns the tests on depth readings.
     *
     * @param site what the site file says
     * @return range and spike
     */
    public static QualityChecks depth(Site site) {
        double spike = site.checks().depthSpike();
        return QualityChecks.of(
                RangeCheck.of(0, site.checks().highestDepth()),
                SpikeCheck.of(spike, FAIL_OVER_UNUSUAL_SPIKE * spike)
                        .withMaximumGap(SPIKE_NEIGHBOURS)
                        .withNeighboursSpared());
    }

    /**
     * Returns the tests on velocity readings.
     *
     * @param site what the site file says
     * @param interval logging interval
     * @return range and flat line
     */
    public static QualityChecks velocity(Site site, Duration interval) {
        double fastest = site.checks().fastestVelocity();
        int flat = (int)
                Math.max(2, Math.min(site.checks().flatLine().dividedBy(interval), 100_000 / FAIL_OVER_UNUSUAL_FLAT));
        return QualityChecks.of(
                RangeCheck.of(-fastest, fastest).withUsual(0, fastest),
                FlatLineCheck.of(flat, FAIL_OVER_UNUSUAL_FLAT * flat, 0));
    }

    /**
     * Returns the longest time between two readings that is not a gap.
     *
     * @param site what the site file says
     * @param interval logging interval
     * @return the time
     */
    public static Duration longestGap(Site site, Duration interval) {
        return site.checks().longestGap().orElse(Duration.ofNanos(Math.round(interval.toNanos() * GAP_INTERVALS)));
    }
}
