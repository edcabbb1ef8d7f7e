/**
 * Properties of water that flow and level measurement need.
 *
 * <p>{@link dev.runnel.hydraulics.water.Water} gives density ρ (kg/m³), dynamic viscosity μ (Pa·s) and kinematic
 * viscosity ν = μ/ρ (m²/s) of pure liquid water at 0.1 MPa from its temperature, by the formulation of the International
 * Association for the Properties of Water and Steam: <i>Revised Supplementary Release on Properties of Liquid Water at
 * 0.1 MPa</i>, IAPWS SR6-08(2011).
 *
 * <p>Between 5 and 20 °C the kinematic viscosity falls by a third; on a smooth pipe that moves the discharge by about
 * 3 %, on a rough sewer by much less than 1 %.
 *
 * <p>It also gives the speed of sound in water; {@link dev.runnel.hydraulics.water.Air} gives that in air, and the error of
 * an ultrasonic level whose sensor assumes another temperature.
 *
 * <p>It is not sewage: suspended and dissolved matter raise the viscosity, and design codes add their own allowance.
 */
@NullMarked
package dev.runnel.hydraulics.water;

import org.jspecify.annotations.NullMarked;
