package dev.runnel.examples.follow;

import dev.runnel.examples.review.Header;
import dev.runnel.examples.review.ReadingFile;
import dev.runnel.examples.review.Site;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvRecords;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.csv.CsvRowConsumer;
import java.io.StringReader;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The readings of a growing file, in the order of time. What comes late is passed over and named, line by line, whatever
 * part of the file it was read with. A stamp far ahead of all others waits for the next line to say whether time went on
 * there.
 */
final class FileStream {
    private static final String STATE = "file-stream";
    private static final List<String> REJECTED = List.of("line", "column", "kind", "what");

    /** Chosen here: a reading so far ahead waits for the next one, since a wrong stamp would shut out all before it. */
    private static final Duration FAR = Duration.ofDays(1);

    /** As in the review; between two tips there may be weeks. */
    private static final Duration FAR_FOR_AMOUNTS = Duration.ofDays(30);

    /** Chosen here: so many lines in a row that are late tell of a clock and not of a line. */
    private static final int MOST_LATE = 50;

    /** Takes one row. */
    interface Taker {
        void take(Instant time, double[] values);
    }

    /** Adds the columns of values to a layout, by the header of the file. */
    interface Columns {
        CsvLayout in(CsvLayout layout, Header header);
    }

    private record Row(long line, long time, double[] values) {}

    private record Said(long line, List<?> cells) {}

    private final Site.Column column;
    private final Columns columns;
    private final boolean mayRepeat;
    private final String output;
    private final long far;
    private final GrowingFile file;
    private String header = "";
    private long last = Long.MIN_VALUE;
    private long passUntil = Long.MIN_VALUE;
    private long passed;
    private int lateInARow;
    private Optional<Row> held = Optional.empty();
    private long limit;
    private boolean isDrained;

    /**
     * A stream from the beginning of a file.
     *
     * @param column where its times stand
     * @param columns its values
     * @param mayRepeat whether several lines may have one time, as tips do
     * @param output file for the lines that were not taken
     */
    FileStream(Site.Column column, Columns columns, boolean mayRepeat, String output) {
        this(column, columns, mayRepeat, output, new GrowingFile(column.file()));
    }

    private FileStream(Site.Column column, Columns columns, boolean mayRepeat, String output, GrowingFile file) {
        this.column = column;
        this.columns = columns;
        this.mayRepeat = mayRepeat;
        this.output = output;
        this.far = (mayRepeat ? FAR_FOR_AMOUNTS : FAR).toNanos();
        this.file = file;
    }

    static FileStream from(Site.Column column, Columns columns, boolean mayRepeat, String output, String state) {
        StateText text = StateText.parse(STATE, 1, state);
        FileStream stream =
                new FileStream(column, columns, mayRepeat, output, new GrowingFile(column.file(), text.text("file")));
        stream.header = text.text("header");
        stream.last = text.count("last");
        stream.passUntil = text.count("passuntil");
        stream.passed = text.count("passed");
        stream.lateInARow = text.index("late");
        if (text.flag("held")) {
            stream.held =
                    Optional.of(new Row(text.count("heldline"), text.count("heldtime"), text.numbers("heldvalues")));
        }
        return stream;
    }

    String toState() {
        StateText text = StateText.of(STATE, 1)
                .with("file", file.toState())
                .with("header", header)
                .with("last", last)
                .with("passuntil", passUntil)
                .with("passed", passed)
                .with("late", lateInARow)
                .with("held", held.isPresent());
        return held.map(row -> text.with("heldline", row.line())
                        .with("heldtime", row.time())
                        .with("heldvalues", row.values()))
                .orElse(text)
                .toString();
    }

    /** Time of the last reading; {@link Instant#MIN} before the first. */
    Instant last() {
        return last == Long.MIN_VALUE ? Instant.MIN : EpochNanos.toInstant(last);
    }

    /** Looks how far the file reaches now; until the next look no more of it is read. */
    void look(OutputFiles outputs) {
        Optional<String> news = file.look();
        if (news.isPresent()) {
            header = file.isBegun() ? header : "";
            passUntil = file.isBegun() ? passUntil : last;
            passed = 0;
            outputs.add(output, REJECTED, List.of(0, 0, "file", news.get()));
        }
        limit = file.size();
        isDrained = false;
    }

