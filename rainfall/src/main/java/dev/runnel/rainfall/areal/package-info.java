/**
 * Rain over an area.
 *
 * <p>Gauges measure at points; a catchment takes a mean. {@link dev.runnel.rainfall.areal.GaugeWeights} give each gauge
 * its share, by Thiessen's polygons or by inverse distance, and share anew among the others whenever a gauge is missing.
 * {@link dev.runnel.rainfall.areal.ArealReduction} takes a depth of given rarity at a point to one of the same rarity over
 * an area, which is smaller because a storm is not equally heavy everywhere.
 *
 * <p>What this is not: the two must not be mixed. An areal mean of an observed storm needs no reduction.
 */
@NullMarked
package dev.runnel.rainfall.areal;

import org.jspecify.annotations.NullMarked;
