package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * A discharge gauged by velocity and area: verticals between two edges of the water. Immutable and thread-safe.
 *
 * <ul>
 *   <li>mid-section: Q = Σ v d (b₊ − b₋)/2, each vertical standing for half the way to its neighbours, b their distances (m)
 *   <li>mean-section: Q = Σ (v + v₊)/2 · (d + d₊)/2 · (b₊ − b), a strip between each two verticals
 * </ul>
 *
 * <p>At a bank the mid-section method leaves out the half strip beside it, and the mean-section method lets depth and velocity
 * run to 0; at a wall both take the velocity of the {@linkplain WaterEdge edge}. Source: ISO 748 (2007), clause 8, from memory.
 *
 * <p>What it is not: right where the stream runs askew to the tape, or where the stage changes while one measures.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class VelocityAreaGauging {
    private static final int MOST = 10_000;

    private final WaterEdge near;
    private final List<Vertical> verticals;
    private final WaterEdge far;

    private VelocityAreaGauging(WaterEdge near, List<Vertical> verticals, WaterEdge far) {
        this.near = near;
        this.verticals = verticals;
        this.far = far;
    }

    /**
     * Returns a gauging.
     *
     * @param near edge of the water with the smaller distance
     * @param verticals the verticals, distances ascending, 1 to 10,000; copied
     * @param far edge of the water with the greater distance
     * @return the gauging
     * @throws IllegalArgumentException if there are too few or too many verticals or their distances do not ascend between the edges
     */
    public static VelocityAreaGauging of(WaterEdge near, List<Vertical> verticals, WaterEdge far) {
        Require.inRange("count of verticals", verticals.size(), 1, MOST, "");
        double last = near.distance();
        for (int i = 0; i < verticals.size(); i++) {
            double distance = verticals.get(i).distance();
            if (!(distance > last)) {
                throw new IllegalArgumentException("distance of vertical " + i + " must be above " + Text.number(last)
                        + " m, was " + Text.number(distance));
            }
            last = distance;
        }
        if (!(far.distance() > last)) {
            throw new IllegalArgumentException("distance of the far edge must be above " + Text.number(last)
                    + " m, was " + Text.number(far.distance()));
        }
        return new VelocityAreaGauging(near, List.copyOf(verticals), far);
    }

    /**
     * Returns the verticals.
     *
     * @return the verticals, distances ascending, unmodifiable
     */
    public List<Vertical> verticals() {
        return verticals;
    }

    private double distance(int i) {
        return i < 0
                ? near.distance()
                : i == verticals.size() ? far.distance() : verticals.get(i).distance();
    }

    /**
     * Returns the discharge by the mid-section method.
     *
     * @return discharge, area and strips; at a wall a half strip with the velocity of the edge
     */
    public GaugedDischarge midSection() {
        List<Strip> strips = new ArrayList<>();
        wall(near, verticals.get(0), strips);
        for (int i = 0; i < verticals.size(); i++) {
            strips.add(strip(verticals.get(i), (distance(i + 1) - distance(i - 1)) / 2));
        }
        wall(far, verticals.get(verticals.size() - 1), strips);
        return new GaugedDischarge("mid-section", strips, verticals.size());
    }

    private static void wall(WaterEdge edge, Vertical next, List<Strip> strips) {
        if (edge.depth() > 0) {
            strips.add(new Strip(
                    Math.abs(next.distance() - edge.distance()) / 2,
                    edge.depth(),
                    edge.velocityRatio() * next.velocity(),
                    next.rule().profileUncertainty(),
                    next.rule().relativeDepths().length));
        }
    }

    /**
     * Returns the discharge by the mid-section rule of the textbooks, in which the vertical beside a bank stands for the width (W₁
     * + W₂/2)²/(2 W₁) that a triangle of the bank gives: W₁ the way to the bank, W₂ to the next vertical. It yields more than
     * {@link #midSection()}. Source: K. Subramanya, Engineering Hydrology, section 4.4.
     *
     * @return discharge, area and strips
     */
    public GaugedDischarge midSectionWithTriangles() {
        int last = verticals.size() - 1;
        if (last < 1) {
            throw new IllegalArgumentException("count of verticals must be at least 2, was 1");
        }
        List<Strip> strips = new ArrayList<>();
        for (int i = 0; i <= last; i++) {
            double width = (distance(i + 1) - distance(i - 1)) / 2;
            if (i == 0 || i == last) {
                double outer = i == 0 ? distance(0) - distance(-1) : distance(last + 1) - distance(last);
                double inner = i == 0 ? distance(1) - distance(0) : distance(last) - distance(last - 1);
                width = (outer + inner / 2) * (outer + inner / 2) / (2 * outer);
            }
            strips.add(strip(verticals.get(i), width));
        }
        return new GaugedDischarge("mid-section with triangles", strips, verticals.size());
    }

    private static Strip strip(Vertical vertical, double width) {
        return new Strip(
                width,
                vertical.depth(),
                vertical.velocity(),
                vertical.rule().profileUncertainty(),
                vertical.rule().relativeDepths().length);
    }

    /**
     * Returns the discharge by the mean-section method.
     *
     * @return discharge, area and strips
     */
    public GaugedDischarge meanSection() {
        List<Strip> strips = new ArrayList<>();
        int last = verticals.size() - 1;
        for (int i = -1; i <= last; i++) {
            Vertical own = verticals.get(Math.max(i, 0));
            Vertical next = verticals.get(Math.min(i + 1, last));
            double velocity = i < 0
                    ? next.velocity() * (1 + near.velocityRatio()) / 2
                    : i == last
                            ? own.velocity() * (1 + far.velocityRatio()) / 2
                            : (own.velocity() + next.velocity()) / 2;
            double depth = ((i < 0 ? near.depth() : own.depth()) + (i == last ? far.depth() : next.depth())) / 2;
            strips.add(new Strip(
                    distance(i + 1) - distance(i),
                    depth,
                    velocity,
                    Math.max(own.rule().profileUncertainty(), next.rule().profileUncertainty()),
                    Math.min(own.rule().relativeDepths().length, next.rule().relativeDepths().length)));
        }
        return new GaugedDischarge("mean-section", strips, verticals.size());
    }

    @Override
    public String toString() {
        return "VelocityAreaGauging[" + verticals.size() + " verticals from " + Text.significant(near.distance(), 6)
                + " to " + Text.significant(far.distance(), 6) + " m]";
    }
}
