package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * The weir of the textbooks with the caller's own coefficient: rectangular, triangular or trapezoidal, with or without end
 * contractions and velocity of approach. Immutable and thread-safe.
 *
 * <p>Q = Cd ⅔ √(2g) (b − 0.1 n h) ((h + k)^1.5 − k^1.5) + Cd 8/15 √(2g) z ((h + k)^2.5 − k^2.5), where b is the crest length (m), z
 * the slope of the sides, horizontal to vertical (tan(θ/2) for a notch), n the count of end contractions and k = v²/2g the
 * velocity head of the approach, v = Q/(B (h + p)), solved to the end. Without an approach k = 0.
 *
 * <p>Source: J. B. Francis (1883) for 0.1 n h and for k, with his constant 3.33 ft^0.5/s = 1.8385 m^0.5/s where no other
 * coefficient is given; the forms in any textbook, e.g. R. S. Dighe, Hydraulics Made Easy, ch. 5.
 *
 * <p>What it is not: a standard weir. It has no limits of application and no uncertainty but those of the coefficient put in;
 * where a standard fits the plate, {@link RectangularWeir} and {@link VNotchWeir} are better.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class CoefficientWeir extends ThinPlate {
    /** Francis, 3.33 in feet, as a coefficient Cd. */
    private static final double FRANCIS = 3.33 * Math.sqrt(0.3048) / (2.0 / 3 * GravityFactors.ROOT_2G);

    /** Head over crest length at which contractions end the range, times their count. The discharge would fall from 6. */
    private static final double CONTRACTED = 5;

    /** Steepest side of a notch, nearly a wall; chosen here. */
    private static final double STEEPEST = 100;

    private final double crestLength;
    private final double sideSlope;
    private final double coefficient;
    private final int contractions;
    private final Optional<ApproachChannel> approach;
    private final double factor;
    private final double highestHead;

    private CoefficientWeir(
            double crestLength,
            double sideSlope,
            double coefficient,
            int contractions,
            Optional<ApproachChannel> approach) {
        super(Villemonte.CREST, crestLength, sideSlope, coefficient, contractions, approach);
        this.crestLength = crestLength;
        this.sideSlope = sideSlope;
        this.coefficient = coefficient;
        this.contractions = contractions;
        this.approach = approach;
        factor = 2.0 / 3 * GravityFactors.ROOT_2G * coefficient;
        double contracted = Math.min(
                contractions == 0 ? Heads.HIGHEST : Math.min(Heads.HIGHEST, CONTRACTED * crestLength / contractions),
                notchFills());
        highestHead = approach.map(channel ->
                        Subcritical.highest(1e-6, contracted, head -> !Double.isNaN(withApproach(head, channel))))
                .orElse(contracted);
        if (Double.isNaN(highestHead)) {
            throw new IllegalArgumentException(
                    "width of the channel must be great enough for a subcritical approach, was "
                            + Text.number(approach.orElseThrow().width()));
        }
    }

    /** Returns the head at which sloping sides reach the walls of the channel. */
    private double notchFills() {
        return sideSlope == 0
                ? Double.POSITIVE_INFINITY
                : approach.map(channel -> (channel.width() - crestLength) / (2 * sideSlope))
                        .orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * Returns a rectangular weir with the constant of Francis, Q = 1.8385 b h^1.5.
     *
     * @param crestLength crest length b, m; in [1e-6, 1e6]
     * @return the weir, without end contraction and approach velocity
     * @throws IllegalArgumentException if {@code crestLength} is outside its range
     */
    public static CoefficientWeir rectangular(double crestLength) {
        return new CoefficientWeir(Sizes.length("crestLength", crestLength), 0, FRANCIS, 0, Optional.empty());
    }

    /**
     * Returns a triangular notch with the coefficient 0.6 (common practice).
     *
     * @param angleDegrees notch angle θ, degrees; in [1, 178]
     * @return the weir, without approach velocity
     * @throws IllegalArgumentException if {@code angleDegrees} is outside its range
     */
    public static CoefficientWeir vNotch(double angleDegrees) {
        Require.inRange("angleDegrees", angleDegrees, 1, 178, "degrees");
        return new CoefficientWeir(0, Math.tan(Math.toRadians(angleDegrees) / 2), 0.6, 0, Optional.empty());
    }

    /**
     * Returns a copy with another coefficient.
     *
     * @param newCoefficient Cd; greater than 0, at most 1
     * @return the copy
     * @throws IllegalArgumentException if {@code newCoefficient} is outside its range
     */
    public CoefficientWeir withCoefficient(double newCoefficient) {
        return new CoefficientWeir(
                crestLength,
                sideSlope,
                DischargeCoefficient.checked("newCoefficient", newCoefficient),
                contractions,
                approach);
    }

    /**
     * Returns a copy with sloping sides, a trapezoidal notch.
     *
     * @param newSideSlope slope of both sides z, horizontal to 1 vertical; in [0, 100]
     * @return the copy
     * @throws IllegalArgumentException if {@code newSideSlope} is outside its range
     */
    public CoefficientWeir withSideSlope(double newSideSlope) {
        Require.inRange("newSideSlope", newSideSlope, 0, STEEPEST, "");
        return new CoefficientWeir(crestLength, newSideSlope, coefficient, contractions, approach);
    }

    /**
     * Returns a copy whose crest is shortened by end contractions, by 0.1 h each.
     *
     * @param count count of contractions n, 0 or more: 2 for one notch, 2 more for each pier
     * @return the copy; its heads end at 5 b/n, near the 6 b/n where the discharge would fall
     * @throws IllegalArgumentException if {@code count} is negative, or above 0 for a notch without a crest
     */
    public CoefficientWeir withEndContractions(int count) {
        Require.atLeast("count", count, 0);
        if (count > 0 && crestLength == 0) {
            throw new IllegalArgumentException("count must be 0 for a notch without a crest, was " + count);
        }
        return new CoefficientWeir(crestLength, sideSlope, coefficient, count, approach);
    }

    /**
     * Returns a copy with the velocity of approach in a channel.
     *
     * @param channel the channel; at least as wide as the crest is long
     * @return the copy
     * @throws IllegalArgumentException if the channel is narrower
     */
    public CoefficientWeir withApproach(ApproachChannel channel) {
        if (channel.width() < crestLength) {
            throw new IllegalArgumentException("width of the channel must be at least the crest length "
                    + Text.number(crestLength) + " m, was " + Text.number(channel.width()));
        }
        return new CoefficientWeir(crestLength, sideSlope, coefficient, contractions, Optional.of(channel));
    }

    @Override
    public double formula(double head) {
        return approach.map(channel -> withApproach(head, channel)).orElseGet(() -> plain(head, 0));
    }

    private double plain(double head, double velocityHead) {
        double total = head + velocityHead;
        double crest = total * Math.sqrt(total) - velocityHead * Math.sqrt(velocityHead);
        double sides = total * total * Math.sqrt(total) - velocityHead * velocityHead * Math.sqrt(velocityHead);
        return factor * ((crestLength - 0.1 * contractions * head) * crest + 0.8 * sideSlope * sides);
    }

    private double withApproach(double head, ApproachChannel channel) {
        double scale = channel.velocityHeadScale(head);
        double critical = channel.area(head) * Math.sqrt(GravityFactors.G * (head + channel.crestHeight()));
        return Subcritical.root(q -> q - plain(head, scale * q * q), plain(head, 0), critical);
    }

    /** Villemonte with the free discharges at both heads, which is his law for a notch of any shape. */
    @Override
    public double formula(double head, double tailwater) {
        return formula(head) * Villemonte.byDischarges(plain(tailwater, 0) / plain(head, 0));
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

    @Override
    public String toString() {
        return "CoefficientWeir[b = " + Text.significant(crestLength, 6) + " m, z = " + Text.significant(sideSlope, 4)
                + ", Cd = "
                + Text.significant(coefficient, 4)
                + (contractions == 0 ? "" : ", " + contractions + " contractions")
                + approach.map(channel -> ", " + channel.dimensions()).orElse("")
                + "]";
    }
}
