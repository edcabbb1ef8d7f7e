package dev.runnel.timeseries.infiltration;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.DailyTotal;
import dev.runnel.timeseries.balance.DailyTotals;
import dev.runnel.timeseries.balance.MeasuredVolume;
import dev.runnel.timeseries.internal.TimeIntegral;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Finds the smallest flow of each night: the smallest mean over a window, an hour unless set, that begins at a reading and
 * lies between two times of the local night. Immutable and thread-safe.
 *
 * <p>A window counts if the record covers at least 0.9 of it (common practice), readings no further apart than 1.5 times the
 * usual spacing being joined by a line. A mean over an hour, and not one reading: a single low value is as often a fault.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class NightMinimum {
    /** Share of a window that must be measured; common practice. */
    private static final double LEAST_COVERAGE = 0.9;

    private final LocalTime from;
    private final LocalTime to;
    private final ZoneId zone;
    private final Duration window;

    private NightMinimum(LocalTime from, LocalTime to, ZoneId zone, Duration window) {
        this.from = from;
        this.to = to;
        this.zone = zone;
        this.window = window;
    }

    /**
     * Returns the rule for a stretch of the night.
     *
     * @param from begin of the stretch, local time
     * @param to its end, local time; if not after the begin, on the next day
     * @param zone the zone
     * @return the rule, with a window of an hour
     */
    public static NightMinimum between(LocalTime from, LocalTime to, ZoneId zone) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Objects.requireNonNull(zone, "zone");
        return new NightMinimum(from, to, zone, Duration.ofHours(1));
    }

    /**
     * Returns the rule with another window.
     *
     * @param window time over which the flow is averaged; greater than 0, at most 24 hours
     * @return the new rule
     * @throws IllegalArgumentException if it is out of its range
     */
    public NightMinimum withWindow(Duration window) {
        Require.inRange("window in hours", EpochNanos.positive("window", window) / 3.6e12, 0, 24, "");
        return new NightMinimum(from, to, zone, window);
    }

    /**
     * Finds the night flows of a record.
     *
     * @param flow readings of a flow, m³/s
     * @return one for each night in which a window is covered, in order of time
     */
    public List<NightFlow> of(Series flow) {
        if (flow.size() < 2) {
            return List.of();
        }
        Duration gap = Duration.ofNanos(TimeIntegral.usualGap(flow));
        List<NightFlow> nights = new ArrayList<>();
        for (DailyTotal day : DailyTotals.in(zone).totals(flow)) {
            LocalDate date = day.date();
            LocalDate end = to.isAfter(from) ? date : date.plusDays(1);
            Instant begin = date.atTime(from).atZone(zone).toInstant();
            smallest(flow, begin, end.atTime(to).atZone(zone).toInstant(), gap)
                    .ifPresent(found -> nights.add(new NightFlow(
                            date, found.interval(), mean(found), day.isComplete() ? day.mean() : Double.NaN)));
        }
        return List.copyOf(nights);
    }

    private Optional<MeasuredVolume> smallest(Series flow, Instant begin, Instant end, Duration gap) {
        Optional<MeasuredVolume> best = Optional.empty();
        for (int i = flow.firstIndexAtOrAfter(begin); i < flow.size(); i++) {
            Instant start = flow.time(i);
            if (start.plus(window).isAfter(end)) {
                break;
            }
            MeasuredVolume volume = MeasuredVolume.of(flow, Interval.of(start, window), gap);
            boolean smaller = best.isEmpty() || mean(volume) < mean(best.get());
            if (volume.coverage() >= LEAST_COVERAGE && smaller) {
                best = Optional.of(volume);
            }
        }
        return best;
    }

    private double mean(MeasuredVolume volume) {
        return volume.measured() / (volume.coverage() * (window.toNanos() / 1e9));
    }

    @Override
    public String toString() {
        return "NightMinimum[" + from + " to " + to + " in " + zone + ", over " + Text.duration(window) + "]";
    }
}
