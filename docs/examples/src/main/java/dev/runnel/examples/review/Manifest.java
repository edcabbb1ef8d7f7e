package dev.runnel.examples.review;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What a review was made from and what it made: version, and the SHA-256 of every file read and written. The same files and
 * the same version give the same bytes, so an old review can be proved again.
 */
final class Manifest {
    static final String NAME = "manifest.txt";
    private static final String FROM = "from ";
    private static final String TO = "to ";
    private static final String READ = "read ";
    private static final String WRITTEN = "written ";

    /** Bytes that are read at once: with few of them the sum takes half as long again. */
    private static final int PIECE = 1 << 16;

    private Manifest() {}

    static void write(Path made, Path sites, Period period, List<SiteResult> results) throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("runnel " + version());
        period.from().ifPresent(day -> lines.add(FROM + day));
        period.to().ifPresent(day -> lines.add(TO + day));
        TreeSet<Path> read = new TreeSet<>();
        results.forEach(site -> read.addAll(site.files()));
        lines.addAll(sums(READ, sites, List.copyOf(read)));
        lines.addAll(sums(WRITTEN, made, files(made)));
        Files.write(made.resolve(NAME), lines, StandardCharsets.UTF_8);
    }

    /** Says what differs between a manifest and the files as they are; empty if nothing does. */
    static List<String> differences(Path manifest, Path sites, Path made) throws IOException {
        List<String> different = new ArrayList<>();
        for (String line : Files.readAllLines(manifest)) {
            boolean isRead = line.startsWith(READ);
            if (line.startsWith(FROM) || line.startsWith(TO)) {
                continue;
            }
            if (!isRead && !line.startsWith(WRITTEN)) {
                if (!line.equals("runnel " + version())) {
                    different.add("made by \"" + line + "\", this is runnel " + version());
                }
                continue;
            }
            String[] parts =
                    line.substring(isRead ? READ.length() : WRITTEN.length()).split(" ", 2);
            Path file = (isRead ? sites : made).resolve(parts[1]);
            if (!Files.exists(file)) {
                different.add((isRead ? "read" : "written") + " then and missing now: " + parts[1]);
            } else if (!sum(file).equals(parts[0])) {
                different.add((isRead ? "read" : "written") + " then with other bytes: " + parts[1]);
            }
        }
        return different;
    }

    /** The days that the review was of. */
    static Period period(Path manifest) throws IOException {
        List<String> lines = Files.readAllLines(manifest);
        return Period.of(setting(lines, FROM), setting(lines, TO));
    }

    private static String setting(List<String> lines, String key) {
        return lines.stream()
                .filter(line -> line.startsWith(key))
                .findFirst()
                .map(line -> line.substring(key.length()))
                .orElse("");
    }

    /** How many files were read and written. */
    static String counts(Path manifest) throws IOException {
        List<String> lines = Files.readAllLines(manifest);
        return lines.stream().filter(line -> line.startsWith(READ)).count() + " files read, "
                + lines.stream().filter(line -> line.startsWith(WRITTEN)).count() + " written";
    }

    /** The version of the build, which the command is told; tests and other ways to run it are told none. */
    private static String version() {
        return System.getProperty("runnel.version", "of no stated version");
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> inside = Files.walk(folder)) {
            return inside.filter(Files::isRegularFile).sorted().toList();
        }
    }

    private static String name(Path folder, Path file) {
        Path base = folder.toAbsolutePath().normalize();
        Path full = file.toAbsolutePath().normalize();
        return (full.startsWith(base) ? base.relativize(full) : full).toString().replace('\\', '/');
    }

    /** Side by side, since of many sites these are gigabytes. */
    private static List<String> sums(String what, Path folder, List<Path> files) {
        return files.parallelStream()
                .map(file -> {
                    try {
                        return what + sum(file) + " " + name(folder, file);
                    } catch (IOException e) {
                        throw new UncheckedIOException("cannot read " + file, e);
                    }
                })
                .toList();
    }

    private static String sum(Path file) throws IOException {
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
        }
    }
}
