/**
 * Invented monitoring sites whose truth is known, and the score of the watch on them.
 *
 * <p>A site is made from a seed: its section, its law between depth and velocity, the habits of its people, its weather,
 * how its catchment answers rain, how its sensors err, and at most one fault with a kind, a severity, a beginning and an
 * end. The flow q is made first. The law of the site gives the depth at which that flow runs,
 * <pre>
 *   v(y) = v₀ (R(y)/R₀)^⅔ (y/y₀)^δ e^ε,    q = v A(y)
 * </pre>
 * with R the hydraulic radius (m), A the wetted area (m²), δ how far the exponent of the site lies from Manning's, and ε
 * the scatter of the law: a part from hour to hour, one from day to day, one that wanders over months, and what storms do
 * to it. A fault of the sewer changes depth and velocity at the same flow (v = q/A at the new depth); a fault of a sensor
 * changes readings and nothing else. The truth behind each reading stays with the site.
 *
 * <p>Three generators of different make stand beside each other, so that a watch tuned on one can be tried on the others.
 * Seeds for developing and seeds for scoring never meet. The same seed gives the same site on every machine: random
 * numbers and elementary functions are those of Apache Commons Math, which is plain Java.
 *
 * <p>What it is not: a model of a particular sewer. What sound sensors look like (equal readings in a row, gaps, noise)
 * follows figures measured on open records; faults are as the trade describes them, and invented in their details.
 */
@NullMarked
package dev.runnel.verification.simulation;

import org.jspecify.annotations.NullMarked;
