package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The rectangular channel in front of a weir or flume: its width B, and the height p of the crest, vertex or throat floor
 * above its floor. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ApproachChannel extends OfParts {
    private final double width;
    private final double crestHeight;

    private ApproachChannel(double width, double crestHeight) {
        super(width, crestHeight);
        this.width = width;
        this.crestHeight = crestHeight;
    }

    /**
     * Returns a channel whose floor is level with the crest.
     *
     * @param width width B, m; in [1e-6, 1e6]
     * @return the channel, p = 0
     * @throws IllegalArgumentException if {@code width} is outside its range
     */
    public static ApproachChannel ofWidth(double width) {
        return new ApproachChannel(Sizes.length("width", width), 0);
    }

    /**
     * Returns a copy with a crest above the floor.
     *
     * @param newCrestHeight height of the crest, vertex or throat floor above the channel floor p, m; in [0, 1e6]
     * @return the copy
     * @throws IllegalArgumentException if {@code newCrestHeight} is outside its range
     */
    public ApproachChannel withCrestHeight(double newCrestHeight) {
        return new ApproachChannel(width, Sizes.lengthOrNone("newCrestHeight", newCrestHeight));
    }

    /**
     * Returns the width.
     *
     * @return B, m
     */
    public double width() {
        return width;
    }

    /**
     * Returns the height of the crest above the floor.
     *
     * @return p, m; 0 for none
     */
    public double crestHeight() {
        return crestHeight;
    }

    /** Returns the area of the approach at a head above the crest, m². */
    double area(double head) {
        return width * (head + crestHeight);
    }

    /** Returns 1/(2g A²), s²/m⁵: what makes a velocity head out of a squared discharge. */
    double velocityHeadScale(double head) {
        double area = area(head);
        return 1 / (2 * GravityFactors.G * area * area);
    }

    /** Returns p of a structure that needs a crest above the floor. */
    double raisedCrest() {
        return Require.inRange("crest height of the channel", crestHeight, Sizes.LEAST, Sizes.GREATEST, "m");
    }

    /** Returns B after checking that a notch of a given length fits into it. */
    double widerThan(double crestLength) {
        if (!(width > crestLength)) {
            throw new IllegalArgumentException("width of the channel must be greater than the crest length "
                    + Text.number(crestLength) + " m, was " + Text.number(width));
        }
        return width;
    }

    @Override
    public String toString() {
        return "ApproachChannel[" + dimensions() + "]";
    }

    String dimensions() {
        return "B = " + Text.number(width) + " m, p = " + Text.number(crestHeight) + " m";
    }
}
