/**
 * The monitored pipe: what a depth sensor and a velocity sensor in a sewer say, and what they do not.
 *
 * <p><b>Flow.</b> A monitor reads a depth d and a velocity v. With the height o of the depth sensor's zero above the
 * invert, a flat bed of sediment up to b and the factor f from measured to mean velocity,
 *
 * <pre>
 * y = d + o                            level above the invert, m
 * Q = f v (A(min(y, H)) − A(b))        flow, m³/s
 * </pre>
 *
 * A(y) is the area of the section up to y in m² and H its height in m. This is continuity, Q = V A, and needs no law of
 * resistance. {@link dev.runnel.hydraulics.monitoring.PipeMonitor} lists the cases where the line does not hold as it
 * stands: empty pipe, depth under the sensor, depth under the bed, surcharge, reverse flow, no reading.
 *
 * <p><b>Surcharge.</b> The pipe is surcharged while y &gt; H. {@link dev.runnel.hydraulics.monitoring.SurchargeRule} finds the
 * periods, {@link dev.runnel.hydraulics.monitoring.FullnessTime} the share of time above chosen levels; both say what they
 * could not see.
 *
 * <p><b>Uncertainty.</b> {@link dev.runnel.hydraulics.monitoring.SensorUncertainty} carries the stated standard
 * uncertainties of depth, velocity, section and velocity factor to the flow by the law of propagation of JCGM 100:2008
 * (GUM), section 5.1.2.
 *
 * <p>What the readings say about pipe, sensors and catchment is the theme of {@code dev.runnel.hydraulics.evidence}; what is
 * normal at a site and what has changed since when, that of {@code dev.runnel.hydraulics.watch}.
 *
 * <p>What this is not: control of a plant, a safety system, or a substitute for a visit. Sewers are confined spaces: enter
 * none because of a figure found here except under a permit and the local rules.
 */
@NullMarked
package dev.runnel.hydraulics.monitoring;

import org.jspecify.annotations.NullMarked;
