/**
 * Design storms: a depth laid out in time.
 *
 * <p>A depth of given duration and return period says nothing of how it fell. A design storm is an agreement on that:
 * a {@link dev.runnel.rainfall.design.StormShape} that holds for every duration (the symmetric profiles of the Flood Studies
 * Report), or a rearrangement of the depth-duration relation itself (alternating blocks, Euler's type II, Chicago), or a
 * figure of straight lines (double triangle). Whatever the rule, the steps of a
 * {@link dev.runnel.rainfall.design.DesignStorm} add up to its depth.
 *
 * <p>What this is not: a storm that happened, or one whose flow has the return period of its rain. For design, use the
 * storms that your authority prescribes.
 */
@NullMarked
package dev.runnel.rainfall.design;

import org.jspecify.annotations.NullMarked;
