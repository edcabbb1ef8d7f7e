/**
 * Water that enters a sewer without rain: from the night minimum, and from the smallest daily flows of weeks; and what is
 * called dry weather flow where it is defined by daily flows alone.
 *
 * <ul>
 *   <li>{@linkplain dev.runnel.timeseries.infiltration.NightMinimum night minimum} Qₙ: the smallest mean over an hour of the
 *       night. Infiltration is taken as a share of it, I = f Qₙ (90 % of the flow at about 02:00: Wellington Water,
 *       Wastewater Modelling Specification, draft 2020), or as what is left when the foul flow of the night is taken away,
 *       I = Qₙ − Q<sub>foul,n</sub> (common practice). Some authorities no longer accept the night minimum alone.
 *   <li>{@linkplain dev.runnel.timeseries.infiltration.DailyFlows#movingMinimum moving minimum}: each day gets the smallest
 *       daily flow of the last 21 days, from which a constant foul flow is taken (German practice, as quoted by state
 *       offices). It follows the groundwater over weeks.
 *   <li>{@linkplain dev.runnel.timeseries.infiltration.DailyFlows#percentile 20th percentile} of the daily flows, exceeded on
 *       80 % of days (UKWIR 2005), and the {@linkplain dev.runnel.timeseries.infiltration.DailyFlows#meanOfRuns mean over
 *       seven dry days} that follow seven nearly dry ones (glossary of 1970, as quoted by UKWIR 2005).
 * </ul>
 * What this is not: a measurement of infiltration. Each method rests on an assumption about people at night or in a week.
 */
@NullMarked
package dev.runnel.timeseries.infiltration;

import org.jspecify.annotations.NullMarked;
