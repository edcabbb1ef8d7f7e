package dev.runnel.timeseries.csv;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import dev.runnel.timeseries.csv.RecordTable.Row;
import dev.runnel.timeseries.csv.RecordTable.Rows;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One pass over one file. */
final class RecordFile {
    private static final long NEVER = Long.MIN_VALUE;

    /** Rows for which there is room at least when plain lines are read. */
    private static final int LEAST_ROOM = 512;

    private final CsvLayout.Choices choices;
    private final LineSource source;
    private final FieldSplitter fields;
    private final IssueLog log;
    private final Header header;
    private final TimeCell time;
    private final ValueCells values;
    private final @Nullable PlainLine plain;
    private final Rows one;
    private final Row rowOfOne;
    private boolean isPlain;
    private final int fieldsNeeded;
    private final long bytes;

    /** Where the line behind the header begins. */
    private final long firstByte;

    private final Set<String> linesOfInstant = new HashSet<>();
    private long instantOfLines = NEVER;

    RecordFile(String name, TextBytes text, long bytes, CsvLayout layout) throws IOException {
        choices = layout.choices();
        this.bytes = bytes;
        source = new LineSource(name, text);
        fields = new FieldSplitter(choices.separator);
        log = new IssueLog(name, choices.issueLimit);
        header = readHeader(name);
        firstByte = source.before(source.ahead());
        time = new TimeCell(choices, header, log);
        values = new ValueCells(choices, header, log);
        plain = choices.displaced.runs().isEmpty() ? PlainLine.of(choices, header) : null;
        one = new Rows(choices.columns.size(), 1);
        rowOfOne = Row.ofSize(choices.columns.size());
        fieldsNeeded = Math.max(time.lastIndex(), values.lastIndex()) + 1;
    }

    private Header readHeader(String name) throws IOException {
        for (int i = 0; i < choices.preamble && source.next(); i++) {
            // Passed over, as the layout says.
        }
        if (!choices.header) {
            return Header.none(name);
        }
        if (!nextLine()) {
            throw new IllegalArgumentException(
                    name + ": file must have a header line with " + choices.timeColumn + ", was empty");
        }
        String place = name + ", line " + source.line();
        int unreadable = fields.split(source.letters(), 0, source.length());
        if (unreadable > 0) {
            throw new IllegalArgumentException(
                    place + ", column " + unreadable + ": a quote in the header must be closed on its line, was not");
        }
        return Header.of(place, fields);
    }

    CsvResult readSeries() throws IOException {
        RecordTable table = new RecordTable(choices.columns);
        long before = NEVER;
        while (true) {
            boolean triesPlain = plain == null || choices.repeatedTime == RepeatedTime.ADD_UNLESS_SAME_LINE;
            if (!triesPlain && appendPlain(table)) {
                before = table.lastTime();
            }
            if (!nextRecord(triesPlain)) {
                break;
            }
            if (!readTime(before, true)) {
                continue;
            }
            Row row = readValues();
            long now = now();
            if (isSameLine(now)) {
                continue;
            }
            boolean asWritten = isPlain || time.isAsWritten() && values.isAsWritten();
            if (table.isEmpty() || now > table.lastTime()) {
                table.append(now, row);
            } else if (!table.find(now).isEmpty()) {
                if (!isAdded(table, now, row)) {
                    continue;
                }
                asWritten = false;
            } else if (choices.sorting) {
                table.insertLate(now, row);
                asWritten = false;
                outOfOrder("sorted into place");
            } else {
                outOfOrder("rejected");
                continue;
            }
            before = now;
            log.accepted(asWritten);
        }
        requireSomething();
        return new CsvResult(log.report(), table.toSeries());
    }

    /** Appends all plain lines that follow in the buffer; false if there is none. */
    private boolean appendPlain(RecordTable table) {
        long lines = 0;
        while (source.ahead() < source.filled()) {
            Rows room = table.room(LEAST_ROOM, expectedRows(table.size()));
            int free = room.times.length - room.size;
            int count = readPlain(table.isEmpty() ? NEVER : table.lastTime(), room);
            if (count > 0) {
                log.acceptedAsWritten(count);
                lines += count;
            }
            if (count < free) {
                break;
            }
        }
        return lines > 0;
    }

