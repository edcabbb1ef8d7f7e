package dev.runnel.examples.follow;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The one file that holds all that is known: lines of {@code key=value}, the last one a sum over the others. It is written
 * beside, brought to the disk, and then moved into its place in one step: whoever looks sees the old one or the new one.
 */
final class StateFile {
    static final String NAME = "state.txt";
    private static final String TITLE = "runnel-follow/1";
    private static final String SUM = "sum=";

    private StateFile() {}

    static void write(Path folder, Map<String, String> values) {
        StringBuilder text = new StringBuilder(TITLE).append('\n');
        new TreeMap<>(values)
                .forEach((key, value) ->
                        text.append(key).append('=').append(value).append('\n'));
        String body = text.toString();
        Path made = folder.resolve(NAME + ".new");
        try {
            try (FileChannel channel = FileChannel.open(
                    made, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE)) {
                ByteBuffer bytes = ByteBuffer.wrap((body + SUM + sum(body) + "\n").getBytes(StandardCharsets.UTF_8));
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
            Files.move(made, folder.resolve(NAME), StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write the state to " + folder, e);
        }
    }

    /** Reads the state; empty if there is none yet. */
    static Map<String, String> read(Path folder) {
        Path file = folder.resolve(NAME);
        if (!Files.exists(file)) {
            return Map.of();
        }
        String text;
        try {
            text = Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
        int end = text.lastIndexOf(SUM);
        if (!text.startsWith(TITLE + "\n") || end < 0) {
            throw new IllegalArgumentException(file + ": must be a state that begins with " + TITLE);
        }
        String body = text.substring(0, end);
        if (!text.substring(end).strip().equals(SUM + sum(body))) {
            throw new IllegalArgumentException(file + ": must be as it was written, was changed since");
        }
        Map<String, String> values = new TreeMap<>();
        List<String> lines = body.lines().skip(1).toList();
        for (String line : lines) {
            int equals = line.indexOf('=');
            values.put(line.substring(0, equals), line.substring(equals + 1));
        }
        return values;
    }

    static String sum(String text) {
        return sum(text.getBytes(StandardCharsets.UTF_8));
    }

    static String sum(byte[] bytes) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(bytes))
                    .substring(0, 32);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
