package dev.runnel.timeseries.waterml;

import org.apiguardian.api.API;

/**
 * The two standards for time series in XML.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum XmlDialect {
    /** OGC WaterML 2.0, part 1: Timeseries (10-126r4). */
    WATERML("http://www.opengis.net/waterml/2.0", "wml2"),
    /** OGC TimeseriesML 1.0 (15-042r3). */
    TIMESERIESML("http://www.opengis.net/tsml/1.0", "tsml");

    private final String namespace;
    private final String prefix;

    XmlDialect(String namespace, String prefix) {
        this.namespace = namespace;
        this.prefix = prefix;
    }

    String namespace() {
        return namespace;
    }

    String prefix() {
        return prefix;
    }

    /** Later versions have other last parts: 2.1, 1.2. */
    static boolean isKnown(String namespace) {
        return namespace.startsWith("http://www.opengis.net/waterml/2.")
                || namespace.startsWith("http://www.opengis.net/waterml-dr/2.")
                || namespace.startsWith("http://www.opengis.net/tsml/1.");
    }
}
