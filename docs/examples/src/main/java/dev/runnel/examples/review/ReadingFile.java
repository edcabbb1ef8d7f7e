package dev.runnel.examples.review;

import dev.runnel.internal.Nearest;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvInstants;
import dev.runnel.timeseries.csv.CsvIssue;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvRecords;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.csv.CsvResult;
import dev.runnel.timeseries.csv.CsvUnit;
import dev.runnel.timeseries.csv.DisplacedStamps;
import dev.runnel.timeseries.csv.TimeNumber;
import dev.runnel.timeseries.quality.StrayStamps;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.LongStream;

/** Reads a file of readings or tips by what the site file says and, where that is silent, by what its header tells. */
public final class ReadingFile {

    /**
     * One column of readings.
     *
     * @param column where it stood
     * @param header its name in the file
     * @param unit its unit in the file
     * @param report what became of the lines
     * @param series the readings, SI
     * @param far stamps far from all others, whose readings are set aside
     * @param joined what is to be said of several files that were read as one; else empty
     */
    public record Readings(
            Site.Column column,
            String header,
            CsvUnit unit,
            CsvReport report,
            Series series,
            List<Instant> far,
            String joined) {
        /**
         * Tells whether there was any line below the header.
         *
         * @return true if there was
         */
        public boolean hasLines() {
            return report.lines() > 0;
        }

        /** Other readings in the place of these; the account stays that of the lines. */
        Readings withSeries(Series other) {
            return new Readings(column, header, unit, report, other, far, joined);
        }

        /** The readings of a time; the account stays that of all lines. */
        Readings within(Interval time) {
            return new Readings(column, header, unit, report, series.slice(time), far, joined);
        }
    }

    /**
     * Tips of a gauge.
     *
     * @param column where they stood
     * @param report what became of the lines; empty if there is none below the header, as in a dry week
     * @param tips the tips
     * @param far stamps far from all others, whose tips are set aside
     * @param joined what is to be said of several files that were read as one; else empty
     */
    public record TipLines(
            Site.Column column, Optional<CsvReport> report, Tips tips, List<Instant> far, String joined) {}

    /** Times that are numbers, by what the site file calls them. */
    static final Map<String, TimeNumber> TIME_NUMBERS = Map.of(
            "seconds since 1970", TimeNumber.UNIX_SECONDS,
            "milliseconds since 1970", TimeNumber.UNIX_MILLISECONDS,
            "spreadsheet days", TimeNumber.SPREADSHEET_DAYS);

    /** A stamp so far from all others is one of a clock that was reset; chosen here. */
    private static final Duration FAR = Duration.ofDays(30);

    private ReadingFile() {}

    /** Words that tell what a column holds, as they stand in its name. */
    private static List<String> wordsFor(String what) {
        return switch (what) {
            case "depth" -> List.of("depth", "level");
            case "rain" -> List.of("rain", "precip");
            default -> List.of("veloc", "speed");
        };
    }

    /** Tells whether the file is there; one that the site file names must be. */
    static boolean exists(Site.Column column) {
        return ColumnFiles.exist(column);
    }

    /**
     * Tells whether the file of one quantity holds a column of another one as well.
     *
     * @param column column of the one
     * @param what the other
     * @return true if it does
     */
    public static boolean alsoHolds(Site.Column column, String what) {
        Header header = Header.of(ColumnFiles.withLines(column).get(0), column.format());
        return header.columnLike(wordsFor(what), taken(header, column.format())).isPresent();
    }

    static Readings readings(Site.Column column) {
        return read(column, (file, header) -> {
            String name = name(file, header);
            return piece(file, header, name, unit(file, header, name));
        });
    }

    /** A column by its name. */
    static Readings column(Site.Column column, String name, CsvUnit unit) {
        return read(column, (file, header) -> piece(file, header, name, unit));
    }

    /** Reads the file, or each of several ones, and puts them together. */
    private static Readings read(Site.Column column, BiFunction<Site.Column, Header, Readings> piece) {
        List<Readings> pieces = new ArrayList<>();
        for (Path file : ColumnFiles.withLines(column)) {
            pieces.add(piece.apply(column.in(file), Header.of(file, column.format())));
        }
        Readings all = ColumnFiles.isMany(column) ? JoinedFiles.readings(column, pieces) : pieces.get(0);
        StrayStamps near = StrayStamps.in(all.series(), FAR);
        return new Readings(
                column,
                all.header(),
                all.unit(),
                LineOrder.without(times(near), column, all.report()),
                near.series(),
                times(near),
                all.joined());
    }

    /**
     * Returns the unit of a column, as the site file or its name tells.
     *
     * @param column the column
     * @param header header of its file
     * @param name its name there
     * @return the unit
     * @throws IllegalArgumentException if neither tells, or there is no such column
     */
    public static CsvUnit unit(Site.Column column, Header header, String name) {
        return column.unit().or(() -> Header.unitIn(name)).orElseThrow(() -> unitUnknown(column, header, name));
    }

    /** Rain of each step, as written. */
    static Readings rain(Site.Column column) {
        return read(column, (file, header) -> piece(file, header, name(file, header), CsvUnit.AS_WRITTEN));
    }

    /**
     * Returns the name of a column in its file, as the site file says or as its header tells.
     *
     * @param column the column
     * @param header header of its file
     * @return the name
     * @throws IllegalArgumentException if it is not known
     */
    public static String name(Site.Column column, Header header) {
        return column.header()
                .orElseGet(() -> header.column(column.what(), wordsFor(column.what()), taken(header, column.format())));
    }

