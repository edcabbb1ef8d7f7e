/**
 * How deep, how long, how rare: depth P [mm] of rain of duration D that is reached once in T years on average.
 *
 * <p>A {@link dev.runnel.rainfall.ddf.DepthDurationFrequency} relation answers both questions, depth for duration and
 * return period, and return period for duration and depth, and the two answers are inverse to each other.
 * {@link dev.runnel.rainfall.ddf.DdfTable} holds a published table.
 *
 * <p><b>Two return periods.</b> In a series of annual maxima the T-year depth is reached in one year out of T. In a
 * series of peaks over a threshold it is reached once in T years, sometimes twice in one of them. For rare rain the two
 * agree; for frequent rain they do not, and below one year only the second exists. Every return period here names its
 * {@link dev.runnel.rainfall.ddf.ReturnPeriodBasis}, which also converts.
 *
 * <p><b>The rarity of an event</b> depends on the duration over which one looks. The greatest return period among the
 * durations of an event is the governing one ({@link dev.runnel.rainfall.ddf.EventRarity}). An event picked for being
 * rare at any of many durations is less rare than that figure says: it is a description, not a probability.
 *
 * <p>What lies beyond a relation is said to lie beyond it, with the limit; nothing is extrapolated.
 *
 * <p>Return periods are statements about a climate that is taken not to change, at a point. For design, use the rules
 * and the data that your authority prescribes, and let a licensed engineer judge the result.
 */
@NullMarked
package dev.runnel.rainfall.ddf;

import org.jspecify.annotations.NullMarked;
