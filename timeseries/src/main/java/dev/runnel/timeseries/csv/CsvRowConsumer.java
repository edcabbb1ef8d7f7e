package dev.runnel.timeseries.csv;

import org.apiguardian.api.API;

/**
 * Takes the rows of a file one by one, as {@link CsvRecords#forEach} reads them.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
@FunctionalInterface
public interface CsvRowConsumer {
    /**
     * Takes a row.
     *
     * @param epochNanos its time, ns since 1970-01-01T00:00:00Z, after that of the row before unless the
     *     layout has the order of the file
     * @param values one value for each column of the layout, in SI units, NaN for missing; overwritten by the next row
     * @param qualities {@linkplain dev.runnel.timeseries.Quality#toCode codes}; overwritten by the next row
     */
    void accept(long epochNanos, double[] values, byte[] qualities);

    /**
     * Takes a row with its place.
     *
     * @param line line in the file, the first is 1
     * @param epochNanos its time, ns since 1970-01-01T00:00:00Z
     * @param values one value for each column of the layout, in SI units, NaN for missing; overwritten by the next row
     * @param qualities {@linkplain dev.runnel.timeseries.Quality#toCode codes}; overwritten by the next row
     */
    default void accept(long line, long epochNanos, double[] values, byte[] qualities) {
        accept(epochNanos, values, qualities);
    }
}
