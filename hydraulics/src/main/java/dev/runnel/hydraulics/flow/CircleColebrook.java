package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.internal.Roots;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Uniform flow by the law of Colebrook and White in a circle: the depth of a discharge without a search where the flow is
 * turbulent ({@link ColebrookCells}) or a laminar film ({@link LaminarFilm}). What lies between, or on a wall rougher than deep,
 * is searched for, and only what lies at the crest is left to the general curve: to find that takes far longer than one depth, and
 * many pipes are asked for no more.
 *
 * <p>With x = y/D, the parts a = A/D², p = P/D and ρ = a/p of the unit circle, and α = ks/(14.8 D),
 * β = 2.51 ν/(4 D √(8 g S D)), the discharge is
 *
 * <pre>
 * Q = D² √(8 g S D) · (2/ln 10) · a √ρ (−L)     L = ln(α/ρ + β/ρ^(3/2))
 * </pre>
 */
final class CircleColebrook implements UniformCurve {
    static final double FULL_AREA = Math.PI / 4;

    /** Up to this part of the diameter the discharge rises with the depth: by every law, and where the full pipe is turbulent. */
    private static final double RISING = 0.5;

    private static final double RISING_TURBULENT = 0.938;

    private final Conduit conduit;
    private final ColebrookPipe pipe;
    /** Only of a pipe that is surely turbulent when full. */
    private final @Nullable ColebrookCells cells;

    private CircleColebrook(Conduit conduit, ColebrookPipe pipe) {
        this.conduit = conduit;
        this.pipe = pipe;
        this.cells = pipe.isTurbulent() ? new ColebrookCells(pipe) : null;
    }

    static CircleColebrook of(CircularSection section, ColebrookWhite law, double gradient, double gravity) {
        return new CircleColebrook(
                Conduit.of(section, Gradient.ofAny(gradient), law).withGravity(gravity),
                ColebrookPipe.of(section, law, gradient, gravity));
    }

    @Override
    public double discharge(double depth) {
        return conduit.dischargeByLaw(depth);
    }

    @Override
    public double lowestDepth(double discharge) {
        double q = discharge * pipe.perUnit;
        double known = cells == null ? Double.NaN : cells.depth(q);
        double part = known > 0 ? known : LaminarFilm.part(pipe.alpha, pipe.beta, q);
        return part > 0 ? pipe.diameter * part : searched(discharge);
    }

    private double searched(double discharge) {
        double top = (cells == null ? RISING : RISING_TURBULENT) * pipe.diameter;
        return discharge > 0 && discharge <= conduit.dischargeByLaw(top)
                ? Roots.overDecades(depth -> Math.log(conduit.dischargeByLaw(depth) / discharge), top)
                : conduit.curves().discharge().lowestDepthFor(discharge);
    }

    /** Writes the lowest depth of each discharge; what the cells do not tell is left to another form. */
    void lowestDepths(double[] discharge, double[] depth, DoubleUnaryOperator other) {
        if (cells == null) {
            Bulk.apply("discharges", discharge, "depths", depth, other);
        } else {
            cells.depths(discharge, depth, pipe.perUnit, pipe.diameter, other);
        }
    }

    @Override
    public double[] depths(double discharge) {
        double[] depths = conduit.curves().discharge().depthsFor(discharge);
        if (depths.length > 0) {
            depths[0] = lowestDepth(discharge);
        }
        return depths;
    }

    @Override
    public double depthOfMostDischarge() {
        return conduit.curves().discharge().depthOfMaximum();
    }

    @Override
    public double depthOfMostVelocity() {
        // Turbulent flow is fastest where its hydraulic radius is largest.
        return cells == null ? conduit.curves().velocity().depthOfMaximum() : CircleManning.FASTEST * pipe.diameter;
    }
}
