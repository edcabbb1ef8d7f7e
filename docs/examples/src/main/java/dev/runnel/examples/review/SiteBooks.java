package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.correction.CorrectedSeries;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.Corrections;
import dev.runnel.timeseries.correction.SiteVisit;
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
 * @param corrected the readings it was applied to, by what they are
 * @param files the files of them
 */
record SiteBooks(
        List<SiteVisit> visits, Corrections corrections, Map<String, CorrectedSeries> corrected, Set<Path> files) {
    /** Readings that may be corrected. */
    private static final List<String> SERIES = List.of("depth", "velocity");

    static SiteBooks of(Site site) {
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
        for (Correction each : corrections.list()) {
            if (!SERIES.contains(each.series())) {
                throw new IllegalArgumentException(site.books().corrections() + ": column \"series\" must be one of "
                        + SERIES + ", was " + Text.quoted(each.series()) + " in the one from "
                        + each.interval().start());
            }
        }
        return new SiteBooks(visits, corrections, new HashMap<>(), files);
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
        mine.stream()
                .filter(each -> each.kind() == Correction.Kind.REPLACEMENT)
                .map(Correction::source)
                .distinct()
                .forEach(source -> sources.put(
                        source,
                        ReadingFile.column(lines.column(), source, lines.unit()).series()));
        try {
            CorrectedSeries series = corrections.apply(what, lines.series(), sources);
            corrected.put(what, series);
            return lines.withSeries(series.series());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(site.books().corrections() + ": " + e.getMessage(), e);
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

    /** Returns how many readings a correction had a part in. */
    long readings(int number) {
        Correction correction = corrections.list().get(number - 1);
        CorrectedSeries series = corrected.get(correction.series());
        return series == null
                ? 0
                : series.trail().stream()
                        .filter(each -> each.numbers().contains(number))
                        .count();
    }
}
