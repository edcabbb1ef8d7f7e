package dev.runnel.timeseries.quality;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;

/** The bound on all windows, so that a machine stays small. */
final class Windows {
    private static final Duration LONGEST = Duration.ofDays(31);

    private Windows() {}

    static void require(Duration window) {
        EpochNanos.positive("window", window);
        if (window.compareTo(LONGEST) > 0) {
            throw new IllegalArgumentException("window must be at most 31 days, was " + Text.exactDuration(window));
        }
    }
}
