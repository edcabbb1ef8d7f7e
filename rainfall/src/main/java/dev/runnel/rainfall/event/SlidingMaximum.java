package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The greatest depth in any window of time, for a list of durations. Immutable and thread-safe.
 *
 * <p>The window slides freely: it need not begin on the hour, nor on a step. Rain is taken as steady within a step, so
 * that the greatest window begins or ends where a step does; with k whole steps and a fraction f of one in the window,
 *
 * <blockquote>max over i of ( P<sub>i</sub> + … + P<sub>i+k−1</sub> + f · max(P<sub>i−1</sub>, P<sub>i+k</sub>) )</blockquote>
 *
 * <p>A duration shorter than the step is refused, since the record cannot tell what happened inside a step. One as long
 * as the record, or longer, gives the sum of the record; of a longer one it is a lower bound only.
 *
 * <p>A missing step counts as no rain. If there is one anywhere in the record, every result is a lower bound and says so
 * ({@link PeakDepth#isAtLeast}): the deepest window may be the one that is not known.
 *
 * <p>Accuracy: the depth of the window found is correct to 2 ulp. Two windows whose depths differ by less than 1e-15 of
 * the depth of the whole record may be taken for each other.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SlidingMaximum {
    private final List<Duration> durations;

    private SlidingMaximum(List<Duration> durations) {
        this.durations = durations;
    }

    /**
     * Returns the maximum for the given durations.
     *
     * @param durations window lengths; each greater than 0, at least one
     * @return the maximum
     * @throws IllegalArgumentException if there is no duration, or one is not greater than 0
     */
    public static SlidingMaximum of(Duration... durations) {
        Objects.requireNonNull(durations, "durations");
        return of(Arrays.asList(durations));
    }

    /**
     * Returns the maximum for the given durations.
     *
     * @param durations window lengths; each greater than 0, at least one
     * @return the maximum
     * @throws IllegalArgumentException if there is no duration, or one is not greater than 0
     */
    public static SlidingMaximum of(List<Duration> durations) {
        return new SlidingMaximum(PeakDurations.checked(durations));
    }

    /**
     * Returns the greatest depths in a record.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @return one peak for each duration, in the order asked for
     * @throws IllegalArgumentException if a depth is negative, the record has no step, or a duration is shorter than a
     *     step
     */
    public List<PeakDepth> peaks(RegularSeries rain) {
        if (rain.size() == 0) {
            throw new IllegalArgumentException("rain must have at least one step, had none");
        }
        PeakDurations.requireNotShorter(durations, rain.step());
        Duration length = rain.interval().duration();
        WindowSearch search = new WindowSearch(rain);
        List<PeakDepth> peaks = new ArrayList<>(durations.size());
        for (Duration duration : durations) {
            PeakDepth peak = search.peak(duration);
            peaks.add(search.hasMissing() || duration.compareTo(length) > 0 ? peak.asAtLeast() : peak);
        }
        return List.copyOf(peaks);
    }

    @Override
    public String toString() {
        return "SlidingMaximum" + durations.stream().map(Text::duration).toList();
    }
}
