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

    private final double discharge;
    private final double depth;

    private Channels(double discharge, double depth) {
        this.discharge = discharge;
        this.depth = depth;
    }

    /**
     * Returns the channels whose normal depth of a discharge is the stated one.
     *
     * @param discharge discharge Q, m³/s; greater than 0
     * @param depth depth y, m; greater than 0
     * @return the channels
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static Channels ofDischargeAndDepth(double discharge, double depth) {
        return new Channels(Require.positive("discharge", discharge, "m3/s"), Require.positive("depth", depth, "m"));
    }

    /**
     * Returns the rectangular one.
     *
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the channel; its discharge at that depth is the wanted one within 1e-12 relative
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no width from 1e-6 to 1e6 m carries it
     */
    public Conduit rectangular(Gradient gradient, Resistance resistance) {
        return channel(gradient, resistance, RectangularSection::open);
    }

    /**
     * Returns the trapezoidal one with walls of a slope.
     *
     * @param sideSlope horizontal over vertical of both walls; in [0, 1e4]
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the channel; its discharge at that depth is the wanted one within 1e-12 relative, as far as a width of at least
     *     1e-6 m can show it
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no width from 1e-6 to 1e6 m carries it, as where the two slopes alone carry more
     */
    public Conduit trapezoidal(double sideSlope, Gradient gradient, Resistance resistance) {
        return channel(gradient, resistance, width -> TrapezoidalSection.ofBedWidthAndSideSlope(width, sideSlope));
    }

    private Conduit channel(Gradient gradient, Resistance resistance, DoubleFunction<OpenSection> section) {
        DoubleFunction<Conduit> channel =
                width -> Conduit.of(section.apply(Math.min(width, LARGEST)), gradient, resistance);
        double low = Math.log(LEAST) + 1e-12;
        double high = Math.log(LARGEST);
        if (excess(channel, low) > 0 || excess(channel, high) < 0) {
            throw new NoSolutionException("no bed width from " + Text.number(LEAST) + " to " + Text.number(LARGEST)
                    + " m carries a discharge of " + Text.number(discharge) + " m3/s at a depth of "
                    + Text.number(depth) + " m");
        }
        return channel.apply(Math.exp(Roots.between(log -> excess(channel, log), low, high)));
    }

    private double excess(DoubleFunction<Conduit> channel, double logWidth) {
        return Math.log(channel.apply(Math.exp(logWidth)).discharge(depth) / discharge);
    }

    @Override
    public String toString() {
        return "Channels[" + Text.significant(discharge, 6) + " m3/s at " + Text.significant(depth, 6) + " m]";
    }
}