    private static Readings piece(Site.Column column, Header header, String name, CsvUnit unit) {
        requireColumn(column, header, name);
        CsvLayout layout = layout(header, column.format()).withSorting().withColumn(column.what(), name, unit);
        CsvResult result = inPlace(column.file(), layout, CsvRecords.read(column.file(), layout));
        return new Readings(column, name, unit, result.report(), result.series(column.what()), List.of(), "");
    }

    /** A file in which a line goes back, or comes twice, is read again where some of its stamps turn out to be of another time. */
    private static CsvResult inPlace(Path file, CsvLayout layout, CsvResult result) {
        CsvReport report = result.report();
        if (report.count(CsvIssue.Kind.OUT_OF_ORDER)
                        + report.count(CsvIssue.Kind.DUPLICATE)
                        + report.count(CsvIssue.Kind.CONFLICTING_DUPLICATE)
                == 0) {
            return result;
        }
        DisplacedStamps displaced = DisplacedStamps.in(file, layout);
        return displaced.runs().isEmpty() ? result : CsvRecords.read(file, layout.withoutDisplaced(displaced));
    }

    private static List<Instant> times(StrayStamps stamps) {
        return stamps.setAside().stream().map(Reading::time).toList();
    }

    static TipLines tips(Site.Column column) {
        List<TipLines> pieces = new ArrayList<>();
        for (Path file : ColumnFiles.withLines(column)) {
            pieces.add(tips(column.in(file), Header.of(file, column.format())));
        }
        TipLines lines = ColumnFiles.isMany(column) ? JoinedFiles.tips(column, pieces) : pieces.get(0);
        Tips all = lines.tips();
        long[] times = all.toEpochNanos();
        long[] different = LongStream.of(times).distinct().toArray();
        List<Instant> far = times(StrayStamps.in(Series.of(different, new double[different.length]), FAR));
        Set<Instant> aside = Set.copyOf(far);
        Tips near = far.isEmpty()
                ? all
                : Tips.of(all.toInstants().stream()
                        .filter(time -> !aside.contains(time))
                        .toList());
        return new TipLines(
                column,
                lines.report().map(report -> LineOrder.without(far, column, report)),
                near,
                far,
                lines.joined());
    }

    private static TipLines tips(Site.Column column, Header header) {
        if (!header.hasLines()) {
            return new TipLines(column, Optional.empty(), Tips.none(), List.of(), "");
        }
        CsvInstants instants = CsvRecords.readInstants(
                column.file(), layout(header, column.format()).withSorting());
        return new TipLines(column, Optional.of(instants.report()), Tips.from(instants), List.of(), "");
    }

    /**
     * Returns the layout of a file, without its columns of values.
     *
     * @param header its header
     * @param format how the site file says that it is written
     * @return the layout
     */
    public static CsvLayout layout(Header header, Site.FileFormat format) {
        CsvLayout layout = CsvLayout.of(format.timeColumn().orElse(header.first()))
                .withZone(format.clock())
                .withRepeatedHour(format.repeatedHour())
                .withSeparator(header.separator())
                .withPreamble(format.preambleLines())
                .withCharset(header.charset())
                .withIssueLimit(Integer.MAX_VALUE);
        if (!header.hasNames()) {
            layout = layout.withoutHeader();
        }
        if (format.isDecimalComma()) {
            layout = layout.withDecimalComma();
        }
        if (!format.missingMarks().isEmpty()) {
            layout = layout.withMissingMarks(format.missingMarks().toArray(String[]::new));
        }
        if (format.timePattern().isPresent()) {
            String pattern = format.timePattern().get();
            TimeNumber number = TIME_NUMBERS.get(pattern);
            layout = number == null ? layout.withTimePattern(pattern) : layout.withTimeNumbers(number);
        }
        if (format.timeOfDayColumn().isPresent()) {
            layout = layout.withTimeOfDayColumn(format.timeOfDayColumn().get());
        }
        return layout;
    }

    /** The columns of times. */
    static List<String> taken(Header header, Site.FileFormat format) {
        List<String> taken = new ArrayList<>();
        taken.add(format.timeColumn().orElse(header.first()));
        format.timeOfDayColumn().ifPresent(taken::add);
        return taken;
    }

    /** A column that is not there has no unit either: then the column is what is missing. */
    private static IllegalArgumentException unitUnknown(Site.Column column, Header header, String name) {
        requireColumn(column, header, name);
        Optional<CsvUnit> ofTimes = Header.unitIn(header.first());
        if (column.format().timeColumn().isEmpty() && ofTimes.isPresent()) {
            return new IllegalArgumentException(column.file() + ": the first column, \"" + header.first()
                    + "\", is taken for the times, and has a unit: add \"time column = ...\" to " + SiteFile.NAME
                    + " if the times stand in another one, of " + header.names());
        }
        return new IllegalArgumentException(column.file() + ": the unit of column \"" + name + "\" is not known: add \""
                + column.what() + " unit = ...\" to " + SiteFile.NAME);
    }

    private static void requireColumn(Site.Column column, Header header, String name) {
        if (!header.names().contains(name)) {
            throw new IllegalArgumentException(column.file() + ": header must have " + name + ", was " + header.names()
                    + Nearest.hint(name, header.names()));
        }
    }
}
