package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The weir of the textbooks with the caller's own coefficient: rectangular, triangular or trapezoidal, with or without end
 * contractions and velocity of approach. Immutable and thread-safe.
 *
 * <p>Q = Cd ⅔ √(2g) (b − 0.1 n h) ((h + k)^1.5 − k^1.5) + Cd 8/15 √(2g) z ((h + k)^2.5 − k^2.5), where b is the crest length (m), z
 * the slope of the sides, horizontal to vertical (tan(θ/2) for a notch), n the count of end contractions and k = v²/2g the
 * velocity head of the approach, v = Q/(B (h + p)), solved to the end. Without an approach k = 0.
 *
 * <p>Source: J. B. Francis (1883) for 0.1 n h and for k, with his constant 3.33 ft^0.5/s = 1.8385 m^0.5/s in {@link
 * #francis(double)}; the forms in any textbook, e.g. R. S. Dighe, Hydraulics Made Easy, ch. 5.
 *
 * <p>What it is not: a standard weir. It has no limits of application and no uncertainty but those of the coefficient put in;
 * where a standard fits the plate, {@link RectangularWeir} and {@link VNotchWeir} are better.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class CoefficientWeir implements HeadDischarge {
    private static final double FRANCIS = 3.33 * Math.sqrt(0.3048);

    private final double crestLength;
    private final double sideSlope;
    private final double factor;
    private final int contractions;
    private final double channelWidth;
    private final double crestHeight;
    private final double highestHead;

    private CoefficientWeir(
            double crestLength,
            double sideSlope,
            double factor,
            int contractions,
            double channelWidth,
            double crestHeight) {
        this.crestLength = crestLength;
        this.sideSlope = sideSlope;
        this.factor = factor;
        this.contractions = contractions;
        this.channelWidth = channelWidth;
        this.crestHeight = crestHeight;
        // Q rises with h as long as the lost length is below 2/5 of b: d/dh of (b - 0.1 n h) h^1.5 is 0 at 0.1 n h =
        // 0.6 b
        double contracted = contractions == 0 ? 1e4 : Math.min(1e4, 6 * crestLength / contractions);
        highestHead = hasApproach()
                ? Subcritical.highest(1e-6, contracted, head -> !Double.isNaN(withApproach(head)))
                : contracted;
        if (Double.isNaN(highestHead)) {
            throw new IllegalArgumentException(
                    "channelWidth must be wide enough for a subcritical approach, was " + Text.number(channelWidth));
        }
    }

    /**
     * Returns a rectangular weir.
     *
     * @param crestLength crest length b, m; greater than 0, finite
     * @param coefficient Cd; greater than 0, at most 1
     * @return the weir, without end contraction and approach velocity
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static CoefficientWeir rectangular(double crestLength, double coefficient) {
        return trapezoidal(crestLength, 0, coefficient);
    }

    /**
     * Returns a rectangular weir with the constant of Francis, Q = 1.8385 b h^1.5.
     *
     * @param crestLength crest length b, m; greater than 0, finite
     * @return the weir, without end contraction and approach velocity
     * @throws IllegalArgumentException if {@code crestLength} is not
     */
    public static CoefficientWeir francis(double crestLength) {
        return new CoefficientWeir(
                Require.positive("crestLength", crestLength, "m"), 0, FRANCIS, 0, Double.POSITIVE_INFINITY, 0);
    }

    /**
     * Returns a triangular notch.
     *
     * @param angleDegrees notch angle θ, degrees; greater than 0, less than 180
     * @param coefficient Cd; greater than 0, at most 1
     * @return the weir, without approach velocity
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static CoefficientWeir vNotch(double angleDegrees, double coefficient) {
        if (!(angleDegrees > 0 && angleDegrees < 180)) {
            throw new IllegalArgumentException(
                    "angleDegrees must be greater than 0 and less than 180, was " + Text.number(angleDegrees));
        }
        return of(0, Math.tan(Math.toRadians(angleDegrees) / 2), coefficient);
    }

    /**
     * Returns a trapezoidal notch.
     *
     * @param crestLength crest length b, m; greater than 0, finite
     * @param sideSlope slope of both sides z, horizontal to 1 vertical; 0 or greater, finite
     * @param coefficient Cd; greater than 0, at most 1
     * @return the weir, without approach velocity
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static CoefficientWeir trapezoidal(double crestLength, double sideSlope, double coefficient) {
        return of(
                Require.positive("crestLength", crestLength, "m"),
                Require.nonNegative("sideSlope", sideSlope, ""),
                coefficient);
    }

    private static CoefficientWeir of(double crestLength, double sideSlope, double coefficient) {
        double factor = 2.0 / 3 * GravityFactors.ROOT_2G * Coefficients.checked("coefficient", coefficient);
        return new CoefficientWeir(crestLength, sideSlope, factor, 0, Double.POSITIVE_INFINITY, 0);
    }

    /**
     * Returns a copy whose crest is shortened by end contractions, by 0.1 h each.
     *
     * @param count count of contractions n, 0 or more: 2 for one notch, 2 more for each pier
     * @return the copy; its heads end at 6 b/n, where the discharge would fall
     * @throws IllegalArgumentException if {@code count} is negative, or above 0 for a notch without a crest
     */
    public CoefficientWeir withEndContractions(int count) {
        Require.atLeast("count", count, 0);
        if (count > 0 && crestLength == 0) {
            throw new IllegalArgumentException("count must be 0 for a notch without a crest, was " + count);
        }
        return new CoefficientWeir(crestLength, sideSlope, factor, count, channelWidth, crestHeight);
    }

    /**
     * Returns a copy with the velocity of approach in a rectangular channel.
     *
     * @param newChannelWidth width of the channel B, m; greater than 0, at least the crest length, finite
     * @param newCrestHeight height of the crest above its floor p, m; 0 or greater, finite
     * @return the copy
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public CoefficientWeir withApproach(double newChannelWidth, double newCrestHeight) {
        Require.positive("newChannelWidth", newChannelWidth, "m");
        Require.nonNegative("newCrestHeight", newCrestHeight, "m");
        if (newChannelWidth < crestLength) {
            throw new IllegalArgumentException("newChannelWidth must be at least the crest length "
                    + Text.number(crestLength) + " m, was " + Text.number(newChannelWidth));
        }
        return new CoefficientWeir(crestLength, sideSlope, factor, contractions, newChannelWidth, newCrestHeight);
    }

    private boolean hasApproach() {
        return channelWidth < Double.POSITIVE_INFINITY;
    }

    @Override
    public double formula(double head) {
        return hasApproach() ? withApproach(head) : plain(head, 0);
    }

    private double plain(double head, double velocityHead) {
        double total = head + velocityHead;
        double crest = total * Math.sqrt(total) - velocityHead * Math.sqrt(velocityHead);
        double sides = total * total * Math.sqrt(total) - velocityHead * velocityHead * Math.sqrt(velocityHead);
        return factor * ((crestLength - 0.1 * contractions * head) * crest + 0.8 * sideSlope * sides);
    }

    private double withApproach(double head) {
        double area = channelWidth * (head + crestHeight);
        double scale = 1 / (2 * GravityFactors.G * area * area);
        double critical = area * Math.sqrt(GravityFactors.G * (head + crestHeight));
        return Subcritical.root(q -> q - plain(head, scale * q * q), plain(head, 0), critical);
    }

    @Override
    public double highestHead() {
        return highestHead;
    }

    /**
     * Returns no limit: the caller's coefficient carries its own.
     *
     * @return an empty list
     */
    @Override
    public List<ApplicationLimit> limits() {
        return List.of();
    }

    private List<Object> parts() {
        return List.of(crestLength, sideSlope, factor, contractions, channelWidth, crestHeight);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CoefficientWeir && parts().equals(((CoefficientWeir) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "CoefficientWeir[b = " + Text.number(crestLength) + " m, z = " + Text.significant(sideSlope, 4)
                + ", Cd = "
                + Text.significant(factor / (2.0 / 3 * GravityFactors.ROOT_2G), 4)
                + (contractions == 0 ? "" : ", " + contractions + " contractions")
                + (hasApproach()
                        ? ", B = " + Text.number(channelWidth) + " m, p = " + Text.number(crestHeight) + " m]"
                        : "]");
    }
}
