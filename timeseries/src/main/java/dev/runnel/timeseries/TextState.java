package dev.runnel.timeseries;

import dev.runnel.internal.Text;
import java.util.Objects;
import java.util.function.Function;
import org.apiguardian.api.API;

/**
 * A state that is nothing but its text: what stands in it is the business of the machine that wrote it, and of the rule
 * that reads it. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class TextState implements MachineState {
    private final String text;

    private TextState(String text) {
        this.text = text;
    }

    /**
     * Returns the state with the given text. Whether a rule can read it, {@link Rule#parseState} tells.
     *
     * @param text one line of visible ASCII, not empty
     * @return the state
     * @throws IllegalArgumentException if the text is empty or holds another character
     */
    public static TextState of(String text) {
        if (text.isEmpty() || !isVisible(text)) {
            throw new IllegalArgumentException("state must be one line of ASCII, was " + Text.quoted(text));
        }
        return new TextState(text);
    }

    private static boolean isVisible(String text) {
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            if (letter < ' ' || letter > '~') {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns the state with the given text, once a rule has read it: what {@link Rule#parseState} is to do.
     *
     * @param text one line of visible ASCII, not empty
     * @param start starts the machine of the rule from a state, and refuses one that it cannot read
     * @return the state
     * @throws IllegalArgumentException if the text is empty or holds another character, or the rule refuses it
     */
    public static TextState readBy(String text, Function<TextState, ?> start) {
        TextState state = of(text);
        Objects.requireNonNull(start.apply(state), "machine");
        return state;
    }

    @Override
    public String toText() {
        return text;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TextState that && text.equals(that.text);
    }

    @Override
    public int hashCode() {
        return text.hashCode();
    }

    @Override
    public String toString() {
        return text;
    }
}
