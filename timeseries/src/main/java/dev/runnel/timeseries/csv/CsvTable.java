package dev.runnel.timeseries.csv;

import dev.runnel.internal.CellText;
import dev.runnel.internal.Nearest;
import dev.runnel.internal.Text;
import dev.runnel.internal.Unreadable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * A small table that people keep by hand, such as a list of corrections or of visits to a site: cells of text under
 * names. Immutable and thread-safe.
 *
 * <p>Comma-separated, UTF-8, the names in the first line; lines that begin with {@code #} and blank ones are passed over. It
 * is read strictly: whatever is not as it should be is refused with file, line and column, since a line of such a list
 * that is lost would change results unseen. For records of readings see {@link CsvRecords}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvTable {
    private static final int MOST_ROWS = 1_000_000;

    private final String name;
    private final List<String> header;
    private final List<Row> rows;

    private CsvTable(String name, List<String> header, List<Row> rows) {
        this.name = name;
        this.header = List.copyOf(header);
        this.rows = List.copyOf(rows);
    }

    /**
     * Reads a table from a file.
     *
     * @param file the file
     * @param columns all names that may stand in the header; those that end with {@code ?} may be missing
     * @return the table
     * @throws IllegalArgumentException if the file does not exist, a column is missing, unknown or stands twice, a line
     *     cannot be read or is too long or too short, or there are more than a million lines
     * @throws java.io.UncheckedIOException if the file cannot be read
     */
    public static CsvTable read(Path file, String... columns) {
        if (Files.isDirectory(file)) {
            throw new IllegalArgumentException("file must be a file, was the folder " + file);
        }
        try (TextBytes text = TextBytes.of(Files.newInputStream(file), StandardCharsets.UTF_8)) {
            return read(String.valueOf(file.getFileName()), text, columns);
        } catch (NoSuchFileException e) {
            throw new IllegalArgumentException("file must exist, was " + file, e);
        } catch (IOException e) {
            throw Unreadable.file(file, e);
        }
    }

    /**
     * Reads a table from a text.
     *
     * @param name what messages call it
     * @param text the lines
     * @param columns all names that may stand in the header; those that end with {@code ?} may be missing
     * @return the table
     * @throws IllegalArgumentException as {@link #read}
     */
    public static CsvTable parse(String name, String text, String... columns) {
        try {
            return read(name, TextBytes.of(text), columns);
        } catch (IOException e) {
            throw Unreadable.file(name, e);
        }
    }

    private static CsvTable read(String name, TextBytes text, String... columns) throws IOException {
        LineSource lines = new LineSource(name, text);
        FieldSplitter fields = new FieldSplitter(',');
        List<String> header = List.of();
        Map<String, Integer> places = new HashMap<>();
        List<Row> rows = new ArrayList<>();
        while (lines.next()) {
            if (lines.isBlank() || lines.letters()[0] == '#') {
                continue;
            }
            String place = name + ", line " + lines.line();
            int unreadable = fields.split(lines.letters(), 0, lines.length());
            if (unreadable > 0) {
                throw new IllegalArgumentException(
                        place + ", column " + unreadable + ": a quoted cell must end on its line and at a comma");
            }
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < fields.count(); i++) {
                cells.add(CellText.read(fields.text(i)));
            }
            if (header.isEmpty()) {
                header = cells;
                requireHeader(place, cells, places, columns);
                continue;
            }
            while (cells.size() > header.size() && cells.get(cells.size() - 1).isEmpty()) {
                cells.remove(cells.size() - 1);
            }
            if (cells.size() != header.size()) {
                throw new IllegalArgumentException(
                        place + ": must have " + header.size() + " cells as the header, had " + cells.size());
            }
            if (rows.size() == MOST_ROWS) {
                throw new IllegalArgumentException(place + ": a table must have at most " + MOST_ROWS + " rows");
            }
            rows.add(new Row(place, places, List.copyOf(cells)));
        }
        if (header.isEmpty()) {
            throw new IllegalArgumentException(name + ": must have a header line, was empty");
        }
        return new CsvTable(name, header, rows);
    }

    private static void requireHeader(
            String place, List<String> cells, Map<String, Integer> places, String... columns) {
        List<String> known = new ArrayList<>();
        for (String column : columns) {
            known.add(column.endsWith("?") ? column.substring(0, column.length() - 1) : column);
        }
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i);
            if (!known.contains(cell)) {
                throw new IllegalArgumentException(place + ", column " + (i + 1) + ": name must be one of " + known
                        + ", was " + Text.quoted(cell) + Nearest.hint(cell, known));
            }
            if (places.putIfAbsent(cell, i) != null) {
                throw new IllegalArgumentException(
                        place + ", column " + (i + 1) + ": name must stand once, was " + cell + " twice");
            }
        }
        for (String column : columns) {
            if (!column.endsWith("?") && !places.containsKey(column)) {
                throw new IllegalArgumentException(place + ": must have a column " + column + ", had " + cells);
            }
        }
    }

    /**
     * Returns what messages call the table.
     *
     * @return name of the file
     */
    public String name() {
        return name;
    }

    /**
     * Returns the names of the columns.
     *
     * @return names in their order
     */
    public List<String> header() {
        return header;
    }

    /**
     * Returns the rows.
     *
     * @return rows in their order
     */
    public List<Row> rows() {
        return rows;
    }

    @Override
    public String toString() {
        return "CsvTable[" + name + ", " + rows.size() + " rows of " + header + "]";
    }

    /**
     * One row of a table. Immutable and thread-safe.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static final class Row {
        private final String place;
        private final Map<String, Integer> places;
        private final List<String> cells;

        private Row(String place, Map<String, Integer> places, List<String> cells) {
            this.place = place;
            this.places = places;
            this.cells = cells;
        }

        /**
         * Tells whether a cell holds something.
         *
         * @param column name of the column
         * @return false if the cell is empty or the table has no such column
         */
        public boolean has(String column) {
            Integer at = places.get(column);
            return at != null && !cells.get(at).isEmpty();
        }

        /**
         * Returns a cell as text.
         *
         * @param column name of the column
         * @return the text, not empty
         * @throws IllegalArgumentException if the cell is empty
         */
        public String text(String column) {
            if (!has(column)) {
                throw refuse(column, "must not be empty");
            }
            return cells.get(places.getOrDefault(column, -1));
        }

        /**
         * Returns a cell as text.
         *
         * @param column name of the column
         * @param otherwise what an empty cell stands for
         * @return the text
         */
        public String text(String column, String otherwise) {
            return has(column) ? text(column) : otherwise;
        }

        /**
         * Returns a cell as a number.
         *
         * @param column name of the column
         * @return the number, finite
         * @throws IllegalArgumentException if the cell is empty or no finite number
         */
        public double number(String column) {
            String text = text(column);
            double value;
            try {
                value = Double.parseDouble(text);
            } catch (NumberFormatException e) {
                throw refuse(column, "must be a number, was " + Text.quoted(text));
            }
            if (!Double.isFinite(value)) {
                throw refuse(column, "must be finite, was " + Text.quoted(text));
            }
            return value;
        }

        /**
         * Returns a cell as a number.
         *
         * @param column name of the column
         * @param otherwise what an empty cell stands for
         * @return the number
         * @throws IllegalArgumentException if the cell holds no finite number
         */
        public double number(String column, double otherwise) {
            return has(column) ? number(column) : otherwise;
        }

        /**
         * Returns a cell as an instant.
         *
         * @param column name of the column
         * @return the instant
         * @throws IllegalArgumentException if the cell is empty or not such as {@code 2026-03-01T12:00:00Z}
         */
        public Instant instant(String column) {
            String text = text(column);
            try {
                return Instant.parse(text);
            } catch (DateTimeException e) {
                throw refuse(column, "must be a time such as 2026-03-01T12:00:00Z, was " + Text.quoted(text));
            }
        }

        /**
         * Makes the exception for a cell that cannot be used.
         *
         * @param column name of the column
         * @param problem what it must be and what it was
         * @return an exception that names file, line and column
         */
        public IllegalArgumentException refuse(String column, String problem) {
            Integer at = places.get(column);
            return new IllegalArgumentException(
                    place + (at == null ? "" : ", column " + (at + 1)) + ": " + column + " " + problem);
        }

        @Override
        public String toString() {
            return place + ": " + cells;
        }
    }
}
