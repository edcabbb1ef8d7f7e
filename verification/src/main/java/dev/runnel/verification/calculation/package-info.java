/**
 * The calculations a published table can check, each a small named adapter of the library.
 *
 * <p>An adapter takes its {@link dev.runnel.verification.calculation.Inputs} in the library's own units (m, m/s, m³/s,
 * Pa; rainfall in mm and mm/h) and gives one number. It contains no formula of its own: what it returns is what the
 * library computes. {@link dev.runnel.verification.calculation.Calculations} lists all of them; those of one field stand
 * in one class.
 */
@NullMarked
package dev.runnel.verification.calculation;

import org.jspecify.annotations.NullMarked;
