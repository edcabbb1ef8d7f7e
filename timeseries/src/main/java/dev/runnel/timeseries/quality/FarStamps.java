package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import org.apiguardian.api.API;

/**
 * Finds stamps that lie far from all others: what a reset clock or a damaged line leaves, and what would stretch a record of
 * weeks over decades. Immutable and thread-safe.
 *
 * <p>The record is cut wherever two stamps lie further apart than the distance. The part with the most stamps is the record,
 * and so is each other part with a fair share of the stamps: a logger that was away for a season and came back is no fault.
 * The stamps of the smaller parts are far.
 *
 * <p>Distance and share are chosen here: 30 days, and 1 % of the stamps of the largest part (at least 3).
 *
 * <p>What this is not: a test of clocks that are off by hours or days.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FarStamps {
    private static final double FAIR_SHARE = 0.01;
    private static final int FEWEST = 3;

    private final Duration distance;

    private FarStamps(Duration distance) {
        this.distance = distance;
    }

    /**
     * Returns the usual test, with a distance of 30 days.
     *
     * @return the test
     */
    public static FarStamps standard() {
        return new FarStamps(Duration.ofDays(30));
    }

    /**
     * Returns the test with another distance.
     *
     * @param distance how far a stamp must lie from the others to be far; greater than 0
     * @return the test
     * @throws IllegalArgumentException if it is not
     */
    public FarStamps withDistance(Duration distance) {
        EpochNanos.positive("distance", distance);
        return new FarStamps(distance);
    }

    /**
     * Tells which stamps belong to the record.
     *
     * @param epochNanos stamps, nanoseconds since 1970, not falling; not modified
     * @return for each stamp whether it belongs to the record; all true for an empty record
     * @throws IllegalArgumentException if a stamp lies before the one in front of it
     */
    public boolean[] keep(long[] epochNanos) {
        boolean[] kept = new boolean[epochNanos.length];
        List<int[]> parts = parts(epochNanos);
        int most = parts.stream().mapToInt(part -> part[1] - part[0]).max().orElse(0);
        double least = Math.min(most, Math.max(FEWEST, FAIR_SHARE * most));
        for (int[] part : parts) {
            Arrays.fill(kept, part[0], part[1], part[1] - part[0] >= least);
        }
        return kept;
    }

    /**
     * Returns the stamps that lie far from the record.
     *
     * @param epochNanos stamps, nanoseconds since 1970, not falling; not modified
     * @return the far ones, in order; empty for a sound record
     * @throws IllegalArgumentException if a stamp lies before the one in front of it
     */
    public List<Instant> far(long[] epochNanos) {
        boolean[] kept = keep(epochNanos);
        return LongStream.range(0, kept.length)
                .filter(i -> !kept[(int) i])
                .mapToObj(i -> EpochNanos.toInstant(epochNanos[(int) i]))
                .toList();
    }

    private List<int[]> parts(long[] times) {
        long most = distance.toNanos();
        List<int[]> parts = new ArrayList<>();
        int start = 0;
        for (int i = 1; i <= times.length; i++) {
            if (i < times.length && times[i] < times[i - 1]) {
                throw new IllegalArgumentException("epochNanos must not fall, were "
                        + EpochNanos.toInstant(times[i - 1]) + " and then " + EpochNanos.toInstant(times[i]));
            }
            // Unsigned, since stamps centuries apart differ by more than a long can hold.
            if (i == times.length || Long.compareUnsigned(times[i] - times[i - 1], most) > 0) {
                parts.add(new int[] {start, i});
                start = i;
            }
        }
        return parts;
    }

    @Override
    public String toString() {
        return "FarStamps[" + distance.toDays() + " d]";
    }
}
