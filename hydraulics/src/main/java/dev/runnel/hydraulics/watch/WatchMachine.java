package dev.runnel.hydraulics.watch;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import java.util.List;

/** The watch at work: readings to hours, hours to what is watched. */
final class WatchMachine implements Machine<SiteReading, WatchNotice, WatchState> {
    private final Findings findings = new Findings();
    private final HourlyWatch watch;
    private final HourGatherer gatherer;
    private final String baseline;
    private final MachineClock clock;
    private final HeldReadings held = new HeldReadings();
    private long last = Long.MIN_VALUE;

    WatchMachine(WatchRule rule) {
        this(rule, new MachineClock());
    }

    private WatchMachine(WatchRule rule, MachineClock clock) {
        this.clock = clock;
        this.watch = new HourlyWatch(rule, findings);
        this.gatherer = new HourGatherer(rule.baseline(), rule.monitors(), watch);
        // Enough to refuse the state of another baseline; the baseline itself is kept elsewhere.
        this.baseline = rule.baseline().interval() + "#"
                + Integer.toHexString(rule.baseline().toText().hashCode());
    }

    WatchMachine(WatchRule rule, WatchState state) {
        this(rule, state.values());
    }

    private WatchMachine(WatchRule rule, StateText text) {
        this(rule, MachineClock.from(text));
        if (!text.text("baseline").equals(baseline)) {
            throw new IllegalArgumentException(
                    "state must be one of the baseline " + baseline + ", was one of " + text.text("baseline"));
        }
        last = text.count("lastTaken");
        held.read(text);
        findings.read(text);
        gatherer.read(text.text("gatherer"));
        watch.read(text.text("watch"));
    }

    @Override
    public List<WatchNotice> next(SiteReading reading) {
        return next(EpochNanos.of(reading.time()), reading.depth(), reading.velocity(), reading.rain());
    }

    List<WatchNotice> next(long time, double depth, double velocity, double rain) {
        clock.requireAfter(time);
        if (!held.isEmpty() && judgesHeld(time)) {
            held.add(time, depth, velocity, rain);
            if (held.isConfirmed()) {
                held.give(this::take);
            }
            return findings.take();
        }
        // The first stamps as well: a false one years ahead would make the watch deaf until then.
        if (last == Long.MIN_VALUE || HeldReadings.leaps(last, time)) {
            held.add(time, depth, velocity, rain);
        } else {
            take(time, depth, velocity, rain);
        }
        return findings.take();
    }

    /** Returns whether a reading goes on with those that are held; if not, these are taken or left out, or it is refused. */
    @Override
    public String toString() {
        return "WatchMachine[" + clock + "]";
    }

    private boolean judgesHeld(long time) {
        boolean beginning = last == Long.MIN_VALUE;
        if (time == held.last() || beginning && time < held.last() && !held.leapsBack(time)) {
            throw new IllegalArgumentException(
                    "time must be after " + EpochNanos.toInstant(held.last()) + ", was " + EpochNanos.toInstant(time));
        }
        if (time < held.last()) {
            leaveOut("the next stamp was " + EpochNanos.toInstant(time));
            return false;
        }
        if (beginning && HeldReadings.leaps(held.last(), time)) {
            // The stamp that leaps is the one to doubt.
            held.give(this::take);
            return false;
        }
        return true;
    }

    private void take(long time, double depth, double velocity, double rain) {
        clock.moveTo(time);
        last = time;
        gatherer.add(time, depth, velocity, rain);
    }

    /** Leaves out what is held, and says so: nothing is lost silently. */
    private void leaveOut(String why) {
        boolean before = last != Long.MIN_VALUE;
        long when = before ? last : held.last();
        Track track = new Track(0, FindingName.FALSE_STAMPS, when, when);
        track.open = false;
        track.closed = when;
        track.detail = held.count() + (held.count() == 1 ? " reading was" : " readings were")
                + " left out: stamped from " + EpochNanos.toInstant(held.first()) + " to "
                + EpochNanos.toInstant(held.last())
                + (before ? ", after " + EpochNanos.toInstant(last) : ", at the beginning")
                + "; " + why;
        findings.report(WatchNotice.Kind.NOTED, when, track);
        held.drop();
    }

    @Override
    public List<WatchNotice> finish() {
        clock.end();
        if (last == Long.MIN_VALUE) {
            held.give(this::take);
        } else if (!held.isEmpty()) {
            leaveOut("the record ended before more of them came");
        }
        gatherer.end();
        watch.finish();
        return findings.take();
    }

    @Override
    public WatchState state() {
        StateText text =
                clock.into(StateText.of(WatchState.NAME, WatchState.VERSION).with("baseline", baseline));
        text.with("lastTaken", last);
        held.write(text);
        findings.write(text);
        return WatchState.of(text.with("gatherer", gatherer.write().toString())
                .with("watch", watch.write().toString()));
    }
}
