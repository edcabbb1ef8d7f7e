/**
 * The proof: what a published source prints against what Runnel computes.
 *
 * <p>A {@link dev.runnel.verification.Check} is one printed value beside one computed value, with the deviation the
 * source's own rounding allows. Checks come from <em>published tables</em>: a CSV file with the printed rows and a small
 * descriptor file beside it that names the {@link dev.runnel.verification.Source}, the units, the tolerance with its
 * reason and the calculation that is checked (package {@code table}). Calculations are named adapters of the library
 * (package {@code calculation}); so a new table for an existing calculation is two files and no code.
 *
 * <p>A check passes if |computed − expected| ≤ tolerance, all three in the unit the source prints.
 *
 * <p>What it is not: a proof that the source is right, or that a method suits a given pipe or storm. It shows that the
 * code computes what the source says, to the digits the source gives.
 */
@NullMarked
package dev.runnel.verification;

import org.jspecify.annotations.NullMarked;
