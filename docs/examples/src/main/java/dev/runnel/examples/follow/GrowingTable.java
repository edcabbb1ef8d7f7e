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
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One growing file of a record: its header, and its parts turned into rows. Their order is for the record to judge. */
final class GrowingTable {
    private static final String STATE = "growing-table";

    /** Chosen here: the middle one of so many stamps tells where a file begins, since one of them may be wrong. */
    private static final int FIRST_STAMPS = 3;

    /** Lines in which these are looked for. */
    private static final int FIRST_LINES = 50;

    /** The columns of values. */
    interface Columns {
        /** What they are called here, in the order in which rows hold them. */
        List<String> names();

        /** Adds them to a layout, by the header of a file. */
        CsvLayout in(CsvLayout layout, Header header);
    }

    /** Takes one row with its line in the file. */
    interface Rows {
        void take(long line, long time, double[] values);
    }

    private final Site.Column column;
    private final Columns columns;
    private final GrowingFile file;
    private String header = "";
    private long first = Long.MAX_VALUE;
    private long passUntil = Long.MIN_VALUE;
    private long passed;
    private long limit;
    private long limitBefore;

    /**
     * A file from its beginning.
     *
     * @param column where its times stand
     * @param columns its values
     */
    GrowingTable(Site.Column column, Columns columns) {
        this(column, columns, new GrowingFile(column.file()));
    }

    private GrowingTable(Site.Column column, Columns columns, GrowingFile file) {
        this.column = column;
        this.columns = columns;
        this.file = file;
    }

    /** The file whose name the state holds, beside that of a column or in its folder. */
    static GrowingTable from(Site.Column column, Columns columns, Path file, String state) {
        StateText text = StateText.parse(STATE, 1, state);
        Site.Column one = column.in(file);
        GrowingTable table = new GrowingTable(one, columns, new GrowingFile(file, text.text("file")));
        table.header = text.text("header");
        table.first = text.count("first");
        table.passUntil = text.count("passuntil");
        table.passed = text.count("passed");
        table.limit = text.count("limit");
        return table;
    }

    String toState() {
        return StateText.of(STATE, 1)
                .with("file", file.toState())
                .with("header", header)
                .with("first", first)
                .with("passuntil", passUntil)
                .with("passed", passed)
                .with("limit", limit)
                .toString();
    }

    Path path() {
        return file.path();
    }

    String name() {
        return String.valueOf(file.path().getFileName());
    }

    /** Where the file begins; the end of time while that is not known. */
    long first() {
        return first;
    }

    boolean isBegun() {
        return file.isBegun();
    }

    /**
     * Looks how far the file reaches now; until the next look no more of it is read.
     *
     * @param last time of the last reading of the record
     * @return what is to be said of the file
     */
    Optional<String> look(long last) {
        Optional<String> news = file.look();
        if (news.isPresent() && !file.isBegun()) {
            header = "";
            first = Long.MAX_VALUE;
            passUntil = last;
            passed = 0;
        }
        limitBefore = limit;
        limit = file.size();
        return news;
    }

    /** Finds where the file begins, if it has not been read yet and holds a line that tells it. */
    void findFirst(int longest) {
        if (first != Long.MAX_VALUE) {
            return;
        }
        Optional<GrowingFile.Part> part = file.next(limit, longest, true);
        if (part.isEmpty()) {
            return;
        }
        List<String> lines = part.get().text().lines().toList();
        int at = headerAt(lines);
        if (at < 0) {
            return;
        }
        Header found = header(lines.get(at).replace("\uFEFF", ""));
        CsvLayout layout =
                ReadingFile.layout(found, column.format()).withPreamble(0).withOrderOfFile(Instant.MIN);
        List<Long> times = new ArrayList<>();
        String head = String.join("\n", lines.subList(at, Math.min(lines.size(), at + FIRST_LINES))) + "\n";
        CsvRecords.forEach(
                column.file().toString(), new StringReader(plain(head)), layout, (time, values, qualities) -> {
                    if (times.size() < FIRST_STAMPS) {
                        times.add(time);
                    }
                });
        if (!times.isEmpty()) {
            times.sort(Long::compare);
            first = times.get((times.size() - 1) / 2);
        }
    }

