/**
 * Rating curves: discharge from the level at a gauge, for a pipe, channel or structure that has no formula of its own.
 *
 * <p>Somebody gauges the discharge Q (m³/s) on several days at several stages h (m, on the gauge's own datum). Water over
 * a natural or built control follows a power of its depth above the stage of no flow a (m), so each stretch of the curve
 * is
 *
 * <pre>  Q = C (h − a)^b        ln Q = ln C + b ln(h − a)</pre>
 *
 * <p>with b near 1.5 for a crest, 2.5 for a notch, 5/3 for a wide channel with friction. {@link
 * dev.runnel.hydraulics.rating.RatingFit} holds the gaugings and fits; {@link dev.runnel.hydraulics.rating.RatingCurve}
 * answers with its bands; {@link dev.runnel.hydraulics.rating.RatingTable} is what goes into a logger: rows of stage and
 * discharge with straight lines between them, made from a curve or from any structure. Where two controls follow each
 * other (a low-flow notch, then the whole crest) the curve has two segments that meet at a stage without a step.
 *
 * <p>Sources: ISO 18320 and ISO 1100-2 (from memory) for the form and for errors counted in percent; the statistics are
 * ordinary and weighted least squares.
 *
 * <p>What this is not: a law of physics above the highest gauging, or after the control has moved.
 */
@NullMarked
package dev.runnel.hydraulics.rating;

import org.jspecify.annotations.NullMarked;
