/**
 * Corrections on the record. Raw readings are never changed: a {@linkplain dev.runnel.timeseries.correction.Corrections
 * list of corrections}, each with its interval, its reason, its evidence and who made it, is applied to them and gives
 * {@linkplain dev.runnel.timeseries.correction.CorrectedSeries a series} that knows, of each altered reading, what it was
 * and which corrections altered it, and that can be undone in whole or in part.
 *
 * <ul>
 *   <li>offset: x + a
 *   <li>drift: x + a + (b − a)(t − t₀)/(t₁ − t₀), from a at the start t₀ of the interval to b at its end t₁
 *   <li>factor: a x
 *   <li>clock shift: t + a; the value stays
 *   <li>removal: no value
 *   <li>replacement: the value of a named source at that time, from a profile, a rating or a second sensor
 *   <li>sediment, sensor offset, roughness: the level of the bed, the height of the sensor's zero, the measure of the pipe's
 *       law over the interval; they alter no reading, flow and capacity are computed with them
 * </ul>
 * An altered value has the quality {@link dev.runnel.timeseries.Quality#ESTIMATE} at best. {@linkplain
 * dev.runnel.timeseries.correction.SiteVisit Visits} to a site give the evidence: what was read by hand beside what the
 * monitor said, with a verdict against a stated tolerance and the correction that follows from it, as a proposal.
 *
 * <p>Common practice throughout; no procedure of one utility is followed. What this is not: a decision. A person corrects,
 * and signs for it.
 */
@NullMarked
package dev.runnel.timeseries.correction;

import org.jspecify.annotations.NullMarked;
