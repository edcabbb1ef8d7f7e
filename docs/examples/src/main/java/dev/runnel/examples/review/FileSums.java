package dev.runnel.examples.review;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The SHA-256 of files that change no more, each found once; of many sites these are gigabytes. Thread-safe. */
final class FileSums {
    /** Bytes that are read at once: with few of them the sum takes half as long again. */
    private static final int PIECE = 1 << 16;

    private final Map<Path, String> known = new ConcurrentHashMap<>();

    /** Returns the sum of a file as it was when it was asked for first. */
    String of(Path file) {
        return known.computeIfAbsent(file, FileSums::sum);
    }

    private static String sum(Path file) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] piece = new byte[PIECE];
            try (InputStream in = Files.newInputStream(file)) {
                for (int read = in.read(piece); read >= 0; read = in.read(piece)) {
                    digest.update(piece, 0, read);
                }
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
    }
}
