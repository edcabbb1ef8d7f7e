package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apiguardian.api.API;

/**
 * How a level raised at one place (a blockage, a full outfall) reaches up a long uniform conduit that otherwise runs at
 * normal depth, and back from a level seen upstream to the one that raises it. Immutable and thread-safe.
 *
 * <pre>
 * x = ∫ (1 − Fr²)/(S₀ − Sf) dy     from the smaller to the larger depth; above the soffit Fr = 0 and Sf that of the full pipe
 * </pre>
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, equation of gradually varied flow, chapter 9; integrated
 * numerically to about 1e-9. On a mild slope the backwater thins out towards the normal depth and has no end: its length is
 * to a rise named by the caller. On a steep slope it ends in a jump.
 *
 * <p>Where the full pipe, under pressure, cannot carry the discharge on its gradient, the pressure rises upstream without
 * end and there is no length.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Backwater {
    private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(16);
    private static final int PANELS = 8;

    private final ReachFlow flow;
    private final double normal;
    /** Lowest depth of the slow profile: normal depth if mild, the depth behind the jump if steep. */
    private final double floor;

    private final boolean mild;
    /** The next normal depth above, which a backwater cannot pass; +∞ if there is none. */
    private final double ceiling;

    private Backwater(ReachFlow flow, double[] normals) {
        this.flow = flow;
        this.normal = normals[0];
        this.mild = normal >= flow.critical();
        this.floor = mild ? normal : flow.flow().conjugateDepth(normal);
        this.ceiling = Arrays.stream(normals)
                .filter(depth -> depth > floor * (1 + 1e-9))
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /**
     * Returns the backwater of a discharge in a conduit.
     *
     * @param conduit the conduit, as long as it takes
     * @param discharge discharge, m³/s; greater than 0
     * @return the backwater
     * @throws IllegalArgumentException if {@code discharge} is not greater than 0 and finite
     * @throws NoSolutionException if the conduit does not carry the discharge with a free surface
     */
    public static Backwater of(Conduit conduit, double discharge) {
        Require.positive("discharge", discharge, "m3/s");
        // Throws with the reason where there is no normal depth.
        conduit.normalDepth(discharge);
        return new Backwater(new ReachFlow(Reach.of(conduit, 1), discharge), conduit.normalDepths(discharge));
    }

    /**
     * Returns the depth without backwater.
     *
     * @return normal depth, m
     */
    public double normalDepth() {
        return normal;
    }

    /**
     * Returns how far upstream a raised level reaches.
     *
     * @param raisedDepth depth at the raised place, m; may be above the soffit
     * @param rise rise over normal depth that counts as the end, m; greater than 0; plays no part on a steep slope, where
     *     the end is a jump
     * @return distance, m; 0 if the raised depth is not above the end
     * @throws IllegalArgumentException if an argument is out of range or NaN
     * @throws NoSolutionException if the pressure rises upstream without end
     */
    public double length(double raisedDepth, double rise) {
        Require.positive("raisedDepth", raisedDepth, "m");
        Require.positive("rise", rise, "m");
        double end = mild ? normal + rise : floor;
        return raisedDepth <= end ? 0 : distance(end, raisedDepth);
    }

    /**
     * Returns the depth at a distance upstream of a raised place.
     *
     * @param raisedDepth depth at the raised place, m; above normal depth
     * @param distance distance upstream, m; 0 or greater
     * @return depth, m; normal depth beyond the end of the backwater
     * @throws IllegalArgumentException if an argument is out of range or NaN
     * @throws NoSolutionException if the pressure rises upstream without end
     */
    public double depthUpstream(double raisedDepth, double distance) {
        Require.positive("raisedDepth", raisedDepth, "m");
        Require.nonNegative("distance", distance, "m");
        double end = mild ? normal * (1 + 1e-9) : floor;
        if (raisedDepth <= end || distance >= distance(end, raisedDepth)) {
            return normal;
        }
        return Roots.between(depth -> distance(depth, raisedDepth) - distance, end, raisedDepth);
    }

    /**
     * Returns the depth that must stand at a place to raise the level upstream of it as seen.
     *
     * @param seenDepth depth seen upstream, m; above normal depth (mild) or above the depth behind a jump (steep)
     * @param distance distance from there downstream to the place, m; 0 or greater
     * @return depth at the place, m; above the soffit if it is drowned
     * @throws IllegalArgumentException if an argument is out of range or NaN, or no backwater has the seen depth
     * @throws NoSolutionException if the pressure rises upstream without end
     */
    public double raisedDepth(double seenDepth, double distance) {
        Require.nonNegative("distance", distance, "m");
        if (!(seenDepth > floor && seenDepth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("seenDepth must be greater than " + Text.significant(floor, 6)
                    + " m, where backwater ends, was " + Text.number(seenDepth));
        }
        double most = ceiling * (1 - 1e-9);
        DoubleUnaryOperator excess = depth -> distance(seenDepth, depth) - distance;
        double high = Math.min(Roots.doubled(y -> y < most ? excess.applyAsDouble(y) : y, seenDepth), most);
        if (seenDepth >= most || excess.applyAsDouble(high) < 0) {
            throw endless();
        }
        return Roots.between(excess, seenDepth, high);
    }

    private NoSolutionException endless() {
        return new NoSolutionException(
                "close to the soffit the conduit does not carry the discharge on its gradient: the"
                        + " level rises upstream without end, in " + flow.flow());
    }

    /** Distance between two depths of the slow profile, the smaller one upstream. */
    private double distance(double low, double high) {
        if (high >= ceiling) {
            throw endless();
        }
        double soffit = flow.reach().section().height();
        double sum = 0;
        if (high > soffit) {
            double slope = flow.bedSlope() - flow.frictionSlope(soffit);
            if (!(slope > 0)) {
                throw endless();
            }
            sum += (high - Math.max(low, soffit)) / slope;
        }
        return sum + freeDistance(low, Math.min(high, soffit));
    }

    /**
     * Cut at the corners of the section and half-way to the soffit, or to the next normal depth. Below, the logarithm of the
     * height above normal depth makes the integrand smooth; above, where a closing surface bends, the root of the height below
     * the soffit does, and where the friction slope nears that of the bed once more the logarithm of what is left to there.
     * Nothing where all lies above the soffit.
     */
    private double freeDistance(double low, double top) {
        double soffit = flow.reach().section().height();
        double base = mild ? normal : 0;
        double middle = (base + Math.min(soffit, ceiling)) / 2;
        double[] cuts = DoubleStream.concat(
                        Arrays.stream(flow.reach().section().breakDepths()), DoubleStream.of(low, top, middle))
                .filter(depth -> depth >= low && depth <= top)
                .sorted()
                .distinct()
                .toArray();
        double sum = 0;
        for (int i = 0; i + 1 < cuts.length; i++) {
            double from = cuts[i];
            double to = cuts[i + 1];
            sum += from < middle
                    ? integral(u -> Math.exp(u) * slope(base + Math.exp(u)), Math.log(from - base), Math.log(to - base))
                    : above(from, to, soffit);
        }
        return sum;
    }

    private double above(double from, double to, double soffit) {
        return Double.isInfinite(ceiling)
                ? integral(s -> 2 * s * slope(soffit - s * s), Math.sqrt(soffit - to), Math.sqrt(soffit - from))
                : integral(
                        u -> Math.exp(u) * slope(ceiling - Math.exp(u)),
                        Math.log(ceiling - to),
                        Math.log(ceiling - from));
    }

    /** dx/dy of the profile. */
    private double slope(double depth) {
        double froude =
                flow.flow().froudeNumber(Math.min(depth, flow.reach().section().height()));
        return (1 - froude * froude) / (flow.bedSlope() - flow.frictionSlope(depth));
    }

    /** Over ever so short a stretch: a search ends between neighbouring depths. */
    private static double integral(DoubleUnaryOperator function, double from, double to) {
        double half = (to - from) / (2 * PANELS);
        double sum = 0;
        for (int panel = 0; panel < PANELS; panel++) {
            double middle = from + (2 * panel + 1) * half;
            for (int i = 0; i < GAUSS.getNumberOfPoints(); i++) {
                sum += GAUSS.getWeight(i) * function.applyAsDouble(middle + half * GAUSS.getPoint(i));
            }
        }
        return half * sum;
    }

    @Override
    public String toString() {
        return "Backwater[" + flow.flow() + ", normal depth " + Text.significant(normal, 4) + " m, "
                + (mild ? "mild]" : "steep]");
    }
}
