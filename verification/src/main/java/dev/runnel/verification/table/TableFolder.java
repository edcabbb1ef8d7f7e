package dev.runnel.verification.table;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * Finds the published tables of a folder and below it: every file {@code NAME.table}. Immutable.
 *
 * @param tables the tables that could be read
 * @param problems what is wrong with the others
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record TableFolder(List<PublishedTable> tables, List<String> problems) {
    static final String SUFFIX = ".table";
    /** Stands in the folder of the shipped tables: a jar may have no entry for the folder itself. */
    private static final String MARK = "README.txt";
    /** Up to so many are read one after the other. */
    private static final int FEW = 100;

    /**
     * Copies the lists.
     *
     * @param tables the tables
     * @param problems the problems
     */
    public TableFolder {
        tables = List.copyOf(tables);
        problems = List.copyOf(problems);
    }

    /**
     * Reads the tables that are shipped with Runnel, from classes or from the jar.
     *
     * @return the tables
     */
    public static TableFolder shipped() {
        return shipped(name -> true);
    }

    /**
     * Reads some of the tables that are shipped with Runnel.
     *
     * @param wanted which tables to read, by their name
     * @return the tables
     */
    public static TableFolder shipped(Predicate<String> wanted) {
        URL mark = TableFolder.class.getResource("/dev/runnel/verification/tables/" + MARK);
        if (mark == null) {
            return new TableFolder(List.of(), List.of("the published tables are missing from the program"));
        }
        try {
            URI uri = mark.toURI();
            if (!uri.getScheme().equals("jar")) {
                return read(Path.of(uri).resolveSibling(""), wanted);
            }
            try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
                return read(jar.getPath("/dev/runnel/verification/tables"), wanted);
            }
        } catch (URISyntaxException | IOException e) {
            return new TableFolder(List.of(), List.of("the published tables cannot be read: " + e));
        }
    }

    /**
     * Reads the tables of a folder and below it.
     *
     * @param folder the folder
     * @return the tables; a folder that does not exist or holds none is a problem
     */
    public static TableFolder read(Path folder) {
        return read(folder, name -> true);
    }

    private static TableFolder read(Path folder, Predicate<String> wanted) {
        List<PublishedTable> tables = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        Set<String> names = new TreeSet<>();
        try (Stream<Path> files = Files.walk(folder)) {
            List<Path> paths = files.filter(TableFolder::isTable)
                    .filter(file -> wanted.test(PublishedTable.name(file)))
                    .sorted()
                    .toList();
            for (Read read : (paths.size() > FEW ? paths.parallelStream() : paths.stream())
                    .map(Read::of)
                    .toList()) {
                read.table.ifPresent(table -> {
                    tables.add(table);
                    if (!names.add(table.name())) {
                        problems.add(read.file + ": another table is named " + table.name());
                    }
                });
                problems.addAll(read.problems);
            }
        } catch (IOException e) {
            problems.add(folder + ": is not a folder that can be read (" + e + ")");
        }
        if (tables.isEmpty() && problems.isEmpty()) {
            problems.add(folder + ": holds no file NAME" + SUFFIX);
        }
        return new TableFolder(tables, problems);
    }

    /** What came of one file. */
    private record Read(Path file, Optional<PublishedTable> table, List<String> problems) {
        static Read of(Path file) {
            try {
                return new Read(file, Optional.of(PublishedTable.read(file)), List.of());
            } catch (TableException e) {
                return new Read(file, Optional.empty(), List.of(e.getMessage()));
            }
        }
    }

    private static boolean isTable(Path file) {
        return file.getFileName() != null && file.getFileName().toString().endsWith(SUFFIX);
    }
}
