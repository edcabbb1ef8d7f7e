package dev.runnel.timeseries.waterml;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One time series of an XML document. Immutable and thread-safe.
 *
 * @param id identifier of the series in its document; empty if it has none
 * @param unit code of the unit, such as {@code m3/s}; empty if none is said
 * @param interpolation last part of the interpolation type's address, such as {@code Continuous}; empty if none is said
 * @param series the readings, in the unit of the document
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record XmlSeries(String id, String unit, String interpolation, Series series) {
    /**
     * Checks that nothing is missing.
     *
     * @param id identifier of the series in its document; empty if it has none
     * @param unit unit
     * @param interpolation interpolation
     * @param series the readings, in the unit of the document
     */
    public XmlSeries {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(interpolation, "interpolation");
        Objects.requireNonNull(series, "series");
    }

    /**
     * Returns a series of continuous readings.
     *
     * @param id identifier: a letter or {@code _}, then letters, digits, {@code -}, {@code _} or {@code .}
     * @param unit code of the unit; empty for none
     * @param series the readings, in that unit
     * @return the series
     * @throws IllegalArgumentException if the identifier is not one of XML
     */
    public static XmlSeries of(String id, String unit, Series series) {
        Objects.requireNonNull(unit, "unit");
        Objects.requireNonNull(series, "series");
        if (!id.matches("[A-Za-z_][A-Za-z0-9._-]*")) {
            throw new IllegalArgumentException(
                    "id must be a letter or _, then letters, digits, -, _ or ., was " + Text.quoted(id));
        }
        return new XmlSeries(id, unit, "Continuous", series);
    }

    @Override
    public String toString() {
        return "XmlSeries[" + id + ", " + (unit.isEmpty() ? "no unit" : unit) + ", "
                + (interpolation.isEmpty() ? "" : interpolation + ", ") + series + "]";
    }
}
