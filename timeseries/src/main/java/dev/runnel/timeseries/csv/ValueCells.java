package dev.runnel.timeseries.csv;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import dev.runnel.timeseries.csv.RecordTable.Row;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads the value cells of a line. */
final class ValueCells {
    private static final int NONE = -1;

    private final CsvColumn[] columns;
    private final int[] value;
    private final int[] quality;
    private final char point;
    private final List<String> missingMarks;
    private final Map<String, Quality> qualities = new HashMap<>();
    private final IssueLog log;
    private final Row row;
    private boolean asWritten;

    ValueCells(CsvLayout.Choices choices, Header header, IssueLog log) {
        columns = choices.columns.toArray(new CsvColumn[0]);
        value = new int[columns.length];
        quality = new int[columns.length];
        for (int i = 0; i < columns.length; i++) {
            value[i] = header.indexOf(columns[i].header());
            quality[i] = columns[i].qualityHeader().isEmpty() ? NONE : header.indexOf(columns[i].qualityHeader());
        }
        point = choices.decimalComma ? ',' : '.';
        missingMarks = choices.missingMarks;
        for (Quality each : Quality.values()) {
            qualities.put(each.toText(), each);
        }
        this.log = log;
        row = Row.ofSize(columns.length);
    }

    int lastIndex() {
        int last = 0;
        for (int i = 0; i < columns.length; i++) {
            last = Math.max(last, Math.max(value[i], quality[i]));
        }
        return last;
    }

    /** Reads the cells of a line into the row, which is overwritten by the next line. */
    Row read(long line, char[] buffer, FieldSplitter fields) {
        asWritten = true;
        for (int i = 0; i < columns.length; i++) {
            double number = readValue(line, buffer, fields, i);
            row.values()[i] = number;
            row.qualities()[i] = (Double.isNaN(number) ? Quality.MISSING : readQuality(line, fields, i)).toCode();
        }
        return row;
    }

    /** Whether every cell of the line read last was taken as written. */
    boolean isAsWritten() {
        return asWritten;
    }

    private double readValue(long line, char[] buffer, FieldSplitter fields, int i) {
        int cell = value[i];
        if (isMissing(fields, cell)) {
            return Double.NaN;
        }
        double written = Decimals.parse(buffer, fields.start(cell), fields.end(cell), point);
        double number = columns[i].unit().toSi(written);
        if (!Double.isFinite(number)) {
            asWritten = false;
            log.issue(
                    line,
                    cell + 1,
                    Kind.UNREADABLE_NUMBER,
                    Text.quoted(fields.text(cell)) + " must be a decimal number; taken as missing");
            return Double.NaN;
        }
        return number;
    }

    private boolean isMissing(FieldSplitter fields, int cell) {
        if (fields.isEmpty(cell)) {
            return true;
        }
        for (int i = 0; i < missingMarks.size(); i++) {
            if (fields.is(cell, missingMarks.get(i))) {
                return true;
            }
        }
        return false;
    }

    private Quality readQuality(long line, FieldSplitter fields, int i) {
        int cell = quality[i];
        if (cell == NONE || fields.isEmpty(cell)) {
            return Quality.UNCHECKED;
        }
        String word = fields.text(cell);
        Quality found = qualities.get(word);
        if (found == null || found == Quality.MISSING) {
            asWritten = false;
            log.issue(
                    line,
                    cell + 1,
                    Kind.UNREADABLE_QUALITY,
                    Text.quoted(word)
                            + " must be good, unchecked, estimate, poor or suspect where there is a value; taken as suspect");
            return Quality.SUSPECT;
        }
        return found;
    }
}
