package dev.runnel.examples.review;

import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvReport;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Puts files together that hold one record in pieces, in the order of their times; what stands in two of them counts once. */
final class JoinedFiles {
    private JoinedFiles() {}

    static ReadingFile.Readings readings(Site.Column column, List<ReadingFile.Readings> pieces) {
        List<ReadingFile.Readings> ordered = pieces.stream()
                .sorted(Comparator.comparing(piece ->
                        piece.series().isEmpty() ? Instant.MAX : piece.series().time(0)))
                .toList();
        Map<Instant, Reading> joined = new TreeMap<>();
        int same = 0;
        int other = 0;
        for (ReadingFile.Readings piece : ordered) {
            for (Reading reading : piece.series()) {
                Reading before = joined.putIfAbsent(reading.time(), reading);
                if (before != null) {
                    boolean isSame = Double.compare(before.value(), reading.value()) == 0;
                    same += isSame ? 1 : 0;
                    other += isSame ? 0 : 1;
                }
            }
        }
        ReadingFile.Readings first = ordered.get(0);
        return new ReadingFile.Readings(
                column,
                first.header(),
                first.unit(),
                CsvReport.joined(
                        name(column),
                        pieces.stream().map(ReadingFile.Readings::report).toList()),
                Series.of(joined.values()),
                List.of(),
                said(column, pieces.size(), same, other, "that of the file which begins earlier stands")
                        + otherColumns(first, pieces));
    }

    /** Several tips of one instant in one file are several; the same instant in two files is the same tip. */
    static ReadingFile.TipLines tips(Site.Column column, List<ReadingFile.TipLines> pieces) {
        Map<Instant, Integer> most = new TreeMap<>();
        int all = 0;
        for (ReadingFile.TipLines piece : pieces) {
            Map<Instant, Integer> counts = new TreeMap<>();
            piece.tips().toInstants().forEach(time -> counts.merge(time, 1, Integer::sum));
            counts.forEach((time, count) -> most.merge(time, count, Math::max));
            all += piece.tips().size();
        }
        List<Instant> joined = new ArrayList<>();
        most.forEach((time, count) -> {
            for (int i = 0; i < count; i++) {
                joined.add(time);
            }
        });
        List<CsvReport> reports =
                pieces.stream().flatMap(piece -> piece.report().stream()).toList();
        return new ReadingFile.TipLines(
                column,
                reports.isEmpty() ? Optional.empty() : Optional.of(CsvReport.joined(name(column), reports)),
                Tips.of(joined),
                List.of(),
                said(column, pieces.size(), all - joined.size(), 0, ""));
    }

    /** Names the columns of files whose header is not that of the first. */
    private static String otherColumns(ReadingFile.Readings first, List<ReadingFile.Readings> pieces) {
        List<ReadingFile.Readings> others = pieces.stream()
                .filter(piece -> !piece.header().equals(first.header()) || piece.unit() != first.unit())
                .toList();
        return others.isEmpty()
                ? ""
                : "; " + Show.count(others.size(), "file") + " of another header, read from "
                        + others.stream()
                                .map(piece -> "\"" + piece.header() + "\" in "
                                        + piece.unit().symbol())
                                .distinct()
                                .collect(Collectors.joining(", "));
    }

    private static String name(Site.Column column) {
        return column.file().getFileName().toString();
    }

    private static String said(Site.Column column, int files, int same, int other, String outcome) {
        int empty = ColumnFiles.of(column).size() - files;
        return column.what() + " from " + Show.count(files, "file")
                + (empty > 0 ? "; " + Show.count(empty, "file") + " beside them without a line" : "")
                + (same > 0 ? "; they overlap: " + same + " lines stand in two of them and count once" : "")
                + (other > 0 ? "; " + other + " lines of one time differ between them: " + outcome : "");
    }
}
