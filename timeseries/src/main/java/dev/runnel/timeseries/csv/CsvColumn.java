package dev.runnel.timeseries.csv;

import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One column of values in a file. Immutable and thread-safe.
 *
 * @param name what the series is called in the result
 * @param header name of the column in the file, or its position ("1" is the first) in a file without header
 * @param unit unit of the numbers in the file
 * @param qualityHeader column with the {@linkplain dev.runnel.timeseries.Quality#toText word} for the quality of each
 *     reading, empty if there is none
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record CsvColumn(String name, String header, CsvUnit unit, String qualityHeader) {
    /**
     * Checks the names.
     *
     * @param name what the series is called
     * @param header name of the column in the file
     * @param unit unit of the numbers in the file
     * @param qualityHeader column with the quality, or empty
     * @throws IllegalArgumentException if name or header is empty
     */
    public CsvColumn {
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(qualityHeader, "qualityHeader");
        if (name.isBlank()) {
            throw new IllegalArgumentException("name must not be blank, was \"" + name + "\"");
        }
        if (header.isBlank()) {
            throw new IllegalArgumentException("header must not be blank, was \"" + header + "\"");
        }
    }

    /**
     * Returns the column with a header, its numbers taken as written.
     *
     * @param header name of the column in the file, and of the series
     * @return the column
     * @throws IllegalArgumentException if the header is blank
     */
    public static CsvColumn of(String header) {
        Objects.requireNonNull(header, "header");
        return new CsvColumn(header, header, CsvUnit.AS_WRITTEN, "");
    }

    /**
     * Returns the column under another name.
     *
     * @param name what the series is called in the result
     * @return the new column
     * @throws IllegalArgumentException if the name is blank
     */
    public CsvColumn withName(String name) {
        return new CsvColumn(name, header, unit, qualityHeader);
    }

    /**
     * Returns the column with another unit.
     *
     * @param unit unit of the numbers in the file
     * @return the new column
     */
    public CsvColumn withUnit(CsvUnit unit) {
        Objects.requireNonNull(unit, "unit");
        return new CsvColumn(name, header, unit, qualityHeader);
    }

    /**
     * Returns the column with its quality taken from another column.
     *
     * @param qualityHeader name of that column
     * @return the new column
     */
    public CsvColumn withQuality(String qualityHeader) {
        Objects.requireNonNull(qualityHeader, "qualityHeader");
        return new CsvColumn(name, header, unit, qualityHeader);
    }
}
