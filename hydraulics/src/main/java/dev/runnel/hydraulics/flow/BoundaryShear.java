package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * Shear stress of uniform flow on the boundary: the mean, and that on a bed rougher or smoother than the walls.
 *
 * <pre>
 * τ = ρ g R S          τ_bed = ρ g R_bed S     R_bed = R (n_bed/n)^(3/2)
 * </pre>
 *
 * <p>The second is the separation of H. A. Einstein, 1934 and 1942: bed and walls are given parts of the flow with one mean
 * velocity and gradient (from Ven Te Chow, Open-Channel Hydraulics, 1959, section 6-5, the assumption behind
 * {@link Compounding#HORTON_EINSTEIN}). Local peaks at corners and in bends are not in it.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class BoundaryShear {
    private BoundaryShear() {}

    /**
     * Returns the mean shear stress on the wetted perimeter.
     *
     * @param conduit the conduit
     * @param depth depth above the invert, m; in [0, height of the section]
     * @return τ, Pa
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public static double mean(Conduit conduit, double depth) {
        return conduit.at(depth).shearStress();
    }

    /**
     * Returns the mean shear stress on the bed.
     *
     * @param conduit the conduit, its resistance a {@link CompositeManning}; with any other law the stress is the mean
     * @param depth depth above the bed, m; in (0, height of the section]
     * @return τ on the bed, Pa
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public static double onBed(Conduit conduit, double depth) {
        Require.positive("depth", depth, "m");
        double mean = mean(conduit, depth);
        CrossSection section = conduit.section();
        if (conduit.resistance() instanceof CompositeManning law) {
            double ratio = law.n(section, 0)
                    / law.withMethod(Compounding.HORTON_EINSTEIN).n(section, depth);
            return mean * ratio * Math.sqrt(ratio);
        }
        return mean;
    }
}
