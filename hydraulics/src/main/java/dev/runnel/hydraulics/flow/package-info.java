/**
 * Steady flow in a sewer: what a conduit carries at a depth, and every question that can be asked back.
 *
 * <p>A {@link dev.runnel.hydraulics.flow.Conduit} is a section, a gradient S (m/m) and a law of resistance. In uniform
 * flow the water runs parallel to the bed, and with R the hydraulic radius (m) the mean velocity V (m/s) is
 *
 * <pre>
 * Manning           V = (1/n) R^(2/3) S^(1/2)
 * Colebrook-White   V = −2 √(8 g R S) lg( ks/(3.7 · 4R) + 2.51 ν/(4R √(8 g R S)) )
 * </pre>
 *
 * <p>with n Manning's roughness (s/m^(1/3)), ks the equivalent sand roughness (m), ν the kinematic viscosity (m²/s), lg
 * the decimal logarithm. The discharge is Q = A V (m³/s). Closed sections carry most a little below full: there the wet
 * wall that the last film of air saves outweighs the area it takes. Between full-bore discharge and that maximum there
 * are <em>two</em> normal depths; {@code normalDepths} returns both.
 *
 * <p>Critical depth: q² T/(g A³) = 1, where Froude's number V/√(g A/T) is 1. Mean boundary shear stress: τ = ρ g R S.
 *
 * <p><b>Where to find what.</b> Uniform flow: {@link dev.runnel.hydraulics.flow.Conduit}. Energy, momentum and jumps of one
 * discharge in one section: {@link dev.runnel.hydraulics.flow.SectionFlow}. Varied flow along a chain of reaches, pressurised
 * lengths included: {@link dev.runnel.hydraulics.flow.VariedFlow}; how far a raised level reaches:
 * {@link dev.runnel.hydraulics.flow.Backwater}. Roughness from several or by depth:
 * {@link dev.runnel.hydraulics.flow.CompositeManning}, {@link dev.runnel.hydraulics.flow.VariableManning}. Rules for
 * self-cleansing: {@link dev.runnel.hydraulics.flow.CleansingCriterion}.
 *
 * <p>Sources: Ven Te Chow, Open-Channel Hydraulics, 1959, chapters 3 to 6; C. F. Colebrook, Turbulent flow in pipes, with
 * particular reference to the transition region between the smooth and rough pipe laws, J. Inst. Civil Engrs 11 (1939).
 *
 * <p>g is the standard acceleration of free fall, 9.80665 m/s², unless a conduit is told another: printed tables often
 * use 9.81, which moves a Colebrook-White velocity by 0.017 %.
 *
 * <p>It is not a network model: backwater, storage and waves are not in uniform flow. Figures are for analysis; capacity
 * for a design follows the local code and a licensed engineer.
 */
@NullMarked
package dev.runnel.hydraulics.flow;

import org.jspecify.annotations.NullMarked;
