/**
 * What the readings of a monitor are evidence for, held against the law of the pipe, against earlier days and against
 * measurements by hand. What is normal at a site and what has changed since when is the theme of
 * {@code dev.runnel.hydraulics.watch}.
 *
 * <p><b>The law.</b> For uniform flow the law of resistance ties the velocity to the depth, V = V(R(y), S), with the
 * hydraulic radius R in m and the gradient S. The ratio of the measured to this velocity and the roughness that would
 * explain the readings ({@link dev.runnel.hydraulics.evidence.DepthVelocityRelation}) compare a pipe with the book.
 *
 * <p><b>Days.</b> {@link dev.runnel.hydraulics.evidence.DailyEvidence} gathers a dry day into medians;
 * {@link dev.runnel.hydraulics.evidence.DriftEvidence} describes how they drift over some days that someone chose.
 *
 * <p><b>Hands.</b> {@link dev.runnel.hydraulics.evidence.GaugingCheck} holds a monitor against measurements by hand.
 *
 * <p>What this is not: a diagnosis, control of a plant, a safety system, or a substitute for a visit. Everything here is for
 * a person to weigh. Sewers are confined spaces: enter none because of a figure found here except under a permit and the
 * local rules.
 */
@NullMarked
package dev.runnel.hydraulics.evidence;

import org.jspecify.annotations.NullMarked;
