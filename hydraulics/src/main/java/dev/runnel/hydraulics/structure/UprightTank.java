package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.internal.Gauss;
import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A tank, manhole or wet well with upright walls that empties while nothing flows in. Immutable and thread-safe.
 *
 * <pre>
 * t = A ∫ dh/Q(h)                                  through any structure, h from its datum
 * t = 2 A (√h₁ − √h₂)/(Cd a √(2g))                 through a small orifice, h on its centre
 * </pre>
 *
 * <p>Source: K. Subramanya, 1000 Solved Problems in Fluid Mechanics, ch. 13 (flow under varying head). Range: steady flow at each
 * moment, that is an opening small against the tank.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class UprightTank {
    private static final double LARGEST = 1e12;

    /** Pieces of an integral over the logarithm of the head: the quadrature is then exact to rounding. */
    private static final int PIECES = 16;

    private final double area;
    private final double gravityRoot;

    private UprightTank(double area, double gravityRoot) {
        this.area = area;
        this.gravityRoot = gravityRoot;
    }

    /**
     * Returns the tank of a plan area.
     *
     * @param planArea area A of the water surface, m²; greater than 0, at most 1e12
     * @return the tank
     * @throws IllegalArgumentException if {@code planArea} is outside its range
     */
    public static UprightTank ofPlanArea(double planArea) {
        Require.inRange("planArea", Require.positive("planArea", planArea, "m2"), 1e-12, LARGEST, "m2");
        return new UprightTank(planArea, GravityFactors.ROOT_2G);
    }

    /**
     * Returns the round tank or manhole.
     *
     * @param diameter inner diameter, m; in [1e-6, 1e6]
     * @return the tank
     * @throws IllegalArgumentException if {@code diameter} is outside its range
     */
    public static UprightTank ofDiameter(double diameter) {
        Sizes.length("diameter", diameter);
        return new UprightTank(Math.PI / 4 * diameter * diameter, GravityFactors.ROOT_2G);
    }

    /**
     * Returns a copy under another gravity, for {@link #emptyingTimeOnCentre}.
     *
     * @param newGravity acceleration of free fall g, m/s²; in [0.1, 100]
     * @return the copy
     * @throws IllegalArgumentException if {@code newGravity} is outside
     */
    public UprightTank withGravity(double newGravity) {
        return new UprightTank(area, Math.sqrt(2 * Require.inRange("newGravity", newGravity, 0.1, 100, "m/s2")));
    }

    /**
     * Returns the time in which the level falls through a free orifice, heads on its centre; for an opening in the floor,
     * above the floor. The jet is taken as that of a small orifice down to the end, which in a wall is too fast for heads
     * below its height ({@link #emptyingTime} with a {@link LargeOrifice} is not).
     *
     * @param orifice the opening
     * @param from first head h₁ on the centre, m; in [0, 1e6]
     * @param to last head h₂ on the centre, m; in [0, from]
     * @return time, s
     * @throws IllegalArgumentException if a head is outside its range
     */
    public double emptyingTimeOnCentre(Orifice orifice, double from, double to) {
        Objects.requireNonNull(orifice, "orifice");
        Require.inRange("from", from, 0, Sizes.GREATEST, "m");
        Require.inRange("to", to, 0, from, "m");
        double drop = from - to;
        double roots = Math.sqrt(from) + Math.sqrt(to);
        // The difference of the roots by the difference of the heads: no digits are lost where they are close.
        return drop == 0 ? 0 : 2 * area * (drop / roots) / (orifice.coefficient() * orifice.area() * gravityRoot);
    }

    /**
     * Returns the time in which the level falls through any free structure, heads from its own datum.
     *
     * @param outlet the structure; its bare formula is followed, beyond its limits too
     * @param from first head h₁, m; in [0, highest head of the outlet]
     * @param to last head h₂, m; greater than 0, at most {@code from}; all but the last film, as over a crest the end is
     *     never reached
     * @return time, s; within 1e-9 relative where the formula is smooth
     * @throws IllegalArgumentException if a head is outside its range
     * @throws NoSolutionException if the outlet passes nothing on the way
     */
    public double emptyingTime(HeadDischarge outlet, double from, double to) {
        Require.inRange("from", from, 0, outlet.highestHead(), "m");
        Require.inRange("to", Require.positive("to", to, "m"), 0, from, "m");
        double low = Math.log(to);
        double step = (Math.log(from) - low) / PIECES;
        double sum = 0;
        for (int i = 0; i < PIECES && step > 0; i++) {
            sum += Gauss.integrate(
                    log -> Math.exp(log) / outlet.formula(Math.exp(log)), low + i * step, low + (i + 1) * step);
        }
        if (!(sum < Double.POSITIVE_INFINITY)) {
            throw new NoSolutionException("the outlet passes nothing at some head between " + Text.number(to) + " and "
                    + Text.number(from) + " m: the tank does not fall that far");
        }
        return area * sum;
    }

    /**
     * Returns the plan area.
     *
     * @return area A, m²
     */
    public double planArea() {
        return area;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UprightTank
                && Double.compare(area, ((UprightTank) other).area) == 0
                && Double.compare(gravityRoot, ((UprightTank) other).gravityRoot) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(area) * 31 + Double.hashCode(gravityRoot);
    }

    @Override
    public String toString() {
        return "UprightTank[A = " + Text.significant(area, 6) + " m2]";
    }
}
