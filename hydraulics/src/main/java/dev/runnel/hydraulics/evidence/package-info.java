/**
 * What the readings of a monitor are evidence for: what is normal at it, what has changed, since when, and how sure that is.
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
 * <p><b>The watch.</b> A {@link dev.runnel.hydraulics.evidence.SiteBaseline} says what is normal, learned from a stated
 * interval by a {@link dev.runnel.hydraulics.evidence.BaselineRule}; a {@link dev.runnel.hydraulics.evidence.WatchRule}
 * holds every later {@link dev.runnel.hydraulics.evidence.SiteReading} against it, one at a time or a whole
 * {@link dev.runnel.hydraulics.evidence.SiteRecord}, and tells each change once as a
 * {@link dev.runnel.hydraulics.evidence.Finding}: what moved, which way, since when, what it is consistent with and what
 * else it could be.
 *
 * <pre>
 * var search = BaselineRule.of(monitor).withZone(zone).learn(record);
 * var report = WatchRule.of(search.baseline().orElseThrow()).withAlarmLevel(0.45).watch(record);
 * System.out.println(report.describe());
 * </pre>
 *
 * <p>What this is not: a diagnosis, control of a plant, a safety system, or a substitute for a visit. Everything here is for
 * a person to weigh. Sewers are confined spaces: enter none because of a figure found here except under a permit and the
 * local rules.
 */
@NullMarked
package dev.runnel.hydraulics.evidence;

import org.jspecify.annotations.NullMarked;
