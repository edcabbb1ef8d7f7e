/**
 * Records as XML: OGC WaterML 2.0 part 1 (10-126r4) and OGC Timeseries Profile / TimeseriesML 1.x (15-042), time and value
 * pairs of measurements, in and out.
 *
 * <p>Read as a stream, in memory for the result alone. Nothing outside the file is ever fetched: a document with a document
 * type declaration is refused, and with it every entity that could reach out or blow up. A point that is not as it should be
 * is set aside and told, with its line; the unit, the interpolation type and the qualities are kept as far as they are
 * said.
 */
@NullMarked
package dev.runnel.timeseries.waterml;

import org.jspecify.annotations.NullMarked;
