package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.EpochNanos;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Bare instants read from a file, such as the tips of a gauge, with the account of its lines. Immutable and
 * thread-safe. The same instant may occur more than once: two tips in one second are two tips.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvInstants {
    private final CsvReport report;
    private final long[] times;

    CsvInstants(CsvReport report, long[] times) {
        this.report = report;
        this.times = times;
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
     * Returns the number of instants.
     *
     * @return count
     */
    public int size() {
        return times.length;
    }

    /**
     * Returns the instants.
     *
     * @return instants in order of time; a new list
     */
    public List<Instant> toInstants() {
        return Arrays.stream(times).mapToObj(EpochNanos::toInstant).toList();
    }

    /**
     * Returns the instants without making objects.
     *
     * @return ns since 1970-01-01T00:00:00Z, never decreasing; a copy
     */
    public long[] toEpochNanos() {
        return times.clone();
    }

    @Override
    public String toString() {
        return "CsvInstants[" + size() + " instants, " + report + "]";
    }
}
