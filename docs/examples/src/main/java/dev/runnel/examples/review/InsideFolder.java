package dev.runnel.examples.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Keeps what a site file names inside the folder of the site. A folder may come from somebody else, and what it names is read
 * and shown in messages; so only who starts the program can allow more: {@code -Drunnel.files.outside=allowed}.
 */
final class InsideFolder {
    private static final String ALLOWED = "runnel.files.outside";

    private InsideFolder() {}

    /** The file, or nothing if it lies outside the folder, by its name or by a link. */
    static Optional<Path> file(Path folder, String name) {
        Path file;
        try {
            file = folder.resolve(name);
        } catch (InvalidPathException e) {
            // What no file can be called is no file in the folder.
            return Optional.empty();
        }
        if ("allowed".equals(System.getProperty(ALLOWED))) {
            return Optional.of(file);
        }
        Path home = folder.toAbsolutePath().normalize();
        Path whole = file.toAbsolutePath().normalize();
        if (!whole.startsWith(home)) {
            return Optional.empty();
        }
        try {
            return !Files.exists(home) || real(whole).startsWith(home.toRealPath())
                    ? Optional.of(file)
                    : Optional.empty();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
    }

    /** Where a file truly lies, or the nearest folder above it that is there. */
    private static Path real(Path file) throws IOException {
        for (Path there = file; there != null; there = there.getParent()) {
            if (Files.exists(there)) {
                return there.toRealPath();
            }
        }
        return file;
    }
}
