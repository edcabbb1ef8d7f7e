package dev.runnel.internal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.apiguardian.api.API;

/**
 * The one text form of all machine states: a name with a version, then {@code key=value} pairs, on one line of ASCII.
 *
 * <p>Numbers are written so that they read back bit for bit, NaN included. A value may itself be a state text or a list, and
 * then stands in braces; what braces cannot hold is written as {@code %XX} (the bytes of UTF-8).
 */
@API(status = API.Status.INTERNAL)
public final class StateText {
    private final String name;
    private final int version;
    private final Map<String, String> values;

    private StateText(String name, int version, Map<String, String> values) {
        this.name = name;
        this.version = version;
        this.values = values;
    }

    /**
     * Begins a text.
     *
     * @param name name of the kind of state, such as {@code threshold-alarm}
     * @param version version of its keys, 1 or more
     * @return a text without values; each {@code with} returns this same text with one value more
     */
    public static StateText of(String name, int version) {
        return new StateText(name, version, new LinkedHashMap<>());
    }

    /**
     * Reads a text.
     *
     * @param name the name it must have
     * @param version the highest version that is known
     * @param text the text
     * @return its values
     * @throws IllegalArgumentException if the text is not such a state
     */
    public static StateText parse(String name, int version, String text) {
        String stripped = text.strip();
        int end = end(stripped, 0);
        String head = stripped.substring(0, end);
        int slash = head.lastIndexOf('/');
        if (slash < 0 || !head.substring(0, slash).equals(name)) {
            throw new IllegalArgumentException(
                    "state must begin with " + name + "/" + version + ", was " + Text.quoted(text));
        }
        int found = whole("version of a state", head.substring(slash + 1));
        if (found < 1 || found > version) {
            throw new IllegalArgumentException(
                    "version of a state " + name + " must be in [1, " + version + "], was " + found);
        }
        Map<String, String> values = new LinkedHashMap<>();
        while (end < stripped.length()) {
            int from = end + 1;
            int equals = stripped.indexOf('=', from);
            end = end(stripped, from);
            if (equals <= from || equals > end) {
                throw new IllegalArgumentException(
                        "state " + name + " must hold key=value, was " + Text.quoted(stripped.substring(from, end)));
            }
            String key = stripped.substring(from, equals);
            end = StateLetters.end(stripped, equals + 1, ' ');
            if (values.putIfAbsent(key, StateLetters.read(stripped.substring(equals + 1, end))) != null) {
                throw new IllegalArgumentException("state " + name + " must hold " + key + " once, was twice");
            }
        }
        return new StateText(name, found, values);
    }

    /** Where the part that begins at an index ends: at the next blank or with the text. */
    private static int end(String text, int from) {
        int blank = text.indexOf(' ', from);
        return blank < 0 ? text.length() : blank;
    }

    /**
     * Returns the version of the text.
     *
     * @return version, 1 or more
     */
    public int version() {
        return version;
    }

    /**
     * Adds a text.
     *
     * @param key the key
     * @param value any text
     * @return this
     */
    public StateText with(String key, String value) {
        values.put(key, value);
        return this;
    }

    /**
     * Adds a number.
     *
     * @param key the key
     * @param value any double
     * @return this
     */
    public StateText with(String key, double value) {
        return with(key, Double.toString(value));
    }

    /**
     * Adds a whole number.
     *
     * @param key the key
     * @param value any long
     * @return this
     */
    public StateText with(String key, long value) {
        return with(key, Long.toString(value));
    }

    /**
     * Adds a yes or no.
     *
     * @param key the key
     * @param value the value
     * @return this
     */
    public StateText with(String key, boolean value) {
        return with(key, Boolean.toString(value));
    }

    /**
     * Adds numbers.
     *
     * @param key the key
     * @param numbers any doubles
     * @return this
     */
    public StateText with(String key, double[] numbers) {
        StringBuilder joined = new StringBuilder();
        for (double each : numbers) {
            joined.append(each).append(',');
        }
        return with(key, joined.toString());
    }

    /**
     * Adds whole numbers.
     *
     * @param key the key
     * @param numbers any longs
     * @return this
     */
    public StateText with(String key, long[] numbers) {
        StringBuilder joined = new StringBuilder();
        for (long each : numbers) {
            joined.append(each).append(',');
        }
        return with(key, joined.toString());
    }

    /**
     * Adds a list of texts.
     *
     * @param key the key
     * @param list any texts
     * @return this
     */
    public StateText with(String key, List<String> list) {
        StringBuilder joined = new StringBuilder();
        for (String each : list) {
            joined.append(StateLetters.IN_LIST.written(each)).append(',');
        }
        return with(key, joined.toString());
    }

    /**
     * Returns a text.
     *
     * @param key the key
     * @return its value
     * @throws IllegalArgumentException if the key is missing
     */
    public String text(String key) {
        String value = values.get(key);
        if (value == null) {
            throw new IllegalArgumentException("state " + name + " must hold " + key + ", which is missing");
        }
        return value;
    }

