package dev.runnel.examples.review;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvUnit;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Tells a file with one line for each tip from one with the count of tips in each interval. Read as the other, a dry hour of
 * zeros would be rain.
 */
public final class TipCounts {
    private static final String KEY = "tips count column";

    private TipCounts() {}

    /**
     * Returns the name of the column of counts, if the file holds any.
     *
     * @param column the tips
     * @return the name; empty if each line is a tip
     * @throws IllegalArgumentException if a column may hold counts and the site file does not say it
     */
    public static Optional<String> nameIn(Site.Column column) {
        return in(column).map(ReadingFile.Readings::header);
    }

    /** Returns the counts if the file holds any; empty if each line is a tip. */
    static Optional<ReadingFile.Readings> in(Site.Column column) {
        if (column.header().isPresent()) {
            return column.header().get().equals("none")
                    ? Optional.empty()
                    : Optional.of(ReadingFile.column(column, column.header().get(), CsvUnit.AS_WRITTEN));
        }
        Path first = ColumnFiles.withLines(column).get(0);
        Header header = Header.of(first, column.format());
        List<String> others = header.others(ReadingFile.taken(header, column.format())).stream()
                .filter(name -> !name.isEmpty())
                .toList();
        if (!header.hasLines() || others.isEmpty()) {
            return Optional.empty();
        }
        for (String name : others) {
            if (isNamedSo(name)) {
                ReadingFile.Readings found = ReadingFile.column(column, name, CsvUnit.AS_WRITTEN);
                if (areWhole(found.series()) && areNotAllOne(found.series())) {
                    return Optional.of(found);
                }
            }
        }
        for (String name : others) {
            Series values = ReadingFile.column(column.in(first), name, CsvUnit.AS_WRITTEN)
                    .series();
            if (areWhole(values) && areNotAllOne(values) && !isOneMoreEachLine(values)) {
                throw new IllegalArgumentException(column.file() + ": column \"" + name + "\" holds whole numbers from "
                        + (long) values.statistics().minimum() + " to "
                        + (long) values.statistics().maximum()
                        + ", which may be counts of tips: add \"" + KEY + " = " + name + "\" to " + SiteFile.NAME
                        + ", or \"" + KEY + " = none\" if each line is one tip");
            }
        }
        return Optional.empty();
    }

    private static boolean isNamedSo(String name) {
        String text = name.toLowerCase(Locale.ROOT);
        return (text.contains("count") || text.contains("tips")) && !text.contains("mm");
    }

    /** Numbers below 0 too: the gauge refuses them, and names them. */
    private static boolean areWhole(Series values) {
        boolean isAny = false;
        for (int i = 0; i < values.size(); i++) {
            double value = values.value(i);
            if (!Double.isNaN(value) && value != Math.rint(value)) {
                return false;
            }
            isAny |= !Double.isNaN(value);
        }
        return isAny;
    }

    private static boolean areNotAllOne(Series values) {
        return values.stream().anyMatch(each -> each.value() != 1 && !Double.isNaN(each.value()));
    }

    /** A running number of the lines. */
    private static boolean isOneMoreEachLine(Series values) {
        for (int i = 1; i < values.size(); i++) {
            if (values.value(i) != values.value(i - 1) + 1) {
                return false;
            }
        }
        return values.size() > 1;
    }
}
