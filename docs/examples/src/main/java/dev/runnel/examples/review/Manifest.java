package dev.runnel.examples.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

    private Manifest() {}

    static void write(Path made, Path sites, Period period, List<SiteResult> results, FileSums sums)
            throws IOException {
        List<String> lines = new ArrayList<>();
        lines.add("runnel " + version());
        period.from().ifPresent(day -> lines.add(FROM + day));
        period.to().ifPresent(day -> lines.add(TO + day));
        lines.addAll(lines(READ, sites, read(results), sums));
        lines.addAll(lines(WRITTEN, made, files(made), sums));
        Files.write(made.resolve(NAME), lines, StandardCharsets.UTF_8);
    }

    /** The files that were read, and those that were written so far. */
    static List<Path> soFar(Path made, List<SiteResult> results) {
        try {
            List<Path> all = new ArrayList<>(read(results));
            all.addAll(files(made));
            return all;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot look into " + made, e);
        }
    }

    private static List<Path> read(List<SiteResult> results) {
        return results.stream()
                .flatMap(site -> site.files().stream())
                .sorted()
                .distinct()
                .toList();
    }

    /** Says what differs between a manifest and the files as they are; empty if nothing does. */
    static List<String> differences(Path manifest, Path sites, Path made) throws IOException {
        List<String> different = new ArrayList<>();
        FileSums sums = new FileSums();
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
            } else if (!sums.of(file).equals(parts[0])) {
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

    private static List<String> lines(String what, Path folder, List<Path> files, FileSums sums) {
        return files.stream()
                .map(file -> what + sums.of(file) + " " + name(folder, file))
                .toList();
    }
}