    /** Nothing is to be had until the next look. */
    boolean isDrained() {
        return isDrained;
    }

    /** Takes the next part of the file; false if there is none. */
    boolean take(Taker taker, OutputFiles outputs, int longest, boolean isAll) {
        Optional<GrowingFile.Part> part = isDrained ? Optional.empty() : file.next(limit, longest, isAll);
        if (part.isEmpty() || !take(part.get(), taker, outputs)) {
            isDrained = true;
            return false;
        }
        file.took(part.get());
        return true;
    }

    /** Gives out what was held back, since nothing more will come. */
    void finish(Taker taker) {
        held.ifPresent(row -> goOn(row, taker));
        held = Optional.empty();
    }

    /** False if the part does not hold the header yet. */
    private boolean take(GrowingFile.Part part, Taker taker, OutputFiles outputs) {
        String text = part.text();
        long before = part.linesBefore();
        if (header.isEmpty()) {
            List<String> lines = text.lines().toList();
            int at = headerAt(lines);
            if (at < 0) {
                return false;
            }
            header = lines.get(at).replace("\uFEFF", "");
            before += at;
            text = String.join("\n", lines.subList(at, lines.size())) + "\n";
        } else if (header().hasNames()) {
            text = header + "\n" + text;
            before--;
        }
        read(text, before, taker, outputs);
        return true;
    }

    private int headerAt(List<String> lines) {
        for (int i = column.format().preambleLines(); i < lines.size(); i++) {
            if (!lines.get(i).isBlank() && !lines.get(i).startsWith("#")) {
                return i;
            }
        }
        return -1;
    }

    private Header header() {
        return Header.of(column.file(), List.of(header), column.format());
    }

    private void read(String text, long linesBefore, Taker taker, OutputFiles outputs) {
        Header found = header();
        CsvLayout layout = columns.in(ReadingFile.layout(found, column.format()), found)
                .withPreamble(0)
                .withOrderOfFile(last());
        List<Said> said = new ArrayList<>();
        CsvReport report = CsvRecords.forEach(
                column.file().toString(), new StringReader(plain(text)), layout, new CsvRowConsumer() {
                    @Override
                    public void accept(long time, double[] values, byte[] qualities) {
                        throw new IllegalStateException("rows come with their lines");
                    }

                    @Override
                    public void accept(long line, long time, double[] values, byte[] qualities) {
                        judge(new Row(line + linesBefore, time, values.clone()), taker, said);
                    }
                });
        for (CsvIssue issue : report.issues()) {
            long line = issue.line() + linesBefore;
            said.add(new Said(line, List.of(line, issue.column(), issue.kind().toText(), issue.text())));
        }
        said.sort(Comparator.comparingLong(Said::line));
        said.forEach(each -> outputs.add(output, REJECTED, each.cells()));
    }

    /** Characters that no text has would give a whole part away; so they cost their line only. */
    private static String plain(String text) {
        return text.chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t')
                ? text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F]", "\uFFFD")
                : text;
    }

    private void judge(Row row, Taker taker, List<Said> said) {
        if (held.isPresent()) {
            Row before = held.get();
            held = Optional.empty();
            if (row.time() >= before.time() && row.time() - before.time() <= far) {
                goOn(before, taker);
            } else {
                said.add(said(row, before, "far from all others", "set aside"));
            }
        }
        if (passUntil != Long.MIN_VALUE && row.time() <= passUntil) {
            passed++;
            return;
        }
        if (passed > 0) {
            said.add(new Said(
                    row.line(),
                    List.of(
                            row.line(),
                            0,
                            "read before",
                            passed + " lines before this one are not later than " + EpochNanos.toInstant(passUntil)
                                    + " and were passed over")));
            passed = 0;
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
        return new Said(shown.line(), List.of(row.line(), 0, kind, EpochNanos.toInstant(row.time()) + "; " + outcome));
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
