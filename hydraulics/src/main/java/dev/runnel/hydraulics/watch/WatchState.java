package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.TextState;
import java.util.Objects;
import java.util.function.Function;
import org.apiguardian.api.API;

/**
 * What the watch knows at one moment. Immutable and thread-safe; equal if the texts are.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class WatchState implements MachineState {
    static final String NAME = "site-watch";
    static final int VERSION = 2;

    private final String text;

    private WatchState(String text) {
        this.text = text;
    }

    static WatchState of(StateText text) {
        return new WatchState(text.toString());
    }

    /** Returns the state with a text, which nothing has read yet. */
    static WatchState of(String text) {
        return new WatchState(TextState.of(text.strip()).toText());
    }

    /** Returns the state with a text, once a rule has read it. */
    static WatchState readBy(String text, Function<WatchState, ?> start) {
        WatchState state = of(text);
        Objects.requireNonNull(start.apply(state), "machine");
        return state;
    }

    StateText values() {
        return StateText.parse(NAME, VERSION, text);
    }

    @Override
    public String toText() {
        return text;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WatchState that && text.equals(that.text);
    }

    @Override
    public int hashCode() {
        return Objects.hash(text);
    }

    @Override
    public String toString() {
        return "WatchState[" + text.length() + " characters]";
    }
}
