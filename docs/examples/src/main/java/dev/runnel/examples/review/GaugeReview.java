package dev.runnel.examples.review;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The review of a folder with a gauge and no monitor.
 *
 * @param site what the site file says; its pipe plays no part
 * @param source what the gauge left
 * @param record the local days from its first sign to its last one, or those of the period
 * @param rain what it says
 * @param ddf depth-duration-frequency table, if there is one
 * @param band its limits of confidence, if there are any
 */
record GaugeReview(
        Site site,
        RainSource source,
        Interval record,
        RainFindings rain,
        Optional<DdfTable> ddf,
        Optional<DdfBand> band) {

    /** Tells whether a folder holds a gauge and no depths. */
    static boolean isGauge(Path folder) {
        Site site = SiteFile.readGauge(folder);
        return !ReadingFile.exists(site.inputs().depth())
                && (ReadingFile.exists(site.inputs().tips())
                        || ReadingFile.exists(site.inputs().rain()));
    }

    static GaugeReview read(Path folder, Period period) {
        Site site = SiteFile.readGauge(folder);
        RainSource source = RainSource.of(site).orElseThrow();
        Interval whole = days(source, site.zone());
        RainSource.Rain all = source.within(whole);
        Interval record = period.of(whole, site.zone())
                .orElseThrow(() -> new IllegalArgumentException(
                        "It must hold rain " + period.text() + ", its record is " + whole + "."));
        Optional<DdfTable> ddf =
                SiteData.ddf(site.inputs().ddf().depths(), site.rain().basis());
        Optional<DdfBand> band =
                ddf.flatMap(table -> SiteData.band(table, site.inputs().ddf()));
        return new GaugeReview(
                site,
                source,
                record,
                RainFindings.of(site, period.isWhole() ? all : all.within(record), ddf, band),
                ddf,
                band);
    }

    /** Before its first sign and after its last one a gauge says nothing but that these days were its own. */
    private static Interval days(RainSource source, ZoneId zone) {
        Interval signs = source.signs()
                .orElseThrow(() -> new IllegalArgumentException(
                        source.files() + ": must hold at least one line of readings, since there are no depths"));
        LocalDate first = LocalDate.ofInstant(signs.start(), zone);
        LocalDate last = LocalDate.ofInstant(signs.end(), zone);
        return Interval.of(
                first.atStartOfDay(zone).toInstant(),
                last.plusDays(1).atStartOfDay(zone).toInstant());
    }

    Dates dates() {
        return Dates.in(site.zone(), record);
    }

    List<CsvReport> reports() {
        return source.report().map(List::of).orElse(List.of());
    }

    Set<Path> files() {
        Set<Path> files = new TreeSet<>();
        files.add(site.folder().resolve(SiteFile.NAME));
        files.addAll(source.files());
        Site.DdfFiles tables = site.inputs().ddf();
        ddf.ifPresent(table -> files.add(tables.depths()));
        band.ifPresent(limits -> files.addAll(List.of(tables.lower(), tables.upper())));
        return files;
    }

    /** What needs a person's eye. */
    List<String> points() {
        List<String> points = new ArrayList<>();
        Dates dates = dates();
        rain.silent()
                .forEach(silent ->
                        points.add("The gauge wrote nothing for " + Show.duration(silent.duration()) + " from "
                                + dates.time(silent.start()) + " to " + dates.time(silent.end())
                                + ": was it dead? The rain of this time is taken as not known."));
        List<Instant> far = source.far();
        if (!far.isEmpty()) {
            points.add(Show.count(far.size(), "line") + " of " + source.what()
                    + " stamped more than 30 days from all others and set aside, the first "
                    + Show.timeWithYear(far.get(0), site.zone()) + ": was the clock reset?");
        }
        reports().stream()
                .filter(report -> report.rejected() > 0)
                .forEach(report -> points.add(report.source() + ": " + report.rejected() + " of " + report.lines()
                        + " lines were rejected."));
        return points;
    }
}
