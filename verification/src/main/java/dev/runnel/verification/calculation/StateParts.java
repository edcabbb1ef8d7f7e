package dev.runnel.verification.calculation;

import dev.runnel.internal.StateText;
import java.util.HashMap;
import java.util.Map;

/** The text of a state of the watch, whose parts lie in one another: each is read once, however many numbers are asked of it. */
final class StateParts {
    /** Any version of the texts of states. */
    private static final int NEWEST = 1000;

    private static final String WHOLE = "site-watch";

    private final Map<String, StateText> read = new HashMap<>();
    private final StateText whole;

    private StateParts(String text) {
        whole = StateText.parse(WHOLE, NEWEST, text);
    }

    static StateParts of(String text) {
        return new StateParts(text);
    }

    StateText whole() {
        return whole;
    }

    /** Returns the part that a path of key:name leads to. */
    synchronized StateText part(String path) {
        StateText known = read.get(path);
        if (known == null) {
            int slash = path.lastIndexOf('/');
            StateText around = slash < 0 ? whole : part(path.substring(0, slash));
            known = within(around, path.substring(slash + 1));
            read.put(path, known);
        }
        return known;
    }

    private static StateText within(StateText around, String step) {
        String[] parts = step.split(":");
        String inner = around.text(parts[0]);
        // A finding that is not there yet is made of what is put.
        return inner.isEmpty() ? StateText.of(parts[1], 1) : StateText.parse(parts[1], NEWEST, inner);
    }

    /**
     * Returns a state's text after key=value pairs were put into the part that a path leads to, or with a path before the key
     * into a part of that; a list ends each number with a semicolon.
     */
    static String put(String text, String path, String pairs) {
        return put(StateText.parse(WHOLE, NEWEST, text), path, pairs);
    }

    private static String put(StateText state, String path, String pairs) {
        if (path.isEmpty()) {
            for (String pair : pairs.split(" ")) {
                String key = pair.substring(0, pair.indexOf('='));
                String value = pair.substring(key.length() + 1);
                int slash = key.lastIndexOf('/');
                if (slash >= 0) {
                    put(state, key.substring(0, slash), pair.substring(slash + 1));
                    continue;
                }
                // So a list is written in the text of a state.
                state.with(key, value.endsWith(";") ? value.equals(";") ? "" : value.replace(';', ',') : value);
            }
        } else {
            String[] steps = path.split("/", 2);
            String key = steps[0].substring(0, steps[0].indexOf(':'));
            state.with(key, put(within(state, steps[0]), steps.length > 1 ? steps[1] : "", pairs));
        }
        return state.toString();
    }
}
