package dev.runnel.examples.follow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** One site whose files grow from look to look of the command. */
record SiteInGrowth(Path temporary) {
    /** A pipe of 450 mm with readings every two minutes. */
    static final String PIPE =
            "diameter = 450 mm\ngradient = 1:150\nroughness = manning 0.013\n" + "logging interval = 2 min\n";

    Path sites() {
        return temporary.resolve("sites");
    }

    Path output() {
        return temporary.resolve("output");
    }

    /** A file of the site. */
    Path file(String name) {
        return sites().resolve("one").resolve(name);
    }

    void append(String name, String text) throws IOException {
        Files.createDirectories(file(name).resolveSibling("."));
        Files.writeString(file(name), text, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    /** Looks once. */
    Growth.Outcome once() {
        return Growth.follow(sites(), output(), "once");
    }

    /** What was written of the site; empty if the file is not there. */
    String written(String name) throws IOException {
        Path file = output().resolve("one").resolve(name);
        return Files.exists(file) ? Files.readString(file) : "";
    }
}
