package dev.runnel.hydraulics.internal;

/**
 * Polynomials of a segment of the unit circle, made by src/generator/unit_circle.py at 60 digits; do not edit. Constants
 * of a class, not a table: the compiler writes them into the vector loops.
 *
 * <p>Measured error before any rounding of the evaluation: area 3.4e-17, angle 6.1e-17. SHA-256 of
 * the big-endian doubles, A then P: {@value #DIGEST}.
 */
final class SegmentPolynomials {
    /** Area of the segment of height w up to 1/2 is w^(3/2) (4/3 + w (A0 + A1 w + ...)). */
    static final double A0 = -0.4;

    static final double A1 = -0.07142857142852992;

    static final double A2 = -0.027777777785716284;

    static final double A3 = -0.014204544855539352;

    static final double A4 = -0.008413485244526068;

    static final double A5 = -0.0054681830133507196;

    static final double A6 = -0.003800262618947286;

    static final double A7 = -0.002659561868387993;

    static final double A8 = -0.0028283994827541874;

    static final double A9 = 0.0026367428296810262;

    static final double A10 = -0.019020236924829622;

    static final double A11 = 0.05356098379673453;

    static final double A12 = -0.12350775834341896;

    static final double A13 = 0.19545728536342907;

    static final double A14 = -0.2133184729149853;

    static final double A15 = 0.1409584223188797;

    static final double A16 = -0.04500508946580005;

    /** Half of the angle that its chord subtends is w^(1/2) (2 + w (P0 + P1 w + ...)). */
    static final double P0 = 0.3333333333333332;

    static final double P1 = 0.15000000000017966;

    static final double P2 = 0.08928571424717031;

    static final double P3 = 0.060763892156047716;

    static final double P4 = 0.04474417260737367;

    static final double P5 = 0.034709461337994046;

    static final double P6 = 0.027859648602720426;

    static final double P7 = 0.023971118065514777;

    static final double P8 = 0.011783924767310452;

    static final double P9 = 0.06764795495659139;

    static final double P10 = -0.23495682791994232;

    static final double P11 = 0.9316212217054463;

    static final double P12 = -2.517362600853615;

    static final double P13 = 5.147016128913972;

    static final double P14 = -7.483198600536351;

    static final double P15 = 7.463294963375993;

    static final double P16 = -4.555980978940012;

    static final double P17 = 1.325895109686849;

    /** Of the numbers above. */
    static final String DIGEST = "999ddc7b257918bf68509a8d1d3950ac31cd3c138eb7b596bc64c41830a7a4da";

    private SegmentPolynomials() {}
}
