package dev.runnel.hydraulics.structure;

/** Standard acceleration of gravity and the factors of it that structures use. */
final class Gravity {
    /** Standard value, m/s²; 3rd CGPM (1901), ISO 80000-3. Local values differ by up to 0.3 %, Q by half of that. */
    static final double G = 9.80665;

    /** √g, m^0.5/s. */
    static final double ROOT_G = Math.sqrt(G);

    /** √(2g), m^0.5/s. */
    static final double ROOT_2G = Math.sqrt(2 * G);

    /** Ideal critical-flow factor (2/3)^1.5 √g, m^0.5/s. */
    static final double CRITICAL = 2.0 / 3 * Math.sqrt(2.0 / 3 * G);

    private Gravity() {}
}
