package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.List;

/**
 * Times in which neither the monitor nor the gauge wrote anything. A gauge on a logger that was off looks like a drought, and its
 * dry days, its rain and the time before the next storm are then wrong.
 */
final class LoggerOff {
    /** Chosen here: in a shorter gap little rain is lost. */
    private static final Duration LEAST = Duration.ofDays(1);

    private LoggerOff() {}

    /** Returns the gaps of a day and longer without a sign of the gauge; none where its file shows that it was at work. */
    static List<Interval> of(SiteData data, RegularSeries rain) {
        if (data.rain().map(RainSource::showsDryTimes).orElse(true)) {
            return List.of();
        }
        return data.depth().gaps().stream()
                .filter(gap -> gap.duration().compareTo(LEAST) >= 0)
                .filter(gap -> !(rain.slice(gap).sum() > 0))
                .toList();
    }
}
