package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.OpenSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.function.DoubleFunction;
import org.apiguardian.api.API;

/**
 * Open channels that carry a flow: the bed width b at which the uniform discharge at a stated depth, Q = A V(R, S), is the wanted one.
 *
 * <p>Q rises with b at one depth, so there is one answer or none. A help for analysis, not a design: a design adds freeboard and the
 * rules of the local code.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Channels {
    private static final double LEAST = 1e-6;
    private static final double LARGEST = 1e6;

    private Channels() {}

    /**
     * Returns the rectangular channel whose normal depth of a discharge is the stated one.
     *
     * @param discharge discharge Q, m³/s; greater than 0
     * @param depth depth y, m; greater than 0
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the channel; its discharge at that depth is the wanted one within 1e-12 relative
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no width from 1e-6 to 1e6 m carries it
     */
    public static Conduit rectangularFor(double discharge, double depth, Gradient gradient, Resistance resistance) {
        return channelFor(discharge, depth, gradient, resistance, RectangularSection::open);
    }

    /**
     * Returns the trapezoidal channel whose normal depth of a discharge is the stated one.
     *
     * @param discharge discharge Q, m³/s; greater than 0
     * @param depth depth y, m; greater than 0
     * @param sideSlope horizontal over vertical of both walls; in [0, 1e4]
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the channel; its discharge at that depth is the wanted one within 1e-12 relative, as far as a width of at least
     *     1e-6 m can show it
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no width from 1e-6 to 1e6 m carries it, as where the two slopes alone carry more
     */
    public static Conduit trapezoidalFor(
            double discharge, double depth, double sideSlope, Gradient gradient, Resistance resistance) {
        return channelFor(discharge, depth, gradient, resistance, width -> TrapezoidalSection.of(width, sideSlope));
    }

    private static Conduit channelFor(
            double discharge,
            double depth,
            Gradient gradient,
            Resistance resistance,
            DoubleFunction<OpenSection> section) {
        Require.positive("discharge", discharge, "m3/s");
        Require.positive("depth", depth, "m");
        DoubleFunction<Conduit> channel =
                width -> Conduit.of(section.apply(Math.min(width, LARGEST)), gradient, resistance);
        double low = Math.log(LEAST) + 1e-12;
        double high = Math.log(LARGEST);
        if (excess(channel, low, depth, discharge) > 0 || excess(channel, high, depth, discharge) < 0) {
            throw new NoSolutionException("no bed width from " + Text.number(LEAST) + " to " + Text.number(LARGEST)
                    + " m carries a discharge of " + Text.number(discharge) + " m3/s at a depth of "
                    + Text.number(depth) + " m");
        }
        return channel.apply(Math.exp(Roots.between(log -> excess(channel, log, depth, discharge), low, high)));
    }

    private static double excess(DoubleFunction<Conduit> channel, double logWidth, double depth, double discharge) {
        return Math.log(channel.apply(Math.exp(logWidth)).discharge(depth) / discharge);
    }
}
