/**
 * How sure a computed figure is: the law of propagation and, beside it, the propagation of whole distributions.
 *
 * <p>A result y = f(x₁, x₂, …) is computed from inputs of which each has an estimate and a standard uncertainty u (68 %). {@link
 * dev.runnel.hydraulics.uncertainty.MeasurementModel} holds the function and the inputs and answers in two ways:
 *
 * <ul>
 *   <li>{@code propagated()}: u²(y) = Σ Σ cᵢ cⱼ u(xᵢ) u(xⱼ) r(xᵢ, xⱼ), with cᵢ = ∂f/∂xᵢ and r the correlation; the table of
 *       contributions says which input matters (JCGM 100:2008, the Guide, 5.1 and 5.2)
 *   <li>{@code simulated(trials, seed)}: the inputs drawn from their distributions again and again, which needs no straight line
 *       and no normal distribution (JCGM 101:2008, Supplement 1)
 * </ul>
 *
 * <p>{@code validated} holds one against the other by the test of the Supplement, clause 8. Any calculation of this library can stand
 * in f: a weir, a rating curve, a monitored pipe.
 *
 * <p>What this is not: a substitute for knowing the inputs. A bias that nobody put in is in no budget.
 */
@NullMarked
package dev.runnel.hydraulics.uncertainty;

import org.jspecify.annotations.NullMarked;
