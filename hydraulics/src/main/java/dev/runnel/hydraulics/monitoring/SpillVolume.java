package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.MeasuredVolume;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What went over a crest during a discharge, from the level in front of it: V = ∫ Q(h) dt with h = level − crest and Q the law of
 * the weir, by trapezia between readings. Immutable and thread-safe.
 *
 * <p>Near the crest a law does not hold: what went over at lower heads than a stated one is counted, and given beside. A level that
 * reads wrong by a little changes a spill at low heads a lot; {@link #relativeChange} says by how much.
 *
 * <p>What it is not: a measured volume. The law holds for a free, clean, level crest and a calm approach; a drowned or ragged weir and
 * a sloping water surface along a side weir give another.
 *
 * @param interval the discharge
 * @param volume volume, m³; NaN where readings cover less than half of the discharge
 * @param below the part of it that went over at heads below the lowest one of the law, m³; NaN as above
 * @param coverage share of the discharge between readings near enough to each other, in [0, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SpillVolume(Interval interval, double volume, double below, double coverage) {
    /**
     * Checks that nothing is missing.
     *
     * @param interval the discharge
     * @param volume volume, m³; NaN where readings cover less than half of the discharge
     * @param below the part of it that went over at heads below the lowest one of the law, m³; NaN as above
     * @param coverage share of the discharge between readings near enough to each other, in [0, 1]
     */
    public SpillVolume {
        Objects.requireNonNull(interval, "interval");
    }

    /** Chosen here: a volume of which less was seen is not told. */
    private static final double LEAST_COVERAGE = 0.5;

    /**
     * Returns the volume of a discharge.
     *
     * @param weir law of the crest
     * @param crestLevel level of the crest on the datum of the levels, m; in [-10000, 10000]
     * @param lowestHead head below which the law is not to be trusted, m; 0 or greater
     * @param level levels, m
     * @param discharge when water was above the crest; not empty
     * @param maximumGap longest time between two readings that is bridged; greater than 0
     * @return the volume
     * @throws IllegalArgumentException if an argument is outside its range
     */
    public static SpillVolume of(
            HeadDischarge weir,
            double crestLevel,
            double lowestHead,
            Series level,
            Interval discharge,
            Duration maximumGap) {
        Objects.requireNonNull(weir, "weir");
        Objects.requireNonNull(maximumGap, "maximumGap");
        Require.nonNegative("lowestHead", lowestHead, "m");
        if (discharge.isEmpty()) {
            throw new IllegalArgumentException("discharge must not be empty, was " + discharge);
        }
        Series near = level.slice(
                Interval.of(discharge.start().minus(maximumGap), discharge.end().plus(maximumGap)));
        Series flow = LevelFlow.of(weir, crestLevel).flow(near).flow();
        double limit = crestLevel + lowestHead;
        double[] low = flow.toValues();
        for (int i = 0; i < low.length; i++) {
            low[i] = near.value(i) >= limit ? 0 : low[i];
        }
        MeasuredVolume all = MeasuredVolume.of(flow, discharge, maximumGap);
        MeasuredVolume below = MeasuredVolume.of(flow.withReadings(low, flow.toQualityCodes()), discharge, maximumGap);
        boolean isSeen = all.coverage() >= LEAST_COVERAGE;
        return new SpillVolume(
                discharge,
                isSeen ? all.measured() : Double.NaN,
                isSeen ? Math.min(below.measured(), all.measured()) : Double.NaN,
                all.coverage());
    }

    /**
     * Returns by how much a volume would differ if the levels read higher by a little, over the volume.
     *
     * @param raised the volume with the crest lower, or the levels higher
     * @return (V′ − V)/V; NaN where either is not known or nothing went over
     */
    public double relativeChange(SpillVolume raised) {
        Objects.requireNonNull(raised, "raised");
        return volume > 0 ? (raised.volume - volume) / volume : Double.NaN;
    }

    @Override
    public String toString() {
        return "SpillVolume[" + interval + ": "
                + (Double.isNaN(volume)
                        ? "not known"
                        : Text.significant(volume, 4) + " m3, " + Text.significant(below, 4)
                                + " m3 of it below the lowest head")
                + ", " + Text.fixed(100 * coverage, 0) + " % covered]";
    }
}
