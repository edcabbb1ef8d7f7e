package dev.runnel.hydraulics.internal;

/**
 * Polynomials of a segment of the unit circle, made by src/generator/unit_circle.py at 60 digits; do not edit. Constants
 * of a class, not a table: the compiler writes them into the vector loops.
 *
 * <p>Measured error before any rounding of the evaluation: area 7.6e-17, angle 2.3e-17. SHA-256 of
 * the big-endian doubles, A then P: {@value #DIGEST}.
 */
final class SegmentPolynomials {
    /** Area of the segment of height w up to 1/2 is w^(3/2) (4/3 + w (A0 + A1 w + ...)). */
    static final double A0 = -0.3999999999999698;

    static final double A1 = -0.07142857143559317;

    static final double A2 = -0.027777777205939887;

    static final double A3 = -0.014204569033867985;

    static final double A4 = -0.008412882865799498;

    static final double A5 = -0.005477998314781953;

    static final double A6 = -0.0036896340203966638;

    static final double A7 = -0.003553766663140234;

    static final double A8 = 0.002474935891231782;

    static final double A9 = -0.02074212925619124;

    static final double A10 = 0.05791976812414363;

    static final double A11 = -0.1346569280552923;

    static final double A12 = 0.2137524636682178;

    static final double A13 = -0.2343204843513005;

    static final double A14 = 0.15535388711756978;

    static final double A15 = -0.04984604434805962;

    /** Half of the angle that its chord subtends is w^(1/2) (2 + w (P0 + P1 w + ...)). */
    static final double P0 = 0.33333333333331144;

    static final double P1 = 0.15000000000636912;

    static final double P2 = 0.08928571363523229;

    static final double P3 = 0.060763922667858725;

    static final double P4 = 0.04474326793704828;

    static final double P5 = 0.034726964801190106;

    static final double P6 = 0.027625395780579914;

    static final double P7 = 0.026224551890407538;

    static final double P8 = -0.004198347635735811;

    static final double P9 = 0.1525644564022961;

    static final double P10 = -0.5757340626445044;

    static final double P11 = 1.965589376231932;

    static final double P12 = -4.873275864417402;

    static final double P13 = 9.111980697910441;

    static final double P14 = -12.261899116994178;

    static final double P15 = 11.362999929587843;

    static final double P16 = -6.485528942459415;

    static final double P17 = 1.7628600497707474;

    /** Of the numbers above. */
    static final String DIGEST = "b7de7cded9308c2af8c75078282155da9b203921721ac3a3a25b34aca66728c3";

    private SegmentPolynomials() {}
}
