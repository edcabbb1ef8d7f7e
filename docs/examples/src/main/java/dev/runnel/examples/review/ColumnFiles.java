package dev.runnel.examples.review;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The files of a column: one; or all of a folder, or all whose names fit, such as one for each month. */
public final class ColumnFiles {
    /** More files are no survey. */
    private static final int MOST = 10_000;

    private static final long LARGEST_TABLE = 16_000_000;

    private ColumnFiles() {}

    /**
     * Tells whether the site file names several files.
     *
     * @param column the column
     * @return true if it names a folder, or a file with * or ? in its name
     */
    public static boolean isMany(Site.Column column) {
        return column.isNamed() && (isPattern(column.file()) || Files.isDirectory(column.file()));
    }

    private static boolean isPattern(Path file) {
        String name = file.getFileName().toString();
        return name.contains("*") || name.contains("?");
    }

    /** Tells whether there is any; what the site file names must be there. */
    static boolean exist(Site.Column column) {
        if (isMany(column)) {
            return !of(column).isEmpty();
        }
        boolean isThere = Files.exists(column.file());
        if (column.isNamed() && !isThere) {
            throw new IllegalArgumentException(column.file() + ": file must be there, it is named in " + SiteFile.NAME);
        }
        if (isThere && !Files.isRegularFile(column.file())) {
            throw new IllegalArgumentException(column.file() + ": must be a file, and is a folder or a device");
        }
        return isThere;
    }

    /**
     * Returns a file that people write, as it is.
     *
     * @param file the file
     * @return the same
     * @throws IllegalArgumentException if it is a folder, a device, or far too large for one that people write
     */
    public static Path small(Path file) {
        try {
            if (!Files.isRegularFile(file)) {
                throw new IllegalArgumentException(file + ": must be a file, and is a folder or a device");
            }
            if (Files.size(file) > LARGEST_TABLE) {
                throw new IllegalArgumentException(
                        file + ": must be at most " + LARGEST_TABLE + " bytes, has " + Files.size(file));
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read " + file, e);
        }
    }

    /** Returns the files in the order of their names; at least one. */
    static List<Path> of(Site.Column column) {
        if (!isMany(column)) {
            return List.of(column.file());
        }
        List<Path> files = inFolder(column);
        if (files.isEmpty()) {
            throw new IllegalArgumentException(
                    column.file() + ": at least one file must fit this name in " + SiteFile.NAME + ", none does");
        }
        return files;
    }

    /** Returns the files that hold a line, or all if none does. */
    static List<Path> withLines(Site.Column column) {
        List<Path> all = of(column);
        List<Path> some = isMany(column)
                ? all.stream()
                        .filter(file -> Header.isIn(file, column.format()))
                        .toList()
                : all;
        return some.isEmpty() ? all : some;
    }

    /**
     * Returns the folder of several files.
     *
     * @param column a column in several files
     * @return the folder that the site file names, or that of the pattern
     */
    public static Path folder(Site.Column column) {
        return isPattern(column.file()) ? column.file().resolveSibling("") : column.file();
    }

    /**
     * Returns the files that are there now.
     *
     * @param column a column in several files
     * @return the files in the order of their names; none if none fits
     * @throws IllegalArgumentException if they are more than 10,000
     */
    public static List<Path> inFolder(Site.Column column) {
        Path folder = folder(column);
        String names = isPattern(column.file()) ? column.file().getFileName().toString() : "*";
        List<Path> files = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> inside = Files.newDirectoryStream(folder, names)) {
                for (Path file : inside) {
                    if (Files.isRegularFile(file)
                            && !file.getFileName().toString().startsWith(".")) {
                        files.add(file);
                    }
                    if (files.size() > MOST) {
                        throw new IllegalArgumentException(
                                column.file() + ": must be at most " + MOST + " files, are more");
                    }
                }
            } catch (IOException e) {
                throw new UncheckedIOException("cannot look into " + folder, e);
            }
        }
        files.sort(Path::compareTo);
        return files;
    }
}
