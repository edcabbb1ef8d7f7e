package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.Series;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apiguardian.api.API;

/**
 * Series read from a file, all at the same times, with the account of its lines. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvResult {
    private final CsvReport report;
    private final Map<String, Series> series;

    CsvResult(CsvReport report, Map<String, Series> series) {
        this.report = report;
        this.series = Collections.unmodifiableMap(new LinkedHashMap<>(series));
    }

    /**
     * Returns the account of the file's lines.
     *
     * @return the report
     */
    public CsvReport report() {
        return report;
    }

    /**
     * Returns the series of one column.
     *
     * @param name name of the column in the result
     * @return its readings
     * @throws IllegalArgumentException if the layout had no such column
     */
    public Series series(String name) {
        Series found = series.get(name);
        if (found == null) {
            throw new IllegalArgumentException("name must be one of " + names() + ", was " + name);
        }
        return found;
    }

    /**
     * Returns the names of all columns.
     *
     * @return names in the order of the layout
     */
    public List<String> names() {
        return List.copyOf(series.keySet());
    }

    @Override
    public String toString() {
        return "CsvResult[" + names() + ", " + report + "]";
    }
}
