package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.CriticalFlow;
import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The inlet of a culvert as its control. Immutable and thread-safe.
 *
 * <pre>
 * q = Q/(A √D), in ft^(1/2)/s
 * free,    q ≤ 3.5, form 1:   HW/D = E_c/D + K q^M − S/2        form 2:   HW/D = K q^M
 * drowned, q ≥ 4:             HW/D = c q² + Y − S/2
 * between:                    straight line in q
 * </pre>
 *
 * <p>HW headwater above the invert at the inlet (m), D height of the barrel (m), A its full area (m²), Q discharge (m³/s), E_c specific
 * energy of critical flow (m), S fall of the barrel (m/m). Source and constants: {@link CulvertEdge}. Accuracy: the formulas are within 5
 * to 10 % of the charts (from memory). Range: q to 12, headwater 3 to 4 D; the approach is a pond.
 *
 * <p>What it is not: the other control. A culvert whose barrel or tailwater holds the water back stands higher; the larger headwater
 * counts. A design follows the local code and a licensed engineer.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CulvertInlet extends OfParts {
    private static final double ROOT_FOOT = Math.sqrt(0.3048);
    private static final double FREE = 3.5;
    private static final double DROWNED = 4;

    /** Largest q that is answered; chosen here, headwater some 4 to 8 D. */
    private static final double LARGEST = 12;

    private final ClosedSection barrel;
    private final CulvertEdge edge;
    private final double gradient;

    private CulvertInlet(ClosedSection barrel, CulvertEdge edge, double gradient) {
        super(barrel, edge, gradient);
        this.barrel = barrel;
        this.edge = edge;
        this.gradient = gradient;
    }

    /**
     * Returns the inlet of a level barrel.
     *
     * @param barrel section of the barrel, of the shape that the edge is for
     * @param edge the edge
     * @return the inlet
     */
    public static CulvertInlet of(ClosedSection barrel, CulvertEdge edge) {
        return new CulvertInlet(Objects.requireNonNull(barrel, "barrel"), Objects.requireNonNull(edge, "edge"), 0);
    }

    /**
     * Returns a copy with the fall of the barrel.
     *
     * @param newGradient fall S, m/m; in [0, 0.2]
     * @return the copy
     * @throws IllegalArgumentException if {@code newGradient} is outside
     */
    public CulvertInlet withGradient(double newGradient) {
        return new CulvertInlet(barrel, edge, Require.inRange("newGradient", newGradient, 0, 0.2, "m/m"));
    }

    /**
     * Returns the headwater that a discharge needs.
     *
     * @param discharge discharge Q, m³/s; 0 or greater
     * @return level HW above the invert at the inlet, m; 0 where the formula gives less
     * @throws IllegalArgumentException if {@code discharge} is negative or not finite
     * @throws NoSolutionException if q is above 12
     */
    public double headwater(double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        double q = discharge / unit();
        if (q > LARGEST) {
            throw new NoSolutionException("the formulas of the inlet end at " + Text.significant(LARGEST * unit(), 4)
                    + " m3/s, was " + Text.number(discharge) + " m3/s");
        }
        return Math.max(ratio(q), 0) * barrel.height();
    }

    /**
     * Returns the discharge at a headwater.
     *
     * @param headwater level HW above the invert at the inlet, m; 0 or greater
     * @return discharge, m³/s; 0 at a headwater of 0
     * @throws IllegalArgumentException if {@code headwater} is negative or not finite
     * @throws NoSolutionException if the headwater is above that of q = 12
     */
    public double discharge(double headwater) {
        double wanted = Require.nonNegative("headwater", headwater, "m") / barrel.height();
        if (wanted == 0) {
            return 0;
        }
        if (wanted > ratio(LARGEST)) {
            throw new NoSolutionException("the formulas of the inlet end at a headwater of "
                    + Text.significant(ratio(LARGEST) * barrel.height(), 4) + " m, was " + Text.number(headwater)
                    + " m");
        }
        return unit() * Roots.between(q -> ratio(q) - wanted, 0, LARGEST);
    }

    /**
     * Tells whether the inlet is under water, that is past the straight line between the formulas.
     *
     * @param discharge discharge Q, m³/s; 0 or greater
     * @return true if q is 4 or more
     * @throws IllegalArgumentException if {@code discharge} is negative or not finite
     */
    public boolean isDrowned(double discharge) {
        return Require.nonNegative("discharge", discharge, "m3/s") >= DROWNED * unit();
    }

    /** The discharge of q = 1, m³/s. */
    private double unit() {
        return barrel.fullArea() * Math.sqrt(barrel.height()) * ROOT_FOOT;
    }

    private double ratio(double q) {
        if (q <= FREE) {
            return free(q);
        }
        if (q >= DROWNED) {
            return edge.drowned(q) - gradient / 2;
        }
        double low = free(FREE);
        return low + (q - FREE) / (DROWNED - FREE) * (edge.drowned(DROWNED) - gradient / 2 - low);
    }

    private double free(double q) {
        if (!edge.addsCriticalEnergy()) {
            return edge.free(q);
        }
        if (q == 0) {
            return -gradient / 2;
        }
        CriticalFlow critical = CriticalFlow.of(barrel);
        return critical.energy(critical.depth(q * unit())) / barrel.height() + edge.free(q) - gradient / 2;
    }

    @Override
    public String toString() {
        return "CulvertInlet[" + barrel + ", " + edge + ", S = " + Text.significant(gradient, 6) + "]";
    }
}
