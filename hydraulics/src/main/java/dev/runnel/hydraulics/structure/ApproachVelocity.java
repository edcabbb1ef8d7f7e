package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * The coefficient of approach velocity of structures with critical flow, Cv = (H/h)^1.5: by how much the energy of the
 * arriving water raises the discharge above that of the gauged head alone.
 *
 * <p>With Q = C · b · H^1.5 and H = h + Q²/(2gA²), Cv^(2/3) = 1 + (4/27) x² Cv², where x = Cd · b · h/A with A the area
 * of the approach channel at the gauge. The cubic in Cv^(2/3) has the closed solution Cv^(2/3) = (3/x) sin(⅓ asin x),
 * which is the branch of subcritical approach; it ends at x = 1, where the approach itself is critical and Cv is
 * 1.5^1.5 = 1.8371.
 *
 * <p>Source: ISO 4359 and M. G. Bos (1989), Discharge Measurement Structures, ILRI 20, for the equation (from memory);
 * the closed form is elementary.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ApproachVelocity {
    private ApproachVelocity() {}

    /**
     * Returns Cv.
     *
     * @param ratio x = Cd · b · h/A, in [0, 1]
     * @return Cv, 1 to 1.8371; relative error below 1e-14
     * @throws IllegalArgumentException if {@code ratio} is outside [0, 1] or NaN
     */
    public static double coefficient(double ratio) {
        Require.inRange("ratio", ratio, 0, 1, "");
        double energyRatio = energyRatio(ratio);
        return energyRatio * Math.sqrt(energyRatio);
    }

    /** Returns H/h = Cv^(2/3); the ratio is not checked. */
    static double energyRatio(double ratio) {
        return ratio < 1e-8 ? 1 : 3 * Math.sin(Math.asin(ratio) / 3) / ratio;
    }
}
