/**
 * Structures that turn a head into a discharge: weirs, flumes, orifices, gates, outfalls, flap valves and screens. For
 * those that have no formula see {@code dev.runnel.hydraulics.rating}.
 *
 * <p>Water that falls over a crest, squeezes through a throat or shoots through an opening passes a control: its
 * discharge Q (m³/s) depends on the head h (m) upstream alone. With g the acceleration of gravity, every control here
 * is a form of one of
 *
 * <ul>
 *   <li>rectangular crest: Q = C · ⅔ · √(2g) · b · h^1.5
 *   <li>triangular notch: Q = C · 8/15 · √(2g) · tan(θ/2) · h^2.5
 *   <li>critical depth in a throat: Q = C · (⅔)^1.5 · √g · b · H^1.5, H = h + v²/2g
 *   <li>opening under water: Q = C · A · √(2gh)
 * </ul>
 *
 * <p>with a coefficient C that was measured once, in a laboratory, for a stated range. Outside that range nobody knows
 * it. Therefore every {@link dev.runnel.hydraulics.structure.HeadDischarge} carries its
 * {@linkplain dev.runnel.hydraulics.structure.ApplicationLimit limits of application}: {@code discharge(head)} and
 * {@code head(discharge)} refuse what lies outside, {@code evaluate(head)} gives the figure and names each limit it
 * breaks. A head of 0 is a dry crest and gives 0; it breaks no limit. Up to {@code highestHead()} the discharge rises with the
 * head, so that each discharge has one head.
 *
 * <p>Where the water behind a structure stands high enough, it takes part: the structure is drowned. {@code modularLimit(head)}
 * says from when, and a {@link dev.runnel.hydraulics.structure.TailwaterDischarge} has the law for it. Thin plates, broad
 * crests, flumes and gates each have their own; one law for all would be wrong for most.
 *
 * <p>Heads are measured above the crest, vertex or sill named by the class, far enough upstream that the surface is not
 * yet drawn down (four to five times the greatest head for weirs: common practice). All figures hold for clean water and
 * a clean structure. In a sewer, ragging and silt shift the coefficient before anything else does.
 *
 * <p>Sources are named at each class. A limit or constant marked "from memory" was written down without the page at
 * hand and should be held against the standard before it decides anything.
 *
 * <p>What this is not: a design tool. Sizing an overflow, a screen or a gate falls to the local code and to a licensed
 * engineer, and no figure here makes a structure safe to enter.
 */
@NullMarked
package dev.runnel.hydraulics.structure;

import org.jspecify.annotations.NullMarked;
