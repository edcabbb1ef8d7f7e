package dev.runnel.verification;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** Where things are in the checkout that the tests run in, from Maven and from an IDE alike. */
public final class House {
    private House() {}

    /** The top folder: the one above the working directory that holds {@code .mvn}. */
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

    /** All files that are written by people: not what a build made, not the version control's. */
    public static List<Path> files() {
        try (Stream<Path> files = Files.walk(root())) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> !isMade(root().relativize(file)))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isMade(Path file) {
        for (Path part : file) {
            String name = part.toString();
            if (name.equals("target") || name.equals(".git") || name.equals(".idea")) {
                return true;
            }
        }
        return false;
    }
}
