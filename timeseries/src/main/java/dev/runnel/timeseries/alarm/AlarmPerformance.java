package dev.runnel.timeseries.alarm;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How a set of alarms performed over a period, in the figures that alarm management looks at. Immutable and thread-safe.
 *
 * <p>An alarm counts by its activation. It chatters if it and the two before it of the same alarm were active within one
 * minute; it stands (is stale) if it was active for longer than 24 hours; a flood is ten minutes with ten alarms or more.
 * These limits are those of ANSI/ISA-18.2 as commonly quoted, from memory.
 *
 * @param period the period
 * @param alarms activations in it, of all alarms
 * @param perDay activations a day of the period
 * @param mostInTenMinutes activations in the worst ten minutes that begin with one
 * @param floods activations that lie in ten minutes with ten or more, the first of them included
 * @param chattering activations that complete three within a minute
 * @param standing alarms longer than 24 hours, those still active at the end of the period counted to there
 * @param timeActive sum of the times in alarm, cut to the period
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record AlarmPerformance(
        Interval period,
        int alarms,
        double perDay,
        int mostInTenMinutes,
        int floods,
        int chattering,
        int standing,
        Duration timeActive) {
    /**
     * Checks that nothing is missing.
     *
     * @param period the period
     * @param alarms activations in it, of all alarms
     * @param perDay activations a day of the period
     * @param mostInTenMinutes activations in the worst ten minutes that begin with one
     * @param floods activations that lie in ten minutes with ten or more, the first of them included
     * @param chattering activations that complete three within a minute
     * @param standing alarms longer than 24 hours, those still active at the end of the period counted to there
     * @param timeActive sum of the times in alarm, cut to the period
     */
    public AlarmPerformance {
        Objects.requireNonNull(period, "period");
        Objects.requireNonNull(timeActive, "timeActive");
    }

    /** Limits of ANSI/ISA-18.2 as commonly quoted, from memory. */
    private static final Duration CHATTER = Duration.ofMinutes(1);

    private static final Duration STANDING = Duration.ofHours(24);
    private static final Duration FLOOD = Duration.ofMinutes(10);
    private static final int FLOOD_COUNT = 10;

    /**
     * Works out the figures.
     *
     * @param alarms what each alarm raised, in order of time; one list for each alarm
     * @param period the period, not empty
     * @return the figures
     * @throws IllegalArgumentException if the period is empty
     */
    public static AlarmPerformance of(List<List<AlarmEvent>> alarms, Interval period) {
        if (period.isEmpty()) {
            throw new IllegalArgumentException("period must not be empty, was " + period);
        }
        List<Instant> activations = new ArrayList<>();
        int chattering = 0;
        int standing = 0;
        Duration active = Duration.ZERO;
        for (List<AlarmEvent> each : alarms) {
            for (int i = 0; i < each.size(); i++) {
                AlarmEvent event = each.get(i);
                Instant end = event.returned().orElse(period.end());
                Instant from = later(event.activation(), period.start());
                Instant to = end.isBefore(period.end()) ? end : period.end();
                if (from.isBefore(to)) {
                    active = active.plus(Duration.between(from, to));
                    standing += Duration.between(event.activation(), to).compareTo(STANDING) > 0 ? 1 : 0;
                }
                if (period.contains(event.activation())) {
                    activations.add(event.activation());
                    boolean third = i >= 2
                            && Duration.between(each.get(i - 2).activation(), event.activation())
                                            .compareTo(CHATTER)
                                    <= 0;
                    chattering += third ? 1 : 0;
                }
            }
        }
        activations.sort(Instant::compareTo);
        int most = 0;
        boolean[] flooded = new boolean[activations.size()];
        int to = 0;
        for (int from = 0; from < activations.size(); from++) {
            while (to < activations.size()
                    && activations.get(to).isBefore(activations.get(from).plus(FLOOD))) {
                to++;
            }
            most = Math.max(most, to - from);
            for (int k = from; k < to && to - from >= FLOOD_COUNT; k++) {
                flooded[k] = true;
            }
        }
        int floods = 0;
        for (boolean each : flooded) {
            floods += each ? 1 : 0;
        }
        double days = period.hours() / 24;
        return new AlarmPerformance(
                period, activations.size(), activations.size() / days, most, floods, chattering, standing, active);
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }

    @Override
    public String toString() {
        return "AlarmPerformance[" + alarms + " alarms, " + Text.significant(perDay, 3) + " a day, at most "
                + mostInTenMinutes + " in 10 min, " + floods + " in floods, " + chattering + " chattering, " + standing
                + " standing, " + Text.duration(timeActive) + " in alarm]";
    }
}
