package dev.runnel.hydraulics.gauging;

import dev.runnel.hydraulics.internal.NumberTable;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The power law of a velocity profile, u/u_max = (y/Y)^(1/m): y the distance from the wall or bed, Y that of the greatest velocity, the
 * radius of a pipe or the depth of a wide channel. Immutable and thread-safe.
 *
 * <ul>
 *   <li>full pipe: V/u_max = 2 m²/((m + 1)(2 m + 1))
 *   <li>wide channel: V/u_surface = m/(m + 1); the velocity at the share z of the depth above the bed is V (m + 1)/m z^(1/m)
 * </ul>
 *
 * <p>Source: H. Schlichting, Boundary-Layer Theory, ch. 20: m 6 at a Reynolds number of 4·10³ to 10 at 3.2·10⁶ (Nikuradse); 7 is the
 * common figure, 6 in natural streams (ISO 748, from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PowerLaw {
    private static final NumberTable SCHLICHTING = NumberTable.read(PowerLaw.class, "schlichting-power.csv");

    /** Standard uncertainty of m where it is taken from a rule; chosen here. */
    private static final double OF_RULE = 1;

    private final double m;

    private PowerLaw(double m) {
        this.m = m;
    }

    /**
     * Returns the law with a given exponent 1/m.
     *
     * @param m the denominator; in [2, 20]
     * @return the law
     * @throws IllegalArgumentException if {@code m} is outside its range
     */
    public static PowerLaw of(double m) {
        return new PowerLaw(Require.inRange("m", m, 2, 20, ""));
    }

    /**
     * Returns the law of a full smooth pipe.
     *
     * @param reynolds Reynolds number V D/ν; in [4e3, 3.2e6]
     * @return the law, m by a straight line over the logarithm between the rows of the table
     * @throws IllegalArgumentException if {@code reynolds} is outside its range
     */
    public static PowerLaw ofReynolds(double reynolds) {
        Require.inRange("reynolds", reynolds, 4e3, 3.2e6, "");
        return new PowerLaw(SCHLICHTING.held(Math.log10(reynolds), 1));
    }

    /**
     * Returns the law through two velocities of one vertical.
     *
     * @param lowerHeight height of the lower point above the bed, m; greater than 0
     * @param upperHeight height of the upper point, m; greater than {@code lowerHeight}
     * @param lowerVelocity velocity at the lower point, m/s; greater than 0
     * @param upperVelocity velocity at the upper point, m/s; greater than {@code lowerVelocity}
     * @return the law
     * @throws IllegalArgumentException if a parameter is outside its range, or m is outside [2, 20]
     */
    public static PowerLaw throughHeightsAndVelocities(
            double lowerHeight, double upperHeight, double lowerVelocity, double upperVelocity) {
        Require.positive("lowerHeight", lowerHeight, "m");
        Require.positive("lowerVelocity", lowerVelocity, "m/s");
        if (!(upperHeight > lowerHeight && upperVelocity > lowerVelocity)) {
            throw new IllegalArgumentException("upperHeight and upperVelocity must be above the lower ones, were "
                    + Text.number(upperHeight) + " m and " + Text.number(upperVelocity) + " m/s");
        }
        return of(Math.log(upperHeight / lowerHeight) / Math.log(upperVelocity / lowerVelocity));
    }

    /**
     * Returns the denominator of the exponent.
     *
     * @return m
     */
    public double m() {
        return m;
    }

    /**
     * Returns mean over greatest velocity in a full pipe.
     *
     * @return V/u_max
     */
    public double meanToCentre() {
        return 2 * m * m / ((m + 1) * (2 * m + 1));
    }

    /**
     * Returns mean over surface velocity in a wide channel.
     *
     * @return V/u_surface
     */
    public double meanToSurface() {
        return m / (m + 1);
    }

    /**
     * Returns mean velocity over that at one height, in a wide channel.
     *
     * @param height height above the bed as a share of the depth; greater than 0, at most 1
     * @return V/u
     * @throws IllegalArgumentException if {@code height} is outside its range
     */
    public double meanToPoint(double height) {
        if (!(height > 0 && height <= 1)) {
            throw new IllegalArgumentException(
                    "height must be greater than 0 and at most 1, was " + Text.number(height));
        }
        return meanToSurface() / Math.pow(height, 1 / m);
    }

    /**
     * Returns the factor of a sensor at one height in a wide channel, with the uncertainty that ±1 in m leaves.
     *
     * @param height height above the bed as a share of the depth; greater than 0, at most 1
     * @return the factor
     * @throws IllegalArgumentException if {@code height} is outside its range
     */
    public VelocityFactor atPoint(double height) {
        return factor(
                meanToPoint(height),
                new PowerLaw(m - OF_RULE).meanToPoint(height),
                new PowerLaw(m + OF_RULE).meanToPoint(height));
    }

    /**
     * Returns the factor of a velocity on the axis of a full pipe, with the uncertainty that ±1 in m leaves.
     *
     * @return the factor
     */
    public VelocityFactor atCentre() {
        return factor(
                meanToCentre(), new PowerLaw(m - OF_RULE).meanToCentre(), new PowerLaw(m + OF_RULE).meanToCentre());
    }

    private VelocityFactor factor(double value, double below, double above) {
        return new VelocityFactor(value, Math.abs(above - below) / 2, "power law 1/" + Text.significant(m, 3));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PowerLaw that && Double.compare(m, that.m) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(m);
    }

    @Override
    public String toString() {
        return "PowerLaw[1/" + Text.significant(m, 4) + "]";
    }
}
