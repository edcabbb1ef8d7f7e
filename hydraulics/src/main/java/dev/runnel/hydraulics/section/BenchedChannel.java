package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A channel with benching, as in a manhole: a U-shaped channel, a bench rising from each of its lips to the chamber wall,
 * and upright walls. Open: the chamber has no soffit that counts.
 *
 * <p>On a flat bench the wetted perimeter jumps as soon as the water spills over the lip, and uniform flow falls with it;
 * a discharge can then have several normal depths.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class BenchedChannel {
    private final double channelWidth;
    private final double channelDepth;
    private final double benchSlope;

    private BenchedChannel(double channelWidth, double channelDepth, double benchSlope) {
        this.channelWidth = channelWidth;
        this.channelDepth = channelDepth;
        this.benchSlope = benchSlope;
    }

    /**
     * Begins a section with the measures of its channel, between level benches; {@link #inChamberOfWidth} makes it a section.
     *
     * @param channelWidth width of the channel, m; greater than 0; its invert is a semicircle
     * @param channelDepth depth of the channel below the lips, m; at least half of its width
     * @return the measures
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static BenchedChannel ofWidthAndDepth(double channelWidth, double channelDepth) {
        double radius = Sizes.open("channelWidth", channelWidth) / 2;
        if (!(channelDepth >= radius && channelDepth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("channelDepth must be at least half of channelWidth, "
                    + Text.number(radius) + " m, was " + Text.number(channelDepth));
        }
        return new BenchedChannel(channelWidth, channelDepth, 0);
    }

    /**
     * Returns the same channel between benches that rise towards the chamber wall.
     *
     * @param newBenchSlope rise over run of the benches, 0 for level ones; 0 or greater
     * @return the measures
     * @throws IllegalArgumentException if {@code newBenchSlope} is out of range
     */
    public BenchedChannel withBenchSlope(double newBenchSlope) {
        return new BenchedChannel(channelWidth, channelDepth, Require.nonNegative("newBenchSlope", newBenchSlope, ""));
    }

    /**
     * Returns the section in a chamber.
     *
     * @param chamberWidth width between the chamber walls, m; greater than that of the channel
     * @return the section
     * @throws IllegalArgumentException if {@code chamberWidth} is out of range
     */
    public OpenSection inChamberOfWidth(double chamberWidth) {
        if (!(chamberWidth > channelWidth && chamberWidth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("chamberWidth must be greater than channelWidth, "
                    + Text.number(channelWidth) + " m, was " + Text.number(chamberWidth));
        }
        double radius = channelWidth / 2;
        double half = chamberWidth / 2;
        double wallFoot = channelDepth + (half - radius) * benchSlope;
        Wall wall = Wall.from(0, 0).arcTo(radius, radius, 0, radius);
        if (channelDepth > radius) {
            wall = wall.lineTo(radius, channelDepth);
        }
        return wall.lineTo(half, wallFoot)
                .lineTo(half, wallFoot + 1)
                .mirroredOpen()
                .named("BenchedChannel");
    }

    @Override
    public String toString() {
        return "BenchedChannel[" + Text.significant(channelWidth, 6) + " m wide, " + Text.significant(channelDepth, 6)
                + " m deep, benches rising by " + Text.significant(benchSlope, 6) + "]";
    }
}
