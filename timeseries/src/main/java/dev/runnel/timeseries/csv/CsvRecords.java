package dev.runnel.timeseries.csv;

import dev.runnel.internal.Unreadable;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Reads records from text. Memory holds the result and one line; a file of any length is read in one pass.
 *
 * <p>A line that is not as it should be is rejected, or altered where that is safe or the layout says so, and is in the
 * {@link CsvReport} either way. A file that as a whole is not what the layout says is refused with an
 * {@link IllegalArgumentException} that names file, line, column, what is there and what is allowed.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvRecords {
    private CsvRecords() {}

    /** What to do with an opened file. */
    private interface Task<R> {
        R run(RecordFile file) throws IOException;
    }

    /**
     * Reads series from a file.
     *
     * @param file the file
     * @param layout what it looks like; with at least one column of values
     * @return the series and the account of lines
     * @throws IllegalArgumentException if the file does not exist, is not text, is empty or has no such column, or the
     *     layout has no column of values
     * @throws UncheckedIOException if the file cannot be read
     */
    public static CsvResult read(Path file, CsvLayout layout) {
        requireColumns(layout);
        requireKept(layout);
        return open(file, layout, RecordFile::readSeries);
    }

    /**
     * Reads series from a reader.
     *
     * @param name what messages call it
     * @param reader the text; not closed
     * @param layout what it looks like; with at least one column of values
     * @return the series and the account of lines
     * @throws IllegalArgumentException if the text is empty or has no such column, or the layout has no column of values
     * @throws UncheckedIOException if the reader fails
     */
    public static CsvResult read(String name, Reader reader, CsvLayout layout) {
        requireColumns(layout);
        requireKept(layout);
        return pass(name, TextBytes.of(reader), 0, layout, RecordFile::readSeries);
    }

    /**
     * Reads series from a text.
     *
     * @param text the lines
     * @param layout what they look like; with at least one column of values
     * @return the series and the account of lines
     * @throws IllegalArgumentException if the text is empty or has no such column, or the layout has no column of values
     */
    public static CsvResult parse(String text, CsvLayout layout) {
        requireColumns(layout);
        requireKept(layout);
        return pass(
                "text",
                TextBytes.of(Objects.requireNonNull(text, "text")),
                text.length(),
                layout,
                RecordFile::readSeries);
    }

    /**
     * Reads bare instants from a file.
     *
     * @param file the file
     * @param layout what it looks like; without columns of values
     * @return the instants and the account of lines
     * @throws IllegalArgumentException if the file does not exist, is not text, is empty or has no such column, or the
     *     layout has a column of values
     * @throws UncheckedIOException if the file cannot be read
     */
    public static CsvInstants readInstants(Path file, CsvLayout layout) {
        requireNoColumns(layout);
        requireKept(layout);
        return open(file, layout, RecordFile::readInstants);
    }

    /**
     * Reads bare instants from a reader.
     *
     * @param name what messages call it
     * @param reader the text; not closed
     * @param layout what it looks like; without columns of values
     * @return the instants and the account of lines
     * @throws IllegalArgumentException if the text is empty or has no such column, or the layout has a column of values
     * @throws UncheckedIOException if the reader fails
     */
    public static CsvInstants readInstants(String name, Reader reader, CsvLayout layout) {
        requireNoColumns(layout);
        requireKept(layout);
        return pass(name, TextBytes.of(reader), 0, layout, RecordFile::readInstants);
    }

    /**
     * Reads a file row by row and keeps none: memory holds one line and the list of issues, however long the file.
     *
     * <p>The rows are those of {@link #read}, with two differences that follow from keeping nothing: a line earlier than the
     * one before is rejected as out of order even if it repeats an earlier one, and layouts that sort, or add lines of one
     * instant, are refused.
     *
     * @param file the file
     * @param layout what it looks like; with at least one column of values
     * @param consumer takes each row
     * @return the account of lines
     * @throws IllegalArgumentException if the file does not exist, is not text, is empty or has no such column, or the
     *     layout has no column of values, sorts or adds
     * @throws UncheckedIOException if the file cannot be read
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static CsvReport forEach(Path file, CsvLayout layout, CsvRowConsumer consumer) {
        requireStream(layout);
        return open(file, layout, records -> records.readRows(consumer));
    }

    /**
     * Reads a reader row by row, as {@link #forEach(Path, CsvLayout, CsvRowConsumer)} reads a file.
     *
     * @param name what messages call it
     * @param reader the text; not closed
     * @param layout what it looks like; with at least one column of values
     * @param consumer takes each row
     * @return the account of lines
     * @throws IllegalArgumentException if the text is empty or has no such column, or the layout has no column of values,
     *     sorts or adds
     * @throws UncheckedIOException if the reader fails
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static CsvReport forEach(String name, Reader reader, CsvLayout layout, CsvRowConsumer consumer) {
        requireStream(layout);
        return pass(name, TextBytes.of(reader), 0, layout, records -> records.readRows(consumer));
    }

    private static void requireStream(CsvLayout layout) {
        if (!layout.choices().orderOfFile) {
            requireColumns(layout);
        }
        if (layout.choices().sorting || layout.choices().repeatedTime != RepeatedTime.REJECT) {
            throw new IllegalArgumentException(
                    "layout must neither sort nor add lines of one instant where rows are not kept, was " + layout);
        }
    }

    private static <R> R open(Path file, CsvLayout layout, Task<R> task) {
        if (Files.isDirectory(file)) {
            throw new IllegalArgumentException("file must be a file, was the folder " + file);
        }
        String name = String.valueOf(file.getFileName());
        try (TextBytes text = TextBytes.of(Files.newInputStream(file), layout.choices().charset)) {
            return pass(name, text, Files.size(file), layout, task);
        } catch (NoSuchFileException e) {
            throw new IllegalArgumentException("file must exist, was " + file, e);
        } catch (IOException e) {
            throw Unreadable.file(file, e);
        }
    }

    private static <R> R pass(String name, TextBytes text, long bytes, CsvLayout layout, Task<R> task) {
        try {
            return task.run(new RecordFile(name, text, bytes, layout));
        } catch (IOException e) {
            throw Unreadable.file(name, e);
        }
    }

    private static void requireKept(CsvLayout layout) {
        if (layout.choices().orderOfFile) {
            throw new IllegalArgumentException(
                    "layout must not have the order of the file where all is kept, was " + layout);
        }
    }

    private static void requireColumns(CsvLayout layout) {
        if (layout.columns().isEmpty()) {
            throw new IllegalArgumentException("layout must have a column of values, was " + layout);
        }
    }

    private static void requireNoColumns(CsvLayout layout) {
        if (!layout.columns().isEmpty()) {
            throw new IllegalArgumentException("layout must have no column of values for bare instants, was " + layout);
        }
    }
}