    /** What is not later than the last reading of the record was read from another file. */
    void passUntil(long last) {
        passUntil = last;
    }

    /** Tells whether a row was read before; if so it is counted. */
    boolean passes(long time) {
        boolean isOld = passUntil != Long.MIN_VALUE && time <= passUntil;
        passed += isOld ? 1 : 0;
        return isOld;
    }

    /** Says how many rows were passed over since this was last said. */
    Optional<String> passedOver() {
        if (passed == 0) {
            return Optional.empty();
        }
        String text = passed + " lines before this one are not later than " + EpochNanos.toInstant(passUntil)
                + " and were passed over";
        passed = 0;
        return Optional.of(text);
    }

    /** Tells whether something is there that has not been taken, a line without its end too. */
    boolean hasRest() {
        return rest() > 0;
    }

    /** Bytes that are there and were not taken. */
    long rest() {
        return file.rest(limit);
    }

    /** Tells whether the file has not grown between the last two looks. */
    boolean isAtRest() {
        return limit == limitBefore;
    }

    Optional<GrowingFile.Part> next(int longest, boolean isAll) {
        return file.next(limit, longest, isAll);
    }

    void took(GrowingFile.Part part) {
        file.took(part);
    }

    /**
     * Reads a part.
     *
     * @param part whole lines
     * @param last time of the last reading of the record, by which a repeated hour is judged
     * @param rows takes the rows
     * @return the lines that are no rows, numbered as in the file; empty if the part does not hold the header yet
     */
    Optional<List<CsvIssue>> read(GrowingFile.Part part, Instant last, Rows rows) {
        String text = part.text();
        long before = part.linesBefore();
        if (header.isEmpty()) {
            List<String> lines = text.lines().toList();
            int at = headerAt(lines);
            if (at < 0) {
                return Optional.empty();
            }
            header = lines.get(at).replace("\uFEFF", "");
            before += at;
            text = String.join("\n", lines.subList(at, lines.size())) + "\n";
        } else if (header(header).hasNames()) {
            text = header + "\n" + text;
            before--;
        }
        return Optional.of(read(text, before, last, rows));
    }

    private int headerAt(List<String> lines) {
        for (int i = column.format().preambleLines(); i < lines.size(); i++) {
            if (!lines.get(i).isBlank() && !lines.get(i).startsWith("#")) {
                return i;
            }
        }
        return -1;
    }

    private Header header(String line) {
        return Header.of(column.file(), List.of(line), column.format());
    }

    private List<CsvIssue> read(String text, long linesBefore, Instant last, Rows rows) {
        Header found = header(header);
        CsvLayout layout = columns.in(ReadingFile.layout(found, column.format()), found)
                .withPreamble(0)
                .withOrderOfFile(last);
        CsvReport report = CsvRecords.forEach(
                column.file().toString(), new StringReader(plain(text)), layout, new CsvRowConsumer() {
                    @Override
                    public void accept(long time, double[] values, byte[] qualities) {
                        throw new IllegalStateException("rows come with their lines");
                    }

                    @Override
                    public void accept(long line, long time, double[] values, byte[] qualities) {
                        rows.take(line + linesBefore, time, values.clone());
                    }
                });
        return report.issues().stream()
                .map(issue -> new CsvIssue(issue.line() + linesBefore, issue.column(), issue.kind(), issue.text()))
                .toList();
    }

    /** Characters that no text has would give a whole part away; so they cost their line only. */
    private static String plain(String text) {
        return text.chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t')
                ? text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F]", "\uFFFD")
                : text;
    }
}
