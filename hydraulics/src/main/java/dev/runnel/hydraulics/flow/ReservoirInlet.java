package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * A long channel or pipe fed by still water: the flow that a level in the reservoir, tank or wet well sends into it. Immutable and
 * thread-safe.
 *
 * <pre>
 * H = y + (1 + k) V²/(2g)
 * </pre>
 *
 * <p>H is the level of the still water above the invert at the inlet (m), y and V depth and velocity just inside, k the coefficient of
 * the entrance loss. Where uniform flow is slow, y is the normal depth; where it is fast, the inlet is the control and y the critical
 * depth, V²/(2g) = A/(2T). Source: Ven Te Chow, Open-Channel Hydraulics, 1959, section 11-1 (problem of discharge).
 *
 * <p>What it is not: a short channel, in which the tailwater is felt at the inlet ({@link VariedFlow}), or an inlet under water
 * (a culvert's).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ReservoirInlet {
    private static final double LARGEST_HEAD = 1e4;
    private static final double LARGEST_LOSS = 100;

    private final Conduit conduit;
    private final double loss;

    private ReservoirInlet(Conduit conduit, double loss) {
        this.conduit = conduit;
        this.loss = loss;
    }

    /**
     * Returns the inlet of a channel, rounded so well that it loses nothing.
     *
     * @param conduit the channel or pipe, with its gradient, resistance and gravity
     * @return the inlet, k = 0
     */
    public static ReservoirInlet into(Conduit conduit) {
        return new ReservoirInlet(Objects.requireNonNull(conduit, "conduit"), 0);
    }

    /**
     * Returns a copy with an entrance loss.
     *
     * @param coefficient k of the loss k V²/(2g); in [0, 100]; 0.5 for a square edge (common practice)
     * @return the copy
     * @throws IllegalArgumentException if {@code coefficient} is outside
     */
    public ReservoirInlet withEntranceLoss(double coefficient) {
        return new ReservoirInlet(conduit, Require.inRange("coefficient", coefficient, 0, LARGEST_LOSS, ""));
    }

    /**
     * Returns the depth just inside the inlet.
     *
     * @param head level of the still water above the invert H, m; in [0, 1e4]
     * @return depth y, m; H closes within 1e-12 relative
     * @throws IllegalArgumentException if {@code head} is outside
     * @throws NoSolutionException if the pipe would run so full that no free surface stands at its inlet
     */
    public double depth(double head) {
        return Math.max(normalDepth(head), criticalDepth(head));
    }

    /**
     * Returns the discharge.
     *
     * @param head level of the still water above the invert H, m; in [0, 1e4]
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code head} is outside
     * @throws NoSolutionException if the pipe would run so full that no free surface stands at its inlet
     */
    public double discharge(double head) {
        double depth = depth(head);
        double velocity = Math.sqrt(2 * conduit.gravity() * Math.max(head - depth, 0) / (1 + loss));
        return velocity * conduit.section().area(depth);
    }

    /**
     * Tells whether the inlet is the control, that is whether the flow behind it is fast.
     *
     * @param head level of the still water above the invert H, m; in [0, 1e4]
     * @return true if the depth at the inlet is the critical one
     * @throws IllegalArgumentException if {@code head} is outside
     * @throws NoSolutionException if the pipe would run so full that no free surface stands at its inlet
     */
    public boolean isControl(double head) {
        return criticalDepth(head) >= normalDepth(head);
    }

    /** The depth at which uniform flow has this energy: it rises with depth as far as the velocity does. */
    private double normalDepth(double head) {
        Require.inRange("head", head, 0, LARGEST_HEAD, "m");
        boolean open = conduit.section().height() == Double.POSITIVE_INFINITY;
        double highest = open ? head : Math.min(head, conduit.maximumVelocity().depth());
        return depthWhere(head, highest, depth -> {
            double velocity = conduit.velocity(depth);
            return depth + (1 + loss) * velocity * velocity / (2 * conduit.gravity());
        });
    }

    private double criticalDepth(double head) {
        CrossSection section = conduit.section();
        return depthWhere(
                head,
                Math.min(head, section.height()),
                depth -> depth + (1 + loss) * section.hydraulicDepth(depth) / 2);
    }

    private static double depthWhere(double head, double highest, DoubleUnaryOperator energy) {
        if (head == 0) {
            return 0;
        }
        if (energy.applyAsDouble(highest) < head) {
            throw new NoSolutionException("a head of " + Text.number(head)
                    + " m fills the inlet: above a depth of " + Text.number(highest)
                    + " m there is no free surface that it would keep");
        }
        return Roots.between(depth -> energy.applyAsDouble(depth) - head, 0, highest);
    }

    @Override
    public String toString() {
        return "ReservoirInlet[" + conduit + ", k = " + Text.significant(loss, 6) + "]";
    }
}
