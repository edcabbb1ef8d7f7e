/**
 * Readings in time. Knows no pipe and no rain.
 *
 * <p>A {@link dev.runnel.timeseries.Series} holds readings at any instants, each with a
 * {@link dev.runnel.timeseries.Quality}; a {@link dev.runnel.timeseries.RegularSeries} holds one value for each of
 * equal, adjoining steps. Both are immutable, hold primitive arrays, keep UTC inside and cut time into half-open
 * {@linkplain dev.runnel.timeseries.Interval intervals}. A missing value is NaN; it is counted, never invented.
 */
@NullMarked
package dev.runnel.timeseries;

import org.jspecify.annotations.NullMarked;
