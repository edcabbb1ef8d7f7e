package dev.runnel.timeseries.csv;

import dev.runnel.internal.CellText;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.io.BufferedWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.apiguardian.api.API;

/**
 * Writes records as text, the same bytes on every machine: UTF-8, commas, points, LF, instants in UTC. Immutable and
 * thread-safe.
 *
 * <p>Unless decimals are set, each number is the shortest text that reads back to the same double, so that
 * {@link CsvRecords} returns what was written, bit for bit. A missing value is an empty cell. A file appears under its
 * name only when it is complete: it is written beside and then moved. It has the permissions
 * of any file that the program creates.
 *
 * <p>A text that a spreadsheet would take for a formula, beginning with {@code = + - @} and no number, is written with an
 * apostrophe in front; {@link CsvTable} takes it away again.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvWriter {
    /** What stands behind the name of a column in the name of its column of qualities. */
    private static final String QUALITY = "_quality";

    static final int SHORTEST = -1;

    private static final CsvWriter STANDARD = new CsvWriter(List.of(), SHORTEST, false);

    private final List<String> comments;
    private final int decimals;
    private final boolean quality;

    private CsvWriter(List<String> comments, int decimals, boolean quality) {
        this.comments = comments;
        this.decimals = decimals;
        this.quality = quality;
    }

    /** What fills an opened file. */
    private interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /**
     * Returns the writer of plain records.
     *
     * @return without comments, numbers in full
     */
    public static CsvWriter standard() {
        return STANDARD;
    }

    /**
     * Sets comments for the top of the file.
     *
     * @param lines one text a line, without line ends; {@code # } is put in front
     * @return the new writer
     * @throws IllegalArgumentException if a text holds a line end
     */
    public CsvWriter withComments(String... lines) {
        Objects.requireNonNull(lines, "lines");
        for (String line : lines) {
            requireOneLine("comment", line);
        }
        return new CsvWriter(List.of(lines), decimals, quality);
    }

    /**
     * Rounds numbers to a count of decimals; what is read back is then no longer exactly what was written.
     *
     * @param decimals digits behind the point, 0 to 15
     * @return the new writer
     * @throws IllegalArgumentException if it is outside [0, 15]
     */
    public CsvWriter withDecimals(int decimals) {
        Require.inRange("decimals", decimals, 0, 15, "");
        return new CsvWriter(comments, decimals, quality);
    }

    /**
     * Adds to each series a column with the quality of its readings, called after it with {@code _quality} behind.
     *
     * @return the new writer
     */
    public CsvWriter withQuality() {
        return new CsvWriter(comments, decimals, true);
    }

    /**
     * Writes series, one line for each instant that any of them has. A series without a reading at that instant has an
     * empty cell there, as has a missing reading.
     *
     * @param file the file, replaced if there is one; its folder must exist
     * @param series series by name, in the order of columns
     * @throws IllegalArgumentException if a name holds a line end
     * @throws UncheckedIOException if the file cannot be written
     */
    public void write(Path file, Map<String, Series> series) {
        write(file, out -> {
            Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8.newEncoder());
            writeHeader(text, series);
            text.flush();
            new SeriesRows(decimals, quality, series.values()).writeTo(out);
        });
    }

    /**
     * Writes a table.
     *
     * @param file the file, replaced if there is one; its folder must exist
     * @param header names of the columns
     * @param rows cells of each row; numbers are written as in series, anything else as its {@code toString}
     * @throws IllegalArgumentException if a row is not as long as the header or a text holds a line end
     * @throws UncheckedIOException if the file cannot be written
     */
    public void writeTable(Path file, List<String> header, List<? extends List<?>> rows) {
        write(file, out -> {
            Writer text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8.newEncoder()));
            writeRows(text, header, rows);
            text.flush();
        });
    }

    /**
     * Returns series as the text that {@link #write} would put into a file.
     *
     * @param series series by name, in the order of columns
     * @return the text
     * @throws IllegalArgumentException if a name holds a line end
     */
    public String toText(Map<String, Series> series) {
        StringWriter header = new StringWriter();
        ByteArrayOutputStream rows = new ByteArrayOutputStream();
        try {
            writeHeader(header, series);
            new SeriesRows(decimals, quality, series.values()).writeTo(rows);
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write to memory", e);
        }
        return header + rows.toString(StandardCharsets.US_ASCII);
    }

    private void write(Path file, Content content) {
        Path target = file.toAbsolutePath();
        try {
            // Not a temporary file of the system: those are for their owner alone, and the file would stay so.
            Path beside = target.resolveSibling(target.getFileName() + "." + UUID.randomUUID() + ".part");
            try {
                try (OutputStream out = Files.newOutputStream(beside, StandardOpenOption.CREATE_NEW)) {
                    content.writeTo(out);
                }
                move(beside, target);
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot write " + file, e);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    private void writeHeader(Writer out, Map<String, Series> series) throws IOException {
        writeComments(out);
        out.write("time");
        for (String name : series.keySet()) {
            writeCell(out.append(','), name);
            if (quality) {
                writeCell(out.append(','), name + QUALITY);
            }
        }
        out.write('\n');
    }

    private void writeRows(Writer out, List<String> header, List<? extends List<?>> rows) throws IOException {
        writeComments(out);
        writeRow(out, header);
        for (List<?> row : rows) {
            if (row.size() != header.size()) {
                throw new IllegalArgumentException(
                        "rows must have " + header.size() + " cells as the header, was " + row);
            }
            writeRow(out, row);
        }
    }

    private void writeRow(Writer out, List<?> cells) throws IOException {
        for (int i = 0; i < cells.size(); i++) {
            Object cell = cells.get(i);
            if (i > 0) {
                out.write(',');
            }
            writeCell(out, cell instanceof Double number ? number(number) : cell.toString());
        }
        out.write('\n');
    }

    private void writeComments(Writer out) throws IOException {
        for (String comment : comments) {
            out.write("# " + comment + "\n");
        }
    }

    private static void writeCell(Writer out, String content) throws IOException {
        requireOneLine("text", content);
        String text = CellText.written(content);
        boolean plain =
                text.strip().equals(text) && text.indexOf(',') < 0 && text.indexOf('"') < 0 && !text.startsWith("#");
        out.write(plain ? text : '"' + text.replace("\"", "\"\"") + '"');
    }

    private static void requireOneLine(String name, String text) {
        if (text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
            throw new IllegalArgumentException(name + " must be one line, was " + Text.quoted(text));
        }
    }

    private String number(double value) {
        if (Double.isNaN(value)) {
            return "";
        }
        return decimals == SHORTEST ? Text.number(value) : Text.fixed(value, decimals);
    }
}
