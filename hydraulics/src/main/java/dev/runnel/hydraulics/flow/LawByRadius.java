package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A law of resistance that needs no more than the hydraulic radius: the mean velocity of uniform flow from radius and
 * gradient, and back. Implementations are immutable and thread-safe; velocity rises strictly with both arguments.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface LawByRadius extends Resistance {
    /**
     * Returns the mean velocity of uniform flow.
     *
     * @param hydraulicRadius hydraulic radius R, m; 0 or greater
     * @param gradient energy gradient S, m/m; 0 or greater
     * @param gravity acceleration of free fall g, m/s²; greater than 0
     * @return velocity V, m/s; 0 if the radius or the gradient is 0
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    double velocity(double hydraulicRadius, double gradient, double gravity);

    /**
     * Returns the energy gradient that drives a velocity: the inverse of
     * {@link #velocity(double, double, double) velocity}.
     *
     * @param velocity velocity V, m/s; 0 or greater
     * @param hydraulicRadius hydraulic radius R, m; greater than 0
     * @param gravity acceleration of free fall g, m/s²; greater than 0
     * @return gradient S, m/m
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    double gradient(double velocity, double hydraulicRadius, double gravity);

    /**
     * Returns the mean velocity of uniform flow under standard gravity.
     *
     * @param hydraulicRadius hydraulic radius R, m; 0 or greater
     * @param gradient energy gradient S, m/m; 0 or greater
     * @return velocity V, m/s
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    default double velocity(double hydraulicRadius, double gradient) {
        return velocity(hydraulicRadius, gradient, Gravity.STANDARD);
    }

    /**
     * Returns the energy gradient that drives a velocity under standard gravity.
     *
     * @param velocity velocity V, m/s; 0 or greater
     * @param hydraulicRadius hydraulic radius R, m; greater than 0
     * @return gradient S, m/m
     * @throws IllegalArgumentException if an argument is out of range or NaN
     */
    default double gradient(double velocity, double hydraulicRadius) {
        return gradient(velocity, hydraulicRadius, Gravity.STANDARD);
    }

    /**
     * {@inheritDoc}
     *
     * @return this law, which is the same at all depths
     */
    @Override
    default LawByRadius at(CrossSection section, double depth) {
        Objects.requireNonNull(section, "section");
        return this;
    }
}
