package dev.runnel.rainfall.event;

import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * An {@link EventSeparation} for a record of depth per step that arrives step by step. Immutable and thread-safe.
 *
 * <p>An input is the depth of one step, mm, at the time at which the step begins. Steps that are left out between two
 * readings are missing steps, and a reading that is suspect counts as one. The steps lie where the first reading lies.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class StepSeparation implements Rule<Reading, RainfallEvent, TextState> {
    static final String NAME = "rain-events-of-steps";

    private final EventSeparation rule;
    private final Duration step;

    StepSeparation(EventSeparation rule, Duration step) {
        this.rule = rule;
        this.step = step;
    }

    /**
     * Returns the rule.
     *
     * @return what makes an event
     */
    public EventSeparation separation() {
        return rule;
    }

    /**
     * Returns the step.
     *
     * @return length of every step
     */
    public Duration step() {
        return step;
    }

    @Override
    public EventDetector start() {
        return new EventDetector(this);
    }

    /**
     * Starts a machine whose first step begins at a known time: steps before the first reading are missing then.
     *
     * @param start start of the first step
     * @return a new machine
     * @throws IllegalArgumentException if the time lies outside 1677-09-21 to 2262-04-11
     */
    public EventDetector startAt(Instant start) {
        Objects.requireNonNull(start, "start");
        EventDetector machine = new EventDetector(this);
        machine.begin(EpochNanos.of(start));
        return machine;
    }

    @Override
    public EventDetector start(TextState state) {
        return new EventDetector(this, StateText.parse(NAME, 1, state.toText()));
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof StepSeparation that && rule.equals(that.rule) && step.equals(that.step);
    }

    @Override
    public int hashCode() {
        return 31 * rule.hashCode() + step.hashCode();
    }

    @Override
    public String toString() {
        return "StepSeparation[" + rule + ", steps of " + Text.duration(step) + "]";
    }
}
