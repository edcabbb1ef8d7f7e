package dev.runnel.timeseries.csv;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * What a file of records looks like. Immutable and thread-safe.
 *
 * <p>Unless said otherwise: UTF-8 text with or without byte order mark, fields between commas, a point in decimals,
 * comments on lines that start with {@code #}, the first other line a header, time as ISO 8601 with offset
 * ({@code 2026-01-31T12:00:00Z}; a space for the T is understood, seconds may be left out), and no value where a cell is
 * empty, {@code NaN} or {@code NA}. Fields may be quoted; blanks around them do not matter.
 *
 * <p>In a file without header a column is named by its position, the first is {@code "1"}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvLayout {
    private final Choices choices;

    private CsvLayout(Choices choices) {
        this.choices = choices;
    }

    /**
     * Returns the layout of a file with its time in one column and no columns of values yet.
     *
     * @param timeColumn header of the column of times
     * @return the layout
     * @throws IllegalArgumentException if the header is blank
     */
    public static CsvLayout of(String timeColumn) {
        Objects.requireNonNull(timeColumn, "timeColumn");
        Choices choices = new Choices();
        choices.timeColumn = notBlank("timeColumn", timeColumn);
        return new CsvLayout(choices);
    }

    /**
     * Adds a column of values taken as written.
     *
     * @param header name of the column in the file, and of the series
     * @return the new layout
     * @throws IllegalArgumentException if the header is blank or the name is taken
     */
    public CsvLayout withColumn(String header) {
        Objects.requireNonNull(header, "header");
        return withColumn(CsvColumn.of(header));
    }

    /**
     * Adds a column of values.
     *
     * @param name what the series is called in the result
     * @param header name of the column in the file
     * @param unit unit of the numbers in the file
     * @return the new layout
     * @throws IllegalArgumentException if name or header is blank, or the name is taken
     */
    public CsvLayout withColumn(String name, String header, CsvUnit unit) {
        Objects.requireNonNull(unit, "unit");
        return withColumn(new CsvColumn(name, header, unit, ""));
    }

    /**
     * Adds a column of values.
     *
     * @param column the column
     * @return the new layout
     * @throws IllegalArgumentException if its name is taken
     */
    public CsvLayout withColumn(CsvColumn column) {
        Objects.requireNonNull(column, "column");
        for (CsvColumn present : choices.columns) {
            if (present.name().equals(column.name())) {
                throw new IllegalArgumentException("column must have a name of its own, was " + column.name());
            }
        }
        List<CsvColumn> columns = new ArrayList<>(choices.columns);
        columns.add(column);
        return with(c -> c.columns = List.copyOf(columns));
    }

    /**
     * Reads times without offset as local times of a zone. A time with an offset keeps it.
     *
     * @param zone the zone whose clock the logger followed
     * @return the new layout
     */
    public CsvLayout withZone(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        return with(c -> c.zone = zone);
    }

    /**
     * Says what to do with local times that occur twice at a clock change; {@link RepeatedHour#REJECT} unless said.
     *
     * @param repeatedHour the choice
     * @return the new layout
     */
    public CsvLayout withRepeatedHour(RepeatedHour repeatedHour) {
        Objects.requireNonNull(repeatedHour, "repeatedHour");
        return with(c -> c.repeatedHour = repeatedHour);
    }

    /**
     * Takes the offset from UTC of each time from a column of its own, as {@code +01:00} or {@code Z}; the zone is then
     * not needed.
     *
     * @param header name of that column
     * @return the new layout
     * @throws IllegalArgumentException if the header is blank
     */
    public CsvLayout withOffsetColumn(String header) {
        Objects.requireNonNull(header, "header");
        String name = notBlank("header", header);
        return with(c -> c.offsetColumn = name);
    }

    /**
     * Takes the time of day from a column of its own; it is put behind the date with a space between.
     *
     * @param header name of that column
     * @return the new layout
     * @throws IllegalArgumentException if the header is blank
     */
    public CsvLayout withTimeOfDayColumn(String header) {
        Objects.requireNonNull(header, "header");
        String name = notBlank("header", header);
        return with(c -> c.timeOfDayColumn = name);
    }

    /**
     * Reads times by a pattern instead of ISO 8601. Dates must be in the calendar: 31/02/2026 is refused. Names of months
     * are English.
     *
     * @param pattern letters of {@link java.time.format.DateTimeFormatter}, such as {@code dd/MM/yyyy HH:mm}
     * @return the new layout
     * @throws IllegalArgumentException if the pattern is not one
     */
    public CsvLayout withTimePattern(String pattern) {
        PatternTime.formatter(pattern);
        return with(c -> {
            c.timePattern = pattern;
            c.timeNumber = null;
        });
    }

    /**
     * Reads times that are written as one number.
     *
     * @param kind what the number counts
     * @return the new layout
     */
    public CsvLayout withTimeNumbers(TimeNumber kind) {
        Objects.requireNonNull(kind, "kind");
        return with(c -> {
            c.timeNumber = kind;
            c.timePattern = "";
        });
    }

    /**
     * Sets what stands between fields.
     *
     * @param separator comma, semicolon, tab or vertical bar
     * @return the new layout
     * @throws IllegalArgumentException if it is another character, or a comma where decimals have one
     */
    public CsvLayout withSeparator(char separator) {
        if (",;\t|".indexOf(separator) < 0) {
            throw new IllegalArgumentException(
                    "separator must be a comma, semicolon, tab or vertical bar, was " + (int) separator + " as code");
        }
        return checkComma(with(c -> c.separator = separator));
    }

    /**
     * Reads decimals with a comma, as {@code 0,45}; the fields must then be separated by something else, which is to be
     * said first.
     *
     * @return the new layout
     * @throws IllegalArgumentException if the separator is a comma
     */
    public CsvLayout withDecimalComma() {
        return checkComma(with(c -> c.decimalComma = true));
    }

    /**
     * Sets the character that makes a line a comment when it stands first.
     *
     * @param mark the character
     * @return the new layout
     */
    public CsvLayout withCommentMark(char mark) {
        return with(c -> c.commentMark = mark);
    }

    /**
     * Sets the texts that stand for no value, in place of {@code NaN} and {@code NA}. An empty cell always does.
     *
     * @param marks texts, compared exactly, such as {@code -999} or {@code ---}
     * @return the new layout
     */
    public CsvLayout withMissingMarks(String... marks) {
        Objects.requireNonNull(marks, "marks");
        List<String> unique = Stream.of(marks)
                .map(mark -> Objects.requireNonNull(mark, "marks"))
                .distinct()
                .toList();
        return with(c -> c.missingMarks = unique);
    }

    /**
     * Passes over lines at the top of the file that come before the header.
     *
     * @param lines how many, comments and blank lines included; 0 or more
     * @return the new layout
     * @throws IllegalArgumentException if it is negative
     */
    public CsvLayout withPreamble(int lines) {
        Require.atLeast("lines", lines, 0);
        return with(c -> c.preamble = lines);
    }

    /**
     * Says that there is no header; columns are named by their positions, {@code "1"} and on.
     *
     * @return the new layout
     */
    public CsvLayout withoutHeader() {
        return with(c -> c.header = false);
    }

    /**
     * Sets the encoding of the text.
     *
     * @param charset the charset, UTF-8 unless said
     * @return the new layout
     */
    public CsvLayout withCharset(Charset charset) {
        Objects.requireNonNull(charset, "charset");
        return with(c -> c.charset = charset);
    }

    /**
     * Accepts lines that are out of order by sorting them into place, each counted as altered. Unless said so they are
     * rejected.
     *
     * @return the new layout
     */
    public CsvLayout withSorting() {
        return with(c -> c.sorting = true);
    }

    /**
     * Hands over rows in the order of the file, whatever their times: for one who reads a file that still grows, and judges
     * the order over all its parts. For {@link CsvRecords#forEach} alone, which then takes layouts without a column of
     * values too.
     *
     * @param last time of the line before the first one, which a clock change that repeats an hour is judged by;
     *     {@link Instant#MIN} at the beginning of a file
     * @return the new layout
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public CsvLayout withOrderOfFile(Instant last) {
        Objects.requireNonNull(last, "last");
        long after = last.equals(Instant.MIN) ? Long.MIN_VALUE : EpochNanos.of(last);
        return with(c -> {
            c.orderOfFile = true;
            c.after = after;
        });
    }

    /**
     * Rejects lines whose stamps are those of another time.
     *
     * @param displaced the lines
     * @return the new layout
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public CsvLayout withoutDisplaced(DisplacedStamps displaced) {
        Objects.requireNonNull(displaced, "displaced");
        return with(c -> c.displaced = displaced);
    }

    /** For the stamps of all lines in the order of the file. */
    CsvLayout ofStampsAlone() {
        return with(c -> {
            c.orderOfFile = true;
            c.sorting = false;
            c.repeatedTime = RepeatedTime.REJECT;
            c.columns = List.of();
        });
    }

    /**
     * Says what to do with several lines of one instant; {@link RepeatedTime#REJECT} unless said.
     *
     * @param repeatedTime the choice
     * @return the new layout
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public CsvLayout withRepeatedTime(RepeatedTime repeatedTime) {
        Objects.requireNonNull(repeatedTime, "repeatedTime");
        return with(c -> c.repeatedTime = repeatedTime);
    }

    /**
     * Sets how many issues a report lists; it counts all.
     *
     * @param limit 0 or more; 1000 unless said
     * @return the new layout
     * @throws IllegalArgumentException if it is negative
     */
    public CsvLayout withIssueLimit(int limit) {
        Require.atLeast("limit", limit, 0);
        return with(c -> c.issueLimit = limit);
    }

    /**
     * Returns the columns of values.
     *
     * @return columns in the order in which they were added
     */
    public List<CsvColumn> columns() {
        return choices.columns;
    }

    Choices choices() {
        return choices;
    }

    private CsvLayout with(Consumer<Choices> change) {
        Choices changed = choices.copy();
        change.accept(changed);
        return new CsvLayout(changed);
    }

    private static CsvLayout checkComma(CsvLayout layout) {
        if (layout.choices.decimalComma && layout.choices.separator == ',') {
            throw new IllegalArgumentException(
                    "separator must not be a comma where decimals have one: set another separator first, was ,");
        }
        return layout;
    }

    private static String notBlank(String name, String text) {
        if (text.isBlank()) {
            throw new IllegalArgumentException(name + " must not be blank, was " + Text.quoted(text));
        }
        return text;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("CsvLayout[time in ").append(choices.timeColumn);
        if (choices.timeNumber != null) {
            text.append(" as ").append(new NumberTime(choices.timeNumber).form());
        }
        if (!choices.timePattern.isEmpty()) {
            text.append(" as ").append(choices.timePattern);
        }
        if (choices.zone != null) {
            text.append(", ").append(choices.zone);
        }
        for (CsvColumn column : choices.columns) {
            text.append(", ").append(column.name()).append(" from ").append(column.header());
            if (column.unit() != CsvUnit.AS_WRITTEN) {
                text.append(" in ").append(column.unit().symbol());
            }
        }
        return text.append(']').toString();
    }

    /** The choices of one layout: changed only on a fresh copy, before a layout holds it. */
    static final class Choices implements Cloneable {
        String timeColumn = "";
        String timeOfDayColumn = "";
        String offsetColumn = "";
        String timePattern = "";

        @Nullable
        TimeNumber timeNumber;

        @Nullable
        ZoneId zone;

        RepeatedHour repeatedHour = RepeatedHour.REJECT;
        char separator = ',';
        boolean decimalComma;
        char commentMark = '#';
        List<String> missingMarks = List.of("NaN", "NA");
        int preamble;
        boolean header = true;
        Charset charset = StandardCharsets.UTF_8;
        boolean sorting;
        boolean orderOfFile;
        long after = Long.MIN_VALUE;
        RepeatedTime repeatedTime = RepeatedTime.REJECT;
        DisplacedStamps displaced = DisplacedStamps.none();
        int issueLimit = 1000;
        List<CsvColumn> columns = List.of();

        TimeText timeForm() {
            if (timeNumber != null) {
                return new NumberTime(timeNumber);
            }
            return timePattern.isEmpty() ? new IsoTime() : new PatternTime(timePattern);
        }

        Choices copy() {
            try {
                return (Choices) clone();
            } catch (CloneNotSupportedException e) {
                throw new AssertionError("Choices is Cloneable", e);
            }
        }
    }
}
