/**
 * How a catchment answers rain, from the rain and a series of flow. Knows no pipe.
 *
 * <p>{@link dev.runnel.rainfall.response.RunoffVolume}: how much of the rain arrived above dry weather flow.
 * {@link dev.runnel.rainfall.response.ResponseLag}: how much later. {@link dev.runnel.rainfall.response.Recession}: how fast the
 * flow falls back.
 *
 * <p>{@link dev.runnel.rainfall.response.ResponseRule} reads all three, and the time to the peak and back to dry weather, for every
 * storm of a record, and marks what may be misread; {@link dev.runnel.rainfall.response.StormResponses} follows a figure from storm
 * to storm: its trend, and the storms before and after a day.
 *
 * <p>What this is not: a model. The figures describe the events they come from, with all the errors of the gauges and the
 * monitor in them; a rain gauge some way off can make a runoff of more than 100 %.
 */
@NullMarked
package dev.runnel.rainfall.response;

import org.jspecify.annotations.NullMarked;
