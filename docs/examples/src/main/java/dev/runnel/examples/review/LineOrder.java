package dev.runnel.examples.review;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvRecords;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.csv.CsvRowConsumer;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Tells lines that are out of order from those that only stand behind a line of the year 2099. */
final class LineOrder {
    private LineOrder() {}

    /** Returns the account of the lines as it is without those of some stamps. */
    static CsvReport without(List<Instant> far, Site.Column column, CsvReport report) {
        if (far.isEmpty() || report.count(CsvIssue.Kind.OUT_OF_ORDER) == 0 || ColumnFiles.isMany(column)) {
            return report;
        }
        Header header = Header.of(column.file(), column.format());
        Late late = new Late(far);
        CsvRecords.forEach(
                column.file(), ReadingFile.layout(header, column.format()).withOrderOfFile(Instant.MIN), late);
        return report.withoutIssues(
                issue -> issue.kind() == CsvIssue.Kind.OUT_OF_ORDER && !late.lines.contains(issue.line()));
    }

    /** Gathers the lines that are late among those of the other stamps, and the lines of the stray ones. */
    private static final class Late implements CsvRowConsumer {
        private final Set<Instant> far;
        private final Set<Long> lines = new HashSet<>();
        private long latest = Long.MIN_VALUE;

        Late(List<Instant> far) {
            this.far = Set.copyOf(far);
        }

        @Override
        public void accept(long time, double[] values, byte[] qualities) {
            throw new IllegalStateException("rows come with their lines");
        }

        @Override
        public void accept(long line, long time, double[] values, byte[] qualities) {
            if (far.contains(EpochNanos.toInstant(time)) || time < latest) {
                lines.add(line);
            } else {
                latest = time;
            }
        }
    }
}
