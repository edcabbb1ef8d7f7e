package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** The durations over which peaks are measured. */
final class PeakDurations {
    /** What is measured when nobody says: the usual rows of a depth-duration-frequency table up to a day. */
    static final List<Duration> USUAL = List.of(
            Duration.ofMinutes(5),
            Duration.ofMinutes(10),
            Duration.ofMinutes(15),
            Duration.ofMinutes(30),
            Duration.ofHours(1),
            Duration.ofHours(2),
            Duration.ofHours(3),
            Duration.ofHours(6),
            Duration.ofHours(12),
            Duration.ofHours(24));

    private PeakDurations() {}

    static List<Duration> checked(List<Duration> durations) {
        if (durations.isEmpty()) {
            throw new IllegalArgumentException("durations must be at least one, were none");
        }
        durations.forEach(duration -> EpochNanos.positive("duration", duration));
        return List.copyOf(durations);
    }

    static void requireNotShorter(List<Duration> durations, Duration step) {
        for (Duration duration : durations) {
            if (duration.compareTo(step) < 0) {
                throw new IllegalArgumentException("duration must not be shorter than the step of the record, "
                        + Text.exactDuration(step) + ", was " + Text.exactDuration(duration));
            }
        }
    }

    /** The usual ones that the step can resolve, and the step itself in front. */
    static List<Duration> usualFrom(Duration step) {
        List<Duration> durations = new ArrayList<>();
        durations.add(step);
        for (Duration usual : USUAL) {
            if (usual.compareTo(step) > 0) {
                durations.add(usual);
            }
        }
        return List.copyOf(durations);
    }
}
