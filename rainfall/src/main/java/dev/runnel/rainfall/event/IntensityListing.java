package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The intensity-duration listing of a storm or a record: for each duration the time for which the rain was at least as heavy as any intensity,
 * and the greatest depth and intensity in one window of that length.
 *
 * @param rows one for each duration, the shortest first
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record IntensityListing(List<Row> rows) {
    /**
     * One duration.
     *
     * @param peak deepest window of that length
     * @param heaviestMmPerHour intensity that the rain reached or exceeded for that long in all, steps in any order, mm/h; 0 if it rained
     *     less long
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Row(PeakDepth peak, double heaviestMmPerHour) {
        /**
         * Checks that nothing is missing.
         *
         * @param peak deepest window of that length
         * @param heaviestMmPerHour intensity that the rain reached or exceeded for that long in all, steps in any order, mm/h; 0 if it rained less long
         */
        public Row {
            Objects.requireNonNull(peak, "peak");
        }

        /**
         * Returns the duration.
         *
         * @return length of the window
         */
        public Duration duration() {
            return peak.duration();
        }

        /**
         * Returns when the deepest window begins.
         *
         * @return its start
         */
        public Instant start() {
            return peak.start();
        }

        @Override
        public String toString() {
            return Text.duration(duration()) + ": " + (peak.isAtLeast() ? "at least " : "")
                    + Text.significant(peak.depthMm(), 4) + " mm, "
                    + Text.significant(peak.intensityMmPerHour(), 4) + " mm/h in one piece, "
                    + Text.significant(heaviestMmPerHour, 4) + " mm/h in all";
        }
    }

    /**
     * Copies the list.
     *
     * @param rows one for each duration
     */
    public IntensityListing {
        Objects.requireNonNull(rows, "rows");
        rows = List.copyOf(rows);
    }

    /**
     * Lists a storm.
     *
     * @param event the event
     * @param rain the record it was found in, mm in each step
     * @param durations durations, each no shorter than a step; at least one
     * @return the listing of the steps that share time with the event
     * @throws IllegalArgumentException if a duration is refused, a depth is negative, or the record has no step of the event
     */
    public static IntensityListing of(RainfallEvent event, RegularSeries rain, List<Duration> durations) {
        return of(EventSteps.of(rain, event.interval()).rain(), durations);
    }

    /**
     * Lists a record.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param durations durations, each no shorter than a step; at least one
     * @return the listing
     * @throws IllegalArgumentException if a duration is refused, a depth is negative, or the record has no step
     */
    public static IntensityListing of(RegularSeries rain, List<Duration> durations) {
        List<Duration> sorted = durations.stream().sorted().toList();
        double[] falling = rain.toValues();
        for (int i = 0; i < falling.length; i++) {
            falling[i] = Double.isNaN(falling[i]) ? 0 : -falling[i];
        }
        Arrays.sort(falling);
        double hours = Rain.hours(rain.step());
        List<Row> rows = new ArrayList<>();
        for (PeakDepth peak : SlidingMaximum.of(sorted).peaks(rain)) {
            long steps = -Math.floorDiv(-peak.duration().toNanos(), rain.step().toNanos());
            double least = steps > falling.length ? 0 : -falling[(int) steps - 1];
            rows.add(new Row(peak, Math.abs(least) / hours));
        }
        return new IntensityListing(rows);
    }

    @Override
    public String toString() {
        return "IntensityListing" + rows;
    }
}
