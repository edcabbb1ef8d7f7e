package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

class DurationPeaksProperties {
    private static final Instant START = Instant.parse("2021-01-01T00:00:00Z");
    private static final Duration HOUR = Duration.ofHours(1);

    /** The windows of random rain, by trying every one of them over and over. */
    @Property(tries = 50)
    void agreesWithASearchByHand(
            @ForAll @Size(min = 30, max = 120) List<@IntRange(max = 9) Integer> tenths,
            @ForAll @IntRange(min = 1, max = 7) int length,
            @ForAll @IntRange(max = 5) int apart) {
        double[] depths = tenths.stream().mapToDouble(t -> t / 10.0).toArray();
        TreeMap<Duration, Double> thresholds = new TreeMap<>();
        thresholds.put(Duration.ofHours(length), 1.2);
        DurationPeaks peaks = DurationPeaks.from(rain(depths), thresholds, Duration.ofHours(apart));
        TreeSet<Integer> taken = new TreeSet<>();
        while (true) {
            int best = -1;
            int most = 12;
            for (int i = 0; i + length <= depths.length; i++) {
                int at = i;
                int sum = tenths.subList(i, i + length).stream()
                        .mapToInt(Integer::intValue)
                        .sum();
                if (sum > most && taken.stream().allMatch(t -> Math.abs(t - at) >= length + apart)) {
                    best = i;
                    most = sum;
                }
            }
            if (best < 0) {
                break;
            }
            taken.add(best);
        }
        assertThat(starts(peaks.windows(Duration.ofHours(length)))).containsExactlyElementsOf(taken);
    }

    private static List<Integer> starts(List<PeakDepth> windows) {
        return windows.stream()
                .map(window -> (int) Duration.between(START, window.start()).toHours())
                .toList();
    }

    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(START, HOUR, depths);
    }
}
