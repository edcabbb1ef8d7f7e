package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import org.apiguardian.api.API;

/**
 * A monitor whose settings change with time: a bed of sediment that grows or is taken out, a sensor that is moved, a
 * roughness found anew. Immutable and thread-safe.
 *
 * <p>Each reading is turned into flow by the monitor that stood there at its instant, as {@link PipeMonitor} does it. The
 * clean section stays the same all the time; what may change is the bed in it, the conduit's law and gradient, the height of
 * the sensor and the velocity factor.
 *
 * <p>What this is not: a course between two settings. A bed that grew between two visits is a step from one stretch to the
 * next here; state more stretches where that is too coarse.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class MonitorHistory {
    /**
     * A time in which the monitor stayed as it was.
     *
     * @param interval the time, half-open
     * @param monitor the monitor
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Stretch(Interval interval, PipeMonitor monitor) {
        /**
         * Checks that nothing is missing.
         *
         * @param interval the time, half-open
         * @param monitor the monitor
         */
        public Stretch {
            Objects.requireNonNull(interval, "interval");
            Objects.requireNonNull(monitor, "monitor");
        }
    }

    /** From a time on, until the next one. */
    private record Since(long time, PipeMonitor monitor) {}

    /** In order of time; the first since ever, neighbours unequal. */
    private final List<Since> stretches;

    private MonitorHistory(List<Since> stretches) {
        this.stretches = List.copyOf(stretches);
    }

    /**
     * Returns the history of a monitor that never changed.
     *
     * @param monitor the monitor
     * @return the history
     */
    public static MonitorHistory of(PipeMonitor monitor) {
        Objects.requireNonNull(monitor, "monitor");
        return new MonitorHistory(List.of(new Since(Long.MIN_VALUE, monitor)));
    }

    /**
     * Returns the history with other settings in an interval. Of two that overlap the later one works on what the earlier
     * one made.
     *
     * @param interval when the settings were others; half-open, not empty, in 1677 to 2262
     * @param change gives the monitor with other settings; asked for each monitor that stood there in the interval
     * @return the new history
     * @throws IllegalArgumentException if the interval is empty or out of 1677 to 2262, the change itself refuses, or it
     *     gives a monitor in another clean section
     */
    public MonitorHistory with(Interval interval, UnaryOperator<PipeMonitor> change) {
        Objects.requireNonNull(change, "change");
        if (interval.isEmpty()) {
            throw new IllegalArgumentException("interval must not be empty, was " + interval);
        }
        long from = EpochNanos.of(interval.start());
        long to = EpochNanos.of(interval.end());
        List<Since> cut = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            Since each = stretches.get(i);
            long end = end(i);
            if (each.time < from) {
                add(cut, each);
            }
            if (end > from && each.time < to) {
                add(cut, new Since(Math.max(each.time, from), changed(each.monitor, change)));
            }
            if (end > to) {
                add(cut, new Since(Math.max(each.time, to), each.monitor));
            }
        }
        return new MonitorHistory(cut);
    }

    private static void add(List<Since> list, Since each) {
        if (list.isEmpty() || !list.get(list.size() - 1).monitor.equals(each.monitor)) {
            list.add(each);
        }
    }

    private static PipeMonitor changed(PipeMonitor monitor, UnaryOperator<PipeMonitor> change) {
        PipeMonitor changed = Objects.requireNonNull(change.apply(monitor), "change must give a monitor, gave null");
        CrossSection clean = monitor.conduit().section().withoutSediment();
        if (!changed.conduit().section().withoutSediment().equals(clean)) {
            throw new IllegalArgumentException("change must keep the clean section, " + clean + ", gave " + changed);
        }
        return changed;
    }

    private long end(int stretch) {
        return stretch + 1 < stretches.size() ? stretches.get(stretch + 1).time : Long.MAX_VALUE;
    }

    /**
     * Returns the monitor at an instant.
     *
     * @param time the instant, in 1677 to 2262
     * @return the monitor with the settings of that time
     * @throws IllegalArgumentException if the instant is out of 1677 to 2262
     */
    public PipeMonitor at(Instant time) {
        return at(EpochNanos.of(time));
    }

    PipeMonitor at(long time) {
        return stretches.get(stretch(time)).monitor;
    }

    /** The first reading after one that was made with other settings. */
    int endOfSettings(Series clock, int from) {
        int stretch = stretch(clock.epochNanos(from));
        if (stretch == stretches.size() - 1) {
            return clock.size();
        }
        int to = from + 1;
        while (to < clock.size() && clock.epochNanos(to) < end(stretch)) {
            to++;
        }
        return to;
    }

    private int stretch(long time) {
        int low = 0;
        int high = stretches.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) >>> 1;
            if (stretches.get(middle).time <= time) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return low;
    }

    /**
     * Returns the monitor before any change. Its clean section is that of all times.
     *
     * @return the first monitor
     */
    public PipeMonitor first() {
        return stretches.get(0).monitor;
    }

    /**
     * Tells whether the monitor never changed.
     *
     * @return true if there is one monitor for all times
     */
    public boolean isConstant() {
        return stretches.size() == 1;
    }

    /**
     * Returns the times in which the monitor stayed as it was.
     *
     * @param within the time to look at; half-open, in 1677 to 2262
     * @return stretches that fill it, in order of time; none if it is empty
     * @throws IllegalArgumentException if it is out of 1677 to 2262
     */
    public List<Stretch> stretches(Interval within) {
        long from = EpochNanos.of(within.start());
        long to = EpochNanos.of(within.end());
        List<Stretch> found = new ArrayList<>();
        for (int i = 0; i < stretches.size(); i++) {
            long start = Math.max(stretches.get(i).time, from);
            long end = Math.min(end(i), to);
            if (start < end) {
                found.add(new Stretch(
                        Interval.of(EpochNanos.toInstant(start), EpochNanos.toInstant(end)), stretches.get(i).monitor));
            }
        }
        return List.copyOf(found);
    }

    /**
     * Returns the flow of two records with the same clock, as {@link PipeMonitor#flow(Series, Series)} does, each pair by
     * the monitor of its time.
     *
     * @param depth depth readings, m
     * @param velocity velocity readings, m/s, negative upstream
     * @return the flow, the level and what was done with every reading
     */
    public FlowRecord flow(Series depth, Series velocity) {
        Objects.requireNonNull(velocity, "velocity");
        return flow(ReadingPairs.atSameInstants(depth, velocity));
    }

    /**
     * Returns the flow of two records with unequal clocks, as {@link PipeMonitor#flow(Series, Series, Alignment)} does, each
     * pair by the monitor of its time.
     *
     * @param depth depth readings, m
     * @param velocity velocity readings, m/s, negative upstream
     * @param rule how a velocity at a depth reading's time is found among those at other times
     * @return the flow, the level and what was done with every depth reading
     */
    public FlowRecord flow(Series depth, Series velocity, Alignment rule) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(velocity, "velocity");
        return flow(ReadingPairs.atDepthTimes(depth, velocity, rule));
    }

    private FlowRecord flow(ReadingPairs pairs) {
        List<FlowRecord> parts = new ArrayList<>();
        int from = 0;
        while (from < pairs.size()) {
            int to = endOfSettings(pairs.clock(), from);
            parts.add(FlowRecord.of(
                    at(pairs.clock().epochNanos(from)),
                    from == 0 && to == pairs.size() ? pairs : pairs.between(from, to)));
            from = to;
        }
        return switch (parts.size()) {
            case 0 -> FlowRecord.of(first(), pairs);
            case 1 -> parts.get(0);
            default -> FlowRecord.joined(this, pairs, parts);
        };
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof MonitorHistory that && stretches.equals(that.stretches);
    }

    @Override
    public int hashCode() {
        return stretches.hashCode();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("MonitorHistory[" + first());
        for (Since each : stretches.subList(1, stretches.size())) {
            text.append("; from ")
                    .append(EpochNanos.toInstant(each.time))
                    .append(' ')
                    .append(each.monitor);
        }
        return text + "]";
    }
}
