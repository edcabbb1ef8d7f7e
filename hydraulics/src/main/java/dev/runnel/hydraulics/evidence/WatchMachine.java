package dev.runnel.hydraulics.evidence;

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

    WatchMachine(WatchRule rule) {
        this(rule, new MachineClock());
    }

    private WatchMachine(WatchRule rule, MachineClock clock) {
        this.clock = clock;
        this.watch = new HourlyWatch(rule, findings);
        this.gatherer = new HourGatherer(
                rule.baseline().monitor(), rule.baseline().depthFrozen, rule.baseline().velocityFrozen, watch);
        // Enough to refuse the state of another baseline; the baseline itself is kept elsewhere.
        this.baseline = rule.baseline().interval() + "#"
                + Integer.toHexString(rule.baseline().toText().hashCode());
    }

    WatchMachine(WatchRule rule, WatchState state) {
        this(rule, MachineClock.from(state.values()));
        StateText text = state.values();
        if (!text.text("baseline").equals(baseline)) {
            throw new IllegalArgumentException(
                    "state must be one of the baseline " + baseline + ", was one of " + text.text("baseline"));
        }
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
        clock.moveTo(time);
        gatherer.add(time, depth, velocity, rain);
        return findings.take();
    }

    @Override
    public List<WatchNotice> finish() {
        clock.end();
        gatherer.end();
        watch.finish();
        return findings.take();
    }

    @Override
    public WatchState state() {
        StateText text =
                clock.into(StateText.of(WatchState.NAME, WatchState.VERSION).with("baseline", baseline));
        findings.write(text);
        return WatchState.of(text.with("gatherer", gatherer.write().toString())
                .with("watch", watch.write().toString()));
    }
}
