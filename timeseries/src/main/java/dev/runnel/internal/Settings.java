package dev.runnel.internal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.apiguardian.api.API;

/**
 * A small text file of {@code key = value} lines, read so that every complaint names file, line and column. Immutable.
 *
 * <p>A line that is blank or begins with {@code #} is a comment; a {@code #} after white space ends a value. Spaces
 * around key and value do not count; keys keep their case; a key stands once.
 */
@API(status = API.Status.INTERNAL)
public final class Settings {
    private record Entry(String value, int line, int column) {}

    private final String file;
    private final Map<String, Entry> entries;

    private Settings(String file, Map<String, Entry> entries) {
        this.file = file;
        this.entries = entries;
    }

    /**
     * Reads a file in UTF-8.
     *
     * @param path the file
     * @return its settings
     * @throws IllegalArgumentException if it is not text, or a line has no {@code =}, no key, or a key of a line before
     * @throws UncheckedIOException if it cannot be read
     */
    public static Settings read(Path path) {
        try {
            return parse(path.toString(), Files.readString(path, StandardCharsets.UTF_8));
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException(path + ": file must be text in UTF-8", e);
        } catch (IOException e) {
            throw Unreadable.file(path, e);
        }
    }

    /**
     * Reads a text.
     *
     * @param file name of its file, for messages
     * @param text the lines
     * @return its settings
     * @throws IllegalArgumentException if a line has no {@code =}, no key, or a key of a line before
     */
    public static Settings parse(String file, String text) {
        Map<String, Entry> entries = new LinkedHashMap<>();
        List<String> lines = withoutByteOrderMark(text).lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.isBlank() || line.strip().startsWith("#")) {
                continue;
            }
            int equals = line.indexOf('=');
            if (equals < 0) {
                throw refused(file, i + 1, 1, "line must be key = value, was \"" + shortened(line) + "\"");
            }
            String key = line.substring(0, equals).strip();
            if (key.isEmpty()) {
                throw refused(file, i + 1, 1, "key must not be empty");
            }
            String value = withoutComment(line.substring(equals + 1));
            int column = equals + 2 + leadingSpaces(value);
            Entry before = entries.putIfAbsent(key, new Entry(value.strip(), i + 1, column));
            if (before != null) {
                throw refused(file, i + 1, 1, "key \"" + key + "\" must stand once, it stands on line " + before.line);
            }
        }
        return new Settings(file, Map.copyOf(entries));
    }

    /**
     * Returns the name of the file, for messages.
     *
     * @return the name
     */
    public String file() {
        return file;
    }

    /**
     * Returns all keys.
     *
     * @return keys, unordered
     */
    public Set<String> keys() {
        return entries.keySet();
    }

    /**
     * Refuses keys that nobody knows, so that a typing error is not taken for a default.
     *
     * @param known the keys that may stand in the file
     * @return these settings
     * @throws IllegalArgumentException if there is another key, the message naming the first one's line and the known key
     *     nearest to it
     */
    public Settings allowOnly(Set<String> known) {
        TreeSet<String> words = new TreeSet<>(known);
        entries.entrySet().stream()
                .filter(entry -> !known.contains(entry.getKey()))
                .min((a, b) -> Integer.compare(a.getValue().line, b.getValue().line))
                .ifPresent(entry -> {
                    throw refused(
                            file,
                            entry.getValue().line,
                            1,
                            "key \"" + entry.getKey() + "\" is not known, allowed are " + words
                                    + Nearest.hint(entry.getKey(), words));
                });
        return this;
    }

    /**
     * Returns a value that must be there.
     *
     * @param key the key
     * @return its value, not empty
     * @throws IllegalArgumentException if it is missing or empty
     */
    public String text(String key) {
        return optionalText(key)
                .orElseThrow(() -> new IllegalArgumentException(file + ": key \"" + key + "\" is missing"));
    }

    /**
     * Returns a value that may be left out.
     *
     * @param key the key
     * @return its value; empty if it is missing
     * @throws IllegalArgumentException if the key stands there without a value
     */
    public Optional<String> optionalText(String key) {
        Entry entry = entries.get(key);
        if (entry != null && entry.value.isEmpty()) {
            throw refused(key, "must have a value");
        }
        return Optional.ofNullable(entry).map(Entry::value);
    }

    /**
     * Returns a number that must be there.
     *
     * @param key the key
     * @return its value, finite
     * @throws IllegalArgumentException if it is missing or no plain decimal number
     */
    public double number(String key) {
        return toNumber(key, text(key));
    }

    /**
     * Returns a number that may be left out.
     *
     * @param key the key
     * @return its value; empty if it is missing
     * @throws IllegalArgumentException if it is no plain decimal number
     */
    public OptionalDouble optionalNumber(String key) {
        return optionalText(key).stream()
                .mapToDouble(text -> toNumber(key, text))
                .findFirst();
    }

    /**
     * Makes the exception for a value that the caller cannot accept.
     *
     * @param key the key of the value
     * @param problem what is wrong and what is allowed, such as {@code must be yes or no, was "maybe"}
     * @return an exception whose message begins with file, line, column and key
     */
    public IllegalArgumentException refused(String key, String problem) {
        Entry entry = entries.get(key);
        return entry == null
                ? new IllegalArgumentException(file + ": " + key + " " + problem)
                : refused(file, entry.line, entry.column, key + " " + problem);
    }

    private double toNumber(String key, String text) {
        try {
            // BigDecimal takes plain decimals only: no NaN, no hexadecimal, no type letters.
            double number = new BigDecimal(text).doubleValue();
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException e) {
            // Refused below, with the place in the file.
        }
        throw refused(key, "must be a decimal number, was \"" + text + "\"");
    }

    private static IllegalArgumentException refused(String file, int line, int column, String problem) {
        return new IllegalArgumentException(file + ", line " + line + ", column " + column + ": " + problem);
    }

    private static String withoutByteOrderMark(String text) {
        return text.startsWith("\uFEFF") ? text.substring(1) : text;
    }

    private static String withoutComment(String value) {
        for (int i = 1; i < value.length(); i++) {
            if (value.charAt(i) == '#' && Character.isWhitespace(value.charAt(i - 1))) {
                return value.substring(0, i);
            }
        }
        return value;
    }

    private static int leadingSpaces(String value) {
        return value.length() - value.stripLeading().length();
    }

    private static String shortened(String line) {
        return line.length() <= 60 ? line : line.substring(0, 60) + "...";
    }

    @Override
    public String toString() {
        return "Settings[" + file + ", " + entries.size() + " keys]";
    }
}
