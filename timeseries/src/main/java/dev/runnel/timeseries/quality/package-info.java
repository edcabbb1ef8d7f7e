/**
 * Checks of readings. Each gives a verdict on each reading with the reason, none changes a value.
 *
 * <ul>
 *   <li>{@linkplain dev.runnel.timeseries.quality.RangeCheck range}: fail if x lies outside the sensor's range, unusual if
 *       outside the site's.
 *   <li>{@linkplain dev.runnel.timeseries.quality.SpikeCheck spike}: |x<sub>n−1</sub> − (x<sub>n</sub> +
 *       x<sub>n−2</sub>)/2| above a low limit is unusual, above a high one fails. The newest reading waits for the next.
 *   <li>{@linkplain dev.runnel.timeseries.quality.FlatLineCheck flat line}: so many equal values in a row, this one
 *       included, within a tolerance.
 *   <li>{@linkplain dev.runnel.timeseries.quality.RateOfChangeCheck rate of change}: |Δx|/Δt above a limit is unusual.
 *   <li>{@linkplain dev.runnel.timeseries.quality.GapCheck gap}: times without a value longer than a limit; these are
 *       intervals, since there is no reading to flag.
 * </ul>
 * Source of tests and verdict codes: U.S. IOOS, Manual for Real-Time Quality Control of Water Level Data (QARTOD),
 * version 2.1, section 3.3 and table 3-1. Its text and its pseudo-code differ on the flat line by one value; here the
 * text is followed. Its limits are examples: set your own for each site.
 *
 * <p>{@linkplain dev.runnel.timeseries.quality.QualityChecks Several checks} work one behind the other, and a later one
 * takes what an earlier one failed as not there: a −9999 that fails the range makes no spike of its good neighbours.
 *
 * <p>Two scales meet here. A {@linkplain dev.runnel.timeseries.quality.Verdict verdict} is what one check says, a
 * {@linkplain dev.runnel.timeseries.Quality quality} what the reading is worth after all of them: an unusual reading
 * becomes poor and stays in use, a failed one becomes suspect and is left out of calculations. The manual's word for
 * unusual is "suspect or of high interest".
 *
 * <p>A storm looks much like a fault to these checks. A verdict tells a person where to look.
 *
 * @serial exclude
 */
@NullMarked
package dev.runnel.timeseries.quality;

import org.jspecify.annotations.NullMarked;
