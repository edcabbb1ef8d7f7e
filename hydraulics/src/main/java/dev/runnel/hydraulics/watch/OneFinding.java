package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Optional;

/** The one finding at a time of a machine that looks for one thing: the last that was opened, which may have closed. */
final class OneFinding {
    private final Findings findings;
    private Optional<Track> track = Optional.empty();

    OneFinding(Findings findings) {
        this.findings = findings;
    }

    boolean isOpen() {
        return track.map(each -> each.open).orElse(false);
    }

    /** The last one, open or not. */
    Optional<Track> last() {
        return track;
    }

    /** Opens one, which is told only by {@link #report}. */
    Track open(FindingName name, long since, long end) {
        Track opened = findings.open(name, since, end);
        track = Optional.of(opened);
        return opened;
    }

    /** Makes one that was told by others its own. */
    Track take(Track given) {
        track = Optional.of(given);
        return given;
    }

    /** Gives the last one away; it is no longer its own. */
    Optional<Track> give() {
        Optional<Track> given = track;
        track = Optional.empty();
        return given;
    }

    void report(WatchNotice.Kind kind, long end) {
        findings.report(kind, end, track.orElseThrow());
    }

    void close(long when, long end) {
        track.orElseThrow().close(when);
        report(WatchNotice.Kind.CLOSED, end);
    }

    /** Ends the record: what is open is told to stand. */
    void finish(long end) {
        if (isOpen()) {
            report(WatchNotice.Kind.STANDING, end);
        }
    }

    void write(StateText text, String key) {
        text.with(key, track.map(each -> each.write().toString()).orElse(""));
    }

    void read(StateText text, String key) {
        String found = text.text(key);
        track = found.isEmpty() ? Optional.empty() : Optional.of(Track.read(found));
    }
}
