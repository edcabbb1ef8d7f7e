package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A length of one section, gradient and resistance, for varied flow; the gradient may be 0 or adverse. At its lower end
 * there can be a drop of the invert and a local loss (a manhole). Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Reach {
    private final CrossSection section;
    private final Gradient gradient;
    private final Resistance resistance;
    private final double length;
    private final double drop;
    private final double lossCoefficient;
    private final double gravity;

    private Reach(
            CrossSection section,
            Gradient gradient,
            Resistance resistance,
            double length,
            double drop,
            double lossCoefficient,
            double gravity) {
        this.section = Objects.requireNonNull(section, "section");
        this.gradient = Objects.requireNonNull(gradient, "gradient");
        this.resistance = Objects.requireNonNull(resistance, "resistance");
        this.length = Require.positive("length", length, "m");
        this.drop = Require.finite("drop", drop, "m");
        this.lossCoefficient = Require.nonNegative("lossCoefficient", lossCoefficient, "");
        this.gravity = Require.positive("gravity", gravity, "m/s2");
    }

    /**
     * Returns a reach under standard gravity.
     *
     * @param section the section
     * @param gradient the fall; 0 for level, negative for adverse
     * @param resistance the law of resistance
     * @param length length along the flow, m; greater than 0
     * @return the reach, without drop or loss at its end
     * @throws IllegalArgumentException if {@code length} is not greater than 0 and finite
     */
    public static Reach of(CrossSection section, Gradient gradient, Resistance resistance, double length) {
        return new Reach(section, gradient, resistance, length, 0, 0, Gravity.STANDARD);
    }

    /**
     * Returns a reach of a conduit.
     *
     * @param conduit section, gradient, resistance and gravity
     * @param length length along the flow, m; greater than 0
     * @return the reach
     * @throws IllegalArgumentException if {@code length} is not greater than 0 and finite
     */
    public static Reach of(Conduit conduit, double length) {
        return of(conduit.section(), conduit.gradient(), conduit.resistance(), length)
                .withGravity(conduit.gravity());
    }

    /**
     * Returns a copy with another acceleration of free fall.
     *
     * @param newGravity g, m/s²; greater than 0, finite
     * @return the copy
     * @throws IllegalArgumentException if {@code newGravity} is not
     */
    public Reach withGravity(double newGravity) {
        return new Reach(section, gradient, resistance, length, drop, lossCoefficient, newGravity);
    }

    /**
     * Returns a copy with a drop of the invert behind its lower end.
     *
     * @param drop how much lower the next invert is, m; negative for a step up
     * @return the copy
     * @throws IllegalArgumentException if {@code drop} is not finite
     */
    public Reach withDrop(double drop) {
        return new Reach(section, gradient, resistance, length, drop, lossCoefficient, gravity);
    }

    /**
     * Returns a copy with a local loss K V²/(2g) behind its lower end. V is the mean velocity at the lower end of this
     * reach, <b>upstream</b> of the loss. A K on the velocity downstream, as for most entrances and manholes, does not
     * belong here as it is; at known areas of flow K (A<sub>upstream</sub>/A<sub>downstream</sub>)² does.
     *
     * @param lossCoefficient loss coefficient K on the upstream velocity; 0 or greater
     * @return the copy
     * @throws IllegalArgumentException if {@code lossCoefficient} is negative or not finite
     */
    public Reach withLoss(double lossCoefficient) {
        return new Reach(section, gradient, resistance, length, drop, lossCoefficient, gravity);
    }

    /**
     * Returns a copy with a local loss behind its lower end.
     *
     * @param loss the loss, on the upstream velocity (that at the lower end of this reach) or the mean velocity
     * @return the copy
     * @throws IllegalArgumentException if {@code loss} goes with the downstream velocity
     */
    public Reach withLoss(LocalLoss loss) {
        if (loss.referenceVelocity() == LocalLoss.ReferenceVelocity.DOWNSTREAM) {
            throw new IllegalArgumentException("loss must go with the upstream or mean velocity, was " + loss
                    + "; at known areas of flow use withLoss(K (A upstream / A downstream)^2)");
        }
        return withLoss(loss.coefficient());
    }

    /**
     * Returns the section.
     *
     * @return the section
     */
    public CrossSection section() {
        return section;
    }

    /**
     * Returns the gradient.
     *
     * @return the gradient
     */
    public Gradient gradient() {
        return gradient;
    }

    /**
     * Returns the law of resistance.
     *
     * @return the law
     */
    public Resistance resistance() {
        return resistance;
    }

    /**
     * Returns the length.
     *
     * @return length, m
     */
    public double length() {
        return length;
    }

    /**
     * Returns the drop behind the lower end.
     *
     * @return drop of the invert, m
     */
    public double drop() {
        return drop;
    }

    /**
     * Returns the loss coefficient behind the lower end.
     *
     * @return K, on the velocity at the lower end of this reach
     */
    public double lossCoefficient() {
        return lossCoefficient;
    }

    /**
     * Returns the acceleration of free fall.
     *
     * @return g, m/s²
     */
    public double gravity() {
        return gravity;
    }

    @Override
    public String toString() {
        return "Reach[" + Text.significant(length, 6) + " m of " + section + ", " + gradient + ", " + resistance
                + (drop == 0 ? "" : ", drop " + Text.significant(drop, 6) + " m")
                + (lossCoefficient == 0 ? "" : ", loss K = " + Text.significant(lossCoefficient, 6))
                + (gravity == Gravity.STANDARD ? "" : ", g = " + Text.significant(gravity, 6) + " m/s2") + "]";
    }
}
