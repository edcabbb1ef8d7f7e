/**
 * Volumes and counts of what a record adds up to: {@linkplain dev.runnel.timeseries.balance.DailyTotals daily volumes}
 * and {@linkplain dev.runnel.timeseries.balance.SpillCount counted spills} of an overflow.
 *
 * <p>A daily volume is V = ∫ q dt over the local day, which is 23, 24 or 25 hours long, as far as the record covers it;
 * the coverage is given beside it and nothing is filled in.
 *
 * <p>The 12/24-hour rule counts spills in blocks: counting starts with the first discharge, whose first 12 hours are one
 * spill however often it discharges; each following block of 24 hours with any discharge is one more; a block of 24
 * hours without any ends the sequence, and the next discharge starts again with 12 hours. Source of the rule: UKWIR,
 * Improving knowledge on sewer spills, on the method of the Environment Agency of England. What the text leaves open is taken so: discharges are half-open intervals;
 * a block opens exactly 12, then 24 hours after the first discharge and not at midnight; one that ends exactly at the
 * edge of a block does not enter the next.
 *
 * <p>Two other published counts: events parted by a time without discharge, as 24 hours, of at most so many days (Wellington
 * Water, Regional specification of flow monitoring); and days with discharge, where one of less than 24 hours counts once
 * though it runs over midnight (France, order of 21 July 2015 as quoted).
 *
 * @serial exclude
 */
@NullMarked
package dev.runnel.timeseries.balance;

import org.jspecify.annotations.NullMarked;
