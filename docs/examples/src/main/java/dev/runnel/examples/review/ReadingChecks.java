package dev.runnel.examples.review;

import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.LoneReadingCheck;
import dev.runnel.timeseries.quality.PairCheck;
import dev.runnel.timeseries.quality.QualityChecks;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.QualityReport;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.SharedSpikeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** The tests on the readings of a site, by what its site file says. The range comes first: what fails it is no neighbour. */
public final class ReadingChecks {
    private static final double GAP_INTERVALS = 2.5;

    /** Chosen here: what fails must stand out twice as far as what is unusual. */
    private static final double FAIL_OVER_UNUSUAL_SPIKE = 2;

    private static final int FAIL_OVER_UNUSUAL_FLAT = 6;

    /** In a quarter of an hour a storm may come and go: only closer readings can tell a spike. */
    private static final Duration SPIKE_NEIGHBOURS = Duration.ofMinutes(5);

    /** A depth that leaps and comes back while the velocity stands still is no storm, nor is it the other way round. */
    private static final Duration FAR_NEIGHBOURS = Duration.ofMinutes(15);

    /** Share of the median velocity by which one reading may stand out beside a steady depth; chosen here. */
    private static final double MOST_LOSS = 0.6;

    private ReadingChecks() {}

    /**
     * Returns the tests on depth readings where no velocity was read beside them.
     *
     * @param site what the site file says
     * @return range and spike
     */
    public static QualityChecks depth(Site site) {
        return QualityChecks.of(range(site), spike(site));
    }

    private static RangeCheck range(Site site) {
        return RangeCheck.of(0, site.checks().highestDepth());
    }

    private static SpikeCheck spike(Site site) {
        double spike = site.checks().depthSpike();
        return SpikeCheck.of(spike, FAIL_OVER_UNUSUAL_SPIKE * spike)
                .withMaximumGap(SPIKE_NEIGHBOURS)
                .withNeighboursSpared();
    }

    /**
     * Tests depth readings, with the velocities beside them as witnesses of what water does.
     *
     * @param site what the site file says
     * @param depth the depths
     * @param velocity the velocities, tested
     * @return range, lone readings and spike
     */
    static QualityReport depth(Site site, Series depth, Series velocity) {
        QualityReport inRange = QualityChecks.of(range(site)).apply(depth);
        // Both checks look at the velocities of the same times.
        Series beside = Alignment.exact().align(depth, velocity);
        QualityReport alone = and(inRange, lone(site.checks().depthSpike()), beside);
        return and(alone, SharedSpikeCheck.of(spike(site)), beside);
    }

    private static LoneReadingCheck lone(double above) {
        return LoneReadingCheck.of(above, FAR_NEIGHBOURS);
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
     * Tests velocity readings, with the depths beside them: water that does not fall does not stop for one reading.
     *
     * @param site what the site file says
     * @param interval logging interval
     * @param velocity the velocities
     * @param depth the depths
     * @return range, flat line and lone readings
     */
    static QualityReport velocity(Site site, Duration interval, Series velocity, Series depth) {
        QualityReport alone = velocity(site, interval).apply(velocity);
        double usual = alone.series().statistics().median();
        return usual > 0 ? and(alone, lone(MOST_LOSS * usual), depth) : alone;
    }

    /** Tells what stands at the end of the range of its sensor or logger, in readings that the other tests have seen. */
    static QualityReport atTheEnd(Site site, QualityReport report) {
        return EndOfRange.in(report.series(), site.checks().flatLine())
                .map(end -> and(report, end.apply(report.series())))
                .orElse(report);
    }

    /** What failed so far is no neighbour. */
    private static QualityReport and(QualityReport report, PairCheck check, Series companion) {
        return and(report, check.apply(report.series(), companion));
    }

    private static QualityReport and(QualityReport report, QualityFlags more) {
        List<QualityFlags> flags = new ArrayList<>(report.flags());
        flags.add(more);
        return new QualityReport(report.series().withFlags(more.toQualityCodes()), flags);
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
