package dev.runnel.examples.follow;

import dev.runnel.internal.CellText;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The files that are written to, each with the length that counts: what lies beyond it was written by a process that was
 * killed before it could say so, and is cut off.
 */
final class OutputFiles {
    private static final String LENGTH = "length/";

    private final Path folder;
    private final Map<String, Long> lengths = new TreeMap<>();
    private final Map<String, StringBuilder> waiting = new TreeMap<>();

    private OutputFiles(Path folder) {
        this.folder = folder;
    }

    static OutputFiles none(Path folder) {
        return new OutputFiles(folder);
    }

    /** Opens the files of a folder as a state knows them, each cut to its length there. */
    static OutputFiles open(Path folder, Map<String, String> state) {
        OutputFiles files = new OutputFiles(folder);
        state.forEach((key, value) -> {
            if (key.startsWith(LENGTH)) {
                files.lengths.put(key.substring(LENGTH.length()), Long.parseLong(value));
            }
        });
        files.lengths.forEach(files::cut);
        return files;
    }

    private void cut(String name, long length) {
        Path file = folder.resolve(name);
        try {
            long size = Files.exists(file) ? Files.size(file) : 0;
            if (size < length) {
                throw new IllegalArgumentException(
                        file + ": must hold at least the " + length + " bytes that were written to it, holds " + size);
            }
            if (size > length) {
                try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
                    channel.truncate(length);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot cut " + file, e);
        }
    }

    /** Adds a row; the header goes before the first one. */
    void add(String name, List<String> header, List<?> row) {
        StringBuilder text = waiting.computeIfAbsent(name, key -> new StringBuilder());
        if (!lengths.containsKey(name) && text.length() == 0) {
            text.append(line(header));
        }
        text.append(line(row));
    }

    private static String line(List<?> cells) {
        return cells.stream().map(OutputFiles::cell).collect(Collectors.joining(",", "", "\n"));
    }

    private static String cell(Object value) {
        String text = value instanceof Number ? value.toString() : CellText.written(value.toString());
        return text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r')
                ? '"' + text.replace("\"", "\"\"") + '"'
                : text;
    }

    /** Forgets what was added to the files of a site and is not on the disk. */
    void forget(String site) {
        waiting.keySet().removeIf(name -> name.startsWith(site + "/"));
    }

    /** Brings what was added to the disk, and the lengths into the state. */
    void commit(Map<String, String> state) {
        waiting.forEach((name, text) -> lengths.put(name, append(name, text.toString())));
        waiting.clear();
        lengths.forEach((name, length) -> state.put(LENGTH + name, Long.toString(length)));
    }

    private long append(String name, String text) {
        Path file = folder.resolve(name);
        long length = lengths.getOrDefault(name, 0L);
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        long end = length + bytes.remaining();
        try {
            Files.createDirectories(file.resolveSibling("."));
            try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
                channel.truncate(length);
                channel.position(length);
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to " + file, e);
        }
        return end;
    }

    /** Returns what counts of a file. */
    List<String> lines(String name) {
        if (!lengths.containsKey(name)) {
            return List.of();
        }
        try {
            return Files.readAllLines(folder.resolve(name), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + folder.resolve(name), e);
        }
    }
}
