package dev.runnel.verification;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;

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
        List<Path> files = new ArrayList<>();
        try {
            // What a build makes may come and go meanwhile: other modules are built beside this one.
            Files.walkFileTree(root(), new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
                    return isMade(root().relativize(folder)) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                    if (attributes.isRegularFile() && !isMade(root().relativize(file))) {
                        files.add(file);
                    }
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        files.sort(null);
        return files;
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