    /**
     * Returns whether a key stands in the text.
     *
     * @param key the key
     * @return whether it is there
     */
    public boolean has(String key) {
        return values.containsKey(key);
    }

    /**
     * Returns a number.
     *
     * @param key the key
     * @return its value, bit for bit as it was written
     * @throws IllegalArgumentException if the key is missing or its value no number
     */
    public double number(String key) {
        return number(label(key), text(key));
    }

    /**
     * Returns a whole number.
     *
     * @param key the key
     * @return its value
     * @throws IllegalArgumentException if the key is missing or its value no whole number
     */
    public long count(String key) {
        return wholeLong(label(key), text(key));
    }

    /**
     * Returns a whole number that an int holds.
     *
     * @param key the key
     * @return its value
     * @throws IllegalArgumentException if the key is missing or its value no such number
     */
    public int index(String key) {
        return whole(label(key), text(key));
    }

    /**
     * Returns a yes or no.
     *
     * @param key the key
     * @return its value
     * @throws IllegalArgumentException if the key is missing or its value neither true nor false
     */
    public boolean flag(String key) {
        String value = text(key);
        if (!value.equals("true") && !value.equals("false")) {
            throw new IllegalArgumentException(label(key) + " must be true or false, was " + Text.quoted(value));
        }
        return value.equals("true");
    }

    /**
     * Returns a constant of an enum.
     *
     * @param key the key
     * @param type the enum
     * @param <E> the enum
     * @return the constant
     * @throws IllegalArgumentException if the key is missing or its value no such constant
     */
    public <E extends Enum<E>> E constant(String key, Class<E> type) {
        String value = text(key);
        for (E each : type.getEnumConstants()) {
            if (each.name().equals(value)) {
                return each;
            }
        }
        throw new IllegalArgumentException(
                label(key) + " must be one of " + List.of(type.getEnumConstants()) + ", was " + Text.quoted(value));
    }

    /**
     * Returns numbers.
     *
     * @param key the key
     * @return its values, a new array
     * @throws IllegalArgumentException if the key is missing or a value no number
     */
    public double[] numbers(String key) {
        String label = label(key);
        List<String> list = list(key);
        double[] numbers = new double[list.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = number(label, list.get(i));
        }
        return numbers;
    }

    /**
     * Returns whole numbers.
     *
     * @param key the key
     * @return its values, a new array
     * @throws IllegalArgumentException if the key is missing or a value no whole number
     */
    public long[] counts(String key) {
        String label = label(key);
        List<String> list = list(key);
        long[] numbers = new long[list.size()];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = wholeLong(label, list.get(i));
        }
        return numbers;
    }

    /**
     * Returns numbers of which there must be so many.
     *
     * @param key the key
     * @param size how many
     * @return its values, a new array
     * @throws IllegalArgumentException if the key is missing, a value no number, or there are more or fewer
     */
    public double[] numbers(String key, int size) {
        double[] found = numbers(key);
        Require.sameLength(label(key), size, found.length);
        return found;
    }

    /**
     * Returns whole numbers of which there must be so many.
     *
     * @param key the key
     * @param size how many
     * @return its values, a new array
     * @throws IllegalArgumentException if the key is missing, a value no whole number, or there are more or fewer
     */
    public long[] counts(String key, int size) {
        long[] found = counts(key);
        Require.sameLength(label(key), size, found.length);
        return found;
    }

    /**
     * Returns a list of texts.
     *
     * @param key the key
     * @return its texts
     * @throws IllegalArgumentException if the key is missing
     */
    public List<String> list(String key) {
        List<String> found = new ArrayList<>();
        String joined = text(key);
        for (int from = 0; from < joined.length(); ) {
            int comma = StateLetters.end(joined, from, ',');
            if (comma == joined.length()) {
                throw new IllegalArgumentException(label(key) + " must end with a comma, was " + Text.quoted(joined));
            }
            found.add(StateLetters.read(joined.substring(from, comma)));
            from = comma + 1;
        }
        return List.copyOf(found);
    }

    /**
     * Returns a list of values that have a text form.
     *
     * @param key the key
     * @param parse reads one
     * @param <T> their type
     * @return the values
     * @throws IllegalArgumentException if the key is missing or a text is refused
     */
    public <T> List<T> list(String key, Function<String, T> parse) {
        return list(key).stream().map(parse).toList();
    }

    private String label(String key) {
        return "state " + name + ": " + key;
    }

    private static double number(String label, String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(label + " must be a number, was " + Text.quoted(text), e);
        }
    }

    private static int whole(String label, String text) {
        long value = wholeLong(label, text);
        if (value != (int) value) {
            throw new IllegalArgumentException(label + " must fit an int, was " + value);
        }
        return (int) value;
    }

    private static long wholeLong(String label, String text) {
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(label + " must be a whole number, was " + Text.quoted(text), e);
        }
    }

    /**
     * Returns the text.
     *
     * @return one line of ASCII
     */
    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(name).append('/').append(version);
        values.forEach(
                (key, value) -> text.append(' ').append(key).append('=').append(StateLetters.IN_STATE.written(value)));
        return text.toString();
    }
}
