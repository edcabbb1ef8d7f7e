package dev.runnel.examples.follow;

import dev.runnel.examples.review.ColumnFiles;
import dev.runnel.examples.review.Site;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.csv.CsvIssue;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The readings of one record in the order of time, from a growing file or from several, such as one for each month. What
 * comes late is passed over and named, line by line, whatever part of a file it was read with. A stamp far ahead of all
 * others waits for the next line to say whether time went on there.
 *
 * <p>Several files are read one after the other, in the order of the times with which they begin. A file behind which
 * another one has begun is read to its very end, with a last line that has no line feed, once it rests for one look.
 */
final class FileStream {
    private static final String STATE = "file-stream";
    private static final List<String> REJECTED = List.of("line", "column", "kind", "what");
    private static final List<String> REJECTED_OF_MANY = List.of("file", "line", "column", "kind", "what");

    /** Chosen here: a reading so far ahead waits for the next one, since a wrong stamp would shut out all before it. */
    private static final Duration FAR = Duration.ofDays(1);

    /** As in the review; between two tips there may be weeks. */
    private static final Duration FAR_FOR_AMOUNTS = Duration.ofDays(30);

    /** Chosen here: so many lines in a row that are late tell of a clock and not of a line. */
    private static final int MOST_LATE = 50;

    /** Chosen here: so many lines without a single reading are told of. */
    private static final int MANY_REFUSED = 20;

    /** Takes one row. */
    interface Taker {
        void take(Instant time, double[] values);
    }

    private record Row(String file, long line, long time, double[] values) {}

    /** What is to be said of a line, where another one shows it. */
    private record Said(long shownAt, String file, List<Object> cells) {}

    private final Site.Column column;
    private final GrowingTable.Columns columns;
    private final boolean mayRepeat;
    private final String output;
    private final long far;
    private final boolean isMany;
    private final List<GrowingTable> tables = new ArrayList<>();
    private long last = Long.MIN_VALUE;
    private int lateInARow;
    private Optional<Row> held = Optional.empty();
    private long refused;
    private String firstRefused = "";
    private boolean isDrained;

    /**
     * A stream from the beginning of its files.
     *
     * @param column where its times stand
     * @param columns its values
     * @param mayRepeat whether several lines may have one time, as tips do
     * @param output file for the lines that were not taken
     */
    FileStream(Site.Column column, GrowingTable.Columns columns, boolean mayRepeat, String output) {
        this(column, columns, mayRepeat, output, ColumnFiles.isMany(column));
        if (!isMany) {
            tables.add(new GrowingTable(column, columns));
        }
    }

    private FileStream(
            Site.Column column, GrowingTable.Columns columns, boolean mayRepeat, String output, boolean isMany) {
        this.column = column;
        this.columns = columns;
        this.mayRepeat = mayRepeat;
        this.output = output;
        this.far = (mayRepeat ? FAR_FOR_AMOUNTS : FAR).toNanos();
        this.isMany = isMany;
    }

    static FileStream from(
            Site.Column column, GrowingTable.Columns columns, boolean mayRepeat, String output, String state) {
        StateText text = StateText.parse(STATE, 1, state);
        FileStream stream = new FileStream(column, columns, mayRepeat, output, text.flag("many"));
        List<String> names = text.list("files");
        List<String> states = text.list("tables");
        for (int i = 0; i < names.size(); i++) {
            Path file = stream.isMany ? ColumnFiles.folder(column).resolve(names.get(i)) : column.file();
            stream.tables.add(GrowingTable.from(column, columns, file, states.get(i)));
        }
        stream.last = text.count("last");
        stream.lateInARow = text.index("late");
        stream.refused = text.count("refused");
        if (text.flag("held")) {
            stream.held = Optional.of(new Row(
                    text.text("heldfile"),
                    text.count("heldline"),
                    text.count("heldtime"),
                    values(text.list("heldnames"), text.numbers("heldvalues"), columns.names())));
        }
        return stream;
    }

    /** Values by their names: with other books other columns are wanted. */
    private static double[] values(List<String> names, double[] values, List<String> wanted) {
        double[] found = new double[wanted.size()];
        for (int i = 0; i < found.length; i++) {
            int at = names.indexOf(wanted.get(i));
            found[i] = at < 0 ? Double.NaN : values[at];
        }
        return found;
    }

    String toState() {
        StateText text = StateText.of(STATE, 1)
                .with("many", isMany)
                .with("files", tables.stream().map(GrowingTable::name).toList())
                .with("tables", tables.stream().map(GrowingTable::toState).toList())
                .with("last", last)
                .with("late", lateInARow)
                .with("refused", refused)
                .with("held", held.isPresent());
        return held.map(row -> text.with("heldfile", row.file())
                        .with("heldline", row.line())
                        .with("heldtime", row.time())
                        .with("heldnames", columns.names())
                        .with("heldvalues", row.values()))
                .orElse(text)
                .toString();
    }

    /** Time of the last reading; {@link Instant#MIN} before the first. */
    Instant last() {
        return last == Long.MIN_VALUE ? Instant.MIN : EpochNanos.toInstant(last);
    }

    /** Looks how far the files reach now; until the next look no more of them is read. */
    void look(OutputFiles outputs) {
        if (isMany) {
            findFiles();
        }
        for (GrowingTable table : tables) {
            table.look(last).ifPresent(news -> say(outputs, table.name(), List.of(0, 0, "file", news)));
            if (isMany) {
                table.findFirst(GrowingFile.PART);
            }
        }
        tables.sort(Comparator.comparingLong(GrowingTable::first).thenComparing(GrowingTable::name));
        isDrained = false;
    }

