/**
 * Alarms: thresholds with deadband, on-delay and off-delay, and what people and conditions do with them.
 *
 * <p>A high alarm with limit L and deadband B works on readings x(t):
 * <ul>
 *   <li><b>normal</b>: x ≤ L. A reading x &gt; L is the <em>onset</em> and starts the on-delay.
 *   <li><b>pending</b>: every reading so far is x &gt; L. The first reading at or after onset + on-delay makes the alarm
 *       <b>active</b>; a reading x ≤ L before that ends the matter.
 *   <li><b>active</b>: until a reading x ≤ L − B, which starts the off-delay.
 *   <li><b>clearing</b>: every reading since is x ≤ L − B. The first reading at or after that start + off-delay is the
 *       <em>return to normal</em>; a reading x &gt; L − B before that makes the alarm active as before.
 * </ul>
 * A low alarm is the mirror image: x &lt; L, and return at x ≥ L + B. So the deadband acts on the return only, and a
 * delay of two reading intervals needs a third consecutive reading.
 *
 * <p>The words are those of ANSI/ISA-18.2 and IEC 62682 (management of alarm systems for the process industries).
 * Deadbands of 5 % of range for flow and 2 % for level, and delays of 15 s and 60 s, are common practice.
 *
 * <p>A {@linkplain dev.runnel.timeseries.alarm.ThresholdAlarm threshold} on a {@linkplain
 * dev.runnel.timeseries.alarm.AlarmSignal signal} makes a whole {@linkplain dev.runnel.timeseries.alarm.Alarm alarm}: on the
 * readings themselves (high, high-high, low), their rate of change, their deviation from what is expected, values that
 * stay unchanged, silence, bad quality; with acknowledgement, latching, shelving with expiry and suppression while a
 * stated condition such as rain holds. {@linkplain dev.runnel.timeseries.alarm.AlarmPerformance Figures} tell how alarms
 * performed, and a {@linkplain dev.runnel.timeseries.alarm.Alarm#trial trial} what a setting would have raised.
 *
 * <p>What this is not: a safety function. An alarm computed from a record tells a person to look; it does not protect
 * anybody in a sewer, and does not take the place of an alarm system managed under local codes by licensed people.
 *
 * @serial exclude
 */
@NullMarked
package dev.runnel.timeseries.alarm;

import org.jspecify.annotations.NullMarked;
