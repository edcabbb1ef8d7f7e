package dev.runnel.examples.shell;

import dev.runnel.internal.Text;
import java.lang.reflect.Array;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** A value as people read it: numbers of four digits, durations in words, one thing a line. The value itself keeps all digits. */
public final class Shown {
    private static final int DIGITS = 4;

    /** More lines than that are counted and not written. */
    private static final int LINES = 400;

    private final String text;

    private Shown(String text) {
        this.text = text;
    }

    static Shown of(Object value) {
        List<String> lines = lines(value);
        if (lines.size() == 1) {
            return new Shown(lines.get(0));
        }
        if (lines.isEmpty()) {
            return new Shown("nothing");
        }
        List<String> some = lines.subList(0, Math.min(LINES, lines.size()));
        String more = lines.size() > LINES ? "\n... and " + (lines.size() - LINES) + " more" : "";
        return new Shown(lines.size() + " of them\n" + String.join("\n", some) + more);
    }

    private static List<String> lines(Object value) {
        if (value instanceof Map<?, ?> map) {
            List<String> lines = new ArrayList<>();
            map.forEach((key, each) -> lines.add(line(key) + ": " + line(each)));
            return lines;
        }
        // A record of readings is one thing, though its readings can be walked through.
        if (value instanceof java.util.Collection<?> many) {
            return many.stream().map(Shown::line).toList();
        }
        if (value.getClass().isArray()) {
            List<String> lines = new ArrayList<>();
            for (int i = 0; i < Array.getLength(value); i++) {
                lines.add(line(Array.get(value, i)));
            }
            return lines;
        }
        return List.of(line(value));
    }

    private static String line(Object value) {
        if (value instanceof Double || value instanceof Float) {
            double number = ((Number) value).doubleValue();
            return Double.isFinite(number) ? Text.significant(number, DIGITS) : Double.toString(number);
        }
        if (value instanceof Duration duration) {
            return Text.duration(duration);
        }
        if (value instanceof Optional<?> optional) {
            return optional.map(Shown::line).orElse("none");
        }
        if (value instanceof OptionalDouble optional) {
            return optional.isPresent() ? line(optional.getAsDouble()) : "none";
        }
        if (value instanceof double[] numbers) {
            return String.join(
                    ", ", Arrays.stream(numbers).mapToObj(Shown::line).toList());
        }
        return String.valueOf(value);
    }

    /**
     * Returns the text.
     *
     * @return one line, or a count and a line for each thing
     */
    @Override
    public String toString() {
        return text;
    }
}
