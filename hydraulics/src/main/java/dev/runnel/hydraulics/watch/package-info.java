/**
 * What is normal at a monitor, what has changed, since when, and how sure that is.
 *
 * <p>A {@link dev.runnel.hydraulics.watch.SiteBaseline} says what is normal, learned from a stated
 * interval by a {@link dev.runnel.hydraulics.watch.BaselineRule}; a {@link dev.runnel.hydraulics.watch.WatchRule}
 * holds every later {@link dev.runnel.hydraulics.watch.SiteReading} against it, one at a time or a whole
 * {@link dev.runnel.hydraulics.watch.SiteRecord}, and tells each change once as a
 * {@link dev.runnel.hydraulics.watch.Finding}: what moved, which way, since when, what it is consistent with and what
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
package dev.runnel.hydraulics.watch;

import org.jspecify.annotations.NullMarked;
