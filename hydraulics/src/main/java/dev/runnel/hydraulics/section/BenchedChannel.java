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
    private BenchedChannel() {}

    /**
     * Returns the section.
     *
     * @param channelWidth width of the channel, m; greater than 0; its invert is a semicircle
     * @param channelDepth depth of the channel below the lips, m; at least half of its width
     * @param chamberWidth width between the chamber walls, m; greater than {@code channelWidth}
     * @param benchSlope rise over run of the benches, 0 for level ones; 0 or greater
     * @return the section
     * @throws IllegalArgumentException if a measure is out of range
     */
    public static OpenSection of(double channelWidth, double channelDepth, double chamberWidth, double benchSlope) {
        double radius = Sizes.open("channelWidth", channelWidth) / 2;
        if (!(channelDepth >= radius && channelDepth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("channelDepth must be at least half of channelWidth, "
                    + Text.number(radius) + " m, was " + Text.number(channelDepth));
        }
        if (!(chamberWidth > channelWidth && chamberWidth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("chamberWidth must be greater than channelWidth, "
                    + Text.number(channelWidth) + " m, was " + Text.number(chamberWidth));
        }
        Require.nonNegative("benchSlope", benchSlope, "");
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
}
