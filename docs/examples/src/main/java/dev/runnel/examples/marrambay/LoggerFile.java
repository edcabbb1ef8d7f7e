package dev.runnel.examples.marrambay;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The lines of a logger's file, and what goes wrong with them between the logger and the analyst. Each method that
 * harms the file returns how many lines it harmed.
 */
final class LoggerFile {
    private record Line(Instant time, String text) {}

    private final List<String> header;
    private final List<Line> lines = new ArrayList<>();
    private final Function<Instant, String> clock;

    LoggerFile(List<String> header, Function<Instant, String> clock) {
        this.header = header;
        this.clock = clock;
    }

    void add(Instant time, String value) {
        lines.add(new Line(time, value.isEmpty() ? clock.apply(time) : clock.apply(time) + "," + value));
    }

    /** The logger was off: lines from an instant up to another are not there. */
    int lose(String from, String to) {
        int before = lines.size();
        lines.removeIf(line ->
                !line.time().isBefore(Instant.parse(from)) && line.time().isBefore(Instant.parse(to)));
        return before - lines.size();
    }

    /** The block was sent twice: it follows itself. */
    int repeat(String from, int count) {
        int start = indexOf(from);
        lines.addAll(start + count, List.copyOf(lines.subList(start, start + count)));
        return count;
    }

    /** The block came late: it stands behind the lines that follow it. */
    int delay(String from, int count, Duration by) {
        int start = indexOf(from);
        List<Line> block = List.copyOf(lines.subList(start, start + count));
        lines.subList(start, start + count).clear();
        lines.addAll(indexOf(Instant.parse(from).plus(by).toString()), block);
        return count;
    }

    /** A second value for the same time follows the first. */
    int contradict(String at, String value) {
        Line first = lines.get(indexOf(at));
        lines.add(indexOf(at) + 1, new Line(first.time(), clock.apply(first.time()) + "," + value));
        return 1;
    }

    /** The line holds another value. */
    int replaceValue(String at, String value) {
        int index = indexOf(at);
        lines.set(index, new Line(lines.get(index).time(), clock.apply(Instant.parse(at)) + "," + value));
        return 1;
    }

    /** The line cannot be read. */
    int spoil(String at, String text) {
        int index = indexOf(at);
        lines.set(index, new Line(lines.get(index).time(), text));
        return 1;
    }

    /** Writes the file, the same bytes everywhere. */
    void write(Path file) throws IOException {
        StringBuilder text = new StringBuilder();
        header.forEach(line -> text.append(line).append('\n'));
        lines.forEach(line -> text.append(line.text()).append('\n'));
        Files.writeString(file, text, StandardCharsets.UTF_8);
    }

    private int indexOf(String time) {
        Instant wanted = Instant.parse(time);
        for (int i = 0; i < lines.size(); i++) {
            if (!lines.get(i).time().isBefore(wanted)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no line at or after " + time);
    }
}
