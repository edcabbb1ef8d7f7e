package dev.runnel.hydraulics.structure;

import org.apiguardian.api.API;

/**
 * Edges of a culvert's inlet with the constants of its two formulas: K and M while the inlet is free, c and Y once it is under water.
 *
 * <p>Source: L. W. Mays, Water Resources Engineering, 2001, table 16.2.1, after J. M. Normann, R. J. Houghtalen, W. J. Johnson, Hydraulic
 * Design of Highway Culverts, HDS-5, 1985; the numbers of chart and scale stand at each.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum CulvertEdge {
    /** Circular concrete, square edge in a headwall (chart 1, scale 1). */
    CONCRETE_SQUARE_HEADWALL(1, 0.0098, 2, 0.0398, 0.67),
    /** Circular concrete, groove end in a headwall (chart 1, scale 2). */
    CONCRETE_GROOVE_HEADWALL(1, 0.0078, 2, 0.0292, 0.74),
    /** Circular concrete, groove end projecting (chart 1, scale 3). */
    CONCRETE_GROOVE_PROJECTING(1, 0.0045, 2, 0.0317, 0.69),
    /** Circular corrugated metal, headwall (chart 2, scale 1). */
    CORRUGATED_HEADWALL(1, 0.0078, 2, 0.0379, 0.69),
    /** Circular corrugated metal, mitred to the slope (chart 2, scale 2). */
    CORRUGATED_MITRED(1, 0.0210, 1.33, 0.0463, 0.75),
    /** Circular corrugated metal, projecting (chart 2, scale 3). */
    CORRUGATED_PROJECTING(1, 0.0340, 1.5, 0.0553, 0.54),
    /** Circular, ring bevelled at 45° (chart 3, A). */
    RING_BEVEL_45(1, 0.0018, 2.5, 0.0300, 0.74),
    /** Circular, ring bevelled at 33.7° (chart 3, B). */
    RING_BEVEL_33_7(1, 0.0018, 2.5, 0.0243, 0.83),
    /** Rectangular box, wingwalls at 30° to 75° (chart 8, scale 1). */
    BOX_WINGWALLS_30_TO_75(1, 0.026, 1, 0.0385, 0.81),
    /** Rectangular box, wingwalls at 90° and 15° (chart 8, scale 2). */
    BOX_WINGWALLS_90_OR_15(1, 0.061, 0.75, 0.0400, 0.80),
    /** Rectangular box, wingwalls at 0° (chart 8, scale 3). */
    BOX_WINGWALLS_0(1, 0.061, 0.75, 0.0423, 0.82),
    /** Rectangular box, headwall at 90° with chamfers of 3/4 inch (chart 10, scale 1). */
    BOX_CHAMFERED_HEADWALL(2, 0.515, 0.667, 0.0375, 0.79),
    /** Rectangular box, headwall at 90° with bevels of 45° (chart 10, scale 2). */
    BOX_BEVEL_45(2, 0.495, 0.667, 0.0314, 0.82),
    /** Rectangular box, headwall at 90° with bevels of 33.7° (chart 10, scale 3). */
    BOX_BEVEL_33_7(2, 0.486, 0.667, 0.0252, 0.865);

    private final int form;
    private final double k;
    private final double m;
    private final double c;
    private final double y;

    CulvertEdge(int form, double k, double m, double c, double y) {
        this.form = form;
        this.k = k;
        this.m = m;
        this.c = c;
        this.y = y;
    }

    /** Whether the energy of critical flow is a term of the free inlet. */
    boolean addsCriticalEnergy() {
        return form == 1;
    }

    double free(double intensity) {
        return k * Math.pow(intensity, m);
    }

    double drowned(double intensity) {
        return c * intensity * intensity + y;
    }
}