    private int readPlain(long after, Rows into) {
        PlainLine reader = Objects.requireNonNull(plain);
        int count = reader.read(source.bytes(), source.ahead(), source.filled(), after, time.clock(), into);
        if (count > 0) {
            source.take(count, reader.lastStart(), reader.lastEnd());
        }
        return count;
    }

    /**
     * Rows that the file has, if all are as long as those read so far; the bytes of a reader are not known. Lines of one length,
     * as many loggers write, give the number itself, others nearly.
     */
    private int expectedRows(int rows) {
        long read = Math.max(source.before(source.ahead()) - firstByte, 1);
        double expected = rows * ((double) (bytes - firstByte) / read);
        boolean isOfOneLength = rows > 0 && read % rows == 0;
        return (int) Math.min(isOfOneLength ? Math.rint(expected) : 1.01 * expected, Integer.MAX_VALUE / 2.0);
    }

    CsvReport readRows(CsvRowConsumer consumer) throws IOException {
        Row last = Row.ofSize(choices.columns.size());
        long before = choices.after;
        while (nextRecord(true)) {
            if (!readTime(before, true)) {
                continue;
            }
            Row row = readValues();
            long now = now();
            if (choices.orderOfFile) {
                before = now;
                hand(consumer, now, row);
                continue;
            }
            if (before != NEVER && now <= before) {
                if (now < before) {
                    outOfOrder("rejected");
                } else {
                    duplicate(last.isSameAs(row));
                }
                continue;
            }
            last = row.copy();
            before = now;
            hand(consumer, now, row);
        }
        requireSomething();
        return log.report();
    }

    private void hand(CsvRowConsumer consumer, long now, Row row) {
        consumer.accept(source.line(), now, row.values(), row.qualities());
        log.accepted(isPlain || time.isAsWritten() && values.isAsWritten());
    }

    CsvInstants readInstants() throws IOException {
        long[] times = new long[1024];
        int size = 0;
        long latest = NEVER;
        boolean sorted = true;
        while (nextRecord(true)) {
            if (!readTime(size == 0 ? NEVER : times[size - 1], false)) {
                continue;
            }
            long now = now();
            if (isSameLine(now)) {
                continue;
            }
            boolean inOrder = now >= latest;
            if (!inOrder) {
                outOfOrder(choices.sorting ? "sorted into place" : "rejected");
                if (!choices.sorting) {
                    continue;
                }
                sorted = false;
            } else if (size > 0 && now == latest) {
                log.issue(source.line(), 0, Kind.REPEATED_INSTANT, "the instant of an earlier line; both kept");
            }
            if (size == times.length) {
                times = Arrays.copyOf(times, size + (size >> 1));
            }
            times[size++] = now;
            latest = Math.max(latest, now);
            log.accepted(inOrder && (isPlain || time.isAsWritten()));
        }
        requireSomething();
        times = Arrays.copyOf(times, size);
        if (!sorted) {
            Arrays.sort(times);
        }
        return new CsvInstants(log.report(), times);
    }

    private boolean readTime(long before, boolean strictly) {
        return isPlain
                || time.read(source.line(), source.letters(), fields, before, strictly) && isInPlace(source.line());
    }

    private boolean isInPlace(long line) {
        Optional<DisplacedStamps.Run> run = choices.displaced.runOf(line);
        run.ifPresent(displaced -> log.issue(line, 0, Kind.DISPLACED_STAMP, displaced + "; rejected"));
        return run.isEmpty();
    }

    private Row readValues() {
        if (!isPlain) {
            return values.read(source.line(), source.letters(), fields);
        }
        one.copy(0, rowOfOne);
        return rowOfOne;
    }

    private long now() {
        return isPlain ? one.times[0] : time.epochNanos();
    }

