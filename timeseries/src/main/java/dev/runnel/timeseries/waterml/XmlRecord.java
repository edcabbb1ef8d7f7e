package dev.runnel.timeseries.waterml;

import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What an XML document of time series held. Immutable and thread-safe.
 *
 * @param series its series in their order
 * @param points how many points it had
 * @param setAside how many of them were not as they should be and are in no series
 * @param issues what was wrong with those, and with qualities that are not known, by line; at most a thousand
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record XmlRecord(List<XmlSeries> series, long points, long setAside, List<String> issues) {
    /**
     * Copies the lists.
     *
     * @param series its series
     * @param points how many points it had
     * @param setAside how many are in no series
     * @param issues what was wrong
     */
    public XmlRecord {
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(issues, "issues");
        series = List.copyOf(series);
        issues = List.copyOf(issues);
    }

    @Override
    public String toString() {
        return "XmlRecord[" + series + ", " + points + " points, " + setAside + " set aside]";
    }
}
