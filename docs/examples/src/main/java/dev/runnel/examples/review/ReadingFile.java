package dev.runnel.examples.review;

import dev.runnel.internal.Nearest;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvInstants;
import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvRecords;
import dev.runnel.timeseries.csv.CsvReport;
import dev.runnel.timeseries.csv.CsvResult;
import dev.runnel.timeseries.csv.CsvUnit;
import dev.runnel.timeseries.quality.StrayStamps;
import java.nio.file.Files;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
     */
    public record Readings(
            Site.Column column, String header, CsvUnit unit, CsvReport report, Series series, List<Instant> far) {
        /**
         * Tells whether there was any line below the header.
         *
         * @return true if there was
         */
        public boolean hasLines() {
            return report.lines() > 0;
        }

        /** The readings of a time; the account stays that of all lines. */
        Readings within(Interval time) {
            return new Readings(column, header, unit, report, series.slice(time), far);
        }
    }

    /**
     * Tips of a gauge.
     *
     * @param column where they stood
     * @param report what became of the lines; empty if there is none below the header, as in a dry week
     * @param tips the tips
     * @param far stamps far from all others, whose tips are set aside
     */
    public record TipLines(Site.Column column, Optional<CsvReport> report, Tips tips, List<Instant> far) {}

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
        if (column.isNamed() && !Files.exists(column.file())) {
            throw new IllegalArgumentException(column.file() + ": file must be there, it is named in " + SiteFile.NAME);
        }
        if (Files.exists(column.file()) && !Files.isRegularFile(column.file())) {
            throw new IllegalArgumentException(column.file() + ": must be a file, and is a folder or a device");
        }
        return Files.exists(column.file());
    }

    /**
     * Tells whether the file of one quantity holds a column of another one as well.
     *
     * @param column column of the one
     * @param what the other
     * @return true if it does
     */
    public static boolean alsoHolds(Site.Column column, String what) {
        Header header = Header.of(column.file(), column.format());
        return header.columnLike(wordsFor(what), taken(header, column.format())).isPresent();
    }

    static Readings readings(Site.Column column) {
        Header header = Header.of(column.file(), column.format());
        String name = name(column, header);
        return read(column, header, name, unit(column, header, name));
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
        Header header = Header.of(column.file(), column.format());
        return read(column, header, name(column, header), CsvUnit.AS_WRITTEN);
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

    private static Readings read(Site.Column column, Header header, String name, CsvUnit unit) {
        CsvLayout layout = layout(header, column.format()).withSorting().withColumn(column.what(), name, unit);
        CsvResult result = CsvRecords.read(column.file(), layout);
        Series all = result.series(column.what());
        StrayStamps near = StrayStamps.in(all, FAR);
        return new Readings(column, name, unit, result.report(), near.series(), times(near));
    }

    private static List<Instant> times(StrayStamps stamps) {
        return stamps.setAside().stream().map(Reading::time).toList();
    }

    static TipLines tips(Site.Column column) {
        Header header = Header.of(column.file(), column.format());
        if (!header.hasLines()) {
            return new TipLines(column, Optional.empty(), Tips.none(), List.of());
        }
        CsvInstants instants = CsvRecords.readInstants(
                column.file(), layout(header, column.format()).withSorting());
        Tips all = Tips.from(instants);
        long[] times = all.toEpochNanos();
        long[] different = LongStream.of(times).distinct().toArray();
        List<Instant> far = times(StrayStamps.in(Series.of(different, new double[different.length]), FAR));
        if (far.isEmpty()) {
            return new TipLines(column, Optional.of(instants.report()), all, far);
        }
        Set<Instant> aside = Set.copyOf(far);
        return new TipLines(
                column,
                Optional.of(instants.report()),
                Tips.of(all.toInstants().stream()
                        .filter(time -> !aside.contains(time))
                        .toList()),
                far);
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
            layout = layout.withTimePattern(format.timePattern().get());
        }
        if (format.timeOfDayColumn().isPresent()) {
            layout = layout.withTimeOfDayColumn(format.timeOfDayColumn().get());
        }
        return layout;
    }

    private static List<String> taken(Header header, Site.FileFormat format) {
        List<String> taken = new ArrayList<>();
        taken.add(format.timeColumn().orElse(header.first()));
        format.timeOfDayColumn().ifPresent(taken::add);
        return taken;
    }

    /** A column that is not there has no unit either: then the column is what is missing. */
    private static IllegalArgumentException unitUnknown(Site.Column column, Header header, String name) {
        if (!header.names().contains(name)) {
            return new IllegalArgumentException(column.file() + ": header must have " + name + ", was " + header.names()
                    + Nearest.hint(name, header.names()));
        }
        return new IllegalArgumentException(column.file() + ": the unit of column \"" + name + "\" is not known: add \""
                + column.what() + " unit = ...\" to " + SiteFile.NAME);
    }
}
