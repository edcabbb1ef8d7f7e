package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * What the machines for steps and for tips keep in common: the event in progress, and what was dropped for want of depth.
 */
final class EventBook {
    private final EventSeparation rule;
    private final PeakTracker peaks;
    private final CompensatedSum depth;
    private final CompensatedSum dropped;
    private int droppedEvents;
    private boolean isOpen;
    private long from;
    private long to;

    EventBook(EventSeparation rule, List<Duration> durations, long step) {
        this.rule = rule;
        this.peaks = new PeakTracker(durations, step);
        this.depth = new CompensatedSum();
        this.dropped = new CompensatedSum();
    }

    /** Goes on from what {@link #into} wrote. */
    EventBook(EventSeparation rule, List<Duration> durations, long step, StateText state) {
        this.rule = rule;
        this.peaks = new PeakTracker(durations, step);
        requireSame("gap", rule.minimumInterEvent().toNanos(), state.count("gap"));
        requireSame("minimum", rule.minimumDepthMm(), state.number("minimum"));
        requireSame(
                "durations",
                durations.toString(),
                state.list("durations", Duration::parse).toString());
        this.dropped = CompensatedSum.ofParts(state.number("dropped-mm"), state.number("dropped-lost"));
        this.droppedEvents = state.index("dropped");
        this.isOpen = state.has("from");
        this.depth = isOpen
                ? CompensatedSum.ofParts(state.number("depth"), state.number("depth-lost"))
                : new CompensatedSum();
        if (isOpen) {
            from = state.count("from");
            to = state.count("to");
            peaks.from(state);
        }
        if (droppedEvents < 0 || to < from || !(depth.value() >= 0) || !(dropped.value() >= 0)) {
            throw new IllegalArgumentException(
                    "state must be that of a machine of the same rule, whose depths and counts these cannot be");
        }
    }

    /** Writes all that is known, the rule too, so that a state of another one is refused. */
    StateText into(StateText state) {
        state.with("gap", rule.minimumInterEvent().toNanos())
                .with("minimum", rule.minimumDepthMm())
                .with(
                        "durations",
                        peaks.durations().stream().map(Duration::toString).toList())
                .with("dropped", droppedEvents)
                .with("dropped-mm", dropped.sum())
                .with("dropped-lost", dropped.lost());
        if (isOpen) {
            state.with("from", from).with("to", to).with("depth", depth.sum()).with("depth-lost", depth.lost());
            peaks.into(state);
        }
        return state;
    }

    static void requireSame(String what, Object ofRule, Object ofState) {
        if (!ofRule.equals(ofState)) {
            throw new IllegalArgumentException("state must be that of a machine of the same rule, with " + what + " = "
                    + ofRule + ", was " + ofState);
        }
    }

    boolean isOpen() {
        return isOpen;
    }

    /** When the event in progress began, ns. */
    long from() {
        return from;
    }

    /** When its last rain ended, ns. */
    long to() {
        return to;
    }

    /** Takes rain of the event in progress, or begins one with it. */
    void add(long time, long end, double depthMm) {
        if (!isOpen) {
            isOpen = true;
            from = time;
            depth.reset();
        }
        to = end;
        depth.add(depthMm);
        if (depthMm > 0 && !peaks.durations().isEmpty()) {
            peaks.add(time, depthMm);
        }
    }

    /** Ends the event in progress, which is returned unless it is too shallow. */
    Optional<RainfallEvent> close(Antecedent antecedent, RainfallEvent.Completeness completeness) {
        isOpen = false;
        double depthMm = depth.value();
        if (!rule.keeps(depthMm)) {
            peaks.reset();
            droppedEvents++;
            dropped.add(depthMm);
            return Optional.empty();
        }
        return Optional.of(new RainfallEvent(
                Interval.of(EpochNanos.toInstant(from), EpochNanos.toInstant(to)),
                depthMm,
                peaks.finish(completeness.missingInside() > 0),
                antecedent,
                completeness));
    }

    int droppedEvents() {
        return droppedEvents;
    }

    double droppedMm() {
        return dropped.value();
    }

    /** Number of readings held, for tests of bounded memory. */
    int held() {
        return peaks.size();
    }
}