    private void findFiles() {
        List<Path> known = tables.stream().map(GrowingTable::path).toList();
        for (Path file : ColumnFiles.inFolder(column)) {
            if (!known.contains(file)) {
                tables.add(new GrowingTable(column.in(file), columns));
            }
        }
    }

    private void say(OutputFiles outputs, String file, List<Object> cells) {
        List<Object> row = new ArrayList<>(cells);
        if (isMany) {
            row.add(0, file);
        }
        outputs.add(output, isMany ? REJECTED_OF_MANY : REJECTED, row);
    }

    /** Nothing is to be had until the next look. */
    boolean isDrained() {
        return isDrained;
    }

    /** Takes the next part of the files; false if there is none. */
    boolean take(Taker taker, OutputFiles outputs, int longest, boolean isAll) {
        for (int i = 0; i < tables.size() && !isDrained; i++) {
            GrowingTable table = tables.get(i);
            boolean isOver = i + 1 < tables.size() && tables.get(i + 1).first() != Long.MAX_VALUE;
            Optional<GrowingFile.Part> part = table.next(longest, isAll || isOver && table.isAtRest());
            if (part.isPresent() && take(table, part.get(), taker, outputs)) {
                table.took(part.get());
                return true;
            }
            if (isOver && !isAll && !table.isAtRest() && table.hasRest()) {
                break;
            }
        }
        isDrained = true;
        return false;
    }

    /** Says once what is wrong where no line of many could be taken; empty if there is nothing to say. */
    Optional<String> trouble() {
        if (firstRefused.isEmpty()) {
            return Optional.empty();
        }
        String first = firstRefused;
        firstRefused = "";
        return Optional.of(
                column.file().getFileName() + ": none of the first " + refused + " lines could be taken; " + first);
    }

    /** Gives out what was held back, since nothing more will come, and says what could not be read. */
    void finish(Taker taker, OutputFiles outputs) {
        held.ifPresent(row -> goOn(row, taker));
        held = Optional.empty();
        for (GrowingTable table : tables) {
            if (table.hasRest()) {
                say(
                        outputs,
                        table.name(),
                        List.of(0, 0, "unread", table.rest() + " bytes at the end hold no line, and were not read"));
            }
        }
        tables.forEach(table ->
                table.passedOver().ifPresent(text -> say(outputs, table.name(), List.of(0, 0, "read before", text))));
    }

    /** False if the part does not hold the header yet. */
    private boolean take(GrowingTable table, GrowingFile.Part part, Taker taker, OutputFiles outputs) {
        // Another file may begin with what the one before it holds.
        if (isMany && !table.isBegun()) {
            table.passUntil(last);
        }
        List<Said> said = new ArrayList<>();
        Optional<List<CsvIssue>> issues = table.read(
                part,
                last(),
                (line, time, values) -> judge(table, new Row(table.name(), line, time, values), taker, said));
        issues.ifPresent(found -> {
            for (CsvIssue issue : found) {
                said.add(new Said(
                        issue.line(),
                        table.name(),
                        List.of(issue.line(), issue.column(), issue.kind().toText(), issue.text())));
            }
            if (!found.isEmpty() && last == Long.MIN_VALUE && held.isEmpty()) {
                firstRefused = refused < MANY_REFUSED && refused + found.size() >= MANY_REFUSED
                        ? found.get(0).toString()
                        : firstRefused;
                refused += found.size();
            }
            said.sort(Comparator.comparingLong(Said::shownAt));
            said.forEach(each -> say(outputs, each.file(), each.cells()));
        });
        return issues.isPresent();
    }

    private void judge(GrowingTable table, Row row, Taker taker, List<Said> said) {
        if (held.isPresent()) {
            Row before = held.get();
            held = Optional.empty();
            if (row.time() >= before.time() && row.time() - before.time() <= far) {
                goOn(before, taker);
            } else {
                said.add(said(row, before, "far from all others", "set aside"));
            }
        }
        if (table.passes(row.time())) {
            return;
        }
        for (GrowingTable each : tables) {
            each.passedOver()
                    .ifPresent(text -> said.add(new Said(
                            row.line(), each.name(), List.of(each == table ? row.line() : 0, 0, "read before", text))));
        }
        if (last == Long.MIN_VALUE || row.time() > last && row.time() - last > far) {
            held = Optional.of(row);
            if (mayRepeat) {
                taker.take(EpochNanos.toInstant(row.time()), row.values());
            }
        } else if (row.time() > last || mayRepeat && last - row.time() <= far) {
            give(row, taker);
            lateInARow = 0;
        } else {
            said.add(said(row, row, row.time() == last ? "repeated time" : "out of order", "rejected"));
            lateInARow++;
            if (lateInARow == MOST_LATE) {
                said.add(
                        new Said(
                                row.line(),
                                row.file(),
                                List.of(
                                        row.line(),
                                        0,
                                        "clock",
                                        MOST_LATE + " lines in a row are not later than " + last()
                                                + ": a clock ran ahead or was set back; nothing is taken before that time is over")));
            }
        }
    }

    /** Stands where the row that shows it stands, so that the order does not hang on how the file was cut. */
    private static Said said(Row shown, Row row, String kind, String outcome) {
        return new Said(
                shown.line(),
                row.file(),
                List.of(row.line(), 0, kind, EpochNanos.toInstant(row.time()) + "; " + outcome));
    }

    /** Amounts are given out at once: in the wrong year they do no harm, and two hours late they would. */
    private void goOn(Row row, Taker taker) {
        if (mayRepeat) {
            last = Math.max(last, row.time());
        } else {
            give(row, taker);
        }
    }

    private void give(Row row, Taker taker) {
        last = Math.max(last, row.time());
        taker.take(EpochNanos.toInstant(row.time()), row.values());
    }
}
