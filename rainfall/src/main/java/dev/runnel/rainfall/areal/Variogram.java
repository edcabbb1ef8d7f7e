package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How unlike the rain of two places is, by their distance h: the semivariogram
 *
 * <blockquote>γ(0) = 0, γ(h) = c₀ + (c − c₀) f(h/a)</blockquote>
 *
 * <p>with the nugget c₀ [mm²], what differs between places however near; the sill c [mm²], reached at the range a [m]; and f(u)
 * spherical, 1.5 u − 0.5 u³ up to u = 1, then 1; exponential, 1 − e<sup>−3u</sup>; or Gaussian, 1 − e<sup>−3u²</sup>, these two with 95 %
 * of the sill at the range. Source: Cressie (1993), Statistics for spatial data, section 2.3; Deutsch and Journel (1998), GSLIB,
 * section II.3, for the practical range. Immutable and thread-safe.
 *
 * <p>Weights depend on the shape, the range and the share of the nugget alone; the sill scales the variance.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Variogram {
    private enum Shape {
        SPHERICAL,
        EXPONENTIAL,
        GAUSSIAN
    }

    private final Shape shape;
    private final double range;
    private final double sill;
    private final double nugget;

    private Variogram(Shape shape, double range, double sill, double nugget) {
        this.shape = shape;
        this.range = range;
        this.sill = sill;
        this.nugget = nugget;
    }

    private static Variogram of(Shape shape, double rangeM) {
        return new Variogram(shape, Require.positive("rangeM", rangeM, "m"), 1, 0);
    }

    /**
     * Returns the spherical one with a sill of 1 mm² and without nugget.
     *
     * @param rangeM range a, m; greater than 0
     * @return the variogram
     * @throws IllegalArgumentException if it is out of range
     */
    public static Variogram spherical(double rangeM) {
        return of(Shape.SPHERICAL, rangeM);
    }

    /**
     * Returns the exponential one with a sill of 1 mm² and without nugget.
     *
     * @param rangeM range a at which 95 % of the sill are reached, m; greater than 0
     * @return the variogram
     * @throws IllegalArgumentException if it is out of range
     */
    public static Variogram exponential(double rangeM) {
        return of(Shape.EXPONENTIAL, rangeM);
    }

    /**
     * Returns the Gaussian one with a sill of 1 mm² and without nugget. Give it a nugget: without one, near gauges make weights that no
     * rain has.
     *
     * @param rangeM range a at which 95 % of the sill are reached, m; greater than 0
     * @return the variogram
     * @throws IllegalArgumentException if it is out of range
     */
    public static Variogram gaussian(double rangeM) {
        return of(Shape.GAUSSIAN, rangeM);
    }

    /**
     * Returns the same variogram with another sill; the nugget keeps its share of it.
     *
     * @param sillMm2 sill c, nugget included, mm²; greater than 0
     * @return the variogram
     * @throws IllegalArgumentException if it is out of range
     */
    public Variogram withSill(double sillMm2) {
        Require.positive("sillMm2", sillMm2, "mm2");
        return new Variogram(shape, range, sillMm2, nugget / sill * sillMm2);
    }

    /**
     * Returns the same variogram with another nugget.
     *
     * @param nuggetMm2 nugget c₀, mm²; 0 to the sill
     * @return the variogram
     * @throws IllegalArgumentException if it is out of range
     */
    public Variogram withNugget(double nuggetMm2) {
        return new Variogram(shape, range, sill, Require.inRange("nuggetMm2", nuggetMm2, 0, sill, "mm2"));
    }

    /**
     * Returns the semivariance.
     *
     * @param distanceM distance h, m; 0 or greater
     * @return γ(h), mm²
     * @throws IllegalArgumentException if the distance is negative, infinite or NaN
     */
    public double semivarianceMm2(double distanceM) {
        Require.nonNegative("distanceM", distanceM, "m");
        return distanceM == 0 ? 0 : nugget + (sill - nugget) * rise(distanceM / range);
    }

    private double rise(double u) {
        return switch (shape) {
            case SPHERICAL -> u >= 1 ? 1 : u * (1.5 - 0.5 * u * u);
            case EXPONENTIAL -> -Math.expm1(-3 * u);
            case GAUSSIAN -> -Math.expm1(-3 * u * u);
        };
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Variogram that
                && shape == that.shape
                && Double.compare(range, that.range) == 0
                && Double.compare(sill, that.sill) == 0
                && Double.compare(nugget, that.nugget) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(shape, range, sill, nugget);
    }

    @Override
    public String toString() {
        String name = switch (shape) {
            case SPHERICAL -> "spherical";
            case EXPONENTIAL -> "exponential";
            case GAUSSIAN -> "Gaussian";
        };
        return "Variogram[" + name + ", range " + Text.significant(range, 6) + " m, sill " + Text.significant(sill, 6)
                + " mm2, nugget " + Text.significant(nugget, 6) + " mm2]";
    }
}
