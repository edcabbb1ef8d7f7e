/**
 * Whether a record changes with time, and by how much.
 *
 * <p>{@linkplain dev.runnel.timeseries.change.MannKendall Mann-Kendall} asks whether there is a monotonic trend:
 * S = Σ<sub>i&lt;j</sub> sgn(x<sub>j</sub> − x<sub>i</sub>), which without trend has mean 0 and, with groups of t tied
 * values, variance Var S = [n(n−1)(2n+5) − Σ t(t−1)(2t+5)] / 18. {@linkplain dev.runnel.timeseries.change.TheilSen
 * Theil-Sen} says how steep it is: the median of the slopes between all pairs. Neither cares how the values are
 * distributed, and single wild values hardly move them.
 *
 * <p>{@linkplain dev.runnel.timeseries.change.CusumRule CUSUM}, {@linkplain dev.runnel.timeseries.change.EwmaRule EWMA} and
 * {@linkplain dev.runnel.timeseries.change.PageHinkleyRule Page-Hinkley} take one reading after the other and tell when a
 * level has changed; {@link dev.runnel.timeseries.change.AverageRunLength} says how soon, and how often without a change.
 * {@linkplain dev.runnel.timeseries.change.Pettitt Pettitt} finds the one change in a whole record;
 * {@linkplain dev.runnel.timeseries.change.BeforeAfter before and after} compares the two sides of a day that is known;
 * {@linkplain dev.runnel.timeseries.change.HampelRule Hampel} finds single wild values.
 *
 * <p>Sources: H. B. Mann (1945), Nonparametric tests against trend, Econometrica 13, 245-259; M. G. Kendall (1975), Rank
 * correlation methods; P. K. Sen (1968), Estimates of the regression coefficient based on Kendall's tau, J. Am. Stat.
 * Assoc. 63, 1379-1389; R. O. Gilbert (1987), Statistical methods for environmental pollution monitoring, chapter 16
 * (all from memory).
 *
 * <p>What this is not: a test for readings a few minutes apart. Values must be independent without the trend; readings of
 * a sewer follow the day and each other, which makes trends appear where there are none. Use daily or longer values, or
 * residuals from a {@link dev.runnel.timeseries.baseline.DiurnalProfile}.
 */
@NullMarked
package dev.runnel.timeseries.change;

import org.jspecify.annotations.NullMarked;