    /** Adds the values to those of the line that has the time already, or rejects them, as the layout says; and logs it. */
    private boolean isAdded(RecordTable table, long now, Row row) {
        if (choices.repeatedTime != RepeatedTime.REJECT) {
            table.addTo(now, row);
            log.issue(source.line(), 0, Kind.REPEATED_INSTANT, "the instant of an earlier line; values added to it");
            return true;
        }
        List<Row> present = table.find(now);
        duplicate(present.get(0).isSameAs(row));
        return false;
    }

    private void duplicate(boolean same) {
        if (same) {
            log.issue(source.line(), 0, Kind.DUPLICATE, "time and values of an earlier line; rejected");
        } else {
            log.issue(
                    source.line(),
                    0,
                    Kind.CONFLICTING_DUPLICATE,
                    "time of an earlier line with other values; rejected, the earlier line stands");
        }
    }

    /** Tells whether the line is, letter by letter, one of those of its instant just before, if the layout asks; and logs it. */
    private boolean isSameLine(long now) {
        if (choices.repeatedTime != RepeatedTime.ADD_UNLESS_SAME_LINE) {
            return false;
        }
        if (now != instantOfLines) {
            linesOfInstant.clear();
            instantOfLines = now;
        }
        if (linesOfInstant.add(source.toText())) {
            return false;
        }
        log.issue(source.line(), 0, Kind.DUPLICATE, "the same as an earlier line, letter by letter; rejected");
        return true;
    }

    private void outOfOrder(String outcome) {
        log.issue(source.line(), 0, Kind.OUT_OF_ORDER, "earlier than a line before; " + outcome);
    }

    /** Goes to the next line of data that has all the fields asked for; complains of those that do not. */
    private boolean nextRecord(boolean triesPlain) throws IOException {
        boolean isTried = !triesPlain;
        isPlain = false;
        while (true) {
            if (plain != null && !isTried) {
                one.size = 0;
                isPlain = readPlain(NEVER, one) > 0;
                if (isPlain) {
                    log.line();
                    return true;
                }
            }
            isTried = false;
            if (!nextLine()) {
                return false;
            }
            log.line();
            int unreadable = fields.split(source.letters(), 0, source.length());
            if (source.holdsNul()) {
                log.issue(
                        source.line(),
                        0,
                        Kind.UNREADABLE_LINE,
                        "holds a character of code 0, as a power cut leaves it; rejected");
            } else if (unreadable > 0) {
                log.issue(
                        source.line(),
                        unreadable,
                        Kind.UNREADABLE_LINE,
                        "a quoted field must end on its line and at a separator; rejected");
            } else if (fields.count() < fieldsNeeded) {
                log.issue(
                        source.line(),
                        fields.count(),
                        Kind.TOO_FEW_COLUMNS,
                        "must have " + fieldsNeeded + ", has " + fields.count() + "; rejected");
            } else if (hasMoreThanHeader()) {
                log.issue(
                        source.line(),
                        header.size() + 1,
                        Kind.TOO_MANY_COLUMNS,
                        "must have at most " + header.size() + " as the header, has "
                                + Text.quoted(fields.text(header.size())) + " beyond; rejected");
            } else {
                return true;
            }
        }
    }

    /** Empty fields at the end are harmless: some loggers end each line with a separator. */
    private boolean hasMoreThanHeader() {
        for (int i = header.size(); i < fields.count(); i++) {
            if (!fields.isEmpty(i)) {
                return true;
            }
        }
        return false;
    }

    private boolean nextLine() throws IOException {
        while (source.next()) {
            if (!source.isBlank() && source.letters()[0] != choices.commentMark) {
                return true;
            }
        }
        return false;
    }

    /** Without a header, a file of nothing would pass unseen. */
    private void requireSomething() {
        if (!choices.header && log.report().lines() == 0) {
            throw new IllegalArgumentException(log.report().source() + ": file must have a line of data, was empty");
        }
    }
}
