package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The logarithmic law of a velocity profile, u = u_max + (u⁎/κ) ln(y/Y), with the shear velocity u⁎ (m/s) from the friction of the
 * section, u⁎/V = √(f/8): y the distance from the wall or bed, Y that of the greatest velocity, κ = 0.41. Immutable and
 * thread-safe.
 *
 * <ul>
 *   <li>full pipe: u_max/V = 1 + (3/2κ) √(f/8)
 *   <li>wide channel: u_surface/V = 1 + (1/κ) √(f/8); the mean stands at 1/e = 0.368 of the depth above the bed
 * </ul>
 *
 * <p>f is Darcy's friction factor. Source: L. Prandtl and T. von Kármán, in any textbook, e.g. F. M. White, Fluid Mechanics, ch. 6; the
 * ratios are the integrals of the law over pipe and depth.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class LogLaw {
    /** Constant of von Kármán, 0.40 to 0.41 in textbooks. */
    private static final double KARMAN = 0.41;

    private final double shearRatio;

    private LogLaw(double shearRatio) {
        this.shearRatio = shearRatio;
    }

    /**
     * Returns the law of a friction factor.
     *
     * @param frictionFactor Darcy's f; in [0.004, 0.2]
     * @return the law
     * @throws IllegalArgumentException if {@code frictionFactor} is outside its range
     */
    public static LogLaw ofFriction(double frictionFactor) {
        return new LogLaw(Math.sqrt(Require.inRange("frictionFactor", frictionFactor, 0.004, 0.2, "") / 8));
    }

    /**
     * Returns mean over greatest velocity in a full pipe.
     *
     * @return V/u_max
     */
    public double meanToCentre() {
        return 1 / (1 + 1.5 / KARMAN * shearRatio);
    }

    /**
     * Returns mean over surface velocity in a wide channel.
     *
     * @return V/u_surface
     */
    public double meanToSurface() {
        return meanToPoint(1);
    }

    /**
     * Returns mean velocity over that at one height in a wide channel.
     *
     * @param height height above the bed as a share of the depth; in [0.01, 1], and high enough that the law gives a velocity above 0
     * @return V/u
     * @throws IllegalArgumentException if {@code height} is outside its range
     */
    public double meanToPoint(double height) {
        Require.inRange("height", height, 0.01, 1, "");
        double ratio = 1 + shearRatio / KARMAN * (1 + Math.log(height));
        if (!(ratio > 0)) {
            throw new IllegalArgumentException("height must be greater than "
                    + Text.significant(Math.exp(-1 - KARMAN / shearRatio), 3) + ", below which the law fails, was "
                    + Text.number(height));
        }
        return 1 / ratio;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LogLaw that && Double.compare(shearRatio, that.shearRatio) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(shearRatio);
    }

    @Override
    public String toString() {
        return "LogLaw[u* = " + Text.significant(shearRatio, 4) + " V]";
    }
}
