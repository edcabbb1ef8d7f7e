package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A vertical sluice gate across a rectangular channel on a level floor: the depth upstream y₁ is the head. Immutable and
 * thread-safe.
 *
 * <p>The jet contracts to c = Cc · a below the gate, a being the opening (m). Free: energy between y₁ and c gives q = c y₁
 * √(2g/(y₁ + c)) per metre of width. Submerged by a tailwater y₂ above the conjugate depth of the free jet: energy
 * upstream and momentum downstream are solved together for q and for the depth y₃ that stands over the jet,
 *
 * <ul>
 *   <li>y₁ + q²/(2g y₁²) = y₃ + q²/(2g c²)
 *   <li>y₃²/2 + q²/(g c) = y₂²/2 + q²/(g y₂)
 * </ul>
 *
 * <p>which has a closed solution. Close to the onset of drowning the equations have two answers for one pair of depths, and
 * a real gate shows both, depending on where it came from (A. Defina, F. M. Susin 2003, Physics of Fluids 15, from memory).
 * {@code discharge(y₁, y₂)} then takes the free one up to the conjugate depth and the drowned one beyond, with a step of
 * several percent between; {@code head(Q, y₂)} is unique and has none. Cc = 0.61 unless told otherwise (the theory of von Mises 1917 gives 0.611 for a small
 * opening). Source: H. R. Henry (1950), Discussion of Diffusion of submerged jets, Trans. ASCE 115, for the scheme; limit
 * y₁/a ≥ 2, the left end of his chart (from memory). For an opening in a wall use {@link LargeOrifice}.
 *
 * <p>What it is not: a seal, a lifting force, or a radial gate.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class SluiceGate extends OfParts implements TailwaterDischarge {
    /** Contraction under a small opening: R. von Mises (1917), 0.611. */
    private static final double VON_MISES = 0.61;

    /** Least y₁/a, the left end of the chart of Henry 1950, from memory. */
    private static final double LEAST_RATIO = 2;

    private final double width;
    private final double opening;
    private final double contraction;
    private final double jet;
    private final List<ApplicationLimit> limits;

    private SluiceGate(double width, double opening, double contraction) {
        super(width, opening, contraction);
        this.width = width;
        this.opening = opening;
        this.contraction = contraction;
        jet = contraction * opening;
        limits =
                List.of(ApplicationLimit.atLeast("y1/a", "", LEAST_RATIO, "Henry 1950, from memory", h -> h / opening));
    }

    /**
     * Returns a gate.
     *
     * @param width width b, m; in [1e-6, 1e6]
     * @param opening opening above the floor a, m; in [1e-6, 1e6]
     * @return the gate with Cc = 0.61
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static SluiceGate ofWidthAndOpening(double width, double opening) {
        return new SluiceGate(Sizes.length("width", width), Sizes.length("opening", opening), VON_MISES);
    }

    /**
     * Returns a copy with another contraction coefficient.
     *
     * @param newContraction Cc; greater than 0, at most 1
     * @return the copy
     * @throws IllegalArgumentException if {@code newContraction} is not
     */
    public SluiceGate withContraction(double newContraction) {
        return new SluiceGate(width, opening, DischargeCoefficient.checked("newContraction", newContraction));
    }

    @Override
    public double formula(double head) {
        return width * jet * head * Math.sqrt(2 * GravityFactors.G / (head + jet));
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    /**
     * Returns the tailwater depth above which the jet is drowned: the conjugate depth of the free jet.
     *
     * @param upstreamDepth depth upstream y₁, m; within the limits of application
     * @return depth downstream, m
     * @throws IllegalArgumentException if {@code upstreamDepth} breaks a limit
     */
    public double modularTailwater(double upstreamDepth) {
        return conjugate(discharge(upstreamDepth) / width);
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        double depth = Math.max(head, LEAST_RATIO * opening);
        // below 1, since a jump from the jet back to the depth before the gate would lose no energy
        return OptionalDouble.of(conjugate(formula(depth) / width) / depth);
    }

    @Override
    public ApplicationLimit drownedLimit(double tailwater) {
        return ApplicationLimit.atMost("y2/y1", "", 1, "Henry 1950", y -> tailwater / y);
    }

    private double conjugate(double q) {
        double froudeSquared = q * q / (GravityFactors.G * jet * jet * jet);
        return jet / 2 * (Math.sqrt(1 + 8 * froudeSquared) - 1);
    }

    /** The free discharge up to the conjugate depth of the jet, the drowned one beyond. */
    @Override
    public double formula(double head, double tailwater) {
        double least = LEAST_RATIO * opening;
        if (head < least) {
            // outside the limit the equations lose their meaning: the share that is left at the limit
            return formula(head) * formula(least, tailwater / head * least) / formula(least);
        }
        double free = formula(head);
        return tailwater <= conjugate(free / width) ? free : Math.min(free, drowned(head, tailwater));
    }

    /** The smaller root s = q² of k² s² − (2 k y₁ − m) s + y₁² − y₂² = 0, got by eliminating y₃. */
    private double drowned(double y1, double y2) {
        double k = (1 / (jet * jet) - 1 / (y1 * y1)) / (2 * GravityFactors.G);
        double m = 2 / GravityFactors.G * (1 / jet - 1 / y2);
        double b = 2 * k * y1 - m;
        double c = (y1 - y2) * (y1 + y2);
        return width * Math.sqrt(2 * c / (b + Math.sqrt(b * b - 4 * k * k * c)));
    }

    /**
     * Returns the depth upstream that drives a discharge against a tailwater; unique, and continuous where drowning sets
     * in.
     *
     * @param discharge discharge, m³/s; 0 or greater, finite
     * @param tailwaterDepth depth downstream y₂, m; 0 or greater, finite
     * @return depth upstream y₁, m; the tailwater itself for no discharge
     * @throws IllegalArgumentException if a parameter is outside its range or a limit of application is broken
     */
    @Override
    public double head(double discharge, double tailwaterDepth) {
        Require.nonNegative("discharge", discharge, "m3/s");
        Require.nonNegative("tailwaterDepth", tailwaterDepth, "m");
        if (discharge == 0) {
            return tailwaterDepth;
        }
        double q = discharge / width;
        if (tailwaterDepth <= conjugate(q)) {
            return head(discharge);
        }
        double g = GravityFactors.G;
        double y2 = tailwaterDepth;
        double over = Math.sqrt(y2 * y2 - 2 * q * q / g * (1 / jet - 1 / y2));
        double energy = over + q * q / (2 * g * jet * jet);
        double critical = Math.cbrt(q * q / g);
        double depth = Roots.between(y -> y + q * q / (2 * g * y * y) - energy, critical, energy);
        LimitCheck.check(this, depth);
        return depth;
    }

    @Override
    public String toString() {
        return "SluiceGate[b = " + Text.significant(width, 6) + " m, a = " + Text.significant(opening, 6) + " m, Cc = "
                + Text.significant(contraction, 6) + "]";
    }
}
