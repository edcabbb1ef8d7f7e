package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.Require;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Quality;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How long a pipe was fuller than a given share of its height. Immutable and thread-safe.
 *
 * <p>Each usable level stands until the next usable one. If that comes later than the longest allowed gap, the whole time
 * between is not covered: it counts neither as above nor as below. A depth below the sensor is known to be under the
 * sensor's height and counts as not above any fullness at or over it; for a fullness under the sensor it is not covered.
 *
 * <p>What this is not: an estimate for the time that is not covered. Faults and floods like to come together, so a share
 * of the covered time may understate.
 *
 * @param fullness the share of the height of the section; 1 is the soffit
 * @param above time above it
 * @param covered time for which it is known
 * @param total time from the first to the last reading of the record
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record FullnessTime(double fullness, Duration above, Duration covered, Duration total) {
    private static final double LARGEST_FULLNESS = 100;

    /**
     * Checks that the times fit into each other.
     *
     * @param fullness the share of the height; in [0, 100]
     * @param above time above it
     * @param covered time for which it is known
     * @param total time of the record
     * @throws IllegalArgumentException if not 0 ≤ above ≤ covered ≤ total, or the fullness is out of range
     */
    public FullnessTime {
        Objects.requireNonNull(covered, "covered");
        Objects.requireNonNull(total, "total");
        Require.inRange("fullness", fullness, 0, LARGEST_FULLNESS, "");
        if (above.isNegative() || above.compareTo(covered) > 0 || covered.compareTo(total) > 0) {
            throw new IllegalArgumentException(
                    "times must be in the order 0 <= above <= covered <= total, were " + Text.exactDuration(above)
                            + ", " + Text.exactDuration(covered) + ", " + Text.exactDuration(total));
        }
    }

    /**
     * Returns the time above one fullness.
     *
     * @param record the record of a monitor in a closed section
     * @param fullness the share of the height, for example 0.5, 0.8 or 1; in [0, 100]
     * @param maximumGap longest time between two usable readings that is covered; longer than 0
     * @return the time
     * @throws IllegalArgumentException if the fullness is out of range, the gap is 0 or negative, or the section is open
     */
    public static FullnessTime of(FlowRecord record, double fullness, Duration maximumGap) {
        Require.inRange("fullness", fullness, 0, LARGEST_FULLNESS, "");
        long gap = EpochNanos.positive("maximumGap", maximumGap);
        PipeMonitor monitor = record.monitors().first();
        if (Double.isInfinite(monitor.soffit())) {
            throw new IllegalArgumentException("record must be of a closed section, was of " + monitor);
        }
        double limit = fullness * monitor.soffit();
        long above = 0;
        long covered = 0;
        long since = 0;
        boolean known = false;
        boolean wasAbove = false;
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        long[] times = keeper.times(record.level());
        double[] levels = keeper.values(record.level());
        byte[] qualities = keeper.qualities(record.level());
        byte suspect = Quality.SUSPECT.toCode();
        boolean[] belowAny = FlowCounts.where(
                condition -> condition == DepthCondition.DRY || condition == DepthCondition.BELOW_SENSOR);
        for (int i = 0; i < times.length; i++) {
            if (qualities[i] < suspect || isKnownBelow(record, i, limit)) {
                long time = times[i];
                if (known && time - since <= gap) {
                    covered += time - since;
                    above += wasAbove ? time - since : 0;
                }
                since = time;
                known = true;
                wasAbove = !belowAny[record.code(i)] && SurchargeRule.isAbove(levels[i], limit);
            }
        }
        return new FullnessTime(fullness, Duration.ofNanos(above), Duration.ofNanos(covered), total(record));
    }

    /** Whether the water is known to stand below the limit, though not how high. */
    private static boolean isKnownBelow(FlowRecord record, int index, double limit) {
        return record.depthCondition(index) == DepthCondition.BELOW_SENSOR
                && limit >= record.monitor(index).sensorOffset()
                && record.depthQuality(index).isUsable();
    }

    private static Duration total(FlowRecord record) {
        int size = record.size();
        return size == 0
                ? Duration.ZERO
                : Duration.between(record.level().time(0), record.level().time(size - 1));
    }

    /**
     * Returns the share of the covered time that was above.
     *
     * @return share in [0, 1]; NaN if no time is covered
     */
    public double share() {
        return ratio(above, covered);
    }

    /**
     * Returns the share of the record that is covered.
     *
     * @return share in [0, 1]; NaN if the record has no length
     */
    public double coverage() {
        return ratio(covered, total);
    }

    private static double ratio(Duration part, Duration whole) {
        return (double) part.toNanos() / whole.toNanos();
    }

    @Override
    public String toString() {
        String what = "FullnessTime[above " + Text.significant(fullness, 6) + " of the height for ";
        if (total.isZero()) {
            return what + "an unknown time: the record has no length]";
        }
        if (covered.isZero()) {
            return what + "an unknown time: none of " + Text.duration(total) + " covered]";
        }
        return what + Text.duration(above) + ", " + Text.fixed(100 * share(), 2) + " % of the "
                + Text.fixed(100 * coverage(), 1) + " % covered]";
    }
}
