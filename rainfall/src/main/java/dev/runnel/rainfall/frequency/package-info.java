/**
 * How rare a rainfall is, from a record of it: annual maxima, peaks over a threshold, regions of sites, and relations between
 * depth, duration and return period fitted to them.
 *
 * <p>The statistics themselves, which know no rain, are in {@link dev.runnel.rainfall.distribution}.
 *
 * <p>What this is not: a statement about a changing climate. A fit says what the record says; a trend in the record
 * breaks it.
 */
@NullMarked
package dev.runnel.rainfall.frequency;

import org.jspecify.annotations.NullMarked;
