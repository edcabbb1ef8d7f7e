package dev.runnel.timeseries.quality;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A record without the readings whose stamps lie far from all others, and those readings by name. Immutable and
 * thread-safe.
 *
 * <p>The record is cut wherever two readings are further apart than a distance. A piece of fewer than ten readings, and of
 * less than a hundredth of all, is set aside (chosen here): one line of a clock that was reset to 1970 or 2099. The largest
 * piece always stays.
 *
 * @param series the record without them
 * @param setAside the readings set aside, in order of time
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StrayStamps(Series series, List<Reading> setAside) {
    /** Fewer readings than this and a hundredth of all may be stray; chosen here. */
    private static final int FEW = 10;

    private static final int SHARE = 100;

    /**
     * Copies the list.
     *
     * @param series the record without them
     * @param setAside the readings set aside
     */
    public StrayStamps {
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(setAside, "setAside");
        setAside = List.copyOf(setAside);
    }

    /**
     * Sets stray readings aside.
     *
     * @param series the record
     * @param distance how far from all others a piece must lie; greater than 0, for example 90 days
     * @return the record without them, and them
     * @throws IllegalArgumentException if the distance is not greater than 0
     */
    public static StrayStamps in(Series series, Duration distance) {
        long apart = EpochNanos.positive("distance", distance);
        List<int[]> pieces = new ArrayList<>();
        int from = 0;
        int largest = 0;
        for (int i = 1; i <= series.size(); i++) {
            boolean ends = i == series.size()
                    || Long.compareUnsigned(series.epochNanos(i) - series.epochNanos(i - 1), apart) > 0;
            if (ends) {
                pieces.add(new int[] {from, i});
                largest = Math.max(largest, i - from);
                from = i;
            }
        }
        int most = largest;
        if (pieces.stream().noneMatch(piece -> isStray(piece, most, series.size()))) {
            return new StrayStamps(series, List.of());
        }
        SeriesBuilder kept = Series.builder();
        List<Reading> aside = new ArrayList<>();
        for (int[] piece : pieces) {
            boolean stray = isStray(piece, most, series.size());
            for (int i = piece[0]; i < piece[1]; i++) {
                if (stray) {
                    aside.add(series.get(i));
                } else {
                    kept.add(series.epochNanos(i), series.value(i), series.quality(i));
                }
            }
        }
        return new StrayStamps(kept.build(), aside);
    }

    private static boolean isStray(int[] piece, int most, int all) {
        int size = piece[1] - piece[0];
        return size < most && size < FEW && (long) size * SHARE < all;
    }

    @Override
    public String toString() {
        return "StrayStamps[" + series + ", " + setAside.size() + " set aside"
                + (setAside.isEmpty()
                        ? ""
                        : ": " + Text.quoted(setAside.get(0).toString()) + (setAside.size() > 1 ? " and others" : ""))
                + "]";
    }
}
