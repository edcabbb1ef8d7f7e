/**
 * How a catchment answers rain, from the rain and a series of flow. Knows no pipe.
 *
 * <p>{@link dev.runnel.rainfall.response.RunoffVolume}: how much of the rain arrived above dry weather flow.
 * {@link dev.runnel.rainfall.response.ResponseLag}: how much later. {@link dev.runnel.rainfall.response.Recession}: how fast the
 * flow falls back.
 *
 * <p>What this is not: a model. The figures describe the events they come from, with all the errors of the gauges and the
 * monitor in them; a rain gauge some way off can make a runoff of more than 100 %.
 */
@NullMarked
package dev.runnel.rainfall.response;

import org.jspecify.annotations.NullMarked;
