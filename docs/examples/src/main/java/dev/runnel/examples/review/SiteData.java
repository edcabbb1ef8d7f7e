package dev.runnel.examples.review;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * All that the folder of a site holds, read and checked.
 *
 * @param site what the site file says
 * @param depth depth readings
 * @param velocity velocity readings, if there are any
 * @param emptyVelocity the file of velocities, if it is there and holds no line of readings
 * @param rain what the gauge left, if there is one
 * @param ddf depth-duration-frequency table, if there is one
 * @param band the table with its limits of confidence, if there are tables of them
 * @param books visits and corrections
 */
record SiteData(
        Site site,
        CheckedReadings depth,
        Optional<CheckedReadings> velocity,
        Optional<Path> emptyVelocity,
        Optional<RainSource> rain,
        Optional<DdfTable> ddf,
        Optional<DdfBand> band,
        SiteBooks books) {

    static SiteData read(Path folder) {
        Site site = SiteFile.read(folder);
        Site.Inputs inputs = site.inputs();
        if (!ReadingFile.exists(inputs.depth())) {
            throw new IllegalArgumentException(inputs.depth().file()
                    + ": file must be there, it holds the depth readings; if it has another name, add \"depth file = ...\" to "
                    + SiteFile.NAME);
        }
        SiteBooks books = SiteBooks.of(site);
        ReadingFile.Readings depths = books.corrected(site, ReadingFile.readings(inputs.depth()));
        Optional<ReadingFile.Readings> lines = velocityColumn(inputs).map(ReadingFile::readings);
        Optional<CheckedReadings> velocity = lines.filter(ReadingFile.Readings::hasLines)
                .map(readings -> CheckedReadings.velocity(site, books.corrected(site, readings), depths.series()));
        CheckedReadings depth = CheckedReadings.depth(site, depths, velocity);
        Optional<Path> emptyVelocity = lines.filter(readings -> !readings.hasLines())
                .map(readings -> readings.column().file());
        Optional<DdfTable> ddf = ddf(inputs.ddf().depths(), site.rain().basis());
        return new SiteData(
                site,
                depth,
                velocity,
                emptyVelocity,
                RainSource.of(site),
                ddf,
                ddf.flatMap(table -> band(table, inputs.ddf())),
                books);
    }

    /** The file of velocities, or a column of velocities beside the depths. */
    private static Optional<Site.Column> velocityColumn(Site.Inputs inputs) {
        if (ReadingFile.exists(inputs.velocity())) {
            return Optional.of(inputs.velocity());
        }
        Site.Column beside = inputs.velocity().beside(inputs.depth());
        return beside.header().isPresent() || ReadingFile.alsoHolds(inputs.depth(), beside.what())
                ? Optional.of(beside)
                : Optional.empty();
    }

    static Optional<DdfTable> ddf(Path file, ReturnPeriodBasis basis) {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        return Optional.of(DdfTable.read(ColumnFiles.small(file), basis));
    }

    static Optional<DdfBand> band(DdfTable table, Site.DdfFiles files) {
        Optional<DdfTable> lower = ddf(files.lower(), table.basis());
        Optional<DdfTable> upper = ddf(files.upper(), table.basis());
        if (lower.isPresent() != upper.isPresent()) {
            throw new IllegalArgumentException((lower.isPresent() ? files.upper() : files.lower())
                    + ": file must be there, since " + (lower.isPresent() ? files.lower() : files.upper())
                    + " is: limits of confidence are two");
        }
        return lower.map(low -> DdfBand.of(table, low, upper.orElseThrow(), files.confidence()));
    }

    /** Returns the time from the first depth reading to one interval after the last. */
    Interval record() {
        Series series = depth.series();
        return Interval.of(series.time(0), series.time(series.size() - 1).plus(depth.interval()));
    }

    /** Returns the data of the days of a period; the lines that were rejected are those of the whole files. */
    SiteData within(Period period) {
        if (period.isWhole()) {
            return this;
        }
        Interval time = period.of(record(), site.zone())
                .filter(part -> depth.within(part).usable() > 0)
                .orElseThrow(() -> new IllegalArgumentException(
                        "It must hold usable depth readings " + period.text() + ", its record is " + record() + "."));
        return new SiteData(
                site,
                depth.within(time),
                velocity.map(readings -> readings.within(time))
                        .filter(readings -> !readings.series().isEmpty()),
                emptyVelocity,
                rain,
                ddf,
                band,
                books);
    }

    /** Returns how dates of this record are shown. */
    Dates dates() {
        return Dates.in(site.zone(), record());
    }

    /** Returns the accounts of all files of readings. */
    List<CsvReport> reports() {
        List<CsvReport> reports = new ArrayList<>();
        reports.add(depth.lines().report());
        velocity.ifPresent(readings -> reports.add(readings.lines().report()));
        rain.flatMap(RainSource::report).ifPresent(reports::add);
        return reports;
    }

    /** Returns the files that were read. */
    Set<Path> files() {
        Set<Path> files = new TreeSet<>();
        files.add(site.folder().resolve(SiteFile.NAME));
        files.addAll(ColumnFiles.of(depth.lines().column()));
        velocity.ifPresent(
                readings -> files.addAll(ColumnFiles.of(readings.lines().column())));
        rain.ifPresent(source -> files.addAll(source.files()));
        ddf.ifPresent(table -> files.add(site.inputs().ddf().depths()));
        files.addAll(books.files());
        band.ifPresent(limits -> {
            files.add(site.inputs().ddf().lower());
            files.add(site.inputs().ddf().upper());
        });
        return files;
    }

    Duration longestGap() {
        return depth.longestGap();
    }
}
