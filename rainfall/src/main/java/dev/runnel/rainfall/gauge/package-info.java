/**
 * From a rain gauge's raw record to depth and intensity of rain.
 *
 * <p>A tipping bucket tips when a fixed volume V has run through a funnel of area A; it records the instants of the
 * {@linkplain dev.runnel.rainfall.gauge.Tips tips} and nothing else. One tip stands for the depth
 *
 * <pre>d [mm] = 10 V [mL] / A [cm²]</pre>
 *
 * and two tips that are Δt apart for the recorded intensity I<sub>r</sub> [mm/h] = 3600 d / Δt [s].
 *
 * <p>Two choices turn tips into a depth for each step of time, and both are arguments here, never hidden:
 *
 * <ul>
 *   <li>{@link dev.runnel.rainfall.gauge.TipSpreading}: a tip counts where it happened, or its depth is spread over the
 *       time in which the bucket filled;
 *   <li>{@link dev.runnel.rainfall.gauge.Calibration}: while the bucket moves, water runs into the full side and is
 *       lost, the more the harder it rains.
 * </ul>
 *
 * <p>Whatever is chosen, the depths of all steps add up to the depths of all tips.
 *
 * <p>A gauge that is blocked, off or being serviced does not tip either: name its outages to
 * {@link dev.runnel.rainfall.gauge.TippingBucket#record}, or the time counts as dry.
 *
 * <p>Whether the record can be believed is another question: {@link dev.runnel.rainfall.gauge.TipChecks} look at the tips,
 * {@link dev.runnel.rainfall.gauge.StorageGauge} and {@link dev.runnel.rainfall.gauge.Neighbours} at what other gauges caught (those
 * of the same rain, {@link dev.runnel.rainfall.gauge.GaugeGroups}), and
 * {@link dev.runnel.rainfall.gauge.TipResolution} says how far whole tips can be trusted.
 *
 * <p>A logger that writes the rain of each step instead of tips is a {@link dev.runnel.rainfall.gauge.SteppedGauge}.
 *
 * <p>What this is not: a correction for wind, evaporation or a badly placed gauge. Those are larger than anything here
 * and cannot be seen in the record.
 */
@NullMarked
package dev.runnel.rainfall.gauge;

import org.jspecify.annotations.NullMarked;
