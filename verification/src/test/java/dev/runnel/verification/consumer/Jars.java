package dev.runnel.verification.consumer;

import dev.runnel.verification.Modules;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** The jars on the path of this test: our own as just packed, and what they need at run time. */
final class Jars {
    private static final List<String> NEEDED =
            List.of("commons-math3", "commons-numbers", "fastcsv", "jspecify", "apiguardian-api");

    private Jars() {}

    static Path of(String module) {
        return path().filter(jar -> name(jar).matches("runnel-" + module + "-\\d.*\\.jar") && Files.isRegularFile(jar))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no jar of " + module + " on the path: run mvn verify"));
    }

    /** What a project gets that depends on the three libraries, joined as a path. */
    static String libraries() {
        Stream<Path> ours = Modules.names().stream()
                .filter(module -> !module.equals("verification"))
                .map(Jars::of);
        Stream<Path> needed = path().filter(jar -> NEEDED.stream().anyMatch(name(jar)::startsWith));
        return String.join(
                File.pathSeparator,
                Stream.concat(ours, needed).map(Path::toString).toList());
    }

    private static Stream<Path> path() {
        return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(Path::of);
    }

    private static String name(Path jar) {
        return jar.getFileName().toString();
    }
}
