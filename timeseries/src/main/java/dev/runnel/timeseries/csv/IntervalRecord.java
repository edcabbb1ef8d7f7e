package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.Interval;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Intervals read from a file. Immutable and thread-safe.
 *
 * @param bySite intervals by site, in order of time; all under an empty name if the file tells no site. They may overlap
 * @param report the account of lines
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record IntervalRecord(Map<String, List<Interval>> bySite, CsvReport report) {
    /**
     * Copies the map.
     *
     * @param bySite intervals by site
     * @param report the account of lines
     */
    public IntervalRecord {
        Objects.requireNonNull(report, "report");
        Map<String, List<Interval>> copy = new LinkedHashMap<>();
        bySite.forEach((site, list) -> copy.put(site, List.copyOf(list)));
        bySite = Collections.unmodifiableMap(copy);
    }

    /**
     * Returns the intervals of one site.
     *
     * @param site its name
     * @return intervals in order of time
     * @throws IllegalArgumentException if there is no such site
     */
    public List<Interval> of(String site) {
        List<Interval> found = bySite.get(site);
        if (found == null) {
            throw new IllegalArgumentException(
                    "site must be one of " + new ArrayList<>(bySite.keySet()) + ", was " + site);
        }
        return found;
    }

    @Override
    public String toString() {
        return "IntervalRecord[" + bySite.values().stream().mapToInt(List::size).sum() + " intervals of "
                + bySite.size() + " sites, " + report + "]";
    }
}
