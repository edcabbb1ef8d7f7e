package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * A side weir along a channel of constant section, by De Marchi: the specific energy E stays constant along the crest while
 * the discharge falls. Immutable and thread-safe.
 *
 * <ul>
 *   <li>dQ/dx = −Cd · ⅔ · √(2g) · (y − s)^1.5 over one crest, y the depth and s the height of the sill above the invert (m)
 *   <li>Q = A √(2g (E − y))
 * </ul>
 *
 * <p>A subcritical depth rises along the weir and is set from downstream; a supercritical one falls and is set from upstream.
 * For a rectangular channel the length has De Marchi's closed form; here any section is integrated in t = √((E − y)/(y −
 * s)), which makes the integrand smooth from still water (t = 0) to the sill (t → ∞), to about 1e-12.
 *
 * <p>Source: G. De Marchi (1934), Saggio di teoria del funzionamento degli stramazzi laterali, L'Energia Elettrica 11(11). The
 * coefficient is the caller's; {@link #coefficient(double)} gives that of Subramanya and Awasthy.
 *
 * <p>What it is not: a weir with a rising or falling sill, a baffle or a screen, a hydraulic jump on the crest, or a crest
 * that is drowned from outside; bed slope and friction are taken to cancel (short weir).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SideWeir extends OfParts {
    /** Cd from water at rest: Subramanya and Awasthy 1972, from memory. */
    private static final double AT_REST = 0.611;

    private final CrossSection section;
    private final double sillHeight;
    private final double length;
    private final double coefficient;

    private SideWeir(CrossSection section, double sillHeight, double length, double coefficient) {
        super(section, sillHeight, length, coefficient);
        this.section = section;
        this.sillHeight = sillHeight;
        this.length = length;
        this.coefficient = coefficient;
    }

    /**
     * Returns a weir along one side, with the coefficient 0.611 of {@link #coefficient(double)} in a slow stream.
     *
     * @param section section of the channel
     * @param sillHeight height of the sill above the invert s, m; greater than 0, below the height of the section
     * @param length length of the crest L, m; in [1e-6, 1e6]; for crests on both sides enter twice one side and read positions
     *     at half scale
     * @return the weir
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static SideWeir ofSillAndLength(CrossSection section, double sillHeight, double length) {
        Objects.requireNonNull(section, "section");
        Sizes.length("sillHeight", sillHeight);
        if (!(sillHeight < section.height())) {
            throw new IllegalArgumentException("sillHeight must be below the height of the section "
                    + Text.number(section.height()) + " m, was " + Text.number(sillHeight));
        }
        return new SideWeir(section, sillHeight, Sizes.length("length", length), AT_REST);
    }

    /**
     * Returns a copy with another coefficient.
     *
     * @param newCoefficient Cd in Cd ⅔ √(2g) h^1.5; greater than 0, at most 1
     * @return the copy
     * @throws IllegalArgumentException if {@code newCoefficient} is outside its range
     */
    public SideWeir withCoefficient(double newCoefficient) {
        return new SideWeir(
                section, sillHeight, length, DischargeCoefficient.checked("newCoefficient", newCoefficient));
    }

    /**
     * Returns the coefficient of Subramanya and Awasthy for subcritical flow along a rectangular channel, Cd = 0.611 √(1 − 3F²/(F²
     * + 2)), with F the Froude number upstream. K. Subramanya, S. C. Awasthy (1972), J. Hydraulics Div. ASCE 98 (HY1), from
     * memory.
     *
     * @param upstreamFroude Froude number F at the upstream end; in [0, 0.95]
     * @return Cd
     * @throws IllegalArgumentException if {@code upstreamFroude} is outside its range
     */
    public static double coefficient(double upstreamFroude) {
        Require.inRange("upstreamFroude", upstreamFroude, 0, 0.95, "");
        double square = upstreamFroude * upstreamFroude;
        return AT_REST * Math.sqrt(1 - 3 * square / (square + 2));
    }

    /**
     * Returns the flow along the weir from what leaves it downstream; for subcritical flow.
     *
     * @param depth depth at the downstream end, m; above the sill, subcritical
     * @param discharge discharge that goes on, m³/s; 0 or greater, finite
     * @return profile and spill
     * @throws IllegalArgumentException if a parameter is outside its range or the flow is not subcritical
     * @throws NoSolutionException if the flow turns critical before the upstream end is reached
     */
    public SideWeirProfile fromDownstreamDepthAndDischarge(double depth, double discharge) {
        SideWeirFlow flow = flow(depth, discharge);
        double from = flow.parameter(depth);
        requireSubcritical(flow, from);
        double to = flow.travel(from, length, "upstream");
        return profile(flow, to, from);
    }

    /**
     * Returns the flow along the weir from what arrives upstream; for supercritical flow, whose depth falls along the crest,
     * and for subcritical flow whose energy is known upstream, whose depth rises.
     *
     * @param depth depth at the upstream end, m; above the sill
     * @param discharge discharge that arrives, m³/s; greater than 0, finite
     * @return profile and spill
     * @throws IllegalArgumentException if a parameter is outside its range
     * @throws NoSolutionException if subcritical flow is spilled whole before the downstream end
     */
    public SideWeirProfile fromUpstreamDepthAndDischarge(double depth, double discharge) {
        Require.positive("discharge", discharge, "m3/s");
        SideWeirFlow flow = flow(depth, discharge);
        double from = flow.parameter(depth);
        if (flow.rate(from) > 0) {
            double reach = flow.distance(0, from);
            if (reach < length) {
                throw new NoSolutionException("the weir is " + Text.number(length)
                        + " m long and spills all that arrives within " + Text.significant(reach, 6) + " m");
            }
            double to = Roots.between(t -> flow.distance(t, from) - length, 0, from);
            return profile(flow, from, to);
        }
        return profile(flow, from, flow.travel(from, length, "downstream"));
    }

    /**
     * Returns the split of an inflow between the weir and what goes on, for subcritical flow under a known control
     * downstream (a throttle, the normal depth of the pipe that goes on).
     *
     * @param inflow discharge that arrives, m³/s; greater than 0, finite
     * @param onward discharge that goes on (m³/s) as an increasing function of the depth at the downstream end (m), 0
     *     or greater
     * @return profile and spill
     * @throws IllegalArgumentException if the inflow passes on below the sill, so that the weir is dry, or no depth below
     *     the height of the section carries it
     * @throws NoSolutionException if the flow turns critical on the crest
     */
    public SideWeirProfile split(double inflow, DoubleUnaryOperator onward) {
        Require.positive("inflow", inflow, "m3/s");
        double atSill = onward.applyAsDouble(sillHeight);
        if (!(atSill < inflow)) {
            throw new IllegalArgumentException("inflow must be greater than " + Text.significant(atSill, 6)
                    + " m3/s, which goes on below the sill, was " + Text.number(inflow));
        }
        double highest = Math.min(section.height(), Heads.HIGHEST);
        DoubleUnaryOperator excess = y -> arriving(y, onward) - inflow;
        double above = Roots.doubled(
                each -> sillHeight + each < highest ? excess.applyAsDouble(sillHeight + each) : each, sillHeight / 8);
        double high = Math.min(sillHeight + above, highest);
        if (excess.applyAsDouble(high) < 0) {
            throw new IllegalArgumentException("inflow must be carried at a depth of at most " + Text.number(highest)
                    + " m, was " + Text.number(inflow) + " m3/s");
        }
        double depth = Roots.between(excess, Math.nextUp(sillHeight), high);
        return fromDownstreamDepthAndDischarge(depth, onward.applyAsDouble(depth));
    }

    private double arriving(double depth, DoubleUnaryOperator onward) {
        return fromDownstreamDepthAndDischarge(depth, onward.applyAsDouble(depth))
                .upstreamDischarge();
    }

    /**
     * Returns the length of crest that spills a given discharge of a subcritical flow, whatever the length of this weir.
     *
     * @param depth depth at the downstream end, m; above the sill, subcritical
     * @param discharge discharge that goes on, m³/s; 0 or greater, finite
     * @param spill discharge to be spilled, m³/s; 0 or greater, finite
     * @return length, m
     * @throws IllegalArgumentException if a parameter is outside its range or the flow is not subcritical
     * @throws NoSolutionException if the discharge upstream cannot pass with the energy of the downstream end
     */
    public double lengthFromDepthAndDischargeToSpill(double depth, double discharge, double spill) {
        Require.nonNegative("spill", spill, "m3/s");
        SideWeirFlow flow = flow(depth, discharge);
        double from = flow.parameter(depth);
        requireSubcritical(flow, from);
        double critical = flow.criticalParameter(from);
        double greatest = flow.discharge(critical);
        if (discharge + spill > greatest) {
            throw new NoSolutionException("spill must be at most " + Text.significant(greatest - discharge, 6)
                    + " m3/s, where the flow turns critical upstream, was " + Text.number(spill));
        }
        double to = Roots.between(t -> flow.discharge(t) - (discharge + spill), from, critical);
        return flow.distance(from, to);
    }

    private SideWeirFlow flow(double depth, double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        if (!(depth > sillHeight && depth <= section.height() && depth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("depth must be above the sill " + Text.number(sillHeight)
                    + " m and at most the height of the section " + Text.number(section.height()) + " m, was "
                    + Text.number(depth));
        }
        double velocity = discharge / section.area(depth);
        double energy = depth + velocity * velocity / (2 * GravityFactors.G);
        return new SideWeirFlow(section, sillHeight, coefficient, energy);
    }

    private void requireSubcritical(SideWeirFlow flow, double parameter) {
        if (!(flow.rate(parameter) > 0)) {
            throw new IllegalArgumentException("depth must be subcritical at the downstream end, was "
                    + Text.number(flow.depth(parameter)) + " m with " + Text.significant(flow.discharge(parameter), 6)
                    + " m3/s");
        }
    }

    private static SideWeirProfile profile(SideWeirFlow flow, double upstream, double downstream) {
        int count = 41;
        double[] positions = new double[count];
        double[] depths = new double[count];
        double[] discharges = new double[count];
        for (int i = 0; i < count; i++) {
            double t = upstream + (downstream - upstream) * i / (count - 1);
            positions[i] = Math.abs(flow.distance(t, upstream));
            depths[i] = flow.depth(t);
            discharges[i] = flow.discharge(t);
        }
        return SideWeirProfile.of(flow.energy(), positions, depths, discharges);
    }

    @Override
    public String toString() {
        return "SideWeir[" + section + ", sill " + Text.significant(sillHeight, 6) + " m, L = "
                + Text.significant(length, 6) + " m, Cd = " + Text.significant(coefficient, 6) + "]";
    }
}
