package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.Gravity;

/** The factors of the acceleration of free fall that structures use. */
final class GravityFactors {
    static final double G = Gravity.STANDARD;

    /** √g, m^0.5/s. */
    static final double ROOT_G = Math.sqrt(G);

    /** √(2g), m^0.5/s. */
    static final double ROOT_2G = Math.sqrt(2 * G);

    /** Ideal critical-flow factor (2/3)^1.5 √g, m^0.5/s. */
    static final double CRITICAL = 2.0 / 3 * Math.sqrt(2.0 / 3 * G);

    private GravityFactors() {}
}
