/**
 * Independent recomputations: the same questions answered by other formulas and a general-purpose root finder.
 *
 * <p>Nothing here calls the code it checks on the way to the expected value: geometry is written in the central angle
 * &theta; = 2 acos(1 − 2y/D), A = D²(&theta; − sin &theta;)/8, P = D&theta;/2; the laws of resistance are written out;
 * roots and maxima are found by Brent's methods of Apache Commons Math. Cases are random with a fixed seed, so that a run
 * can be repeated, and are counted.
 */
@NullMarked
package dev.runnel.verification.oracle;

import org.jspecify.annotations.NullMarked;
