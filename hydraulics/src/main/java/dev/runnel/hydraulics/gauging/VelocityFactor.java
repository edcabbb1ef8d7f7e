package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The factor that makes the mean velocity of a section out of the velocity that was read, with its uncertainty.
 *
 * @param factor mean velocity over the one read
 * @param standardUncertainty its standard uncertainty (68 %), in the same measure as the factor
 * @param source where it comes from
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record VelocityFactor(double factor, double standardUncertainty, String source) {
    /**
     * Checks the parts.
     *
     * @param factor the factor; in [0.1, 3]
     * @param standardUncertainty its standard uncertainty; in [0, 1]
     * @param source where it comes from
     * @throws IllegalArgumentException if a part is outside its range
     */
    public VelocityFactor {
        Objects.requireNonNull(source, "source");
        Require.inRange("factor", factor, 0.1, 3, "");
        Require.inRange("standardUncertainty", standardUncertainty, 0, 1, "");
    }

    /**
     * Returns the rule of 0.9: the mean is nine tenths of the greatest velocity that a sensor finds (common practice of the
     * trade; J. Marsh, portable velocity meter manual, for depths below about 5 cm), with 5 % (common practice).
     *
     * @return 0.90 ± 0.05
     */
    public static VelocityFactor ofGreatest() {
        return new VelocityFactor(0.90, 0.05, "nine tenths of the greatest, common practice");
    }

    /**
     * Returns the usual factor of a surface velocity in a wide stream, 0.85 (common practice; 0.80 to 0.90 by A. Hauet and others,
     * 2018, from shallow to deep), with 0.05.
     *
     * @return 0.85 ± 0.05
     */
    public static VelocityFactor ofSurface() {
        return new VelocityFactor(0.85, 0.05, "surface of a stream, common practice");
    }

    /**
     * Returns the factor of the centre of a full pipe, 0.85 by a pitot tube on the axis (K. Subramanya, 1000 Solved Problems in Fluid
     * Mechanics, ex. 13.27), with 0.03 (chosen here: the power laws of all turbulent flows lie within it).
     *
     * @return 0.85 ± 0.03
     */
    public static VelocityFactor ofPipeCentre() {
        return new VelocityFactor(0.85, 0.03, "centre of a full pipe");
    }

    /**
     * Returns the mean velocity.
     *
     * @param read velocity that was read, m/s; finite
     * @return mean velocity, m/s
     * @throws IllegalArgumentException if {@code read} is not finite
     */
    public double mean(double read) {
        return factor * Require.finite("read", read, "m/s");
    }

    /**
     * Returns the relative standard uncertainty.
     *
     * @return u/factor, 0.05 for 5 %
     */
    public double relativeUncertainty() {
        return standardUncertainty / factor;
    }

    @Override
    public String toString() {
        return "VelocityFactor[" + Text.significant(factor, 4) + " ± " + Text.significant(standardUncertainty, 2) + ", "
                + source + "]";
    }
}
