package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * Uniform flow at one depth, with everything an analyst reads off it. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class FlowState {
    private final double depth;
    private final double height;
    private final double area;
    private final double wettedPerimeter;
    private final double topWidth;
    private final double velocity;
    private final double discharge;
    private final double gradient;
    private final double gravity;

    private FlowState(Conduit conduit, double depth) {
        CrossSection section = conduit.section();
        this.depth = depth;
        this.height = section.height();
        this.area = section.area(depth);
        this.wettedPerimeter = section.wettedPerimeter(depth);
        this.topWidth = section.topWidth(depth);
        this.velocity = conduit.velocity(depth);
        this.discharge = conduit.discharge(depth);
        this.gradient = conduit.gradient().value();
        this.gravity = conduit.gravity();
    }

    static FlowState of(Conduit conduit, double depth) {
        return new FlowState(conduit, depth);
    }

    /**
     * Returns the depth.
     *
     * @return depth above the invert, m
     */
    public double depth() {
        return depth;
    }

    /**
     * Returns the depth as a part of the height of the section.
     *
     * @return y/D, in [0, 1]; 0 for an open section
     */
    public double fullness() {
        return depth / height;
    }

    /**
     * Returns the wetted area.
     *
     * @return area A, m²
     */
    public double area() {
        return area;
    }

    /**
     * Returns the wetted perimeter.
     *
     * @return perimeter P, m
     */
    public double wettedPerimeter() {
        return wettedPerimeter;
    }

    /**
     * Returns the hydraulic radius.
     *
     * @return R = A/P, m; 0 at depth 0
     */
    public double hydraulicRadius() {
        return area == 0 ? 0 : area / wettedPerimeter;
    }

    /**
     * Returns the width of the surface.
     *
     * @return top width T, m
     */
    public double topWidth() {
        return topWidth;
    }

    /**
     * Returns the mean velocity.
     *
     * @return velocity V, m/s
     */
    public double velocity() {
        return velocity;
    }

    /**
     * Returns the discharge.
     *
     * @return Q = A V, m³/s
     */
    public double discharge() {
        return discharge;
    }

    /**
     * Returns Froude's number, V/√(g A/T): below 1 the flow is subcritical, above 1 supercritical.
     *
     * @return Froude's number; 0 for a dry section and for a full one, which has no surface
     */
    public double froudeNumber() {
        return area == 0 || depth >= height ? 0 : velocity * Math.sqrt(topWidth / (gravity * area));
    }

    /**
     * Returns the mean boundary shear stress, τ = ρ g R S with ρ = 1000 kg/m³.
     *
     * @return shear stress τ, Pa
     */
    public double shearStress() {
        return WaterDensity.USUAL * gravity * hydraulicRadius() * gradient;
    }

    /**
     * Returns the velocity head, V²/(2g).
     *
     * @return velocity head, m
     */
    public double velocityHead() {
        return velocity * velocity / (2 * gravity);
    }

    /**
     * Returns the specific energy, y + V²/(2g).
     *
     * @return specific energy above the invert, m
     */
    public double specificEnergy() {
        return depth + velocityHead();
    }

    @Override
    public String toString() {
        return "FlowState[depth " + Text.significant(depth, 4) + " m, velocity " + Text.significant(velocity, 4)
                + " m/s, discharge " + Text.significant(discharge(), 4) + " m3/s, Froude "
                + Text.significant(froudeNumber(), 3) + ", shear " + Text.significant(shearStress(), 3) + " Pa]";
    }
}
