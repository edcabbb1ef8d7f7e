package dev.runnel.verification.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;

/** A JDK of a higher number than the one that runs, found in the folder where that one lies. */
record LaterJdk(Path home, String version) {
    private static final String VERSION = "JAVA_VERSION=";

    /** The latest of those beside a home; none if the folder cannot be read or holds no later one. */
    static Optional<LaterJdk> beside(Path home) throws IOException {
        Path real = home.toRealPath();
        Path folder = real.getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            return Optional.empty();
        }
        int mine = Runtime.version().feature();
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(each -> Files.isExecutable(each.resolve("bin").resolve("java")))
                    .flatMap(each -> of(each).stream())
                    .filter(each -> each.feature() > mine)
                    .max(Comparator.comparingInt(LaterJdk::feature));
        }
    }

    /** The JDK in a home by what its file of release says, or none if it says nothing. */
    private static Optional<LaterJdk> of(Path home) {
        Path release = home.resolve("release");
        if (!Files.isReadable(release)) {
            return Optional.empty();
        }
        try {
            return Files.readAllLines(release).stream()
                    .filter(line -> line.startsWith(VERSION))
                    .map(line ->
                            new LaterJdk(home, line.substring(VERSION.length()).replace("\"", "")))
                    .findFirst();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int feature() {
        return Integer.parseInt(version.replaceAll("\\D*(\\d+).*", "$1"));
    }

    String name() {
        return "JDK " + version + ", one round";
    }
}
