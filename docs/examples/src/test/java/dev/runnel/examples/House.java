package dev.runnel.examples;

import java.nio.file.Files;
import java.nio.file.Path;

/** Where the checkout is that the tests run in. */
public final class House {
    private House() {}

    /** The top folder: the first at or above the working directory that holds {@code .mvn}. */
    public static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.isDirectory(folder.resolve(".mvn"))) {
            folder = folder.getParent();
            if (folder == null) {
                throw new IllegalStateException(
                        "no folder with .mvn above " + Path.of("").toAbsolutePath());
            }
        }
        return folder;
    }
}
