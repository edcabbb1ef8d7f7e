package dev.runnel.examples.review;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.correction.CorrectedSeries;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.Corrections;
import dev.runnel.timeseries.correction.SiteVisit;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The books that people keep of a site: what they found there, and what of the readings they corrected. The readings are
 * corrected before anything is made of them.
 *
 * @param visits visits in order of time
 * @param corrections the list, in its order
 * @param monitors the monitor with its settings of each time: those of the site file, and what the list states otherwise
 * @param corrected the readings it was applied to, by what they are
 * @param files the files of them
 */
public record SiteBooks(
        List<SiteVisit> visits,
        Corrections corrections,
        MonitorHistory monitors,
        Map<String, CorrectedSeries> corrected,
        Set<Path> files) {
    /** Readings that may be corrected. */
    private static final List<String> SERIES = List.of("depth", "velocity");

    /**
     * Reads the books of a site.
     *
     * @param site what its site file says
     * @return the books; empty where there are none
     * @throws IllegalArgumentException if a line is not as it should be; file, line and column are named
     */
    public static SiteBooks of(Site site) {
        Set<Path> files = new TreeSet<>();
        List<SiteVisit> visits = List.of();
        Corrections corrections = Corrections.of();
        if (Files.exists(site.books().visits())) {
            files.add(site.books().visits());
            visits = SiteVisit.read(ColumnFiles.small(site.books().visits()));
        }
        if (Files.exists(site.books().corrections())) {
            files.add(site.books().corrections());
            corrections = Corrections.read(ColumnFiles.small(site.books().corrections()));
        }
        MonitorHistory monitors = MonitorHistory.of(site.monitor());
        for (int number = 1; number <= corrections.list().size(); number++) {
            Correction each = corrections.list().get(number - 1);
            List<String> allowed = each.kind().isSetting() ? List.of("depth") : SERIES;
            if (!allowed.contains(each.series())) {
                throw refused(
                        site,
                        number,
                        "series",
                        "must be "
                                + (allowed.size() == 1
                                        ? "depth for a " + each.kind().toText()
                                        : "one of " + allowed) + ", was " + Text.quoted(each.series()));
            }
            if (each.kind().isSetting()) {
                try {
                    monitors = monitors.with(each.interval(), monitor -> set(monitor, each));
                } catch (IllegalArgumentException e) {
                    throw refused(site, number, "value", "is not possible: " + e.getMessage());
                }
            }
        }
        return new SiteBooks(visits, corrections, monitors, new HashMap<>(), files);
    }

    private static PipeMonitor set(PipeMonitor monitor, Correction setting) {
        double value = setting.value();
        return switch (setting.kind()) {
            case SEDIMENT -> monitor.withoutSediment().withSediment(value);
            case SENSOR_OFFSET -> monitor.withSensorOffset(value);
            case ROUGHNESS ->
                PipeMonitor.of(rough(monitor.conduit(), value))
                        .withSensorOffset(monitor.sensorOffset())
                        .withVelocityFactor(monitor.velocityFactor());
            default -> throw new IllegalStateException("no setting: " + setting);
        };
    }

    private static Conduit rough(Conduit conduit, double value) {
        return conduit.withResistance(
                conduit.resistance() instanceof ColebrookWhite law
                        ? ColebrookWhite.ofRoughness(value).withViscosity(law.viscosity())
                        : Manning.of(value));
    }

    /** Names the line of a correction in its file, whose rows are the lines that are neither blank nor a comment. */
    private static IllegalArgumentException refused(Site site, int number, String column, String problem) {
        Path file = site.books().corrections();
        int line = 0;
        int rows = -1;
        for (String text : lines(file)) {
            line++;
            rows += text.isBlank() || text.startsWith("#") ? 0 : 1;
            if (rows == number) {
                break;
            }
        }
        return new IllegalArgumentException(
                file + ", line " + line + (column.isEmpty() ? ": " : ": column \"" + column + "\" ") + problem);
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Corrects readings; the account of the lines stays that of the file as it came. */
    ReadingFile.Readings corrected(Site site, ReadingFile.Readings lines) {
        String what = lines.column().what();
        List<Correction> mine = corrections.list().stream()
                .filter(each -> each.series().equals(what))
                .toList();
        if (mine.isEmpty()) {
            return lines;
        }
        Map<String, Series> sources = new HashMap<>();
        sources(what)
                .forEach(source -> sources.put(
                        source,
                        ReadingFile.column(lines.column(), source, lines.unit()).series()));
        CorrectedSeries series = applied(site, what, lines.series(), sources);
        corrected.put(what, series);
        return lines.withSeries(series.series());
    }

    /**
     * Returns the columns that replacements take their values from.
     *
     * @param what depth or velocity
     * @return names of columns in the file of these readings, in the order of the list
     */
    public List<String> sources(String what) {
        return corrections.list().stream()
                .filter(each -> each.kind() == Correction.Kind.REPLACEMENT
                        && each.series().equals(what))
                .map(Correction::source)
                .distinct()
                .toList();
    }

    /**
     * Applies the corrections to readings.
     *
     * @param site the site
     * @param what depth or velocity
     * @param readings the readings as they came
     * @param sources values of the columns that replacements take theirs from
     * @return what they become
     * @throws IllegalArgumentException if a correction cannot be applied; its line is named
     */
    public CorrectedSeries applied(Site site, String what, Series readings, Map<String, Series> sources) {
        try {
            return corrections.apply(what, readings, sources);
        } catch (IllegalArgumentException e) {
            // The message of the library holds the correction it was about.
            String message = String.valueOf(e.getMessage());
            for (int number = 1; number <= corrections.list().size(); number++) {
                if (message.contains(corrections.list().get(number - 1).toString())) {
                    throw refused(site, number, "", message);
                }
            }
            throw new IllegalArgumentException(site.books().corrections() + ": " + message, e);
        }
    }

    /** Returns the numbers, from 1, of the corrections that reach into a time. */
    List<Integer> numbersIn(Interval time) {
        List<Integer> numbers = new ArrayList<>();
        for (int number = 1; number <= corrections.list().size(); number++) {
            if (corrections.list().get(number - 1).interval().overlaps(time)) {
                numbers.add(number);
            }
        }
        return numbers;
    }

    /** Returns how many readings a correction had a part in; of a setting, those that are read with it. */
    long readings(int number, Series depths) {
        Correction correction = corrections.list().get(number - 1);
        if (correction.kind().isSetting()) {
            return depths.slice(correction.interval()).size();
        }
        CorrectedSeries series = corrected.get(correction.series());
        return series == null
                ? 0
                : series.trail().stream()
                        .filter(each -> each.numbers().contains(number))
                        .count();
    }
}
