package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Numbers the findings of a site and gathers what becomes known of them. */
final class Findings {
    private int last;
    private List<WatchNotice> events = new ArrayList<>();
    private Optional<LevelChannels> channels = Optional.empty();
    private Optional<LevelChannels.Usual> usual = Optional.empty();

    /** Says of each finding of a level alone what the channels of the level say. */
    void say(LevelChannels level, LevelChannels.Usual usualLevel) {
        channels = Optional.of(level);
        usual = Optional.of(usualLevel);
    }

    Track open(FindingName name, long since, long found) {
        return new Track(++last, name, since, found);
    }

    /** Frees the number of the last one opened, which was never told. */
    void withdraw(Track track) {
        if (track.number == last) {
            last--;
        }
    }

    void report(WatchNotice.Kind kind, long time, Track track) {
        Finding finding = track.finding();
        if (finding.isLevelOnly() && channels.isPresent()) {
            String said = channels.orElseThrow().since(track.since, usual.orElseThrow());
            finding = finding.withDetail(finding.detail() + "; " + said);
        }
        events.add(new WatchNotice(kind, EpochNanos.toInstant(time), finding));
    }

    /** Ends a finding at a time that is known since another. */
    void close(Track track, long at, long known) {
        track.close(at);
        report(WatchNotice.Kind.CLOSED, known, track);
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
