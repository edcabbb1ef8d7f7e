package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import java.util.ArrayList;
import java.util.List;

/** Numbers the findings of a site and gathers what becomes known of them. */
final class Findings {
    private int last;
    private List<WatchNotice> events = new ArrayList<>();

    Track open(FindingName name, long since, long found) {
        return new Track(++last, name, since, found);
    }

    void report(WatchNotice.Kind kind, long time, Track track) {
        events.add(new WatchNotice(kind, EpochNanos.toInstant(time), track.finding()));
    }

    /** What has become known since the last call. */
    List<WatchNotice> take() {
        if (events.isEmpty()) {
            return List.of();
        }
        List<WatchNotice> taken = List.copyOf(events);
        events = new ArrayList<>();
        return taken;
    }

    void write(StateText text) {
        text.with("lastNumber", last);
    }

    void read(StateText text) {
        last = text.index("lastNumber");
    }
}
