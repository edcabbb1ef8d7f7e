package dev.runnel.verification.calculation;

import dev.runnel.internal.Text;
import java.nio.DoubleBuffer;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * The inputs of one calculation by name: numbers, texts and samples. Not thread-safe while it is being filled.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Inputs {
    /** Characters up to which an input is shown each time; chosen here, more than a reference takes. */
    private static final int LONG = 100;

    private static final Pattern BETWEEN_NUMBERS = Pattern.compile("[\\s;]+");

    private final Map<String, Object> values = new LinkedHashMap<>();

    private Inputs() {}

    /**
     * Returns inputs without any value.
     *
     * @return empty inputs, to be filled with {@code put}
     */
    public static Inputs empty() {
        return new Inputs();
    }

    /**
     * Sets a number.
     *
     * @param name name of the input
     * @param value its value, in the library's unit
     * @return these inputs
     */
    public Inputs put(String name, double value) {
        values.put(name, value);
        return this;
    }

    /**
     * Sets a text.
     *
     * @param name name of the input
     * @param value its value
     * @return these inputs
     */
    public Inputs put(String name, String value) {
        values.put(name, value);
        return this;
    }

    /**
     * Sets a sample.
     *
     * @param name name of the input
     * @param value its values; copied
     * @return these inputs
     */
    public Inputs put(String name, double[] value) {
        values.put(name, value.clone());
        return this;
    }

    /**
     * Tells whether an input is given.
     *
     * @param name name of the input
     * @return true if it is
     */
    public boolean has(String name) {
        return values.containsKey(name);
    }

    /**
     * Returns a number.
     *
     * @param name name of the input
     * @return its value
     * @throws IllegalArgumentException if it is missing or not a number
     */
    public double number(String name) {
        Object value = value(name);
        if (value instanceof Double number) {
            return number;
        }
        throw new IllegalArgumentException("input " + name + " must be a number, was \"" + shown(value) + "\"");
    }

    /**
     * Returns a number that may be left out.
     *
     * @param name name of the input
     * @param otherwise what to take if it is missing
     * @return its value
     */
    public double number(String name, double otherwise) {
        return has(name) ? number(name) : otherwise;
    }

    /**
     * Returns a whole number.
     *
     * @param name name of the input
     * @return its value
     * @throws IllegalArgumentException if it is missing or not whole
     */
    public int integer(String name) {
        double value = number(name);
        if (value != Math.rint(value)) {
            throw new IllegalArgumentException("input " + name + " must be a whole number, was " + Text.number(value));
        }
        return (int) value;
    }

    /**
     * Returns a text.
     *
     * @param name name of the input
     * @return its value; a number is returned as text
     * @throws IllegalArgumentException if it is missing
     */
    public String text(String name) {
        return shown(value(name));
    }

    /**
     * Returns a sample: one from a data file, or a text of numbers separated by spaces or semicolons.
     *
     * @param name name of the input
     * @return its values, a new array
     * @throws IllegalArgumentException if it is missing or one of the values is not a number
     */
    public double[] sample(String name) {
        if (value(name) instanceof double[] sample) {
            return sample.clone();
        }
        String[] parts = BETWEEN_NUMBERS.split(text(name).strip());
        double[] numbers = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            try {
                numbers[i] = Double.parseDouble(parts[i]);
            } catch (NumberFormatException e) {
                throw new IllegalArgumentException(
                        "input " + name + " must be numbers separated by spaces, was \"" + parts[i] + "\"", e);
            }
        }
        return numbers;
    }

    /** Returns a value as it was given, to be held against another: a number, a text or a view of a sample. */
    Object given(String name) {
        Object value = value(name);
        return value instanceof double[] sample ? DoubleBuffer.wrap(sample).asReadOnlyBuffer() : value;
    }

    private Object value(String name) {
        Object value = values.get(name);
        if (value == null) {
            throw new IllegalArgumentException("input " + name + " is missing");
        }
        return value;
    }

    private static String shown(Object value) {
        if (value instanceof Double number) {
            return Text.number(number);
        }
        if (value instanceof double[] sample) {
            return "[" + sample.length + " values]";
        }
        return value.toString();
    }

    /** A text of several lines, such as a table read from a file, is shown by the count of its lines. */
    private static String brief(Object value) {
        String text = shown(value);
        return text.contains("\n") ? "[" + text.lines().count() + " lines]" : text;
    }

    /**
     * Returns the inputs as the reports show them, a long one in full only where it is first met: a whole record may serve
     * thousands of values.
     *
     * @param met long inputs and where each was met first; those of these inputs are added
     * @param here where these inputs stand, for what is met later
     * @return for example {@code step=5; depths=[as in event-books:1:v0]}
     */
    public String toText(Map<String, String> met, String here) {
        return values.entrySet().stream()
                .map(entry -> entry.getKey() + "=" + once(brief(entry.getValue()), met, here))
                .collect(Collectors.joining("; "));
    }

    private static String once(String text, Map<String, String> met, String here) {
        if (text.length() <= LONG) {
            return text;
        }
        String first = met.putIfAbsent(text, here);
        return first == null ? text : "[as in " + first + "]";
    }

    /** Returns the inputs as the reports show them, each in full. */
    @Override
    public String toString() {
        return values.entrySet().stream()
                .map(entry -> entry.getKey() + "=" + brief(entry.getValue()))
                .collect(Collectors.joining("; "));
    }
}
