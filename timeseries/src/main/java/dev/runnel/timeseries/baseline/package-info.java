/**
 * What is usual at a time of day in dry weather.
 *
 * <p>A {@link dev.runnel.timeseries.baseline.DiurnalProfile} cuts the local day into slots of equal length. For each dry
 * day d and slot s it takes x(d,s), the mean of the usable readings stamped in the slot; over the days of one
 * {@linkplain dev.runnel.timeseries.baseline.DayClass class} (weekdays, weekends) it gives their number, mean, median
 * and quantiles. The median is what is expected: one odd day does not move it. The mean makes the average dry weather
 * flow, with each class weighted by its days in a week:
 * <p>DWF = (5 q<sub>weekday</sub> + 2 q<sub>weekend</sub>) / 7, where q is the mean over all slots.
 *
 * <p>Practice: drop days with rain and those just after it, keep weekdays, Saturdays and Sundays apart, average by the
 * hour, look at every day's graph before it is accepted (Wellington Water, Wastewater Modelling Specification, draft v11,
 * June 2020). The profile does not look for dry days: the caller brings them.
 *
 * <p>What this is not: a design flow. Dry weather flow has many definitions in law and practice; state the one you use.
 */
@NullMarked
package dev.runnel.timeseries.baseline;

import org.jspecify.annotations.NullMarked;
