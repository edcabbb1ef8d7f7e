/**
 * Cross-sections of sewers: how much water stands in them at a depth.
 *
 * <p>A section is measured from its invert (lowest point, level 0) upwards. At the depth y (m) it has
 *
 * <ul>
 *   <li>the wetted area A (m²) and the wetted perimeter P (m), their quotient the hydraulic radius R = A/P (m),
 *   <li>the top width T = dA/dy (m) and the hydraulic depth A/T (m),
 *   <li>the depth z̄ (m) of the centroid of the area below the surface; A·z̄ is the first moment about the surface, and
 *       ρ g A z̄ the force of still water on the section (N).
 * </ul>
 *
 * <p>For the circle of diameter D with the angle φ = 2 asin √(y/D), half of the angle that the water subtends at the
 * centre:
 *
 * <pre>
 * A = D²/4 (φ − sin φ cos φ)     P = D φ     T = D sin φ = 2 √(y (D − y))     A z̄ = A (y − D/2) + T³/12
 * </pre>
 *
 * <p>Source of the definitions and of the circle: Ven Te Chow, Open-Channel Hydraulics, 1959, section 2-4 and table 2-1
 * (there with θ = 2φ).
 *
 * <p>A {@link dev.runnel.hydraulics.section.ClosedSection} has a soffit; depth ends there, and what a depth above it
 * means (surcharge) is a question for the flow and monitoring packages. An open section has no soffit.
 *
 * <p><b>At the limits.</b> A depth that misses [0, height] by no more than 1e-12 of the height is rounding (a depth
 * computed as 0.1903 m in a bore built as 0.19029999999999997 m) and counts as the limit. Anything further out is
 * refused.
 *
 * <p><b>Shapes.</b> Besides {@link dev.runnel.hydraulics.section.CircularSection} there is one mechanism: a
 * {@link dev.runnel.hydraulics.section.Wall} of arcs and straight pieces, from which everything is computed exactly, as
 * trapezoids under chords plus segments of circles. Eggs, mouth, horseshoe, arch, U, box, trapezoid, V-invert, benched
 * channel and surveyed tables are a few lines each on top of it. {@link dev.runnel.hydraulics.section.CrossSection#withSediment} puts
 * a level bed into any of them; depths then count from the bed, and the section converts them to levels above the invert.
 *
 * <p>It is not a pipe: gradient and roughness come with {@code dev.runnel.hydraulics.flow}.
 */
@NullMarked
package dev.runnel.hydraulics.section;

import org.jspecify.annotations.NullMarked;
